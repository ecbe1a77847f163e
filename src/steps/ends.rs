//! Closing the strands' ends: with crimps, in knot covers or cord ends, with knots, or by a folded cord's
//! hitch.
//!
//! Strands whose ends close alike are told once, with the order they are hung in. A crimp is passed
//! twice by its cord and pressed; a strand that is to drape is held in a curve while its last end is
//! closed ("coil the strand 1.5 turns before closing the last crimp": a bead shop's finishing page).

use std::collections::BTreeMap;

use super::side::Side;
use super::tail::{Hides, hides};
use super::task::{EndWork, Task};
use super::tools::{Needle, needle};
use super::{Drawing, Knotted, Slack, Step};
use crate::design::{Design, End, Finding, Index, Part, Strand};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::trade::packing::packing_ratio;
use crate::trade::usual;
use crate::units::Length;

/// Bare cord by which a strand's length can be tuned: what a ruler shows.
const TUNABLE: Length = Length::mm(1.0);

/// How an end is closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fastening {
    /// With a crimp.
    Crimped,
    /// In a knot cover.
    Covered,
    /// In a cord end, with glue.
    Glued,
    /// With a knot on what it goes round.
    Knotted,
    /// The end link of a chain, opened and shut.
    Linked,
    /// The loop of the pin on which the whole strand hangs; nothing at its last end.
    Pinned,
    /// A loop turned of the cord itself, which is hard wire.
    Turned,
    /// Both ends tied to each other.
    Tied,
    /// The fold of a doubled cord, hitched with a lark's head.
    Hitched,
}

/// Strands whose ends on one side are closed alike.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct AlikeEnds<'d> {
    /// Of what they are strands.
    pub design: &'d Design,
    /// Which ends.
    pub side: Side,
    /// How they are closed.
    pub way: Fastening,
    /// The first of them, which the steps tell.
    pub strand: &'d Strand,
    /// All of them.
    pub strands: Vec<Index<Strand>>,
}

/// Close the first ends, or stop them, after as many steps as are done.
pub fn first(design: &Design, done: usize) -> Vec<Step<'_>> {
    told(design, Side::First, done)
}

/// Close the last ends, after as many steps as are done.
pub fn last(design: &Design, done: usize) -> Vec<Step<'_>> {
    told(design, Side::Last, done)
}

/// The steps of one side, which follow as many as are done.
fn told(design: &Design, side: Side, done: usize) -> Vec<Step<'_>> {
    let mut steps = Vec::new();
    for group in groups(design, side) {
        let more = group.steps(done + steps.len());
        steps.extend(more);
    }
    steps
}

/// The ways in which the strands' first ends are closed, neighbours that are alike once.
pub fn closings(design: &Design) -> Vec<Fastening> {
    let mut closings: Vec<_> = design.strands.iter().map(|strand| way(design, strand, Side::First)).collect();
    closings.dedup_by_key(|way| if *way == Fastening::Tied { Fastening::Knotted } else { *way });
    closings
}

fn groups(design: &Design, side: Side) -> Vec<AlikeEnds<'_>> {
    let ats: Vec<_> = design.strands.indices().collect();
    let kind = |at: &Index<Strand>| (design.strands[*at].cord, &end(&design.strands[*at], side).findings);
    let alike = ats.chunk_by(|a, b| kind(a) == kind(b));
    let group = |strands: &[Index<Strand>]| {
        let strand = &design.strands[*strands.first()?];
        Some(AlikeEnds { design, side, way: way(design, strand, side), strand, strands: strands.to_vec() })
    };
    alike.filter_map(group).collect()
}

/// A strand's end on a side.
pub const fn end(strand: &Strand, side: Side) -> &End {
    let [first, last] = &strand.ends;
    match side {
        Side::Both | Side::First => first,
        Side::Last => last,
    }
}

/// How a strand's end on a side is closed.
pub fn way(design: &Design, strand: &Strand, side: Side) -> Fastening {
    let has = |kind| end(strand, side).findings.iter().any(|at| design.findings[*at].kind() == kind);
    let open = design.closure.is_empty();
    let bare = strand.ends.iter().all(|end| end.findings.is_empty());
    let cord = design.cords[strand.cord].kind;
    match () {
        () if strand.legs > 1 && side != Side::Last => Fastening::Hitched,
        () if strand.is_on_pin(design) => Fastening::Pinned,
        () if cord == CordKind::Chain => Fastening::Linked,
        () if has(FindingKind::Crimp) => Fastening::Crimped,
        () if has(FindingKind::KnotCover) => Fastening::Covered,
        () if has(FindingKind::CordEnd) => Fastening::Glued,
        () if design.cords[strand.cord].is_sprung() => Fastening::Turned,
        () if bare && open => Fastening::Tied,
        () => Fastening::Knotted,
    }
}

/// Whether strands end in something that a ring is opened for: a link of chain, or a cord end's loop.
pub fn is_hung(design: &Design) -> bool {
    let hangs = |strand: &Strand| {
        matches!(way(design, strand, Side::First), Fastening::Linked | Fastening::Glued | Fastening::Pinned)
    };
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
    sides
        .into_iter()
        .any(|way| matches!(way, Fastening::Covered | Fastening::Glued | Fastening::Knotted | Fastening::Tied))
}

/// How wide inside the ring of a finding must be for the cords that end on it, where nothing says how wide it is and usual
/// rings may not do.
#[must_use]
pub fn ring_needed(design: &Design, finding: Index<Finding>) -> Option<Length> {
    let ring = &design.findings[finding];
    let is_ring = ring.kind().is_clasp() || ring.has_loop() || ring.kind() == FindingKind::EarWire;
    if !is_ring || ring.comb().is_some() || ring.inside().is_some() {
        return None;
    }
    let goes_through = |ends: &AlikeEnds<'_>| {
        ends.part().is_some_and(|part| part.finding == finding)
            && matches!(ends.way, Fastening::Crimped | Fastening::Knotted | Fastening::Hitched)
    };
    let ends = [Side::First, Side::Last].into_iter().flat_map(|side| groups(design, side)).filter(goes_through);
    let strands: Vec<_> = ends.flat_map(|ends| ends.strands).map(|at| &design.strands[at]).collect();
    let thickest = strands.iter().map(|strand| design.cords[strand.cord].diameter).fold(Length::ZERO, Length::max);
    let needed = thickest * packing_ratio(strands.iter().map(|strand| strand.legs).sum());
    (needed > usual::RING).then_some(needed)
}

/// How many stoppers a strand takes while it is strung.
pub fn stops(design: &Design, strand: &Strand) -> u64 {
    match way(design, strand, Side::Last) {
        Fastening::Linked | Fastening::Pinned | Fastening::Turned => 0,
        Fastening::Tied => 2,
        Fastening::Crimped | Fastening::Covered | Fastening::Glued | Fastening::Knotted | Fastening::Hitched => 1,
    }
}

impl<'d> AlikeEnds<'d> {
    /// Whether beads stand against both ends.
    pub fn fills(&self) -> bool {
        self.strand.settle == Settle::Fill
    }

    /// Whether an awl leads its knot down into its cover: one that is tied round a bead goes in with that, and a needle that is
    /// bought leads one too.
    pub fn is_led_by_awl(&self) -> bool {
        self.findings().all(|finding| finding.knotted_bead().is_none())
            && needle(self.design, self.strand) != Some(Needle::Bought)
    }

    /// Its strands, by how far their tails go through the beads beside them: alike once, the farthest first.
    pub fn hides(&self) -> Vec<(Hides, Vec<Index<Strand>>)> {
        let mut all: BTreeMap<Hides, Vec<Index<Strand>>> = BTreeMap::new();
        for at in &self.strands {
            all.entry(hides(self.design, &self.design.strands[*at], self.side)).or_default().push(*at);
        }
        all.into_iter().collect()
    }

    /// Whether the tail of the strand that the steps tell goes through no bead.
    fn cuts_tail(&self) -> bool {
        hides(self.design, self.strand, self.side) == Hides::Nowhere
    }

    /// Whether there is no bare cord by which the length could be tuned.
    pub fn is_packed(&self) -> bool {
        self.fills() && self.strand.bare() < TUNABLE
    }

    /// The findings that close the end, from the loop inward.
    pub fn findings(&self) -> impl Iterator<Item = &'d Finding> {
        let design = self.design;
        end(self.strand, self.side).findings.iter().map(move |at| &design.findings[*at])
    }

    fn first_of(&self, kind: FindingKind) -> Option<Index<Finding>> {
        let each = end(self.strand, self.side).findings.iter().copied();
        each.into_iter().find(|at| self.design.findings[*at].kind() == kind)
    }

    /// The closure's part that this side's ends hang on. Both ends of a loop hang on the one
    /// ear wire.
    pub fn part(&self) -> Option<&'d Part> {
        let closure = &self.design.closure;
        let (left, right) = (closure.left().first(), closure.right().first());
        let (near, far) = if self.side == Side::First { (left, right) } else { (right, left) };
        near.or_else(|| far.filter(|_| closure.loops()))
    }

    /// The finding that the ends hang on.
    pub fn hangs_on(&self) -> Option<&'d Finding> {
        self.part().map(|part| &self.design.findings[part.finding])
    }

    fn steps(&self, done: usize) -> Vec<Step<'d>> {
        let work = match self.way {
            Fastening::Crimped => self.crimped(),
            Fastening::Covered => {
                vec![EndWork::ThreadCover, EndWork::TieInCover, EndWork::Set { tails: false }, EndWork::CloseCover]
            }
            Fastening::Glued => {
                let link = self.part().map(|_| EndWork::Link);
                [EndWork::Square, EndWork::Glue].into_iter().chain(link).collect()
            }
            Fastening::Knotted => vec![EndWork::Tie, EndWork::Set { tails: self.strand.legs > 1 }],
            Fastening::Linked | Fastening::Pinned => self.part().map(|_| EndWork::Link).into_iter().collect(),
            Fastening::Tied if self.side == Side::First => vec![EndWork::Stop],
            Fastening::Tied if self.design.meeting().is_some() => vec![EndWork::Meet, EndWork::Set { tails: true }],
            Fastening::Tied => {
                let hide = self.knot_fits_a_bead().then_some(EndWork::Hide);
                [EndWork::TieEnds, EndWork::Set { tails: true }].into_iter().chain(hide).collect()
            }
            Fastening::Hitched => vec![EndWork::Hitch],
            Fastening::Turned => vec![EndWork::Turn],
        };
        let again = (!work.is_empty() && self.strands.len() > 1).then(|| EndWork::Others(done + 1, done + work.len()));
        work.into_iter().chain(again).map(|work| self.step(work)).collect()
    }

    /// Whether its pin's loop is closed where it hangs, and not in a ring that opens for it.
    pub fn rolls_shut(&self) -> bool {
        self.way == Fastening::Pinned && !self.hangs_on().is_some_and(Finding::is_open_ring)
    }

    /// Whether some bead's hole is wide enough for the knot in which the ends are tied to each other.
    fn knot_fits_a_bead(&self) -> bool {
        let knot = self.strand.knot_width(self.design);
        let beads = self.strand.bits().filter_map(|bit| bit.what.bead());
        beads.into_iter().any(|bead| *self.design.beads[bead].hole >= knot)
    }

    fn crimped(&self) -> Vec<EndWork> {
        let Some(crimp) = self.first_of(FindingKind::Crimp) else { return Vec::new() };
        let draw_up = (self.side == Side::Last).then_some(EndWork::DrawUp);
        let cover = self.first_of(FindingKind::CrimpCover).map(EndWork::CoverCrimp);
        let loops = [EndWork::Thread, EndWork::Loop(crimp)].into_iter().chain(draw_up);
        loops.chain([EndWork::Press(crimp), EndWork::Trim]).chain(cover).collect()
    }

    fn step(&self, work: EndWork) -> Step<'d> {
        let drawing = self.drawing(work);
        Step { drawing, ..Step::new(Task::End(self.clone(), work)) }
    }

    /// The knot that closes these ends.
    fn knotted(&self) -> Knotted {
        let legs = if self.strand.legs > 1 { 2 } else { 1 };
        let (hanging, through) = self.design.met();
        match self.way {
            Fastening::Covered => Knotted::Covered(self.strand.in_end_knots(self.design).next().is_some()),
            Fastening::Tied if through.is_empty() => Knotted::Ends,
            Fastening::Tied => Knotted::Met(!hanging.is_empty()),
            _ if self.is_free() => Knotted::Free(legs),
            _ => Knotted::Back(legs),
        }
    }

    /// Whether they hang free, of a piece that is worn open.
    pub fn is_free(&self) -> bool {
        self.part().is_none() && self.design.closure.open().is_some()
    }

    /// What its crimp stands against.
    fn slack(&self) -> Slack {
        match () {
            () if !self.fills() => Slack::Bare,
            () if self.cuts_tail() => Slack::Beads,
            () => Slack::Through,
        }
    }

    /// A loop through a crimp, its tail in the beads where they are strung already.
    fn looped(&self) -> Drawing {
        let guarded = self.first_of(FindingKind::WireGuard).is_some();
        match (guarded, self.side == Side::Last && !self.cuts_tail()) {
            (false, false) => Drawing::CrimpOpen,
            (false, true) => Drawing::CrimpPacked,
            (true, false) => Drawing::Guard,
            (true, true) => Drawing::GuardPacked,
        }
    }

    fn drawing(&self, work: EndWork) -> Option<Drawing> {
        Some(match work {
            EndWork::Loop(_) => self.looped(),
            EndWork::Thread => Drawing::OnEnd,
            EndWork::ThreadCover => Drawing::CoverOnEnd,
            EndWork::DrawUp => Drawing::DrawnUp(self.slack()),
            EndWork::Trim if self.cuts_tail() => Drawing::TailCut,
            EndWork::Trim if self.side == Side::Last => Drawing::TailOut,
            EndWork::Trim => Drawing::TailCovered,
            EndWork::Stop => Drawing::Stopper,
            EndWork::Hide => Drawing::KnotHidden,
            EndWork::Square => Drawing::CutSquare,
            EndWork::CoverCrimp(_) => Drawing::Cover,
            EndWork::Glue => Drawing::Glue,
            EndWork::Set { .. } => Drawing::KnotGlued(self.knotted()),
            EndWork::Turn => Drawing::TurnedEnd,
            EndWork::Press(_) => Drawing::CrimpPressed,
            EndWork::TieInCover | EndWork::Tie | EndWork::TieEnds | EndWork::Meet => Drawing::Knot(self.knotted()),
            EndWork::CloseCover => Drawing::KnotCover(self.knotted() == Knotted::Covered(true)),
            EndWork::Hitch => Drawing::LarksHead,
            EndWork::Link if self.rolls_shut() => Drawing::InLoop,
            EndWork::Link if self.hangs_on().is_some_and(Finding::is_open_ring) => Drawing::Clasp,
            EndWork::Link => Drawing::OpenLink,
            EndWork::Others(..) if self.hangs_on()?.kind() == FindingKind::EyePin => {
                Drawing::gather(self.strands.len())
            }
            EndWork::Others(..) if self.hangs_on()?.comb().is_some() => Drawing::end_bar(self.strands.len()),
            EndWork::Others(..) => return None,
        })
    }
}

/// What an end takes beyond its loop and the findings that lie along it: how far a cover reaches beyond its crimp.
#[must_use]
pub fn beyond(design: &Design, end: &End) -> Length {
    let is_around = |kind| matches!(kind, FindingKind::CrimpCover | FindingKind::WireGuard);
    let along = end.findings.iter().map(|at| &design.findings[*at]).filter(|finding| !is_around(finding.kind()));
    end.takes - end.bight.unwrap_or_default() - along.filter_map(Finding::length).sum()
}
