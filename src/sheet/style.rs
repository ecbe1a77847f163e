//! The look of a sheet: five sizes of type, one accent colour, greys, margins and the grid, in mm.

use super::mark::{Rgb, Weight};

/// A way to set text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Type {
    /// Font size (em).
    pub size: f64,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub colour: Rgb,
    /// From one baseline to the next.
    pub leading: f64,
}

impl Type {
    const fn new(size: f64, weight: Weight, leading: f64) -> Self {
        Self { size, weight, colour: INK, leading }
    }

    /// The same in another colour.
    #[must_use]
    pub const fn in_colour(self, colour: Rgb) -> Self {
        Self { colour, ..self }
    }

    /// The same in the heavier weight.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self { weight: Weight::Semibold, ..self }
    }
}

/// The piece's name.
pub const TITLE: Type = Type::new(7.0, Weight::Semibold, 9.0);
/// Headings of sections.
pub const HEADING: Type = Type::new(4.2, Weight::Semibold, 6.0);
/// What is read.
pub const BODY: Type = Type::new(3.2, Weight::Regular, 4.5);
/// Tables and captions.
pub const SMALL: Type = Type::new(2.8, Weight::Regular, 4.0);
/// Rulers, footers and counts: 7.1 pt, the smallest type there is.
pub const TINY: Type = Type::new(2.5, Weight::Regular, 3.5);

/// Text.
pub const INK: Rgb = Rgb(0x1c, 0x1c, 0x1e);
/// Text of second rank; contrast with white above 4.5 : 1.
pub const QUIET: Rgb = Rgb(0x5c, 0x5c, 0x60);
/// Thin rules.
pub const RULE: Rgb = Rgb(0xc9, 0xc8, 0xc4);
/// Ground behind something set apart.
pub const WASH: Rgb = Rgb(0xf4, 0xf2, 0xee);
/// The one accent: madder.
pub const ACCENT: Rgb = Rgb(0xa1, 0x36, 0x4a);

/// From the paper's edge to what is printed: more than desk printers leave white (about 6 mm,
/// common practice, no source).
pub const MARGIN: f64 = 12.0;
/// Height kept for the footer above the lower margin.
pub const FOOTER: f64 = 8.0;
/// Step of the grid: distances between things are whole steps of it.
pub const GRID: f64 = 4.0;
/// Width of a thin rule.
pub const HAIRLINE: f64 = 0.2;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_type_is_smaller_than_seven_points() {
        const SEVEN_POINTS: f64 = 7.0 * 25.4 / 72.0;
        for face in [TITLE, HEADING, BODY, SMALL, TINY] {
            assert!(face.size >= SEVEN_POINTS && face.leading > face.size);
        }
    }

    /// Contrast as WCAG 2.1 defines it (relative luminance, 1.4.3: at least 4.5 : 1 for text).
    #[test]
    fn text_colours_stand_out_from_white_and_wash() {
        let linear = |byte: u8| {
            let share = f64::from(byte) / 255.0;
            if share <= 0.040_45 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
        };
        let luminance = |Rgb(r, g, b): Rgb| 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
        for ground in [Rgb::WHITE, WASH] {
            for text in [INK, QUIET, ACCENT] {
                let contrast = (luminance(ground) + 0.05) / (luminance(text) + 0.05);
                assert!(contrast >= 4.5, "{text:?} on {ground:?}: {contrast}");
            }
        }
    }
}
