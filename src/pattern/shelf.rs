//! Shelves: beads, cords and findings that several patterns take from one file.
//!
//! What a pattern writes itself wins over its shelves, and an earlier shelf over a later one. Of a shelf
//! nothing is remarked on that the pattern does not use. Reading the files is left to whoever makes the
//! [`Source`].

use std::collections::BTreeSet;

use schemars::JsonSchema;

use crate::remark::Remark;
use crate::remark::said::language::Written;
use crate::remark::said::shelves::{NoShelf, Shelving};
use crate::source::{At, Place, Source};

use super::dict::Dict;
use super::model::{Assorted, Bead, Cord, Finding, Pattern, Sold};
use super::node::{self, Node, Tree, Value};
use super::record::{Read, Reader, record};
use super::values::Whole;
use super::{Draft, span, wrong_version};

record!(
    /// A maker's shelf: what several patterns are made from.
    Shelf {
        /// Version of the pattern language: 1.
        festoon: At<Whole>,
        /// The currency of all prices, such as EUR.
        currency: Option<At<String>>,
        /// The beads, each under the id that patterns use.
        beads: Dict<Bead>,
        /// The cords.
        cords: Dict<Cord>,
        /// The findings.
        findings: Dict<Finding>,
        /// What is bought with several kinds of bead in it.
        assorted: Dict<Assorted>,
    }
);

/// The files of a pattern's shelves: one, or several.
#[derive(Clone, Debug, JsonSchema)]
#[schemars(untagged)]
pub enum Shelves {
    /// One file.
    One(At<String>),
    /// Several files, of which an earlier wins over a later.
    Several(Vec<At<String>>),
}

impl Shelves {
    /// The files' names as written.
    #[must_use]
    pub fn names(&self) -> &[At<String>] {
        match self {
            Self::One(name) => std::slice::from_ref(name),
            Self::Several(names) => names,
        }
    }
}

impl Read for Shelves {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.value {
            Value::List(_) => Vec::read(node, reader).map(Self::Several),
            _ => At::read(node, reader).map(Self::One),
        }
    }
}

/// The keys of which a pattern has each and a shelf none.
const OF_PATTERNS: [&str; 3] = ["title", "kind", "strands"];

/// The shelves that a pattern names, as far as that can be read.
#[must_use]
pub fn shelves(source: &Source) -> Vec<At<String>> {
    if !source.text().contains("shelf") {
        return Vec::new();
    }
    let mut unsaid = Reader::new(source, Vec::new());
    let root = node::parse(source).root;
    let shelves = root.and_then(|root| Shelves::read(root.entry("shelf")?, &mut unsaid));
    shelves.map(|shelves| shelves.names().to_vec()).unwrap_or_default()
}

/// Whether a file is a shelf, and no pattern.
#[must_use]
pub fn is_shelf(source: &Source) -> bool {
    !source.text().contains("strands") && node::parse(source).root.is_some_and(|root| holds_shelf(&root))
}

fn holds_shelf(root: &Node) -> bool {
    node::ARTICLES.into_iter().any(|key| root.entry(key).is_some()) && !is_pattern(root)
}

/// A remark about a shelf where a pattern is meant.
pub fn no_pattern(root: &Node) -> Option<Remark> {
    holds_shelf(root).then(|| Remark::new(Shelving::NoPattern))
}

fn is_pattern(root: &Node) -> bool {
    OF_PATTERNS.into_iter().any(|key| root.entry(key).is_some())
}

/// Reads a shelf by itself. Without remarks there is a shelf.
#[must_use]
pub fn read_shelf(source: &Source) -> (Option<Shelf>, Vec<Remark>) {
    let Opened { shelf, slips, remarks, .. } = open(source, node::parse(source));
    (shelf, [slips, remarks].concat())
}

/// A shelf's file as far as it can be read.
struct Opened {
    shelf: Option<Shelf>,
    /// What is wrong with how it is written.
    slips: Vec<Remark>,
    /// What is wrong with what it says.
    remarks: Vec<Remark>,
    /// What was left out of it.
    lost: Vec<Place>,
    /// Each entry from its id to its end, and the place of its id.
    entries: Vec<(Place, Place)>,
}

fn open(file: &Source, Tree { root, remarks: slips, lost }: Tree) -> Opened {
    let entries = root.iter().flat_map(entries).collect();
    let mut reader = Reader::new(file, lost.clone());
    let shelf = root.and_then(|root| Shelf::read(&root, &mut reader));
    let version = shelf.as_ref().and_then(|shelf| wrong_version(Written::Shelf, &shelf.festoon));
    Opened { shelf, slips, remarks: reader.remarks.into_iter().chain(version).collect(), lost, entries }
}

fn entries(root: &Node) -> impl Iterator<Item = (Place, Place)> {
    root.articles().map(|(id, node)| (span(id, node), id.place))
}

/// Puts beside a pattern's own beads, cords and findings those of its shelves, and says what is wrong with
/// what it uses of them.
pub fn stock(draft: &mut Draft, source: &Source) {
    let Some(pattern) = &mut draft.pattern else { return };
    let names = pattern.shelf.as_ref().map_or(&[][..], Shelves::names).to_vec();
    let opened = given(pattern, &names, source, &mut draft.remarks);
    let live = pattern.live();
    for shelf in opened {
        let is_told = |remark: &Remark| remark.place.is_none_or(|at| shelf.concerns(at, &live));
        let told: Vec<_> = shelf.remarks.iter().filter(|remark| is_told(remark)).cloned().collect();
        draft.holes.add(&told, shelf.lost.clone(), source);
        draft.remarks.extend(pattern.priced_otherwise(&shelf, &live));
        draft.remarks.extend(shelf.slips.into_iter().chain(told));
    }
}

/// Takes what there is on the shelves that were given, and says which were not or could not be read.
fn given(pattern: &mut Pattern, names: &[At<String>], source: &Source, remarks: &mut Vec<Remark>) -> Vec<Opened> {
    let mut opened = Vec::new();
    for shelf in source.shelves() {
        let name = names.iter().find(|name| Some(&name.value) == shelf.called.as_ref());
        match shelf.read.as_ref().map_err(|why| NoShelf::Unread(why.clone())).and_then(sound) {
            Ok(mut shelf) => {
                pattern.take(&mut shelf);
                opened.push(shelf);
            }
            Err(why) => remarks.push(pattern.without(name, why)),
        }
    }
    for (at, name) in names.iter().enumerate() {
        if names[..at].iter().any(|other| other.value == name.value) {
            remarks.push(Remark::new(Shelving::Twice { name: name.value.clone() }).at(name.place));
        } else if !source.shelves().iter().any(|shelf| shelf.called.as_ref() == Some(&name.value)) {
            remarks.push(pattern.without(Some(name), NoShelf::NotGiven));
        }
    }
    opened
}

/// Opens a file that must be a shelf.
fn sound(file: &Source) -> Result<Opened, NoShelf> {
    let tree = node::parse(file);
    if tree.root.as_ref().is_some_and(is_pattern) { Err(NoShelf::Pattern) } else { Ok(open(file, tree)) }
}

impl Opened {
    /// Whether something at a place is of concern: in one of the entries that are used, or in none.
    fn concerns(&self, at: Place, live: &BTreeSet<Place>) -> bool {
        let entry = self.entries.iter().find(|(entry, _)| entry.holds(at));
        entry.is_none_or(|(_, id)| live.contains(id))
    }
}

impl Pattern {
    /// Takes from a shelf all that it does not have yet.
    fn take(&mut self, opened: &mut Opened) {
        let Some(shelf) = &mut opened.shelf else { return self.lose() };
        let known: BTreeSet<_> = self.keys().map(|key| key.value.clone()).collect();
        self.beads.shelve(std::mem::take(&mut shelf.beads), &known);
        self.cords.shelve(std::mem::take(&mut shelf.cords), &known);
        self.findings.get_or_insert_default().shelve(std::mem::take(&mut shelf.findings), &known);
        self.assorted.shelve(std::mem::take(&mut shelf.assorted), &known);
        if self.currency.is_none() {
            self.currency = shelf.currency.as_ref().map(|at| at.value.clone());
        }
    }

    /// Any id may stand on a shelf that cannot be read.
    fn lose(&mut self) {
        (self.beads.lost, self.cords.lost) = (true, true);
        self.findings.get_or_insert_default().lost = true;
    }

    /// Says why a shelf is not to be had, and that any id may stand there.
    fn without(&mut self, name: Option<&At<String>>, why: NoShelf) -> Remark {
        self.lose();
        let unusable = Shelving::Unusable { name: name.map(|name| name.value.clone()), why };
        Remark::new(unusable).at(name.map_or(self.title.place, |name| name.place))
    }

    /// The keys of all beads, cords and findings, sound or not.
    fn keys(&self) -> impl Iterator<Item = &At<String>> {
        let findings = self.findings.iter().flat_map(Dict::keys);
        self.beads.keys().chain(self.cords.keys()).chain(findings).chain(self.assorted.keys())
    }

    /// The places of the ids of all that is used.
    fn live(&self) -> BTreeSet<Place> {
        let mut used: BTreeSet<_> = self.used_ids().into_iter().collect();
        let supplying: Vec<_> = self.supplying(&used).map(|(key, _)| key.value.clone()).collect();
        used.extend(supplying);
        self.keys().filter(|key| used.contains(&key.value)).map(|key| key.place).collect()
    }

    /// What several kinds are bought in of which one is used.
    pub fn supplying(&self, used: &BTreeSet<String>) -> impl Iterator<Item = &(At<String>, Assorted)> {
        self.assorted.entries.iter().filter(|(_, one)| one.holds.ids().any(|id| used.contains(id)))
    }

    /// Refuses a shelf whose prices are told in another currency than the pattern's, where one of them counts.
    fn priced_otherwise(&self, shelf: &Opened, live: &BTreeSet<Place>) -> Option<Remark> {
        let (own, other) = (self.currency.as_ref()?, shelf.shelf.as_ref()?.currency.as_ref()?);
        let is_priced = |sold: &Option<At<Sold>>| sold.as_ref().is_some_and(|sold| sold.value.price.is_some());
        let beads = self.beads.entries.iter().filter(|(_, bead)| is_priced(&bead.sold)).map(|(key, _)| key);
        let cords = self.cords.entries.iter().filter(|(_, cord)| is_priced(&cord.sold)).map(|(key, _)| key);
        let findings = self.findings.iter().flat_map(|all| &all.entries);
        let findings = findings.filter(|(_, finding)| is_priced(&finding.sold)).map(|(key, _)| key);
        let assorted =
            self.assorted.entries.iter().filter(|(_, one)| one.sold.value.price.is_some()).map(|(key, _)| key);
        let of_shelf = |key: &&At<String>| key.place.file == other.place.file && live.contains(&key.place);
        let key = beads.chain(cords).chain(findings).chain(assorted).find(of_shelf).filter(|_| *own != other.value)?;
        let (id, told, own) = (key.value.clone(), other.value.clone(), own.clone());
        Some(Remark::new(Shelving::TwoCurrencies { id, told, own }).at(other.place))
    }
}
