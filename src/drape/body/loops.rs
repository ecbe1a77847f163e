//! Closed loops round a neck: strands from one end of the closure to the other, and the closure behind. Lengths are mm.

use std::ops::Range;

use super::super::bar::{Bars, RigidBar, crossbars};
use super::super::bend::{Bend, bends};
use super::super::contact::Press;
use super::super::hang::{self, Link};
use super::super::open::given;
use super::super::program::{Net, Node, Tie, down};
use super::outline::Ball;
use super::way::Way;
use crate::design::Passage;
use crate::geometry::Point3;
use crate::geometry::hinge::Hinge;

/// A stretch of a loop that stays straight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Straight {
    /// Its length and weight.
    pub link: Link,
    /// How far it reaches from its middle line, in mm.
    pub reach: f64,
    /// How stiff its cord is, in N mm².
    pub stiffness: f64,
    /// Where it is a passage through what its strand shares with others.
    pub passage: Option<Passage>,
    /// How its last bead and the first of the next piece part where they bend.
    pub hinge: Option<Hinge>,
    /// How much bare cord it has for neighbours that part, in mm.
    pub bare: f64,
    /// How much of that lies beyond its length, in mm.
    pub spare: f64,
    /// How far what hangs from it keeps it off the body, in mm.
    pub lift: f64,
}

impl Straight {
    /// A piece of one strand that turns freely.
    pub const fn new(link: Link, reach: f64) -> Self {
        Self { link, reach, stiffness: 0.0, passage: None, hinge: None, bare: 0.0, spare: 0.0, lift: 0.0 }
    }

    /// This and the next as one, which reaches as far as either.
    fn and(&self, next: &Self) -> Self {
        Self {
            stiffness: self.stiffness.min(next.stiffness),
            hinge: next.hinge,
            bare: self.bare + next.bare,
            spare: self.spare + next.spare,
            ..Self::new(self.link.and(next.link), self.reach.max(next.reach))
        }
    }
}

/// A strand to be laid: its pieces, and how far a bar holds its ends from those of the inmost strand.
#[derive(Clone, Debug, PartialEq)]
pub struct StrandPieces {
    pub pieces: Vec<Straight>,
    pub aside: f64,
}

/// How strands keep off one another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Precedence {
    /// An outer one stays on the outer side of an inner one.
    #[default]
    Beside,
    /// They may lie over one another, and cross.
    Over,
}

/// Strands round a neck with the closure that they share, as a net.
#[derive(Clone, Debug, Default)]
pub struct Loops {
    pub net: Net<3>,
    /// The joints of each strand from its first end to its last, from the inmost out.
    pub strands: Vec<Vec<usize>>,
    /// The joints of the closure from the last ends round to the first.
    pub closing: Vec<usize>,
    /// What lies between joints: one a tie, but for those of bars, which come last.
    pub rods: Vec<Member>,
    /// What outlines them.
    pub balls: Vec<Ball>,
    /// What keeps off the body alone.
    pub lifts: Vec<Ball>,
    /// Whether that is each bead by itself.
    pub is_beaded: bool,
    /// The ties along which cord bends: one a strand, and the closure's.
    pub cords: Vec<Vec<usize>>,
    /// What holds joints apart: bars at the ends, and what several strands go through.
    pub bars: Bars,
    /// How its strands keep off one another.
    pub order: Precedence,
    /// Whether what is pressed along itself is no shorter for it.
    pub is_whole: bool,
    /// Where its strands press on one another, by their numbers.
    pub presses: Vec<Press<usize>>,
}

/// A piece between its joints.
#[derive(Clone, Copy, Debug)]
pub struct Member {
    pub ends: [usize; 2],
    pub reach: f64,
    /// How long it is when its strand is laid straight.
    pub length: f64,
    /// How stiff its cord is, in N mm².
    pub stiffness: f64,
    /// How it parts from the next, and what bare cord it has, as of its [`Straight`].
    pub hinge: Option<Hinge>,
    pub bare: f64,
    pub spare: f64,
    /// How far it goes on to where it meets its neighbours, in mm.
    pub opens: [f64; 2],
    /// The strand it is of; none for the closure.
    pub strand: Option<usize>,
    /// Where it starts on that, in mm from its first end.
    pub from: f64,
    /// How far its middle is from the nearer end of its strand, in mm.
    pub depth: f64,
}

impl Loops {
    /// By how much in mm the cord that is pressed most, of all strands, lies shorter than it is.
    pub fn short(&self) -> f64 {
        let off = |tie: &usize| {
            let Tie { ends: [one, other], length, .. } = self.net.ties[*tie];
            length - self.at(one).distance(self.at(other))
        };
        self.cords.iter().map(|ties| ties.iter().map(off).sum()).fold(0.0, f64::max)
    }

    /// Strands from the inmost out, and the closure from their last ends to their first. Each strand's way, closed
    /// from the middle of the closure round to it, says where its joints are.
    pub fn new(strands: &[StrandPieces], closing: &[Straight], ways: &[Way]) -> Self {
        let mut loops = Self::default();
        let Some(inmost) = ways.first() else { return loops };
        let half = 0.5 * length(closing);
        let around = inmost.length() - half;
        for station in stations(closing) {
            let joint = loops.add(inmost.at((around + station) % inmost.length()));
            loops.closing.push(joint);
        }
        let [last, first] = [loops.closing[0], loops.closing[closing.len()]].map(|hub| loops.bar(hub, strands));
        for (at, (strand, way)) in strands.iter().zip(ways).enumerate() {
            let stations = stations(&strand.pieces);
            let inner = stations[1..stations.len() - 1].iter().map(|station| loops.add(way.at(half + station)));
            let joints = std::iter::once(first[at]).chain(inner.collect::<Vec<_>>()).chain([last[at]]).collect();
            loops.strands.push(joints);
            loops.string(Some(at), &strand.pieces);
        }
        loops.string(None, closing);
        loops.bend();
        loops.hold_together(strands);
        loops.net.ties.extend(loops.bars.ties());
        loops.hold_behind(half);
        loops.outline_rods();
        loops
    }

    fn add(&mut self, at: Point3) -> usize {
        self.net.nodes.push(Node { at: at.into(), weight: 0.0, down: down(), held: [false; 3] });
        self.net.nodes.len() - 1
    }

    /// The joint at which each strand ends on one side: the closure's own, or where a bar holds it.
    fn bar(&mut self, hub: usize, strands: &[StrandPieces]) -> Vec<usize> {
        let most = strands.iter().map(|strand| strand.aside).fold(0.0, f64::max);
        if most <= 0.0 {
            return vec![hub; strands.len()];
        }
        let mut holes: Vec<f64> = strands.iter().map(|strand| strand.aside).chain([0.5 * most]).collect();
        holes.sort_by(f64::total_cmp);
        holes.dedup();
        let at = self.at(hub);
        let hole = |aside: f64| {
            let node = if aside == 0.5 * most { hub } else { self.add(at + Point3::new(0.0, 0.5 * most - aside, 0.0)) };
            (aside, node)
        };
        let bar: Vec<(f64, usize)> = holes.into_iter().map(hole).collect();
        let of =
            |strand: &StrandPieces| bar.iter().find(|(aside, _)| *aside == strand.aside).map_or(hub, |(_, node)| *node);
        let ends = strands.iter().map(of).collect();
        self.bars.add(RigidBar::new(bar));
        ends
    }

    /// What several strands go through holds their joints on both sides of it apart.
    fn hold_together(&mut self, strands: &[StrandPieces]) {
        let mut passages = Vec::new();
        for (strand, joints) in strands.iter().zip(&self.strands) {
            let pieces = strand.pieces.iter().zip(joints.windows(2));
            passages.extend(pieces.filter_map(|(piece, ends)| Some((piece.passage?, [ends[0], ends[1]]))));
        }
        self.bars.add(crossbars(passages.into_iter()));
    }

    /// The bars at the last ends and at the first, where there are any.
    pub fn end_bars(&self) -> Vec<RigidBar> {
        let is_end = |bar: &&RigidBar| bar.joints().iter().any(|(_, node)| self.closing.contains(node));
        self.bars.iter().filter(is_end).cloned().collect()
    }

    /// Ties the joints of a strand, or of the closure, and gives them their weights.
    fn string(&mut self, strand: Option<usize>, pieces: &[Straight]) {
        let joints = strand.map_or(&self.closing, |strand| &self.strands[strand]).clone();
        let whole = length(pieces);
        let mut station = 0.0;
        let ties = self.net.ties.len();
        self.cords.push((ties..ties + pieces.len()).collect());
        for (piece, ends) in pieces.iter().zip(joints.windows(2)) {
            let ends = [ends[0], ends[1]];
            let Link { length, weight, centre } = piece.link;
            self.net.ties.push(Tie::new(ends, length));
            self.net.nodes[ends[0]].weight += weight * (1.0 - centre);
            self.net.nodes[ends[1]].weight += weight * centre;
            let middle = station + 0.5 * length;
            let Straight { reach, stiffness, hinge, bare, spare, .. } = *piece;
            let depth = middle.min(whole - middle);
            let from = station;
            let opens = [0.0; 2];
            self.rods.push(Member { ends, reach, length, stiffness, hinge, bare, spare, opens, strand, from, depth });
            station += length;
        }
    }

    /// Friction and the wearer's hand keep the closure behind: the joint nearest its middle stays in the body's
    /// middle plane, in which it may go up, down and away.
    fn hold_behind(&mut self, half: f64) {
        let mut station = 0.0;
        let mut nearest = (half, self.closing[0]);
        for (tie, pair) in self.net.ties.iter().skip(self.closed()).zip(self.closing.windows(2)) {
            station += tie.length;
            if (station - half).abs() < nearest.0 {
                nearest = ((station - half).abs(), pair[1]);
            }
        }
        let node = &mut self.net.nodes[nearest.1];
        (node.at[0], node.held[0]) = (0.0, true);
    }

    /// The number of the first tie of the closure.
    fn closed(&self) -> usize {
        self.rods.iter().position(|rod| rod.strand.is_none()).unwrap_or(self.rods.len())
    }

    /// Makes pieces longer by as much as their neighbours part where they are now. What lies bare of their strand gives for
    /// that what it has, all of it alike.
    pub fn open(&mut self) {
        for strand in 0..self.strands.len() {
            let at = self.ties_of(strand);
            let (opens, takes) = self.parted(strand);
            let given = given(takes, self.rods[at.clone()].iter().map(|rod| rod.bare));
            for ((tie, rod), opens) in
                self.net.ties[at.clone()].iter_mut().zip(&mut self.rods[at]).zip(opens.windows(2))
            {
                rod.opens = [opens[0], opens[1]];
                tie.length = rod.length + rod.spare - given * rod.bare + opens[0] + opens[1];
            }
        }
        self.bend();
    }

    /// Bends all cord, its ties as long as they are.
    pub fn bend(&mut self) {
        let of = |cord: &Vec<usize>| {
            let ties = cord.iter().map(|tie| (self.net.ties[*tie].length, self.rods[*tie].stiffness));
            let on = |bend: Bend| Bend { links: bend.links.map(|link| cord[link]), ..bend };
            bends(ties).into_iter().map(on).collect::<Vec<_>>()
        };
        self.net.bends = self.cords.iter().flat_map(of).collect();
    }

    /// How far the pieces of a strand go on to where they meet, one for each of its joints, and how much cord that takes.
    fn parted(&self, strand: usize) -> (Vec<f64>, f64) {
        let places: Vec<Point3> = self.strands[strand].iter().map(|node| self.at(*node)).collect();
        let ways: Vec<Point3> = places.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let turn = |pair: &[Point3]| libm::atan2(pair[0].cross(pair[1]).length(), pair[0].dot(pair[1]));
        let rods = &self.rods[self.ties_of(strand)];
        let turns = ways.windows(2).zip(rods).map(|(pair, rod)| Some((rod.hinge?, turn(pair))));
        let turns: Vec<_> = turns.collect();
        let inner = turns.iter().map(|turn| turn.map_or(0.0, |(hinge, turn)| hinge.opens(turn)));
        let takes = turns.iter().flatten().map(|(hinge, turn)| hinge.takes(*turn)).sum();
        (std::iter::once(0.0).chain(inner).chain([0.0]).collect(), takes)
    }

    /// Puts the joints where a round found them.
    pub fn go(&mut self, places: &[[f64; 3]]) {
        self.bars.go(&mut self.net, places);
    }

    /// By how much any bar's joints are nearer to each other or farther apart than it holds them, in mm.
    pub fn off(&self) -> f64 {
        self.bars.off(&self.net)
    }

    /// Where a joint is.
    pub fn at(&self, node: usize) -> Point3 {
        self.net.nodes[node].at.into()
    }

    /// The joints of a strand, each with the share of its loop that lies before it from the middle of the closure round.
    pub fn round(&self, strand: usize) -> Vec<(usize, f64)> {
        let half = 0.5 * self.closing_lengths().iter().sum::<f64>();
        let stations = hang::stations(self.lengths(strand).into_iter());
        let whole = 2.0 * half + stations.last().copied().unwrap_or_default();
        let shares = stations.into_iter().map(|station| (half + station) / whole);
        self.strands[strand].iter().copied().zip(shares).collect()
    }

    /// The lengths of a strand's pieces when it is laid straight.
    pub fn lengths(&self, strand: usize) -> Vec<f64> {
        self.rods[self.ties_of(strand)].iter().map(|rod| rod.length).collect()
    }

    /// The same with as much as neighbours part.
    pub fn tied(&self, strand: usize) -> Vec<f64> {
        self.net.ties[self.ties_of(strand)].iter().map(|tie| tie.length).collect()
    }

    /// The numbers of a strand's ties, which are those of its rods.
    pub fn ties_of(&self, strand: usize) -> Range<usize> {
        let from = self.strands[..strand].iter().map(|joints| joints.len() - 1).sum();
        from..from + self.strands[strand].len() - 1
    }

    /// The lengths of the closure's pieces, from the last ends round to the first.
    pub fn closing_lengths(&self) -> Vec<f64> {
        let ties = self.net.ties.iter().skip(self.closed()).take(self.closing.len() - 1);
        ties.map(|tie| tie.length).collect()
    }

    /// Holds a joint at a place.
    pub fn hold(&mut self, node: usize, at: Point3) {
        let node = &mut self.net.nodes[node];
        (node.at, node.held) = (at.into(), [true; 3]);
    }
}

/// Length of some pieces.
pub fn length(pieces: &[Straight]) -> f64 {
    pieces.iter().map(|piece| piece.link.length).sum()
}

/// The most that any of them reaches from its middle line.
pub fn reach(pieces: &[Straight]) -> f64 {
    pieces.iter().map(|piece| piece.reach).fold(0.0, f64::max)
}

/// Where each piece starts, and where the last one ends.
pub fn stations(pieces: &[Straight]) -> Vec<f64> {
    hang::stations(pieces.iter().map(|piece| piece.link.length))
}

/// Pieces joined to none longer than asked for, unless it is that long by itself or what follows is too short to
/// stand alone; each reaches as far as the farthest in it.
pub fn joined(pieces: &[Straight], longest: f64) -> Vec<Straight> {
    /// Shorter than this, in mm, none stands alone.
    const SHORT: f64 = 0.5;
    let mut joined: Vec<Straight> = Vec::new();
    let mut left: f64 = length(pieces);
    for piece in pieces {
        match joined.last_mut() {
            Some(last)
                if last.passage.is_none()
                    && piece.passage.is_none()
                    && (last.link.length + piece.link.length <= longest
                        || last.link.length < SHORT
                        || left < SHORT) =>
            {
                *last = last.and(piece);
            }
            _ => joined.push(*piece),
        }
        left -= piece.link.length;
    }
    joined
}

/// The same with a joint in the middle of all.
pub fn halved(mut pieces: Vec<Straight>) -> Vec<Straight> {
    let half = 0.5 * length(&pieces);
    let mut before = 0.0;
    let Some(at) = pieces.iter().position(|piece| {
        before += piece.link.length;
        before > half
    }) else {
        return pieces;
    };
    let Straight { link, reach, .. } = pieces[at];
    let first = half - (before - link.length);
    if first > 0.0 {
        let part = |length: f64| {
            Straight::new(Link { length, weight: link.weight * length / link.length, centre: 0.5 }, reach)
        };
        pieces.splice(at..=at, [part(first), part(link.length - first)]);
    }
    pieces
}
