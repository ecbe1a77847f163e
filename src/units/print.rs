//! Printing quantities: real fractions for inches, as few decimals as say it all.

use std::fmt;

use serde::Serialize;

use super::english::ranged;
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

/// Inches are printed to the nearest sixteenth, as rulers show them.
const SIXTEENTHS: f64 = 16.0;

/// Below an inch they are printed to the nearest thirty-second, so that both units tell the same length.
const THIRTY_SECONDS: f64 = 32.0;
/// Below this margins are printed to the tenth of a millimetre, and other lengths to the half, which the eye reads
/// between the marks of a ruler.
const FINE: f64 = 10.0;
/// Share of a printed digit that is float noise: what a sum misses a half by still counts as half.
const NOISE: f64 = 1e-6;
/// Share of a printed digit by which a bound may be missed, as float noise.
const HAIR: f64 = 1e-7;
/// Most decimals of a length: what a pattern file can hold and read back.
const DECIMALS: usize = 6;

impl UnitStyle {
    /// One unit where there are two: millimetres.
    #[must_use]
    pub const fn one(self) -> Self {
        if matches!(self, Self::In) { self } else { Self::Mm }
    }

    /// Prints a length for a reader with a ruler: to the sixteenth of an inch, the millimetre; small ones to the
    /// thirty-second and the half.
    #[must_use]
    pub fn ruler(self, length: Length) -> String {
        self.told(self.apart(length))
    }

    /// The same in inches and in millimetres, each by itself.
    #[must_use]
    pub fn apart(self, length: Length) -> [String; 2] {
        [format!("{} in", self.inches(length)), format!("{} mm", on_ruler(length).value())]
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

    /// Two lengths for the same reader, or one where both are printed alike: `16 ½ to 18 ½ in (419 to 470 mm)`.
    #[must_use]
    pub fn range(self, lengths: [Length; 2]) -> String {
        let inches = ranged(lengths.map(|length| self.inches(length)));
        self.both(&inches, &ranged(lengths.map(|length| on_ruler(length).value().to_string())))
    }

    /// The inches of a length as [`Self::ruler`] prints them. Both units tell the same length: that which is printed in
    /// millimetres, or the sixteenth of an inch that is printed so.
    #[must_use]
    pub fn inches(self, length: Length) -> String {
        let shown = on_ruler(length);
        let sixteenth = Length::inches((length.value() / INCH * SIXTEENTHS).round() / SIXTEENTHS);
        let both = if on_ruler(sixteenth) == shown { sixteenth } else { shown };
        fraction(if self == Self::Both { both } else { length })
    }

    /// The same to the tenth of a millimetre.
    #[must_use]
    pub fn fine(self, length: Length) -> String {
        self.both(&fraction(length), &trimmed(length.value(), 1))
    }

    /// Prints how far a length may be off: millimetres whole, small ones to the tenth; inches as a length's, and where only they
    /// are printed, up to the next sixteenth that is enough, for no ruler of inches shows less.
    #[must_use]
    pub fn margin(self, length: Length) -> String {
        let fine = length.value().abs() < FINE;
        let inches = if self == Self::In { sixteenths(enough(length)) } else { fraction(length) };
        self.both(&inches, &rounded(length.value(), usize::from(fine)))
    }

    /// Prints a size that no ruler shows: inches to the thousandth, millimetres to the hundredth.
    #[must_use]
    pub fn gauge(self, length: Length) -> String {
        self.both(&format!("{:.3}", length.value() / INCH), &trimmed(length.value(), 2))
    }

    fn both(self, inches: &str, mm: &str) -> String {
        self.told([format!("{inches} in"), format!("{mm} mm")])
    }
}

/// The least sixteenths of an inch that are no shorter than a length.
fn enough(length: Length) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "lengths are below a kilometre")]
    let parts = (length.value() / INCH * SIXTEENTHS - NOISE).ceil() as i64;
    parts
}

/// What a ruler shows of a length: millimetres, of small ones their halves.
fn on_ruler(length: Length) -> Length {
    let step = if length.value().abs() >= FINE { 1.0 } else { 0.5 };
    Length::mm(stepped(length.value(), step))
}

/// Ten to the power of so many decimals.
fn tens(places: usize) -> f64 {
    (0..places).fold(1.0, |unit, _| unit * 10.0)
}

/// A number rounded to so many decimals, halves away from nothing.
fn rounded(value: f64, places: usize) -> String {
    let unit = tens(places);
    let size = (value.abs() * unit + 0.5 + NOISE).floor() / unit;
    let text = trimmed(size, places);
    if value < 0.0 && size > 0.0 { format!("-{text}") } else { text }
}

/// A number to the nearest step, what lies between two away from nothing.
fn stepped(value: f64, step: f64) -> f64 {
    let size = (value.abs() / step + 0.5 + NOISE).floor() * step;
    if value < 0.0 && size > 0.0 { -size } else { size }
}

/// Inches in sixteenths with real fractions: `16 ½`, `¾`, `5 3⁄16`, `0`; below one in thirty-seconds: `9⁄32`.
#[must_use]
pub fn fraction(length: Length) -> String {
    let parts_of = |unit: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "lengths are below a kilometre")]
        let parts = (length.value().abs() / INCH * unit).round() as i64;
        parts
    };
    let fine = parts_of(THIRTY_SECONDS);
    let parts = if fine < 32 { fine / 2 } else { parts_of(SIXTEENTHS) };
    let text = if fine < 32 && fine % 2 == 1 { format!("{fine}⁄32") } else { sixteenths(parts) };
    if length.value() < 0.0 && text != "0" { format!("−{text}") } else { text }
}

/// A number in eighths with real fractions: `3 ½`.
#[must_use]
pub fn eighths(number: f64) -> String {
    #[expect(clippy::cast_possible_truncation, reason = "a number of turns is bounded by a strand's length")]
    let parts = (number * 8.0).round() as i64;
    sixteenths(2 * parts)
}

/// A count, its thousands apart from five figures on: `1050`, `900,000`.
#[must_use]
pub fn grouped(number: u64) -> String {
    if number < 10_000 { number.to_string() } else { apart(number) }
}

/// A number, its thousands apart.
fn apart(number: u64) -> String {
    if number < 1000 { number.to_string() } else { format!("{},{:03}", apart(number / 1000), number % 1000) }
}

/// So many sixteenths with a real fraction.
#[must_use]
pub fn sixteenths(parts: i64) -> String {
    let (whole, rest) = (parts / 16, parts % 16);
    let part = sixteenth(rest);
    match (whole, part.as_str()) {
        (whole, "") => whole.to_string(),
        (0, part) => part.to_owned(),
        (whole, part) => format!("{whole} {part}"),
    }
}

/// Halves to eighths have letters of their own; fonts draw figures about a fraction slash alike.
fn sixteenth(rest: i64) -> String {
    const EIGHTHS: [&str; 8] = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    if rest % 2 == 0 {
        return usize::try_from(rest / 2).ok().and_then(|at| EIGHTHS.get(at)).copied().unwrap_or("").to_owned();
    }
    format!("{rest}⁄16")
}

/// A number to so many decimals, or to as many more as show two figures of it: what is little is not told as nothing.
#[must_use]
pub fn figures(value: f64, places: usize) -> String {
    const MOST: usize = 9;
    let shown = |places: &usize| value.abs() * tens(*places) >= 10.0;
    let enough = (places..MOST).find(shown).unwrap_or(MOST);
    format!("{value:.*}", if value == 0.0 { places } else { enough })
}

/// A number with at most `places` decimals and no trailing zeros.
#[must_use]
pub fn trimmed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
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

    /// Decimal inches with at most six decimals: reading it back gives the same length.
    #[must_use]
    pub fn decimal_inches(self) -> String {
        format!("{} in", trimmed(self.value() / INCH, 6))
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
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn thousands_are_told_apart() {
        let told: Vec<_> = [999, 1050, 9999, 10_000, 900_000, 1_050_003].map(grouped).into();
        assert_eq!(told, ["999", "1050", "9999", "10,000", "900,000", "1,050,003"]);
    }

    #[test]
    fn fractions_are_real_ones() {
        assert_eq!(fraction(Length::inches(16.5)), "16 ½");
        assert_eq!(fraction(Length::inches(0.75)), "¾");
        assert_eq!(fraction(Length::inches(5.1875)), "5 3⁄16");
        assert_eq!(fraction(Length::inches(0.01)), "0");
        assert_eq!(fraction(Length::inches(2.9999)), "3");
        assert_eq!(fraction(Length::inches(11.0 / 16.0)), "11⁄16");
    }

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
        assert_eq!(UnitStyle::Both.ruler(Length::mm(7.4)), "9⁄32 in (7.5 mm)");
        assert_eq!(UnitStyle::Both.ruler(Length::mm(-7.4)), "−9⁄32 in (-7.5 mm)");
        assert_eq!(UnitStyle::Both.ruler(Length::mm(25.2)), "1 in (25 mm)");
        // Neither 17 ¼ in (438.2 mm) nor 17 5⁄16 in (439.7 mm) is printed as 439 mm, of which the latter is the nearer.
        let alike = [438.8, 439.0].map(|mm| UnitStyle::Both.ruler(Length::mm(mm)));
        assert_eq!(alike, ["17 5⁄16 in (439 mm)"; 2]);
    }

    #[test]
    fn a_range_tells_its_lengths_as_each_is_told_alone() {
        let hooked = [438.8, 489.0].map(Length::mm);
        assert_eq!(UnitStyle::Both.range(hooked), "17 5⁄16 to 19 ¼ in (439 to 489 mm)");
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
    fn small_margins_are_told_to_the_tenth() {
        assert_eq!(UnitStyle::Both.margin(Length::mm(1.34)), "1⁄16 in (1.3 mm)");
        // 1.1 mm are 0.043 in, which 1⁄32 in, 0.031, is less than.
        assert_eq!(UnitStyle::In.margin(Length::mm(1.1)), "1⁄16 in");
        assert_eq!(UnitStyle::In.margin(Length::mm(25.4 / 8.0)), "⅛ in");
        assert_eq!(UnitStyle::Mm.margin(Length::mm(2.0)), "2 mm");
        assert_eq!(UnitStyle::Mm.margin(Length::mm(12.4)), "12 mm");
    }

    #[test]
    fn what_no_ruler_shows_is_told_finer() {
        assert_eq!(UnitStyle::Both.gauge(Length::mm(1.2)), "0.047 in (1.2 mm)");
        assert_eq!(UnitStyle::In.gauge(Length::mm(0.1)), "0.004 in");
        assert_eq!(UnitStyle::Mm.gauge(Length::mm(0.45)), "0.45 mm");
    }

    #[test]
    fn what_is_little_is_told_by_two_figures() {
        assert_eq!(
            [12.345, 0.125, 0.0, -0.003_14].map(|value| figures(value, 2)),
            ["12.35", "0.12", "0.00", "-0.0031"]
        );
        assert_eq!(figures(1e-12, 2), "0.000000000");
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

        /// What stands before the bracket and in it is one length: apart by no more than half a step of each.
        #[test]
        fn both_units_tell_the_same_length(mm in 0.0..3000.0_f64) {
            let (step_in, step_mm) = match mm {
                _ if mm < 9.9 => (1.0 / 32.0, 0.5),
                _ if mm < 25.0 => (1.0 / 32.0, 1.0),
                _ => (1.0 / 16.0, 1.0),
            };
            let printed = UnitStyle::Both.ruler(Length::mm(mm));
            let (inches, millimetres) = printed.trim_end_matches(')').split_once(" (").unwrap();
            let [inches, millimetres] = [inches, millimetres].map(|text| {
                if text.starts_with("0 ") { 0.0 } else { Length::parse(text).unwrap().value() }
            });
            prop_assert!((inches - millimetres).abs() <= (step_in * INCH + step_mm) / 2.0 + 0.02, "{}: {}", mm, printed);
        }

        #[test]
        fn reading_then_printing_gives_the_same_length(micro in 1u32..2_000_000_000) {
            let mm = Length::parse(&format!("{} mm", f64::from(micro) / 1e6)).unwrap();
            prop_assert_eq!(Length::parse(&mm.to_string()).unwrap(), mm);
            let inches = Length::parse(&format!("{} in", f64::from(micro) / 1e6)).unwrap();
            prop_assert_eq!(Length::parse(&inches.decimal_inches()).unwrap(), inches);
        }
    }
}
