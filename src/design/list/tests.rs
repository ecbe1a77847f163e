//! What may stand where, and what follows from it.

use crate::design::{Choice, Strand, attempt};
use crate::pattern::{self, Holes, Settle};
use crate::source::Source;

/// The first strand of a piece with a list, on a cord and of a length that are written so, and the codes of what is
/// wrong.
fn resolved(cord: &str, length: &str, list: &str) -> (Option<Strand>, Vec<String>) {
    let text = format!(
        "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: \
         '#5d7f5b' }}\n  b: {{ shape: round, size: 8 mm, hole: 1 mm, mass: 0.6 g, colour: '#5d7f5b' }}\ncords:\n  cord: {{ \
         {cord}, diameter: 0.4 mm, mass: 0.6 g/m }}\nfindings:\n  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, \
         inside: 1.3 mm }}\n  pin: {{ kind: head pin, length: 40 mm, wire: 0.6 mm }}\nstrands:\n  - {{ name: only, cord: \
         cord, length: {length}, beads: [{list}] }}\nwear: {{ neck base: 370 mm }}\n"
    );
    let (pattern, remarks) = pattern::read(&Source::new("test.yaml", text));
    let pattern = pattern.unwrap_or_else(|| panic!("{remarks:?}"));
    let tried = attempt(&pattern, &Holes::default(), &Choice::default());
    let errors = tried.remarks.iter().filter(|remark| remark.level() == crate::remark::Level::Error);
    (
        tried.design.and_then(|design| design.strands.first().cloned()),
        errors.map(|one| one.code().name().to_owned()).collect(),
    )
}

fn wrong(list: &str) -> Vec<String> {
    resolved("kind: wire", "420 mm", list).1
}

#[test]
fn what_may_not_stand_there_hides_nothing_within_it() {
    assert_eq!(wrong("{ dangle: [a, b], on: pin }"), [""; 0]);
    assert_eq!(wrong("{ dangle: [{ dangle: [c], on: pin }], on: pin }"), ["unknown-id", "misplaced"]);
    let hung = "{ repeat: fill, of: [c] }, { knot: 1 mm }";
    assert_eq!(wrong(&format!("{{ dangle: [{hung}], on: pin }}")), ["unknown-id", "no-fill", "misplaced"]);
    let within = "{ stop: c, at: 9 mm }, { fade: fill, from: a, to: c }";
    assert_eq!(
        wrong(&format!("{{ repeat: 2, of: [{within}] }}")),
        ["unknown-id", "misplaced-stop", "unknown-id", "no-fill"]
    );
}

#[test]
fn stops_part_a_list() {
    let list = "{ stop: crimp, at: 100 mm }, 3 a, { stop: crimp, at: 200 mm }, b";
    let (strand, wrong) = resolved("kind: wire", "420 mm", list);
    let rows: Vec<_> = strand.unwrap().trains.iter().map(|train| train.bits.len()).collect();
    assert_eq!((rows, wrong.len()), (vec![1, 3, 1, 1], 0));
    let filled = format!("{list}, {{ repeat: fill, of: [a] }}");
    assert_eq!(resolved("kind: wire", "420 mm", &filled).1, ["misplaced-stop"]);
}

/// Only what lies along the chain says where a branch hangs.
#[test]
fn a_space_on_a_branch_does_not_hold_it_on_a_chain() {
    let settle = |list: &str| resolved("kind: chain", "420 mm", list).0.unwrap().settle;
    assert_eq!(settle("{ space: 200 mm }, { dangle: [a], on: pin }"), Settle::Fixed);
    assert_eq!(settle("{ dangle: [a, { space: 2 mm }, a], on: pin }"), Settle::Slide);
}

/// Which bits are one repeat is known where nothing else fills the row.
#[test]
fn a_row_that_fills_beside_a_repeat_leaves_no_repeat_to_change() {
    let ones = |list: &str| {
        let strand = resolved("kind: wire", "420 mm, settle: fill", list).0.unwrap();
        strand.fill.map(|fill| fill.ones)
    };
    let repeat = "{ repeat: fill, of: [a, b] }";
    let [one] = ones(&format!("3 b, {repeat}")).unwrap().try_into().unwrap();
    assert_eq!((one.len(), one.start % 2), (2, 1));
    assert_eq!(ones(&format!("{{ fade: fill, from: a, to: b }}, {repeat}")), None);
}
