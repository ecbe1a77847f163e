//! What is said about packs, prices and lots, in English.

use crate::remark::said::buying::Buying;

/// What was found.
pub fn headline(said: &Buying) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Buying) -> String {
    match *said {}
}
