//! How deep a loop hangs with its sides beside one another, and how much cord it takes where it folds, told without hanging it.
//!
//! By pencil: each side is straight but for the bead before the fold, whose middle is as far from the line between the
//! sides as it is thick. Where that bead turns from the one before, both part as a [`Hinge`] tells, and the turn and what
//! it takes are found in turn. That bead feels the side lean as it does at its foot: under a force H across, a side of
//! weight W above what it carries, V, leans by H / (V + w s) at a height s, so that it leans log(1 + W / V) V / W times less
//! all along than at its foot, and its own beads part as it turns by that (statics of a cord). Where sides differ, an
//! approximation by the first. `drape::fold` hangs it.

use crate::geometry::hinge::Hinge;

use super::model::{Bit, Model, Strand};
use super::round::Stock;
use super::stock::Bead;

/// Rounds in which the turn and what it takes are found: each leaves less than half of what was amiss.
const ROUNDS: u32 = 40;

/// A side of a loop as it folds, in mm.
struct Leg {
    /// Cord from its end to the bead before the fold.
    leg: f64,
    /// Cord of its own beyond that bead, in the fold.
    gap: f64,
    /// How long that bead is, and how broad.
    length: f64,
    breadth: f64,
    /// How far apart the sides are at the top.
    apart: f64,
    /// How many times as much as what it carries it weighs.
    heavier: f64,
}

/// A folded loop, in mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct Folded {
    /// How deep it hangs.
    depth: f64,
    /// How much more cord it takes than laid straight.
    pub takes: f64,
}

impl Model {
    /// By how much in mm a loop is less deep than half its strand.
    pub(super) fn opened(&self, strand: &Strand) -> f64 {
        let bits: Vec<&Bit> = strand.bits().collect();
        let folded = self.stock().folded(&bits, strand.cord_width(self).value(), strand.finished.value());
        folded.map_or(0.0, |folded| 0.5 * strand.finished.value() - folded.depth)
    }
}

impl Stock<'_> {
    /// A loop of bits on a cord so thick, in mm, whose strand is so long; nothing where no bead stands before the fold.
    pub(super) fn folded(self, bits: &[&Bit], cord: f64, finished: f64) -> Option<Folded> {
        let half = 0.5 * finished;
        let mut end = half - 0.5 * bits.iter().map(|bit| bit.length()).sum::<f64>();
        for (at, pair) in bits.windows(2).enumerate() {
            let leg = end;
            end += pair[0].length();
            if end <= half && half < end + pair[1].length() {
                let before = at.checked_sub(1).and_then(|before| self.bead(bits[before]));
                let hinge = before.zip(self.bead(pair[0])).map(|(before, last)| before.hinge(last, cord));
                return Some(self.leg(bits, at, [leg, half - end])?.folded(hinge));
            }
        }
        None
    }

    fn bead(&self, bit: &Bit) -> Option<&Bead> {
        bit.what.bead().map(|bead| &self.beads[bead])
    }

    /// A side whose last bit before the fold is of a number, with cord before that and beyond it.
    fn leg(self, bits: &[&Bit], last: usize, [leg, gap]: [f64; 2]) -> Option<Leg> {
        let across = |bead: &Bead| bead.across.value();
        let apart = bits.iter().filter_map(|bit| self.bead(bit)).map(across).fold(0.0, f64::max);
        let above = bits[..last].iter().map(|bit| bit.mass).sum::<f64>();
        let heavier = above / (bits[last].mass + 0.5 * bits[last + 1].mass);
        let breadth = across(self.bead(bits[last])?);
        Some(Leg { leg, gap, length: bits[last].length(), breadth, apart, heavier })
    }
}

impl Leg {
    /// How deep it hangs, its beads parted, and what both sides take.
    fn folded(&self, hinge: Option<Hinge>) -> Folded {
        let opens = |turn: f64| hinge.map_or(0.0, |hinge| hinge.opens(turn));
        let (mut depth, mut turns) = self.hung(0.0, 0.0);
        for _ in 0..ROUNDS {
            // What many small turns take is what their sum does.
            (depth, turns) = self.hung(opens(turns[0]), 2.0 * opens(turns[1]));
        }
        let takes = hinge.map_or(0.0, |hinge| turns.iter().map(|turn| hinge.takes(*turn)).sum());
        Folded { depth, takes: 2.0 * takes }
    }

    /// How deep it hangs where the axes of its last two beads go on so far to where they meet, and the rest is so much
    /// longer; and by how much it turns at those and in the rest, in radians.
    fn hung(&self, beyond: f64, longer: f64) -> (f64, [f64; 2]) {
        let sin = ((self.breadth - 2.0 * self.gap) / self.length).clamp(0.0, 1.0);
        let (leg, last) = (self.leg + longer + beyond, self.length + beyond);
        let aside = self.gap + last * sin - 0.5 * self.apart;
        let depth = (leg * leg - aside * aside).max(0.0).sqrt() + last * (1.0 - sin * sin).sqrt();
        let leans = libm::asin((aside / leg).clamp(-1.0, 1.0)) * self.foot();
        (depth, [libm::asin(sin) + leans, leans.abs() * self.heavier / (1.0 + self.heavier)])
    }

    /// How many times as much it leans at its foot as all along.
    fn foot(&self) -> f64 {
        if self.heavier > 0.0 { self.heavier / libm::log1p(self.heavier) } else { 1.0 }
    }
}
