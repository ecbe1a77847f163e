//! Rows that are worked out from a rule, as indices of beads in the order in which they are strung.

pub mod fade;
pub mod grades;
pub mod mix;

use crate::pattern::{Fade, Graduate, Item, Random, Row};
use crate::remark::{Code, Remark};
use crate::source::{At, Place};

use super::Context;
use super::entries::Index;
use super::expand::List;
use super::model::Phrase;
use super::shelf::Shelf;
use super::stock::Bead;

use grades::Grades;

/// The beads of a row.
pub fn beads(row: &Row, fill: u32, list: &List<'_>) -> Vec<Index<Bead>> {
    let named = |id: &At<String>| list.shelf().bead(&id.value);
    match row {
        Row::Random(random) => {
            let beads: Vec<_> = random.of.entries.iter().filter_map(|(id, _)| named(id)).collect();
            // What no order keeps apart has had its remark.
            let order = mix::order(random).unwrap_or_default();
            order.into_iter().filter_map(|kind| beads.get(kind).copied()).collect()
        }
        Row::Fade(fade) => {
            let (from, to) = (named(&fade.from), named(&fade.to));
            fade::turns(fade.fade.value.0).into_iter().filter_map(|turned| if turned { to } else { from }).collect()
        }
        Row::Graduate(graduate) => Grades::new(graduate, list).map(|grades| grades.row(fill)).unwrap_or_default(),
    }
}

/// How many beads a row has.
pub fn count(row: &Row, fill: u32, list: &List<'_>) -> u64 {
    match row {
        Row::Random(Random { random: count, .. }) | Row::Fade(Fade { fade: count, .. }) => u64::from(count.value.0),
        Row::Graduate(graduate) => Grades::new(graduate, list).map_or(0, |grades| grades.count(fill)),
    }
}

/// The row as the maker says it: a graduated one by its sizes, the others bead by bead.
pub fn phrase(row: &Row, fill: u32, list: &List<'_>) -> Phrase {
    let beads = beads(row, fill, list);
    match row {
        Row::Graduate(_) => {
            let (side, middle) = (beads.len() / 2, beads.len() % 2);
            Phrase::Mirror(runs(&beads[..side]), runs(&beads[side..side + middle]))
        }
        Row::Random(_) | Row::Fade(_) => Phrase::Ordered(runs(&beads)),
    }
}

fn runs(beads: &[Index<Bead>]) -> Vec<Phrase> {
    // A row holds no more beads than a piece, which is a `u32`.
    let run = |run: &[Index<Bead>]| Phrase::Run(u32::try_from(run.len()).unwrap_or(u32::MAX), run[0]);
    beads.chunk_by(PartialEq::eq).map(run).collect()
}

/// Leaves a remark for each bead that a row names and the pattern does not define, and where no row can be made.
pub fn check(row: &Row, place: Place, shelf: &Shelf, context: &mut Context) {
    for id in row.beads() {
        shelf.find_bead(id, context);
    }
    let wrong = match row {
        _ if context.holes.spoil(place) => None,
        Row::Random(random) => mix::wrong(random),
        Row::Fade(fade) => fade_wrong(fade),
        Row::Graduate(Graduate { graduate, .. }) if graduate.is_empty() => {
            let remark = Remark::new(Code::NothingRepeated, "a graduated row of no beads");
            Some(remark.help("write its beads from an end to the middle, like `graduate: [small, large]`"))
        }
        Row::Graduate(_) => None,
    };
    context.remarks.extend(wrong.map(|wrong| if wrong.place.is_none() { wrong.at(place) } else { wrong }));
}

fn fade_wrong(fade: &Fade) -> Option<Remark> {
    let one = &fade.from.value;
    let (headline, help) = match fade.fade.value.0 {
        _ if *one == fade.to.value => (format!("a fade from {one} to {one} is no fade"), "name two beads"),
        1 => (format!("a fade of one bead is {one} alone"), "write at least 2"),
        _ => return None,
    };
    Some(Remark::new(Code::NoMix, headline).at(fade.fade.place).help(help))
}

/// Leaves a remark for each graduated row that its own length has no room for.
pub fn check_lengths(items: &[At<Item>], list: &List<'_>, context: &mut Context) {
    for item in items {
        if let Item::Row(Row::Graduate(graduate)) = &item.value {
            context.remarks.extend(Grades::new(graduate, list).and_then(|grades| grades.too_long()));
        }
        item.value.lists().into_iter().for_each(|inner| check_lengths(inner, list, context));
    }
}
