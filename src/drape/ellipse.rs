//! The ellipse: girth, and its size from girth and shape.

use std::f64::consts::PI;

/// Halvings of the mean's two numbers; each doubles the digits that are right.
const MEANS: u32 = 40;

/// Girth in mm of the ellipse with these half axes, to full double precision.
///
/// 4 a E(e), the complete elliptic integral of the second kind by the arithmetic-geometric mean
/// (Abramowitz and Stegun, *Handbook of Mathematical Functions*, 17.6.3 and 17.6.4).
#[must_use]
pub fn girth(a: f64, b: f64) -> f64 {
    let (long, short) = (a.max(b), a.min(b));
    if short <= 0.0 {
        return 4.0 * long;
    }
    let (mut mean, mut root) = (long, short);
    let (mut power, mut sum) = (0.5, 0.5 * (long * long - short * short));
    for _ in 0..MEANS {
        let half = 0.5 * (mean - root);
        if half <= f64::EPSILON * mean {
            break;
        }
        (mean, root) = (0.5 * (mean + root), (mean * root).sqrt());
        power *= 2.0;
        sum += power * half * half;
    }
    2.0 * PI / mean * (long * long - sum)
}

/// The half axes (a, b) of the ellipse with this girth whose a is `ratio` times b.
#[must_use]
pub fn half_axes(around: f64, ratio: f64) -> (f64, f64) {
    let b = around / girth(ratio, 1.0);
    (ratio * b, b)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_flat_ellipse_is_walked_there_and_back() {
        assert_eq!(girth(5.0, 0.0), 20.0);
    }

    #[test]
    fn half_axes_give_the_girth_back() {
        let (a, b) = half_axes(370.0, 1.2);
        assert!((girth(a, b) - 370.0).abs() < 1e-10);
        assert!((a / b - 1.2).abs() < 1e-12);
    }
}
