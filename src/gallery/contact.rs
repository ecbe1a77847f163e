//! The contact sheet: every pattern as a small figure with its title, to print.

use std::sync::Arc;

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Anchor, Mark, Page, Symbol};
use crate::paint::style;
use crate::picture;
use crate::piece::Piece;
use crate::sheet::{english, finished};
use crate::trade::paper::Paper;

use super::Exhibit;

/// Figures across and down a page.
const GRID: (usize, usize) = (3, 4);
/// Figures on a page.
pub const FIGURES: usize = GRID.0 * GRID.1;
/// Room in mm between figures.
const GAP: f64 = 6.0;
/// Room in mm between a figure and its words.
const ABOVE_WORDS: f64 = 1.5;

/// One page of the contact sheet, of at most [`FIGURES`] pieces with their entries.
#[must_use]
pub fn contact(title: &str, pieces: &[(Piece, &Exhibit)], number: usize, count: usize, paper: Paper) -> Page {
    let (width, height) = paper.size();
    let room = Rect::new(style::MARGIN, style::MARGIN, width - 2.0 * style::MARGIN, height - 2.0 * style::MARGIN);
    let mut page = Page {
        width,
        height,
        title: english::numbered(title, number, count),
        description: pieces.iter().map(|(piece, _)| picture::alternative(piece)).collect::<Vec<_>>().join(" "),
        symbols: Arc::default(),
        marks: head(title, number, count, room),
    };
    let grid = room.below(Type::HEADING.line_height() + GAP);
    let mut symbols = Vec::new();
    for (at, (piece, entry)) in pieces.iter().enumerate() {
        page.marks.push(figure(piece, entry, at, cell(grid, at), &mut symbols));
    }
    page.symbols = symbols.into();
    page
}

/// The cell of a figure.
fn cell(grid: Rect, at: usize) -> Rect {
    let (width, height) = ((grid.width + GAP) / GRID.0 as f64 - GAP, (grid.height + GAP) / GRID.1 as f64 - GAP);
    let left = grid.left + (at % GRID.0) as f64 * (width + GAP);
    let top = grid.top + (at / GRID.0) as f64 * (height + GAP);
    Rect::new(left, top, width, height)
}

fn head(title: &str, number: usize, count: usize, room: Rect) -> Vec<Mark> {
    let baseline = room.top + Type::HEADING.size;
    vec![
        Type::HEADING.mark(title, Point::new(room.left, baseline), Anchor::Start),
        Type::TINY.mark(&english::page(number, count), Point::new(room.right(), baseline), Anchor::End),
    ]
}

/// A piece as large as its cell allows, above its title, length and price.
fn figure(piece: &Piece, entry: &Exhibit, at: usize, cell: Rect, symbols: &mut Vec<Symbol>) -> Mark {
    let facts =
        entry.price.iter().fold(finished(piece, piece.telling.units), |facts, price| format!("{facts} · {price}"));
    let words =
        Block::stack([Type::STRONG.fitted(&entry.title, cell.width), Type::TINY.fitted(&facts, cell.width)], 0.0);
    let room = cell.above(words.height + ABOVE_WORDS);
    let (mut marks, drawn) = picture::figure(piece, room, at);
    symbols.extend(drawn);
    marks.extend(words.at(Point::new(cell.left, room.bottom() + ABOVE_WORDS)));
    Mark::figure(entry.title.clone(), marks)
}
