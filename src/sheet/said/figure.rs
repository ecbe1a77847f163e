//! What figures show, for those who cannot see them, and to what scale.

use crate::design::Design;
use crate::sheet::figure::Scale;
use crate::units::Length;

/// What a figure shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Alternative<'a> {
    /// A strand, by name.
    Strand(&'a str),
    /// Some beads of a strand's row, by its name and their numbers.
    Beads(&'a str, [u32; 2]),
    /// What the ends of a strand of that name go through where they meet.
    Meeting(&'a str),
    /// Strands of those names, twisted.
    Twisted(Vec<&'a str>),
    /// Strands of those names, which lie over one another.
    Crossing(Vec<&'a str>),
    /// The closed piece.
    Closed,
    /// One side of the closure: that of the first ends (0), or the last.
    Side(usize),
    /// A ruler.
    Ruler,
    /// How far strands hang down.
    Drops,
    /// The piece where it is worn.
    OnNeck,
    /// Whom it is drawn on.
    Neck,
    /// The bar that tells whether a page was printed at its size.
    Bar,
    /// A square that tells so, by its size.
    Square(&'a str),
}

impl<'a> Alternative<'a> {
    /// All strands of a design, where they are twisted or cross.
    pub fn twined(design: &'a Design) -> Self {
        let names = design.strands.iter().map(|strand| strand.name.as_str()).collect();
        if design.twist.is_some() { Self::Twisted(names) } else { Self::Crossing(names) }
    }
}

/// What is drawn to a scale, as a footer says it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FooterScale {
    /// The picture.
    Picture(Scale),
    /// The drape.
    Drape(Scale),
    /// Rows of strands.
    Rows,
    /// The bars of cutting plans, where all have one scale.
    Bars(Scale),
    /// The same where they have several, each said above its bars.
    SeveralBars,
    /// All of a proof.
    Proof,
}

/// How a piece is seen, where its figure would be read amiss.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeenAs {
    /// From points so far apart.
    HungApart(Length),
    /// From a little above, so that it is measured across alone.
    FromAbove,
    /// Along the limb, with flat beads turned to who looks.
    FacesUp,
    /// Over a rail as broad as the neck.
    OverRail,
}
