//! Numbers as they are printed.

use super::{INCH, Length};

/// Inches are printed to the nearest sixteenth, as rulers show them.
pub(super) const SIXTEENTHS: f64 = 16.0;
/// Below an inch they are printed to the nearest thirty-second, as near as short lengths in millimetres are.
const THIRTY_SECONDS: f64 = 32.0;
/// Share of a printed digit that is float noise: what a sum misses a half by still counts as half.
pub(super) const NOISE: f64 = 1e-6;

/// The fewest steps in mm that are no shorter than a length, whatever the noise.
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

/// A number to the nearest step, what lies between two away from nothing.
pub(super) fn stepped(value: f64, step: f64) -> f64 {
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
