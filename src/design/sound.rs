//! Whether a bead list makes sense: what it names is defined, and everything stands where it may.

use crate::pattern::{Item, Times};
use crate::remark::{Code, Remark};
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
            let remark = Remark::words(Code::MissingSize, "how long are the links of this strand?").at(item.place);
            let help = "count them on a `kind: chain` cord that says it, like `links: 10 = 28 mm`, or write `space:`";
            context.remarks.push(remark.helping(help));
        }
        item.value.lists().into_iter().for_each(|list| check_links(list, given, context));
    }
}

/// Refuses a repeat or mirror that strings nothing.
fn check_strung(items: &[&[At<Item>]], place: Place, context: &mut Context) {
    if items.iter().all(|items| strings_nothing(items)) && !context.holes.spoil(place) {
        let remark = Remark::words(Code::NothingRepeated, "there is nothing here to string").at(place);
        context.remarks.push(remark.helping("write what is strung, or take the entry out"));
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
        context.remarks.extend(misplaced(&item.value, within).map(|remark| remark.at(item.place)));
        let inside = if matches!(item.value, Item::Dangle(_)) { Within::Dangle } else { inside };
        item.value.lists().into_iter().for_each(|list| check_places(list, inside, context));
    }
}

fn misplaced(item: &Item, within: Within) -> Option<Remark> {
    let say = |code, headline: &str, help: &str| Some(Remark::words(code, headline).helping(help));
    match (item, within) {
        (Item::Stop(_), Within::Repeat | Within::Dangle) => say(
            Code::MisplacedStop,
            "a stop stands in the strand's own list, not inside a repeat, mirror or dangle",
            "write each stop with its `at:` between the strand's own entries",
        ),
        (Item::Repeat(repeat), Within::Dangle) if repeat.repeat == Times::Fill => {
            say(Code::NoFill, "`repeat: fill` has no length to fill in a dangle", "say how many times")
        }
        (Item::Row(row), Within::Repeat | Within::Dangle) if row.fills() => say(
            Code::NoFill,
            "only in the strand's own list has a row all of its room to fill",
            "write how many beads it has, or of a graduated row its `length:`",
        ),
        (Item::Dangle(_), Within::Dangle) => say(
            Code::Misplaced,
            "a dangle hangs from a strand, not from another dangle",
            "string its beads on the dangle itself, or give it a place of its own on the strand",
        ),
        (Item::Links(_), Within::Dangle) => say(
            Code::Misplaced,
            "links are counted along the strand's chain, and a dangle has none",
            "take them out, or hang the dangle on a finding of kind chain",
        ),
        (Item::Knot(_), Within::Dangle) => say(
            Code::Misplaced,
            "a knot is tied in a strand's cord, and a dangle has none",
            "take it out; what hangs on a pin is held by the pin's head",
        ),
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
