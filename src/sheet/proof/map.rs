//! The map: how the pages of strands lie beside one another.

use crate::geometry::Point;
use crate::paint::layout::Rect;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Fill, Mark, Stroke};
use crate::paint::{outline, style};

use super::tile::Tiling;

/// Width and height of a page on the map.
const CELL: (f64, f64) = (6.0, 4.6);
/// Room between rows of pages, and below the caption.
const GAP: f64 = 1.2;

/// The map of a proof.
pub struct Map {
    /// In which column, and how many rows below the first, each page lies.
    cells: Vec<(usize, usize)>,
}

impl Map {
    /// The map of a tiling.
    pub fn new(tiling: &Tiling) -> Self {
        let (mut cells, mut line, mut last) = (Vec::new(), 0, None);
        for tile in tiling.pages() {
            let here = (tile.row, tile.tier);
            line += usize::from(last.is_some_and(|last| last != here));
            last = Some(here);
            cells.push((tile.column, line));
        }
        Self { cells }
    }

    /// The map with the page of an index filled. Nothing where no pages join, or where the room has
    /// no place for all.
    pub fn draw(&self, room: Rect, page: usize) -> Vec<Mark> {
        let widest = self.cells.iter().map(|(column, _)| column + 1).max().unwrap_or(0);
        let lines = self.cells.last().map_or(0, |(_, line)| line + 1);
        let caption = Type::TINY.line_height() + GAP;
        let size = (widest as f64 * CELL.0, caption + lines as f64 * (CELL.1 + GAP));
        if self.cells.len() < 2 || size.0 > room.width || size.1 > room.height {
            return Vec::new();
        }
        let mut marks = Type::TINY.line("how the pages join").at(room.corner());
        for (number, (column, line)) in self.cells.iter().enumerate() {
            let at = Point::new(*column as f64 * CELL.0, caption + *line as f64 * (CELL.1 + GAP));
            marks.extend(cell(room.corner() + at, number, number == page));
        }
        vec![Mark::figure("how the pages join", marks)]
    }
}

fn cell(corner: Point, index: usize, here: bool) -> [Mark; 2] {
    let fill = here.then_some(Fill::Flat(style::INK, 1.0));
    let colour = if here { crate::paint::mark::Rgb::WHITE } else { style::INK };
    let stroke = Some(Stroke::new(style::INK, 0.15));
    let baseline = corner + Point::new(CELL.0 / 2.0, CELL.1 / 2.0 + style::TINY * 0.34);
    [
        Mark::Shape { outline: outline::rect(corner, CELL.0, CELL.1), fill, stroke },
        Type::TINY.coloured(colour).mark(&(index + 1).to_string(), baseline, Anchor::Middle),
    ]
}
