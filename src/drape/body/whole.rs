//! Rows that are pressed along themselves, laid as long as they are.

use super::Bed;
use super::loops::Loops;
use super::rest::{Still, settle};
use crate::drape::program::Round;

/// What all pressed cord of a strand together is short of, in mm, that is not rounding.
pub const WHOLE: f64 = 1e-6;
/// What is shorter by this share of itself is pressed.
const SHORTER: f64 = 1e-6;

/// Loops at rest with all that is pressed as long as it is; as they are, where they come to no rest so.
pub fn whole(loops: Loops, bed: &impl Bed, still: Still, work: usize) -> Loops {
    let mut whole = Loops { is_whole: true, ..loops.clone() };
    if settle(&mut whole, bed, still, work).is_err() {
        return loops;
    }
    whole.net.draw_out(&whole.cords.concat());
    whole
}

impl Loops {
    /// Presses what a round made shorter than it is, and no more what it pulls at, where all is as long as it is; whether there
    /// was any.
    pub fn press(&mut self, round: &Round<3>) -> bool {
        self.is_whole && self.net.press(self.cords.iter().flatten(), SHORTER, round)
    }
}
