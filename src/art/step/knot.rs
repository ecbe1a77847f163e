//! Knots. Each is made of twists: two cords that turn about one another along a level line.
//!
//! A half knot is a twist with three crossings, the standing parts below it and the ends above; one
//! more turn of the cords makes five. An overhand knot is a half knot whose standing parts are one
//! loop, and a double one has the turn more. Where two ends are tied, the upper twist turns back: it
//! is the other way over.

use std::f64::consts::PI;

use super::crimp::drop;
use super::pen::{EDGE, PLAIN, arrow, at, bead, cord, cord_over, filled, hidden, line, metal, stretch, tinted, wire};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Segment};
use crate::paint::outline::{arc, circle, curve, mapped, polygon, polyline, rounded_rect};

/// Points for each crossing of a twist.
const FINE: u32 = 12;

/// Two cords about one another, from left to right.
struct Twist {
    left: Point,
    right: Point,
    /// Half the distance between the cords at the ends.
    half: f64,
    /// Odd: the cord that starts below ends above.
    crossings: u32,
    /// Whether the cord that rises to the right lies over the other.
    rising_over: bool,
}

impl Twist {
    /// The cord that starts below, or the one that starts above, between two shares of the way.
    fn cord(&self, below: bool, from: f64, to: f64) -> Vec<Point> {
        let sign = if below { self.half } else { -self.half };
        let steps = self.crossings * FINE;
        let place = |step: u32| {
            let share = from + (to - from) * f64::from(step) / f64::from(steps);
            let turn = libm::cos(PI * f64::from(self.crossings) * share);
            self.left.between(self.right, share) + at(0.0, sign * turn)
        };
        (0..=steps).map(place).collect()
    }

    /// The stretches that lie over, by crossing: which cord, and its way.
    fn overs(&self) -> Vec<(bool, Vec<Segment>)> {
        let crossings = f64::from(self.crossings);
        let over = |crossing: u32| {
            let below = crossing.is_multiple_of(2) == self.rising_over;
            let middle = (f64::from(crossing) + 0.5) / crossings;
            let reach = 0.34 / crossings;
            (below, polyline(&self.cord(below, middle - reach, middle + reach)))
        };
        (0..self.crossings).map(over).collect()
    }
}

fn reversed(mut points: Vec<Point>) -> Vec<Point> {
    points.reverse();
    points
}

fn smooth(parts: &[Vec<Point>]) -> Vec<Segment> {
    curve(&parts.concat())
}

/// A cord that goes round in a loop and twice through it.
pub fn double_overhand() -> Vec<Mark> {
    let twist = Twist { left: at(4.6, 6.0), right: at(19.4, 6.0), half: 1.5, crossings: 5, rising_over: true };
    let path = smooth(&[
        vec![at(0.6, 3.6), at(2.6, 3.8)],
        twist.cord(false, 0.0, 1.0),
        vec![at(21.3, 8.6), at(21.6, 11.2), at(18.6, 14.6), at(12.0, 16.2), at(5.4, 14.6), at(2.4, 11.2), at(2.7, 8.6)],
        twist.cord(true, 0.0, 1.0),
        vec![at(21.4, 3.8), at(23.4, 3.6)],
    ]);
    let mut marks = cord(&path, PLAIN);
    marks.extend(twist.overs().iter().flat_map(|(_, over)| cord_over(over, PLAIN)));
    marks.extend(arrow(&[at(4.2, 1.4), at(0.6, 1.4)]));
    marks.extend(arrow(&[at(19.8, 1.4), at(23.4, 1.4)]));
    marks
}

/// The same tied round a bead, which its loop goes through.
pub fn round_a_bead() -> Vec<Mark> {
    let mut marks = double_overhand();
    marks.push(bead(at(12.0, 16.0), 1.8));
    marks.push(hidden(polyline(&[at(10.4, 16.1), at(13.6, 16.1)])));
    marks
}

/// A loose knot led to the bead by an awl in it.
pub fn led() -> Vec<Mark> {
    let twist = Twist { left: at(8.8, 6.4), right: at(16.2, 6.4), half: 1.3, crossings: 3, rising_over: true };
    let path = smooth(&[
        vec![at(0.4, 5.0), at(6.6, 5.0)],
        twist.cord(false, 0.0, 1.0),
        vec![at(17.6, 8.6), at(17.4, 11.2), at(12.5, 12.8), at(7.6, 11.2), at(7.4, 8.6)],
        twist.cord(true, 0.0, 1.0),
        vec![at(18.4, 5.0), at(23.6, 5.0)],
    ]);
    let mut marks = cord(&path, PLAIN);
    marks.extend(twist.overs().iter().flat_map(|(_, over)| cord_over(over, PLAIN)));
    marks.push(bead(at(3.4, 5.0), 2.8));
    marks.push(metal(polygon(&[at(9.4, 8.6), at(18.2, 13.2), at(17.6, 14.4)])));
    marks.push(filled(
        mapped(&rounded_rect(at(0.0, -1.4), 6.4, 2.8, 1.2), |point| at(17.4, 13.6) + point.turned(0.48)),
        tinted(),
    ));
    marks.extend(arrow(&[at(11.4, 15.6), at(8.0, 14.4), at(4.8, 11.6)]));
    marks
}

/// Two ends: twice over, then once back.
pub fn surgeons() -> Vec<Mark> {
    let lower = Twist { left: at(4.6, 12.0), right: at(19.4, 12.0), half: 1.4, crossings: 5, rising_over: true };
    let upper = Twist { left: at(7.6, 5.4), right: at(16.4, 5.4), half: 1.4, crossings: 3, rising_over: false };
    let one = smooth(&[
        vec![at(1.0, 15.6), at(2.6, 14.4)],
        lower.cord(true, 0.0, 1.0),
        vec![at(21.6, 9.4), at(19.8, 7.2)],
        reversed(upper.cord(false, 0.0, 1.0)),
        vec![at(4.6, 3.0), at(2.6, 2.0)],
    ]);
    let other = smooth(&[
        vec![at(23.0, 15.6), at(21.4, 14.4)],
        reversed(lower.cord(false, 0.0, 1.0)),
        vec![at(2.4, 9.4), at(4.2, 7.2)],
        upper.cord(true, 0.0, 1.0),
        vec![at(19.4, 3.0), at(21.4, 2.0)],
    ]);
    let colour = |first: bool| -> Rgb { if first { PLAIN } else { tinted() } };
    let mut marks = [cord(&one, PLAIN), cord(&other, tinted())].concat();
    marks.extend(lower.overs().iter().flat_map(|(below, over)| cord_over(over, colour(*below))));
    marks.extend(upper.overs().iter().flat_map(|(below, over)| cord_over(over, colour(!*below))));
    marks.extend([bead(at(1.7, 16.2), 1.6), bead(at(22.3, 16.2), 1.6)]);
    marks.extend(arrow(&[at(6.6, 1.7), at(4.6, 0.8), at(2.4, 0.5)]));
    marks.extend(arrow(&[at(17.4, 1.7), at(19.4, 0.8), at(21.6, 0.5)]));
    marks
}

/// Two ends that come from the beads beside them go together through one bead, from left to right, and are tied behind it;
/// one of them through the loop of what hangs there.
pub fn met(hangs: bool) -> Vec<Mark> {
    let (level, half) = (7.6, 0.55);
    let end = |side: f64, aside: f64| {
        let (far, near, on) = (level + side * 5.4, level + side * half, level + side * 3.4);
        curve(&[
            at(0.4, far),
            at(2.6, far),
            at(5.4, near),
            at(13.0, near),
            at(16.0, near + side * aside),
            at(20.0, near),
            at(23.4, on),
        ])
    };
    // The one that stays out of the loop passes above it.
    let above = if hangs { 1.9 } else { 0.0 };
    let mut marks = [cord(&end(-1.0, above), PLAIN), cord(&end(1.0, 0.0), tinted())].concat();
    if hangs {
        marks.push(filled(polygon(&[at(15.0, 11.2), at(17.0, 11.2), at(18.4, 18.0), at(13.6, 18.0)]), tinted()));
        marks.extend(wire(&circle(at(16.0, level + 1.45), 1.9)));
        marks.extend(cord(&polyline(&[at(16.0, level + half), at(20.0, level + half)]), tinted()));
    }
    marks.extend([-1.0, 1.0].map(|side| bead(at(1.9, level + side * 5.4), 1.8)));
    marks.push(bead(at(8.8, level), 4.2));
    marks.extend(tight(at(20.4, level), 1.5));
    marks.extend(arrow(&[at(16.0, 3.0), at(18.6, 1.6), at(22.4, 1.4)]));
    marks
}

/// A folded cord about a ring: its legs come out of the ring over its near side, from behind which
/// the fold comes round and lies across them.
pub fn larks_head() -> Vec<Mark> {
    let (middle, inside, fold) = (9.0, 8.2, 13.6);
    let leg = |side: f64| {
        let y = |off: f64| middle + side * off;
        curve(&[
            at(23.4, y(0.8)),
            at(17.0, y(0.8)),
            at(10.4, y(0.8)),
            at(inside, y(1.3)),
            at(8.0, y(2.3)),
            at(8.6, y(3.0)),
        ])
    };
    let half = [at(inside, middle - 2.7), at(9.4, middle - 3.3), at(11.6, middle - 3.2), at(fold - 0.5, middle - 1.9)];
    let other = half.iter().rev().map(|point| at(point.x, 2.0 * middle - point.y));
    let way = curve(&half.into_iter().chain([at(fold, middle)]).chain(other).collect::<Vec<_>>());
    let mut marks = cord(&way, PLAIN);
    marks.extend(wire(&circle(at(5.4, middle), 4.8)));
    marks.extend([-1.0, 1.0].into_iter().flat_map(|side| cord_over(&leg(side), PLAIN)));
    marks.extend(cord_over(&stretch(&way, 3, 5), PLAIN));
    marks.extend(arrow(&[at(18.6, 5.6), at(20.8, 5.6), at(23.4, 5.6)]));
    marks
}

/// A tight knot and a drop of glue that falls on it.
pub fn glued() -> Vec<Mark> {
    let mut marks = cord(&polyline(&[at(0.0, 13.0), at(24.0, 13.0)]), PLAIN);
    marks.extend(tight(at(12.0, 13.0), 1.6));
    marks.push(drop(at(12.0, 1.6)));
    marks.extend(arrow(&[at(12.0, 7.2), at(12.0, 10.6)]));
    marks
}

/// A knot drawn tight.
fn tight(middle: Point, radius: f64) -> Vec<Mark> {
    let turn = |x: f64| line(curve(&[at(x - 0.6, -1.0), at(x + 0.2, 0.0), at(x, 1.0)].map(|point| middle + point)));
    std::iter::once(filled(circle(middle, radius), PLAIN)).chain([-0.4, 0.4].map(turn)).collect()
}

/// A hinged cup about to close over a knot, and the hook at its end.
pub fn cover() -> Vec<Mark> {
    let (hinge, radius, opening) = (at(7.0, 9.4), 4.0, 0.5);
    let cup = |side: f64| {
        let mut half = arc(at(radius, 0.0), (radius, radius), PI, PI + side * PI);
        half.push(Segment::Close);
        metal(mapped(&half, |point| hinge + point.turned(-side * opening)))
    };
    let hook = curve(&[
        at(7.6, 0.5),
        at(9.4, 1.5),
        at(11.4, 1.3),
        at(12.7, -0.1),
        at(12.6, -1.9),
        at(11.2, -2.9),
        at(9.8, -2.3),
    ]);
    let mut marks = cord(&polyline(&[at(0.0, 9.4), at(10.6, 9.4)]), PLAIN);
    marks.extend(wire(&mapped(&hook, |point| hinge + point.turned(opening))));
    marks.extend([cup(1.0), cup(-1.0)]);
    marks.extend(tight(at(10.9, 9.4), 1.3));
    marks.push(metal(circle(hinge, EDGE * 3.0)));
    marks.extend(arrow(&[at(15.0, 1.6), at(16.8, 3.2), at(17.2, 5.6)]));
    marks.extend(arrow(&[at(8.6, 17.9), at(10.8, 17.9), at(12.8, 16.8)]));
    marks
}
