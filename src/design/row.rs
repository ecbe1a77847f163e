//! How much cord the things strung beside one another take.
//!
//! Two beads with hole radii r1 and r2 meet at radius r = max(r1, r2), so each reaches from its
//! centre to its surface at that radius (see [`super::profile`]). Beside bare cord, knots and
//! findings a bead reaches to the mouth of its own hole. A measured pitch overrides both. Beads that
//! slip into one another are packed by [`super::pack`].
//!
//! A bead cap is drawn over its bead: by the same geometry its rim of radius r meets the bead's surface
//! where that is r from the axis, unless the bead meets the cap's bottom first, which takes its wall.

use std::ops::Range;

use super::entries::{Entries, Index};
use super::finding::Finding;
use super::model::{Bit, Strand, What};
use super::pack;
use super::stock::Bead;
use crate::pattern::{Settle, Shape};
use crate::source::Place;
use crate::trade::usual::WALL;
use crate::units::Length;

/// Something on the cord, before its neighbours are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Strung {
    /// What it is.
    pub what: What,
    /// Length along the cord in mm, for everything but beads.
    pub length: f64,
    /// Mass in grams.
    pub mass: f64,
    /// Radius in mm of the rim of a cap that states its width.
    rim: Option<f64>,
    /// Where the pattern says it.
    pub place: Place,
}

impl Strung {
    /// Anything but a bead or a finding.
    pub const fn other(what: What, length: f64, mass: f64) -> Self {
        Self { what, length, mass, rim: None, place: Place { file: 0, start: 0, end: 0 } }
    }

    /// The same, said at a place.
    pub const fn at(mut self, place: Place) -> Self {
        self.place = place;
        self
    }

    /// A bead of an index.
    pub fn bead(index: Index<Bead>, beads: &Entries<Bead>) -> Self {
        Self::other(What::Bead(index), 0.0, beads[index].mass.value())
    }

    /// A finding of an index. A ring takes as much cord as its wire is thick.
    pub fn finding(index: Index<Finding>, findings: &Entries<Finding>) -> Self {
        let finding = &findings[index];
        let length = finding.ring().map_or(finding.along(), |ring| *ring.wire);
        // Chain of no one length is strung nowhere.
        let mass = finding.mass_of_one().map_or(0.0, |mass| mass.value());
        let other = Self::other(What::Finding(index), length.value(), mass);
        Self { rim: finding.rim().map(|width| width.value() / 2.0), ..other }
    }

    /// It on the cord, with so much of it before and after its centre.
    fn bit(&self, (before, after): (f64, f64), turned: bool) -> Bit {
        Bit { what: self.what.clone(), before, after, mass: self.mass, turned, place: self.place }
    }
}

/// Sets everything in a row, touching.
pub fn bits(strung: &[Strung], beads: &Entries<Bead>) -> Vec<Bit> {
    let is_bead = |one: &Strung| one.what.bead().is_some();
    let mut bits = Vec::with_capacity(strung.len());
    for run in strung.chunk_by(|one, next| is_bead(one) && is_bead(next)) {
        let of: Vec<_> = run.iter().filter_map(|one| one.what.bead()).map(|index| &beads[index]).collect();
        let first = bits.len();
        bits.extend(run.iter().zip(pack::shares(&of)).map(|(one, share)| one.bit(share, false)));
        // What is no bead is a run of its own.
        bits.extend(run.iter().filter(|one| !is_bead(one)).map(|one| beside(one, first, strung, beads)));
    }
    bits
}

/// Anything but a bead, beside the beads that stand next to it.
fn beside(one: &Strung, index: usize, strung: &[Strung], beads: &Entries<Bead>) -> Bit {
    let at = |place: usize| strung.get(place).and_then(|one| one.what.bead()).map(|bead| &beads[bead]);
    let turned = turns(strung, index, beads);
    let faced = if turned { at(index + 1) } else { index.checked_sub(1).and_then(at) };
    let half = taken(one, faced) / 2.0;
    one.bit((half, half), turned)
}

/// Joins a row that closes on itself, bead to bead: its last bead meets its first one like every other.
pub fn close(strand: &mut Strand, beads: &Entries<Bead>) {
    let takes: Length = strand.ends.iter().map(|end| end.takes).sum();
    let ([train], true) = (strand.trains.as_mut_slice(), strand.settle == Settle::Fill && takes == Length::ZERO) else {
        return;
    };
    for (at, share) in closed(&train.bits, beads) {
        (train.bits[at].before, train.bits[at].after) = share;
    }
    strand.finished = Length::mm(train.length());
}

/// Which bits of a row take other cord where it closes on itself, and how much before and after their centres: all
/// where it is all beads, else the beads that stand at its ends.
fn closed(bits: &[Bit], beads: &Entries<Bead>) -> Vec<(usize, (f64, f64))> {
    let indices: Vec<_> = bits.iter().map(|bit| bit.what.bead()).collect();
    let (ahead, behind) = (indices.iter().map_while(|at| *at), indices.iter().rev().map_while(|at| *at));
    let (all, ahead, behind) = (indices.len(), ahead.count(), behind.count());
    if all < 2 || ahead == 0 || behind == 0 {
        return Vec::new();
    }
    let run = |range: Range<usize>| indices[range].iter().flatten().map(|at| &beads[*at]);
    if ahead == all {
        return (0..all).zip(pack::closed(&run(0..all).collect::<Vec<_>>())).collect();
    }
    let over = (all - behind..all).chain(0..ahead);
    let shares = pack::shares(&run(all - behind..all).chain(run(0..ahead)).collect::<Vec<_>>());
    over.zip(shares).collect()
}

/// Cord in mm that anything but a bead takes beside the bead that it faces.
fn taken(one: &Strung, faced: Option<&Bead>) -> f64 {
    let Some((bead, rim)) = faced.zip(one.rim) else { return one.length };
    let outer_end = bead.half_length(rim) + one.length;
    (outer_end - bead.half_length(bead.hole.value() / 2.0)).clamp(WALL.value().min(one.length), one.length)
}

/// Whether a strung finding turns to the bead after it: where that is broader than the one before.
fn turns(strung: &[Strung], index: usize, beads: &Entries<Bead>) -> bool {
    let broad = |at: Option<usize>| {
        let bead = at.and_then(|at| strung.get(at)).and_then(|one| one.what.bead());
        bead.map_or(0.0, |bead| beads[bead].across.value())
    };
    matches!(strung[index].what, What::Finding(_)) && broad(Some(index + 1)) > broad(index.checked_sub(1))
}

/// How much cord in mm a bead takes between neighbours of a kind, or with none.
#[must_use]
pub fn taken_by(bead: &Bead, neighbours: Option<&Bead>) -> f64 {
    reach(bead, neighbours).into_iter().sum()
}

/// How far a bead reaches from its centre towards a neighbour before it, and towards one after it, in mm.
pub fn reach(bead: &Bead, neighbour: Option<&Bead>) -> [f64; 2] {
    if let Some(pitch) = bead.pitch {
        return [pitch.value() / 2.0; 2];
    }
    let hole = bead.hole.value().max(neighbour.map_or(0.0, |other| other.hole.value()));
    match bead.shape {
        Shape::Drop if !bead.hangs() => bead.drop_ends(hole / 2.0),
        _ => [bead.half_length(hole / 2.0); 2],
    }
}
