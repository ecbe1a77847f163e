//! A strand as the rounds take it: bare cord in longer pieces, everything else as it hangs.

use super::super::chain::{Chain, Piece};
use super::super::clearance::{Outline, outline};
use super::super::hang::{Hanging, Link};
use super::super::{Hung, Joint};
use crate::design::{Design, Strand, What};
use crate::geometry::Point;
use crate::pattern::FindingKind;

/// Pieces of bare cord become one while it is no longer than this, in mm.
const LONGEST: f64 = 4.0;
/// And while the cord between bows out from it by no more than this, in mm.
const BOW: f64 = 0.002;
/// How far, in mm, strands that leave one point must have run for each mm that they need between their
/// lines: where they would have to part by more than 30 degrees they are left to lie on one another.
const FAN: f64 = 2.0;

/// A strand between its two points.
pub struct Rope {
    /// Its joints with their stations; the first and the last are fixed.
    pub joints: Vec<Joint>,
    /// Its links.
    pub links: Vec<Link>,
    /// What each link is.
    pieces: Vec<Piece>,
    /// The joint of the finer chain at which each link ends.
    fine: Vec<usize>,
}

impl Rope {
    /// A strand as it hangs alone.
    pub fn new(chain: &Chain, hung: &Hung) -> Self {
        let mut rope = Self { joints: vec![hung.joints[0]], links: Vec::new(), pieces: Vec::new(), fine: Vec::new() };
        for ((link, piece), joints) in chain.links.iter().zip(&chain.pieces).zip(hung.joints.windows(2)) {
            if !rope.merge(*link, *piece, joints[1]) {
                rope.links.push(*link);
                rope.pieces.push(*piece);
                rope.joints.push(joints[1]);
                rope.fine.push(rope.fine.last().copied().unwrap_or_default() + 1);
            }
        }
        rope
    }

    /// Makes the last link longer by one of its own kind, where a straight line stands for both.
    fn merge(&mut self, link: Link, piece: Piece, end: Joint) -> bool {
        let ([.., before, _], Some(last), Some(fine)) =
            (self.joints.as_slice(), self.links.last_mut(), self.fine.last_mut())
        else {
            return false;
        };
        let length = last.length + link.length;
        // An arc of this length whose chord is so much shorter bows by the root of 3/8 of both.
        let bow = (0.375 * length * (length - before.at.distance(end.at)).max(0.0)).sqrt();
        if self.pieces.last() != Some(&piece) || length > LONGEST || bow > BOW {
            return false;
        }
        let weight = last.weight + link.weight;
        let moment = last.weight * last.centre * last.length + link.weight * (last.length + link.centre * link.length);
        let centre = if weight * length > 0.0 { moment / (weight * length) } else { 0.5 };
        *last = Link { length, weight, centre };
        *fine += 1;
        *self.joints.last_mut().unwrap_or(&mut end.clone()) = end;
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

    /// The outline of a link where it may touch another strand's; none at the ends, which their findings
    /// hold, of what several strands run through, and of branches' links.
    pub fn outline(&self, link: usize, design: &Design, strand: &Strand) -> Option<Outline> {
        let (piece, length) = (self.pieces[link], self.links[link].length);
        let shared = |train: usize, bit: usize| match strand.trains[train].bits[bit].what {
            What::Finding(finding) => design.findings[finding].is_shared(),
            _ => false,
        };
        let skipped = match piece {
            Piece::End => true,
            Piece::Bit(train, bit) => shared(train, bit),
            Piece::Cord => false,
        };
        let [from, to] = [self.joints[link].at, self.joints[link + 1].at];
        let chord = from.distance(to);
        (!skipped && length > 0.0 && chord > 0.0)
            .then(|| outline(design, strand, piece, from, (to - from) * (1.0 / chord), length))
    }

    /// How far a link lies from the nearer end along the strand, outside what covers the ends.
    pub fn depth(&self, link: usize, covered: f64) -> f64 {
        let whole = self.joints.last().map_or(0.0, |last| last.station);
        self.joints[link].station.min(whole - self.joints[link + 1].station) - covered
    }

    /// The finer chain laid along the links that were found, with the tension in each.
    pub fn laid(&self, chain: &Chain, tensions: &[f64], rounds: u32) -> Hanging {
        let first = self.joints[0].at;
        let (mut joints, mut directions) = (vec![Point::ORIGIN], Vec::with_capacity(chain.links.len()));
        let mut from = 0;
        for (pair, &to) in self.joints.windows(2).zip(&self.fine) {
            let span = pair[1].at - pair[0].at;
            let long: f64 = chain.links[from..to].iter().map(|link| link.length).sum();
            let mut gone = 0.0;
            for link in &chain.links[from..to] {
                gone += link.length;
                joints.push(pair[0].at - first + span * if long > 0.0 { gone / long } else { 1.0 });
                directions.push(if long > 0.0 { span * (1.0 / span.length()) } else { Point::new(1.0, 0.0) });
            }
            from = to;
        }
        let ends = [tensions.first(), tensions.last()].map(|end| end.copied().unwrap_or_default());
        let along: f64 = self.links.iter().map(|link| link.length).sum();
        let drawn: f64 = self.joints.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
        Hanging {
            joints,
            directions,
            across: 0.0,
            up: 0.0,
            first: ends[0],
            lowest: tensions.iter().copied().fold(f64::INFINITY, f64::min),
            last: ends[1],
            iterations: rounds,
            residual: (along - drawn).abs(),
        }
    }
}

/// Length of strand at each end that the closure covers: cones take their strands up to the mouth.
pub fn covered(design: &Design) -> f64 {
    let parts = design.closure.left.iter().chain(&design.closure.right);
    let cones = parts.map(|part| &design.findings[part.finding]).filter(|part| part.kind == FindingKind::Cone);
    cones.map(|cone| cone.length.value()).fold(0.0, f64::max)
}

/// Whether two links are so far from where their strands part that they have room beside one another.
pub fn have_room(needed: f64, apart: f64, depth: f64) -> bool {
    depth > FAN * (needed - apart)
}
