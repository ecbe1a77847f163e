//! What hangs: a clasp in an opened ring, a link in a pin's loop, a charm on a chain, and a chain let out.

use std::f64::consts::{FRAC_PI_2, PI};

use super::pen::{arrow, at, bead, filled, ghost, metal, tinted, wire, wire_over};
use super::pin::lying;
use crate::art::finding::{jaw, lever};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{arc, circle, curve, ellipse, mapped, polygon, polyline, rounded_rect};
use crate::paint::style;

/// A link's half length and half breadth where it lies flat, to its wire's middle.
const LINK: (f64, f64) = (2.5, 1.7);
/// From one link that lies flat to the next, with one on edge between.
const PITCH: f64 = 6.6;

/// A ring opened like a door, the eye of a clasp in it.
pub fn clasp() -> Vec<Mark> {
    let ring = lying(at(6.8, 8.6), 6.0, 0.1, 1.7);
    let eye = at(13.6, 8.4);
    let mut marks = wire(&polyline(&ring));
    marks.extend(wire_over(&circle(eye, 1.9)));
    marks.extend(wire_over(&polyline(&ring[48..54])));
    marks.extend(trigger(eye + at(1.6, 0.0), 0.0).map(metal));
    marks.extend(arrow(&[at(5.2, 14.4), at(5.2, 17.6)]));
    marks.extend(arrow(&[at(8.4, 9.4), at(8.4, 6.4)]));
    marks
}

/// The lever and the claw of a trigger clasp, from where they stand on its eye along a way.
pub fn trigger(from: Point, way: f64) -> [Vec<Segment>; 2] {
    const LENGTH: f64 = 10.4;
    const BREADTH: f64 = 6.2;
    // Its first fifth is the eye.
    let share = |x: f64, y: f64| at((x - 0.19) * LENGTH, y * BREADTH);
    [lever(&share), jaw(&share)].map(|part| mapped(&part, |point| from + point.turned(way)))
}

/// The end link of a chain in the loop of a pin, which is rolled shut.
pub fn in_loop() -> Vec<Mark> {
    let (centre, radius) = (at(6.4, 8.4), 2.7);
    let hoop = |from: f64, to: f64| arc(centre, (radius, radius), from, to);
    let stem = polyline(&[centre + at(0.0, 5.0), centre + at(0.0, radius)]);
    let mut marks = wire(&[stem, hoop(FRAC_PI_2, -1.2 * PI).split_off(1)].concat());
    marks.push(metal(polygon(&[at(5.5, 13.2), at(7.3, 13.2), at(9.4, 18.0), at(3.4, 18.0)])));
    let first = centre.x + radius + LINK.0 - 1.1;
    marks.extend(wire_over(&flat(first, centre.y)));
    marks.extend(wire_over(&hoop(0.06 * PI, 0.3 * PI)));
    marks.extend(wire(&flat(first + PITCH, centre.y)));
    marks.extend([0.5, 1.5].map(|link| metal(on_edge(first + link * PITCH, centre.y))));
    marks.extend(arrow(&[at(1.2, 4.8), at(0.8, 8.4), at(2.2, 11.4)]));
    marks
}

/// A ring in a link of a chain, a charm in the ring.
pub fn charm() -> Vec<Mark> {
    let middle = 12.0;
    let ring = at(middle, 7.2);
    let round = |from: f64, to: f64| arc(ring, (2.5, 2.5), from, to);
    let mut marks = chain(middle, 3.2);
    marks.extend(wire(&circle(at(middle, 11.0), 1.5)));
    marks.extend(wire_over(&round(0.12 * PI, 1.94 * PI)));
    marks.extend(wire_over(&arc(at(middle, 3.2), LINK, 0.5 * PI, 0.72 * PI)));
    marks.extend(wire_over(&arc(at(middle, 11.0), (1.5, 1.5), -0.5 * PI, -0.15 * PI)));
    marks.push(filled(drop(at(middle, 12.2)), tinted()));
    marks.extend(arrow(&[at(18.6, 11.4), at(17.4, 10.0), at(15.6, 8.6)]));
    marks
}

/// A pin with beads, its loop in a link of a chain, about to be rolled shut.
pub fn dangle() -> Vec<Mark> {
    let (middle, level) = (12.0, 3.2);
    let (centre, radius) = (at(middle, 6.8), 2.3);
    let hoop = |from: f64, to: f64| arc(centre, (radius, radius), from, to);
    let mut marks = chain(middle, level);
    marks.extend(wire(&polyline(&[at(middle, 17.0), centre + at(0.0, radius)])));
    marks.extend(wire_over(&hoop(0.5 * PI, 2.2 * PI)));
    marks.extend(wire_over(&arc(at(middle, level), LINK, 0.5 * PI, 0.72 * PI)));
    marks.extend([bead(at(middle, 11.6), 2.2), bead(at(middle, 15.4), 1.7)]);
    marks.push(metal(rounded_rect(at(middle - 1.2, 16.9), 2.4, 0.8, 0.3)));
    marks.extend(arrow(&[at(18.2, 6.6), at(17.2, 8.8), at(14.8, 9.8)]));
    marks
}

/// A bail whose prongs go into the hole of a drop from both sides.
pub fn bail() -> Vec<Mark> {
    let hole = at(12.0, 9.0);
    let prong = |side: f64| [(1.0, 0.0), (3.4, 0.0), (3.6, -1.6), (2.0, -5.4)].map(|(x, y)| hole + at(side * x, y));
    let way: Vec<_> =
        prong(-1.0).into_iter().chain([hole - at(0.0, 7.8)]).chain(prong(1.0).into_iter().rev()).collect();
    let mut marks = vec![filled(mapped(&drop(Point::ORIGIN), |point| hole + at(0.0, -2.0) + point * 1.9), tinted())];
    marks.push(filled(circle(hole, 0.8), style::QUIET));
    marks.extend(wire(&curve(&way)));
    marks.extend(arrow(&[at(1.6, 9.0), at(4.4, 9.0), at(7.2, 9.0)]));
    marks.extend(arrow(&[at(22.4, 9.0), at(19.6, 9.0), at(16.8, 9.0)]));
    marks
}

/// Three links that lie flat, about a middle, and those on edge between them.
fn chain(middle: f64, level: f64) -> Vec<Mark> {
    let mut marks: Vec<Mark> =
        [-1.0, 0.0, 1.0].iter().flat_map(|link| wire(&flat(middle + link * PITCH, level))).collect();
    marks.extend([-1.5, -0.5, 0.5, 1.5].map(|link| metal(on_edge(middle + link * PITCH, level))));
    marks
}

/// A drop that hangs from a point.
fn drop(top: Point) -> Vec<Segment> {
    let [left, right] = [-1.0, 1.0].map(|side| (top + at(side * 2.4, 2.2), top + at(side * 2.7, 5.4)));
    let foot = top + at(0.0, 5.4);
    vec![
        Segment::Move(top),
        Segment::Curve(top + at(0.4, 1.0), right.0, at(right.0.x, top.y + 3.4)),
        Segment::Curve(right.1, foot + at(0.8, 0.0), foot),
        Segment::Curve(foot - at(0.8, 0.0), left.1, at(left.0.x, top.y + 3.4)),
        Segment::Curve(left.0, top + at(-0.4, 1.0), top),
        Segment::Close,
    ]
}

/// A clasp in a chain's first link, and where it may go farther out.
pub fn let_out() -> Vec<Mark> {
    let (first, level) = (3.6, 12.0);
    let links = [0.0, 1.0, 2.0].map(|link| first + link * PITCH);
    let mut marks: Vec<Mark> = links.iter().flat_map(|x| wire(&flat(*x, level))).collect();
    marks.extend([0.5, 1.5, 2.5].map(|link| metal(on_edge(first + link * PITCH, level))));
    let from = |x: f64| at(x, level - 8.6);
    marks.extend(trigger(from(links[0]), FRAC_PI_2).map(metal));
    marks.extend(wire(&circle(from(links[0]) - at(0.0, 1.5), 1.5)));
    let [_, claw] = trigger(from(links[2]), FRAC_PI_2);
    marks.push(ghost(claw));
    marks.extend(arrow(&[at(7.4, 3.2), at(10.2, 2.2), at(13.2, 3.2)]));
    marks
}

/// A link that lies flat.
fn flat(x: f64, y: f64) -> Vec<Segment> {
    ellipse(at(x, y), LINK.0, LINK.1)
}

/// A link seen on its edge.
fn on_edge(x: f64, y: f64) -> Vec<Segment> {
    rounded_rect(at(x - 1.7, y - 0.3), 3.4, 0.6, 0.3)
}
