//! Runs in the bead lists of a tree: where they stand, and what they say.

use super::{Edit, Refusal, refused, value};
use crate::pattern::node::{Node, Value};
use crate::source::{Place, Source};

/// The keys of entries under which bead lists stand.
const LISTS: [&str; 5] = ["of", "mirror", "about", "dangle", "beads"];

/// An entry of a bead list, and the entries it stands in, the nearest last.
#[derive(Clone)]
pub struct Spot<'n> {
    /// The list.
    pub list: &'n Node,
    /// Its place in the list.
    pub index: usize,
    /// The entry.
    pub entry: &'n Node,
    /// The entries about it.
    pub about: Vec<Spot<'n>>,
}

impl Spot<'_> {
    /// The count and id of a run.
    pub fn run(&self) -> Option<(u32, &str)> {
        let Value::Scalar(text) = &self.entry.value else { return None };
        let text = text.trim();
        let counted = text.split_once([' ', '\t']).and_then(|(count, id)| Some((count.parse().ok()?, id.trim())));
        Some(counted.unwrap_or((1, text)))
    }
}

/// Every entry of every strand's bead list, outer ones first.
pub fn spots(root: &Node) -> Vec<Spot<'_>> {
    let mut found = Vec::new();
    if let Some(Node { value: Value::List(strands), .. }) = value(root, "strands") {
        strands.iter().for_each(|strand| gather(strand, &[], &mut found));
    }
    found
}

/// The entries of the bead lists that stand in a group of keys.
fn gather<'n>(group: &'n Node, about: &[Spot<'n>], found: &mut Vec<Spot<'n>>) {
    let Value::Map(entries) = &group.value else { return };
    for (_, list) in entries.iter().filter(|(key, _)| LISTS.contains(&key.value.as_str())) {
        let Value::List(items) = &list.value else { continue };
        for (index, entry) in items.iter().enumerate() {
            let spot = Spot { list, index, entry, about: about.to_vec() };
            found.push(spot.clone());
            gather(entry, &[about, &[spot]].concat(), found);
        }
    }
}

/// The entry at a place.
pub fn at(root: &Node, place: Place) -> Result<Spot<'_>, Refusal> {
    let found = spots(root).into_iter().find(|spot| spot.entry.place == place);
    found.ok_or_else(|| Refusal("this bead stands elsewhere now: click it again".to_owned()))
}

/// Another id for a run, or for every run of its id.
pub fn swap(source: &Source, root: &Node, run: Place, to: &str, everywhere: bool) -> Result<Vec<Edit>, Refusal> {
    let Some(id) = at(root, run)?.run().map(|(_, id)| id.to_owned()) else { return refused("this is not a run") };
    let concerns =
        |spot: &Spot<'_>| spot.entry.place == run || everywhere && spot.run().is_some_and(|(_, one)| one == id);
    let edit = |spot: Spot<'_>| renamed(source, spot.entry.place, &id, to);
    Ok(spots(root).into_iter().filter(concerns).filter_map(edit).collect())
}

/// The edit of the id in a run.
fn renamed(source: &Source, run: Place, id: &str, to: &str) -> Option<Edit> {
    let start = run.start + source.slice(run).rfind(id)?;
    Some(Edit { place: Place { start, end: start + id.len() }, text: to.to_owned() })
}

/// Another count for a run.
pub fn count(source: &Source, root: &Node, run: Place, count: u32) -> Result<Vec<Edit>, Refusal> {
    let spot = at(root, run)?;
    let Some((_, id)) = spot.run() else { return refused("this is not a run") };
    let Some(to) = source.slice(run).rfind(id).map(|from| run.start + from) else {
        return refused("this is not a run");
    };
    let quote = source.slice(run).chars().next().filter(|sign| "\"'".contains(*sign)).map_or(0, char::len_utf8);
    let text = match count {
        0 => return refused("a run has at least one bead: take it out instead"),
        1 => String::new(),
        count => format!("{count} "),
    };
    Ok(vec![Edit { place: Place { start: run.start + quote, end: to }, text }])
}
