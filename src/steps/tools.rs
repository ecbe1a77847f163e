//! The tools that a design needs, derived from what its steps do.

use super::cautions::{cuts_metal, cuts_soft_metal};
use super::ends::{Fastening, closings, is_glued, stops};
use super::task::{Beside, EndWork, Hang, Hold, Task};
use super::{Step, work};
use crate::design::{Cord, Crimp, Design, Finding, Index, Strand, What};
use crate::materials::Article;
use crate::materials::need;
use crate::pattern::{CordKind, FindingKind};
use crate::units::Length;

/// A tool.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tool {
    /// A beading board or cloth.
    Board,
    /// A ruler.
    Ruler,
    /// Eye protection.
    EyeProtection,
    /// Flush cutters, for metal.
    FlushCutters,
    /// Cutters for hard wire, which spoils others.
    HardWireCutters,
    /// Sharp scissors, for soft cord.
    Scissors,
    /// The needle that a cord comes with.
    OwnNeedle(Index<Cord>),
    /// A beading needle, for holes so wide where it goes through beads.
    Needle(Option<Length>),
    /// Tape for tags.
    Tape,
    /// A stiff card so tall, to wind a tassel on.
    Card(Length),
    /// So many bead stoppers: one for each strand, two where both of its ends wait to be tied.
    Stoppers(u64),
    /// Crimping pliers.
    CrimpingPliers,
    /// Those with small jaws.
    MicroCrimpingPliers,
    /// Round-nose pliers, for loops.
    RoundNosePliers,
    /// So many pairs of chain-nose pliers, two where rings are opened.
    ChainNosePliers(u8),
    /// An awl or tweezers, for knots.
    Awl,
    /// Jewellery glue.
    Glue,
}

/// The tools, in the order they are first used.
#[must_use]
pub fn tools(design: &Design) -> Vec<Tool> {
    let needed = |(is_needed, tool): (bool, Tool)| is_needed.then_some(tool);
    let others = for_cutting(design).map(needed).into_iter().chain(for_stringing(design));
    let others = others.chain(for_closing(design).map(needed));
    [Tool::Board, Tool::Ruler].into_iter().chain(others.flatten()).collect()
}

/// What cuts cord and metal, each with whether it is needed.
fn for_cutting(design: &Design) -> [(bool, Tool); 4] {
    let soft = [CordKind::Thread, CordKind::Silk, CordKind::Leather, CordKind::Elastic];
    [
        (cuts_metal(design), Tool::EyeProtection),
        (cuts_soft_metal(design), Tool::FlushCutters),
        (has_cord(design, CordKind::MemoryWire), Tool::HardWireCutters),
        (soft.into_iter().any(|kind| has_cord(design, kind)), Tool::Scissors),
    ]
}

/// What beads are strung with, and what tassels are wound on.
fn for_stringing(design: &Design) -> [Option<Tool>; 5] {
    let strung_with = |which| design.strands.iter().find(|strand| needle(design, strand) == Some(which));
    let on_cord = design.strands.iter().filter(|strand| !strand.is_on_pin(design));
    let tassels = design.findings.iter().filter_map(Finding::tassel).filter(|tassel| tassel.wound.is_some());
    let card = tassels.map(|tassel| tassel.length).fold(Length::ZERO, Length::max);
    let stoppers = design.strands.iter().map(|strand| stops(design, strand)).sum();
    [
        strung_with(Needle::Own).map(|strand| Tool::OwnNeedle(strand.cord)),
        strung_with(Needle::Bought).map(|_| Tool::Needle(narrowest(design))),
        (on_cord.count() > 1).then_some(Tool::Tape),
        (card > Length::ZERO).then_some(Tool::Card(card)),
        (stoppers > 0).then_some(Tool::Stoppers(stoppers)),
    ]
}

/// What ends are closed and findings joined with.
fn for_closing(design: &Design) -> [(bool, Tool); 6] {
    let steps = work(design);
    // Crimps that stop beads or hold groups are pressed flat.
    let folded = steps.iter().filter_map(|step| match step.task {
        Task::End(_, EndWork::Press(crimp)) => design.findings[crimp].crimp(),
        _ => None,
    });
    let crimps: Vec<_> = folded.map(crimping_pliers).collect();
    let pins = [FindingKind::EyePin, FindingKind::HeadPin].into_iter().any(|kind| has_finding(design, kind));
    let led = |step: &Step<'_>| matches!(&step.task, Task::End(ends, EndWork::TieInCover) if ends.is_led_by_awl());
    let grips = steps.iter().map(|step| grips(&step.task)).max().unwrap_or(0);
    [
        (crimps.contains(&Tool::CrimpingPliers), Tool::CrimpingPliers),
        (crimps.contains(&Tool::MicroCrimpingPliers), Tool::MicroCrimpingPliers),
        (pins || closings(design).contains(&Fastening::Turned), Tool::RoundNosePliers),
        (grips > 0, Tool::ChainNosePliers(grips)),
        (knots(design) || steps.iter().any(led), Tool::Awl),
        (glues(design), Tool::Glue),
    ]
}

/// How many pairs of chain-nose pliers a step takes.
fn grips(task: &Task<'_>) -> u8 {
    match task {
        Task::Hang { how: Hang::Opened { .. } | Hang::Between { .. } | Hang::Unopened(_), .. }
        | Task::Dangle { hold: Hold::Ring | Hold::Chain(_), .. }
        | Task::End(_, EndWork::Link) => 2,
        Task::String(_, besides) if besides.iter().any(Beside::opens) => 2,
        Task::BendPin(..)
        | Task::LookForGaps(_)
        | Task::FixStops(..)
        | Task::FixGroups(..)
        | Task::Dangle { hold: Hold::Bail, .. }
        | Task::End(_, EndWork::CloseCover | EndWork::CoverCrimp(_)) => 1,
        _ => 0,
    }
}

/// The narrowest hole that a bought needle goes through, where it goes through any bead.
fn narrowest(design: &Design) -> Option<Length> {
    let strung = design.strands.iter().filter(|strand| needle(design, strand) == Some(Needle::Bought));
    let beads = strung.flat_map(Strand::bits).filter_map(|bit| bit.what.bead());
    beads.map(|at| *design.beads[at].hole).reduce(Length::min)
}

/// What a strand is strung with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needle {
    /// That which comes on its cord.
    Own,
    /// One that is bought.
    Bought,
}

/// The needle of a strand: thin thread and silk are limp, thick ones pass by themselves (common practice, no
/// source).
pub fn needle(design: &Design, strand: &Strand) -> Option<Needle> {
    let cord = &design.cords[strand.cord];
    let is_limp = matches!(cord.kind, CordKind::Silk | CordKind::Thread) && cord.is_thin();
    if cord.needle { Some(Needle::Own) } else { is_limp.then_some(Needle::Bought) }
}

/// The pliers that fold a crimp: short ones take small jaws (common practice, no source).
pub fn crimping_pliers(crimp: &Crimp) -> Tool {
    const SHORT: Length = Length::mm(2.0);
    if crimp.length < SHORT { Tool::MicroCrimpingPliers } else { Tool::CrimpingPliers }
}

/// Whether the design takes a finding of this kind.
pub fn has_finding(design: &Design, kind: FindingKind) -> bool {
    let counts = need::counts(design);
    counts.keys().any(|article| matches!(article, Article::Finding(at) if design.findings[*at].kind() == kind))
}

/// Whether a strand hangs on a cord of this kind.
pub fn has_cord(design: &Design, kind: CordKind) -> bool {
    design.strands.iter().map(|strand| &design.cords[strand.cord]).any(|cord| cord.kind == kind && !cord.is_pin)
}

fn knots(design: &Design) -> bool {
    design.strands.iter().flat_map(Strand::bits).any(|bit| bit.what == What::Knot)
}

/// Whether an end is closed with glue.
pub fn glues(design: &Design) -> bool {
    design.strands.iter().any(|strand| is_glued(design, strand))
}
