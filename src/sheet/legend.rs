//! The legend: every bead with its letter, drawn at actual size. Lengths in mm on paper.

use crate::art::{Ink, Stencils};
use crate::design::{Bead, Finding, Index};
use crate::geometry::{Extent, Point};
use crate::palette::Colourway;
use crate::piece::Piece;

use super::english::{self, spec};
use crate::paint::layout::Block;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Fill, Mark, Rgb, Role};
use crate::paint::{outline, style};
use crate::pattern::FindingKind;
use crate::trade::sight::contrast;

/// Longest piece of chain in mm that is drawn among findings.
const CHAIN: f64 = 40.0;
/// Width of the room of a charm among words.
const CHARM: f64 = 9.0;
/// Width of a small disc.
const DOT: f64 = 2.0;
/// Width of a swatch of colour.
const SWATCH: f64 = 6.0;
/// Room between two swatches.
const SWATCHES_APART: f64 = 1.4;
/// Room between two colourways.
const ROWS_APART: f64 = 1.6;

/// One row a bead: letter, drawing, name and size, count.
pub fn table(piece: &Piece, stencils: &Stencils<'_>) -> Table {
    let design = &piece.design;
    let mut table = Table::new(vec![
        Column::new("", Align::Left),
        Column::new("", Align::Middle),
        Column::wrapping(""),
        Column::new("", Align::Right),
    ]);
    for ((index, bead), count) in design.beads.entries().zip(design.counts()) {
        table.push(vec![
            Cell::strong(&bead.letter),
            Cell::Drawing(drawing(index, bead, 1.0, stencils)),
            Cell::Double(bead.name.clone(), spec::bead(bead)),
            Cell::strong(format!("{} ×", u64::from(count) * u64::from(design.copies))),
        ]);
    }
    table
}

/// The colourways, each with its name and what it calls beads, and in colour with a swatch of every bead's colour with its
/// letter; nothing where there is but one.
pub fn colourways(piece: &Piece, width: f64, ink: Ink) -> Option<Block> {
    let letters = || piece.design.beads.iter().map(|bead| bead.letter.as_str()).filter(|_| ink == Ink::Colour);
    let row = |way: &Colourway| {
        let swatches = way.colours.iter().zip(letters()).map(|(colour, letter)| swatch(*colour, letter));
        let face = if way.chosen { Type::SMALL_STRONG } else { Type::SMALL };
        let words = face.fitted(&english::colourway(way), width);
        let names = english::names(way);
        let rows = Block::rows(swatches.chain([words]), SWATCHES_APART, width).into_iter();
        let named = (!names.is_empty()).then(|| Type::TINY.paragraph(&names, width));
        Block::stack(rows.chain(named), SWATCHES_APART).in_role(Role::Paragraph)
    };
    (!piece.colourways.is_empty()).then(|| Block::stack(piece.colourways.iter().map(row), ROWS_APART))
}

/// A disc of a colour with a bead's letter, and an edge so that a pale one is seen on paper.
fn swatch(colour: Rgb, letter: &str) -> Block {
    let (radius, edge) = (SWATCH / 2.0, style::INK_HAIRLINE);
    let centre = Point::new(radius, radius);
    let outline = outline::circle(centre, radius - edge.width / 2.0);
    let disc = Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: Some(edge) };
    let face = Type::TINY.bold().coloured(readable_on(colour));
    let letter = face.mark(letter, centre + Point::new(0.0, face.size * style::HALF_CAPITAL), Anchor::Middle);
    Block::new(SWATCH, SWATCH, vec![disc, letter])
}

/// A small disc of a colour, with an edge so that a pale one is seen on paper.
pub fn dot(colour: Rgb) -> Block {
    let (radius, edge) = (DOT / 2.0, style::INK_HAIRLINE);
    let outline = outline::circle(Point::new(radius, radius), radius - edge.width / 2.0);
    Block::new(DOT, DOT, vec![Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: Some(edge) }])
}

/// White or ink, whichever is told better from a colour.
fn readable_on(colour: Rgb) -> Rgb {
    if contrast(Rgb::WHITE, colour) > contrast(style::INK, colour) { Rgb::WHITE } else { style::INK }
}

/// A bead at a scale, its hole level.
pub fn drawing(index: Index<Bead>, bead: &Bead, scale: f64, stencils: &Stencils<'_>) -> Block {
    let size = Point::new(bead.along.value(), bead.across.value()) * scale;
    Block::new(size.x, size.y, vec![stencils.bead(index, size * 0.5, 0.0, scale)])
}

/// The scale at which each of some charms has room among words.
pub fn charm_scale(charms: impl Iterator<Item = Index<Finding>>, stencils: &Stencils<'_>) -> f64 {
    let room = charm_room();
    let fitting = |index| {
        let Extent { low, high } = charm_box(index, stencils);
        (room.x / (high.x - low.x)).min(room.y / (high.y - low.y))
    };
    charms.map(fitting).fold(1.0, f64::min)
}

fn charm_room() -> Point {
    Point::new(CHARM, Type::SMALL.line_height())
}

/// The box round a charm at actual size, its loop at the left.
fn charm_box(index: Index<Finding>, stencils: &Stencils<'_>) -> Extent {
    stencils.bounds(&stencils.finding(index, Point::ORIGIN, 0.0, 1.0)).unwrap_or_default()
}

/// A charm at a scale, its loop at the left, in its room among words.
pub fn charm(index: Index<Finding>, scale: f64, stencils: &Stencils<'_>) -> Block {
    let drawn = |at, scale| stencils.finding(index, at, 0.0, scale);
    let (Extent { low, high }, room) = (charm_box(index, stencils), charm_room());
    let spare = (room - (high - low) * scale) * 0.5;
    Block::new(room.x, room.y, vec![drawn(spare - low * scale, scale)])
}

/// A finding at actual size; of a chain, a piece.
pub fn finding(index: Index<Finding>, kind: FindingKind, stencils: &Stencils<'_>) -> Block {
    let mark = match kind {
        FindingKind::Chain => stencils.chain(index, &[Point::ORIGIN, Point::new(CHAIN, 0.0)], 1.0),
        _ => stencils.finding(index, Point::ORIGIN, 0.0, 1.0),
    };
    let Extent { low, high } = stencils.bounds(&mark).unwrap_or_default();
    let size = high - low;
    Block::new(size.x, size.y, Block::new(size.x, size.y, vec![mark]).at(Point::ORIGIN - low))
}
