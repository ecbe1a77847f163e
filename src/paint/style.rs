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

/// Width of hairlines.
pub const HAIRLINE: f64 = 0.15;
/// Width of thin lines.
pub const THIN: f64 = 0.2;
/// Width of lines that are to be seen first.
pub const BOLD: f64 = 0.25;

/// A line of what measures, and round samples of colour.
pub const INK_HAIRLINE: Stroke = Stroke::new(INK, HAIRLINE);
/// A line to cut along, and round what is printed by itself.
pub const INK_LINE: Stroke = Stroke::new(INK, THIN);
/// The rule below a table's headings.
pub const INK_RULE: Stroke = Stroke::new(INK, BOLD);
/// A line from words to what they are of.
pub const QUIET_LINE: Stroke = Stroke::new(QUIET, THIN);
/// A line that bounds or dimensions.
pub const RULE_LINE: Stroke = Stroke::new(RULE, THIN);
/// The same, where more stands beside it.
pub const RULE_HAIRLINE: Stroke = Stroke::new(RULE, HAIRLINE);
/// The rule below a table's rows.
pub const THIN_RULE: Stroke = Stroke::new(Rgb(0xd2, 0xd5, 0xd8), HAIRLINE);

/// From the middle of capitals and figures down to their baseline, as a share of the size of type.
pub const HALF_CAPITAL: f64 = 0.35;
/// From above capitals and figures, with a little room, down to their baseline, as a share of the size of type.
pub const CAPITAL: f64 = 0.8;
/// What sums of lengths differ by rounding, at most.
pub const ROUNDED: f64 = 1e-9;
