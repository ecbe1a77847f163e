//! Does the cord pass: through beads, through findings on it, and back through its crimps.

use crate::design::{Bead, Cord, Design, End, Finding, What};
use crate::pattern::FindingKind;
use crate::remark::{Code, Remark};
use crate::trade::packing::packing_ratio;

use super::strung;

/// Remarks about cords in holes.
pub fn check(design: &Design) -> Vec<Remark> {
    [through_beads(design), through_findings(design), into_cord_ends(design), through_crimps(design)].concat()
}

fn through_beads(design: &Design) -> Vec<Remark> {
    let on_cord = design.strands.iter().flat_map(|strand| strung(strand).map(|bead| (bead, strand.cord)));
    on_cord.filter_map(|(bead, cord)| through_bead(&design.beads[bead], &design.cords[cord])).collect()
}

fn through_bead(bead: &Bead, cord: &Cord) -> Option<Remark> {
    (cord.diameter > bead.hole).then(|| {
        too_thick(cord, &format!("does not pass through {}", bead.name), bead.hole.hundredths()).at(bead.place)
    })
}

fn too_thick(cord: &Cord, refuses: &str, hole: String) -> Remark {
    let thick = cord.diameter.hundredths();
    Remark::new(Code::CordTooThick, format!("{} is {thick} thick and {refuses} with its hole of {hole}", cord.name))
        .help(format!("use a cord of at most {hole}, or a hole of at least {thick}"))
}

/// Findings strung on the cord, where their inside is known.
fn through_findings(design: &Design) -> Vec<Remark> {
    let on_cord = design.strands.iter().flat_map(|strand| strand.bits().map(|bit| (&bit.what, strand.cord)));
    let findings = on_cord.filter_map(|(what, cord)| match what {
        What::Finding(index) => Some((*index, cord)),
        _ => None,
    });
    findings.filter_map(|(finding, cord)| through_finding(&design.findings[finding], &design.cords[cord])).collect()
}

fn through_finding(finding: &Finding, cord: &Cord) -> Option<Remark> {
    let tight = finding.inside.value() > 0.0 && cord.diameter > finding.inside;
    let way = if finding.kind == FindingKind::CordEnd { "go into" } else { "pass through" };
    let refuses = format!("does not {way} {}", finding.name);
    tight.then(|| too_thick(cord, &refuses, finding.inside.hundredths()).at(finding.place))
}

/// Each strand's ends, with its cord.
fn ends(design: &Design) -> impl Iterator<Item = (&End, &Cord)> {
    design.strands.iter().flat_map(|strand| strand.ends.iter().map(|end| (end, &design.cords[strand.cord])))
}

/// A cord end is glued or folded over the cord, which must go in.
fn into_cord_ends(design: &Design) -> Vec<Remark> {
    let each = ends(design).flat_map(|(end, cord)| end.findings.iter().map(move |at| (&design.findings[*at], cord)));
    let cord_ends = each.filter(|(finding, _)| finding.kind == FindingKind::CordEnd);
    cord_ends.filter_map(|(finding, cord)| through_finding(finding, cord)).collect()
}

fn through_crimps(design: &Design) -> Vec<Remark> {
    ends(design).flat_map(|(end, cord)| through_crimps_of(end, cord, design)).collect()
}

/// The cord passes a crimp to and fro, and beside a guard's leg where there is one.
fn through_crimps_of(end: &End, cord: &Cord, design: &Design) -> Vec<Remark> {
    let findings = || end.findings.iter().map(|index| &design.findings[*index]);
    let guarded = findings().any(|finding| finding.kind == FindingKind::WireGuard);
    let crimps = findings().filter(|finding| finding.kind == FindingKind::Crimp);
    crimps.filter_map(|crimp| through_crimp(crimp, cord, if guarded { 3 } else { 2 })).collect()
}

fn through_crimp(crimp: &Finding, cord: &Cord, passes: u32) -> Option<Remark> {
    let ratio = packing_ratio(passes);
    let needed = cord.diameter * ratio;
    let what = if passes == 3 { "twice with a guard's leg" } else { "twice" };
    (needed > crimp.inside).then(|| {
        let headline = format!(
            "{} goes through {} {what} and needs {} there; the inside is {}",
            cord.name,
            crimp.name,
            needed.hundredths(),
            crimp.inside.hundredths()
        );
        let thickest = (crimp.inside * (1.0 / ratio)).hundredths();
        let help = format!("use a crimp of at least {} inside, or a cord of at most {thickest}", needed.hundredths());
        Remark::new(Code::CrimpTooSmall, headline).at(crimp.place).help(help)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample;
    use crate::units::Length;

    #[test]
    fn a_cord_as_thick_as_the_hole_just_passes() {
        let mut design = sample::necklace();
        design.cords[0].diameter = design.beads[0].hole;
        assert_eq!(sample::codes(&through_beads(&design)), []);
        design.cords[0].diameter = design.beads[0].hole + Length::mm(0.01);
        assert_eq!(sample::codes(&through_beads(&design)), [Code::CordTooThick]);
    }

    #[test]
    fn passes_in_a_crimp() {
        // Wires of 0.508 and 0.6096 mm in a crimp of 1.3 mm: three of the first fit, two of the second, three of the
        // second do not (packing geometry; inside of 1.3 mm from two trade pages).
        let crimp = |wire: f64, passes| {
            let mut design = sample::necklace();
            design.cords[0].diameter = Length::mm(wire);
            through_crimp(&design.findings[0], &design.cords[0], passes).map(|remark| remark.code)
        };
        assert_eq!(crimp(0.508, 3), None);
        assert_eq!(crimp(0.6096, 2), None);
        assert_eq!(crimp(0.6096, 3), Some(Code::CrimpTooSmall));
        assert_eq!(crimp(0.66, 2), Some(Code::CrimpTooSmall));
    }
}
