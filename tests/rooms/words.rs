//! Where English stands: what decides has no words, so that a second language is a second module.

use std::path::Path;

use crate::files;

/// Rooms with the part of each that alone has words. `remark` has a test of its own.
const ROOMS: &[(&str, &str)] = &[
    ("source", "source has no words"),
    ("geometry", "geometry has no words"),
    ("paint", "paint has no words"),
    ("design", "design has no words"),
    ("palette", "palette has no words"),
    ("drape", "drape has no words"),
    ("materials", "materials/render"),
    ("steps", "steps/english"),
    ("art", "art has no words"),
    ("measure", "measure/table.rs"),
    ("sheet", "sheet/english"),
    ("picture", "picture/english.rs"),
    ("listing", "listing/english.rs"),
    ("gallery", "gallery/english.rs"),
    ("rules", "rules has no words"),
    ("bench", "bench has no words"),
];

/// Literals that are no sentences, with where they stand and why.
const OTHERS: &[(&str, &str, &str)] = &[
    ("art/stencils.rs", "a bead with its ends swapped has a symbol too", "what the compiler asserts"),
    ("measure/mod.rs", "plain data serialises", "the proof beside an `expect`"),
    ("paint/metrics.rs", "the bundled font opens", "the proof beside an `expect`"),
    ("paint/font.rs", "Source Sans 3", "a font's own name"),
    ("design/article.rs", "strands: 12, length: 20 in", "keys as a pattern has them"),
    ("design/closure.rs", "each side", "a key of patterns"),
    ("rules/body.rs", "german silver", "a material that patterns name"),
    ("gallery/index.rs", "pieces/{}", "a folder"),
    ("gallery/entry.rs", "picture{}.png", "a file"),
    ("gallery/entry.rs", "small{}.png", "a file"),
    ("gallery/entry.rs", "sheet{}.pdf", "a file"),
    ("gallery/frame.rs", "{up}fonts/", "a folder"),
    ("gallery/frame.rs", "light dark", "a value of HTML"),
];

#[test]
fn words_stand_in_the_modules_of_a_language() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut found = Vec::new();
    for (room, words) in ROOMS {
        for file in files(&root, room) {
            let place = file.strip_prefix(&root).expect("files of a room stand in it").display().to_string();
            if place.starts_with(words) || place.ends_with("/tests.rs") || place.ends_with("/sample.rs") {
                continue;
            }
            let text = std::fs::read_to_string(&file).expect("the sources can be read");
            let is_other = |literal: &String| OTHERS.iter().any(|(at, other, _)| *at == place && literal == other);
            let said = literals(&text).into_iter().filter(|literal| is_sentence(literal) && !is_other(literal));
            found.extend(said.map(|literal| format!("{place}: {literal:?}")));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// Every exception is still one.
#[test]
fn exceptions_stand_where_they_are_said_to() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for (place, literal, why) in OTHERS {
        let text = std::fs::read_to_string(root.join(place)).expect("the sources can be read");
        assert!(literals(&text).iter().any(|one| one == literal), "{place} has no {literal:?} ({why})");
    }
}

#[test]
fn sentences_are_told_from_what_is_none() {
    let said = |text: &str| literals(text).into_iter().filter(|literal| is_sentence(literal)).collect::<Vec<_>>();
    assert_eq!(said(r#"let a = "first end"; // "no bead" "#), ["first end"]);
    assert_eq!(said(r#"format!("strand {name}")"#), ["strand {name}"]);
    assert_eq!(said("#[expect(lint, reason = \"a few lines\")]\nlet quote = '\"'; let b = \"of it\";"), ["of it"]);
    assert!(said(r#"/* "a stop" */ format!("{number} mm, {count} × {name}") + "right-half" + "\n  ""#).is_empty());
    assert!(said("#[cfg(test)]\nmod tests { const A: &str = \"what a test says\"; }").is_empty());
}

/// Whether a literal says something: words, or a word and what is put beside it. Units are none.
fn is_sentence(literal: &str) -> bool {
    const UNITS: &[&str] = &["mm", "cm", "in", "ft", "N", "lb", "g", "kg", "EUR"];
    let mut plain = String::new();
    let (mut depth, mut arguments) = (0_u32, 0_usize);
    for letter in literal.chars() {
        match letter {
            '{' => depth += 1,
            '}' => {
                depth = depth.saturating_sub(1);
                arguments += 1;
                plain.push(' ');
            }
            _ if depth == 0 => plain.push(letter),
            _ => {}
        }
    }
    let word = |part: &&str| {
        let part = part.trim_matches(|letter: char| !letter.is_alphanumeric());
        part.chars().count() > 1
            && part.chars().all(|letter| letter.is_alphabetic() || letter == '\'')
            && !UNITS.contains(&part)
    };
    let words = plain.split_whitespace().filter(word).count();
    words > 1 || words == 1 && arguments > 0
}

/// The string literals of a source before its tests, without those in comments and attributes.
fn literals(source: &str) -> Vec<String> {
    let source: Vec<char> = super::own(source).chars().collect();
    let (mut found, mut at) = (Vec::new(), 0);
    while at < source.len() {
        let rest = &source[at..];
        at += match rest {
            ['/', '/', ..] => line(rest),
            ['/', '*', ..] => comment(rest),
            ['#', '[', ..] | ['#', '!', '[', ..] => attribute(rest),
            ['\'', '\\', _, '\'', ..] => 4,
            ['\'', _, '\'', ..] => 3,
            ['"', ..] => {
                let length = string(rest);
                found.push(unescaped(&rest[1..length - 1]));
                length
            }
            _ => 1,
        };
    }
    found
}

/// How long a comment is that ends with its line.
fn line(rest: &[char]) -> usize {
    rest.iter().position(|letter| *letter == '\n').unwrap_or(rest.len())
}

fn comment(rest: &[char]) -> usize {
    rest.windows(2).position(|pair| pair == ['*', '/']).map_or(rest.len(), |at| at + 2)
}

/// How long a literal is with its quotes.
fn string(rest: &[char]) -> usize {
    let mut at = 1;
    while rest.get(at).is_some_and(|letter| *letter != '"') {
        at += if rest[at] == '\\' { 2 } else { 1 };
    }
    (at + 1).min(rest.len())
}

/// How long an attribute is with its brackets.
fn attribute(rest: &[char]) -> usize {
    let (mut at, mut depth) = (0, 0);
    while at < rest.len() {
        match rest[at] {
            '[' => depth += 1,
            ']' if depth == 1 => return at + 1,
            ']' => depth -= 1,
            '"' => at += string(&rest[at..]) - 1,
            _ => {}
        }
        at += 1;
    }
    at
}

/// A literal as it is read: lines that go on are one.
fn unescaped(literal: &[char]) -> String {
    let text: String = literal.iter().collect();
    let lines: Vec<_> = text.split("\\\n").map(str::trim_start).collect();
    lines.join("").replace("\\n", "\n").replace("\\u{a0}", " ").replace("\\\"", "\"")
}
