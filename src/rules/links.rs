//! Chains that would be cut through a link.

use crate::design::{Design, Strand};
use crate::remark::{Code, Remark};
use crate::units::Length;

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
    ((links - whole).abs() > PART).then(|| {
        let of = |links: f64| Length::mm(links * link.value()).tenths();
        let headline = format!(
            "strand {}: {} is {links:.1} links of {}, and a chain is cut between links",
            strand.name,
            strand.finished.tenths(),
            link.hundredths()
        );
        let help = format!("write a length of whole links: {} or {}", of(links.floor()), of(links.ceil()));
        Remark::words(Code::PartLink, headline).at(strand.length_place).helping(help)
    })
}
