//! Remarks about how a pattern is written.

use crate::remark::Code;
use crate::units::Unit;

use super::quantity::NoQuantity;
use super::slip::Slip;
use super::wanted::{Found, Wanted};

/// What is said about how a pattern is written.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Language {
    /// A file beyond the size that is read.
    TooLarge {
        file: String,
    },
    NotUtf8 {
        file: String,
    },
    Empty,
    /// Nested deeper, or larger, than is read.
    TooDeep,
    /// Aliases that grow beyond what is read.
    RepeatsItself,
    Unreadable,
    Slip(Slip),
    KeyTwice {
        key: String,
    },
    Version {
        of: Written,
        version: u32,
        /// The version that is read.
        read: u32,
    },
    WrongKind {
        found: Found,
        wanted: Wanted,
    },
    NoQuantity {
        text: String,
        why: NoQuantity,
    },
    /// No number of times, and nearly the word for as often as fits.
    NearlyFill {
        text: String,
        fill: &'static str,
    },
    OutOfBounds {
        key: &'static str,
        unit: Unit,
        least: f64,
        most: f64,
        number: f64,
    },
    UnknownWord {
        text: String,
        wanted: Wanted,
        words: Vec<&'static str>,
        meant: Option<String>,
    },
    UnknownKey {
        key: String,
        keys: Vec<&'static str>,
        meant: Option<String>,
    },
    /// A group in a bead list that is none of those that may stand there.
    UnknownItem {
        groups: Vec<&'static str>,
        meant: Option<String>,
    },
    MissingKey {
        key: &'static str,
    },
    /// A key that neither the pattern has nor a shelf for it.
    MissingGroup {
        key: &'static str,
    },
    /// A comma that ends a value, where it was to part its decimals.
    DecimalComma {
        whole: String,
        decimals: String,
    },
    /// A hanger that is written with a length, with its id and that length where they are all of it.
    HangerLength {
        measured: Option<(String, String)>,
    },
    UnknownCode {
        name: String,
        meant: Option<String>,
    },
    ErrorAllowed {
        code: Code,
    },
    IdleAllow {
        code: Code,
    },
}

/// What is written in the language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// A pattern.
    Pattern,
    /// A shelf.
    Shelf,
}

impl Language {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::TooLarge { .. } | Self::NotUtf8 { .. } => Code::NotText,
            Self::Empty | Self::TooDeep | Self::RepeatsItself | Self::Unreadable | Self::KeyTwice { .. } => Code::Yaml,
            Self::Slip(slip) => slip.code(),
            Self::Version { .. } => Code::Version,
            Self::WrongKind { .. } | Self::HangerLength { .. } => Code::WrongKind,
            Self::NoQuantity { .. } | Self::NearlyFill { .. } => Code::BadQuantity,
            Self::OutOfBounds { .. } => Code::OutOfBounds,
            Self::UnknownWord { .. } | Self::UnknownCode { .. } | Self::ErrorAllowed { .. } => Code::UnknownWord,
            Self::UnknownKey { .. } | Self::UnknownItem { .. } | Self::DecimalComma { .. } => Code::UnknownKey,
            Self::MissingKey { .. } | Self::MissingGroup { .. } => Code::MissingKey,
            Self::IdleAllow { .. } => Code::IdleAllow,
        }
    }

    /// The word that is offered for one that is not known.
    pub(super) fn meant(&self) -> Option<&str> {
        match self {
            Self::NearlyFill { fill, .. } => Some(fill),
            Self::UnknownWord { meant, .. }
            | Self::UnknownKey { meant, .. }
            | Self::UnknownItem { meant, .. }
            | Self::UnknownCode { meant, .. } => meant.as_deref(),
            _ => None,
        }
    }
}
