//! What is said about beads, cords and findings by themselves, in English.

use crate::remark::said::article::Article;

/// What was found.
pub fn headline(said: &Article) -> String {
    match *said {}
}

/// What to change.
pub fn help(said: &Article) -> String {
    match *said {}
}
