//! Tiling: which page shows which part of which lanes, and how pages join.
//!
//! Pages of a row overlap by twice `beyond`, which is as long as the longest thing that a cut can go
//! through; the cut runs through the middle of the overlap, at the same station on both pages.

use crate::Piece;
use crate::art::Stencils;
use crate::geometry::Point;
use crate::sheet::layout::Rect;
use crate::sheet::layout::text::Type;
use crate::sheet::mark::{Anchor, Mark, Stroke};
use crate::sheet::{outline, style};

use super::lane::Lane;

/// Least and most room beyond the cut on either side.
const BEYOND: (f64, f64) = (6.0, 30.0);
/// Room above and below the lanes for the words at the cuts.
const WORDS: f64 = 5.0;
/// Room between lanes.
const LANE_GAP: f64 = 4.0;
/// Half the size of a corner mark.
const CORNER: f64 = 2.0;

/// The part of the lanes that a page shows, in stations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Where the page's own part begins: after the cut.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Where what the page has room for begins.
    pub first: f64,
    /// Where that ends.
    pub last: f64,
}

/// A page of strands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tile {
    /// Which of the rows of pages.
    pub row: usize,
    /// Which of the row's pages.
    pub column: usize,
}

/// How lanes are tiled over pages.
pub struct Tiling {
    room: Rect,
    beyond: f64,
    /// The lanes of each row of pages.
    rows: Vec<std::ops::Range<usize>>,
    tiles: Vec<Tile>,
}

impl Tiling {
    /// Tiles lanes over pages with a room for them.
    pub fn new(lanes: &[Lane<'_>], room: Rect) -> Self {
        let cut = lanes.iter().filter(|lane| lane.length > room.width - 2.0 * BEYOND.0);
        let longest = cut.map(|lane| lane.longest).fold(0.0, f64::max);
        let beyond = longest.clamp(BEYOND.0, BEYOND.1.min(room.width / 5.0));
        let rows = rows(lanes, room.height - 2.0 * WORDS);
        let step = room.width - 2.0 * beyond;
        let columns = |lanes: &[Lane<'_>]| {
            let length = lanes.iter().map(|lane| lane.length).fold(0.0, f64::max);
            ((length - beyond) / step).ceil().max(1.0) as usize
        };
        let tiles = rows
            .iter()
            .enumerate()
            .flat_map(|(row, range)| (0..columns(&lanes[range.clone()])).map(move |column| Tile { row, column }));
        let tiles = tiles.collect();
        Self { room, beyond, rows, tiles }
    }

    /// The pages in order.
    pub fn pages(&self) -> impl ExactSizeIterator<Item = Tile> + '_ {
        self.tiles.iter().copied()
    }

    fn step(&self) -> f64 {
        self.room.width - 2.0 * self.beyond
    }

    fn window(&self, tile: Tile) -> Window {
        let from = self.step() * tile.column as f64;
        let (first, last) = (from - self.beyond, from + self.step() + self.beyond);
        let goes_on = self.number(tile.row, tile.column + 1).is_some();
        Window { from, to: if goes_on { last - self.beyond } else { last }, first, last }
    }

    /// A page's marks.
    pub fn draw(&self, tile: Tile, lanes: &[Lane<'_>], piece: &Piece, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let window = self.window(tile);
        let mut top = self.room.top + WORDS;
        let mut marks = Vec::new();
        for lane in &lanes[self.rows[tile.row].clone()] {
            if lane.is_in(window) {
                let block = lane.draw(window, self.room.width, piece, stencils);
                marks.extend(block.at(Point::new(self.room.left, top)));
            }
            top += lane.height() + LANE_GAP;
        }
        let mut joins = self.joins(tile, top - LANE_GAP);
        joins.extend(marks);
        joins
    }

    /// Number of a page, from 1, if there is one.
    fn number(&self, row: usize, column: usize) -> Option<usize> {
        self.tiles.iter().position(|tile| *tile == Tile { row, column }).map(|at| at + 1)
    }

    /// The lines at which a page joins its neighbours.
    fn joins(&self, tile: Tile, bottom: f64) -> Vec<Mark> {
        let before = tile.column.checked_sub(1).and_then(|column| self.number(tile.row, column));
        let after = self.number(tile.row, tile.column + 1);
        let (left, right) = (self.room.left + self.beyond, self.room.right() - self.beyond);
        let mut marks = Vec::new();
        if let Some(page) = before {
            marks.extend(join(left, self.room.top, bottom));
            let words = format!("page {page} ends here");
            marks.push(Type::TINY.mark(&words, Point::new(left + 1.0, self.room.top + style::TINY), Anchor::Start));
        }
        if let Some(page) = after {
            marks.extend(join(right, self.room.top, bottom));
            let words = format!("cut here; lay on the left line of page {page}");
            marks.push(Type::TINY.mark(&words, Point::new(right - 1.0, self.room.top + style::TINY), Anchor::End));
        }
        marks
    }
}

/// The lanes in rows that a height has room for.
fn rows(lanes: &[Lane<'_>], height: f64) -> Vec<std::ops::Range<usize>> {
    let (mut rows, mut from, mut taken) = (Vec::new(), 0, 0.0);
    for (at, lane) in lanes.iter().enumerate() {
        if at > from && taken + lane.height() > height {
            rows.push(from..at);
            (from, taken) = (at, 0.0);
        }
        taken += lane.height() + LANE_GAP;
    }
    if from < lanes.len() {
        rows.push(from..lanes.len());
    }
    rows
}

/// A dashed line to cut along, with a corner mark at each end.
fn join(x: f64, top: f64, bottom: f64) -> Vec<Mark> {
    let line = outline::line(Point::new(x, top), Point::new(x, bottom));
    let dashes = Stroke { dashes: vec![2.0, 1.0], ..Stroke::new(style::QUIET, 0.15) };
    let corner = |y: f64| {
        let at = |dx: f64, dy: f64| Point::new(x + dx, y + dy);
        [outline::line(at(-CORNER, 0.0), at(CORNER, 0.0)), outline::line(at(0.0, -CORNER), at(0.0, CORNER))].concat()
    };
    let corners = [corner(top), corner(bottom)].concat();
    vec![
        Mark::Shape { outline: line, fill: None, stroke: Some(dashes) },
        Mark::Shape { outline: corners, fill: None, stroke: Some(Stroke::new(style::INK, 0.2)) },
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::art::Ink;
    use crate::design::{Choice, What};
    use crate::sheet::page;
    use crate::source::Source;
    use crate::trade::paper::Paper;

    /// Saltmarsh: three strands with beads of 3 to 6 mm, on which every paper has at least one cut.
    fn piece() -> Piece {
        let text = include_str!("../../../patterns/saltmarsh.yaml");
        crate::piece(&Source::new("saltmarsh.yaml", text), &Choice::default(), None).0.unwrap()
    }

    #[test]
    fn what_a_cut_goes_through_is_whole_on_both_pages() {
        let piece = piece();
        let lanes = super::super::lane::lanes(&piece, &mut Stencils::new(&piece.design, Ink::Colour));
        for paper in Paper::ALL {
            let tiling = Tiling::new(&lanes, page::room(*paper).below(60.0));
            let columns: Vec<_> = tiling.pages().filter(|tile| tile.row == 0).collect();
            assert!(columns.len() > 1);
            for pair in columns.windows(2) {
                let (one, next) = (tiling.window(pair[0]), tiling.window(pair[1]));
                assert_eq!(one.to, next.from);
                let widest = piece.design.beads.iter().map(|bead| bead.along.value()).fold(0.0, f64::max);
                assert!(one.last - one.to >= widest && next.from - next.first >= widest);
            }
        }
    }

    #[test]
    fn windows_show_every_seat_whole_and_end_behind_the_longest_strand() {
        let piece = piece();
        let lanes = super::super::lane::lanes(&piece, &mut Stencils::new(&piece.design, Ink::Colour));
        let tiling = Tiling::new(&lanes, page::room(Paper::Letter).below(60.0));
        let windows: Vec<_> = tiling.pages().filter(|tile| tile.row == 0).map(|tile| tiling.window(tile)).collect();
        for (strand, hung) in piece.design.strands.iter().zip(&piece.drape.strands) {
            assert!(windows.iter().any(|window| window.to >= strand.finished.value()));
            for seat in &hung.seats {
                let bit = &strand.trains[seat.train].bits[seat.bit];
                assert_ne!(bit.what, What::Gap);
                let (start, end) = (seat.station - bit.before, seat.station + bit.after);
                assert!(windows.iter().any(|window| start >= window.first && end <= window.last), "{start} to {end}");
            }
        }
    }
}
