//! Slips of the pen, as three new makers made them: each is one message at its own line that says what to
//! do, and none hides what else is wrong.

#![allow(clippy::unwrap_used, reason = "a test without a remark fails")]

use festoon::design::Choice;
use festoon::remark::{Code, Level, Remark};
use festoon::source::Source;

const SOUND: &str = "\
festoon: 1
title: Try
kind: necklace
beads:
  reed:
    shape: round
    size: 6 mm
    hole: 1 mm
    colour: \"#5d7f5b\"
  mist: { shape: cube, size: 4 mm, hole: 1 mm, colour: \"#c9d6d8\" }
cords:
  thread: { kind: thread, diameter: 0.4 mm, strength: 60 N }
strands:
  - name: only
    cord: thread
    length: 16 in
    beads: [20 reed, 3 mist, 20 reed]
wear: { neck base: 370 mm }
";

fn errors(text: &str) -> (Vec<Remark>, Source) {
    let source = Source::new("try.yaml", text);
    let remarks = festoon::remarks(&source, &Choice::default());
    (remarks.into_iter().filter(|remark| remark.level() == Level::Error).collect(), source)
}

fn changed(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(SOUND.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1)
    })
}

/// What is written, what is written instead, and words of what is said.
const SLIPS: &[(&str, &str, &str)] = &[
    ("    size: 6 mm", "\tsize: 6 mm", "indented with a tab"),
    ("title: Try", "title Try", "no colon behind `title`"),
    ("    size: 6 mm", "    size 6 mm", "no colon behind `size`"),
    ("shape: cube", "shape cube", "no colon behind `shape`"),
    ("title: Try", "title:Try", "no space behind `title:`"),
    ("    size: 6 mm", "    size:6 mm", "no space behind `size:`"),
    ("hole: 1 mm, colour: \"#c", "hole:1 mm, colour: \"#c", "no space behind `hole:`"),
    ("    size: 6 mm", "    size = 6 mm", "equals sign"),
    ("colour: \"#5d7f5b\"", "colour: \"#5d7f5b", "not closed on its line"),
    ("colour: \"#c9d6d8\"", "colour: \"#c9d6d8", "not closed on its line"),
    ("\"#c9d6d8\" }", "\"#c9d6d8\"", "`{` is never closed"),
    ("20 reed]", "20 reed", "`[` is never closed"),
    ("20 reed]", "20 reed]]", "`]` closes nothing"),
    ("20 reed]", "20 reed}", "only `]` can close"),
    ("shape: cube, size", "shape: cube size", "no comma before `size`"),
    ("shape: cube, size", "shape: cube; size", "semicolon"),
    ("3 mist, 20", "3 mist,, 20", "nothing between them"),
    ("20 reed, 3 mist", "20 reed 3 mist", "a comma"),
    ("    hole: 1 mm\n", "      hole: 1 mm\n", "not indented like"),
    ("    hole: 1 mm\n", "   hole: 1 mm\n", "not indented like"),
    ("    cord: thread", "   cord: thread", "not indented like"),
    ("title: Try", "title: Try\ntitle: Again", "`title` stands twice"),
    ("    hole: 1 mm", "    hole: 1 mm\n    size: 5 mm", "`size` stands twice"),
    ("colour: \"#5d7f5b\"", "colour: #5d7f5b", "in quotes"),
    ("colour: \"#c9d6d8\"", "colour: #c9d6d8", "in quotes"),
    ("  - name", "  -name", "no space behind this dash"),
    ("title: Try", "title: Try: again", "second colon"),
    ("title: Try", "title: \"Try\" again", "behind its closing quote"),
    ("title: Try", "title: 'A maker's try'", "behind its closing quote"),
    ("title: Try", "title: @Try", "begins with `@`"),
    ("title: Try", "title: Try\n---", "ends the pattern"),
    ("colour: \"#5d7f5b\"", "color: \"#5d7f5b\"", "did you mean `colour`?"),
    ("colour: \"#5d7f5b\"", "farbe: \"#5d7f5b\"", "the keys here are"),
    ("length: 16 in", "lenght: 16 in", "did you mean `length`?"),
    ("beads:\n", "perlen:\n", "the keys here are"),
    ("size: 6 mm", "size: 6", "which unit"),
    ("size: 6 mm", "size: 6mn", "unknown unit"),
    ("length: 16 in", "length: 16 Zoll", "unknown unit"),
    ("shape: round", "shape: rund", "not a bead shape"),
    ("kind: necklace", "kind: necklase", "did you mean `necklace`?"),
    ("20 reed, 3", "20 rede, 3", "did you mean `reed`?"),
    ("cord: thread", "cord: [thread]", "a list stands where"),
    ("beads: [20 reed, 3 mist, 20 reed]", "beads: 20 reed", "a list"),
    ("title: Try\n", "", "`title` is not written"),
    ("    cord: thread\n", "", "`cord` is not written"),
];

#[test]
fn each_slip_is_one_error_at_its_line_with_what_to_do() {
    let fault = |(from, to, words): &(&str, &str, &str)| {
        let text = changed(&[(from, to)]);
        let (errors, source) = errors(&text);
        let [error] = errors.as_slice() else { return Some(format!("{to}: {errors:#?}")) };
        let said = format!("{}; {}", error.headline(), error.help());
        let line = source.line_column(error.place?.start).0;
        let first = SOUND.find(from)?;
        let lines = 1 + SOUND[..first].matches('\n').count();
        let last = lines + to.trim_end().matches('\n').count();
        let right = said.contains(words) && !error.help().is_empty() && (lines..=last).contains(&line);
        // What is not written is missed where its group begins.
        (!right && !to.is_empty()).then(|| format!("{to}: line {line}, not {lines}: {said}"))
    };
    let faults: Vec<_> = SLIPS.iter().filter_map(fault).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_slip_hides_nothing_else() {
    // Whatever the slip, the cord stays too thick for the hole of a bead, and the last strand overfull.
    let more = "  - { name: other, cord: thread, length: 100 mm, beads: [30 mist] }\nwear:";
    for (from, to, _) in SLIPS.iter().filter(|(_, to, _)| !["cord: [thread]", "perlen:\n"].contains(to)) {
        let text = changed(&[("wear:", more), (from, to)]);
        let (errors, _) = errors(&text);
        let codes: Vec<_> = errors.iter().map(|error| error.code()).collect();
        let own = codes.iter().filter(|code| **code != Code::Overfull).count();
        let touched = to.contains("mist") || from.contains("#c9d6d8") || from.contains("cube") || to.contains("hole:1");
        assert!(touched || codes.contains(&Code::Overfull), "{to}: {errors:#?}");
        assert!(own <= 1 && errors.len() <= 2, "{to}: {errors:#?}");
    }
}

#[test]
fn mistakes_of_every_stage_are_told_at_once() {
    let more = "  - { name: thick, cord: rope, length: 400 mm, beads: [3 mist] }\n\
                \x20 - { name: full, cord: thread, length: 100 mm, beads: [30 mist] }\n\
                \x20 - { name: lost, cord: tread, beads: [3 must] }\nwear:";
    let text = changed(&[
        ("title: Try", "title Try"),
        ("size: 6 mm", "size: 6"),
        ("cords:\n", "cords:\n  rope: { kind: silk, diameter: 2 mm }\n"),
        ("wear:", more),
    ]);
    let codes: Vec<_> = errors(&text).0.iter().map(|error| error.code()).collect();
    let all = [Code::Yaml, Code::BadQuantity, Code::Overfull, Code::UnknownId, Code::UnknownId, Code::CordTooThick];
    assert_eq!(codes.len(), all.len(), "{codes:?}");
    assert!(all.iter().all(|code| codes.contains(code)), "{codes:?}");
}

#[test]
fn what_hangs_on_what_is_said_to_hang_on_nothing_else() {
    let chain = "findings:\n  ch: { kind: chain, link: 3 mm }\nstrands:";
    let text = changed(&[("strands:", chain), ("3 mist, 20", "{ dangle: [3 mist], on: { ch: 60 mm } }, 20")]);
    let (errors, source) = errors(&text);
    let [error] = errors.as_slice() else { panic!("{errors:#?}") };
    assert!(error.help().contains("length: 60 mm") && error.help().contains("on: ch"), "{}", error.help());
    assert!(source.slice(error.place.unwrap()).starts_with('{'));
}

#[test]
fn what_nobody_can_read_is_left_out() {
    let text = changed(&[("shape: round", "shape: [\"\\q\"]"), ("3 mist", "3 must")]);
    let (errors, _) = errors(&text);
    let codes: Vec<_> = errors.iter().map(|error| error.code()).collect();
    assert_eq!(codes, [Code::Yaml, Code::UnknownId], "{errors:#?}");
}

#[test]
fn an_id_is_not_hidden_by_a_longer_word_that_cannot_be_read() {
    // `c` stands in `cord` and in `- name: three`, of which nothing is read.
    let text = changed(&[
        ("20 reed, 3 mist, 20 reed", "20 reed, 3 c, 20 reed"),
        ("wear:", "  - { name: three, cord: thread, beads: [10 reed }, length: 200 mm }\nwear:"),
    ]);
    let (errors, _) = errors(&text);
    let said: Vec<_> = errors.iter().map(|remark| remark.headline()).collect();
    assert!(said.iter().any(|said| said == "the pattern defines no bead `c`"), "{said:?}");
    assert_eq!(said.len(), 2, "{said:?}");
}

#[test]
fn one_finding_of_a_closure_needs_no_brackets() {
    let findings = "findings:\n  hook: { kind: clasp, length: 12 mm, inside: 3 mm }\n  links: { kind: chain, link: 4 mm }\n  \
                    crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }\n";
    let closed = |closure: &str| {
        let text = changed(&[("    length: 16 in", "    length: 16 in\n    ends: crimp")]);
        errors(&format!("{text}{findings}closure: {closure}\n")).0
    };
    assert_eq!(closed("{ left: { links: 40 mm }, right: hook }"), []);
    assert_eq!(closed("{ left: [{ links: 40 mm }], right: [hook] }"), []);
    assert_eq!(closed("{ left: [{ links: 40 mm }], right: hoop }")[0].code(), Code::UnknownId);
}
