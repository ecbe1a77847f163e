//! Closing the strands' ends: with crimps, in knot covers or cord ends, with knots, or by a folded cord's
//! hitch.
//!
//! Strands whose ends close alike are told once, with the order they are hung in. A crimp is passed
//! twice by its cord and pressed; a strand that is to drape is held in a curve while its last end is
//! closed ("coil the strand 1.5 turns before closing the last crimp": a bead shop's finishing page).

mod crimped;
mod glued;
mod knotted;

use super::posts::between;
use super::side::Side;
use super::words::{self, list, strand as name, strands};
use super::{Drawing, Step};
use crate::design::{Design, End, Finding, Part, Strand};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::units::Length;

/// Bare cord by which a strand's length can be tuned: what a ruler shows.
const TUNABLE: Length = Length::mm(1.0);

/// How an end is closed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Crimped,
    Covered,
    /// In a cord end, with glue.
    Glued,
    Knotted,
    /// The end link of a chain, opened and shut.
    Linked,
    /// Both ends tied to each other.
    Tied,
    /// The fold of a doubled cord, hitched with a lark's head.
    Hitched,
}

/// Strands whose ends on one side are closed alike.
struct Group<'a> {
    design: &'a Design,
    side: Side,
    way: Way,
    /// The first of them, which the steps tell.
    strand: &'a Strand,
    strands: Vec<usize>,
}

/// Close the first ends, or stop them, after as many steps as are done.
pub fn first(design: &Design, done: usize) -> Vec<Step> {
    told(design, Side::First, done)
}

/// Close the last ends, after as many steps as are done.
pub fn last(design: &Design, done: usize) -> Vec<Step> {
    told(design, Side::Last, done)
}

/// The steps of one side, which follow as many as are done.
fn told(design: &Design, side: Side, done: usize) -> Vec<Step> {
    let mut steps = Vec::new();
    for group in groups(design, side) {
        let more = group.steps(done + steps.len());
        steps.extend(more);
    }
    steps
}

/// What closes the strands' ends, each in a word.
pub fn closings(design: &Design) -> Vec<&'static str> {
    let closing = |strand: &Strand| match way(design, strand, Side::First) {
        Way::Crimped => "crimp",
        Way::Covered => "knot cover",
        Way::Glued => "cord end",
        Way::Linked => "end link",
        Way::Hitched => "lark's head",
        Way::Knotted | Way::Tied => "knot",
    };
    let mut closings: Vec<_> = design.strands.iter().map(closing).collect();
    closings.dedup();
    closings
}

fn groups(design: &Design, side: Side) -> Vec<Group<'_>> {
    let ats: Vec<usize> = (0..design.strands.len()).collect();
    let kind = |at: &usize| (design.strands[*at].cord, &end(&design.strands[*at], side).findings);
    let alike = ats.chunk_by(|a, b| kind(a) == kind(b));
    let group = |strands: &[usize]| {
        let strand = &design.strands[*strands.first()?];
        Some(Group { design, side, way: way(design, strand, side), strand, strands: strands.to_vec() })
    };
    alike.filter_map(group).collect()
}

const fn end(strand: &Strand, side: Side) -> &End {
    let [first, last] = &strand.ends;
    match side {
        Side::Both | Side::First => first,
        Side::Last => last,
    }
}

fn way(design: &Design, strand: &Strand, side: Side) -> Way {
    let has = |kind| end(strand, side).findings.iter().any(|at| design.findings[*at].kind() == kind);
    let open = design.closure.is_empty();
    let bare = strand.ends.iter().all(|end| end.findings.is_empty());
    let cord = design.cords[strand.cord].kind;
    match () {
        () if strand.legs > 1 && side != Side::Last => Way::Hitched,
        () if cord == CordKind::Chain => Way::Linked,
        () if has(FindingKind::Crimp) => Way::Crimped,
        () if has(FindingKind::KnotCover) => Way::Covered,
        () if has(FindingKind::CordEnd) => Way::Glued,
        () if bare && open => Way::Tied,
        () => Way::Knotted,
    }
}

/// Whether strands end in something that a ring is opened for: a link of chain, or a cord end's loop.
pub fn is_hung(design: &Design) -> bool {
    let hangs = |strand: &Strand| matches!(way(design, strand, Side::First), Way::Linked | Way::Glued);
    design.strands.iter().any(hangs)
}

/// What a jump ring takes beside the end of a strand that hangs in it: it is opened once for both.
pub fn beside_end<'a>(design: &Design, parts: &'a [Part]) -> Option<&'a Part> {
    match parts {
        [ring, next, ..] if is_hung(design) && next.cut.is_none() => {
            Some(next).filter(|_| design.findings[ring.finding].is_open_ring())
        }
        _ => None,
    }
}

/// Whether a strand is closed with glue: in cord ends, or with knots, which it sets.
pub fn is_glued(design: &Design, strand: &Strand) -> bool {
    let sides = [Side::First, Side::Last].map(|side| way(design, strand, side));
    sides.into_iter().any(|way| matches!(way, Way::Covered | Way::Glued | Way::Knotted | Way::Tied))
}

/// How many stoppers a strand takes while it is strung.
pub fn stops(design: &Design, strand: &Strand) -> u64 {
    match way(design, strand, Side::Last) {
        Way::Linked => 0,
        Way::Tied => 2,
        Way::Crimped | Way::Covered | Way::Glued | Way::Knotted | Way::Hitched => 1,
    }
}

/// Whether a strand's first tail stays for the first beads to go over.
pub fn keeps_tail(design: &Design, strand: &Strand) -> bool {
    strand.settle == Settle::Fill && way(design, strand, Side::First) == Way::Crimped
}

impl Group<'_> {
    /// The group's first strand as a sentence names it.
    fn whose(&self) -> String {
        name(self.design, self.strand)
    }

    fn cord(&self) -> &'static str {
        self.design.cords[self.strand.cord].kind.word()
    }

    /// Whether beads stand against both ends, so that the tails can hide in them.
    fn fills(&self) -> bool {
        self.strand.settle == Settle::Fill
    }

    /// Whether there is no bare cord by which the length could be tuned.
    fn is_packed(&self) -> bool {
        self.fills() && self.strand.bare() < TUNABLE
    }

    fn findings(&self) -> impl Iterator<Item = &Finding> {
        end(self.strand, self.side).findings.iter().map(|at| &self.design.findings[*at])
    }

    fn first_of(&self, kind: FindingKind) -> Option<&str> {
        self.findings().find(|finding| finding.kind() == kind).map(|finding| finding.name.as_str())
    }

    fn steps(&self, done: usize) -> Vec<Step> {
        let mut steps = match self.way {
            Way::Crimped => self.crimped(),
            Way::Covered => self.covered(),
            Way::Glued => self.glued(),
            Way::Knotted => self.knotted(),
            Way::Linked => self.part().map(|_| self.linked()).into_iter().collect(),
            Way::Tied => self.tied(),
            Way::Hitched => vec![self.hitched()],
        };
        if !steps.is_empty() {
            steps.extend(self.others(&words::steps(done + 1, done + steps.len())));
        }
        steps
    }

    /// A doubled strand's last end is both of its legs.
    const fn last_end(&self) -> &'static str {
        if self.strand.legs > 1 { "both its legs" } else { "its last end" }
    }

    /// The sentence that threads something onto this end; a last end has had a stopper till now.
    fn threads(&self, what: &str) -> String {
        let whose = self.whose();
        match self.side {
            Side::Last => format!("Take the bead stopper off {whose} and thread {what} onto {}.", self.last_end()),
            Side::Both | Side::First => format!("Thread {what} onto the first end of {whose}."),
        }
    }

    /// The length of the strand that the steps tell, and how it is measured.
    fn finished_check(&self) -> String {
        let how = match self.way {
            Way::Linked | Way::Covered => "",
            _ => " (outside of one end loop to outside of the other, pulled straight)",
        };
        format!("From {}{how} {}.", between(self.design, self.strand), self.finished(self.strand))
    }

    /// `the inner strand measures 419 mm`.
    fn finished(&self, strand: &Strand) -> String {
        format!("{} measures {}", name(self.design, strand), self.design.heading.units.ruler(strand.finished))
    }

    fn length_check(&self, first: &str) -> String {
        match self.side {
            Side::Last => format!("{first} {}", self.finished_check()),
            _ => first.to_owned(),
        }
    }

    /// An end link or a cord end's loop hangs in a jump ring, which is opened for all that it holds, or is
    /// opened itself.
    fn linked(&self) -> Step {
        let link = match self.way {
            Way::Glued => format!("the loop at the {} end of {}", self.side.end(), self.whose()),
            _ => format!("the {} end link of {}", self.side.end(), self.whose()),
        };
        let parts = if self.side == Side::Last { self.design.closure.right() } else { self.design.closure.left() };
        let name = |part: &Part| format!("the {}", self.design.findings[part.finding].name);
        let hung: Vec<_> = std::iter::once(link.clone()).chain(beside_end(self.design, parts).map(name)).collect();
        let ring = self.part().filter(|part| self.design.findings[part.finding].is_open_ring());
        let text = match ring {
            None if self.way == Way::Glued => format!("Hang {link} on what it goes {}.", self.target()),
            Some(ring) => format!(
                "Open {} sideways, like a door. Hang {} in it and close it the same way.",
                self.side.the(self.design, ring.finding),
                list(&hung)
            ),
            None => format!("Open {link} sideways, take it {} and close it the same way.", self.target()),
        };
        let check = self.length_check(if ring.is_some() {
            "No gap shows where the ring closes."
        } else {
            "No gap shows where it closes."
        });
        let title = format!("Hang the {} end", self.side.end());
        Step::new(title, text).check(check).drawing(Drawing::OpenLink)
    }

    /// The closure's part that this side's ends hang on. Both ends of a loop hang on the one
    /// ear wire.
    fn part(&self) -> Option<&Part> {
        let (left, right) = (self.design.closure.left().first(), self.design.closure.right().first());
        let (near, far) = if self.side == Side::First { (left, right) } else { (right, left) };
        near.or_else(|| far.filter(|_| self.design.closure.loops()))
    }

    /// What the end goes through, as a clause: `through the eye of the eye pin`.
    fn target(&self) -> String {
        let Some(part) = self.part() else { return "round in a loop".to_owned() };
        let finding = &self.design.findings[part.finding];
        let whole = match finding.kind() {
            FindingKind::EyePin => "the eye of ",
            FindingKind::EndBar => return self.hole(part),
            FindingKind::Chain => "the end link of ",
            FindingKind::EarWire | FindingKind::SpectacleLoop => "the ring of ",
            kind if kind.is_clasp() => "the ring of ",
            _ => "",
        };
        format!("through {whole}{}", self.side.the(self.design, part.finding))
    }

    /// A strand's own loop in a bar: the innermost strand has the one nearest the neck.
    fn hole(&self, bar: &Part) -> String {
        let which = if self.strands.len() > 1 { "the loop nearest the neck" } else { "a loop" };
        format!("through {which} of {}", self.side.the(self.design, bar.finding))
    }

    /// The same steps, by their numbers, for the other strands of the group.
    fn others(&self, numbers: &str) -> Option<Step> {
        let (_, others) = self.strands.split_first()?;
        let bar = self.part().is_some_and(|part| self.design.findings[part.finding].kind() == FindingKind::EndBar);
        let each = if bar { ", each in the next loop" } else { "" };
        let text = format!("Do {numbers} with {}{each}.", strands(self.design, others));
        let pin = self.part().is_some_and(|part| self.design.findings[part.finding].kind() == FindingKind::EyePin);
        let step = Step::new("Do the other strands", text).check(self.others_check(others));
        let step = if pin { step.drawing(Drawing::gather(self.strands.len())) } else { step };
        (!others.is_empty()).then_some(step)
    }

    fn others_check(&self, others: &[usize]) -> String {
        let order = words::names(self.design, &self.strands);
        if self.side == Side::First {
            return format!("From the inside out they hang in this order: {order}.");
        }
        let each = others.iter().map(|at| self.finished(&self.design.strands[*at]));
        let from = between(self.design, self.strand);
        let lengths = list(&each.collect::<Vec<_>>());
        format!("They hang in the same order as at the first ends: {order}. From {from} {lengths}.")
    }
}
