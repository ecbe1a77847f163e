//! The sections of a sheet, and the headings in them.

use crate::pattern::Kind;
use crate::sheet::figure::Scale;

/// A part of a sheet, with what it shows.
pub enum SectionKind<'a> {
    /// The cover, of a piece of strands by name.
    Face {
        /// What sort of piece it is.
        kind: Kind,
        /// Its strands.
        strands: Vec<&'a str>,
        /// Whether the cautions stand there.
        has_cautions: bool,
    },
    /// What the cover has no room for.
    Lists,
    /// The rows of strands by name.
    Stringing(Vec<&'a str>),
    /// What to buy and to cut.
    Buying,
    /// The steps.
    Making {
        /// Whether the cautions stand before them.
        has_cautions: bool,
    },
    /// All of a card.
    Card,
    /// A page of the proof.
    Proof(Proved),
}

/// What a page of the proof shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proved {
    /// Strands.
    Strands,
    /// The last of the strands, with findings and beads below.
    Both,
    /// Findings and beads.
    Lists,
}

/// What stands above a part of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Subheading<'a> {
    /// The legend.
    Legend,
    /// What one piece takes.
    Needs,
    /// The beads of that, where there is room for no more.
    NeededBeads,
    /// The strands of a piece that closes round a limb, in a row.
    Straight(Scale),
    /// The drape below a picture.
    Hanging,
    /// The piece on the neck.
    OnNeck,
    /// All its colourways.
    Colourways,
    /// A list of the strands.
    Strands,
    /// What lies ready.
    Tools,
    /// The cutting plans.
    Cutting,
    /// The table of sizes.
    Sizes,
    /// What to string for another size, by its name where it has one.
    Recipe(Option<&'a str>),
    /// What the piece might be sold for.
    Price,
    /// The cautions.
    Cautions,
    /// The designer's notes, by name where that is known.
    Notes(Option<&'a str>),
    /// A strand that runs on to another page, by its title.
    Continued(&'a str),
    /// The findings of a proof.
    Findings,
    /// The beads of a proof.
    Beads,
}
