//! What is said about how a pattern is written, in English.

use crate::english::commas;
use crate::remark::said::language::{Language, Written};
use crate::remark::said::wanted::Wanted;

use super::wanted::{found, wanted};
use super::words::meant_or;
use super::{quantity, slip};

/// What was found.
pub fn headline(said: &Language) -> String {
    match said {
        Language::TooLarge { file } => format!("{file} is larger than 4 MiB"),
        Language::NotUtf8 { file } => format!("{file} is not text in UTF-8"),
        Language::Empty => "the file is empty".to_owned(),
        Language::TooDeep => "the file is nested deeper or is larger than any pattern".to_owned(),
        Language::RepeatsItself => "the file repeats itself beyond any pattern".to_owned(),
        Language::Unreadable => "the file cannot be read from here on".to_owned(),
        Language::Slip(slip) => slip::headline(slip),
        Language::KeyTwice { key } => format!("the key `{key}` stands twice here"),
        Language::Version { of, version, .. } => {
            format!("this {} is written in version {version} of the language", written(*of))
        }
        Language::WrongKind { found: there, wanted: meant } => {
            format!("{} stands where {} is meant", found(*there), wanted(*meant))
        }
        Language::NoQuantity { text, why } => format!("`{text}` {}", quantity::reason(why)),
        Language::NearlyFill { text, fill } => format!("`{text}` is neither a whole number nor `{fill}`"),
        Language::OutOfBounds { key, unit, least, most, number } => {
            format!("`{key}` takes {}, and this is {}", unit.span(*least, *most), unit.said(*number))
        }
        Language::UnknownWord { text, wanted: meant, .. } => format!("`{text}` is not {}", wanted(*meant)),
        Language::UnknownKey { key, .. } => format!("there is no key `{key}` here"),
        Language::UnknownItem { .. } => "this entry of the bead list is none that festoon knows".to_owned(),
        Language::MissingKey { key } | Language::MissingGroup { key } => format!("`{key}` is not written"),
        Language::DecimalComma { whole, decimals } => {
            format!("a comma ends the value `{whole}`, and `{decimals}` stands alone")
        }
        Language::HangerLength { .. } => "a dangle hangs `on` the id of one finding, without a length".to_owned(),
        Language::UnknownCode { name, .. } => format!("no warning or advice has the code `{name}`"),
        Language::ErrorAllowed { code } => format!("`{}` is an error, which cannot be allowed", code.name()),
        Language::IdleAllow { code } => format!("`allow: {}` silences nothing", code.name()),
    }
}

/// What to change.
pub fn help(said: &Language) -> String {
    match said {
        Language::TooLarge { .. } | Language::NotUtf8 { .. } => "give a pattern, a YAML text file".to_owned(),
        Language::Empty => "write a pattern; `festoon new` prints one to start from".to_owned(),
        Language::TooDeep => "a pattern needs about ten levels".to_owned(),
        Language::RepeatsItself => "write the beads out, or use `repeat`".to_owned(),
        Language::Unreadable => "look at this line and at the one above: is there a colon, comma, bracket or quote \
                                 missing, or is a line not indented like its neighbours?"
            .to_owned(),
        Language::Slip(slip) => slip::help(slip),
        Language::KeyTwice { .. } => "keep one of the two".to_owned(),
        Language::Version { read, .. } => format!("this program reads version {read}: write `festoon: {read}`"),
        Language::WrongKind { wanted: meant, .. } => format!("write {} here{}", wanted(*meant), like(*meant)),
        Language::NoQuantity { why, .. } => quantity::help(why),
        Language::NearlyFill { fill, .. } => meant_or(Some(fill), String::new),
        Language::OutOfBounds { .. } => "check the number and its unit".to_owned(),
        Language::UnknownWord { words, meant, .. } => {
            meant_or(meant.as_deref(), || format!("write one of: {}", commas(words)))
        }
        Language::UnknownKey { keys, meant, .. } => {
            meant_or(meant.as_deref(), || format!("the keys here are: {}", commas(keys)))
        }
        Language::UnknownItem { groups, meant } => {
            meant_or(meant.as_deref(), || format!("write a bead (`4 reed`) or a group with {}", commas(groups)))
        }
        Language::MissingKey { key } => format!("add `{key}:`"),
        Language::MissingGroup { key } => format!("add `{key}:`, or `shelf:` with the file in which they stand"),
        Language::DecimalComma { whole, decimals } => format!("write decimals with a point: {whole}.{decimals}"),
        Language::HangerLength { measured } => hanger(measured.as_ref()),
        Language::UnknownCode { meant, .. } => {
            meant_or(meant.as_deref(), || "`festoon explain` lists all codes".to_owned())
        }
        Language::ErrorAllowed { .. } => "take it out, and mend what it is about".to_owned(),
        Language::IdleAllow { .. } => "take it out".to_owned(),
    }
}

const fn written(of: Written) -> &'static str {
    match of {
        Written::Pattern => "pattern",
        Written::Shelf => "shelf",
    }
}

/// How a list is written, where one is meant.
fn like(wanted: Wanted) -> &'static str {
    if wanted == Wanted::List { ": [ … ], or a line with a dash for each" } else { "" }
}

fn hanger(measured: Option<&(String, String)>) -> String {
    match measured {
        Some((id, length)) => format!("write `on: {id}`, and `length: {length}` with the finding `{id}`"),
        None => "write the id of a head pin, eye pin, bail, jump ring or chain, like `on: pin`".to_owned(),
    }
}
