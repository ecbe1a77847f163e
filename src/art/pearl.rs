//! How pearls differ: each in its overtone and its light, none in its size.

use super::light::Light;
use crate::geometry::noise;
use crate::paint::mark::Rgb;
use crate::pattern::Finish;

/// How many pearls of a kind differ.
pub const VARIANTS: u32 = 5;

/// Overtones of pearls as shares of red, green and blue: none, rosé, green, gold, blue. Made by eye.
const OVERTONES: [[f64; 3]; VARIANTS as usize] =
    [[1.0, 1.0, 1.0], [1.0, 0.968, 0.976], [0.98, 0.997, 0.983], [1.0, 0.982, 0.94], [0.97, 0.982, 1.0]];
/// By how many radians the light on them is turned.
const TURNS: [f64; VARIANTS as usize] = [0.0, 0.1, -0.08, 0.05, -0.12];

/// One of the pearls that differ; the first is as the pattern says, and so are all other beads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PearlVariant(u32);

impl PearlVariant {
    /// The variant that the stamp of a number is, which chance deals the same in every run.
    pub fn dealt(finish: Finish, index: usize, stamp: u32) -> Self {
        let seed = u64::try_from(index).unwrap_or(u64::MAX);
        let dealt = noise::unit(seed, stamp, 0) * f64::from(VARIANTS);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to below 5")]
        let dealt = dealt as u32;
        if finish == Finish::Pearl { Self(dealt) } else { Self::default() }
    }

    /// Its number.
    pub const fn number(self) -> u32 {
        self.0
    }

    fn at(self) -> usize {
        (self.0 % VARIANTS) as usize
    }

    /// A colour with its overtone.
    pub fn tinted(self, Rgb(red, green, blue): Rgb) -> Rgb {
        let [r, g, b] = OVERTONES[self.at()];
        let part = |byte, share: f64| Rgb::BLACK.mixed(Rgb(byte, byte, byte), share).0;
        Rgb(part(red, r), part(green, g), part(blue, b))
    }

    /// The light as it falls on it.
    pub fn lit(self, light: Light) -> Light {
        Light { towards: light.towards.turned(TURNS[self.at()]), ..light }
    }
}
