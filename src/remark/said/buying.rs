//! Remarks about packs, prices and lots.

use crate::remark::Code;
use crate::units::Length;

/// What is said about packs, prices and lots.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Buying {
    /// A last pack bought for few spare beads, and how many the piece needs.
    PackForSpare {
        what: Vec<String>,
        packs: u64,
        few: u64,
        need: u64,
    },
    /// A last pack bought for few of its beads.
    PackForFew {
        what: Vec<String>,
        packs: u64,
        holds: u64,
        over: u64,
    },
    LastForSpare {
        what: String,
        packs: u64,
        unit: Unit,
    },
    LastForFew {
        what: String,
        packs: u64,
        unit: Unit,
        holds: u64,
        over: u64,
    },
    /// A kind for whose sake alone more packs are bought, and how many of it fewer packs hold.
    ScarceKind {
        what: String,
        kind: String,
        packs: u64,
        fewer: u64,
        strung: u64,
        enough: u64,
    },
    NoSpare {
        what: String,
        kinds: Vec<String>,
    },
    LotTooSmall {
        what: Vec<String>,
        by_length: bool,
    },
    SpoolTooShort {
        what: String,
        /// What it is cut for; nothing where it is to see how much knots take up.
        piece: Option<String>,
        needed: Length,
        sold: Length,
    },
    RetailFactor {
        wholesale: f64,
        retail: f64,
    },
    /// A chain's length, as links, of which each is so long.
    PartLink {
        strand: String,
        is: Length,
        link: Length,
    },
}

impl Buying {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::PackForSpare { .. }
            | Self::PackForFew { .. }
            | Self::LastForSpare { .. }
            | Self::LastForFew { .. } => Code::LastPack,
            Self::ScarceKind { .. } => Code::ScarceKind,
            Self::NoSpare { .. } => Code::NoSpare,
            Self::LotTooSmall { .. } => Code::LotTooSmall,
            Self::SpoolTooShort { .. } => Code::SpoolTooShort,
            Self::RetailFactor { .. } => Code::RetailFactor,
            Self::PartLink { .. } => Code::PartLink,
        }
    }
}

/// What assorted beads are sold by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Mixed in bags.
    Bag,
    /// Strung in strands.
    Strand,
}
