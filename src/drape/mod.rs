//! The drape: where every bead of a design hangs.
//!
//! x to the right and y up, in mm, from the first end of the innermost strand. See [`mod@hang`] for
//! the solver, [`slide`] for beads that gather, [`body`] for what is worn, [`clearance`] for crowding,
//! [`fall`] for pieces whose ends are in front, `twist` for torsades, [`Press`] for strands that touch, [`ring`] for pieces that close round a wrist and [`taut`](crate::geometry::taut) for
//! how they lie there.

mod bar;
mod bend;
pub mod body;
pub mod chain;
pub mod clearance;
mod contact;
mod down;
pub mod ellipse;
pub mod fall;
mod fold;
pub mod hang;
mod hung;
pub mod open;
mod program;
pub mod ring;
pub mod slide;
mod strand;
mod twist;

pub use body::Closed;
pub use contact::{Press, Unrest};
pub use down::{hung_length, piece_length};
pub use strand::{Fault, clearance as clearance_of, hang, hang_alone, hang_unworn};

use crate::design::{Bit, Design, Entries, Index, Strand};
use crate::geometry::{Point, Point3};
use body::skin::Skin;

/// Where everything hangs.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Drape {
    /// Distance between the innermost strand's two points, in mm.
    pub span: f64,
    /// One a strand.
    pub strands: Entries<Hung, Strand>,
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
#[non_exhaustive]
pub struct Hung {
    /// The two points it hangs from: of a piece whose ends are in front those at which it leaves what is broad as
    /// the neck.
    pub ends: [Point; 2],
    /// The chain's joints from the first end to the last, with their stations.
    pub joints: Vec<Joint>,
    /// Every bit that is not bare cord, in order.
    pub seats: Vec<Seat>,
    /// Station in mm at which each of the strand's trains starts.
    pub starts: Vec<f64>,
    /// How much more cord its beads take where they part than lies bare, in mm.
    pub lacks: f64,
    /// Tension in the cord.
    pub tension: Tension,
    /// From the higher end down to the lowest joint, or to the foot of what a free end ends in, in mm.
    pub drop: f64,
    /// Steps that the solver took.
    pub iterations: u32,
    /// Distance in mm by which the chain misses its last end.
    pub residual: f64,
    /// Between which stations in mm it is not seen, where that is neither before nor behind the rest.
    pub unseen: Option<[f64; 2]>,
}

/// A joint of the hanging chain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Joint {
    /// Cord length in mm from the first end's loop when the strand is laid straight.
    pub station: f64,
    /// Where it hangs.
    pub at: Point,
}

/// Where a bit sits.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Seat {
    /// Index of its train in the strand.
    pub train: usize,
    /// Index of the bit in its train.
    pub bit: usize,
    /// Cord length in mm from the first end's loop to the bit's centre.
    pub station: f64,
    /// Its centre.
    pub centre: Point,
    /// Direction of the cord through it, in radians from +x, counter-clockwise.
    pub angle: f64,
    /// How near it is to who looks, in mm; nothing on a board.
    pub near: f64,
    /// By how much each mm of the cord through it comes nearer: nothing on a board, 1 straight towards who looks.
    pub toward: f64,
    /// The unit vector along which a branch hangs from it.
    pub down: Point3,
}

impl Seat {
    /// The bit that lies there, of its strand.
    #[must_use]
    pub fn bit<'s>(&self, strand: &'s Strand) -> &'s Bit {
        &strand.trains[self.train].bits[self.bit]
    }

    /// The unit vector along the cord through it: to the right, up, towards who looks.
    #[must_use]
    pub fn along(&self) -> Point3 {
        let across = libm::sqrt((1.0 - self.toward * self.toward).max(0.0));
        Point3::new(across * libm::cos(self.angle), across * libm::sin(self.angle), self.toward)
    }

    /// A place so far down a branch that hangs from it, in mm.
    #[must_use]
    pub fn below(&self, far: f64) -> Point3 {
        Point3::new(self.centre.x, self.centre.y, self.near) + self.down * far
    }
}

/// Tension in newtons.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[non_exhaustive]
pub struct Tension {
    /// At the first end, or where it leaves a rail on that side.
    pub first: f64,
    /// Where it is least: at the lowest point of a strand that has one between its ends; less than nothing where stiff cord
    /// is pressed between bars.
    pub lowest: f64,
    /// At the last end, or where it leaves a rail on that side.
    pub last: f64,
}

/// How close two neighbouring strands come, outline to outline.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Clearance {
    /// The two strands.
    pub between: [Index<Strand>; 2],
    /// The smallest distance in mm; less than nothing where outlines overlap.
    pub least: f64,
    /// Where that is.
    pub at: Point,
    /// Share of the compared length along which the strands touch.
    pub touching: f64,
    /// The greatest force in N with which they press on one another along any 10 mm of the inner strand.
    pub hardest: f64,
    /// The smallest distance in mm of what is strung near their ends; none where nothing is.
    pub at_ends: Option<f64>,
}

/// How close two strands come on the neck, outline to outline.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct WornClearance {
    /// The two strands.
    pub between: [Index<Strand>; 2],
    /// The smallest distance in mm away from their ends, less than nothing where outlines overlap, and where that is; none
    /// where they touch near their ends alone.
    pub least: Option<(f64, Point3)>,
    /// Share of the first strand, away from its ends, along which the strands touch.
    pub touching: f64,
    /// The greatest force in N with which they press on one another along any 10 mm of the inner strand; none where that is
    /// not known, as of strands that are twisted.
    pub hardest: Option<f64>,
    /// The smallest distance in mm of what is strung near their ends; none where they do not touch there.
    pub at_ends: Option<f64>,
}

/// A necklace on its neck. The origin is the middle of the neck's base; x to the right as one looks at its front,
/// y up, z towards who looks.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Worn {
    /// The body on which it rests.
    pub skin: Skin,
    /// How much the closure adds as it is worn, in mm: hooked as short as goes round the neck.
    pub closure: f64,
    /// Each strand's way, with half of the closure at either end; none where it does not reach round.
    pub lines: Entries<Vec<Waypoint>, Strand>,
    /// How far below the front of the neck's base each strand hangs, in mm.
    pub drops: Entries<f64, Strand>,
    /// How much longer each strand is than what goes round the neck above its base, in mm; less than nothing where it does
    /// not. Twisted strands go round as one.
    pub spare: Entries<f64, Strand>,
    /// Between strands that touch there.
    pub clearances: Vec<WornClearance>,
    /// What is left where it came to no rest.
    pub unrest: Option<Unrest>,
}

/// A place on a worn strand's way.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Waypoint {
    /// Cord length in mm from the strand's first end: less than nothing, or more than its length, in the closure.
    pub station: f64,
    /// Where it is.
    pub at: Point3,
    /// Whether the body hides it from the front.
    pub hidden: bool,
}

/// A strand of a bracelet or anklet closed round the largest round limb that it goes round, hooked as
/// short as it goes. The limb's centre is the origin; the strand's middle lies at the foot.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Ring {
    /// The strand that is closed.
    pub strand: Index<Strand>,
    /// Girth in mm of the limb, about which each turn of a wound row lies.
    pub inside_girth: f64,
    /// The same in mm when it is hooked as long as it goes.
    pub longest_girth: f64,
    /// The strand on its way round, anticlockwise. It is in no tension.
    pub round: Hung,
    /// The closure's joints from the strand's last end round to its first: those of the last end's side
    /// outward, then those of the first end's side inward.
    pub closing: Vec<Point>,
    /// How it is wound, where it goes round more than once.
    pub coil: Option<Coil>,
}

/// A row that goes round more than once, turn beside turn. The limb's axis is z; as it is worn, who looks at the foot
/// of its ring looks at its front.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Coil {
    /// How many times it goes round.
    pub turns: f64,
    /// How far each turn lies beside the one before, in mm.
    pub pitch: f64,
    /// Its way in space: stations beyond the strand's length are in what closes it.
    pub way: Vec<Waypoint>,
}

/// Where a way of spots is at a station in mm, and the unit vector along it there; nothing beyond its ends.
#[must_use]
pub fn on_way(spots: &[Waypoint], station: f64) -> Option<(Point3, Point3)> {
    let (from, share) = stretch(spots, station)?;
    let [from, to] = [spots[from].at, spots[from + 1].at];
    Some((from.between(to, share), (to - from).unit()?))
}

/// Behind which spot of a way a station lies, and what share of the stretch to the next; nothing beyond its ends, but for
/// what rounding makes of them.
fn stretch(spots: &[Waypoint], station: f64) -> Option<(usize, f64)> {
    const ROUNDED: f64 = 1e-6;
    let next = spots.partition_point(|spot| spot.station < station).clamp(1, spots.len().max(2) - 1);
    let (from, to) = (spots.get(next - 1)?, spots.get(next)?);
    let share = (station - from.station) / (to.station - from.station);
    (-ROUNDED..=1.0 + ROUNDED).contains(&share).then_some((next - 1, share))
}

/// A hung necklace laid closed on a table in an easy curve; nothing of a piece that does not close behind a neck.
#[must_use]
pub fn lay_closed(design: &Design, drape: &Drape) -> Option<Closed> {
    match &design.twist {
        Some(twist) => twist::closed(design, twist),
        None => body::closed(design, drape),
    }
}

/// Sorts stations; those that rounding alone tells apart count once.
fn sort_places(stations: &mut Vec<f64>) {
    const SAME: f64 = 1e-9;
    stations.sort_by(f64::total_cmp);
    stations.dedup_by(|next, last| *next - *last < SAME);
}

impl Drape {
    /// The tightest of the rings, which decides whom the piece fits.
    #[must_use]
    pub fn ring(&self) -> Option<&Ring> {
        self.rings.iter().min_by(|one, other| one.inside_girth.total_cmp(&other.inside_girth))
    }
}
