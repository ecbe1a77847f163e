//! Whether a design keeps what is promised of it: see [`super::model`].

use std::collections::BTreeSet;

use crate::remark::Remark;
use crate::remark::said::own::Own;
use crate::units::Length;

use super::entries::Index;
use super::finding::Finding;
use super::model::{Bit, Model, Phrase, Rest, Strand, Train, What};
use super::resting::SAME;
use super::stock::{Bead, Cord};

/// What of a model is not as is promised of a design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Flaw {
    /// A bead with a size, a hole or a count that is no positive number, or with a mass that is less than nothing.
    BeadSize(Index<Bead>),
    /// A cord without a thickness, or of which a length or mass is no number, or less than nothing.
    CordSize(Index<Cord>),
    /// A finding with a size that is no positive number, a bar without holes, or with a mass that is less than nothing.
    FindingSize(Index<Finding>),
    /// A finding that is tied round a bead or wound of a cord that the design does not have.
    UnknownOf(Index<Finding>),
    /// A design of which no piece is made.
    NoCopies,
    /// A strand of which a length or mass is no number, or less than nothing.
    Number(Index<Strand>),
    /// A strand that names what the design does not have.
    Unknown(Index<Strand>),
    /// A closure that names what the design does not have.
    UnknownPart,
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
            Self::NoCopies => return Remark::new(Own::NoCopies),
            Self::UnknownPart => return Remark::new(Own::UnknownPart),
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
        let copies = (self.copies == 0).then_some(Flaw::NoCopies);
        let closure = self.closure.parts().any(|part| self.findings.get(part.finding).is_none());
        let strand = || self.strands.entries().find_map(|(at, strand)| self.flaw_of(at, strand));
        let whole = copies.or(closure.then_some(Flaw::UnknownPart));
        bead.or(cord).or_else(finding).or(whole).or_else(strand)
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
    }

    fn knows_all(&self, chart: &[Phrase]) -> bool {
        chart.iter().all(|phrase| match phrase {
            Phrase::Run(count, bead) => *count > 0 && self.beads.get(*bead).is_some(),
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

/// Where the first and last of a train may come to lie, in mm from the first end's loop.
fn reach(train: &Train) -> [f64; 2] {
    let (first, last) = match train.rest {
        Rest::At(start) => (start, start),
        Rest::Free(from, to) => (from, to),
    };
    [first, last + train.length()]
}

fn is_sized(bead: &Bead) -> bool {
    let bores = bead.bores.is_none_or(|bores| bores.count > 1 && positive(bores.apart));
    let sizes = [bead.across, bead.along, *bead.thick, *bead.hole].into_iter().chain(bead.pitch);
    bores && sizes.into_iter().all(positive) && amount(bead.mass.value())
}

fn is_thick(cord: &Cord) -> bool {
    positive(cord.diameter)
        && amount(cord.take_up.value())
        && amount(cord.mass_per_metre.value())
        && amount(*cord.stiffness)
}

fn is_measured(finding: &Finding) -> bool {
    let holes = finding.bar().is_none_or(|bar| bar.holes > 0);
    holes && finding.form.lengths().into_iter().all(positive) && amount(finding.mass.value())
}

fn is_numbered(strand: &Strand) -> bool {
    let ends = strand.ends.iter().flat_map(|end| [end.bight, end.takes, end.take_up]);
    let own = [strand.finished, *strand.take_up, strand.slack, *strand.allowance, strand.aside];
    let bits = each(strand.bits()).into_iter().all(|bit| {
        let drop = if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 };
        [bit.before, bit.after, drop].into_iter().all(f64::is_finite) && amount(bit.length()) && amount(bit.mass)
    });
    strand.legs > 0 && bits && ends.chain(own).all(|length| amount(length.value()))
}

fn positive(length: Length) -> bool {
    length.value().is_finite() && length > Length::ZERO
}

/// Whether something is a number, and not less than nothing.
fn amount(number: f64) -> bool {
    number.is_finite() && number >= 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::form::{Crimp, Form, KnotCover};
    use crate::design::stated::Stated;
    use crate::design::{Choice, Dangle, Design, nth};
    use crate::remark::{Code, Level};
    use crate::source::Source;

    /// A necklace of 20 beads that slide on 420 mm, and four of another kind beside them.
    fn sound() -> Design {
        let text = "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: { shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, \
                    colour: '#5d7f5b' }\n  b: { shape: round, size: 8 mm, hole: 1 mm, mass: 0.6 g, colour: '#5d7f5b' }\n\
                    cords:\n  wire: { kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }\nfindings:\n  crimp: { kind: crimp, \
                    length: 2 mm, outside: 2 mm, inside: 1.3 mm }\nstrands:\n  - { name: only, cord: wire, length: 420 mm, \
                    ends: crimp, beads: [20 a, 4 b] }\nwear: { neck base: 370 mm }\n";
        let (piece, remarks) = crate::piece(&Source::new("test.yaml", text), &Choice::default(), None);
        piece.unwrap_or_else(|| panic!("{remarks:?}")).design
    }

    /// The flaw of that design where something of it is changed.
    fn flaw(change: impl FnOnce(&mut Model)) -> Option<Flaw> {
        let mut model = Model::clone(&sound());
        change(&mut model);
        model.flaw()
    }

    fn strand(change: impl FnOnce(&mut Strand)) -> Option<Flaw> {
        flaw(|design| change(&mut design.strands[nth(0)]))
    }

    #[test]
    fn each_promise_that_is_broken_is_found() {
        let at = nth(0);
        assert_eq!(flaw(|_| {}), None);
        assert_eq!(flaw(|design| design.beads[nth(1)].along = Length::ZERO), Some(Flaw::BeadSize(nth(1))));
        assert_eq!(flaw(|design| design.cords[nth(0)].diameter = Length::ZERO), Some(Flaw::CordSize(nth(0))));
        assert_eq!(
            flaw(|design| design.cords[nth(0)].stiffness = Stated::Stated(f64::NAN)),
            Some(Flaw::CordSize(nth(0)))
        );
        let thin = Form::Crimp(Crimp::new(Length::mm(2.0), Length::mm(2.0), Length::ZERO));
        assert_eq!(flaw(|design| design.findings[nth(0)].form = thin), Some(Flaw::FindingSize(nth(0))));
        let round = Form::KnotCover(KnotCover { bead: Some(nth(2)), ..KnotCover::new(Length::mm(6.0)) });
        assert_eq!(flaw(|design| design.findings[nth(0)].form = round), Some(Flaw::UnknownOf(nth(0))));
        assert_eq!(flaw(|design| design.copies = 0), Some(Flaw::NoCopies));
        assert_eq!(strand(|only| only.cord = nth(1)), Some(Flaw::Unknown(at)));
        assert_eq!(strand(|only| only.ends[1].findings = vec![nth(7)]), Some(Flaw::Unknown(at)));
        assert_eq!(strand(|only| only.chart = vec![Phrase::Run(1, nth(2))]), Some(Flaw::Unknown(at)));
        let hung = Dangle::new(None, vec![Bit::new(What::Finding(nth(3)), [1.0; 2], 0.1)], 2.0);
        assert_eq!(strand(|only| only.trains[0].bits[0].what = What::Dangle(hung)), Some(Flaw::Unknown(at)));
        assert_eq!(strand(|only| only.trains[0].bits[3].mass = f64::NAN), Some(Flaw::Number(at)));
    }

    #[test]
    fn what_has_a_flaw_is_no_design() {
        let other = sound().changed(|model| model.strands[nth(0)].cord = nth(1));
        assert_eq!(other.err(), Some(Flaw::Unknown(nth(0))));
    }

    #[test]
    fn beads_that_nothing_strings_are_found() {
        let fewer = sound().changed(|model| model.strands[nth(0)].trains[0].bits.truncate(20)).unwrap();
        assert_eq!((sound().idle(), fewer.idle()), (None, Some(nth(1))));
        let said = fewer.idle_fault().unwrap();
        assert_eq!((said.code(), said.place), (Code::OwnFault, Some(fewer.beads[nth(1)].place)));
        assert!(said.headline().contains("bead b came out strung nowhere"), "{}", said.headline());
    }

    /// What of a model that a pattern was resolved to has a flaw is an error with a place, and never silence.
    #[test]
    fn a_flaw_of_what_was_resolved_is_told_as_an_error() {
        let said = |change: fn(&mut Model)| {
            let mut model = Model::clone(&sound());
            change(&mut model);
            Design::checked(model).map_err(|(flaw, model)| flaw.own_fault(&model)).unwrap_err()
        };
        let changes: [fn(&mut Model); 4] = [
            |model| model.beads[nth(1)].along = Length::ZERO,
            |model| model.cords[nth(0)].diameter = Length::ZERO,
            |model| model.strands[nth(0)].cord = nth(1),
            |model| model.strands[nth(0)].finished = Length::mm(100.0),
        ];
        let named = ["bead b", "cord wire", "strand only", "strand only"];
        for (change, name) in changes.into_iter().zip(named) {
            let said = said(change);
            assert_eq!((said.code(), said.level()), (Code::OwnFault, Level::Error));
            assert!(said.place.is_some() && said.headline().contains(name), "{}", said.headline());
            assert!(!said.help().is_empty());
        }
    }

    /// What slides may lie against either end, and so just fits.
    #[test]
    fn no_train_leaves_its_strand_or_reaches_into_another() {
        let at = nth(0);
        let shorter = |by: f64| strand(|only| only.finished = only.finished - Length::mm(by));
        assert_eq!((shorter(0.0), shorter(0.01)), (None, Some(Flaw::Overfull(at))));
        let parted = |gap: f64| {
            strand(|only| {
                let rest = only.trains[0].bits.split_off(10);
                let Rest::Free(from, to) = only.trains[0].rest else { panic!("it slides") };
                let long = only.trains[0].length();
                only.trains[0].rest = Rest::At(from);
                only.trains.push(Train::new(rest, Rest::Free(from + long + gap, to + long)));
            })
        };
        assert_eq!((parted(0.0), parted(-0.01)), (None, Some(Flaw::Overlap(at))));
    }
}
