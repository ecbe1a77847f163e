//! Sizes that the trade takes for granted, each in one place. Patterns may say others.
//!
//! Where no source is named, a figure is common practice or an assumption, and says so.

/// Width of an overhand knot, in widths of its cord: in the middle of the tight knot three stretches of it lie
/// side by side; an assumption.
pub const KNOT_WIDTH: f64 = 3.0;
/// What one tight overhand knot makes a cord shorter, in its diameters: 10.1 (Pieranski, Przybyl and
/// Stasiak, Tight open knots, Eur. Phys. J. E 6, 123-128, 2001; the figure is from memory).
/// tests/oracles/scripts/tight_knots.py finds 10.09 for a rope without friction, pulled tight.
pub const OVERHAND: f64 = 10.1;
/// What a double overhand knot takes up, as a multiple of a single one: 17.27 diameters of a pulled rope
/// (the same script) by its 10.09.
pub const DOUBLE_OVERHAND: f64 = 1.712;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn knots_take_up_what_a_pulled_rope_does() {
        let table = crate::trade::rows(include_str!("../../tests/oracles/data/tight_knots.csv"));
        let [single, double] = [0, 1].map(|row: usize| table[row][1].parse::<f64>().unwrap());
        assert!((OVERHAND - single).abs() < 0.05, "{single}");
        assert!((DOUBLE_OVERHAND - double / single).abs() < 1e-3, "{}", double / single);
    }
}
