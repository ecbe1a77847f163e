//! Labels of hanging strands: numbered discs at their lowest points, and a list of names, finished
//! lengths and drops in the hollow of the drape.
//!
//! Where the hollow is too small for the list, it stands beside the drape; where the strands are too close for discs,
//! the list goes by their order, innermost first.

use crate::design::{Entries, Index, Strand, Twist, What};
use crate::drape::{Hung, Seat};
use crate::geometry::{Extent, Point};
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Anchor, Fill, Mark, Rgb, Weight};
use crate::paint::{metrics, outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::HangsDown;
use crate::units::Length;

use super::{Frame, lowest_point};

/// Radius in mm of a numbered disc.
pub const DISC: f64 = style::TINY * 0.66;
/// Height in mm that a disc takes between two strands.
pub const DISC_ROOM: f64 = 2.0 * DISC + 0.6;
/// Room in mm between a list and the strands round it.
const AROUND_LIST: f64 = 2.4;
/// Room in mm between a figure and the list beside it.
const BESIDE_FIGURE: f64 = 4.0;
/// Room in mm between a label and its number, and between two labels.
const BESIDE_NUMBER: f64 = 1.2;
const LABELS_APART: f64 = 1.6;
/// Room in mm above the lengths of strands that are twisted.
const ABOVE_PARTS: f64 = 1.2;
/// How far below a label's upper edge its disc begins, in mm.
const DISC_TOP: f64 = 0.5;
/// From a disc's middle down to the baseline of its number, as a share of the size of type.
const DISC_BASELINE: f64 = 0.34;
/// Between which shares of the span the hollow of a drape lies.
const HOLLOW: [f64; 2] = [0.22, 0.78];
/// Longest name in mm that is printed in full.
const NAME: f64 = 40.0;

/// A numbered disc: strands carry the same number on every figure.
pub fn disc(number: usize, at: Point) -> Vec<Mark> {
    let disc = Mark::Shape {
        outline: outline::circle(at, DISC),
        fill: Some(Fill::Flat(Rgb::WHITE, 1.0)),
        stroke: Some(style::INK_LINE),
    };
    let face = Type { weight: Weight::Semibold, ..Type::TINY.coloured(style::INK) };
    vec![disc, face.mark(&number.to_string(), at + Point::new(0.0, style::TINY * DISC_BASELINE), Anchor::Middle)]
}

/// Whether a piece's strands carry numbers: a single one needs none, and twisted ones hang as one.
pub fn is_numbered(piece: &Piece) -> bool {
    piece.design.strands.len() > 1 && piece.design.twist.is_none()
}

/// How far down in mm its strands hang, in the drape's frame: of twisted ones once, for all.
pub fn levels(piece: &Piece) -> Entries<f64, Strand> {
    let level = |hung: &Hung| hung.ends[0].y.max(hung.ends[1].y) - hung.drop;
    let told = if piece.design.twist.is_some() { 1 } else { piece.drape.strands.len() };
    piece.drape.strands.iter().take(told).map(level).collect()
}

/// Where a piece's labels go.
pub enum LabelRoom {
    /// In the hollow of the drape.
    Inside,
    /// Beside it, in a column of this width.
    Beside(f64),
    /// Nowhere: they are too many, and the strands are listed on a page of their own.
    Listed,
}

/// Finds room for the labels of a drape at a scale, beside it in a column of a height.
pub fn room_for_labels(piece: &Piece, scale: f64, height: f64) -> LabelRoom {
    let list = list(piece);
    let fits = hollow(piece).is_some_and(|hollow| {
        let [width, height] = [list.width, list.height].map(|size| size + 2.0 * AROUND_LIST);
        width <= hollow.width() * scale && height <= hollow.height() * scale
    });
    match () {
        () if fits => LabelRoom::Inside,
        () if list.height > height => LabelRoom::Listed,
        () => LabelRoom::Beside(list.width + BESIDE_FIGURE),
    }
}

/// A box that no strand of a hanging piece reaches into: the middle half of the span, down to where
/// the innermost strand comes into it.
fn hollow(piece: &Piece) -> Option<Extent> {
    let inner = piece.drape.strands.iter().min_by(|a, b| a.drop.total_cmp(&b.drop))?;
    let [first, last] = inner.ends;
    let [from, to] = HOLLOW.map(|share| first.between(last, share).x);
    let inside = |point: &&Point| (from..=to).contains(&point.x);
    let joints: Vec<_> = inner.joints.iter().map(|joint| joint.at).collect();
    let floor = joints.iter().filter(inside).map(|point| point.y).fold(f64::NEG_INFINITY, f64::max);
    let widest = piece.design.beads.iter().map(|bead| bead.across.value()).fold(0.0, f64::max);
    let low = Point::new(from, floor + widest);
    (floor.is_finite() && low.y < 0.0).then_some(Extent { low, high: Point::new(to, 0.0) })
}

/// The lowest point of a strand's cord.
pub fn lowest(hung: &Hung) -> Point {
    lowest_point(hung.joints.iter().map(|joint| joint.at))
}

/// How far in mm a strand's widest bead reaches from its cord.
pub fn thick(piece: &Piece, strand: Index<Strand>) -> f64 {
    let beads = piece.design.strands[strand].bits().filter_map(|bit| bit.what.bead());
    beads.map(|bead| piece.design.beads[bead].across.value() / 2.0).fold(0.0, f64::max)
}

/// Whether a disc has room above each strand's lowest point, below the strand inside it.
pub fn discs_fit(piece: &Piece, scale: f64) -> bool {
    let levels = levels(piece);
    let room = |upper: Index<Strand>, lower: Index<Strand>| {
        (levels[upper] - levels[lower] - thick(piece, upper) - thick(piece, lower)) * scale
    };
    let mut order: Vec<_> = levels.indices().collect();
    order.sort_by(|a, b| levels[*b].total_cmp(&levels[*a]));
    order.windows(2).all(|pair| room(pair[0], pair[1]) >= DISC_ROOM)
}

/// The labels of a piece whose figure fills a box, within a room on the page; and how far down in mm they reach beside it.
pub fn labels(piece: &Piece, frame: &Frame, whole: Extent, room: Rect) -> (Vec<Mark>, f64) {
    let list = list(piece);
    let half = Point::new(list.width / 2.0, list.height / 2.0);
    let middle = |box_: Extent| frame.page(box_.low.between(box_.high, 0.5));
    let corner = match (room_for_labels(piece, frame.scale, room.height), hollow(piece)) {
        (LabelRoom::Listed, _) => return (Vec::new(), room.top),
        (LabelRoom::Inside, Some(hollow)) => middle(hollow) - half,
        _ => Point::new(frame.page(whole.high).x + BESIDE_FIGURE, (middle(whole) - half).y.max(room.top)),
    };
    let foot = corner.y + list.height;
    (list.at(corner).into_iter().chain(discs(piece, frame)).collect(), foot)
}

/// The strands' numbers above their lowest points, where they have room there.
fn discs(piece: &Piece, frame: &Frame) -> Vec<Mark> {
    if !is_numbered(piece) || !discs_fit(piece, frame.scale) {
        return Vec::new();
    }
    let at = |(index, hung): (Index<Strand>, &Hung)| {
        let above = thick(piece, index) * frame.scale + DISC_ROOM / 2.0;
        disc(index.ordinal(), frame.page(lowest(hung)) - Point::new(0.0, above))
    };
    piece.drape.strands.entries().flat_map(at).collect()
}

/// All labels below one another, each behind its number.
fn list(piece: &Piece) -> Block {
    let numbered = |(index, text): (usize, Block)| {
        let number = Block::new(2.0 * DISC, 2.0 * DISC, disc(index + 1, Point::new(DISC, DISC + DISC_TOP)));
        if is_numbered(piece) { Block::row([number, text], BESIDE_NUMBER) } else { text }
    };
    Block::stack(texts(piece).into_iter().enumerate().map(numbered), LABELS_APART)
}

/// How far below a strand's higher end its lowest branch reaches.
fn lowest_branch(strand: &Strand, hung: &Hung) -> Option<f64> {
    let top = hung.ends[0].y.max(hung.ends[1].y);
    let reach = |seat: &Seat| match &seat.bit(strand).what {
        What::Dangle(dangle) => Some(top - seat.centre.y + dangle.drop),
        _ => None,
    };
    hung.seats.iter().filter_map(reach).reduce(f64::max)
}

/// Name, finished length and drop of every strand, and how far branches reach.
fn texts(piece: &Piece) -> Vec<Block> {
    let units = piece.telling.units;
    let text = |(strand, hung): (&Strand, &Hung)| {
        let name = metrics::fit(&strand.name, style::SMALL, Weight::Semibold, NAME);
        let ink = Type::TINY.coloured(style::INK);
        let drop = english::hangs(HangsDown::Strand(Length::mm(hung.drop)), units);
        let lower = lowest_branch(strand, hung).filter(|lower| *lower > hung.drop).map(Length::mm);
        let with = if piece.design.meeting().is_some() { HangsDown::Meeting } else { HangsDown::Dangles };
        let lower = lower.map(|lower| english::hangs(with(lower), units));
        let lines = [Type::SMALL_STRONG.line(&name), ink.line(&units.ruler(strand.finished)), Type::TINY.line(&drop)];
        Block::stack(lines.into_iter().chain(lower.map(|words| Type::TINY.line(&words))), 0.0)
    };
    match &piece.design.twist {
        Some(twist) => vec![twisted(piece, twist)],
        None => piece.design.strands.iter().zip(&piece.drape.strands).map(text).collect(),
    }
}

/// Twisted strands: how often and how long, how far all hang, and each as it is before.
fn twisted(piece: &Piece, twist: &Twist) -> Block {
    let (units, ink) = (piece.telling.units, Type::TINY.coloured(style::INK));
    let drop = piece.drape.strands.iter().map(|hung| hung.drop).fold(0.0, f64::max);
    let head = [
        Type::SMALL_STRONG.line(&english::twisted(twist.turns)),
        ink.line(&units.ruler(twist.length())),
        Type::TINY.line(&english::hangs(HangsDown::Strand(Length::mm(drop)), units)),
        Block::gap(ABOVE_PARTS),
        Type::TINY.line(english::BEFORE_TWISTING),
    ];
    let strand = |strand: &Strand| {
        let name = metrics::fit(&strand.name, style::TINY, Weight::Regular, NAME);
        ink.line(&format!("{name} {}", units.ruler(strand.finished)))
    };
    Block::stack(head.into_iter().chain(piece.design.strands.iter().map(strand)), 0.0)
}

/// Every strand with its number, name, finished length and drop, for a page of its own.
pub fn strand_table(piece: &Piece) -> Table {
    let units = piece.telling.units;
    let [of_strand, finished, hangs] = english::STRANDS_TABLE;
    let mut table = Table::new(vec![
        Column::new("", Align::Left),
        Column::wrapping(of_strand),
        Column::new(finished, Align::Right),
        Column::new(hangs, Align::Right),
    ]);
    for ((index, strand), hung) in piece.design.strands.entries().zip(&piece.drape.strands) {
        table.push(vec![
            Cell::strong(index.ordinal().to_string()),
            Cell::text(&strand.name),
            Cell::strong(units.ruler(strand.finished)),
            Cell::text(units.ruler(Length::mm(hung.drop))),
        ]);
    }
    table
}
