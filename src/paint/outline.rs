//! Outlines: circles, rectangles, lines and curves as [`Segment`]s, in mm.

use super::mark::Segment;
use crate::geometry::Point;

/// Control length for a quarter circle of radius 1 as a Bézier curve: 4/3 (√2 − 1), off by 0.03 %.
pub const QUARTER: f64 = 0.552_284_75;

/// A circle.
#[must_use]
pub fn circle(centre: Point, radius: f64) -> Vec<Segment> {
    ellipse(centre, radius, radius)
}

/// An ellipse with its axes level and upright.
#[must_use]
pub fn ellipse(centre: Point, across: f64, down: f64) -> Vec<Segment> {
    rounded(centre, across, down, QUARTER)
}

/// A closed curve through the four ends of an ellipse's axes, as full as `fullness` says:
/// [`QUARTER`] gives the ellipse, more a cushion, 1 nearly the rectangle.
#[must_use]
pub fn rounded(centre: Point, across: f64, down: f64, fullness: f64) -> Vec<Segment> {
    let at = |x: f64, y: f64| centre + Point::new(x * across, y * down);
    let full = fullness;
    vec![
        Segment::Move(at(1.0, 0.0)),
        Segment::Curve(at(1.0, full), at(full, 1.0), at(0.0, 1.0)),
        Segment::Curve(at(-full, 1.0), at(-1.0, full), at(-1.0, 0.0)),
        Segment::Curve(at(-1.0, -full), at(-full, -1.0), at(0.0, -1.0)),
        Segment::Curve(at(full, -1.0), at(1.0, -full), at(1.0, 0.0)),
        Segment::Close,
    ]
}

/// A rectangle from its upper left corner.
#[must_use]
pub fn rect(corner: Point, width: f64, height: f64) -> Vec<Segment> {
    let at = |x: f64, y: f64| corner + Point::new(x, y);
    polygon(&[at(0.0, 0.0), at(width, 0.0), at(width, height), at(0.0, height)])
}

/// A rectangle with round corners, from its upper left corner. The radius is cut to what fits.
#[must_use]
pub fn rounded_rect(corner: Point, width: f64, height: f64, radius: f64) -> Vec<Segment> {
    let r = radius.min(width / 2.0).min(height / 2.0).max(0.0);
    let k = r * (1.0 - QUARTER);
    let at = |x: f64, y: f64| corner + Point::new(x, y);
    let (w, h) = (width, height);
    vec![
        Segment::Move(at(r, 0.0)),
        Segment::Line(at(w - r, 0.0)),
        Segment::Curve(at(w - k, 0.0), at(w, k), at(w, r)),
        Segment::Line(at(w, h - r)),
        Segment::Curve(at(w, h - k), at(w - k, h), at(w - r, h)),
        Segment::Line(at(r, h)),
        Segment::Curve(at(k, h), at(0.0, h - k), at(0.0, h - r)),
        Segment::Line(at(0.0, r)),
        Segment::Curve(at(0.0, k), at(k, 0.0), at(r, 0.0)),
        Segment::Close,
    ]
}

/// A closed outline with straight sides.
#[must_use]
pub fn polygon(corners: &[Point]) -> Vec<Segment> {
    let mut segments = polyline(corners);
    segments.push(Segment::Close);
    segments
}

/// A line through points.
#[must_use]
pub fn polyline(points: &[Point]) -> Vec<Segment> {
    let segment =
        |(index, point): (usize, &Point)| if index == 0 { Segment::Move(*point) } else { Segment::Line(*point) };
    points.iter().enumerate().map(segment).collect()
}

/// A straight line.
#[must_use]
pub fn line(from: Point, to: Point) -> Vec<Segment> {
    polyline(&[from, to])
}

/// A smooth open line through points (Catmull–Rom: at each point it runs parallel to the line
/// between the neighbours).
#[must_use]
pub fn curve(points: &[Point]) -> Vec<Segment> {
    // Indices run from 0 to `last` only where there are points at all.
    let last = points.len().saturating_sub(1);
    let slope = |i: usize| (points[(i + 1).min(last)] - points[i.saturating_sub(1)]) * (1.0 / 6.0);
    let start = points.first().map(|first| Segment::Move(*first));
    let pieces =
        (1..points.len()).map(|i| Segment::Curve(points[i - 1] + slope(i - 1), points[i] - slope(i), points[i]));
    start.into_iter().chain(pieces).collect()
}

/// A smooth closed line through points.
#[must_use]
pub fn closed_curve(points: &[Point]) -> Vec<Segment> {
    // The remainder is below the count, and nothing is asked for where there are no points.
    let count = points.len();
    let at = |i: usize| points[i % count];
    let slope = |i: usize| (at(i + 1) - at(i + count - 1)) * (1.0 / 6.0);
    let start = points.first().map(|first| Segment::Move(*first));
    let pieces = (0..count).map(|i| Segment::Curve(at(i) + slope(i), at(i + 1) - slope(i + 1), at(i + 1)));
    start.into_iter().chain(pieces).chain([Segment::Close]).collect()
}

/// An arc of an ellipse about a centre as a curve, from one angle to another, in radians from +x
/// towards +y.
#[must_use]
pub fn arc(centre: Point, (across, down): (f64, f64), from: f64, to: f64) -> Vec<Segment> {
    const PIECES: u32 = 8;
    let angle = |i: u32| from + (to - from) * f64::from(i) / f64::from(PIECES);
    let at = |angle: f64| centre + Point::new(libm::cos(angle) * across, libm::sin(angle) * down);
    let reach = 4.0 / 3.0 * libm::tan((to - from) / f64::from(PIECES) / 4.0);
    let slope = |angle: f64| Point::new(-libm::sin(angle) * across, libm::cos(angle) * down) * reach;
    let piece = |i: u32| {
        let (a, b) = (angle(i - 1), angle(i));
        Segment::Curve(at(a) + slope(a), at(b) - slope(b), at(b))
    };
    std::iter::once(Segment::Move(at(from))).chain((1..=PIECES).map(piece)).collect()
}

/// The outline with every point passed through `change`.
#[must_use]
pub fn mapped(outline: &[Segment], change: impl Fn(Point) -> Point) -> Vec<Segment> {
    let changed = |segment: &Segment| match *segment {
        Segment::Move(to) => Segment::Move(change(to)),
        Segment::Line(to) => Segment::Line(change(to)),
        Segment::Curve(first, second, to) => Segment::Curve(change(first), change(second), change(to)),
        Segment::Close => Segment::Close,
    };
    outline.iter().map(changed).collect()
}

/// The points of an outline's parts, curves cut into short lines.
#[must_use]
pub fn flattened(outline: &[Segment]) -> Vec<Point> {
    const PIECES: u32 = 12;
    let mut points: Vec<Point> = Vec::new();
    for segment in outline {
        match *segment {
            Segment::Move(to) | Segment::Line(to) => points.push(to),
            Segment::Curve(first, second, to) => {
                let from = points.last().copied().unwrap_or_default();
                points.extend((1..=PIECES).map(|i| on_curve([from, first, second, to], i, PIECES)));
            }
            Segment::Close => {}
        }
    }
    points
}

fn on_curve([a, b, c, d]: [Point; 4], step: u32, of: u32) -> Point {
    let t = f64::from(step) / f64::from(of);
    let (ab, bc, cd) = (a.between(b, t), b.between(c, t), c.between(d, t));
    ab.between(bc, t).between(bc.between(cd, t), t)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn circles_and_arcs_keep_their_radius() {
        let centre = Point::new(3.0, -2.0);
        for outline in [circle(centre, 5.0), arc(centre, (5.0, 5.0), 0.3, 4.0)] {
            for point in flattened(&outline) {
                assert!((point.distance(centre) - 5.0).abs() < 5.0 * 0.0003);
            }
        }
    }

    #[test]
    fn curves_pass_through_their_points() {
        let points = [Point::ORIGIN, Point::new(1.0, 2.0), Point::new(4.0, 2.0), Point::new(5.0, -1.0)];
        for outline in [curve(&points), closed_curve(&points)] {
            let flat = flattened(&outline);
            assert!(points.iter().all(|point| flat.iter().any(|on| on.distance(*point) < 1e-12)));
        }
        assert!(curve(&[]).is_empty());
    }

    #[test]
    fn a_corner_radius_is_cut_to_what_fits() {
        let flat = flattened(&rounded_rect(Point::ORIGIN, 4.0, 2.0, 9.0));
        assert!(flat.iter().all(|p| (0.0..=4.0).contains(&p.x) && (0.0..=2.0).contains(&p.y)));
        assert!(flat.contains(&Point::new(1.0, 0.0)));
    }
}
