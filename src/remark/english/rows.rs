//! What is said about rows that are worked out, in English.

use crate::remark::said::rows::Rows;

/// What was found.
pub fn headline(said: &Rows) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Rows) -> String {
    match *said {}
}
