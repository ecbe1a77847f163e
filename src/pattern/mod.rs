//! The pattern as written: every value with its place.
//!
//! [`read`] turns a source into a [`Pattern`] and remarks. Names are not looked up here: whether a
//! strand's beads exist is the business of [`crate::design`].

mod allow;
pub mod bounds;
mod dict;
pub mod edit;
mod english;
mod items;
mod mend;
mod model;
pub(crate) mod node;
mod record;
mod rows;
mod shelf;
mod swap;
mod used;
mod values;
mod words;

use std::collections::BTreeMap;

use serde_json::json;

use crate::remark::Remark;
use crate::remark::plain::{Landmark, PatternPart};
use crate::remark::said::language::{Language, Written};
use crate::source::{At, Place, Source};
use crate::units::Telling;

use node::{Node, Tree, Value};

pub use dict::Dict;
pub use items::{Dangle, HungOn, Item, Links, Mirror, Repeat, Run, Stop, Times};
pub use model::*;
pub use record::{Read, Reader};
pub use rows::{Apart, Fade, Graduate, Random, Row};
pub use shelf::{Shelf, Shelves, is_shelf, read_shelf, shelves};
pub use values::{BeadSize, Body, Measured, Whole, Within};
pub use words::{CordKind, Drilled, FindingKind, Finish, Kind, Open, Outline, Settle, Shape, Skill, SoldBy};

/// The version of the pattern language that is read.
pub const VERSION: u32 = 1;

/// Reads a pattern. Without errors among the remarks there is a pattern.
#[must_use]
pub fn read(source: &Source) -> (Option<Pattern>, Vec<Remark>) {
    let draft = draft(source);
    (draft.pattern.filter(|_| draft.remarks.is_empty()), draft.remarks)
}

/// A pattern as far as it can be read.
#[non_exhaustive]
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
    /// Adds those of a file: where something is wrong, and what was left out.
    fn add(&mut self, wrong: &[Remark], lost: Vec<Place>, source: &Source) {
        self.lost.extend(lost.iter().map(|place| source.slice(*place).to_owned()));
        self.places.extend(wrong.iter().filter_map(|remark| remark.place).chain(lost));
    }

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

impl Pattern {
    /// How the piece is told.
    #[must_use]
    pub fn telling(&self) -> Telling {
        Telling { units: self.units.unwrap_or_default(), currency: self.currency.clone() }
    }
}

/// Reads a pattern as far as it can be read, with the shelves beside it, and says all that is wrong.
#[must_use]
pub fn draft(source: &Source) -> Draft {
    let Tree { root, mut remarks, lost } = node::parse(source);
    if let Some(remark) = root.as_ref().filter(|_| lost.is_empty()).and_then(shelf::no_pattern) {
        remarks.push(remark);
        return Draft { pattern: None, remarks, holes: Holes::default() };
    }
    let mut reader = Reader::new(source, lost.clone());
    let pattern = root.as_ref().and_then(|root| Pattern::read(root, &mut reader));
    let undefined = pattern.as_ref().and_then(|pattern| nowhere_defined(pattern, root.as_ref()?, source));
    reader.remarks.extend(undefined);
    let mut holes = Holes::default();
    holes.add(&reader.remarks, lost, source);
    remarks.extend(reader.remarks);
    remarks.extend(pattern.as_ref().and_then(|pattern| wrong_version(Written::Pattern, &pattern.festoon)));
    let mut draft = Draft { pattern, remarks, holes };
    shelf::stock(&mut draft, source);
    draft
}

/// A remark about a pattern that neither defines beads, or cords, nor names a shelf that may.
fn nowhere_defined(pattern: &Pattern, root: &Node, source: &Source) -> Option<Remark> {
    if pattern.shelf.is_some() || !source.shelves().is_empty() {
        return None;
    }
    let beads = pattern.beads.is_unwritten() && pattern.strings_beads();
    let groups = [("beads", beads), ("cords", pattern.cords.is_unwritten() && pattern.names_cords())];
    let (key, _) = groups.into_iter().find(|(key, unwritten)| *unwritten && root.entry(key).is_none())?;
    let first = source.slice(root.place).lines().next().map_or(0, str::len);
    let place = Place { end: root.place.start + first, ..root.place };
    Some(Remark::new(Language::MissingGroup { key }).at(place))
}

/// The parts of a pattern and its shelves, each with its place: beads, cords, findings, assorted, strands and
/// top-level keys.
#[must_use]
pub fn parts(source: &Source) -> Vec<Landmark> {
    source.files().flat_map(parts_of_file).collect()
}

fn parts_of_file(file: &Source) -> Vec<Landmark> {
    let root = node::parse(file).root.map(|root| root.value);
    let Some(Value::Map(entries)) = root else { return Vec::new() };
    entries.iter().flat_map(|(key, node)| of_entry(key, node)).collect()
}

/// What the pattern and its shelves write for a key of each entry of a group, as for the `size` of each bead: by id,
/// without quotes. The first entry of an id is the one that counts.
#[must_use]
pub fn written(source: &Source, group: &str, key: &str) -> BTreeMap<String, String> {
    let files: Vec<_> = source.files().collect();
    files.into_iter().rev().flat_map(|file| written_in(file, group, key)).collect()
}

fn written_in(file: &Source, group: &str, key: &str) -> BTreeMap<String, String> {
    let root = node::parse(file).root;
    let Some(Value::Map(entries)) = root.as_ref().and_then(|root| root.entry(group)).map(|node| &node.value) else {
        return BTreeMap::new();
    };
    let text = |(id, node): &(At<String>, Node)| match &node.entry(key)?.value {
        Value::Scalar(text) => Some((id.value.clone(), text.clone())),
        _ => None,
    };
    entries.iter().filter_map(text).collect()
}

/// A top-level key as a part, and the parts in it.
fn of_entry(key: &At<String>, node: &Node) -> Vec<Landmark> {
    let mut parts = vec![(span(key, node), PatternPart::Key(key.value.clone()))];
    match (&node.value, key.value.as_str()) {
        (Value::Map(entries), "beads" | "cords" | "findings" | "assorted") => {
            let part = |id: &str| PatternPart::Entry { group: key.value.clone(), id: id.to_owned() };
            parts.extend(entries.iter().map(|(id, node)| (span(id, node), part(&id.value))));
        }
        (Value::List(strands), "strands") => {
            parts.extend((1..).zip(strands).map(|(at, node)| (node.place, strand_part(at, node))));
        }
        _ => {}
    }
    parts
}

/// An entry from its key to its end.
fn span(key: &At<String>, node: &Node) -> Place {
    Place { end: node.place.end.max(key.place.end), ..key.place }
}

fn strand_part(at: usize, node: &Node) -> PatternPart {
    match node.entry("name").map(|name| &name.value) {
        Some(Value::Scalar(name)) => PatternPart::Strand(name.clone()),
        _ => PatternPart::Nameless(at),
    }
}

fn wrong_version(of: Written, version: &At<Whole>) -> Option<Remark> {
    let At { value: Whole(version), place } = *version;
    let wrong = Language::Version { of, version, read: VERSION };
    (version != VERSION && !place.is_nowhere()).then(|| Remark::new(wrong).at(place))
}

/// The JSON Schema of the pattern language.
#[must_use]
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Pattern).to_value();
    bounds::describe("Pattern", &mut schema);
    schema["required"] = json!(["festoon", "title", "kind", "strands"]);
    schema["anyOf"] = json!([{ "required": ["beads"] }, { "required": ["cords"] }, { "required": ["shelf"] }]);
    schema
}

/// The JSON Schema of a shelf.
#[must_use]
pub fn shelf_schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Shelf).to_value();
    bounds::describe("Shelf", &mut schema);
    schema["required"] = json!(["festoon"]);
    schema
}
