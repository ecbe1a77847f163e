//! Outlines: circles, rectangles, lines and curves as [`Step`]s, in mm.

use super::mark::Step;
use crate::geometry::Point;

/// Control length for a quarter circle of radius 1 as a Bézier curve: 4/3 (√2 − 1), off by 0.03 %.
pub const QUARTER: f64 = 0.552_284_75;

/// A circle.
#[must_use]
pub fn circle(centre: Point, radius: f64) -> Vec<Step> {
    ellipse(centre, radius, radius)
}

/// An ellipse with its axes level and upright.
#[must_use]
pub fn ellipse(centre: Point, across: f64, down: f64) -> Vec<Step> {
    rounded(centre, across, down, QUARTER)
}

/// A closed curve through the four ends of an ellipse's axes, as full as `fullness` says:
/// [`QUARTER`] gives the ellipse, more a cushion, 1 nearly the rectangle.
#[must_use]
pub fn rounded(centre: Point, across: f64, down: f64, fullness: f64) -> Vec<Step> {
    let at = |x: f64, y: f64| centre + Point::new(x * across, y * down);
    let full = fullness;
    vec![
        Step::Move(at(1.0, 0.0)),
        Step::Curve(at(1.0, full), at(full, 1.0), at(0.0, 1.0)),
        Step::Curve(at(-full, 1.0), at(-1.0, full), at(-1.0, 0.0)),
        Step::Curve(at(-1.0, -full), at(-full, -1.0), at(0.0, -1.0)),
        Step::Curve(at(full, -1.0), at(1.0, -full), at(1.0, 0.0)),
        Step::Close,
    ]
}

/// A rectangle from its upper left corner.
#[must_use]
pub fn rect(corner: Point, width: f64, height: f64) -> Vec<Step> {
    let at = |x: f64, y: f64| corner + Point::new(x, y);
    polygon(&[at(0.0, 0.0), at(width, 0.0), at(width, height), at(0.0, height)])
}

/// A rectangle with round corners, from its upper left corner. The radius is cut to what fits.
#[must_use]
pub fn rounded_rect(corner: Point, width: f64, height: f64, radius: f64) -> Vec<Step> {
    let r = radius.min(width / 2.0).min(height / 2.0).max(0.0);
    let k = r * (1.0 - QUARTER);
    let at = |x: f64, y: f64| corner + Point::new(x, y);
    let (w, h) = (width, height);
    vec![
        Step::Move(at(r, 0.0)),
        Step::Line(at(w - r, 0.0)),
        Step::Curve(at(w - k, 0.0), at(w, k), at(w, r)),
        Step::Line(at(w, h - r)),
        Step::Curve(at(w, h - k), at(w - k, h), at(w - r, h)),
        Step::Line(at(r, h)),
        Step::Curve(at(k, h), at(0.0, h - k), at(0.0, h - r)),
        Step::Line(at(0.0, r)),
        Step::Curve(at(0.0, k), at(k, 0.0), at(r, 0.0)),
        Step::Close,
    ]
}

/// A closed outline with straight sides.
#[must_use]
pub fn polygon(corners: &[Point]) -> Vec<Step> {
    let mut steps = polyline(corners);
    steps.push(Step::Close);
    steps
}

/// A line through points.
#[must_use]
pub fn polyline(points: &[Point]) -> Vec<Step> {
    let step = |(index, point): (usize, &Point)| if index == 0 { Step::Move(*point) } else { Step::Line(*point) };
    points.iter().enumerate().map(step).collect()
}

/// A straight line.
#[must_use]
pub fn line(from: Point, to: Point) -> Vec<Step> {
    polyline(&[from, to])
}

/// A smooth open line through points (Catmull–Rom: at each point it runs parallel to the line
/// between the neighbours).
#[must_use]
pub fn curve(points: &[Point]) -> Vec<Step> {
    // Indices run from 0 to `last` only where there are points at all.
    let last = points.len().saturating_sub(1);
    let slope = |i: usize| (points[(i + 1).min(last)] - points[i.saturating_sub(1)]) * (1.0 / 6.0);
    let start = points.first().map(|first| Step::Move(*first));
    let pieces = (1..points.len()).map(|i| Step::Curve(points[i - 1] + slope(i - 1), points[i] - slope(i), points[i]));
    start.into_iter().chain(pieces).collect()
}

/// A smooth closed line through points.
#[must_use]
pub fn closed_curve(points: &[Point]) -> Vec<Step> {
    // The remainder is below the count, and nothing is asked for where there are no points.
    let count = points.len();
    let at = |i: usize| points[i % count];
    let slope = |i: usize| (at(i + 1) - at(i + count - 1)) * (1.0 / 6.0);
    let start = points.first().map(|first| Step::Move(*first));
    let pieces = (0..count).map(|i| Step::Curve(at(i) + slope(i), at(i + 1) - slope(i + 1), at(i + 1)));
    start.into_iter().chain(pieces).chain([Step::Close]).collect()
}

/// An arc of an ellipse about a centre as a curve, from one angle to another, in radians from +x
/// towards +y.
#[must_use]
pub fn arc(centre: Point, (across, down): (f64, f64), from: f64, to: f64) -> Vec<Step> {
    const PIECES: u32 = 8;
    let angle = |i: u32| from + (to - from) * f64::from(i) / f64::from(PIECES);
    let at = |angle: f64| centre + Point::new(libm::cos(angle) * across, libm::sin(angle) * down);
    let reach = 4.0 / 3.0 * libm::tan((to - from) / f64::from(PIECES) / 4.0);
    let slope = |angle: f64| Point::new(-libm::sin(angle) * across, libm::cos(angle) * down) * reach;
    let piece = |i: u32| {
        let (a, b) = (angle(i - 1), angle(i));
        Step::Curve(at(a) + slope(a), at(b) - slope(b), at(b))
    };
    std::iter::once(Step::Move(at(from))).chain((1..=PIECES).map(piece)).collect()
}

/// The outline with every point passed through `change`.
#[must_use]
pub fn mapped(outline: &[Step], change: impl Fn(Point) -> Point) -> Vec<Step> {
    let step = |step: &Step| match *step {
        Step::Move(to) => Step::Move(change(to)),
        Step::Line(to) => Step::Line(change(to)),
        Step::Curve(first, second, to) => Step::Curve(change(first), change(second), change(to)),
        Step::Close => Step::Close,
    };
    outline.iter().map(step).collect()
}

/// The points of an outline's parts, curves cut into short lines.
#[must_use]
pub fn flattened(outline: &[Step]) -> Vec<Point> {
    const PIECES: u32 = 12;
    let mut points: Vec<Point> = Vec::new();
    for step in outline {
        match *step {
            Step::Move(to) | Step::Line(to) => points.push(to),
            Step::Curve(first, second, to) => {
                let from = points.last().copied().unwrap_or_default();
                points.extend((1..=PIECES).map(|i| on_curve([from, first, second, to], i, PIECES)));
            }
            Step::Close => {}
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
