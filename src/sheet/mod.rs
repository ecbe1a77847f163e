//! The printed sheet.

mod face;
pub mod figure;
pub mod font;
pub mod mark;
pub mod metrics;
pub mod outline;
pub mod style;

use crate::Piece;
use crate::art::Ink;
use crate::trade::paper::Paper;

/// How a sheet is drawn.
#[derive(Clone, Debug)]
pub struct Style {
    /// The paper.
    pub paper: Paper,
    /// The inks.
    pub ink: Ink,
}

/// The pages of a sheet.
#[must_use]
pub fn pages(piece: &Piece, style: &Style) -> Vec<mark::Page> {
    vec![face::face(piece, style)]
}
