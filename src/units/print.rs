//! Printing quantities: real fractions for inches, as few decimals as say it all.

use std::fmt;

use serde::Serialize;

use super::english::ranged;
use super::number::{fraction, rounded, tens, trimmed};
use super::{INCH, Length, Money};

/// How the sheet prints lengths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[non_exhaustive]
pub enum UnitStyle {
    /// Inches alone, in fractions.
    In,
    /// Millimetres alone.
    Mm,
    /// Inches with millimetres in brackets.
    #[default]
    Both,
}

/// How a piece is told, which is no part of what it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Telling {
    /// How lengths are printed.
    pub units: UnitStyle,
    /// In what money prices are, where that has a name.
    pub currency: Option<String>,
}

/// Below this lengths are printed to the tenth of a millimetre, so that they are told as near as by their inches.
const FINE: f64 = 10.0;
/// Share of a printed digit by which a bound may be missed, as float noise.
const HAIR: f64 = 1e-7;
/// Most decimals of a length: what a pattern file can hold and read back.
const DECIMALS: usize = 6;

impl UnitStyle {
    /// Prints a length for a reader with a ruler: to the sixteenth of an inch, the millimetre; small ones to the
    /// thirty-second and the tenth. Each unit is rounded from the length itself, so that who reads one alone is as near to it.
    #[must_use]
    pub fn ruler(self, length: Length) -> String {
        self.both(&fraction(length), &millimetres(length))
    }

    /// Two lengths for the same reader, or one where both are printed alike: `16 ½ to 18 ½ in (419 to 470 mm)`.
    #[must_use]
    pub fn range(self, lengths: [Length; 2]) -> String {
        self.both(&ranged(lengths.map(fraction)), &ranged(lengths.map(millimetres)))
    }

    /// A length for the same reader, its millimetres to the tenth.
    #[must_use]
    pub fn fine(self, length: Length) -> String {
        self.both(&fraction(length), &trimmed(length.value(), 1))
    }

    /// Prints a size that no ruler shows: inches to the thousandth, millimetres to the hundredth.
    #[must_use]
    pub fn gauge(self, length: Length) -> String {
        self.both(&format!("{:.3}", length.value() / INCH), &trimmed(length.value(), 2))
    }

    /// What is told in feet or inches, and in metres or millimetres: one of them, or both.
    #[must_use]
    pub fn told(self, [inches, metric]: [String; 2]) -> String {
        match self {
            Self::In => inches,
            Self::Mm => metric,
            Self::Both => format!("{inches} ({metric})"),
        }
    }

    fn both(self, inches: &str, mm: &str) -> String {
        self.told([format!("{inches} in"), format!("{mm} mm")])
    }
}

/// Millimetres as a ruler shows them, of small lengths their tenths.
fn millimetres(length: Length) -> String {
    rounded(length.value(), usize::from(length.value().abs() < FINE))
}

impl fmt::Display for Length {
    /// Millimetres with at most six decimals: what a pattern file can hold and read back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", trimmed(self.value(), DECIMALS))
    }
}

impl Length {
    /// Millimetres to the tenth, for sizes of beads and gaps: `5.9 mm`.
    #[must_use]
    pub fn tenths(self) -> String {
        format!("{} mm", trimmed(self.value(), 1))
    }

    /// Millimetres to the hundredth, for cords and holes: `0.45 mm`.
    #[must_use]
    pub fn hundredths(self) -> String {
        format!("{} mm", trimmed(self.value(), 2))
    }

    /// The least that is enough, in millimetres rounded up to so many decimals.
    #[must_use]
    pub fn at_least(self, places: usize) -> String {
        let unit = tens(places);
        format!("{} mm", trimmed((self.value() * unit - HAIR).ceil() / unit, DECIMALS))
    }

    /// The most that fits, in millimetres rounded down to so many decimals.
    #[must_use]
    pub fn at_most(self, places: usize) -> String {
        let unit = tens(places);
        format!("{} mm", trimmed((self.value() * unit + HAIR).floor() / unit, DECIMALS))
    }
}

impl fmt::Display for Money {
    /// Main units and two decimals, without a currency: `4.20`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.value() < 0 { "-" } else { "" };
        let coins = self.value().unsigned_abs();
        write!(f, "{sign}{}.{:02}", coins / 100, coins % 100)
    }
}

#[cfg(test)]
mod tests {
    use super::super::number::NOISE;
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn bounds_are_rounded_to_the_safe_side() {
        assert_eq!(Length::mm(7847.53).at_least(1), "7847.6 mm");
        assert_eq!(Length::mm(0.02).at_least(1), "0.1 mm");
        assert_eq!(Length::mm(1.1 * 4.0 / 3.0).at_least(2), "1.47 mm");
        assert_eq!(Length::mm(0.1 + 0.2).at_least(1), "0.3 mm");
        assert_eq!(Length::mm(0.37128).at_most(2), "0.37 mm");
        assert_eq!(Length::mm(0.79999).at_most(2), "0.79 mm");
        assert_eq!(Length::mm(0.8).at_most(2), "0.8 mm");
    }

    #[test]
    fn both_units_side_by_side() {
        assert_eq!(UnitStyle::Both.ruler(Length::mm(419.1)), "16 ½ in (419 mm)");
        assert_eq!(UnitStyle::Mm.ruler(Length::mm(-0.2)), "0 mm");
        assert_eq!(UnitStyle::Both.ruler(Length::mm(-7.4)), "−9⁄32 in (-7.4 mm)");
        assert_eq!(UnitStyle::Both.ruler(Length::mm(25.2)), "1 in (25 mm)");
        assert_eq!(UnitStyle::Both.ruler(Length::mm(438.8)), "17 ¼ in (439 mm)");
    }

    /// An inch is 25.4 mm exactly, and what is converted is rounded once, from the value itself (NIST SP 811, 2008,
    /// appendices B.7 and B.8).
    #[test]
    fn each_unit_is_rounded_from_the_length_itself() {
        let told = |mm: f64| UnitStyle::Both.ruler(Length::mm(mm));
        assert_eq!([165.5, 391.4].map(told), ["6 ½ in (166 mm)", "15 7⁄16 in (391 mm)"]);
        assert_eq!([150.2, 123.1].map(told), ["5 15⁄16 in (150 mm)", "4 ⅞ in (123 mm)"]);
        assert_eq!([457.5, 469.3].map(told), ["18 in (458 mm)", "18 ½ in (469 mm)"]);
    }

    #[test]
    fn a_range_tells_its_lengths_as_each_is_told_alone() {
        let hooked = [438.8, 489.0].map(Length::mm);
        assert_eq!(UnitStyle::Both.range(hooked), "17 ¼ to 19 ¼ in (439 to 489 mm)");
        assert_eq!(UnitStyle::Both.range([hooked[0]; 2]), UnitStyle::Both.ruler(hooked[0]));
        assert_eq!(UnitStyle::Mm.range([438.8, 439.0].map(Length::mm)), "439 mm");
    }

    #[test]
    fn halves_round_up_whatever_the_noise() {
        // 25.4 mm an inch by definition: 17 ½ in = 444.5 mm, 22 ½ in = 571.5 mm.
        assert_eq!(UnitStyle::Mm.ruler(Length::inches(17.5)), "445 mm");
        assert_eq!(UnitStyle::Mm.ruler(Length::inches(20.5) + Length::inches(2.0)), "572 mm");
        assert_eq!(UnitStyle::Mm.ruler(Length::mm(0.1 + 0.2 + 444.2)), "445 mm");
    }

    #[test]
    fn small_lengths_are_told_to_the_tenth() {
        let told = |mm: f64| UnitStyle::Both.ruler(Length::mm(mm));
        assert_eq!([1.34, 2.76, 3.18].map(told), ["1⁄16 in (1.3 mm)", "3⁄32 in (2.8 mm)", "⅛ in (3.2 mm)"]);
        assert_eq!([7.0, 7.5].map(told), ["9⁄32 in (7 mm)", "9⁄32 in (7.5 mm)"]);
        assert_eq!([9.94, 9.96, 12.4].map(told), ["⅜ in (9.9 mm)", "⅜ in (10 mm)", "½ in (12 mm)"]);
    }

    #[test]
    fn what_no_ruler_shows_is_told_finer() {
        assert_eq!(UnitStyle::Both.gauge(Length::mm(1.2)), "0.047 in (1.2 mm)");
        assert_eq!(UnitStyle::In.gauge(Length::mm(0.1)), "0.004 in");
        assert_eq!(UnitStyle::Mm.gauge(Length::mm(0.45)), "0.45 mm");
    }

    #[test]
    fn money_prints_two_decimals() {
        assert_eq!(Money::coins(420).to_string(), "4.20");
        assert_eq!(Money::coins(-5).to_string(), "-0.05");
    }

    fn printed(mm: f64) -> f64 {
        UnitStyle::Mm.ruler(Length::mm(mm)).trim_end_matches(" mm").parse().unwrap()
    }

    proptest! {
        #[test]
        fn a_ruler_is_read_to_half_a_millimetre_and_in_order(mm in -3000.0..3000.0_f64, more in 0.0..30.0_f64) {
            prop_assert!((printed(mm) - mm).abs() <= 0.5 + 2.0 * NOISE);
            prop_assert!(printed(mm) <= printed(mm + more));
        }

        #[test]
        fn halves_of_a_ruler_are_read_upward(halves in 0u32..6000) {
            let mm = f64::from(halves) / 2.0;
            prop_assert_eq!(printed(mm), if mm < 10.0 { mm } else { (mm + 0.5).floor() });
        }

        /// What stands before the bracket and in it are told of one length, each to half a step of its own.
        #[test]
        fn both_units_are_told_near_one_another(mm in 0.0..3000.0_f64) {
            let (step_in, step_mm) = match mm {
                _ if mm < 9.9 => (1.0 / 32.0, 0.1),
                _ if mm < 25.0 => (1.0 / 32.0, 1.0),
                _ => (1.0 / 16.0, 1.0),
            };
            let printed = UnitStyle::Both.ruler(Length::mm(mm));
            let (inches, millimetres) = printed.trim_end_matches(')').split_once(" (").unwrap();
            let [inches, millimetres] = [inches, millimetres].map(|text| {
                if text.starts_with("0 ") { 0.0 } else { Length::parse(text).unwrap().value() }
            });
            prop_assert!((inches - millimetres).abs() <= (step_in * INCH + step_mm) / 2.0 + NOISE, "{}: {}", mm, printed);
        }

        #[test]
        fn reading_then_printing_gives_the_same_length(micro in 1u32..2_000_000_000) {
            let mm = Length::parse(&format!("{} mm", f64::from(micro) / 1e6)).unwrap();
            prop_assert_eq!(Length::parse(&mm.to_string()).unwrap(), mm);
        }
    }
}
