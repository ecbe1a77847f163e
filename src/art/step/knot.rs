//! Knots. Each is made of twists: two cords that turn about one another along a level line.
//!
//! A half knot is a twist with three crossings, the standing parts below it and the ends above; one
//! more turn of the cords makes five. An overhand knot is a half knot whose standing parts are one
//! loop, and a double one has the turn more. Where two ends are tied, the upper twist turns back: it
//! is the other way over.

use std::f64::consts::PI;

use super::own::{OwnRow, Props, RowRoom};
use super::{noose, tight};
use crate::art::pen::{
    PLAIN, arrow, at, breadth, cord, cord_over, filled, legs, legs_over, metal, tail, through, tinted, wire,
};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Segment};
use crate::paint::outline::{circle, curve, mapped, polygon, polyline, rounded_rect};
use crate::steps::Knotted;

/// Points for each crossing of a twist.
const FINE: u32 = 12;

/// Two cords about one another, from left to right.
struct CordTwist {
    left: Point,
    right: Point,
    /// Half the distance between the cords at the ends.
    half: f64,
    /// Odd: the cord that starts below ends above.
    crossings: u32,
    /// Whether the cord that rises to the right lies over the other.
    rising_over: bool,
}

impl CordTwist {
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

/// A knot as it is tied.
pub fn tied(knot: Knotted, own: Props<'_>) -> Vec<Mark> {
    match knot {
        Knotted::Covered(_) => covered(own),
        Knotted::Free(legs) => free(legs, own),
        Knotted::Back(legs) => noose::tied_back(legs),
        Knotted::Ends => surgeons(own),
        Knotted::Met(hangs) => [met(7.6, hangs, own), arrow(&[at(16.0, 3.0), at(18.6, 1.6), at(22.4, 1.4)])].concat(),
    }
}

/// A double overhand knot: cords from a place on the left, twice through the loop, which lies below where the twist's half is
/// more than nothing, and on to the right.
fn double_overhand(from: Point, twist: &CordTwist, count: u8) -> Vec<Mark> {
    let (left, right, level) = (twist.left.x, twist.right.x, twist.left.y);
    let middle = left.midpoint(right);
    let aside = |x: f64, off: f64| at(x, level + twist.half + off * twist.half.signum());
    let round = [
        aside(right + 1.4, 1.4),
        aside(right - 0.6, 4.0),
        aside(middle, 5.3),
        aside(left + 0.6, 4.0),
        aside(left - 1.4, 1.4),
    ];
    let path = smooth(&[
        vec![from, from.between(aside(left, -2.0 * twist.half.abs()), 0.7)],
        twist.cord(false, 0.0, 1.0),
        round.to_vec(),
        twist.cord(true, 0.0, 1.0),
        vec![aside(23.4, -2.0 * twist.half.abs() - 0.9)],
    ]);
    let mut marks = legs(&path, count);
    marks.extend(twist.overs().iter().flat_map(|(_, over)| legs_over(over, count)));
    marks
}

/// A knot in a cord that comes out of an open cover; or one round a bead, which its loop goes through.
fn covered(own: Props<'_>) -> Vec<Mark> {
    let (level, half) = (9.6, -1.25);
    let twist = CordTwist { left: at(11.8, level), right: at(21.0, level), half, crossings: 5, rising_over: true };
    let mut marks = double_overhand(at(0.0, level), &twist, 1);
    marks.extend(tight::open_cover(at(4.4, level), 2.7, 0.75));
    if let Some(kind) = own.cast.kinds.first() {
        let above = at(16.4, level + half - 5.2);
        let (bead, scale) = own.kind(*kind, above, [4.4, 3.6]);
        let reach = at(0.5 * own.stencils.design().beads[*kind].along.value() * scale, 0.0);
        marks.push(bead);
        marks.extend(through(&[(above - reach, above + reach)]));
    }
    marks.extend(arrow(&[at(20.4, 14.6), at(16.6, 15.2), at(12.6, 14.0)]));
    marks
}

/// A knot that is moved against the last bead before it is drawn tight.
fn free(legs: u8, own: Props<'_>) -> Vec<Mark> {
    let half = 1.0 + 0.4 * breadth(legs);
    let twist = CordTwist { left: at(9.4, 6.4), right: at(20.6, 6.4), half, crossings: 5, rising_over: true };
    let mut marks = double_overhand(at(2.6, 6.4), &twist, legs);
    marks.extend(bead_beside(own, at(5.6, 6.4), [5.6, 5.6]));
    marks.extend(arrow(&[at(17.6, 16.4), at(10.0, 16.4), at(6.4, 13.6), at(4.8, 10.4)]));
    marks
}

/// The bead beside a knot, from a place to the left, which has room so long and so broad.
pub fn bead_beside(own: Props<'_>, from: Point, [long, broad]: [f64; 2]) -> Vec<Mark> {
    let beads = own.beads(0);
    own.fitted(&beads, RowRoom { count: 1, long, broad: [0.0, broad] }).first(1).from(from, PI)
}

/// A loose knot led to the bead by an awl in it.
pub fn led(own: Props<'_>) -> Vec<Mark> {
    let twist = CordTwist { left: at(8.8, 6.4), right: at(16.2, 6.4), half: 1.3, crossings: 3, rising_over: true };
    let path = smooth(&[
        vec![at(0.4, 5.0), at(6.6, 5.0)],
        twist.cord(false, 0.0, 1.0),
        vec![at(17.6, 8.6), at(17.4, 11.2), at(12.5, 12.8), at(7.6, 11.2), at(7.4, 8.6)],
        twist.cord(true, 0.0, 1.0),
        vec![at(18.4, 5.0), at(23.6, 5.0)],
    ]);
    let mut marks = cord(&path, PLAIN);
    marks.extend(twist.overs().iter().flat_map(|(_, over)| cord_over(over, PLAIN)));
    marks.extend(bead_beside(own, at(6.2, 5.0), [6.0, 6.0]));
    marks.push(metal(polygon(&[at(9.4, 8.6), at(18.2, 13.2), at(17.6, 14.4)])));
    marks.push(filled(
        mapped(&rounded_rect(at(0.0, -1.4), 6.4, 2.8, 1.2), |point| at(17.4, 13.6) + point.turned(0.48)),
        tinted(),
    ));
    marks.extend(arrow(&[at(11.4, 15.6), at(8.0, 14.4), at(4.8, 11.6)]));
    marks
}

/// Two ends: twice over, then once back.
pub fn surgeons(own: Props<'_>) -> Vec<Mark> {
    let lower = CordTwist { left: at(4.6, 12.0), right: at(19.4, 12.0), half: 1.4, crossings: 5, rising_over: true };
    let upper = CordTwist { left: at(7.6, 5.4), right: at(16.4, 5.4), half: 1.4, crossings: 3, rising_over: false };
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
    let [first, last] = end_beads(own, 3.4);
    marks.extend(first.about(at(1.7, 16.2), 0.0));
    marks.extend(last.about(at(22.3, 16.2), PI));
    marks.extend(arrow(&[at(6.6, 1.7), at(4.6, 0.8), at(2.4, 0.5)]));
    marks.extend(arrow(&[at(17.4, 1.7), at(19.4, 0.8), at(21.6, 0.5)]));
    marks
}

/// The beads at two ends, as large as they are against one another, so long and broad at most; none so small that cord is
/// not seen to go through.
pub fn end_beads(own: Props<'_>, most: f64) -> [OwnRow<'_>; 2] {
    const LEAST: f64 = 1.8;
    let fitted = [0, 1].map(|row| own.row(row, RowRoom { count: 1, long: most, broad: [0.0, most] }).first(1));
    let common = fitted[0].scale.min(fitted[1].scale);
    [0, 1].map(|row| {
        let broad = fitted[row].broadest() / fitted[row].scale;
        own.scaled(row, common.max(LEAST / broad.max(f64::MIN_POSITIVE)).min(fitted[row].scale)).first(1)
    })
}

/// Two ends that come from the beads beside them go together through one bead, from left to right at a level, and are tied
/// behind it; one of them through the loop of what hangs there.
pub fn met(level: f64, hangs: bool, own: Props<'_>) -> Vec<Mark> {
    let half = 0.55;
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
    let mut marks = [tail(&end(-1.0, above), PLAIN), tail(&end(1.0, 0.0), tinted())].concat();
    if hangs {
        let (top, foot) = (level + 3.6, 18.0);
        marks.push(filled(polygon(&[at(15.0, top), at(17.0, top), at(18.4, foot), at(13.6, foot)]), tinted()));
        marks.extend(wire(&circle(at(16.0, level + 1.45), 1.9)));
        marks.extend(cord(&polyline(&[at(16.0, level + half), at(20.0, level + half)]), tinted()));
    }
    let [first, last] = end_beads(own, 3.8);
    marks.extend(first.about(at(1.9, level - 5.4), 0.0));
    marks.extend(last.about(at(1.9, level + 5.4), 0.0));
    marks.extend(own.cast.kinds.first().map(|kind| own.kind(*kind, at(8.8, level), [8.4, 7.6]).0));
    marks.extend(tight::knot(at(20.4, level), 1.5));
    marks
}
