//! Remarks: everything the program has to say about a pattern, as data.
//!
//! A [`Remark`] has a stable [`Code`], a headline that stands alone, the place in the pattern and a
//! help line that says what to change. Stages gather them; only [`mod@render`] turns them into text.

mod code;
mod declare;
mod english;
pub mod escape;
mod few;
mod level;
pub mod plain;
pub mod render;
pub mod said;
mod suggest;

use std::collections::BTreeSet;

use crate::source::{Place, Source};

pub use code::Code;
pub use level::Level;
pub use said::Said;
pub use suggest::{did_you_mean, near, suggest};

/// One thing to say about a pattern.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Remark {
    /// What is said, with its arguments.
    pub said: Box<Said>,
    /// Where the pattern says it; absent where the whole file is meant.
    pub place: Option<Place>,
    /// The size or colourway of which alone it is said; absent where it is said of the piece.
    pub variant: Option<Edition>,
}

/// A size or a colourway, by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edition {
    /// A size.
    Size(String),
    /// A colourway.
    Colourway(String),
}

impl Remark {
    /// Makes a remark about the whole file.
    pub fn new(said: impl Into<Said>) -> Self {
        Self { said: Box::new(said.into()), place: None, variant: None }
    }

    /// Which remark this is.
    #[must_use]
    pub fn code(&self) -> Code {
        self.said.code()
    }

    /// What was found, with its number: stands alone.
    #[must_use]
    pub fn headline(&self) -> String {
        let headline = english::headline(&self.said);
        self.variant.iter().fold(headline, |headline, variant| english::in_edition(variant, &headline))
    }

    /// What to change; may be empty.
    #[must_use]
    pub fn help(&self) -> String {
        english::help(&self.said)
    }

    /// Puts the remark at a place.
    #[must_use]
    pub const fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }

    /// The file that it is about, of a pattern and its shelves.
    #[must_use]
    pub fn file<'s>(&self, source: &'s Source) -> &'s Source {
        self.place.map_or(source, |place| source.of(place))
    }

    /// How grave it is.
    #[must_use]
    pub fn level(&self) -> Level {
        self.code().level()
    }
}

/// Each remark once, however often its cause is met.
#[must_use]
pub fn once(remarks: Vec<Remark>) -> Vec<Remark> {
    let mut said = BTreeSet::new();
    let is_new = |remark: &Remark| said.insert((remark.code(), remark.place, remark.headline()));
    remarks.into_iter().filter(is_new).collect()
}

/// Whether any of the remarks forbids going on.
#[must_use]
pub fn has_errors(remarks: &[Remark]) -> bool {
    remarks.iter().any(|remark| remark.level() == Level::Error)
}
