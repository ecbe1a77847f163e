//! Remarks about what names mean.

use crate::remark::Code;

/// What is said about what names mean.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Naming {
    Unknown {
        thing: Thing,
        id: String,
        known: Vec<String>,
        meant: Option<String>,
    },
    /// An entry of several words, which no id has.
    RunTogether {
        entry: String,
    },
    /// A knot among beads that does not say how much cord it takes.
    BareKnot,
    /// An id of another kind of thing.
    NotA {
        thing: Thing,
        id: String,
        is: Thing,
    },
    NoVariant {
        thing: Thing,
        name: String,
        known: Vec<String>,
        meant: Option<String>,
    },
    Twice {
        thing: Thing,
        name: String,
    },
    Unused {
        thing: Thing,
        id: String,
    },
}

/// What has a name in a pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Thing {
    Bead,
    Cord,
    Finding,
    Assortment,
    Strand,
    Size,
    Colourway,
}

impl Naming {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Unknown { .. } | Self::RunTogether { .. } | Self::BareKnot | Self::NoVariant { .. } => {
                Code::UnknownId
            }
            Self::NotA { .. } => Code::Misplaced,
            Self::Twice { .. } => Code::TwiceNamed,
            Self::Unused { .. } => Code::Unused,
        }
    }

    /// The name that is offered for one that is not known.
    pub(super) fn meant(&self) -> Option<&str> {
        match self {
            Self::Unknown { meant, .. } | Self::NoVariant { meant, .. } => meant.as_deref(),
            _ => None,
        }
    }
}
