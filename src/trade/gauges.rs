//! Diameters by number: American wire gauge, and the numbers of beading silk.
//!
//! Wire gauge: d = 0.005 in × 92^((36 − n) / 39), the formula of ASTM B258, which gives 0.4600 in
//! at gauge 0000 and 0.0050 in at gauge 36. Silk: common practice, from memory; makers differ.

use crate::units::Length;

/// Thinnest gauge in use.
const FINEST: u32 = 40;

/// Number and diameter in mm of beading silk. From memory, of middling confidence.
const SILK: &[(u32, f64)] = &[(1, 0.35), (2, 0.45), (3, 0.50), (4, 0.60), (5, 0.65), (6, 0.70), (8, 0.80), (10, 0.90)];

/// Diameter of round wire by American wire gauge, 0 to 40; nothing for other gauges.
#[must_use]
pub fn awg_diameter(gauge: u32) -> Option<Length> {
    let power = (36.0 - f64::from(gauge)) / 39.0;
    (gauge <= FINEST).then(|| Length::inches(0.005 * libm::pow(92.0, power)))
}

/// Diameter of beading silk by its number, where the number is in use: common practice, from memory.
#[must_use]
pub fn silk_diameter(number: u32) -> Option<Length> {
    SILK.iter().find(|(silk, _)| *silk == number).map(|(_, mm)| Length::mm(*mm))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wire_follows_the_standard_formula() {
        for row in crate::trade::rows(include_str!("../../tests/oracles/data/awg.csv")) {
            let inches: f64 = row[1].parse().unwrap();
            let found = awg_diameter(row[0].parse().unwrap()).unwrap() / Length::inches(1.0);
            assert!((found - inches).abs() < 1e-8, "gauge {}: {found}", row[0]);
        }
    }

    #[test]
    fn gauges_that_nobody_sells_are_nothing() {
        assert!(awg_diameter(0).is_some() && awg_diameter(40).is_some());
        assert_eq!(awg_diameter(41), None);
        assert_eq!(awg_diameter(u32::MAX), None);
    }

    #[test]
    fn silk_grows_with_its_number() {
        assert_eq!(silk_diameter(4), Some(Length::mm(0.60)));
        assert_eq!(silk_diameter(7), None);
        assert!(SILK.windows(2).all(|pair| pair[0].1 < pair[1].1));
    }
}
