//! How wide a round hole must be for several cords or crimps of one size.
//!
//! [`packing_ratio`] is the radius of the smallest circle that holds n equal circles, over their
//! radius. Up to 20: the best known arrangements, of which 1 to 14 and 19 are proved best (Graham
//! 1968, Pirl 1969, Melissen 1994, Fodor 1999, 2000, 2003, Ekanayake and LaFountain 2024). Beyond 20
//! an upper bound: a disc laid at random on the densest plane arrangement covers π ρ² / 2√3 centres
//! on average, so somewhere it covers n once ρ² ≥ 2√3 (n − 1) / π, and a ring of one radius about
//! it holds the circles whole: ratio ≤ 1 + ρ.

/// Best known ratios for 1 to 20 circles.
const BEST: [f64; 20] = [
    1.0,
    2.0,
    2.154_700_538,
    2.414_213_562,
    2.701_301_617,
    3.0,
    3.0,
    3.304_764_871,
    3.613_125_930,
    3.813_026,
    3.923_804_400,
    4.029_602,
    4.236_067_978,
    4.328_429,
    4.521_356_965,
    4.615_426,
    4.792_034,
    4.863_703_305,
    4.863_703_305,
    5.122_321,
];

/// Diameter of the hole that n equal round cords fill, over the diameter of one: exact to the sixth
/// decimal up to 20, an upper bound beyond; nothing for no cords.
#[must_use]
pub fn packing_ratio(n: u32) -> f64 {
    let Some(index) = n.checked_sub(1) else { return 0.0 };
    let best = usize::try_from(index).ok().and_then(|at| BEST.get(at)).copied();
    best.unwrap_or_else(|| upper_bound(n))
}

fn upper_bound(n: u32) -> f64 {
    let cell = 2.0 * 3.0_f64.sqrt();
    1.0 + (cell * f64::from(n.saturating_sub(1)) / std::f64::consts::PI).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_best_known_packings() {
        for row in crate::trade::rows(include_str!("../../tests/oracles/data/circle_packing.csv")) {
            let ratio: f64 = row[1].parse().or_else(|_| row[2].parse()).unwrap();
            let found = packing_ratio(row[0].parse().unwrap());
            assert!((found - ratio).abs() < 1e-6, "{}: {found}", row[0]);
        }
    }

    #[test]
    fn the_bound_bounds() {
        for n in 1..=20 {
            assert!(upper_bound(n) >= packing_ratio(n) - 1e-9, "{n}");
        }
        // Best known for 31 and 37 circles: 6.291 and 6.758 (circle packing in a circle; from memory).
        assert!(packing_ratio(31) > 6.291 && packing_ratio(37) > 6.758);
    }

    #[test]
    fn more_cords_never_need_less() {
        assert!((1..200).all(|n| packing_ratio(n) <= packing_ratio(n + 1)));
        assert!(packing_ratio(0).abs() < f64::EPSILON);
        assert!(packing_ratio(u32::MAX).is_finite());
    }
}
