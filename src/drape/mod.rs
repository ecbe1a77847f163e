//! The drape: where every bead of a design hangs.
//!
//! x to the right and y up, in mm, from the first end of the innermost strand. See [`mod@hang`] for
//! the solver, [`slide`] for beads that gather, [`neck`] for the body, [`clearance`] for crowding
//! and [`ring`] for pieces that close round a wrist.

pub mod chain;
pub mod clearance;
pub mod ellipse;
pub mod hang;
pub mod neck;
pub mod ring;
pub mod slide;
mod strand;

pub use strand::{Fault, hang};

use crate::geometry::Point;

/// Where everything hangs.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Drape {
    /// Distance between the innermost strand's two points.
    pub span: f64,
    /// One a strand, in the design's order.
    pub strands: Vec<Hung>,
    /// Between neighbouring strands; none of a piece that is laid straight without a bar.
    pub clearances: Vec<Clearance>,
    /// On the neck, for pieces that hang round one.
    pub worn: Option<Worn>,
    /// Closed round the limb, for bracelets and anklets: of several strands the tightest.
    pub ring: Option<Ring>,
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

/// A bracelet or anklet closed round the limb, hooked as short as it goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// Index of the strand that is closed.
    pub strand: usize,
    /// Radius of the circle through the centres of the beads.
    pub radius: f64,
    /// Girth of the circle that touches the beads' inner sides.
    pub inside_girth: f64,
    /// The same when it is hooked as long as it goes.
    pub longest_girth: f64,
    /// One a seat of the strand: how far round the ring its centre lies, in radians from the
    /// strand's first end.
    pub turns: Vec<f64>,
    /// The closure's joints in the same way, from the strand's last end round to its first: those of
    /// the last end's side outward, then those of the first end's side inward.
    pub closing: Vec<f64>,
}
