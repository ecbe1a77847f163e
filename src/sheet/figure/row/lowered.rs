//! Branches that hang lower than they are, clear of the beads beside them.

use crate::design::{Dangle, Design};

use super::span::Span;

/// Room in mm between beads and what hangs below them.
const CLEAR: f64 = 1.8;

/// Lowers all branches alike where what is strung on one would lie over what is strung beside it.
pub fn lower(spans: &mut [Span<'_>], design: &Design) {
    let below = |at: usize| spans.get(at).filter(|span| span.branch().is_none()).map_or(0.0, |span| span.reach.below);
    let beside = |at: usize| at.checked_sub(1).map_or(0.0, below).max(below(at + 1));
    let crowded = |at: &usize| {
        let span = &spans[*at];
        let is_over = |branch: &Dangle| top(branch, design) * span.scale < beside(*at);
        2.0 * span.reach.aside > span.length() && span.branch().is_some_and(is_over)
    };
    let hang = (0..spans.len()).filter(crowded).map(beside).fold(0.0, f64::max);
    if hang > 0.0 {
        for span in spans.iter_mut().filter(|span| span.branch().is_some()) {
            span.hang = hang + CLEAR;
            span.reach.below += span.hang;
        }
    }
}

/// How far below the cord what is strung on a branch begins.
fn top(branch: &Dangle, design: &Design) -> f64 {
    let first = branch.levels(design).first().zip(branch.bits.first()).map(|(level, bit)| level - bit.before);
    first.unwrap_or(branch.drop)
}
