//! The tools that a design needs, derived from what its steps do.

use super::cautions::cuts_metal;
use super::ends::{is_glued, stops};
use super::words::count;
use crate::design::{Crimp, Design, Strand, What};
use crate::materials::Article;
use crate::materials::need;
use crate::pattern::{CordKind, FindingKind};
use crate::units::Length;

/// The tools, in the order they are first used.
#[must_use]
pub fn tools(design: &Design) -> Vec<String> {
    let has = |kind| has_finding(design, kind);
    let pins = has(FindingKind::EyePin) || has(FindingKind::HeadPin);
    let metal = cuts_metal(design);
    let soft = [CordKind::Thread, CordKind::Silk, CordKind::Leather, CordKind::Elastic];
    let rings = [FindingKind::JumpRing, FindingKind::Chain, FindingKind::EarWire, FindingKind::Bail];
    let crimps = need::counts(design).into_keys().filter_map(|article| match article {
        Article::Finding(at) => design.findings[at].crimp(),
        _ => None,
    });
    let crimps: Vec<_> = crimps.map(crimping_pliers).collect();
    let crimped = |tool| crimps.contains(&tool);
    let has_stoppers = design.strands.iter().any(|strand| stops(design, strand) > 0);
    let stoppers = stoppers(design);
    let choices = [
        (true, "beading board or cloth"),
        (true, "ruler"),
        (metal, "eye protection"),
        (metal, "flush cutters"),
        (soft.into_iter().any(|kind| has_cord(design, kind)), "sharp scissors"),
        (design.strands.iter().any(|strand| needle(design, strand) == Some(Needle::Bought)), "beading needle"),
        (design.strands.len() > 1, "tape for tags"),
        (has_stoppers, &stoppers),
        (crimped("crimping pliers"), "crimping pliers"),
        (crimped("micro crimping pliers"), "micro crimping pliers"),
        (pins, "round-nose pliers"),
        (pins || rings.into_iter().any(has) || has(FindingKind::KnotCover), "two pairs of chain-nose pliers"),
        (knots(design), "awl or tweezers for knots"),
        (glues(design), "jewellery glue"),
    ];
    choices.into_iter().filter(|(needed, _)| *needed).map(|(_, tool)| tool.to_owned()).collect()
}

/// What a strand is strung with.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Needle {
    /// That which comes on its cord.
    Own,
    /// One that is bought.
    Bought,
}

/// The needle of a strand: thin thread and silk are limp, thick ones pass by themselves (common practice, no
/// source).
pub fn needle(design: &Design, strand: &Strand) -> Option<Needle> {
    const THIN: Length = Length::mm(0.8);
    let cord = &design.cords[strand.cord];
    let is_limp = matches!(cord.kind, CordKind::Silk | CordKind::Thread) && cord.diameter < THIN;
    if cord.needle { Some(Needle::Own) } else { is_limp.then_some(Needle::Bought) }
}

/// The pliers that fold a crimp: short ones take small jaws (common practice, no source).
pub fn crimping_pliers(crimp: &Crimp) -> &'static str {
    const SHORT: Length = Length::mm(2.0);
    if crimp.length < SHORT { "micro crimping pliers" } else { "crimping pliers" }
}

/// A stopper for each strand, two where both of its ends wait to be tied.
fn stoppers(design: &Design) -> String {
    let number: u64 = design.strands.iter().map(|strand| stops(design, strand)).sum();
    let many = if number > 1 { count(number, "bead stopper") } else { "bead stopper".to_owned() };
    format!("{many} or tape")
}

/// Whether the design takes a finding of this kind.
pub fn has_finding(design: &Design, kind: FindingKind) -> bool {
    let counts = need::counts(design);
    counts.keys().any(|article| matches!(article, Article::Finding(at) if design.findings[*at].kind() == kind))
}

/// Whether a strand hangs on a cord of this kind.
pub fn has_cord(design: &Design, kind: CordKind) -> bool {
    design.strands.iter().any(|strand| design.cords[strand.cord].kind == kind)
}

fn knots(design: &Design) -> bool {
    design.strands.iter().flat_map(Strand::bits).any(|bit| bit.what == What::Knot)
}

/// Whether an end is closed with glue.
pub fn glues(design: &Design) -> bool {
    design.strands.iter().any(|strand| is_glued(design, strand))
}
