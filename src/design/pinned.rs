//! Strands on a pin: of earrings, beads that hang on it straight from what is above them, without any cord.
//!
//! Such a strand names a head pin or eye pin where others name their cord. It is a branch on that pin, on no length of a
//! cord that stands for the pin ([`Cord::is_pin`]) and is neither cut nor bought.

use std::borrow::Cow;

use crate::pattern::{self, HungOn, Item, Kind, Pattern};
use crate::remark::Remark;
use crate::remark::said::strand as said;
use crate::source::{At, Place};
use crate::units::{Length, Mass};

use super::Context;
use super::finding::Finding;
use super::joins::{Closure, Joins};
use super::model::{Model, Strand};
use super::shelf::Inventory;
use super::stated::Stated;
use super::stock::Cord;

impl Cord {
    /// What stands for a pin on which whole strands hang.
    pub fn of_pin(pin: &Finding) -> Self {
        Self {
            name: pin.name.clone(),
            is_pin: true,
            take_up: Stated::Stated(Length::ZERO),
            stiffness: Stated::Stated(0.0),
            mass_per_metre: Stated::Stated(Mass::ZERO),
            place: pin.place,
            ..Self::new(&pin.id, pattern::CordKind::Chain, *pin.thickness())
        }
    }
}

/// The strands of a pattern, those on pins as a branch on theirs; without those of which that cannot be.
pub fn strands<'p>(
    pattern: &'p Pattern,
    closure: &Closure,
    closed: bool,
    shelf: &Inventory,
    context: &mut Context,
) -> Vec<Option<Cow<'p, At<pattern::Strand>>>> {
    // A closure that was refused may have been one.
    let hangs = pattern.kind.value == Kind::Earrings && (matches!(closure.joins, Joins::Above(_)) || !closed);
    let lowered = |written: &'p At<pattern::Strand>| {
        let is_pin = shelf.cords.iter().any(|cord| cord.is_pin && cord.id == written.value.cord.value);
        if is_pin { on_pin(written, hangs, context).map(Cow::Owned) } else { Some(Cow::Borrowed(written)) }
    };
    pattern.strands.value.iter().map(lowered).collect()
}

/// A strand on a pin as one branch.
fn on_pin(written: &At<pattern::Strand>, hangs: bool, context: &mut Context) -> Option<At<pattern::Strand>> {
    let strand = &written.value;
    let name = || strand.name.value.clone();
    if !hangs {
        return context.refuse(Remark::new(said::Strand::OnPin { strand: name() }).at(strand.cord.place));
    }
    if let Some((key, place)) = idle(strand) {
        return context.refuse(Remark::new(said::Strand::IdleOnPin { strand: name(), key }).at(place));
    }
    let on = At::new(HungOn(strand.cord.value.clone()), strand.cord.place);
    let branch = pattern::Dangle { dangle: strand.beads.value.clone(), on };
    let beads = At::new(vec![At::new(Item::Dangle(branch), strand.beads.place)], strand.beads.place);
    Some(At::new(pattern::Strand { beads, ..strand.clone() }, written.place))
}

/// What only a strand of cord has.
fn idle(strand: &pattern::Strand) -> Option<(&'static str, Place)> {
    let ends = strand.ends.as_ref().and_then(|ends| ends.ids().first()).map(|id| id.place);
    let doubled = strand.doubled.map(|_| strand.name.place);
    let keys = [
        ("length", strand.length.as_ref().map(|at| at.place)),
        ("ends", ends),
        ("allowance", strand.allowance.as_ref().map(|at| at.place)),
        ("settle", strand.settle.as_ref().map(|at| at.place)),
        ("leave", strand.leave.as_ref().map(|at| at.place)),
        ("knots", strand.knots.as_ref().map(|at| at.place)),
        ("doubled", doubled),
    ];
    keys.into_iter().find_map(|(key, place)| Some((key, place?)))
}

impl Strand {
    /// Whether it hangs on a pin, and has no cord.
    #[must_use]
    pub fn is_on_pin(&self, design: &Model) -> bool {
        design.cords[self.cord].is_pin
    }

    /// The same on a pin: its branch hangs just where the strand begins.
    pub fn without_cord(mut self) -> Self {
        self.finished = Length::ZERO;
        for bit in self.trains.iter_mut().flat_map(|train| &mut train.bits) {
            (bit.before, bit.after) = (0.0, 0.0);
        }
        self
    }
}
