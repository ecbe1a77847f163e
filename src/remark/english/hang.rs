//! What is said about how strands hang and lie, in English.

use crate::remark::said::hang::Hang;

/// What was found.
pub fn headline(said: &Hang) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Hang) -> String {
    match *said {}
}
