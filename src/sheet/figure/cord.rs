//! The cord of a strand as it hangs: its way, and how it ends. Lengths in mm on paper.

use std::iter::Peekable;

use crate::design::What;
use crate::drape::Seat;
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
            What::Dangle(dangle) => {
                self.canvas.hanger((dangle, self.strand.cord), self.canvas.page(seat.centre), seat.down)
            }
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

    /// The way of the cord: straight through all that is strung, and smoothly from hole to hole, whether it is bare there or
    /// beads part; in two stretches where the middle is not seen.
    fn ways(&self) -> Vec<Vec<Point>> {
        let seats = &mut self.hung.seats.iter().peekable();
        let (mut ways, mut way) = (Vec::new(), CordWay::default());
        let mut unseen = self.hung.unseen;
        for (at, joint) in self.hung.joints.iter().enumerate() {
            if let Some([from, _]) = unseen.take_if(|[from, _]| joint.station > *from) {
                self.holes(seats, from, &mut way);
                ways.push(std::mem::take(&mut way).rounded());
            }
            self.holes(seats, joint.station, &mut way);
            match self.lies(at) {
                JointPlace::Bare => way.bend(joint.at),
                JointPlace::AtEnd => way.corner(joint.at, None),
                JointPlace::AtHole => {}
            }
        }
        ways.push(way.rounded());
        ways
    }

    /// Leads the cord through the holes of all that is seated up to a station.
    fn holes<'s>(&self, seats: &mut Peekable<impl Iterator<Item = &'s Seat>>, station: f64, way: &mut CordWay) {
        while let Some(seat) = seats.next_if(|seat| seat.station <= station) {
            let (bit, along) = (self.bit(seat), Point::towards(seat.angle));
            let led = (!self.is_chain()).then_some(along);
            for off in [-bit.before, bit.after].into_iter().filter(|off| self.is_laid(seat, *off)) {
                way.corner(seat.centre + along * off, led);
            }
        }
    }

    /// Whether the strand is laid as far as a hole's mouth, so far from the middle of what sits in a seat; a ring is, though it
    /// begins and ends in such a middle.
    fn is_laid(&self, seat: &Seat, off: f64) -> bool {
        let ends = [self.hung.joints.first(), self.hung.joints.last()].map(|end| end.map_or(0.0, |end| end.station));
        ends.contains(&seat.station) || (ends[0]..=ends[1]).contains(&(seat.station + off))
    }

    /// How the cord lies at a joint; chain has corners, for its links are straight.
    fn lies(&self, at: usize) -> JointPlace {
        let joints = &self.hung.joints;
        let beside = at.checked_sub(1).and_then(|before| Some([joints.get(before)?, joints.get(at + 1)?]));
        let Some([before, after]) = beside else { return JointPlace::AtEnd };
        let next = self.hung.seats.partition_point(|seat| seat.station < before.station);
        let is_bare = self.hung.seats.get(next).is_none_or(|seat| seat.station > after.station);
        match () {
            () if self.is_chain() => JointPlace::AtEnd,
            () if is_bare => JointPlace::Bare,
            () => JointPlace::AtHole,
        }
    }

    fn is_chain(&self) -> bool {
        self.design().cords[self.strand.cord].kind == CordKind::Chain
    }
}

/// How cord lies at a joint.
enum JointPlace {
    /// Bare on both sides, so that it bends there.
    Bare,
    /// Beside a hole that leads it.
    AtHole,
    /// At an end, or a corner.
    AtEnd,
}

/// A way in stretches of bare cord between corners.
#[derive(Default)]
struct CordWay {
    /// The way up to the last corner.
    done: Vec<Point>,
    /// From there on.
    bare: Vec<Point>,
    /// Which way it leaves that corner, where a hole leads it.
    led: Option<Point>,
}

impl CordWay {
    fn bend(&mut self, at: Point) {
        self.bare.push(at);
    }

    fn corner(&mut self, at: Point, led: Option<Point>) {
        self.bare.push(at);
        self.done.extend(bent(&self.bare, [self.led, led]));
        (self.bare, self.led) = (vec![at], led);
    }

    fn rounded(mut self) -> Vec<Point> {
        self.done.extend(bent(&self.bare, [self.led, None]));
        self.done.dedup();
        self.done
    }
}

/// Farthest in mm beyond a hole that it leads the cord.
const LED: f64 = 3.0;

/// A smooth line through points: at each it runs parallel to the line between the neighbours, as far as the neighbour is
/// near, and at either end as a hole leads it there.
fn bent(points: &[Point], led: [Option<Point>; 2]) -> Vec<Point> {
    if points.len() < 2 || points.len() < 3 && led.iter().flatten().all(|led| is_along(*led, points)) {
        return points.to_vec();
    }
    // Indices run from 0 to `last`.
    let last = points.len() - 1;
    let along = |at: usize| Point::towards((points[(at + 1).min(last)] - points[at.saturating_sub(1)]).angle());
    let way = |at: usize, third: f64| match (at, led) {
        (0, [Some(led), _]) => led * third.min(LED),
        (at, [_, Some(led)]) if at == last => led * third.min(LED),
        _ => along(at) * third,
    };
    let piece = |at: usize| {
        let (from, to) = (points[at - 1], points[at]);
        let third = from.distance(to) / 3.0;
        Segment::Curve(from + way(at - 1, third), to - way(at, third), to)
    };
    let segments: Vec<_> = std::iter::once(Segment::Move(points[0])).chain((1..=last).map(piece)).collect();
    outline::flattened(&segments)
}

/// Whether a direction is that from the first of two points to the other, as far as is seen.
fn is_along(led: Point, points: &[Point]) -> bool {
    const SEEN: f64 = 0.02;
    let way = points[1] - points[0];
    led.dot(way) >= 0.0 && led.left().dot(way).abs() <= SEEN * way.length().max(1.0)
}
