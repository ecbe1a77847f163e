//! Whether what closes the ends holds on its cord, and whether knots among the beads hold these.

use crate::design::{Bead, Bit, Design, Strand, What};
use crate::pattern::CordKind;
use crate::remark::Remark;
use crate::remark::said::fit::Fit;
use crate::units::Length;

use super::bead;

/// How much broader than a hole a knot must be to hold its bead: an assumption.
const HOLDS: f64 = 4.0 / 3.0;
/// What sums of floating-point numbers may be out by.
const ROUNDING: f64 = 1e-9;

/// Remarks about knots.
pub fn check(design: &Design) -> Vec<Remark> {
    [wires(design), design.strands.iter().flat_map(|strand| slips(strand, design)).collect()].concat()
}

/// Beads that the knot beside them does not hold.
fn slips(strand: &Strand, design: &Design) -> Vec<Remark> {
    let pairs = strand.trains.iter().flat_map(|train| train.bits.windows(2));
    let pairs = pairs.flat_map(|pair| [(&pair[0], &pair[1]), (&pair[1], &pair[0])]);
    let beside = pairs.filter(|(knot, _)| knot.what == What::Knot);
    beside.filter_map(|(knot, beside)| through(knot, strand, &design.beads[bead(beside)?], design)).collect()
}

/// A knot is as small as its length on the cord or its breadth across it, whichever is less.
fn through(knot: &Bit, strand: &Strand, bead: &Bead, design: &Design) -> Option<Remark> {
    let (length, breadth) = (Length::mm(knot.length()), strand.knot_width(design));
    let size = length.min(breadth);
    let (hole, needed) = (*bead.hole, *bead.hole * HOLDS);
    (size.value() < needed.value() - ROUNDING).then(|| {
        let (strand, name) = (strand.name.clone(), bead.name.clone());
        Remark::new(Fit::KnotSlips { strand, bead: name, size, hole, needed }).at(bead.place)
    })
}

/// A remark for each strand of wire that would have to be knotted. Wire cannot be doubled at all.
fn wires(design: &Design) -> Vec<Remark> {
    let is_wire = |strand: &&Strand| strand.legs == 1 && design.cords[strand.cord].kind == CordKind::Wire;
    let wires = design.strands.iter().filter(is_wire);
    wires.filter(|strand| strand.ends.iter().any(|end| end.is_knotted(&design.findings))).map(knotted).collect()
}

fn knotted(strand: &Strand) -> Remark {
    Remark::new(Fit::WireKnotted { strand: strand.name.clone() }).at(strand.place)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn thread_is_knotted_and_wire_is_crimped() {
        let mut design = sample::necklace();
        assert_eq!(check(&design), []);
        design = design
            .changed(|model| {
                model.strands[nth(0)].ends[1].findings.clear();
            })
            .unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::WireKnotted]);
        design = design.changed(|model| model.cords[nth(0)].kind = CordKind::Thread).unwrap();
        assert_eq!(check(&design), []);
    }
}
