//! Remarks about how often a piece goes round or is twisted, as it is written, and about memory wire.

use crate::remark::Code;

/// What is said about how often a piece goes round or is twisted, as it is written, and about memory wire.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Turns {
    Wrap(NoWrap),
    Twist(NoTwist),
    /// What memory wire is too hard for, or what its coil settles.
    Sprung {
        strand: String,
        why: Sprung,
    },
}

/// Why a piece does not go round so often.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoWrap {
    /// Earrings go round nothing.
    Earrings,
    /// A strap goes round nothing.
    Strap,
    /// There are several strands.
    Several,
    /// It is of memory wire, and has a closure beside.
    Clasp,
    /// It is open, or its ends meet.
    Open,
    /// It would go round so often, which is no whole number.
    Part(f64),
}

/// Why strands are not twisted.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoTwist {
    /// A piece of such a kind does not close round its wearer.
    Kind(&'static str),
    /// There is but one.
    Alone,
    /// One is memory wire.
    Sprung,
    /// Nothing gathers their ends.
    Ungathered,
    /// An end would be turned so often, and then not meet the other.
    Part(f64),
    /// What is called so holds them apart.
    HeldApart(String),
    /// They lock before the last turn.
    Locked {
        /// How often they would be turned.
        turns: f64,
        /// How often they can be.
        most: Option<f64>,
    },
}

/// What memory wire does not take.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Sprung {
    /// A length: that follows from its beads.
    Length,
    /// Beads that settle so.
    Settle(&'static str),
    /// Knots between its beads.
    Knots,
    /// A knot or a stop.
    Held,
    /// A fold.
    Doubled,
    /// What is called so at its ends.
    End(String),
}

impl Turns {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Wrap(_) => Code::CannotWrap,
            Self::Twist(_) => Code::CannotTwist,
            Self::Sprung { .. } => Code::Misplaced,
        }
    }
}
