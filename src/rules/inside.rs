//! What is narrower than the hole of the bead beside it, and slips inside.

use crate::design::{Bead, Bit, Design, End, Finding, Index, Strand, What};
use crate::remark::Remark;
use crate::remark::said::fit::Fit;
use crate::units::Length;

use super::bead;

/// Remarks about beads and crimps that slip into the beads beside them.
pub fn check(design: &Design) -> Vec<Remark> {
    let trains = design.strands.iter().flat_map(|strand| &strand.trains).map(|train| train.bits.as_slice());
    let branches = design.strands.iter().flat_map(Strand::dangles).map(|dangle| dangle.bits.as_slice());
    let rows = trains.chain(branches).flat_map(|bits| in_row(bits, design));
    rows.chain(design.strands.iter().flat_map(|strand| at_ends(strand, design))).collect()
}

/// Something that may slip into a bead.
struct Narrow<'a> {
    name: &'a str,
    broad: Length,
}

/// Neighbours of which one slips into the other.
fn in_row(bits: &[Bit], design: &Design) -> Vec<Remark> {
    let pairs = bits.windows(2).flat_map(|pair| [(&pair[0], &pair[1]), (&pair[1], &pair[0])]);
    pairs.filter_map(|(one, beside)| slips(&narrow(one, design)?, &design.beads[bead(beside)?])).collect()
}

fn narrow<'a>(bit: &Bit, design: &'a Design) -> Option<Narrow<'a>> {
    match bit.what {
        What::Bead(at) => Some(Narrow { name: &design.beads[at].name, broad: design.beads[at].broadest() }),
        What::Finding(at) => ring(&design.findings[at]).or_else(|| crimp(&[at], design)),
        What::Gap | What::Knot | What::Dangle(_) => None,
    }
}

/// A jump ring on the cord, as broad as it is outside.
fn ring(finding: &Finding) -> Option<Narrow<'_>> {
    finding.ring().map(|ring| Narrow { name: &finding.name, broad: ring.breadth() })
}

/// The crimp among findings, as broad as the broadest of them.
fn crimp<'a>(findings: &[Index<Finding>], design: &'a Design) -> Option<Narrow<'a>> {
    let each = || findings.iter().map(|at| &design.findings[*at]);
    let (name, crimp) = each().find_map(|finding| Some((&finding.name, finding.crimp()?)))?;
    let broad = each().filter_map(Finding::outside).fold(crimp.outside, Length::max);
    Some(Narrow { name, broad })
}

/// What closes an end beside the first or last bead.
fn at_ends(strand: &Strand, design: &Design) -> Vec<Remark> {
    let (first, last) = (strand.bits().next(), strand.bits().last());
    let beside = |end: &End, bit: Option<&Bit>| slips(&crimp(&end.findings, design)?, &design.beads[bead(bit?)?]);
    strand.ends.iter().zip([first, last]).filter_map(|(end, bit)| beside(end, bit)).collect()
}

fn slips(narrow: &Narrow<'_>, beside: &Bead) -> Option<Remark> {
    let (broad, hole) = (narrow.broad, *beside.hole);
    (broad < hole).then(|| {
        let (narrow, bead) = (narrow.name.to_owned(), beside.name.clone());
        Remark::new(Fit::SlipsInside { narrow, bead, broad, hole }).at(beside.place)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Form, JumpRing, Stated, nth};
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn a_ring_narrower_than_the_hole_beside_it() {
        let mut design = sample::necklace();
        let sizes = JumpRing { wire: Stated::Stated(Length::mm(0.5)), ..JumpRing::new(Length::mm(3.0)) };
        let ring = Finding::new("ring", Form::JumpRing(sizes));
        design = design
            .changed(|model| {
                let at = model.findings.push(ring);
                let mut bits = model.strands[nth(0)].trains[0].bits.clone();
                let beside = bits.iter().position(|bit| bit.what == What::Bead(nth(0))).unwrap();
                let [before, after] = [bits[beside].before, bits[beside].after];
                bits.insert(beside, Bit::new(What::Finding(at), [before, after], bits[beside].mass));
                sample::string(model, bits);
            })
            .unwrap();
        // A ring of 3 + 2 x 0.5 mm outside beside a hole of 4.1 mm, and beside one of 4 mm.
        let mut codes = |hole: f64| {
            design = design.changed(|model| model.beads[nth(0)].hole = Stated::Stated(Length::mm(hole))).unwrap();
            let rings = check(&design).into_iter().filter(|remark| remark.headline().starts_with("ring "));
            rings.map(|remark| remark.code()).collect::<Vec<_>>()
        };
        assert!(codes(4.1).contains(&Code::SlipsInside));
        assert_eq!(codes(4.0), []);
    }
}
