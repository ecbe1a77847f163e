//! Remarks about how strands hang and lie.

use crate::remark::Code;
use crate::trade::bodies::Basis;
use crate::units::{Force, Length};

/// What is said about how strands hang and lie.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Hang {
    CannotHang {
        strand: String,
        why: Unhung,
    },
    TooShort {
        what: Round,
        /// Whether it is measured round to the ring through which its last end goes.
        through: bool,
        is: Length,
        /// What lies on the skin.
        takes: Length,
        girth: Length,
        base: Length,
        basis: Basis,
        /// Whether the basis is assumed.
        assumed: bool,
    },
    OverHead {
        strand: String,
        inside: Length,
        head: Length,
    },
    StrandsCrowd {
        strands: [String; 2],
        /// Whether they lie on one another, where else they touch.
        on: bool,
        /// The share along which they do.
        share: f64,
        /// How far across and below the left end they lie closest.
        closest: [Length; 2],
        room: Room,
    },
    /// On the neck the first hangs lower, and is no longer than the second.
    SeveralPlaces {
        strands: [String; 2],
    },
    Unsettled(Unrest),
    /// Rows that something joins, as the sheet's board shows them: none of its places was one of rest.
    NotFlat {
        joined_by: String,
        rounds: u32,
    },
    /// On the neck.
    Restless(Unrest),
    HardlyRound {
        spare: Length,
    },
    BareCord {
        strand: String,
        bare: Length,
        share: f64,
    },
    UnevenEnds {
        strand: String,
        first: String,
        last: String,
    },
    NothingHolds {
        strand: String,
        hole: Length,
    },
    DropsCrowd {
        strands: [String; 2],
        bodies: [String; 2],
        apart: Length,
        deep: Length,
    },
    /// A cord that bears less than so many times its load.
    WeakCord {
        strand: String,
        cord: String,
        load: Force,
        strength: Force,
        margin: f64,
    },
    /// A cord that should bear so many times its load.
    StrengthUnknown {
        cord: String,
        load: Force,
        margin: f64,
    },
}

impl Hang {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::CannotHang { .. } => Code::NoRest,
            Self::TooShort { .. } => Code::TooShort,
            Self::OverHead { .. } => Code::OverHead,
            Self::StrandsCrowd { .. } | Self::SeveralPlaces { .. } => Code::StrandsCrowd,
            Self::Unsettled(_) | Self::NotFlat { .. } | Self::Restless(_) | Self::HardlyRound { .. } => {
                Code::StrandsUnsettled
            }
            Self::BareCord { .. } => Code::BareCord,
            Self::UnevenEnds { .. } => Code::UnevenEnds,
            Self::NothingHolds { .. } => Code::NothingHolds,
            Self::DropsCrowd { .. } => Code::DropsCrowd,
            Self::WeakCord { .. } => Code::WeakCord,
            Self::StrengthUnknown { .. } => Code::StrengthUnknown,
        }
    }
}

/// What goes round a neck.
#[derive(Clone, Debug, PartialEq)]
pub enum Round {
    /// A strand, by its name.
    Strand(String),
    /// All strands, twisted so often.
    Twisted(f64),
}

/// Why a chain cannot be hung.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Unhung {
    /// The ends are as far apart as the chain is long, or farther: by so many mm.
    TooShort(f64),
    /// One link is longer, by so many mm, than the rest of the chain and the gap together.
    TooStiff(f64),
    /// Nothing weighs anything, so that no shape is better than another.
    Weightless,
    /// Links without weight lie slack at the bottom.
    Slack,
    /// No balance was found: the chain still misses its end by so many mm.
    Unbalanced(f64),
    /// Beads that slide found no place of rest.
    Unsettled,
}

/// Strands that push on one another and came to no rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unrest {
    /// They have too many parts together, and stay as each hangs alone.
    TooMany,
    /// No place worth drawing was found, and they stay as each hangs alone.
    Lost {
        /// Rounds that were tried.
        rounds: u32,
    },
    /// Cord of a strand is pressed along itself, and lies shorter than it is.
    Short {
        /// By how much in mm.
        by: f64,
    },
    /// They are in the best place found.
    Left {
        /// Rounds that were tried.
        rounds: u32,
        /// How deep in mm outlines lie in one another.
        overlap: f64,
        /// How far in mm the farthest place still moves in a round.
        moves: f64,
    },
}

impl Unrest {
    /// How deep outlines lie in one another, and how far the farthest place still moves in a round, in mm: what of both is
    /// more than at rest.
    #[must_use]
    pub fn beyond_rest(self) -> [Option<f64>; 2] {
        /// What counts as rest, in mm, of all that is laid.
        const REST: f64 = 0.01;
        match self {
            Self::Left { overlap, moves, .. } => [overlap, moves].map(|mm| Some(mm).filter(|mm| *mm >= REST)),
            Self::TooMany | Self::Lost { .. } | Self::Short { .. } => [None; 2],
        }
    }
}

/// What gives two strands room beside one another.
#[derive(Clone, Debug, PartialEq)]
pub enum Room {
    /// Nothing that was tried.
    None,
    /// Any one of these.
    Either(Vec<Way>),
    /// All of these together.
    Both([Way; 2]),
}

/// A way to give two strands room.
#[derive(Clone, Debug, PartialEq)]
pub enum Way {
    /// A strand made longer by so much.
    Longer(String, Length),
    /// The holes of the bars that hold them so far apart.
    WiderBars(Length),
    /// An end bar with loops so far apart.
    EndBar(Length),
}
