//! The JSON Schema against a validator that knows nothing of this program.

use std::fs;

use jsonschema::Validator;
use serde_json::Value;

use super::shipped::files;

fn validator() -> Validator {
    jsonschema::validator_for(&festoon::pattern::schema()).expect("the schema is a schema")
}

fn shelf_validator() -> Validator {
    jsonschema::validator_for(&festoon::pattern::shelf_schema()).expect("the schema is a schema")
}

fn value(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap()
}

#[test]
fn shipped_and_new_patterns_are_valid() {
    let (pattern, shelf) = (validator(), shelf_validator());
    for path in
        ["patterns", "patterns/shelf", "src/cli/new", "tests/goods/written"].iter().flat_map(|folder| files(folder))
    {
        let is_shelf = path.ends_with("shelf.yaml") || path.parent().is_some_and(|folder| folder.ends_with("shelf"));
        let validator = if is_shelf { &shelf } else { &pattern };
        let value = value(&fs::read_to_string(&path).unwrap());
        let errors: Vec<_> =
            validator.iter_errors(&value).map(|error| format!("{}: {error}", error.instance_path())).collect();
        assert!(errors.is_empty(), "{}: {errors:#?}", path.display());
    }
}

const SOUND: &str = "
festoon: 1
title: Try
kind: necklace
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\" }
cords:
  wire: { kind: wire, diameter: 0.4 mm }
strands:
  - { name: only, cord: wire, length: 16 in, beads: [{ repeat: 3, of: [4 reed, { space: 2 mm }] }] }
";

#[test]
fn mistakes_are_not_valid() {
    let validator = validator();
    assert!(validator.is_valid(&value(SOUND)));
    let mistakes = [
        ("title:", "titel:"),
        ("hole:", "hol:"),
        ("diameter:", "diametre:"),
        ("kind: necklace", "kind: neklace"),
        ("shape: round", "shape: ball"),
        ("name: only", "nam: only"),
        ("repeat: 3", "repeat: some"),
        ("repeat: 3", "repeat: 0"),
        ("repeat: 3", "repaet: 3"),
        ("space: 2 mm", "spaces: 2 mm"),
        ("length: 16 in", "length: [16 in]"),
        ("\"#5d7f5b\"", "green"),
        ("festoon: 1", "festoon: one"),
        ("festoon: 1\n", ""),
    ];
    for (from, to) in mistakes {
        assert!(SOUND.contains(from), "{from}");
        assert!(!validator.is_valid(&value(&SOUND.replacen(from, to, 1))), "{to} in place of {from}");
    }
}

/// Every key and form of the bead list and the values that may be numbers or words.
#[test]
fn good_values_are_valid() {
    let validator = validator();
    let changes = [
        ("16 in", "17½ in"),
        ("16 in", "17\\\""),
        (
            "[4 reed, { space: 2 mm }]",
            "[reed, { knot: 1 mm }, { dangle: [reed], on: pin }, { mirror: [reed], about: [reed] }]",
        ),
        ("repeat: 3", "repeat: fill"),
        ("name: only,", "name: only, ends: [a, b], knots: 1 mm, leave: 2 cm, settle: spread, allowance: 1 in,"),
        ("beads: [{", "beads: [{ stop: crimp, at: 3 in }, {"),
        ("title: Try", "title: Try\nprice: { labour: 1.5 h, rate: 18, overhead: 2.50, wholesale: 2, retail: 2.5 }"),
        ("title: Try", "title: Try\nclosure: { each side: [eye, { links: 60 mm }], left: [a], right: [b] }"),
        ("title: Try", "title: Try\nprice: { labour: 1.5 h, rate: 18, overhead: 15 % }"),
        ("title: Try", "title: Try\nclosure: { both ends: [hook] }"),
        (
            "title: Try",
            "title: Try\nwear: { neck base: 370 mm, body: woman 5, child: no, ease: 1 cm, breadth to depth: 1.1, chest tilt: 25 deg }",
        ),
        ("title: Try", "title: Try\nsizes: [{ name: long, change: +2 in, wear: { wrist: 15 cm } }]"),
    ];
    for (from, to) in changes {
        assert!(SOUND.contains(from), "{from}");
        let to = to.replace("\\\"", "\"");
        let changed = value(&SOUND.replacen(from, &to, 1));
        let errors: Vec<_> = validator.iter_errors(&changed).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{to}: {errors:?}");
    }
}
