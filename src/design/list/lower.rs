//! From a bead list as written to one in which all names are known and everything stands where it may.
//!
//! What may stand where is said here alone, a function for each kind of list. Everything that is wrong in a list has
//! its remark, what stands within something that is wrong too.

use crate::pattern::{self, Dangle, Mirror, Repeat, Run, Times};
use crate::remark::Remark;
use crate::remark::said::Said;
use crate::remark::said::spot::Misplaced;
use crate::remark::said::strand::Strand;
use crate::source::{At, Place};

use crate::design::Context;
use crate::design::rows::{self, Rule};
use crate::design::spot::{self, Spot};

use super::{Along, Branch, Entry, Given, Item, List, Own, Stop, Stretch, Twig};

type Written = At<pattern::Item>;

/// Lowers a strand's list; leaves a remark for everything that is wrong in it.
pub fn list<'a>(written: &'a [Written], given: Given<'a>, context: &mut Context) -> Option<List<'a>> {
    let mut lower = Lower { given, context };
    let (mut held, mut items) = (Vec::new(), Vec::new());
    for item in written {
        match &item.value {
            pattern::Item::Stop(stop) => held.push((std::mem::take(&mut items), lower.stop(stop, item.place))),
            _ => items.push(lower.own(item)),
        }
    }
    let held = held.into_iter().map(|(items, stop)| Some((Stretch(all(items)?), stop?)));
    Some(List { held: all(held)?, last: Stretch(all(items)?), given })
}

/// All of them, where none is missing.
fn all<T>(each: impl IntoIterator<Item = Option<T>>) -> Option<Vec<T>> {
    each.into_iter().collect()
}

/// Lowers the entries of one kind of list.
type Each<'a, 'c, More> = fn(&mut Lower<'a, 'c>, &'a Written) -> Option<Item<'a, More>>;

struct Lower<'a, 'c> {
    given: Given<'a>,
    context: &'c mut Context,
}

impl<'a, 'c> Lower<'a, 'c> {
    /// An entry of the strand's own list, where a row may fill it.
    fn own(&mut self, item: &'a Written) -> Option<At<Own<'a>>> {
        let own = match &item.value {
            pattern::Item::Row(row) if row.fills() => Own::Row(self.row(row, item.place)?.0),
            _ => Own::Entry(self.entry(item)?),
        };
        Some(At::new(own, item.place))
    }

    /// An entry of a list along the cord, where no stop stands.
    fn entry(&mut self, item: &'a Written) -> Option<Entry<'a>> {
        let place = item.place;
        match &item.value {
            pattern::Item::Run(run) => self.run(run, place),
            pattern::Item::Repeat(repeat) => {
                let of = self.repeated(repeat, place, Self::entry)?;
                Some(match repeat.repeat {
                    Times::Count(times) => Item::Repeat(times, of),
                    Times::Fill => Item::More(Along::Fill(of)),
                })
            }
            pattern::Item::Mirror(mirror) => self.mirror(mirror, place, Self::entry),
            pattern::Item::Space(space) => Some(Item::Space(space.space.value)),
            pattern::Item::Row(row) => self.counted(row, place),
            pattern::Item::Links(_) if self.given.link.is_none() => self.refuse(Strand::LinkUnknown, place),
            pattern::Item::Links(links) => Some(Item::More(Along::Links(links.links.value.0))),
            pattern::Item::Knot(knot) => Some(Item::More(Along::Knot(knot.knot.value))),
            pattern::Item::Dangle(dangle) => Some(Item::More(Along::Branch(self.branch(dangle)?))),
            pattern::Item::Stop(stop) => {
                self.stop(stop, place);
                self.refuse(Misplaced::NestedStop, place)
            }
        }
    }

    /// An entry of a branch's list, where no stop stands, nothing fills, and no knot, link or other branch is.
    fn twig(&mut self, item: &'a Written) -> Option<Twig<'a>> {
        let place = item.place;
        match &item.value {
            pattern::Item::Run(run) => self.run(run, place),
            pattern::Item::Repeat(repeat) => {
                let of = self.repeated(repeat, place, Self::twig);
                match repeat.repeat {
                    Times::Count(times) => Some(Item::Repeat(times, of?)),
                    Times::Fill => self.refuse(Misplaced::FillInDangle, place),
                }
            }
            pattern::Item::Mirror(mirror) => self.mirror(mirror, place, Self::twig),
            pattern::Item::Space(space) => Some(Item::Space(space.space.value)),
            pattern::Item::Row(row) => self.counted(row, place),
            pattern::Item::Links(_) => self.refuse(Misplaced::LinksInDangle, place),
            pattern::Item::Knot(_) => self.refuse(Misplaced::KnotInDangle, place),
            pattern::Item::Dangle(dangle) => {
                self.branch(dangle);
                self.refuse(Misplaced::DangleInDangle, place)
            }
            pattern::Item::Stop(stop) => {
                self.stop(stop, place);
                self.refuse(Misplaced::NestedStop, place)
            }
        }
    }

    fn list<More>(&mut self, items: &'a [Written], each: Each<'a, 'c, More>) -> Option<Vec<At<Item<'a, More>>>> {
        // All before any is missed, so that each has its remark.
        let lowered: Vec<_> = items.iter().map(|item| Some(At::new(each(self, item)?, item.place))).collect();
        all(lowered)
    }

    fn run<More>(&mut self, run: &Run, place: Place) -> Option<Item<'a, More>> {
        let piece = spot::strung(&At::new(run.id.clone(), place), self.given.shelf, self.context)?;
        Some(Item::Run(run.count, piece))
    }

    fn repeated<More>(
        &mut self,
        repeat: &'a Repeat,
        place: Place,
        each: Each<'a, 'c, More>,
    ) -> Option<Vec<At<Item<'a, More>>>> {
        let strings = self.strings(&[&repeat.of], place);
        strings.and(self.list(&repeat.of, each))
    }

    fn mirror<More>(&mut self, mirror: &'a Mirror, place: Place, each: Each<'a, 'c, More>) -> Option<Item<'a, More>> {
        let (side, about) = (&mirror.mirror, mirror.about.as_deref().unwrap_or_default());
        let strings = self.strings(&[side, about], place);
        let (side, about) = (self.list(side, each), self.list(about, each));
        strings.and(Some(Item::Mirror(side?, about?)))
    }

    /// Refuses a repeat or mirror that strings nothing, unless what it strings cannot be read.
    fn strings(&mut self, lists: &[&[Written]], place: Place) -> Option<()> {
        let nothing = lists.iter().all(|items| strings_nothing(items)) && !self.context.holes.spoil(place);
        self.context.refuse_if(nothing.then(|| Remark::new(Strand::NothingStrung).at(place)))
    }

    fn branch(&mut self, dangle: &'a Dangle) -> Option<Branch<'a>> {
        let on = At::new(dangle.on.value.0.clone(), dangle.on.place);
        let on = spot::finding(&on, Spot::Hanger, self.given.shelf, self.context);
        let of = self.list(&dangle.dangle, Self::twig);
        Some(Branch { on: on?, of: of? })
    }

    fn stop(&mut self, stop: &pattern::Stop, place: Place) -> Option<At<Stop>> {
        let finding = spot::finding(&stop.stop, Spot::Stop, self.given.shelf, self.context)?;
        Some(At::new(Stop { finding: At::new(finding, stop.stop.place), at: stop.at.value }, place))
    }

    /// A row, and how many beads or steps it says; nothing of one that fills its strand.
    fn row(&mut self, row: &'a pattern::Row, place: Place) -> Option<(Rule<'a>, Option<u32>)> {
        rows::lower(row, place, self.given, self.context)
    }

    /// A row that does not fill, as none may but in the strand's own list.
    fn counted<More>(&mut self, row: &'a pattern::Row, place: Place) -> Option<Item<'a, More>> {
        let lowered = self.row(row, place);
        if row.fills() {
            return self.refuse(Misplaced::NestedRow, place);
        }
        let (rule, step) = lowered?;
        Some(Item::Row(rule, step?))
    }

    fn refuse<T>(&mut self, wrong: impl Into<Said>, place: Place) -> Option<T> {
        self.context.refuse(Remark::new(wrong).at(place))
    }
}

fn strings_nothing(items: &[Written]) -> bool {
    items.iter().all(|item| match &item.value {
        pattern::Item::Repeat(repeat) => strings_nothing(&repeat.of),
        pattern::Item::Mirror(mirror) => {
            strings_nothing(&mirror.mirror) && mirror.about.as_deref().is_none_or(strings_nothing)
        }
        _ => false,
    })
}
