//! What is said about how a pattern is written, in English.

use crate::remark::said::language::Language;

/// What was found.
pub fn headline(said: &Language) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Language) -> String {
    match *said {}
}
