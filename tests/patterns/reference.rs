//! References: the resolved numbers of each shipped pattern, in `tests/patterns/NAME.json`, and its face
//! page, in `NAME.svg`, so that a difference tells whether the sums moved or the drawing. Of one pattern
//! there is also the face page in grey, in outline, on letter paper, in one size and in one colourway, in
//! `NAME.VARIANT.svg`.
//!
//! They are compared exactly, as every platform computes the same numbers; floats are rounded to six
//! decimals so that a reader can read them, and pages have the precision of their files. A test that
//! fails leaves `NAME.expected.json` and `NAME.got.json`, or the like, in `target/references`.
//! `FESTOON_ACCEPT=1` takes what the program makes now as the reference.

use std::fs;
use std::path::PathBuf;

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::export;
use festoon::measure::Measures;
use festoon::sheet::Style;
use festoon::trade::paper::Paper;
use serde_json::Value;

use super::shipped::{Shipped, named, root, shipped};

#[test]
fn numbers_are_those_of_the_references() {
    assert_references("json", numbers);
}

#[test]
fn face_pages_are_those_of_the_references() {
    assert_references("svg", face);
}

/// A pattern with sizes and colourways.
const VARIED: &str = "slack-tide";

#[test]
fn other_faces_are_those_of_the_references() {
    let pattern = named(VARIED);
    let grey = Style { ink: Ink::Grey, ..Style::default() };
    let outline = Style { ink: Ink::Outline, ..Style::default() };
    let letter = Style { paper: Paper::Letter, ..Style::default() };
    let choices = pattern.choices();
    let chosen =
        |is_it: fn(&Choice) -> bool| choices.iter().find(|choice| is_it(choice)).expect("one is named").clone();
    let faces = [
        ("grey", Choice::default(), grey),
        ("outline", Choice::default(), outline),
        ("letter", Choice::default(), letter),
        ("size", chosen(|choice| choice.size.is_some()), Style::default()),
        ("colourway", chosen(|choice| choice.colourway.is_some()), Style::default()),
    ];
    let drawn = faces.map(|(name, choice, style)| (format!("{VARIED}.{name}"), styled_face(&pattern, &choice, &style)));
    let plain = face(&pattern);
    assert!(drawn.iter().all(|(_, face)| *face != plain), "every one is another page");
    let differing: Vec<_> = drawn.iter().filter(|(name, face)| !agrees(name, "svg", face)).collect();
    assert!(differing.is_empty(), "{:?} differ", differing.iter().map(|(name, _)| name).collect::<Vec<_>>());
}

fn assert_references(ending: &str, made: impl Fn(&Shipped) -> String) {
    let all = shipped();
    let differing: Vec<_> =
        all.iter().filter(|one| !agrees(&one.name, ending, &made(one))).map(|one| &one.name).collect();
    assert!(differing.is_empty(), "{differing:?} differ: compare the files in target/references");
}

#[test]
fn every_reference_has_its_pattern() {
    let names: Vec<_> = shipped().into_iter().map(|shipped| shipped.name).collect();
    let files = fs::read_dir(root().join("tests/patterns")).unwrap().map(|entry| entry.unwrap().path());
    let references = files.filter(|path| path.extension().is_some_and(|ending| ending == "json" || ending == "svg"));
    for path in references {
        let name = path.file_name().unwrap().to_str().unwrap().split('.').next().unwrap().to_owned();
        assert!(names.contains(&name), "no pattern for {}", path.display());
    }
}

fn agrees(name: &str, ending: &str, got: &str) -> bool {
    let path = root().join(format!("tests/patterns/{name}.{ending}"));
    if std::env::var_os("FESTOON_ACCEPT").is_some_and(|accept| accept == "1") {
        fs::write(&path, got).unwrap();
    }
    let expected = fs::read_to_string(&path).unwrap_or_default();
    if got != expected {
        leave(name, ending, &expected, got);
    }
    got == expected
}

fn leave(name: &str, ending: &str, expected: &str, got: &str) {
    let folder: PathBuf = root().join("target/references");
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join(format!("{name}.expected.{ending}")), expected).unwrap();
    fs::write(folder.join(format!("{name}.got.{ending}")), got).unwrap();
}

fn face(shipped: &Shipped) -> String {
    styled_face(shipped, &Choice::default(), &Style::default())
}

fn styled_face(shipped: &Shipped, choice: &Choice, style: &Style) -> String {
    export::svg(&festoon::pages(&shipped.piece(choice).0, style)[0])
}

fn numbers(shipped: &Shipped) -> String {
    let (piece, remarks) = shipped.piece(&Choice::default());
    let measures = Measures::new(&piece, &remarks, &shipped.source);
    let mut text = String::new();
    write(&rounded(serde_json::to_value(measures).unwrap()), 0, &mut text);
    text.push('\n');
    text
}

/// Every float rounded to six decimals, and no negative nothing.
fn rounded(value: Value) -> Value {
    match value {
        Value::Number(number) if number.is_f64() => {
            let number = number.as_f64().unwrap();
            Value::from((number * 1e6).round() / 1e6 + 0.0)
        }
        Value::Array(items) => items.into_iter().map(rounded).collect(),
        Value::Object(entries) => entries.into_iter().map(|(key, value)| (key, rounded(value))).collect(),
        other => other,
    }
}

/// Writes groups that hold no other group on one line, so that a bead is a line.
fn write(value: &Value, depth: usize, text: &mut String) {
    let indent = "  ".repeat(depth + 1);
    let (open, close, entries): (_, _, Vec<(String, &Value)>) = match value {
        Value::Array(items) if holds_groups(items.iter()) => {
            ('[', ']', items.iter().map(|item| (String::new(), item)).collect())
        }
        Value::Object(entries) if holds_groups(entries.values()) => {
            ('{', '}', entries.iter().map(|(key, value)| (format!("{}: ", Value::from(key.as_str())), value)).collect())
        }
        flat => return text.push_str(&flat.to_string()),
    };
    text.push(open);
    for (at, (key, value)) in entries.iter().enumerate() {
        text.push_str(if at == 0 { "\n" } else { ",\n" });
        text.push_str(&indent);
        text.push_str(key);
        write(value, depth + 1, text);
    }
    text.push_str(&format!("\n{}{close}", "  ".repeat(depth)));
}

fn holds_groups<'a>(mut values: impl Iterator<Item = &'a Value>) -> bool {
    values.any(|value| value.is_object() || value.is_array())
}
