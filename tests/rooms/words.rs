//! Where English stands: what decides has no words, so that a second language is a second module.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;

use crate::files;

/// Rooms with the part of each that alone has words.
const ROOMS: &[(&str, &str)] = &[
    ("source", "source has no words"),
    ("remark", "remark/english"),
    ("geometry", "geometry has no words"),
    ("paint", "paint has no words"),
    ("design", "design has no words"),
    ("palette", "palette has no words"),
    ("drape", "drape has no words"),
    ("piece", "piece has no words"),
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
    ("units", "units/english.rs"),
    ("export", "export/english.rs"),
    ("assist", "assist/english.rs"),
];

/// Single words that say nothing to people and are none of the language's, by where they stand: names within formats,
/// parts of keys, materials that patterns name, signs of units.
const NAMES: &[(&str, &[&str])] = &[
    ("remark/code.rs", &[]),
    ("remark/level.rs", &["advice", "error", "warning"]),
    ("materials/mod.rs", &["finding"]),
    ("design/ends.rs", &["loop"]),
    ("design/spring.rs", &["loop"]),
    ("art/look.rs", &["edge", "finding", "linked", "pin", "pressed", "speck"]),
    ("art/finding/mod.rs", &["fluted"]),
    ("art/light.rs", &["grey"]),
    ("gallery/", &[]),
    ("rules/body.rs", &["alpaca", "brass", "crystal", "free", "lead", "nickel", "pewter", "rock"]),
    ("rules/text.rs", &["colourway"]),
    ("steps/cautions.rs", &["crystal", "glass"]),
    ("units.rs", &["millimetres", "newtons"]),
    ("units/parse.rs", &[]),
    ("export/pdf.rs", &["en"]),
    ("export/svg", &[]),
    (
        "assist/language.rs",
        &["additionalProperties", "anyOf", "const", "description", "enum", "items", "oneOf", "properties"],
    ),
];

/// Literals that are no sentences, with where they stand and why.
const OTHERS: &[(&str, &str, &str)] = &[
    ("art/stencils.rs", "a bead with its ends swapped has a symbol too", "what the compiler asserts"),
    ("measure/mod.rs", "plain data serialises", "the proof beside an `expect`"),
    ("paint/metrics.rs", "the bundled font opens", "the proof beside an `expect`"),
    ("paint/font.rs", "Source Sans 3", "a font's own name"),
    ("design/article.rs", "strands: 12, length: 20 in", "keys as a pattern has them"),
    ("design/closure.rs", "each side", "a key of patterns"),
    ("assist/offer.rs", "each side", "a key of patterns"),
    ("assist/offer.rs", "both ends", "a key of patterns"),
    ("assist/offer.rs", "comes with", "a key of patterns"),
    ("rules/body.rs", "german silver", "a material that patterns name"),
    ("gallery/index.rs", "pieces/{}", "a folder"),
    ("gallery/entry.rs", "picture{}.png", "a file"),
    ("gallery/entry.rs", "small{}.png", "a file"),
    ("gallery/entry.rs", "sheet{}.pdf", "a file"),
    ("gallery/frame.rs", "{up}fonts/", "a folder"),
    ("gallery/frame.rs", "light dark", "a value of HTML"),
    ("export/svg.rs", "url(#{id})", "a value of SVG"),
    ("export/svg.rs", "translate({})", "a value of SVG"),
    ("export/svg.rs", "rotate({})", "a value of SVG"),
    ("export/svg.rs", "rotate({turn})", "a value of SVG"),
    ("export/svg/part.rs", "{name}-opacity", "a name of SVG"),
    ("export/svg/part.rs", "<tspan font-size=\"{size}\">{words}</tspan>", "an element of SVG"),
];

#[test]
fn words_stand_in_the_modules_of_a_language() {
    let mut found = Vec::new();
    for (place, literals) in wordless() {
        let is_other = |literal: &String| OTHERS.iter().any(|(at, other, _)| *at == place && literal == other);
        let said = literals.into_iter().filter(|literal| is_sentence(literal) && !is_other(literal));
        found.extend(said.map(|literal| format!("{place}: {literal:?}")));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// A single word that stands alone is a key or word of the language, or a name within a format.
#[test]
fn single_words_are_keys_or_names() {
    let (language, mut found) = (language(), Vec::new());
    for (place, literals) in wordless() {
        let names = NAMES.iter().find(|(at, _)| place.starts_with(at)).map(|(_, names)| *names);
        let is_name = |word: &str| names.is_some_and(|names| names.is_empty() || names.contains(&word));
        let single = literals.into_iter().filter(|literal| is_word(literal));
        let strange = single.filter(|word| !language.contains(word.as_str()) && !is_name(word));
        found.extend(strange.map(|word| format!("{place}: {word:?}")));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// What every file that has no words says, and where that stands.
fn wordless() -> Vec<(String, Vec<String>)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut all = Vec::new();
    for (room, words) in ROOMS {
        for file in files(&root, room) {
            let place = file.strip_prefix(&root).expect("files of a room stand in it").display().to_string();
            if place.starts_with(words) || place.ends_with("/sample.rs") {
                continue;
            }
            let text = std::fs::read_to_string(&file).expect("the sources can be read");
            all.push((place, literals(&text)));
        }
    }
    all
}

/// A word in small letters or with a capital, that is no unit's sign.
fn is_word(literal: &str) -> bool {
    literal.chars().count() > 1 && literal.chars().all(char::is_alphabetic) && !UNITS.contains(&literal)
}

/// The keys and words of the language.
fn language() -> BTreeSet<String> {
    fn gather(value: &Value, words: &mut BTreeSet<String>) {
        if let Some(keys) = value.get("properties").and_then(Value::as_object) {
            words.extend(keys.keys().cloned());
        }
        let listed = value.get("enum").and_then(Value::as_array).into_iter().flatten().chain(value.get("const"));
        words.extend(listed.filter_map(Value::as_str).map(str::to_owned));
        let within: Vec<_> = match value {
            Value::Array(all) => all.iter().collect(),
            Value::Object(group) => group.values().collect(),
            _ => Vec::new(),
        };
        within.into_iter().for_each(|one| gather(one, words));
    }
    let mut words = BTreeSet::new();
    gather(&festoon::pattern::schema(), &mut words);
    words
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

/// Signs of units and of money.
const UNITS: &[&str] = &["mm", "cm", "in", "ft", "N", "lb", "mg", "g", "kg", "min", "deg", "EUR"];

/// Whether a literal says something: words, or a word and what is put beside it. Units are none.
fn is_sentence(literal: &str) -> bool {
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
