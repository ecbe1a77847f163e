//! A quick look at whether strands come near one another at all.

use super::super::Hung;
use crate::design::{Design, Strand, What};
use crate::geometry::{Extent, Point};

/// Joints whose box is looked at as one: few, so that boxes on a slope stay small.
const TOGETHER: usize = 3;
/// Boxes up to which every pair is looked at; more are taken to be near.
const MOST: usize = 5_000;

/// Whether anything of one strand may reach something of another: boxes round the strands' lines, grown by
/// the most that each reaches from its line, meet.
pub fn come_near(design: &Design, hung: &[Hung]) -> bool {
    let boxed = |(strand, hung): (&Strand, &Hung)| boxes(hung, reach(design, strand));
    let boxes: Vec<Vec<Extent>> = design.strands.iter().zip(hung).map(boxed).collect();
    if boxes.iter().map(Vec::len).sum::<usize>() > MOST {
        return true;
    }
    let meet = |one: &[Extent], other: &[Extent]| one.iter().any(|a| other.iter().any(|b| a.meets(*b)));
    (1..boxes.len()).any(|at| boxes[..at].iter().any(|before| meet(before, &boxes[at])))
}

/// Boxes along a strand's line, each sharing a joint with the next.
fn boxes(hung: &Hung, reach: f64) -> Vec<Extent> {
    let points: Vec<Point> = hung.joints.iter().map(|joint| joint.at).collect();
    let starts = (0..points.len()).step_by(TOGETHER - 1);
    let some = starts.map(|from| &points[from..(from + TOGETHER).min(points.len())]);
    some.filter_map(|some| Extent::of(some.iter().copied())).map(|extent| extent.grown(reach)).collect()
}

/// The most that anything on a strand reaches from its line, in mm.
fn reach(design: &Design, strand: &Strand) -> f64 {
    let (cord, knot) = (strand.cord_width(design).value(), strand.knot_width(design).value());
    let across = strand.bits().map(|bit| match bit.what {
        What::Bead(bead) => design.beads[bead].broadest().value().max(design.beads[bead].along.value()),
        What::Finding(finding) => design.findings[finding].across_or(cord).max(bit.length()),
        What::Knot => knot,
        What::Gap | What::Dangle(_) => cord,
    });
    across.fold(knot, f64::max) / 2.0
}
