//! The cutting list: a bar for each spool with its pieces to proportion, and what to cut.
//!
//! Bars are drawn to a stated scale, as large as the pieces allow. What is left of a spool is drawn
//! to the same scale where there is room, else broken off.

use crate::design::{Design, Strand};
use crate::geometry::Point;
use crate::materials::render::words::{long, runs, verdict};
use crate::materials::{Article, Cutting, Piece, Spool};
use crate::units::{Length, UnitStyle};

use super::figure::Scale;
use super::layout::Block;
use super::layout::flow::Flow;
use super::layout::table::{Align, Cell, Column, Table};
use super::layout::text::Type;
use super::mark::{Anchor, Fill, Mark, Stroke};
use super::{outline, style};

/// Height of a bar.
const HEIGHT: f64 = 8.5;
/// Least width of what is left of a spool.
const REST: f64 = 16.0;
/// Room that a label leaves free beside it.
const CLEAR: f64 = 1.6;
/// Half the width of an edge, which keeps to the bar's box.
const HALF_EDGE: f64 = 0.1;
/// Upper and lower edge of what is drawn.
const TOP_AND_BOTTOM: [f64; 2] = [HALF_EDGE, HEIGHT - HALF_EDGE];
/// The edge of a piece.
const EDGE: Stroke = Stroke::new(style::INK, 2.0 * HALF_EDGE);

/// Pours a cutting plan: its name and scale, its bars, its list. Returns the scale of the bars.
pub fn pour(flow: &mut Flow, design: &Design, cutting: &Cutting) -> Scale {
    let units = design.heading.units;
    let spools = spools(cutting);
    let scale = scale(&spools, flow.width());
    flow.heading(title(design, cutting, scale, flow.width()));
    let mut number = 1;
    for spool in &spools {
        let bar = Bar { scale: scale.factor(), width: flow.width(), units, marks: Vec::new() };
        flow.add(Block::stack([bar.block(spool, number), Block::gap(1.5)], 0.0));
        number += spool.pieces.len();
    }
    flow.table(list(design, cutting.article, &spools).set(flow.width()));
    scale
}

/// The plan's spools; pieces that come from none of them lie end to end on a bar of their own.
fn spools(cutting: &Cutting) -> Vec<Spool> {
    let loose = cutting.unplaced.clone();
    let length = loose.iter().map(|piece| piece.length).sum();
    let loose = Spool { length, in_stash: false, pieces: loose, left: Length::ZERO };
    let all = cutting.spools.iter().cloned().chain([loose]);
    all.filter(|spool| !spool.pieces.is_empty()).collect()
}

/// The largest round scale at which all pieces of every spool have room, actual size at the most.
fn scale(spools: &[Spool], width: f64) -> Scale {
    let cut = |spool: &Spool| spool.pieces.iter().map(|piece| piece.length.value()).sum();
    let longest = spools.iter().map(cut).fold(width - REST, f64::max);
    Scale::fitting((longest, 0.0), (width - REST, 1.0))
}

fn title(design: &Design, cutting: &Cutting, scale: Scale, width: f64) -> Block {
    let from = match (verdict(cutting), cutting.too_long()) {
        (_, [_, ..]) => "some pieces are longer than any length on sale".to_owned(),
        (Some(words), _) => format!("from {words}"),
        (None, _) => "the pattern does not say how it is sold".to_owned(),
    };
    let name = Type::STRONG.paragraph(cutting.article.name(design), width);
    let note = Type::TINY.paragraph(&format!("Bars at {scale}; {from}."), width);
    Block::stack([name, note, Block::gap(1.0)], 0.0)
}

/// A bar as it is drawn.
struct Bar {
    scale: f64,
    width: f64,
    units: UnitStyle,
    marks: Vec<Mark>,
}

impl Bar {
    /// A spool's pieces, numbered from `first`, and what is left.
    fn block(mut self, spool: &Spool, first: usize) -> Block {
        let mut left = HALF_EDGE;
        for (at, piece) in spool.pieces.iter().enumerate() {
            let right = left + piece.length.value() * self.scale;
            self.piece(piece, first + at, left, right);
            left = right;
        }
        if spool.left.value() * self.scale > 0.5 {
            self.rest(spool.left, left);
        }
        Block::new(self.width, HEIGHT, self.marks)
    }

    fn piece(&mut self, piece: &Piece, number: usize, left: f64, right: f64) {
        let fill = Some(Fill::Flat(style::ACCENT.mixed(super::mark::Rgb::WHITE, 0.88), 1.0));
        let [top, bottom] = TOP_AND_BOTTOM;
        let outline = outline::rect(Point::new(left, top), right - left, bottom - top);
        self.marks.push(Mark::Shape { outline, fill, stroke: Some(EDGE) });
        let names = [format!("{number} {}", piece.label), number.to_string()];
        let lengths = [self.units.ruler(piece.length)];
        self.label(&names, Type::SMALL_STRONG, HEIGHT * 0.43, left, right);
        self.label(&lengths, Type::TINY, HEIGHT * 0.83, left, right);
    }

    /// What is left, broken off where it is longer than the page.
    fn rest(&mut self, length: Length, left: f64) {
        let whole = left + length.value() * self.scale;
        let right = whole.min(self.width - HALF_EDGE);
        let [top, bottom] = TOP_AND_BOTTOM;
        let mut open = outline::line(Point::new(right, top), Point::new(left, top));
        open.extend(outline::line(Point::new(left, bottom), Point::new(right, bottom)));
        let end = if whole > right { torn(right) } else { vec![Point::new(right, top), Point::new(right, bottom)] };
        open.extend(outline::polyline(&end));
        let stroke = Stroke::new(style::RULE, 2.0 * HALF_EDGE);
        self.marks.push(Mark::Shape { outline: open, fill: None, stroke: Some(stroke) });
        let words = long(length, self.units);
        self.label(&["left over".to_owned(), "left".to_owned()], Type::TINY, HEIGHT * 0.43, left, right);
        self.label(&[words], Type::TINY, HEIGHT * 0.83, left, right);
    }

    /// The first of some words that has room, in the middle between two places.
    fn label(&mut self, words: &[String], face: Type, baseline: f64, left: f64, right: f64) {
        if let Some(words) = words.iter().find(|words| face.width(words) + CLEAR <= right - left) {
            self.marks.push(face.mark(words, Point::new(left.midpoint(right), baseline), Anchor::Middle));
        }
    }
}

/// The torn end of a bar that goes on.
fn torn(x: f64) -> Vec<Point> {
    let [top, bottom] = TOP_AND_BOTTOM;
    let tooth = |at: u32| Point::new(x - f64::from(at % 2) * 1.2, top + (bottom - top) * f64::from(at) / 6.0);
    (0..=6).map(tooth).collect()
}

/// One row a piece, equal ones told once: number, name, what it is made up of, cut length.
fn list(design: &Design, article: Article, spools: &[Spool]) -> Table {
    let mut table = Table::new(vec![
        Column::new("", Align::Left),
        Column::wrapping("piece"),
        Column::new("", Align::Right),
        Column::new("cut", Align::Right),
    ]);
    let mut number = 1;
    for (count, piece) in spools.iter().flat_map(|spool| runs(&spool.pieces)) {
        let last = number + count - 1;
        let several = count > 1;
        let numbers = if several { format!("{number}–{last}") } else { number.to_string() };
        let name = if several { format!("{count} × {}", piece.label) } else { piece.label.clone() };
        let cut = design.heading.units.ruler(piece.length);
        let parts = made_up_of(design, article, piece);
        table.push(vec![Cell::strong(numbers), Cell::text(name), Cell::text(parts), Cell::strong(cut)]);
        number = last + 1;
    }
    table
}

/// The finished length and the allowances of a strand's piece.
fn made_up_of(design: &Design, article: Article, piece: &Piece) -> String {
    let units = design.heading.units;
    let is_its = |strand: &&Strand| article == Article::Cord(strand.cord) && strand.name == piece.label;
    let strand = design.strands.iter().find(is_its).filter(|strand| strand.allowance > Length::ZERO);
    let parts =
        |strand: &Strand| format!("{} finished + 2 × {}", units.ruler(strand.finished), units.ruler(strand.allowance));
    strand.map(parts).unwrap_or_default()
}
