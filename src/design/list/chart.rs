//! A list as the maker says it.

use std::convert::Infallible;

use crate::source::At;

use crate::design::model::Phrase;

use super::{Along, Item, Own, Threaded};

/// What can be said when `fill` means so many times.
pub trait Tell {
    /// As the maker says it.
    fn phrase(&self, fill: u32) -> Phrase;
}

/// A list, entry by entry.
pub fn phrases<T: Tell>(items: &[At<T>], fill: u32) -> Vec<Phrase> {
    items.iter().map(|item| item.value.phrase(fill)).collect()
}

impl Tell for Own<'_> {
    fn phrase(&self, fill: u32) -> Phrase {
        match self {
            Self::Entry(entry) => entry.phrase(fill),
            Self::Row(rule) => rule.phrase(fill),
        }
    }
}

impl<More: Tell> Tell for Item<'_, More> {
    fn phrase(&self, fill: u32) -> Phrase {
        match self {
            Self::Run(count, Threaded::Bead(bead)) => Phrase::Run(*count, *bead),
            Self::Run(1, Threaded::Finding(finding)) => Phrase::Finding(*finding),
            Self::Run(count, Threaded::Finding(finding)) => Phrase::Times(*count, vec![Phrase::Finding(*finding)]),
            Self::Space(length) => Phrase::Gap(*length),
            Self::Row(rule, step) => rule.phrase(*step),
            Self::Repeat(times, of) => Phrase::Times(*times, phrases(of, fill)),
            Self::Mirror(side, about) => Phrase::Mirror(phrases(side, fill), phrases(about, fill)),
            Self::More(more) => more.phrase(fill),
        }
    }
}

impl Tell for Along<'_> {
    fn phrase(&self, fill: u32) -> Phrase {
        match self {
            Self::Fill(of) => Phrase::Times(fill, phrases(of, fill)),
            Self::Links(links) => Phrase::Links(*links),
            Self::Knot(_) => Phrase::Knot,
            Self::Branch(branch) => Phrase::Dangle(Some(branch.on), phrases(&branch.of, fill)),
        }
    }
}

impl Tell for Infallible {
    fn phrase(&self, _: u32) -> Phrase {
        match *self {}
    }
}
