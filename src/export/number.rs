//! Numbers in fixed precision, the same on every machine.

/// Appends a number rounded to `places` decimals, without trailing zeros and never as `-0`.
///
/// Meant for page coordinates: up to 15 digits in all are exact. A number that is not finite has no
/// place on a page; it is written as 0 so that the file stays readable.
pub fn push(out: &mut String, value: f64, places: u32) {
    let unit = 10_u64.pow(places);
    let scaled = if value.is_finite() { (value * unit as f64).round() } else { 0.0 };
    if scaled < 0.0 {
        out.push('-');
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not negative, and `as` saturates")]
    let whole = scaled.abs() as u64;
    push_whole(out, whole / unit);
    push_fraction(out, whole % unit, unit);
}

fn push_whole(out: &mut String, value: u64) {
    if value >= 10 {
        push_whole(out, value / 10);
    }
    push_digit(out, value % 10);
}

fn push_fraction(out: &mut String, mut rest: u64, unit: u64) {
    if rest > 0 {
        out.push('.');
    }
    let mut place = unit / 10;
    while rest > 0 {
        push_digit(out, rest / place);
        rest %= place;
        place /= 10;
    }
}

fn push_digit(out: &mut String, digit: u64) {
    #[expect(clippy::cast_possible_truncation, reason = "callers pass a single decimal digit")]
    out.push(char::from(b'0' + digit as u8));
}

#[cfg(test)]
mod tests {
    use super::push;

    fn written(value: f64, places: u32) -> String {
        let mut out = String::new();
        push(&mut out, value, places);
        out
    }

    #[test]
    fn numbers_are_rounded_and_trimmed() {
        let cases = [(0.0, "0"), (-0.0001, "0"), (1.5, "1.5"), (-2.0005, "-2.001"), (210.0, "210"), (0.01, "0.01")];
        for (value, text) in cases {
            assert_eq!(written(value, 3), text, "{value}");
        }
        assert_eq!(written(1e300, 3), "18446744073709551.615", "saturates");
        assert_eq!(written(f64::NAN, 3), "0");
    }

    #[test]
    fn what_is_written_reads_back_within_half_a_step() {
        for i in -5000..5000 {
            let value = f64::from(i) * 0.123_456_7;
            let back: f64 = written(value, 3).parse().unwrap();
            assert!((back - value).abs() <= 0.000_500_001, "{value} {back}");
        }
    }
}
