//! The list of what one piece takes: short on the face, whole with what to buy on the buying page.

use crate::Piece;
use crate::materials::render::words::{amount, is_nothing, lots, said};
use crate::materials::{Article, Buy, Line, Materials};

use super::spec;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::{Block, column};

/// Room between the two columns of the short list.
const COLUMN_GAP: f64 = 10.0;

/// What one piece takes, in two columns: letter, name, amount.
pub fn short(piece: &Piece, materials: &Materials, width: f64) -> Block {
    let half = materials.lines.len().div_ceil(2);
    let columns = materials.lines.chunks(half.max(1)).map(|lines| {
        let columns = vec![Column::new("", Align::Left), Column::wrapping(""), Column::new("", Align::Right)];
        let mut table = Table::new(columns);
        for line in lines {
            table.push(vec![letter(piece, line), Cell::text(&line.name), need(piece, line)]);
        }
        table.set(column(width, 2, COLUMN_GAP)).block()
    });
    Block::row(columns, COLUMN_GAP)
}

/// One row an article: letter, name and what to ask for, need, spare, what to buy, what is left,
/// and with prices what it costs.
pub fn table(piece: &Piece, materials: &Materials, prices: bool) -> Table {
    let right = |heading: &&str| Column::new(heading, Align::Right);
    let mut columns = vec![Column::new("", Align::Left), Column::wrapping("material")];
    columns.extend(["you need", "spare", "buy", "left over"].iter().map(right));
    columns.extend(["cost"].iter().filter(|_| prices).map(right));
    let mut table = Table::new(columns);
    for line in &materials.lines {
        table.push(row(piece, line, prices));
    }
    table
}

fn row(piece: &Piece, line: &Line, prices: bool) -> Vec<Cell> {
    let units = piece.design.heading.units;
    let spare = if is_nothing(line.spare) { String::new() } else { amount(line.spare, units) };
    let bought = |say: &dyn Fn(&Buy) -> String| Cell::text(line.buy.as_ref().map(say).unwrap_or_default());
    let mut cells = vec![
        letter(piece, line),
        Cell::Double(line.name.clone(), spec::of_all(&piece.design, line.article)),
        need(piece, line),
        Cell::text(spare),
        bought(&|buy| lots(line, buy, units)),
        bought(&|buy| amount(buy.left_over, units)),
    ];
    if prices {
        cells.push(bought(&|buy| said(buy.bought)));
    }
    cells
}

fn letter(piece: &Piece, line: &Line) -> Cell {
    match line.article {
        Article::Bead(index) => Cell::strong(&piece.design.beads[index].letter),
        Article::Cord(_) | Article::Finding(_) => Cell::strong(""),
    }
}

fn need(piece: &Piece, line: &Line) -> Cell {
    Cell::strong(amount(line.need, piece.design.heading.units))
}
