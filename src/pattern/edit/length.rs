//! Lengths as a maker writes them.

use crate::units::{INCH, Length};

/// A length in the unit and as finely as another is written: whole millimetres, tenths of a centimetre, sixteenths
/// of an inch. Nothing where that other is no length, or this one is less than the finest step.
#[must_use]
pub fn like(written: &str, length: Length) -> Option<String> {
    quoted_like(written, |bare| bare_like(bare, length))
}

/// A change of length with its sign, so much more than it is written, in the same unit and as finely.
#[must_use]
pub fn change_like(written: &str, more: Length) -> Option<String> {
    quoted_like(written, |bare| {
        let change = Length::parse_signed(bare).ok()? + more;
        let unsigned = bare.trim_start().trim_start_matches(['+', '-', '\u{2212}']);
        let sign = if change < Length::ZERO { '-' } else { '+' };
        Some(format!("{sign}{}", bare_like(unsigned, Length::mm(change.value().abs()))?))
    })
}

/// What is made of what stands in quotes, or in none, in the same.
fn quoted_like(written: &str, made: impl Fn(&str) -> Option<String>) -> Option<String> {
    let quote = written.get(..1).filter(|sign| ["\"", "'"].contains(sign)).unwrap_or_default();
    made(written.trim_matches(|sign| quote.contains(sign))).map(|text| format!("{quote}{text}{quote}"))
}

fn bare_like(bare: &str, length: Length) -> Option<String> {
    Length::parse(bare).ok()?;
    match bare.trim().trim_start_matches(|sign: char| !sign.is_alphabetic() && sign != '"') {
        "mm" => whole(length.value()).map(|mm| format!("{mm} mm")),
        "cm" => whole(length.value()).map(|mm| format!("{} cm", f64::from(mm) / 10.0)),
        "m" => whole(length.value()).map(|mm| format!("{} m", f64::from(mm) / 1000.0)),
        _ => whole(length.value() / INCH * 16.0).map(inches),
    }
}

/// A number rounded to a whole one of at least 1.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "checked to lie within")]
fn whole(number: f64) -> Option<u32> {
    let rounded = number.round();
    (1.0..=f64::from(u32::MAX)).contains(&rounded).then_some(rounded as u32)
}

/// Sixteenths of an inch as `17 1/2 in`.
fn inches(sixteenths: u32) -> String {
    let (whole, mut part, mut of) = (sixteenths / 16, sixteenths % 16, 16);
    while part > 0 && part % 2 == 0 {
        (part, of) = (part / 2, of / 2);
    }
    match (whole, part) {
        (whole, 0) => format!("{whole} in"),
        (0, part) => format!("{part}/{of} in"),
        (whole, part) => format!("{whole} {part}/{of} in"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_written_as_before() {
        let like = |written: &str, mm: f64| like(written, Length::mm(mm));
        let is = |text: &str| Some(text.to_owned());
        assert_eq!(like("445 mm", 450.4), is("450 mm"));
        assert_eq!(like("44.5 cm", 450.0), is("45 cm"));
        assert_eq!(like("44.5 cm", 452.0), is("45.2 cm"));
        assert_eq!(like("17 in", 17.5 * 25.4), is("17 1/2 in"));
        assert_eq!(like("17½ in", 18.0 * 25.4), is("18 in"));
        assert_eq!(like("17 in", 0.3 * 25.4), is("5/16 in"), "4.8 sixteenths");
        assert_eq!(like("\"17 in\"", 19.0 * 25.4), is("\"19 in\""));
        assert_eq!(like("17 mm", 0.2), None);
        assert_eq!(like("reed", 20.0), None);
    }

    #[test]
    fn changes_keep_their_unit_and_get_their_sign() {
        let like = |written: &str, mm: f64| change_like(written, Length::mm(mm));
        let is = |text: &str| Some(text.to_owned());
        assert_eq!(like("-1 in", -12.7), is("-1 1/2 in"));
        assert_eq!(like("+1 in", -50.8), is("-1 in"));
        assert_eq!(like("-16 mm", 20.0), is("+4 mm"));
        assert_eq!(like("\"+4 cm\"", 5.0), is("\"+4.5 cm\""));
        assert_eq!(like("+4 mm", -4.0), None, "no change at all");
    }

    #[test]
    fn what_is_written_reads_back_within_half_a_step() {
        for (written, step) in [("1 mm", 1.0), ("1 cm", 1.0), ("1 m", 1.0), ("1 in", 25.4 / 16.0)] {
            for tenths in 20..3000 {
                let length = Length::mm(f64::from(tenths) / 7.0);
                let text = like(written, length).unwrap();
                let back = Length::parse(&text).unwrap();
                assert!((back.value() - length.value()).abs() <= step / 2.0 + 1e-9, "{text} for {length:?}");
            }
        }
    }
}
