//! Remarks about rows that are worked out.

use crate::remark::Code;
use crate::units::Length;

/// What is said about rows that are worked out.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Rows {
    /// A graduated row of no beads.
    NoGrades,
    GradesTooLong {
        least: Length,
    },
    /// A fade from a bead to itself.
    FadeToItself {
        id: String,
    },
    FadeOfOne {
        id: String,
    },
    /// A mix of no beads.
    NoMix,
    /// A mix of so few beads that there is none of a kind.
    NoneOf {
        beads: u32,
        id: String,
    },
    NotInMix {
        id: String,
        known: Vec<String>,
        meant: Option<String>,
    },
    /// A kind that has too large a part in a mix to stand apart in a long row.
    TooLargePart {
        part: u32,
        /// All parts.
        all: u64,
        /// Of how many beads one can be of this kind.
        apart: usize,
        kind: MixKind,
    },
    TooManyOf {
        beads: usize,
        count: u32,
        /// How many can stand apart.
        most: usize,
        kind: MixKind,
    },
    NoOrder,
}

/// A kind of bead in a mix.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MixKind {
    /// Its id.
    pub id: String,
    /// The ids of the other kinds.
    pub others: Vec<String>,
}

impl Rows {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NoGrades => Code::NothingRepeated,
            Self::GradesTooLong { .. } => Code::NoFill,
            Self::NotInMix { .. } => Code::UnknownId,
            Self::FadeToItself { .. }
            | Self::FadeOfOne { .. }
            | Self::NoMix
            | Self::NoneOf { .. }
            | Self::TooLargePart { .. }
            | Self::TooManyOf { .. }
            | Self::NoOrder => Code::NoMix,
        }
    }

    /// The id that is offered for one that is not known.
    pub(super) fn meant(&self) -> Option<&str> {
        match self {
            Self::NotInMix { meant, .. } => meant.as_deref(),
            _ => None,
        }
    }
}
