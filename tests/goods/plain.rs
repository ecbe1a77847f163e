//! What steps say holds of the piece: its cord has its own word, lengths stand in the sheet's units, tools are those that are
//! used, and what is told of many has its plural.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::sync::OnceLock;

use festoon::design::{Choice, Design, nth};
use festoon::pattern::CordKind;
use festoon::source::Source;
use festoon::steps::english::{measures, sum, told, tools};
use festoon::units::UnitStyle;

use crate::shelved::shelved;
use crate::told::shipped;

/// The designs of all shipped patterns.
fn all() -> &'static [Design] {
    static ALL: OnceLock<Vec<Design>> = OnceLock::new();
    ALL.get_or_init(made)
}

fn made() -> Vec<Design> {
    let names = std::fs::read_dir("patterns").unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<_> = names.filter_map(|name| name.strip_suffix(".yaml").map(str::to_owned)).collect();
    assert!(!names.is_empty(), "no patterns");
    names.sort();
    let made = |name: &String| festoon::piece(&shelved(&format!("patterns/{name}.yaml")), &Choice::default(), None).0;
    names.iter().map(|name| made(name).unwrap().design).collect()
}

/// All that its steps say.
fn words(design: &Design, units: UnitStyle) -> String {
    let each = told(design, units).into_iter();
    let each = each.map(|step| format!("{}. {} {}", step.title, step.text, step.check.unwrap_or_default()));
    let strands =
        design.strands.iter().map(|strand| sum(design, strand, units) + " " + &measures(design, strand, units));
    each.chain(strands).collect::<Vec<_>>().join("\n")
}

/// The same without the names that the pattern gives.
fn said(design: &Design, units: UnitStyle) -> String {
    let text = words(design, units);
    let beads = design.beads.iter().map(|bead| &bead.name);
    let cords = design.cords.iter().map(|cord| &cord.name);
    let names = beads.chain(cords).chain(design.findings.iter().map(|finding| &finding.name));
    let strands = design.strands.iter().map(|strand| &strand.name);
    names.chain(strands).fold(text, |text, name| text.replace(name.as_str(), "*"))
}

#[test]
fn cord_is_called_what_it_is() {
    // `thread` is what is done as well, and told by what stands before it.
    let words = [
        (CordKind::Silk, "silk"),
        (CordKind::Leather, "leather"),
        (CordKind::Elastic, "elastic"),
        (CordKind::MemoryWire, "memory wire"),
        (CordKind::Thread, "the thread"),
        (CordKind::Thread, "bare thread"),
        (CordKind::Thread, "cord"),
    ];
    for design in all() {
        let has = |kind| design.strands.iter().any(|strand| design.cords[strand.cord].kind == kind);
        let text = said(design, UnitStyle::Both);
        for (_, word) in words.iter().filter(|(kind, _)| !has(*kind)) {
            let is_word = |(at, _): (usize, &str)| !text[at + word.len()..].starts_with(char::is_alphabetic);
            assert!(!text.match_indices(word).any(is_word), "{}: {word} in {text}", design.heading.title);
        }
    }
}

/// Where millimetres stand alone on a sheet of both units: all that stand in no bracket behind inches.
fn alone(text: &str) -> Vec<&str> {
    let before = |at: usize| text[..at].trim_end_matches(|sign: char| sign.is_ascii_digit() || sign == '.');
    let is_alone = |at: usize| !before(at).ends_with('(') && !before(at).ends_with(" in ");
    text.match_indices(" mm")
        .filter(|(at, _)| is_alone(*at))
        .map(|(at, _)| &text[at.saturating_sub(20)..at + 3])
        .collect()
}

#[test]
fn lengths_stand_in_the_units_of_the_sheet() {
    for design in all() {
        let [both, inches, mm] = [UnitStyle::Both, UnitStyle::In, UnitStyle::Mm].map(|units| said(design, units));
        assert_eq!(alone(&both.replace("Added up in mm", "")), [""; 0], "{}", design.heading.title);
        assert!(!inches.contains("mm"), "{}: {inches}", design.heading.title);
        assert!(!mm.contains(" in ("), "{}: {mm}", design.heading.title);
    }
}

#[test]
fn tools_are_listed_that_steps_use_and_no_others() {
    // A tool, and what a step says that takes it.
    let taken = [
        ("crimping pliers", "crimping pliers"),
        ("chain-nose pliers", "chain-nose pliers"),
        ("two pairs of chain-nose", "two pairs of chain-nose"),
        ("round-nose pliers", "round-nose pliers"),
        ("awl or tweezers", "awl or"),
        ("beading needle", "beading needle"),
        ("glue", "glue"),
        ("bead stopper", "bead stopper"),
        ("tape for tags", "bit of tape"),
        ("memory wire cutters", "memory wire cutters"),
        ("card", "round a card"),
    ];
    for design in all() {
        let (listed, text) = (tools(design, UnitStyle::Both).join("; "), words(design, UnitStyle::Both));
        for (tool, words) in taken {
            let is_said = text.to_lowercase().contains(words);
            assert_eq!(listed.contains(tool), is_said, "{}: {tool} among {listed}", design.heading.title);
        }
    }
}

#[test]
fn what_is_measured_with_the_beads_is_named() {
    let measured = |name: &str| {
        let design = shipped(name);
        measures(&design, &design.strands[nth(0)], UnitStyle::Mm)
    };
    let skerries = measured("skerries");
    assert!(
        skerries.starts_with("Pushed together, the beads and the 14 tube crimps strung with them measure "),
        "{skerries}"
    );
    assert!(skerries.contains(", the tube crimps at the ends not counted, "), "{skerries}");
    assert!(measured("pierhead").contains("the 2 spacer bars with three holes strung with them"));
    assert!(measured("whelk").starts_with("Pushed together, the beads and the loop of their dangle measure "));
    assert!(measured("painter").starts_with("The beads measure "));
}

/// The tail of Whelk's first end would come out beside the dangle in the middle: it is cut a bead before that.
#[test]
fn a_tail_ends_before_a_dangle() {
    let text = said(&shipped("whelk"), UnitStyle::Mm);
    assert!(
        text.contains("Take the first 11 beads over the tail as well, and cut it off there, clear of the dangle."),
        "{text}"
    );
}

/// Bare cord is told once in what is added up, and once alone: the same figure.
#[test]
fn bare_cord_is_one_figure() {
    let design = shipped("saltmarsh");
    for strand in &design.strands {
        let bare = strand.bare().tenths();
        let sum = sum(&design, strand, UnitStyle::Both);
        assert!(sum.contains(&format!("bare {}", bare.trim_end_matches(" mm"))), "{bare} in {sum}");
    }
}

/// What a clasp's ring must let through is told where thick cord goes through it twice.
#[test]
fn the_ring_of_a_clasp_has_the_size_that_thick_cord_needs() {
    let text = std::fs::read_to_string("patterns/bollard.yaml")
        .unwrap()
        .replace("length: 20 mm, inside: 3 mm", "length: 20 mm");
    let design = festoon::piece(&Source::new("bollard", text), &Choice::default(), None).0.unwrap().design;
    let hook = design.findings.indices().find(|at| design.findings[*at].name == "hook clasp").unwrap();
    // Two cords of 1 mm side by side.
    assert_eq!(festoon::steps::ends::ring_needed(&design, hook).unwrap().tenths(), "2 mm");
    let thin = shipped("whelk");
    assert!(thin.findings.indices().all(|at| festoon::steps::ends::ring_needed(&thin, at).is_none()));
}
