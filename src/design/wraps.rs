//! How many times a piece goes round.
//!
//! A piece that a clasp or knot closes goes round whole times: its one strand is wound, turn beside turn, and its
//! ends meet across the turns.

use crate::pattern::{self, Kind, Pattern};
use crate::remark::{Code, Remark};

use super::model::Design;
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

impl Design {
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
    context.refuse_if(told.map(|(why, help)| Remark::words(Code::CannotWrap, why).at(place).helping(help)))
}

/// Why not, and what to write instead.
fn reason(pattern: &Pattern, wraps: f64, sprung: bool) -> Option<(String, &'static str)> {
    let kind = pattern.kind.value;
    let closure = pattern.closure.as_ref().map(|closure| &closure.value);
    if matches!(kind, Kind::Earrings | Kind::Strap) {
        let whole = if kind == Kind::Earrings { "earrings hang and go" } else { "a strap hangs and goes" };
        let help = "take `wraps:` out, and string it on other cord than memory wire";
        return Some((format!("{whole} round nothing"), help));
    }
    if pattern.strands.value.len() > 1 {
        let help = "write one strand, or a piece of its own for each";
        return Some(("one strand alone is wound round and round".to_owned(), help));
    }
    if sprung {
        let joined = |one: &&pattern::Closure| one.open.is_some() || one.both_ends.is_some() || one.has_sides();
        let clasp = closure.filter(joined).map(|_| "memory wire closes by itself, and takes no clasp".to_owned());
        return clasp.map(|why| (why, "take `closure:` out: its ends are turned into loops, or glued into cord ends"));
    }
    if closure.is_some_and(|closure| closure.open.is_some() || closure.both_ends.is_some()) {
        let help = "close it with a clasp, or tie it: leave `open:` and `both ends:` out";
        return Some(("what is wound is closed across its turns".to_owned(), help));
    }
    let whole = (wraps - wraps.round()).abs() < 1e-9;
    (!whole).then(|| (format!("what closes goes round whole times, not {wraps}"), "write a whole number"))
}
