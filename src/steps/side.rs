//! The two sides of a piece, and how a sentence tells their findings apart.

use crate::design::{Design, Finding, Index, Part};

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

impl Side {
    /// The finding of this index on this side: `the second eye pin` where both sides have one.
    pub fn the(self, design: &Design, finding: Index<Finding>) -> String {
        let name = &design.findings[finding].name;
        match self {
            Self::Both => format!("each {name}"),
            Self::First if on_both(design, finding) => format!("the first {name}"),
            Self::Last if on_both(design, finding) => format!("the second {name}"),
            Self::Last if design.closure.loops() => format!("the same {name}"),
            Self::First | Self::Last => format!("the {name}"),
        }
    }

    /// `first` or `last`, of an end.
    pub const fn end(self) -> &'static str {
        match self {
            Self::Both => "each",
            Self::First => "first",
            Self::Last => "last",
        }
    }
}

/// Whether the closure has the finding on either side.
pub fn on_both(design: &Design, finding: Index<Finding>) -> bool {
    let has = |parts: &[Part]| parts.iter().any(|part| part.finding == finding);
    has(design.closure.left()) && has(design.closure.right())
}
