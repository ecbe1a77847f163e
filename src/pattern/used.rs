//! What a pattern uses of all that it and its shelves define.

use crate::source::At;

use super::items::Item;
use super::model::Pattern;

impl Pattern {
    /// Every id that strands and closure name, the strung ones first and in the order of first use, and those
    /// that their findings name.
    #[must_use]
    pub fn used_ids(&self) -> Vec<String> {
        let mut ids = Vec::new();
        for strand in &self.strands.value {
            collect(&strand.value.beads.value, &mut ids);
        }
        for strand in &self.strands.value {
            ids.push(strand.value.cord.value.clone());
            ids.extend(strand.value.ends.iter().flat_map(|ends| ends.ids()).map(|id| id.value.clone()));
        }
        add(self.joining(), &mut ids);
        let findings = self.findings.iter().flat_map(|all| &all.entries).filter(|(key, _)| ids.contains(&key.value));
        let named =
            findings.flat_map(|(_, finding)| finding.comes_with.iter().chain(&finding.bead).chain(&finding.cord));
        let named: Vec<_> = named.map(|id| &id.value).collect();
        add(named.into_iter(), &mut ids);
        ids
    }

    /// Every id that the closure names.
    fn joining(&self) -> impl Iterator<Item = &String> {
        let closure = self.closure.iter().map(|closure| &closure.value);
        let parts = closure.flat_map(|closure| {
            let sides = [&closure.each_side, &closure.left, &closure.right];
            sides.into_iter().flatten().flatten().chain(closure.both_ends.iter().flat_map(|both| &both.value))
        });
        parts.map(|part| &part.value.id.value)
    }
}

/// Adds those that are not there yet.
fn add<'i>(more: impl Iterator<Item = &'i String>, ids: &mut Vec<String>) {
    let new: Vec<_> = more.filter(|id| !ids.contains(id)).cloned().collect();
    ids.extend(new);
}

impl Pattern {
    /// Whether its strands name what may be beads: anything that is no finding. A chain may hold charms alone.
    pub(super) fn strings_beads(&self) -> bool {
        let mut ids = Vec::new();
        self.strands.value.iter().for_each(|strand| collect(&strand.value.beads.value, &mut ids));
        ids.is_empty() || ids.iter().any(|id| !self.is_finding(id))
    }

    /// Whether its strands name what may be cords: anything that is no finding. Those of earrings may hang on pins alone.
    pub(super) fn names_cords(&self) -> bool {
        let mut ids = self.strands.value.iter().map(|strand| &strand.value.cord.value).peekable();
        ids.peek().is_none() || ids.any(|id| !self.is_finding(id))
    }

    fn is_finding(&self, id: &str) -> bool {
        self.findings.as_ref().is_some_and(|all| all.get(id).is_some())
    }
}

fn collect(items: &[At<Item>], ids: &mut Vec<String>) {
    for item in items {
        match &item.value {
            Item::Run(run) if !ids.contains(&run.id) => ids.push(run.id.clone()),
            Item::Dangle(dangle) => ids.push(dangle.on.value.0.clone()),
            Item::Stop(stop) => ids.push(stop.stop.value.clone()),
            Item::Row(row) => {
                let new: Vec<_> = row.beads().into_iter().filter(|id| !ids.contains(&id.value)).collect();
                ids.extend(new.into_iter().map(|id| id.value.clone()));
            }
            Item::Run(_) | Item::Repeat(_) | Item::Mirror(_) | Item::Space(_) | Item::Links(_) | Item::Knot(_) => {}
        }
        item.value.lists().into_iter().for_each(|list| collect(list, ids));
    }
}
