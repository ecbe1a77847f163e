//! Remarks about beads, cords and findings by themselves.

use crate::remark::Code;
use crate::units::Length;

/// What is said about beads, cords and findings by themselves.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Article {
    /// A bead that is as long as nobody says.
    NoLength {
        shape: &'static str,
        across: Length,
    },
    NoSeedSize {
        name: String,
        known: Vec<&'static str>,
    },
    HoleAssumed {
        id: String,
        hole: Length,
    },
    /// Several holes, and not how far apart.
    HolesApart {
        id: String,
    },
    /// How far apart holes are, of a bead that has one.
    OneHoleApart {
        id: String,
    },
    HolesAcross {
        id: String,
    },
    HolesCrowd {
        id: String,
        across: Length,
    },
    HoleTooWide {
        id: String,
        hole: Length,
        across: Length,
    },
    ToleranceTooLarge {
        id: String,
        tolerance: Length,
    },
    /// A measurement of several that makes each of them longer than any bead.
    TooLong {
        each: Length,
    },
    NoDensity {
        id: String,
        material: String,
        known: Vec<&'static str>,
        meant: Option<String>,
    },
    /// A material whose density differs much, in g/cm³.
    RoughWeight {
        id: String,
        material: String,
        least: f64,
        most: f64,
        /// Whether the range is an assumption.
        assumed: bool,
        /// What it is weighed with.
        density: f64,
    },
    NoThickness {
        id: String,
    },
    NoGauge {
        gauge: u32,
    },
    NoCoil {
        id: String,
    },
    /// What only memory wire has.
    Coil {
        id: String,
        kind: &'static str,
    },
    /// What only chain has.
    Links {
        id: String,
        kind: &'static str,
    },
    /// What only wire has.
    OfWire {
        id: String,
        kind: &'static str,
        /// What is said of it.
        word: &'static str,
    },
    /// So many filaments lie in no wire.
    NoLay {
        filaments: u32,
        known: Vec<u32>,
    },
    /// A metal of which it is not known how stiff it is.
    NoModulus {
        id: String,
        metal: String,
        known: Vec<&'static str>,
        /// What may be meant.
        meant: Option<String>,
    },
    /// How stiff a cord is that turns freely by its links, or keeps a round of its own.
    Stiffness {
        id: String,
        kind: &'static str,
        keeps_round: bool,
    },
}

impl Article {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::NoLength { .. } | Self::HolesApart { .. } | Self::NoThickness { .. } | Self::NoCoil { .. } => {
                Code::MissingSize
            }
            Self::NoSeedSize { .. }
            | Self::OneHoleApart { .. }
            | Self::HolesAcross { .. }
            | Self::HolesCrowd { .. }
            | Self::HoleTooWide { .. }
            | Self::ToleranceTooLarge { .. }
            | Self::TooLong { .. }
            | Self::NoLay { .. }
            | Self::NoGauge { .. } => Code::BadSize,
            Self::HoleAssumed { .. } => Code::HoleAssumed,
            Self::NoDensity { .. } | Self::NoModulus { .. } => Code::UnknownMaterial,
            Self::RoughWeight { .. } => Code::RoughWeight,
            Self::Coil { .. } | Self::Links { .. } | Self::OfWire { .. } | Self::Stiffness { .. } => Code::Misplaced,
        }
    }
}
