//! The articles that a pattern uses, and looking them up by id.

use std::collections::BTreeSet;

use crate::pattern::{self, Dict, FindingKind, Pattern, Recolour};
use crate::remark::said::naming::{Naming, Thing};
use crate::remark::said::selling::Selling;
use crate::remark::said::shaping::Shaping;
use crate::remark::{Remark, near};
use crate::source::At;

use super::Context;
use super::article;
use super::assorted;
use super::entries::{Entries, Index};
use super::finding::Finding;
use super::round::Stock;
use super::shaping::{self, Named};
use super::stock::{Bead, Cord};

/// Beads, cords and findings in the order in which indices count them, and the ids of all that the
/// pattern defines.
#[derive(Debug, Default)]
pub struct Inventory {
    pub beads: Entries<Bead>,
    pub cords: Entries<Cord>,
    pub findings: Entries<Finding>,
    known: [Vec<String>; 3],
    /// Whether any id may be one of a kind of article, because that group cannot be read.
    lost: [bool; 3],
}

/// What an id may mean.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Meaning {
    Bead,
    Cord,
    Finding,
}

impl Meaning {
    const fn thing(self) -> Thing {
        match self {
            Self::Bead => Thing::Bead,
            Self::Cord => Thing::Cord,
            Self::Finding => Thing::Finding,
        }
    }
}

impl Inventory {
    /// Resolves what the pattern uses.
    pub fn fill(pattern: &Pattern, context: &mut Context) -> Self {
        let used = pattern.used_ids();
        let lost = [pattern.beads.lost, pattern.cords.lost, pattern.findings.as_ref().is_some_and(|all| all.lost)];
        let mut shelf = Self { known: named(pattern).map(owned), lost, ..Self::default() };
        for id in &used {
            let bead = pattern.beads.entries.iter().find(|(key, _)| key.value == *id);
            shelf.beads.extend(bead.and_then(|(key, written)| article::bead(id, key.place, written, context)));
        }
        for (key, written) in pattern.cords.entries.iter().filter(|(key, _)| used.contains(&key.value)) {
            shelf.cords.extend(article::cord(&key.value, key.place, written, context));
        }
        let findings = pattern.findings.iter().flat_map(|all| &all.entries);
        for (key, written) in findings.filter(|(key, _)| used.contains(&key.value)) {
            let finding = shelf.shaped(key, written, context);
            shelf.findings.extend(finding);
            if let Some(with) = &written.comes_with {
                sold_together(key, with, pattern, &shelf, context);
            }
        }
        let strung = pattern.strands.value.iter().filter_map(|strand| shelf.finding(&strand.value.cord.value));
        let pins: BTreeSet<_> = strung.filter(|at| shelf.findings[*at].is_pin()).collect();
        shelf.cords.extend(pins.into_iter().map(|at| Cord::of_pin(&shelf.findings[at])).collect::<Vec<_>>());
        for (index, bead) in shelf.beads.iter_mut().enumerate() {
            bead.letter = letters(index);
        }
        shelf
    }

    /// Its beads and findings.
    pub const fn stock(&self) -> Stock<'_> {
        Stock { beads: &self.beads, findings: &self.findings }
    }

    /// A finding, with the bead and the cord of this shelf that it names.
    fn shaped(&self, key: &At<String>, written: &pattern::Finding, context: &mut Context) -> Option<Finding> {
        let bead = written.bead.as_ref().and_then(|bead| self.knotted(written, bead, context));
        let cord = written.cord.as_ref().and_then(|cord| self.wound(written, cord, context));
        let named = Named { bead, cord: cord.map(|cord| (cord, &self.cords[cord])) };
        shaping::finding(&key.value, key.place, written, &named, context)
    }

    /// The bead that the knot in a knot cover is tied round.
    fn knotted(&self, written: &pattern::Finding, bead: &At<String>, context: &mut Context) -> Option<Index<Bead>> {
        if written.kind.value == FindingKind::KnotCover {
            return self.find_bead(bead, context);
        }
        context.refuse(Remark::new(Shaping::Knotted { kind: written.kind.value.word() }).at(bead.place))
    }

    /// The cord that a tassel is wound of.
    fn wound(&self, written: &pattern::Finding, cord: &At<String>, context: &mut Context) -> Option<Index<Cord>> {
        if written.kind.value == FindingKind::Tassel {
            return self.find_cord(cord, context);
        }
        context.refuse(Remark::new(Shaping::Wound { kind: written.kind.value.word() }).at(cord.place))
    }

    /// Gives beads their names in a colourway.
    pub fn rename(&mut self, colours: &Dict<Recolour>, context: &mut Context) {
        for (key, recolour) in &colours.entries {
            let Some(index) = self.find_bead(key, context) else { continue };
            let bead = &mut self.beads[index];
            bead.name = recolour.name.clone().unwrap_or_else(|| bead.name.clone());
        }
    }

    /// The bead of an id; a remark where there is none.
    pub fn find_bead(&self, id: &At<String>, context: &mut Context) -> Option<Index<Bead>> {
        self.expect(Meaning::Bead, id, context);
        self.bead(&id.value)
    }

    /// The cord of an id; a remark where there is none.
    pub fn find_cord(&self, id: &At<String>, context: &mut Context) -> Option<Index<Cord>> {
        let cord = self.cords.find(|cord| cord.id == id.value);
        if cord.is_none() {
            self.expect(Meaning::Cord, id, context);
        }
        cord
    }

    /// The finding of an id; a remark where there is none.
    pub fn find_finding(&self, id: &At<String>, context: &mut Context) -> Option<Index<Finding>> {
        self.expect(Meaning::Finding, id, context);
        self.finding(&id.value)
    }

    /// Leaves a remark where the pattern does not define an id as such an article; what it defines
    /// wrongly has had its remark.
    fn expect(&self, article: Meaning, id: &At<String>, context: &mut Context) {
        match self.means(&id.value) {
            Some(_) if self.known(article).any(|known| known == id.value) => {}
            Some(other) => context.remarks.push(not_a(article, other, id)),
            None if self.lost[article as usize] => {}
            None => context.unknown(article.thing(), id, self.known(article)),
        }
    }

    /// What an id stands for in the pattern, whether or not that is sound.
    pub fn means(&self, id: &str) -> Option<Meaning> {
        let articles = [Meaning::Bead, Meaning::Cord, Meaning::Finding];
        articles.into_iter().find(|article| self.known[*article as usize].iter().any(|known| known == id))
    }

    /// The ids that the pattern defines of one kind of article.
    pub fn known(&self, article: Meaning) -> impl Iterator<Item = &str> + Clone {
        self.known[article as usize].iter().map(String::as_str)
    }

    /// Whether an id that is not known may be a bead or finding all the same.
    pub const fn may_be_strung(&self) -> bool {
        self.lost[Meaning::Bead as usize] || self.lost[Meaning::Finding as usize]
    }

    /// The bead of an id.
    pub fn bead(&self, id: &str) -> Option<Index<Bead>> {
        self.beads.find(|bead| bead.id == id)
    }

    /// The finding of an id.
    pub fn finding(&self, id: &str) -> Option<Index<Finding>> {
        self.findings.find(|finding| finding.id == id)
    }
}

impl Context {
    /// Leaves a remark that an id is not defined.
    pub fn unknown<'a>(&mut self, thing: Thing, id: &At<String>, known: impl Iterator<Item = &'a str> + Clone) {
        if id.place.is_nowhere() || self.holes.swallow(&id.value) {
            return;
        }
        let counted = id.value.find(|sign: char| !sign.is_ascii_digit()).filter(|at| *at > 0);
        let counted = counted.map(|at| id.value.split_at(at)).filter(|(_, id)| known.clone().any(|known| known == *id));
        let meant = match counted {
            Some((count, id)) => Some(format!("{count} {id}")),
            None => near(&id.value, known.clone()),
        };
        let known = known.map(str::to_owned).collect();
        self.remarks.push(Remark::new(Naming::Unknown { thing, id: id.value.clone(), known, meant }).at(id.place));
    }
}

/// Refuses what is said to come with itself, with what itself comes with something, or with chain, which is
/// sold by length; and what has a price beside.
fn sold_together(key: &At<String>, with: &At<String>, pattern: &Pattern, shelf: &Inventory, context: &mut Context) {
    let written = |id: &str| pattern.findings.as_ref().and_then(|all| all.get(id));
    let Some(other) = written(&with.value) else {
        return context.unknown(Thing::Finding, with, shelf.known(Meaning::Finding));
    };
    let (id, named) = (key.value.clone(), with.value.clone());
    let wrong = if other.comes_with.is_some() || other.kind.value == FindingKind::Chain {
        Selling::ComesWithOther { id, with: named }
    } else if written(&key.value).is_some_and(|own| own.sold.is_some()) {
        Selling::ComesAndSold { id, with: named }
    } else {
        return;
    };
    context.remarks.push(Remark::new(wrong).at(with.place));
}

/// A remark about an id that means another kind of article than belongs in its place.
pub fn not_a(article: Meaning, other: Meaning, id: &At<String>) -> Remark {
    let (thing, is) = (article.thing(), other.thing());
    Remark::new(Naming::NotA { thing, id: id.value.clone(), is }).at(id.place)
}

/// What is wrong with the articles of a shelf by themselves, whichever pattern takes them.
#[must_use]
pub fn check(shelf: &pattern::Shelf) -> Vec<Remark> {
    let mut context = Context::default();
    for (key, written) in &shelf.beads.entries {
        article::bead(&key.value, key.place, written, &mut context);
    }
    for (key, written) in &shelf.cords.entries {
        article::cord(&key.value, key.place, written, &mut context);
    }
    for (key, written) in &shelf.findings.entries {
        shaping::finding(&key.value, key.place, written, &Named::default(), &mut context);
    }
    for (_, written) in &shelf.assorted.entries {
        assorted::pack(written, &mut context);
    }
    context.remarks
}

/// A remark for each article of the pattern's own that nothing uses, not even as a stand-in.
pub fn unused(pattern: &Pattern) -> Vec<Remark> {
    let mut used: BTreeSet<_> = pattern.used_ids().into_iter().collect();
    let held: Vec<_> =
        pattern.supplying(&used).flat_map(|(key, one)| one.holds.ids().chain([key.value.as_str()])).collect();
    let strung = pattern.beads.entries.iter().filter(|(key, _)| used.contains(&key.value));
    let stand_ins: Vec<_> = strung.flat_map(|(_, bead)| bead.instead.iter().flatten()).collect();
    used.extend(stand_ins.into_iter().map(|id| id.value.clone()).chain(held.into_iter().map(str::to_owned)));
    let things = [Thing::Bead, Thing::Cord, Thing::Finding].into_iter().zip(defined(pattern));
    let all = things.flat_map(|(thing, keys)| keys.into_iter().map(move |key| (thing, key)));
    let all = all.chain(pattern.assorted.entries.iter().map(|(key, _)| (Thing::Assortment, key)));
    let unused = all.filter(|(_, key)| !key.place.is_shelved() && !used.contains(&key.value));
    let remark =
        |(thing, key): (Thing, &At<String>)| Remark::new(Naming::Unused { thing, id: key.value.clone() }).at(key.place);
    unused.map(remark).collect()
}

/// The keys of all beads, cords and findings.
fn defined(pattern: &Pattern) -> [Vec<&At<String>>; 3] {
    [
        pattern.beads.entries.iter().map(|(key, _)| key).collect(),
        pattern.cords.entries.iter().map(|(key, _)| key).collect(),
        pattern.findings.iter().flat_map(|all| &all.entries).map(|(key, _)| key).collect(),
    ]
}

/// The keys of all beads, cords and findings, those among them that cannot be read.
fn named(pattern: &Pattern) -> [Vec<&At<String>>; 3] {
    let [mut beads, mut cords, mut findings] = defined(pattern);
    beads.extend(&pattern.beads.broken);
    cords.extend(&pattern.cords.broken);
    findings.extend(pattern.findings.iter().flat_map(|all| &all.broken));
    [beads, cords, findings]
}

fn owned(keys: Vec<&At<String>>) -> Vec<String> {
    keys.into_iter().map(|key| key.value.clone()).collect()
}

/// A, B, … Z, AA, AB, …
fn letters(index: usize) -> String {
    let last = char::from(b'A' + u8::try_from(index % 26).unwrap_or_default());
    if index < 26 { last.to_string() } else { format!("{}{last}", letters(index / 26 - 1)) }
}

#[cfg(test)]
mod tests {
    use super::letters;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!(["A", "Z", "AA", "AB", "BA"], [0, 25, 26, 27, 52].map(letters).each_ref().map(String::as_str));
    }
}
