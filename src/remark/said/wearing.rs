//! Remarks about who wears a piece, and who reads of it.

use crate::remark::Code;
use crate::trade::bodies::Site;
use crate::trade::sight::Sight;
use crate::units::{Length, Mass};

/// What is said about who wears a piece, and who reads of it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Wearing {
    ChildBreakaway,
    ChildUnmeasured {
        limb: Site,
        girth: Length,
    },
    DeclareMetal {
        metal: Metal,
        things: Vec<String>,
    },
    HeavyPiece {
        mass: Mass,
        from: Mass,
        bears: Bears,
    },
    /// A girth that nobody has, the least and most of people's, and what may be meant or else is usual.
    OddMeasure {
        limb: Site,
        girth: Length,
        people: [Length; 2],
        meant: Option<Length>,
        usual: Length,
    },
    HugeBead {
        bead: String,
        size: Length,
        meant: Length,
    },
    LookAlike {
        beads: [String; 2],
        letters: [String; 2],
        sight: Sight,
        apart: f64,
    },
    MissingGlyph {
        text: Text,
        missing: Vec<char>,
    },
}

impl Wearing {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::ChildBreakaway => Code::ChildBreakaway,
            Self::ChildUnmeasured { .. } => Code::ChildUnmeasured,
            Self::DeclareMetal { .. } => Code::DeclareMetal,
            Self::HeavyPiece { .. } => Code::HeavyPiece,
            Self::OddMeasure { .. } => Code::OddMeasure,
            Self::HugeBead { .. } => Code::HugeBead,
            Self::LookAlike { .. } => Code::LookAlike,
            Self::MissingGlyph { .. } => Code::MissingGlyph,
        }
    }
}

/// A metal that harms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Metal {
    /// On skin.
    Nickel,
    /// In the body.
    Lead,
}

/// What a piece weighs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bears {
    /// The neck.
    Neck,
    /// The arm.
    Arm,
    /// The foot.
    Foot,
    /// Both ears.
    Ears,
}

/// A text that the sheet prints.
#[derive(Clone, Debug, PartialEq)]
pub enum Text {
    /// What stands at a key of the pattern.
    Key(&'static str),
    /// The name or material of an article.
    Named(String),
}
