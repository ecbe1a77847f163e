//! Chains that would be cut through a link.

use crate::design::{Design, Strand};
use crate::remark::Remark;
use crate::remark::said::buying::Buying;

/// Share of a link by which a chain may differ from whole ones, as lengths are written to the millimetre: an
/// assumption.
const PART: f64 = 0.2;

/// Remarks about strands of chain that are no whole number of links.
pub fn check(design: &Design) -> Vec<Remark> {
    design.strands.iter().filter_map(|strand| part_link(strand, design)).collect()
}

fn part_link(strand: &Strand, design: &Design) -> Option<Remark> {
    let link = design.cords[strand.cord].link?;
    let links = strand.finished / link;
    let whole = libm::round(links);
    let said = || Buying::PartLink { strand: strand.name.clone(), is: strand.finished, link };
    ((links - whole).abs() > PART).then(|| Remark::new(said()).at(strand.length_place))
}
