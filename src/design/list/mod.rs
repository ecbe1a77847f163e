//! A strand's bead list with all its names known, in which everything stands where it may.
//!
//! A list is lowered once ([`lower`]) from what is written; nothing after that meets a name that means nothing, a stop
//! in a repeat or a knot on a branch, for these types have no room for them. What `fill` means is open still: every
//! sum is asked for with how many times that is.

mod chart;
mod given;
mod lower;
mod repeats;
mod string;
mod tally;
#[cfg(test)]
mod tests;

use std::convert::Infallible;
use std::iter;

use crate::pattern::bounds::MOST_STRUNG;
use crate::source::At;
use crate::units::Length;

use super::entries::Index;
use super::finding::Finding;
use super::model::Phrase;
use super::resting::SAME;
use super::row::Strung;
use super::rows::Rule;
use super::shelf::Inventory;
use super::stock::Bead;

pub use given::Given;
pub use lower::list;

use tally::Tally;

/// The list of a strand: stretches, and the stops that part them.
#[derive(Clone)]
pub struct List<'a> {
    /// What the strand gives to it.
    pub given: Given<'a>,
    /// Each stop, and what is strung before it, from the strand's start or the stop that comes before.
    pub held: Vec<(Stretch<'a>, At<Stop>)>,
    /// What is strung behind the last stop: everything, where there is none.
    pub last: Stretch<'a>,
}

/// A finding fixed on the cord.
#[derive(Clone)]
pub struct Stop {
    /// Which, and where that is said.
    pub finding: At<Index<Finding>>,
    /// How far from the first end's loop, in the size that is written.
    pub at: Length,
}

/// What is strung between ends and stops.
#[derive(Clone)]
pub struct Stretch<'a>(pub Vec<At<Own<'a>>>);

/// What may stand in a strand's own list.
#[derive(Clone)]
pub enum Own<'a> {
    /// What may stand in the lists within it too.
    Entry(Entry<'a>),
    /// A row of as many beads as fill the strand.
    Row(Rule<'a>),
}

/// What may stand in a list that is strung along the cord.
pub type Entry<'a> = Item<'a, Along<'a>>;

/// What may stand in the list of a branch, and in the lists within it.
pub type Twig<'a> = Item<'a, Infallible>;

/// What may stand in every list, and what more in those of one kind.
#[derive(Clone)]
pub enum Item<'a, More> {
    /// So many beads or findings.
    Run(u32, Threaded),
    /// Bare cord.
    Space(Length),
    /// So many beads that follow a rule, or of sizes that grow so many steps.
    Row(Rule<'a>, u32),
    /// A list so many times.
    Repeat(u32, Vec<At<Self>>),
    /// A list, its middle, and the list backwards.
    Mirror(Vec<At<Self>>, Vec<At<Self>>),
    /// What stands in lists of this kind alone.
    More(More),
}

/// What stands along a strand's cord, and not on a branch.
#[derive(Clone)]
pub enum Along<'a> {
    /// A list as often as it fills the strand.
    Fill(Vec<At<Entry<'a>>>),
    /// Links of chain in which nothing hangs.
    Links(u32),
    /// A knot that takes up so much cord.
    Knot(Length),
    /// A branch.
    Branch(Branch<'a>),
}

/// What hangs straight down.
#[derive(Clone)]
pub struct Branch<'a> {
    /// What it hangs on.
    pub on: Index<Finding>,
    /// What is strung on it, from the top down.
    pub of: Vec<At<Twig<'a>>>,
}

/// What an id means that is strung.
#[derive(Clone, Copy)]
pub enum Threaded {
    Bead(Index<Bead>),
    Finding(Index<Finding>),
}

impl Threaded {
    /// The id.
    pub fn id(self, shelf: &Inventory) -> &str {
        match self {
            Self::Bead(bead) => &shelf.beads[bead].id,
            Self::Finding(finding) => &shelf.findings[finding].id,
        }
    }
}

impl<'a> List<'a> {
    /// A list without stops.
    pub fn whole(items: Vec<At<Own<'a>>>, given: Given<'a>) -> Self {
        Self { given, held: Vec::new(), last: Stretch(items) }
    }

    /// Its stretches in their order.
    pub fn stretches(&self) -> impl Iterator<Item = &Stretch<'a>> {
        self.held.iter().map(|(stretch, _)| stretch).chain(iter::once(&self.last))
    }

    fn items(&self) -> impl Iterator<Item = &At<Own<'a>>> {
        self.stretches().flat_map(|stretch| &stretch.0)
    }

    /// Whether `fill` stands somewhere in it.
    pub fn has_fill(&self) -> bool {
        self.items().any(|item| item.value.fills())
    }

    /// Whether links or spaces say where along the cord things hang.
    pub fn says_where(&self) -> bool {
        self.items().any(|item| matches!(&item.value, Own::Entry(entry) if entry.says_where()))
    }

    /// How much it strings, and how much is written, when `fill` means so many times.
    pub fn tally(&self, fill: u32) -> Tally {
        self.held.iter().fold(tally::sum(self.items(), fill), |all, _| all.and(Tally::ONE))
    }

    /// How many things are strung when `fill` means so many times.
    pub fn count(&self, fill: u32) -> u64 {
        self.tally(fill).things
    }

    /// Whether so many fills are no more than a piece may hold, and have room.
    pub fn fits(&self, fill: u32, room: f64) -> bool {
        self.count(fill) <= u64::from(MOST_STRUNG) && self.length(fill) <= room + SAME
    }

    /// How often the list may be filled, at least once, so that no more things are strung than so many.
    pub fn most(&self, things: u32) -> u32 {
        let (once, twice) = (self.count(1), self.count(2));
        let more = u64::from(things).saturating_sub(once) / (twice - once).max(1);
        u32::try_from(more + 1).unwrap_or(things)
    }

    /// Whether each of its rows can be made when `fill` means so many beads.
    pub fn stands(&self, fill: u32) -> bool {
        self.rows().all(|rule| rule.stands(fill))
    }

    /// The fewest beads of which its rows can be made, no more than so many.
    pub fn least(&self, most: u32) -> Option<u32> {
        (1..=most).find(|fill| self.stands(*fill))
    }

    /// How many counts beyond one that is too long may be short enough again, for a bead more may be a longer kind
    /// less.
    pub fn wavers(&self) -> u32 {
        self.rows().map(|rule| rule.wavers(&self.given.shelf.beads)).sum()
    }

    /// The rows that fill it.
    fn rows(&self) -> impl Iterator<Item = &Rule<'a>> {
        self.items().filter_map(|item| match &item.value {
            Own::Row(rule) => Some(rule),
            Own::Entry(_) => None,
        })
    }

    /// Length in mm of everything in one row but its stops.
    pub fn length(&self, fill: u32) -> f64 {
        self.given.length(&self.row(fill))
    }

    /// Everything in one row but its stops.
    pub fn row(&self, fill: u32) -> Vec<Strung> {
        self.given.knotted(self.stretches().flat_map(|stretch| string::row(&stretch.0, fill, self.given)).collect())
    }

    /// The list as the maker says it, its stops counted from 1.
    pub fn chart(&self, fill: u32) -> Vec<Phrase> {
        let held = (1..).zip(&self.held).flat_map(|(number, (stretch, stop))| {
            let stop = Phrase::Stop(number, stop.value.finding.value);
            chart::phrases(&stretch.0, fill).into_iter().chain(iter::once(stop))
        });
        held.chain(chart::phrases(&self.last.0, fill)).collect()
    }
}

impl Stretch<'_> {
    /// Everything in one row.
    pub fn row(&self, fill: u32, given: Given<'_>) -> Vec<Strung> {
        given.knotted(string::row(&self.0, fill, given))
    }

    /// The row in groups: one for each repetition of its own repeats, one for each other entry.
    pub fn groups(&self, fill: u32, given: Given<'_>) -> Vec<Vec<Strung>> {
        let group = |item: &At<Own<'_>>| {
            let (times, once) = match &item.value {
                Own::Entry(Item::Repeat(times, of)) => (*times, string::row(of, fill, given)),
                Own::Entry(Item::More(Along::Fill(of))) => (fill, string::row(of, fill, given)),
                _ => (1, string::row(std::slice::from_ref(item), fill, given)),
            };
            iter::repeat_n(given.knotted(once), times as usize)
        };
        self.0.iter().flat_map(group).filter(|group| !group.is_empty()).collect()
    }
}

impl Own<'_> {
    fn fills(&self) -> bool {
        match self {
            Self::Entry(entry) => entry.fills(),
            Self::Row(_) => true,
        }
    }
}

impl Entry<'_> {
    /// Whether `fill` stands somewhere in it.
    fn fills(&self) -> bool {
        self.has(&|item| matches!(item, Item::More(Along::Fill(_))))
    }

    fn says_where(&self) -> bool {
        self.has(&|item| matches!(item, Item::Space(_) | Item::More(Along::Links(_))))
    }

    /// Whether something is true of it or of an entry of the lists within it.
    fn has(&self, is: &impl Fn(&Self) -> bool) -> bool {
        let within = |list: &[At<Self>]| list.iter().any(|item| item.value.has(is));
        is(self)
            || match self {
                Item::Repeat(_, of) | Item::More(Along::Fill(of)) => within(of),
                Item::Mirror(side, about) => within(side) || within(about),
                Item::Run(..) | Item::Space(_) | Item::Row(..) | Item::More(_) => false,
            }
    }
}
