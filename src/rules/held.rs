//! Groups of beads that are to stay in their places on bare cord: what holds them there.

use crate::design::{Bit, Design, Rest, Strand, Train, What};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::remark::Remark;
use crate::remark::said::hang::Hang;

use super::bead;

/// How much wider than its cord a hole may be for the bead to stay by friction, as a share: an assumption.
pub const GRIPS: f64 = 0.1;

/// Remarks about groups that nothing holds.
pub fn check(design: &Design) -> Vec<Remark> {
    let placed = |strand: &&Strand| {
        design.cords[strand.cord].kind != CordKind::Chain && matches!(strand.settle, Settle::Spread | Settle::Fixed)
    };
    design.strands.iter().filter(placed).filter_map(|strand| loose(strand, design)).collect()
}

/// The first group of a strand that nothing holds.
fn loose(strand: &Strand, design: &Design) -> Option<Remark> {
    let trains = strand.trains.iter().filter(|train| matches!(train.rest, Rest::At(_)));
    let is_placed = |train: &&Train| strand.settle == Settle::Spread || train.bits.iter().any(is_gap);
    let mut groups = trains.filter(is_placed).flat_map(|train| train.bits.split(is_gap));
    groups.find(|group| !is_held(group, strand, design)).map(|_| {
        let hole = strand.cord_width(design) * (1.0 + GRIPS);
        Remark::new(Hang::NothingHolds { strand: strand.name.clone(), hole }).at(strand.place)
    })
}

fn is_gap(bit: &Bit) -> bool {
    bit.what == What::Gap
}

/// Whether crimps or knots stand on both sides of a group, or one of its beads is tight on the cord, or there is
/// nothing in it that slides.
fn is_held(group: &[Bit], strand: &Strand, design: &Design) -> bool {
    let holds = |bit: &Bit| match bit.what {
        What::Knot => true,
        What::Finding(at) => design.findings[at].kind() == FindingKind::Crimp,
        _ => false,
    };
    let width = strand.cord_width(design) * (1.0 + GRIPS);
    let mut beads = group.iter().filter_map(bead).map(|index| &design.beads[index]).peekable();
    let hangs = group.iter().any(|bit| matches!(bit.what, What::Dangle(_)));
    beads.peek().is_none() && !hangs
        || group.first().is_some_and(holds) && group.last().is_some_and(holds)
        || beads.any(|bead| *bead.hole <= width)
}
