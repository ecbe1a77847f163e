//! Swapping one bead for another throughout a pattern.

use crate::source::At;

use super::items::Item;
use super::model::Pattern;

impl Pattern {
    /// The pattern with another bead wherever the strands string the first one, and without the
    /// figures that were expected of it.
    #[must_use]
    pub fn swapped(&self, from: &str, to: &str) -> Self {
        let mut pattern = Self { expect: None, ..self.clone() };
        for strand in &mut pattern.strands.value {
            swap(&mut strand.value.beads.value, from, to);
        }
        pattern
    }
}

fn swap(items: &mut [At<Item>], from: &str, to: &str) {
    for item in items {
        match &mut item.value {
            Item::Run(run) if run.id == from => to.clone_into(&mut run.id),
            Item::Run(_) | Item::Space(_) | Item::Links(_) | Item::Knot(_) | Item::Stop(_) => {}
            Item::Repeat(repeat) => swap(&mut repeat.of, from, to),
            Item::Mirror(mirror) => {
                swap(&mut mirror.mirror, from, to);
                mirror.about.iter_mut().for_each(|about| swap(about, from, to));
            }
            Item::Dangle(dangle) => swap(&mut dangle.dangle, from, to),
            Item::Row(row) => {
                row.beads_mut().into_iter().filter(|id| id.value == from).for_each(|id| to.clone_into(&mut id.value));
            }
        }
    }
}
