//! What is strung once for several strands: spacer bars, and beads with several holes.
//!
//! Each strand's list names what it goes through. The strands that name such a thing share it in groups of as many
//! as it has holes, in their order: the first of each is the same one, and so on.

use crate::units::Length;

use super::entries::{Entries, Index};
use super::finding::Finding;
use super::form::{Bar, Form};
use super::model::{Bit, Model, Strand, What};
use super::round::Stock;
use super::stock::Bead;

/// Something that is strung once for several strands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// A spacer bar.
    Bar(Index<Finding>),
    /// A bead with several holes.
    Bead(Index<Bead>),
}

impl Shared {
    /// Whether something strung is one.
    #[must_use]
    pub fn is(self, what: &What) -> bool {
        match (self, what) {
            (Self::Bar(at), What::Finding(other)) => at == *other,
            (Self::Bead(at), What::Bead(other)) => at == *other,
            _ => false,
        }
    }
}

/// The holes of something, side by side.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Bores {
    /// How many, at least two.
    pub count: u32,
    /// From the middle of one to that of the next.
    pub apart: Length,
}

impl Bores {
    /// How far each lies from the middle of all, in mm.
    #[must_use]
    pub fn across(self) -> Vec<f64> {
        let middle = f64::from(self.count - 1) / 2.0;
        (0..self.count).map(|hole| (f64::from(hole) - middle) * self.apart.value()).collect()
    }
}

impl Finding {
    /// Its holes, where it is a bar that is strung once for several strands.
    #[must_use]
    pub fn bores(&self) -> Option<Bores> {
        let Form::SpacerBar(Bar { holes, spacing, .. }) = self.form else { return None };
        (holes > 1).then_some(Bores { count: holes, apart: spacing })
    }
}

impl Stock<'_> {
    /// All that is strung once for several strands, each with its holes.
    pub fn shared(self) -> impl Iterator<Item = (Shared, Bores)> {
        let bars = self.findings.entries().filter_map(|(at, bar)| Some((Shared::Bar(at), bar.bores()?)));
        bars.chain(self.beads.entries().filter_map(|(at, bead)| Some((Shared::Bead(at), bead.bores?))))
    }

    /// What something strung is, where it is strung once for several strands.
    #[must_use]
    pub fn shared_by(self, what: &What) -> Option<(Shared, Bores)> {
        match *what {
            What::Finding(at) => Some((Shared::Bar(at), self.findings[at].bores()?)),
            What::Bead(at) => Some((Shared::Bead(at), self.beads[at].bores?)),
            _ => None,
        }
    }
}

/// A strand in a group that shares something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Sharer {
    /// Its index in the design.
    pub strand: Index<Strand>,
    /// How many of them it goes through.
    pub through: u64,
}

/// Where a strand goes through something that it shares with others.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Passage {
    /// Which of all that is shared ([`Model::shared`]), and how many of them the strand has passed.
    pub of: [usize; 2],
    /// How far its hole is from the first strand's, in mm.
    pub across: f64,
}

/// Strands that share something, in their order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sharers(pub Vec<Sharer>);

impl Sharers {
    /// How many they take: as many as the strand that goes through most.
    #[must_use]
    pub fn taken(&self) -> u64 {
        self.0.iter().map(|sharer| sharer.through).max().unwrap_or(0)
    }

    /// How often a strand goes through one of them.
    #[must_use]
    pub fn passes(&self) -> u64 {
        self.0.iter().map(|sharer| sharer.through).sum()
    }

    /// How many times more they are passed than they are there.
    #[must_use]
    pub fn again(&self) -> u64 {
        self.passes() - self.taken()
    }
}

impl Model {
    /// All that is strung once for several strands, each with its holes and the strands that share one.
    pub fn shared(&self) -> impl Iterator<Item = (Shared, Bores, Sharers)> {
        let groups = |(shared, bores): (Shared, Bores)| {
            sharing(&self.strands, shared, bores).into_iter().map(move |group| (shared, bores, group))
        };
        self.stock().shared().flat_map(groups)
    }

    /// What several strands do go through.
    pub fn joined(&self) -> impl Iterator<Item = (Shared, Bores, Sharers)> {
        self.shared().filter(|(.., sharers)| sharers.0.len() > 1)
    }

    /// Whether what closes them holds strands apart.
    #[must_use]
    pub fn are_held_apart(&self) -> bool {
        self.strands.last().is_some_and(|last| last.aside > Length::ZERO)
    }

    /// Which hole of something that it shares with others a strand goes through, from 1 for that of the
    /// innermost; nothing where it shares none.
    #[must_use]
    pub fn hole(&self, shared: Shared, strand: &Strand) -> Option<usize> {
        let bores = self.stock().shared().find_map(|(other, bores)| (other == shared).then_some(bores))?;
        let goes_through = |strand: &&Strand| strand.bits().any(|bit| shared.is(&bit.what));
        let through: Vec<_> = self.strands.iter().filter(goes_through).collect();
        let mut groups = through.chunks(bores.count as usize).filter(|group| group.len() > 1);
        let hole = groups.find_map(|group| group.iter().position(|other| std::ptr::eq(*other, strand)))?;
        Some(hole + 1)
    }

    /// Where a strand goes through what it shares with others: train, bit and passage, from its first end.
    #[must_use]
    pub fn passages(&self, strand: &Strand) -> Vec<(usize, usize, Passage)> {
        let mut passages = Vec::new();
        for (group, (shared, bores, sharers)) in self.shared().enumerate() {
            let hole = sharers.0.iter().position(|sharer| std::ptr::eq(&self.strands[sharer.strand], strand));
            let Some(hole) = hole.filter(|_| sharers.0.len() > 1) else { continue };
            let trains = strand.trains.iter().enumerate();
            let bits = trains.flat_map(|(train, of)| of.bits.iter().enumerate().map(move |(at, bit)| (train, at, bit)));
            let through = bits.filter(|(.., bit)| shared.is(&bit.what)).enumerate();
            let across = hole as f64 * bores.apart.value();
            passages.extend(through.map(|(nth, (train, bit, _))| (train, bit, Passage { of: [group, nth], across })));
        }
        passages
    }

    /// What a bit of a strand is, where the strand shares it with others, and its holes.
    #[must_use]
    pub fn shared_bit(&self, bit: &Bit, strand: &Strand) -> Option<(Shared, Bores)> {
        let (shared, bores) = self.stock().shared_by(&bit.what)?;
        self.hole(shared, strand).map(|_| (shared, bores))
    }

    /// How far along the limb each strand of a bracelet or anklet lies from the first: as far as bars or beads
    /// hold it, or else bead beside bead.
    #[must_use]
    pub fn abreast(&self) -> Vec<Length> {
        let apart = self.strands.windows(2).map(|pair| self.apart(&pair[0], &pair[1]));
        let add = |at: &mut Length, apart| {
            *at = *at + apart;
            Some(*at)
        };
        std::iter::once(Length::ZERO).chain(apart.scan(Length::ZERO, add)).take(self.strands.len()).collect()
    }

    /// From one strand to the next.
    fn apart(&self, inner: &Strand, outer: &Strand) -> Length {
        let holds = |(shared, _): &(Shared, Bores)| {
            self.hole(*shared, inner).zip(self.hole(*shared, outer)).is_some_and(|(a, b)| a + 1 == b)
        };
        match (outer.aside > inner.aside, self.stock().shared().find(holds)) {
            (true, _) => outer.aside - inner.aside,
            (false, Some((_, bores))) => bores.apart,
            (false, None) => (self.breadth(inner) + self.breadth(outer)) * 0.5,
        }
    }

    /// How broad a strand is with its broadest bead.
    fn breadth(&self, strand: &Strand) -> Length {
        let beads = strand.bits().filter_map(|bit| bit.what.bead()).map(|bead| self.beads[bead].across);
        beads.fold(strand.cord_width(self), Length::max)
    }
}

fn sharing(strands: &Entries<Strand>, shared: Shared, bores: Bores) -> Vec<Sharers> {
    let through = |strand: &Strand| strand.bits().filter(|bit| shared.is(&bit.what)).count() as u64;
    let all = strands.entries().map(|(at, strand)| Sharer { strand: at, through: through(strand) });
    let sharers: Vec<_> = all.filter(|sharer| sharer.through > 0).collect();
    sharers.chunks(bores.count as usize).map(|group| Sharers(group.to_vec())).collect()
}

/// Gives each strand its share of the mass of what it shares with others.
pub fn share_mass(strands: &mut Entries<Strand>, stock: Stock<'_>) {
    for (shared, bores) in stock.shared() {
        let mass = match shared {
            Shared::Bar(at) => *stock.findings[at].mass,
            Shared::Bead(at) => *stock.beads[at].mass,
        };
        for group in sharing(strands, shared, bores) {
            let share = mass.value() * group.taken() as f64 / group.passes() as f64;
            for sharer in &group.0 {
                let bits = strands[sharer.strand].trains.iter_mut().flat_map(|train| &mut train.bits);
                bits.filter(|bit| shared.is(&bit.what)).for_each(|bit| bit.mass = share);
            }
        }
    }
}
