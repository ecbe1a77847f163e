//! Spacer bars: one bar holds as many strands as it has holes.
//!
//! Each strand's list names the bars that it goes through. The strands that name a bar share it in
//! groups of as many as it has holes, in their order: the first bar of each is the same bar, and so on.

use crate::units::Length;

use super::entries::{Entries, Index};
use super::finding::Finding;
use super::form::{Bar, Form};
use super::model::{Design, Strand, What};

impl Finding {
    /// Its sizes, where it is a bar that is strung once for several strands.
    #[must_use]
    pub fn shared_bar(&self) -> Option<&Bar> {
        if let Form::SpacerBar(bar) = &self.form { Some(bar).filter(|bar| bar.holes > 1) } else { None }
    }

    /// Whether it is strung once for several strands.
    #[must_use]
    pub fn is_shared(&self) -> bool {
        self.shared_bar().is_some()
    }
}

/// A strand in a group that shares bars.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sharer {
    /// Its index in the design.
    pub strand: usize,
    /// How many of the bars it goes through.
    pub bars: u64,
}

/// Strands that share a bar, in their order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sharers(pub Vec<Sharer>);

impl Sharers {
    /// How many bars they take: as many as the strand that goes through most.
    #[must_use]
    pub fn bars(&self) -> u64 {
        self.0.iter().map(|sharer| sharer.bars).max().unwrap_or(0)
    }

    /// How often a strand goes through one of them.
    #[must_use]
    pub fn passes(&self) -> u64 {
        self.0.iter().map(|sharer| sharer.bars).sum()
    }
}

impl Design {
    /// The strands that go through a finding, in the groups that share one: alone, but for a bar.
    #[must_use]
    pub fn sharing(&self, finding: Index<Finding>) -> Vec<Sharers> {
        sharing(&self.strands, finding, self.findings[finding].shared_bar().map_or(1, |bar| bar.holes))
    }

    /// Which hole of a bar that it shares with others a strand goes through, from 1 for that of the
    /// innermost; nothing where it shares none.
    #[must_use]
    pub fn hole(&self, finding: Index<Finding>, strand: &Strand) -> Option<usize> {
        let is_strand = |sharer: &Sharer| std::ptr::eq(&self.strands[sharer.strand], strand);
        let groups = self.sharing(finding).into_iter().filter(|group| group.0.len() > 1);
        let hole = groups.filter_map(|group| group.0.iter().position(is_strand)).next()?;
        Some(hole + 1)
    }

    /// How far along the limb each strand of a bracelet or anklet lies from the first: as far as bars hold
    /// it, or else bead beside bead.
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
        let through =
            |bar: &Index<Finding>| self.hole(*bar, inner).zip(self.hole(*bar, outer)).is_some_and(|(a, b)| a + 1 == b);
        let bar = self.findings.indices().find(through).and_then(|bar| self.findings[bar].bar());
        match (outer.aside > inner.aside, bar) {
            (true, _) => outer.aside - inner.aside,
            (false, Some(bar)) => bar.spacing,
            (false, None) => (self.breadth(inner) + self.breadth(outer)) * 0.5,
        }
    }

    /// How broad a strand is with its broadest bead.
    fn breadth(&self, strand: &Strand) -> Length {
        let beads = strand.bits().filter_map(|bit| bit.what.bead()).map(|bead| self.beads[bead].across);
        beads.fold(strand.cord_width(self), Length::max)
    }
}

fn sharing(strands: &[Strand], finding: Index<Finding>, holes: u32) -> Vec<Sharers> {
    let bars = |strand: &Strand| strand.bits().filter(|bit| bit.what == What::Finding(finding)).count() as u64;
    let all = strands.iter().enumerate().map(|(at, strand)| Sharer { strand: at, bars: bars(strand) });
    let sharers: Vec<_> = all.filter(|sharer| sharer.bars > 0).collect();
    sharers.chunks(holes as usize).map(|group| Sharers(group.to_vec())).collect()
}

/// Gives each strand its share of the mass of the bars that it goes through.
pub fn share_mass(strands: &mut [Strand], findings: &Entries<Finding>) {
    for (at, finding) in findings.entries() {
        let Some(bar) = finding.shared_bar() else { continue };
        for group in sharing(strands, at, bar.holes) {
            let share = finding.mass.value() * group.bars() as f64 / group.passes() as f64;
            for sharer in &group.0 {
                let bits = strands[sharer.strand].trains.iter_mut().flat_map(|train| &mut train.bits);
                bits.filter(|bit| bit.what == What::Finding(at)).for_each(|bit| bit.mass = share);
            }
        }
    }
}
