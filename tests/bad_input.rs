//! Hostile and mistaken input: each gives clear errors with their places, and no panic. What would take
//! for ever is refused for its size, which tests say without a clock.

use festoon::design::{Choice, resolve};
use festoon::pattern::read;
use festoon::remark::{Code, Remark};
use festoon::source::Source;

const SOUND: &str = "\
festoon: 1
title: Try
kind: necklace
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\" }
cords:
  wire: { kind: wire, diameter: 0.4 mm }
strands:
  - name: only
    cord: wire
    length: 16 in
    beads: [20 reed]
";

/// Everything said about a pattern.
fn remarks(text: &str) -> (Vec<Remark>, Source) {
    let source = Source::new("try.yaml", text);
    let (pattern, mut remarks) = read(&source);
    if let Some(pattern) = pattern {
        remarks.extend(resolve(&pattern, &Choice::default()).1);
    }
    (remarks, source)
}

/// The single remark that a changed pattern must give, with the text it points at.
fn only(from: &str, to: &str) -> (Code, String, String) {
    assert!(SOUND.contains(from), "{from}");
    let (remarks, source) = remarks(&SOUND.replace(from, to));
    let [remark] = remarks.as_slice() else { panic!("{remarks:#?}") };
    assert!(!remark.help().is_empty(), "{remark:?}");
    let at = remark.place.map(|place| source.slice(place).to_owned()).unwrap_or_default();
    (remark.code(), at, format!("{}; {}", remark.headline(), remark.help()))
}

fn says(from: &str, to: &str, code: Code, at: &str, words: &str) {
    let (found, place, text) = only(from, to);
    assert_eq!((found, place.starts_with(at)), (code, true), "{place}: {text}");
    assert!(text.contains(words), "{text}");
}

#[test]
fn a_sound_pattern_has_no_remark() {
    assert_eq!(remarks(SOUND).0, []);
}

#[test]
fn quantities() {
    says("16 in", "16", Code::BadQuantity, "16", "16 mm");
    says("16 in", ".nan", Code::BadQuantity, ".nan", "number");
    says("16 in", "1e400", Code::BadQuantity, "1e400", "unit");
    says("16 in", "-16 in", Code::BadQuantity, "-16 in", "less than nothing");
    says("16 in", "0 mm", Code::BadQuantity, "0 mm", "greater than zero");
    says("16 in", "16 inn", Code::BadQuantity, "16 inn", "inn");
    says("16 in", "[16 in]", Code::WrongKind, "[", "a list");
    says("6 mm", "4 m", Code::OutOfBounds, "4 m", "0.02 mm to 200 mm");
    says("6 mm", "6 x mm", Code::BadQuantity, "6 x mm", "number");
    says("\"#5d7f5b\"", "green", Code::BadQuantity, "green", "hex");
    says("20 reed", "0 reed", Code::BadQuantity, "0 reed", "at least 1");
    says("20 reed", "{ repeat: 1000000000, of: [reed] }", Code::OutOfBounds, "1000000000", "1 to 20000");
}

#[test]
fn proportions_of_a_body() {
    let wear = |wear: &str| SOUND.replace("title: Try", &format!("title: Try\nwear: {{ {wear} }}"));
    let codes = |text: &str| remarks(text).0.iter().map(|remark| remark.code()).collect::<Vec<_>>();
    for kept in ["breadth to depth: 0.8", "breadth to depth: 2", "chest tilt: 0 deg", "chest tilt: 60°"] {
        assert_eq!(codes(&wear(kept)), [], "{kept}");
    }
    for passed in ["breadth to depth: 0.79", "breadth to depth: 2.1", "chest tilt: 61 deg"] {
        assert_eq!(codes(&wear(passed)), [Code::OutOfBounds], "{passed}");
    }
    for wrong in ["breadth to depth: nan", "chest tilt: 20", "chest tilt: -5 deg", "chest tilt: 20 rad"] {
        assert_eq!(codes(&wear(wrong)), [Code::BadQuantity], "{wrong}");
    }
}

#[test]
fn names_and_keys() {
    says("20 reed", "20 red", Code::UnknownId, "20 red", "`reed`");
    says("cord: wire", "cord: wier", Code::UnknownId, "wier", "`wire`");
    says("length: 16 in", "lenght: 16 in", Code::UnknownKey, "lenght", "`length`");
    says("shape: round", "shape: rond", Code::UnknownWord, "rond", "`round`");
    says("20 reed", "10 reed, knot, 10 reed", Code::UnknownId, "knot", "{ knot: 2 mm }");
    says("[20 reed]", "{ mirror: [reed] }", Code::WrongKind, "{", "[ … ]");
    says("colour:", "material: cristal, colour:", Code::UnknownMaterial, "cristal", "did you mean `crystal`");
    says("colour:", "material: moonrock, colour:", Code::UnknownMaterial, "moonrock", "acrylic, amazonite");
    says("title: Try\n", "", Code::MissingKey, "", "`title`");
    says("festoon: 1", "festoon: 2", Code::Version, "2", "version 1");
    says("20 reed", "{ repaet: 3, of: [reed] }", Code::UnknownKey, "{", "repeat");
}

#[test]
fn what_stands_alone_or_once() {
    let hung = "title: Try\nfindings: { hook: { kind: ear wire, length: 9 mm } }\nclosure: { both ends: [hook] }";
    says("title: Try", hung, Code::Misplaced, "hook", "does not stand where `both ends` of a piece meet");
    let sizes = "title: Try\nsizes: [{ name: long, change: +1 in }, { name: long, change: +2 in }]";
    says("title: Try", sizes, Code::TwiceNamed, "long", "give each size its own name");
}

#[test]
fn every_error_of_a_file_at_once() {
    let text = SOUND.replace("16 in", "16").replace("shape: round", "shape: rond").replace("kind: wire", "kind: wyre");
    let codes: Vec<_> = remarks(&text).0.iter().map(|remark| remark.code()).collect();
    assert_eq!(codes, [Code::UnknownWord, Code::UnknownWord, Code::BadQuantity]);
}

#[test]
fn overfull_says_by_how_much_and_what_fits() {
    let text = SOUND.replace("[20 reed]", "[{ repeat: 80, of: [reed] }]");
    let (remarks, source) = remarks(&text);
    assert_eq!(remarks.len(), 1, "{remarks:#?}");
    assert_eq!(source.slice(remarks[0].place.unwrap()), "16 in");
    // 80 balls of 6 mm with a 1 mm hole: 80 × sqrt(36 − 1) = 473.3 mm on 406.4 mm; 68 fit.
    assert_eq!(remarks[0].headline(), "strand only: the beads are 66.9 mm longer than the strand");
    assert_eq!(remarks[0].help(), "repeat 68 times instead of 80, or make the strand at least 473.3 mm long");
}

#[test]
fn nested_repeats_do_not_explode() {
    let bomb = "{ repeat: 9000, of: [{ repeat: 9000, of: [{ repeat: 9000, of: [9000 reed] }] }] }";
    says("20 reed", bomb, Code::TooManyBeads, "[", "20000");
    let filled = "{ repeat: fill, of: [{ repeat: 9000, of: [9000 reed] }] }";
    says("20 reed", filled, Code::TooManyBeads, "[", "20000");
    let nested = "{ repeat: fill, of: [".repeat(9) + "reed" + &"] }".repeat(9);
    assert_eq!(remarks(&SOUND.replace("20 reed", &nested)).0, []);
}

#[test]
fn findings_among_the_beads_are_bounded_by_themselves() {
    let link = "findings:\n  link: { kind: jump ring, inside: 4 mm }\nstrands:";
    let pattern = SOUND.replace("strands:", link).replace("    length: 16 in", "    settle: fill");
    let codes = |count: usize| {
        let rings = format!("{{ repeat: {count}, of: [reed, 2 link] }}");
        remarks(&pattern.replace("20 reed", &rings)).0.into_iter().map(|remark| remark.code()).collect::<Vec<_>>()
    };
    assert_eq!(codes(2_000), []);
    assert_eq!(codes(2_001), [Code::TooManyBeads]);
}

#[test]
fn lists_are_as_long_as_a_hand_would_write_them() {
    let mirrors = |count: usize| {
        let mirror = format!("{{ mirror: [{}] }}", "reed, ".repeat(count - 1));
        format!("{mirror}, {}", [mirror.as_str(); 4].join(", "))
    };
    says("20 reed", &mirrors(1_001), Code::TooManyBeads, "[", "`repeat` and `mirror`");
    let (remarks, _) = remarks(&SOUND.replace("20 reed", &mirrors(1_000)));
    assert!(remarks.iter().all(|remark| remark.code() != Code::TooManyBeads), "{remarks:#?}");
}

#[test]
fn nothing_to_repeat_is_said_at_its_place() {
    for nothing in [
        "{ repeat: fill, of: [] }",
        "{ repeat: 3, of: [] }",
        "{ mirror: [] }",
        "{ mirror: [], about: [] }",
        "{ repeat: fill, of: [{ mirror: [] }] }",
        "{ repeat: fill, of: [{ repeat: 2, of: [] }] }",
    ] {
        let (remarks, source) = remarks(&SOUND.replace("20 reed", &format!("reed, {nothing}")));
        assert!(remarks.iter().all(|remark| remark.code() == Code::NothingRepeated), "{remarks:#?}");
        let place = remarks.first().and_then(|remark| remark.place).expect("it is said, with its place");
        assert_eq!(place.start, source.text().find(nothing).unwrap(), "{nothing}");
    }
    let half = SOUND.replace("20 reed", "{ mirror: [], about: [reed] }, { mirror: [reed], about: [] }");
    assert_eq!(remarks(&half).0, []);
}

#[test]
fn a_stop_inside_a_repeat_is_refused() {
    let crimp = "title: Try\nfindings: { crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1 mm } }";
    for inner in ["{ repeat: 2, of: [reed, STOP] }", "{ mirror: [STOP, reed] }", "{ repeat: fill, of: [STOP] }"] {
        let list = inner.replace("STOP", "{ stop: crimp, at: 100 mm }");
        let text = SOUND.replace("title: Try", crimp).replace("20 reed", &list);
        let codes: Vec<_> = remarks(&text).0.iter().map(|remark| remark.code()).collect();
        assert_eq!(codes, [Code::MisplacedStop], "{inner}");
    }
}

#[test]
fn broken_yaml() {
    says("[20 reed]", "[20 reed", Code::Yaml, "[", "never closed");
    let (twice, at, text) = only("title: Try", "title: Try\ntitle: Again");
    assert_eq!((twice, at.as_str()), (Code::Yaml, "title"), "{text}");
    assert!(text.contains("`title` stands twice"), "{text}");
    assert_eq!(remarks("").0.len(), 1);
    assert_eq!(remarks("just words").0[0].code(), Code::WrongKind);
}

#[test]
fn deep_nesting_and_alias_bombs() {
    let deep = format!("festoon: {}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert_eq!(remarks(&deep).0[0].code(), Code::Yaml);
    let block: String = (0..2000).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect();
    assert_eq!(remarks(&block).0[0].code(), Code::Yaml);
    let mut bomb = "a0: &a0 [reed, reed]\n".to_owned();
    for level in 1..40 {
        let lower = level - 1;
        bomb += &format!("a{level}: &a{level} [*a{lower}, *a{lower}, *a{lower}, *a{lower}]\n");
    }
    let (bombed, _) = remarks(&bomb);
    assert_eq!((bombed.len(), bombed[0].code()), (1, Code::Yaml), "{bombed:#?}");
}
