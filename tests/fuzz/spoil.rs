//! Spoiling patterns: what a slip of the hand, or malice, makes of one.

use std::fs;

use festoon::pattern;
use festoon::source::Source;

use super::beside::beside;

/// What may come to stand in a token's place.
const SLIPS: &[&str] = &[
    "",
    "0",
    "-1",
    "1",
    "2",
    "7",
    "60",
    "200",
    "2000",
    "20000",
    "20001",
    "4294967296",
    "1e400",
    ".nan",
    "~",
    "mm",
    "in",
    "6 x 4 mm",
    "500 mm",
    "0.02 mm",
    "20 m",
    "900 in",
    "1/0 in",
    "½",
    "½ in",
    "0.0001 mm",
    "fill",
    "knot",
    "[",
    "]",
    "{",
    "}",
    "[]",
    "{}",
    ":",
    ": ",
    "- ",
    "#",
    "\"",
    "'",
    "|",
    "&a",
    "*a",
    "<<",
    "\t",
    "\n",
    "\u{feff}",
    "\u{0}",
    "\u{1b}[31m",
    "\u{202e}",
    "ß",
    "🙂",
    "yes",
    "repeat",
    "mirror",
    "of",
    "slide",
    "spread",
    "fixed",
    "crimp",
    "end bar",
    "spacer bar",
    "chain",
    "seed",
    "15/0",
    "earrings",
    "bracelet",
    "necklace",
    "coin",
    "chip",
    "drop",
    "{ repeat: fill, of: [] }",
    "{ mirror: [] }",
    "{ space: 10 mm }",
    "{ knot: 2 mm }",
    "doubled: yes",
];

/// Chance that follows from a seed alone: SplitMix64 (Steele, Lea and Flood, "Fast splittable
/// pseudorandom number generators", 2014; constants from memory).
struct Chance(u64);

impl Chance {
    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below a limit, which is at least 1.
    const fn below(&mut self, limit: usize) -> usize {
        (self.next() % limit as u64) as usize
    }

    fn of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.below(all.len())]
    }
}

/// The patterns that are spoiled, and the shelves that they name.
pub struct Corpus {
    patterns: Vec<String>,
    shelves: Vec<(String, String)>,
}

/// Where shelves stand, and what patterns there call them.
const SHELVES: [(&str, &str); 2] = [("patterns", "shelf/tide.yaml"), ("tests/pieces", "shelf.yaml")];

/// The findings that are kept: inputs that once failed.
pub fn findings() -> Vec<(String, String)> {
    folder("tests/fuzz/corpus")
}

/// The patterns of a folder, with their names.
fn folder(name: &str) -> Vec<(String, String)> {
    let path = format!("{}/{name}", env!("CARGO_MANIFEST_DIR"));
    let entries = fs::read_dir(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    let mut files: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    files.retain(|file| file.extension().is_some_and(|ending| ending == "yaml"));
    files.sort();
    assert!(!files.is_empty(), "no patterns in {path}");
    let read = |path: std::path::PathBuf| (path.display().to_string(), fs::read_to_string(&path).unwrap_or_default());
    files.into_iter().map(read).collect()
}

impl Corpus {
    /// The shipped patterns, those that a new user wrote, and the findings.
    pub fn read() -> Self {
        let files = folder("patterns").into_iter().chain(folder("tests/pieces")).chain(findings());
        let patterns = files.map(|(_, text)| text).filter(|text| !pattern::is_shelf(&Source::new("file", text)));
        let shelf = |(folder, name): (&str, &str)| {
            let path = format!("{}/{folder}/{name}", env!("CARGO_MANIFEST_DIR"));
            (name.to_owned(), fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}")))
        };
        Self { patterns: patterns.collect(), shelves: SHELVES.map(shelf).to_vec() }
    }

    /// A text beside the shelves that it names.
    pub fn source(&self, name: &str, text: String) -> Source {
        let text_of = |name: &str| self.shelves.iter().find(|(called, _)| called == name).map(|(_, text)| text.clone());
        beside(Source::new(name, text), text_of)
    }

    /// The input of a seed and a number, and a hash of the two.
    pub fn spoiled(&self, seed: u64, number: u64) -> (Source, u64) {
        let mut chance = Chance(seed.wrapping_mul(0x1000_0000_01b3) ^ number);
        let hash = chance.next();
        let mut text = chance.of(&self.patterns).clone();
        for _ in 0..=chance.below(4) {
            text = self.spoil(&text, &mut chance);
        }
        (self.source("spoiled.yaml", text), hash)
    }

    /// Spoils a text at one place.
    fn spoil(&self, text: &str, chance: &mut Chance) -> String {
        match chance.below(12) {
            0..=5 => spoiled_token(text, chance),
            6 => scaled(text, chance),
            7 => in_lines(text, chance, |lines, at, _| {
                lines.remove(at);
            }),
            8 => in_lines(text, chance, |lines, at, _| lines.insert(at, lines[at])),
            9 => in_lines(text, chance, |lines, at, chance| {
                let to = chance.below(lines.len());
                lines.swap(at, to);
            }),
            10 => {
                let other = chance.of(&self.patterns).as_str();
                put_line(text, other, chance)
            }
            _ => indented(text, chance),
        }
    }
}

/// The text in tokens: words and numbers whole, every other character by itself.
fn tokens(text: &str) -> Vec<&str> {
    let is_word = |c: char| c.is_alphanumeric() || c == '.';
    let mut tokens = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let end = if is_word(first) { rest.find(|c| !is_word(c)).unwrap_or(rest.len()) } else { first.len_utf8() };
        tokens.push(&rest[..end]);
        rest = &rest[end..];
    }
    tokens
}

fn spoiled_token(text: &str, chance: &mut Chance) -> String {
    let mut tokens = tokens(text);
    if tokens.is_empty() {
        return String::new();
    }
    let (at, other) = (chance.below(tokens.len()), chance.below(tokens.len()));
    match chance.below(10) {
        0 => {
            tokens.remove(at);
        }
        1 => tokens.insert(at, tokens[other]),
        2 => tokens.swap(at, other),
        3 if chance.below(8) == 0 => tokens.truncate(at),
        4 | 5 => tokens[at] = tokens[other],
        _ => tokens[at] = chance.of::<&str>(SLIPS),
    }
    tokens.concat()
}

/// Multiplies one of the numbers by a power of ten, or a small factor.
fn scaled(text: &str, chance: &mut Chance) -> String {
    let mut tokens = tokens(text);
    let numbers: Vec<usize> = (0..tokens.len()).filter(|&at| tokens[at].parse::<f64>().is_ok()).collect();
    if numbers.is_empty() {
        return text.to_owned();
    }
    let at = *chance.of(&numbers);
    let factor = chance.of(&[1e-6, 1e-3, 0.1, 0.5, 0.9, 1.1, 2.0, 3.0, 10.0, 100.0, 1e3, 1e6]);
    let scaled = tokens[at].parse::<f64>().map(|number| (number * factor).to_string()).unwrap_or_default();
    tokens[at] = &scaled;
    tokens.concat()
}

/// Changes one of the lines.
fn in_lines(text: &str, chance: &mut Chance, change: impl FnOnce(&mut Vec<&str>, usize, &mut Chance)) -> String {
    let mut lines: Vec<_> = text.split_inclusive('\n').collect();
    if !lines.is_empty() {
        let at = chance.below(lines.len());
        change(&mut lines, at, chance);
    }
    lines.concat()
}

/// Puts a line of another text in the place of one.
fn put_line(text: &str, other: &str, chance: &mut Chance) -> String {
    let theirs: Vec<&str> = other.split_inclusive('\n').collect();
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    if !lines.is_empty() && !theirs.is_empty() {
        let at = chance.below(lines.len());
        lines[at] = theirs[chance.below(theirs.len())];
    }
    lines.concat()
}

fn indented(text: &str, chance: &mut Chance) -> String {
    let mut lines: Vec<_> = text.split_inclusive('\n').map(str::to_owned).collect();
    if lines.is_empty() {
        return String::new();
    }
    let at = chance.below(lines.len());
    lines[at] = " ".repeat(chance.below(9)) + lines[at].trim_start_matches(' ');
    lines.concat()
}
