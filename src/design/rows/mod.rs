//! Rows that are worked out from a rule, as indices of beads in the order in which they are strung.

pub mod fade;
pub mod grades;
pub mod mix;

use crate::pattern::{Fade, Graduate, Item, Random, Row, Times};
use crate::remark::Remark;
use crate::remark::said::rows::Rows;
use crate::source::{At, Place};

use super::Context;
use super::entries::Index;
use super::expand::List;
use super::model::Phrase;
use super::shelf::Shelf;
use super::stock::Bead;

use grades::Grades;

/// Most counts that are looked at beyond one that is too long: beads 20 times as long as others make no row.
const MOST_WAVERING: u32 = 40;

/// The beads of a row.
pub fn beads(row: &Row, fill: u32, list: &List<'_>) -> Vec<Index<Bead>> {
    let named = |id: &At<String>| list.shelf().bead(&id.value);
    match row {
        Row::Random(random) => {
            let beads: Vec<_> = random.of.entries.iter().filter_map(|(id, _)| named(id)).collect();
            let order = mix::order(random, random.random.value.or(fill));
            order.into_iter().filter_map(|kind| beads.get(kind).copied()).collect()
        }
        Row::Fade(fade) => {
            let (from, to) = (named(&fade.from), named(&fade.to));
            fade::turns(fade.fade.value.or(fill))
                .into_iter()
                .filter_map(|turned| if turned { to } else { from })
                .collect()
        }
        Row::Graduate(graduate) => Grades::new(graduate, list).map(|grades| grades.row(fill)).unwrap_or_default(),
    }
}

/// How many beads a row has.
pub fn count(row: &Row, fill: u32, list: &List<'_>) -> u64 {
    match row {
        Row::Random(Random { random: count, .. }) | Row::Fade(Fade { fade: count, .. }) => {
            u64::from(count.value.or(fill))
        }
        Row::Graduate(graduate) => Grades::new(graduate, list).map_or(0, |grades| grades.count(fill)),
    }
}

/// Whether a row that fills its strand can be made of so many beads.
pub fn stands(row: &Row, beads: u32) -> bool {
    match row {
        Row::Random(random) => mix::stands(random, beads),
        Row::Fade(_) => beads > 1,
        Row::Graduate(_) => true,
    }
}

/// How many counts beyond one that is too long may be short enough again. Of n beads in K kinds that are l long each
/// count is less than one off its share, so that the row is at most K (longest - shortest) / 2 off n times the mean:
/// what is too long by one count is too long by all that are K x longest / shortest larger. Steps of a graduated row
/// are in the order of their lengths.
pub fn wavers(row: &Row, shelf: &Shelf) -> u32 {
    if let Row::Graduate(_) = row {
        return 0;
    }
    let kinds: Vec<_> = row.beads().iter().filter_map(|id| shelf.bead(&id.value)).collect();
    let lengths = || kinds.iter().map(|at| shelf.beads[*at].along.value());
    let ratio = lengths().fold(0.0, f64::max) / lengths().fold(f64::INFINITY, f64::min);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count")]
    let counts = (kinds.len() as f64 * ratio).ceil() as u32;
    counts.min(MOST_WAVERING)
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
        Row::Graduate(Graduate { graduate, .. }) if graduate.is_empty() => Some(Remark::new(Rows::NoGrades).at(place)),
        Row::Graduate(_) => None,
    };
    context.remarks.extend(wrong);
}

fn fade_wrong(fade: &Fade) -> Option<Remark> {
    let id = fade.from.value.clone();
    let wrong = match fade.fade.value {
        _ if id == fade.to.value => Rows::FadeToItself { id },
        Times::Count(1) => Rows::FadeOfOne { id },
        _ => return None,
    };
    Some(Remark::new(wrong).at(fade.fade.place))
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
