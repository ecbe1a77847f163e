//! Where a stretch of a strand's list comes to rest on its cord.

use crate::pattern::Settle;

use super::list::{Given, Stretch};
use super::model::{Bit, Rest, Train, What};
use super::row;

/// Lengths that differ by less are the same: a thousandth of what a ruler shows.
pub const SAME: f64 = 1e-3;

/// Lays a stretch into a window of stations, or says by how many mm it is too long.
pub fn rest(
    stretch: &Stretch<'_>,
    given: Given<'_>,
    settle: Settle,
    fill: u32,
    (from, to): (f64, f64),
) -> Result<Vec<Train>, f64> {
    let mut bits = row::bits(&stretch.row(fill, given), &given.shelf.beads);
    if settle == Settle::Fixed {
        count_from_loop(&mut bits, from);
    }
    let length: f64 = bits.iter().map(Bit::length).sum();
    let spare = to - from - length;
    if spare < -SAME {
        return Err(-spare);
    }
    let rest = match settle {
        Settle::Slide if spare > SAME => Rest::Free(from, from + spare),
        Settle::Slide | Settle::Fill | Settle::Fixed => Rest::At(from),
        Settle::Spread => return spread(stretch, given, fill, (from, to)),
    };
    Ok(vec![Train { bits, rest }])
}

/// A space that opens a fixed row is counted from the first end's loop: what closes the end lies in it.
fn count_from_loop(bits: &mut [Bit], takes: f64) {
    if let Some(space) = bits.first_mut().filter(|bit| bit.what == What::Gap && bit.length() >= takes) {
        space.before -= takes / 2.0;
        space.after -= takes / 2.0;
    }
}

/// Equal bare cord before, between and after the groups, or by how much they are too long: apart, beads at their ends take
/// what they do alone, which may be more than beside one another.
fn spread(stretch: &Stretch<'_>, given: Given<'_>, fill: u32, (from, to): (f64, f64)) -> Result<Vec<Train>, f64> {
    let groups = stretch.groups(fill, given);
    let rows: Vec<_> = groups.iter().map(|group| row::bits(group, &given.shelf.beads)).collect();
    let taken: f64 = rows.iter().flatten().map(Bit::length).sum();
    let spare = to - from - taken;
    if spare < -SAME {
        return Err(-spare);
    }
    let gap = (spare / (rows.len() + 1) as f64).max(0.0);
    let mut at = from;
    let mut train = |bits: Vec<Bit>| {
        at += gap;
        let train = Train { bits, rest: Rest::At(at) };
        at += train.length();
        train
    };
    Ok(rows.into_iter().map(&mut train).collect())
}
