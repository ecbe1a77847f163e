//! What the page asks about: a text and the variant of it that is wanted.

use std::sync::{Arc, PoisonError};

use serde::Deserialize;

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::remark::{Remark, has_errors};
use festoon::sheet::Style;
use festoon::source::Source;
use festoon::trade::paper::Paper;
use festoon::{Piece, piece};

use super::Desk;
use crate::cli::VariantOptions;

/// A question about a text.
#[derive(Debug, Deserialize)]
pub struct Question {
    /// The pattern's text.
    pub text: String,
    /// A size that it names.
    #[serde(default)]
    pub size: Option<String>,
    /// A colourway that it names.
    #[serde(default)]
    pub colourway: Option<String>,
    /// The ink, by its word.
    #[serde(default)]
    pub ink: String,
    /// The paper, by its word.
    #[serde(default)]
    pub paper: String,
    /// A place in the text, in UTF-16 code units, or a page's number from 0.
    #[serde(default)]
    pub at: usize,
    /// Whether the answer is wanted at once, with each strand hung by itself and drawn plainly.
    #[serde(default)]
    pub soon: bool,
}

/// A text that was drawn.
pub struct Drawn {
    choice: Choice,
    soon: bool,
    /// The text.
    pub source: Source,
    /// The piece, where nothing is wrong.
    pub piece: Option<Piece>,
    /// What there is to say.
    pub remarks: Vec<Remark>,
}

impl Question {
    /// The text with its shelves.
    pub fn source(&self, desk: &Desk) -> Source {
        desk.source(&self.text)
    }

    /// The byte of the place.
    pub fn byte(&self) -> usize {
        festoon::assist::utf16::byte(&self.text, self.at)
    }

    pub fn variant(&self, desk: &Desk) -> VariantOptions {
        VariantOptions { size: self.size.clone(), colourway: self.colourway.clone(), ..desk.variant.clone() }
    }

    pub fn ink(&self) -> Ink {
        Ink::named(&self.ink).unwrap_or_default()
    }

    pub fn style(&self, desk: &Desk) -> Style {
        Style { paper: Paper::named(&self.paper).unwrap_or(desk.paper), ink: self.ink(), prices: false }
    }

    /// The text drawn, or the same as drawn last.
    pub fn drawn(&self, desk: &Desk) -> Arc<Drawn> {
        let last = || desk.drawn.lock().unwrap_or_else(PoisonError::into_inner);
        let (source, choice) = (self.source(desk), self.variant(desk).choice());
        let is_same = |drawn: &&Arc<Drawn>| drawn.soon == self.soon && drawn.choice == choice && drawn.source == source;
        if let Some(drawn) = last().as_ref().filter(is_same) {
            return Arc::clone(drawn);
        }
        let drawn = Arc::new(self.draw(source, choice));
        *last() = Some(Arc::clone(&drawn));
        drawn
    }

    fn draw(&self, source: Source, choice: Choice) -> Drawn {
        let (made, remarks) = if self.soon { soon(&source, &choice) } else { piece(&source, &choice, None) };
        let made = made.filter(|_| !has_errors(&remarks));
        Drawn { choice, soon: self.soon, source, piece: made, remarks }
    }
}

/// The piece as it can be drawn at once, with what is wrong with the pattern as written.
fn soon(source: &Source, choice: &Choice) -> (Option<Piece>, Vec<Remark>) {
    let (pattern, remarks) = festoon::pattern::read(source);
    let Some(pattern) = pattern else { return (None, remarks) };
    let (design, remarks) = festoon::design::resolve(&pattern, choice);
    let piece = design.and_then(|design| {
        let drape = festoon::drape::hang_alone(&design, None).ok()?;
        Some(Piece::of(&pattern, design, drape))
    });
    (piece, pattern.unsilenced(remarks))
}
