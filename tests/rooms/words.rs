//! Where English stands: what decides has no words, so that a second language is a second module.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;

use crate::files;

/// Rooms with the parts of each that alone have words; `english` is nothing else, and `cli` is the program's.
const ROOMS: &[(&str, &[&str])] = &[
    ("source", &[]),
    ("units", &["units/english.rs"]),
    ("geometry", &[]),
    ("paint", &[]),
    ("trade", &["trade/english.rs"]),
    ("remark", &["remark/english"]),
    ("pattern", &["pattern/english.rs", "pattern/edit/english.rs"]),
    ("design", &[]),
    ("palette", &[]),
    ("drape", &[]),
    ("piece", &[]),
    ("materials", &["materials/render"]),
    ("rules", &[]),
    ("steps", &["steps/english"]),
    ("art", &[]),
    ("measure", &["measure/table.rs"]),
    ("sheet", &["sheet/english"]),
    ("picture", &["picture/english.rs"]),
    ("listing", &["listing/english.rs"]),
    ("bench", &[]),
    ("gallery", &["gallery/english.rs"]),
    ("export", &["export/english.rs"]),
    ("assist", &["assist/english.rs"]),
    ("many", &[]),
];

/// Tables whose words are what patterns call materials, and where a number of theirs is from.
const TABLES: &[&str] = &["trade/densities.rs", "trade/metals.rs", "trade/stiffness.rs"];

/// The words of JSON Schema.
const SCHEMA: &[&str] = &[
    "additionalProperties",
    "anyOf",
    "const",
    "description",
    "enum",
    "exclusiveMinimum",
    "integer",
    "items",
    "maxItems",
    "maxLength",
    "maxProperties",
    "maximum",
    "minProperties",
    "minimum",
    "number",
    "object",
    "oneOf",
    "pattern",
    "properties",
    "required",
    "string",
    "type",
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
    ("pattern/bounds.rs", &["counts", "elsewhere"]),
    ("pattern/edit/variant.rs", &["false", "null", "off", "true"]),
    ("pattern/values.rs", &["false", "man", "true", "within", "woman"]),
    ("trade/paper.rs", &["legal", "letter", "tabloid"]),
];

/// Literals that are no sentences, with where they stand and why.
const OTHERS: &[(&str, &str, &str)] = &[
    ("art/stencils.rs", "a bead with its ends swapped has a symbol too", "what the compiler asserts"),
    ("measure/mod.rs", "plain data serialises", "the proof beside an `expect`"),
    ("paint/metrics.rs", "the bundled font opens", "the proof beside an `expect`"),
    ("paint/font.rs", "Source Sans 3", "a font's own name"),
    ("design/article.rs", "strands: 12, length: 20 in", "keys as a pattern has them"),
    ("pattern/bounds.rs", "names, ids and other texts", "a row of the table of bounds"),
    ("pattern/bounds.rs", "lists and groups", "a row of the table of bounds"),
    ("pattern/bounds.rs", "/properties/{key}", "a place in a schema"),
    ("pattern/bounds.rs", "/$defs/{record}/properties/{key}", "a place in a schema"),
    ("pattern/dict.rs", "Dict_{}", "a type's name"),
    ("pattern/edit/entry.rs", "beads:\n  {}\n\n", "a group as a pattern has it"),
    ("pattern/edit/variant.rs", "sizes:\n  - {entry}\n", "a group as a pattern has it"),
    ("pattern/edit/variant.rs", "colourways:\n  {named}: {text}\n", "a group as a pattern has it"),
    ("trade/bodies.rs", "ANSUR II, 2012", "the name of a survey"),
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
    let (language, mut found) = (Language::read(), Vec::new());
    for (place, literals) in wordless() {
        let is_other = |literal: &String| OTHERS.iter().any(|(at, other, _)| *at == place && literal == other);
        let said = literals.into_iter().filter(|literal| is_sentence(literal) && !is_other(literal));
        let said = said.filter(|literal| !language.has(literal));
        found.extend(said.map(|literal| format!("{place}: {literal:?}")));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// A single word that stands alone is a key or word of the language, or a name within a format.
#[test]
fn single_words_are_keys_or_names() {
    let (language, mut found) = (Language::read(), Vec::new());
    for (place, literals) in wordless() {
        let names = NAMES.iter().find(|(at, _)| place.starts_with(at)).map(|(_, names)| *names);
        let is_name =
            |word: &str| SCHEMA.contains(&word) || names.is_some_and(|names| names.is_empty() || names.contains(&word));
        let single = literals.into_iter().filter(|literal| is_word(literal));
        let strange = single.filter(|word| !language.words.contains(word.as_str()) && !is_name(word));
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
            let has_words = words.iter().chain(TABLES).any(|words| place.starts_with(words));
            if has_words || place.ends_with("/sample.rs") {
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

/// What a pattern may say, and what its schema says of that.
struct Language {
    /// Keys, words, and what groups are called.
    words: BTreeSet<String>,
    /// What stands beside them: comments of the sources, and what is written where a value has no comment.
    descriptions: BTreeSet<String>,
}

impl Language {
    fn read() -> Self {
        let mut language = Self { words: BTreeSet::new(), descriptions: BTreeSet::new() };
        language.gather(&festoon::pattern::schema());
        language.gather(&festoon::pattern::shelf_schema());
        language
    }

    fn gather(&mut self, value: &Value) {
        for key in ["properties", "$defs"] {
            let keys = value.get(key).and_then(Value::as_object).into_iter().flatten();
            self.words.extend(keys.map(|(key, _)| key.clone()));
        }
        let listed = value.get("enum").and_then(Value::as_array).into_iter().flatten().chain(value.get("const"));
        self.words.extend(listed.filter_map(Value::as_str).map(str::to_owned));
        self.words.extend(value.get("title").and_then(Value::as_str).map(str::to_owned));
        self.descriptions.extend(value.get("description").and_then(Value::as_str).map(str::to_owned));
        let within: Vec<_> = match value {
            Value::Array(all) => all.iter().collect(),
            Value::Object(group) => group.values().collect(),
            _ => Vec::new(),
        };
        within.into_iter().for_each(|one| self.gather(one));
    }

    /// Whether a literal is one of its words, or what is said of them.
    fn has(&self, literal: &str) -> bool {
        let describes = |description: &String| description.starts_with(literal);
        self.words.contains(literal) || self.descriptions.iter().any(describes)
    }
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
