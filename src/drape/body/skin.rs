//! The skin of neck and chest: one smooth surface with a distance and a normal.
//!
//! The origin is the middle of the neck's base, x to the wearer's left as seen from the front, y up, z to
//! the front. The neck is a round tube that leans forward. Chest, back and both shoulders
//! are planes through the front, the nape and the sides of the neck's base, an ellipse that is tilted forward.
//! They meet in rounded edges: with d the distances to the four planes the torso is where
//! r ln sum exp(d / r) is less than nothing, and with n and t those to neck and torso the body is where
//! -k ln (exp(-n / k) + exp(-t / k)) is (the usual smooth maximum and minimum; each is smooth, and errs from the
//! sharp one by less than r ln 4 and k ln 2).
//!
//! The planes stand so that the base, in its plane, measures the girth that was asked for, within 0.01 mm as the chords of
//! 96 rays tell it; a tape measures up to 0.3 mm more where shoulders are round, 0.06 mm of a drop. Distances are those to the first order: right at the surface, where they matter.

use std::f64::consts::{FRAC_PI_2, PI};

use super::super::ellipse;
use crate::design::Wear;
use crate::geometry::{Point, Point3};
use crate::trade::bodies;

/// Rays along which the base's girth is measured, on one side.
const RAYS: usize = 48;
/// The base's girth is as asked for, as it is measured here, to this many mm.
const EXACT: f64 = 0.01;

/// The skin of one wearer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Skin {
    /// Radius of the neck's section.
    neck: f64,
    /// The neck's axis, upward.
    axis: Point3,
    /// Half the breadth and the depth of the ellipse through which the planes go.
    base: [f64; 2],
    /// The way from the middle of the base to its front.
    forward: Point3,
    /// The outward normals of chest, back and shoulders.
    faces: [Point3; 4],
}

/// What shapes a skin: girths in mm, angles in radians.
#[derive(Clone, Copy, Debug)]
pub struct SkinShape {
    /// Girth of the neck's base, in mm.
    pub base: f64,
    /// Girth of the neck above it, in mm.
    pub neck: f64,
    /// Ratio of the breadth of the base to its depth.
    pub breadth_to_depth: f64,
    /// How far the chest leans back from upright, in radians.
    pub chest_tilt: f64,
}

impl From<&Wear> for SkinShape {
    fn from(wear: &Wear) -> Self {
        Self {
            base: wear.girth.value(),
            neck: wear.narrowest.value(),
            breadth_to_depth: *wear.build.breadth_to_depth,
            chest_tilt: *wear.build.chest_tilt,
        }
    }
}

/// A smooth surface that nothing gets through.
pub trait Surface {
    /// How far a place lies outside, less than nothing inside, to the first order; and the unit normal there.
    fn at(&self, place: Point3) -> (f64, Point3);
}

impl Surface for Skin {
    fn at(&self, place: Point3) -> (f64, Point3) {
        let (neck, torso) = (self.off_neck(place), self.off_torso(place));
        let k = bodies::NECK_FILLET * self.base[0];
        let least = neck.0.min(torso.0);
        let [one, other] = [neck.0, torso.0].map(|distance| libm::exp((least - distance) / k));
        let value = least - k * libm::log(one + other);
        let slope = (neck.1 * one + torso.1 * other) * (1.0 / (one + other));
        let steep = slope.length().max(1e-3);
        (value / steep, slope * (1.0 / steep))
    }
}

impl Skin {
    /// The skin of a shape.
    #[must_use]
    pub fn new(shape: &SkinShape) -> Self {
        let upright = |angle: f64, front: f64| {
            let (sin, cos) = libm::sincos(angle);
            Point3::new(0.0, sin, front * cos)
        };
        let shoulder = |side: f64| {
            let (sin, cos) = libm::sincos(bodies::SHOULDER_SLOPE);
            Point3::new(side * sin, cos, 0.0)
        };
        let neck = shape.neck / (2.0 * PI);
        let (a, b) = ellipse::half_axes(shape.base, shape.breadth_to_depth);
        let (sin, cos) = libm::sincos(bodies::BASE_TILT);
        let (lean, up) = libm::sincos(bodies::NECK_LEAN);
        let mut skin = Self {
            neck,
            axis: Point3::new(0.0, up, lean),
            base: [a, b],
            forward: Point3::new(0.0, -sin, cos),
            faces: [upright(shape.chest_tilt, 1.0), upright(bodies::BACK_TILT, -1.0), shoulder(1.0), shoulder(-1.0)],
        };
        skin.fit(shape.base);
        skin
    }

    /// Moves the planes until the base measures a girth: by the secant rule, as the one grows with the other.
    fn fit(&mut self, girth: f64) {
        let [a, b] = self.base;
        let mut measured = |scale: f64| {
            self.base = [a * scale, b * scale];
            self.girth() - girth
        };
        let (mut one, mut other) = (1.0, 0.9);
        let (mut of_one, mut of_other) = (measured(one), measured(other));
        for _ in 0..12 {
            if of_other.abs() < EXACT || of_one == of_other {
                break;
            }
            let next = (other - of_other * (other - one) / (of_other - of_one)).clamp(0.3, 1.5);
            (one, of_one) = (other, of_other);
            (other, of_other) = (next, measured(next));
        }
    }

    /// What a tape round the base measures, in the base's plane, in mm, within 0.3 mm: chords under equal angles are taken for
    /// those of a circle.
    #[must_use]
    pub fn girth(&self) -> f64 {
        let points: Vec<Point3> = (0..=RAYS).map(|ray| self.around(PI * ray as f64 / RAYS as f64)).collect();
        2.0 * points.windows(2).map(|pair| pair[0].distance(pair[1])).sum::<f64>() * chords()
    }

    /// The place on the base at an angle from the front, towards +x.
    #[must_use]
    pub fn around(&self, angle: f64) -> Point3 {
        let (sin, cos) = libm::sincos(angle);
        let way = Point3::new(sin, 0.0, 0.0) + self.forward * cos;
        let mut far = self.base[0];
        for _ in 0..20 {
            let (distance, normal) = self.at(way * far);
            let step = distance / normal.dot(way).max(0.2);
            far -= step;
            if step.abs() < 1e-6 {
                break;
            }
        }
        way * far
    }

    /// Half the breadth and the depth of the ellipse that the torso's planes go through.
    #[must_use]
    pub const fn base(&self) -> [f64; 2] {
        self.base
    }

    /// The way from the middle of the base to its front.
    #[must_use]
    pub const fn forward(&self) -> Point3 {
        self.forward
    }

    /// The front of the neck's base, from which drops are measured.
    #[must_use]
    pub fn front(&self) -> Point3 {
        self.around(0.0)
    }

    /// The way down the chest.
    #[must_use]
    pub fn down(&self) -> Point3 {
        let chest = self.faces[0];
        Point3::new(0.0, -chest.z, chest.y)
    }

    fn off_neck(&self, place: Point3) -> (f64, Point3) {
        let back = Point3::new(0.0, -self.axis.z, self.axis.y);
        let aside = Point3::new(place.x, 0.0, 0.0) + back * place.dot(back);
        let far = aside.length();
        (far - self.neck, aside * (1.0 / far.max(f64::MIN_POSITIVE)))
    }

    fn off_torso(&self, place: Point3) -> (f64, Point3) {
        let [a, b] = self.base;
        let r = bodies::TORSO_EDGE * a;
        let feet = [self.forward * b, self.forward * -b, Point3::new(a, 0.0, 0.0), Point3::new(-a, 0.0, 0.0)];
        let mut beyond = [0.0; 4];
        for ((beyond, foot), face) in beyond.iter_mut().zip(feet).zip(&self.faces) {
            *beyond = face.dot(place - foot);
        }
        let most = beyond.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let shares = beyond.map(|beyond| libm::exp((beyond - most) / r));
        let sum: f64 = shares.iter().sum();
        let parts = self.faces.iter().zip(shares).map(|(face, share)| *face * (share / sum));
        (most + r * libm::log(sum), parts.fold(Point3::ORIGIN, |sum, part| sum + part))
    }

    /// The nearest place at least so far outside the skin.
    #[must_use]
    pub fn outside(&self, place: Point3, reach: f64) -> Point3 {
        let mut out = place;
        for _ in 0..12 {
            let (distance, normal) = self.at(out);
            if distance >= reach - 1e-3 {
                break;
            }
            out = out + normal * (reach - distance);
        }
        out
    }

    /// The radius of a round neck with the girth that this one has above its base.
    #[must_use]
    pub const fn neck(&self) -> f64 {
        self.neck
    }

    /// Whether the body stands between a place outside it and who looks on from the front.
    #[must_use]
    pub fn hides(&self, place: Point3) -> bool {
        /// No part of the body that hides anything is farther forward than this, in neck breadths.
        const FORWARD: f64 = 6.0;
        let most = place.z + FORWARD * self.base[0];
        let mut on = place;
        while on.z < most {
            let (distance, _) = self.at(on);
            if distance < -0.2 {
                return true;
            }
            on.z += (0.7 * distance).max(1.0);
        }
        false
    }

    /// The breadth of the neck's base.
    #[must_use]
    pub fn breadth(&self) -> f64 {
        2.0 * self.around(FRAC_PI_2).x
    }

    /// The body's outline on the right as it is seen from the front, from the neck down to the shoulder: from how high
    /// to how far out, in breadths of the neck's base.
    #[must_use]
    pub fn outline(&self, high: f64, out: f64) -> Vec<Point> {
        const STEPS: i32 = 40;
        let breadth = self.breadth();
        let step = breadth * high / 12.0;
        let mut points: Vec<Point> = Vec::new();
        for height in (0..STEPS).map(|at| breadth * high - step * f64::from(at)) {
            let next = Point::new(self.half_breadth(height), height);
            let beyond = next.x - breadth * out;
            if let Some(last) = points.last().copied().filter(|_| beyond >= 0.0) {
                let cut = next.between(last, beyond / (next.x - last.x));
                // A curve through points that are too close together would bulge.
                if cut.distance(last) < step {
                    points.pop();
                }
                points.push(cut);
                break;
            }
            points.push(next);
        }
        points
    }

    /// Half the breadth of what is seen of the body from the front at a height.
    fn half_breadth(&self, height: f64) -> f64 {
        let [a, _] = self.base;
        let (mut inside, mut outside) = (0.0, 4.0 * a);
        for _ in 0..16 {
            let middle = 0.5 * (inside + outside);
            *if self.stands_at(middle, height) { &mut inside } else { &mut outside } = middle;
        }
        0.5 * (inside + outside)
    }

    /// Whether any of the body stands behind or before a point as it is seen from the front.
    fn stands_at(&self, x: f64, y: f64) -> bool {
        const SLICES: i32 = 24;
        let depth = |slice: i32| 2.4 * self.base[1] * f64::from(slice) / f64::from(SLICES);
        (-SLICES..=SLICES).any(|slice| self.at(Point3::new(x, y, depth(slice))).0 < 0.0)
    }
}

/// By how much a curve is longer than its chords, where one is seen under an equal angle.
fn chords() -> f64 {
    let half = PI / (2.0 * RAYS as f64);
    half / libm::sin(half)
}
