//! What is said about whether one thing fits in or on another, in English.

use crate::remark::said::fit::Fit;

/// What was found.
pub fn headline(said: &Fit) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Fit) -> String {
    match *said {}
}
