//! A piece: a design with its drape, the colours it is drawn in, and the units and money it is told in.

use crate::design::{Design, Size};
use crate::drape::Drape;
use crate::palette::{Colourway, Palette};
use crate::pattern::Pattern;
use crate::units::{Telling, UnitStyle};

/// A piece, resolved and hung: all that sheets, pictures and tables are made from.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Piece {
    /// What it is made of.
    pub design: Design,
    /// How it hangs.
    pub drape: Drape,
    /// How it is told.
    pub telling: Telling,
    /// In what colours it is drawn.
    pub palette: Palette,
    /// All sizes of a graded pattern, this one among them; empty where there is but one.
    pub sizes: Vec<Size>,
    /// All colourways, this one among them; empty where there is but one.
    pub colourways: Vec<Colourway>,
}

impl Piece {
    /// A piece of one size, of a design made by hand, whose colours [`Palette::usual`] makes.
    #[must_use]
    pub const fn new(design: Design, drape: Drape, telling: Telling, palette: Palette) -> Self {
        Self { design, drape, telling, palette, sizes: Vec::new(), colourways: Vec::new() }
    }

    /// A piece of one size, of the design that a pattern was resolved to.
    #[must_use]
    pub fn of(pattern: &Pattern, design: Design, drape: Drape) -> Self {
        let palette = Palette::of(pattern, &design);
        Self::new(design, drape, pattern.telling(), palette)
    }

    /// The same piece with its lengths told in other units.
    #[must_use]
    pub fn told_in(mut self, units: UnitStyle) -> Self {
        self.telling.units = units;
        self
    }
}
