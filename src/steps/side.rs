//! The two sides of a piece.

use crate::design::{Design, Finding, Index, Part, Strand};

/// A side of the piece, or both at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// What is done alike on both.
    Both,
    /// That of the strands' first ends.
    First,
    /// That of the strands' last ends.
    Last,
}

/// Whether the closure has the finding on either side.
pub fn on_both(design: &Design, finding: Index<Finding>) -> bool {
    let has = |parts: &[Part]| parts.iter().any(|part| part.finding == finding);
    has(design.closure.left()) && has(design.closure.right())
}

/// Whether branches hang on the finding, more of it than the closure has.
pub fn hangs(design: &Design, finding: Index<Finding>) -> bool {
    design.strands.iter().flat_map(Strand::hung).any(|dangle| dangle.on == Some(finding))
}
