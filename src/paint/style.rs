//! The sheet's looks: sizes of type, colours, margins. All lengths in mm.

use super::mark::{Rgb, Stroke};

/// Size of a sheet's title.
pub const TITLE: f64 = 7.0;
/// Size of headings.
pub const HEADING: f64 = 4.2;
/// Size of text.
pub const BODY: f64 = 3.2;
/// Size of table cells and labels.
pub const SMALL: f64 = 2.8;
/// Smallest size: 7.4 pt.
pub const TINY: f64 = 2.6;

/// Colour of text and lines.
pub const INK: Rgb = Rgb(0x22, 0x26, 0x2a);
/// Colour of thin rules.
pub const RULE: Rgb = Rgb(0x9a, 0xa0, 0xa6);
/// Colour of text that matters less.
pub const QUIET: Rgb = Rgb(0x5c, 0x62, 0x68);
/// The one colour that draws the eye.
pub const ACCENT: Rgb = Rgb(0x7a, 0x3b, 0x52);

/// White edge of every page.
pub const MARGIN: f64 = 12.0;
/// Height kept for the footer, above the lower margin.
pub const FOOTER: f64 = 11.5;

/// The rule below a table's headings.
pub const INK_RULE: Stroke = Stroke::new(INK, 0.25);
/// The rule below a table's rows.
pub const THIN_RULE: Stroke = Stroke::new(Rgb(0xd2, 0xd5, 0xd8), 0.15);
