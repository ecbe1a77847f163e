//! The cord of a strand as it hangs: its way, and how it ends.

use crate::design::What;
use crate::geometry::{Point, path};
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline;
use crate::pattern::CordKind;

use super::fastened::Fastened;
use super::{Sketch, straightened};

impl Sketch<'_> {
    /// The cord, over the rings in which branches hang on it.
    pub(super) fn cord(&self) -> Vec<Mark> {
        let hung = self.hung.seats.iter().filter_map(|seat| match &self.bit(seat).what {
            What::Dangle(dangle) => self.canvas.ring(dangle, self.canvas.page(seat.centre)),
            _ => None,
        });
        hung.chain(self.plain_ways().into_iter().map(|way| self.stretch(&way))).collect()
    }

    /// A stretch of the cord.
    fn stretch(&self, way: &[Point]) -> Mark {
        let points: Vec<_> = way.iter().map(|at| self.canvas.page(*at)).collect();
        self.canvas.stencils.strand_cord(self.strand, &straightened(&points), self.canvas.scale())
    }

    /// Where the cord ends on a side. The two ends of a loop, which hang a bead's width apart, meet in the closure.
    fn end(&self, side: usize) -> Point {
        let [first, last] = [0.0, self.strand.finished.value()].map(|station| self.hung.at(station).0);
        if self.design().closure.loops() { first.between(last, 0.5) } else { [first, last][side] }
    }

    /// How the cord ends on a side.
    pub(super) fn fastened(&self, side: usize) -> Fastened {
        let end = [0.0, self.strand.finished.value()][side];
        if self.hung.reaches(end) { Fastened::of(self.strand, side, self.design()) } else { Fastened::Plain }
    }

    /// From how deep the cord is plain, as what closes it is drawn.
    fn plain_from(&self, side: usize) -> f64 {
        self.fastened(side).plain_from() - self.drawn_out(side)
    }

    /// How far beyond its place what closes an end is drawn.
    pub(super) fn drawn_out(&self, side: usize) -> f64 {
        self.fastened(side).drawn_out(self.strand, side, self.design())
    }

    /// The way of the cord where it is plain.
    fn plain_ways(&self) -> Vec<Vec<Point>> {
        let mut ways = self.ways();
        let [first, last] = [0, 1].map(|side: usize| self.plain_from(side));
        if let Some(way) = ways.first_mut() {
            *way = self.past(std::mem::take(way), first, 0);
        }
        if let Some(way) = ways.last_mut() {
            way.reverse();
            *way = self.past(std::mem::take(way), last, 1);
            way.reverse();
        }
        ways
    }

    /// A way without what lies before a distance from its end, or, where it is plain, from the place where that is.
    fn past(&self, mut way: Vec<Point>, distance: f64, side: usize) -> Vec<Point> {
        if distance > 0.0 {
            return path::past(&way, distance);
        }
        if let Some(end) = way.first_mut().filter(|_| self.design().closure.loops()) {
            *end = self.end(side);
        }
        way
    }

    /// The loops, hitch or knots in which the cord ends.
    pub(super) fn fastenings(&self) -> Vec<Mark> {
        let mut marks = Vec::new();
        for side in [0, 1] {
            let fastened = self.fastened(side);
            let depth = fastened.plain_from();
            let station = if side == 0 { depth } else { self.strand.finished.value() - depth };
            let [end, inside] = [self.end(side), self.hung.at(station).0].map(|at| self.canvas.page(at));
            let reaches = [fastened.through(self.strand, side, self.design()), self.drawn_out(side)];
            let place = (end, (inside - end).angle(), reaches);
            marks.extend(fastened.marks(self.strand, place, self.canvas));
        }
        marks
    }

    /// The way of the cord: from joint to joint, bare cord bent smoothly, and where a joint is the middle of what is strung,
    /// as on a closed ring, straight through its hole; in two stretches where the middle is not seen.
    fn ways(&self) -> Vec<Vec<Point>> {
        let mut seats = self.hung.seats.iter().peekable();
        let mut ways = Vec::new();
        let mut way = CordWay::default();
        let mut unseen = self.hung.unseen;
        for (at, joint) in self.hung.joints.iter().enumerate() {
            if unseen.take_if(|[from, _]| joint.station > *from).is_some() {
                ways.push(std::mem::take(&mut way).rounded());
            }
            match seats.next_if(|seat| seat.centre == joint.at) {
                Some(seat) => {
                    let (bit, along) = (self.bit(seat), Point::towards(seat.angle));
                    way.corner(seat.centre - along * bit.before);
                    way.corner(seat.centre + along * bit.after);
                }
                None if self.is_bare(at) => way.bend(joint.at),
                None => way.corner(joint.at),
            }
        }
        ways.push(way.rounded());
        ways
    }

    /// Whether cord is bare on both sides of a joint and bends there; chain has corners, for its links are straight.
    fn is_bare(&self, at: usize) -> bool {
        if self.design().cords[self.strand.cord].kind == CordKind::Chain {
            return false;
        }
        let joints = &self.hung.joints;
        let beside = at.checked_sub(1).and_then(|before| Some([joints.get(before)?, joints.get(at + 1)?]));
        beside.is_some_and(|[before, after]| {
            let next = self.hung.seats.partition_point(|seat| seat.station < before.station);
            self.hung.seats.get(next).is_none_or(|seat| seat.station > after.station)
        })
    }
}

/// A way in stretches of bare cord between corners.
#[derive(Default)]
struct CordWay {
    /// The way up to the last corner.
    done: Vec<Point>,
    /// From there on.
    bare: Vec<Point>,
}

impl CordWay {
    fn bend(&mut self, at: Point) {
        self.bare.push(at);
    }

    fn corner(&mut self, at: Point) {
        self.bare.push(at);
        self.done.extend(bent(&self.bare));
        self.bare = vec![at];
    }

    fn rounded(mut self) -> Vec<Point> {
        self.done.extend(bent(&self.bare));
        self.done.dedup();
        self.done
    }
}

/// A smooth line through points: at each it runs parallel to the line between the neighbours, as far as the neighbour is
/// near.
fn bent(points: &[Point]) -> Vec<Point> {
    if points.len() < 3 {
        return points.to_vec();
    }
    // Indices run from 0 to `last`.
    let last = points.len() - 1;
    let along = |at: usize| Point::towards((points[(at + 1).min(last)] - points[at.saturating_sub(1)]).angle());
    let piece = |at: usize| {
        let (from, to) = (points[at - 1], points[at]);
        let third = from.distance(to) / 3.0;
        Segment::Curve(from + along(at - 1) * third, to - along(at) * third, to)
    };
    let segments: Vec<_> = std::iter::once(Segment::Move(points[0])).chain((1..=last).map(piece)).collect();
    outline::flattened(&segments)
}
