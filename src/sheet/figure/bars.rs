//! Spacer bars that several strands run through: one object each, however many strands say it.
//!
//! The innermost strand runs through a bar's first hole, the next through the next. The bars of a
//! strand are the same, in the same order, as those of its neighbours.

use std::f64::consts::FRAC_PI_2;

use crate::art::Stencils;
use crate::design::{Bit, Design, Finding, Index, Sharers, Strand, What};
use crate::drape::{Hung, Seat};
use crate::geometry::Point;
use crate::paint::mark::Mark;

use super::Frame;

/// The bar that a bit of a strand is, where it shares one with others.
pub fn shared(bit: &Bit, strand: &Strand, design: &Design) -> Option<Index<Finding>> {
    let What::Finding(at) = bit.what else { return None };
    design.findings[at].is_shared().then(|| design.hole(at, strand)).flatten().map(|_| at)
}

/// How far a bar's middle lies from the hole of a strand, on the side away from the neck.
pub fn middle(strand: &Strand, bar: Index<Finding>, design: &Design) -> f64 {
    let hole = design.hole(bar, strand).unwrap_or(1) as f64;
    design.findings[bar].bar().map_or(0.0, |bar| (f64::from(bar.holes + 1) / 2.0 - hole) * bar.spacing.value())
}

/// All bars that strands share, each across those of them that are seen; strands are the design's in
/// its order.
pub fn bars(design: &Design, strands: &[Option<&Hung>], frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let bars = design.findings.indices().filter(|at| design.findings[*at].is_shared());
    let groups = bars.flat_map(|bar| design.sharing(bar).into_iter().map(move |group| (bar, group)));
    let shared = groups.filter(|(_, group)| group.0.len() > 1);
    let seated = shared.map(|(bar, group)| (bar, passes(bar, &group, design, strands)));
    seated.flat_map(|(bar, passes)| of_group(bar, &passes, design, frame, stencils)).collect()
}

/// Where each strand of a group passes its bars.
fn passes<'a>(
    bar: Index<Finding>,
    group: &Sharers,
    design: &Design,
    strands: &[Option<&'a Hung>],
) -> Vec<Vec<&'a Seat>> {
    let seen =
        group.0.iter().filter_map(|sharer| Some((&design.strands[sharer.strand], (*strands.get(sharer.strand)?)?)));
    seen.map(|(strand, hung)| seats(bar, strand, hung)).collect()
}

/// The bars of one kind that a group of strands shares.
fn of_group(
    bar: Index<Finding>,
    passes: &[Vec<&Seat>],
    design: &Design,
    frame: &Frame,
    stencils: &mut Stencils<'_>,
) -> Vec<Mark> {
    let most = passes.iter().map(Vec::len).max().unwrap_or_default();
    let mut one = |at: usize| {
        let through: Vec<&Seat> = passes.iter().filter_map(|seats| seats.get(at).copied()).collect();
        Some(across(bar, [*through.first()?, *through.last()?], design, frame, stencils))
    };
    (0..most).filter_map(&mut one).collect()
}

/// A strand's places in bars of a kind, from its first end.
fn seats<'a>(bar: Index<Finding>, strand: &Strand, hung: &'a Hung) -> Vec<&'a Seat> {
    let is_bar = |seat: &&Seat| strand.trains[seat.train].bits[seat.bit].what == What::Finding(bar);
    hung.seats.iter().filter(is_bar).collect()
}

/// A bar from the innermost strand to the outermost.
fn across(
    finding: Index<Finding>,
    [first, last]: [&Seat; 2],
    design: &Design,
    frame: &Frame,
    stencils: &mut Stencils<'_>,
) -> Mark {
    let (inner, outer) = (frame.page(first.centre), frame.page(last.centre));
    let along = -first.angle;
    let aside = if inner.distance(outer) > 0.0 { (outer - inner).angle() } else { along + FRAC_PI_2 };
    // The strand runs across the bar: of the two ways, the one that is nearer to its own.
    let turned = aside - FRAC_PI_2;
    let way = if libm::cos(turned - along) >= 0.0 { turned } else { turned + std::f64::consts::PI };
    let half = design.findings[finding].length().unwrap_or_default().value() / 2.0;
    let centre = inner.between(outer, 0.5) - Point::towards(way) * (half * frame.scale);
    stencils.finding(finding, centre, way, frame.scale)
}
