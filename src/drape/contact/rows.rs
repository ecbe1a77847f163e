//! Where outlines of two strands come near: what keeps them from lying on one another.
//!
//! The strand that is to lie inside and the one outside have a line between them, across which both keep
//! to their side. Of all sides of both outlines that face outward, that is the one across which they lie
//! farthest apart (separating axis theorem). A corner of an outline moves linearly with its link's two
//! joints while the link keeps its length, turning included, so that each condition is exact for a line
//! that stays as it is; the next round takes a new one.

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree, RTreeObject};

use super::super::clearance::Outline;
use crate::geometry::{Extent, Point, path::sides};

/// Outlines farther apart than this, in mm, do not meet in a round.
const NEAR: f64 = 2.0;
/// Faces that lie along one another for longer than this, in mm, are kept apart at both ends of it.
const LONG: f64 = 1.0;
/// Corners of an outline that lie so near to a line, in mm, lie on it.
const FLAT: f64 = 0.01;
/// Cosine of the widest angle between the line's normal and the way out of the strands.
const OUTWARD: f64 = 0.3;
/// Between two balls the line lies across the line of their centres, which turns smoothly as they roll on one
/// another; their outlines' sides are farther apart by less than this, in mm.
const ROUND: f64 = 0.04;

/// A link's outline between its joints.
pub struct Rod {
    pub strand: usize,
    pub link: usize,
    pub joints: [Point; 2],
    pub outline: Outline,
    /// How far it is from the end.
    pub depth: f64,
}

/// A joint and the slope of a row by its place.
#[derive(Clone, Copy)]
pub struct Term {
    pub strand: usize,
    pub joint: usize,
    pub slope: Point,
}

/// The sum of slopes times places is to be nothing or more: it is the gap.
pub struct Row {
    pub terms: [Term; 4],
    pub gap: f64,
    pub strands: [usize; 2],
}

/// All rows between rods of different strands that `may` touch, the inner one first.
pub fn rows(rods: &[Rod], may: impl Fn(&Rod, &Rod) -> bool) -> Vec<Row> {
    let boxed = |(at, rod): (usize, &Rod)| GeomWithData::new(rectangle(rod, 0.0), at);
    let tree = RTree::bulk_load(rods.iter().enumerate().map(boxed).collect());
    let mut rows = Vec::new();
    for inner in rods {
        let near = tree.locate_in_envelope_intersecting(&rectangle(inner, NEAR).envelope());
        let mut near: Vec<usize> = near.map(|found| found.data).collect();
        near.sort_unstable();
        let outer = near.into_iter().map(|at| &rods[at]).filter(|outer| outer.strand > inner.strand);
        rows.extend(outer.filter(|outer| may(inner, outer)).flat_map(|outer| meet(inner, outer)));
    }
    rows
}

fn rectangle(rod: &Rod, more: f64) -> Rectangle<[f64; 2]> {
    let extent = Extent::of(rod.outline.corners.iter().copied()).unwrap_or_default().grown(more);
    Rectangle::from_aabb(AABB::from_corners([extent.low.x, extent.low.y], [extent.high.x, extent.high.y]))
}

/// The rows of two rods: one, or two at both ends of the stretch along which they lie flat.
fn meet(inner: &Rod, outer: &Rod) -> Vec<Row> {
    let Some((normal, gap)) = line(inner, outer) else { return Vec::new() };
    if gap > NEAR {
        return Vec::new();
    }
    let [one, other] = [face(&inner.outline, normal), face(&outer.outline, normal * -1.0)];
    let along = Point::new(-normal.y, normal.x);
    let reach = |face: [Point; 2]| face.map(|corner| dot(corner, along));
    let ([low, high], [from, to]) = (reach(one), reach(other));
    let (start, end) = (low.max(from), high.min(to));
    let places = if end - start > LONG { vec![start, end] } else { vec![0.5 * (start + end)] };
    let row = |place: f64| row([inner, outer], [on(one, along, place), on(other, along, place)], normal);
    places.into_iter().map(row).collect()
}

/// The point of a face at a place along it, or its nearer end.
fn on(face: [Point; 2], along: Point, place: f64) -> Point {
    let [low, high] = face.map(|corner| dot(corner, along));
    let share = if high > low { ((place - low) / (high - low)).clamp(0.0, 1.0) } else { 0.0 };
    face[0].between(face[1], share)
}

fn row([inner, outer]: [&Rod; 2], [one, other]: [Point; 2], normal: Point) -> Row {
    let [a, b] = terms(inner, one, normal * -1.0);
    let [c, d] = terms(outer, other, normal);
    Row { terms: [a, b, c, d], gap: dot(other - one, normal), strands: [inner.strand, outer.strand] }
}

/// The slopes of a point's place along a normal by its rod's two joints.
fn terms(rod: &Rod, point: Point, normal: Point) -> [Term; 2] {
    let way = rod.joints[1] - rod.joints[0];
    let square = dot(way, way);
    let from = point - rod.joints[0];
    let (ahead, aside) = (dot(from, way) / square, (way.x * from.y - way.y * from.x) / square);
    let last = normal * ahead + Point::new(normal.y, -normal.x) * aside;
    let term = |joint, slope| Term { strand: rod.strand, joint, slope };
    [term(rod.link, normal - last), term(rod.link + 1, last)]
}

/// The normal from the inner to the outer across which they lie farthest apart, and how far.
fn line(inner: &Rod, outer: &Rod) -> Option<(Point, f64)> {
    let out = unit(right(inner) + right(outer))?;
    let normals = sides_of(&inner.outline).chain(sides_of(&outer.outline).map(|normal| normal * -1.0));
    let facing = normals.filter(|normal| dot(*normal, out) > OUTWARD);
    let gap = |normal: Point| -> f64 {
        let low = outer.outline.corners.iter().map(|corner| dot(*corner, normal)).fold(f64::INFINITY, f64::min);
        low - inner.outline.corners.iter().map(|corner| dot(*corner, normal)).fold(f64::NEG_INFINITY, f64::max)
    };
    let widest = facing.map(|normal| (normal, gap(normal))).max_by(|a, b| a.1.total_cmp(&b.1))?;
    let centres = unit(outer.outline.centre - inner.outline.centre).filter(|normal| dot(*normal, out) > OUTWARD);
    let smooth = centres.map(|normal| (normal, gap(normal))).filter(|(_, gap)| *gap > widest.1 - ROUND);
    Some(smooth.unwrap_or(widest))
}

/// The way out of a strand that hangs, to the right of its run.
fn right(rod: &Rod) -> Point {
    let way = rod.joints[1] - rod.joints[0];
    unit(Point::new(way.y, -way.x)).unwrap_or_default()
}

/// The outward normals of an outline's sides.
fn sides_of(outline: &Outline) -> impl Iterator<Item = Point> {
    sides(&outline.corners).filter_map(|(from, to)| unit(Point::new(to.y - from.y, from.x - to.x)))
}

/// The two ends of what of an outline lies farthest along a normal, in order along it.
fn face(outline: &Outline, normal: Point) -> [Point; 2] {
    let far = outline.corners.iter().map(|corner| dot(*corner, normal)).fold(f64::NEG_INFINITY, f64::max);
    let along = Point::new(-normal.y, normal.x);
    let flat = outline.corners.iter().filter(|corner| dot(**corner, normal) > far - FLAT);
    let mut ends = [None::<Point>; 2];
    for corner in flat.copied() {
        let place = dot(corner, along);
        ends[0] = ends[0].filter(|low| dot(*low, along) <= place).or(Some(corner));
        ends[1] = ends[1].filter(|high| dot(*high, along) >= place).or(Some(corner));
    }
    ends.map(|end| end.unwrap_or(outline.corners[0]))
}

fn unit(point: Point) -> Option<Point> {
    let length = dot(point, point).sqrt();
    (length > 0.0).then(|| point * (1.0 / length))
}

fn dot(a: Point, b: Point) -> f64 {
    a.x * b.x + a.y * b.y
}
