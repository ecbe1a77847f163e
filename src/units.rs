//! Quantities: [`Length`], [`Mass`], [`Force`] and [`Money`], with parse and print.
//!
//! Inside the program lengths are millimetres, masses grams, forces newtons and money whole
//! coins of the smallest kind. A quantity can only be made from a finite number, so that later
//! code never meets NaN or infinity.

mod bounded;
mod english;
mod number;
mod parse;
mod print;

use std::iter::Sum;
use std::ops::{Add, Div, Mul, Neg, Sub};

pub use bounded::Unit;
pub use english::ranged;
pub use number::{as_printed, eighths, enough, figures, fraction, grouped, sixteenths, trimmed};
pub use parse::{UnitError, Wanted, WithUnit, degrees, hours, stiffness, time, turns};
pub use print::{Telling, UnitStyle};

/// One international inch in millimetres, exact since 1959 (international yard and pound agreement).
pub const INCH: f64 = 25.4;
/// One kilogram-force in newtons, exact (3rd CGPM, 1901: standard gravity 9.806 65 m/s²).
pub const KILOGRAM_FORCE: f64 = 9.806_65;
/// One pound-force in newtons, exact: 0.453 592 37 kg at standard gravity.
pub const POUND_FORCE: f64 = 0.453_592_37 * KILOGRAM_FORCE;
/// Weight in newtons of one gram at standard gravity.
pub const NEWTON_PER_GRAM: f64 = KILOGRAM_FORCE / 1000.0;

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $unit:ident, $unit_doc:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing.
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("Makes one from ", $unit_doc, ", which must be finite.")]
            #[must_use]
            pub const fn $unit(value: f64) -> Self {
                debug_assert!(value.is_finite());
                Self(value)
            }

            #[doc = concat!("The value in ", $unit_doc, ".")]
            #[must_use]
            pub const fn value(self) -> f64 {
                self.0
            }

            /// The larger of the two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                if other.0 > self.0 { other } else { self }
            }

            /// The smaller of the two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                if other.0 < self.0 { other } else { self }
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
                Self(parts.map(|part| part.0).sum())
            }
        }
    };
}

quantity!(
    /// A length. `Length::mm(25.4)` is an inch.
    Length, mm, "millimetres"
);
quantity!(
    /// A mass.
    Mass, grams, "grams"
);
quantity!(
    /// A force, such as the breaking strength of a cord.
    Force, newtons, "newtons"
);

impl Length {
    /// Makes a length from inches.
    #[must_use]
    pub const fn inches(value: f64) -> Self {
        Self::mm(value * INCH)
    }
}

impl Mass {
    /// The mass's weight at standard gravity.
    #[must_use]
    pub fn weight(self) -> Force {
        Force::newtons(self.0 * NEWTON_PER_GRAM)
    }
}

/// An amount of money in whole coins of the smallest kind (cents, pence); never a fraction.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(i64);

impl Money {
    /// No money.
    pub const ZERO: Self = Self(0);

    /// Makes an amount from hundredths of the currency's main unit.
    #[must_use]
    pub const fn coins(coins: i64) -> Self {
        Self(coins)
    }

    /// The amount in hundredths of the currency's main unit.
    #[must_use]
    pub const fn value(self) -> i64 {
        self.0
    }

    /// `part / whole` of the amount, rounded half up to a whole coin; 0 where `whole` is 0.
    #[must_use]
    pub fn share(self, part: f64, whole: f64) -> Self {
        if whole > 0.0 { self.times(part / whole) } else { Self::ZERO }
    }

    /// The amount times a factor, rounded half up to a whole coin.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "`as` saturates, which suits an absurd price")]
        Self((self.0 as f64 * factor + 0.5).floor() as i64)
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Mul<u32> for Money {
    type Output = Self;
    fn mul(self, count: u32) -> Self {
        Self(self.0.saturating_mul(i64::from(count)))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
        parts.fold(Self::ZERO, Add::add)
    }
}
