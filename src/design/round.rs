//! Rows that go round a limb: how many repeats leave the room that the wearer asks for.
//!
//! A row of no written length that `repeat: fill` fills is strung as often as brings the closed row's inside
//! nearest to the girth with its ease. The inside is that of [`wind`], with the closure hooked up short.

use crate::geometry::chord::{Chord, Profile};
use crate::geometry::wound::{Wound, wind};
use crate::trade::usual::KNOT_WIDTH;
use crate::units::Length;

use super::entries::{Entries, Index};
use super::finding::Finding;
use super::joins::{Closure, Part};
use super::model::{Bit, End, Model, What};
use super::stock::Bead;

/// Beads and findings by their indices.
#[derive(Clone, Copy)]
pub struct Stock<'a> {
    /// The beads.
    pub beads: &'a Entries<Bead>,
    /// The findings.
    pub findings: &'a Entries<Finding>,
}

impl Stock<'_> {
    /// A bit of a closed row whose cord is so thick, in mm: beads reach inward as far as they are thick, flat ones
    /// lying flat, and so do findings. What dangles hangs outside.
    #[must_use]
    pub fn chord(self, bit: &Bit, cord: f64) -> Chord {
        let half = 0.5 * cord;
        let inward = match bit.what {
            What::Bead(bead) => self.beads[bead].lying().max(half),
            What::Finding(finding) => self.half(finding).max(half),
            What::Knot => KNOT_WIDTH * half,
            What::Gap | What::Dangle(_) => half,
        };
        let body = bit.what.bead().map(|bead| &self.beads[bead]).filter(|bead| !bead.hangs());
        Chord { before: bit.before, after: bit.after, inward, body: body.map(|bead| bead.body(cord)) }
    }

    /// How broad in mm a row of bits lies on the limb: as broad as the broadest of them across, and a finding of which
    /// that is not known no broader than the cord.
    #[must_use]
    pub fn breadth<'b>(self, bits: impl IntoIterator<Item = &'b Bit>, cord: f64) -> f64 {
        let broad = |bit: &Bit| match bit.what {
            What::Bead(bead) => self.beads[bead].across.value(),
            What::Finding(finding) => self.findings[finding].across_or(cord),
            What::Gap | What::Knot | What::Dangle(_) => cord,
        };
        bits.into_iter().map(broad).fold(cord, f64::max)
    }

    /// How far what closes a strand's ends reaches inward.
    #[must_use]
    pub fn of_ends<'e>(self, ends: impl IntoIterator<Item = &'e End>, cord: f64) -> f64 {
        ends.into_iter().flat_map(|end| &end.findings).map(|at| self.half(*at)).fold(0.5 * cord, f64::max)
    }

    /// A part of the closure, hooked up so long: chain is as many links as it has.
    #[must_use]
    pub fn hooked(self, part: &Part, length: Length) -> Vec<Chord> {
        let finding = &self.findings[part.finding];
        let count = finding.chain().and_then(|chain| chain.links(length)).unwrap_or(1);
        let chord = Chord::even(length.value() / count as f64, 0.5 * finding.thickness().value());
        std::iter::repeat_n(chord, usize::try_from(count).unwrap_or(1)).collect()
    }

    /// A rope that bends freely, so long and so thick in mm, and the closure, each part of which is hooked up so long; and
    /// how many of these chords are the rope's.
    #[must_use]
    pub fn rope(
        self,
        closure: &Closure,
        [length, thickness]: [f64; 2],
        hook: fn(&Part) -> Length,
    ) -> (Vec<Chord>, usize) {
        /// Longest link in mm.
        const LINK: f64 = 1.0;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count, at least 1")]
        let links = (length / LINK).ceil().max(1.0) as usize;
        let rope = std::iter::repeat_n(Chord::even(length / links as f64, 0.5 * thickness), links);
        let hooked = parts(closure).flat_map(|part| self.hooked(part, hook(part)));
        (rope.chain(hooked).collect(), links)
    }

    fn half(self, finding: Index<Finding>) -> f64 {
        0.5 * self.findings[finding].thickness().value()
    }
}

impl Model {
    /// Its beads and findings.
    #[must_use]
    pub const fn stock(&self) -> Stock<'_> {
        Stock { beads: &self.beads, findings: &self.findings }
    }
}

impl Bead {
    /// Its outline in the plane of a ring, on a cord so thick in mm.
    fn body(&self, cord: f64) -> Profile {
        let hole = self.hole.value();
        Profile { noses: self.noses(), hole: 0.5 * hole, play: 0.5 * (hole - cord).max(0.0) }
    }
}

/// The closure's parts in the order in which a closed row passes them, the last end's side first.
pub fn parts(closure: &Closure) -> impl Iterator<Item = &Part> {
    closure.right().iter().chain(closure.left().iter().rev())
}

/// A row that is to be closed round a limb.
pub struct Circlet<'a> {
    /// What its indices mean.
    pub stock: Stock<'a>,
    /// What closes it.
    pub closure: &'a Closure,
    /// How thick its cord is, all legs together, in mm.
    pub cord: f64,
    /// What closes the strand's ends.
    pub ends: &'a [End; 2],
    /// How many times it goes round.
    pub wraps: u32,
}

impl Circlet<'_> {
    /// Girth in mm of the largest limb that bits go round, closed; 0 where they reach round none.
    pub fn inside(&self, bits: &[Bit]) -> f64 {
        self.wound(bits).map_or(0.0, |wound| wound.taut.girth())
    }

    /// The same of what twisting makes of several such rows, so long and so thick in mm.
    pub fn inside_rope(&self, rope: [f64; 2]) -> f64 {
        let (chords, links) = self.stock.rope(self.closure, rope, |part| part.least);
        wind(&chords, links, 1, rope[1]).map_or(0.0, |wound| wound.taut.girth())
    }

    /// How much more cord in mm bits take when they are closed than in a straight row.
    pub fn slack(&self, bits: &[Bit]) -> f64 {
        self.wound(bits).map_or(0.0, |wound| wound.taut.slack)
    }

    fn wound(&self, bits: &[Bit]) -> Option<Wound> {
        let reach = self.stock.of_ends(self.ends, self.cord);
        // Ends that take no cord part no beads.
        let end = |end: &End| Some(Chord::even(end.takes.value(), reach)).filter(|_| end.takes > Length::ZERO);
        let [first, last] = self.ends.each_ref().map(end);
        let strung = bits.iter().map(|bit| self.stock.chord(bit, self.cord));
        let closing = parts(self.closure).flat_map(|part| self.stock.hooked(part, part.least));
        let mut chords: Vec<_> = first.into_iter().chain(strung).chain(last).collect();
        let on_strand = chords.len();
        chords.extend(closing);
        let pitch = self.stock.breadth(bits, self.cord);
        wind(&chords, on_strand, self.wraps, pitch)
    }
}
