//! How far a crimped end's tail goes back through the beads beside it.
//!
//! There the cord lies in each hole once more, so that a hole must hold all of its passes side by side, as
//! [`CordTooThick`](crate::remark::Code::CordTooThick) asks of one. The first bead whose hole does not, or a knot, ends the
//! tail's way; before a dangle it ends a bead sooner, for beside that it would be seen and felt.

use super::ends::{Fastening, end, way};
use super::side::Side;
use crate::design::{Bit, Design, Strand, What};
use crate::pattern::Settle;
use crate::trade::packing::packing_ratio;
use crate::trade::usual::{GRIP, HIDDEN, PLAY};
use crate::units::Length;

/// Through how much of the row beside its end a tail goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hides {
    /// As far as it is meant to.
    Wholly,
    /// Through so many beads: the next does not take it.
    Through(u64),
    /// Through so many beads, so that it does not come out beside a dangle.
    Clear(u64),
    /// Through none.
    Nowhere,
}

/// Where the tail of a strand's end goes: of the first end all of it, of the last as much as holds it.
pub fn hides(design: &Design, strand: &Strand, side: Side) -> Hides {
    if strand.settle != Settle::Fill || way(design, strand, side) != Fastening::Crimped {
        return Hides::Nowhere;
    }
    let mut row: Vec<_> = strand.bits().collect();
    if side != Side::Last {
        return through(&row, strand.tail(end(strand, side), design), design, strand);
    }
    row.reverse();
    match hidden(design, strand) {
        Length::ZERO => Hides::Nowhere,
        tail => through(&row, tail, design, strand),
    }
}

/// How much of the last tail goes on into the beads: as much as holds by itself, where enough is left to pull by.
pub fn hidden(design: &Design, strand: &Strand) -> Length {
    let tail = strand.tail(end(strand, Side::Last), design);
    if tail > GRIP { (tail - GRIP).min(HIDDEN) } else { Length::ZERO }
}

/// Whether a bead that tails go through holds both passes of the cord with little play, so that not each of its kind will.
pub fn is_tight(design: &Design, strand: &Strand) -> bool {
    let takes_tails = hides(design, strand, Side::First) != Hides::Nowhere;
    let needed = passed(design, strand);
    let is_tight = |bit: &Bit| {
        let hole = bit.what.bead().map(|at| *design.beads[at].hole);
        hole.is_some_and(|hole| needed <= hole && hole < needed * PLAY)
    };
    takes_tails && strand.bits().any(is_tight)
}

/// How wide a hole must be for a cord and its tail.
fn passed(design: &Design, strand: &Strand) -> Length {
    design.cords[strand.cord].diameter * packing_ratio(2 * strand.legs)
}

/// How far along a row from its end so much of a tail goes.
fn through(row: &[&Bit], tail: Length, design: &Design, strand: &Strand) -> Hides {
    let needed = passed(design, strand);
    let (mut beads, mut reach) = (0, Length::ZERO);
    for bit in row {
        if matches!(bit.what, What::Dangle(_)) {
            return if beads > 1 { Hides::Clear(beads - 1) } else { Hides::Nowhere };
        }
        if reach >= tail && beads > 0 {
            return Hides::Wholly;
        }
        if !passes(bit, needed, design) {
            return if beads > 0 { Hides::Through(beads) } else { Hides::Nowhere };
        }
        beads += u64::from(bit.what.bead().is_some());
        reach = reach + Length::mm(bit.length());
    }
    if beads > 0 { Hides::Wholly } else { Hides::Nowhere }
}

/// Whether what lies side by side goes through something of a row.
fn passes(bit: &Bit, needed: Length, design: &Design) -> bool {
    match bit.what {
        What::Bead(at) => *design.beads[at].hole >= needed,
        What::Finding(at) => design.findings[at].inside().is_none_or(|inside| inside >= needed),
        What::Knot | What::Dangle(_) => false,
        What::Gap => true,
    }
}
