//! The geometry of single beads: how far they reach along the hole, how wide they are, how much
//! they hold.
//!
//! Drilled-bead geometry: a round bead does not meet its neighbour at a point on the hole's axis,
//! since the hole has removed it. At radius `r` from the axis a ball of radius R reaches
//! sqrt(R² − r²) from its centre (the "napkin ring"); an ellipsoid scales along the hole.

use std::f64::consts::PI;

use crate::geometry::Point;
use crate::geometry::hinge::Hinge;
use crate::geometry::nose::{Nose, Oval};
use crate::pattern::{Drilled, Shape};
use crate::trade::usual::{BARREL_END, CHIP_FILLS};
use crate::units::Length;

use super::bars::Bores;
use super::stock::Bead;

impl Bead {
    /// Diameter of the narrowest hole that it passes along its own: that of the circle round it, seen along
    /// the hole. Of flat and square ones that is their diagonal.
    #[must_use]
    pub fn broadest(&self) -> Length {
        let corners = matches!(self.shape, Shape::Cube | Shape::Square | Shape::Coin);
        let (across, thick) = (self.across.value(), self.thick.value());
        if corners { Length::mm(libm::hypot(across, thick)) } else { self.across }
    }

    /// Distance in mm from the bead's centre to its surface along the hole, at a radius in mm from
    /// the hole's axis; of several holes, where the bead reaches farthest.
    #[must_use]
    pub fn half_length(&self, radius: f64) -> f64 {
        let radius = self.bores.map_or(radius, |bores| inner(bores, radius));
        let (half, wide, hole) = (self.along.value() / 2.0, self.across.value() / 2.0, self.hole.value() / 2.0);
        match self.shape {
            _ if self.hangs() => half,
            Shape::Round | Shape::Rondelle | Shape::Oval | Shape::Coin => half * root(1.0 - (radius / wide).powi(2)),
            Shape::Bicone => half * ((wide - radius) / (wide - hole)).clamp(0.0, 1.0),
            _ => half,
        }
    }

    /// Whether it is as long as it is wide, and round.
    #[must_use]
    pub fn is_ball(&self) -> bool {
        let is_round = matches!(self.shape, Shape::Round | Shape::Rondelle | Shape::Oval | Shape::Coin);
        is_round && self.along == self.across
    }

    /// Half the bead's width in mm at a distance in mm from its centre along the hole; nothing
    /// beyond its ends. A drop's narrow end comes first.
    #[must_use]
    pub fn half_width(&self, offset: f64) -> f64 {
        let (half, wide) = (self.along.value() / 2.0, self.across.value() / 2.0);
        let share = offset / half;
        if share.abs() > 1.0 {
            return 0.0;
        }
        match self.shape {
            Shape::Round | Shape::Rondelle | Shape::Oval | Shape::Coin => wide * root(1.0 - share.powi(2)),
            Shape::Bicone => wide + (self.hole.value() / 2.0 - wide) * share.abs(),
            Shape::Barrel => wide * (1.0 - (1.0 - BARREL_END) * share.powi(2)),
            Shape::Drop => self.drop_width(offset),
            Shape::Cube | Shape::Square | Shape::Tube | Shape::Chip | Shape::Seed => wide,
        }
    }

    /// A drop is half a ball below a cone that ends in the hole.
    fn drop_width(&self, offset: f64) -> f64 {
        let (half, wide, hole) = (self.along.value() / 2.0, self.across.value() / 2.0, self.hole.value() / 2.0);
        let bulb = wide.min(half);
        let into_bulb = offset - (half - bulb);
        if into_bulb > 0.0 {
            return wide * root(1.0 - (into_bulb / bulb).powi(2));
        }
        hole + (wide - hole) * (offset + half) / (2.0 * half - bulb)
    }

    /// How far in mm it reaches from its hole's axis towards the skin: flat beads lie flat.
    #[must_use]
    pub fn lying(&self) -> f64 {
        0.5 * self.thick.value().min(self.across.value())
    }

    /// Its outline towards its start and its end, as it lies on the skin. A barrel counts by its rims and its middle;
    /// seeds are rounded as the wall between hole and edge is thick, and chips as balls are (both by eye).
    #[must_use]
    pub fn noses(&self) -> [Nose; 2] {
        self.ends(self.shape, self.lying())
    }

    /// The same as it hangs, its face to who looks.
    #[must_use]
    pub fn facing_noses(&self) -> [Nose; 2] {
        let face = if self.shape == Shape::Coin { Shape::Round } else { self.shape };
        self.ends(face, 0.5 * self.across.value())
    }

    /// How it parts from the next bead where their row bends, on a cord so thick in mm.
    #[must_use]
    pub fn hinge(&self, next: &Self, cord: f64) -> Hinge {
        let [[_, after], [before, _]] = [self, next].map(Self::facing_noses);
        Hinge::new([after, before], [self, next].map(|bead| 0.5 * bead.hole.value()), 0.5 * cord)
    }

    /// The outlines of a shape's start and end where it is so broad to either side.
    fn ends(&self, shape: Shape, wide: f64) -> [Nose; 2] {
        let (half, hole) = (0.5 * self.along.value(), 0.5 * self.hole.value());
        let oval = |centre: Point, along: f64, across: f64| Oval { centre, along, across };
        let nose = match shape {
            Shape::Drop => return self.drop_noses(wide),
            Shape::Round | Shape::Rondelle | Shape::Oval | Shape::Chip => {
                let rim = Point::new(half * root(1.0 - (hole / wide).powi(2)), hole);
                Nose { rim, swell: oval(Point::ORIGIN, half, wide) }
            }
            Shape::Seed => {
                let wall = Point::new(0.0, 0.5 * (hole + wide));
                Nose { rim: Point::new(0.0, hole), swell: oval(wall, half, 0.5 * (wide - hole).max(0.0)) }
            }
            Shape::Bicone => Nose::cornered(Point::new(half, hole), Point::new(0.0, wide)),
            Shape::Barrel => Nose::cornered(Point::new(half, BARREL_END * wide), Point::new(0.0, wide)),
            Shape::Cube | Shape::Square | Shape::Tube | Shape::Coin => Nose::flat(Point::new(half, wide)),
        };
        [nose; 2]
    }

    /// A drop's narrow end comes first.
    fn drop_noses(&self, wide: f64) -> [Nose; 2] {
        let (half, hole) = (0.5 * self.along.value(), 0.5 * self.hole.value());
        let bulb = wide.min(half);
        let [narrow, round] = self.drop_ends(hole).map(|reach| Point::new(reach, hole));
        let swell = Oval { centre: Point::new(half - bulb, 0.0), along: bulb, across: wide };
        [Nose::cornered(narrow, Point::new(bulb - half, wide)), Nose { rim: round, swell }]
    }

    /// Distance in mm from a drop's centre to its narrow end and to its round one, at a radius in mm from the hole's axis.
    #[must_use]
    pub fn drop_ends(&self, radius: f64) -> [f64; 2] {
        let (half, wide, hole) = (0.5 * self.along.value(), 0.5 * self.across.value(), 0.5 * self.hole.value());
        let bulb = wide.min(half);
        let cone = ((radius - hole) / (wide - hole)).clamp(0.0, 1.0) * (2.0 * half - bulb);
        [half - cone, half - bulb + bulb * root(1.0 - (radius / wide).powi(2))]
    }

    /// Volume in mm³ of what the hole has left.
    ///
    /// Exact for balls and ellipsoids (napkin ring), bicones (two frusta), cubes, squares, tubes
    /// and parabolic barrels (handbook formula, πL(8R² + 4Rr + 3r²)/15); an approximation for
    /// drops, coins with their straight hole, chips, several holes, each as long as the bead, and holes across a bead, which are taken to be as long as half
    /// its width, or from front to back as it is thick.
    #[must_use]
    pub fn volume(&self) -> f64 {
        let hole = self.hole.value() / 2.0;
        let holes = self.bores.map_or(1.0, |bores| f64::from(bores.count));
        let bore = |length: Length| PI * hole * hole * length.value();
        let left = match self.drilled {
            Drilled::Lengthwise if holes > 1.0 => self.volume_beside(0.0) - bore(self.along) * holes,
            Drilled::Lengthwise => self.volume_beside(hole),
            Drilled::Tip => self.volume_beside(0.0) - bore(self.across * 0.5),
            Drilled::Front => self.volume_beside(0.0) - bore(*self.thick),
        };
        left.max(0.0)
    }

    /// Volume in mm³ beside a hole along it of a radius in mm.
    fn volume_beside(&self, hole: f64) -> f64 {
        let (half, wide) = (self.along.value() / 2.0, self.across.value() / 2.0);
        let long = 2.0 * half;
        let bore = PI * hole * hole * long;
        match self.shape {
            Shape::Round | Shape::Rondelle | Shape::Oval => {
                let left = root(1.0 - (hole / wide).powi(2));
                4.0 / 3.0 * PI * half * wide * wide * left.powi(3)
            }
            Shape::Bicone => 2.0 / 3.0 * PI * half * (wide * wide + wide * hole + hole * hole) - bore,
            Shape::Cube => 4.0 * wide * wide * long - bore,
            Shape::Square => 2.0 * wide * self.thick.value() * long - bore,
            Shape::Tube | Shape::Seed => PI * wide * wide * long - bore,
            Shape::Barrel => {
                PI * long / 15.0 * wide * wide * (8.0 + 4.0 * BARREL_END + 3.0 * BARREL_END.powi(2)) - bore
            }
            Shape::Drop => self.drop_volume() - bore,
            Shape::Coin => PI * half * wide * self.thick.value() - bore,
            Shape::Chip => 4.0 * wide * wide * long * CHIP_FILLS - bore,
        }
    }

    fn drop_volume(&self) -> f64 {
        let (half, wide, hole) = (self.along.value() / 2.0, self.across.value() / 2.0, self.hole.value() / 2.0);
        let bulb = wide.min(half);
        let cone = PI / 3.0 * (2.0 * half - bulb) * (wide * wide + wide * hole + hole * hole);
        2.0 / 3.0 * PI * wide * wide * bulb + cone
    }
}

/// Of a row of holes about a bead's axis, how near to it the circle of a radius round the innermost comes.
fn inner(bores: Bores, radius: f64) -> f64 {
    let middle = if bores.count.is_multiple_of(2) { 0.5 * bores.apart.value() } else { 0.0 };
    (middle - radius).abs()
}

fn root(value: f64) -> f64 {
    value.max(0.0).sqrt()
}
