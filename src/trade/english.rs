//! What the trade's tables say, in English.

use super::bodies::{Basis, SOURCE, Sex};

/// What a girth is taken from, and whether that is assumed.
#[must_use]
pub fn basis(basis: Basis, assumed: bool) -> String {
    let (sex, percentile) = match basis {
        Basis::Measured => return "as given".to_owned(),
        Basis::Child => return "a child of about eight, guessed: measure the child".to_owned(),
        Basis::Table(Sex::Woman, percentile) => ("woman", percentile),
        Basis::Table(Sex::Man, percentile) => ("man", percentile),
    };
    format!("{}{sex}, percentile {percentile} ({SOURCE})", if assumed { "assumed: " } else { "" })
}
