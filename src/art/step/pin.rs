//! Pins, cones and rings: covering, turning a loop, opening a ring, making a dangle.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use super::ROOM;
use super::crimp::gathered;
use super::own::{OwnRow, Props, RowRoom, clipped};
use crate::art::pen::{EDGE, arrow, at, cutters, filled, ghost, line, metal, wire};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment, Stroke};
use crate::paint::outline::{arc, circle, polygon, polyline, rounded_rect};
use crate::paint::style;
use crate::pattern::FindingKind;
use crate::steps::Below;

/// A cone slid down a pin's wire, cut open: in it the loops on the eye, and their crimps.
pub fn cone(strands: u8, own: Props<'_>) -> Vec<Mark> {
    let outer = [(at(5.2, 5.8), at(10.9, 8.4)), (at(5.2, 13.2), at(10.9, 10.6))];
    let middle = (at(5.0, 9.5), at(10.7, 9.5));
    let outer = outer.into_iter().filter(|_| strands > 1);
    let hung: Vec<_> = outer.chain((strands != 2).then_some(middle)).collect();
    let pin = [circle(at(11.3, 9.5), 2.2), polyline(&[at(13.5, 9.5), at(24.0, 9.5)])].concat();
    let mut marks = gathered(&hung, 0.6, &pin, 4.6);
    marks.extend([-1.0, 1.0].map(|side| filled(wall(side), own.metal(own.of_kind(FindingKind::Cone)))));
    marks.extend(arrow(&[at(22.8, 3.8), at(18.6, 2.4), at(13.6, 2.4)]));
    marks
}

/// A wall of a cone that is cut open, on one side of the wire.
fn wall(side: f64) -> Vec<Segment> {
    let place = |x: f64, off: f64| at(x, 9.5 + side * off);
    vec![
        Segment::Move(place(3.2, 7.2)),
        Segment::Curve(place(8.6, 6.6), place(12.0, 2.6), place(19.0, 2.0)),
        Segment::Line(place(19.0, 0.7)),
        Segment::Curve(place(11.4, 1.4), place(8.2, 5.6), place(3.2, 6.2)),
        Segment::Close,
    ]
}

/// A wire bent where it leaves a cone or an eye, and rolled back about a round jaw until the loop is shut, or still a little
/// open.
pub fn plain_loop(open: bool, own: Props<'_>) -> Vec<Mark> {
    let (bend, radius) = (at(5.4, 8.6), 2.5);
    let centre = bend - at(0.0, radius);
    let end = if open { -1.16 * PI } else { -1.46 * PI };
    let rolled = arc(centre, (radius, radius), PI / 2.0, end);
    let stem = [Segment::Move(bend + at(0.0, 1.8)), Segment::Line(bend)];
    let mut marks = wire(&[&stem, &rolled[1..]].concat());
    marks.push(below_loop(bend + at(0.0, 1.4), own));
    marks.push(filled(circle(centre, radius - 0.8), style::QUIET));
    let length = TAU * radius;
    marks.push(ghost(rounded_rect(bend + at(1.2, -0.475), length - 1.2, 0.95, 0.1)));
    let jaw = bend + at(length - 1.6, -1.9);
    marks.push(ghost(circle(jaw, 1.3)));
    marks.extend(arrow(&[jaw - at(0.2, 2.0), at(17.6, 1.4), at(13.4, 0.6), at(9.4, 3.0)]));
    vec![clipped(marks)]
}

/// What is just below a pin's loop: the narrow end of its cone or cap, what is strung on it down to its foot, or its eye.
pub fn below_loop(top: Point, own: Props<'_>) -> Mark {
    let room = (ROOM.1 - top.y).max(4.0);
    if let Some(cover) = own.of_kind(FindingKind::Cone).or(own.of_kind(FindingKind::BeadCap)) {
        let long = own.stencils.design().findings[cover].along().value();
        let scale = own.finding(cover, top, -FRAC_PI_2, [room, 10.0]).1;
        return own.stencils.finding(cover, top + at(0.0, long * scale), -FRAC_PI_2, scale);
    }
    if own.bits(0).is_empty() {
        return Mark::ornament(wire(&circle(top + at(0.0, 2.8), 2.4)));
    }
    let row = on_foot(own, [room - foot_reach(own), 6.0]);
    let low = top + at(0.0, row.length());
    Mark::ornament([wire(&polyline(&[top, low])), row.from(low, -FRAC_PI_2), foot(low, own)].concat())
}

/// The end of a coil, whose inside lies below, rolled outward about a round jaw; where it was before.
pub fn turned_end() -> Vec<Mark> {
    let (middle, round, radius) = (at(9.8, 26.4), 16.0, 2.3);
    let (left, end, before) = (-0.71 * PI, -0.53 * PI, -0.26 * PI);
    let centre = middle + Point::towards(end) * (round + radius);
    let coil = arc(middle, (round, round), left, end);
    let rolled = arc(centre, (radius, radius), end + PI, end - 0.93 * PI);
    let [outer, inner] = [0.475, -0.475].map(|aside| arc(middle, (round + aside, round + aside), end + 0.08, before));
    let jaw = middle + Point::towards(before + 0.09) * (round + 1.6);
    let mut marks = wire(&[&coil, &rolled[1..]].concat());
    marks.push(filled(circle(centre, radius - 0.8), style::QUIET));
    marks.extend([ghost(outer), ghost(inner), ghost(circle(jaw, 1.3))]);
    marks.extend(arrow(&[jaw - at(0.2, 2.2), at(18.4, 6.6), at(14.6, 4.6), at(11.4, 5.8)]));
    marks
}

/// Beads threaded onto a pin, from its head or its eye on.
pub fn threaded(has_eye: bool, own: Props<'_>) -> Vec<Mark> {
    let level = 9.0;
    let foot = if has_eye {
        wire(&circle(at(2.2, level), 1.6))
    } else {
        vec![metal(rounded_rect(at(2.6, level - 1.6), 1.1, 3.2, 0.4))]
    };
    let mut marks = wire(&polyline(&[at(3.7, level), at(23.6, level)]));
    marks.extend(foot);
    let row = own.row(0, RowRoom { count: 16, long: 15.0, broad: [1.8, 6.4] });
    let strung = row.first(row.count().saturating_sub(1)).within(8.4);
    let next = row.after(strung.count()).first(1);
    let middle = if strung.count() > 0 { 16.2 } else { 11.0 };
    marks.extend(strung.from(at(3.8, level), 0.0));
    marks.extend(next.about(at(middle, level), 0.0));
    let baseline = strung.baseline(level).max(next.baseline(level));
    marks.extend(strung.letters(3.8, baseline));
    marks.extend(next.letters(middle - 0.5 * next.length(), baseline));
    marks.extend(arrow(&[at(19.6, 4.2), at(16.2, 3.6), at(11.4, 4.2)]));
    marks
}

/// Where the wire of a pin is bent that is about to be closed.
const BEND: Point = at(6.4, 8.4);

/// A wire bent to a right angle where it leaves what is below, in the jaws of pliers; where it was.
pub fn bent(below: Below, own: Props<'_>) -> Vec<Mark> {
    let mut marks = wire(&polyline(&[at(BEND.x, 12.0), BEND, at(23.6, BEND.y)]));
    marks.push(held(below, own));
    marks.push(ghost(rounded_rect(at(BEND.x - 0.475, 0.4), 0.95, 7.4, 0.1)));
    marks.extend(jaws(at(17.2, BEND.y), 0.6));
    marks.extend(arrow(&[at(8.6, 1.6), at(11.4, 2.4), at(13.4, 4.8)]));
    vec![clipped(marks)]
}

/// The bent wire cut so far from its bend as its loop takes.
pub fn cut(below: Below, own: Props<'_>) -> Vec<Mark> {
    let (end, level) = (17.0, BEND.y - 4.2);
    let mut marks = wire(&polyline(&[at(BEND.x, 12.0), BEND, at(end, BEND.y)]));
    marks.push(held(below, own));
    marks.push(ghost(rounded_rect(at(end + 0.3, BEND.y - 0.475), 6.4, 0.95, 0.1)));
    marks.extend([BEND.x, end].map(|x| ghost(polyline(&[at(x, BEND.y - 0.8), at(x, level - 1.0)]))));
    marks.extend(arrow(&[at(11.0, level), at(BEND.x + 0.2, level)]));
    marks.extend(arrow(&[at(12.4, level), at(end - 0.2, level)]));
    marks.extend(cutters(at(end, BEND.y + 0.6), PI));
    vec![clipped(marks)]
}

/// What a pin's wire comes out of.
fn held(below: Below, own: Props<'_>) -> Mark {
    match below {
        Below::Beads | Below::Cover => below_loop(BEND + at(0.0, 1.0), own),
        Below::Eye => Mark::ornament(wire(&circle(BEND + at(0.0, 5.4), 2.4))),
    }
}

/// The jaws of pliers on both sides of a middle, so far from it.
fn jaws(middle: Point, off: f64) -> Vec<Mark> {
    let jaw = |side: f64| {
        let corners = [at(-1.2, off), at(2.4, off), at(3.2, off + 4.4), at(-2.0, off + 4.4)];
        filled(polygon(&corners.map(|corner| middle + at(corner.x, side * corner.y))), style::RULE)
    };
    vec![jaw(-1.0), jaw(1.0)]
}

/// A ring that gapes between the jaws of pliers; then shut.
pub fn gap() -> Vec<Mark> {
    let (gaping, shut, radius) = (at(6.4, 9.0), at(19.6, 9.0), 3.6);
    let mut marks = wire(&arc(gaping, (radius, radius), 0.3, TAU - 0.3));
    marks.extend(wire(&circle(shut, radius)));
    marks.push(line(polyline(&[shut + at(radius - 0.47, 0.0), shut + at(radius + 0.47, 0.0)])));
    marks.extend(jaws(gaping, 4.2));
    marks.extend(arrow(&[at(12.4, 9.0), at(14.6, 9.0)]));
    marks
}

/// A ring lying flat, its ends bent one down and one up; below it one pulled apart, struck out.
pub fn open_link() -> Vec<Mark> {
    let right = at(8.0, 7.4);
    let mut marks = wire(&polyline(&lying(right, 6.4, 0.1, 1.7)));
    marks.extend(arrow(&[right + at(-1.6, 5.8), right + at(-1.6, 9.2)]));
    marks.extend(arrow(&[right + at(1.6, 0.8), right + at(1.6, -2.2)]));
    let wrong = at(19.6, 13.2);
    marks.extend(wire(&polyline(&lying(wrong, 3.6, 0.75, 0.0))));
    let arm = |x: f64, y: f64| polyline(&[wrong - at(x, y), wrong + at(x, y)]);
    let stroke = Some(Stroke::new(style::ACCENT, EDGE * 1.4));
    marks.push(Mark::Shape { outline: [arm(3.6, 3.2), arm(3.6, -3.2)].concat(), fill: None, stroke });
    marks
}

/// A ring seen at a slant, open towards the reader by so much of a turn on each side, its left end
/// bent down and its right end up.
pub fn lying(centre: Point, radius: f64, open: f64, bent: f64) -> Vec<Point> {
    const PIECES: u32 = 60;
    const SLANT: f64 = 0.5;
    let place = |step: u32| {
        let share = f64::from(step) / f64::from(PIECES);
        let round = Point::towards(PI / 2.0 + open + (TAU - 2.0 * open) * share) * radius;
        centre + at(round.x, round.y * SLANT + bent * (1.0 - 2.0 * share))
    };
    (0..=PIECES).map(place).collect()
}

/// Beads on a pin with its wire bent; then the loop rolled, shut or a little open.
pub fn dangle(open: bool, own: Props<'_>) -> Vec<Mark> {
    let mut marks = wire(&polyline(&[at(4.0, 16.6), at(4.0, 5.2), at(12.0, 5.2)]));
    marks.extend(strung(4.0, own));
    let radius = 2.0;
    let end = if open { -1.24 * PI } else { -1.46 * PI };
    let hoop = arc(at(18.4, 5.2 - radius), (radius, radius), PI / 2.0, end);
    marks.extend(wire(&polyline(&[at(18.4, 16.6), at(18.4, 5.2)])));
    marks.extend(wire(&hoop));
    marks.extend(strung(18.4, own));
    marks.extend(arrow(&[at(9.4, 11.0), at(13.2, 11.0)]));
    marks
}

/// Beads above the foot of a pin.
fn strung(x: f64, own: Props<'_>) -> Vec<Mark> {
    [on_foot(own, [10.0, 6.0]).from(at(x, 15.8), -FRAC_PI_2), foot(at(x, 15.8), own)].concat()
}

/// What is strung on a pin, which has room so long and so broad.
pub fn on_foot(own: Props<'_>, [long, broad]: [f64; 2]) -> OwnRow<'_> {
    own.row(0, RowRoom { count: 16, long, broad: [0.0, broad] })
}

/// How far below what is strung a pin's head or eye reaches.
fn foot_reach(own: Props<'_>) -> f64 {
    if has_eye(own) { 2.2 } else { 1.2 }
}

fn has_eye(own: Props<'_>) -> bool {
    own.of_kind(FindingKind::EyePin).is_some()
}

/// The head or the eye at the foot of an upright pin, below a place.
pub fn foot(from: Point, own: Props<'_>) -> Vec<Mark> {
    if has_eye(own) {
        return wire(&circle(from + at(0.0, 0.9), 0.75));
    }
    vec![metal(rounded_rect(from + at(-1.2, 0.1), 2.4, 0.9, 0.3))]
}
