//! What is said about what is at hand, in English.

use crate::remark::said::stash::Stash;

/// What was found.
pub fn headline(said: &Stash) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Stash) -> String {
    match *said {}
}
