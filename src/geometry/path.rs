//! Paths through points, and polygons of corners.

use super::Point;

// `windows(2)` gives pairs, so that the indices 0 and 1 are there.

/// Length of a path, in mm.
#[must_use]
pub fn length(path: &[Point]) -> f64 {
    path.windows(2).map(|ends| ends[0].distance(ends[1])).sum()
}

/// The point at a distance along a path; its last point beyond the end, and nothing on a path without
/// points.
#[must_use]
pub fn along(path: &[Point], distance: f64) -> Option<Point> {
    let mut left = distance;
    for ends in path.windows(2) {
        let length = ends[0].distance(ends[1]);
        if left <= length && length > 0.0 {
            return Some(ends[0].between(ends[1], left / length));
        }
        left -= length;
    }
    path.last().copied()
}

/// A path without so much of its beginning; its last point where it is shorter.
#[must_use]
pub fn past(path: &[Point], distance: f64) -> Vec<Point> {
    let mut left = distance;
    let starts = |ends: &[Point]| {
        let before = left;
        left -= ends[0].distance(ends[1]);
        before <= 0.0 || left < 0.0
    };
    let first = path.windows(2).position(starts).map_or(path.len(), |at| at + 1);
    along(path, distance).into_iter().chain(path.iter().skip(first).copied()).collect()
}

/// The sides of a polygon, the last from its end back to its start.
pub fn sides(polygon: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    polygon.iter().copied().zip(polygon.iter().copied().cycle().skip(1))
}

/// The x in mm at which the sides of a polygon cross the level line at height `y`, in their order.
pub fn crossings(polygon: &[Point], y: f64) -> impl Iterator<Item = f64> + '_ {
    let crossed = sides(polygon).filter(move |(a, b)| (a.y > y) != (b.y > y));
    crossed.map(move |(a, b)| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y))
}

/// The part of a polygon that lies at a place or beyond it along a direction: Sutherland and Hodgman's cut
/// (*Reentrant polygon clipping*, 1974). Of one that bends inward the parts are joined
/// along the cut.
#[must_use]
pub fn beyond(polygon: &[Point], along: Point, least: f64) -> Vec<Point> {
    let above = |at: Point| at.dot(along) - least;
    let mut kept = Vec::new();
    for (from, to) in sides(polygon) {
        let (a, b) = (above(from), above(to));
        if a >= 0.0 {
            kept.push(from);
        }
        if (a >= 0.0) != (b >= 0.0) {
            kept.push(from.between(to, a / (a - b)));
        }
    }
    kept
}

/// Whether a point lies inside a polygon: a level line from it crosses the sides an odd number of times
/// (Jordan's curve theorem).
#[must_use]
pub fn holds(polygon: &[Point], at: Point) -> bool {
    crossings(polygon, at.y).filter(|x| *x > at.x).count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOOK: [Point; 3] = [Point::ORIGIN, Point::new(6.0, 0.0), Point::new(6.0, 6.0)];

    #[test]
    fn a_path_is_followed_to_its_end() {
        assert_eq!(length(&HOOK), 12.0);
        assert_eq!(along(&HOOK, 9.0), Some(Point::new(6.0, 3.0)));
        assert_eq!(along(&HOOK, 99.0), Some(Point::new(6.0, 6.0)));
        assert_eq!(along(&[], 1.0), None);
    }

    #[test]
    fn what_is_past_a_place_is_the_rest_of_the_path() {
        for distance in [0.0, 2.5, 6.0, 9.0, 12.0, 13.0] {
            let rest = past(&HOOK, distance);
            assert!((length(&rest) - (12.0 - distance).max(0.0)).abs() < 1e-12, "{distance}: {rest:?}");
            assert_eq!(rest.last(), HOOK.last());
        }
        assert_eq!(past(&[], 1.0), []);
    }

    /// A second way to tell: the angles under which the sides are seen add up to a whole turn from
    /// inside, and to nothing from outside.
    #[test]
    fn what_a_polygon_holds_is_seen_all_round() {
        let polygon = [(0.0, 0.0), (4.0, -1.0), (3.0, 1.0), (5.0, 4.0), (1.5, 2.0), (0.5, 3.5)];
        let polygon = polygon.map(|(x, y)| Point::new(x, y));
        for at in (0..40 * 40).map(|i| Point::new(f64::from(i % 40) * 0.17 - 0.53, f64::from(i / 40) * 0.17 - 1.51)) {
            let seen = |(a, b): (Point, Point)| {
                let (a, b) = (a - at, b - at);
                libm::atan2(a.x * b.y - a.y * b.x, a.dot(b))
            };
            let round = sides(&polygon).map(seen).sum::<f64>().abs() > std::f64::consts::PI;
            assert_eq!(holds(&polygon, at), round, "{at:?}");
        }
    }
}
