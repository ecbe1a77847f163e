//! Facets: flat faces of cut beads, drawn as a few areas of equal tone.

use std::collections::BTreeMap;
use std::f64::consts::TAU;

use super::bead::BeadDrawing;
use super::glass::Window;
use super::light::{Light, Shading};
use super::shape::{self, Extents};
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Segment};
use crate::paint::outline::polygon;
use crate::pattern::{Finish, Shape};

type Corner = [f64; 3];

/// A flat face as it is seen, with its outward direction.
#[derive(Clone, Debug)]
pub struct Facet {
    corners: Vec<Point>,
    normal: Corner,
    /// Which of the bead's it is, for what chance does to it.
    number: usize,
}

impl Facet {
    fn new(corners: &[Corner]) -> Self {
        let seen = corners.iter().map(|[x, y, _]| Point::new(*x, *y)).collect();
        Self { corners: seen, normal: normal(corners), number: 0 }
    }

    fn faces_us(&self) -> bool {
        self.normal[2] > 0.02
    }

    fn is_table(&self) -> bool {
        self.normal[2] > 0.99
    }
}

/// Outward direction of a face whose corners go clockwise as seen (Newell's sum over its sides).
fn normal(corners: &[Corner]) -> Corner {
    let mut sum = [0.0; 3];
    for (index, [ax, ay, az]) in corners.iter().enumerate() {
        let [bx, by, bz] = corners[(index + 1) % corners.len()];
        sum[0] += (ay - by) * (az + bz);
        sum[1] += (az - bz) * (ax + bx);
        sum[2] += (ax - bx) * (ay + by);
    }
    let length = libm::sqrt(sum.iter().map(|part| part * part).sum());
    sum.map(|part| if length > 0.0 { part / length } else { 0.0 })
}

/// The faces of a bead that is cut by its shape or its finish; none for a smooth one.
#[must_use]
pub fn facets(shape: Shape, finish: Finish, size: Extents) -> Vec<Facet> {
    let cut = finish == Finish::Faceted;
    let facets = match shape {
        Shape::Bicone if cut => cut_in_triangles(&shape::profile(shape, size), 8),
        Shape::Bicone => cut_lengthwise(&bicone_profile(size), 6),
        Shape::Tube if cut => cut_lengthwise(&[(-size.along, size.across), (size.along, size.across)], 6),
        Shape::Cube => bevelled(&square(size, if cut { 0.24 } else { 0.08 }), if cut { 0.62 } else { 0.8 }),
        Shape::Square if cut => bevelled(&cushion(size, 16), 0.66),
        Shape::Coin if cut => bevelled(&regular(size, 12), 0.62),
        Shape::Chip if cut => fanned(bevelled(&shape::chip(size), 0.55)),
        Shape::Chip => bevelled(&shape::chip(size), 0.66),
        _ if cut => cut_in_triangles(&shape::profile(shape, size), 8),
        _ => Vec::new(),
    };
    let numbered = facets.into_iter().filter(Facet::faces_us).enumerate();
    numbered.map(|(number, facet)| Facet { number, ..facet }).collect()
}

fn bicone_profile(Extents { along, across, hole }: Extents) -> [(f64, f64); 3] {
    let tip = (hole * 1.15).min(across * 0.5);
    [(-along, tip), (0.0, across), (along, tip)]
}

fn square(Extents { along, across, .. }: Extents, cut: f64) -> Vec<Point> {
    let c = along.min(across) * cut;
    let at = Point::new;
    let (x, y) = (along, across);
    vec![
        at(-x + c, -y),
        at(x - c, -y),
        at(x, -y + c),
        at(x, y - c),
        at(x - c, y),
        at(-x + c, y),
        at(-x, y - c),
        at(-x, -y + c),
    ]
}

fn regular(Extents { along, across, .. }: Extents, corners: u32) -> Vec<Point> {
    let towards = |i: u32| Point::towards(f64::from(i) / f64::from(corners) * TAU);
    (0..corners).map(towards).map(|at| Point::new(at.x * along, at.y * across)).collect()
}

/// Corners on a square with sides that swell and corners that are round.
fn cushion(Extents { along, across, .. }: Extents, corners: u32) -> Vec<Point> {
    const ROUNDNESS: f64 = 0.5;
    let swollen = |share: f64| libm::copysign(libm::pow(libm::fabs(share), ROUNDNESS), share);
    let towards = |i: u32| Point::towards((f64::from(i) + 0.5) / f64::from(corners) * TAU);
    (0..corners).map(towards).map(|at| Point::new(swollen(at.x) * along, swollen(at.y) * across)).collect()
}

/// A flat table with a slope down to each side; the corners go clockwise.
fn bevelled(corners: &[Point], table: f64) -> Vec<Facet> {
    let least = corners.iter().map(|corner| corner.length()).fold(f64::INFINITY, f64::min);
    let depth = least * (1.0 - table) * 0.8;
    let low = |corner: Point| [corner.x, corner.y, 0.0];
    let high = |corner: Point| [corner.x * table, corner.y * table, depth];
    let next = |index: usize| corners[(index + 1) % corners.len()];
    let sides = corners.iter().enumerate().map(|(i, a)| Facet::new(&[low(*a), low(next(i)), high(next(i)), high(*a)]));
    let top: Vec<Corner> = corners.iter().map(|corner| high(*corner)).collect();
    sides.chain([Facet::new(&top)]).collect()
}

/// The table cut once more, into triangles that rise a little to its middle.
fn fanned(facets: Vec<Facet>) -> Vec<Facet> {
    const RISE: f64 = 0.3;
    let (tables, mut facets): (Vec<_>, Vec<_>) = facets.into_iter().partition(Facet::is_table);
    for corners in tables.iter().map(|table| &table.corners) {
        let high = corners.first().map_or(0.0, |corner| corner.length()) * RISE;
        let side = |(i, a): (usize, &Point)| {
            let b = corners[(i + 1) % corners.len()];
            Facet::new(&[[a.x, a.y, 0.0], [b.x, b.y, 0.0], [0.0, 0.0, high]])
        };
        facets.extend(corners.iter().enumerate().map(side));
    }
    facets
}

fn on_ring((x, radius): (f64, f64), turn: f64) -> Corner {
    let (sin, cos) = libm::sincos(turn * TAU);
    [x, radius * sin, radius * cos]
}

/// A turned shape cut into faces that run from ring to ring.
fn cut_lengthwise(profile: &[(f64, f64)], around: u32) -> Vec<Facet> {
    let turn = |i: u32| f64::from(i) / f64::from(around) + 0.25;
    let strip = |ends: &[(f64, f64)]| {
        // `windows(2)` gives pairs.
        let (first, last) = (ends[0], ends[1]);
        let face = move |i: u32| {
            let (a, b) = (turn(i), turn(i + 1));
            Facet::new(&[on_ring(first, b), on_ring(first, a), on_ring(last, a), on_ring(last, b)])
        };
        (0..around).map(face).collect::<Vec<_>>()
    };
    profile.windows(2).flat_map(strip).collect()
}

/// A turned shape cut into triangles, each ring turned by half a face against the last.
fn cut_in_triangles(profile: &[(f64, f64)], around: u32) -> Vec<Facet> {
    let middle = profile.len() / 2;
    let turn = |ring: usize, i: u32| {
        let half = if (ring + middle).is_multiple_of(2) { 0.0 } else { 0.5 };
        (f64::from(i) + half) / f64::from(around)
    };
    let mut facets = Vec::new();
    for ring in 1..profile.len() {
        // From 1 to the last ring, so both are there.
        let (left, right) = (profile[ring - 1], profile[ring]);
        // The ring that is turned back by half a face comes first in both triangles.
        let shift = u32::from(turn(ring, 0) > turn(ring - 1, 0));
        for i in 0..around {
            let (a, b) = (on_ring(left, turn(ring - 1, i)), on_ring(left, turn(ring - 1, i + 1)));
            let (c, d) = (on_ring(right, turn(ring, i)), on_ring(right, turn(ring, i + 1)));
            let halves = if shift == 1 { [[b, a, c], [b, c, d]] } else { [[a, c, d], [b, a, d]] };
            facets.extend(halves.iter().map(|corners| Facet::new(corners)));
        }
    }
    facets
}

/// Outline of all faces together: of a convex body just what is seen of it.
#[must_use]
pub fn hull(facets: &[Facet]) -> Vec<Point> {
    let mut points: Vec<Point> = facets.iter().flat_map(|facet| facet.corners.iter().copied()).collect();
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let mut hull = half_hull(points.iter().copied());
    hull.pop();
    hull.extend(half_hull(points.iter().rev().copied()));
    hull.pop();
    hull
}

/// One side of the convex hull of sorted points (Andrew's monotone chain).
fn half_hull(points: impl Iterator<Item = Point>) -> Vec<Point> {
    let mut chain: Vec<Point> = Vec::new();
    for point in points {
        while let [.., a, b] = chain[..] {
            let (ab, bp) = (b - a, point - b);
            if ab.x * bp.y - ab.y * bp.x > 1e-9 {
                break;
            }
            chain.pop();
        }
        chain.push(point);
    }
    chain
}

/// The parts of faces beside a window, and those before it.
#[must_use]
pub fn split(facets: &[Facet], window: &Window) -> (Vec<Facet>, Vec<Facet>) {
    let of = |facet: &Facet, corners: Vec<Point>| Facet { corners, ..facet.clone() };
    let beside = facets.iter().flat_map(|facet| window.beside(&facet.corners).map(|corners| of(facet, corners)));
    let before = facets.iter().map(|facet| of(facet, window.part(&facet.corners)));
    (beside.collect(), before.collect())
}

/// The sloping faces of a bead as one area a tone, lit, at an opacity.
#[must_use]
pub fn lit(facets: &[Facet], bead: &BeadDrawing<'_>, opacity: f64) -> Vec<Mark> {
    const STEPS: f64 = 5.0;
    let mut areas: BTreeMap<i32, Vec<Segment>> = BTreeMap::new();
    for facet in facets.iter().filter(|facet| !facet.is_table() && !facet.corners.is_empty()) {
        let tone = tone(facet, bead.light, &bead.shading);
        #[expect(clippy::cast_possible_truncation, reason = "a tone lies between -1 and 1")]
        areas.entry((tone * STEPS).round() as i32).or_default().extend(polygon(&facet.corners));
    }
    let area = |(step, outline): (i32, Vec<Segment>)| {
        let fill = Fill::Flat((bead.shading.toned)(bead.colour, f64::from(step) / STEPS), opacity);
        Mark::Shape { outline, fill: Some(fill), stroke: None }
    };
    areas.into_iter().map(area).collect()
}

/// The corners of the face that is turned to us; no bead has two.
#[must_use]
pub fn table(facets: &[Facet]) -> Vec<Point> {
    facets.iter().find(|facet| facet.is_table()).map(|facet| facet.corners.clone()).unwrap_or_default()
}

/// Edges of the near side, and where glass is clear those of the far side, mirrored, as they show
/// through it.
#[must_use]
pub fn edges(facets: &[Facet], clear: bool) -> Vec<Segment> {
    let near = facets.iter().flat_map(|facet| polygon(&facet.corners));
    let far = |facet: &Facet| polygon(&facet.corners.iter().map(|corner| *corner * -0.8).collect::<Vec<_>>());
    let seen_through = facets.iter().filter(|_| clear).flat_map(far);
    near.chain(seen_through).collect()
}

/// Squarely lit faces are light and those turned away dark; neighbours differ a little, as in cut
/// glass. A face turned to us keeps the colour, but for what all faces have in common.
fn tone(facet: &Facet, light: Light, shading: &Shading) -> f64 {
    const SPARKLE: [f64; 5] = [0.0, 0.48, -0.32, 0.24, -0.48];
    let flat = light.falls_on([0.0, 0.0, 1.0]);
    let lit = light.falls_on(facet.normal) - flat;
    let slope = if lit > 0.0 { 2.6 } else { 0.55 };
    let sparkle = SPARKLE[facet.number % SPARKLE.len()] * shading.crisp;
    let tone = (lit * slope + sparkle) * shading.contrast + shading.lift;
    tone.clamp(-0.5, 0.84)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: Extents = Extents { along: 3.0, across: 4.0, hole: 0.5 };

    #[test]
    fn faces_fill_the_box_and_no_more() {
        for shape in Shape::ALL {
            let hull = hull(&facets(*shape, Finish::Faceted, SIZE));
            let most = |of: fn(&Point) -> f64| hull.iter().map(of).fold(0.0, f64::max);
            let (x, y) = (most(|p| p.x.abs()), most(|p| p.y.abs()));
            assert!(x <= 3.0 + 1e-9 && y <= 4.0 + 1e-9, "{shape}: {x} {y}");
            assert!(x > 2.9 && y > 3.9, "{shape}: {x} {y}");
        }
    }

    #[test]
    fn faces_cover_their_hull_once() {
        let area = |corners: &[Point]| {
            let side = |(i, a): (usize, &Point)| {
                let b = corners[(i + 1) % corners.len()];
                a.x * b.y - a.y * b.x
            };
            corners.iter().enumerate().map(side).sum::<f64>() / 2.0
        };
        for shape in Shape::ALL {
            let facets = facets(*shape, Finish::Faceted, SIZE);
            let parts: f64 = facets.iter().map(|facet| area(&facet.corners)).sum();
            let whole = area(&hull(&facets));
            let loss = (whole - parts) / whole;
            assert!((-1e-9..0.06).contains(&loss), "{shape}: {parts} of {whole}");
        }
    }
}
