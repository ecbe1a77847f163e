//! What stays in its place, in English: names with their stations, and from where those are measured.

use std::ops::Range;

use crate::design::Design;
use crate::english::{capital, commas, list, plural};
use crate::steps::posts::{Datum, Keeps, MeasuredBetween, Post, PostRun, Posts};
use crate::units::UnitStyle;

impl Keeps {
    /// The letter that stands for it before its number in a design: the first of its word that is no bead's and stands for no
    /// kind before it, or else its first.
    #[must_use]
    pub fn letter(self, design: &Design) -> char {
        let taken: Vec<_> = Self::ALL[..self as usize].iter().map(|before| before.letter(design)).collect();
        let is_bead = |letter: char| design.beads.iter().any(|bead| bead.letter == letter.to_string());
        let word = self.noun().to_ascii_uppercase();
        let first = word.chars().next().unwrap_or_default();
        word.chars().find(|letter| !is_bead(*letter) && !taken.contains(letter)).unwrap_or(first)
    }

    /// The word for it.
    const fn noun(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Knot => "knot",
            Self::Bar => "bar",
            Self::Group => "group",
        }
    }

    /// What its letter means: `a stop`.
    #[must_use]
    pub const fn meant(self) -> &'static str {
        match self {
            Self::Stop => "a stop",
            Self::Knot => "a knot",
            Self::Bar => "a bar",
            Self::Group => "the start of a group",
        }
    }

    /// Where it is measured, of one: `middle of a stop`.
    #[must_use]
    pub const fn place(self) -> &'static str {
        match self {
            Self::Stop => "middle of a stop",
            Self::Knot => "middle of a knot",
            Self::Bar => "middle of a bar",
            Self::Group => "start of a group",
        }
    }

    const fn middles(self) -> &'static str {
        match self {
            Self::Stop => "middles of stops",
            Self::Knot => "middles of knots",
            Self::Bar => "middles of bars",
            Self::Group => "starts of groups",
        }
    }
}

impl Posts<'_> {
    /// `S1 at 110 mm`.
    #[must_use]
    pub fn say(&self, post: &Post, units: UnitStyle) -> String {
        format!("{} at {}", post.name, units.ruler(post.station))
    }

    /// `S1 at 110 mm, S2 at 200 mm`, or `K1 at 10 mm to K60 at 490 mm`: the posts of a kind, or nothing where
    /// there are none.
    #[must_use]
    pub fn stations(&self, keeps: Keeps, units: UnitStyle) -> Option<String> {
        let say = |(first, last): &PostRun<'_>| {
            let last = last.map(|last| format!(" to {}", self.say(last, units))).unwrap_or_default();
            self.say(first, units) + &last
        };
        let (told, many) = self.told(keeps);
        let (last, before) = told.split_last()?;
        let between = if many { " and so on to " } else { ", " };
        let before = commas(before.iter().map(say));
        Some(if before.is_empty() { say(last) } else { format!("{before}{between}{}", say(last)) })
    }

    /// `Middles of bars, from the outside of the first end's loop: B1 at 40 mm.`
    #[must_use]
    pub fn sentence(&self, keeps: Keeps, units: UnitStyle) -> Option<String> {
        let (what, from) = (keeps.middles(), from(self.datum()));
        Some(format!("{}, {from}: {}.", capital(what), self.stations(keeps, units)?))
    }

    /// `From the outside of the first end's loop, middles of stops: S1 at 110 mm, S2 at 200 mm.`
    #[must_use]
    pub fn positions(&self, units: UnitStyle) -> Option<String> {
        let each = Keeps::ALL
            .iter()
            .filter_map(|keeps| Some(format!("{}: {}", keeps.middles(), self.stations(*keeps, units)?)));
        let each = each.collect::<Vec<_>>().join("; ");
        let datum = capital(from(self.datum()));
        (!each.is_empty()).then(|| format!("{datum}, {each}."))
    }

    /// Its groups by their names: `groups G1 to G7`; `the groups` where they have none.
    pub(super) fn groups(&self) -> String {
        span(self.of(Keeps::Group)).map_or_else(|| "the groups".to_owned(), |names| format!("groups {names}"))
    }

    /// The names of posts among things that the word chart says, those of a kind together: `knots K2 to K13 and
    /// group G1`; nothing where there are none.
    pub(in crate::steps) fn names(&self, said: &Range<usize>) -> Option<String> {
        let posts = self.within(said);
        let of = |keeps: Keeps| {
            let posts: Vec<_> = posts.iter().filter(move |post| post.keeps == keeps).collect();
            Some(format!("{} {}", plural(posts.len() as u64, keeps.noun()), span(posts.into_iter())?))
        };
        let kinds: Vec<_> = Keeps::ALL.into_iter().filter_map(of).collect();
        (!kinds.is_empty()).then(|| list(&kinds))
    }
}

/// Where a strand's stations are measured from, as a clause.
#[must_use]
pub const fn from(datum: Datum) -> &'static str {
    match datum {
        Datum::EndLink => "from the inside of the first end link",
        Datum::Loop => "from the outside of the first end's loop",
        Datum::KnotCover => "from the outside of the first knot cover",
        Datum::End => "from the outside of the first end",
    }
}

/// Between what a strand's finished length is measured.
#[must_use]
pub const fn between(between: MeasuredBetween) -> &'static str {
    match between {
        MeasuredBetween::EndLinks => "the inside of one end link to the inside of the other",
        MeasuredBetween::KnotCovers => "the outside of one knot cover to the outside of the other",
        MeasuredBetween::Ends => "one end to the other",
        MeasuredBetween::HitchAndLoop => "hitch to loop",
        MeasuredBetween::Loops => "loop to loop",
    }
}

/// Names that follow one another: `K1`, `K1 and K2`, `K1 to K14`.
fn span<'p>(posts: impl Iterator<Item = &'p Post>) -> Option<String> {
    let names: Vec<_> = posts.map(|post| post.name.as_str()).collect();
    match names.as_slice() {
        [] => None,
        [first, _, .., last] if names.len() > 2 => Some(format!("{first} to {last}")),
        few => Some(list(few)),
    }
}
