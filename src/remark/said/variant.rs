//! Remarks about sizes, whom a piece is made for, and the designer's own figures.

use crate::remark::Code;
use crate::trade::bodies::Site;
use crate::units::Length;

/// What is said about sizes, whom a piece is made for, and the designer's own figures.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Variant {
    /// A size that changes nothing.
    IdleSize {
        size: String,
    },
    /// A measure of what the piece does not go round.
    OtherLimb {
        measured: Site,
        /// The kind of piece and what it goes round; nothing of earrings, which go round nothing.
        piece: Option<(&'static str, Site)>,
    },
    /// Lengths that are made for nobody, so that they change for nobody.
    Unmeasured {
        key: &'static str,
    },
    OtherCount {
        /// Absent of the whole piece.
        strand: Option<String>,
        id: String,
        found: u32,
        expected: u32,
    },
    OtherLength {
        strand: String,
        of: Figure,
        found: Length,
        expected: Length,
    },
}

/// A length of a strand that a designer may expect.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Figure {
    Beaded,
    Finished,
    Cut,
}

impl Variant {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::IdleSize { .. } => Code::MissingKey,
            Self::OtherLimb { .. } => Code::OtherLimb,
            Self::Unmeasured { .. } => Code::NoLength,
            Self::OtherCount { .. } | Self::OtherLength { .. } => Code::Expected,
        }
    }
}
