//! Knots drawn tight: set with glue, and closed into a cover.

use std::f64::consts::PI;

use super::crimp::drop;
use super::knot::{bead_beside, end_beads, met};
use super::noose::ring;
use super::own::Props;
use crate::art::pen::{
    EDGE, PLAIN, arrow, at, cord, filled, legs, legs_over, line, metal, stretch, tail, tails, tinted, wire,
};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{arc, circle, curve, ellipse, mapped, polyline, rounded_rect};
use crate::steps::Knotted;

/// Where cord runs along which a knot is glued.
const LEVEL: f64 = 12.0;

/// A knot drawn tight.
pub fn knot(middle: Point, radius: f64) -> Vec<Mark> {
    let drawn = (radius / 1.4).min(1.0);
    let turn = |x: f64| {
        let points = [at(x - 0.6, -1.0), at(x + 0.2, 0.0), at(x, 1.0)];
        line(curve(&points.map(|point| middle + point * drawn)))
    };
    std::iter::once(filled(circle(middle, radius), PLAIN)).chain([-0.4, 0.4].map(turn)).collect()
}

/// A pressed crimp on what lies level.
pub fn pressed(middle: Point) -> Vec<Mark> {
    vec![metal(rounded_rect(middle - at(1.6, 1.1), 3.2, 2.2, 0.4))]
}

/// A knot and a drop of glue that falls on it.
pub fn glued(knot: Knotted, own: Props<'_>) -> Vec<Mark> {
    let (marks, onto) = match knot {
        Knotted::Covered(_) => in_cover(own),
        Knotted::Free(legs) => free(legs, own),
        Knotted::Back(legs) => back(legs),
        Knotted::Ends => ends(own),
        Knotted::Met(hangs) => (met(10.6, hangs, own), at(20.4, 9.0)),
    };
    let falls = arrow(&[at(onto.x, onto.y - 3.6), onto - at(0.0, 0.6)]);
    [marks, vec![drop(at(onto.x, onto.y - 8.6))], falls].concat()
}

/// A tight knot in an open cover, and where glue falls on it.
fn in_cover(own: Props<'_>) -> (Vec<Mark>, Point) {
    let level = 10.2;
    let (hinge, middle) = (at(4.6, level), at(9.4, level));
    let end = curve(&[at(0.0, level), middle, middle + at(6.0, 0.2), middle + at(9.4, 1.4)]);
    let mut marks = tail(&end, PLAIN);
    marks.extend(open_cover(hinge, 2.9, 0.9));
    marks.extend(in_cup(middle, own));
    (marks, middle + at(1.0, -1.2))
}

/// What a cover closes over: a knot, or a bead with the knot beside it.
fn in_cup(middle: Point, own: Props<'_>) -> Vec<Mark> {
    let Some(kind) = own.cast.kinds.first() else { return knot(middle, 1.3) };
    let (bead, _) = own.kind(*kind, middle - at(0.5, 0.0), [3.0, 3.0]);
    [vec![bead], knot(middle + at(1.5, 0.0), 0.9)].concat()
}

/// A tight knot below a bead, its tails to the right.
fn free(count: u8, own: Props<'_>) -> (Vec<Mark>, Point) {
    let middle = at(9.6, LEVEL);
    let end = curve(&[at(0.5, LEVEL), middle, middle + at(8.0, 0.4), middle + at(11.0, 1.6)]);
    let mut marks = tails(&end, count);
    marks.extend(bead_beside(own, at(8.2, LEVEL), [7.4, 6.4]));
    marks.extend(knot(middle, 1.6));
    (marks, at(middle.x, LEVEL - 1.8))
}

/// The knot that closes a loop round a ring, its tails beside the cord that comes from it.
fn back(count: u8) -> (Vec<Mark>, Point) {
    let middle = at(13.4, LEVEL);
    let end = curve(&[middle, middle + at(2.4, 1.8), middle + at(5.0, 2.8)]);
    let mut marks = tails(&end, count);
    marks.extend(legs(&polyline(&[at(23.5, LEVEL), middle]), count));
    let round = ellipse(at(9.0, LEVEL), 4.2, 2.6);
    marks.extend(legs(&round, count));
    marks.extend(ring(at(3.6, LEVEL)));
    marks.extend(legs_over(&stretch(&round, 2, 3), count));
    marks.extend(knot(middle, if count > 1 { 2.0 } else { 1.6 }));
    (marks, at(middle.x, LEVEL - 2.2))
}

/// The knot between two ends, beads on both sides.
fn ends(own: Props<'_>) -> (Vec<Mark>, Point) {
    let middle = at(12.0, LEVEL);
    let end = |side: f64| {
        let beyond = [at(2.2, 2.6), at(3.2, 5.2)].map(|off| middle + at(-side * off.x, off.y));
        curve(&[middle + at(side * 12.0, 0.0), middle + at(side * 3.0, 0.0), middle, beyond[0], beyond[1]])
    };
    let mut marks = [tail(&end(-1.0), PLAIN), tail(&end(1.0), tinted())].concat();
    let [first, last] = end_beads(own, 5.6);
    marks.extend(last.from(middle - at(5.6, 0.0), PI));
    marks.extend(first.from(middle + at(5.6, 0.0), 0.0));
    marks.extend(knot(middle, 1.6));
    (marks, at(middle.x, LEVEL - 1.8))
}

/// A hinged cup about to close over a knot, and the hook at its end.
pub fn covered(own: Props<'_>) -> Vec<Mark> {
    let hinge = at(7.0, 9.4);
    let mut marks = cord(&polyline(&[at(0.0, 9.4), at(10.6, 9.4)]), PLAIN);
    marks.extend(open_cover(hinge, 4.0, 0.5));
    marks.extend(in_cup(at(10.9, 9.4), own));
    marks.extend(arrow(&[at(15.0, 1.6), at(16.8, 3.2), at(17.2, 5.6)]));
    marks.extend(arrow(&[at(8.6, 17.9), at(10.8, 17.9), at(12.8, 16.8)]));
    marks
}

/// A hinged cup of such a radius, each half opened by so many radians, with the hook at its end.
pub fn open_cover(hinge: Point, radius: f64, opening: f64) -> Vec<Mark> {
    let scale = radius / 4.0;
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
    let hook = wire(&mapped(&hook, |point| hinge + (point * scale).turned(opening)));
    [hook, vec![cup(1.0), cup(-1.0), metal(circle(hinge, EDGE * 3.0))]].concat()
}
