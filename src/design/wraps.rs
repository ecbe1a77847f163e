//! How many times a piece goes round.
//!
//! A piece that a clasp or knot closes goes round whole times: its one strand is wound, turn beside turn, and its
//! ends meet across the turns.

use crate::pattern::{self, Kind, Pattern};
use crate::remark::Remark;
use crate::remark::said::turns::{NoWrap, Turns};

use super::model::Model;
use super::{Context, spring};

/// How many times a pattern's piece goes round, as it says; once where it does not.
#[must_use]
pub fn written(pattern: &Pattern) -> f64 {
    pattern.wraps.as_ref().map_or(1.0, |wraps| wraps.value.0)
}

/// How many whole times a closed row goes round.
pub fn whole(wraps: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded by the language, at least 1")]
    let whole = wraps.round() as u32;
    whole.max(1)
}

/// Whether a piece of a kind that goes round so often is closed to a ring or coil.
pub fn goes_round(kind: Kind, wraps: f64) -> bool {
    matches!(kind, Kind::Bracelet | Kind::Anklet) || wraps > 1.0
}

impl Model {
    /// Whether it is closed to a ring or coil: what goes round a limb, and what goes round more than once.
    #[must_use]
    pub fn is_ring(&self) -> bool {
        goes_round(self.heading.kind, self.wraps) || self.sprung().is_some()
    }

    /// How many whole times it goes round, closed.
    #[must_use]
    pub fn rounds(&self) -> u32 {
        whole(self.wraps)
    }
}

/// Refuses what cannot go round so often.
pub fn check(pattern: &Pattern, context: &mut Context) -> Option<()> {
    let strands = pattern.strands.value.iter().map(|strand| &strand.value);
    let sprung = strands.clone().find(|strand| spring::is_sprung(pattern, strand)).map(|strand| strand.cord.place);
    let place = pattern.wraps.as_ref().filter(|wraps| wraps.value.0 > 1.0).map(|wraps| wraps.place).or(sprung);
    let Some(place) = place else { return Some(()) };
    let told = reason(pattern, written(pattern), sprung.is_some());
    context.refuse_if(told.map(|why| Remark::new(Turns::Wrap(why)).at(place)))
}

/// Why not.
fn reason(pattern: &Pattern, wraps: f64, sprung: bool) -> Option<NoWrap> {
    let closure = pattern.closure.as_ref().map(|closure| &closure.value);
    let joined = |one: &&pattern::Closure| one.open.is_some() || one.both_ends.is_some() || one.has_sides();
    match pattern.kind.value {
        Kind::Earrings => Some(NoWrap::Earrings),
        Kind::Strap => Some(NoWrap::Strap),
        _ if pattern.strands.value.len() > 1 => Some(NoWrap::Several),
        _ if sprung => closure.filter(joined).map(|_| NoWrap::Clasp),
        _ if closure.is_some_and(|closure| closure.open.is_some() || closure.both_ends.is_some()) => Some(NoWrap::Open),
        _ => Some(NoWrap::Part(wraps)).filter(|_| (wraps - wraps.round()).abs() >= 1e-9),
    }
}
