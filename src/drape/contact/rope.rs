//! A strand as the rounds take it: runs of cord, or of equal beads, in pieces of a few mm.

use super::super::bend::{Bend, bends};
use super::super::chain::{Chain, Content};
use super::super::clearance::form;
use super::super::hang::{Hanging, Link, joints};
use super::super::open::{Hinges, given, turn};
use super::super::{Hung, Joint};
use super::contacts::Rod;
use super::flank::Flank;
use crate::design::{Design, Passage, Strand};
use crate::geometry::Point;
use crate::geometry::hinge::Hinge;

/// A run of cord, or of beads with one straight side, becomes one piece while it is no longer than this, in mm.
const LONGEST: f64 = 6.0;
/// And while what it holds bows out from it by no more than this, in mm. It is laid along the piece in the
/// end, so that nothing overlaps by it.
const BOW: f64 = 0.02;
/// Links are turned to their end until they miss it by less than this, in mm: each time they part a little otherwise, and what
/// was missed leaves a small share of itself.
const MISSED: f64 = 1e-9;
/// And so often at the most.
const TURNED: u32 = 20;

/// A strand between its two points.
#[derive(Clone)]
pub struct Rope {
    /// Its joints with their stations; the first and the last are fixed.
    pub joints: Vec<Joint>,
    /// Its links.
    pub links: Vec<Link>,
    /// How stiff its cord is, in N mm².
    stiffness: f64,
    /// The side that each link shows to other strands, if it may touch them.
    pub sides: Vec<Option<Flank>>,
    /// Which links are passages through what the strand shares with others.
    pub passages: Vec<(usize, Passage)>,
    /// The joint of the finer chain at which each link ends.
    fine: Vec<usize>,
    /// How neighbouring beads part at the end of each link.
    hinges: Vec<Option<Hinge>>,
    /// How long each link is but for that and with all its bare cord, and how much of that it has.
    closed: Vec<(f64, f64)>,
    /// How far each goes on before what it holds.
    befores: Vec<f64>,
    /// Cord that neighbours take where they part between the joints of the finer chain that are none here.
    within: f64,
}

impl Rope {
    /// A strand as it hangs alone.
    pub fn new(design: &Design, strand: &Strand, chain: &Chain, hung: &Hung) -> Self {
        let mut rope = Self {
            joints: vec![hung.joints[0]],
            links: Vec::new(),
            stiffness: chain.stiffness,
            sides: Vec::new(),
            passages: Vec::new(),
            fine: Vec::new(),
            hinges: Vec::new(),
            closed: Vec::new(),
            befores: Vec::new(),
            within: 0.0,
        };
        for (at, (link, passage)) in chain.links.iter().zip(chain.passages(design, strand)).enumerate() {
            let side = side(design, strand, chain, at);
            let end = hung.joints[at + 1];
            if !rope.merge(*link, side.as_ref(), end) {
                rope.passages.extend(passage.map(|passage| (rope.links.len(), passage)));
                rope.links.push(*link);
                rope.sides.push(side);
                rope.joints.push(end);
                rope.fine.push(at + 1);
            } else if let Some(fine) = rope.fine.last_mut() {
                *fine = at + 1;
            }
        }
        rope.close(&Hinges::new(design, strand, chain), strand, chain);
        rope
    }

    /// Takes how its neighbours part where its links meet, and how far they do within them on a chain that hangs.
    fn close(&mut self, hinges: &Hinges, strand: &Strand, chain: &Chain) {
        self.hinges = self.fine.iter().map(|end| hinges.after(end - 1)).collect();
        let mut from = 0;
        for &end in &self.fine {
            let within = (from + 1..end).map(|at| 2.0 * chain.parted.beyond[at][0]).sum::<f64>();
            let bare = (from..end).map(|at| chain.bare(strand, at)).sum();
            let closed: f64 = (from..end).map(|at| chain.lengths[at] + chain.spare[at]).sum();
            self.befores.push(chain.parted.beyond[from][0]);
            self.closed.push((closed + within, bare));
            self.within += chain.parted.takes[from..end - 1].iter().sum::<f64>();
            from = end;
        }
    }

    /// Opens its links as far as their neighbours part where they are now, for which bare cord gives what it has; by how much
    /// that moves the end of any of them along.
    pub fn open(&mut self) -> f64 {
        let ways = self.joints.windows(2).map(|pair| pair[1].at - pair[0].at);
        let ways: Vec<Point> = ways.map(|way| way * (1.0 / way.length().max(f64::MIN_POSITIVE))).collect();
        let turns = ways.windows(2).zip(&self.hinges).map(|(pair, hinge)| Some(((*hinge)?, turn(pair[0], pair[1]))));
        let turns: Vec<_> = turns.chain([None]).collect();
        let takes: f64 = turns.iter().flatten().map(|(hinge, turn)| hinge.takes(*turn)).sum();
        let given = given(self.within + takes, self.closed.iter().map(|(_, bare)| *bare));
        let after = turns.into_iter().map(|turn| turn.map_or(0.0, |(hinge, turn)| hinge.opens(turn)));
        let (mut before, mut along, mut moved): (f64, f64, f64) = (0.0, 0.0, 0.0);
        for (at, after) in after.enumerate() {
            let (closed, bare) = self.closed[at];
            let longer = before + closed - given * bare + after - self.links[at].length;
            self.links[at].length += longer;
            let sooner = before - std::mem::replace(&mut self.befores[at], before);
            self.sides[at].iter_mut().for_each(|side| side.moved(sooner, longer));
            (along, before) = (along + longer, after);
            moved = moved.max(along.abs());
        }
        moved
    }

    /// Makes the last link longer by one of its own kind, where a straight line stands for both.
    fn merge(&mut self, link: Link, side: Option<&Flank>, end: Joint) -> bool {
        let ([.., before, joint], Some(last), Some(Some(one)), Some(other)) =
            (self.joints.as_mut_slice(), self.links.last_mut(), self.sides.last_mut(), side)
        else {
            return false;
        };
        let joined = last.and(link);
        let length = joined.length;
        // An arc of this length whose chord is so much shorter bows by the root of 3/8 of both.
        let bow = (0.375 * length * (length - before.at.distance(end.at)).max(0.0)).sqrt();
        if length > LONGEST || bow > BOW || !one.extend(last.length, other, link.length) {
            return false;
        }
        (*last, *joint) = (joined, end);
        true
    }

    /// Weight at each joint: that of the links beside it, by where it acts.
    pub fn weights(&self) -> Vec<f64> {
        let mut weights = vec![0.0; self.joints.len()];
        for (at, link) in self.links.iter().enumerate() {
            weights[at] += link.weight * (1.0 - link.centre);
            weights[at + 1] += link.weight * link.centre;
        }
        weights
    }

    /// The bends of its cord.
    pub fn bends(&self) -> Vec<Bend> {
        bends(self.links.iter().map(|link| (link.length, self.stiffness)))
    }

    /// Its links that may touch other strands; `covered` is what covers its ends.
    pub fn rods<'a>(
        &'a self,
        strand: usize,
        sides: &'a [Option<Flank>],
        covered: f64,
    ) -> impl Iterator<Item = Rod<'a>> {
        let whole = self.joints.last().map_or(0.0, |last| last.station);
        (0..self.links.len()).filter_map(move |link| {
            let [from, to] = [self.joints[link], self.joints[link + 1]];
            let depth = from.station.min(whole - to.station) - covered;
            let side = sides[link].as_ref().filter(|_| from.at != to.at)?;
            Some(Rod { strand, link, joints: [from.at, to.at], length: self.links[link].length, side, depth })
        })
    }

    /// Its links as smooth tubes.
    pub fn tubes(&self) -> Vec<Option<Flank>> {
        let links = self.sides.iter().zip(&self.links);
        links.map(|(side, link)| side.as_ref().map(|side| side.tube(link.length))).collect()
    }

    /// The finer chain laid along the links that were found, with the tension in each; its beads part as they then lie.
    pub fn laid(&self, strand: &Strand, hinges: &Hinges, chain: &mut Chain, tensions: &[f64], rounds: u32) -> Hanging {
        let directions = self.meet(strand, hinges, chain);
        let joints = joints(&chain.links, &directions);
        let ends = [tensions.first(), tensions.last()].map(|end| end.copied().unwrap_or_default());
        Hanging {
            joints,
            directions,
            across: 0.0,
            up: 0.0,
            first: ends[0],
            lowest: tensions.iter().copied().fold(f64::INFINITY, f64::min),
            last: ends[1],
            iterations: rounds,
            // The last joint is the end itself.
            residual: 0.0,
        }
    }

    /// The directions of the finer chain's links, which it opens as far as they part so: each is as long as it is, and the
    /// last ends where the strand does.
    fn meet(&self, strand: &Strand, hinges: &Hinges, chain: &mut Chain) -> Vec<Point> {
        let mut directions = self.directions();
        let end = self.joints[self.joints.len() - 1].at - self.joints[0].at;
        for _ in 0..TURNED {
            chain.open(strand, hinges.parted(&directions));
            if turn_to(&mut directions, &chain.links, end) < MISSED {
                break;
            }
        }
        directions
    }

    /// The directions of the finer chain's links along those that were found.
    fn directions(&self) -> Vec<Point> {
        let mut directions = Vec::new();
        for (pair, &to) in self.joints.windows(2).zip(&self.fine) {
            let span = pair[1].at - pair[0].at;
            let along = if span == Point::ORIGIN { Point::new(1.0, 0.0) } else { span * (1.0 / span.length()) };
            directions.resize(to, along);
        }
        directions
    }
}

/// Turns the directions of links a little, so that they reach an end which they miss by as much as they were found too short:
/// each square to itself, by the least that all of them must; how far they missed it.
fn turn_to(directions: &mut [Point], links: &[Link], end: Point) -> f64 {
    /// Links that run all but one way, to this share of their length, are not turned.
    const STRAIGHT: f64 = 1e-3;
    let last = joints(links, directions)[links.len()];
    let (miss, mut whole) = (end - last, 0.0);
    let (mut x, mut y) = (Point::ORIGIN, Point::ORIGIN);
    for (link, direction) in links.iter().zip(directions.iter()) {
        let aside = direction.left();
        (x, y, whole) = (x + aside * (link.length * aside.x), y + aside * (link.length * aside.y), whole + link.length);
    }
    let determinant = x.x * y.y - x.y * y.x;
    if determinant < STRAIGHT * whole * whole {
        return miss.length();
    }
    let by = Point::new(miss.x * y.y - miss.y * y.x, miss.y * x.x - miss.x * x.y) * (1.0 / determinant);
    for direction in directions {
        let turned = *direction + direction.left() * direction.left().dot(by);
        *direction = turned * (1.0 / turned.length());
    }
    miss.length()
}

/// Length of strand at each end that the closure covers: cones take their strands up to the mouth.
pub fn covered(design: &Design) -> f64 {
    let cones = design.closure.parts().filter_map(|part| design.findings[part.finding].cone());
    cones.map(|cone| cone.length.value()).fold(0.0, f64::max)
}

/// The side of a link that may touch another strand's; none of the ends, which their findings hold, of what
/// several strands run through, and of what has no length.
fn side(design: &Design, strand: &Strand, chain: &Chain, at: usize) -> Option<Flank> {
    let shared = |train: usize, bit: usize| design.shared_bit(&strand.trains[train].bits[bit], strand).is_some();
    let touches = match chain.pieces[at] {
        Content::End => false,
        Content::Bit(train, bit) => !shared(train, bit),
        Content::Cord => true,
    };
    (touches && chain.links[at].length > 0.0).then(|| Flank::new(&form(design, strand, chain, at)))
}
