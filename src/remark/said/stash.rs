//! Remarks about what is at hand.

use super::wanted::Found;
use crate::remark::Code;
use crate::units::UnitError;

/// What is said about what is at hand.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Stash {
    NotIds {
        found: Found,
    },
    NotAnAmount {
        id: String,
        found: Found,
        by_length: bool,
    },
    /// An id that is near one of the pattern's.
    Unused {
        id: String,
        meant: String,
    },
    BadLength {
        id: String,
        text: String,
        error: UnitError,
    },
    BadCount {
        id: String,
        text: String,
    },
}

impl Stash {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NotIds { .. } | Self::NotAnAmount { .. } => Code::WrongKind,
            Self::Unused { .. } => Code::StashUnused,
            Self::BadLength { .. } | Self::BadCount { .. } => Code::BadQuantity,
        }
    }

    /// The id that is offered for one that the pattern does not use.
    pub(super) fn meant(&self) -> Option<&str> {
        match self {
            Self::Unused { meant, .. } => Some(meant),
            _ => None,
        }
    }
}
