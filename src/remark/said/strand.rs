//! Remarks about strands, their lengths and their lists.

use crate::remark::Code;
use crate::units::Length;

/// What is said about strands, their lengths and their lists.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Strand {
    None,
    /// A strand of which a size leaves no length.
    NothingLeft {
        strand: String,
    },
    /// A way to settle that needs a length.
    NoLength {
        strand: String,
        settle: &'static str,
    },
    /// A strand of which nothing changes with its wearer.
    Unchanged {
        strand: String,
    },
    /// A pin for a cord, of what is no earring or no hanging one.
    OnPin {
        strand: String,
    },
    /// What only a strand of cord has.
    IdleOnPin {
        strand: String,
        key: &'static str,
    },
    /// An allowance of chain.
    Allowance {
        strand: String,
    },
    /// A filled strand that has a length of its own.
    Filled {
        strand: String,
        length: Length,
    },
    FillShort {
        strand: String,
        length: Length,
        /// What it lacks of its length.
        short: Length,
    },
    /// A `repeat: fill` of a strand of which nobody knows how long it is.
    NothingToFill {
        strand: String,
    },
    NoRoom {
        strand: String,
        room: Length,
        /// Whether it is filled by a row that has a shortest.
        is_row: bool,
        /// What fills it, once.
        takes: Length,
        /// How long the strand must be at least.
        needs: Length,
    },
    /// A row that fills a strand and of which none keeps its beads apart.
    NoOrder {
        strand: String,
    },
    Overfull {
        strand: String,
        over: Length,
        /// What would fit, where less of it would.
        fewer: Option<Fewer>,
        /// How long the strand must be at least.
        needs: Length,
    },
    /// Beads that are longer than what stops leave of a strand.
    StretchOverfull {
        strand: String,
        over: Length,
    },
    TooManyBeads {
        most: u32,
        /// Whether those of sizes and colourways are counted.
        with_variants: bool,
    },
    TooManyFindings {
        most: u32,
    },
    TooManyEntries {
        most: u32,
    },
    /// Links that are counted where nobody knows how long they are.
    LinkUnknown,
    NothingStrung,
}

/// Less of what a strand has too much of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fewer {
    /// Of a repeat.
    Times {
        /// How often it fits.
        fits: u32,
        /// How often it is written.
        written: u32,
    },
    /// Of a run of one bead.
    Beads {
        /// Its id.
        id: String,
        /// How many fit.
        fits: u32,
        /// How many are written.
        written: u32,
    },
}

impl Strand {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::None => Code::MissingKey,
            Self::NothingLeft { .. } | Self::NoLength { .. } | Self::Unchanged { .. } => Code::NoLength,
            Self::OnPin { .. } | Self::IdleOnPin { .. } => Code::Misplaced,
            Self::Allowance { .. } | Self::Filled { .. } => Code::LengthIgnored,
            Self::FillShort { .. } => Code::FillShort,
            Self::NothingToFill { .. } | Self::NoRoom { .. } => Code::NoFill,
            Self::NoOrder { .. } => Code::NoMix,
            Self::Overfull { .. } | Self::StretchOverfull { .. } => Code::Overfull,
            Self::TooManyBeads { .. } | Self::TooManyFindings { .. } | Self::TooManyEntries { .. } => {
                Code::TooManyBeads
            }
            Self::LinkUnknown => Code::MissingSize,
            Self::NothingStrung => Code::NothingRepeated,
        }
    }
}
