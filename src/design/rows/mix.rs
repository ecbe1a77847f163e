//! Beads in no order, which is always the same one.
//!
//! Counts follow from parts by largest remainder: each bead has the whole part of n × its parts / all parts, and
//! what is left goes to the largest remainders, of equal ones to those written first. The row begins as one that
//! keeps equal beads apart: at each place the bead stands that has the least room left to be late,
//! places left − ((left of it − 1) × (apart + 1) + 1). That finds a row wherever there is one, if all are kept equally
//! far apart. Then two places, drawn by the dice, change their beads 20 times for each bead, as far as they stay
//! apart: all rows that can be reached so are equally likely.

use crate::geometry::noise::Dice;
use crate::pattern::{Apart, Random, Times};
use crate::remark::said::rows::{MixKind, Rows};
use crate::remark::{Remark, near};
use crate::source::Place;

/// How often places are changed for each bead, beyond [`LEAST_CHANGES`].
const CHANGES: usize = 20;
/// How often places are changed in the shortest row, where few changes keep equal beads apart.
const LEAST_CHANGES: usize = 2000;

/// How many of each kind stand among so many beads, by parts.
pub fn counts(parts: &[u32], beads: u32) -> Vec<u32> {
    let all: u64 = parts.iter().map(|part| u64::from(*part)).sum::<u64>().max(1);
    let quota = |part: &u32| u64::from(*part) * u64::from(beads);
    let mut counts: Vec<u64> = parts.iter().map(|part| quota(part) / all).collect();
    let left = u64::from(beads).saturating_sub(counts.iter().sum());
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|kind| std::cmp::Reverse(quota(&parts[*kind]) % all));
    // Fewer are left than there are remainders above nothing.
    order.into_iter().zip(0..left).for_each(|(kind, _)| counts[kind] += 1);
    counts.into_iter().map(|count| u32::try_from(count).unwrap_or(u32::MAX)).collect()
}

/// Kinds of bead, counted and kept apart.
struct Mix {
    counts: Vec<u32>,
    /// How many others stand between two of each.
    apart: Vec<usize>,
}

/// The row of a mix of so many beads, each by its place among those written; kind by kind where none keeps them apart.
pub fn order(random: &Random, beads: u32) -> Vec<usize> {
    let seed = random.seed.as_ref().map_or(1, |seed| seed.value.0);
    match started(random, beads) {
        Ok((mix, row)) => mix.shuffled(row, Dice::new(u64::from(seed))),
        Err(_) => {
            let counts = counts(&parts(random), beads).into_iter().enumerate();
            counts.flat_map(|(kind, count)| std::iter::repeat_n(kind, count as usize)).collect()
        }
    }
}

/// Whether a row of so many beads can be made of a mix.
pub fn stands(random: &Random, beads: u32) -> bool {
    started(random, beads).is_ok()
}

/// Why no row can be made of a mix, if none can; of one that fills its strand, why none can of many beads.
pub fn wrong(random: &Random) -> Option<Remark> {
    match random.random.value {
        Times::Count(beads) => started(random, beads).err(),
        Times::Fill => many(random).err(),
    }
}

/// A mix of so many beads and a row of it that keeps all apart.
fn started(random: &Random, beads: u32) -> Result<(Mix, Vec<usize>), Remark> {
    let mix = Mix::new(random, beads)?;
    let row = mix.start().ok_or_else(|| mix.crowded(random))?;
    Ok((mix, row))
}

/// However many beads there are, each kind stands apart in a long row only if it has no more than its share of all
/// parts.
fn many(random: &Random) -> Result<(), Remark> {
    let (parts, apart) = (parts(random), apart(random)?);
    let all: u64 = parts.iter().map(|part| u64::from(*part)).sum();
    let crowds = |kind: &usize| u64::from(parts[*kind]) * (apart[*kind] as u64 + 1) > all;
    let Some(kind) = (0..parts.len()).find(crowds) else { return Ok(()) };
    let (part, apart) = (parts[kind], apart[kind] + 1);
    let wrong = Rows::TooLargePart { part, all, apart, kind: named(random, kind) };
    Err(Remark::new(wrong).at(apart_place(random)))
}

fn parts(random: &Random) -> Vec<u32> {
    random.of.entries.iter().map(|(_, part)| part.value.0).collect()
}

impl Mix {
    fn new(random: &Random, beads: u32) -> Result<Self, Remark> {
        let counts = counts(&parts(random), beads);
        if let Some(none) = counts.iter().position(|count| *count == 0) {
            let wrong = Rows::NoneOf { beads, id: named(random, none).id };
            return Err(Remark::new(wrong).at(random.random.place));
        }
        Ok(Self { apart: apart(random)?, counts })
    }

    /// A row that keeps all apart, whose beads come as late as they may.
    fn start(&self) -> Option<Vec<usize>> {
        let mut left = self.counts.clone();
        let mut last = vec![None; left.len()];
        let places = self.beads();
        let mut row = Vec::with_capacity(places);
        for at in 0..places {
            let free = |kind: &usize| left[*kind] > 0 && last[*kind].is_none_or(|last| at - last > self.apart[*kind]);
            let takes = |kind: usize| (left[kind] as usize - 1) * (self.apart[kind] + 1) + 1;
            let most_pressing = |kind: &usize| std::cmp::Reverse((takes(*kind), left[*kind]));
            let kind = (0..left.len()).filter(free).min_by_key(most_pressing)?;
            left[kind] -= 1;
            last[kind] = Some(at);
            row.push(kind);
        }
        Some(row)
    }

    fn shuffled(&self, mut row: Vec<usize>, mut dice: Dice) -> Vec<usize> {
        let places = row.len();
        for _ in 0..CHANGES * places + LEAST_CHANGES {
            let (one, other) = (dice.below(places), dice.below(places));
            row.swap(one, other);
            if !(self.keeps(&row, one) && self.keeps(&row, other)) {
                row.swap(one, other);
            }
        }
        row
    }

    /// Whether the bead of a place has none of its kind too near.
    fn keeps(&self, row: &[usize], at: usize) -> bool {
        let (kind, apart) = (row[at], self.apart[row[at]]);
        let near = &row[at.saturating_sub(apart)..row.len().min(at + apart + 1)];
        near.iter().filter(|other| **other == kind).count() == 1
    }

    fn beads(&self) -> usize {
        self.counts.iter().map(|count| *count as usize).sum()
    }

    /// Why no row keeps the beads apart.
    fn crowded(&self, random: &Random) -> Remark {
        let beads = self.beads();
        let most = |kind: usize| beads.div_ceil(self.apart[kind] + 1);
        let crowds = |kind: &usize| self.counts[*kind] as usize > most(*kind);
        let wrong = match (0..self.counts.len()).find(crowds) {
            Some(kind) => {
                let (count, most) = (self.counts[kind], most(kind));
                Rows::TooManyOf { beads, count, most, kind: named(random, kind) }
            }
            None => Rows::NoOrder,
        };
        Remark::new(wrong).at(apart_place(random))
    }
}

/// Where a mix says how far apart its beads are kept, or else how many there are.
fn apart_place(random: &Random) -> Place {
    random.apart.as_ref().map_or(random.random.place, |apart| apart.place)
}

/// A kind of bead by its place among those written, and the others.
fn named(random: &Random, kind: usize) -> MixKind {
    let id = random.of.ids().nth(kind).unwrap_or_default();
    let others = random.of.ids().filter(|other| *other != id).map(str::to_owned).collect();
    MixKind { id: id.to_owned(), others }
}

/// How many others stand between two of each kind; 1 where the pattern does not say. A kind of a single bead has no
/// neighbour to keep from.
///
/// # Errors
///
/// A mix of no beads, and a bead that is kept apart and not in it.
fn apart(random: &Random) -> Result<Vec<usize>, Remark> {
    let kinds = random.of.entries.len();
    if kinds == 0 {
        return Err(Remark::new(Rows::NoMix).at(random.random.place));
    }
    match random.apart.as_ref().map(|apart| &apart.value) {
        None => Ok(vec![1; kinds]),
        Some(Apart::All(all)) => Ok(vec![*all as usize; kinds]),
        Some(Apart::Each(each)) => {
            let stray = each.entries.iter().find(|(key, _)| random.of.get(&key.value).is_none());
            if let Some((key, _)) = stray {
                let known = random.of.ids().map(str::to_owned).collect();
                let meant = near(&key.value, random.of.ids());
                return Err(Remark::new(Rows::NotInMix { id: key.value.clone(), known, meant }).at(key.place));
            }
            Ok(random.of.ids().map(|id| each.get(id).map_or(0, |at| at.value.0 as usize)).collect())
        }
    }
}
