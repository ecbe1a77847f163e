//! The cutting list: a bar for each spool with its pieces to proportion, and what to cut.
//!
//! Bars are drawn to a stated scale, as large as the pieces allow. What is left of a spool is drawn
//! to the same scale where there is room, else broken off. Lengths in mm on paper.

use std::slice;

use crate::design::{Design, Index, Strand};
use crate::english::commas;
use crate::geometry::Point;
use crate::materials::cutting::lost;
use crate::materials::render::words::{cut, cut_for, runs, uncut};
use crate::materials::{Article, Cut, CutFor, Cutting, Spool};
use crate::piece::Piece;
use crate::trade::usual;
use crate::units::{Length, UnitStyle};

use super::english;
use super::figure::Scale;
use super::said::{CutOrder, FooterScale, ListedCut, MadeUp, PlanNote};
use crate::paint::layout::Block;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Fill, Mark, Rgb};
use crate::paint::{outline, style};

/// Height of a bar in mm.
const HEIGHT: f64 = 8.5;
/// How far down in it names and lengths stand, and a name alone.
const NAME_BASELINE: f64 = HEIGHT * 0.43;
const LENGTH_BASELINE: f64 = HEIGHT * 0.83;
const ALONE_BASELINE: f64 = HEIGHT * 0.63;
/// How pale a piece is filled.
const PALE: f64 = 0.88;
/// Room in mm below a bar, and between two plans.
const BELOW_BAR: f64 = 1.2;
const PLANS_APART: f64 = 2.5;
/// Least width in mm of what is left of a spool.
const REST: f64 = 16.0;
/// Length in mm of the line from a bar to a name below it, and room below that, which is clear of fractions.
const LEADER: f64 = 0.9;
const BELOW_LEADER: f64 = 0.4;
/// Length in mm of the needle at a cord's end, and half its thickness, not to scale.
const NEEDLE: f64 = 6.0;
const NEEDLE_HALF: f64 = 0.35;
/// Room in mm that a label leaves free beside it.
const BESIDE_LABEL: f64 = 1.6;
/// Depth in mm of the teeth of a bar that is broken off.
const TOOTH: f64 = 1.2;
/// How many of their edges there are.
const TEETH: u32 = 6;
/// Least length in mm on paper of what is left of a spool, where it is drawn.
const LEAST_REST: f64 = 0.5;
/// Half the width of an edge, which keeps to the bar's box.
const HALF_EDGE: f64 = style::THIN / 2.0;
/// Upper and lower edge of what is drawn.
const TOP_AND_BOTTOM: [f64; 2] = [HALF_EDGE, HEIGHT - HALF_EDGE];

/// Pours cutting plans, each with its name and scale, its bars, its list; the first one says how lengths are rounded.
pub fn pour(flow: &mut Flow, piece: &Piece, cuttings: &[&Cutting]) {
    let plans: Vec<_> = cuttings.iter().map(|cutting| Plan::new(piece, cutting, flow.width())).collect();
    let drawn: Vec<_> = plans.iter().filter(|plan| !plan.is_single()).collect();
    let alike = drawn.iter().all(|plan| plan.scale == drawn[0].scale);
    for (at, plan) in plans.iter().enumerate() {
        let footer = english::scaled(if alike { FooterScale::Bars(plan.scale) } else { FooterScale::SeveralBars });
        flow.gap(if at > 0 { PLANS_APART } else { 0.0 });
        plan.pour(flow, &footer, at == 0);
    }
}

/// A cutting plan as it is drawn.
struct Plan<'a> {
    design: &'a Design,
    units: UnitStyle,
    cutting: &'a Cutting,
    spools: Vec<Spool>,
    scale: Scale,
    /// Whether its cord has a needle of its own, from which its strand is measured.
    has_needle: bool,
}

impl<'a> Plan<'a> {
    fn new(piece: &'a Piece, cutting: &'a Cutting, width: f64) -> Self {
        let (design, units) = (&piece.design, piece.telling.units);
        let has_needle = matches!(cutting.article, Article::Cord(at) if design.cords[at].needle);
        let spools = spools(design, cutting, has_needle);
        Self { design, units, cutting, scale: scale(&spools, width, units), spools, has_needle }
    }

    fn pour(&self, flow: &mut Flow, footer: &str, first: bool) {
        let scaled = |flow: &mut Flow| flow.scaled(footer.to_owned(), self.scale == Scale::ACTUAL);
        flow.heading(self.title(first, flow.width()));
        if !self.is_single() {
            self.bars(flow, &scaled);
        }
        match list(self.design, self.cutting.article, &self.spools).as_slice() {
            [only] => flow.add(Type::SMALL.paragraph(&english::only_cut(only, self.units), flow.width())),
            rows => flow.table(table(rows, self.units).set(flow.width())),
        }
        if !self.is_single() {
            scaled(flow);
        }
    }

    /// Its bars, the last of which stays with the list; each page says their scale.
    fn bars(&self, flow: &mut Flow, scaled: &dyn Fn(&mut Flow)) {
        for (at, spool) in self.spools.iter().enumerate() {
            let bar = self.bar(spool, flow.width());
            if at + 1 < self.spools.len() {
                flow.add(bar);
                scaled(flow);
            } else {
                flow.heading(bar);
            }
        }
    }

    /// The article's name, the scale of its bars, from how much it is cut; the first says how lengths are rounded.
    fn title(&self, first: bool, width: f64) -> Block {
        let (design, cutting) = (self.design, self.cutting);
        let name = Type::STRONG.paragraph(cutting.article.name(design), width);
        let note = PlanNote {
            bars: (!self.is_single()).then_some(self.scale),
            takes_links: lost(design, cutting.article) > Length::ZERO,
            assumes_allowance: assumes_allowance(design, cutting),
            order: self.order(),
            rounds: first,
        };
        let note = english::plan_note(cutting, &note, self.units);
        let note = Type::TINY.paragraph(&note, width);
        Block::stack([name, note, Block::gap(1.0)], 0.0)
    }

    /// In which order bars are cut, where there are some.
    fn order(&self) -> Option<CutOrder> {
        let order = if self.has_needle { CutOrder::FromBothEnds } else { CutOrder::FromLeft };
        (!self.is_single()).then_some(order)
    }

    /// Whether one piece is cut, of which a bar would tell nothing.
    fn is_single(&self) -> bool {
        self.cutting.pieces().count() == 1
    }

    fn bar(&self, spool: &Spool, width: f64) -> Block {
        let named: Vec<_> = spool.pieces.iter().map(|piece| (piece, number(self.design, piece))).collect();
        let is_strand = |(piece, _): &&Numbered<'_>| strand(self.design, piece).is_some();
        let first = if self.has_needle { named.iter().take_while(is_strand).count() } else { named.len() };
        let left = if self.has_needle { NEEDLE } else { HALF_EDGE };
        let (scale, units) = (self.scale.factor(), self.units);
        let mut bar = SpoolBar { scale, width, units, at: left, marks: Vec::new(), below: Vec::new() };
        if self.has_needle {
            bar.needle();
        }
        Block::stack([bar.block(named.split_at(first), spool), Block::gap(BELOW_BAR)], 0.0)
    }
}

/// The plan's spools; pieces that come from none of them lie end to end on a bar of their own. Of cord with its own needle a
/// strand lies at the needle's end.
fn spools(design: &Design, cutting: &Cutting, has_needle: bool) -> Vec<Spool> {
    let loose = cutting.unplaced.clone();
    let length = loose.iter().map(|piece| piece.length).sum();
    let loose = Spool { length, in_stash: false, pieces: loose, left: Length::ZERO };
    let all = cutting.spools.iter().cloned().chain([loose]);
    let mut all: Vec<_> = all.filter(|spool| !spool.pieces.is_empty()).collect();
    // What is tried is cut before the strand, which may come to need more: from the other end of cord with its own needle.
    let comes_last = |piece: &Cut| strand(design, piece).is_some() != has_needle;
    all.iter_mut().for_each(|spool| spool.pieces.sort_by_key(comes_last));
    all
}

/// The largest round scale at which all pieces of every spool have room, actual size at the most.
fn scale(spools: &[Spool], width: f64, units: UnitStyle) -> Scale {
    let cut = |spool: &Spool| spool.pieces.iter().map(|piece| piece.length.value()).sum();
    let said = |spool: &Spool| Type::TINY.width(&left(spool, units)) + BESIDE_LABEL + TOOTH;
    let room = width - NEEDLE - spools.iter().map(said).fold(REST, f64::max);
    let longest = spools.iter().map(cut).fold(room, f64::max);
    Scale::fitting((longest, 0.0), (room, 1.0))
}

/// What is left of a spool.
fn left(spool: &Spool, units: UnitStyle) -> String {
    uncut(slice::from_ref(spool), units)
}

/// A piece with its strand's number, where that has one.
type Numbered<'c> = (&'c Cut, Option<usize>);

/// A bar as it is drawn.
struct SpoolBar {
    scale: f64,
    width: f64,
    units: UnitStyle,
    /// Up to where it is drawn.
    at: f64,
    marks: Vec<Mark>,
    /// The middles of pieces too short for their names, with these.
    below: Vec<(f64, String)>,
}

impl SpoolBar {
    /// A spool's pieces, each with its strand's number: those cut from its first end, what is left, and those cut from its
    /// other end.
    fn block(mut self, (first, last): (&[Numbered<'_>], &[Numbered<'_>]), spool: &Spool) -> Block {
        let beyond = last.iter().map(|(piece, _)| piece.length.value() * self.scale).reduce(|sum, more| sum + more);
        let beyond = beyond.map_or(0.0, |beyond| beyond + TOOTH);
        first.iter().for_each(|piece| self.piece(*piece));
        if spool.left.value() * self.scale > LEAST_REST {
            self.rest(spool, beyond);
        }
        last.iter().for_each(|piece| self.piece(*piece));
        let below = if self.below.is_empty() { 0.0 } else { LEADER + BELOW_LEADER + Type::TINY.line_height() };
        self.name_below();
        Block::new(self.width, HEIGHT + below, self.marks)
    }

    /// The needle before the bar's first end.
    fn needle(&mut self) {
        let level = HEIGHT / 2.0;
        let corners = [(0.0, 0.0), (0.8 * NEEDLE, -NEEDLE_HALF), (NEEDLE, 0.0), (0.8 * NEEDLE, NEEDLE_HALF)];
        let outline = outline::polygon(&corners.map(|(x, y)| Point::new(x, level + y)));
        self.marks.push(Mark::Shape { outline, fill: Some(Fill::Flat(style::INK, 1.0)), stroke: None });
    }

    /// Names below the bar as far as they have room beside one another, each with a line up to its piece.
    fn name_below(&mut self) {
        let mut taken = 0.0;
        for (middle, words) in std::mem::take(&mut self.below) {
            let wide = Type::TINY.width(&words);
            let left = (middle - 0.5 * wide).min(self.width - wide).max(0.0);
            if left >= taken {
                taken = left + wide + BESIDE_LABEL;
                let baseline = HEIGHT + LEADER + BELOW_LEADER + Type::TINY.size * style::CAPITAL;
                self.marks.push(Type::TINY.mark(&words, Point::new(left, baseline), Anchor::Start));
                let leader = outline::line(Point::new(middle, HEIGHT), Point::new(middle, HEIGHT + LEADER));
                self.marks.push(Mark::Shape { outline: leader, fill: None, stroke: Some(style::RULE_LINE) });
            }
        }
    }

    fn piece(&mut self, (piece, number): Numbered<'_>) {
        let (left, right) = (self.at, self.at + piece.length.value() * self.scale);
        self.at = right;
        let fill = Some(Fill::Flat(style::ACCENT.mixed(Rgb::WHITE, PALE), 1.0));
        let [top, bottom] = TOP_AND_BOTTOM;
        let outline = outline::rect(Point::new(left, top), right - left, bottom - top);
        self.marks.push(Mark::Shape { outline, fill, stroke: Some(style::INK_LINE) });
        let number = number.map(|number| number.to_string()).unwrap_or_default();
        let names = [format!("{number} {}", cut_for(piece)).trim_start().to_owned(), number];
        self.told(&names, Type::SMALL_STRONG, cut(piece.length, self.units), [left, right]);
    }

    /// The first of some names that has room between two places, and a length below it; what has none there stands below the
    /// bar.
    fn told(&mut self, names: &[String; 2], face: Type, length: String, room: [f64; 2]) {
        let middle = room[0].midpoint(room[1]);
        let Some(name) = names.iter().find(|name| !name.is_empty() && fits(face, name, room)) else {
            return self.below.push((middle, commas([&names[0], &length])));
        };
        let at = |baseline: f64| Point::new(middle, baseline);
        if fits(Type::TINY, &length, room) {
            self.marks.push(face.mark(name, at(NAME_BASELINE), Anchor::Middle));
            self.marks.push(Type::TINY.mark(&length, at(LENGTH_BASELINE), Anchor::Middle));
        } else {
            self.marks.push(face.mark(name, at(ALONE_BASELINE), Anchor::Middle));
            self.below.push((middle, length));
        }
    }

    /// What is left, broken off where it is longer than the page has room for before so much that comes after it.
    fn rest(&mut self, spool: &Spool, beyond: f64) {
        let (left, whole) = (self.at, self.at + spool.left.value() * self.scale);
        let right = whole.min(self.width - HALF_EDGE - beyond).max(left);
        self.at = right;
        let [top, bottom] = TOP_AND_BOTTOM;
        let mut open = outline::line(Point::new(right, top), Point::new(left, top));
        open.extend(outline::line(Point::new(left, bottom), Point::new(right, bottom)));
        let is_broken = whole > right;
        let end = if is_broken { torn(right) } else { vec![Point::new(right, top), Point::new(right, bottom)] };
        open.extend(outline::polyline(&end));
        self.marks.push(Mark::Shape { outline: open, fill: None, stroke: Some(style::RULE_LINE) });
        let room = [left, if is_broken { right - TOOTH } else { right }];
        self.told(&english::LEFT_OVER.map(str::to_owned), Type::TINY, self::left(spool, self.units), room);
        if is_broken && beyond > 0.0 {
            self.at += TOOTH;
        }
    }
}

/// Whether words have room between two places.
fn fits(face: Type, words: &str, [left, right]: [f64; 2]) -> bool {
    face.width(words) + BESIDE_LABEL <= right - left
}

/// The torn end of a bar that goes on.
fn torn(x: f64) -> Vec<Point> {
    let [top, bottom] = TOP_AND_BOTTOM;
    let tooth =
        |at: u32| Point::new(x - f64::from(at % 2) * TOOTH, top + (bottom - top) * f64::from(at) / f64::from(TEETH));
    (0..=TEETH).map(tooth).collect()
}

/// One row a piece, equal ones told once.
fn list(design: &Design, article: Article, spools: &[Spool]) -> Vec<ListedCut> {
    let row = |(count, piece): (usize, &Cut)| ListedCut {
        number: number(design, piece),
        piece: piece.clone(),
        count,
        parts: made_up_of(design, article, piece),
    };
    spools.iter().flat_map(|spool| runs(&spool.pieces)).map(row).collect()
}

fn table(rows: &[ListedCut], units: UnitStyle) -> Table {
    let [piece, of_cut] = english::CUTTING_TABLE;
    let mut table = Table::new(vec![
        Column::new("", Align::Left),
        Column::wrapping(piece),
        Column::new("", Align::Right),
        Column::new(of_cut, Align::Right),
    ]);
    for row in rows {
        let [number, name] = english::listed_cut(row);
        let parts = row.parts.map(|parts| english::made_up(parts, units)).unwrap_or_default();
        let length = Cell::strong(cut(row.piece.length, units));
        table.push(vec![Cell::strong(number), Cell::text(name), Cell::text(parts), length]);
    }
    table
}

/// The strand that a piece is cut for, with its index.
fn strand<'a>(design: &'a Design, piece: &Cut) -> Option<(Index<Strand>, &'a Strand)> {
    let CutFor::Strand(at, _) = piece.what else { return None };
    Some((at, design.strands.get(at)?))
}

/// Whether what is cut for the ends of a strand is assumed.
fn assumes_allowance(design: &Design, cutting: &Cutting) -> bool {
    let mut strands = cutting.pieces().filter_map(|piece| strand(design, piece));
    strands.any(|(_, strand)| strand.allowance.is_assumed())
}

/// The number that a piece's strand has on every page; none where there is but one strand.
fn number(design: &Design, piece: &Cut) -> Option<usize> {
    let strand = strand(design, piece).filter(|_| design.strands.len() > 1);
    strand.map(|(at, _)| at.ordinal())
}

/// What a piece's length is made up of, where that is more than itself.
fn made_up_of(design: &Design, article: Article, piece: &Cut) -> Option<MadeUp> {
    let strand = strand(design, piece).filter(|(_, strand)| *strand.allowance > Length::ZERO);
    let strand = strand.map(|(_, strand)| of_strand(strand));
    strand.or_else(|| of_tassel(design, piece)).or_else(|| links(design, article, piece))
}

fn of_strand(strand: &Strand) -> MadeUp {
    let in_knots = Some(strand.in_knots()).filter(|knots| *knots > Length::ZERO);
    let at_ends = strand.knots() > 0 && strand.end_take_up() > Length::ZERO;
    MadeUp::Strand {
        legs: strand.legs,
        finished: strand.finished,
        // However little it is, the sum counts it.
        round: strand.told_slack().map(|slack| slack * f64::from(strand.legs)),
        knots: in_knots.map(|knots| (strand.take_up.map(|_| knots), at_ends)),
        allowance: strand.allowance,
    }
}

/// A tassel that is wound of a cord.
fn of_tassel(design: &Design, piece: &Cut) -> Option<MadeUp> {
    let CutFor::Tassel(at, _) = piece.what else { return None };
    let tassel = design.findings.get(at)?.tassel()?;
    let (piled, binding) = (usual::PILED - 1.0, usual::BINDING);
    Some(MadeUp::Tassel { turns: tassel.turns()?, card: tassel.length, piled, binding })
}

/// The links of a piece of chain.
fn links(design: &Design, article: Article, piece: &Cut) -> Option<MadeUp> {
    let Article::Finding(index) = article else { return None };
    let chain = design.findings[index].chain()?;
    Some(MadeUp::Links { count: chain.links(piece.length)?, link: chain.link, pitch: chain.pitch() })
}
