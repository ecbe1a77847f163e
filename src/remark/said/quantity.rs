//! Why a text is not the quantity that is meant.

use crate::units::UnitError;

/// Why a text is not the quantity that is meant.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoQuantity {
    /// It has no number or unit such as is wanted.
    Unit(UnitError),
    /// It is 0 where something is counted.
    NoneAtAll,
    /// It counts more than a piece may hold.
    TooMany {
        /// How many that is.
        most: u32,
    },
    /// It is no whole number of at least 1.
    Whole,
    /// It is no whole number.
    WholeOrNone,
    /// It is no number above 0.
    Factor,
    /// It has a percent sign behind what is no number.
    Share,
    /// It is neither yes nor no.
    YesNo,
    /// It is no colour.
    Colour,
    /// It does not say what so many measure.
    Measurement,
    /// It does not say how near a length must be.
    Margin,
    /// It is no body of the table.
    Body,
    /// It is no way to print lengths.
    UnitStyle,
}

impl From<UnitError> for NoQuantity {
    fn from(error: UnitError) -> Self {
        Self::Unit(error)
    }
}
