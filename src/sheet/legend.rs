//! The legend: every bead with its letter, drawn at actual size.

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Bead, Colourway, Index};
use crate::geometry::Point;

use super::spec;
use crate::paint::layout::Block;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;
use crate::paint::mark::{Fill, Mark, Rgb, Role, Stroke};
use crate::paint::{outline, style};

/// Width of a patch of colour.
const PATCH: f64 = 4.0;
/// Room between two patches.
const PATCHES_APART: f64 = 1.2;
/// Room between patches and their name.
const WORDS_APART: f64 = 2.5;
/// Room between two colourways.
const ROWS_APART: f64 = 1.0;

/// One row a bead: letter, drawing, name and size, count.
pub fn table(piece: &Piece, stencils: &mut Stencils<'_>) -> Table {
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
            Cell::Drawing(drawing(index, bead, stencils)),
            Cell::Double(bead.name.clone(), spec::size(bead)),
            Cell::strong(format!("{} ×", u64::from(count) * u64::from(design.copies))),
        ]);
    }
    table
}

/// The colourways, each with a patch of every bead's colour and its name; nothing where there is but one.
pub fn colourways(piece: &Piece, width: f64) -> Option<Block> {
    let row = |way: &Colourway| {
        let patches = Block::row(way.colours.iter().map(|colour| patch(*colour)), PATCHES_APART);
        let name = way.name.as_deref().unwrap_or("base colours");
        let (face, drawn) = if way.chosen { (Type::SMALL_STRONG, ", this sheet") } else { (Type::SMALL, "") };
        let room = width - patches.width - WORDS_APART;
        let words = face.paragraph(&format!("{name}{drawn}"), room);
        Block::middled([patches, words], WORDS_APART).in_role(Role::Paragraph)
    };
    (!piece.colourways.is_empty()).then(|| Block::stack(piece.colourways.iter().map(row), ROWS_APART))
}

/// A disc of a colour with an edge, so that a pale one is seen on paper.
fn patch(colour: Rgb) -> Block {
    let (radius, edge) = (PATCH / 2.0, Stroke::new(style::INK, 0.15));
    let outline = outline::circle(Point::new(radius, radius), radius - edge.width / 2.0);
    let mark = Mark::Shape { outline, fill: Some(Fill::Flat(colour, 1.0)), stroke: Some(edge) };
    Block::new(PATCH, PATCH, vec![mark])
}

/// A bead at actual size, its hole level.
pub fn drawing(index: Index<Bead>, bead: &Bead, stencils: &mut Stencils<'_>) -> Block {
    let (along, across) = (bead.along.value(), bead.across.value());
    let centre = Point::new(along / 2.0, across / 2.0);
    Block::new(along, across, vec![stencils.bead(index, centre, 0.0, 1.0)])
}
