//! Whether a design keeps what is promised of it: see [`super::model`].

mod numbers;
#[cfg(test)]
mod tests;

use std::collections::BTreeSet;

use crate::remark::Remark;
use crate::remark::said::own::Own;

use super::assorted::Assorted;
use super::entries::Index;
use super::finding::Finding;
use super::model::{Bit, FillRepeat, Model, Phrase, Rest, Strand, Train, What};
use super::resting::SAME;
use super::stock::{Bead, Cord};
use super::twist::Twist;
use numbers::{above, is_asked, is_closing, is_measured, is_numbered, is_packed, is_sized, is_thick, is_worn};

/// What of a model is not as is promised of a design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Flaw {
    /// A bead with a size, a hole or a count that is no positive number, with a mass or tolerance that is less than
    /// nothing, or sold in lots that hold none.
    BeadSize(Index<Bead>),
    /// A cord without a thickness, of which a length, mass or strength is no number, or less than nothing, or sold in lots
    /// that hold none.
    CordSize(Index<Cord>),
    /// A finding with a size that is no positive number, a bar without holes, with a mass that is less than nothing, or
    /// sold in lots that hold none.
    FindingSize(Index<Finding>),
    /// A finding that is tied round a bead or wound of a cord that the design does not have.
    UnknownOf(Index<Finding>),
    /// What several kinds of bead are bought in, that holds one which the design does not have or none of a kind, or of
    /// which a length or mass is none.
    Pack(Index<Assorted>),
    /// A design of which no piece is made.
    NoCopies,
    /// A body with a measure that is no positive number, or with less room than none.
    Body,
    /// A piece that goes round or is twisted so often as nothing does, or twisted of other strands than it has.
    Turns,
    /// A price with a number that is none, or less than nothing.
    Price,
    /// A strand of which a length or mass is no number, or less than nothing, or with a train that rests nowhere.
    Number(Index<Strand>),
    /// A strand that names what the design does not have.
    Unknown(Index<Strand>),
    /// A closure that names what the design does not have.
    UnknownPart,
    /// A closure of which a length is no number, less than nothing, or longer closed short than closed long.
    PartLength,
    /// A strand with more on it than it has room for.
    Overfull(Index<Strand>),
    /// A strand of which one train reaches into another.
    Overlap(Index<Strand>),
}

impl Flaw {
    /// What is said where a pattern was resolved to a model that has it, at the place of what has it.
    pub(super) fn own_fault(self, model: &Model) -> Remark {
        let (said, place) = match self {
            Self::BeadSize(at) => (Own::BeadSize { id: model.beads[at].id.clone() }, model.beads[at].place),
            Self::CordSize(at) => (Own::CordSize { id: model.cords[at].id.clone() }, model.cords[at].place),
            Self::FindingSize(at) | Self::UnknownOf(at) => {
                let Finding { id, place, .. } = &model.findings[at];
                (self.of_finding(id.clone()), *place)
            }
            Self::Pack(at) => (Own::Pack { id: model.assorted[at].id.clone() }, model.assorted[at].place),
            Self::UnknownPart => (Own::UnknownPart, model.closure.place),
            Self::PartLength => (Own::PartLength, model.closure.place),
            Self::NoCopies => return Remark::new(Own::NoCopies),
            Self::Body => return Remark::new(Own::Body),
            Self::Turns => return Remark::new(Own::Turns),
            Self::Price => return Remark::new(Own::Price),
            Self::Number(at) | Self::Unknown(at) | Self::Overfull(at) | Self::Overlap(at) => {
                let Strand { name, place, .. } = &model.strands[at];
                (self.of_strand(name.clone()), *place)
            }
        };
        Remark::new(said).at(place)
    }

    fn of_finding(self, id: String) -> Own {
        if matches!(self, Self::FindingSize(_)) { Own::FindingSize { id } } else { Own::UnknownOf { id } }
    }

    fn of_strand(self, strand: String) -> Own {
        match self {
            Self::Number(_) => Own::Number { strand },
            Self::Overfull(_) => Own::Overfull { strand },
            Self::Overlap(_) => Own::Overlap { strand },
            _ => Own::Unknown { strand },
        }
    }
}

impl Model {
    /// The first of its flaws.
    #[must_use]
    pub fn flaw(&self) -> Option<Flaw> {
        let bead = self.beads.entries().find(|(_, bead)| !is_sized(bead)).map(|(at, _)| Flaw::BeadSize(at));
        let cord = self.cords.entries().find(|(_, cord)| !is_thick(cord)).map(|(at, _)| Flaw::CordSize(at));
        let finding = || self.findings.entries().find_map(|(at, finding)| self.flaw_of_finding(at, finding));
        let pack = || self.assorted.entries().find(|(_, one)| !self.packs(one)).map(|(at, _)| Flaw::Pack(at));
        let strand = || self.strands.entries().find_map(|(at, strand)| self.flaw_of(at, strand));
        bead.or(cord).or_else(finding).or_else(pack).or_else(|| self.flaw_of_whole()).or_else(strand)
    }

    /// The first flaw of what is no bead's, cord's, finding's or strand's own.
    fn flaw_of_whole(&self) -> Option<Flaw> {
        let twists = |twist: &Twist| above(twist.turns) && twist.lays().len() == self.strands.len();
        match () {
            () if self.copies == 0 => Some(Flaw::NoCopies),
            () if self.closure.parts().any(|part| self.findings.get(part.finding).is_none()) => Some(Flaw::UnknownPart),
            () if !is_closing(&self.closure) => Some(Flaw::PartLength),
            () if !is_worn(&self.wear) => Some(Flaw::Body),
            () if !above(self.wraps) || !self.twist.as_ref().is_none_or(twists) => Some(Flaw::Turns),
            () if !self.price.as_ref().is_none_or(is_asked) => Some(Flaw::Price),
            () => None,
        }
    }

    /// The first bead that nothing strings, and round which no knot is tied: a sound pattern makes none.
    #[must_use]
    pub fn idle(&self) -> Option<Index<Bead>> {
        let used = self.used();
        self.beads.indices().find(|bead| !used.contains(bead))
    }

    /// What is said where a pattern was resolved to it and one of its beads is idle.
    pub(super) fn idle_fault(&self) -> Option<Remark> {
        let bead = &self.beads[self.idle()?];
        Some(Remark::new(Own::Idle { id: bead.id.clone() }).at(bead.place))
    }

    fn flaw_of_finding(&self, at: Index<Finding>, finding: &Finding) -> Option<Flaw> {
        let bead = finding.knotted_bead().is_none_or(|bead| self.beads.get(bead).is_some());
        let cord =
            finding.tassel().and_then(|tassel| tassel.wound).is_none_or(|(cord, _)| self.cords.get(cord).is_some());
        match () {
            () if !is_measured(finding) => Some(Flaw::FindingSize(at)),
            () if !bead || !cord => Some(Flaw::UnknownOf(at)),
            () => None,
        }
    }

    /// Whether what several kinds of bead are bought in holds what the design has.
    fn packs(&self, assorted: &Assorted) -> bool {
        is_packed(assorted) && assorted.used().all(|(_, bead)| self.beads.get(bead).is_some())
    }

    fn flaw_of(&self, at: Index<Strand>, strand: &Strand) -> Option<Flaw> {
        let [first, last] = strand.ends.each_ref().map(|end| end.takes.value());
        let (start, end) = (first - SAME, strand.finished.value() - last + SAME);
        match () {
            () if !self.knows(strand) => Some(Flaw::Unknown(at)),
            () if !is_numbered(strand) => Some(Flaw::Number(at)),
            () if strand.trains.iter().any(|train| reach(train)[0] < start || reach(train)[1] > end) => {
                Some(Flaw::Overfull(at))
            }
            () if strand.trains.windows(2).any(|pair| reach(&pair[0])[1] > reach(&pair[1])[0] + SAME) => {
                Some(Flaw::Overlap(at))
            }
            () => None,
        }
    }

    /// Whether it has all that a strand names.
    fn knows(&self, strand: &Strand) -> bool {
        self.cords.get(strand.cord).is_some()
            && strand.ends.iter().flat_map(|end| &end.findings).all(|at| self.findings.get(*at).is_some())
            && each(strand.bits()).into_iter().all(|bit| match &bit.what {
                What::Bead(at) => self.beads.get(*at).is_some(),
                What::Finding(at) => self.findings.get(*at).is_some(),
                What::Dangle(dangle) => dangle.on.is_none_or(|on| self.findings.get(on).is_some()),
                What::Gap | What::Knot => true,
            })
            && self.knows_all(&strand.chart)
            && strand.fill.as_ref().is_none_or(|fill| fills(fill, strand))
    }

    fn knows_all(&self, chart: &[Phrase]) -> bool {
        chart.iter().all(|phrase| match phrase {
            Phrase::Run(_, bead) => self.beads.get(*bead).is_some(),
            Phrase::Finding(at) | Phrase::Stop(_, at) => self.findings.get(*at).is_some(),
            Phrase::Times(_, list) | Phrase::Ordered(list) => self.knows_all(list),
            Phrase::Mirror(side, middle) => self.knows_all(side) && self.knows_all(middle),
            Phrase::Dangle(on, list) => on.is_none_or(|on| self.findings.get(on).is_some()) && self.knows_all(list),
            Phrase::Gap(_) | Phrase::Links(_) | Phrase::Knot => true,
        })
    }

    /// The beads that are strung, or that a knot is tied round.
    fn used(&self) -> BTreeSet<Index<Bead>> {
        let strung = self.strands.iter().flat_map(|strand| each(strand.bits()));
        let knotted = self.findings.iter().filter_map(Finding::knotted_bead);
        strung.filter_map(|bit| bit.what.bead()).chain(knotted).collect()
    }
}

/// Bits, and those that hang from them.
fn each<'b>(bits: impl Iterator<Item = &'b Bit>) -> Vec<&'b Bit> {
    let with_hung = |bit: &'b Bit| match &bit.what {
        What::Dangle(dangle) => std::iter::once(bit).chain(each(dangle.bits.iter())).collect(),
        _ => vec![bit],
    };
    bits.flat_map(with_hung).collect()
}

/// Whether each repeat that fills a strand is among the bits of its first train.
fn fills(fill: &FillRepeat, strand: &Strand) -> bool {
    let bits = strand.trains.first().map_or(0, |train| train.bits.len());
    fill.ones.iter().all(|one| one.start <= one.end && one.end <= bits)
}

/// Where the first and last of a train may come to lie, in mm from the first end's loop.
fn reach(train: &Train) -> [f64; 2] {
    let (first, last) = match train.rest {
        Rest::At(start) => (start, start),
        Rest::Free(from, to) => (from, to),
    };
    [first, last + train.length()]
}
