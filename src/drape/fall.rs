//! Pieces whose ends are in front: strands laid over a rail as broad as the neck.
//!
//! What lies on the rail is straight; on both sides of it the strand hangs. Ends that meet, or one that goes
//! through the other, close a loop below the rail, which hangs as a chain from both ends of the rail with what is
//! below the meeting as a weight; free ends hang plumb. The rail holds by friction: the middle of what goes round
//! the neck lies on its middle, though one side may be heavier.

use super::chain::Chain;
use super::hang::{Hanging, Link, Unhung, solve_stiff, stations};
use super::{Hung, Tension};
use crate::design::{Design, Part, Strand, WornOpen};
use crate::geometry::Point;
use crate::units::NEWTON_PER_GRAM;

/// Where a strand turns from its loop or rail to what hangs, as numbers of joints of its chain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurningPoints {
    /// From which joint to which it lies on the rail.
    pub rail: [usize; 2],
    /// The joint at which its last end meets the first one; none where ends hang free.
    pub meets: Option<usize>,
}

/// Whether a design's ends are in front.
#[must_use]
pub fn falls(design: &Design) -> bool {
    design.closure.open().is_some() || design.meeting().is_some()
}

/// How far the first end's findings lengthen a strand of an open piece, in mm.
#[must_use]
pub fn before(design: &Design) -> f64 {
    design.closure.left().iter().map(|part| part.reach.value()).sum()
}

/// How far the last end's findings lengthen a strand of an open piece, in mm.
#[must_use]
pub fn beyond(design: &Design) -> f64 {
    design.closure.right().iter().map(|part| part.reach.value()).sum()
}

/// How far in mm what a strand's first and its last end end in hangs below them: nothing where they meet.
pub(super) fn feet(design: &Design) -> [f64; 2] {
    match design.closure.open() {
        Some(WornOpen::Hanging) => [before(design), beyond(design)],
        Some(WornOpen::Through(_)) => [0.0, beyond(design)],
        None => [0.0; 2],
    }
}

/// Where the last end of a hanging strand meets the first one; nothing where its ends hang free.
#[must_use]
pub fn meeting(design: &Design, strand: &Strand, hung: &Hung) -> Option<Point> {
    let meets = meets(design, &Chain::new(design, strand, &hung.starts).stations())?;
    hung.joints.get(meets).map(|joint| joint.at)
}

/// The joint, of those at stations, at which the last end meets the first one; none where ends hang free.
fn meets(design: &Design, stations: &[f64]) -> Option<usize> {
    let last = stations.len() - 1;
    match design.closure.open() {
        Some(WornOpen::Hanging) => None,
        Some(WornOpen::Through(tail)) => Some(nearest(stations, stations[last] + beyond(design) - tail.value())),
        None => Some(last),
    }
}

/// The station nearest to one.
fn nearest(stations: &[f64], at: f64) -> usize {
    let next = stations.partition_point(|station| *station < at).min(stations.len() - 1);
    let before = next.saturating_sub(1);
    if at - stations[before] < stations[next] - at { before } else { next }
}

/// Where a strand turns that lies over a rail of a breadth, each at the joint nearest to it.
#[must_use]
pub fn turns(design: &Design, chain: &Chain, across: f64) -> TurningPoints {
    let stations = chain.stations();
    let meets = meets(design, &stations);
    // Of a loop both sides are equally long, the findings in which the first end ends among them.
    let round = stations[meets.unwrap_or(stations.len() - 1)] - meets.map_or(0.0, |_| before(design));
    let rail = [round - across, round + across].map(|twice| nearest(&stations, 0.5 * twice));
    TurningPoints { rail, meets }
}

/// What closes the loop of a strand that turns so.
#[must_use]
pub fn joint(design: &Design, chain: &Chain, meets: usize) -> Link {
    let [left, right] = [design.closure.left(), design.closure.right()].map(|parts| weight(design, parts));
    let below = right + chain.links[meets..].iter().map(|link| link.weight).sum::<f64>();
    let all = left + below;
    Link { length: before(design), weight: all, centre: if all > 0.0 { (0.5 * left + below) / all } else { 0.5 } }
}

fn weight(design: &Design, parts: &[Part]) -> f64 {
    parts.iter().map(|part| design.part_mass(part).value()).sum::<f64>() * NEWTON_PER_GRAM
}

/// A strand over a rail.
#[derive(Clone, Debug, PartialEq)]
pub struct Over {
    /// The joints of its chain in their order; the left end of the rail is the origin.
    pub joints: Vec<Point>,
    /// Where it turns.
    pub turns: TurningPoints,
    /// The tension at both ends of the rail, and the least at any joint that hangs.
    pub tension: Tension,
    /// Steps that the solver took for the loop.
    pub iterations: u32,
    /// By how much in mm the loop misses the rail's other end.
    pub residual: f64,
}

impl Over {
    /// The same from its first joint on.
    pub(super) fn hanging(self) -> Hanging {
        let along = |pair: &[Point]| Point::towards((pair[1] - pair[0]).angle());
        let start = self.joints[0];
        let Tension { first, lowest, last } = self.tension;
        Hanging {
            directions: self.joints.windows(2).map(along).collect(),
            joints: self.joints.iter().map(|joint| *joint - start).collect(),
            across: 0.0,
            up: 0.0,
            first,
            lowest,
            last,
            iterations: self.iterations,
            residual: self.residual,
        }
    }
}

/// A strand over a rail of a breadth.
///
/// # Errors
/// Where the strand is too short to go over the rail.
pub fn hang(design: &Design, chain: &Chain, across: f64) -> Result<Over, Unhung> {
    let turns = turns(design, chain, across);
    let stations = stations(chain.links.iter().map(|link| link.length));
    let [left, right] = turns.rail;
    if left == 0 || right <= left || turns.meets.is_some_and(|meets| meets <= right) {
        return Err(Unhung::TooShort(across));
    }
    match turns.meets {
        Some(meets) => together(design, chain, turns, &stations, meets),
        None => Ok(apart(design, chain, turns, &stations)),
    }
}

/// What of a strand lies on the rail, from its first joint there.
fn on_rail(stations: &[f64], [left, right]: [usize; 2]) -> impl Iterator<Item = Point> {
    (left..=right).map(move |at| Point::new(stations[at] - stations[left], 0.0))
}

/// What hangs at both ends of a closure.
fn feet_weights(design: &Design) -> [f64; 2] {
    [design.closure.left(), design.closure.right()].map(|parts| weight(design, parts))
}

/// A strand both ends of which hang down from the rail by themselves.
fn apart(design: &Design, chain: &Chain, turns: TurningPoints, stations: &[f64]) -> Over {
    let ([left, right], feet) = (turns.rail, feet_weights(design));
    let far = Point::new(stations[right] - stations[left], 0.0);
    let first = (0..left).map(|at| below(Point::ORIGIN, stations[left] - stations[at]));
    let last = (right + 1..stations.len()).map(|at| below(far, stations[at] - stations[right]));
    let pull = |links: &[Link], foot: f64| foot + links.iter().map(|link| link.weight).sum::<f64>();
    let [first_pull, last_pull] = [pull(&chain.links[..left], feet[0]), pull(&chain.links[right..], feet[1])];
    let tension = Tension { first: first_pull, lowest: feet[0].min(feet[1]), last: last_pull };
    let joints = first.chain(on_rail(stations, turns.rail)).chain(last).collect();
    Over { joints, turns, tension, iterations: 0, residual: 0.0 }
}

/// A strand whose ends meet below the rail.
fn together(
    design: &Design,
    chain: &Chain,
    turns: TurningPoints,
    stations: &[f64],
    meets: usize,
) -> Result<Over, Unhung> {
    let [left, right] = turns.rail;
    let far = Point::new(stations[right] - stations[left], 0.0);
    let [down, up] = [&chain.links[..left], &chain.links[right..meets]].map(backwards);
    let mut stiffness = vec![chain.stiffness; down.len() + 1 + up.len()];
    // Where ends meet they turn freely.
    stiffness[down.len()] = 0.0;
    let links = [down, vec![joint(design, chain, meets)], up].concat();
    let hanging = solve_stiff(&links, &stiffness, far)?;
    let first = hanging.joints[1..=left].iter().rev().copied();
    let back = hanging.joints[left + 1..links.len()].iter().rev().copied();
    let low = hanging.joints[left + 1];
    let tail = (meets + 1..stations.len()).map(|at| below(low, stations[at] - stations[meets]));
    let foot = if meets + 1 < stations.len() { feet_weights(design)[1] } else { f64::INFINITY };
    let tension = Tension { first: hanging.first, lowest: hanging.lowest.min(foot), last: hanging.last };
    let joints = first.chain(on_rail(stations, turns.rail)).chain(back).chain(tail).collect();
    Ok(Over { joints, turns, tension, iterations: hanging.iterations, residual: hanging.residual })
}

/// A point so far below another.
fn below(from: Point, drop: f64) -> Point {
    from - Point::new(0.0, drop)
}

/// Links as one meets them from their last.
fn backwards(links: &[Link]) -> Vec<Link> {
    links.iter().rev().map(|link| link.backwards()).collect()
}
