//! The findings that close a strand's end: where each is drawn and which way it faces.

use crate::design::{Design, End, Finding, Index};
use crate::pattern::FindingKind;

/// An end's finding in its place.
pub struct EndFinding {
    /// Index of the finding.
    pub finding: Index<Finding>,
    /// How far its drawing's origin lies from the loop inward, in mm of the piece.
    pub depth: f64,
    /// Whether it is drawn from there outward, or inward.
    pub outward: bool,
}

/// An end's findings from the loop inward: those that hold the cord with their strand side inward, a
/// cover about the crimp's middle, a guard in the loop.
pub fn closed(end: &End, design: &Design) -> Vec<EndFinding> {
    let bight = end.bight.unwrap_or_default().value();
    let crimp =
        end.findings.iter().find_map(|at| design.findings[*at].crimp()).map_or(0.0, |crimp| crimp.length.value());
    let mut depth = bight;
    let place = |finding: &Index<Finding>| {
        let (kind, length) =
            (design.findings[*finding].kind(), design.findings[*finding].length().unwrap_or_default().value());
        let (at, outward) = match kind {
            FindingKind::CrimpCover => (bight + 0.5 * (crimp - length), false),
            FindingKind::WireGuard => (bight, true),
            _ => {
                depth += length;
                (depth, true)
            }
        };
        EndFinding { finding: *finding, depth: at, outward }
    };
    end.findings.iter().map(place).collect()
}
