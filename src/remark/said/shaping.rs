//! Remarks about the shapes and sizes of findings.

use crate::remark::Code;
use crate::units::Length;

/// What is said about the shapes and sizes of findings.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Shaping {
    /// What only a jump ring may be.
    Closed {
        id: String,
        kind: &'static str,
    },
    /// What only a charm has.
    Outlined {
        id: String,
        kind: &'static str,
    },
    /// A bead round which no knot cover's knot is tied.
    Knotted {
        kind: &'static str,
    },
    /// A cord of which no tassel is wound.
    Wound {
        kind: &'static str,
    },
    Lacks {
        id: String,
        kind: &'static str,
        keys: Vec<&'static str>,
    },
    /// Two sizes that cannot both be true.
    Contradiction {
        id: String,
        sizes: Sizes,
        smaller: Length,
        larger: Length,
        /// Whether the larger is assumed.
        assumed: bool,
    },
    TooManyLinks {
        id: String,
        length: Length,
        links: u64,
    },
    /// Links that their own wire fills.
    NoOpening {
        id: String,
        wire: Length,
    },
}

/// Two sizes, of which the first must be the smaller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Sizes {
    TipAndInside,
    InsideAndMouth,
    InsideAndOutside,
    WireAndEye,
}

impl Shaping {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Closed { .. } | Self::Outlined { .. } | Self::Knotted { .. } | Self::Wound { .. } => Code::Misplaced,
            Self::Lacks { .. } => Code::MissingSize,
            Self::Contradiction { .. } | Self::TooManyLinks { .. } | Self::NoOpening { .. } => Code::BadSize,
        }
    }
}
