//! From the bead list as written to what is on the cord, one by one.

use std::ops::Range;

use crate::pattern::bounds::MOST_STRUNG;
use crate::pattern::{self, Item, Links, Row, Times};
use crate::source::At;
use crate::units::Length;

use super::Context;
use super::entries::Index;
use super::model::{Dangle, Phrase, What};
use super::row::{self, Strung};
use super::rows;
use super::shelf::Shelf;
use super::sound::is_sound;
use super::stock::{Bead, Cord};
use super::strand::SAME;

/// A bead list with all its names known and its size bounded.
pub struct List<'a> {
    items: &'a [At<Item>],
    shelf: &'a Shelf,
    given: Given,
}

/// What a strand gives to its list.
#[derive(Clone, Copy)]
pub struct Given {
    /// The knot that comes between all beads.
    pub knots: Option<Length>,
    /// By how much a link of its chain lengthens it.
    pub link: Option<Length>,
}

impl Given {
    /// What a strand on a cord gives; one that is not defined has had its remark, and is asked for nothing more.
    pub fn new(strand: &pattern::Strand, cord: Option<&Cord>) -> Self {
        let link = cord.map_or(Some(Length::ZERO), |cord| cord.link);
        Self { knots: strand.knots.as_ref().map(|at| at.value), link }
    }
}

/// Things of a row, once or as often as fill it.
#[derive(Clone)]
struct Stretch {
    fills: bool,
    row: Vec<Strung>,
}

impl Stretch {
    fn times(&self, times: u32) -> Vec<Strung> {
        vec![self.row.as_slice(); times as usize].concat()
    }

    fn backwards(&self) -> Self {
        Self { row: self.row.iter().rev().cloned().collect(), ..*self }
    }
}

impl<'a> List<'a> {
    /// Takes a list; leaves a remark for each name that is not defined.
    pub fn new(items: &'a [At<Item>], given: Given, shelf: &'a Shelf, context: &mut Context) -> Option<Self> {
        let list = is_sound(items, given, shelf, context).then_some(Self { items, shelf, given })?;
        let before = context.remarks.len();
        rows::check_lengths(items, &list, context);
        (context.remarks.len() == before).then_some(list)
    }

    /// The articles that the list's names mean.
    pub const fn shelf(&self) -> &'a Shelf {
        self.shelf
    }

    /// What the strand gives to it.
    pub const fn given(&self) -> Given {
        self.given
    }

    /// Whether `repeat: fill` stands somewhere in the list.
    pub fn has_fill(&self) -> bool {
        has_fill(self.items)
    }

    /// Which things of the row are one repeat, the last but one where there are several, of the repeat that fills,
    /// or of two that fill alike, as in a mirror; nothing where none does. A single repeat between knots shows
    /// nothing of how the next would follow it.
    pub fn filled(&self, fill: u32) -> Option<Vec<Range<usize>>> {
        let long = |row: Vec<Strung>| self.knotted(row).len();
        let (mut row, mut ones) = (Vec::new(), Vec::new());
        for stretch in self.stretches(self.items)? {
            if stretch.fills {
                let start = long([row.clone(), stretch.times(fill.saturating_sub(2))].concat());
                ones.push(start..start + long(stretch.times(2)) - long(stretch.times(1)));
            }
            row.extend(stretch.times(if stretch.fills { fill } else { 1 }));
        }
        let alike = ones.iter().all(|one| one.len() == ones[0].len());
        let shown = fill > 1 || self.given.knots.is_none();
        Some(ones).filter(|ones| alike && shown && matches!(ones.len(), 1 | 2))
    }

    /// The list in stretches that fill and others; nothing where a repeat that fills stands in another.
    fn stretches(&self, items: &[At<Item>]) -> Option<Vec<Stretch>> {
        let mut all = Vec::new();
        for item in items {
            match &item.value {
                Item::Repeat(repeat) if repeat.repeat == Times::Fill => {
                    let row = Some(self.strung(&repeat.of, 1)).filter(|_| !has_fill(&repeat.of))?;
                    all.push(Stretch { fills: true, row });
                }
                Item::Repeat(repeat) if has_fill(&repeat.of) => {
                    all.extend(vec![self.stretches(&repeat.of)?; repeat.repeat.or(1) as usize].concat());
                }
                Item::Mirror(mirror) => {
                    let side = self.stretches(&mirror.mirror)?;
                    let back = side.iter().rev().map(Stretch::backwards).collect();
                    let about = self.stretches(mirror.about.as_deref().unwrap_or_default())?;
                    all.extend([side, about, back].concat());
                }
                _ => all.push(Stretch { fills: false, row: self.strung(std::slice::from_ref(item), 1) }),
            }
        }
        Some(all)
    }

    /// How many things are strung when `fill` means so many times.
    pub fn count(&self, fill: u32) -> u64 {
        let own = |item: &Item| match item {
            Item::Run(run) => u64::from(run.count),
            Item::Row(row) => rows::count(row, fill, self),
            Item::Dangle(_) | Item::Space(_) | Item::Links(_) | Item::Knot(_) | Item::Stop(_) => 1,
            Item::Repeat(_) | Item::Mirror(_) => 0,
        };
        counted(self.items, fill, &own)
    }

    /// How many findings are strung among the beads when `fill` means so many times.
    pub fn findings(&self, fill: u32) -> u64 {
        let own = |item: &Item| match item {
            Item::Run(run) if self.shelf.finding(&run.id).is_some() => u64::from(run.count),
            _ => 0,
        };
        counted(self.items, fill, &own)
    }

    /// Length in mm of beads in a row, with the strand's knots between them.
    pub fn taken(&self, beads: &[Index<Bead>]) -> f64 {
        let strung = beads.iter().map(|bead| Strung::bead(*bead, &self.shelf.beads)).collect();
        self.length_of(&self.knotted(strung))
    }

    fn length_of(&self, row: &[Strung]) -> f64 {
        row::bits(row, &self.shelf.beads).iter().map(super::model::Bit::length).sum()
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

    /// How many entries it has as written, with those of the lists within it, when `fill` means so many times.
    pub fn written(&self, fill: u32) -> u64 {
        written(self.items, fill)
    }

    /// Whether each of its rows can be made when `fill` means so many beads.
    pub fn stands(&self, fill: u32) -> bool {
        self.rows().all(|row| rows::stands(row, fill))
    }

    /// The fewest beads of which its rows can be made, no more than so many.
    pub fn least(&self, most: u32) -> Option<u32> {
        (1..=most).find(|fill| self.stands(*fill))
    }

    /// How many counts beyond one that is too long may be short enough again, for a bead more may be a longer kind
    /// less.
    pub fn wavers(&self) -> u32 {
        self.rows().map(|row| rows::wavers(row, self.shelf)).sum()
    }

    /// The rows that fill it, which stand in the strand's own list alone.
    fn rows(&self) -> impl Iterator<Item = &Row> {
        self.items.iter().filter_map(|item| match &item.value {
            Item::Row(row) if row.fills() => Some(row),
            _ => None,
        })
    }

    /// Length of the row in mm when `fill` means so many times.
    pub fn length(&self, fill: u32) -> f64 {
        self.length_of(&self.row(fill))
    }

    /// Everything in one row.
    pub fn row(&self, fill: u32) -> Vec<Strung> {
        self.knotted(self.groups(fill).concat())
    }

    /// The row in groups: one for each repetition of the list's own repeats, one for each other
    /// entry.
    pub fn groups(&self, fill: u32) -> Vec<Vec<Strung>> {
        let mut groups = Vec::new();
        for item in self.items {
            match &item.value {
                Item::Repeat(repeat) => {
                    let once = self.strung(&repeat.of, fill);
                    groups.extend(std::iter::repeat_n(once, repeat.repeat.or(fill) as usize));
                }
                Item::Stop(_) => {}
                _ => groups.push(self.strung(std::slice::from_ref(item), fill)),
            }
        }
        groups
    }

    /// Puts the strand's knots between neighbouring beads.
    pub fn knotted(&self, row: Vec<Strung>) -> Vec<Strung> {
        let Some(knot) = self.given.knots else { return row };
        let is_bead = |one: &Strung| matches!(one.what, What::Bead(_));
        let mut knotted: Vec<Strung> = Vec::with_capacity(2 * row.len());
        for one in row {
            if is_bead(&one) && knotted.last().is_some_and(is_bead) {
                knotted.push(Strung::other(What::Knot, knot.value(), 0.0).at(one.place));
            }
            knotted.push(one);
        }
        knotted
    }

    fn strung(&self, items: &[At<Item>], fill: u32) -> Vec<Strung> {
        let mut strung = Vec::new();
        for item in items {
            let first = strung.len();
            self.add(&item.value, fill, &mut strung);
            let said_here = strung.iter_mut().skip(first).filter(|one| one.place.is_nowhere());
            said_here.for_each(|one| one.place = item.place);
        }
        strung
    }

    fn add(&self, item: &Item, fill: u32, strung: &mut Vec<Strung>) {
        match item {
            Item::Run(run) => strung.extend(self.one(&run.id).into_iter().cycle().take(run.count as usize)),
            Item::Repeat(repeat) => {
                let once = self.strung(&repeat.of, fill);
                let often = repeat.repeat.or(fill) as usize;
                strung.extend(once.iter().cycle().take(once.len() * often).cloned());
            }
            Item::Mirror(mirror) => {
                let side = self.strung(&mirror.mirror, fill);
                strung.extend(side.iter().cloned());
                strung.extend(mirror.about.iter().flat_map(|about| self.strung(about, fill)));
                strung.extend(side.into_iter().rev());
            }
            Item::Space(space) => strung.push(bare(What::Gap, space.space.value)),
            Item::Links(links) => strung.push(bare(What::Gap, self.links(links))),
            Item::Knot(knot) => strung.push(bare(What::Knot, knot.knot.value)),
            Item::Dangle(dangle) => strung.extend(self.dangle(&dangle.on.value.0, &dangle.dangle, fill)),
            Item::Row(row) => {
                let beads = rows::beads(row, fill, self);
                strung.extend(beads.into_iter().map(|bead| Strung::bead(bead, &self.shelf.beads)));
            }
            Item::Stop(_) => {}
        }
    }

    fn one(&self, id: &str) -> Option<Strung> {
        let bead = self.shelf.bead(id).map(|index| Strung::bead(index, &self.shelf.beads));
        bead.or_else(|| self.shelf.finding(id).map(|index| Strung::finding(index, &self.shelf.findings)))
    }

    /// Length of so many links; a list that counts links is on a chain that says how long they are.
    fn links(&self, links: &Links) -> Length {
        self.given.link.unwrap_or_default() * f64::from(links.links.value.0)
    }

    /// A branch takes a link of a chain whose links are known, else as much cord as its pin's loop is thick, and
    /// hangs below it.
    fn dangle(&self, on: &str, items: &[At<Item>], fill: u32) -> Option<Strung> {
        let on = self.shelf.finding(on)?;
        let finding = &self.shelf.findings[on];
        let strung = self.strung(items, fill);
        let bits = row::bits(&strung, &self.shelf.beads);
        let mass = finding.mass_of_one().value() + strung.iter().map(|one| one.mass).sum::<f64>();
        let hanger = finding.hangs() + finding.foot();
        let drop = hanger.value() - self.sunk(&strung) + bits.iter().map(super::model::Bit::length).sum::<f64>();
        let takes = self.given.link.or_else(|| finding.wire().map(|wire| *wire)).unwrap_or_default();
        Some(Strung::other(What::Dangle(Dangle { on: Some(on), bits, drop }), takes.value(), mass))
    }

    /// How far what hangs by its hole stands up into the ring or bail that goes through it.
    fn sunk(&self, strung: &[Strung]) -> f64 {
        let bead = strung.first().and_then(|one| one.what.bead()).map(|at| &self.shelf.beads[at]);
        bead.map_or(0.0, |bead| bead.above_hole().value())
    }

    /// The list as the maker says it.
    pub fn chart(&self, fill: u32) -> Vec<Phrase> {
        let mut chart = self.phrases(self.items, fill);
        let stops = chart.iter_mut().filter_map(|phrase| match phrase {
            Phrase::Stop(number, _) => Some(number),
            _ => None,
        });
        (1..).zip(stops).for_each(|(at, number)| *number = at);
        chart
    }

    fn phrases(&self, items: &[At<Item>], fill: u32) -> Vec<Phrase> {
        items.iter().filter_map(|item| self.phrase(&item.value, fill)).collect()
    }

    fn phrase(&self, item: &Item, fill: u32) -> Option<Phrase> {
        Some(match item {
            Item::Run(run) => match self.shelf.bead(&run.id) {
                Some(bead) => Phrase::Run(run.count, bead),
                None if run.count == 1 => Phrase::Finding(self.shelf.finding(&run.id)?),
                None => Phrase::Times(run.count, vec![Phrase::Finding(self.shelf.finding(&run.id)?)]),
            },
            Item::Repeat(repeat) => Phrase::Times(repeat.repeat.or(fill), self.phrases(&repeat.of, fill)),
            Item::Mirror(mirror) => {
                let about = mirror.about.iter().flat_map(|about| self.phrases(about, fill)).collect();
                Phrase::Mirror(self.phrases(&mirror.mirror, fill), about)
            }
            Item::Space(space) => Phrase::Gap(space.space.value),
            Item::Links(links) => Phrase::Links(links.links.value.0),
            Item::Knot(_) => Phrase::Knot,
            Item::Dangle(dangle) => {
                Phrase::Dangle(Some(self.shelf.finding(&dangle.on.value.0)?), self.phrases(&dangle.dangle, fill))
            }
            Item::Row(row) => rows::phrase(row, fill, self),
            // Stops stand in the strand's own list alone, where `chart` numbers them.
            Item::Stop(stop) => Phrase::Stop(0, self.shelf.finding(&stop.stop.value)?),
        })
    }
}

const fn bare(what: What, length: Length) -> Strung {
    Strung::other(what, length.value(), 0.0)
}

fn has_fill(items: &[At<Item>]) -> bool {
    items.iter().any(|item| match &item.value {
        Item::Repeat(repeat) => repeat.repeat == Times::Fill || has_fill(&repeat.of),
        Item::Mirror(mirror) => has_fill(&mirror.mirror) || mirror.about.as_deref().is_some_and(has_fill),
        Item::Row(row) => row.fills(),
        _ => false,
    })
}

/// The sum of what entries count by themselves, those of lists within them as often as these are strung when `fill`
/// means so many times.
fn counted(items: &[At<Item>], fill: u32, own: &impl Fn(&Item) -> u64) -> u64 {
    let count = |list: &[At<Item>]| counted(list, fill, own);
    let within = |item: &Item| match item {
        Item::Repeat(repeat) => count(&repeat.of).saturating_mul(u64::from(repeat.repeat.or(fill))),
        Item::Mirror(mirror) => {
            let about = mirror.about.as_deref().map_or(0, count);
            count(&mirror.mirror).saturating_mul(2).saturating_add(about)
        }
        _ => item.lists().into_iter().map(count).fold(0, u64::saturating_add),
    };
    let counts = items.iter().map(|item| own(&item.value).saturating_add(within(&item.value)));
    counts.fold(0, u64::saturating_add)
}

/// How many entries are written, a row of beads that follow no repeat as if each of them was.
fn written(items: &[At<Item>], fill: u32) -> u64 {
    let own = |item: &Item| match item {
        Item::Row(Row::Random(random)) => u64::from(random.random.value.or(fill)),
        Item::Row(Row::Fade(fade)) => u64::from(fade.fade.value.or(fill)),
        _ => 1,
    };
    let within = |item: &Item| item.lists().into_iter().map(|list| written(list, fill)).sum::<u64>();
    items.iter().map(|item| own(&item.value) + within(&item.value)).sum()
}
