//! The pattern as written: every value with its place.
//!
//! [`read`] turns a source into a [`Pattern`] and remarks. Names are not looked up here: whether a
//! strand's beads exist is the business of [`crate::design`].

mod allow;
pub mod bounds;
mod items;
mod model;
pub(crate) mod node;
mod record;
mod swap;
mod values;
mod words;

use crate::remark::{Code, Remark};
use crate::source::Source;

pub use items::{Item, Repeat, Times};
pub use model::*;
pub use record::{Read, Reader};
pub use values::{BeadSize, Body, Dict, Measured, Whole, Within};
pub use words::{CordKind, Drilled, FindingKind, Finish, Kind, Settle, Shape, Skill, SoldBy};

/// The version of the pattern language that is read.
pub const VERSION: u32 = 1;

/// Reads a pattern. Without errors among the remarks there is a pattern.
#[must_use]
pub fn read(source: &Source) -> (Option<Pattern>, Vec<Remark>) {
    let node = match node::parse(source) {
        Ok(node) => node,
        Err(remark) => return (None, vec![remark]),
    };
    let mut reader = Reader::new(source);
    let pattern = Pattern::read(&node, &mut reader);
    let mut remarks = reader.remarks;
    remarks.extend(pattern.as_ref().and_then(wrong_version));
    (pattern.filter(|_| remarks.is_empty()), remarks)
}

fn wrong_version(pattern: &Pattern) -> Option<Remark> {
    let version = pattern.festoon.value.0;
    (version != VERSION).then(|| {
        Remark::new(Code::Version, format!("this pattern is written in version {version} of the language"))
            .at(pattern.festoon.place)
            .help(format!("this program reads version {VERSION}: write `festoon: {VERSION}`"))
    })
}

/// The JSON Schema of the pattern language.
#[must_use]
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(Pattern).to_value();
    bounds::describe(&mut schema);
    schema
}
