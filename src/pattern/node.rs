//! A YAML text as a tree of nodes that know their places.
//!
//! Nothing after this module knows YAML. Scalars keep the text as it was written, so that `4.20`
//! stays money and `11/0` a bead size.

use std::collections::BTreeSet;
use std::fmt;
use std::ops::Range;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_yaml::{DuplicateKeyPolicy, NonFiniteFloatPolicy, Options, Spanned};

use crate::remark::Remark;
use crate::remark::said::language::Language;
use crate::remark::said::wanted::Found;
use crate::source::{At, Place, Source};

use super::english::MADE_OF;
use super::mend::{Mended, Mending, mend};

/// The groups of what is bought.
pub const ARTICLES: [&str; 4] = ["beads", "cords", "findings", "assorted"];
/// Deepest nesting that is read; a pattern needs about ten.
const DEEPEST: usize = 32;
/// Most aliases that one anchor may serve.
const MOST_ALIASES: usize = 1_000;
/// Most nodes that aliases may add in all.
const MOST_REPLAYED: usize = 100_000;

/// A value and its place.
#[derive(Clone, Debug)]
pub struct Node {
    /// What is written.
    pub value: Value,
    /// Where.
    pub place: Place,
}

/// A value as written.
#[derive(Clone, Debug)]
pub enum Value {
    /// Nothing after the colon.
    Empty,
    /// One word, number or sentence, as written and without its quotes.
    Scalar(String),
    /// A list.
    List(Vec<Node>),
    /// Keys and values in the order written.
    Map(Vec<(At<String>, Node)>),
}

impl Node {
    /// What stands under a key of a group.
    pub fn entry(&self, key: &str) -> Option<&Self> {
        let Value::Map(entries) = &self.value else { return None };
        entries.iter().find(|(at, _)| at.value == key).map(|(_, node)| node)
    }

    /// The beads, cords and findings that a pattern or a shelf defines, with their ids.
    pub fn articles(&self) -> impl Iterator<Item = &(At<String>, Self)> {
        let groups = ARTICLES.into_iter().filter_map(|group| self.entry(group));
        groups.flat_map(|group| if let Value::Map(entries) = &group.value { &entries[..] } else { &[] })
    }

    /// Puts it, with all that is in it, in a file.
    fn move_to(&mut self, file: u16) {
        self.place.file = file;
        match &mut self.value {
            Value::Empty | Value::Scalar(_) => {}
            Value::List(items) => items.iter_mut().for_each(|item| item.move_to(file)),
            Value::Map(entries) => entries.iter_mut().for_each(|(key, value)| {
                key.place.file = file;
                value.move_to(file);
            }),
        }
    }
}

impl Value {
    /// What it is, for messages.
    pub const fn what(&self) -> Found {
        match self {
            Self::Empty => Found::Nothing,
            Self::Scalar(_) => Found::Value,
            Self::List(_) => Found::List,
            Self::Map(_) => Found::Group,
        }
    }

    /// Where the last thing in it ends.
    fn end(&self) -> usize {
        let last = match self {
            Self::Empty | Self::Scalar(_) => None,
            Self::List(items) => items.iter().map(|item| item.place.end).max(),
            Self::Map(entries) => entries.iter().map(|(key, value)| key.place.end.max(value.place.end)).max(),
        };
        last.unwrap_or_default()
    }
}

/// A source as a tree, and what is wrong with how it is written.
pub struct Tree {
    /// The tree, mended where it has the usual slips; nothing where no part of it is readable.
    pub root: Option<Node>,
    /// One remark with code `yaml` or `bare-colour` for each slip.
    pub remarks: Vec<Remark>,
    /// What was left out, because nobody knows how it is meant.
    pub lost: Vec<Place>,
}

/// Reads a source's own file into a tree.
pub fn parse(source: &Source) -> Tree {
    read(source).in_file(source.file())
}

fn read(source: &Source) -> Tree {
    let written = Mended::unchanged(source.text());
    match raw(&written) {
        Ok(raw) => Tree::new(Some((raw, written)), Vec::new(), Vec::new()),
        Err(error) if is_hopeless(&error) => Tree::new(None, vec![explain(&error, &written, source)], Vec::new()),
        Err(error) => {
            let unread = explain(&error, &written, source);
            let read = |text: &Mended| raw(text).map_err(|error| explain(&error, text, source));
            let Mending { read, remarks, lost } = mend(source.text(), unread, read);
            Tree::new(read, remarks, lost)
        }
    }
}

impl Tree {
    fn new(read: Option<(Spanned<Raw>, Mended)>, remarks: Vec<Remark>, lost: Vec<Place>) -> Self {
        let mut tree = Self { root: None, remarks, lost };
        tree.root = read.map(|(raw, text)| place(raw, &text, &mut tree.remarks));
        tree
    }

    /// The same tree with its places in a file.
    fn in_file(mut self, file: u16) -> Self {
        if file > 0 {
            let places = self.remarks.iter_mut().filter_map(|remark| remark.place.as_mut()).chain(&mut self.lost);
            places.for_each(|place| place.file = file);
            self.root.iter_mut().for_each(|root| root.move_to(file));
        }
        self
    }
}

fn raw(text: &Mended) -> Result<Spanned<Raw>, serde_yaml::Error> {
    serde_yaml::from_str_with_options(&text.text, options())
}

/// Whether a file is none that mending makes readable: empty, or beyond the limits.
fn is_hopeless(error: &serde_yaml::Error) -> bool {
    use serde_yaml::Error::{AliasExpansionLimitExceeded, AliasReplayLimitExceeded, Budget, Eof};
    let error = cause(error);
    matches!(error, Budget { .. } | AliasReplayLimitExceeded { .. } | AliasExpansionLimitExceeded { .. } | Eof { .. })
}

/// The error itself, without the text about it and the places it was met through.
fn cause(error: &serde_yaml::Error) -> &serde_yaml::Error {
    match error.without_snippet() {
        serde_yaml::Error::AliasError { error, .. } => cause(error),
        error => error,
    }
}

fn options() -> Options {
    let mut options = Options::default();
    options.strict_booleans = true;
    options.duplicate_keys = DuplicateKeyPolicy::PassThrough;
    options.non_finite_float_policy = NonFiniteFloatPolicy::PassThrough;
    options.alias_limits.max_total_replayed_events = MOST_REPLAYED;
    options.alias_limits.max_alias_expansions_per_anchor = MOST_ALIASES;
    if let Some(budget) = options.budget.as_mut() {
        budget.max_depth = DEEPEST;
        budget.flow_nesting_limit = DEEPEST;
    }
    options
}

/// Turns the reader's error into a remark in the pattern's terms.
fn explain(error: &serde_yaml::Error, text: &Mended, source: &Source) -> Remark {
    use serde_yaml::Error::{AliasExpansionLimitExceeded, AliasReplayLimitExceeded, Budget, Eof};
    let remark = Remark::new(match cause(error) {
        Budget { .. } => Language::TooDeep,
        AliasReplayLimitExceeded { .. } | AliasExpansionLimitExceeded { .. } => Language::RepeatsItself,
        Eof { .. } => Language::Empty,
        _ => Language::Unreadable,
    });
    let known = error.location().filter(|at| at.line() > 0);
    match known.and_then(|at| Some((usize::try_from(at.line()).ok()?, usize::try_from(at.column()).ok()?))) {
        Some((line, column)) => {
            let start = text.origin(Source::new("", text.text.as_str()).place_at(line, column).start);
            let (line, column) = source.line_column(start);
            remark.at(source.place_at(line, column))
        }
        None => remark,
    }
}

/// What the YAML reader hands over before places are known.
enum Raw {
    Empty,
    Text(String),
    Number,
    List(Vec<Spanned<Raw>>),
    Map(Vec<(Spanned<String>, Spanned<Raw>)>),
}

fn place(raw: Spanned<Raw>, text: &Mended, remarks: &mut Vec<Remark>) -> Node {
    let (written, place) = place_of(&raw.defined, text);
    let value = match raw.value {
        Raw::Empty => Value::Empty,
        Raw::Text(text) => Value::Scalar(text),
        Raw::Number => Value::Scalar(text.text.get(written).unwrap_or_default().trim().to_owned()),
        Raw::List(items) => Value::List(items.into_iter().map(|item| self::place(item, text, remarks)).collect()),
        Raw::Map(entries) => Value::Map(place_entries(entries, text, remarks)),
    };
    let end = place.end.max(value.end());
    Node { value, place: Place { end, ..place } }
}

/// The entries of a group; of two with one key the first is kept.
fn place_entries(
    raw: Vec<(Spanned<String>, Spanned<Raw>)>,
    text: &Mended,
    remarks: &mut Vec<Remark>,
) -> Vec<(At<String>, Node)> {
    let mut entries: Vec<(At<String>, Node)> = Vec::new();
    let mut known = BTreeSet::new();
    for (key, value) in raw {
        let key = At::new(key.value, place_of(&key.defined, text).1);
        if known.insert(key.value.clone()) {
            entries.push((key, place(value, text, remarks)));
        } else {
            remarks.push(Remark::new(Language::KeyTwice { key: key.value }).at(key.place));
        }
    }
    entries
}

/// Where something stands in the text that was read, and in the text as written.
fn place_of(at: &serde_yaml::Location, text: &Mended) -> (Range<usize>, Place) {
    let span = at.span();
    let bytes = span.byte_offset().zip(span.byte_len());
    let bytes = bytes.and_then(|(start, len)| Some((usize::try_from(start).ok()?, usize::try_from(len).ok()?)));
    let Some((start, len)) = bytes else { return (0..0, Place::default()) };
    let end = (start + len).min(text.text.len());
    let end = start + text.text.get(start..end).map_or(0, |text| text.trim_end().len());
    (start..end, Place { file: 0, start: text.origin(start), end: text.origin(end) })
}

impl<'de> Deserialize<'de> for Raw {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(RawVisitor)
    }
}

struct RawVisitor;

impl<'de> Visitor<'de> for RawVisitor {
    type Value = Raw;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(MADE_OF)
    }

    fn visit_bool<E>(self, _: bool) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_i64<E>(self, _: i64) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_u64<E>(self, _: u64) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_i128<E>(self, _: i128) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_u128<E>(self, _: u128) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_f64<E>(self, _: f64) -> Result<Raw, E> {
        Ok(Raw::Number)
    }

    fn visit_str<E>(self, text: &str) -> Result<Raw, E> {
        Ok(Raw::Text(text.to_owned()))
    }

    fn visit_unit<E>(self) -> Result<Raw, E> {
        Ok(Raw::Empty)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Raw, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Raw::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Raw, A::Error> {
        let mut map = Vec::new();
        while let Some(entry) = entries.next_entry()? {
            map.push(entry);
        }
        Ok(Raw::Map(map))
    }
}
