//! Closing the strands' ends: with crimps, in knot covers, or with knots.
//!
//! Strands whose ends close alike are told once, with the order they are hung in. A crimp is passed
//! twice by its cord and pressed; a strand that is to drape is held in a curve while its last end is
//! closed ("coil the strand 1.5 turns before closing the last crimp": a bead shop's finishing page).

use super::prepare::names;
use super::words::{a, list, strand as name};
use super::{Drawing, Step};
use crate::design::{Design, End, Finding, Part, Strand};
use crate::pattern::{CordKind, FindingKind, Kind, Settle};
use crate::units::Length;

/// Which end of the strands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    First,
    Last,
}

/// How an end is closed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Crimped,
    Covered,
    Knotted,
    /// The end link of a chain, opened and shut.
    Linked,
    /// Both ends tied to each other.
    Tied,
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

/// Close the first ends, or stop them.
pub fn first(design: &Design) -> Vec<Step> {
    groups(design, Side::First).iter().flat_map(Group::steps).collect()
}

/// Close the last ends.
pub fn last(design: &Design) -> Vec<Step> {
    groups(design, Side::Last).iter().flat_map(Group::steps).collect()
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
        Side::First => first,
        Side::Last => last,
    }
}

fn way(design: &Design, strand: &Strand, side: Side) -> Way {
    let has = |kind| end(strand, side).findings.iter().any(|at| design.findings[*at].kind == kind);
    let open = design.closure.left.is_empty() && design.closure.right.is_empty();
    let bare = strand.ends.iter().all(|end| end.findings.is_empty());
    let cord = design.cords[strand.cord].kind;
    match () {
        () if cord == CordKind::Chain => Way::Linked,
        () if has(FindingKind::Crimp) => Way::Crimped,
        () if has(FindingKind::KnotCover) => Way::Covered,
        () if bare && open => Way::Tied,
        () => Way::Knotted,
    }
}

impl Group<'_> {
    /// The group's first strand as a sentence names it.
    fn whose(&self) -> String {
        name(self.design, self.strand)
    }

    fn cord(&self) -> &str {
        &self.design.cords[self.strand.cord].name
    }

    fn findings(&self) -> impl Iterator<Item = &Finding> {
        end(self.strand, self.side).findings.iter().map(|at| &self.design.findings[*at])
    }

    fn first_of(&self, kind: FindingKind) -> Option<&str> {
        self.findings().find(|finding| finding.kind == kind).map(|finding| finding.name.as_str())
    }

    const fn ordinal(&self) -> &'static str {
        match self.side {
            Side::First => "first",
            Side::Last => "last",
        }
    }

    fn steps(&self) -> Vec<Step> {
        let mut steps = match self.way {
            Way::Crimped => self.crimped(),
            Way::Covered => self.covered(),
            Way::Knotted => self.knotted(),
            Way::Linked => self.part().map(|_| self.linked()).into_iter().collect(),
            Way::Tied => self.tied(),
        };
        steps.extend(self.others());
        steps
    }

    fn crimped(&self) -> Vec<Step> {
        let crimp = self.first_of(FindingKind::Crimp).unwrap_or("crimp");
        let mut steps = vec![self.thread(), self.loop_through(crimp), press(crimp), self.trim()];
        if let Some(cover) = self.first_of(FindingKind::CrimpCover) {
            let text = format!("Lay the {cover} over the pressed crimp and close it gently until its edges meet.");
            steps.push(Step::new("Cover the crimp", text).check("Only a smooth ball shows."));
        }
        steps
    }

    /// Thread all that sits on the cord before the end is closed.
    fn thread(&self) -> Step {
        let on_cord = |finding: &&Finding| !matches!(finding.kind, FindingKind::CrimpCover | FindingKind::WireGuard);
        let names: Vec<_> = self.findings().filter(on_cord).map(|finding| a(&finding.name)).collect();
        let whose = self.whose();
        let text = format!("Thread {} onto the {} end of {whose}.", list(&names), self.ordinal());
        Step::new(format!("Thread the {} end", self.ordinal()), text)
    }

    fn loop_through(&self, crimp: &str) -> Step {
        let guard = self.first_of(FindingKind::WireGuard);
        let round = guard.map(|guard| format!(" Lay it round the groove of {}.", a(guard))).unwrap_or_default();
        let curve = if self.side == Side::Last { self.curve() } else { "" };
        let text = format!("Take the {} {} and back through the {crimp}.{round}{curve}", self.cord(), self.target());
        Step::new("Make the loop", text).check(self.loop_check()).drawing(Drawing::CrimpOpen)
    }

    /// A packed strand closed straight is stiff when it curves round the neck or wrist.
    fn curve(&self) -> &'static str {
        match (self.strand.settle, self.design.heading.kind) {
            (Settle::Fill, Kind::Necklace | Kind::Strap) => {
                " Coil the strand one and a half turns while you draw up the slack, so that it will drape."
            }
            (Settle::Fill, Kind::Bracelet | Kind::Anklet) => {
                " Hold the strand in a round while you draw up the slack, so that it will close."
            }
            _ => " Draw up the slack until the strand has its length.",
        }
    }

    fn loop_check(&self) -> String {
        let units = self.design.heading.units;
        match self.side {
            Side::First => {
                let bight = end(self.strand, self.side).bight;
                if bight > Length::ZERO {
                    format!("The loop is {} long and moves freely.", units.ruler(bight))
                } else {
                    "The loop moves freely.".to_owned()
                }
            }
            Side::Last => self.finished_check(),
        }
    }

    fn finished_check(&self) -> String {
        let units = self.design.heading.units;
        let each = self.strands.iter().map(|at| {
            let one = &self.design.strands[*at];
            format!("{} measures {}", name(self.design, one), units.ruler(one.finished))
        });
        format!("From loop to loop {}.", list(&each.collect::<Vec<_>>()))
    }

    fn trim(&self) -> Step {
        let tail = |text: &str| Step::new("Hide the tail", text);
        let cut = match (self.strand.settle, self.side) {
            (Settle::Fill, Side::First) => return tail("Leave the tail: the first beads go over it."),
            (Settle::Fill, Side::Last) => "Pass the tail back through two or three beads and cut it off there.",
            _ => "Cut the tail off close to the crimp.",
        };
        tail(&format!("{cut} Hold the end as you cut.")).check("No sharp end can be felt.")
    }

    fn covered(&self) -> Vec<Step> {
        let cover = self.first_of(FindingKind::KnotCover).unwrap_or("knot cover");
        let end = format!("the {} end of {}", self.ordinal(), self.whose());
        let thread = format!("Thread {} onto {end}, its hollow side outward.", a(cover));
        let knot = format!("Tie a double overhand knot in the {} and draw it down into the {cover}.", self.cord());
        let close = format!("Close the {cover} over the knot and bend its hook {}.", self.target());
        vec![
            Step::new("Thread the knot cover", thread),
            Step::new("Tie the knot", knot)
                .check(self.length_check("The knot sits in the cup and does not slip through."))
                .drawing(Drawing::Knot),
            glue(),
            Step::new("Close the knot cover", close)
                .check("The halves meet and the hook is shut.")
                .drawing(Drawing::KnotCover),
        ]
    }

    fn length_check(&self, first: &str) -> String {
        match self.side {
            Side::First => first.to_owned(),
            Side::Last => format!("{first} {}", self.finished_check()),
        }
    }

    fn knotted(&self) -> Vec<Step> {
        let end = format!("the {} end of {}", self.ordinal(), self.whose());
        let text = match self.part() {
            Some(_) => format!("Take {end} {} and tie it back on itself with a double overhand knot.", self.target()),
            None => format!("Tie a double overhand knot in {end}."),
        };
        vec![
            Step::new("Tie the knot", text)
                .check(self.length_check("The knot holds when you pull."))
                .drawing(Drawing::Knot),
            glue(),
        ]
    }

    fn linked(&self) -> Step {
        let text = format!(
            "Open the {} end link of {} sideways, take it {} and close it the same way.",
            self.ordinal(),
            self.whose(),
            self.target()
        );
        let check = self.length_check("No gap shows where the link closes.");
        Step::new("Hang the chain", text).check(check).drawing(Drawing::OpenLink)
    }

    fn tied(&self) -> Vec<Step> {
        let whose = self.whose();
        if self.side == Side::First {
            let text = format!("Put a bead stopper, or a piece of tape, on one end of {whose}.");
            return vec![Step::new("Stop the end", text).check("A bead cannot slip off that end.")];
        }
        let knot = format!(
            "Take the stoppers off {whose} and tie its two ends together with a surgeon's knot: twice over, then \
             once back. Draw the beads snug first, and pull the knot tight from both sides.",
        );
        let hide = "Slide the knot into the nearest bead that holds it.";
        vec![
            Step::new("Tie the ends", knot)
                .check("The knot holds when you stretch the piece gently.")
                .drawing(Drawing::SurgeonsKnot),
            glue(),
            Step::new("Hide the knot", hide).check("No tail sticks out."),
        ]
    }

    /// The closure's part that this side's ends hang on. Both ends of a loop hang on the one
    /// ear wire.
    fn part(&self) -> Option<&Part> {
        let (left, right) = (self.design.closure.left.first(), self.design.closure.right.first());
        let (near, far) = if self.side == Side::First { (left, right) } else { (right, left) };
        near.or_else(|| far.filter(|_| self.design.closure.loops))
    }

    /// What the end goes through, as a clause: `through the eye of the eye pin`.
    fn target(&self) -> String {
        let Some(part) = self.part() else { return "round in a loop".to_owned() };
        let finding = &self.design.findings[part.finding];
        let whole = match finding.kind {
            FindingKind::EyePin => "the eye of ",
            FindingKind::EndBar => "its own hole in ",
            FindingKind::Chain => "the end link of ",
            FindingKind::Clasp | FindingKind::EarWire => "the ring of ",
            _ => "",
        };
        format!("through {whole}the {}", finding.name)
    }

    /// The same for the other strands of the group.
    fn others(&self) -> Option<Step> {
        let (_, others) = self.strands.split_first()?;
        let text = format!("Do the same with {}.", names(self.design, others));
        let pin = self.part().is_some_and(|part| self.design.findings[part.finding].kind == FindingKind::EyePin);
        let order = format!("From the inside out they hang in this order: {}.", names(self.design, &self.strands));
        let step = Step::new("Do the other strands", text).check(order);
        (!others.is_empty()).then(|| if pin { step.drawing(Drawing::Gather) } else { step })
    }
}

fn press(crimp: &str) -> Step {
    let text = format!(
        "Press the {crimp} in the notched jaw of the crimping pliers, with one pass of the cord on each side of the \
         dent. Turn it a quarter and fold it shut in the round jaw."
    );
    Step::new("Press the crimp", text).check("Pull at the loop: nothing slips.").drawing(Drawing::CrimpPressed)
}

fn glue() -> Step {
    Step::new("Set the knot", "Put a small drop of jewellery glue on the knot, let it dry, and cut the tail short.")
        .check("The knot is dry and hard.")
}
