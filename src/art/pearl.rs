//! How pearls differ: each in its overtone, its tone and its light, none in its size.

use super::light::{Light, toned};
use crate::geometry::noise;
use crate::paint::mark::Rgb;
use crate::pattern::Finish;

/// How many pearls of a kind differ.
pub const VARIANTS: u32 = 5;

/// Overtones of pearls as shares of red, green and blue: none, rosé, green, gold, blue. Made by eye.
const OVERTONES: [[f64; 3]; VARIANTS as usize] =
    [[1.0, 1.0, 1.0], [1.0, 0.984, 0.988], [0.99, 0.998, 0.992], [1.0, 0.991, 0.97], [0.985, 0.991, 1.0]];
/// How much lighter or darker they are.
const TONES: [f64; VARIANTS as usize] = [0.0, 0.1, -0.02, -0.05, 0.05];
/// By how many radians the light on them is turned.
const TURNS: [f64; VARIANTS as usize] = [0.0, 0.1, -0.08, 0.05, -0.12];

/// What chance deals a bead by its place in the piece, so that the same bead looks the same wherever it is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Deal {
    strand: u64,
    place: [u32; 2],
}

impl Deal {
    /// What is dealt to a bit of a train of a strand of a name, both counted from the first end.
    #[must_use]
    pub fn of(strand: &str, train: usize, bit: usize) -> Self {
        let name = strand.bytes().fold(0_u64, |name, byte| name.wrapping_mul(31).wrapping_add(byte.into()));
        Self { strand: name, place: [train, bit].map(number) }
    }

    /// What is dealt to the bead that hangs in that place as so many follow the first.
    #[must_use]
    pub fn hanging(self, below: usize) -> Self {
        let [train, bit] = self.place;
        Self { place: [train, bit.wrapping_add(number(below + 1) << 16)], ..self }
    }
}

fn number(place: usize) -> u32 {
    u32::try_from(place).unwrap_or(u32::MAX)
}

/// One of the pearls that differ; the first is as the pattern says, and so are all other beads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PearlVariant(u32);

impl PearlVariant {
    /// The variant that a bead of a finish is dealt.
    pub fn dealt(finish: Finish, Deal { strand, place: [train, bit] }: Deal) -> Self {
        let dealt = noise::unit(strand, train, bit) * f64::from(VARIANTS);
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

    /// A colour with its overtone, as light as it is.
    pub fn tinted(self, colour: Rgb) -> Rgb {
        let [r, g, b] = OVERTONES[self.at()];
        let Rgb(red, green, blue) = toned(colour, TONES[self.at()]);
        let part = |byte, share: f64| Rgb::BLACK.mixed(Rgb(byte, byte, byte), share).0;
        Rgb(part(red, r), part(green, g), part(blue, b))
    }

    /// The light as it falls on it.
    pub fn lit(self, light: Light) -> Light {
        Light { towards: light.towards.turned(TURNS[self.at()]), ..light }
    }
}
