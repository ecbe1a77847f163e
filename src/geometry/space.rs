//! Points in space, in mm.

use std::ops::{Add, Mul, Sub};

use super::Point;

/// A point, a displacement or a force in space.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point3 {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
    /// Towards who looks on.
    pub z: f64,
}

impl Point3 {
    /// The origin.
    pub const ORIGIN: Self = Self { x: 0.0, y: 0.0, z: 0.0 };

    /// Straight down.
    pub const DOWN: Self = Self { x: 0.0, y: -1.0, z: 0.0 };

    /// Makes a point.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// The scalar product with another, in square mm where both are places in mm.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// The vector product with another: square to both.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// Distance from the origin.
    #[must_use]
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (self - other).length()
    }

    /// The unit vector that way; nothing for no length.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 0.0).then(|| self * (1.0 / length))
    }

    /// The point a share `t` of the way to another.
    #[must_use]
    pub fn between(self, other: Self, t: f64) -> Self {
        self + (other - self) * t
    }

    /// As it is seen from the front.
    #[must_use]
    pub const fn front(self) -> Point {
        Point::new(self.x, self.y)
    }
}

/// The shares of two straight ways, each a start and what leads to its end, at which they come nearest.
#[must_use]
pub fn nearest_shares([a, u]: [Point3; 2], [b, v]: [Point3; 2]) -> [f64; 2] {
    let share = |of: f64, all: f64| if all > 0.0 { (of / all).clamp(0.0, 1.0) } else { 0.0 };
    let (uu, vv, uv, from) = (u.dot(u), v.dot(v), u.dot(v), a - b);
    let s = share(uv * v.dot(from) - vv * u.dot(from), uu * vv - uv * uv);
    let t = share(uv * s + v.dot(from), vv);
    [share(uv * t - u.dot(from), uu), t]
}

impl From<[f64; 3]> for Point3 {
    fn from([x, y, z]: [f64; 3]) -> Self {
        Self { x, y, z }
    }
}

impl From<Point3> for [f64; 3] {
    fn from(point: Point3) -> Self {
        [point.x, point.y, point.z]
    }
}

impl Add for Point3 {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}

impl Sub for Point3 {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl Mul<f64> for Point3 {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No places of two ways are nearer to each other than those found, looked at in steps.
    #[test]
    fn no_places_of_two_ways_are_nearer() {
        let p = Point3::new;
        let ways = [
            [p(0.0, 0.0, 0.0), p(4.0, 0.0, 0.0)],
            [p(1.0, 2.0, -1.0), p(0.0, -1.0, 3.0)],
            [p(1.0, 1.0, 0.0), p(2.0, 0.0, 0.0)],
            [p(-3.0, 1.0, 1.0), p(-1.0, 2.0, 0.5)],
            [p(5.0, 5.0, 5.0), p(0.0, 0.0, 0.0)],
        ];
        let at = |[start, way]: [Point3; 2], share: f64| start + way * share;
        for (one, other) in ways.iter().flat_map(|one| ways.iter().map(move |other| (*one, *other))) {
            let [s, t] = nearest_shares(one, other);
            let found = at(one, s).distance(at(other, t));
            let steps = || (0..=50).map(|step| f64::from(step) / 50.0);
            let pairs = steps().flat_map(|s| steps().map(move |t| (s, t)));
            let least = pairs.map(|(s, t)| at(one, s).distance(at(other, t))).fold(f64::INFINITY, f64::min);
            assert!(found < least + 1e-9, "{one:?} {other:?}: {found} for {least}");
        }
    }
}
