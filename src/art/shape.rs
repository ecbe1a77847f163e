//! Outlines of beads: x along the hole, y across it, the centre at the origin, in mm.

use crate::geometry::Point;
use crate::paint::mark::Segment;
use crate::paint::outline::{self, QUARTER};
use crate::pattern::Shape;
use crate::trade::usual::BARREL_END;

/// The room that a bead's drawing fills.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extents {
    /// Half its size along the hole.
    pub along: f64,
    /// Half its size across the hole.
    pub across: f64,
    /// Half the hole's diameter.
    pub hole: f64,
}

/// Corners of a chip: direction and distance as shares of a turn and of the box. Made by eye.
const CHIP: [(f64, f64); 9] = [
    (0.02, 0.98),
    (0.10, 0.93),
    (0.21, 1.0),
    (0.33, 0.80),
    (0.44, 0.95),
    (0.55, 1.0),
    (0.67, 0.85),
    (0.77, 1.0),
    (0.90, 0.83),
];

/// The outline of a shape; a drop that hangs by its tip has no flat there.
#[must_use]
pub fn outline(shape: Shape, size: Extents, hangs: bool) -> Vec<Segment> {
    let Extents { along, across, .. } = size;
    match shape {
        Shape::Round | Shape::Oval | Shape::Coin => outline::ellipse(Point::ORIGIN, along, across),
        Shape::Rondelle => outline::rounded(Point::ORIGIN, along, across, 0.7),
        Shape::Square => outline::rounded(Point::ORIGIN, along, across, 0.86),
        Shape::Cube => boxed(size, 0.16),
        Shape::Tube => boxed(size, 0.1),
        Shape::Seed => boxed(size, 0.85),
        Shape::Barrel => barrel(size),
        Shape::Drop if hangs => pointed(size),
        Shape::Drop => drop(size),
        Shape::Bicone => outline::polygon(&bicone(size)),
        Shape::Chip => outline::polygon(&chip(size)),
    }
}

fn boxed(Extents { along, across, .. }: Extents, corner: f64) -> Vec<Segment> {
    let radius = along.min(across) * corner;
    outline::rounded_rect(Point::new(-along, -across), along * 2.0, across * 2.0, radius)
}

fn barrel(Extents { along, across, .. }: Extents) -> Vec<Segment> {
    let end = across * BARREL_END;
    // A curve whose two controls stand at a height reaches 3/4 of the way there.
    let bulge = end + (across - end) / 0.75;
    let at = Point::new;
    vec![
        Segment::Move(at(-along, -end)),
        Segment::Curve(at(-along * 0.4, -bulge), at(along * 0.4, -bulge), at(along, -end)),
        Segment::Line(at(along, end)),
        Segment::Curve(at(along * 0.4, bulge), at(-along * 0.4, bulge), at(-along, end)),
        Segment::Close,
    ]
}

/// Where the middle of the hole of a bead that is drilled across crosses it: a hole's width of glass is left
/// above it, which is common practice, no source.
#[must_use]
pub fn tip_hole(Extents { along, hole, .. }: Extents) -> f64 {
    -along + (hole * 3.0).min(along * 0.5)
}

/// A teardrop that ends in a rounded point, wide enough for the hole across it.
fn pointed(size: Extents) -> Vec<Segment> {
    let tip = (size.hole * 1.15).min(size.across * 0.6);
    let mut segments = drop(size);
    let at = |x: f64, y: f64| Point::new(-size.along + x, y);
    // The first segment starts the flat end, and the last closes along it.
    let round = size.along * 0.06;
    segments[0] = Segment::Move(at(round, -tip));
    let closed = segments.len() - 1;
    if let Some(Segment::Curve(_, _, end)) = segments.get_mut(closed - 1) {
        *end = at(round, tip);
    }
    segments.insert(closed, Segment::Curve(at(-round / 3.0, tip), at(-round / 3.0, -tip), at(round, -tip)));
    segments
}

/// A teardrop, its narrow end first.
fn drop(Extents { along, across, hole }: Extents) -> Vec<Segment> {
    let tip = (hole * 1.15).min(across * 0.6);
    let neck = tip + (across - tip) * 0.22;
    let fat = along - across.min(along);
    let round = along - fat;
    let at = Point::new;
    vec![
        Segment::Move(at(-along, -tip)),
        Segment::Curve(at(-along * 0.6, -neck), at(fat - round * 0.85, -across), at(fat, -across)),
        Segment::Curve(at(fat + round * QUARTER, -across), at(along, -across * QUARTER), at(along, 0.0)),
        Segment::Curve(at(along, across * QUARTER), at(fat + round * QUARTER, across), at(fat, across)),
        Segment::Curve(at(fat - round * 0.85, across), at(-along * 0.6, neck), at(-along, tip)),
        Segment::Close,
    ]
}

fn bicone(Extents { along, across, hole }: Extents) -> [Point; 6] {
    let tip = (hole * 1.15).min(across * 0.5);
    let at = Point::new;
    [at(-along, -tip), at(0.0, -across), at(along, -tip), at(along, tip), at(0.0, across), at(-along, tip)]
}

/// Corners of a chip.
#[must_use]
pub fn chip(Extents { along, across, .. }: Extents) -> Vec<Point> {
    let corner = |(turn, distance): (f64, f64)| {
        let towards = Point::towards(turn * std::f64::consts::TAU) * distance;
        Point::new(towards.x * along, towards.y * across)
    };
    CHIP.into_iter().map(corner).collect()
}

/// Profile of a shape turned about its hole: place along the hole and radius, for facets.
#[must_use]
pub fn profile(shape: Shape, Extents { along, across, hole }: Extents) -> Vec<(f64, f64)> {
    let tip = hole.min(across * 0.5);
    let shares: &[(f64, f64)] = match shape {
        Shape::Rondelle => &[(-1.0, 0.5), (-0.55, 0.84), (0.0, 1.0), (0.55, 0.84), (1.0, 0.5)],
        Shape::Bicone => &[(-1.0, 0.1), (-0.48, 0.6), (0.0, 1.0), (0.48, 0.6), (1.0, 0.1)],
        Shape::Barrel => &[(-1.0, BARREL_END), (-0.5, 0.9), (0.0, 1.0), (0.5, 0.9), (1.0, BARREL_END)],
        Shape::Seed => &[(-1.0, 0.7), (-0.4, 0.97), (0.0, 1.0), (0.4, 0.97), (1.0, 0.7)],
        Shape::Drop => &[(-1.0, 0.2), (-0.45, 0.6), (0.3, 1.0), (0.8, 0.7), (1.0, 0.1)],
        _ => &[(-1.0, 0.0), (-0.68, 0.73), (0.0, 1.0), (0.68, 0.73), (1.0, 0.0)],
    };
    shares.iter().map(|(x, r)| (x * along, (r * across).max(tip))).collect()
}
