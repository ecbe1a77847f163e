//! Spacer bars that several strands run through: one object each, however many strands say it.
//!
//! The innermost strand runs through a bar's first hole, the next through the next. The bars of a
//! strand are the same, in the same order, as those of its neighbours.

use std::f64::consts::FRAC_PI_2;

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Bit, Design, Strand, What};
use crate::drape::{Hung, Seat};
use crate::geometry::Point;
use crate::pattern::FindingKind;
use crate::sheet::mark::Mark;

use super::Frame;

/// The bar that a bit is, where strands of the design share it.
pub fn shared(bit: &Bit, design: &Design) -> Option<usize> {
    let What::Finding(at) = bit.what else { return None };
    let finding = &design.findings[at];
    let is_bar = finding.kind == FindingKind::SpacerBar && finding.holes > 1;
    (is_bar && design.strands.len() > 1).then_some(at)
}

/// How far a bar's middle lies from the hole of a strand, on the side away from the neck.
pub fn middle(strand: &Strand, finding: usize, design: &Design) -> f64 {
    let finding = &design.findings[finding];
    let hole = design.strands.iter().position(|other| std::ptr::eq(other, strand)).unwrap_or_default();
    let holes = usize::try_from(finding.holes.max(1)).unwrap_or(1);
    ((holes - 1) as f64 / 2.0 - hole.min(holes - 1) as f64) * finding.spacing.value()
}

/// All shared bars of a hanging piece, each across the strands that run through it.
pub fn bars(piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let strands = piece.design.strands.iter().zip(&piece.drape.strands);
    let passes: Vec<_> = strands.map(|(strand, hung)| seats(strand, hung, &piece.design)).collect();
    let most = passes.iter().map(Vec::len).max().unwrap_or_default();
    let bar = |at: usize| {
        let through: Vec<_> = passes.iter().filter_map(|seats| seats.get(at).copied()).collect();
        let (finding, first) = *through.first()?;
        let (_, last) = *through.last()?;
        Some(across(finding, [first, last], piece, frame, stencils))
    };
    (0..most).filter_map(bar).collect()
}

/// A strand's places in shared bars, from its first end.
fn seats<'a>(strand: &Strand, hung: &'a Hung, design: &Design) -> Vec<(usize, &'a Seat)> {
    let bar = |seat: &'a Seat| Some((shared(&strand.trains[seat.train].bits[seat.bit], design)?, seat));
    hung.seats.iter().filter_map(bar).collect()
}

/// A bar from the innermost strand to the outermost.
fn across(
    finding: usize,
    [first, last]: [&Seat; 2],
    piece: &Piece,
    frame: &Frame,
    stencils: &mut Stencils<'_>,
) -> Mark {
    let (inner, outer) = (frame.page(first.centre), frame.page(last.centre));
    let along = -first.angle;
    let aside = if inner.distance(outer) > 0.0 { (outer - inner).angle() } else { along + FRAC_PI_2 };
    // The strand runs across the bar: of the two ways, the one that is nearer to its own.
    let turned = aside - FRAC_PI_2;
    let way = if libm::cos(turned - along) >= 0.0 { turned } else { turned + std::f64::consts::PI };
    let half = piece.design.findings[finding].length.value() / 2.0;
    let centre = inner.between(outer, 0.5) - Point::towards(way) * (half * frame.scale);
    stencils.finding(finding, centre, way, frame.scale)
}
