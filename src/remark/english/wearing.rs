//! What is said about who wears a piece, and who reads of it, in English.

use crate::remark::said::wearing::Wearing;

/// What was found.
pub fn headline(said: &Wearing) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Wearing) -> String {
    match *said {}
}
