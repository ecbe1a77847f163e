//! How much a piece may hold: see [`bounds`](crate::pattern::bounds).

use crate::pattern::bounds::{MOST_FINDINGS, MOST_IN_VARIANTS, MOST_STRUNG, MOST_WRITTEN};
use crate::remark::Remark;
use crate::remark::said::strand::Strand;
use crate::source::Place;

use super::Context;

/// Whether so many things more are too many for the piece, or for its sizes and colourways with it;
/// leaves a remark if they are.
pub fn too_many(more: u64, place: Place, context: &mut Context) -> bool {
    let strung = context.strung.saturating_add(more);
    let (most, with_variants) = if strung > u64::from(MOST_STRUNG) {
        (MOST_STRUNG, false)
    } else if strung.saturating_mul(context.variants) > u64::from(MOST_IN_VARIANTS) {
        (MOST_IN_VARIANTS, true)
    } else {
        return false;
    };
    context.remarks.push(Remark::new(Strand::TooManyBeads { most, with_variants }).at(place));
    true
}

/// Whether so many findings more among the beads are too many for the piece; leaves a remark if they are.
pub fn too_many_findings(more: u64, place: Place, context: &mut Context) -> bool {
    context.findings = context.findings.saturating_add(more);
    let is_more = context.findings > u64::from(MOST_FINDINGS);
    if is_more {
        context.remarks.push(Remark::new(Strand::TooManyFindings { most: MOST_FINDINGS }).at(place));
    }
    is_more
}

/// Whether so many entries more are too many for the piece's bead lists; leaves a remark if they are.
pub fn too_long(more: u64, place: Place, context: &mut Context) -> bool {
    let is_long = |written: u64| written > u64::from(MOST_WRITTEN);
    let is_told = is_long(context.written);
    context.written = context.written.saturating_add(more);
    if is_told || !is_long(context.written) {
        return is_told;
    }
    context.remarks.push(Remark::new(Strand::TooManyEntries { most: MOST_WRITTEN }).at(place));
    true
}
