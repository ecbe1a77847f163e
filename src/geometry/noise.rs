//! Chance that is always the same: numbers from a seed, without a clock and without a state.

/// What `SplitMix64` adds to its state for each number: 2⁶⁴ over the golden ratio, made odd.
const STEP: u64 = 0x9e37_79b9_7f4a_7c15;

/// A number from 0 to 1 for a place in a grid. The bits are mixed by the finaliser of `SplitMix64`
/// (Steele, Lea and Flood, *Fast splittable pseudorandom number generators*, 2014).
#[must_use]
pub fn unit(seed: u64, x: u32, y: u32) -> f64 {
    let place = (u64::from(x) << 32) | u64::from(y);
    let bits = mixed(place.wrapping_add(seed.wrapping_add(1).wrapping_mul(STEP)));
    // The upper 53 bits are a whole number that a double holds exactly.
    (bits >> 11) as f64 / (1_u64 << 53) as f64
}

/// The finaliser of `SplitMix64`.
const fn mixed(mut bits: u64) -> u64 {
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

/// Numbers one after another from a seed, by `SplitMix64`: the same on every machine.
#[derive(Clone, Debug)]
pub struct Dice(u64);

impl Dice {
    /// Dice that begin at a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next number, all 64 bits of it.
    pub const fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(STEP);
        mixed(self.0)
    }

    /// The next number below a bound: floor(number × bound / 2⁶⁴), which favours none by more than bound / 2⁶⁴.
    pub fn below(&mut self, bound: usize) -> usize {
        let scaled = (u128::from(self.roll()) * bound as u128) >> 64;
        // It is below the bound, which is a `usize`.
        usize::try_from(scaled).unwrap_or_default()
    }
}

/// A share from −1 to 1 for a place in a grid.
#[must_use]
pub fn both_ways(seed: u64, x: u32, y: u32) -> f64 {
    2.0 * unit(seed, x, y) - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the reference implementation of `SplitMix64` (Vigna, 2015, public domain), whose first numbers from
    /// the seed 1234567 are published with it as a test of ports.
    #[test]
    fn dice_roll_the_published_numbers() {
        let mut dice = Dice::new(1_234_567);
        let published = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(published.map(|_| dice.roll()), published);
        assert!((1..200).all(|bound| dice.below(bound) < bound));
    }

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
