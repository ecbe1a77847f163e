//! Spacer bars and beads that several strands run through: one object each, however many strands say it.
//!
//! The innermost strand runs through the first hole, the next through the next. The bars of a
//! strand are the same, in the same order, as those of its neighbours.

use std::f64::consts::FRAC_PI_2;

use crate::design::{Bit, Design, Entries, Shared, Sharers, Strand};
use crate::drape::{Hung, Seat};
use crate::geometry::Point;
use crate::paint::mark::Mark;

use super::Canvas;

/// How far the middle of what a strand shares with others lies from the hole of that strand, on the side away from
/// the neck; nothing of what it does not share.
pub fn middle(bit: &Bit, strand: &Strand, design: &Design) -> Option<f64> {
    let (shared, bores) = design.shared_bit(bit, strand)?;
    let hole = design.hole(shared, strand)? as f64;
    Some((f64::from(bores.count + 1) / 2.0 - hole) * bores.apart.value())
}

/// All bars and beads that strands share, each across those of them that are seen.
pub fn bars(strands: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>) -> Vec<Mark> {
    let design = canvas.design();
    let groups = design.shared().filter(|(.., group)| group.0.len() > 1);
    let seated = groups.map(|(bar, _, group)| (bar, passes(bar, &group, design, strands)));
    seated.flat_map(|(bar, passes)| of_group(bar, &passes, canvas)).collect()
}

/// Where each strand of a group passes its bars.
fn passes<'a>(
    bar: Shared,
    group: &Sharers,
    design: &'a Design,
    strands: &Entries<Option<&'a Hung>, Strand>,
) -> Vec<Vec<&'a Seat>> {
    let seen =
        group.0.iter().filter_map(|sharer| Some((&design.strands[sharer.strand], (*strands.get(sharer.strand)?)?)));
    seen.map(|(strand, hung)| hung.through(strand, bar).collect()).collect()
}

/// The bars of one kind that a group of strands shares, nearer ones later.
fn of_group(bar: Shared, passes: &[Vec<&Seat>], canvas: Canvas<'_>) -> Vec<Mark> {
    let most = passes.iter().map(Vec::len).max().unwrap_or_default();
    let one = |at: usize| {
        let through: Vec<&Seat> = passes.iter().filter_map(|seats| seats.get(at).copied()).collect();
        Some([*through.first()?, *through.last()?])
    };
    let mut all: Vec<_> = (0..most).filter_map(one).collect();
    all.sort_by(|[one, _], [other, _]| one.near.total_cmp(&other.near));
    all.into_iter().map(|ends| across(bar, ends, canvas)).collect()
}

/// What strands share, from the innermost of them to the outermost.
fn across(shared: Shared, [first, last]: [&Seat; 2], canvas: Canvas<'_>) -> Mark {
    let (inner, outer) = (canvas.page(first.centre), canvas.page(last.centre));
    let along = -first.angle;
    let aside = if inner.distance(outer) > 0.0 { (outer - inner).angle() } else { along + FRAC_PI_2 };
    // The strand runs across it: of the two ways, the one that is nearer to its own.
    let turned = aside - FRAC_PI_2;
    let way = if libm::cos(turned - along) >= 0.0 { turned } else { turned + std::f64::consts::PI };
    let middle = inner.between(outer, 0.5);
    match shared {
        Shared::Bead(bead) => canvas.stencils.bead_aslant(bead, None, middle, (way, first.toward), canvas.scale()),
        Shared::Bar(bar) => {
            let half = canvas.design().findings[bar].along().value() / 2.0;
            let start = middle - Point::towards(way) * (half * canvas.scale());
            canvas.stencils.finding(bar, start, way, canvas.scale())
        }
    }
}
