//! Remarks about what stands where it may not.

use crate::remark::Code;

/// What stands where it may not.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Misplaced {
    /// A finding of a kind that is not made for its place.
    Finding {
        id: String,
        kind: &'static str,
        spot: Spot,
        /// Where its kind may stand.
        fit: Vec<Spot>,
        /// The kinds that may stand here.
        kinds: Vec<&'static str>,
    },
    /// A ring closed for good, where something is hung in it.
    ClosedRing {
        id: String,
    },
    /// A piece of chain, and not how long.
    NoLength {
        id: String,
    },
    /// A cover or guard without a crimp.
    NoCrimp {
        id: String,
    },
    NestedStop,
    /// `fill` in a dangle.
    FillInDangle,
    /// A row that fills what is no strand's own list.
    NestedRow,
    DangleInDangle,
    LinksInDangle,
    KnotInDangle,
    /// A stop on a strand whose beads have no room to settle.
    StopAmongFixed,
    StopOutside,
    /// `fill` beside stops.
    FillWithStops,
}

/// A place in a pattern where a finding may stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// Among a strand's `ends`.
    Ends,
    /// On a side of the closure.
    Side,
    /// On the closure's `both ends` of an earring.
    BothEnds,
    /// On a side of an open necklace's closure.
    Open,
    /// Where both ends of a piece meet.
    Meeting,
    /// As what a branch hangs `on`.
    Hanger,
    /// As a `stop`.
    Stop,
    /// Strung on the cord, or on a branch.
    Strung,
}

impl Misplaced {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NoLength { .. } => Code::MissingSize,
            Self::FillInDangle | Self::NestedRow => Code::NoFill,
            Self::NestedStop | Self::StopAmongFixed | Self::StopOutside | Self::FillWithStops => Code::MisplacedStop,
            Self::Finding { .. }
            | Self::ClosedRing { .. }
            | Self::NoCrimp { .. }
            | Self::DangleInDangle
            | Self::LinksInDangle
            | Self::KnotInDangle => Code::Misplaced,
        }
    }
}
