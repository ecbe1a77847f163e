//! The drape: where every bead of a design hangs.
//!
//! x to the right and y up, in mm, from the first end of the innermost strand. See [`mod@hang`] for
//! the solver, [`slide`] for beads that gather, [`neck`] for the body, [`clearance`] for crowding,
//! [`Press`] for strands that touch, [`ring`] for pieces that close round a wrist and [`taut`] for
//! how they lie there.

pub mod chain;
pub mod clearance;
mod contact;
pub mod ellipse;
pub mod hang;
pub mod neck;
pub mod ring;
pub mod slide;
mod strand;
pub mod taut;

pub use contact::{Press, Unrest};
pub use strand::{Fault, clearance as clearance_of, hang, hang_alone};

use crate::geometry::Point;

/// Where everything hangs.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Drape {
    /// Distance between the innermost strand's two points.
    pub span: f64,
    /// One a strand, in the design's order.
    pub strands: Vec<Hung>,
    /// Between neighbouring strands; none of a piece that is laid straight or hangs plumb without a bar.
    pub clearances: Vec<Clearance>,
    /// Where strands that hang from points press on one another.
    pub presses: Vec<Press>,
    /// What is left where such strands came to no rest.
    pub unrest: Option<Unrest>,
    /// On the neck, for pieces that hang round one.
    pub worn: Option<Worn>,
    /// Closed round the limb, for bracelets and anklets: each strand that goes round, in the design's order.
    pub rings: Vec<Ring>,
}

/// A strand at rest.
#[derive(Clone, Debug)]
pub struct Hung {
    /// The two points it hangs from.
    pub ends: [Point; 2],
    /// The chain's joints from the first end to the last, with their stations.
    pub joints: Vec<Joint>,
    /// Every bit that is not bare cord, in order.
    pub seats: Vec<Seat>,
    /// Station at which each of the strand's trains starts.
    pub starts: Vec<f64>,
    /// Tension in the cord.
    pub tension: Tension,
    /// From the higher end down to the lowest joint.
    pub drop: f64,
    /// Steps that the solver took.
    pub iterations: u32,
    /// Distance by which the chain misses its last end.
    pub residual: f64,
}

/// A joint of the hanging chain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Cord length from the first end's loop.
    pub station: f64,
    /// Where it hangs.
    pub at: Point,
}

/// Where a bit sits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Index of its train in the strand.
    pub train: usize,
    /// Index of the bit in its train.
    pub bit: usize,
    /// Cord length from the first end's loop to the bit's centre.
    pub station: f64,
    /// Its centre.
    pub centre: Point,
    /// Direction of the cord through it, in radians from +x, counter-clockwise.
    pub angle: f64,
}

/// Tension in newtons.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tension {
    /// At the first end.
    pub first: f64,
    /// Where it is least: at the lowest point of a strand that has one between its ends.
    pub lowest: f64,
    /// At the last end.
    pub last: f64,
}

/// How close two neighbouring strands come, outline to outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearance {
    /// Indices of the two strands.
    pub between: [usize; 2],
    /// The smallest distance; less than nothing where outlines overlap.
    pub least: f64,
    /// Where that is.
    pub at: Point,
    /// Share of the compared length along which the strands touch.
    pub touching: f64,
    /// The greatest force in N with which they press on one another along any 10 mm of the inner strand.
    pub hardest: f64,
}

/// A necklace on its neck.
#[derive(Clone, Debug, PartialEq)]
pub struct Worn {
    /// Breadth of the neck's ellipse.
    pub breadth: f64,
    /// Depth of the neck's ellipse.
    pub depth: f64,
    /// How far the chest leans back from upright, in radians.
    pub tilt: f64,
    /// How much the closure adds as it is worn: hooked as short as goes round the neck.
    pub closure: f64,
    /// How much of every strand lies behind the neck at each end; less than nothing where the closure
    /// reaches round to the front.
    pub behind: f64,
    /// One a strand: the line it takes over the chest, seen from the front, y up from the line
    /// between the neck's sides.
    pub lines: Vec<Vec<Point>>,
    /// One a strand: how far below the neck's front it hangs, seen from the front.
    pub drops: Vec<f64>,
}

/// A strand of a bracelet or anklet closed round the largest round limb that it goes round, hooked as
/// short as it goes. The limb's centre is the origin; the strand's middle lies at the foot.
#[derive(Clone, Debug)]
pub struct Ring {
    /// Index of the strand that is closed.
    pub strand: usize,
    /// Girth of the limb.
    pub inside_girth: f64,
    /// The same when it is hooked as long as it goes.
    pub longest_girth: f64,
    /// The strand on its way round, anticlockwise. It is in no tension.
    pub round: Hung,
    /// The closure's joints from the strand's last end round to its first: those of the last end's side
    /// outward, then those of the first end's side inward.
    pub closing: Vec<Point>,
}

impl Drape {
    /// The tightest of the rings, which decides whom the piece fits.
    #[must_use]
    pub fn ring(&self) -> Option<&Ring> {
        self.rings.iter().min_by(|one, other| one.inside_girth.total_cmp(&other.inside_girth))
    }
}
