//! What is said about what stands where it may not, in English.

use crate::remark::said::spot::Spot;

/// What was found.
pub fn headline(said: &Spot) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Spot) -> String {
    match *said {}
}
