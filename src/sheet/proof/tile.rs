//! Tiling: which page shows which part of which lanes, and how pages join.
//!
//! Pages of a row overlap by twice `beyond`, which is as long as the longest thing that a cut can go
//! through; the cut runs through the middle of the overlap, at the same station on both pages. A lane
//! that is taller than a page has a row of pages to itself, which goes on below in tiers that overlap
//! in the same way. Pages on which nothing would lie are left out, and what is larger than an overlap
//! ends at the edge of the page's room.

use std::ops::Range;

use crate::Piece;
use crate::art::Stencils;
use crate::geometry::Point;
use crate::paint::layout::Rect;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Stroke};
use crate::paint::{outline, style};

use super::lane::Lane;
use super::part::part;

/// Least and most room beyond the cut on either side.
const BEYOND: (f64, f64) = (6.0, 30.0);
/// Room above and below the lanes for the words at the cuts.
const WORDS: f64 = 5.0;
/// Room between lanes.
const LANE_GAP: f64 = 4.0;
/// Half the size of a corner mark.
const CORNER: f64 = 2.0;
/// Room between a line to cut along and its words.
const ASIDE: f64 = 1.0;

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
    /// Which of the row's tiers; a row has several only where its lane is taller than a page.
    pub tier: usize,
    /// Which of the tier's pages.
    pub column: usize,
}

/// How lanes are tiled over pages.
pub struct Tiling {
    room: Rect,
    beyond: f64,
    /// Room beyond the cut between two tiers.
    below: f64,
    /// The lanes of each row of pages.
    rows: Vec<Range<usize>>,
    tiles: Vec<Tile>,
}

impl Tiling {
    /// Tiles a piece's lanes over pages with a room for them.
    pub fn new(lanes: &[Lane<'_>], room: Rect, piece: &Piece) -> Self {
        let cut = lanes.iter().filter(|lane| lane.whole() > room.width - 2.0 * BEYOND.0);
        let longest = cut.map(|lane| lane.longest).fold(0.0, f64::max);
        let beyond = longest.clamp(BEYOND.0, BEYOND.1.min(room.width / 5.0));
        let height = room.height - 2.0 * WORDS;
        let mut tiling =
            Self { room, beyond, below: BEYOND.1.min(height / 5.0), rows: rows(lanes, height), tiles: Vec::new() };
        for row in 0..tiling.rows.len() {
            tiling.tiles.extend(tiling.row(row, lanes, piece));
        }
        tiling
    }

    /// The pages in order.
    pub fn pages(&self) -> impl ExactSizeIterator<Item = Tile> + '_ {
        self.tiles.iter().copied()
    }

    /// The pages of a row, tier by tier.
    fn row(&self, row: usize, lanes: &[Lane<'_>], piece: &Piece) -> Vec<Tile> {
        let lanes = &lanes[self.rows[row].clone()];
        let length = lanes.iter().map(Lane::end).fold(0.0, f64::max);
        let columns = ((length - self.beyond) / self.step()).ceil().max(1.0) as usize;
        let tiers: Vec<_> = (0..columns).map(|column| self.tiers(column, column + 1 < columns, lanes, piece)).collect();
        let most = tiers.iter().copied().max().unwrap_or(0);
        let tier = |tier| (0..columns).map(move |column| Tile { row, tier, column });
        (0..most).flat_map(tier).filter(|tile| tile.tier < tiers[tile.column]).collect()
    }

    /// How many tiers a column of pages has.
    fn tiers(&self, column: usize, goes_on: bool, lanes: &[Lane<'_>], piece: &Piece) -> usize {
        let [lane] = lanes else { return 1 };
        let depth = lane.depth(self.stretch(column, goes_on), piece);
        ((depth - 2.0 * self.below) / self.down()).ceil().max(1.0) as usize
    }

    /// Height of the room for lanes.
    fn height(&self) -> f64 {
        self.room.height - 2.0 * WORDS
    }

    fn step(&self) -> f64 {
        self.room.width - 2.0 * self.beyond
    }

    /// How far a tier lies below the one above it.
    fn down(&self) -> f64 {
        self.height() - 2.0 * self.below
    }

    fn window(&self, tile: Tile) -> Window {
        self.stretch(tile.column, self.number(Tile { tier: 0, column: tile.column + 1, ..tile }).is_some())
    }

    /// What a column of pages shows.
    fn stretch(&self, column: usize, goes_on: bool) -> Window {
        let from = self.step() * column as f64;
        let (first, last) = (from - self.beyond, from + self.step() + self.beyond);
        Window { from, to: if goes_on { last - self.beyond } else { last }, first, last }
    }

    /// A page's marks.
    pub fn draw(&self, tile: Tile, lanes: &[Lane<'_>], piece: &Piece, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let window = self.window(tile);
        let start = self.room.top + WORDS;
        let mut top = start - self.down() * tile.tier as f64;
        let (mut marks, mut clear) = (Vec::new(), true);
        for lane in &lanes[self.rows[tile.row].clone()] {
            if lane.is_in(window) {
                let block = lane.draw(window, self.room.width, piece, stencils);
                marks.extend(block.at(Point::new(self.room.left, top)));
                clear &= lane.longest <= self.beyond || lane.whole() <= self.room.width;
            }
            top += lane.height() + LANE_GAP;
        }
        let bottom = (top - LANE_GAP).min(start + self.height());
        if !clear || self.is_tall(tile, lanes) {
            let room = Rect::new(self.room.left, start, self.room.width, self.height());
            marks = part(marks, room, stencils);
        }
        let mut joins = self.joins(tile, bottom);
        joins.extend(self.tier_joins(tile));
        joins.extend(marks);
        joins
    }

    /// Whether a page's lane is taller than the page.
    fn is_tall(&self, tile: Tile, lanes: &[Lane<'_>]) -> bool {
        lanes[self.rows[tile.row].clone()].iter().any(|lane| lane.height() > self.height())
    }

    /// Number of a page, from 1, if there is one.
    fn number(&self, wanted: Tile) -> Option<usize> {
        self.tiles.iter().position(|tile| *tile == wanted).map(|at| at + 1)
    }

    /// The lines at which a page joins its neighbours on both sides.
    fn joins(&self, tile: Tile, bottom: f64) -> Vec<Mark> {
        let before = tile.column.checked_sub(1).and_then(|column| self.number(Tile { column, ..tile }));
        let after = self.number(Tile { column: tile.column + 1, ..tile });
        let (left, right) = (self.room.left + self.beyond, self.room.right() - self.beyond);
        let baseline = self.room.top + style::TINY;
        let line = |x: f64| join(Point::new(x, self.room.top), Point::new(x, bottom));
        let mut marks = Vec::new();
        if let Some(page) = before {
            marks.extend(line(left));
            let words = format!("page {page} ends here");
            marks.push(Type::TINY.mark(&words, Point::new(left + ASIDE, baseline), Anchor::Start));
        }
        if let Some(page) = after {
            marks.extend(line(right));
            let words = format!("cut here; lay on the left line of page {page}");
            marks.push(Type::TINY.mark(&words, Point::new(right - ASIDE, baseline), Anchor::End));
        }
        marks
    }

    /// The lines at which a page joins those above and below it, with their words below all lanes.
    fn tier_joins(&self, tile: Tile) -> Vec<Mark> {
        let above = tile.tier.checked_sub(1).and_then(|tier| self.number(Tile { tier, ..tile }));
        let below = self.number(Tile { tier: tile.tier + 1, ..tile });
        let (left, right) = (self.room.left, self.room.right());
        let top = self.room.top + WORDS;
        let baseline = self.room.bottom() - style::TINY * 0.25;
        let line = |y: f64| join(Point::new(left + CORNER, y), Point::new(right - CORNER, y));
        let mut marks = Vec::new();
        if let Some(page) = above {
            marks.extend(line(top + self.below));
            let words = format!("page {page} ends at the upper line");
            marks.push(Type::TINY.mark(&words, Point::new(left, baseline), Anchor::Start));
        }
        if let Some(page) = below {
            marks.extend(line(top + self.height() - self.below));
            let words = format!("cut at the lower line; lay it on the upper line of page {page}");
            marks.push(Type::TINY.mark(&words, Point::new(right, baseline), Anchor::End));
        }
        marks
    }
}

/// The lanes in rows that a height has room for; a lane taller than that has a row to itself.
fn rows(lanes: &[Lane<'_>], height: f64) -> Vec<Range<usize>> {
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
fn join(from: Point, to: Point) -> Vec<Mark> {
    let dashes = Stroke { dashes: vec![2.0, 1.0], ..Stroke::new(style::QUIET, 0.15) };
    let corner = |end: Point| {
        let at = |dx: f64, dy: f64| end + Point::new(dx, dy);
        [outline::line(at(-CORNER, 0.0), at(CORNER, 0.0)), outline::line(at(0.0, -CORNER), at(0.0, CORNER))].concat()
    };
    let corners = [corner(from), corner(to)].concat();
    vec![
        Mark::Shape { outline: outline::line(from, to), fill: None, stroke: Some(dashes) },
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
            let tiling = Tiling::new(&lanes, page::room(*paper).below(60.0), &piece);
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
        let tiling = Tiling::new(&lanes, page::room(Paper::Letter).below(60.0), &piece);
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
