//! Keys of beads and colourways set, and beads copied.

use super::list::{end, is_flow, lines};
use super::spot;
use super::{Edit, Refusal, applied, refused};
use crate::pattern::node::{Node, Value};
use crate::source::{At, Place, Source};

/// A key and its value as the pattern writes them.
type Pair<'a> = (&'a str, &'a str);

/// The entry of a bead.
fn bead<'n>(root: &'n Node, id: &str) -> Result<&'n (At<String>, Node), Refusal> {
    let beads = root.entry("beads").and_then(|beads| match &beads.value {
        Value::Map(beads) => beads.iter().find(|(at, _)| at.value == id),
        _ => None,
    });
    beads.ok_or_else(|| Refusal(format!("there is no bead `{id}`")))
}

/// A key of a bead everywhere.
pub fn set(source: &Source, root: &Node, id: &str, pair: Pair<'_>) -> Result<Vec<Edit>, Refusal> {
    Ok(vec![set_in(source, &bead(root, id)?.1, pair)?])
}

/// A key of a bead in one run alone, for which the bead is copied under a new id.
pub fn set_only(source: &Source, root: &Node, id: &str, pair: Pair<'_>, run: Place) -> Result<Vec<Edit>, Refusal> {
    let (key, node) = bead(root, id)?;
    let new = fresh(root, id);
    let mut edits = spot::swap(source, root, run, id, &new, false)?;
    let Some(group @ Node { value: Value::Map(beads), .. }) = root.entry("beads") else {
        return refused("there are no beads");
    };
    let flow = beads.first().is_some_and(|(first, _)| shares_line(source, first.place, key.place) && beads.len() > 1)
        || is_flow(source, group);
    let whole = Place { file: 0, start: key.place.start, end: end(source, node) };
    let whole = if flow { whole } else { lines(source, whole) };
    let changed = set_in(source, node, pair)?;
    let within = |place: Place| Place { file: 0, start: place.start - whole.start, end: place.end - whole.start };
    let renamed = Edit { place: within(key.place), text: new };
    let changed = Edit { place: within(changed.place), text: changed.text };
    let copy = applied(source.slice(whole), vec![renamed, changed]);
    let ended = copy.ends_with('\n') || flow;
    let text = match (flow, ended) {
        (true, _) => format!(", {copy}"),
        (false, true) => copy,
        (false, false) => format!("\n{copy}"),
    };
    edits.push(Edit { place: Place { file: 0, start: whole.end, end: whole.end }, text });
    Ok(edits)
}

/// A bead's colour, name or finish in one colourway.
pub fn recolour(source: &Source, root: &Node, way: &str, id: &str, pair: Pair<'_>) -> Result<Vec<Edit>, Refusal> {
    let way_node = root.entry("colourways").and_then(|ways| ways.entry(way));
    let Some(beads) = way_node else { return refused("there is no such colourway") };
    if !["colour", "name", "finish"].contains(&pair.0) {
        return refused("a colourway changes colour, name and finish alone: choose the pattern's own colours first");
    }
    match beads.entry(id) {
        Some(entry) => Ok(vec![set_in(source, entry, pair)?]),
        None => Ok(vec![added(source, beads, id, &format!("{{ {}: {} }}", pair.0, pair.1))?]),
    }
}

/// A key of a group set: its value replaced, or the key put behind the last.
fn set_in(source: &Source, group: &Node, (key, text): Pair<'_>) -> Result<Edit, Refusal> {
    match group.entry(key) {
        Some(Node { value: Value::List(_) | Value::Map(_), .. }) => refused("this is more than a single value"),
        Some(node) if !node.place.is_nowhere() && node.place.start < node.place.end => {
            Ok(Edit { place: node.place, text: text.to_owned() })
        }
        Some(_) => refused("this key has no value yet: write it in the text"),
        None => added(source, group, key, text),
    }
}

/// A key put behind the last of a group.
fn added(source: &Source, group: &Node, key: &str, text: &str) -> Result<Edit, Refusal> {
    let Value::Map(entries) = &group.value else { return refused("this is no group of keys") };
    let Some(((first, _), (_, last))) = entries.first().zip(entries.last()) else {
        return refused("this group is empty");
    };
    if is_flow(source, group) {
        let behind = end(source, last);
        return Ok(Edit { place: Place { file: 0, start: behind, end: behind }, text: format!(", {key}: {text}") });
    }
    let line = lines(source, Place { end: end(source, last), ..last.place });
    let indent = &source.text()[lines(source, first.place).start..first.place.start];
    let break_before = if source.slice(line).ends_with('\n') { "" } else { "\n" };
    let place = Place { file: 0, start: line.end, end: line.end };
    Ok(Edit { place, text: format!("{break_before}{indent}{key}: {text}\n") })
}

fn shares_line(source: &Source, one: Place, other: Place) -> bool {
    one != other && source.line_column(one.start).0 == source.line_column(other.start).0
}

/// An id like another that no bead, cord or finding has: `reed-2`.
fn fresh(root: &Node, id: &str) -> String {
    let taken = |new: &str| {
        ["beads", "cords", "findings"].iter().any(|group| root.entry(group).and_then(|node| node.entry(new)).is_some())
    };
    let stem = id.trim_end_matches(|sign: char| sign.is_ascii_digit()).trim_end_matches('-');
    let stem = if stem.len() < id.len() && !stem.is_empty() && id[stem.len()..].starts_with('-') { stem } else { id };
    let all = (2_u32..).map(|number| format!("{stem}-{number}"));
    all.into_iter().find(|new| !taken(new)).unwrap_or_default()
}
