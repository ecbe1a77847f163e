//! Rows that are pressed along themselves, laid as long as they are.

use super::super::contact::Unrest;
use super::Bed;
use super::loops::Loops;
use super::rest::{Still, settle};
use crate::drape::program::Round;

/// What all pressed cord of a strand together is short of, in mm, that is not rounding.
const WHOLE: f64 = 1e-6;
/// The same of loops that were laid roughly.
const ROUGHLY: f64 = 1e-3;
/// What is shorter by this share of itself is pressed.
const SHORTER: f64 = 1e-6;

/// Loops that were laid roughly, laid to rest with all that is pressed as long as it is; shorter, where they come to no rest so. What is left, if they
/// come to none at all.
pub fn whole(mut loops: Loops, bed: &impl Bed, still: Still, work: usize) -> (Loops, Option<Unrest>) {
    let laid = |loops: &mut Loops| settle(loops, bed, still, work).err();
    let was_short = loops.short() > ROUGHLY;
    if !was_short {
        let unrest = laid(&mut loops);
        if unrest.is_some() || loops.short() <= WHOLE {
            return (loops, unrest);
        }
    }
    let mut whole = Loops { is_whole: true, ..loops.clone() };
    if laid(&mut whole).is_none() {
        whole.net.draw_out(&whole.cords.concat());
        return (whole, None);
    }
    let unrest = if was_short { laid(&mut loops) } else { None };
    (loops, unrest)
}

impl Loops {
    /// Presses what a round made shorter than it is, and no more what it pulls at, where all is as long as it is; whether there
    /// was any.
    pub fn press(&mut self, round: &Round<3>) -> bool {
        self.is_whole && self.net.press(self.cords.iter().flatten(), SHORTER, round)
    }
}
