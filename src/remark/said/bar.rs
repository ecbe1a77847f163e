//! Remarks about bars and what holds several strands.

use crate::remark::Code;
use crate::units::Length;

/// What is said about bars and what holds several strands.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Bar {
    TooFewLoops {
        finding: String,
        kind: &'static str,
        loops: u32,
        strands: usize,
    },
    /// What strands go through differently often.
    Uneven {
        what: String,
        id: String,
        is_bar: bool,
        holes: u32,
        strands: [Sharer; 2],
    },
    Alone {
        bar: String,
        id: String,
        holes: u32,
        strand: String,
    },
    /// A strand that lies between two that share something, and does not go through it.
    Between {
        what: String,
        id: String,
        strands: [String; 2],
        skipped: String,
    },
    Astray {
        bead: String,
        holes: Length,
        strands: Length,
    },
    /// An inner row that is longer between two places than the row outside it.
    Bulges {
        strands: [String; 2],
        between: [Spot; 2],
        lengths: [Length; 2],
        by: Length,
        most: Length,
    },
    /// What lies so far along two rows.
    Leans {
        what: Spot,
        strands: [String; 2],
        along: [Length; 2],
        by: Length,
        most: Length,
    },
}

impl Bar {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::TooFewLoops { .. } | Self::Uneven { .. } | Self::Alone { .. } | Self::Between { .. } => {
                Code::BarHoles
            }
            Self::Astray { .. } | Self::Bulges { .. } | Self::Leans { .. } => Code::HolesAstray,
        }
    }
}

/// A strand that goes so often through what it shares.
#[derive(Clone, Debug, PartialEq)]
pub struct Sharer {
    /// Its name.
    pub strand: String,
    /// Through how many.
    pub through: u64,
}

/// A place at which a row is held to its neighbour.
#[derive(Clone, Debug, PartialEq)]
pub enum Spot {
    /// Where it begins.
    First,
    /// Where it ends.
    Last,
    /// What it shares, and the how many of it.
    Shared(String, usize),
}
