//! The row of a strand as the word chart tells it, in as few phrases as its writing allows: neighbouring runs of one bead are
//! added, repeats of repeats multiplied, lists written out three times or more told as repeats. The row stays the same. Its
//! words are in [`super::english::chart`].

use crate::design::{Design, LEAST_BARE, Phrase, Rest, Strand, What};
use crate::pattern::Settle;
use crate::units::Length;

/// Longest list, in phrases, that is told as a repeat where it is written out.
const LONGEST_FOLD: usize = 12;
/// How many beads of a row without a pattern are told together.
pub const TEN: usize = 10;
/// How often a list must be written out to be told as a repeat.
const LEAST_FOLD: usize = 3;

/// What the chart of a strand tells; of one on a pin what is on that, from its loop down.
#[must_use]
pub fn whole(design: &Design, strand: &Strand) -> Vec<Phrase> {
    match strand.chart.as_slice() {
        [Phrase::Dangle(Some(_), list)] if strand.is_on_pin(design) => told(strand, list),
        _ => told(strand, &bared(strand)),
    }
}

/// The same without what its ends meet in, which is not strung with the row.
#[must_use]
pub fn strung(strand: &Strand) -> Vec<Phrase> {
    let row = bared(strand).into_iter().filter(|phrase| !matches!(phrase, Phrase::Dangle(None, _)));
    told(strand, &row.collect::<Vec<_>>())
}

fn told(strand: &Strand, written: &[Phrase]) -> Vec<Phrase> {
    if strand.settle == Settle::Spread { groups(written) } else { simple(written) }
}

/// The row as written, but for a space that opens a fixed one: it is counted from the first end's loop, and
/// what of it is bare is what the end's findings leave; then what is left bare at the last end is told too.
fn bared(strand: &Strand) -> Vec<Phrase> {
    let first = strand.bits().next().filter(|bit| strand.settle == Settle::Fixed && bit.what == What::Gap);
    match (strand.chart.split_first(), first) {
        (Some((Phrase::Gap(_), rest)), Some(bare)) => {
            let first = Phrase::Gap(Length::mm(bare.length()));
            std::iter::once(first).chain(rest.iter().cloned()).chain(left_bare(strand)).collect()
        }
        _ => strand.chart.clone(),
    }
}

/// The bare cord between a fixed row and the last end's findings, where a ruler shows it.
fn left_bare(strand: &Strand) -> Option<Phrase> {
    let train = strand.trains.last()?;
    let Rest::At(start) = train.rest else { return None };
    let left = strand.finished - strand.ends[1].takes - Length::mm(start + train.length());
    (left >= LEAST_BARE && !matches!(strand.chart.last(), Some(Phrase::Gap(_)))).then_some(Phrase::Gap(left))
}

/// The same row in fewer phrases.
#[must_use]
pub fn simple(phrases: &[Phrase]) -> Vec<Phrase> {
    folded(&joined(phrases))
}

/// Tells a list that is written out again and again as a repeat.
fn folded(row: &[Phrase]) -> Vec<Phrase> {
    let mut folded = Vec::new();
    let mut rest = row;
    while let Some((first, after)) = rest.split_first() {
        let ways = (1..=LONGEST_FOLD.min(rest.len())).map(|length| (length, repeats(rest, length)));
        // Of folds that tell equally much, the first has the shortest list.
        let best = ways.filter(|(_, often)| *often >= LEAST_FOLD).rev().max_by_key(|(length, often)| length * often);
        match best.and_then(|(length, often)| Some((length * often, u32::try_from(often).ok()?, rest.get(..length)?))) {
            Some((told, often, list)) => {
                times(often, list.to_vec(), &mut folded);
                // `told` phrases were found to stand here, so the rest begins no later than the end.
                rest = &rest[told..];
            }
            None => {
                push(first.clone(), &mut folded);
                rest = after;
            }
        }
    }
    folded
}

/// How often the first so many phrases stand at the row's beginning.
fn repeats(row: &[Phrase], length: usize) -> usize {
    let (list, _) = row.split_at(length);
    row.chunks_exact(length).take_while(|chunk| *chunk == list).count()
}

/// The same row without repeats of repeats, or runs beside runs of the same bead.
fn joined(phrases: &[Phrase]) -> Vec<Phrase> {
    let mut row = Vec::new();
    for phrase in phrases {
        match phrase {
            Phrase::Times(count, list) => times(*count, simple(list), &mut row),
            Phrase::Mirror(side, middle) => match (simple(side), simple(middle)) {
                (side, middle) if side.is_empty() => middle.into_iter().for_each(|phrase| push(phrase, &mut row)),
                (side, middle) => row.push(Phrase::Mirror(side, middle)),
            },
            Phrase::Dangle(on, list) => row.push(Phrase::Dangle(*on, simple(list))),
            // One that is short, or turns but once, needs no tens.
            Phrase::Ordered(list) if things(list) <= TEN || list.len() <= 2 => {
                list.iter().for_each(|phrase| push(phrase.clone(), &mut row));
            }
            other => push(other.clone(), &mut row),
        }
    }
    row
}

/// The row with its repeats left as they are, for a strand whose repeats are spread apart.
fn groups(phrases: &[Phrase]) -> Vec<Phrase> {
    let group = |phrase: &Phrase| match phrase {
        Phrase::Times(count, list) => vec![Phrase::Times(*count, simple(list))],
        other => simple(std::slice::from_ref(other)),
    };
    phrases.iter().flat_map(group).collect()
}

/// Adds a repeat of a list that is already simple.
fn times(count: u32, list: Vec<Phrase>, row: &mut Vec<Phrase>) {
    match (count, list.as_slice()) {
        (0, _) | (_, []) => {}
        (1, list) => list.iter().for_each(|phrase| push(phrase.clone(), row)),
        (count, [Phrase::Run(run, bead)]) => push(Phrase::Run(count.saturating_mul(*run), *bead), row),
        (count, [Phrase::Times(inner, list)]) => push(Phrase::Times(count.saturating_mul(*inner), list.clone()), row),
        _ => push(Phrase::Times(count, list), row),
    }
}

/// Adds a phrase, joined to the last one where both say the same thing.
pub fn push(phrase: Phrase, row: &mut Vec<Phrase>) {
    match (row.last_mut(), &phrase) {
        (_, Phrase::Run(0, _)) => {}
        (Some(Phrase::Run(count, bead)), Phrase::Run(more, same)) if bead == same => *count += more,
        (Some(Phrase::Times(count, list)), Phrase::Times(more, same)) if list == same => *count += more,
        _ => row.push(phrase),
    }
}

/// How many things phrases say.
pub fn things(phrases: &[Phrase]) -> usize {
    count(phrases, |_| true)
}

/// How many beads on the cord phrases say.
pub fn beads(phrases: &[Phrase]) -> usize {
    count(phrases, |phrase| matches!(phrase, Phrase::Run(..)))
}

/// How many things of some sort phrases say.
pub fn count(phrases: &[Phrase], is: fn(&Phrase) -> bool) -> usize {
    let of = |phrase: &Phrase| match phrase {
        Phrase::Times(times, list) => *times as usize * count(list, is),
        Phrase::Mirror(side, middle) => 2 * count(side, is) + count(middle, is),
        Phrase::Ordered(list) => count(list, is),
        Phrase::Run(beads, _) => usize::from(is(phrase)) * *beads as usize,
        one => usize::from(is(one)),
    };
    phrases.iter().map(of).sum()
}
