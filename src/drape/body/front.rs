//! Pieces whose ends are in front: the loop round the neck, turned so that it begins and ends at the nape, and what
//! hangs below the place where its ends meet.

use super::super::Waypoint;
use super::super::chain::Chain;
use super::super::fall;
use super::super::hang::Link;
use super::half_breadth;
use super::loops::{Straight, reach};
use super::way::Way;
use crate::design::{Design, Part};
use crate::geometry::Point3;

/// From one place to the next along what hangs below, in mm.
const STEP: f64 = 4.0;
/// What a sum of lengths is known better than, in mm.
const ROUNDING: f64 = 1e-6;

/// How a strand whose ends are in front is turned.
#[derive(Clone, Debug)]
pub struct Front {
    /// The stations of its joints.
    stations: Vec<f64>,
    /// The joint that lies on the nape.
    nape: usize,
    /// The joint at which its last end meets the first.
    meets: usize,
    /// What closes the loop there.
    joint: Straight,
    /// How far the last end's findings reach below it.
    beyond: f64,
    /// How far what hangs below reaches from its middle line.
    reach: f64,
}

impl Front {
    /// How a strand of such pieces is turned; nothing where its ends are behind, or hang free.
    pub fn new(design: &Design, chain: &Chain, pieces: &[Straight]) -> Option<Self> {
        let turns = fall::falls(design).then(|| fall::turns(design, chain, 0.0))?;
        let meets = turns.meets.filter(|meets| *meets > turns.rail[0])?;
        let of =
            |parts: &[Part]| parts.iter().map(|part| half_breadth(&design.findings[part.finding])).fold(0.5, f64::max);
        let [joint, below] = [design.closure.left(), design.closure.right()].map(of);
        Some(Self {
            stations: chain.stations(),
            nape: turns.rail[0],
            meets,
            joint: Straight::new(fall::joint(design, chain, meets), joint),
            beyond: fall::beyond(design),
            reach: reach(&pieces[meets..]).max(below),
        })
    }

    /// How far what hangs below the loop reaches from its middle line, in mm.
    pub const fn reach(&self) -> f64 {
        self.reach
    }

    /// The loop from the nape down to its first end and up from the last one, as one looks at its front from the left.
    pub fn turned(&self, pieces: &[Straight]) -> Vec<Straight> {
        let Link { length, weight, .. } = self.joint.link;
        let joint = Some(self.joint).filter(|_| length > 0.0 || weight > 0.0);
        let (down, up) = (&pieces[..self.nape], &pieces[self.nape..self.meets]);
        backwards(down).into_iter().chain(joint).chain(backwards(up)).collect()
    }

    /// The places of the strand along the loop's way, by its own stations: those of the first end's findings, less than
    /// nothing; the loop; and what hangs below it. `place` is the spot so far below a place of the way.
    pub fn line(&self, way: &Way, seen: &[Waypoint], place: impl Fn(Point3, f64) -> Waypoint) -> Vec<Waypoint> {
        let (nape, meets) = (self.stations[self.nape], self.stations[self.meets]);
        let closes = nape + self.joint.link.length;
        let spot = |station: f64, on: f64, below: f64| Waypoint { station, ..place(way.at(on), below) };
        let from = |end: f64| move |spot: &Waypoint| Waypoint { station: end - spot.station, ..*spot };
        let first = seen.iter().rev().filter(|spot| spot.station < nape).map(from(nape));
        let last = seen.iter().rev().filter(|spot| spot.station > closes).map(from(meets + closes));
        let joint = (closes > nape).then(|| spot(nape - closes - ROUNDING, closes, 0.0));
        let ends = joint.into_iter().chain([spot(0.0, nape, 0.0)]);
        ends.chain(first)
            .chain(last)
            .chain([spot(meets, closes, 0.0)])
            .chain(self.below().into_iter().map(|below| spot(meets + below + ROUNDING, closes, below)))
            .collect()
    }

    /// How far below the place where the ends meet what hangs there has its places.
    fn below(&self) -> Vec<f64> {
        let length = (self.stations[self.stations.len() - 1] + self.beyond - self.stations[self.meets]).max(ROUNDING);
        let count = super::super::chain::pieces(length, STEP);
        (1..=count).map(|step| length * step as f64 / count as f64).collect()
    }
}

/// Pieces as one meets them from their last.
fn backwards(pieces: &[Straight]) -> Vec<Straight> {
    let back = |at: usize| {
        let hinge = at.checked_sub(1).and_then(|before| pieces[before].hinge);
        Straight { link: pieces[at].link.backwards(), hinge, ..pieces[at] }
    };
    (0..pieces.len()).rev().map(back).collect()
}
