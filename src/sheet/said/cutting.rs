//! What is said of cutting plans.

use crate::design::Stated;
use crate::materials::Cut;
use crate::units::Length;

/// What the length of a piece that is cut is made up of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MadeUp {
    /// A strand's.
    Strand {
        /// How many times its cord runs along it.
        legs: u32,
        /// Its finished length.
        finished: Length,
        /// What the bend of a ring takes up, in all legs.
        round: Option<Length>,
        /// What knots take up, and whether those at the ends are among them.
        knots: Option<(Stated<Length>, bool)>,
        /// What is more at each end.
        allowance: Stated<Length>,
    },
    /// A tassel's: so many turns of a card, as much more as they grow on one another, and what binds it.
    Tassel {
        /// How many turns.
        turns: u32,
        /// How tall the card is.
        card: Length,
        /// How much longer all turns are than the first would be, as a share.
        piled: f64,
        /// What binds it and makes its loop.
        binding: Length,
    },
    /// A chain's: so many links of a length, each of which lengthens it by so much.
    Links {
        /// How many.
        count: u64,
        /// How long one is.
        link: Length,
        /// By how much it lengthens the chain.
        pitch: Length,
    },
}

/// A piece in a cutting list, or several alike.
pub struct ListedCut {
    /// The number that its strand has on every page, where there are several.
    pub number: Option<usize>,
    /// One of them.
    pub piece: Cut,
    /// How many there are.
    pub count: usize,
    /// What its length is made up of, where that tells something.
    pub parts: Option<MadeUp>,
}

/// How a cutting plan is drawn and told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanNote {
    /// The scale of its bars, where there are some.
    pub bars: Option<crate::sheet::figure::Scale>,
    /// Whether each cut takes a link of chain.
    pub takes_links: bool,
    /// Whether what it cuts for the ends of strands is assumed.
    pub assumes_allowance: bool,
    /// In which order bars are cut, where there are some.
    pub order: Option<CutOrder>,
    /// Whether it says how all lengths are rounded, not only its cuts.
    pub rounds: bool,
}

/// In which order the pieces of a bar are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutOrder {
    /// As they lie from the left.
    FromLeft,
    /// Those at the right first, from the end without the needle, and last what is measured from the needle.
    FromBothEnds,
}
