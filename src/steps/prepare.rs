//! What is done before stringing: lay out, cut, and hang the branches on their pins.

use super::words::{a, count, list, strand};
use super::{Drawing, Step, chart};
use crate::design::{Bit, Dangle, Design, Phrase, What};
use crate::pattern::{CordKind, FindingKind};

/// Lay the beads out by letter and count them.
pub fn lay_out(design: &Design) -> Step {
    let counts = design.counts();
    let named =
        design.beads.iter().zip(&counts).map(|(bead, count)| format!("{count} {} ({})", bead.letter, bead.name));
    let beads: Vec<_> = named.collect();
    let total = counts.iter().copied().map(u64::from).sum();
    let each = if design.copies > 1 { " for one earring" } else { "" };
    Step::new("Lay out the beads", "Set the beads out on a cloth or board, each kind by its letter, and count them.")
        .check(if beads.len() == 1 {
            format!("You have {}{each}.", list(&beads))
        } else {
            format!("You have {}{each}: {}.", list(&beads), count(total, "bead"))
        })
}

/// Cut each strand's cord.
pub fn cut(design: &Design) -> Step {
    let has = |kind| design.strands.iter().any(|strand| design.cords[strand.cord].kind == kind);
    let cords: Vec<_> = (0..design.cords.len()).filter_map(|cord| cut_from(design, cord)).collect();
    let metal = if has(CordKind::Wire) || has(CordKind::Chain) { " Hold both sides of the cut: ends fly." } else { "" };
    let stretch =
        if has(CordKind::Elastic) { " Stretch the elastic gently a few times before you measure it." } else { "" };
    let title = if design.strands.len() == 1 { "Cut the cord" } else { "Cut the cords" };
    Step::new(title, format!("{}{stretch}{metal}", cords.join(" ")))
}

/// `Cut from the wire: 17 ⅛ in for inner and 18 ⅜ in for middle.`
fn cut_from(design: &Design, cord: usize) -> Option<String> {
    let units = design.heading.units;
    let name = &design.cords[cord].name;
    let strands: Vec<_> = design.strands.iter().filter(|strand| strand.cord == cord).collect();
    let each: Vec<_> =
        strands.iter().map(|strand| format!("{} for {}", units.ruler(strand.cut()), strand.name)).collect();
    match strands.as_slice() {
        [] => None,
        [only] if design.strands.len() == 1 => Some(format!("Cut {} of {name}.", units.ruler(only.cut()))),
        _ => Some(format!("Cut from the {name}: {}.", list(&each))),
    }
}

/// Make the branches, each kind once with how many of it.
pub fn dangles(design: &Design) -> Vec<Step> {
    let mut kinds: Vec<(&Dangle, u64)> = Vec::new();
    for dangle in every_dangle(design) {
        match kinds.iter_mut().find(|(kind, _)| same(kind, dangle)) {
            Some((_, times)) => *times += 1,
            None => kinds.push((dangle, 1)),
        }
    }
    kinds.into_iter().map(|(dangle, times)| make(design, dangle, times)).collect()
}

fn every_dangle(design: &Design) -> impl Iterator<Item = &Dangle> {
    let bits = design.strands.iter().flat_map(|strand| &strand.trains).flat_map(|train| &train.bits);
    bits.filter_map(|bit| match &bit.what {
        What::Dangle(dangle) => Some(dangle),
        _ => None,
    })
}

fn same(a: &Dangle, b: &Dangle) -> bool {
    a.on == b.on && a.bits.iter().map(|bit| &bit.what).eq(b.bits.iter().map(|bit| &bit.what))
}

fn make(design: &Design, dangle: &Dangle, times: u64) -> Step {
    let on = &design.findings[dangle.on];
    let row = chart::row(design, &phrases(&dangle.bits));
    let text = match on.kind {
        FindingKind::HeadPin | FindingKind::EyePin => format!(
            "Thread onto {}, from the top down, {row}. Bend the wire to a right angle above the beads, \
             cut it {} from the bend, and turn the end into a plain loop.",
            a(&on.name),
            design.heading.units.ruler(super::closure::LOOP_WIRE)
        ),
        _ => format!("Open the {} sideways, hang {row} in it, and close it the same way.", on.name),
    };
    let title = if times == 1 { "Make the dangle".to_owned() } else { format!("Make {}", count(times, "dangle")) };
    Step::new(title, text).check("The loop is shut: no thread slips through the gap.").drawing(Drawing::Dangle)
}

/// What hangs on a branch as phrases.
fn phrases(bits: &[Bit]) -> Vec<Phrase> {
    let phrase = |bit: &Bit| match &bit.what {
        What::Bead(at) => Phrase::Run(1, *at),
        What::Finding(at) => Phrase::Finding(*at),
        What::Dangle(dangle) => Phrase::Dangle(dangle.on, phrases(&dangle.bits)),
        What::Gap => Phrase::Gap(crate::units::Length::mm(bit.length())),
        What::Knot => Phrase::Knot,
    };
    bits.iter().map(phrase).collect()
}

/// The strands as a sentence lists them.
pub fn names(design: &Design, strands: &[usize]) -> String {
    match strands {
        [only] => strand(design, &design.strands[*only]),
        several => list(&several.iter().map(|at| design.strands[*at].name.as_str()).collect::<Vec<_>>()),
    }
}
