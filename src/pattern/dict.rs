//! Groups of keys that the maker names herself.

use std::borrow::Cow;
use std::collections::BTreeSet;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use crate::remark::said::wanted::Wanted;
use crate::source::At;

use super::bounds::Unit;
use super::node::Node;
use super::record::{Read, Reader};

/// A group of keys that the maker names herself, in the order written.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Dict<T> {
    /// The entries with their ids.
    pub entries: Vec<(At<String>, T)>,
    /// The ids of entries in which something cannot be read.
    pub broken: Vec<At<String>>,
    /// Whether the group itself cannot be read, so that any id may be one of its.
    pub lost: bool,
}

impl<T> Default for Dict<T> {
    fn default() -> Self {
        Self { entries: Vec::new(), broken: Vec::new(), lost: false }
    }
}

impl<T> Dict<T> {
    /// The entry of an id.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&T> {
        self.entries.iter().find(|(key, _)| key.value == id).map(|(_, value)| value)
    }

    /// The ids with their places, those of entries that cannot be read behind the others.
    pub fn keys(&self) -> impl Iterator<Item = &At<String>> {
        self.entries.iter().map(|(key, _)| key).chain(&self.broken)
    }

    /// Whether nothing was written.
    #[must_use]
    pub const fn is_unwritten(&self) -> bool {
        self.entries.is_empty() && self.broken.is_empty() && !self.lost
    }

    /// Takes from a shelf's group the entries whose ids are not known yet.
    pub fn shelve(&mut self, shelf: Self, known: &BTreeSet<String>) {
        let is_new = |key: &At<String>| !known.contains(&key.value);
        self.entries.extend(shelf.entries.into_iter().filter(|(key, _)| is_new(key)));
        self.broken.extend(shelf.broken.into_iter().filter(is_new));
        self.lost |= shelf.lost;
    }

    /// The ids.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        self.entries.iter().map(|(key, _)| key.value.as_str())
    }
}

impl<T: Read> Read for Dict<T> {
    /// Reads a group; an entry in which anything is wrong is none, but its id is known.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let entries = reader.map(node, Wanted::Entries)?;
        let mut kept = reader.keeps(Unit::Entries, entries.len() as f64, node.place);
        for (key, _) in entries {
            kept &= reader.keeps(Unit::Signs, key.value.chars().count() as f64, key.place);
        }
        let mut read = Self { entries: Vec::new(), broken: Vec::new(), lost: !kept };
        for (key, value) in entries.iter().filter(|_| kept) {
            let wrong = reader.remarks.len();
            match T::read(value, reader).filter(|_| reader.remarks.len() == wrong) {
                Some(value) => read.entries.push((key.clone(), value)),
                None => read.broken.push(key.clone()),
            }
        }
        Some(read)
    }

    /// Nothing is written where all stands on a shelf.
    fn absent() -> Option<Self> {
        Some(Self::default())
    }

    fn hole() -> Option<Self> {
        Some(Self { entries: Vec::new(), broken: Vec::new(), lost: true })
    }
}

impl<T: JsonSchema> JsonSchema for Dict<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("Dict_{}", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let inner = generator.subschema_for::<T>();
        json_schema!({ "type": "object", "additionalProperties": inner })
    }
}
