//! Numbers as they are printed.

use super::{INCH, Length};

/// Inches are printed to the nearest sixteenth, as rulers show them.
const SIXTEENTHS: f64 = 16.0;
/// Below an inch they are printed to the nearest thirty-second, as near as short lengths in millimetres are.
const THIRTY_SECONDS: f64 = 32.0;
/// Share of a printed digit that is float noise: what a sum misses a half by still counts as half.
pub(super) const NOISE: f64 = 1e-6;

/// How many steps of so many mm are enough for a length: the fewest that are no shorter than it, but for noise.
#[must_use]
pub fn enough(length: Length, step: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "lengths are below a kilometre")]
    let parts = (length.value() / step - NOISE).ceil() as i64;
    parts
}

/// Ten to the power of so many decimals.
pub(super) fn tens(places: usize) -> f64 {
    (0..places).fold(1.0, |unit, _| unit * 10.0)
}

/// A number rounded to so many decimals, halves away from nothing.
pub(super) fn rounded(value: f64, places: usize) -> String {
    let unit = tens(places);
    let size = (value.abs() * unit + 0.5 + NOISE).floor() / unit;
    let text = trimmed(size, places);
    if value < 0.0 && size > 0.0 { format!("-{text}") } else { text }
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
    let decimals = if value == 0.0 { places } else { (places..MOST).find(shown).unwrap_or(MOST) };
    format!("{value:.decimals$}")
}

/// The number that is read, in its own unit, where one is printed with so many decimals.
#[must_use]
pub fn as_printed(value: f64, places: usize) -> f64 {
    // What `format!` writes of a number is read.
    format!("{value:.places$}").parse().unwrap_or(value)
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

#[cfg(test)]
mod tests {
    use super::*;

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

    /// Decimal equivalents of fractions of an inch as workshop tables give them (Machinery's Handbook; from memory).
    #[test]
    fn fractions_have_their_published_lengths() {
        let table = [
            ("1⁄32", 0.7938),
            ("3⁄32", 2.3813),
            ("9⁄32", 7.1438),
            ("7⁄16", 11.1125),
            ("⅝", 15.875),
            ("31⁄32", 24.6063),
        ];
        assert!(table.iter().all(|(told, mm)| fraction(Length::mm(*mm)) == *told));
    }

    #[test]
    fn what_is_little_is_told_by_two_figures() {
        assert_eq!(
            [12.345, 0.125, 0.0, -0.003_14].map(|value| figures(value, 2)),
            ["12.35", "0.12", "0.00", "-0.0031"]
        );
        assert_eq!(figures(1e-12, 2), "0.000000000");
    }
}
