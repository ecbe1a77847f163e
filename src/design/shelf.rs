//! The articles that a pattern uses, and looking them up by id.

use crate::pattern::{Dict, Item, Pattern, Recolour};
use crate::remark::{Code, Remark, did_you_mean};
use crate::source::{At, Place};

use super::Context;
use super::article;
use super::model::{Bead, Cord, Finding};

/// Beads, cords and findings in the order in which indices count them.
#[derive(Debug, Default)]
pub struct Shelf {
    pub beads: Vec<Bead>,
    pub cords: Vec<Cord>,
    pub findings: Vec<Finding>,
}

impl Shelf {
    /// Resolves what the pattern uses; leaves a remark for each article that it does not.
    pub fn fill(pattern: &Pattern, colours: Option<&Dict<Recolour>>, context: &mut Context) -> Self {
        let used = used_ids(pattern);
        let mut shelf = Self::default();
        for id in &used {
            let bead = pattern.beads.0.iter().find(|(key, _)| key.value == *id);
            shelf.beads.extend(bead.and_then(|(key, written)| article::bead(id, key.place, written, context)));
        }
        for (key, written) in used_entries(&pattern.cords, &used, "cord", context) {
            shelf.cords.extend(article::cord(&key.value, key.place, written, context));
        }
        let no_findings = Dict(Vec::new());
        let findings = pattern.findings.as_ref().unwrap_or(&no_findings);
        for (key, written) in used_entries(findings, &used, "finding", context) {
            shelf.findings.extend(article::finding(&key.value, key.place, written, context));
        }
        used_entries(&pattern.beads, &used, "bead", context);
        for (key, colour) in colours.iter().flat_map(|colours| &colours.0) {
            shelf.recolour(key, colour, context);
        }
        shelf.letter();
        shelf
    }

    fn letter(&mut self) {
        for (index, bead) in self.beads.iter_mut().enumerate() {
            bead.letter = letters(index);
        }
    }

    fn recolour(&mut self, key: &At<String>, colour: &Recolour, context: &mut Context) {
        let Some(index) = context.find("bead", key, &self.beads, |bead| &bead.id) else { return };
        let bead = &mut self.beads[index];
        bead.colour = colour.colour.0;
        bead.name = colour.name.clone().unwrap_or_else(|| bead.name.clone());
        bead.finish = colour.finish.unwrap_or(bead.finish);
    }

    /// The index of a bead.
    pub fn bead(&self, id: &str) -> Option<usize> {
        self.beads.iter().position(|bead| bead.id == id)
    }

    /// The index of a finding.
    pub fn finding(&self, id: &str) -> Option<usize> {
        self.findings.iter().position(|finding| finding.id == id)
    }
}

impl Context {
    /// Leaves a remark that an id is not defined.
    pub fn unknown<'a>(&mut self, what: &str, id: &At<String>, known: impl Iterator<Item = &'a str> + Clone) {
        let help = did_you_mean(&id.value, known.clone()).map_or_else(
            || format!("the pattern defines: {}", known.collect::<Vec<_>>().join(", ")),
            |near| format!("did you mean `{near}`?"),
        );
        self.remarks.push(
            Remark::new(Code::UnknownId, format!("the pattern defines no {what} `{}`", id.value))
                .at(id.place)
                .help(help),
        );
    }

    /// The index of an id, or a remark that it is not defined.
    pub fn find<T>(&mut self, what: &str, id: &At<String>, all: &[T], name: impl Fn(&T) -> &str) -> Option<usize> {
        let found = all.iter().position(|one| name(one) == id.value);
        if found.is_none() {
            self.unknown(what, id, all.iter().map(name).collect::<Vec<_>>().into_iter());
        }
        found
    }

    fn unused(&mut self, what: &str, id: &str, place: Place) {
        self.remarks.push(
            Remark::new(Code::Unused, format!("the {what} `{id}` is not used"))
                .at(place)
                .help("string it, or take it out of the pattern"),
        );
    }
}

/// A, B, … Z, AA, AB, …
fn letters(index: usize) -> String {
    let last = char::from(b'A' + u8::try_from(index % 26).unwrap_or_default());
    if index < 26 { last.to_string() } else { format!("{}{last}", letters(index / 26 - 1)) }
}

/// The entries that are used; a remark for each other.
fn used_entries<'a, T>(
    all: &'a Dict<T>,
    used: &[String],
    what: &str,
    context: &mut Context,
) -> Vec<(&'a At<String>, &'a T)> {
    let (used, unused): (Vec<_>, Vec<_>) =
        all.0.iter().map(|(key, value)| (key, value)).partition(|(key, _)| used.contains(&key.value));
    unused.iter().for_each(|(key, _)| context.unused(what, &key.value, key.place));
    used
}

/// Every id that strands and closure name, the strung ones first and in the order of first use.
/// Stand-ins count as used.
fn used_ids(pattern: &Pattern) -> Vec<String> {
    let mut ids = Vec::new();
    for strand in &pattern.strands.value {
        collect(&strand.value.beads.value, &mut ids);
    }
    for strand in &pattern.strands.value {
        ids.push(strand.value.cord.value.clone());
        ids.extend(strand.value.ends.iter().flat_map(|ends| ends.ids()).map(|id| id.value.clone()));
    }
    if let Some(closure) = &pattern.closure {
        let closure = &closure.value;
        let sides = [&closure.each_side, &closure.left, &closure.right];
        ids.extend(sides.into_iter().flatten().flatten().map(|part| part.value.id.value.clone()));
    }
    ids
}

fn collect(items: &[At<Item>], ids: &mut Vec<String>) {
    for item in items {
        match &item.value {
            Item::Run(run) if !ids.contains(&run.id) => ids.push(run.id.clone()),
            Item::Run(_) | Item::Space(_) | Item::Knot(_) => {}
            Item::Repeat(repeat) => collect(&repeat.of, ids),
            Item::Mirror(mirror) => {
                collect(&mirror.mirror, ids);
                mirror.about.iter().for_each(|about| collect(about, ids));
            }
            Item::Dangle(dangle) => {
                ids.push(dangle.on.value.clone());
                collect(&dangle.dangle, ids);
            }
            Item::Stop(stop) => ids.push(stop.stop.value.clone()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::letters;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!(["A", "Z", "AA", "AB", "BA"], [0, 25, 26, 27, 52].map(letters).each_ref().map(String::as_str));
    }
}
