//! Runs in the bead lists of a tree: where they stand, and what they say.

use super::{Edit, Refusal, refused};
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
pub struct Spot<'n> {
    pub own: Entry<'n>,
    pub repeat: Option<Entry<'n>>,
}

impl<'n> Spot<'n> {
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
pub fn spots(root: &Node) -> Vec<Spot<'_>> {
    let mut found = Vec::new();
    if let Some(Node { value: Value::List(strands), .. }) = root.entry("strands") {
        strands.iter().for_each(|strand| gather(strand, None, &mut found));
    }
    found
}

/// The entries of the bead lists that stand in a group of keys, with the nearest repeat about them.
fn gather<'n>(group: &'n Node, repeat: Option<Entry<'n>>, found: &mut Vec<Spot<'n>>) {
    let Value::Map(entries) = &group.value else { return };
    for (_, list) in entries.iter().filter(|(key, _)| LISTS.contains(&key.value.as_str())) {
        let Value::List(items) = &list.value else { continue };
        for (index, node) in items.iter().enumerate() {
            let own = Entry { list, index, node };
            found.push(Spot { own, repeat });
            gather(node, if node.entry("repeat").is_some() { Some(own) } else { repeat }, found);
        }
    }
}

/// The entry at a place.
pub fn at(root: &Node, place: Place) -> Result<Spot<'_>, Refusal> {
    let found = spots(root).into_iter().find(|spot| spot.place() == place);
    found.ok_or_else(|| Refusal("this bead stands elsewhere now: click it again".to_owned()))
}

/// Another id for a run, or for every run of its id.
pub fn swap(source: &Source, root: &Node, run: Place, to: &str, everywhere: bool) -> Result<Vec<Edit>, Refusal> {
    let Some(id) = at(root, run)?.id() else { return refused("this is not a run") };
    let concerns = |spot: &Spot<'_>| spot.place() == run || everywhere && spot.id() == Some(id);
    let edit = |spot: Spot<'_>| renamed(source, spot.place(), id, to);
    Ok(spots(root).into_iter().filter(concerns).filter_map(edit).collect())
}

/// The edit of the id in a run.
fn renamed(source: &Source, run: Place, id: &str, to: &str) -> Option<Edit> {
    let start = run.start + source.slice(run).rfind(id)?;
    Some(Edit { place: Place { file: 0, start, end: start + id.len() }, text: to.to_owned() })
}

/// Another count for a run.
pub fn count(source: &Source, root: &Node, run: Place, count: u32) -> Result<Vec<Edit>, Refusal> {
    let Some(id) = at(root, run)?.id() else { return refused("this is not a run") };
    let Some(to) = source.slice(run).rfind(id).map(|from| run.start + from) else {
        return refused("this is not a run");
    };
    let quote = source.slice(run).chars().next().filter(|sign| "\"'".contains(*sign)).map_or(0, char::len_utf8);
    let text = match count {
        0 => return refused("a run has at least one bead: take it out instead"),
        1 => String::new(),
        count => format!("{count} "),
    };
    Ok(vec![Edit { place: Place { file: 0, start: run.start + quote, end: to }, text }])
}
