//! The pattern as written: every value with its place.
//!
//! [`read`] turns a source into a [`Pattern`] and remarks. Names are not looked up here: whether a
//! strand's beads exist is the business of [`crate::design`].

mod allow;
pub mod bounds;
mod dict;
pub mod edit;
mod items;
mod mend;
mod model;
pub(crate) mod node;
mod record;
mod rows;
mod swap;
mod values;
mod words;

use crate::remark::plain::Part;
use crate::remark::{Code, Remark};
use crate::source::{At, Place, Source};

use node::{Node, Tree, Value};

pub use dict::Dict;
pub use items::{Item, Links, Repeat, Times};
pub use model::*;
pub use record::{Read, Reader};
pub use rows::{Apart, Fade, Graduate, Random, Row};
pub use values::{BeadSize, Body, Measured, Whole, Within};
pub use words::{CordKind, Drilled, FindingKind, Finish, Kind, Outline, Settle, Shape, Skill, SoldBy};

/// The version of the pattern language that is read.
pub const VERSION: u32 = 1;

/// Reads a pattern. Without errors among the remarks there is a pattern.
#[must_use]
pub fn read(source: &Source) -> (Option<Pattern>, Vec<Remark>) {
    let draft = draft(source);
    (draft.pattern.filter(|_| draft.remarks.is_empty()), draft.remarks)
}

/// A pattern as far as it can be read.
pub struct Draft {
    /// The pattern, with holes where something cannot be read; nothing where all of it cannot.
    pub pattern: Option<Pattern>,
    /// What is wrong.
    pub remarks: Vec<Remark>,
    /// Where it has holes.
    pub holes: Holes,
}

/// Where a pattern cannot be read, so that nothing can be said of what depends on it.
#[derive(Clone, Debug, Default)]
pub struct Holes {
    /// Places at which something is wrong.
    places: Vec<Place>,
    /// Texts that were left out.
    lost: Vec<String>,
}

impl Holes {
    /// Whether there are any.
    #[must_use]
    pub fn any(&self) -> bool {
        !self.places.is_empty() || !self.lost.is_empty()
    }

    /// Whether there is one in what stands at a place.
    #[must_use]
    pub fn spoil(&self, place: Place) -> bool {
        self.places.iter().any(|hole| place.holds(*hole))
    }

    /// Whether a word stands in what was left out.
    #[must_use]
    pub fn swallow(&self, word: &str) -> bool {
        self.lost.iter().any(|lost| holds_word(lost, word))
    }
}

/// Whether a word stands in a text by itself, not as a part of a longer one.
fn holds_word(text: &str, word: &str) -> bool {
    let goes_on = |letter: Option<char>| letter.is_some_and(|letter| letter.is_alphanumeric() || "-_".contains(letter));
    text.match_indices(word)
        .any(|(at, _)| !goes_on(text[..at].chars().next_back()) && !goes_on(text[at + word.len()..].chars().next()))
}

/// Reads a pattern as far as it can be read, and says all that is wrong.
#[must_use]
pub fn draft(source: &Source) -> Draft {
    let Tree { root, mut remarks, lost } = node::parse(source);
    let texts = lost.iter().map(|place| source.slice(*place).to_owned()).collect();
    let mut reader = Reader::new(source, lost.clone());
    let pattern = root.and_then(|root| Pattern::read(&root, &mut reader));
    let places = reader.remarks.iter().filter_map(|remark| remark.place).chain(lost).collect();
    let holes = Holes { places, lost: texts };
    remarks.extend(reader.remarks);
    remarks.extend(pattern.as_ref().and_then(wrong_version));
    Draft { pattern, remarks, holes }
}

/// The parts of a pattern by name, each with its place: beads, cords, findings, strands and top-level keys.
#[must_use]
pub fn parts(source: &Source) -> Vec<Part> {
    let root = node::parse(source).root.map(|root| root.value);
    let Some(Value::Map(entries)) = root else { return Vec::new() };
    entries.iter().flat_map(|(key, node)| of_entry(key, node)).collect()
}

/// What the pattern writes for a key of an entry of a group, as for the `size` of the bead `reed`, without quotes.
#[must_use]
pub fn written(source: &Source, [group, id, key]: [&str; 3]) -> Option<String> {
    let mut node = node::parse(source).root?;
    for wanted in [group, id, key] {
        let Value::Map(entries) = node.value else { return None };
        node = entries.into_iter().find(|(at, _)| at.value == wanted)?.1;
    }
    match node.value {
        Value::Scalar(text) => Some(text),
        _ => None,
    }
}

/// A top-level key as a part, and the parts in it.
fn of_entry(key: &At<String>, node: &Node) -> Vec<Part> {
    let whole =
        |key: &At<String>, node: &Node| Place { start: key.place.start, end: node.place.end.max(key.place.end) };
    let mut parts = vec![(whole(key, node), key.value.clone())];
    match (&node.value, key.value.as_str()) {
        (Value::Map(entries), "beads" | "cords" | "findings") => {
            let one = key.value.trim_end_matches('s');
            parts.extend(entries.iter().map(|(id, node)| (whole(id, node), format!("{one} {}", id.value))));
        }
        (Value::List(strands), "strands") => {
            parts.extend((1..).zip(strands).map(|(at, node)| (node.place, strand_name(at, node))));
        }
        _ => {}
    }
    parts
}

fn strand_name(at: usize, node: &Node) -> String {
    let Value::Map(entries) = &node.value else { return format!("strand {at}") };
    let name = entries.iter().find(|(key, _)| key.value == "name").map(|(_, name)| &name.value);
    match name {
        Some(Value::Scalar(name)) => format!("strand {name}"),
        _ => format!("strand {at}"),
    }
}

fn wrong_version(pattern: &Pattern) -> Option<Remark> {
    let version = pattern.festoon.value.0;
    (version != VERSION && !pattern.festoon.place.is_nowhere()).then(|| {
        Remark::new(Code::Version, format!("this pattern is written in version {version} of the language"))
            .at(pattern.festoon.place)
            .help(format!("this program reads version {VERSION}: write `festoon: {VERSION}`"))
    })
}

/// The JSON Schema of the pattern language.
#[must_use]
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Pattern).to_value();
    bounds::describe(&mut schema);
    schema
}
