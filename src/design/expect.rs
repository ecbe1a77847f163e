//! The designer's own figures against the program's.

use crate::pattern::{Dict, Expect, ExpectStrand, Pattern, Whole, Within};
use crate::remark::said::naming::Thing;
use crate::remark::said::variant::{Figure, Variant};
use crate::remark::{Remark, has_errors};
use crate::source::At;
use crate::units::Length;

use super::Context;
use super::entries::Entries;
use super::model::{Model, Strand};
use super::stock::Bead;

/// Leaves a remark for every figure that differs, as far as the design is whole.
pub fn check(expect: &Expect, pattern: &Pattern, design: &Model, whole: bool, context: &mut Context) {
    if let Some(beads) = expect.beads.as_ref().filter(|_| whole) {
        counts(None, beads, &design.counts(), design, context);
    }
    let written = || pattern.strands.value.iter().map(|strand| strand.value.name.value.as_str());
    for (name, expected) in expect.strands.iter().flat_map(|strands| &strands.entries) {
        match design.strands.iter().find(|strand| strand.name == name.value) {
            Some(found) => strand(found, expected, design, context),
            None if written().any(|strand| strand == name.value) || context.holes.any() => {}
            None => context.unknown(Thing::Strand, name, written()),
        }
    }
}

fn strand(strand: &Strand, expected: &ExpectStrand, design: &Model, context: &mut Context) {
    if let Some(beads) = &expected.beads {
        counts(Some(&strand.name), beads, &strand.counts(design), design, context);
    }
    let mut check = |of, expected: &Option<At<Within>>, found| {
        context.remarks.extend(expected.as_ref().and_then(|expected| length(&strand.name, of, expected, found)));
    };
    check(Figure::Beaded, &expected.beaded, strand.beaded());
    check(Figure::Finished, &expected.finished, strand.finished);
    check(Figure::Cut, &expected.cut, strand.cut());
}

fn counts(
    strand: Option<&String>,
    expected: &Dict<At<Whole>>,
    counts: &Entries<u32, Bead>,
    design: &Model,
    context: &mut Context,
) {
    for (id, count) in &expected.entries {
        let Some(bead) = design.beads.find(|bead| bead.id == id.value) else {
            if !has_errors(&context.remarks) && !context.holes.any() {
                context.unknown(Thing::Bead, id, design.beads.iter().map(|bead| bead.id.as_str()));
            }
            continue;
        };
        if counts[bead] != count.value.0 {
            let (id, found, expected) = (id.value.clone(), counts[bead], count.value.0);
            let other = Variant::OtherCount { strand: strand.cloned(), id, found, expected };
            context.remarks.push(Remark::new(other).at(count.place));
        }
    }
}

/// A remark about a length that is farther from the expected one than that allows.
fn length(strand: &str, of: Figure, expected: &At<Within>, found: Length) -> Option<Remark> {
    let Within { length, margin } = expected.value;
    let is_off = (found - length).value().abs() > margin.value();
    let other = || Variant::OtherLength { strand: strand.to_owned(), of, found, expected: length };
    is_off.then(|| Remark::new(other()).at(expected.place))
}
