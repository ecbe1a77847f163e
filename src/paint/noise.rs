//! Chance that is always the same: numbers from a seed, without a clock and without a state.

/// A number from 0 to 1 for a place in a grid. The bits are mixed by the finaliser of `SplitMix64`
/// (Steele, Lea and Flood, *Fast splittable pseudorandom number generators*, 2014).
#[must_use]
pub fn unit(seed: u64, x: u32, y: u32) -> f64 {
    let place = (u64::from(x) << 32) | u64::from(y);
    let mut bits = place.wrapping_add(seed.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^= bits >> 31;
    // The upper 53 bits are a whole number that a double holds exactly.
    (bits >> 11) as f64 / (1_u64 << 53) as f64
}

/// A number from −1 to 1 for a place in a grid.
#[must_use]
pub fn both_ways(seed: u64, x: u32, y: u32) -> f64 {
    2.0 * unit(seed, x, y) - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_spread_evenly_and_differ_by_seed_and_place() {
        let numbers: Vec<f64> = (0..4000).map(|at| unit(3, at % 61, at / 61)).collect();
        assert!(numbers.iter().all(|number| (0.0..1.0).contains(number)));
        let mean = numbers.iter().sum::<f64>() / 4000.0;
        // The mean of 4000 even numbers is 0.5 with a deviation of 0.29 / sqrt 4000 = 0.0046.
        assert!((mean - 0.5).abs() < 4.0 * 0.0046, "{mean}");
        assert_ne!(unit(1, 2, 3), unit(2, 2, 3));
        assert_ne!(unit(1, 2, 3), unit(1, 3, 2));
    }
}
