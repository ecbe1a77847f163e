//! What steps, tools and lists say of pairs, needles, closed rings and the beads in end knots.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::path::Path;

use festoon::design::{Choice, Design, Joins, nth};
use festoon::materials::{Amount, Article, Materials, Order, materials};
use festoon::pattern::FindingKind;
use festoon::source::Source;
use festoon::steps::english::{self, cautions, tools};
use festoon::units::UnitStyle;

use crate::designs::{cord, gathered, part};

/// The design of a shipped pattern.
pub fn shipped(name: &str) -> Design {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("patterns").join(format!("{name}.yaml"));
    let text = std::fs::read_to_string(&path).unwrap();
    festoon::piece(&Source::new(name, text), &Choice::default(), None).0.unwrap().design
}

/// All that the steps of a design say.
fn told(design: &Design) -> String {
    let each = english::told(design, UnitStyle::Both)
        .into_iter()
        .map(|step| format!("{} {} {}", step.title, step.text, step.check.unwrap_or_default()));
    each.collect::<Vec<_>>().join("\n")
}

/// Of a doubled cord of 1 mm on a piece of 8 3/4 in: a hitch of three thicknesses, a loop of two and a half widths of both
/// legs, a knot of three; what they leave beside the beads is bare, and all of it adds up.
#[test]
fn a_tied_end_takes_its_loop_and_its_knot() {
    let design = shipped("bollard");
    let strand = &design.strands[nth(0)];
    let ends = strand.ends.each_ref().map(|end| end.takes.value());
    assert_eq!(ends, [3.0, 2.0 * 2.5 + 2.0 * 3.0]);
    let beads: f64 = strand.bits().map(festoon::design::Bit::length).sum();
    assert!((strand.bare().value() - (8.75 * 25.4 - beads - 14.0)).abs() < 1e-9);
    let sum = english::sum(&design, strand, UnitStyle::Both);
    assert!(sum.contains("first end (hitch 3) 3 and last end (loop 5, knot 6) 11 are 222.2 (8 ¾ in)"), "{sum}");
    // A cover of 3.5 mm about a crimp of 2 mm reaches half of the rest beyond it.
    let dune = shipped("dune");
    let sum = english::sum(&dune, &dune.strands[nth(0)], UnitStyle::In);
    assert!(sum.contains("(each loop 0.16, wire guard in it, tube crimp 0.08, crimp cover 0.03 beyond it)"), "{sum}");
}

fn need(materials: &Materials, id: &str) -> Option<Amount> {
    materials.lines.iter().find(|line| line.id == id).map(|line| line.need)
}

/// A rope of wooden beads on silk with a tassel of it has no metal; a clasp, wire and beads of brass are.
#[test]
fn metal_is_warned_of_where_there_may_be_some() {
    let warns = |design: &Design| cautions(design).iter().any(|caution| caution.title == "Metals");
    assert!(!warns(&shipped("sounding-line")) && !warns(&shipped("wrackline")));
    assert!(warns(&shipped("saltmarsh")) && warns(&shipped("spindrift")));
    let brass =
        shipped("sounding-line").changed(|model| model.beads[nth(0)].material = Some("antique brass".to_owned()));
    assert!(warns(&brass.unwrap()));
    let wooden = shipped("spindrift")
        .changed(|model| model.findings.iter_mut().for_each(|finding| finding.material = Some("wood".to_owned())));
    assert!(!warns(&wooden.unwrap()));
}

/// Of two strands of one length neither is the shortest, and one is the other.
#[test]
fn strands_alike_have_no_shortest() {
    let mut design = gathered();
    assert!(design.has_shortest() && told(&design).contains("along the shortest strand"), "{}", told(&design));
    design = design.changed(|model| model.strands[nth(0)].finished = model.strands[nth(1)].finished).expect("a design");
    assert!(!design.has_shortest() && !told(&design).contains("shortest strand"), "{}", told(&design));
    let titles = |design: &Design| {
        english::told(design, UnitStyle::Both).into_iter().map(|told| told.title).collect::<Vec<_>>().join("; ")
    };
    assert!(
        titles(&design).contains("Do the other strand") && !titles(&design).contains("other strands"),
        "{}",
        titles(&design)
    );
    assert!(titles(&shipped("saltmarsh")).contains("Do the other strands"));
}

#[test]
fn what_comes_with_another_is_bought_once_and_strung_by_itself() {
    let design = shipped("fathom");
    let list = materials(&design, &Order::default());
    let pair: Vec<_> = list.lines.iter().filter(|line| line.names[0].contains("toggle")).collect();
    let [line] = pair.as_slice() else { panic!("one line to buy: {pair:?}") };
    assert_eq!((line.names.join(" + ").as_str(), line.need), ("toggle ring + toggle bar", Amount::Count(1)));
    assert_eq!(line.buy.as_ref().unwrap().lots, 1);
    let steps = told(&design);
    assert!(steps.contains("the toggle ring") && steps.contains("the toggle bar"), "{steps}");
}

/// Two halves that are called alike are one thing with one name.
#[test]
fn halves_of_one_name_are_bought_under_it() {
    let mut design = shipped("fathom");
    let is_bar = |finding: &&mut festoon::design::Finding| finding.comes_with.is_some();
    design = design
        .changed(|model| model.findings.iter_mut().find(is_bar).unwrap().name = "toggle ring".into())
        .expect("a design");
    let list = materials(&design, &Order::default());
    assert!(list.lines.iter().any(|line| line.names == ["toggle ring"]), "{list:?}");
    assert!(list.lines.iter().all(|line| line.names.len() == 1), "{list:?}");
}

#[test]
fn a_pair_of_which_two_bars_are_needed_is_bought_twice() {
    let mut design = gathered();
    let (ring, bar) = (design.closure.left()[0].finding, design.findings.len());
    let with = Some(design.findings[ring].id.clone());
    design = design
        .changed(|model| {
            let mut other = design.findings[ring].clone();
            (other.id, other.comes_with) = ("bar".into(), with);
            model.findings.push(other);
        })
        .expect("a design");
    let right = design.closure.right().iter().cloned().chain([part(bar), part(bar), part(bar)]).collect();
    design = design
        .changed(|model| model.closure.joins = Joins::sides(model.closure.left().to_vec(), right))
        .expect("a design");
    let id = design.findings[ring].id.clone();
    assert_eq!(need(&materials(&design, &Order::default()), &id), Some(Amount::Count(3)));
    assert_eq!(need(&materials(&design, &Order::default()), "bar"), None);
}

#[test]
fn silk_with_its_own_needle_asks_for_none() {
    let own = shipped("moonwrack");
    let needles: Vec<_> = tools(&own, UnitStyle::Both).into_iter().filter(|tool| tool.contains("needle")).collect();
    assert_eq!(needles, ["needle: the silk has its own"]);
    assert!(told(&own).contains("the silk's own needle"));
    // It is said where the cord is cut, before one end of it is chosen.
    let steps = told(&own);
    let at = |words: &str| steps.find(words).unwrap_or_else(|| panic!("{words}"));
    assert!(at("has its own needle, which stays on") < at("first end"), "{steps}");
    // Seed beads on thread that has none are strung with one that is bought.
    let bought = shipped("fathom");
    assert!(
        tools(&bought, UnitStyle::Both).iter().any(|tool| tool == "beading needle for holes of 1 mm"),
        "{:?}",
        tools(&bought, UnitStyle::Both)
    );
    assert!(told(&bought).contains("String with a beading needle"));
}

#[test]
fn the_bead_that_a_knot_is_tied_round_is_counted_and_bought() {
    let design = shipped("fathom");
    let at = design.beads.find(|bead| bead.id == "fleck").unwrap();
    let strung = design.strands[nth(0)].counts(&design)[at];
    // One in each of two knot covers.
    assert_eq!(design.counts()[at], strung + 2);
    let list = materials(&design, &Order::default());
    assert_eq!(list.lines[at.number()].article, Article::Bead(at));
    assert_eq!(list.lines[at.number()].need, Amount::Count(u64::from(strung) + 2));
    assert_eq!(told(&design).matches("tie the thread round it").count(), 2);
    // Without one no step speaks of a bead that no list has.
    let without = told(&shipped("moonwrack"));
    assert!(!without.contains("seed bead") && without.contains("tie another over it"), "{without}");
}

#[test]
fn no_step_opens_a_ring_that_is_closed_for_good() {
    let design = shipped("moonwrack");
    assert!(design.findings.iter().any(|finding| finding.ring().is_some_and(|ring| ring.closed)));
    let steps = told(&design);
    assert!(!steps.contains("Open ") && !steps.contains("Look for gaps"), "{steps}");
}

/// A clasp on a closed ring on a chain: the chain's end link is opened, and then nothing opens for the clasp.
#[test]
fn beside_a_closed_ring_the_other_finding_opens() {
    let mut design = gathered();
    let chain = design.findings.find(|finding| finding.kind() == FindingKind::Chain).unwrap();
    let ring = design.findings.len();
    design = design
        .changed(|model| {
            let mut soldered = crate::designs::finding("soldered ring", FindingKind::JumpRing);
            soldered.form = crate::designs::soldered();
            model.findings.push(soldered);
            model.cords.push(cord("silk", festoon::pattern::CordKind::Silk));
        })
        .expect("a design");
    let right = vec![design.closure.left()[0].clone(), part(ring)];
    let chain = design.closure.left().iter().filter(|part| part.finding == chain).cloned();
    design = design
        .changed(|model| model.closure.joins = Joins::sides(chain.chain([part(ring)]).collect(), right))
        .expect("a design");
    let steps = told(&design);
    assert!(steps.contains("open the end link of"), "{steps}");
    assert!(!steps.contains("open the soldered ring") && !steps.contains("open the first soldered ring"), "{steps}");
}

#[test]
fn a_tail_is_what_the_loop_leaves_of_its_allowance() {
    // Saltmarsh allows 60 mm beyond each end. By pencil: back from the loop, 3/16 in less a crimp of 2 mm, and
    // through that crimp go 4.7625 - 2 + 2 mm, so that 55.24 mm are left.
    let design = shipped("saltmarsh");
    for strand in &design.strands {
        let tails = strand.ends.each_ref().map(|end| strand.tail(end, &design).value());
        assert!(tails.iter().all(|tail| (tail - 55.2375).abs() < 1e-9), "{tails:?}");
    }
    assert!(told(&design).contains("Leave a tail of 2 3⁄16 in (55 mm) beyond it."), "{}", told(&design));
}

/// Twisted strands are turned when all else is done, and what they lose by it is said before cord is cut; rows are told
/// as they are strung.
#[test]
fn a_torsade_is_twisted_last_and_its_lengths_are_told_first() {
    let design = shipped("hawser");
    let steps = english::told(&design, UnitStyle::Both);
    let place = |title: &str| steps.iter().position(|step| step.title == title).unwrap();
    let (twist, check) = (place("Twist the strands"), place("Check the piece"));
    assert!(place("Hang the lobster clasp") < twist && twist + 1 == check);
    assert!(steps[twist].text.contains("turn the other 9 times"), "{}", steps[twist].text);
    // Strands of 438.8 mm reach sqrt(438.8² - (2 pi 9 x 1.9)²) = 425.6 mm or so, three tubes of 3.3 mm at 1.9 mm.
    assert!(steps[twist].check.as_ref().unwrap().contains("(425 mm)"), "{:?}", steps[twist].check);
    // Their loops lie in cones: an eye of 3 mm of 0.72 mm wire lies 16 mm x (3 - 1.5) / (9 - 1.5) below the tip of each.
    let tips = 425.1 + 2.0 * (3.0 - 0.72 + 16.0 * 1.5 / 7.5);
    assert!(steps[twist].check.as_ref().unwrap().contains(&format!("({tips:.0} mm) from the tip of one")), "{tips}");
    let cut = &steps[place("Cut the wire")].text;
    let said =
        "Twisted 9 times, the strands will reach about 16 ¾ in (425 mm) from loop to loop: cut them as long as told.";
    assert!(cut.contains(said), "{cut}");
    let straight = design.changed(|model| model.twist = None).expect("a design");
    let rows = |design: &Design| {
        let rows = english::told(design, UnitStyle::Both).into_iter().filter(|step| step.title.starts_with("String "));
        rows.map(|step| step.text).collect::<Vec<_>>()
    };
    assert_eq!(rows(&design), rows(&straight));
    assert!(!english::told(&straight, UnitStyle::Both).iter().any(|step| step.title == "Twist the strands"));
}

/// The numbers among the words of a text.
fn lengths(text: &str) -> Vec<f64> {
    text.split([' ', ',']).filter_map(|word| word.trim_end_matches('.').parse().ok()).collect()
}

#[test]
fn what_parts_of_a_strand_take_adds_up_to_it_as_printed() {
    for name in ["saltmarsh", "sandhopper", "spindrift", "sounding-line", "plumb-line", "fathom", "hawser", "rockpool"]
    {
        let design = shipped(name);
        for strand in &design.strands {
            let sum = english::sum(&design, strand, UnitStyle::Both);
            // What an end has in it is told in brackets.
            let outside: String = sum.split('(').map(|part| part.rsplit(')').next().unwrap_or_default()).collect();
            let outside = outside
                .replace(" ×", "×")
                .replace(" knot", "-knot")
                .replace(" dangle", "-dangle")
                .replace("2 ends", "ends");
            let mut parts = lengths(&outside);
            let whole = parts.pop().expect("a whole");
            assert!((parts.iter().sum::<f64>() - whole).abs() < 1e-9, "{sum}");
            assert!((whole - strand.finished.value()).abs() <= 0.05 + 1e-9, "{sum}: {}", strand.finished);
        }
    }
}
