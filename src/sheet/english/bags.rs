//! Labels for kits, in English.

use super::heading::numbered;
use crate::english::commas;

/// Which bag of how many a label is for, and which of how many labels of it this is.
pub fn bag(bag: u32, bags: u32, [label, labels]: [usize; 2]) -> String {
    let part = if labels > 1 { format!(", label {label} of {labels}") } else { String::new() };
    format!("bag {bag} of {bags}{part}")
}

/// The title of a page of labels.
pub fn labels_title(number: usize, count: usize) -> String {
    numbered("Labels for kits", number, count)
}

/// What a page of labels shows: of which kits, and for which bags.
pub fn labels_shown<'a>(labels: impl Iterator<Item = [&'a str; 2]>) -> String {
    let names: Vec<_> = labels.map(commas).collect();
    format!("Labels to cut apart: {}.", names.join("; "))
}
