//! Remarks about shelves.

use crate::remark::Code;

/// What is said about shelves.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Shelving {
    /// A shelf where a pattern is meant.
    NoPattern,
    /// A shelf that is named twice.
    Twice { name: String },
    Unusable {
        /// Its name, where the pattern has one for it.
        name: Option<String>,
        why: NoShelf,
    },
    TwoCurrencies {
        id: String,
        /// The currency in which its price is told.
        told: String,
        /// The pattern's.
        own: String,
    },
}

/// Why a shelf cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoShelf {
    /// It was not given beside the pattern.
    NotGiven,
    /// It is a pattern.
    Pattern,
    /// It could not be read, for what the system or its reader says.
    Unread(String),
}

impl Shelving {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NoPattern => Code::MissingKey,
            Self::Twice { .. } => Code::TwiceNamed,
            Self::Unusable { .. } => Code::NoShelf,
            Self::TwoCurrencies { .. } => Code::TwoCurrencies,
        }
    }
}
