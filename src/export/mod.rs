//! From marks to files: SVG, and from that SVG alone PNG and PDF.
//!
//! The only module that knows what SVG is. Everything is deterministic: the same page gives the same
//! bytes on every run, with no fonts but the two bundled ones and no clock.

mod bounds;
mod day;
mod elements;
mod english;
mod number;
mod packed;
mod pdf;
mod png;
mod raster;
mod soft;
mod svg;
mod tree;

use std::collections::BTreeSet;

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

impl std::error::Error for ExportError {}
