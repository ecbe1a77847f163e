//! What a piece is made of: beads and cords, complete, and how articles are sold.

use crate::pattern::{CordKind, Drilled, Shape};
use crate::source::Place;
use crate::units::{Force, Length, Mass, Money};

use super::bars::Bores;
use super::stated::Stated;

/// A bead, with all that it takes to string, weigh and buy it; its colour is a palette's.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Bead {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// Its letter on the sheet: A, B, … Z, AA, by first use.
    pub letter: String,
    /// Outline along the hole.
    pub shape: Shape,
    /// Size across the hole.
    pub across: Length,
    /// Size along the hole, end to end.
    pub along: Length,
    /// Size through the flat side, for squares and coins; else equal to `across`.
    pub thick: Stated<Length>,
    /// Which way its hole runs.
    pub drilled: Drilled,
    /// Diameter of the hole.
    pub hole: Stated<Length>,
    /// Its holes, where several lie side by side, each for a strand of its own.
    pub bores: Option<Bores>,
    /// Maker's tolerance on the length along the hole: plus or minus.
    pub tolerance: Stated<Length>,
    /// Length of cord that one takes in a row of its own kind, where that was measured or is known
    /// from a table; overrides the geometry.
    pub pitch: Option<Length>,
    /// Mass of one.
    pub mass: Stated<Mass>,
    /// What it is made of, as the pattern says.
    pub material: Option<String>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Ids of beads that can stand in.
    pub instead: Vec<String>,
    /// Where the pattern defines it.
    pub place: Place,
}

/// What stringing wire is made of.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Wire {
    /// How many filaments lie in it: one in solid wire.
    pub filaments: Stated<u32>,
    /// Its metal, where the pattern says it; else steel.
    pub metal: Option<String>,
}

/// A cord.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Cord {
    /// The id in the pattern.
    pub id: String,
    /// Its name on the sheet.
    pub name: String,
    /// What it is made of.
    pub kind: CordKind,
    /// Whether it is none, but stands for the pin of that id on which strands of earrings hang.
    pub is_pin: bool,
    /// Its diameter.
    pub diameter: Length,
    /// What one tight overhand knot in a single cord makes it shorter.
    pub take_up: Stated<Length>,
    /// Breaking strength, where known.
    pub strength: Option<Force>,
    /// Of stringing wire, what it is made of.
    pub wire: Option<Wire>,
    /// How stiff it is: its E I in N mm².
    pub stiffness: Stated<f64>,
    /// Mass of one metre.
    pub mass_per_metre: Stated<Mass>,
    /// Whether it comes with its own needle.
    pub needle: bool,
    /// Of memory wire, the inside diameter of its coil.
    pub coil: Option<Length>,
    /// Of a chain, by how much a link lengthens it, where the pattern says.
    pub link: Option<Length>,
    /// How it is sold.
    pub sold: Option<Sold>,
    /// Where the pattern defines it.
    pub place: Place,
}

impl Cord {
    /// Whether it is so thin that thread or silk of it is too limp to pass a bead by itself (common practice, no source).
    #[must_use]
    pub fn is_thin(&self) -> bool {
        const THIN: Length = Length::mm(0.8);
        self.diameter < THIN
    }
}

impl Bead {
    /// Whether it is flat and strung through from edge to edge, so that one of its faces lies on what it is worn on.
    #[must_use]
    pub fn lies_flat(&self) -> bool {
        let is_flat = matches!(self.shape, Shape::Coin | Shape::Square) && *self.thick < self.across;
        is_flat && self.drilled == Drilled::Lengthwise
    }

    /// Whether its hole runs across it, so that it hangs from what goes through it.
    #[must_use]
    pub fn hangs(&self) -> bool {
        self.drilled != Drilled::Lengthwise
    }

    /// What of it is above the hole that it hangs by: a hole's width, which is common practice, no source, or on a
    /// small bead what leaves the hole's middle above its upper quarter.
    #[must_use]
    pub fn above_hole(&self) -> Length {
        let middle = (*self.hole * 1.5).min(self.along * 0.25);
        if self.hangs() { (middle - *self.hole * 0.5).max(Length::ZERO) } else { Length::ZERO }
    }
}

/// How an article is sold and for how much.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Sold {
    /// What one buys at a time.
    pub lot: Lot,
    /// Price of one lot, which may be nothing; absent where the pattern does not say.
    pub price: Option<Money>,
    /// Of whom it is bought, where the pattern says.
    pub from: Option<String>,
}

/// What one buys at a time.
#[derive(Clone, Debug, PartialEq)]
pub enum Lot {
    /// A temporary strand of this length.
    Strand(Length),
    /// So many temporary strands, each of this length.
    Hank(u32, Length),
    /// So many.
    Pack(u32),
    /// A single one.
    Each,
    /// So much by mass.
    Grams(Mass),
    /// A spool or cut piece of this length.
    Length(Length),
}
