//! How often a list is strung that fills its strand.

use std::ops::RangeInclusive;

use crate::pattern;
use crate::pattern::bounds::{MOST_STRUNG, MOST_WRITTEN};
use crate::remark::Remark;
use crate::remark::said::strand::Strand;
use crate::units::Length;

use super::Context;
use super::entries::Entries;
use super::list::List;
use super::model::Bit;
use super::row;
use super::stock::Bead;

/// How often `repeat: fill` strings its list: as often as whole repeats fit.
pub fn fill(
    strand: &pattern::Strand,
    list: &List<'_>,
    length: Option<Length>,
    takes: f64,
    context: &mut Context,
) -> Option<u32> {
    if !list.has_fill() {
        return Some(1);
    }
    if length.is_none() && context.girthless {
        return None;
    }
    let Some(length) = length else { return context.refuse(nothing_to_fill(strand)) };
    let Some(least) = list.least(MOST_WRITTEN) else { return context.refuse(no_row(strand)) };
    let leave = strand.leave.as_ref().map_or(0.0, |at| at.value.value());
    let room = length.value() - takes - leave;
    if !list.fits(least, room) {
        return context.refuse(no_room(strand, list, least, [room, takes + leave]));
    }
    let near = largest(|fill| list.fits(fill, room)).unwrap_or(least).max(least);
    let fits = |fill: &u32| list.stands(*fill) && list.fits(*fill, room);
    about(near, list).rev().find(fits).or_else(|| context.refuse(no_row(strand)))
}

/// A remark about a list that fills a strand of no length.
fn nothing_to_fill(strand: &pattern::Strand) -> Remark {
    Remark::new(Strand::NothingToFill { strand: strand.name.value.clone() }).at(strand.beads.place)
}

/// A remark about a strand that has no room for its list strung as seldom as may be, by the room that there is and what
/// else takes room, in mm.
fn no_room(strand: &pattern::Strand, list: &List<'_>, least: u32, [room, taken]: [f64; 2]) -> Remark {
    let once = list.length(least);
    let [room, takes, needs] = [room.max(0.0), once, once + taken].map(Length::mm);
    let name = strand.name.value.clone();
    Remark::new(Strand::NoRoom { strand: name, room, is_row: least > 1, takes, needs }).at(strand.beads.place)
}

/// The counts about one among which that lies which is looked for: of what is strung as often as it fits, that alone.
fn about(near: u32, list: &List<'_>) -> RangeInclusive<u32> {
    let wavers = list.wavers();
    near.saturating_sub(wavers).max(1)..=near.saturating_add(wavers)
}

/// A remark about rows of which none that is long keeps its beads apart.
fn no_row(strand: &pattern::Strand) -> Remark {
    Remark::new(Strand::NoOrder { strand: strand.name.value.clone() }).at(strand.beads.place)
}

/// What a row must measure, and how that is measured: it grows with its bits.
#[derive(Clone, Copy)]
pub struct RowGoal<'a> {
    /// How much.
    pub asked: f64,
    /// What bits measure.
    pub measure: &'a dyn Fn(&[Bit]) -> f64,
}

/// How often `repeat: fill` strings its list, so that its bits measure most nearly what is asked.
pub fn nearest(
    strand: &pattern::Strand,
    list: &List<'_>,
    beads: &Entries<Bead>,
    RowGoal { asked, measure }: RowGoal<'_>,
    context: &mut Context,
) -> Option<u32> {
    let most = list.most(MOST_STRUNG);
    let measured = |times: u32| measure(&row::bits(&list.row(times), beads));
    let miss = |times: &u32| (measured(*times) - asked).abs();
    let short = largest(|times| times < most && measured(times) < asked).unwrap_or(0);
    let near = if short > 0 && miss(&short) < miss(&(short + 1)) { short } else { short + 1 };
    let near = near.max(list.least(MOST_WRITTEN).unwrap_or(1));
    let stand = about(near, list).filter(|times| *times <= most && list.stands(*times));
    let nearest = stand.map(|times| (times, miss(&times))).min_by(|one, other| one.1.total_cmp(&other.1));
    nearest.map(|(times, _)| times).or_else(|| context.refuse(no_row(strand)))
}

/// The largest number, at least 1, that fits, where all smaller ones do.
pub fn largest(fits: impl Fn(u32) -> bool) -> Option<u32> {
    if !fits(1) {
        return None;
    }
    let mut over = 2;
    while over < u32::MAX / 2 && fits(over) {
        over *= 2;
    }
    let (mut low, mut high) = (over / 2, over);
    while high - low > 1 {
        let middle = low.midpoint(high);
        *if fits(middle) { &mut low } else { &mut high } = middle;
    }
    Some(low)
}
