//! The body that a piece is made for.

use crate::pattern::{self, Kind};
use crate::source::At;
use crate::trade::bodies::{self, Place, Sex, girth};
use crate::units::Length;

use super::model::Wear;
use super::stated::Stated;

/// Percentile of the body that is assumed where the pattern names none.
const MIDDLE: u32 = 50;
/// Room between limb and piece where the pattern does not say: an easy fit (see [`crate::trade::ease`]), of
/// which a row that rests on one side stands off by 4 mm on the other. An assumption.
const USUAL_EASE: Length = Length::mm(12.0);

/// Breadth of the neck's base over its depth where the pattern does not say: an assumption, as no
/// published figure was found.
const BREADTH_TO_DEPTH: f64 = 1.2;
/// How far the chest leans back from upright, in degrees, where the pattern does not say: an
/// assumption, as no published figure was found.
const CHEST_TILT: f64 = 20.0;

/// The shape of neck and chest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Build {
    /// Breadth of the neck's base over its depth.
    pub breadth_to_depth: Stated<f64>,
    /// How far the chest leans back from upright, in radians.
    pub chest_tilt: Stated<f64>,
}

/// What a girth is taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The wearer was measured.
    Measured,
    /// A table of bodies: of whom, and at which percentile.
    Table(Sex, u32),
    /// The proportions of a child of about eight.
    Child,
}

impl Wear {
    /// Whether the girth is a guess that nothing may be judged by: that of a child of whom no measure is written.
    #[must_use]
    pub fn is_guessed(&self) -> bool {
        *self.source == Basis::Child
    }

    /// Where the girth comes from, as it is printed.
    #[must_use]
    pub fn source_words(&self) -> String {
        let assumed = if self.source.is_assumed() { "assumed: " } else { "" };
        match *self.source {
            Basis::Measured => "measured".to_owned(),
            Basis::Child => "a child of about eight, guessed: measure the child".to_owned(),
            Basis::Table(sex, percentile) => {
                let whose = match sex {
                    Sex::Woman => "woman",
                    Sex::Man => "man",
                };
                format!("{assumed}{whose}, percentile {percentile} ({})", bodies::SOURCE)
            }
        }
    }
}

impl Default for Build {
    /// All of it assumed.
    fn default() -> Self {
        build(&Said([None, None]))
    }
}

fn build(said: &Said<'_>) -> Build {
    let ratio = said.first(|wear| wear.breadth_to_depth).map(|ratio| ratio.0);
    let tilt = said.first(|wear| wear.chest_tilt).map(|tilt| tilt.0.to_radians());
    Build {
        breadth_to_depth: Stated::or(ratio, BREADTH_TO_DEPTH),
        chest_tilt: Stated::or(tilt, CHEST_TILT.to_radians()),
    }
}

/// What is said of the body: that of a size, then that of the pattern.
struct Said<'a>([Option<&'a At<pattern::Wear>>; 2]);

impl Said<'_> {
    /// The first that says it.
    fn first<T>(&self, say: impl Fn(&pattern::Wear) -> Option<T>) -> Option<T> {
        self.0.iter().flatten().find_map(|wear| say(&wear.value))
    }
}

/// Resolves the body; a woman of middle size where nothing is said. What a size does not say of its
/// wearer, the pattern does.
pub fn wear(kind: Kind, of_size: Option<&At<pattern::Wear>>, of_pattern: Option<&At<pattern::Wear>>) -> Wear {
    let said = Said([of_size, of_pattern]);
    let place = match kind {
        Kind::Necklace | Kind::Strap | Kind::Earrings => Place::NeckBase,
        Kind::Bracelet => Place::Wrist,
        Kind::Anklet => Place::Ankle,
    };
    let child = said.first(|wear| wear.child).is_some_and(|answer| answer.0);
    let told = said.first(|wear| girth_of(wear, place));
    let assumed = if child { (bodies::guessed_child(place), Basis::Child) } else { tabled(Sex::Woman, MIDDLE, place) };
    let girth = told.unwrap_or(assumed).0;
    Wear {
        girth,
        narrowest: if place == Place::NeckBase { girth * bodies::NECK_TO_BASE } else { girth },
        ease: said.first(|wear| wear.ease).unwrap_or(USUAL_EASE),
        source: Stated::or(told.map(|(_, basis)| basis), assumed.1),
        build: build(&said),
        child,
        place: of_size.or(of_pattern).map(|at| at.place),
    }
}

/// The girth that a group of keys says, and where it comes from.
fn girth_of(wear: &pattern::Wear, place: Place) -> Option<(Length, Basis)> {
    let measured = match place {
        Place::NeckBase => wear.neck_base,
        Place::Wrist => wear.wrist,
        Place::Ankle => wear.ankle,
    };
    let measured = measured.map(|girth| (girth, Basis::Measured));
    measured.or_else(|| wear.body.map(|body| tabled(body.sex, body.percentile, place)))
}

fn tabled(sex: Sex, percentile: u32, place: Place) -> (Length, Basis) {
    (girth(sex, place, percentile), Basis::Table(sex, percentile))
}
