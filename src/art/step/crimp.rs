//! Crimping: the loop, the press, and loops gathered on an eye.

use std::f64::consts::PI;

use super::own::{Props, clipped};
use crate::art::pen::{
    EDGE, PLAIN, arrow, at, cord, cord_over, cutters, filled, hidden, line, metal, stretch, tail, through, tinted, wire,
};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Segment, Stroke};
use crate::paint::outline::{arc, circle, closed_curve, curve, ellipse, mapped, polyline, rounded_rect};
use crate::paint::style;
use crate::pattern::FindingKind;

/// A bare cord through a crimp, round a ring and back, its tail beside it.
pub fn open(own: Props<'_>) -> Vec<Mark> {
    let upper = [at(0.0, 8.3), at(4.0, 8.3), at(8.0, 8.3), at(13.0, 8.3), at(16.4, 6.6), at(19.0, 6.9), at(20.6, 9.0)];
    let lower = [at(19.0, 11.1), at(16.4, 11.4), at(13.0, 9.7), at(8.0, 9.7), at(6.0, 11.2), at(3.4, 14.4)];
    let mut marks = looped(&curve(&[upper.as_slice(), &lower].concat()), own);
    marks.extend(arrow(&[at(7.4, 12.8), at(6.2, 14.3), at(5.0, 16.0)]));
    marks
}

/// A cord through beads and a crimp, round a ring, and back through all of them.
pub fn packed(own: Props<'_>) -> Vec<Mark> {
    let upper = [at(0.0, 8.4), at(4.0, 8.3), at(8.0, 8.3), at(13.0, 8.3), at(16.4, 6.6), at(19.0, 6.9), at(20.6, 9.0)];
    let crimp = RIGHT - own.crimp_length();
    let (beads, left) = against(crimp, crimp - 2.0, own);
    let lower = [at(19.0, 11.1), at(16.4, 11.4), at(13.0, 9.7), at(crimp, 9.7), at(left, 9.7), at(left - 2.4, 11.4)];
    let mut marks = looped(&curve(&[upper.as_slice(), &lower].concat()), own);
    marks.extend(beads);
    marks.extend(arrow(&[at(7.4, 14.2), at(5.0, 14.4), at(2.2, 14.0)]));
    vec![clipped(marks)]
}

/// Right edge of a crimp.
const RIGHT: f64 = 12.4;

/// The beads against a crimp at a place, through which a cord and its tail go on to the left, and how far they reach.
fn against(crimp: f64, long: f64, own: Props<'_>) -> (Vec<Mark>, f64) {
    let beads = own.beside_crimp(2, long);
    let left = crimp - beads.length();
    let mut marks = beads.from(at(crimp, 9.0), PI);
    marks.extend(through(&[8.3, 9.7].map(|y| (at(left, y), at(crimp, y)))));
    (marks, left)
}

/// A cord through a crimp and a guard, the guard round a ring, and back.
pub fn guarded(own: Props<'_>) -> Vec<Mark> {
    guard(&[at(8.0, 9.7), at(5.0, 11.2), at(2.6, 14.4)], own)
}

/// The same against beads, through which the tail goes on.
pub fn guarded_packed(own: Props<'_>) -> Vec<Mark> {
    let crimp = BEFORE_GUARD - own.crimp_length();
    let (beads, left) = against(crimp, crimp - 1.6, own);
    let mut marks = guard(&[at(8.0, 9.7), at(left, 9.7), at(left - 2.0, 11.4)], own);
    marks.extend(beads);
    vec![clipped(marks)]
}

/// Right edge of a crimp before a guard.
const BEFORE_GUARD: f64 = 10.4;

/// The guard with its crimp, and the way of the tail from there.
fn guard(end: &[Point], own: Props<'_>) -> Vec<Mark> {
    let upper = [at(0.0, 8.3), at(4.0, 8.3), at(8.0, 8.3), at(10.6, 8.3), at(13.6, 6.4), at(16.6, 6.4), at(18.6, 9.0)];
    let lower = [at(16.6, 11.6), at(13.6, 11.6), at(10.6, 9.7)];
    let path = curve(&[upper.as_slice(), &lower, end].concat());
    let mut marks = tail(&path, PLAIN);
    marks.extend(sleeve(&stretch(&path, 4, 8)));
    marks.extend(wire(&circle(at(20.0, 9.0), 3.2)));
    marks.extend(sleeve(&stretch(&path, 4, 6)));
    marks.extend(own.crimp_between([BEFORE_GUARD - own.crimp_length(), BEFORE_GUARD], 9.0));
    marks.extend(arrow(&[at(9.4, 4.8), at(12.2, 3.4), at(15.4, 3.2)]));
    marks.extend(arrow(&[at(15.4, 14.8), at(12.2, 14.6), at(9.4, 13.2)]));
    marks
}

/// A tail cut off close to a pressed crimp.
pub fn tail_cut(own: Props<'_>) -> Vec<Mark> {
    let upper = [at(0.0, 8.3), at(4.0, 8.3), at(8.0, 8.3), at(13.0, 8.3), at(16.4, 6.6), at(19.0, 6.9), at(20.6, 9.0)];
    let lower = [at(19.0, 11.1), at(16.4, 11.4), at(13.0, 9.7), at(9.0, 9.7), at(7.0, 10.8), at(4.6, 13.6)];
    let mut marks = ringed(&curve(&[upper.as_slice(), &lower].concat()), own);
    marks.extend(cutters(at(6.9, 11.0), -2.2));
    marks
}

/// A cover from its end, open and closed about a crimp; then its ball on the cord.
pub fn covered() -> Vec<Mark> {
    let (open, shut, ball) = (at(4.0, 9.4), at(11.8, 9.4), at(19.8, 9.4));
    let mut marks = wire(&arc(open, (3.0, 3.0), -0.3 * PI, 1.3 * PI));
    marks.extend(wire(&circle(shut, 2.5)));
    for middle in [open, shut] {
        marks.push(metal(circle(middle, 1.2)));
        marks.push(filled(circle(middle, 0.5), PLAIN));
    }
    marks.extend(cord(&polyline(&[ball - at(4.0, 0.0), ball + at(4.0, 0.0)]), PLAIN));
    marks.push(metal(circle(ball, 2.6)));
    marks.push(line(polyline(&[ball - at(0.0, 2.5), ball + at(0.0, 2.5)])));
    marks.extend([open + at(3.9, 0.0), shut + at(3.3, 0.0)].into_iter().flat_map(chevron));
    marks.extend(arrow(&[at(0.6, 3.2), at(1.2, 4.8), at(2.4, 6.2)]));
    marks.extend(arrow(&[at(7.4, 3.2), at(6.8, 4.8), at(5.6, 6.2)]));
    marks
}

/// A cord glued into an end: a drop before it is pushed in.
pub fn glued(own: Props<'_>) -> Vec<Mark> {
    let mut marks = cord(&polyline(&[at(0.0, 10.4), at(17.0, 10.4)]), PLAIN);
    marks.extend(wire(&circle(at(20.8, 10.4), 2.2)));
    marks.push(filled(rounded_rect(at(11.4, 8.2), 7.6, 4.4, 0.7), own.metal(own.of_kind(FindingKind::CordEnd))));
    marks.extend(through(&[9.9, 10.9].map(|y| (at(11.6, y), at(17.0, y)))));
    marks.push(drop(at(8.0, 3.0)));
    marks.extend(arrow(&[at(3.0, 14.4), at(6.4, 14.4), at(10.0, 14.4)]));
    marks
}

/// A drop of glue below a point.
pub fn drop(top: Point) -> Mark {
    let outline = vec![
        Segment::Move(top),
        Segment::Curve(top + at(1.6, 2.4), top + at(1.8, 4.2), top + at(0.0, 4.4)),
        Segment::Curve(top + at(-1.8, 4.2), top + at(-1.6, 2.4), top),
        Segment::Close,
    ];
    filled(outline, tinted())
}

/// A guard: a thin tube bent round, in which the cord runs.
pub fn sleeve(path: &[Segment]) -> Vec<Mark> {
    let tube = |colour: Rgb, width: f64| {
        let stroke = Some(Stroke::new(colour, width));
        Mark::Shape { outline: path.to_vec(), fill: None, stroke }
    };
    vec![tube(style::INK, 2.0), tube(style::RULE, 2.0 - 2.0 * EDGE), hidden(path.to_vec())]
}

/// A cord's way through a crimp, round a ring and back: over the ring's near side, and how it goes.
fn looped(path: &[Segment], own: Props<'_>) -> Vec<Mark> {
    let mut marks = ringed(path, own);
    marks.extend(arrow(&[at(13.2, 5.2), at(15.6, 4.0), at(18.4, 3.6)]));
    marks.extend(arrow(&[at(18.4, 14.4), at(15.6, 14.0), at(13.2, 12.8)]));
    marks
}

fn ringed(path: &[Segment], own: Props<'_>) -> Vec<Mark> {
    let mut marks = tail(path, PLAIN);
    marks.extend(round_ring(path, wire(&circle(at(20.9, 9.0), 2.6)), own));
    marks.extend(own.crimp_between([RIGHT - own.crimp_length(), RIGHT], 9.0));
    marks
}

/// A ring, and the loop of a cord about it, in its guard where it has one: from piece 3 of its way over the ring to piece 6,
/// and back to piece 9.
pub fn round_ring(way: &[Segment], ring: Vec<Mark>, own: Props<'_>) -> Vec<Mark> {
    if own.of_kind(FindingKind::WireGuard).is_some() {
        [sleeve(&stretch(way, 4, 8)), ring, sleeve(&stretch(way, 4, 6))].concat()
    } else {
        [ring, cord_over(&stretch(way, 3, 6), PLAIN)].concat()
    }
}

/// A crimp in three states, above from the side and below from the end.
pub fn pressed() -> Vec<Mark> {
    let mut marks = Vec::new();
    for (x, half) in [(3.6, 1.7), (12.0, 1.5), (20.4, 1.05)] {
        marks.extend(from_side(x, half));
    }
    marks.push(line(polyline(&[at(9.9, 3.0), at(14.1, 3.0)])));
    marks.extend(from_end(at(3.6, 13.0), circle(Point::ORIGIN, 2.6), [at(-0.95, 0.0), at(0.95, 0.0)]));
    marks.extend(from_end(at(12.0, 13.2), dented(), [at(-1.5, 0.2), at(1.5, 0.2)]));
    marks.extend(from_end(at(20.4, 13.0), folded(), [at(-0.1, -1.0), at(-0.1, 1.0)]));
    marks.extend(arrow(&[at(12.0, 8.6), at(12.0, 12.4)]));
    marks.extend(arrow(&[at(20.4, 7.6), at(20.4, 9.9)]));
    marks.extend(arrow(&[at(20.4, 18.0), at(20.4, 16.1)]));
    marks.extend([7.7, 16.4].into_iter().flat_map(|x| chevron(at(x, 13.0))));
    marks
}

/// Leads the eye on to the next state.
fn chevron(tip: Point) -> Vec<Mark> {
    vec![line(polyline(&[tip + at(-0.4, -0.9), tip + at(0.4, 0.0), tip + at(-0.4, 0.9)]))]
}

fn from_side(x: f64, half: f64) -> Vec<Mark> {
    let pass = half * 0.42;
    let path = |y: f64| polyline(&[at(x - 3.4, 3.0 + y), at(x + 3.4, 3.0 + y)]);
    let mut marks = [cord(&path(-pass), PLAIN), cord(&path(pass), PLAIN)].concat();
    marks.push(metal(rounded_rect(at(x - 2.1, 3.0 - half), 4.2, half * 2.0, 0.4)));
    marks
}

/// The wall of a tube about the origin and the two passes of cord in it.
fn from_end(centre: Point, wall: Vec<Segment>, cords: [Point; 2]) -> Vec<Mark> {
    let mut marks = wire(&mapped(&wall, |point| point + centre));
    marks.extend(cords.map(|pass| filled(ellipse(centre + pass, 0.6, 0.6), style::QUIET)));
    marks
}

fn dented() -> Vec<Segment> {
    let side = [at(0.55, -0.7), at(1.3, -1.7), at(2.4, -1.2), at(2.7, 0.2), at(2.0, 1.6)];
    lobes(at(0.0, 0.4), &side, at(0.0, 1.8))
}

fn folded() -> Vec<Segment> {
    let side = [at(0.3, -1.1), at(1.0, -1.8), at(1.9, -1.2), at(2.1, 0.2), at(1.3, 1.6)];
    mapped(&lobes(at(0.0, 0.9), &side, at(0.0, 1.9)), |point| at(-point.y, point.x))
}

/// A closed wall, the same on both sides of an upright line.
fn lobes(dent: Point, side: &[Point], foot: Point) -> Vec<Segment> {
    let mirrored = side.iter().rev().map(|point| at(-point.x, point.y));
    let points: Vec<_> = [dent].into_iter().chain(side.iter().copied()).chain([foot]).chain(mirrored).collect();
    closed_curve(&points)
}

/// The loops of two or three strands on the eye of a pin, whose wire goes on to be cut and rolled.
pub fn gather(strands: u8) -> Vec<Mark> {
    let outer = [(at(3.2, 2.9), at(12.4, 7.0)), (at(3.2, 15.1), at(12.4, 11.0))];
    let middle = (at(2.8, 9.0), at(12.2, 9.0));
    let hung: Vec<_> = outer.into_iter().chain((strands > 2).then_some(middle)).collect();
    let pin = [circle(at(13.2, 9.0), 3.6), polyline(&[at(16.8, 9.0), at(23.8, 9.0)])].concat();
    let mut marks = gathered(&hung, 0.9, &pin, 2.6);
    marks.extend(cut_wire(at(23.8, 9.0)));
    marks
}

/// The end of a pin's wire, cut square.
fn cut_wire(tip: Point) -> Vec<Mark> {
    vec![line(polyline(&[tip - at(0.0, 0.47), tip + at(0.0, 0.47)]))]
}

/// Loops from crimps to tips, over the near side of a pin's eye and under its far side; so much
/// cord comes to each crimp.
pub fn gathered(hung: &[(Point, Point)], breadth: f64, pin: &[Segment], cord_before: f64) -> Vec<Mark> {
    let loops: Vec<_> = hung.iter().map(|(crimp, tip)| teardrop(*crimp, *tip, breadth)).collect();
    let mut marks: Vec<_> = loops.iter().flat_map(|path| cord(path, PLAIN)).collect();
    marks.extend(wire(pin));
    marks.extend(loops.iter().flat_map(|path| cord(&stretch(path, 0, 4), PLAIN)));
    marks.extend(hung.iter().flat_map(|(crimp, tip)| closed_crimp(*crimp, (*tip - *crimp).angle(), cord_before)));
    marks
}

/// A loop from a crimp round its tip and back, so many times as broad as one in [`gather`].
fn teardrop(crimp: Point, tip: Point, breadth: f64) -> Vec<Segment> {
    let way = tip - crimp;
    let place = |along: f64, aside: f64| crimp + way * along + at(-way.y, way.x) * (aside * breadth / way.length());
    let upper = [(0.0, -0.4), (0.3, -0.7), (0.65, -1.15), (0.9, -0.95), (1.0, 0.0)];
    let lower = [(0.9, 0.95), (0.65, 1.15), (0.3, 0.7), (0.0, 0.4)];
    let points: Vec<_> = upper.into_iter().chain(lower).map(|(along, aside)| place(along, aside)).collect();
    curve(&points)
}

/// A pressed crimp on a cord that comes from the left.
fn closed_crimp(middle: Point, angle: f64, cord_before: f64) -> Vec<Mark> {
    let placed = |path: Vec<Segment>| mapped(&path, |point| middle + point.turned(angle));
    let mut marks = cord(&placed(polyline(&[at(-cord_before, 0.0), at(0.0, 0.0)])), PLAIN);
    marks.push(metal(placed(rounded_rect(at(-1.6, -0.9), 3.2, 1.8, 0.4))));
    marks
}
