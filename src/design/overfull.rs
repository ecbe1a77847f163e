//! Lists that are longer than their strand has room, and what of them would fit.

use crate::pattern;
use crate::remark::Remark;
use crate::remark::said::strand::{Fewer, Strand};
use crate::source::At;
use crate::units::Length;

use super::filling::largest;
use super::list::{Along, Entry, Item, List, Own, Threaded};
use super::strand::length_place;

/// A remark about a list that is so much longer in mm than the room on its strand.
pub fn overfull(strand: &pattern::Strand, list: &List<'_>, over: f64, room: f64) -> Remark {
    let needs = Length::mm(list.length(1) + strand.length.as_ref().map_or(0.0, |at| at.value.value()) - room);
    let name = strand.name.value.clone();
    let overfull = Strand::Overfull { strand: name, over: Length::mm(over), fewer: fewer(list, room), needs };
    Remark::new(overfull).at(length_place(strand))
}

/// How often the list's first repeat would fit, or of a list without one, how many beads of its longest run.
fn fewer(list: &List<'_>, room: f64) -> Option<Fewer> {
    let shorter = || list.last.0.iter().enumerate().filter_map(|(at, item)| shorter(at, item));
    let repeat = shorter().find(|one| one.run.is_none());
    let Shorter { at, written, of, run } = repeat.or_else(|| shorter().max_by_key(|one| one.written))?;
    let mut filled = list.last.0.clone();
    filled[at].value = Own::Entry(Item::More(Along::Fill(of)));
    let filled = List::whole(filled, list.given);
    let fits = largest(|fill| filled.fits(fill, room)).filter(|fits| *fits < written)?;
    Some(match run {
        Some(piece) => Fewer::Beads { id: piece.id(list.given.shelf).to_owned(), fits, written },
        None => Fewer::Times { fits, written },
    })
}

/// An entry of a strand's own list that can be strung less often.
struct Shorter<'a> {
    /// Where it stands in the list.
    at: usize,
    /// How often it is strung as written.
    written: u32,
    /// What is strung so often.
    of: Vec<At<Entry<'a>>>,
    /// What that is in a run.
    run: Option<Threaded>,
}

fn shorter<'a>(at: usize, item: &At<Own<'a>>) -> Option<Shorter<'a>> {
    match &item.value {
        Own::Entry(Item::Repeat(written, of)) => Some(Shorter { at, written: *written, of: of.clone(), run: None }),
        Own::Entry(Item::Run(written, piece)) => {
            let of = vec![At::new(Item::Run(1, *piece), item.place)];
            Some(Shorter { at, written: *written, of, run: Some(*piece) })
        }
        _ => None,
    }
}
