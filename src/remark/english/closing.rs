//! What is said about whether a piece closes and stays closed, in English.

use crate::remark::said::closing::Closing;

/// What was found.
pub fn headline(said: &Closing) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Closing) -> String {
    match *said {}
}
