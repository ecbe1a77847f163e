//! Doubled strands: what their fold is hitched to, and cords that can be hitched.

use crate::design::{Design, Strand};
use crate::pattern::CordKind;
use crate::remark::Remark;
use crate::remark::said::closing::Closing;

/// Remarks about the hitches of doubled strands.
pub fn check(design: &Design) -> Vec<Remark> {
    let doubled = design.strands.iter().filter(|strand| strand.legs > 1);
    doubled.flat_map(|strand| [unhitched(strand, design), stiff(strand, design)]).flatten().collect()
}

/// A fold needs something to go round.
fn unhitched(strand: &Strand, design: &Design) -> Option<Remark> {
    let said = || Closing::NothingToHitchTo { strand: strand.name.clone() };
    design.closure.left().is_empty().then(|| Remark::new(said()).at(strand.place))
}

/// Wire breaks where it is folded sharply, and chain cannot be hitched.
fn stiff(strand: &Strand, design: &Design) -> Option<Remark> {
    let cord = &design.cords[strand.cord];
    let said = || Closing::CannotBeHitched { strand: strand.name.clone(), cord: cord.name.clone() };
    matches!(cord.kind, CordKind::Wire | CordKind::Chain).then(|| Remark::new(said()).at(strand.place))
}
