//! Points along a path, for chain links and cords. Lengths in mm, directions in radians.

use crate::geometry::{Point, path};

/// Places every `step` along a path, each with the direction there, as far as the path reaches.
#[must_use]
pub fn places(line: &[Point], step: f64) -> Vec<(Point, f64)> {
    let total = path::length(line);
    if step <= 0.0 || !total.is_finite() {
        return Vec::new();
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count of links that fit a page")]
    let count = (total / step + 1e-6).floor() as u32;
    let start = |i: u32| path::along(line, f64::from(i) * step).unwrap_or_default();
    (0..count).map(|i| (start(i), (start(i + 1) - start(i)).angle())).collect()
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
