//! The designer's own figures against the program's.

use crate::pattern::{Dict, Expect, ExpectStrand, Pattern, Whole, Within};
use crate::remark::{Code, Remark, has_errors};
use crate::source::At;
use crate::units::Length;

use super::Context;
use super::model::{Design, Strand};

/// Leaves a remark for every figure that differs, as far as the design is whole.
pub fn check(expect: &Expect, pattern: &Pattern, design: &Design, whole: bool, context: &mut Context) {
    if let Some(beads) = expect.beads.as_ref().filter(|_| whole) {
        counts("the piece", beads, &design.counts(), design, context);
    }
    let written = || pattern.strands.value.iter().map(|strand| strand.value.name.value.as_str());
    for (name, expected) in expect.strands.iter().flat_map(|strands| &strands.entries) {
        match design.strands.iter().find(|strand| strand.name == name.value) {
            Some(found) => strand(found, expected, design, context),
            None if written().any(|strand| strand == name.value) || context.holes.any() => {}
            None => context.unknown("strand", name, written()),
        }
    }
}

fn strand(strand: &Strand, expected: &ExpectStrand, design: &Design, context: &mut Context) {
    let whole = format!("strand {}", strand.name);
    if let Some(beads) = &expected.beads {
        counts(&whole, beads, &strand.counts(design), design, context);
    }
    length(&format!("{whole}: beaded"), expected.beaded.as_ref(), strand.beaded(), context);
    length(&format!("{whole}: finished"), expected.finished.as_ref(), strand.finished, context);
    length(&format!("{whole}: cut"), expected.cut.as_ref(), strand.cut(), context);
}

fn counts(whole: &str, expected: &Dict<At<Whole>>, counts: &[u32], design: &Design, context: &mut Context) {
    for (id, count) in &expected.entries {
        let Some(bead) = design.beads.iter().position(|bead| bead.id == id.value) else {
            if !has_errors(&context.remarks) && !context.holes.any() {
                context.unknown("bead", id, design.beads.iter().map(|bead| bead.id.as_str()));
            }
            continue;
        };
        if counts[bead] != count.value.0 {
            let headline = format!("{whole} takes {} {}, not {}", counts[bead], id.value, count.value.0);
            let help = "correct the bead list, or the expected figure";
            context.remarks.push(Remark::words(Code::Expected, headline).at(count.place).helping(help));
        }
    }
}

fn length(what: &str, expected: Option<&At<Within>>, found: Length, context: &mut Context) {
    let Some(expected) = expected else { return };
    let Within { length, margin } = expected.value;
    let off = (found - length).value().abs();
    if off > margin.value() {
        let headline = format!("{what} {}, which is {off:.1} mm from the expected {}", found.tenths(), length.tenths());
        let help = "correct the strand, or the expected figure";
        context.remarks.push(Remark::words(Code::Expected, headline).at(expected.place).helping(help));
    }
}
