//! What to string more or fewer of where beads differ from what the pattern says: so that the row keeps its pattern, and its
//! sides stay alike where they are.

use crate::design::{Bit, Design, LEAST_BARE, Phrase, Strand, What, taken_by};
use crate::pattern::Settle;
use crate::sheet::said::{Change, ChangePlace, WhenOff};
use crate::steps::chart;
use crate::units::INCH;

/// A longer repeat than an inch is not added whole, for beads are seldom off by half of that: an assumption.
const LONG: f64 = INCH;

/// What beads of other sizes ask for: where the strand's length follows from them, other counts; where it
/// is written, the bare cord gives way. Knots that are tied stay, so that a bead of a knotted row changes at the last end alone.
pub fn remedy(design: &Design, strand: &Strand, is_held: bool) -> WhenOff {
    if strand.settle != Settle::Fill && strand.bare() >= LEAST_BARE {
        return WhenOff::BareCord;
    }
    let is_knotted = strand.bits().any(|bit| bit.what == What::Knot);
    match change(design, strand, is_held) {
        Change::Beads(bead, _) if is_knotted => WhenOff::Knots(Change::Beads(bead, ChangePlace::LastEnd)),
        change if is_knotted => WhenOff::Knots(change),
        change => WhenOff::Counts(change),
    }
}

/// What of a row there may be more or less of.
fn change(design: &Design, strand: &Strand, is_held: bool) -> Change {
    let row = chart::strung(strand);
    let (inward, mirrored): (Vec<_>, _) = match row.as_slice() {
        [Phrase::Mirror(side, _)] => (side.iter().collect(), true),
        row => (row.iter().rev().collect(), false),
    };
    let alone =
        if mirrored || (is_even(strand) && row.len() > 1) { ChangePlace::BothEnds } else { ChangePlace::LastEnd };
    let of = |(at, phrase): (usize, &&Phrase)| match phrase {
        Phrase::Run(count, bead) if *count > 1 && !is_of_repeat(&inward[at..]) => {
            Some(Change::Beads(*bead, alone.clone()))
        }
        Phrase::Times(_, list) if !mirrored && !is_held && taken(design, list) > LONG => Some(Change::InOrder),
        Phrase::Times(_, list) => Some(Change::Repeats(list.clone(), place(&inward[..at], mirrored))),
        Phrase::Ordered(list) => Some(at_end(list, mirrored, alone.clone())),
        _ => None,
    };
    let found = inward.iter().enumerate().find_map(of);
    found.unwrap_or(Change::Any(alone))
}

/// Where a repeat stands, given what is beyond it from an end inward.
fn place(beyond: &[&Phrase], mirrored: bool) -> ChangePlace {
    match (beyond, mirrored) {
        ([], false) => ChangePlace::LastEnd,
        ([], true) => ChangePlace::BothEnds,
        (_, true) => ChangePlace::BothSides,
        (after, false) => ChangePlace::Before(after.iter().rev().map(|phrase| (*phrase).clone()).collect()),
    }
}

/// A row without a pattern goes on as it ends, where it ends with several of a bead.
fn at_end(list: &[Phrase], mirrored: bool, place: ChangePlace) -> Change {
    let end = if mirrored { list.first() } else { list.last() };
    match end {
        Some(Phrase::Run(count, bead)) if *count > 1 => Change::Beads(*bead, place),
        _ => Change::Any(place),
    }
}

/// Whether the first of phrases belongs to the repeat that comes next: it is said in that, too.
fn is_of_repeat(inward: &[&Phrase]) -> bool {
    let mut lists =
        inward.iter().filter_map(|phrase| if let Phrase::Times(_, list) = phrase { Some(list) } else { None });
    lists.next().is_some_and(|list| list.contains(inward[0]))
}

/// How much cord the beads of phrases take in mm, each among its own kind.
fn taken(design: &Design, phrases: &[Phrase]) -> f64 {
    let of = |phrase: &Phrase| match phrase {
        Phrase::Run(count, bead) => f64::from(*count) * taken_by(&design.beads[*bead], Some(&design.beads[*bead])),
        Phrase::Times(count, list) => f64::from(*count) * taken(design, list),
        _ => 0.0,
    };
    phrases.iter().map(of).sum()
}

/// Whether a strand reads alike from both ends.
fn is_even(strand: &Strand) -> bool {
    let is_strung = |bit: &&Bit| bit.what != What::Gap;
    let row: Vec<_> = strand.bits().filter(is_strung).map(|bit| &bit.what).collect();
    row.iter().eq(row.iter().rev())
}
