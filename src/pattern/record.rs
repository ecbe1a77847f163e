//! Reading a tree into typed records, gathering every error on the way.
//!
//! [`record!`] declares a struct once; its fields are its keys. The same declaration reads the
//! tree, knows which keys exist (for "did you mean") and gives the JSON Schema.

use crate::remark::{Code, Remark, suggest};
use crate::source::{At, Place, Source};
use crate::units::UnitError;

use super::bounds::{self, Unit};
use super::node::{Node, Value};

/// Gathers remarks while a tree is read.
pub struct Reader<'a> {
    source: &'a Source,
    /// The group and the key of it whose value is read.
    key: (&'static str, &'static str),
    /// What was wrong so far.
    pub remarks: Vec<Remark>,
}

/// A value that can be read from a node.
pub trait Read: Sized {
    /// Reads it, or leaves a remark and gives nothing.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self>;

    /// What it is when its key is not written; nothing where it must be.
    fn absent() -> Option<Self> {
        None
    }
}

/// A value that tells numbers, each in a unit, which its key's bounds hold.
pub trait Told {
    /// The numbers.
    fn numbers(&self) -> Vec<(Unit, f64)> {
        Vec::new()
    }
}

impl<'a> Reader<'a> {
    /// Starts with no remarks.
    pub const fn new(source: &'a Source) -> Self {
        Self { source, key: ("", ""), remarks: Vec::new() }
    }

    /// Leaves a remark.
    pub fn refuse<T>(&mut self, remark: Remark) -> Option<T> {
        self.remarks.push(remark);
        None
    }

    /// The text of a scalar.
    pub fn scalar<'n>(&mut self, node: &'n Node, meant: &str) -> Option<&'n str> {
        match &node.value {
            Value::Scalar(text) => Some(text),
            other => self.wrong_kind(other.what(), meant, node.place),
        }
    }

    /// The entries of a map.
    pub fn map<'n>(&mut self, node: &'n Node, meant: &str) -> Option<&'n [(At<String>, Node)]> {
        match &node.value {
            Value::Map(entries) => Some(entries),
            other => self.wrong_kind(other.what(), meant, node.place),
        }
    }

    /// Leaves a remark that something of another kind was meant.
    pub fn wrong_kind<T>(&mut self, found: &str, meant: &str, place: Place) -> Option<T> {
        let remark = Remark::new(Code::WrongKind, format!("{found} stands where {meant} is meant")).at(place);
        let like = if meant == "a list" { ": [ … ], or a line with a dash for each" } else { "" };
        self.refuse(remark.help(format!("write {meant} here{like}")))
    }

    /// Reads a quantity from a scalar's text, and keeps to its key's bounds.
    pub fn quantity<T: Told>(
        &mut self,
        node: &Node,
        meant: &str,
        parse: impl Fn(&str) -> Result<T, UnitError>,
    ) -> Option<T> {
        let text = self.scalar(node, meant)?;
        let value = parse(text).map_err(|error| self.refuse_quantity(text, error, node.place)).ok()?;
        let kept = value.numbers().into_iter().all(|(unit, number)| self.keeps(unit, number, node.place));
        kept.then_some(value)
    }

    fn refuse_quantity(&mut self, text: &str, error: UnitError, place: Place) {
        let shown: String = text.chars().take(40).collect();
        let remark = Remark::new(Code::BadQuantity, format!("`{shown}` {}", error.reason));
        self.remarks.push(remark.at(place).help(error.help));
    }

    /// Whether a number of the key that is read lies within its bounds; leaves a remark if not.
    pub fn keeps(&mut self, unit: Unit, number: f64, place: Place) -> bool {
        let (record, key) = self.key;
        let Some(bound) = bounds::bound(record, key, unit).filter(|bound| bound.forbids(number)) else { return true };
        let remark = Remark::new(
            Code::OutOfBounds,
            format!("`{key}` takes {}, and this is {}", bound.words(), bounds::said(number, unit)),
        );
        self.remarks.push(remark.at(place).help("check the number and its unit"));
        false
    }

    /// Finds a word in a closed list.
    pub fn word<T: Copy>(&mut self, node: &Node, what: &str, all: &[T], word: impl Fn(T) -> &'static str) -> Option<T> {
        let text = self.scalar(node, what)?;
        if let Some(found) = all.iter().copied().find(|one| word(*one) == text) {
            return Some(found);
        }
        let words: Vec<_> = all.iter().map(|one| word(*one)).collect();
        let help = suggest(text, words.iter().copied(), || format!("write one of: {}", words.join(", ")));
        self.refuse(Remark::new(Code::UnknownWord, format!("`{text}` is not {what}")).at(node.place).help(help))
    }

    /// Reads the value of a key of a record, or what stands for it when it is not written.
    pub fn field<T: Read>(
        &mut self,
        entries: &[(At<String>, Node)],
        (name, key): (&'static str, &'static str),
        record: &Node,
    ) -> Option<T> {
        match entries.iter().find(|(at, _)| at.value == key) {
            Some((_, node)) => self.read_as((name, key), node),
            None => T::absent().or_else(|| {
                let remark = Remark::new(Code::MissingKey, format!("`{key}` is not written"));
                self.refuse(remark.at(self.first_line(record.place)).help(format!("add `{key}:`")))
            }),
        }
    }

    fn read_as<T: Read>(&mut self, key: (&'static str, &'static str), node: &Node) -> Option<T> {
        let outer = std::mem::replace(&mut self.key, key);
        let value = T::read(node, self);
        self.key = outer;
        value
    }

    /// Leaves a remark for every key that the record does not have.
    pub fn known_keys(&mut self, entries: &[(At<String>, Node)], keys: &[&str]) {
        for (key, _) in entries.iter().filter(|(key, _)| !keys.contains(&key.value.as_str())) {
            let all = || format!("the keys here are: {}", keys.join(", "));
            let help = suggest(&key.value, keys.iter().copied(), all);
            self.remarks.push(
                Remark::new(Code::UnknownKey, format!("there is no key `{}` here", key.value)).at(key.place).help(help),
            );
        }
    }

    /// A place cut short at its line's end.
    fn first_line(&self, place: Place) -> Place {
        let line = self.source.slice(place).lines().next().map_or(0, str::len);
        Place { start: place.start, end: place.start + line }
    }
}

impl<T: Read> Read for Option<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(Some)
    }

    fn absent() -> Option<Self> {
        Some(None)
    }
}

impl<T: Read> Read for At<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(|value| Self::new(value, node.place))
    }

    fn absent() -> Option<Self> {
        T::absent().map(|value| Self::new(value, Place::default()))
    }
}

impl<T: Read> Read for Box<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(Self::new)
    }
}

impl<T: Read> Read for Vec<T> {
    /// Reads a list; all its items are read before a bad one spoils it.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Value::List(items) = &node.value else {
            return reader.wrong_kind(node.value.what(), "a list", node.place);
        };
        if !reader.keeps(Unit::Entries, items.len() as f64, node.place) {
            return None;
        }
        let read: Vec<_> = items.iter().map(|item| T::read(item, reader)).collect();
        read.into_iter().collect()
    }
}

impl Read for String {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let text = reader.scalar(node, "a text")?.trim();
        reader.keeps(Unit::Signs, text.chars().count() as f64, node.place).then(|| text.to_owned())
    }
}

/// The key of a field: its name, or the key that is given where that has a space.
macro_rules! key {
    ($field:ident) => {
        stringify!($field)
    };
    ($field:ident, $key:literal) => {
        $key
    };
}

/// Declares a struct that is read from a group of keys. A field is the key of its name, or the one
/// given in quotes before it; its type says whether it may be absent.
macro_rules! record {
    ($(#[$doc:meta])* $name:ident { $($(#[$fdoc:meta])* $($key:literal as)? $field:ident: $type:ty,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, schemars::JsonSchema)]
        #[schemars(deny_unknown_fields)]
        pub struct $name {
            $($(#[$fdoc])* $(#[schemars(rename = $key)])? pub $field: $type,)*
        }

        impl $crate::pattern::record::Read for $name {
            fn read(
                node: &$crate::pattern::node::Node,
                reader: &mut $crate::pattern::record::Reader<'_>,
            ) -> Option<Self> {
                let entries = reader.map(node, "a group of keys")?;
                reader.known_keys(entries, &[$($crate::pattern::record::key!($field $(, $key)?),)*]);
                $(let $field = reader.field(
                    entries,
                    (stringify!($name), $crate::pattern::record::key!($field $(, $key)?)),
                    node,
                );)*
                Some(Self { $($field: $field?,)* })
            }
        }
    };
}

pub(super) use {key, record};
