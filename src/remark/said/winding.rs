//! Remarks about torsades, coils and wraps.

use crate::remark::Code;
use crate::units::{Length, UnitStyle};

/// What is said about torsades, coils and wraps.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Winding {
    BeadStiff {
        bead: String,
        cord: String,
        hole: Length,
        needed: Length,
    },
    CoilSmall {
        inside: Length,
        limb: Length,
        needed: Length,
    },
    OtherTurns {
        turns: f64,
        wraps: f64,
    },
    /// Ends that meet, and how often it should go round.
    EndsMeet {
        turns: f64,
        better: f64,
    },
    /// How steep strands run across the piece, in degrees.
    TwistTight {
        turns: f64,
        angle: f64,
    },
    /// How often it is seen.
    TwistLoose {
        turns: f64,
        seen: f64,
    },
    /// A strand drawn taut, beside which all others stand loose by so much.
    Taut {
        strand: String,
        least: Length,
        most: Length,
    },
    /// A strand longer than its way in the twist, which is so long.
    Slack {
        strand: String,
        by: Length,
        twisted: Length,
        units: UnitStyle,
        fits: Length,
    },
    TwistBare {
        strand: String,
        share: f64,
    },
}

impl Winding {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::BeadStiff { .. } => Code::BeadStiff,
            Self::CoilSmall { .. } => Code::CoilSmall,
            Self::OtherTurns { .. } => Code::OtherTurns,
            Self::EndsMeet { .. } => Code::EndsMeet,
            Self::TwistTight { .. } => Code::TwistTight,
            Self::TwistLoose { .. } => Code::TwistLoose,
            Self::Taut { .. } | Self::Slack { .. } => Code::TwistSlack,
            Self::TwistBare { .. } => Code::TwistBare,
        }
    }
}
