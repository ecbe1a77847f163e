//! Stops: findings fixed on the cord that divide a strand, so that each stretch settles by itself.
//!
//! In another size a stop keeps its distance from the nearer end, and one in the middle stays there.

use crate::pattern::{self, Settle};
use crate::remark::Remark;
use crate::remark::said::spot::Misplaced;
use crate::remark::said::strand::Strand;
use crate::source::{At, Place};
use crate::units::Length;

use super::Context;
use super::list::{List, Stop, Stretch};
use super::model::{Rest, Train};
use super::resting::{SAME, rest};
use super::row::{self, Strung};
use super::shelf::Inventory;

/// Refuses stops on a strand that something fills, and where beads have no room to settle between them.
pub fn check(list: &List<'_>, settle: Settle, place: Place, context: &mut Context) -> Option<()> {
    let wrong = match settle {
        _ if list.held.is_empty() => None,
        Settle::Slide | Settle::Spread => list.has_fill().then_some(Misplaced::FillWithStops),
        Settle::Fill | Settle::Fixed => Some(Misplaced::StopAmongFixed),
    };
    context.refuse_if(wrong.map(|wrong| Remark::new(wrong).at(place)))
}

/// The trains of a strand that stops divide, the stops among them.
pub fn trains(
    strand: &pattern::Strand,
    list: &List<'_>,
    settle: Settle,
    window: (f64, f64),
    context: &mut Context,
) -> Option<Vec<Train>> {
    let lay = |stretch: &Stretch<'_>, window: (f64, f64)| {
        rest(stretch, list.given, settle, 1, window).map_err(|over| overfull(strand, over))
    };
    let mut trains = Vec::new();
    let mut from = window.0;
    for (stretch, stop) in &list.held {
        let (train, start) = fixed(&stop.value, strand, window.0 + window.1, list.given.shelf);
        let next = start + train.length();
        if start < from || next > window.1 {
            return context.refuse(Remark::new(Misplaced::StopOutside).at(stop.place));
        }
        trains.extend(context.take(lay(stretch, (from, start)))?);
        trains.push(train);
        from = next;
    }
    trains.extend(context.take(lay(&list.last, (from, window.1)))?);
    trains.retain(|train| !train.bits.is_empty());
    Some(trains)
}

fn overfull(strand: &pattern::Strand, over: f64) -> Remark {
    let overfull = Strand::StretchOverfull { strand: strand.name.value.clone(), over: Length::mm(over) };
    Remark::new(overfull).at(strand.beads.place)
}

/// A stop's train and the station where it starts.
fn fixed(stop: &Stop, strand: &pattern::Strand, finished: f64, shelf: &Inventory) -> (Train, f64) {
    let At { value: finding, place } = stop.finding;
    let bits = row::bits(&[Strung::finding(finding, &shelf.findings).at(place)], &shelf.beads);
    let start = station(stop.at.value(), strand, finished) - shelf.findings[finding].along().value() / 2.0;
    (Train { bits, rest: Rest::At(start) }, start)
}

/// Where a stop lies on a strand that a size makes longer or shorter than is written.
fn station(at: f64, strand: &pattern::Strand, finished: f64) -> f64 {
    let written = strand.length.as_ref().map_or(finished, |at| at.value.value());
    let change = finished - written;
    match 2.0 * at - written {
        off if off.abs() < SAME => at + change / 2.0,
        off if off > 0.0 => at + change,
        _ => at,
    }
}
