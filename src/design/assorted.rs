//! What is bought with several kinds of bead in it: a strand of graduated beads, a bag of a mix.

use crate::pattern::{self, Dict, Pattern, SoldBy};
use crate::remark::Remark;
use crate::remark::said::selling::Selling;
use crate::source::{At, Place};
use crate::units::{Length, Mass, Money};

use super::Context;
use super::article;
use super::entries::{Entries, Index};
use super::shelf::Inventory;
use super::stock::Bead;

/// Several kinds of bead that are bought as one thing.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Assorted {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What one buys at a time.
    pub pack: Pack,
    /// How many beads one holds, all kinds together: of a mix by mass as many as weigh so much; 0 where that is none.
    pub beads: u64,
    /// The kinds in it, those that the piece does not use with them.
    pub holds: Vec<Held>,
    /// Price of one, where the pattern says.
    pub price: Option<Money>,
    /// Of whom it is bought, where the pattern says.
    pub from: Option<String>,
    /// Where the pattern defines it.
    pub place: Place,
}

/// In what several kinds of bead are bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pack {
    /// A strand, so long where that is said, that holds just so many of each.
    Strand(Option<Length>),
    /// A bag that holds each by its share of all, as it falls; so much by mass where it is not counted.
    Mix(Option<Mass>),
}

/// A kind of bead among others.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Held {
    /// Its id.
    pub id: String,
    /// How many there are, or of a mix how many parts of all.
    pub parts: u32,
    /// Which bead of the piece it is, where that uses it.
    pub bead: Option<Index<Bead>>,
}

impl Assorted {
    /// Whether it holds each kind as it falls, so that none is promised.
    #[must_use]
    pub const fn is_mix(&self) -> bool {
        matches!(self.pack, Pack::Mix(_))
    }

    /// The kinds that the piece uses.
    pub fn used(&self) -> impl Iterator<Item = (&Held, Index<Bead>)> {
        self.holds.iter().filter_map(|held| Some((held, held.bead?)))
    }

    /// Whether another is bought as the same thing, whichever kinds are used of both.
    #[must_use]
    pub fn is_same(&self, other: &Self) -> bool {
        let alike = |(one, same): (&Held, &Held)| {
            let differ = one.bead.zip(same.bead).is_some_and(|(one, same)| one != same);
            (&one.id, one.parts) == (&same.id, same.parts) && !differ
        };
        let bare = |one: &Self| Self { holds: Vec::new(), place: Place::default(), ..one.clone() };
        bare(self) == bare(other)
            && self.holds.len() == other.holds.len()
            && self.holds.iter().zip(&other.holds).all(alike)
    }

    /// The share of a kind among all of its beads, from 0 to 1.
    #[must_use]
    pub fn share(&self, held: &Held) -> f64 {
        f64::from(held.parts) / parts(&self.holds)
    }
}

fn parts(holds: &[Held]) -> f64 {
    holds.iter().map(|held| f64::from(held.parts)).sum()
}

/// Resolves all that supplies the piece; leaves a remark where a bead is sold twice.
pub fn assorted(pattern: &Pattern, shelf: &Inventory, context: &mut Context) -> Entries<Assorted> {
    let used = pattern.used_ids().into_iter().collect();
    let mut all = Entries::default();
    for (key, written) in pattern.supplying(&used) {
        all.extend(one(key, written, pattern, shelf, context));
    }
    for (at, bead) in shelf.beads.entries() {
        let holding = all.iter().filter(|one: &&Assorted| one.used().any(|(_, held)| held == at));
        let within: Vec<_> = holding.map(|one| one.id.clone()).collect();
        let by_itself = bead.sold.is_some();
        if within.len() + usize::from(by_itself) > 1 {
            let twice = Selling::Twice { id: bead.id.clone(), by_itself, within };
            context.remarks.push(Remark::new(twice).at(bead.place));
        }
    }
    all
}

fn one(
    key: &At<String>,
    written: &pattern::Assorted,
    pattern: &Pattern,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Assorted> {
    let pack = pack(written, context);
    let holds = holds(key, &written.holds, shelf, context);
    let (pack, holds) = (pack?, holds?);
    let counted = written.sold.value.count.map(|count| u64::from(count.0));
    Some(Assorted {
        id: key.value.clone(),
        name: written.name.clone().unwrap_or_else(|| key.value.clone()),
        beads: match pack {
            Pack::Strand(_) => holds.iter().map(|held| u64::from(held.parts)).sum(),
            Pack::Mix(mass) => mass.map_or(counted, |mass| Some(weighed(mass, &holds, pattern, shelf))).unwrap_or(0),
        },
        pack,
        holds,
        price: written.sold.value.price,
        from: written.sold.value.from.clone(),
        place: key.place,
    })
}

/// Refuses a way to sell that is none for several kinds together, and a mix that does not say how much it is.
pub fn pack(written: &pattern::Assorted, context: &mut Context) -> Option<Pack> {
    let sold = &written.sold.value;
    let by = &sold.by;
    let wrong = match by.value {
        SoldBy::GraduatedStrand => return Some(Pack::Strand(sold.length)),
        SoldBy::Mix if sold.count.is_some() != sold.mass.is_some() => return Some(Pack::Mix(sold.mass)),
        SoldBy::Mix => Selling::NoMixAmount { by: by.value.word() },
        other => Selling::SeveralKinds { by: other.word() },
    };
    context.refuse(Remark::new(wrong).at(by.place))
}

fn holds(
    key: &At<String>,
    written: &Dict<At<pattern::Whole>>,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Vec<Held>> {
    let before = context.remarks.len();
    let held = |(id, parts): &(At<String>, At<pattern::Whole>)| Held {
        id: id.value.clone(),
        parts: parts.value.0,
        bead: shelf.find_bead(id, context),
    };
    let holds: Vec<_> = written.entries.iter().map(held).collect();
    if holds.is_empty() {
        return context.refuse(Remark::new(Selling::HoldsNothing { id: key.value.clone() }).at(key.place));
    }
    (context.remarks.len() == before).then_some(holds)
}

/// How many beads of a mix weigh so much, each kind at its share. Kinds that the piece does not use weigh what the
/// pattern says of them; what is wrong with those is not told.
fn weighed(mass: Mass, holds: &[Held], pattern: &Pattern, shelf: &Inventory) -> u64 {
    let unused = |id: &str| {
        let (key, written) = pattern.beads.entries.iter().find(|(key, _)| key.value == id)?;
        article::bead(id, key.place, written, &mut Context::default()).map(|bead| *bead.mass)
    };
    let of = |held: &Held| held.bead.map_or_else(|| unused(&held.id), |at| Some(*shelf.beads[at].mass));
    let all: f64 = holds.iter().filter_map(|held| Some(f64::from(held.parts) * of(held)?.value())).sum();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a positive quotient; `as` saturates")]
    let beads = (mass.value() * parts(holds) / all).floor() as u64;
    beads
}
