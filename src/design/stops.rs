//! Stops: findings fixed on the cord that divide a strand, so that each stretch settles by itself.
//!
//! In another size a stop keeps its distance from the nearer end, and one in the middle stays there.

use crate::pattern::{self, Item, Settle};
use crate::remark::Remark;
use crate::remark::said::spot::Misplaced;
use crate::remark::said::strand::Strand;
use crate::source::{At, Place};
use crate::units::Length;

use super::Context;
use super::expand::{Given, List};
use super::model::{Rest, Train};
use super::row::{self, Strung};
use super::shelf::Shelf;
use super::strand::{SAME, rest};

/// The trains of a strand that stops divide, the stops among them.
pub fn trains(
    strand: &pattern::Strand,
    settle: Settle,
    window: (f64, f64),
    given: Given,
    shelf: &Shelf,
    context: &mut Context,
) -> Option<Vec<Train>> {
    if !matches!(settle, Settle::Slide | Settle::Spread) {
        return refuse(Misplaced::StopAmongFixed, strand.beads.place, context);
    }
    let mut trains = Vec::new();
    let mut from = window.0;
    for stretch in strand.beads.value.split_inclusive(|item| matches!(item.value, Item::Stop(_))) {
        let stop = stretch.last().and_then(|item| stop(item, strand, window.0 + window.1, shelf));
        let (start, next) =
            stop.as_ref().map_or((window.1, window.1), |(train, start)| (*start, start + train.length()));
        if start < from || next > window.1 {
            return refuse(Misplaced::StopOutside, stretch.last()?.place, context);
        }
        let list = List::new(stretch, given, shelf, context)?;
        trains.extend(lay(strand, &list, settle, (from, start), shelf, context)?);
        trains.extend(stop.map(|(train, _)| train));
        from = next;
    }
    Some(trains)
}

fn lay(
    strand: &pattern::Strand,
    list: &List<'_>,
    settle: Settle,
    window: (f64, f64),
    shelf: &Shelf,
    context: &mut Context,
) -> Option<Vec<Train>> {
    let (name, place) = (&strand.name.value, strand.beads.place);
    if list.has_fill() {
        return refuse(Misplaced::FillWithStops, place, context);
    }
    let laid = rest(list, settle, 1, window, shelf);
    laid.map(|trains| trains.into_iter().filter(|train| !train.bits.is_empty()).collect())
        .or_else(|over| {
            let overfull = Strand::StretchOverfull { strand: name.clone(), over: Length::mm(over) };
            context.refuse(Remark::new(overfull).at(place)).ok_or(())
        })
        .ok()
}

/// A stop's train and the station where it starts.
fn stop(item: &At<Item>, strand: &pattern::Strand, finished: f64, shelf: &Shelf) -> Option<(Train, f64)> {
    let Item::Stop(stop) = &item.value else { return None };
    let finding = shelf.finding(&stop.stop.value)?;
    let bits = row::bits(&[Strung::finding(finding, &shelf.findings).at(stop.stop.place)], &shelf.beads);
    let start = station(stop.at.value.value(), strand, finished)
        - shelf.findings[finding].length().unwrap_or_default().value() / 2.0;
    Some((Train { bits, rest: Rest::At(start) }, start))
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

fn refuse<T>(wrong: Misplaced, place: Place, context: &mut Context) -> Option<T> {
    context.refuse(Remark::new(wrong).at(place))
}
