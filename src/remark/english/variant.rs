//! What is said about sizes, colourways, and whom a piece is made for, in English.

use crate::remark::said::variant::Variant;

/// What was found.
pub fn headline(said: &Variant) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Variant) -> String {
    match *said {}
}
