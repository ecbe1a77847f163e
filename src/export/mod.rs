//! From marks to files: SVG, and from that SVG alone PNG and PDF.
//!
//! The only module that knows what SVG is. Everything is deterministic: the same page gives the same
//! bytes on every run, with no fonts but the two bundled ones and no clock.

mod bounds;
mod day;
mod elements;
mod number;
mod packed;
mod pdf;
mod png;
mod raster;
mod soft;
mod svg;
mod tree;

use std::collections::BTreeSet;
use std::fmt;

pub use day::{Day, NoDay};
pub use pdf::{About, pdf};
pub use png::{Effort, png, transparent_png};
pub use svg::svg;

/// Why a page could not become a file.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum ExportError {
    /// The picture would have this many pixels across and down: more than `png::MOST_PIXELS`.
    TooLarge(f64, f64),
    /// The page has no area, so that there is nothing to draw on.
    NoArea,
    /// The bundled font has none of these letters, which a file to keep must have.
    NoGlyph(BTreeSet<String>),
    /// The drawing library refused the page, with its own reason.
    Refused(String),
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

impl std::error::Error for ExportError {}
