//! A helix: the way of a wire that goes round and round and rises evenly.
//!
//! Of a radius r and a rise p for each turn, a turn is sqrt((2 pi r)² + p²) long, and the wire is bent as a circle
//! of the radius r + (p / 2 pi)² / r (textbook; both follow from the place (r cos t, r sin t, p t / 2 pi), and a test
//! sums up its speed by Simpson's rule).

use std::f64::consts::PI;

use super::Point3;

/// A helix about the axis z, which begins at z = 0 and turns anticlockwise. Lengths are mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helix {
    /// From the axis to the wire's middle, in mm.
    pub radius: f64,
    /// How much higher each whole turn ends than it begins.
    pub rise: f64,
}

impl Helix {
    /// Length of a whole turn, in mm.
    #[must_use]
    pub fn turn(&self) -> f64 {
        libm::hypot(2.0 * PI * self.radius, self.rise)
    }

    /// How many times so much wire goes round.
    #[must_use]
    pub fn turns(&self, length: f64) -> f64 {
        length / self.turn()
    }

    /// Radius of the circle as which the wire is bent, in mm.
    #[must_use]
    pub fn bend(&self) -> f64 {
        self.radius + (self.rise / (2.0 * PI)).powi(2) / self.radius
    }

    /// Where the wire is after so many radians.
    #[must_use]
    pub fn at(&self, turned: f64) -> Point3 {
        let (across, up) = (libm::cos(turned) * self.radius, libm::sin(turned) * self.radius);
        Point3::new(across, up, self.rise * turned / (2.0 * PI))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The length from 0 to so many radians: Simpson's rule over the speed, which is taken from nearby places.
    fn summed(helix: &Helix, turned: f64) -> f64 {
        const STEPS: u32 = 2_000;
        const NEAR: f64 = 1e-4;
        let speed = |at: f64| helix.at(at - NEAR).distance(helix.at(at + NEAR)) / (2.0 * NEAR);
        let width = turned / f64::from(STEPS);
        let weight = |step: u32| match step {
            0 | STEPS => 1.0,
            odd if odd % 2 == 1 => 4.0,
            _ => 2.0,
        };
        (0..=STEPS).map(|step| weight(step) * speed(f64::from(step) * width)).sum::<f64>() * width / 3.0
    }

    #[test]
    fn its_length_is_that_of_its_way_summed_up() {
        for (radius, rise, turns) in [(28.0, 6.0, 3.5), (57.5, 12.0, 1.25), (30.0, 0.0, 2.0), (5.0, 40.0, 7.0)] {
            let helix = Helix { radius, rise };
            let length = turns * helix.turn();
            assert!((summed(&helix, turns * 2.0 * PI) - length).abs() < 1e-5 * length, "{helix:?}");
            assert!((helix.turns(length) - turns).abs() < 1e-12);
        }
    }

    #[test]
    fn it_is_bent_as_the_circle_through_three_near_places() {
        let helix = Helix { radius: 28.0, rise: 9.0 };
        let [a, b, c] = [-1e-3, 0.0, 1e-3].map(|at| helix.at(at));
        let [ab, bc, ca] = [(a, b), (b, c), (c, a)].map(|(one, other)| one.distance(other));
        // The circle round a triangle: R = abc / 4 area (Heron's triangle).
        let area = 0.5 * (b - a).cross(c - a).length();
        assert!((ab * bc * ca / (4.0 * area) - helix.bend()).abs() < 1e-3);
    }
}
