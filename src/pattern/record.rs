//! Reading a tree into typed records, gathering every error on the way.
//!
//! [`record!`] declares a struct once; its fields are its keys. The same declaration reads the
//! tree, knows which keys exist (for "did you mean") and gives the JSON Schema.

use std::borrow::Cow;

use crate::remark::said::language::Language;
use crate::remark::said::quantity::NoQuantity;
use crate::remark::said::slip::Slip;
use crate::remark::said::wanted::{Found, Wanted};
use crate::remark::{Remark, did_you_mean, near};
use crate::source::{At, Place, Source};

use super::bounds::{self, Unit};
use super::mend::bare_colour;
use super::node::{Node, Value};

/// Gathers remarks while a tree is read.
#[non_exhaustive]
pub struct Reader<'a> {
    source: &'a Source,
    /// The group and the key of it whose value is read.
    key: (&'static str, &'static str),
    /// What was left out of the source, because nobody knows how it is meant.
    lost: Vec<Place>,
    /// What was wrong so far.
    pub remarks: Vec<Remark>,
}

/// The entries of a record, each under a key that it has.
pub struct RecordEntries<'n> {
    known: Vec<Cow<'n, (At<String>, Node)>>,
    /// Whether others stand beside them, which may mean any key that is not written.
    astray: bool,
}

impl RecordEntries<'_> {
    /// The text under a key.
    pub fn text(&self, key: &str) -> Option<&str> {
        let entry = self.known.iter().find(|entry| entry.0.value == key)?;
        if let Value::Scalar(text) = &entry.1.value { Some(text) } else { None }
    }
}

/// A value that can be read from a node.
pub trait Read: Sized {
    /// Reads it, or leaves a remark and gives nothing.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self>;

    /// What it is when its key is not written; nothing where it must be.
    fn absent() -> Option<Self> {
        None
    }

    /// Whether it must be written beside other entries, though it may be absent.
    fn is_needed(_beside: &RecordEntries<'_>) -> bool {
        false
    }

    /// What stands for it where it cannot be read, so that the rest can be; nothing where nothing can.
    fn hole() -> Option<Self> {
        None
    }
}

/// A value that tells numbers, each in a unit, which its key's bounds hold.
pub trait TellsNumber {
    /// The numbers.
    fn numbers(&self) -> Vec<(Unit, f64)> {
        Vec::new()
    }
}

impl<'a> Reader<'a> {
    /// Starts with no remarks on a source of which some is lost.
    pub const fn new(source: &'a Source, lost: Vec<Place>) -> Self {
        Self { source, key: ("", ""), lost, remarks: Vec::new() }
    }

    /// Leaves a remark.
    pub fn refuse<T>(&mut self, remark: Remark) -> Option<T> {
        self.remarks.push(remark);
        None
    }

    /// The text of a scalar.
    pub fn scalar<'n>(&mut self, node: &'n Node, wanted: Wanted) -> Option<&'n str> {
        match &node.value {
            Value::Scalar(text) => Some(text),
            other => self.wrong_kind(other.what(), wanted, node.place),
        }
    }

    /// The entries of a map.
    pub fn map<'n>(&mut self, node: &'n Node, wanted: Wanted) -> Option<&'n [(At<String>, Node)]> {
        match &node.value {
            Value::Map(entries) => Some(entries),
            other => self.wrong_kind(other.what(), wanted, node.place),
        }
    }

    /// Leaves a remark that something of another kind was meant.
    pub fn wrong_kind<T>(&mut self, found: Found, wanted: Wanted, place: Place) -> Option<T> {
        self.refuse(Remark::new(Language::WrongKind { found, wanted }).at(place))
    }

    /// Reads a quantity from a scalar's text, and keeps to its key's bounds.
    pub fn quantity<T: TellsNumber, E: Into<NoQuantity>>(
        &mut self,
        node: &Node,
        wanted: Wanted,
        parse: impl Fn(&str) -> Result<T, E>,
    ) -> Option<T> {
        let text = self.scalar(node, wanted)?;
        let value = parse(text).map_err(|error| self.refuse_quantity(text, error.into(), node.place)).ok()?;
        let kept = value.numbers().into_iter().all(|(unit, number)| self.keeps(unit, number, node.place));
        kept.then_some(value)
    }

    /// Leaves a remark about a text that is no quantity; of units those are offered that the key's bounds allow.
    fn refuse_quantity(&mut self, text: &str, mut why: NoQuantity, place: Place) {
        let (record, key) = self.key;
        let bound = [Unit::Millimetres, Unit::Grams].into_iter().find_map(|unit| bounds::bound(record, key, unit));
        if let NoQuantity::Unit(error) = why {
            why = NoQuantity::Unit(error.among(|value| bound.is_none_or(|bound| !bound.forbids(value))));
        }
        let text = text.chars().take(40).collect();
        self.remarks.push(Remark::new(Language::NoQuantity { text, why }).at(place));
    }

    /// Whether a number of the key that is read lies within its bounds; leaves a remark if not.
    pub fn keeps(&mut self, unit: Unit, number: f64, place: Place) -> bool {
        let (record, key) = self.key;
        let Some(bound) = bounds::bound(record, key, unit).filter(|bound| bound.forbids(number)) else { return true };
        let wrong = Language::OutOfBounds { key, unit, least: bound.least, most: bound.most, number };
        self.remarks.push(Remark::new(wrong).at(place));
        false
    }

    /// Finds a word in a closed list.
    pub fn word<T: Copy>(
        &mut self,
        node: &Node,
        wanted: Wanted,
        all: &[T],
        word: impl Fn(T) -> &'static str,
    ) -> Option<T> {
        let text = self.scalar(node, wanted)?;
        if let Some(found) = all.iter().copied().find(|one| word(*one) == text) {
            return Some(found);
        }
        let words: Vec<_> = all.iter().map(|one| word(*one)).collect();
        let meant = near(text, words.iter().copied());
        self.refuse(Remark::new(Language::UnknownWord { text: text.to_owned(), wanted, words, meant }).at(node.place))
    }

    /// Reads the value of a key of a record, or what stands for it when it is not written or not readable.
    pub fn field<T: Read>(
        &mut self,
        entries: &RecordEntries<'_>,
        (name, key): (&'static str, &'static str),
        record: &Node,
    ) -> Option<T> {
        match entries.known.iter().map(|entry| (&entry.0, &entry.1)).find(|(at, _)| at.value == key) {
            Some((at, node)) if matches!(node.value, Value::Empty) && self.is_bare_colour(at) => T::hole(),
            Some((_, node)) => self.read_as((name, key), node).or_else(T::hole),
            None if entries.astray || self.is_lost(key) => T::hole().or_else(T::absent),
            None => T::absent().filter(|_| !T::is_needed(entries)).or_else(|| {
                self.remarks.push(Remark::new(Language::MissingKey { key }).at(self.first_line(record.place)));
                T::hole()
            }),
        }
    }

    /// Whether a key stands in what was left out of the source.
    fn is_lost(&self, key: &str) -> bool {
        self.lost.iter().any(|lost| self.source.slice(*lost).contains(&format!("{key}:")))
    }

    /// Whether a key has a colour without quotes, which is read as a comment; leaves a remark if so.
    fn is_bare_colour(&mut self, key: &At<String>) -> bool {
        let rest = self.source.text().get(key.place.end..).unwrap_or_default();
        let line = rest.lines().next().unwrap_or_default();
        let colour = line.trim_start_matches([':', ' ']);
        let Some(length) = bare_colour(colour) else { return false };
        let start = key.place.end + line.len() - colour.len();
        let place = Place { start, end: start + length, ..key.place };
        self.remarks.push(Remark::new(Language::Slip(Slip::BareColour)).at(place));
        true
    }

    fn read_as<T: Read>(&mut self, key: (&'static str, &'static str), node: &Node) -> Option<T> {
        let outer = std::mem::replace(&mut self.key, key);
        let value = T::read(node, self);
        self.key = outer;
        value
    }

    /// Leaves a remark for every key that the record does not have, and reads those whose meaning is plain as
    /// what they mean.
    pub fn known_keys<'n>(&mut self, entries: &'n [(At<String>, Node)], keys: &[&'static str]) -> RecordEntries<'n> {
        let is_known = |entry: &&(At<String>, Node)| keys.contains(&entry.0.value.as_str());
        let mut read =
            RecordEntries { known: entries.iter().filter(is_known).map(Cow::Borrowed).collect(), astray: false };
        for (key, value) in entries.iter().filter(|entry| !is_known(entry)) {
            let free = |key: &&&'static str| !entries.iter().any(|(at, _)| at.value == **key);
            let free: Vec<&'static str> = keys.iter().filter(free).copied().collect();
            let meant = match self.decimal_comma(key) {
                Some(slip) => {
                    self.remarks.push(slip);
                    rejoined(entries, key).filter(|(whole, _)| keys.contains(&whole.value.as_str()))
                }
                None => self.unknown_key(key, value, keys, &free),
            };
            match meant {
                Some(meant) => {
                    read.known.retain(|entry| entry.0.value != meant.0.value);
                    read.known.push(Cow::Owned(meant));
                }
                None => read.astray = true,
            }
        }
        read
    }

    /// Leaves a remark about an unknown key, and says what it may mean.
    fn unknown_key(
        &mut self,
        key: &At<String>,
        value: &Node,
        keys: &[&'static str],
        free: &[&'static str],
    ) -> Option<(At<String>, Node)> {
        if let Some((slip, meant)) = run_together(key, free).filter(|_| matches!(value.value, Value::Empty)) {
            self.remarks.push(Remark::new(Language::Slip(slip)).at(key.place));
            return Some(meant);
        }
        let meant = near(&key.value, keys.iter().copied());
        let unknown = Language::UnknownKey { key: key.value.clone(), keys: keys.to_vec(), meant };
        self.remarks.push(Remark::new(unknown).at(key.place));
        let meant = did_you_mean(&key.value, free.iter().copied())?;
        Some((At::new(meant.to_owned(), key.place), value.clone()))
    }

    /// A remark about `5,60`, in which a comma ends the value 5 and begins a key `60`.
    fn decimal_comma(&self, key: &At<String>) -> Option<Remark> {
        let before = self.source.slice(Place { start: 0, end: key.place.start, ..key.place }).strip_suffix(',')?;
        let digits = |c: &char| c.is_ascii_digit();
        let whole = before.chars().rev().take_while(digits).count();
        let whole = before.get(before.len() - whole..).filter(|whole| !whole.is_empty())?;
        let number = &key.value;
        let comma = || Language::DecimalComma { whole: whole.to_owned(), decimals: number.clone() };
        number.starts_with(|c: char| digits(&c)).then(|| Remark::new(comma()).at(key.place))
    }

    /// A place cut short at its line's end.
    fn first_line(&self, place: Place) -> Place {
        let line = self.source.slice(place).lines().next().map_or(0, str::len);
        Place { end: place.start + line, ..place }
    }
}

/// A key that is free and the value that is written into it: `size6 mm`, or `size:6 mm`.
fn run_together(key: &At<String>, free: &[&'static str]) -> Option<(Slip, (At<String>, Node))> {
    let starts = |known: &&&'static str| key.value.starts_with(**known);
    let known = free.iter().filter(starts).max_by_key(|known| known.len())?;
    let (rest, name) = (&key.value[known.len()..], (*known).to_owned());
    let slip = if rest.starts_with(':') { Slip::NoColonSpace(name.clone()) } else { Slip::NoColon(name.clone()) };
    let text = rest.trim_start_matches([':', '=', ' ']).to_owned();
    Some((slip, (At::new(name, key.place), Node { value: Value::Scalar(text), place: key.place })))
}

/// The entry whose number a comma has cut in two before such a key, with its number whole.
fn rejoined(entries: &[(At<String>, Node)], rest: &At<String>) -> Option<(At<String>, Node)> {
    let before = entries.iter().filter(|(_, value)| value.place.end < rest.place.start);
    let (key, value) = before.max_by_key(|(_, value)| value.place.end)?;
    let Value::Scalar(whole) = &value.value else { return None };
    let place = Place { end: rest.place.end, ..value.place };
    Some((key.clone(), Node { value: Value::Scalar(format!("{whole}.{}", rest.value)), place }))
}

impl<T: Read> Read for Option<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(Some)
    }

    fn absent() -> Option<Self> {
        Some(None)
    }

    fn is_needed(beside: &RecordEntries<'_>) -> bool {
        T::is_needed(beside)
    }

    fn hole() -> Option<Self> {
        Some(T::hole())
    }
}

impl<T: Read> Read for At<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(|value| Self::new(value, node.place))
    }

    fn absent() -> Option<Self> {
        T::absent().map(|value| Self::new(value, Place::default()))
    }

    fn hole() -> Option<Self> {
        T::hole().map(|value| Self::new(value, Place::default()))
    }
}

impl<T: Read> Read for Box<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        T::read(node, reader).map(Self::new)
    }
}

impl<T: Read> Read for Vec<T> {
    /// Reads a list, without the items that cannot be read.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Value::List(items) = &node.value else {
            return reader.wrong_kind(node.value.what(), Wanted::List, node.place);
        };
        if !reader.keeps(Unit::Entries, items.len() as f64, node.place) {
            return None;
        }
        Some(items.iter().filter_map(|item| T::read(item, reader)).collect())
    }

    fn hole() -> Option<Self> {
        Some(Self::new())
    }
}

impl Read for String {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let text = reader.scalar(node, Wanted::Text)?.trim();
        reader.keeps(Unit::Signs, text.chars().count() as f64, node.place).then(|| text.to_owned())
    }

    fn hole() -> Option<Self> {
        Some(Self::new())
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
                let entries = reader.map(node, $crate::remark::said::wanted::Wanted::Keys)?;
                let entries = reader.known_keys(entries, &[$($crate::pattern::record::key!($field $(, $key)?),)*]);
                $(let $field = reader.field(
                    &entries,
                    (stringify!($name), $crate::pattern::record::key!($field $(, $key)?)),
                    node,
                );)*
                Some(Self { $($field: $field?,)* })
            }
        }
    };
}

pub(super) use {key, record};
