//! What is said about shelves, in English.

use crate::remark::said::shelves::{NoShelf, Shelving};

/// What was found.
pub fn headline(said: &Shelving) -> String {
    match said {
        Shelving::NoPattern => "this file is a shelf: it has neither `title`, `kind` nor `strands`".to_owned(),
        Shelving::Twice { name } => format!("the shelf {name} is named twice"),
        Shelving::Unusable { name: Some(name), why } => format!("the shelf {name} cannot be used: {}", reason(why)),
        Shelving::Unusable { name: None, why } => format!("the shelf cannot be used: {}", reason(why)),
        Shelving::TwoCurrencies { id, told, own } => {
            format!("the price of `{id}` is told in {told}, and the piece's prices in {own}")
        }
    }
}

/// What to change.
pub fn help(said: &Shelving) -> String {
    match said {
        Shelving::NoPattern => "give a pattern that names it with `shelf:`; `festoon new` begins one",
        Shelving::Twice { .. } => "name it once",
        Shelving::Unusable { .. } => {
            "name a YAML file that stands with the pattern, or give it with `--shelf`; `festoon new shelf` begins one"
        }
        Shelving::TwoCurrencies { .. } => {
            "write its price in the pattern's currency, in the pattern itself or on a shelf of that currency"
        }
    }
    .to_owned()
}

fn reason(why: &NoShelf) -> &str {
    match why {
        NoShelf::NotGiven => "it was not given",
        NoShelf::Pattern => "it is a pattern and no shelf",
        NoShelf::Unread(reason) => reason,
    }
}
