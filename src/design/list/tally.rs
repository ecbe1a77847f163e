//! How much a list strings and how much of it is written, before any of it is strung.

use std::convert::Infallible;

use crate::source::At;

use super::{Along, Item, Own, Threaded};

/// How much a list strings, and how much is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// How many things are strung.
    pub things: u64,
    /// How many of them are findings among the beads.
    pub findings: u64,
    /// How many entries are written, a row of beads that follow no repeat as if each of them was.
    pub written: u64,
}

impl Tally {
    /// One entry that strings one thing.
    pub const ONE: Self = Self { things: 1, findings: 0, written: 1 };
    /// An entry that strings nothing by itself.
    const FRAME: Self = Self { things: 0, ..Self::ONE };

    /// Both.
    pub const fn and(self, other: Self) -> Self {
        Self {
            things: self.things.saturating_add(other.things),
            findings: self.findings.saturating_add(other.findings),
            written: self.written.saturating_add(other.written),
        }
    }

    /// Strung so many times, and written once.
    const fn times(self, times: u32) -> Self {
        let times = times as u64;
        Self {
            things: self.things.saturating_mul(times),
            findings: self.findings.saturating_mul(times),
            written: self.written,
        }
    }
}

/// What can be counted when `fill` means so many times.
pub trait Counted {
    /// How much it strings.
    fn tally(&self, fill: u32) -> Tally;
}

/// All of a list.
pub fn sum<'i, T: Counted + 'i>(items: impl IntoIterator<Item = &'i At<T>>, fill: u32) -> Tally {
    items.into_iter().fold(Tally::default(), |all, item| all.and(item.value.tally(fill)))
}

impl Counted for Own<'_> {
    fn tally(&self, fill: u32) -> Tally {
        match self {
            Self::Entry(entry) => entry.tally(fill),
            Self::Row(rule) => Tally { things: rule.count(fill), findings: 0, written: rule.written(fill) },
        }
    }
}

impl<More: Counted> Counted for Item<'_, More> {
    fn tally(&self, fill: u32) -> Tally {
        match self {
            Self::Run(count, piece) => {
                let things = u64::from(*count);
                Tally { things, findings: if matches!(piece, Threaded::Finding(_)) { things } else { 0 }, written: 1 }
            }
            Self::Space(_) => Tally::ONE,
            Self::Row(rule, step) => Tally { things: rule.count(*step), findings: 0, written: rule.written(*step) },
            Self::Repeat(times, of) => Tally::FRAME.and(sum(of, fill).times(*times)),
            Self::Mirror(side, about) => Tally::FRAME.and(sum(side, fill).times(2)).and(sum(about, fill)),
            Self::More(more) => more.tally(fill),
        }
    }
}

impl Counted for Along<'_> {
    fn tally(&self, fill: u32) -> Tally {
        match self {
            Self::Fill(of) => Tally::FRAME.and(sum(of, fill).times(fill)),
            Self::Links(_) | Self::Knot(_) => Tally::ONE,
            Self::Branch(branch) => Tally::ONE.and(sum(&branch.of, fill)),
        }
    }
}

impl Counted for Infallible {
    fn tally(&self, _: u32) -> Tally {
        match *self {}
    }
}
