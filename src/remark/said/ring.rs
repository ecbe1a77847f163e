//! Remarks about how closed rings go round.

use crate::remark::Code;
use crate::trade::bodies::Site;
use crate::trade::ease::RingFit;
use crate::units::Length;

/// What is said about how closed rings go round.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Ring {
    Round {
        misfit: Misfit,
        /// Which of several strands it is.
        strand: Option<String>,
        /// Whether it can be hooked shorter and longer.
        hooked: bool,
        limb: Site,
        girth: Length,
        /// How much wider it is inside than the girth.
        room: Length,
        ease: Length,
        assumed: bool,
        remedy: Remedy,
    },
    UnevenRows {
        strands: [String; 2],
        insides: [Length; 2],
    },
}

impl Ring {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Round { misfit, .. } => misfit.code(),
            Self::UnevenRows { .. } => Code::UnevenRows,
        }
    }
}

/// How a closed ring does not go round its limb as it was asked to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// It is smaller than the limb.
    TooShort,
    /// It has less room than was asked for.
    Tight,
    /// It has more.
    Loose,
    /// It has so much that it falls off.
    FallsOff,
}

impl Misfit {
    /// Whether it is wider than was asked for.
    #[must_use]
    pub const fn is_wide(self) -> bool {
        matches!(self, Self::Loose | Self::FallsOff)
    }

    const fn code(self) -> Code {
        match self {
            Self::TooShort => Code::TooShort,
            Self::Tight => Code::RingTight,
            Self::Loose => Code::RingLoose,
            Self::FallsOff => Code::FallsOff,
        }
    }
}

/// What gives a ring the room that was asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Remedy {
    /// Nothing that is counted: as many beads are strung as come nearest.
    Nearest,
    /// Another count of repeats.
    Repeats {
        /// Which.
        count: Count,
        /// How many there are now.
        now: u32,
        /// Whether they are repeated on both sides.
        sides: bool,
        /// The row's length with them.
        length: Length,
    },
    /// A shorter list, as no count of repeats comes near enough.
    ShorterList {
        /// The counts between which the room lies.
        counts: [Count; 2],
        /// Whether they are repeated on both sides.
        sides: bool,
    },
    /// Another length.
    Length {
        /// By how much.
        by: Length,
        /// Whether the strands are twisted.
        twisted: bool,
        /// The fit as it is.
        fit: Option<RingFit>,
    },
}

/// So many repeats, and what they measure inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Count {
    /// How many.
    pub times: u32,
    /// The ring's girth inside.
    pub inside: Length,
}
