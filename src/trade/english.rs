//! What the trade's tables say, in English.

use super::bodies::{Basis, SOURCE, Sex};
use super::ease::RingFit;
use super::lengths::NecklaceName;

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

/// What the trade calls a necklace's length, which is how it is told to programs too.
#[must_use]
pub const fn length_name(name: NecklaceName) -> &'static str {
    match name {
        NecklaceName::Collar => "collar",
        NecklaceName::Choker => "choker",
        NecklaceName::Princess => "princess",
        NecklaceName::Matinee => "matinee",
        NecklaceName::Opera => "opera",
        NecklaceName::Rope => "rope",
    }
}

/// How a bracelet sits.
#[must_use]
pub const fn sits(fit: RingFit) -> &'static str {
    match fit {
        RingFit::Close => "close",
        RingFit::Easy => "easy",
        RingFit::Roomy => "roomy",
    }
}
