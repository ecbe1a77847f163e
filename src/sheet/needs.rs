//! The list of what one piece takes, with what to buy.

use crate::Piece;
use crate::art::Stencils;
use crate::materials::{Amount, Article, Buy, Line, Materials};
use crate::units::{Length, UnitStyle};

use super::layout::table::{Align, Cell, Column, Table};

/// Longest length that is printed for a ruler; longer ones are printed in feet and metres.
const RULER: Length = Length::mm(2000.0);

/// One row an article: letter, name, need, spare, what to buy, what is left.
pub fn table(piece: &Piece, materials: &Materials, _stencils: &mut Stencils<'_>) -> Table {
    let units = piece.design.heading.units;
    let mut table = Table::new(vec![
        Column::new("", Align::Left),
        Column::wrapping("material"),
        Column::new("you need", Align::Right),
        Column::new("spare", Align::Right),
        Column::new("buy", Align::Right),
        Column::new("left over", Align::Right),
    ]);
    for line in &materials.lines {
        table.push(row(piece, line, units));
    }
    table
}

fn row(piece: &Piece, line: &Line, units: UnitStyle) -> Vec<Cell> {
    let letter = match line.article {
        Article::Bead(index) => piece.design.beads[index].letter.clone(),
        Article::Cord(_) | Article::Finding(_) => String::new(),
    };
    let spare = if line.spare == Amount::Count(0) { String::new() } else { amount(line.spare, units) };
    let left = line.buy.as_ref().map_or_else(String::new, |buy| amount(buy.left_over, units));
    vec![
        Cell::strong(letter),
        Cell::text(&line.name),
        Cell::strong(amount(line.need, units)),
        Cell::text(spare),
        Cell::text(line.buy.as_ref().map_or_else(String::new, |buy| lots(buy, units))),
        Cell::text(left),
    ]
}

/// `2 packs of 96`, `1 spool of 30.2 ft (9.2 m)`, `3 pieces`.
pub fn lots(buy: &Buy, units: UnitStyle) -> String {
    let plural = if buy.lots == 1 { "" } else { "s" };
    let size = if buy.lot == Amount::Count(1) { String::new() } else { format!(" of {}", amount(buy.lot, units)) };
    format!("{} {}{plural}{size}", buy.lots, buy.unit)
}

/// A count, or a length as a buyer reads it.
pub fn amount(amount: Amount, units: UnitStyle) -> String {
    match amount {
        Amount::Count(count) => count.to_string(),
        Amount::Length(length) if length < RULER => units.ruler(length),
        Amount::Length(length) => {
            let (feet, metres) =
                (format!("{:.1} ft", length.value() / 304.8), format!("{:.2} m", length.value() / 1000.0));
            match units {
                UnitStyle::In => feet,
                UnitStyle::Mm => metres,
                UnitStyle::Both => format!("{feet} ({metres})"),
            }
        }
    }
}
