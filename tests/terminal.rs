//! What reaches a terminal or a spreadsheet from a pattern of unknown origin obeys nobody.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

/// A sound pattern whose names and texts hold control characters, directional ones and a formula.
const HOSTILE: &str = r##"
festoon: 1
title: "Red \e[31mand \u202Eback"
kind: strap
currency: "EUR\e[0m"
beads:
  reed: { name: "=HYPERLINK(1)\e[2J\u2066\x9b", shape: round, size: 6 mm, hole: 1 mm, colour: "#5d7f5b" }
  moss: { name: "@SUM(A1),\"b\"", shape: round, size: 6 mm, hole: 1 mm, colour: "#102030" }
  "-2+3": { shape: bicone, size: 4 mm, hole: 1 mm, colour: "#a02030" }
cords:
  line: { name: "\u200Fline\x7f", kind: thread, diameter: 0.3 mm }
strands:
  - { name: "one\e]0;title\a", cord: line, length: 300 mm, beads: [10 reed, moss, -2+3] }
"##;

/// A file of the hostile pattern, named as badly as its text.
fn hostile() -> String {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("terminal");
    let file = folder.join("a\u{1b}[31m\u{202e}.yaml");
    fs::create_dir_all(&folder).and_then(|()| fs::write(&file, HOSTILE)).expect("the folder takes files");
    file.display().to_string()
}

fn festoon(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
    command.args(arguments).current_dir(env!("CARGO_TARGET_TMPDIR")).output().expect("the program runs")
}

/// Both outputs, which must hold nothing that acts on a terminal.
fn harmless(arguments: &[&str]) -> String {
    let ran = festoon(arguments);
    let said = [ran.stdout, ran.stderr].concat();
    let text = String::from_utf8(said).expect("it speaks UTF-8").replace("\r\n", "\n");
    let acts = |c: &char| c.is_control() && *c != '\n' || "\u{200f}\u{202e}\u{2066}".contains(*c);
    assert_eq!(text.chars().find(acts), None, "{arguments:?}: {text:?}");
    text
}

#[test]
fn nothing_that_a_terminal_obeys_is_printed() {
    let file = hostile();
    for messages in ["full", "short", "json"] {
        let said = harmless(&["check", &file, "--messages", messages]);
        assert!(said.is_empty() || said.len() > 2, "{said}");
    }
    let tables: [&[&str]; 6] = [
        &["measure", &file],
        &["measure", &file, "--json"],
        &["materials", &file],
        &["materials", &file, "--format", "csv"],
        &["materials", &file, "--format", "json"],
        &["check", &file, "--swap", "reed=moss"],
    ];
    for arguments in tables {
        assert!(harmless(arguments).contains("1b"), "{arguments:?} writes the escape out");
    }
    assert!(harmless(&["check", "gone\u{1b}[31m.yaml"]).contains(r"gone\u{1b}[31m.yaml: there is no such file"));
    assert!(harmless(&["check", &file, "--no-such\u{1b}[31m"]).contains("--no-such"));
    let picture = file.replace(".yaml", ".svg");
    assert!(harmless(&["picture", &file, "-o", &picture]).contains(r"a\u{1b}[31m\u{202e}.svg"));
}

/// OWASP, "CSV Injection": cells that begin with = + - @ get an apostrophe before them.
#[test]
fn no_cell_is_a_formula() {
    let csv = harmless(&["materials", &hostile(), "--format", "csv"]);
    assert!(csv.contains("bead,reed,'=HYPERLINK(1)\\u{1b}[2J\\u{2066}\\u{9b},10,"), "{csv}");
    assert!(csv.contains("bead,moss,\"'@SUM(A1),\"\"b\"\"\",1,"), "{csv}");
    assert!(csv.contains("bead,'-2+3,'-2+3,1,"), "{csv}");
    let runs = |cell: &str| cell.trim_start_matches('"').starts_with(['=', '+', '@']);
    assert!(!csv.lines().flat_map(|line| line.split(',')).any(runs), "{csv}");
}

#[test]
fn a_colour_is_six_hex_digits() {
    let file = hostile();
    for colour in ["#+f4fe6", "#f4efe", "#f4efe60", "f4efe6", "#f4efeg", "#-10203", "#ééé", ""] {
        let ran = festoon(&["picture", &file, "-o", "-", "--format", "svg", "--colour", colour]);
        assert_eq!(ran.status.code(), Some(2), "{colour}");
    }
    let ran = festoon(&["picture", &file, "-o", "-", "--format", "svg", "--colour", "#F4efe6"]);
    assert_eq!(ran.status.code(), Some(0));
}

#[test]
fn pixels_are_bounded() {
    let file = hostile();
    assert_eq!(festoon(&["picture", &file, "--pixels", "4001"]).status.code(), Some(2));
    // Three pages of A4 have 417 million at 1,200 dpi.
    let long = concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/tideline.yaml");
    let ran = festoon(&["sheet", long, "--format", "png", "--dpi", "1200"]);
    let said = String::from_utf8_lossy(&ran.stderr);
    assert_eq!(ran.status.code(), Some(2), "{said}");
    assert!(said.contains("megapixels, and at most 400 are drawn: ask for --dpi "), "{said}");
}
