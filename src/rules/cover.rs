//! Whether covers go over what they hide: crimps, and knots with the bead that they are tied round.

use crate::design::{Crimp, Design, End, Finding, Strand};
use crate::pattern::FindingKind;
use crate::remark::{Code, Remark};
use crate::units::Length;

/// What sums of floating-point numbers may be out by.
const ROUNDING: f64 = 1e-9;

/// Remarks about covers at the strands' ends.
pub fn check(design: &Design) -> Vec<Remark> {
    let ends = design.strands.iter().flat_map(|strand| strand.ends.iter().map(move |end| (strand, end)));
    ends.filter_map(|(strand, end)| over_crimp(end, design).or_else(|| over_knot(strand, end, design))).collect()
}

fn of_kind<'a>(end: &End, kind: FindingKind, design: &'a Design) -> Option<&'a Finding> {
    end.findings.iter().map(|at| &design.findings[*at]).find(|finding| finding.kind() == kind)
}

/// A crimp cover closes over the whole crimp.
fn over_crimp(end: &End, design: &Design) -> Option<Remark> {
    let cover = of_kind(end, FindingKind::CrimpCover, design)?;
    let crimp = of_kind(end, FindingKind::Crimp, design)?;
    let Crimp { length, outside, .. } = *crimp.crimp()?;
    let broad = cover.inside().filter(|inside| *inside < outside);
    broad.map(|inside| too_small(cover, inside, &crimp.name, outside)).or_else(|| {
        let short = cover.length().filter(|short| *short < length)?;
        let (name, long, short) = (&cover.name, length.hundredths(), short.hundredths());
        let headline = format!("{name} is {short} long and does not hide {}, which is {long}", crimp.name);
        let help = format!("use a cover of at least {} long, or shorter crimps", length.at_least(1));
        Some(Remark::words(Code::CoverTooSmall, headline).at(cover.place).helping(help))
    })
}

/// A knot cover closes over its knot, and over the bead that it is tied round.
fn over_knot(strand: &Strand, end: &End, design: &Design) -> Option<Remark> {
    let cover = of_kind(end, FindingKind::KnotCover, design)?;
    let inside = cover.inside()?;
    let (what, broad) = match cover.knotted_bead() {
        Some(bead) => (design.beads[bead].name.as_str(), design.beads[bead].across),
        None => ("the knot in it", strand.knot_width(design)),
    };
    (broad.value() > inside.value() + ROUNDING).then(|| too_small(cover, inside, what, broad))
}

fn too_small(cover: &Finding, inside: Length, what: &str, broad: Length) -> Remark {
    let (name, is, wide) = (&cover.name, inside.hundredths(), broad.hundredths());
    let headline = format!("{name} is {is} inside and does not close over {what}, {wide} broad");
    let help = format!("use a cover of at least {} inside, or something smaller in it", broad.at_least(2));
    Remark::words(Code::CoverTooSmall, headline).at(cover.place).helping(help)
}
