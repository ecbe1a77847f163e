//! Does the cord pass: through beads, through findings on it, and back through its crimps.

use crate::design::{Cord, Crimp, Design, End, Finding, Strand, What};
use crate::pattern::{FindingKind, Settle};
use crate::remark::Remark;
use crate::remark::said::fit::{Fit, Passing};
use crate::trade::packing::packing_ratio;
use crate::units::Length;

use super::held::GRIPS;
use super::{bead, strung};

/// What sums of lengths may be out by.
const ROUNDING: Length = Length::mm(1e-9);

/// Remarks about cords in holes.
pub fn check(design: &Design) -> Vec<Remark> {
    let passes = [through_beads(design), through_findings(design), into_cord_ends(design), through_crimps(design)];
    [passes.concat(), through_guards(design), snug(design)].concat()
}

/// How much wider than its cord a hole should be for the bead to go on and slide, as a share: common practice, no
/// source. Below it beads stay where they are ([`GRIPS`]).
const SLIDES: f64 = GRIPS;

/// Beads that are to slide, or lie end to end, on a cord that all but fills their holes.
fn snug(design: &Design) -> Vec<Remark> {
    let free = design.strands.iter().filter(|strand| matches!(strand.settle, Settle::Slide | Settle::Fill));
    let on_cord = free.flat_map(|strand| strung(strand).map(move |bead| (&design.beads[bead], strand)));
    let tight = on_cord.filter_map(|(bead, strand)| {
        let cord = &design.cords[strand.cord];
        let (fills, hole) = (cord.diameter * packing_ratio(strand.legs), *bead.hole);
        let needed = fills * (1.0 + SLIDES);
        let thinnest = hole * (1.0 / (packing_ratio(strand.legs) * (1.0 + SLIDES)));
        (fills <= hole && needed > hole + ROUNDING).then(|| {
            let (cord, name) = (cord.name.clone(), bead.name.clone());
            Remark::new(Fit::Snug { cord, bead: name, fills, hole, thinnest, needed }).at(bead.place)
        })
    });
    tight.collect()
}

/// A wire guard's tubes take the cord once each.
fn through_guards(design: &Design) -> Vec<Remark> {
    let each =
        ends(design).flat_map(|(end, strand)| end.findings.iter().map(move |at| (&design.findings[*at], strand)));
    let guards = each.filter(|(finding, _)| finding.kind() == FindingKind::WireGuard);
    guards.filter_map(|(finding, strand)| through_finding(finding, strand, design)).collect()
}

fn through_beads(design: &Design) -> Vec<Remark> {
    let on_cord = design.strands.iter().flat_map(|strand| strung(strand).map(move |bead| (bead, strand)));
    let tight = on_cord.filter_map(|(bead, strand)| {
        let bead = &design.beads[bead];
        through(&bead.name, *bead.hole, strand, design).map(|remark| remark.at(bead.place))
    });
    tight.chain(through_meeting(design)).collect()
}

/// Both ends of a strand in the beads where they meet.
fn through_meeting(design: &Design) -> Option<Remark> {
    let strand = design.strands.first()?;
    let beads = design.meeting()?.bits.iter().filter_map(bead).map(|at| &design.beads[at]);
    let tightest = beads.min_by(|one, other| one.hole.value().total_cmp(&other.hole.value()))?;
    let both = 2 * strand.legs;
    passes(&tightest.name, *tightest.hole, &design.cords[strand.cord], (both, Passing::BothEnds))
        .map(|remark| remark.at(tightest.place))
}

/// A strand's cord, as often as it lies side by side, through a hole.
fn through(what: &str, hole: Length, strand: &Strand, design: &Design) -> Option<Remark> {
    let how = if strand.legs > 1 { Passing::Doubled } else { Passing::Single };
    passes(what, hole, &design.cords[strand.cord], (strand.legs, how))
}

/// A cord that lies so often side by side, said how, in a hole.
fn passes(what: &str, hole: Length, cord: &Cord, (times, how): (u32, Passing)) -> Option<Remark> {
    let ratio = packing_ratio(times);
    let needed = cord.diameter * ratio;
    (needed > hole).then(|| {
        let (what, thinnest) = (what.to_owned(), hole * (1.0 / ratio));
        let (name, thick) = (cord.name.clone(), cord.diameter);
        Remark::new(Fit::CordTooThick { cord: name, what, how, thick, hole, thinnest, needed })
    })
}

/// Findings strung on the cord, where their inside is known.
fn through_findings(design: &Design) -> Vec<Remark> {
    let on_cord = design.strands.iter().flat_map(|strand| strand.bits().map(move |bit| (&bit.what, strand)));
    let tight = on_cord.filter_map(|(what, strand)| match what {
        What::Finding(index) => through_finding(&design.findings[*index], strand, design),
        _ => None,
    });
    tight.collect()
}

fn through_finding(finding: &Finding, strand: &Strand, design: &Design) -> Option<Remark> {
    through(&finding.name, finding.inside()?, strand, design).map(|remark| remark.at(finding.place))
}

/// Each strand's ends.
fn ends(design: &Design) -> impl Iterator<Item = (&End, &Strand)> {
    design.strands.iter().flat_map(|strand| strand.ends.iter().map(move |end| (end, strand)))
}

/// A cord end is glued or folded over the cord, which must go in.
fn into_cord_ends(design: &Design) -> Vec<Remark> {
    let each =
        ends(design).flat_map(|(end, strand)| end.findings.iter().map(move |at| (&design.findings[*at], strand)));
    let cord_ends = each.filter(|(finding, _)| finding.kind() == FindingKind::CordEnd);
    cord_ends.filter_map(|(finding, strand)| through_finding(finding, strand, design)).collect()
}

fn through_crimps(design: &Design) -> Vec<Remark> {
    ends(design).flat_map(|(end, strand)| through_crimps_of(end, strand, design)).collect()
}

/// Each leg of the cord passes a crimp to and fro, beside a guard's leg where there is one.
fn through_crimps_of(end: &End, strand: &Strand, design: &Design) -> Vec<Remark> {
    let cord = &design.cords[strand.cord];
    let findings = || end.findings.iter().map(|index| &design.findings[*index]);
    let guarded = findings().any(|finding| finding.kind() == FindingKind::WireGuard);
    let through = |finding: &Finding| {
        let remark = through_crimp(&finding.name, finding.crimp()?, cord, 2 * strand.legs, guarded)?;
        Some(remark.at(finding.place))
    };
    findings().filter_map(through).collect()
}

fn through_crimp(name: &str, crimp: &Crimp, cord: &Cord, passes: u32, guarded: bool) -> Option<Remark> {
    let ratio = packing_ratio(passes + u32::from(guarded));
    let needed = cord.diameter * ratio;
    let (inside, thickest) = (crimp.inside, crimp.inside * (1.0 / ratio));
    (needed > inside).then(|| {
        let (cord, crimp) = (cord.name.clone(), name.to_owned());
        Remark::new(Fit::CrimpTooSmall { cord, crimp, passes, guarded, inside, thickest, needed })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn a_cord_as_thick_as_the_hole_just_passes() {
        let mut design =
            sample::necklace().changed(|model| model.cords[nth(0)].diameter = *model.beads[nth(0)].hole).unwrap();
        assert_eq!(sample::codes(&through_beads(&design)), []);
        design = design
            .changed(|model| model.cords[nth(0)].diameter = *model.beads[nth(0)].hole + Length::mm(0.01))
            .unwrap();
        assert_eq!(sample::codes(&through_beads(&design)), [Code::CordTooThick]);
    }

    #[test]
    fn passes_in_a_crimp() {
        // Wires of 0.508 and 0.6096 mm in a crimp of 1.3 mm: three of the first fit, two of the second, three of the
        // second do not (packing geometry; inside of 1.3 mm from two trade pages).
        let crimp = |wire: f64, guarded| {
            let design = sample::necklace().changed(|model| model.cords[nth(0)].diameter = Length::mm(wire)).unwrap();
            through_crimp("crimp", &sample::CRIMP, &design.cords[nth(0)], 2, guarded).map(|remark| remark.code())
        };
        assert_eq!(crimp(0.508, true), None);
        assert_eq!(crimp(0.6096, false), None);
        assert_eq!(crimp(0.6096, true), Some(Code::CrimpTooSmall));
        assert_eq!(crimp(0.66, false), Some(Code::CrimpTooSmall));
    }
}
