//! Where two strands come near: what keeps the one from lying on the other.
//!
//! Each link shows the other strand a side: a line through places on it, swept by a ball. A box is its
//! middle line swept by a ball as wide, so that a run of equal boxes is smooth round its bends; a round bead
//! is a point swept by a ball; any other bead is the line of its outline. Every place of one side keeps clear
//! of the nearest of the other strand's: beyond the line there, or away from its corner. A place moves
//! linearly with its link's two joints while the link keeps its length, turning included, so that each
//! condition holds exactly for a direction that stays as it is; the next round takes a new one. What it
//! allows is part of what is allowed, so that from a place without overlap rounds only go down.

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree, RTreeObject};

use super::flank::Flank;
use crate::geometry::{Extent, Point};

/// Sides farther apart than this, in mm, do not meet in a round.
const NEAR: f64 = 2.0;
/// Of the places on one outline those count that are nearer than this, in mm, beyond the nearest.
const ABOUT: f64 = 0.3;
/// Sharp corners count as balls of this radius in mm for the direction in which they part.
const SHARP: f64 = 0.01;

/// A link between its joints; its lengths are mm.
pub struct Rod<'a> {
    pub strand: usize,
    pub link: usize,
    pub joints: [Point; 2],
    pub length: f64,
    pub side: &'a Flank,
    /// How far it is from the end.
    pub depth: f64,
}

/// A joint and the slope of a contact by its place.
#[derive(Clone, Copy)]
pub struct JointSlope {
    pub strand: usize,
    pub joint: usize,
    pub slope: Point,
}

/// The sum of slopes times places is to be nothing or more: it is the gap.
pub struct Contact {
    pub terms: [JointSlope; 4],
    pub gap: f64,
    /// The two strands, the inner one first.
    pub strands: [usize; 2],
    /// The inner one's link.
    pub link: usize,
    /// Between the lines that are to be kept apart; less than nothing where they cross.
    pub apart: f64,
}

/// A place on a rod's side.
#[derive(Clone, Copy)]
struct Spot<'a> {
    rod: &'a Rod<'a>,
    /// Shares of the link along and to the left of it.
    shares: [f64; 2],
    at: Point,
}

/// The way from a side to a place: the direction and how much is between.
struct Approach<'a> {
    foot: Spot<'a>,
    normal: Point,
    /// From the foot to the place.
    distance: f64,
    /// What of that along the normal is not taken up by the two balls.
    gap: f64,
}

/// All contacts between rods of different strands that `may` touch; rods come strand by strand, the inmost first.
pub fn contacts(rods: &[Rod<'_>], may: impl Fn(&Rod<'_>, &Rod<'_>) -> bool) -> Vec<Contact> {
    let boxed = |(at, rod): (usize, &Rod<'_>)| GeomWithData::new(rectangle(rod, 0.0), at);
    let tree = RTree::bulk_load(rods.iter().enumerate().map(boxed).collect());
    let runs = runs(rods);
    let mut contacts = Vec::new();
    for (at, rod) in rods.iter().enumerate() {
        // A smooth run shares the places at its joints.
        let first = usize::from(at > 0 && runs[at - 1] == runs[at]);
        let found = tree.locate_in_envelope_intersecting(&rectangle(rod, NEAR).envelope()).map(|found| found.data);
        let mut found: Vec<usize> =
            found.filter(|&other| rods[other].strand != rod.strand && may(rod, &rods[other])).collect();
        found.sort_unstable();
        for run in found.chunk_by(|&one, &other| runs[one] == runs[other]) {
            let run: Vec<&Rod<'_>> = run.iter().map(|&other| &rods[other]).collect();
            contacts.extend(rod.meet(first, &run));
        }
    }
    contacts
}

/// The number of the smooth run to which each rod belongs.
fn runs(rods: &[Rod<'_>]) -> Vec<usize> {
    let mut run = 0;
    let mut runs = vec![0; rods.len()];
    for (at, pair) in rods.windows(2).enumerate() {
        let neighbours = pair[0].strand == pair[1].strand && pair[0].link + 1 == pair[1].link;
        run += usize::from(!(neighbours && pair[0].side.runs_on_in(pair[0].length, pair[1].side)));
        runs[at + 1] = run;
    }
    runs
}

fn rectangle(rod: &Rod<'_>, more: f64) -> Rectangle<[f64; 2]> {
    let [from, to] = rod.joints.map(Extent::at);
    let extent = from.and(to).grown(rod.side.reach() + more);
    Rectangle::from_aabb(AABB::from_corners([extent.low.x, extent.low.y], [extent.high.x, extent.high.y]))
}

impl Rod<'_> {
    /// The contacts of the places on its side, from a number on, with the nearest of a run.
    fn meet(&self, first: usize, run: &[&Rod<'_>]) -> Vec<Contact> {
        let left = if self.strand < run[0].strand { -1.0 } else { 1.0 };
        let nearest = |number: usize| {
            let spot = self.spot(number, left);
            let ways = run.iter().filter_map(|other| other.way_to(spot));
            Some((spot, ways.min_by(|one, other| one.distance.total_cmp(&other.distance))?))
        };
        let ways: Vec<_> = (first..self.side.places.len()).filter_map(nearest).collect();
        let least = ways.iter().map(|(_, way)| way.gap).fold(f64::INFINITY, f64::min);
        let most = if self.side.radius > 0.0 { NEAR } else { NEAR.min(least + ABOUT) };
        ways.iter().filter(|(_, way)| way.gap < most).map(|(spot, way)| contact(*spot, way)).collect()
    }

    /// The place of a number on the side to the left, or to the right where `left` is -1.
    fn spot(&self, number: usize, left: f64) -> Spot<'_> {
        let [along, aside] = self.side.places[number];
        self.at([along / self.length, left * aside / self.length])
    }

    fn at(&self, shares: [f64; 2]) -> Spot<'_> {
        let way = self.joints[1] - self.joints[0];
        Spot { rod: self, shares, at: self.joints[0] + way * shares[0] + way.left() * shares[1] }
    }

    /// The way from the side that faces another strand's place.
    fn way_to(&self, spot: Spot<'_>) -> Option<Approach<'_>> {
        let left = if self.strand < spot.rod.strand { -1.0 } else { 1.0 };
        let count = self.side.places.len();
        let parts = (0..count.saturating_sub(1)).map(|from| [from, from + 1]);
        let parts = parts.chain((count == 1).then_some([0, 0]));
        let ways = parts.filter_map(|part| self.way_from(part.map(|number| self.spot(number, left)), left, spot));
        ways.min_by(|one, other| one.distance.total_cmp(&other.distance))
    }

    /// The way from the part of the side between two places.
    fn way_from<'a>(&'a self, [from, to]: [Spot<'a>; 2], left: f64, spot: Spot<'_>) -> Option<Approach<'a>> {
        let line = to.at - from.at;
        let square = line.dot(line);
        let along = if square > 0.0 { line } else { self.joints[1] - self.joints[0] };
        let along = along * (1.0 / along.length());
        let out = along.left() * left;
        let share = if square > 0.0 { (spot.at - from.at).dot(line) / square } else { 0.0 };
        let within = share.clamp(0.0, 1.0);
        let mix = |axis: usize| from.shares[axis] + (to.shares[axis] - from.shares[axis]) * within;
        let foot = self.at([mix(0), mix(1)]);
        let off = spot.at - foot.at;
        let reach = self.side.radius + spot.rod.side.radius;
        let normal = if share > 0.0 && share < 1.0 { out } else { round(off, along, out, reach)? };
        Some(Approach { foot, normal, distance: off.length(), gap: off.dot(normal) - reach })
    }
}

/// The direction in which a ball leaves another: straight away from it where they are apart, or else as they
/// would touch if it were moved straight out. None where it lies behind or before the other.
fn round(off: Point, along: Point, out: Point, reach: f64) -> Option<Point> {
    let (reach, distance, ahead) = (reach.max(SHARP), off.length(), off.dot(along));
    if off.dot(out) >= 0.0 && distance >= reach {
        return Some(off * (1.0 / distance));
    }
    let rest = reach * reach - ahead * ahead;
    (rest > 0.0).then(|| (along * ahead + out * rest.sqrt()) * (1.0 / reach))
}

fn contact(spot: Spot<'_>, way: &Approach<'_>) -> Contact {
    let [a, b] = terms(spot, way.normal);
    let [c, d] = terms(way.foot, way.normal * -1.0);
    let (one, other) = (spot.rod, way.foot.rod);
    let reach = one.side.radius + other.side.radius;
    let [inner, outer] = if one.strand < other.strand { [one, other] } else { [other, one] };
    Contact {
        terms: [a, b, c, d],
        gap: way.gap,
        strands: [inner.strand, outer.strand],
        link: inner.link,
        apart: way.gap + reach,
    }
}

/// The slopes of a place's way along a normal by its rod's two joints.
fn terms(spot: Spot<'_>, normal: Point) -> [JointSlope; 2] {
    let [ahead, left] = spot.shares;
    let last = normal * ahead + normal.left() * -left;
    let term = |joint, slope| JointSlope { strand: spot.rod.strand, joint, slope };
    [term(spot.rod.link, normal - last), term(spot.rod.link + 1, last)]
}
