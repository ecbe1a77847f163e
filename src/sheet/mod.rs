//! The printed sheet.

pub mod font;
pub mod mark;
pub mod metrics;

/// How a sheet is drawn.
#[derive(Clone, Debug, Default)]
pub struct Style {
    /// The paper.
    pub paper: crate::trade::paper::Paper,
}

/// The pages of a sheet.
#[must_use]
pub fn pages(_piece: &crate::Piece, _style: &Style) -> Vec<mark::Page> {
    Vec::new()
}
