//! Rows that a bead list does not write bead by bead: random, fading and graduated.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use crate::source::At;
use crate::units::Length;

use super::dict::Dict;
use super::items::Times;
use super::node::{Node, Value};
use super::record::{Read, Reader, record};
use super::values::{Between, Whole};

/// A row that is worked out from a rule.
#[derive(Clone, Debug, JsonSchema)]
#[schemars(untagged)]
pub enum Row {
    /// Beads in no order.
    Random(Random),
    /// From one bead to another.
    Fade(Fade),
    /// Sizes that grow to the middle.
    Graduate(Graduate),
}

record!(
    /// Beads in no order, which is always the same one.
    Random {
        /// How many beads; `fill` for as many as the strand has room for.
        random: At<Times>,
        /// How many parts of each bead; counts follow by largest remainder.
        of: Dict<At<Whole>>,
        /// Another number, another order; 1 unless you say.
        seed: Option<At<Whole>>,
        /// How many others stand between two of a kind at least: for all beads, or by bead; 1 unless you say.
        apart: Option<At<Apart>>,
    }
);

record!(
    /// From one bead to another, evenly.
    Fade {
        /// How many beads; `fill` for as many as the strand has room for.
        fade: At<Times>,
        /// The bead at the start.
        from: At<String>,
        /// The bead at the end.
        to: At<String>,
    }
);

record!(
    /// Sizes that grow from both ends to the middle.
    Graduate {
        /// The beads from an end to the middle.
        graduate: Vec<At<String>>,
        /// How long the row may become; else as long as the strand has room.
        length: Option<At<Length>>,
    }
);

/// How many others stand between two beads of a kind at least.
#[derive(Clone, Debug)]
pub enum Apart {
    /// So many for every bead.
    All(u32),
    /// So many for these, none for others.
    Each(Dict<At<Between>>),
}

impl Row {
    /// The beads that it strings, with what names them.
    #[must_use]
    pub fn beads(&self) -> Vec<&At<String>> {
        match self {
            Self::Random(random) => random.of.entries.iter().map(|(id, _)| id).collect(),
            Self::Fade(fade) => vec![&fade.from, &fade.to],
            Self::Graduate(graduate) => graduate.graduate.iter().collect(),
        }
    }

    /// The same, to be changed.
    pub fn beads_mut(&mut self) -> Vec<&mut At<String>> {
        match self {
            Self::Random(random) => random.of.entries.iter_mut().map(|(id, _)| id).collect(),
            Self::Fade(fade) => vec![&mut fade.from, &mut fade.to],
            Self::Graduate(graduate) => graduate.graduate.iter_mut().collect(),
        }
    }

    /// Whether it is as long as the strand has room.
    #[must_use]
    pub const fn fills(&self) -> bool {
        match self {
            Self::Random(Random { random: times, .. }) | Self::Fade(Fade { fade: times, .. }) => {
                matches!(times.value, Times::Fill)
            }
            Self::Graduate(graduate) => graduate.length.is_none(),
        }
    }
}

impl Read for Apart {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::Map(_) => Dict::read(node, reader).map(Self::Each),
            _ => Between::read(node, reader).map(|all| Self::All(all.0)),
        }
    }
}

impl JsonSchema for Apart {
    fn schema_name() -> Cow<'static, str> {
        "Apart".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let between = generator.subschema_for::<Between>();
        json_schema!({
            "description": "How many others stand between two of a kind: for all beads, or by bead",
            "anyOf": [between, { "type": "object", "additionalProperties": between }],
        })
    }
}
