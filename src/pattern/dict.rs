//! Groups of keys that the maker names herself.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use crate::source::At;

use super::bounds::Unit;
use super::node::Node;
use super::record::{Read, Reader};

/// A group of keys that the maker names herself, in the order written.
#[derive(Clone, Debug, Default)]
pub struct Dict<T> {
    /// The entries with their ids.
    pub entries: Vec<(At<String>, T)>,
    /// The ids of entries in which something cannot be read.
    pub broken: Vec<At<String>>,
    /// Whether the group itself cannot be read, so that any id may be one of its.
    pub lost: bool,
}

impl<T> Dict<T> {
    /// The entry of an id.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&T> {
        self.entries.iter().find(|(key, _)| key.value == id).map(|(_, value)| value)
    }

    /// The ids.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        self.entries.iter().map(|(key, _)| key.value.as_str())
    }
}

impl<T: Read> Read for Dict<T> {
    /// Reads a group; an entry in which anything is wrong is none, but its id is known.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let entries = reader.map(node, "a group of named entries")?;
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
