//! Remarks about whether one thing fits in or on another.

use crate::remark::Code;
use crate::units::Length;

/// What is said about whether one thing fits in or on another.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Fit {
    /// A cord that all but fills a hole whose bead is to slide.
    Snug {
        cord: String,
        bead: String,
        fills: Length,
        hole: Length,
        thinnest: Length,
        needed: Length,
    },
    CordTooThick {
        cord: String,
        what: String,
        how: Passing,
        thick: Length,
        hole: Length,
        thinnest: Length,
        needed: Length,
    },
    CrimpTooSmall {
        cord: String,
        crimp: String,
        /// How often the cord goes through.
        passes: u32,
        /// Whether a guard's leg goes through with it.
        guarded: bool,
        inside: Length,
        thickest: Length,
        needed: Length,
    },
    SlipsInside {
        narrow: String,
        bead: String,
        broad: Length,
        hole: Length,
    },
    KnotSlips {
        strand: String,
        bead: String,
        size: Length,
        hole: Length,
        needed: Length,
    },
    WireKnotted {
        strand: String,
    },
    PinTooThick {
        pin: String,
        what: String,
        wire: Length,
        hole: Length,
    },
    PinTooShort {
        pin: String,
        length: Length,
        carried: Length,
        needed: Length,
    },
    /// Something that hangs, threaded.
    Threaded {
        what: String,
        hangs: Hangs,
        on: Threaded,
    },
    HeldByNothing {
        below: String,
        above: String,
    },
    RingNotRound {
        bead: String,
        ring: String,
        inside: Length,
        round: Length,
    },
    /// A bead that is drilled lengthwise, and a holder that takes it by its tip alone.
    NoTip {
        bead: String,
        holder: String,
    },
    /// A stiffness in N mm², and the most that there is.
    CordTooStiff {
        cord: String,
        told: f64,
        most: f64,
    },
}

impl Fit {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Snug { .. } => Code::CordTight,
            Self::CordTooThick { .. } => Code::CordTooThick,
            Self::CrimpTooSmall { .. } => Code::CrimpTooSmall,
            Self::SlipsInside { .. } => Code::SlipsInside,
            Self::KnotSlips { .. } => Code::KnotSlips,
            Self::WireKnotted { .. } => Code::WireKnotted,
            Self::PinTooThick { .. } => Code::PinTooThick,
            Self::PinTooShort { .. } => Code::PinTooShort,
            Self::Threaded { .. } | Self::HeldByNothing { .. } | Self::RingNotRound { .. } | Self::NoTip { .. } => {
                Code::WrongHole
            }
            Self::CordTooStiff { .. } => Code::CordTooStiff,
        }
    }
}

/// How a strand's cord goes through a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passing {
    /// Once.
    Single,
    /// Doubled.
    Doubled,
    /// With both ends.
    BothEnds,
}

/// How something comes to hang.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hangs {
    /// Its hole runs across it.
    Across,
    /// It has a loop.
    Loop,
}

/// What something is threaded on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Threaded {
    /// A strand's cord.
    Cord,
    /// A pin, or what hangs above it.
    Branch,
}
