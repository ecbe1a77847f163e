//! Closed loops round a neck: strands from one end of the closure to the other, and the closure behind.

use super::super::hang::{self, Link};
use super::super::program::{Net, Node, Tie};
use super::way::Way;
use crate::geometry::Point3;

/// A stretch of a loop that stays straight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Its length and weight.
    pub link: Link,
    /// How far it reaches from its middle line, in mm.
    pub reach: f64,
}

/// A strand to be laid: its pieces, and how far a bar holds its ends from those of the inmost strand.
#[derive(Clone, Debug, PartialEq)]
pub struct Strung {
    pub pieces: Vec<Piece>,
    pub aside: f64,
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
    pub rods: Vec<Rod>,
    /// Bars: how far each of their joints is along them, in rising order.
    pub bars: Vec<Vec<(f64, usize)>>,
}

/// A piece between its joints.
#[derive(Clone, Copy, Debug)]
pub struct Rod {
    pub ends: [usize; 2],
    pub reach: f64,
    pub length: f64,
    /// The strand it is of; none for the closure.
    pub strand: Option<usize>,
    /// How far its middle is from the nearer end of its strand, in mm.
    pub depth: f64,
}

impl Loops {
    /// Strands from the inmost out, and the closure from their last ends to their first. Each strand's way, closed
    /// from the middle of the closure round to it, says where its joints are.
    pub fn new(strands: &[Strung], closing: &[Piece], ways: &[Way]) -> Self {
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
        loops.tie_bars();
        loops.hold_behind(half);
        loops
    }

    fn add(&mut self, at: Point3) -> usize {
        self.net.nodes.push(Node { at: at.into(), weight: 0.0, held: [false; 3] });
        self.net.nodes.len() - 1
    }

    /// The joint at which each strand ends on one side: the closure's own, or where a bar holds it.
    fn bar(&mut self, hub: usize, strands: &[Strung]) -> Vec<usize> {
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
        let of = |strand: &Strung| bar.iter().find(|(aside, _)| *aside == strand.aside).map_or(hub, |(_, node)| *node);
        let ends = strands.iter().map(of).collect();
        self.bars.push(bar);
        ends
    }

    /// Ties the joints of a strand, or of the closure, and gives them their weights.
    fn string(&mut self, strand: Option<usize>, pieces: &[Piece]) {
        let joints = strand.map_or(&self.closing, |strand| &self.strands[strand]).clone();
        let whole = length(pieces);
        let mut station = 0.0;
        for (piece, ends) in pieces.iter().zip(joints.windows(2)) {
            let ends = [ends[0], ends[1]];
            let Link { length, weight, centre } = piece.link;
            self.net.ties.push(Tie { ends, length });
            self.net.nodes[ends[0]].weight += weight * (1.0 - centre);
            self.net.nodes[ends[1]].weight += weight * centre;
            let middle = station + 0.5 * length;
            self.rods.push(Rod { ends, reach: piece.reach, length, strand, depth: middle.min(whole - middle) });
            station += length;
        }
    }

    fn tie_bars(&mut self) {
        for bar in &self.bars {
            let [first, .., last] = bar.as_slice() else { continue };
            self.net.ties.push(Tie { ends: [first.1, last.1], length: last.0 - first.0 });
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

    /// Where a joint is.
    pub fn at(&self, node: usize) -> Point3 {
        self.net.nodes[node].at.into()
    }

    /// The way of each strand as it lies now, from the middle of the closure round to it.
    pub fn ways(&self, closing: &[Piece]) -> Vec<Way> {
        let places = |nodes: &[usize]| nodes.iter().map(|node| self.at(*node)).collect::<Vec<_>>();
        let lengths = self.net.ties[self.closed()..].iter().map(|tie| tie.length).take(closing.len());
        let closing = Way::new(places(&self.closing), lengths);
        let mut from = 0;
        let way = |nodes: &Vec<usize>| {
            let ties = &self.net.ties[from..from + nodes.len() - 1];
            from += nodes.len() - 1;
            Way::new(places(nodes), ties.iter().map(|tie| tie.length)).closed_by(&closing)
        };
        self.strands.iter().map(way).collect()
    }
}

/// Length of some pieces.
pub fn length(pieces: &[Piece]) -> f64 {
    pieces.iter().map(|piece| piece.link.length).sum()
}

/// The most that any of them reaches from its middle line.
pub fn reach(pieces: &[Piece]) -> f64 {
    pieces.iter().map(|piece| piece.reach).fold(0.0, f64::max)
}

/// Where each piece starts, and where the last one ends.
fn stations(pieces: &[Piece]) -> Vec<f64> {
    hang::stations(pieces.iter().map(|piece| piece.link.length))
}

/// Pieces joined to none longer than asked for, unless it is that long by itself or what follows is too short to
/// stand alone; each reaches as far as the farthest in it.
pub fn joined(pieces: &[Piece], longest: f64) -> Vec<Piece> {
    /// Shorter than this, in mm, none stands alone.
    const SHORT: f64 = 0.5;
    let mut joined: Vec<Piece> = Vec::new();
    let mut left: f64 = length(pieces);
    for piece in pieces {
        match joined.last_mut() {
            Some(last)
                if last.link.length + piece.link.length <= longest || last.link.length < SHORT || left < SHORT =>
            {
                *last = Piece { link: last.link.and(piece.link), reach: last.reach.max(piece.reach) };
            }
            _ => joined.push(*piece),
        }
        left -= piece.link.length;
    }
    joined
}

/// The same with a joint in the middle of all.
pub fn halved(mut pieces: Vec<Piece>) -> Vec<Piece> {
    let half = 0.5 * length(&pieces);
    let mut before = 0.0;
    let Some(at) = pieces.iter().position(|piece| {
        before += piece.link.length;
        before > half
    }) else {
        return pieces;
    };
    let Piece { link, reach } = pieces[at];
    let first = half - (before - link.length);
    if first > 0.0 {
        let part = |length: f64| Piece {
            link: Link { length, weight: link.weight * length / link.length, centre: 0.5 },
            reach,
        };
        pieces.splice(at..=at, [part(first), part(link.length - first)]);
    }
    pieces
}
