//! Sizes and colourways put in, and a size's lengths changed.

use super::entry::{added, on_lines};
use super::length::change_like;
use super::list::{end, is_flow};
use super::{Edit, Refusal};
use crate::pattern::node::{Node, Value};
use crate::source::{Place, Source};
use crate::units::Length;

/// A size behind the last: so much longer or shorter by `change`, or for a wearer by the key of a measure.
pub fn add_size(source: &Source, root: &Node, name: &str, (key, value): (&str, &str)) -> Result<Vec<Edit>, Refusal> {
    let named = quoted(name)?;
    let entry = match key {
        "change" => format!("{{ name: {named}, change: {value} }}"),
        measure => format!("{{ name: {named}, wear: {{ {measure}: {value} }} }}"),
    };
    let Some(sizes) = root.entry("sizes") else {
        return ended(source, root, &format!("sizes:\n  - {entry}\n"));
    };
    let Value::List(items) = &sizes.value else { return Err(Refusal::SizesNoList) };
    if items.iter().any(|item| is_named(item, name)) {
        return Err(Refusal::SizeKnown);
    }
    let Some(last) = items.last() else { return Err(Refusal::SizesEmpty) };
    let behind = Place { file: 0, start: last.place.start, end: end(source, last) };
    if is_flow(source, sizes) {
        return Ok(vec![Edit { place: Place { start: behind.end, ..behind }, text: format!(", {entry}") }]);
    }
    let text = source.text();
    let dash = text[..last.place.start].rfind('-').unwrap_or(last.place.start);
    Ok(vec![on_lines(source, behind, Place { start: dash, ..behind }, &format!("- {entry}"))])
}

/// A colourway behind the last, in which a bead has a colour.
pub fn add_colourway(
    source: &Source,
    root: &Node,
    name: &str,
    (bead, colour): (&str, &str),
) -> Result<Vec<Edit>, Refusal> {
    let named = quoted(name)?;
    let text = format!("{{ {bead}: {{ colour: {colour} }} }}");
    match root.entry("colourways") {
        Some(ways) if ways.entry(name).is_some() => Err(Refusal::ColourwayKnown),
        Some(ways) => Ok(vec![added(source, ways, &named, &text)?]),
        None => ended(source, root, &format!("colourways:\n  {named}: {text}\n")),
    }
}

/// Strands so much longer or shorter in one size.
pub fn resize(source: &Source, root: &Node, name: &str, by: Length) -> Result<Vec<Edit>, Refusal> {
    let size = root.entry("sizes").and_then(|sizes| match &sizes.value {
        Value::List(items) => items.iter().find(|item| is_named(item, name)),
        _ => None,
    });
    let Some(size) = size else { return Err(Refusal::NoSize) };
    let Some(node) = size.entry("change") else {
        return Err(Refusal::SizeFollows);
    };
    let written = source.slice(node.place);
    let text = change_like(written, by).ok_or(Refusal::SizeOfPattern)?;
    Ok(vec![Edit { place: node.place, text }])
}

fn is_named(size: &Node, name: &str) -> bool {
    matches!(size.entry("name").map(|node| &node.value), Some(Value::Scalar(text)) if text == name)
}

/// A group put behind everything else.
fn ended(source: &Source, root: &Node, group: &str) -> Result<Vec<Edit>, Refusal> {
    if is_flow(source, root) {
        return Err(Refusal::InBrackets);
    }
    let end = source.text().len();
    let break_before = if source.text().ends_with('\n') { "\n" } else { "\n\n" };
    Ok(vec![Edit { place: Place { file: 0, start: end, end }, text: format!("{break_before}{group}") }])
}

/// A name as YAML reads it back: in quotes unless it is made of plain words.
fn quoted(name: &str) -> Result<String, Refusal> {
    if name.trim().is_empty() || name.chars().any(char::is_control) {
        return Err(Refusal::Unnamed);
    }
    let is_plain = |sign: char| sign.is_alphabetic() || sign == ' ' || sign == '-';
    let is_word = ["true", "false", "yes", "no", "on", "off", "null"].contains(&name.to_lowercase().as_str());
    let plain = name.chars().all(is_plain) && name.starts_with(char::is_alphabetic) && name.trim() == name && !is_word;
    Ok(if plain { name.to_owned() } else { format!("\"{}\"", name.replace('\\', "\\\\").replace('"', "\\\"")) })
}
