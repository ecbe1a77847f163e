//! What is said about what closes a piece, as it is written, in English.

use crate::remark::said::closure::Closure;

/// What was found.
pub fn headline(said: &Closure) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Closure) -> String {
    match *said {}
}
