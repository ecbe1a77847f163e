//! Pieces whose ends are in front: the loop round the neck, turned so that it begins and ends at the nape, and what
//! hangs below the place where its ends meet.

use super::super::Waypoint;
use super::super::chain::Chain;
use super::super::fall;
use super::super::hang::Link;
use super::half_breadth;
use super::hanging::HangingSpot;
use super::loops::Straight;
use super::way::Way;
use crate::design::{Design, Part};
use crate::geometry::Point3;
use crate::geometry::hinge::Hinge;

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
    /// How the last bead of the loop and the first below it part where they bend.
    hinge: Option<Hinge>,
    /// What hangs below it, each spot with how its bead parts from the one before.
    tail: Vec<(HangingSpot, Option<Hinge>)>,
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
            hinge: pieces[meets - 1].hinge,
            tail: tail(&pieces[meets..], fall::beyond(design), below),
        })
    }

    /// The loop from the nape down to its first end and up from the last one, as one looks at its front from the left.
    pub fn turned(&self, pieces: &[Straight]) -> Vec<Straight> {
        let Link { length, weight, .. } = self.joint.link;
        let joint = Some(self.joint).filter(|_| length > 0.0 || weight > 0.0);
        let (down, up) = (&pieces[..self.nape], &pieces[self.nape..self.meets]);
        backwards(down).into_iter().chain(joint).chain(backwards(up)).collect()
    }

    /// The places of the strand along the loop's way, by its own stations: those of the first end's findings, less than
    /// nothing; the loop; and what hangs below it, laid down from a place of the way.
    pub fn line(
        &self,
        way: &Way,
        seen: &[Waypoint],
        laid_down: impl Fn(Point3, &[HangingSpot]) -> Vec<Point3>,
    ) -> Vec<Waypoint> {
        let (nape, meets) = (self.stations[self.nape], self.stations[self.meets]);
        let closes = nape + self.joint.link.length;
        let is_hidden = |on: f64| seen.iter().find(|spot| spot.station > on - ROUNDING).is_some_and(|spot| spot.hidden);
        let seen_at = |station: f64, on: f64| Waypoint { station, at: way.at(on), hidden: is_hidden(on) };
        let from = |end: f64| move |spot: &Waypoint| Waypoint { station: end - spot.station, ..*spot };
        let first = seen.iter().rev().filter(|spot| spot.station < nape).map(from(nape));
        let last: Vec<_> = seen.iter().rev().filter(|spot| spot.station > closes).map(from(meets + closes)).collect();
        let joint = (closes > nape).then(|| seen_at(nape - closes - ROUNDING, closes));
        let meeting = seen_at(meets, closes);
        let onward = last.last().and_then(|spot| (meeting.at - spot.at).unit());
        let hung = self.hung(meeting.at, onward, laid_down);
        let hung = self.tail.iter().zip(hung).map(|((spot, _), at)| Waypoint {
            station: meets + spot.below + ROUNDING,
            at,
            hidden: false,
        });
        let ends = joint.into_iter().chain([seen_at(0.0, nape)]);
        ends.chain(first).chain(last).chain([meeting]).chain(hung).collect()
    }

    /// Where what hangs below the loop comes to lie, that comes along a way to the place where the ends meet: beads part where
    /// it turns, there and further down.
    fn hung(
        &self,
        from: Point3,
        onward: Option<Point3>,
        laid_down: impl Fn(Point3, &[HangingSpot]) -> Vec<Point3>,
    ) -> Vec<Point3> {
        let spots: Vec<HangingSpot> = self.tail.iter().map(|(spot, _)| *spot).collect();
        let places = [vec![from], laid_down(from, &spots)].concat();
        let ways: Vec<_> = places.windows(2).map(|pair| (pair[1] - pair[0]).unit().unwrap_or_default()).collect();
        let opens = |hinge: Option<Hinge>, turn: [Point3; 2]| hinge.map_or(0.0, |hinge| hinge.opens(between(turn)));
        let first = onward.zip(ways.first()).map_or(0.0, |(onward, way)| opens(self.hinge, [onward, *way]));
        let turns = ways.windows(2).map(|pair| [pair[0], pair[1]]);
        let mut by = first;
        let opened = self.tail.iter().zip(turns.chain([[Point3::DOWN; 2]])).map(|((spot, hinge), turn)| {
            by += 2.0 * opens(*hinge, turn);
            spot.lower(by)
        });
        laid_down(from + onward.unwrap_or_default() * first, &opened.collect::<Vec<_>>())
    }
}

/// The angle between two unit vectors, in radians.
fn between([one, other]: [Point3; 2]) -> f64 {
    libm::atan2(one.cross(other).length(), one.dot(other))
}

/// Spots of what hangs below the place where ends meet: its pieces but for bare cord, a long one at both ends, each in the
/// middle of a ball; and the foot of the findings in which it ends. Each with how its bead parts from the one before.
fn tail(pieces: &[Straight], findings: f64, reach: f64) -> Vec<(HangingSpot, Option<Hinge>)> {
    let (mut below, mut hinge) = (0.0, None);
    let mut spots = Vec::new();
    for piece @ Straight { link, reach, .. } in pieces {
        let is_long = link.length > 2.0 * reach;
        let first = if is_long { *reach } else { 0.5 * link.length };
        let last = is_long.then_some((link.length - reach, None));
        let ends = std::iter::once((first, hinge)).chain(last).filter(|_| piece.bare == 0.0);
        spots.extend(ends.map(|(end, hinge)| (HangingSpot::ball(below + end, *reach), hinge)));
        (below, hinge) = (below + link.length, piece.hinge);
    }
    spots.push((HangingSpot::ball((below + findings).max(ROUNDING), reach), None));
    spots.retain(|(spot, _)| spot.below > 0.0);
    spots.dedup_by(|(next, _), (last, _)| next.below <= last.below);
    spots
}

/// Pieces as one meets them from their last.
fn backwards(pieces: &[Straight]) -> Vec<Straight> {
    let back = |at: usize| {
        let hinge = at.checked_sub(1).and_then(|before| pieces[before].hinge);
        Straight { link: pieces[at].link.backwards(), hinge, ..pieces[at] }
    };
    (0..pieces.len()).rev().map(back).collect()
}
