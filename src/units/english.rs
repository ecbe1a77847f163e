//! Between what numbers lie, in English.

use super::Unit;

impl Unit {
    /// The least and the most in words: `0.02 mm to 20 m`, `at most 200 entries`.
    #[must_use]
    pub fn span(self, least: f64, most: f64) -> String {
        match self {
            Self::Signs | Self::Entries => format!("at most {}", self.said(most)),
            _ => format!("{} to {}", self.said(least), self.said(most)),
        }
    }

    /// A number with its unit: `0.02 mm`, `20 m`, `200 entries`.
    #[must_use]
    pub fn said(self, number: f64) -> String {
        match self {
            Self::Signs => format!("{number} signs"),
            Self::Entries => format!("{number} entries"),
            _ => self.measured(number),
        }
    }
}

/// The least and the most as they are printed, or one where both are printed alike: `16 ½ to 18 ½`.
#[must_use]
pub fn ranged([least, most]: [String; 2]) -> String {
    if least == most { least } else { format!("{least} to {most}") }
}
