//! The word chart names what stays in its place, and says the stations that steps and lists say: of knots, bars
//! and stops as many as it strings, each where the lengths before it add up to.

use festoon::design::{Design, Rest, Strand, What, nth};
use festoon::pattern::FindingKind;
use festoon::steps::english::{self, chart};
use festoon::steps::posts::{Keeps, Posts};
use festoon::units::UnitStyle;
use proptest::prelude::*;

use crate::chart::{resolved, written};

/// Names such as `K1`, in the order in which a chart gives them, ranges written out, each with its station where it
/// has one.
fn named(text: &str) -> Vec<(String, Option<String>)> {
    let words: Vec<_> = text.split_inclusive([' ', '(', ')', ',', ':', '\n']).collect();
    let mut found: Vec<(String, Option<String>)> = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let Some((letter, number)) = name(word) else { continue };
        if at > 1 && words[at - 1] == "to " {
            let first = found.last().and_then(|(name, _)| self::name(name)).expect("a range has a first name").1;
            found.extend((first + 1..number).map(|between| (format!("{letter}{between}"), None)));
        }
        let station = words.get(at + 1..at + 4).filter(|words| words[0] == "at ");
        let station =
            station.map(|words| words[1..].concat().trim_end_matches([')', ':', ',', ' ', '.', '\n']).to_owned());
        found.push((format!("{letter}{number}"), station));
    }
    found
}

fn name(word: &str) -> Option<(char, u32)> {
    let word = word.trim_end_matches([' ', ')', ',', ':', '.']);
    let letter = word.chars().next().filter(char::is_ascii_uppercase)?;
    Some((letter, word[1..].parse().ok()?))
}

/// Where knots, bars and stops of a strand have their middles: the lengths before them, added up.
fn middles(design: &Design, strand: &Strand, keeps: Keeps) -> Vec<f64> {
    let divided = strand.chart.iter().any(|phrase| matches!(phrase, festoon::design::Phrase::Stop(..)));
    let mut middles = Vec::new();
    for train in &strand.trains {
        let Rest::At(start) = train.rest else { continue };
        let before = |at: usize| train.bits[..at].iter().map(|bit| bit.before + bit.after).sum::<f64>();
        let is = |what: &What| match (what, keeps) {
            (What::Knot, Keeps::Knot) => true,
            (What::Finding(at), Keeps::Bar) => design.findings[*at].kind() == FindingKind::SpacerBar,
            (What::Finding(at), Keeps::Stop) => divided && design.findings[*at].kind() == FindingKind::Crimp,
            _ => false,
        };
        let found = train.bits.iter().enumerate().filter(|(_, bit)| is(&bit.what));
        middles.extend(found.map(|(at, bit)| start + before(at) + bit.before));
    }
    middles
}

/// The chart of a strand, and all steps.
fn told(design: &Design, units: UnitStyle) -> (String, String) {
    let all = english::told(design, units)
        .into_iter()
        .map(|step| format!("{} {}", step.text, step.check.unwrap_or_default()));
    (chart::whole(design, &design.strands[nth(0)], units).to_string(), all.collect::<Vec<_>>().join("\n"))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(150) })]

    #[test]
    fn chart_and_steps_name_the_same_places(strand in written()) {
        let design = resolved(&strand).ok_or_else(|| TestCaseError::fail(strand.clone()))?;
        let one = &design.strands[nth(0)];
        let posts = Posts::new(&design, one);
        for keeps in [Keeps::Knot, Keeps::Bar, Keeps::Stop] {
            let middles = middles(&design, one, keeps);
            prop_assert_eq!(posts.of(keeps).count(), middles.len());
            for (post, at) in posts.of(keeps).zip(&middles) {
                prop_assert!((post.station.value() - at).abs() < 1e-6, "{:?} at {}", post, at);
            }
        }
        let (chart, steps) = told(&design, UnitStyle::Mm);
        let in_chart = named(&chart);
        for keeps in Keeps::ALL {
            let wanted: Vec<_> = posts.of(keeps).map(|post| post.name.as_str()).collect();
            let said: Vec<_> = in_chart.iter().map(|(name, _)| name.as_str()).filter(|name| name.starts_with(keeps.letter(&design))).collect();
            prop_assert_eq!(said, wanted, "{}", chart);
        }
        for (name, station) in in_chart.into_iter().chain(named(&steps)) {
            let Some(station) = station else { continue };
            let post = posts.all().iter().find(|post| post.name == name).expect("what is named stays in its place");
            let mm: f64 = station.strip_suffix(" mm").and_then(|mm| mm.parse().ok()).expect("a station in mm");
            prop_assert!((mm - post.station.value()).abs() < 0.5 + 1e-6, "{} {:?}", station, post);
        }
    }
}

#[test]
fn knots_between_beads_are_told_by_their_first_and_last() {
    let design = resolved("settle: fixed, beads: [{ space: 100 mm }, { repeat: 60, of: [{ knot: 2 mm }, a] }]");
    let design = design.expect("a design");
    let (chart, steps) = told(&design, UnitStyle::Both);
    // A knot of 2 mm, then a round bead of 4 mm with a hole of 1 mm: 2 sqrt(2^2 - 0.5^2) = 3.873 mm, sixty times.
    let last = 100.0 + 59.0 * (2.0 + 3.873) + 1.0;
    // What is left bare of the strand is told last.
    assert!(chart.contains("then [(knot) 1A], 60 times (knots K1 to K60), then ("), "{chart}");
    assert!(chart.ends_with(" mm bare)"), "{chart}");
    let both = |mm: f64| festoon::units::UnitStyle::Both.ruler(festoon::units::Length::mm(mm));
    let wanted = format!("K1 at {} to K60 at {}.", both(101.0), both(last));
    assert!(steps.contains(&wanted), "{wanted}: {steps}");
    assert!(steps.contains("60 beads: 60A. Besides, 60 knots."), "{steps}");
}

#[test]
fn a_written_knot_is_told_beside_those_between_all_beads() {
    let design = resolved("settle: fill, knots: 2 mm, beads: [3 a, { space: 9 mm }, { knot: 3 mm }, 3 a]");
    let (chart, steps) = told(&design.expect("a design"), UnitStyle::Both);
    assert!(chart.contains("(knot K1 at "), "{chart}");
    assert!(steps.contains("Between each bead and the next tie an overhand knot"), "{steps}");
    assert!(steps.contains("A knot is to take 0.079 in (2 mm) along the wire."), "{steps}");
}

#[test]
fn no_name_begins_with_the_letter_of_a_bead() {
    let design = resolved("settle: fixed, beads: [10 a, bar, 3 b, { knot: 2 mm }, c]").expect("a design");
    let letters: Vec<_> = design.beads.iter().map(|bead| bead.letter.as_str()).collect();
    assert_eq!(letters, ["A", "B", "C"]);
    // B and A of `bar` are beads.
    assert_eq!(Keeps::ALL.map(|keeps| keeps.letter(&design)), ['S', 'K', 'R', 'G']);
}
