//! What is said about what is kept on a shelf, and what names mean, in English.

use crate::remark::said::shelves::Shelves;

/// What was found.
pub fn headline(said: &Shelves) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Shelves) -> String {
    match *said {}
}
