//! Remarks about how things are sold, as it is written.

use crate::remark::Code;

/// What is said about how things are sold, as it is written.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Selling {
    /// A way to sell several kinds, of a single one.
    OneKind {
        by: &'static str,
    },
    /// A way to sell one kind, of several.
    SeveralKinds {
        by: &'static str,
    },
    /// Turns of what is no memory wire, or of nobody knows how many.
    Turns,
    NoAmount {
        by: &'static str,
        /// The keys that say it.
        needs: &'static str,
    },
    NoMixAmount {
        by: &'static str,
    },
    HoldsNothing {
        id: String,
    },
    /// A bead for which there are several ways to buy it.
    Twice {
        id: String,
        by_itself: bool,
        /// The ids of those in which it is sold with others.
        within: Vec<String>,
    },
    /// A finding that comes with what is not bought by the piece.
    ComesWithOther {
        id: String,
        with: String,
    },
    /// A finding that comes with another, and has a price beside.
    ComesAndSold {
        id: String,
        with: String,
    },
}

impl Selling {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::OneKind { .. }
            | Self::SeveralKinds { .. }
            | Self::Turns
            | Self::ComesWithOther { .. }
            | Self::ComesAndSold { .. } => Code::Misplaced,
            Self::NoAmount { .. } | Self::NoMixAmount { .. } | Self::HoldsNothing { .. } => Code::MissingKey,
            Self::Twice { .. } => Code::SoldTwice,
        }
    }
}
