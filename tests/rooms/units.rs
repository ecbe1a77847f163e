//! A number without a type of its own says in which unit it is: a length in mm, an angle in radians, a share.

use std::fs;
use std::path::Path;

use crate::{files, names, own};

/// Rooms that others read numbers of, or draw with; those of `measure` have their units in their keys.
const ROOMS: &[&str] = &[
    "units",
    "geometry",
    "paint",
    "trade",
    "pattern",
    "design",
    "palette",
    "drape",
    "piece",
    "materials",
    "steps",
    "art",
    "sheet",
    "picture",
    "bench",
    "gallery",
    "export",
];

/// The units, and what has none: a share, a factor, a count.
const UNITS: &[&str] = &[
    "mm", "mm³", "radians", "degrees", "N", "newtons", "g", "grams", "hours", "share", "shares", "factor", "factors",
    "ratio", "times", "turns", "often", "count", "unit", "em",
];

/// Numbers that have none say from where to where they go.
const RANGES: &[&str] = &["from 0 to 1"];

#[test]
fn numbers_say_their_units() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let silent = |file: std::path::PathBuf| {
        let text = own(&fs::read_to_string(&file).expect("the sources can be read"));
        unsaid(&text).into_iter().map(move |name| format!("{}: {name}", file.display())).collect::<Vec<_>>()
    };
    let silent: Vec<_> = ROOMS.iter().flat_map(|room| files(&root, room)).flat_map(silent).collect();
    assert!(silent.is_empty(), "{}", silent.join("\n"));
}

/// The public fields and functions of a text that give a bare number, and say its unit neither in their own words nor
/// in those of their type or of the file.
fn unsaid(text: &str) -> Vec<String> {
    let lines: Vec<_> = text.lines().collect();
    let head: String = lines.iter().filter(|line| line.starts_with("//!")).copied().collect();
    let (mut said, mut of_type, mut unsaid) = (String::new(), String::new(), Vec::new());
    for (at, line) in lines.iter().enumerate() {
        match line.trim_start() {
            "" => said.clear(),
            words if words.starts_with("///") => said += words,
            _ if line.starts_with("pub struct ") => of_type = std::mem::take(&mut said),
            shown if shown.starts_with("pub ") => {
                let of_type = if line.starts_with(' ') { of_type.as_str() } else { "" };
                let is_said = [&said, of_type, &head].into_iter().any(has_unit);
                unsaid.extend(numbered(&lines[at..]).filter(|_| !is_said).map(str::to_owned));
                said.clear();
            }
            _ => {}
        }
    }
    unsaid
}

/// The name of the public field or function with which lines begin, where it gives a bare number.
fn numbered<'t>(lines: &[&'t str]) -> Option<&'t str> {
    let rest = lines[0].trim_start().strip_prefix("pub ")?;
    let rest = rest.strip_prefix("const fn ").or_else(|| rest.strip_prefix("fn "));
    let Some(function) = rest else {
        let field = lines[0].strip_prefix("    pub ")?.split_once(": ")?;
        return field.1.contains("f64").then_some(field.0);
    };
    let signature: String = lines.iter().take_while(|line| !line.starts_with('}')).copied().collect();
    let (_, given) = signature.split('{').next()?.split_once("->")?;
    given.contains("f64").then(|| names(function).next())?
}

fn has_unit(words: &str) -> bool {
    let named = names(words).any(|word| UNITS.iter().any(|unit| word.eq_ignore_ascii_case(unit)));
    named || RANGES.iter().any(|range| words.contains(range))
}

#[test]
fn a_number_without_a_unit_is_found() {
    let text = "/// Length in mm.\npub fn a() -> f64 {\n}\n\n/// Length.\n#[must_use]\npub const fn b(\n) -> Option<f64> {\n}\n\n\
                /// Sizes in mm.\npub struct C {\n    /// Its length.\n    pub c: f64,\n}\n\n/// Sizes.\npub struct D {\n    \
                /// Its length.\n    pub d: Option<f64>,\n    pub e: Length,\n}\n\n/// Of a length.\npub fn f(at: f64) -> u8 {\n}\n\n\
                /// Sizes in mm.\npub struct G {\n    /// Its length.\n    pub g: f64,\n}\n\n/// Of none.\npub fn h() -> f64 {\n}\n";
    assert_eq!(unsaid(text), ["b", "d", "h"]);
}
