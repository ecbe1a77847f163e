//! How deep a loop hangs with its sides beside one another, told without hanging it.
//!
//! By pencil: each side is straight but for the bead before the fold, whose middle is as far from the line between the
//! sides as it is thick. Where that bead turns from the one before, both part as a [`Hinge`] tells, and the turn and what
//! it takes are found in turn. That bead feels the side lean as it does at its foot: under a force H across, a side of
//! weight W above what it carries, V, leans by H / (V + w s) at a height s, so that it leans log(1 + W / V) V / W times less
//! all along than at its foot, and its own beads part as it turns by that (statics of a cord). Where sides differ, an
//! approximation by the first. `drape::fold` hangs it.

use crate::geometry::hinge::Hinge;

use super::model::{Bit, Model, Strand};
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

impl Model {
    /// By how much in mm a loop is less deep than half its strand.
    pub(super) fn opened(&self, strand: &Strand) -> f64 {
        let half = 0.5 * strand.finished.value();
        let bits: Vec<&Bit> = strand.bits().collect();
        let bead = |bit: &Bit| bit.what.bead().map(|bead| &self.beads[bead]);
        let across = |bead: &Bead| bead.across.value();
        let apart = bits.iter().filter_map(|bit| bead(bit)).map(across).fold(0.0, f64::max);
        let cord = strand.cord_width(self).value();
        let mut end = half - 0.5 * bits.iter().map(|bit| bit.length()).sum::<f64>();
        for (at, pair) in bits.windows(2).enumerate() {
            let (leg, length) = (end, pair[0].length());
            end += length;
            if end <= half && half < end + pair[1].length() {
                let Some(last) = bead(pair[0]) else { return 0.0 };
                let before = at.checked_sub(1).and_then(|before| bead(bits[before]));
                let above = bits[..at].iter().map(|bit| bit.mass).sum::<f64>();
                let heavier = above / (pair[0].mass + 0.5 * pair[1].mass);
                let side = Leg { leg, gap: half - end, length, breadth: across(last), apart, heavier };
                return half - side.depth(before.map(|before| before.hinge(last, cord)));
            }
        }
        0.0
    }
}

impl Leg {
    /// How deep it hangs, its beads parted.
    fn depth(&self, hinge: Option<Hinge>) -> f64 {
        let opens = |turn: f64| hinge.map_or(0.0, |hinge| hinge.opens(turn));
        let (mut depth, mut turns) = self.hung(0.0, 0.0);
        for _ in 0..ROUNDS {
            // What many small turns take is what their sum does.
            (depth, turns) = self.hung(opens(turns[0]), 2.0 * opens(turns[1]));
        }
        depth
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
