//! The legend: every bead with its letter, drawn at actual size.

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Bead, Index};
use crate::geometry::Point;

use super::spec;
use crate::paint::layout::Block;
use crate::paint::layout::table::{Align, Cell, Column, Table};

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

/// A bead at actual size, its hole level.
pub fn drawing(index: Index<Bead>, bead: &Bead, stencils: &mut Stencils<'_>) -> Block {
    let (along, across) = (bead.along.value(), bead.across.value());
    let centre = Point::new(along / 2.0, across / 2.0);
    Block::new(along, across, vec![stencils.bead(index, centre, 0.0, 1.0)])
}
