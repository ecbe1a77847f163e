//! The making steps: those that the piece has, in the order of work, with figures from the design.

use festoon::design::{Crimp, Design, Entries, Form, Joins, Phrase, Rest, Stated, Train, nth};
use festoon::pattern::{CordKind, FindingKind, Kind, Settle, Shape};
use festoon::steps::english::{Told, cautions, told, tools};
use festoon::steps::{Drawing, Knotted, WithBeads};
use festoon::units::{Length, UnitStyle};
use proptest::prelude::*;

use crate::designs::{bar, cord, design, design_with, finding, gathered, part, strand};

fn titles(steps: &[Told]) -> Vec<&str> {
    steps.iter().map(|step| step.title.as_str()).collect()
}

fn check<'a>(steps: &'a [Told], title: &str) -> &'a str {
    let step = steps.iter().find(|step| step.title == title).unwrap_or_else(|| panic!("{title}: {:?}", titles(steps)));
    step.check.as_deref().expect("a step with a check")
}

#[test]
fn a_necklace_gathered_in_cones() {
    let steps = told(&gathered(), UnitStyle::Both);
    let mut expected = vec!["Lay out the beads", "Cut the wire", "Tag the pieces", "Look for gaps"];
    let first = ["Thread the first end", "Make the loop", "Press the crimp", "Cut the tail", "Do the other strand"];
    expected.extend(first);
    expected.extend(["String the inner strand", "Measure", "String the outer strand", "Measure"]);
    expected.extend(["Thread the last end", "Make the loop", "Draw up the slack", "Press the crimp", "Cut the tail"]);
    expected.extend(["Do the other strand", "Put on the fluted cone", "Bend the pin", "Cut the pin", "Turn a loop"]);
    expected.extend(["Cut the chain", "Hang the chain", "Hang the lobster clasp", "Check the piece"]);
    assert_eq!(titles(&steps), expected);
}

#[test]
fn strands_that_are_alike_are_measured_once() {
    let design = gathered()
        .changed(|model| {
            model.strands[nth(1)] = model.strands[nth(0)].clone();
            model.strands[nth(1)].name = "outer".to_owned();
        })
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    let measured: Vec<_> = steps.iter().filter(|step| step.title == "Measure").collect();
    let [once] = measured.as_slice() else { panic!("{:?}", titles(&steps)) };
    assert!(once.text.contains("the inner and outer strands straight along a ruler, each by itself"), "{}", once.text);
}

#[test]
fn figures_come_from_the_design() {
    let steps = told(&gathered(), UnitStyle::Both);
    assert_eq!(check(&steps, "Lay out the beads"), "You have 115 A (reed bead) and 21 B (mist bead): 136 beads.");
    assert_eq!(check(&steps, "String the inner strand"), "65 beads: 55A and 10B.");
    // 65 beads of 6 mm are 390 mm; ±0.2 mm each spreads by 0.2 x sqrt(65) = 1.6 mm.
    // If each is 0.2 mm larger, 65 are 13 mm longer: more than half a bead.
    let measured = "The beads measure 15 ⅜ in (390 mm), likely to within 1⁄16 in (1.6 mm); to within ½ in (13 mm) if all are 0.008 in (0.2 mm) off one way.";
    assert_eq!(check(&steps, "Measure"), measured);
    // 419.1 mm, two pins and two cones of 12 mm, clasp 12 mm, chain from 4 to 60 mm.
    assert!(
        check(&steps, "Check the piece").contains("(483 mm) to 21 ¼ in (539 mm)"),
        "{}",
        check(&steps, "Check the piece")
    );
}

#[test]
fn the_loops_are_gathered_on_the_eyes_of_the_two_pins() {
    let steps = told(&gathered(), UnitStyle::Both);
    let loops: Vec<_> = steps.iter().filter(|step| step.drawing == Some(Drawing::CrimpOpen)).collect();
    assert_eq!(loops.len(), 2);
    for (step, pin) in loops.iter().zip(["first", "second"]) {
        let through = format!("through the eye of the {pin} eye pin and back through the tube crimp");
        assert!(step.text.contains(&through), "{}", step.text);
    }
    assert!(steps.iter().any(|step| step.drawing == Some(Drawing::Gather(2))));
    assert_eq!(check(&steps, "Look for gaps"), "No wire can slip out.");
}

#[test]
fn steps_to_repeat_are_named_by_their_numbers() {
    let steps = told(&gathered(), UnitStyle::Both);
    for (at, step) in steps.iter().enumerate().filter(|(_, step)| step.title == "Do the other strand") {
        let from = steps[..at].iter().rposition(|step| step.title.starts_with("Thread the")).unwrap() + 1;
        assert_eq!(step.text, format!("Do steps {from} to {at} with the outer strand."));
    }
    let last = steps.iter().rfind(|step| step.title == "Do the other strand").unwrap();
    let check = last.check.as_deref().unwrap();
    assert!(check.contains("same order as at the first ends: inner and outer."), "{check}");
    assert!(check.contains("the outer strand measures") && !check.contains("the inner strand measures"), "{check}");
}

#[test]
fn a_pins_loop_stays_open_until_something_hangs_in_it() {
    let steps = told(&gathered(), UnitStyle::Both);
    let at = |title: &str| steps.iter().position(|step| step.title == title).unwrap();
    let turned = &steps[at("Turn a loop")];
    assert!(turned.text.ends_with("Stop while it is still a little open."), "{}", turned.text);
    for (title, pin) in [("Hang the chain", "first"), ("Hang the lobster clasp", "second")] {
        let text = &steps[at(title)].text;
        assert!(
            text.contains(&format!("in the loop of the {pin} eye pin, and roll the loop shut with round-nose pliers.")),
            "{text}"
        );
    }
    assert!(steps.iter().all(|step| step.drawing != Some(Drawing::OpenLink)));
    assert_eq!(check(&steps, "Put on the fluted cone"), "No crimp shows.");
}

#[test]
fn a_chain_is_cut_to_links() {
    // 60 mm of links of 4 mm: each adds 4 mm less twice its wire of 0.7 mm, and (60 - 1.4) / 2.6 = 22.5.
    let steps = told(&gathered(), UnitStyle::Both);
    let check = check(&steps, "Cut the chain");
    assert_eq!(check, "The piece has about 23 links, and both end links are whole.");
}

#[test]
fn alike_pieces_are_tagged_and_each_stopper_comes_off() {
    let design = gathered();
    assert_eq!(check(&told(&design, UnitStyle::Both), "Tag the pieces"), "Each piece has its tag: inner and outer.");
    assert!(tools(&design, UnitStyle::Both).contains(&"2 bead stoppers or tape".to_owned()));
    let text: String = told(&design, UnitStyle::Both).into_iter().map(|step| step.text).collect();
    assert!(text.contains("Take the tag off the inner piece") && text.contains("Take the tag off the outer piece"));
    assert!(text.contains("Take the bead stopper off the inner strand and thread a tube crimp onto its last end."));
    assert!(!text.contains("both sides of the cut"));
}

#[test]
fn a_packed_strands_tail_goes_through_its_beads_before_the_crimp_is_pressed() {
    let mut one = strand("one", 192.0, &[0], vec![Phrase::Run(30, nth(0))]);
    one.settle = Settle::Fill;
    one.allowance = Stated::Stated(Length::mm(40.0));
    let packed = told(&design(vec![one]), UnitStyle::Both);
    let at = |drawing| packed.iter().rposition(|step| step.drawing == Some(drawing)).unwrap();
    let through = at(Drawing::CrimpPacked);
    assert!(
        packed[through].text.ends_with("then on through about 15⁄16 in (24 mm) of beads."),
        "{}",
        packed[through].text
    );
    assert!(packed[through + 1].text.contains("until no gap shows between the beads, but they still bend"));
    assert_eq!(at(Drawing::CrimpPressed), through + 2);
    assert!(packed.iter().any(|step| step.text.contains("Take the first beads over the tail as well")));
    assert!(packed.iter().all(|step| !step.text.contains("has its length")));
    let loose = told(&gathered(), UnitStyle::Both);
    let drawn = loose.iter().find(|step| step.title == "Draw up the slack").unwrap();
    assert!(drawn.text.contains("until the strand has its length"), "{}", drawn.text);
}

#[test]
fn a_ring_is_hung_with_all_it_holds_before_the_strand() {
    let design = design(vec![strand("one", 400.0, &[0], vec![Phrase::Run(30, nth(0))])])
        .changed(|model| {
            model.findings.push(finding("jump ring", FindingKind::JumpRing));
            model.findings.push(finding("hook", FindingKind::Clasp));
            model.closure.joins = Joins::sides(vec![part(3)], vec![part(3), part(4)]);
        })
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    let at = |title: &str| steps.iter().position(|step| step.title == title).unwrap();
    assert!(at("Hang the hook") < at("Thread the first end"));
    assert!(
        steps[at("Hang the hook")]
            .text
            .starts_with("With two pairs of chain-nose pliers open the second jump ring sideways")
    );
    assert_eq!(steps[at("Look for gaps")].text.split('.').next(), Some("See that each jump ring is shut"));
    assert_eq!(steps.iter().filter(|step| step.drawing == Some(Drawing::Clasp)).count(), 1);
}

fn elastic_bracelet() -> Design {
    let mut one = strand("one", 180.0, &[], vec![Phrase::Run(30, nth(0))]);
    one.settle = Settle::Fill;

    design(vec![one])
        .changed(|model| {
            model.cords = vec![cord("stretch", CordKind::Elastic)].into();
            model.heading.kind = Kind::Bracelet;
            model.findings = Entries::default();
        })
        .expect("a design")
}

#[test]
fn a_stretch_bracelet_is_tied_and_not_crimped() {
    let design = elastic_bracelet();
    let steps = told(&design, UnitStyle::Both);
    let expected = [
        "Lay out the beads",
        "Cut the elastic",
        "Stop the end",
        "String the beads",
        "Measure",
        "Tie the ends",
        "Set the knot",
        "Check the piece",
    ];
    assert_eq!(titles(&steps), expected);
    assert_eq!(steps[5].drawing, Some(Drawing::Knot(Knotted::Ends)));
    assert_eq!(steps[6].drawing, Some(Drawing::KnotGlued(Knotted::Ends)));
    let tools = tools(&design, UnitStyle::Both).join(", ");
    assert!(tools.contains("2 bead stoppers or tape, jewellery glue"), "{tools}");
    assert!(!tools.contains("crimping pliers") && !tools.contains("eye protection"), "{tools}");
}

#[test]
fn earrings_are_made_twice_and_their_dangles_first() {
    let row = vec![Phrase::Dangle(Some(nth(1)), vec![Phrase::Run(1, nth(2)), Phrase::Run(2, nth(0))])];
    let design = design(vec![strand("one", 20.0, &[0], row)])
        .changed(|model| {
            model.heading.kind = Kind::Earrings;
            model.copies = 2;
            model.findings.push(finding("ear wire", FindingKind::EarWire));
            model.closure.joins = Joins::Above(vec![part(3)]);
        })
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    assert!(steps[2].title.starts_with("Thread the dangle of "), "{}", steps[2].title);
    // From the top down it is one of C and two of A, the last of which sits on the head.
    assert!(steps[2].text.contains("from its head up, 2A 1C."), "{}", steps[2].text);
    assert_eq!(steps[2].check.as_deref(), Some("A sits on the head, and the beads touch."));
    assert_eq!(steps[5].drawing, Some(Drawing::Dangle(false)));
    assert!(steps.iter().any(|step| step.text.contains("through the ring of the ear wire")));
    let last = steps.last().unwrap();
    assert_eq!(last.title, "Make the other one");
    assert!(last.text.ends_with(&format!("do steps 1 to {} again.", steps.len() - 1)), "{}", last.text);
}

#[test]
fn a_drop_goes_onto_its_pin_with_its_fat_end_first() {
    let row = vec![Phrase::Dangle(Some(nth(1)), vec![Phrase::Run(1, nth(0)), Phrase::Run(1, nth(2))])];
    let design = design(vec![strand("one", 20.0, &[0], row)])
        .changed(|model| model.beads[nth(2)].shape = Shape::Drop)
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    assert!(steps[2].text.ends_with("1C 1A. C goes on with its fat end first."), "{}", steps[2].text);
}

#[test]
fn an_earring_is_measured_from_its_top_down() {
    let mut one = strand("one", 40.0, &[0], vec![Phrase::Run(4, nth(0))]);
    one.trains[0].rest = Rest::At(6.0);
    let design = design(vec![one])
        .changed(|model| {
            model.heading.kind = Kind::Earrings;
            model.findings.push(finding("ear wire", FindingKind::EarWire));
            model.closure.joins = Joins::Above(vec![part(3)]);
        })
        .expect("a design");
    // A single strand hangs straight down: as long as it is finished, 40 mm, below an ear wire of 12 mm.
    let expected = "It measures about 2 1⁄16 in (52 mm).";
    assert!(
        check(&told(&design, UnitStyle::Both), "Check the piece").ends_with(expected),
        "{}",
        check(&told(&design, UnitStyle::Both), "Check the piece")
    );
}

#[test]
fn short_crimps_take_small_pliers() {
    let mut design = gathered();
    let [length, across, inside] = [1.5, 2.0, 1.3].map(Length::mm);
    design = design
        .changed(|model| {
            model.findings[nth(0)].form = Form::Crimp(Crimp::new(length, across, inside));
        })
        .expect("a design");
    assert!(tools(&design, UnitStyle::Both).contains(&"micro crimping pliers".to_owned()));
    assert!(!tools(&design, UnitStyle::Both).contains(&"crimping pliers".to_owned()));
    let press = told(&design, UnitStyle::Both).into_iter().find(|step| step.title == "Press the crimp").unwrap();
    assert!(press.text.contains("notched jaw of the micro crimping pliers"), "{}", press.text);
}

#[test]
fn knotted_silk_in_knot_covers() {
    let mut one = strand("one", 450.0, &[3], vec![Phrase::Run(60, nth(0))]);
    let bits = one.trains[0].bits.clone();
    let knot = crate::designs::bits(&[Phrase::Knot]);
    let knotted = bits.into_iter().flat_map(|bead| [vec![bead], knot.clone()].concat()).collect();
    one.trains[0] = Train::new(knotted, Rest::Free(6.0, 12.0));
    let findings = [("bead tip", FindingKind::KnotCover), ("fish hook", FindingKind::Clasp)];
    let design = design_with(findings.map(|(name, kind)| finding(name, kind)).to_vec(), vec![one])
        .changed(|model| {
            model.cords = vec![cord("silk", CordKind::Silk)].into();
            model.closure.joins = Joins::sides(vec![part(4)], vec![part(4)]);
        })
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    assert!(
        steps.iter().any(|step| step.text.contains("Between each bead and the next tie an overhand knot in the silk"))
    );
    assert_eq!(steps.iter().filter(|step| step.drawing == Some(Drawing::KnotCover(false))).count(), 2);
    assert!(steps.iter().any(|step| step.drawing == Some(Drawing::Measure(WithBeads::Knots))));
    assert!(tools(&design, UnitStyle::Both).contains(&"awl or tweezers for knots".to_owned()));
    // Only where it is cut is the cord called by its whole name.
    assert!(steps.iter().skip(2).all(|step| !step.text.contains("cord") && !step.text.contains("wire")));
}

#[test]
fn spread_groups_are_told_their_places() {
    let mut one = strand("one", 400.0, &[0], vec![Phrase::Times(2, vec![Phrase::Run(5, nth(0))])]);
    let half = one.trains[0].bits.split_off(5);
    one.trains[0].rest = Rest::At(100.0);
    one.trains.push(Train::new(half, Rest::At(230.0)));
    one.settle = Settle::Spread;
    let steps = told(&design(vec![one]), UnitStyle::Mm);
    assert_eq!(
        check(&steps, "Space"),
        "The first group, G1, starts 100 mm from the outside of the first end's loop, and 100 mm of bare wire lies between groups."
    );
}

#[test]
fn cautions_are_those_that_apply_and_never_say_that_a_piece_complies() {
    let titles = |design: &Design| cautions(design).iter().map(|caution| caution.title).collect::<Vec<_>>();
    let necklace = titles(&gathered());
    assert_eq!(necklace, ["Eyes", "Children", "Round the neck", "Metals", "Glass and crystal", "Before you sell"]);
    let bracelet = titles(&elastic_bracelet());
    assert_eq!(bracelet, ["Children", "Glass and crystal", "Glue", "Elastic", "Before you sell"]);
    let all: String = cautions(&gathered()).iter().map(|caution| caution.text).collect();
    assert!(all.contains("does not say that a piece complies") && all.contains("ask a qualified person"));
}

#[test]
fn tools_are_those_that_the_steps_use() {
    let tools = tools(&gathered(), UnitStyle::Both);
    for tool in ["crimping pliers", "round-nose pliers", "flush cutters", "eye protection", "ruler"] {
        assert!(tools.iter().any(|one| one == tool), "{tool}");
    }
    assert!(!tools.iter().any(|tool| tool == "jewellery glue" || tool == "sharp scissors"));
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
        let kinds = [ends.as_slice(), &left, &right].concat();
        let mut design = design_with(kinds.iter().map(|kind| finding(kind.word(), *kind)).collect(), strands).changed(|model| {
        model.heading.kind = kind;
        model.cords[nth(0)].kind = cord;
        }).expect("a design");
        let side = |base, kinds: &[FindingKind]| at(base, kinds).into_iter().map(part).collect();
        design = design.changed(|model| model.closure.joins = Joins::sides(side(3 + ends.len(), &left), side(3 + ends.len() + left.len(), &right))).expect("a design");
        let steps = told(&design, UnitStyle::Both);
        for text in steps.iter().flat_map(|step| [Some(&step.text), step.check.as_ref()]).flatten() {
            prop_assert!(text.ends_with('.') && !text.contains("  ") && !text.contains(" .") && !text.contains(".."), "{}", text);
            prop_assert!(text.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()), "{}", text);
        }
        let strings = |step: &&Told| step.title.starts_with("String ") || step.text.starts_with("Hang in the links ");
        let strung = steps.iter().filter(strings).count();
        prop_assert_eq!(strung, design.strands.len());
    }
}

#[test]
fn a_doubled_cord_is_hitched_by_its_fold() {
    let mut design = gathered()
        .changed(|model| {
            model.strands = vec![model.strands[nth(0)].clone()].into();
            model.cords[nth(0)].kind = CordKind::Silk;
        })
        .expect("a design");
    let single = (design.strands[nth(0)].cut(), design.mass());
    design = design.changed(|model| model.strands[nth(0)].legs = 2).expect("a design");
    let steps = told(&design, UnitStyle::Both);
    let hitch = steps.iter().find(|step| step.drawing == Some(Drawing::LarksHead)).expect("a hitch");
    assert!(hitch.text.contains("through the eye of the first eye pin"), "{}", hitch.text);
    assert!(titles(&steps).contains(&"Thread the last end"), "{:?}", titles(&steps));
    assert!(!titles(&steps).contains(&"Thread the first end"), "{:?}", titles(&steps));
    // The second leg is as long as the strand, and weighs as much as its cord.
    let finished = design.strands[nth(0)].finished;
    assert_eq!(design.strands[nth(0)].cut(), single.0 + finished);
    let cord = design.cords[nth(0)].mass_per_metre.value() * finished.value() / 1000.0;
    assert!((design.mass().value() - single.1.value() - cord).abs() < 1e-9);
}

#[test]
fn a_knot_is_drawn_with_the_cords_that_are_in_hand() {
    let drawn = |legs| {
        let design = gathered().changed(|model| {
            let mut strand = model.strands[nth(0)].clone();
            strand.legs = legs;
            strand.ends.iter_mut().for_each(|end| end.findings.clear());
            model.strands = vec![strand].into();
            model.cords[nth(0)].kind = CordKind::Silk;
        });
        let design = design.expect("a design");
        told(&design, UnitStyle::Both).into_iter().filter_map(|step| step.drawing).collect::<Vec<_>>()
    };
    let back = |legs| [Drawing::Knot(Knotted::Back(legs)), Drawing::KnotGlued(Knotted::Back(legs))];
    let has = |drawn: &[Drawing], all: [Drawing; 2]| all.map(|one| drawn.contains(&one));
    let [single, doubled] = [1, 2].map(drawn);
    assert_eq!([has(&single, back(1)), has(&single, back(2))], [[true; 2], [false; 2]], "{single:?}");
    assert_eq!([has(&doubled, back(1)), has(&doubled, back(2))], [[false; 2], [true; 2]], "{doubled:?}");
}

#[test]
fn bars_are_shared_by_as_many_strands_as_they_have_holes() {
    let chart = vec![Phrase::Run(5, nth(0)), Phrase::Finding(nth(2)), Phrase::Run(5, nth(0))];
    let names = ["one", "two", "three", "four"];
    let design = design(names.iter().map(|name| strand(name, 400.0, &[0], chart.clone())).collect())
        .changed(|model| model.findings[nth(2)].form = bar(2))
        .expect("a design");
    let steps = told(&design, UnitStyle::Both);
    let strung: Vec<_> = steps.iter().filter(|step| step.title.starts_with("String ")).collect();
    let hole = |n: u32| format!(", hole {n})");
    let told: Vec<_> = strung.iter().map(|step| [1, 2].map(|n| step.text.contains(&hole(n)))).collect();
    assert_eq!(told, [[true, false], [false, true], [true, false], [false, true]]);
}
