//! Whether a bead list makes sense: what it names is defined, and everything stands where it may.

use crate::pattern::{Item, Times};
use crate::remark::Remark;
use crate::remark::said::spot::Misplaced;
use crate::remark::said::strand::Strand;
use crate::source::{At, Place};

use super::expand::Given;
use super::shelf::Shelf;
use super::spot::{self, Spot};
use super::{Context, rows};

/// Leaves a remark for everything that is wrong in a strand's list; whether it can be strung.
pub fn is_sound(items: &[At<Item>], given: Given, shelf: &Shelf, context: &mut Context) -> bool {
    let before = context.remarks.len();
    check_names(items, shelf, context);
    check_places(items, Within::Strand, context);
    check_links(items, given, context);
    context.remarks.len() == before && is_shelved(items, shelf)
}

/// Whether all that the items name was resolved: what is defined wrongly has had its remark.
fn is_shelved(items: &[At<Item>], shelf: &Shelf) -> bool {
    items.iter().all(|item| {
        let own = match &item.value {
            Item::Run(run) => shelf.bead(&run.id).is_some() || shelf.finding(&run.id).is_some(),
            Item::Dangle(dangle) => shelf.finding(&dangle.on.value.0).is_some(),
            Item::Stop(stop) => shelf.finding(&stop.stop.value).is_some(),
            Item::Row(row) => row.beads().iter().all(|id| shelf.bead(&id.value).is_some()),
            Item::Repeat(_) | Item::Mirror(_) | Item::Space(_) | Item::Links(_) | Item::Knot(_) => true,
        };
        own && item.value.lists().iter().all(|list| is_shelved(list, shelf))
    })
}

/// Refuses links that are counted where no links are known.
fn check_links(items: &[At<Item>], given: Given, context: &mut Context) {
    for item in items {
        if given.link.is_none() && matches!(item.value, Item::Links(_)) {
            context.remarks.push(Remark::new(Strand::LinkUnknown).at(item.place));
        }
        item.value.lists().into_iter().for_each(|list| check_links(list, given, context));
    }
}

/// Refuses a repeat or mirror that strings nothing.
fn check_strung(items: &[&[At<Item>]], place: Place, context: &mut Context) {
    if items.iter().all(|items| strings_nothing(items)) && !context.holes.spoil(place) {
        context.remarks.push(Remark::new(Strand::NothingStrung).at(place));
    }
}

fn strings_nothing(items: &[At<Item>]) -> bool {
    let is_frame = |item: &Item| matches!(item, Item::Repeat(_) | Item::Mirror(_));
    items.iter().all(|item| is_frame(&item.value) && item.value.lists().into_iter().all(strings_nothing))
}

/// Where a list stands.
#[derive(Clone, Copy, PartialEq)]
enum Within {
    Strand,
    Repeat,
    Dangle,
}

/// Refuses what has no meaning where it stands: a stop but in the strand's own list, and in a branch
/// another branch, a knot or `fill`.
fn check_places(items: &[At<Item>], within: Within, context: &mut Context) {
    let inside = if within == Within::Dangle { within } else { Within::Repeat };
    for item in items {
        context.remarks.extend(misplaced(&item.value, within).map(|wrong| Remark::new(wrong).at(item.place)));
        let inside = if matches!(item.value, Item::Dangle(_)) { Within::Dangle } else { inside };
        item.value.lists().into_iter().for_each(|list| check_places(list, inside, context));
    }
}

fn misplaced(item: &Item, within: Within) -> Option<Misplaced> {
    match (item, within) {
        (Item::Stop(_), Within::Repeat | Within::Dangle) => Some(Misplaced::NestedStop),
        (Item::Repeat(repeat), Within::Dangle) if repeat.repeat == Times::Fill => Some(Misplaced::FillInDangle),
        (Item::Row(row), Within::Repeat | Within::Dangle) if row.fills() => Some(Misplaced::NestedRow),
        (Item::Dangle(_), Within::Dangle) => Some(Misplaced::DangleInDangle),
        (Item::Links(_), Within::Dangle) => Some(Misplaced::LinksInDangle),
        (Item::Knot(_), Within::Dangle) => Some(Misplaced::KnotInDangle),
        _ => None,
    }
}

fn check_names(items: &[At<Item>], shelf: &Shelf, context: &mut Context) {
    for item in items {
        match &item.value {
            Item::Run(run) => spot::strung(&At::new(run.id.clone(), item.place), shelf, context),
            Item::Repeat(_) | Item::Mirror(_) => check_strung(&item.value.lists(), item.place, context),
            Item::Dangle(dangle) => {
                spot::finding(&At::new(dangle.on.value.0.clone(), dangle.on.place), Spot::Hanger, shelf, context);
            }
            Item::Stop(stop) => {
                spot::finding(&stop.stop, Spot::Stop, shelf, context);
            }
            Item::Row(row) => rows::check(row, item.place, shelf, context),
            Item::Space(_) | Item::Links(_) | Item::Knot(_) => {}
        }
        item.value.lists().into_iter().for_each(|list| check_names(list, shelf, context));
    }
}
