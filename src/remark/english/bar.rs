//! What is said about bars and what holds several strands, in English.

use crate::remark::said::bar::Bar;

/// What was found.
pub fn headline(said: &Bar) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Bar) -> String {
    match *said {}
}
