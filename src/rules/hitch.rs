//! Doubled strands: what their fold is hitched to, and cords that can be hitched.

use crate::design::{Design, Strand};
use crate::pattern::CordKind;
use crate::remark::{Code, Remark};

/// Remarks about the hitches of doubled strands.
pub fn check(design: &Design) -> Vec<Remark> {
    let doubled = design.strands.iter().filter(|strand| strand.legs > 1);
    doubled.flat_map(|strand| [unhitched(strand, design), stiff(strand, design)]).flatten().collect()
}

/// A fold needs something to go round.
fn unhitched(strand: &Strand, design: &Design) -> Option<Remark> {
    design.closure.left().is_empty().then(|| {
        let headline = format!("strand {} is doubled, but nothing is there to hitch its fold to", strand.name);
        let help = "write a ring or another finding in the closure's `left:`";
        Remark::words(Code::Unhitched, headline).at(strand.place).helping(help)
    })
}

/// Wire breaks where it is folded sharply, and chain cannot be hitched.
fn stiff(strand: &Strand, design: &Design) -> Option<Remark> {
    let cord = &design.cords[strand.cord];
    matches!(cord.kind, CordKind::Wire | CordKind::Chain).then(|| {
        let headline = format!("strand {} is doubled, but {} cannot be folded and hitched", strand.name, cord.name);
        let help = "use thread, silk, leather or elastic, or take `doubled:` out";
        Remark::words(Code::Unhitched, headline).at(strand.place).helping(help)
    })
}
