//! Remarks about whether a piece closes and stays closed.

use crate::remark::Code;
use crate::units::Length;

/// What is said about whether a piece closes and stays closed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Closing {
    Unjoined {
        strand: String,
    },
    OneSided {
        finding: String,
        bare: ClosureSide,
    },
    NotOntoOneAnother {
        findings: [String; 2],
        hooks: bool,
    },
    ClaspTwice {
        clasp: String,
        id: String,
        kind: &'static str,
    },
    RingNarrow {
        ring: String,
        what: String,
        inside: Length,
        wide: Length,
    },
    NoOpening {
        before: String,
        after: String,
    },
    NothingToHitchTo {
        strand: String,
    },
    CannotBeHitched {
        strand: String,
        cord: String,
    },
    /// By how much a piece, hooked at its shortest, does not go round.
    IdleExtender {
        lack: Length,
    },
}

impl Closing {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Unjoined { .. } => Code::Unjoined,
            Self::OneSided { .. } | Self::NotOntoOneAnother { .. } => Code::OneSided,
            Self::ClaspTwice { .. } => Code::ClaspTwice,
            Self::RingNarrow { .. } => Code::RingNarrow,
            Self::NoOpening { .. } => Code::NoOpening,
            Self::NothingToHitchTo { .. } | Self::CannotBeHitched { .. } => Code::Unhitched,
            Self::IdleExtender { .. } => Code::IdleExtender,
        }
    }
}

/// A side of a closure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClosureSide {
    /// Where strands begin.
    Left,
    /// Where they end.
    Right,
}

impl ClosureSide {
    /// Its key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}
