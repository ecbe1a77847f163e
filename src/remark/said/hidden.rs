//! Remarks about what cones and covers hide.

use crate::remark::Code;
use crate::units::Length;

/// What is said about what cones and covers hide.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Hidden {
    EyeOutside {
        cone: String,
        pin: String,
        inside: Length,
        eye: Length,
        assumed: bool,
    },
    EyePullsOut {
        cone: String,
        pin: String,
        tip: Length,
        eye: Length,
        assumed: bool,
    },
    EyeTooSmall {
        pin: String,
        loops: usize,
        open: Length,
        assumed: bool,
        needed: Length,
    },
    BeadsInCone {
        cone: String,
        beads: usize,
        out: Length,
        needed: Length,
    },
    CrimpsInCone {
        cone: String,
        crimps: usize,
        inside: Length,
        depth: Length,
        broadest: Length,
        needed: Length,
    },
    CrimpsShow {
        cone: String,
        out: Length,
    },
    CoverTooShort {
        cover: String,
        crimp: String,
        is: Length,
        needed: Length,
    },
    /// A cover that does not close over something, or where that has no name over its knot.
    CoverTooNarrow {
        cover: String,
        over: Option<String>,
        inside: Length,
        broad: Length,
    },
}

impl Hidden {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::EyeOutside { .. } | Self::EyePullsOut { .. } => Code::EyeInCone,
            Self::EyeTooSmall { .. } => Code::EyeTooSmall,
            Self::BeadsInCone { .. } => Code::BeadsInCone,
            Self::CrimpsInCone { .. } => Code::CrimpsInCone,
            Self::CrimpsShow { .. } => Code::CrimpsShow,
            Self::CoverTooShort { .. } | Self::CoverTooNarrow { .. } => Code::CoverTooSmall,
        }
    }
}
