//! Remarks about what closes a piece, as it is written.

use crate::remark::Code;

/// What is said about what closes a piece, as it is written.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Closure {
    /// What would join the lower ends of an earring.
    NothingBelow {
        key: &'static str,
    },
    BothEndsAlone,
    /// Ends that do not meet in `both ends`.
    BothEndsApart {
        kind: &'static str,
    },
    /// Ends that meet of several strands, or of one that is not tied.
    BothEndsOfOne,
    /// A tail where no end goes through the other.
    Tail,
    /// Several strands of which one would go through its own ring.
    ThroughOfOne,
    /// A piece that is not worn open.
    Open {
        kind: &'static str,
    },
    NoRing,
    /// Chain, and not how much of it.
    NoLength {
        id: String,
    },
    /// A length of what is no chain.
    Length {
        id: String,
    },
}

impl Closure {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NothingBelow { .. } | Self::BothEndsOfOne | Self::Tail | Self::ThroughOfOne | Self::Open { .. } => {
                Code::Misplaced
            }
            Self::BothEndsAlone | Self::BothEndsApart { .. } => Code::UnknownKey,
            Self::NoRing => Code::NoRing,
            Self::NoLength { .. } => Code::MissingSize,
            Self::Length { .. } => Code::WrongKind,
        }
    }
}
