//! The tools that a design needs, derived from what its steps do.

use super::cautions::cuts_metal;
use crate::design::{Design, Strand, What};
use crate::materials::Article;
use crate::materials::need;
use crate::pattern::{CordKind, FindingKind};

/// The tools, in the order they are first used.
#[must_use]
pub fn tools(design: &Design) -> Vec<&'static str> {
    let has = |kind| has_finding(design, kind);
    let pins = has(FindingKind::EyePin) || has(FindingKind::HeadPin);
    let metal = cuts_metal(design);
    let soft = [CordKind::Thread, CordKind::Silk, CordKind::Leather, CordKind::Elastic];
    let rings =
        [FindingKind::JumpRing, FindingKind::Chain, FindingKind::Clasp, FindingKind::EarWire, FindingKind::Bail];
    let choices = [
        (true, "beading board or cloth"),
        (true, "ruler"),
        (metal, "eye protection"),
        (metal, "flush cutters"),
        (soft.into_iter().any(|kind| has_cord(design, kind)), "sharp scissors"),
        (has_cord(design, CordKind::Silk) || has_cord(design, CordKind::Thread), "beading needle"),
        (true, "bead stoppers or tape"),
        (has(FindingKind::Crimp), "crimping pliers"),
        (pins, "round-nose pliers"),
        (pins || rings.into_iter().any(has) || has(FindingKind::KnotCover), "two pairs of chain-nose pliers"),
        (knots(design), "awl or tweezers for knots"),
        (glues(design), "jewellery glue"),
    ];
    choices.into_iter().filter(|(needed, _)| *needed).map(|(_, tool)| tool).collect()
}

/// Whether the design takes a finding of this kind.
pub fn has_finding(design: &Design, kind: FindingKind) -> bool {
    let counts = need::counts(design);
    counts.keys().any(|article| matches!(article, Article::Finding(at) if design.findings[*at].kind == kind))
}

/// Whether a strand hangs on a cord of this kind.
pub fn has_cord(design: &Design, kind: CordKind) -> bool {
    design.strands.iter().any(|strand| design.cords[strand.cord].kind == kind)
}

fn knots(design: &Design) -> bool {
    design.strands.iter().flat_map(Strand::bits).any(|bit| bit.what == What::Knot)
}

/// Whether an end is closed with a knot, which is set with glue.
pub fn glues(design: &Design) -> bool {
    let crimped = |at: &usize| design.findings[*at].kind == FindingKind::Crimp;
    design.strands.iter().flat_map(|strand| &strand.ends).any(|end| !end.findings.iter().any(crimped))
}
