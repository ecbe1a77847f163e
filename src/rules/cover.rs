//! Whether covers go over what they hide: crimps, and knots with the bead that they are tied round.

use crate::design::{Crimp, Design, End, Finding, Strand};
use crate::pattern::FindingKind;
use crate::remark::Remark;
use crate::remark::said::hidden::Hidden;
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
    broad.map(|inside| too_narrow(cover, inside, Some(&crimp.name), outside)).or_else(|| {
        let is = cover.length().filter(|short| *short < length)?;
        let (name, crimp) = (cover.name.clone(), crimp.name.clone());
        Some(Remark::new(Hidden::CoverTooShort { cover: name, crimp, is, needed: length }).at(cover.place))
    })
}

/// A knot cover closes over its knot, and over the bead that it is tied round.
fn over_knot(strand: &Strand, end: &End, design: &Design) -> Option<Remark> {
    let cover = of_kind(end, FindingKind::KnotCover, design)?;
    let inside = cover.inside()?;
    let bead = cover.knotted_bead().map(|bead| &design.beads[bead]);
    let broad = bead.map_or_else(|| strand.knot_width(design), |bead| bead.across);
    let over = bead.map(|bead| bead.name.as_str());
    (broad.value() > inside.value() + ROUNDING).then(|| too_narrow(cover, inside, over, broad))
}

/// A cover that does not close over something of a name, or over its knot.
fn too_narrow(cover: &Finding, inside: Length, over: Option<&str>, broad: Length) -> Remark {
    let (name, over) = (cover.name.clone(), over.map(str::to_owned));
    Remark::new(Hidden::CoverTooNarrow { cover: name, over, inside, broad }).at(cover.place)
}
