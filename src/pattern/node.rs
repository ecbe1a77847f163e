//! A YAML text as a tree of nodes that know their places.
//!
//! Nothing after this module knows YAML. Scalars keep the text as it was written, so that `4.20`
//! stays money and `11/0` a bead size.

use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_yaml::{NonFiniteFloatPolicy, Options, Spanned};

use crate::remark::{Code, Remark};
use crate::source::{At, Place, Source};

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

impl Value {
    /// What it is, for messages.
    pub const fn what(&self) -> &'static str {
        match self {
            Self::Empty => "nothing",
            Self::Scalar(_) => "a single value",
            Self::List(_) => "a list",
            Self::Map(_) => "a group of keys",
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

/// Reads a source into a tree.
///
/// # Errors
/// One remark with code `yaml` where the text is not YAML or goes beyond the limits.
pub fn parse(source: &Source) -> Result<Node, Remark> {
    serde_yaml::from_str_with_options(source.text(), options())
        .map(|raw| place(raw, source))
        .map_err(|error| explain(&error, source))
}

fn options() -> Options {
    let mut options = Options::default();
    options.strict_booleans = true;
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
fn explain(error: &serde_yaml::Error, source: &Source) -> Remark {
    let error = error.without_snippet();
    let (headline, help) = match error {
        serde_yaml::Error::DuplicateMappingKey { key, .. } => {
            (format!("the key `{}` stands twice", key.as_deref().unwrap_or("?")), "keep one of the two".to_owned())
        }
        other => (format!("this is not readable YAML: {}", first_clause(&other.to_string())), yaml_help(other)),
    };
    let remark = Remark::new(Code::Yaml, headline).help(help);
    let known = error.location().filter(|at| at.line() > 0);
    match known.and_then(|at| Some((usize::try_from(at.line()).ok()?, usize::try_from(at.column()).ok()?))) {
        Some((line, column)) => remark.at(source.place_at(line, column)),
        None => remark,
    }
}

fn yaml_help(error: &serde_yaml::Error) -> String {
    match error {
        serde_yaml::Error::Budget { .. } => "a pattern needs no nesting or size like this",
        serde_yaml::Error::AliasReplayLimitExceeded { .. } | serde_yaml::Error::AliasExpansionLimitExceeded { .. } => {
            "write the beads out, or use `repeat`, instead of aliases"
        }
        serde_yaml::Error::Eof { .. } => "write a pattern; `festoon new` prints one to start from",
        _ => "look for a bracket or quote that is not closed, a tab, or lines that are not indented alike",
    }
    .to_owned()
}

/// The reader's message without its place, which the remark gives by itself.
fn first_clause(message: &str) -> String {
    let line = message.lines().next().unwrap_or_default();
    let line = line.strip_prefix("error: ").unwrap_or(line);
    let line = line.strip_prefix("line ").and_then(|rest| rest.split_once(": ")).map_or(line, |(_, rest)| rest);
    line.split(" at line ").next().unwrap_or(line).to_owned()
}

/// What the YAML reader hands over before places are known.
enum Raw {
    Empty,
    Text(String),
    Number,
    List(Vec<Spanned<Raw>>),
    Map(Vec<(Spanned<String>, Spanned<Raw>)>),
}

fn place(raw: Spanned<Raw>, source: &Source) -> Node {
    let place = place_of(&raw.defined, source);
    let value = match raw.value {
        Raw::Empty => Value::Empty,
        Raw::Text(text) => Value::Scalar(text),
        Raw::Number => Value::Scalar(source.slice(place).trim().to_owned()),
        Raw::List(items) => Value::List(items.into_iter().map(|item| self::place(item, source)).collect()),
        Raw::Map(entries) => Value::Map(entries.into_iter().map(|entry| place_entry(entry, source)).collect()),
    };
    let end = place.end.max(value.end());
    Node { value, place: Place { end, ..place } }
}

fn place_entry((key, value): (Spanned<String>, Spanned<Raw>), source: &Source) -> (At<String>, Node) {
    (At::new(key.value, place_of(&key.defined, source)), place(value, source))
}

fn place_of(at: &serde_yaml::Location, source: &Source) -> Place {
    let span = at.span();
    let bytes = span.byte_offset().zip(span.byte_len());
    let bytes = bytes.and_then(|(start, len)| Some((usize::try_from(start).ok()?, usize::try_from(len).ok()?)));
    bytes.map_or_else(Place::default, |(start, len)| {
        let end = (start + len).min(source.text().len());
        let kept = source.text().get(start..end).map_or(0, |text| text.trim_end().len());
        Place { start, end: start + kept }
    })
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
        f.write_str("a value, a list or a group of keys")
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
