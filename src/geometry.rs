//! Geometry in millimetres: [`Point`] in a plane, turning by an angle in radians, boxes and paths; [`Point3`] in space;
//! chance for places in a grid.

pub mod chord;
mod extent;
pub mod helix;
pub mod hinge;
pub mod noise;
pub mod nose;
pub mod path;
mod space;
pub mod taut;
pub mod twist;
pub mod wound;

use std::ops::{Add, Mul, Sub};

pub use extent::Extent;
pub use space::{Point3, nearest_shares};

/// A point or a displacement, in millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Up in a drape, down on a page.
    pub y: f64,
}

impl Point {
    /// The origin.
    pub const ORIGIN: Self = Self { x: 0.0, y: 0.0 };

    /// Makes a point.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// The unit vector at an angle in radians from +x towards +y.
    #[must_use]
    pub fn towards(angle: f64) -> Self {
        Self::new(libm::cos(angle), libm::sin(angle))
    }

    /// The scalar product with another.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// A quarter turn to the left, where y points up.
    #[must_use]
    pub const fn left(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// Distance from the origin.
    #[must_use]
    pub fn length(self) -> f64 {
        (self.x * self.x + self.y * self.y).sqrt()
    }

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (self - other).length()
    }

    /// Angle in radians from +x towards +y.
    #[must_use]
    pub fn angle(self) -> f64 {
        libm::atan2(self.y, self.x)
    }

    /// Turned about the origin by an angle in radians from +x towards +y.
    #[must_use]
    pub fn turned(self, angle: f64) -> Self {
        let (sin, cos) = libm::sincos(angle);
        Self::new(self.x * cos - self.y * sin, self.x * sin + self.y * cos)
    }

    /// The point a share `t` of the way to another.
    #[must_use]
    pub fn between(self, other: Self, t: f64) -> Self {
        self + (other - self) * t
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}
