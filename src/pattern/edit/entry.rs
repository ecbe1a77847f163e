//! Keys of beads and colourways set, and beads copied.

use std::collections::BTreeSet;

use super::list::{end, is_flow, lines};
use super::spot;
use super::{Edit, Refusal, applied};
use crate::pattern::node::{self, Node, Value};
use crate::source::{At, Place, Source};

/// A key and its value as the pattern writes them.
type KeyAndValue<'a> = (&'a str, &'a str);

/// A bead's entry, with the file in which it stands.
struct FoundEntry<'s> {
    file: &'s Source,
    key: At<String>,
    node: Node,
    /// Whether it stands in brackets among others.
    in_brackets: bool,
}

/// A bead of the pattern, or where that has none of the id, of its shelves.
fn find<'s>(source: &'s Source, root: &Node, id: &str) -> Result<FoundEntry<'s>, Refusal> {
    let shelved = || source.files().skip(1).find_map(|file| found(file, &node::parse(file).root?, id));
    let found = found(source, root, id).or_else(shelved);
    found.ok_or_else(|| Refusal::NoBead(id.to_owned()))
}

fn found<'s>(file: &'s Source, root: &Node, id: &str) -> Option<FoundEntry<'s>> {
    let group = root.entry("beads")?;
    let Value::Map(beads) = &group.value else { return None };
    let (key, node) = beads.iter().find(|(at, _)| at.value == id)?.clone();
    Some(FoundEntry { file, key, node, in_brackets: stands_in_brackets(file, group, beads) })
}

/// Whether the entries of a group stand in brackets.
fn stands_in_brackets(file: &Source, group: &Node, entries: &[(At<String>, Node)]) -> bool {
    let share_a_line = |pair: &[(At<String>, Node)]| {
        file.line_column(pair[0].0.place.start).0 == file.line_column(pair[1].0.place.start).0
    };
    is_flow(file, group) || entries.windows(2).any(share_a_line)
}

impl FoundEntry<'_> {
    fn is_own(&self) -> bool {
        self.file.file() == 0
    }

    /// The entry under another id with a key set, as it would be written at a line's start.
    fn copied(&self, id: &str, pair: KeyAndValue<'_>) -> Result<String, Refusal> {
        let own = Place { file: 0, start: self.key.place.start, end: end(self.file, &self.node) };
        let line = lines(self.file, own);
        let whole = if self.in_brackets { own } else { Place { start: own.start, ..line } };
        let set = set_in(self.file, &self.node, pair)?;
        let within = |place: Place| Place { file: 0, start: place.start - whole.start, end: place.end - whole.start };
        let renamed = Edit { place: within(self.key.place), text: id.to_owned() };
        let set = Edit { place: within(set.place), text: set.text };
        let copy = applied(&self.file.text()[whole.start..whole.end], vec![renamed, set]);
        Ok(outdented(&copy, own.start - line.start))
    }
}

/// Lines after the first moved to the left by so many spaces, as far as they have them.
fn outdented(text: &str, by: usize) -> String {
    let moved = |line: &str| line[by.min(line.len() - line.trim_start_matches(' ').len())..].to_owned();
    let mut lines = text.split_inclusive('\n');
    lines.next().unwrap_or_default().to_owned() + &lines.map(moved).collect::<String>()
}

/// A key of a bead everywhere. A bead of a shelf is copied into the pattern, whose own wins.
pub fn set(source: &Source, root: &Node, id: &str, pair: KeyAndValue<'_>) -> Result<Vec<Edit>, Refusal> {
    let found = find(source, root, id)?;
    let edit = if found.is_own() {
        set_in(source, &found.node, pair)?
    } else {
        placed(source, root, &found, &found.copied(id, pair)?)?
    };
    Ok(vec![edit])
}

/// A key of a bead in one run alone, for which the bead is copied under a new id.
pub fn set_only(
    source: &Source,
    root: &Node,
    id: &str,
    pair: KeyAndValue<'_>,
    run: Place,
) -> Result<Vec<Edit>, Refusal> {
    let found = find(source, root, id)?;
    let new = fresh(source, id);
    let mut edits = spot::swap(source, root, run, id, &new, false)?;
    edits.push(placed(source, root, &found, &found.copied(&new, pair)?)?);
    Ok(edits)
}

/// Puts a copy of an entry behind it, or where it stands on a shelf, behind the last bead of the pattern.
fn placed(source: &Source, root: &Node, of: &FoundEntry<'_>, copy: &str) -> Result<Edit, Refusal> {
    let Some(group) = root.entry("beads") else { return begun(source, root, copy) };
    let Value::Map(beads) = &group.value else { return Err(Refusal::BeadsNoGroup) };
    let behind = beads.iter().find(|(key, _)| of.is_own() && key.value == of.key.value).or(beads.last());
    let Some((key, node)) = behind else { return Err(Refusal::BeadsEmpty) };
    let last = Place { file: 0, start: key.place.start, end: end(source, node) };
    if !stands_in_brackets(source, group, beads) {
        return Ok(on_lines(source, last, key.place, copy));
    }
    if !of.in_brackets && !is_flow(of.file, &of.node) {
        return Err(Refusal::OtherNotation);
    }
    Ok(Edit { place: Place { start: last.end, ..last }, text: format!(", {}", copy.trim_end()) })
}

/// The first bead of a pattern whose others stand on shelves, in a group before the strands.
fn begun(source: &Source, root: &Node, copy: &str) -> Result<Edit, Refusal> {
    let Value::Map(entries) = &root.value else { return Err(Refusal::NoPattern) };
    let strands = entries.iter().find(|(key, _)| key.value == "strands").filter(|_| !is_flow(source, root));
    let Some((key, _)) = strands else { return Err(Refusal::NoPlaceForBead) };
    let start = lines(source, key.place).start;
    let group = format!("beads:\n  {}\n\n", copy.trim_end().replace('\n', "\n  "));
    Ok(Edit { place: Place { file: 0, start, end: start }, text: group })
}

/// A bead's colour, name or finish in one colourway.
pub fn recolour(
    source: &Source,
    root: &Node,
    way: &str,
    id: &str,
    pair: KeyAndValue<'_>,
) -> Result<Vec<Edit>, Refusal> {
    let way_node = root.entry("colourways").and_then(|ways| ways.entry(way));
    let Some(beads) = way_node else { return Err(Refusal::NoColourway) };
    if !["colour", "name", "finish"].contains(&pair.0) {
        return Err(Refusal::NotOfColourway);
    }
    match beads.entry(id) {
        Some(entry) => Ok(vec![set_in(source, entry, pair)?]),
        None => Ok(vec![added(source, beads, id, &format!("{{ {}: {} }}", pair.0, pair.1))?]),
    }
}

/// A key of a group set: its value replaced, or the key put behind the last.
fn set_in(source: &Source, group: &Node, (key, text): KeyAndValue<'_>) -> Result<Edit, Refusal> {
    match group.entry(key) {
        Some(Node { value: Value::List(_) | Value::Map(_), .. }) => Err(Refusal::NoSingleValue),
        Some(node) if !node.place.is_nowhere() && node.place.start < node.place.end => {
            Ok(Edit { place: node.place, text: text.to_owned() })
        }
        Some(_) => Err(Refusal::NoValueYet),
        None => added(source, group, key, text),
    }
}

/// A key put behind the last of a group.
pub fn added(source: &Source, group: &Node, key: &str, text: &str) -> Result<Edit, Refusal> {
    let Value::Map(entries) = &group.value else { return Err(Refusal::NoGroup) };
    let Some(((first, _), (_, last))) = entries.first().zip(entries.last()) else {
        return Err(Refusal::EmptyGroup);
    };
    if is_flow(source, group) {
        let behind = end(source, last);
        return Ok(Edit { place: Place { file: 0, start: behind, end: behind }, text: format!(", {key}: {text}") });
    }
    let last = Place { file: 0, start: last.place.start, end: end(source, last) };
    Ok(on_lines(source, last, first.place, &format!("{key}: {text}")))
}

/// Text put on lines of its own behind a place, as far to the right as what stands at another.
pub fn on_lines(source: &Source, behind: Place, like: Place, text: &str) -> Edit {
    let line = lines(source, behind);
    let indent = " ".repeat(like.start - lines(source, like).start);
    let break_before = if source.text()[line.start..line.end].ends_with('\n') { "" } else { "\n" };
    let moved = text.trim_end().replace('\n', &format!("\n{indent}"));
    let place = Place { file: 0, start: line.end, end: line.end };
    Edit { place, text: format!("{break_before}{indent}{moved}\n") }
}

/// An id like another that no bead, cord or finding has: `reed-2`.
fn fresh(source: &Source, id: &str) -> String {
    let known: BTreeSet<_> = source.files().flat_map(ids).collect();
    let stem = id.trim_end_matches(|sign: char| sign.is_ascii_digit()).trim_end_matches('-');
    let stem = if stem.len() < id.len() && !stem.is_empty() && id[stem.len()..].starts_with('-') { stem } else { id };
    (2_u32..).map(|number| format!("{stem}-{number}")).find(|new| !known.contains(new)).unwrap_or_default()
}

/// The ids that a file defines.
fn ids(file: &Source) -> Vec<String> {
    let root = node::parse(file).root;
    root.iter().flat_map(Node::articles).map(|(id, _)| id.value.clone()).collect()
}
