//! What hangs from a strand on a body: a branch, which is straight, or a tail, which bends between its beads.
//!
//! It hangs as low as it goes with nothing of it in the body. Something straight that turns about a place hangs straight
//! down where there is room, and else touches the skin in one spot: of all ways that keep that spot out, the lowest leaves the
//! skin by just so much and goes straight down the slope for the rest. Where that spot lies, and how the skin leans there,
//! is found in rounds; on a plane the first are exact.
//!
//! Without friction a slope bears what lies on it square to itself alone, wherever it lies: what hangs from a strand there
//! pulls it down the slope by the weight's part along that, as it would with all its weight in the place that it hangs from. So
//! it is weighed there: exactly right on the flat of the chest, and for what turns with the round of a shoulder as that leans
//! where its strand is.
//!
//! What stood off the slope too steeply would draw its strand off the skin: that is lifted there until it does not.

use std::f64::consts::PI;

use super::super::Worn;
use super::super::chain::Content;
use super::skin::{Skin, Surface};
use crate::design::{Bead, Bit, Dangle, Design, Strand, What};
use crate::geometry::Point3;

/// Rounds in which the way is found, and how deep in mm what hangs may lie in the skin after that.
const ROUNDS: u32 = 40;
const NEAR: f64 = 1e-4;
/// How far what hangs may stand off the slope, in radians: the sixth part of its weight or less draws its strand off the skin.
const STANDS: f64 = 10.0 * PI / 180.0;

/// A spot of something straight that keeps off the skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangingSpot {
    /// How far it is along it.
    pub below: f64,
    /// The radius of an edge round it.
    rim: f64,
    /// The radius of a ball about it.
    ball: f64,
}

impl HangingSpot {
    /// A ball.
    pub const fn ball(below: f64, radius: f64) -> Self {
        Self { below, rim: 0.0, ball: radius }
    }

    /// An edge round it.
    const fn rim(below: f64, radius: f64) -> Self {
        Self { below, rim: radius, ball: 0.0 }
    }

    /// The same, so much farther along.
    pub fn lower(self, by: f64) -> Self {
        Self { below: self.below + by, ..self }
    }

    /// How far from the skin what it hangs from must be, so that it stands off the slope no more than it may.
    fn lifts(self) -> f64 {
        let (sine, cosine) = libm::sincos(STANDS);
        self.ball + self.rim * cosine - self.below * sine
    }

    /// How far it keeps off the skin, less than nothing in it, and the way as it must be for it to touch.
    fn kept_off(self, skin: &impl Surface, from: Point3, way: Point3) -> (f64, Point3) {
        let (distance, normal) = skin.at(from + way * self.below);
        let rise = way.dot(normal).clamp(-1.0, 1.0);
        let off = distance - self.rim * (1.0 - rise * rise).sqrt() - self.ball;
        let (high, far) = (distance - self.below * rise, libm::hypot(self.below, self.rim));
        let angle = libm::atan2(self.rim, self.below) + libm::asin(((self.ball - high) / far).clamp(-1.0, 1.0));
        let (sine, cosine) = libm::sincos(angle);
        let down_the_slope = (Point3::DOWN - normal * Point3::DOWN.dot(normal)).unit().unwrap_or(way);
        (off, normal * sine + down_the_slope * cosine)
    }
}

/// The unit vector along which something with such spots hangs from a place outside a skin.
pub fn way_down(skin: &impl Surface, from: Point3, spots: &[HangingSpot]) -> Point3 {
    let mut way = Point3::DOWN;
    for _ in 0..ROUNDS {
        let kept = spots.iter().map(|spot| spot.kept_off(skin, from, way));
        match kept.min_by(|one, other| one.0.total_cmp(&other.0)) {
            Some((off, out)) if off < -NEAR => way = out,
            _ => break,
        }
    }
    way
}

/// Where the spots of a tail come to lie that hangs from a place, straight from each to the next.
pub fn laid_down(skin: &Skin, from: Point3, spots: &[HangingSpot]) -> Vec<Point3> {
    let mut last = (from, 0.0);
    let mut lie = |spot: &HangingSpot| {
        let way = way_down(skin, last.0, &[spot.lower(-last.1)]);
        last = (skin.outside(last.0 + way * (spot.below - last.1), spot.ball), spot.below);
        last.0
    };
    spots.iter().map(&mut lie).collect()
}

impl Worn {
    /// The unit vector along which a branch hangs from a place of its strand.
    #[must_use]
    pub fn hanging(&self, design: &Design, branch: &Dangle, from: Point3) -> Point3 {
        way_down(&self.skin, from, &branched(design, branch))
    }
}

/// How far from the skin what hangs from a piece of a strand keeps it.
pub fn lift(design: &Design, strand: &Strand, piece: Content) -> f64 {
    let Content::Bit(train, bit) = piece else { return 0.0 };
    let What::Dangle(branch) = &strand.trains[train].bits[bit].what else { return 0.0 };
    branched(design, branch).into_iter().map(HangingSpot::lifts).fold(0.0, f64::max)
}

/// What of a branch keeps off the skin.
fn branched(design: &Design, branch: &Dangle) -> Vec<HangingSpot> {
    let bits = branch.bits.iter().zip(branch.levels(design));
    bits.flat_map(|(bit, level)| spots(design, bit, level)).collect()
}

/// What of a bit on a branch keeps off the skin, its middle so far below the cord.
fn spots(design: &Design, bit: &Bit, level: f64) -> Vec<HangingSpot> {
    match bit.what {
        What::Bead(bead) => bead_spots(&design.beads[bead], level),
        What::Finding(at) => {
            let radius = 0.5 * design.findings[at].thickness().value();
            [-bit.before, bit.after].map(|off| HangingSpot::rim(level + off, radius)).into()
        }
        What::Gap | What::Knot | What::Dangle(_) => Vec::new(),
    }
}

/// A ball, or circles round the hole.
fn bead_spots(bead: &Bead, level: f64) -> Vec<HangingSpot> {
    /// Circles on either side of the middle: a drop 30 mm long is a few thousandths of a mm within.
    const CIRCLES: i32 = 48;
    if bead.is_ball() {
        return vec![HangingSpot::ball(level, 0.5 * bead.across.value())];
    }
    let off = |circle: i32| 0.5 * bead.along.value() * f64::from(circle) / f64::from(CIRCLES);
    (-CIRCLES..=CIRCLES).map(off).map(|off| HangingSpot::rim(level + off, bead.half_width(off))).collect()
}
