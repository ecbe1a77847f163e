//! The bead-list language: what may stand in a strand's `beads:`, its ends and the closure.

use std::borrow::Cow;
use std::ops::Deref;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use crate::remark::said::language::Language;
use crate::remark::said::wanted::{Found, Wanted};
use crate::remark::{Remark, did_you_mean, near};
use crate::source::At;
use crate::units::Length;

use super::node::{Node, Value};
use super::record::{Read, Reader, record};
use super::rows::{Fade, Graduate, Random, Row};
use super::values::Whole;

/// One entry of a bead list.
#[derive(Clone, Debug, JsonSchema)]
#[schemars(untagged)]
pub enum Item {
    /// So many of a bead or strung finding.
    Run(Run),
    /// A list several times.
    Repeat(Repeat),
    /// A list, its middle, and the list backwards.
    Mirror(Mirror),
    /// Bare cord.
    Space(Space),
    /// Links of chain in which nothing hangs.
    Links(Links),
    /// A knot.
    Knot(Knot),
    /// A branch that hangs here.
    Dangle(Dangle),
    /// A finding fixed on the cord.
    Stop(Stop),
    /// A row that is worked out.
    Row(Row),
}

impl Item {
    /// The lists that stand in it.
    #[must_use]
    pub fn lists(&self) -> Vec<&[At<Self>]> {
        match self {
            Self::Repeat(repeat) => vec![&repeat.of],
            Self::Mirror(mirror) => std::iter::once(&mirror.mirror).chain(&mirror.about).map(Vec::as_slice).collect(),
            Self::Dangle(dangle) => vec![&dangle.dangle],
            Self::Run(_) | Self::Space(_) | Self::Links(_) | Self::Knot(_) | Self::Stop(_) | Self::Row(_) => Vec::new(),
        }
    }
}

/// So many of a bead: `reed`, `4 mist`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Run {
    /// How many.
    pub count: u32,
    /// The id of a bead, or of a finding that is strung.
    pub id: String,
}

record!(
    /// A list several times.
    Repeat {
        /// How often; `fill` for as many whole repeats as fit.
        repeat: Times,
        /// The list.
        of: Vec<At<Item>>,
    }
);

record!(
    /// A list, its middle, and the list backwards.
    Mirror {
        /// The list.
        mirror: Vec<At<Item>>,
        /// The middle.
        about: Option<Vec<At<Item>>>,
    }
);

record!(
    /// Bare cord held at both sides.
    Space {
        /// Its length.
        space: At<Length>,
    }
);

record!(
    /// Links of chain in which nothing hangs: what stands after them hangs in the next link.
    Links {
        /// How many.
        links: At<Whole>,
    }
);

record!(
    /// A knot.
    Knot {
        /// How much cord it takes up along the strand.
        knot: At<Length>,
    }
);

record!(
    /// A branch that hangs straight down from this place.
    Dangle {
        /// What is strung on it, from the top down.
        dangle: Vec<At<Item>>,
        /// The pin, bail or ring it hangs on.
        on: At<HungOn>,
    }
);

record!(
    /// A finding fixed on the cord, that beads cannot pass: each stretch settles by itself.
    Stop {
        /// The finding.
        stop: At<String>,
        /// Its distance from the first end's loop; in another size it keeps that from the nearer end.
        at: At<Length>,
    }
);

/// The id of the finding that a dangle hangs on.
#[derive(Clone, Debug, Default)]
pub struct HungOn(pub String);

/// How often a list is strung.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Times {
    /// Just so often.
    Count(u32),
    /// As often as fits.
    Fill,
}

impl Times {
    /// How many that is where `fill` means so many.
    #[must_use]
    pub const fn or(self, fill: u32) -> u32 {
        match self {
            Self::Count(count) => count,
            Self::Fill => fill,
        }
    }
}

/// What closes a strand's ends.
#[derive(Clone, Debug, JsonSchema)]
#[schemars(untagged)]
pub enum Ends {
    /// One finding, or `knot`.
    One(At<String>),
    /// Several findings from the loop inward.
    Several(Vec<At<String>>),
}

impl Ends {
    /// The ids from the loop inward.
    #[must_use]
    pub fn ids(&self) -> &[At<String>] {
        match self {
            Self::One(id) => std::slice::from_ref(id),
            Self::Several(ids) => ids,
        }
    }
}

/// Findings of the closure, outward from the strands.
#[derive(Clone, Debug, JsonSchema)]
#[schemars(untagged)]
pub enum Parts {
    /// One.
    One(At<ClosurePart>),
    /// Several.
    Several(Vec<At<ClosurePart>>),
}

impl Deref for Parts {
    type Target = [At<ClosurePart>];

    fn deref(&self) -> &Self::Target {
        match self {
            Self::One(part) => std::slice::from_ref(part),
            Self::Several(parts) => parts,
        }
    }
}

impl<'a> IntoIterator for &'a Parts {
    type Item = &'a At<ClosurePart>;
    type IntoIter = std::slice::Iter<'a, At<ClosurePart>>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

/// A finding of the closure; a chain takes a length: `{ links: 60 mm }`.
#[derive(Clone, Debug)]
pub struct ClosurePart {
    /// The finding's id.
    pub id: At<String>,
    /// How much chain.
    pub length: Option<At<Length>>,
}

impl Read for Item {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Value::Map(entries) = &node.value else {
            return Run::read(node, reader).map(Self::Run);
        };
        let has = |key: &str| node.entry(key).is_some();
        match () {
            () if has("repeat") => Repeat::read(node, reader).map(Self::Repeat),
            () if has("mirror") => Mirror::read(node, reader).map(Self::Mirror),
            () if has("space") => Space::read(node, reader).map(Self::Space),
            () if has("links") => Links::read(node, reader).map(Self::Links),
            () if has("knot") => Knot::read(node, reader).map(Self::Knot),
            () if has("dangle") => Dangle::read(node, reader).map(Self::Dangle),
            () if has("stop") => Stop::read(node, reader).map(Self::Stop),
            () if has("random") => Random::read(node, reader).map(|random| Self::Row(Row::Random(random))),
            () if has("fade") => Fade::read(node, reader).map(|fade| Self::Row(Row::Fade(fade))),
            () if has("graduate") => Graduate::read(node, reader).map(|one| Self::Row(Row::Graduate(one))),
            () => unknown_item(node, entries, reader),
        }
    }
}

/// The keys by which groups of a bead list are told from one another.
const GROUPS: [&str; 10] =
    ["repeat", "mirror", "space", "links", "knot", "dangle", "stop", "random", "fade", "graduate"];

fn unknown_item<T>(node: &Node, entries: &[(At<String>, Node)], reader: &mut Reader<'_>) -> Option<T> {
    let meant = entries.iter().find_map(|(key, _)| near(&key.value, GROUPS));
    reader.refuse(Remark::new(Language::UnknownItem { groups: GROUPS.to_vec(), meant }).at(node.place))
}

/// The digits of a run's count, if it has one, and its id.
pub(super) fn counted(text: &str) -> (Option<&str>, &str) {
    let text = text.trim();
    let digits = text.len() - text.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    match (digits, text[digits..].strip_prefix([' ', '\t'])) {
        (0, _) | (_, None) => (None, text),
        (_, Some(id)) => (Some(&text[..digits]), id.trim()),
    }
}

impl Read for Run {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let (count, id) = counted(reader.scalar(node, Wanted::Beads)?);
        let count = match count {
            Some(count) => Whole::read(&Node { value: Value::Scalar(count.to_owned()), place: node.place }, reader)?.0,
            None => 1,
        };
        Some(Self { count, id: id.to_owned() })
    }
}

impl Read for HungOn {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::Map(entries) => {
                let measured = measured_hanger(entries);
                reader.refuse(Remark::new(Language::HangerLength { measured }).at(node.place))
            }
            _ => String::read(node, reader).map(Self),
        }
    }

    fn hole() -> Option<Self> {
        Some(Self::default())
    }
}

/// The id and the length, where nothing else stands there: only the closure says how much chain it takes.
fn measured_hanger(entries: &[(At<String>, Node)]) -> Option<(String, String)> {
    match entries {
        [(id, Node { value: Value::Scalar(length), .. })] => Some((id.value.clone(), length.clone())),
        _ => None,
    }
}

impl JsonSchema for HungOn {
    fn schema_name() -> Cow<'static, str> {
        "Hanger".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "description": "The id of a head pin, eye pin, bail, jump ring or chain" })
    }
}

/// The word for as often as fits.
const FILL: &str = "fill";

impl Read for Times {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::Scalar(text) if text == FILL => Some(Self::Fill),
            Value::Scalar(text) if did_you_mean(text, [FILL]).is_some() => {
                let wrong = Language::NearlyFill { text: text.clone(), fill: FILL };
                reader.refuse(Remark::new(wrong).at(node.place))
            }
            _ => Whole::read(node, reader).map(|count| Self::Count(count.0)),
        }
    }
}

impl Read for Ends {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::List(_) => Vec::read(node, reader).map(Self::Several),
            _ => At::read(node, reader).map(Self::One),
        }
    }
}

impl Read for Parts {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::List(_) => Vec::read(node, reader).map(Self::Several),
            _ => At::read(node, reader).map(Self::One),
        }
    }
}

impl Read for ClosurePart {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Value::Map(entries) = &node.value else {
            return At::read(node, reader).map(|id| Self { id, length: None });
        };
        let [(id, length)] = entries.as_slice() else {
            return reader.wrong_kind(Found::SeveralKeys, Wanted::FindingLength, node.place);
        };
        At::read(length, reader).map(|length| Self { id: id.clone(), length: Some(length) })
    }
}

impl JsonSchema for Run {
    fn schema_name() -> Cow<'static, str> {
        "Run".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "description": "A bead, or so many of it: reed, 4 mist" })
    }
}

impl JsonSchema for Times {
    fn schema_name() -> Cow<'static, str> {
        "Times".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [{ "type": "integer", "minimum": 1 }, { "const": FILL }] })
    }
}

impl JsonSchema for ClosurePart {
    fn schema_name() -> Cow<'static, str> {
        "ClosurePart".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let length = generator.subschema_for::<Length>();
        json_schema!({
            "description": "A finding; a chain takes a length: { links: 60 mm }",
            "anyOf": [
                { "type": "string" },
                { "type": "object", "additionalProperties": length, "minProperties": 1, "maxProperties": 1 },
            ],
        })
    }
}
