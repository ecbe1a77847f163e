//! Strips: what is longer than the page is wide is laid in strips, one below the other, that join.
//!
//! Two strips that join overlap by twice `beyond`, which is as long as the longest thing that the cut between them
//! can go through; it runs through the middle of the overlap, at the same station on both, so that they join
//! whichever lies on top. A strip that is taller than a page goes on below, on pages of its own that overlap in
//! the same way. What is larger than an overlap ends at the edge of its strip. Lengths in mm on paper.

use crate::art::Stencils;
use crate::geometry::Point;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Anchor, Fill, Mark, Rgb, Stroke};
use crate::paint::{outline, style};
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::Join;

use super::lane::Lane;
use super::part::part;

/// Least and most room in mm beyond a cut on either side, and at most one of so many parts of what is cut.
const BEYOND: (f64, f64) = (6.0, 30.0);
const BEYOND_PART: f64 = 5.0;
/// Room above a strip for the words at its cuts, and below one that goes on below.
const WORDS: f64 = 4.0;
/// Room below a strip.
const GAP: f64 = 4.0;
/// Half the size of a corner mark in mm.
const CORNER: f64 = 2.0;
/// How far what is shown again is made pale.
const VEIL: f64 = 0.68;
/// Room between a line to cut along and its words.
const ASIDE: f64 = 1.0;
/// Dash and gap of that line, in mm.
const DASHES: [f64; 2] = [2.0, 1.0];
/// How far above a page's foot words stand, as a share of their size.
const FOOT: f64 = 0.25;

/// The part of a lane that a strip shows, in stations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripWindow {
    /// Where the strip's own part begins: after the cut.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Where what the strip has room for begins.
    pub first: f64,
    /// Where that ends.
    pub last: f64,
}

/// A lane, or what of it lies between two cuts.
pub struct Strip<'a> {
    lane: &'a Lane<'a>,
    window: StripWindow,
    /// Room beyond the cuts.
    beyond: f64,
    /// Its number among all strips of the proof that join; nothing where its lane is whole.
    number: Option<usize>,
    /// Whether it joins one before it.
    goes_back: bool,
    /// Whether it joins one after it.
    goes_on: bool,
    width: f64,
    /// Its height on paper, with the words at its cuts.
    height: f64,
}

/// The strips of lanes on a width.
pub fn strips<'a>(lanes: &'a [Lane<'a>], width: f64, piece: &Piece) -> Vec<Strip<'a>> {
    let mut numbers = 1..;
    lanes.iter().flat_map(|lane| of_lane(lane, width, &mut numbers, piece)).collect()
}

/// The strips of a lane, numbered on where it takes several.
fn of_lane<'a>(
    lane: &'a Lane<'a>,
    width: f64,
    numbers: &mut impl Iterator<Item = usize>,
    piece: &Piece,
) -> Vec<Strip<'a>> {
    let beyond =
        if is_whole(lane, width) { BEYOND.0 } else { lane.longest.clamp(BEYOND.0, BEYOND.1.min(width / BEYOND_PART)) };
    let step = width - 2.0 * beyond;
    let count = ((lane.end() - beyond) / step).ceil().max(1.0) as usize;
    let strip = |at: usize| {
        let (from, goes_on) = (step * at as f64, at + 1 < count);
        let (first, last) = (from - beyond, from + step + beyond);
        let window = StripWindow { from, to: if goes_on { last - beyond } else { last }, first, last };
        let number = if count > 1 { numbers.next() } else { None };
        let height = words(number) + lane.depth(window, piece);
        Strip { lane, window, beyond, number, goes_back: at > 0, goes_on, width, height }
    };
    (0..count).map(strip).collect()
}

fn is_whole(lane: &Lane<'_>, width: f64) -> bool {
    lane.whole() <= width - 2.0 * BEYOND.0
}

/// Room above a strip of a number for the words at its cuts.
fn words(number: Option<usize>) -> f64 {
    if number.is_some() { WORDS } else { 0.0 }
}

/// How many pages with a room strips take.
pub fn pages(strips: &[Strip<'_>], room: Rect) -> usize {
    let mut flow = Flow::new(room);
    for strip in strips {
        let tiers = Tiers::of(strip.height, room.height);
        tiers.begin(&mut flow);
        (0..tiers.count).for_each(|_| flow.add(Block::gap(tiers.height)));
        flow.gap(GAP);
    }
    flow.count()
}

/// How a strip's height is spread over pages.
struct Tiers {
    count: usize,
    /// Of each.
    height: f64,
    /// Room beyond the cut between two.
    beyond: f64,
}

impl Tiers {
    fn of(height: f64, room: f64) -> Self {
        if height <= room {
            return Self { count: 1, height, beyond: 0.0 };
        }
        let beyond = BEYOND.1.min(room / BEYOND_PART);
        let tiers = Self { count: 0, height: room, beyond };
        let count = ((height - WORDS - 2.0 * beyond) / tiers.down()).ceil().max(1.0);
        Self { count: count as usize, ..tiers }
    }

    /// A strip of several pages begins on a new one.
    fn begin(&self, flow: &mut Flow) {
        if self.count > 1 && flow.taken() > 0.0 {
            flow.turn();
        }
    }

    /// What makes pale, on a width, what the tiers above and below one show again.
    fn veils(&self, tier: usize, width: f64) -> Vec<Mark> {
        let over = |top: f64| veil(Rect::new(0.0, top, width, self.beyond));
        let above = (tier > 0, WORDS);
        let below = (tier + 1 < self.count, self.height - WORDS - self.beyond);
        [above, below].into_iter().filter(|(shown, _)| *shown).map(|(_, top)| over(top)).collect()
    }

    /// How far one lies below the one above it: those of several have words below them.
    fn down(&self) -> f64 {
        self.height - 2.0 * WORDS - 2.0 * self.beyond
    }
}

impl Strip<'_> {
    /// Whether it is one of several of its lane.
    pub const fn is_numbered(&self) -> bool {
        self.number.is_some()
    }

    /// Pours it into pages with a room.
    pub fn pour(&self, flow: &mut Flow, room: Rect, stencils: &Stencils<'_>) {
        let tiers = Tiers::of(self.height, room.height);
        tiers.begin(flow);
        let page = flow.count();
        for tier in 0..tiers.count {
            let top = words(self.number) - tiers.down() * tier as f64;
            let mut marks = self.drawn(top, &tiers, stencils);
            let bottom = (self.height - tiers.down() * tier as f64).min(tiers.height);
            marks.extend(self.veils(bottom));
            marks.extend(tiers.veils(tier, self.width));
            marks.extend(self.joins(bottom));
            marks.extend(self.tier_joins(tier, page + tier, &tiers));
            flow.add(Block::new(self.width, tiers.height, marks));
        }
        flow.gap(GAP);
    }

    /// What lies in it, with its upper edge so far down.
    fn drawn(&self, top: f64, tiers: &Tiers, stencils: &Stencils<'_>) -> Vec<Mark> {
        let marks = self.lane.draw(self.window, self.number, self.width, stencils).at(Point::new(0.0, top));
        let is_clear = self.number.is_none() || self.lane.longest <= self.beyond;
        if is_clear && tiers.count == 1 {
            return marks;
        }
        let below = if tiers.count > 1 { WORDS } else { 0.0 };
        let above = words(self.number);
        let room = Rect::new(0.0, above, self.width, tiers.height - above - below);
        part(marks, room, stencils)
    }

    /// What makes pale what its neighbours on both sides show again, down to a height.
    fn veils(&self, bottom: f64) -> Vec<Mark> {
        let top = words(self.number);
        let over = |left: f64| veil(Rect::new(left, top, self.beyond, bottom - top));
        let [before, after] = [(self.goes_back, 0.0), (self.goes_on, self.width - self.beyond)];
        [before, after].into_iter().filter(|(shown, _)| *shown).map(|(_, left)| over(left)).collect()
    }

    /// The lines at which it joins its neighbours on both sides, down to a height.
    fn joins(&self, bottom: f64) -> Vec<Mark> {
        let Some(number) = self.number else { return Vec::new() };
        let (left, right) = (self.beyond, self.width - self.beyond);
        let line = |x: f64| join(Point::new(x, 0.0), Point::new(x, bottom));
        let mut marks = Vec::new();
        if self.goes_back {
            marks.extend(line(left));
            let words = english::join(Join::Before(number - 1));
            marks.push(Type::TINY.mark(&words, Point::new(left + ASIDE, style::TINY), Anchor::Start));
        }
        if self.goes_on {
            marks.extend(line(right));
            let words = english::join(Join::After(number + 1));
            marks.push(Type::TINY.mark(&words, Point::new(right - ASIDE, style::TINY), Anchor::End));
        }
        marks
    }

    /// The lines at which one of its tiers joins those above and below it, with their words below it.
    fn tier_joins(&self, tier: usize, page: usize, tiers: &Tiers) -> Vec<Mark> {
        let line = |y: f64| join(Point::new(CORNER, y), Point::new(self.width - CORNER, y));
        let baseline = tiers.height - style::TINY * FOOT;
        let mut marks = Vec::new();
        if tier > 0 {
            marks.extend(line(WORDS + tiers.beyond));
            let words = english::join(Join::Above(page - 1));
            marks.push(Type::TINY.mark(&words, Point::new(0.0, baseline), Anchor::Start));
        }
        if tier + 1 < tiers.count {
            marks.extend(line(tiers.height - WORDS - tiers.beyond));
            let words = english::join(Join::Below(page + 1));
            marks.push(Type::TINY.mark(&words, Point::new(self.width, baseline), Anchor::End));
        }
        marks
    }
}

/// Paper that what is drawn below it shines through: it is shown again elsewhere.
fn veil(room: Rect) -> Mark {
    let outline = outline::rect(room.corner(), room.width, room.height);
    Mark::ornament(vec![Mark::Shape { outline, fill: Some(Fill::Flat(Rgb::WHITE, VEIL)), stroke: None }])
}

/// A dashed line to cut along, with a corner mark at each end.
fn join(from: Point, to: Point) -> Vec<Mark> {
    let dashes = Stroke { dashes: DASHES.to_vec(), ..Stroke::new(style::QUIET, style::HAIRLINE) };
    let corner = |end: Point| {
        let at = |dx: f64, dy: f64| end + Point::new(dx, dy);
        [outline::line(at(-CORNER, 0.0), at(CORNER, 0.0)), outline::line(at(0.0, -CORNER), at(0.0, CORNER))].concat()
    };
    let corners = [corner(from), corner(to)].concat();
    vec![
        Mark::Shape { outline: outline::line(from, to), fill: None, stroke: Some(dashes) },
        Mark::Shape { outline: corners, fill: None, stroke: Some(style::INK_LINE) },
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

    /// Saltmarsh: three strands with beads of 3 to 6 mm, which every paper cuts.
    fn piece() -> Piece {
        let text = include_str!("../../../patterns/saltmarsh.yaml");
        crate::piece(&Source::new("saltmarsh.yaml", text), &Choice::default(), None).0.unwrap()
    }

    #[test]
    fn what_a_cut_goes_through_is_whole_on_both_strips() {
        let piece = piece();
        let lanes = super::super::lane::lanes(&piece, &Stencils::new(&piece.design, &piece.palette, Ink::Colour));
        for paper in Paper::ALL {
            let strips = strips(&lanes, page::room(*paper).width, &piece);
            let widest = piece.design.beads.iter().map(|bead| bead.along.value()).fold(0.0, f64::max);
            let joined: Vec<_> = strips.windows(2).filter(|pair| pair[0].goes_on).collect();
            assert!(joined.len() >= 3);
            for pair in joined {
                let (one, next) = (pair[0].window, pair[1].window);
                assert_eq!(one.to, next.from);
                assert!(one.last - one.to >= widest && next.from - next.first >= widest);
            }
        }
    }

    #[test]
    fn strips_show_every_seat_whole_and_end_behind_their_strand() {
        let piece = piece();
        let lanes = super::super::lane::lanes(&piece, &Stencils::new(&piece.design, &piece.palette, Ink::Colour));
        let strips = strips(&lanes, page::room(Paper::Letter).width, &piece);
        for (at, (strand, hung)) in piece.design.strands.iter().zip(&piece.drape.strands).enumerate() {
            let of_it = |strip: &&Strip<'_>| std::ptr::eq(strip.lane, &raw const lanes[at]);
            let windows: Vec<_> = strips.iter().filter(of_it).map(|strip| strip.window).collect();
            assert!(windows.iter().any(|window| window.to >= strand.finished.value()));
            for seat in &hung.seats {
                let bit = seat.bit(strand);
                assert_ne!(bit.what, What::Gap);
                let (start, end) = (seat.station - bit.before, seat.station + bit.after);
                assert!(windows.iter().any(|window| start >= window.first && end <= window.last), "{start} to {end}");
            }
        }
    }
}
