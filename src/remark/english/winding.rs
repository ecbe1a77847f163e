//! What is said about torsades, coils and wraps, in English.

use crate::remark::said::winding::Winding;

/// What was found.
pub fn headline(said: &Winding) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Winding) -> String {
    match *said {}
}
