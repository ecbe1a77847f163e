//! Whether an extender is of use along its whole length.

use crate::design::Design;
use crate::drape::{Drape, Ring, Worn};
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::closing::Closing;
use crate::units::Length;

/// A remark where the piece goes round, but not hooked as short as it goes.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    if design.wear.is_guessed() || design.sprung().is_some() {
        return Vec::new();
    }
    let lack = match (drape.ring(), design.heading.kind) {
        (Some(ring), _) => ring_lacks(design, ring),
        (None, Kind::Necklace) => drape.worn.as_ref().and_then(|worn| necklace_lacks(design, worn)),
        _ => None,
    };
    let said = lack.map(|lack| Closing::IdleExtender { lack: Length::mm(lack) });
    said.map(|said| Remark::new(said).at(design.closure.place)).into_iter().collect()
}

/// By how much the shortest strand, hooked at its shortest, does not reach round the neck, where it does let out as it is worn.
fn necklace_lacks(design: &Design, worn: &Worn) -> Option<f64> {
    let spare = worn.spare.iter().copied().fold(f64::INFINITY, f64::min);
    let hooked = spare - (worn.closure - design.closure_length().0.value());
    (hooked < 0.0 && spare >= 0.0).then_some(-hooked)
}

fn ring_lacks(design: &Design, ring: &Ring) -> Option<f64> {
    let (girth, rounds) = (design.wear.narrowest.value(), f64::from(design.rounds()));
    (ring.inside_girth < girth && ring.longest_girth >= girth).then_some((girth - ring.inside_girth) * rounds)
}
