//! What is said about the shapes of beads and findings, in English.

use crate::remark::said::shaping::Shaping;

/// What was found.
pub fn headline(said: &Shaping) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Shaping) -> String {
    match *said {}
}
