//! A strand's knots, and what they take up of its cord.

use crate::trade::usual;
use crate::units::Length;

use super::model::{Strand, What};

impl Strand {
    /// How many knots are tied among what is strung.
    #[must_use]
    pub fn knots(&self) -> u32 {
        self.bits().map(|bit| u32::from(bit.what == What::Knot)).sum()
    }

    /// Cord that the knots among what is strung take up, all legs together.
    #[must_use]
    pub fn take_up_between(&self) -> Length {
        *self.take_up * f64::from(self.knots())
    }

    /// Cord that the knots at its ends take up, all legs together.
    #[must_use]
    pub fn end_take_up(&self) -> Length {
        self.ends.iter().filter_map(|end| end.take_up).sum()
    }

    /// Cord that all its knots take up, all legs together.
    #[must_use]
    pub fn in_knots(&self) -> Length {
        self.take_up_between() + self.end_take_up()
    }

    /// What some knots tied to try make its cord shorter, all legs together.
    #[must_use]
    pub fn trial_take_up(&self) -> Length {
        *self.take_up * f64::from(usual::TRIAL_KNOTS)
    }

    /// Cord to tie those knots in, where there are knots among what is strung.
    #[must_use]
    pub fn trial(&self) -> Option<Length> {
        let held = usual::TRIAL_HELD * f64::from(self.legs);
        (self.take_up_between() > Length::ZERO).then(|| self.trial_take_up() + held)
    }
}
