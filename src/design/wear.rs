//! The body that a piece is made for.

use crate::pattern::{self, Kind};
use crate::source::At;
use crate::trade::bodies::{self, Place, Sex, girth};
use crate::units::Length;

use super::model::{Build, Proportion, Wear};

/// Percentile of the body that is assumed where the pattern names none.
const MIDDLE: u32 = 50;
/// Room between limb and piece where the pattern does not say: the middle of a maker's sizing
/// page's "medium" range of 10 to 15 mm.
const USUAL_EASE: Length = Length::mm(12.0);

/// Breadth of the neck's base over its depth where the pattern does not say: an assumption, as no
/// published figure was found.
const BREADTH_TO_DEPTH: f64 = 1.2;
/// How far the chest leans back from upright, in degrees, where the pattern does not say: an
/// assumption, as no published figure was found.
const CHEST_TILT: f64 = 20.0;

impl Default for Build {
    /// All of it assumed.
    fn default() -> Self {
        build(None)
    }
}

fn build(said: Option<&pattern::Wear>) -> Build {
    let proportion = |said: Option<f64>, usual| Proportion { value: said.unwrap_or(usual), assumed: said.is_none() };
    let tilt = said.and_then(|wear| wear.chest_tilt).map(|tilt| tilt.0.to_radians());
    Build {
        breadth_to_depth: proportion(
            said.and_then(|wear| wear.breadth_to_depth).map(|ratio| ratio.0),
            BREADTH_TO_DEPTH,
        ),
        chest_tilt: proportion(tilt, CHEST_TILT.to_radians()),
    }
}

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
        build: build(said),
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
