//! Points along a path, for chain links and cords.

use crate::geometry::Point;

// `windows(2)` gives pairs, so that the indices 0 and 1 are there.

/// Places every `step` along a path, each with the direction there, as far as the path reaches.
#[must_use]
pub fn places(path: &[Point], step: f64) -> Vec<(Point, f64)> {
    let total: f64 = path.windows(2).map(|ends| ends[0].distance(ends[1])).sum();
    if step <= 0.0 || !total.is_finite() {
        return Vec::new();
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of links that fit a page")]
    let count = (total / step + 1e-6).floor() as u32;
    let start = |i: u32| along(path, f64::from(i) * step);
    (0..count).map(|i| (start(i), (start(i + 1) - start(i)).angle())).collect()
}

/// The point at a distance along a path; its last point beyond the end.
fn along(path: &[Point], distance: f64) -> Point {
    let mut left = distance;
    for ends in path.windows(2) {
        let length = ends[0].distance(ends[1]);
        if left <= length && length > 0.0 {
            return ends[0].between(ends[1], left / length);
        }
        left -= length;
    }
    path.last().copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_follow_the_path_and_fill_it() {
        let path = [Point::ORIGIN, Point::new(6.0, 0.0), Point::new(6.0, 6.0)];
        let places = places(&path, 2.0);
        assert_eq!(places.len(), 6);
        assert_eq!(places[0], (Point::ORIGIN, 0.0));
        assert_eq!(places[5].0, Point::new(6.0, 4.0));
        assert!((places[5].1 - std::f64::consts::FRAC_PI_2).abs() < 1e-12);
        assert!(super::places(&[], 2.0).is_empty() && super::places(&path, 0.0).is_empty());
    }
}
