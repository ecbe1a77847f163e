//! The making steps: those that the piece has, in the order of work, with figures from the design.

use festoon::design::{Closure, Design, Phrase, Rest};
use festoon::pattern::{CordKind, FindingKind, Kind, Settle};
use festoon::steps::{Drawing, Step, cautions, steps, tools};
use festoon::units::UnitStyle;
use proptest::prelude::*;

use crate::designs::{cord, design, finding, gathered, part, strand};

fn titles(steps: &[Step]) -> Vec<&str> {
    steps.iter().map(|step| step.title.as_str()).collect()
}

fn check<'a>(steps: &'a [Step], title: &str) -> &'a str {
    let step = steps.iter().find(|step| step.title == title).unwrap_or_else(|| panic!("{title}: {:?}", titles(steps)));
    step.check.as_deref().expect("a step with a check")
}

#[test]
fn a_necklace_gathered_in_cones() {
    let steps = steps(&gathered());
    let end = |which| [which, "Make the loop", "Press the crimp", "Hide the tail", "Do the other strands"];
    let mut expected = vec!["Lay out the beads", "Cut the cords"];
    expected.extend(end("Thread the first end"));
    expected.extend(["String the inner strand", "Measure", "String the outer strand", "Measure"]);
    expected.extend(end("Thread the last end"));
    expected.extend(["Put on the fluted cone", "Bend the pin", "Cut the pin", "Turn a loop"]);
    expected.extend(["Cut the chain", "Hang a cable chain", "Hang a lobster clasp", "Check the piece"]);
    assert_eq!(titles(&steps), expected);
}

#[test]
fn figures_come_from_the_design() {
    let steps = steps(&gathered());
    assert_eq!(check(&steps, "Lay out the beads"), "You have 115 A (reed bead) and 21 B (mist bead): 136 beads.");
    assert_eq!(check(&steps, "String the inner strand"), "65 beads: 55A and 10B.");
    // 65 beads of 6 mm are 390 mm; ±0.2 mm each spreads by 0.2 x sqrt(65) = 1.6 mm.
    assert_eq!(check(&steps, "Measure"), "The beads measure 15 ⅜ in (390 mm), likely within 1⁄16 in (1.6 mm).");
    // 419.1 mm, two pins and two cones of 12 mm, clasp 12 mm, chain from 4 to 60 mm.
    assert!(
        check(&steps, "Check the piece").contains("(483 mm) to 21 ¼ in (539 mm)"),
        "{}",
        check(&steps, "Check the piece")
    );
}

#[test]
fn the_loops_are_gathered_on_the_eye_of_the_pin() {
    let steps = steps(&gathered());
    let loops: Vec<_> = steps.iter().filter(|step| step.drawing == Some(Drawing::CrimpOpen)).collect();
    assert_eq!(loops.len(), 2);
    assert!(
        loops.iter().all(|step| step.text.contains("through the eye of the eye pin and back through the tube crimp"))
    );
    assert!(steps.iter().any(|step| step.drawing == Some(Drawing::Gather)));
    assert!(
        steps.iter().any(|step| step.text.starts_with("On the side of the last ends, open the plain loop sideways"))
    );
}

fn elastic_bracelet() -> Design {
    let mut one = strand("one", 180.0, &[], vec![Phrase::Run(30, 0)]);
    one.settle = Settle::Fill;
    let mut design = design(vec![one]);
    design.cords = vec![cord("stretch", CordKind::Elastic)];
    design.heading.kind = Kind::Bracelet;
    design.findings.clear();
    design
}

#[test]
fn a_stretch_bracelet_is_tied_and_not_crimped() {
    let design = elastic_bracelet();
    let steps = steps(&design);
    let expected = [
        "Lay out the beads",
        "Cut the cord",
        "Stop the end",
        "String the beads",
        "Measure",
        "Tie the ends",
        "Set the knot",
        "Hide the knot",
        "Check the piece",
    ];
    assert_eq!(titles(&steps), expected);
    assert_eq!(steps[5].drawing, Some(Drawing::SurgeonsKnot));
    assert!(tools(&design).contains(&"jewellery glue"));
    assert!(!tools(&design).contains(&"crimping pliers") && !tools(&design).contains(&"eye protection"));
}

#[test]
fn earrings_are_made_twice_and_their_dangles_first() {
    let row = vec![Phrase::Dangle(1, vec![Phrase::Run(1, 2), Phrase::Run(2, 0)])];
    let mut design = design(vec![strand("one", 20.0, &[0], row)]);
    design.heading.kind = Kind::Earrings;
    design.copies = 2;
    design.findings.push(finding("ear wire", FindingKind::EarWire));
    design.closure = Closure { left: vec![part(3)], ..Closure::default() };
    let steps = steps(&design);
    assert_eq!(steps[2].title, "Make the dangle");
    assert!(steps[2].text.contains("from the top down, 1C 2A."), "{}", steps[2].text);
    assert_eq!(steps[2].drawing, Some(Drawing::Dangle));
    assert!(steps.iter().any(|step| step.text.contains("through the ring of the ear wire")));
    assert_eq!(steps.last().unwrap().title, "Make the other one");
}

#[test]
fn knotted_silk_in_knot_covers() {
    let mut one = strand("one", 450.0, &[3], vec![Phrase::Run(60, 0)]);
    let bits = one.trains[0].bits.clone();
    let knot = crate::designs::bits(&[Phrase::Knot]);
    one.trains[0].bits = bits.into_iter().flat_map(|bead| [vec![bead], knot.clone()].concat()).collect();
    let mut design = design(vec![one]);
    design.cords = vec![cord("silk", CordKind::Silk)];
    design.findings.push(finding("bead tip", FindingKind::KnotCover));
    design.findings.push(finding("fish hook", FindingKind::Clasp));
    design.closure = Closure { left: vec![part(4)], right: vec![part(4)], ..Closure::default() };
    let steps = steps(&design);
    assert!(steps.iter().any(|step| step.text.contains("Tie a knot close against each bead before the next.")));
    assert_eq!(steps.iter().filter(|step| step.drawing == Some(Drawing::KnotCover)).count(), 2);
    assert!(tools(&design).contains(&"awl or tweezers for knots"));
}

#[test]
fn spread_groups_are_told_their_places() {
    let mut one = strand("one", 400.0, &[0], vec![Phrase::Times(2, vec![Phrase::Run(5, 0)])]);
    let half = one.trains[0].bits.split_off(5);
    one.trains[0].rest = Rest::At(100.0);
    one.trains.push(festoon::design::Train { bits: half, rest: Rest::At(230.0) });
    one.settle = Settle::Spread;
    let mut design = design(vec![one]);
    design.heading.units = UnitStyle::Mm;
    let steps = steps(&design);
    assert_eq!(
        check(&steps, "Space"),
        "The first group starts 100 mm from the first end's loop, and 100 mm of bare cord lies between groups."
    );
}

#[test]
fn cautions_are_those_that_apply_and_never_say_that_a_piece_complies() {
    let titles = |design: &Design| cautions(design).iter().map(|caution| caution.title).collect::<Vec<_>>();
    let necklace = titles(&gathered());
    assert_eq!(necklace, ["Eyes", "Children", "Long cords", "Metals", "Glass and crystal", "Before you sell"]);
    let bracelet = titles(&elastic_bracelet());
    assert_eq!(bracelet, ["Children", "Glass and crystal", "Glue", "Elastic", "Before you sell"]);
    let all: String = cautions(&gathered()).iter().map(|caution| caution.text).collect();
    assert!(all.contains("does not say that a piece complies") && all.contains("ask a qualified person"));
}

#[test]
fn tools_are_those_that_the_steps_use() {
    let tools = tools(&gathered());
    for tool in ["crimping pliers", "round-nose pliers", "flush cutters", "eye protection", "ruler"] {
        assert!(tools.contains(&tool), "{tool}");
    }
    assert!(!tools.contains(&"jewellery glue") && !tools.contains(&"sharp scissors"));
}

fn cords() -> impl Strategy<Value = CordKind> {
    prop::sample::select(CordKind::ALL)
}

fn findings() -> impl Strategy<Value = Vec<FindingKind>> {
    prop::collection::vec(prop::sample::select(FindingKind::ALL), 0..4)
}

proptest! {
    /// Whatever kinds of findings are put together, each step is whole sentences, and each strand
    /// that has beads is strung once.
    #[test]
    fn every_step_is_whole_sentences(
        charts in prop::collection::vec(crate::chart::phrases(), 1..4),
        cord in cords(), ends in findings(), left in findings(), right in findings(),
        kind in prop::sample::select(Kind::ALL), settle in prop::sample::select(Settle::ALL),
    ) {
        let at = |base: usize, kinds: &[FindingKind]| (base..base + kinds.len()).collect::<Vec<_>>();
        let mut strands: Vec<_> = charts.into_iter().map(|chart| strand("one", 400.0, &at(3, &ends), chart)).collect();
        strands.iter_mut().for_each(|strand| strand.settle = settle);
        let mut design = design(strands);
        design.heading.kind = kind;
        design.cords[0].kind = cord;
        let kinds = [ends.as_slice(), &left, &right].concat();
        design.findings.extend(kinds.iter().map(|kind| finding(kind.word(), *kind)));
        design.closure.left = at(3 + ends.len(), &left).into_iter().map(part).collect();
        design.closure.right = at(3 + ends.len() + left.len(), &right).into_iter().map(part).collect();
        let steps = steps(&design);
        for text in steps.iter().flat_map(|step| [Some(&step.text), step.check.as_ref()]).flatten() {
            prop_assert!(text.ends_with('.') && !text.contains("  ") && !text.contains(" .") && !text.contains(".."), "{}", text);
            prop_assert!(text.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()), "{}", text);
        }
        let strung = steps.iter().filter(|step| step.title.starts_with("String ")).count();
        prop_assert_eq!(strung, design.strands.len());
    }
}
