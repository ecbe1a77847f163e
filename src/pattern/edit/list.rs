//! Entries of bead lists put in, repeated and taken out.

use super::spot::{self, Entry};
use super::{Edit, Refusal};
use crate::pattern::node::{Node, Value};
use crate::source::{Place, Source};

/// The nearest repeat about a run, or the run itself.
fn repeated(root: &Node, run: Place) -> Result<Entry<'_>, Refusal> {
    let spot = spot::at(root, run)?;
    Ok(spot.repeat.unwrap_or(spot.own))
}

/// Another number of times for the nearest repeat about a run; where there is none, the run becomes one.
pub fn repeat(source: &Source, root: &Node, run: Place, times: impl Fn(u32) -> u32) -> Result<Vec<Edit>, Refusal> {
    let Some(count) = repeated(root, run)?.node.entry("repeat") else {
        let text = format!("{{ repeat: {}, of: [{}] }}", times(1), source.slice(run));
        return Ok(vec![Edit { place: run, text }]);
    };
    let Value::Scalar(text) = &count.value else { return Err(Refusal::NoCount) };
    match text.parse::<u32>() {
        Ok(now) => Ok(vec![Edit { place: count.place, text: times(now).to_string() }]),
        Err(_) => Err(Refusal::Fills),
    }
}

/// The nearest repeat about a run, or the run, taken out of its list.
pub fn delete(source: &Source, root: &Node, run: Place) -> Result<Vec<Edit>, Refusal> {
    let Entry { list, index, node } = repeated(root, run)?;
    let Value::List(entries) = &list.value else { return Err(Refusal::NoList) };
    if entries.len() == 1 {
        return Err(Refusal::LastOfList);
    }
    let place = if is_flow(source, list) {
        in_brackets(source, entries, index)
    } else {
        lines(source, Place { end: end(source, node), ..node.place })
    };
    Ok(vec![Edit { place, text: String::new() }])
}

/// Whether a list or group stands in brackets.
pub fn is_flow(source: &Source, node: &Node) -> bool {
    source.slice(node.place).starts_with(['[', '{'])
}

/// Where a node ends: behind the bracket that closes it, which its own place leaves out.
pub fn end(source: &Source, node: &Node) -> usize {
    let last = match &node.value {
        Value::Empty | Value::Scalar(_) => None,
        Value::List(entries) => entries.iter().map(|entry| end(source, entry)).max(),
        Value::Map(entries) => entries.iter().map(|(key, value)| end(source, value).max(key.place.end)).max(),
    };
    let last = last.unwrap_or(node.place.end);
    let closing = is_flow(source, node).then(|| closing(source.text(), last.max(node.place.start + 1)));
    closing.flatten().unwrap_or(last)
}

/// Behind the first closing bracket from a byte on, in front of which only commas, notes and space stand.
fn closing(text: &str, from: usize) -> Option<usize> {
    let mut start = from;
    for line in text[from..].split_inclusive('\n') {
        let code = line.split(" #").next().unwrap_or_default();
        if let Some(at) = code.find([']', '}']) {
            return Some(start + at + 1);
        }
        start += line.len();
    }
    None
}

/// An entry with the comma that parts it from its neighbour.
fn in_brackets(source: &Source, entries: &[Node], index: usize) -> Place {
    let (start, end_of) = (entries[index].place.start, |at: usize| end(source, &entries[at]));
    match (entries.get(index + 1), index.checked_sub(1)) {
        (Some(next), _) => Place { file: 0, start, end: next.place.start },
        (None, Some(before)) => Place { file: 0, start: end_of(before), end: end_of(index) },
        (None, None) => Place { file: 0, start, end: end_of(index) },
    }
}

/// The lines in which an entry with a dash stands, whole.
pub fn lines(source: &Source, place: Place) -> Place {
    let text = source.text();
    let start = text[..place.start].rfind('\n').map_or(0, |at| at + 1);
    let end = text[place.end..].find('\n').map_or(text.len(), |at| place.end + at + 1);
    Place { file: 0, start, end }
}
