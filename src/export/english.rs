//! What files and their faults are called, in English.

use std::fmt;

use crate::paint::mark::Role;

use super::{ExportError, NoDay};

/// The words for what marks show together; empty for an ornament and for what orders words.
pub fn label(role: &Role) -> &str {
    if *role == Role::Footer { "footer" } else { role.label() }
}

/// What the first figure of a page shows, behind the page's description.
pub fn shown(page: &str, shows: &str) -> String {
    format!("{page} Shown: {shows}")
}

impl ExportError {
    /// What to change.
    #[must_use]
    pub const fn help(&self) -> &'static str {
        match self {
            Self::TooLarge(..) => "ask for a lower resolution (300 dpi is print quality) or smaller paper",
            Self::NoArea => "choose a paper with a width and a height and a resolution above 0 dpi",
            Self::NoGlyph(_) => "write them in Latin, Greek or Cyrillic letters, which the font has",
            Self::Refused(_) => "this is a fault of festoon: please report it with the pattern",
        }
    }
}

impl fmt::Display for ExportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge(width, height) => {
                write!(f, "the picture would be {width:.0} × {height:.0} pixels, more than 400 million")
            }
            Self::NoArea => f.write_str("the page has no area"),
            Self::NoGlyph(letters) => {
                let letters = letters.iter().map(String::as_str).collect::<Vec<_>>().join(" ");
                write!(f, "the sheet's font has no {letters}, and a file to keep (PDF/A) has no empty boxes")
            }
            Self::Refused(reason) => write!(f, "the page could not be drawn: {reason}"),
        }
    }
}

impl fmt::Display for NoDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a day of the calendar is meant, such as 2026-11-27")
    }
}
