//! Crimping: the loop, the press, and loops gathered on an eye.

use super::pen::{PLAIN, arrow, at, bead, cord, cord_over, filled, hidden, line, metal, wire};
use crate::geometry::Point;
use crate::sheet::mark::{Mark, Step};
use crate::sheet::outline::{circle, closed_curve, curve, ellipse, mapped, polyline, rounded_rect};
use crate::sheet::style;

/// A cord from a bead through a crimp, round a ring and back.
pub fn open() -> Vec<Mark> {
    let out =
        curve(&[at(4.0, 9.0), at(6.0, 8.7), at(8.0, 8.3), at(13.0, 8.3), at(16.5, 6.4), at(19.0, 6.5), at(20.8, 9.0)]);
    let back = curve(&[
        at(20.8, 9.0),
        at(19.0, 11.5),
        at(16.5, 11.6),
        at(13.0, 9.7),
        at(8.0, 9.7),
        at(6.0, 10.9),
        at(3.4, 13.6),
    ]);
    let ring = circle(at(20.9, 9.0), 2.6);
    let body = rounded_rect(at(8.2, 7.0), 4.6, 4.0, 0.5);
    let mut marks = [cord(&back, PLAIN), cord(&out, PLAIN), wire(&ring), cord_over(&after(&out, 3), PLAIN)].concat();
    marks.push(metal(body));
    marks.push(hidden([polyline(&[at(8.4, 8.3), at(12.6, 8.3)]), polyline(&[at(8.4, 9.7), at(12.6, 9.7)])].concat()));
    marks.push(bead(at(2.3, 9.0), 2.1));
    marks.extend(arrow(&[at(13.2, 5.4), at(15.6, 4.2), at(18.2, 3.9)]));
    marks.extend(arrow(&[at(18.2, 14.1), at(15.6, 13.8), at(13.2, 12.6)]));
    marks.extend(arrow(&[at(7.0, 12.6), at(5.6, 14.1), at(4.4, 15.6)]));
    marks
}

/// A path without its first pieces.
fn after(path: &[Step], pieces: usize) -> Vec<Step> {
    let from = path.get(pieces).and_then(|step| match step {
        Step::Move(to) | Step::Line(to) | Step::Curve(_, _, to) => Some(Step::Move(*to)),
        Step::Close => None,
    });
    from.into_iter().chain(path.iter().skip(pieces + 1).copied()).collect()
}

/// A crimp in three states, above from the side and below from the end.
pub fn pressed() -> Vec<Mark> {
    let mut marks = Vec::new();
    for (x, half) in [(3.6, 1.7), (12.0, 1.5), (20.4, 1.05)] {
        marks.extend(from_side(x, half));
    }
    marks.push(line(polyline(&[at(9.9, 3.0), at(14.1, 3.0)])));
    marks.extend(from_end(at(3.6, 13.0), circle(Point::ORIGIN, 2.6), [at(-0.95, 0.0), at(0.95, 0.0)]));
    marks.extend(from_end(at(12.0, 13.2), dented(), [at(-1.7, 0.2), at(1.7, 0.2)]));
    marks.extend(from_end(at(20.4, 13.0), folded(), [at(-0.1, -1.0), at(-0.1, 1.0)]));
    marks.extend(arrow(&[at(12.0, 8.6), at(12.0, 12.4)]));
    marks.extend(arrow(&[at(20.4, 7.6), at(20.4, 9.9)]));
    marks.extend(arrow(&[at(20.4, 18.0), at(20.4, 16.1)]));
    marks.extend([7.8, 16.2].into_iter().flat_map(|x| chevron(at(x, 13.0))));
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
fn from_end(centre: Point, wall: Vec<Step>, cords: [Point; 2]) -> Vec<Mark> {
    let mut marks = wire(&mapped(&wall, |point| point + centre));
    marks.extend(cords.map(|pass| filled(ellipse(centre + pass, 0.6, 0.6), style::QUIET)));
    marks
}

fn dented() -> Vec<Step> {
    let side = [at(0.55, -0.7), at(1.4, -1.7), at(2.7, -1.2), at(3.0, 0.2), at(2.2, 1.6)];
    lobes(at(0.0, 0.4), &side, at(0.0, 1.8))
}

fn folded() -> Vec<Step> {
    let side = [at(0.3, -1.1), at(1.0, -1.8), at(1.9, -1.2), at(2.1, 0.2), at(1.3, 1.6)];
    mapped(&lobes(at(0.0, 0.9), &side, at(0.0, 1.9)), |point| at(-point.y, point.x))
}

/// A closed wall, the same on both sides of an upright line.
fn lobes(dent: Point, side: &[Point], foot: Point) -> Vec<Step> {
    let mirrored = side.iter().rev().map(|point| at(-point.x, point.y));
    let points: Vec<_> = [dent].into_iter().chain(side.iter().copied()).chain([foot]).chain(mirrored).collect();
    closed_curve(&points)
}

/// The loops of three strands on the eye of a pin.
pub fn gather() -> Vec<Mark> {
    let eye = at(14.0, 9.0);
    let loops = [(at(5.6, 3.6), at(14.2, 8.0)), (at(5.2, 9.0), at(14.6, 9.0)), (at(5.6, 14.4), at(14.2, 10.0))];
    let sides = loops.map(|(crimp, tip)| [teardrop(crimp, tip, -1.3), teardrop(crimp, tip, 1.3)]);
    let mut marks: Vec<_> = sides.iter().flatten().flat_map(|side| cord(side, PLAIN)).collect();
    marks.extend(wire(&[circle(eye, 2.6), polyline(&[at(16.6, 9.0), at(24.0, 9.0)])].concat()));
    marks.extend(sides.iter().flat_map(|[upper, _]| cord_over(upper, PLAIN)));
    marks.extend(loops.iter().flat_map(|(crimp, tip)| closed_crimp(*crimp, (*tip - *crimp).angle())));
    marks
}

/// One side of a loop from a crimp to its tip, bulging by so much to its right.
fn teardrop(crimp: Point, tip: Point, bulge: f64) -> Vec<Step> {
    let way = tip - crimp;
    let aside = at(-way.y, way.x) * (bulge / way.length());
    let start = crimp + aside * 0.25;
    curve(&[start, crimp + way * 0.35 + aside * 0.75, crimp + way * 0.75 + aside, tip])
}

/// A pressed crimp on a cord that comes from the left edge.
fn closed_crimp(middle: Point, angle: f64) -> Vec<Mark> {
    let placed = |path: Vec<Step>| mapped(&path, |point| middle + point.turned(angle));
    let mut marks = cord(&placed(polyline(&[at(-5.2, 0.0), at(0.0, 0.0)])), PLAIN);
    marks.push(metal(placed(rounded_rect(at(-1.6, -0.9), 3.2, 1.8, 0.4))));
    marks
}
