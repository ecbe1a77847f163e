//! What is said about what is at hand, in English.

use super::quantity::{unit_help, unit_reason};
use super::wanted::found;
use super::words::meant_or;
use crate::remark::said::stash::Stash;

/// What was found.
pub fn headline(said: &Stash) -> String {
    match said {
        Stash::NotIds { found: there } => format!("the stash is {} and not ids with amounts", found(*there)),
        Stash::NotAnAmount { id, found: there, .. } => {
            format!("the amount of `{id}` in the stash is {}", found(*there))
        }
        Stash::Unused { id, .. } => format!("the stash has `{id}`, which this pattern does not use"),
        Stash::BadLength { id, text, error } => {
            format!("the length of `{id}` in the stash, `{text}`, {}", unit_reason(error))
        }
        Stash::BadCount { id, text } => format!("the count of `{id}` in the stash, `{text}`, is not a whole number"),
    }
}

/// What to change.
pub fn help(said: &Stash) -> String {
    match said {
        Stash::NotIds { .. } => "write one a line, like `reed: 120` or `wire: 3 m`".to_owned(),
        Stash::NotAnAmount { by_length: true, .. } => "write a length, like `wire: 3 m`".to_owned(),
        Stash::NotAnAmount { by_length: false, .. } => "write a count, like `reed: 120`".to_owned(),
        Stash::Unused { meant, .. } => meant_or(Some(meant), String::new),
        Stash::BadLength { error, .. } => unit_help(error),
        Stash::BadCount { id, .. } => format!("write how many there are, like `{id}: 120`"),
    }
}
