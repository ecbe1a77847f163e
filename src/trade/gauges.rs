//! Diameters by number: American wire gauge.
//!
//! Wire gauge: d = 0.005 in × 92^((36 − n) / 39), the formula of ASTM B258, which gives 0.4600 in
//! at gauge 0000 and 0.0050 in at gauge 36.

use crate::units::Length;

/// Thinnest gauge in use.
const FINEST: u32 = 40;

/// Diameter of round wire by American wire gauge, 0 to 40; nothing for other gauges.
#[must_use]
pub fn awg_diameter(gauge: u32) -> Option<Length> {
    let power = (36.0 - f64::from(gauge)) / 39.0;
    (gauge <= FINEST).then(|| Length::inches(0.005 * libm::pow(92.0, power)))
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
}
