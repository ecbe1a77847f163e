//! Closing the strands' ends, in words: what all ways of closing say.

use super::closure::opened;
use super::posts::between;
use super::words::{self, strand as name, strands};
use super::{Group, Told, ordinal};
use crate::design::{Index, Part, Strand};
use crate::english::{list, plural};
use crate::pattern::{FindingKind, Kind};
use crate::steps::ends::{Fastening, beside_end, beyond};
use crate::steps::posts::{self, is_hitched};
use crate::steps::side::Side;
use crate::units::Length;

impl<'a> Group<'a> {
    /// The group's first strand as a sentence names it.
    pub(super) fn whose(self) -> String {
        name(self.ends.design, self.ends.strand)
    }

    pub(super) fn cord(self) -> &'static str {
        self.teller.cord(self.ends.strand)
    }

    /// The name of the finding of a kind that closes the end.
    pub(super) fn closing(self, kind: FindingKind) -> &'a str {
        let named = self.ends.findings().find(|finding| finding.kind() == kind);
        named.map_or(kind.word(), |finding| finding.name.as_str())
    }

    /// A doubled strand's last end is both of its legs.
    pub(super) const fn last_end(self) -> &'static str {
        if self.ends.strand.legs > 1 { "both its legs" } else { "its last end" }
    }

    /// The sentence that threads something onto this end; a last end has had a stopper till now.
    pub(super) fn threads(self, what: &str) -> String {
        let whose = self.whose();
        match self.ends.side {
            Side::Last => format!("Take the bead stopper off {whose} and thread {what} onto {}.", self.last_end()),
            Side::Both | Side::First => format!("Thread {what} onto the first end of {whose}."),
        }
    }

    /// The length of the strand that the steps tell, and how it is measured.
    pub(super) fn finished_check(self) -> String {
        if self.ends.design.closure.loops() {
            let half = self.teller.units.fine(self.ends.strand.pulled() * 0.5);
            let strand = name(self.ends.design, self.ends.strand);
            return format!(
                "Pulled straight, {strand} is {half} long from the outside of its end loops to its middle."
            );
        }
        let how = match self.ends.way {
            Fastening::Linked | Fastening::Pinned | Fastening::Covered => "",
            _ if is_hitched(self.ends.design, self.ends.strand) => " (outside of each, pulled straight)",
            _ => " (outside of one end loop to outside of the other, pulled straight)",
        };
        let between = between(posts::between(self.ends.design, self.ends.strand));
        format!("From {between}{how} {}.{}", self.finished(self.ends.strand), self.slack().unwrap_or_default())
    }

    /// `the inner strand measures 419 mm`.
    fn finished(self, strand: &Strand) -> String {
        let measures = self.teller.ruler(strand.pulled());
        format!("{} measures {measures}", name(self.ends.design, strand))
    }

    /// What of the cord is bare until the strand is closed to a ring.
    fn slack(self) -> Option<String> {
        let (slack, lap) = (self.ends.strand.told_slack()?, self.lap());
        let bare = self.teller.units.fine(slack + lap);
        let bent = if self.ends.design.closure.loops() { "where the loop folds" } else { "in the round" };
        let covered = if lap > Length::ZERO {
            let cover = self.closing(FindingKind::CrimpCover);
            format!("the {cover} takes {} of that, and they take up the rest {bent}", self.teller.units.fine(lap))
        } else {
            format!("they take that up {bent}")
        };
        Some(format!(" Pushed to the first end, its beads leave about {bare} of it bare: {covered}."))
    }

    /// How far a cover that is still to come reaches beyond the last end's crimp.
    fn lap(self) -> Length {
        let covered = self.ends.findings().any(|finding| finding.kind() == FindingKind::CrimpCover);
        if covered { beyond(self.ends.design, &self.ends.strand.ends[1]) } else { Length::ZERO }
    }

    pub(super) fn length_check(self, first: &str) -> String {
        match self.ends.side {
            Side::Last => format!("{first} {}", self.finished_check()),
            _ => first.to_owned(),
        }
    }

    /// An end link or a cord end's loop hangs in a jump ring, which is opened for all that it holds, or is
    /// opened itself.
    pub(super) fn linked(self) -> Told {
        let (ends, end) = (self.ends, ordinal(self.ends.side));
        let link = match ends.way {
            Fastening::Glued => format!("the loop at the {end} end of {}", self.whose()),
            Fastening::Pinned if ends.design.strands.len() == 1 => "the loop of the pin".to_owned(),
            Fastening::Pinned => format!("the loop of the pin of {}", self.whose()),
            _ => format!("the {end} end link of {}", self.whose()),
        };
        let ring = ends.part().filter(|part| ends.design.findings[part.finding].is_open_ring());
        let text = match ring {
            None if ends.way == Fastening::Glued => format!("Hang {link} on what it goes {}.", self.target()),
            None if ends.rolls_shut() => {
                format!("Take {link} {}, and roll it shut with round-nose pliers.", self.target())
            }
            Some(ring) => opened(&self.teller.the(ring.finding, ends.side), &list(&self.hung(&link))),
            None => format!(
                "With two pairs of chain-nose pliers open {link} sideways, take it {} and close it the same way.",
                self.target()
            ),
        };
        let check = self.length_check(if ring.is_some() {
            "No gap shows where the ring closes."
        } else {
            "No gap shows where it closes."
        });
        let what = if ends.way == Fastening::Pinned { "pin".to_owned() } else { format!("{end} end") };
        Told::new(format!("Hang the {what}"), text).check(check)
    }

    /// What hangs in the ring with an end: itself, and what the ring takes beside it.
    fn hung(self, link: &str) -> Vec<String> {
        let closure = &self.ends.design.closure;
        let parts = if self.ends.side == Side::Last { closure.right() } else { closure.left() };
        let beside = beside_end(self.ends.design, parts).map(|part| format!("the {}", self.teller.name(part.finding)));
        std::iter::once(link.to_owned()).chain(beside).collect()
    }

    /// What the end goes through, as a clause: `through the eye of the eye pin`.
    pub(super) fn target(self) -> String {
        let Some(part) = self.ends.part() else { return "round in a loop".to_owned() };
        let whole = match self.ends.design.findings[part.finding].kind() {
            FindingKind::EyePin => "the eye of ",
            FindingKind::EndBar | FindingKind::BoxHalf | FindingKind::SlideHalf => return self.hole(part),
            FindingKind::Chain => "the end link of ",
            FindingKind::EarWire | FindingKind::SpectacleLoop => "the ring of ",
            FindingKind::Tassel | FindingKind::Charm => "the loop of ",
            FindingKind::ToggleRing => "the small ring of ",
            kind if kind.is_clasp() => "the ring of ",
            _ => "",
        };
        format!("through {whole}{}", self.teller.the(part.finding, self.ends.side))
    }

    /// A strand's own loop in a bar or clasp: below a neck, the innermost strand has the one nearest to it.
    fn hole(self, bar: &Part) -> String {
        let the = self.teller.the(bar.finding, self.ends.side);
        if self.ends.side == Side::Last && self.ends.design.findings[bar.finding].kind().is_clasp() {
            return format!("through the loop of {the} across from this strand's first (close the clasp to see which)");
        }
        match self.ends.strands.len() {
            1 => format!("through a loop of {the}"),
            _ if self.is_below_a_neck() => format!("through the loop of {the} that will lie nearest the neck"),
            _ => format!("through the first loop of {the}"),
        }
    }

    /// The same steps, by their numbers, for the other strands of the group.
    pub(super) fn others(self, first: usize, last: usize) -> Told {
        let others = self.ends.strands.get(1..).unwrap_or_default();
        let each = match others.len() {
            _ if !self.has_loops() => "",
            1 => ", in the next loop",
            _ => ", each in the next loop",
        };
        let text = format!("Do {} with {}{each}.", words::steps(first, last), strands(self.ends.design, others));
        let title = format!("Do the other {}", plural(others.len() as u64, "strand"));
        Told::new(title, text).check(self.others_check(others))
    }

    /// Whether the strands hang one below another.
    fn is_below_a_neck(self) -> bool {
        matches!(self.ends.design.heading.kind, Kind::Necklace | Kind::Strap)
    }

    /// Whether each strand ends in a loop of its own.
    fn has_loops(self) -> bool {
        self.ends.hangs_on().is_some_and(|finding| finding.comb().is_some())
    }

    fn others_check(self, others: &[Index<Strand>]) -> String {
        let design = self.ends.design;
        let order = words::names(design, &self.ends.strands);
        let (is_first, is_twisted) = (self.ends.side == Side::First, design.twist.is_some());
        if is_first && is_twisted {
            return "They hang side by side, in whatever order.".to_owned();
        }
        if is_first {
            let from = if self.has_loops() && !self.is_below_a_neck() { "the first loop on" } else { "the inside out" };
            return format!("From {from} they hang in this order: {order}.");
        }
        let each = others.iter().map(|at| self.finished(&design.strands[*at]));
        let from = between(posts::between(design, self.ends.strand));
        let lengths = list(&each.collect::<Vec<_>>());
        let lengths = format!("From {from} {lengths}.");
        if is_twisted {
            return lengths;
        }
        format!("They hang in the same order as at the first ends: {order}. {lengths}")
    }
}
