//! The README and the page of the pattern language say what is so: their patterns are read and hung,
//! their commands run, and every key and word of the language stands on its page.

#![allow(clippy::unwrap_used, reason = "a test that cannot read its files fails")]

#[path = "docs/told.rs"]
mod told;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use festoon::design::Choice;
use festoon::pattern::{CordKind, FindingKind, Finish, Kind, Settle, Shape, Skill};
use festoon::remark::has_errors;
use festoon::source::Source;
use serde_json::Value;

const README: &str = include_str!("../README.md");
const LANGUAGE: &str = include_str!("../patterns/README.md");

/// The fenced blocks of a page in a language.
fn blocks<'a>(page: &'a str, language: &str) -> Vec<&'a str> {
    let fence = format!("```{language}\n");
    page.split(&fence).skip(1).map(|rest| rest.split("```").next().unwrap()).collect()
}

/// The parts of a YAML text that begin with a key at its margin, by key.
fn parts(yaml: &str) -> Vec<(&str, String)> {
    let mut parts: Vec<(&str, String)> = Vec::new();
    for line in yaml.lines() {
        if line.starts_with(char::is_alphabetic) {
            parts.push((line.split(':').next().unwrap(), String::new()));
        }
        if let Some((_, part)) = parts.last_mut() {
            *part += &format!("{line}\n");
        }
    }
    parts
}

/// The whole pattern with a short block in place of the same keys.
fn with(whole: &str, short: &str) -> String {
    let short = parts(short);
    let kept = parts(whole).into_iter().filter(|(key, _)| short.iter().all(|(other, _)| other != key));
    kept.chain(short.clone()).map(|(_, part)| part).collect()
}

/// A pattern is read, resolved and hung in each of its variants without an error or a warning.
fn assert_sound(name: &str, text: String) {
    let shelf = || Source::new("shelf.yaml", include_str!("../src/cli/new/shelf.yaml"));
    let source = Source::new(name, text);
    let shelves = festoon::pattern::shelves(&source);
    let source = shelves.into_iter().fold(source, |source, name| source.with_shelf(Some(name.value), Ok(shelf())));
    let (pattern, remarks) = festoon::pattern::read(&source);
    assert!(!has_errors(&remarks), "{name}: {remarks:#?}");
    let variants = pattern.unwrap().variants().into_iter().map(Choice::from);
    for choice in std::iter::once(Choice::default()).chain(variants) {
        let (piece, remarks) = festoon::piece(&source, &choice, None);
        assert!(piece.is_some() && !has_errors(&remarks), "{name} {choice:?}: {remarks:#?}\n{}", source.text());
    }
}

#[test]
fn every_pattern_of_both_pages_is_sound() {
    for (name, page) in [("README.md", README), ("patterns/README.md", LANGUAGE)] {
        let blocks = blocks(page, "yaml");
        let whole = blocks.first().unwrap_or_else(|| panic!("{name} shows no pattern"));
        assert!(whole.starts_with("festoon: 1"), "{name} begins with a whole pattern");
        for block in &blocks {
            let text = if block.starts_with("festoon:") { (*block).to_owned() } else { with(whole, block) };
            assert_sound(name, text);
        }
        let fences = page.lines().filter(|line| line.starts_with("```") && line.len() > 3).count();
        let known = blocks.len() + self::blocks(page, "sh").len();
        assert_eq!(fences, known, "{name}: only yaml and sh are run, and every block is one of them");
    }
}

/// An empty folder that holds two of the shipped patterns, and the shelf of one of them.
fn desk() -> PathBuf {
    let desk = Path::new(env!("CARGO_TARGET_TMPDIR")).join("docs");
    let _ = fs::remove_dir_all(&desk);
    fs::create_dir_all(desk.join("patterns/shelf")).unwrap();
    for name in ["saltmarsh", "tideline", "shelf/tide"] {
        let file = format!("patterns/{name}.yaml");
        fs::copy(Path::new(env!("CARGO_MANIFEST_DIR")).join(&file), desk.join(&file)).unwrap();
    }
    desk
}

/// A line's command and what its comment says.
fn command(line: &str) -> (&str, &str) {
    let (command, comment) = line.split_once(" # ").unwrap_or((line, ""));
    (command.trim(), comment)
}

/// The files that a command or its comment names.
fn files<'a>(command: &'a str, comment: &'a str) -> impl Iterator<Item = &'a str> {
    let words = command.split_whitespace().chain(comment.split(|c: char| c.is_whitespace() || c == ','));
    words.filter(|word| [".pdf", ".png", ".html", ".yaml"].iter().any(|ending| word.ends_with(ending)))
}

/// A picture's command with few pixels, which take less time.
fn small(command: &str) -> String {
    let command = command.replace(" --pixels 3000", "");
    let draws = ["festoon picture ", "festoon gallery "];
    draws.iter().fold(command, |command, draw| command.replace(draw, &format!("{draw}--pixels 300 ")))
}

/// Runs one line in a shell, in which `festoon` is the program under test.
fn run(command: &str, desk: &Path) {
    let command = small(&command.replace("cargo run --release -- ", "festoon "));
    let programs = Path::new(env!("CARGO_BIN_EXE_festoon")).parent().unwrap().display().to_string();
    let path = format!("{programs}:{}", std::env::var("PATH").unwrap());
    let output = Command::new("sh").args(["-e", "-c", &command]).env("PATH", path).current_dir(desk).output().unwrap();
    assert!(output.status.success(), "{command}\n{}", String::from_utf8_lossy(&output.stderr));
}

/// Every shell line of the README does what it says; `cargo test` is this very run, and the gate's.
#[test]
fn every_command_of_the_readme_runs() {
    let desk = desk();
    let lines = blocks(README, "sh").into_iter().flat_map(str::lines).map(command).collect::<Vec<_>>();
    assert!(lines.len() > 5);
    for (command, comment) in lines {
        if command != "cargo test" {
            run(command, &desk);
        }
        for file in files(command, comment) {
            assert!(desk.join(file).exists(), "{command} leaves no {file}");
        }
    }
}

#[test]
fn the_gate_calls_the_second_command_as_it_is_written() {
    let two = blocks(README, "sh")[0].lines().map(|line| command(line).0).collect::<Vec<_>>();
    assert!(two[0].starts_with("cargo run --release -- sheet patterns/"));
    assert_eq!(two[1..], ["cargo test"]);
    let gate = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(".ci/run")).unwrap();
    assert!(gate.lines().any(|line| line == two[1]), "{gate}");
}

#[test]
fn the_readme_lists_every_command() {
    let output = Command::new(env!("CARGO_BIN_EXE_festoon")).arg("help").output().unwrap();
    let help = String::from_utf8(output.stdout).unwrap();
    let commands = help.split("Commands:\n").nth(1).unwrap().lines().take_while(|line| !line.is_empty());
    let names = commands.map(|line| line.split_whitespace().next().unwrap()).filter(|name| *name != "help");
    let missing = names.filter(|name| !README.contains(&format!("`festoon {name}"))).collect::<Vec<_>>();
    assert_eq!(missing, [""; 0]);
}

/// The keys that a schema holds at any depth.
fn keys(schema: &Value, found: &mut BTreeSet<String>) {
    match schema {
        Value::Object(object) => {
            if let Some(Value::Object(keys)) = object.get("properties") {
                found.extend(keys.keys().cloned());
            }
            object.values().for_each(|value| keys(value, found));
        }
        Value::Array(list) => list.iter().for_each(|value| keys(value, found)),
        _ => {}
    }
}

#[test]
fn the_page_of_the_language_has_every_key_and_word() {
    let mut found = BTreeSet::new();
    keys(&festoon::pattern::schema(), &mut found);
    assert!(found.len() > 80, "{found:?}");
    found.extend(words(Kind::ALL).chain(words(Skill::ALL)).chain(words(Shape::ALL)).chain(words(Finish::ALL)));
    found.extend(words(CordKind::ALL).chain(words(FindingKind::ALL)).chain(words(Settle::ALL)));
    // A line's end stands between words as a space does.
    let page = LANGUAGE.split_whitespace().collect::<Vec<_>>().join(" ");
    let missing = found.iter().filter(|word| !page.contains(word.as_str())).collect::<Vec<_>>();
    assert!(missing.is_empty(), "patterns/README.md does not tell: {missing:?}");
}

fn words<T: ToString>(all: &[T]) -> impl Iterator<Item = String> {
    all.iter().map(ToString::to_string)
}

/// What draws the pages and what holds the fonts is the very one that the renderer of SVG uses.
#[test]
fn one_of_each_in_the_tree() {
    let lock = include_str!("../Cargo.lock");
    for name in ["resvg", "usvg", "tiny-skia", "fontdb"] {
        assert_eq!(lock.matches(&format!("name = \"{name}\"\n")).count(), 1, "{name}");
    }
}

/// A code that is gone takes its explanation with it.
#[test]
fn every_explanation_is_of_a_code() {
    let texts = fs::read_dir("src/remark/explained").expect("the explanations");
    let names = texts.map(|text| text.expect("a file").file_name().into_string().expect("a name"));
    let known =
        |name: &String| name.strip_suffix(".md").is_some_and(|name| festoon::remark::Code::named(name).is_some());
    assert_eq!(names.filter(|name| !known(name)).collect::<Vec<_>>(), [""; 0]);
}
