//! What a list strings, one by one.

use std::convert::Infallible;

use crate::source::{At, Place};
use crate::units::Length;

use crate::design::model::{Bit, Dangle, What};
use crate::design::row::{self, Strung};
use crate::design::rows::Rule;

use super::{Along, Branch, Given, Item, Own, Threaded};

/// What can be strung when `fill` means so many times.
pub trait Strings {
    /// What it strings, of which what itself strings has no place yet.
    fn strung(&self, fill: u32, given: Given<'_>) -> Vec<Strung>;
}

/// All of a list, without the strand's own knots.
pub fn row<T: Strings>(items: &[At<T>], fill: u32, given: Given<'_>) -> Vec<Strung> {
    items.iter().flat_map(|item| placed(&item.value, item.place, fill, given)).collect()
}

/// What an entry strings, each with the place where it is said: its own, or that of an entry within.
pub fn placed<T: Strings>(entry: &T, place: Place, fill: u32, given: Given<'_>) -> impl Iterator<Item = Strung> {
    let own = entry.strung(fill, given).into_iter();
    own.map(move |one| if one.place.is_nowhere() { one.at(place) } else { one })
}

impl Strings for Own<'_> {
    fn strung(&self, fill: u32, given: Given<'_>) -> Vec<Strung> {
        match self {
            Self::Entry(entry) => entry.strung(fill, given),
            Self::Row(rule) => beads(rule, fill, given),
        }
    }
}

impl<More: Strings> Strings for Item<'_, More> {
    fn strung(&self, fill: u32, given: Given<'_>) -> Vec<Strung> {
        match self {
            Self::Run(count, piece) => vec![piece.strung(given); *count as usize],
            Self::Space(length) => vec![bare(What::Gap, *length)],
            Self::Row(rule, step) => beads(rule, *step, given),
            Self::Repeat(times, of) => again(&row(of, fill, given), *times),
            Self::Mirror(side, about) => {
                let side = row(side, fill, given);
                let about = row(about, fill, given);
                side.iter().cloned().chain(about).chain(side.iter().rev().cloned()).collect()
            }
            Self::More(more) => more.strung(fill, given),
        }
    }
}

impl Strings for Along<'_> {
    fn strung(&self, fill: u32, given: Given<'_>) -> Vec<Strung> {
        match self {
            Self::Fill(of) => again(&row(of, fill, given), fill),
            Self::Links(links) => vec![bare(What::Gap, given.link.unwrap_or_default() * f64::from(*links))],
            Self::Knot(length) => vec![bare(What::Knot, *length)],
            Self::Branch(branch) => vec![branch.strung(given)],
        }
    }
}

impl Strings for Infallible {
    fn strung(&self, _: u32, _: Given<'_>) -> Vec<Strung> {
        match *self {}
    }
}

impl Threaded {
    fn strung(self, given: Given<'_>) -> Strung {
        match self {
            Self::Bead(bead) => Strung::bead(bead, &given.shelf.beads),
            Self::Finding(finding) => Strung::finding(finding, &given.shelf.findings),
        }
    }
}

impl Branch<'_> {
    /// A branch takes a link of a chain whose links are known, else as much cord as its pin's loop is thick, and
    /// hangs below it.
    fn strung(&self, given: Given<'_>) -> Strung {
        let finding = &given.shelf.findings[self.on];
        // Nothing on a branch fills.
        let strung = row(&self.of, 1, given);
        let bits = row::bits(&strung, &given.shelf.beads);
        // Chain of no one length carries no branch.
        let own = finding.mass_of_one().map_or(0.0, |mass| mass.value());
        let mass = own + strung.iter().map(|one| one.mass).sum::<f64>();
        let hanger = finding.hangs().unwrap_or_default() + finding.foot();
        let drop = hanger.value() - sunk(&strung, given) + bits.iter().map(Bit::length).sum::<f64>();
        let takes = given.link.or_else(|| finding.wire().map(|wire| *wire)).unwrap_or_default();
        Strung::other(What::Dangle(Dangle { on: Some(self.on), bits, drop }), takes.value(), mass)
    }
}

/// How far what hangs by its hole stands up into the ring or bail that goes through it.
fn sunk(strung: &[Strung], given: Given<'_>) -> f64 {
    let bead = strung.first().and_then(|one| one.what.bead()).map(|at| &given.shelf.beads[at]);
    bead.map_or(0.0, |bead| bead.above_hole().value())
}

fn beads(rule: &Rule<'_>, step: u32, given: Given<'_>) -> Vec<Strung> {
    rule.beads(step).into_iter().map(|bead| Strung::bead(bead, &given.shelf.beads)).collect()
}

fn again(row: &[Strung], times: u32) -> Vec<Strung> {
    vec![row; times as usize].concat()
}

const fn bare(what: What, length: Length) -> Strung {
    Strung::other(what, length.value(), 0.0)
}
