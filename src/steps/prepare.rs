//! What is done before stringing: lay out, cut, and hang the branches on their pins.

use std::collections::BTreeSet;

use super::tools::has_cord;
use super::words::{a, count, list, names};
use super::{Drawing, Step, chart, pin};
use crate::design::{Bead, Bit, Cord, Dangle, Design, Index, Phrase, Strand, What};
use crate::pattern::{CordKind, FindingKind, Shape};
use crate::units::Length;

/// How metal is cut with two hands.
pub const FLYING: &str = "Hold the end that would fly, or cut into a bag.";

/// Lay the beads out by letter and count them.
pub fn lay_out(design: &Design) -> Step {
    let counts = design.counts();
    let named =
        design.beads.iter().zip(&counts).map(|(bead, count)| format!("{count} {} ({})", bead.letter, bead.name));
    let beads: Vec<_> = named.collect();
    let total = counts.iter().copied().map(u64::from).sum();
    let each = if design.copies > 1 { " for one earring" } else { "" };
    let knotted: u64 = design.strands.iter().map(|strand| strand.in_end_knots(design).count() as u64).sum();
    let tied = if knotted > 0 { format!(", {knotted} of them for the knots at the ends") } else { String::new() };
    Step::new("Lay out the beads", "Set the beads out on a cloth or board, each kind by its letter, and count them.")
        .check(if beads.len() == 1 {
            format!("You have {}{each}{tied}.", list(&beads))
        } else {
            format!("You have {}{each}: {}{tied}.", list(&beads), count(total, "bead"))
        })
}

/// Cut each strand's cord, and tell the pieces apart.
pub fn cut(design: &Design) -> Vec<Step> {
    let has = |kind| design.strands.iter().any(|strand| design.cords[strand.cord].kind == kind);
    let mut said: Vec<_> = design.cords.indices().filter_map(|cord| cut_from(design, cord)).collect();
    said.extend(design.strands.iter().filter_map(|strand| for_knots(design, strand)));
    if has(CordKind::Elastic) {
        said.insert(0, "Stretch the elastic gently a few times before you measure it.".to_owned());
    }
    if has(CordKind::Wire) || has(CordKind::Chain) {
        said.push(FLYING.to_owned());
    }
    let step = Step::new(format!("Cut the {}", cord_word(design)), said.join(" "));
    [Some(step), tag(design)].into_iter().flatten().collect()
}

/// Pieces that look alike are told apart by tags, on the ends that the beads come onto.
fn tag(design: &Design) -> Option<Step> {
    let all: Vec<_> = (0..design.strands.len()).collect();
    let text = "Write each strand's name on a bit of tape, and fold it round the last end of its piece.";
    let check = format!("Each piece has its tag: {}.", names(design, &all));
    let step = Step::new("Tag the pieces", text).check(check);
    (design.strands.len() > 1).then_some(step)
}

/// What the strands hang on, in a word: `wire`; `cord` where there are several kinds.
pub fn cord_word(design: &Design) -> &'static str {
    let mut words: Vec<_> = design.strands.iter().map(|strand| design.cords[strand.cord].kind.word()).collect();
    words.dedup();
    match words.as_slice() {
        [word] => word,
        _ => "cord",
    }
}

/// `Cut from the wire: 17 ⅛ in for inner and 18 ⅜ in for middle.`
fn cut_from(design: &Design, cord: Index<Cord>) -> Option<String> {
    let units = design.heading.units;
    let name = &design.cords[cord].name;
    let strands: Vec<_> = design.strands.iter().filter(|strand| strand.cord == cord).collect();
    let each: Vec<_> =
        strands.iter().map(|strand| format!("{} for {}", units.ruler(strand.cut()), strand.name)).collect();
    let whole = match design.cords[cord].kind {
        CordKind::Chain => " Cut through the link beyond the last, so that both end links are whole.",
        _ => "",
    };
    match strands.as_slice() {
        [] => None,
        [only] if design.strands.len() == 1 => Some(format!("Cut {} of {name}.{whole}", units.ruler(only.cut()))),
        _ => Some(format!("Cut from the {name}: {}.{whole}", list(&each))),
    }
}

/// `About 420 mm of it goes into the 59 knots, 7.1 mm into each.`: an estimate, to be tried first.
fn for_knots(design: &Design, strand: &Strand) -> Option<String> {
    let units = design.heading.units;
    let (knots, cord) = (strand.knots(), design.cords[strand.cord].kind.word());
    let whose =
        if design.strands.len() > 1 { format!("the {cord} for {}", strand.name) } else { format!("the {cord}") };
    let between = strand.take_up * f64::from(knots);
    (knots > 0 && between > Length::ZERO).then(|| {
        format!(
            "The {} among the beads take up about {} of {whose}, {} each: tie ten on a spare piece and see how much \
             shorter they make it.",
            count(u64::from(knots), "knot"),
            units.ruler(between),
            strand.take_up.tenths()
        )
    })
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
    let mut steps: Vec<_> = kinds.iter().map(|(dangle, times)| make(design, dangle, *times)).collect();
    steps.extend(close(design, &kinds));
    steps
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

/// What is put on one kind of branch.
fn make(design: &Design, dangle: &Dangle, times: u64) -> Step {
    let on = &design.findings[dangle.on];
    let many = if times == 1 { "the dangle".to_owned() } else { count(times, "dangle") };
    if on.kind() == FindingKind::Bail {
        return on_bail(design, dangle, &many);
    }
    if !on.is_pin() {
        let row = chart::row(design, &phrases(dangle.bits.iter()));
        let text = format!("Open {} sideways, hang {row} in it, and close it the same way.", a(&on.name));
        return Step::new(format!("Make {many}"), text).check("It is shut: no gap shows.").drawing(Drawing::OpenLink);
    }
    let row = chart::row(design, &phrases(dangle.bits.iter().rev()));
    let foot = if on.kind() == FindingKind::EyePin { "eye" } else { "head" };
    let onto = if times == 1 { a(&on.name) } else { format!("each of {}", count(times, &on.name)) };
    let text = format!("Thread onto {onto}, from its {foot} up, {row}.{}", fat_end(design, dangle));
    let step = Step::new(format!("Thread {many}"), text);
    match lowest(design, dangle) {
        Some(letter) => step.check(format!("{letter} sits on the {foot}, and the beads touch.")),
        None => step,
    }
}

/// A bail's prongs are spread, set into the hole from both sides, and pinched (common practice, no source).
fn on_bail(design: &Design, dangle: &Dangle, many: &str) -> Step {
    let row = chart::row(design, &phrases(dangle.bits.iter()));
    let bail = a(&design.findings[dangle.on].name);
    let text = format!(
        "Spread the prongs of {bail} a little, set them into the hole of {row} from both sides, and pinch them shut."
    );
    Step::new(format!("Make {many}"), text).check("It swings freely, and a gentle pull does not free it.")
}

/// The letter of the bead that goes on a pin first.
fn lowest<'a>(design: &'a Design, dangle: &Dangle) -> Option<&'a str> {
    dangle.bits.last()?.what.bead().map(|at| design.beads[at].letter.as_str())
}

/// A drop hangs with its fat end down, so on a pin that end goes first.
fn fat_end(design: &Design, dangle: &Dangle) -> String {
    let drop = |at: &Index<Bead>| design.beads[*at].shape == Shape::Drop;
    let beads = dangle.bits.iter().filter_map(|bit| bit.what.bead());
    let drops: BTreeSet<_> = beads.filter(drop).map(|at| design.beads[at].letter.as_str()).collect();
    let drops: Vec<_> = drops.into_iter().collect();
    match drops.as_slice() {
        [] => String::new(),
        [one] => format!(" {one} goes on with its fat end first."),
        several => format!(" {} go on with their fat ends first.", list(several)),
    }
}

/// Close all pins that branches hang on; where they hang in the links of a chain, only when they do.
fn close(design: &Design, kinds: &[(&Dangle, u64)]) -> Vec<Step> {
    let pins: Vec<_> = kinds.iter().filter(|(dangle, _)| design.findings[dangle.on].is_pin()).collect();
    let Some((first, _)) = pins.first() else { return Vec::new() };
    let sorts: BTreeSet<_> = pins.iter().map(|(dangle, _)| dangle.on).collect();
    let sorts: Vec<_> = sorts.into_iter().map(|at| &design.findings[at]).collect();
    let name = if sorts.len() == 1 { design.findings[first.on].name.as_str() } else { "pin" };
    let number: u64 = pins.iter().map(|(_, times)| times).sum();
    let pin = if number == 1 { format!("the {name}") } else { format!("each {name}") };
    let open = has_cord(design, CordKind::Chain);
    let [bend, cut, turn] = pin::close(design.heading.units, &sorts, &pin, "beads", open);
    vec![bend, cut, turn.drawing(Drawing::Dangle)]
}

/// What hangs on a branch as phrases.
fn phrases<'a>(bits: impl Iterator<Item = &'a Bit>) -> Vec<Phrase> {
    let phrase = |bit: &Bit| match &bit.what {
        What::Bead(at) => Phrase::Run(1, *at),
        What::Finding(at) => Phrase::Finding(*at),
        What::Dangle(dangle) => hung(dangle),
        What::Gap => Phrase::Gap(Length::mm(bit.length())),
        What::Knot => Phrase::Knot,
    };
    bits.map(phrase).collect()
}

fn hung(dangle: &Dangle) -> Phrase {
    Phrase::Dangle(dangle.on, phrases(dangle.bits.iter()))
}
