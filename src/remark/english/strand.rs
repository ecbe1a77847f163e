//! What is said about strands, their lengths and their lists, in English.

use crate::remark::said::strand::Strand;

/// What was found.
pub fn headline(said: &Strand) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Strand) -> String {
    match *said {}
}
