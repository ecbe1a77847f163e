//! The body that a piece is made for.

use crate::pattern::{self, Kind};
use crate::source::At;
use crate::trade::bodies::{self, Place, Sex, girth};
use crate::units::Length;

use super::model::Wear;

/// Percentile of the body that is assumed where the pattern names none.
const MIDDLE: u32 = 50;
/// Room between limb and piece where the pattern does not say: the middle of a maker's sizing
/// page's "medium" range of 10 to 15 mm.
const USUAL_EASE: Length = Length::mm(12.0);

/// Resolves the body; a woman of middle size where the pattern says nothing.
pub fn wear(kind: Kind, written: Option<&At<pattern::Wear>>) -> Wear {
    let said = written.map(|at| &at.value);
    let place = match kind {
        Kind::Necklace | Kind::Strap | Kind::Earrings => Place::NeckBase,
        Kind::Bracelet => Place::Wrist,
        Kind::Anklet => Place::Ankle,
    };
    let measured = said.and_then(|wear| match place {
        Place::NeckBase => wear.neck_base,
        Place::Wrist => wear.wrist,
        Place::Ankle => wear.ankle,
    });
    let (girth, source) = match (measured, said.and_then(|wear| wear.body)) {
        (Some(girth), _) => (girth, "measured".to_owned()),
        (None, Some(body)) => tabled(body.sex, body.percentile, place, ""),
        (None, None) => tabled(Sex::Woman, MIDDLE, place, "assumed: "),
    };
    Wear {
        girth,
        ease: said.and_then(|wear| wear.ease).unwrap_or(USUAL_EASE),
        source,
        child: said.and_then(|wear| wear.child).is_some_and(|answer| answer.0),
        place: written.map(|at| at.place),
    }
}

fn tabled(sex: Sex, percentile: u32, place: Place, assumed: &str) -> (Length, String) {
    let whose = match sex {
        Sex::Woman => "woman",
        Sex::Man => "man",
    };
    (girth(sex, place, percentile), format!("{assumed}{whose}, percentile {percentile} ({})", bodies::SOURCE))
}
