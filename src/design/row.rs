//! How much cord the things strung beside one another take.
//!
//! Two beads with hole radii r1 and r2 meet at radius r = max(r1, r2), so each reaches from its
//! centre to its surface at that radius (see [`super::profile`]). Beside bare cord, knots and
//! findings a bead reaches to the mouth of its own hole. A measured pitch overrides both.

use crate::pattern::FindingKind;

use super::model::{Bead, Bit, Finding, What};

/// Something on the cord, before its neighbours are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Strung {
    /// What it is.
    pub what: What,
    /// Length along the cord in mm, for everything but beads.
    pub length: f64,
    /// Mass in grams.
    pub mass: f64,
}

impl Strung {
    /// A bead of an index.
    pub fn bead(index: usize, beads: &[Bead]) -> Self {
        Self { what: What::Bead(index), length: 0.0, mass: beads[index].mass.value() }
    }

    /// A finding of an index. A ring takes as much cord as its wire is thick.
    pub fn finding(index: usize, findings: &[Finding]) -> Self {
        let finding = &findings[index];
        let length = if finding.kind == FindingKind::JumpRing { finding.wire } else { finding.length };
        Self { what: What::Finding(index), length: length.value(), mass: finding.mass.value() }
    }

    const fn bead_index(&self) -> Option<usize> {
        match self.what {
            What::Bead(index) => Some(index),
            _ => None,
        }
    }
}

/// Sets everything in a row, touching.
pub fn bits(strung: &[Strung], beads: &[Bead]) -> Vec<Bit> {
    let at = |index: usize| strung.get(index).and_then(Strung::bead_index).map(|bead| &beads[bead]);
    let bit = |(index, one): (usize, &Strung)| {
        let (before, after) = match at(index) {
            Some(bead) => (reach(bead, index.checked_sub(1).and_then(at)), reach(bead, at(index + 1))),
            None => (one.length / 2.0, one.length / 2.0),
        };
        let turned = turns(strung, index, beads);
        Bit { what: one.what.clone(), before, after, mass: one.mass, turned }
    };
    strung.iter().enumerate().map(bit).collect()
}

/// Whether a strung finding turns to the bead after it: where that is broader than the one before.
fn turns(strung: &[Strung], index: usize, beads: &[Bead]) -> bool {
    let broad = |at: Option<usize>| {
        let bead = at.and_then(|at| strung.get(at)).and_then(Strung::bead_index);
        bead.map_or(0.0, |bead| beads[bead].across.value())
    };
    matches!(strung[index].what, What::Finding(_)) && broad(Some(index + 1)) > broad(index.checked_sub(1))
}

/// How far a bead reaches from its centre towards a neighbour.
pub fn reach(bead: &Bead, neighbour: Option<&Bead>) -> f64 {
    if let Some(pitch) = bead.pitch {
        return pitch.value() / 2.0;
    }
    let hole = bead.hole.value().max(neighbour.map_or(0.0, |other| other.hole.value()));
    bead.half_length(hole / 2.0)
}
