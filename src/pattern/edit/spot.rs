//! Runs in the bead lists of a tree: where they stand, and what they say.

use super::{Edit, Refusal};
use crate::pattern::items::counted;
use crate::pattern::node::{Node, Value};
use crate::source::{Place, Source};

/// The keys of entries under which bead lists stand.
const LISTS: [&str; 5] = ["of", "mirror", "about", "dangle", "beads"];

/// An entry of a bead list.
#[derive(Clone, Copy)]
pub struct Entry<'n> {
    /// The list.
    pub list: &'n Node,
    /// Its place in the list.
    pub index: usize,
    /// What is written there.
    pub node: &'n Node,
}

/// An entry, and the nearest repeat about it.
#[derive(Clone, Copy)]
pub struct EntryPlace<'n> {
    pub own: Entry<'n>,
    pub repeat: Option<Entry<'n>>,
}

impl<'n> EntryPlace<'n> {
    /// Where it stands.
    pub fn place(&self) -> Place {
        self.own.node.place
    }

    /// The id of a run.
    pub fn id(&self) -> Option<&'n str> {
        match &self.own.node.value {
            Value::Scalar(text) => Some(counted(text).1),
            _ => None,
        }
    }
}

/// Every entry of every strand's bead list, outer ones first.
pub fn spots(root: &Node) -> Vec<EntryPlace<'_>> {
    let mut found = Vec::new();
    if let Some(Node { value: Value::List(strands), .. }) = root.entry("strands") {
        strands.iter().for_each(|strand| gather(strand, None, &mut found));
    }
    found
}

/// The entries of the bead lists that stand in a group of keys, with the nearest repeat about them.
fn gather<'n>(group: &'n Node, repeat: Option<Entry<'n>>, found: &mut Vec<EntryPlace<'n>>) {
    let Value::Map(entries) = &group.value else { return };
    for (_, list) in entries.iter().filter(|(key, _)| LISTS.contains(&key.value.as_str())) {
        let Value::List(items) = &list.value else { continue };
        for (index, node) in items.iter().enumerate() {
            let own = Entry { list, index, node };
            found.push(EntryPlace { own, repeat });
            gather(node, if node.entry("repeat").is_some() { Some(own) } else { repeat }, found);
        }
    }
}

/// The entry at a place.
pub fn at(root: &Node, place: Place) -> Result<EntryPlace<'_>, Refusal> {
    let found = spots(root).into_iter().find(|spot| spot.place() == place);
    found.ok_or(Refusal::Moved)
}

/// Another id in an entry, or wherever a strand strings the same.
pub fn swap(
    source: &Source,
    root: &Node,
    run: Place,
    from: &str,
    to: &str,
    everywhere: bool,
) -> Result<Vec<Edit>, Refusal> {
    at(root, run)?;
    let concerned = spots(root).into_iter().filter(|spot| everywhere || spot.place() == run);
    let places: Vec<_> = concerned.map(|spot| named(source, &spot, from, to)).collect::<Result<_, _>>()?;
    let edits: Vec<_> = places.concat().into_iter().map(|place| Edit { place, text: to.to_owned() }).collect();
    if edits.is_empty() { Err(Refusal::NotThatBead) } else { Ok(edits) }
}

/// Where an entry names an id: as a run, or as a row that is worked out.
fn named(source: &Source, spot: &EntryPlace<'_>, id: &str, other: &str) -> Result<Vec<Place>, Refusal> {
    if spot.id() == Some(id) {
        return Ok(written(source, spot.place(), id).into_iter().collect());
    }
    let node = spot.own.node;
    let list = |key| match node.entry(key).map(|node| &node.value) {
        Some(Value::List(items)) => items.as_slice(),
        _ => &[],
    };
    let is_row = |key: &str| node.entry(key).is_some();
    let ends = ["from", "to"].into_iter().filter(|_| is_row("fade")).filter_map(|key| node.entry(key));
    let values = ends.chain(list("graduate")).filter(|node| matches!(&node.value, Value::Scalar(text) if text == id));
    let mut places: Vec<_> = values.filter_map(|node| written(source, node.place, id)).collect();
    for parts in ["of", "apart"].into_iter().filter(|_| is_row("random")).filter_map(|key| node.entry(key)) {
        let Value::Map(parts) = &parts.value else { continue };
        let key = |id: &str| parts.iter().map(|(key, _)| key).find(|key| key.value == id);
        if key(id).is_some() && key(other).is_some() && id != other {
            return Err(Refusal::BothInNoOrder);
        }
        places.extend(key(id).and_then(|key| written(source, key.place, id)));
    }
    Ok(places)
}

/// Where an id stands in what is written at a place, behind a run's count or within quotes.
fn written(source: &Source, place: Place, id: &str) -> Option<Place> {
    let start = place.start + source.slice(place).rfind(id)?;
    Some(Place { file: 0, start, end: start + id.len() })
}

/// Another count for a run, or for a row that is worked out.
pub fn count(source: &Source, root: &Node, run: Place, count: u32) -> Result<Vec<Edit>, Refusal> {
    let spot = at(root, run)?;
    if count == 0 {
        return Err(Refusal::NoBeads);
    }
    if let Some(counted) = ["random", "fade"].into_iter().find_map(|key| spot.own.node.entry(key)) {
        return Ok(vec![Edit { place: counted.place, text: count.to_string() }]);
    }
    let place = spot.id().and_then(|id| written(source, run, id));
    let Some(Place { start: to, .. }) = place else { return Err(Refusal::NoRun) };
    let quote = source.slice(run).chars().next().filter(|sign| "\"'".contains(*sign)).map_or(0, char::len_utf8);
    let text = if count == 1 { String::new() } else { format!("{count} ") };
    Ok(vec![Edit { place: Place { file: 0, start: run.start + quote, end: to }, text }])
}
