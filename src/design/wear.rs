//! The body that a piece is made for.

use crate::pattern::{self, Kind, Pattern};
use crate::remark::Remark;
use crate::remark::said::variant::Variant;
use crate::source::{self, At};
pub use crate::trade::bodies::Basis;
use crate::trade::bodies::{self, Sex, Site, girth};
use crate::units::Length;

use super::Context;
use super::bends::Bends;
use super::model::Wear;
use super::stated::Stated;
use super::twist::Alike;
use super::wraps;

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
#[non_exhaustive]
pub struct Build {
    /// Ratio of the breadth of the neck's base to its depth.
    pub breadth_to_depth: Stated<f64>,
    /// How far the chest leans back from upright, in radians.
    pub chest_tilt: Stated<f64>,
}

impl Wear {
    /// Whether the girth is a guess that nothing may be judged by: that of a child of whom no measure is written.
    #[must_use]
    pub fn is_guessed(&self) -> bool {
        *self.source == Basis::Child
    }
}

impl Default for Build {
    /// All of it assumed.
    fn default() -> Self {
        build(&Statements([None, None, None]))
    }
}

fn build(said: &Statements) -> Build {
    let ratio = said.first(|wear| wear.breadth_to_depth).map(|ratio| ratio.0);
    let tilt = said.first(|wear| wear.chest_tilt).map(|tilt| tilt.0.to_radians());
    Build {
        breadth_to_depth: Stated::or(ratio, BREADTH_TO_DEPTH),
        chest_tilt: Stated::or(tilt, CHEST_TILT.to_radians()),
    }
}

/// Measures of the one that a piece is made for, in place of the pattern's.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fit {
    /// Girth of the neck's base.
    pub neck: Option<Length>,
    /// Girth of the wrist.
    pub wrist: Option<Length>,
    /// Girth of the ankle.
    pub ankle: Option<Length>,
    /// Room between limb and piece.
    pub ease: Option<Length>,
}

impl Fit {
    /// Where it is measured.
    fn measured(&self) -> impl Iterator<Item = Site> {
        let all = [(Site::NeckBase, self.neck), (Site::Wrist, self.wrist), (Site::Ankle, self.ankle)];
        all.into_iter().filter(|(_, girth)| girth.is_some()).map(|(place, _)| place)
    }

    /// As a pattern would say it, but nowhere in its text.
    fn wear(&self) -> At<pattern::Wear> {
        let wear = pattern::Wear {
            neck_base: self.neck,
            wrist: self.wrist,
            ankle: self.ankle,
            ease: self.ease,
            body: None,
            breadth_to_depth: None,
            chest_tilt: None,
            child: None,
        };
        At::new(wear, source::Place::default())
    }
}

/// Refuses a measure of what the piece does not go round.
pub fn check(fit: &Fit, kind: &At<Kind>, context: &mut Context) -> Option<()> {
    let own = limb(kind.value);
    let is_other = |place: &Site| kind.value == Kind::Earrings || *place != own;
    let Some(other) = fit.measured().find(is_other) else { return Some(()) };
    let piece = (kind.value != Kind::Earrings).then(|| (kind.value.word(), own));
    context.refuse(Remark::new(Variant::OtherLimb { measured: other, piece }).at(kind.place))
}

/// What a kind of piece goes round.
#[must_use]
pub const fn limb(kind: Kind) -> Site {
    match kind {
        Kind::Necklace | Kind::Strap | Kind::Earrings => Site::NeckBase,
        Kind::Bracelet => Site::Wrist,
        Kind::Anklet => Site::Ankle,
    }
}

/// What is said of the body: of whom it is made for, then of a size, then of the pattern.
pub struct Statements([Option<At<pattern::Wear>>; 3]);

impl Statements {
    /// What a pattern says in a size, and for somebody.
    pub fn new(fit: &Fit, size: Option<&pattern::Size>, pattern: &Pattern) -> Self {
        let fit = Some(fit.wear()).filter(|_| *fit != Fit::default());
        Self([fit, size.and_then(|size| size.wear.clone()), pattern.wear.clone()])
    }

    /// The first that says it.
    fn first<T>(&self, say: impl Fn(&pattern::Wear) -> Option<T>) -> Option<T> {
        self.first_from(0, say)
    }

    /// The first of all but so many that says it.
    fn first_from<T>(&self, from: usize, say: impl Fn(&pattern::Wear) -> Option<T>) -> Option<T> {
        self.0[from..].iter().flatten().find_map(|wear| say(&wear.value))
    }

    /// What all but so many say: where the girth comes from, if anybody says it, and the ease.
    fn reach(&self, from: usize, kind: Kind) -> (Option<Length>, Length) {
        let girth = self.first_from(from, |wear| girth_of(wear, limb(kind))).map(|(girth, _)| girth);
        (girth, self.first_from(from, |wear| wear.ease).unwrap_or(USUAL_EASE))
    }
}

/// What lengths a variant has: those that are written so much longer, and else what its wearer asks for.
#[derive(Clone, Copy)]
pub struct MadeTo {
    /// How many times the row goes round.
    pub wraps: f64,
    /// How its rows bend as it is worn.
    pub bends: Bends,
    /// How much longer or shorter than written: each time round as much as girth and ease ask for.
    pub change: Length,
    /// The girth that it must go round, where anybody says it.
    pub limb: Option<Length>,
    /// What a row of no written length measures inside, closed; nothing where nobody says the girth.
    pub asked: Option<Length>,
    /// How many strands are twisted round one another, and how often.
    pub twisted: Option<Alike>,
    /// Whether the piece is made to other measures than the pattern's own.
    pub remade: bool,
}

/// What follows from who wears a variant.
pub fn made_to(
    pattern: &Pattern,
    size: Option<&pattern::Size>,
    said: &Statements,
    context: &mut Context,
) -> Option<MadeTo> {
    let kind = pattern.kind.value;
    let written = size.and_then(|size| size.change.as_ref()).map(|change| change.value.0);
    // A size that says how much longer it is has said so of its own wearer.
    let before = if written.is_some() { 1 } else { 2 };
    let ((now, ease), (then, usual)) = (said.reach(0, kind), said.reach(before, kind));
    let more = more(pattern, [now, then], context)?;
    let narrowest = now.map(|girth| narrowest(limb(kind), girth));
    let written = written.unwrap_or_default();
    let wraps = wraps::written(pattern);
    Some(MadeTo {
        wraps,
        bends: Bends::of(kind, wraps),
        change: written + (more + ease - usual) * wraps,
        limb: narrowest,
        asked: narrowest.map(|girth| girth + ease + written),
        twisted: Alike::of(pattern),
        remade: said.0[..2].iter().any(Option::is_some),
    })
}

/// By how much more a piece must go round than what it was written for, where either is known.
fn more(pattern: &Pattern, [now, then]: [Option<Length>; 2], context: &mut Context) -> Option<Length> {
    match (now, then) {
        (Some(now), Some(then)) => Some(now - then),
        (None, _) => Some(Length::ZERO),
        (Some(_), None) if pattern.strands.value.iter().all(|strand| strand.value.length.is_none()) => {
            Some(Length::ZERO)
        }
        (Some(_), None) => context.refuse(unmeasured(pattern)),
    }
}

/// Nobody knows by how much a length changes that was made for nobody.
fn unmeasured(pattern: &Pattern) -> Remark {
    Remark::new(Variant::Unmeasured { key: limb(pattern.kind.value).key() }).at(pattern.kind.place)
}

/// The narrowest that a piece must go round: of a neck what is above its base.
pub fn narrowest(place: Site, girth: Length) -> Length {
    if place == Site::NeckBase { girth * bodies::NECK_TO_BASE } else { girth }
}

/// Resolves the body; a woman of middle size where nothing is said. What a size does not say of its
/// wearer, the pattern does.
pub fn wear(kind: Kind, said: &Statements) -> Wear {
    let place = limb(kind);
    let child = said.first(|wear| wear.child).is_some_and(|answer| answer.0);
    let told = said.first(|wear| girth_of(wear, place));
    let assumed = if child { (bodies::guessed_child(place), Basis::Child) } else { tabled(Sex::Woman, MIDDLE, place) };
    let girth = told.unwrap_or(assumed).0;
    Wear {
        girth,
        narrowest: narrowest(place, girth),
        ease: Stated::or(said.first(|wear| wear.ease), USUAL_EASE),
        source: Stated::or(told.map(|(_, basis)| basis), assumed.1),
        build: build(said),
        child,
        place: said.0[1..].iter().flatten().next().map(|at| at.place),
    }
}

impl Wear {
    /// Whether somebody says the girth: the pattern, its size, or whoever it is made for.
    #[must_use]
    pub fn is_told(&self) -> bool {
        !self.source.is_assumed()
    }
}

/// The girth that a group of keys says, and where it comes from.
fn girth_of(wear: &pattern::Wear, place: Site) -> Option<(Length, Basis)> {
    let measured = match place {
        Site::NeckBase => wear.neck_base,
        Site::Wrist => wear.wrist,
        Site::Ankle => wear.ankle,
    };
    let measured = measured.map(|girth| (girth, Basis::Measured));
    measured.or_else(|| wear.body.map(|body| tabled(body.sex, body.percentile, place)))
}

fn tabled(sex: Sex, percentile: u32, place: Site) -> (Length, Basis) {
    (girth(sex, place, percentile), Basis::Table(sex, percentile))
}
