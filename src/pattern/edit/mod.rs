//! Acts on a pattern by hand, as edits of its text: what the act does not mean stays as it is written, comments and
//! line breaks too.
//!
//! Every act is a pure function from a text to edits of it. Only a text whose tree can be read is edited: where it
//! has slips, mending them comes first.

mod english;
mod entry;
mod length;
mod list;
mod refusal;
mod spot;
mod variant;

use serde::Deserialize;

use super::node::{self, Node, Value};
use crate::source::{Place, Source};
use crate::units::Length;

use length::like;
pub use refusal::Refusal;

/// A stretch of a text and what comes in its place.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Edit {
    /// What is replaced; an empty stretch where something is put in.
    place: Place,
    /// What stands there then.
    text: String,
}

/// What somebody does to a piece by hand. A run is an entry of a bead list, given by its place.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "act", rename_all = "kebab-case")]
pub enum Act {
    /// Another bead or finding in a run's place, or wherever the same is strung.
    Swap {
        /// The run, or a row that is worked out.
        run: Place,
        /// The id that it names.
        from: String,
        /// The id of the other.
        to: String,
        /// Whether every run and row changes that names the same.
        everywhere: bool,
    },
    /// Another count of a run, or of a row that is worked out.
    Count {
        /// The run.
        run: Place,
        /// How many, at least 1.
        count: u32,
    },
    /// Another value of a key of a bead, such as its colour or size.
    Set {
        /// The bead's id.
        bead: String,
        /// The key.
        key: String,
        /// The value as the pattern writes it.
        value: String,
        /// The run for which alone it changes: it gets a bead of its own, a copy.
        only: Option<Place>,
        /// The colourway in which alone it changes.
        colourway: Option<String>,
    },
    /// Another length of a strand.
    Lengthen {
        /// The strand's index.
        strand: usize,
        /// Its finished length in mm.
        length: f64,
    },
    /// Strands so much longer or shorter in a size.
    Resize {
        /// The size's name.
        size: String,
        /// How much longer, in mm.
        by: f64,
    },
    /// A size more.
    AddSize {
        /// Its name.
        name: String,
        /// `change`, or the key of a wearer's measure.
        key: String,
        /// The value as the pattern writes it.
        value: String,
    },
    /// A colourway more.
    AddColourway {
        /// Its name.
        name: String,
        /// The id of a bead.
        bead: String,
        /// The colour that it has there, as the pattern writes it.
        colour: String,
    },
    /// The repeat in which a run stands, or the run itself where it stands in none, once more.
    RepeatMore {
        /// The run.
        run: Place,
    },
    /// The same, twice as often.
    RepeatDouble {
        /// The run.
        run: Place,
    },
    /// The same taken out.
    RepeatDelete {
        /// The run.
        run: Place,
    },
}

impl Act {
    /// The same with the places of runs counted in bytes that were counted in other units.
    #[must_use]
    pub fn at_bytes(mut self, byte: impl Fn(usize) -> usize) -> Self {
        let run = match &mut self {
            Self::Swap { run, .. } | Self::Count { run, .. } => Some(run),
            Self::RepeatMore { run } | Self::RepeatDouble { run } | Self::RepeatDelete { run } => Some(run),
            Self::Set { only, .. } => only.as_mut(),
            Self::Lengthen { .. } | Self::Resize { .. } | Self::AddSize { .. } | Self::AddColourway { .. } => None,
        };
        if let Some(run) = run {
            *run = Place { file: 0, start: byte(run.start), end: byte(run.end) };
        }
        self
    }
}

/// The text after an act.
///
/// # Errors
/// Where the text cannot be read, or has nothing that the act could change.
pub fn act(source: &Source, act: &Act) -> Result<String, Refusal> {
    let tree = node::parse(source);
    let root = tree.root.filter(|_| tree.remarks.is_empty());
    let root = root.ok_or(Refusal::Unreadable)?;
    let edits = match act {
        Act::Swap { run, from, to, everywhere } => spot::swap(source, &root, *run, from, to, *everywhere)?,
        Act::Count { run, count } => spot::count(source, &root, *run, *count)?,
        Act::Set { bead, key, value, only: Some(run), .. } => entry::set_only(source, &root, bead, (key, value), *run)?,
        Act::Set { bead, key, value, colourway: Some(way), .. } => {
            entry::recolour(source, &root, way, bead, (key, value))?
        }
        Act::Set { bead, key, value, .. } => entry::set(source, &root, bead, (key, value))?,
        Act::Lengthen { strand, length } => lengthen(source, &root, *strand, Length::mm(*length))?,
        Act::Resize { size, by } => variant::resize(source, &root, size, Length::mm(*by))?,
        Act::AddSize { name, key, value } => variant::add_size(source, &root, name, (key, value))?,
        Act::AddColourway { name, bead, colour } => variant::add_colourway(source, &root, name, (bead, colour))?,
        Act::RepeatMore { run } => list::repeat(source, &root, *run, |times| times.saturating_add(1))?,
        Act::RepeatDouble { run } => list::repeat(source, &root, *run, |times| times.saturating_mul(2))?,
        Act::RepeatDelete { run } => list::delete(source, &root, *run)?,
    };
    Ok(applied(source.text(), edits))
}

/// A text with edits that do not overlap.
fn applied(text: &str, mut edits: Vec<Edit>) -> String {
    edits.sort_by_key(|edit| edit.place);
    edits.dedup();
    let mut changed = text.to_owned();
    for edit in edits.iter().rev() {
        changed.replace_range(edit.place.start..edit.place.end, &edit.text);
    }
    changed
}

/// Another finished length of a strand, written as the old one is.
fn lengthen(source: &Source, root: &Node, strand: usize, length: Length) -> Result<Vec<Edit>, Refusal> {
    let strands = root.entry("strands").map(|node| &node.value);
    let Some(Value::List(strands)) = strands else { return Err(Refusal::NoStrands) };
    let Some(strand) = strands.get(strand) else { return Err(Refusal::NoStrand) };
    let Some(node) = strand.entry("length") else {
        return Err(Refusal::LengthFollows);
    };
    let Some(text) = like(source.slice(node.place), length) else { return Err(Refusal::NoLength) };
    Ok(vec![Edit { place: node.place, text }])
}

#[cfg(test)]
mod tests;
