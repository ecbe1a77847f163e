//! Who may use whom: data walks one way, so no module imports from one that stands later.

#[path = "rooms/face.rs"]
mod face;
#[path = "rooms/units.rs"]
mod units;
#[path = "rooms/words.rs"]
mod words;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// The rooms of the library, each using only those before it.
const ORDER: &[&str] = &[
    "source",
    "units",
    "geometry",
    "paint",
    "english",
    "trade",
    "remark",
    "pattern",
    "design",
    "palette",
    "drape",
    "piece",
    "materials",
    "rules",
    "steps",
    "art",
    "measure",
    "sheet",
    "picture",
    "listing",
    "bench",
    "gallery",
    "export",
    "assist",
];

#[test]
fn no_module_imports_from_a_later_stage() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let wrong = ORDER.iter().enumerate().flat_map(|(place, room)| {
        files(&root, room)
            .into_iter()
            .flat_map(move |file| later(&file, place).into_iter().map(move |user| (file.clone(), user)))
    });
    let wrong = wrong.map(|(file, user)| format!("{} uses {user}", file.display())).collect::<Vec<_>>();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What is no room and yet may be used by each: it does work on all processors, and knows nothing of what work.
const OUTSIDE: &str = "many";

/// What a room takes from the crate it takes from a room, by its name: a type or function of `lib.rs`, which stands after
/// all of them, would be a way round the order, and so would a group.
#[test]
fn what_a_room_uses_stands_in_a_room() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for file in ORDER.iter().chain([&OUTSIDE]).flat_map(|room| files(&root, room)) {
        let text = own(&fs::read_to_string(&file).expect("the sources can be read"));
        let wrong = taken(&text).find(|name| !ORDER.contains(name) && *name != OUTSIDE);
        assert_eq!(wrong, None, "{}", file.display());
    }
}

/// What a text takes from the crate: the names behind `crate::`, and an empty one for a group.
fn taken(text: &str) -> impl Iterator<Item = &str> {
    let lines = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    let rest = lines.flat_map(|line| line.split("crate::").skip(1));
    rest.map(|rest| rest.split(|letter: char| !letter.is_alphanumeric() && letter != '_').next().unwrap_or_default())
}

#[test]
fn what_is_taken_from_the_crate_is_found() {
    let text = "use crate::a::B;\n// crate::none\nlet c = $crate::d(crate::e_f);\nuse crate::{g, h};\n";
    assert_eq!(taken(text).collect::<Vec<_>>(), ["a", "d", "e_f", ""]);
}

/// What a room does without, though it stands later: colours are how a piece is drawn, and no part of what it is, how it
/// hangs or how it is made.
const WITHOUT: &[(&str, &[&str])] = &[
    ("design", &["paint", "metals", "Rgb", "Colour"]),
    ("drape", &["paint", "palette", "Rgb"]),
    ("steps", &["paint", "palette", "Rgb"]),
    ("measure", &["paint", "palette", "Rgb"]),
];

#[test]
fn what_a_piece_is_has_no_colours() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for (room, others) in WITHOUT {
        for text in texts(&root, room) {
            let lines = text.lines().filter(|line| !line.trim_start().starts_with("//"));
            let named = lines.flat_map(names).find(|name| others.contains(name));
            assert_eq!(named, None, "{room}");
        }
    }
}

#[test]
fn the_order_names_every_room() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/lib.rs");
    let text = fs::read_to_string(root).unwrap();
    let rooms = text.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    let mut rooms = rooms.collect::<Vec<_>>();
    let mut order = ORDER.to_vec();
    rooms.sort_unstable();
    order.sort_unstable();
    assert_eq!(rooms, order);
}

/// The files of a room, but for those of tests alone.
fn files(root: &Path, room: &str) -> Vec<PathBuf> {
    let file = root.join(room).with_extension("rs");
    let mut found = if file.exists() { vec![file] } else { Vec::new() };
    let mut folders = vec![root.join(room)];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).into_iter().flatten() {
            let path = entry.expect("the sources can be listed").path();
            if path.is_dir() { folders.push(path) } else { found.push(path) }
        }
    }
    found.retain(|path| path.extension().is_some_and(|ending| ending == "rs") && !path.ends_with("tests.rs"));
    found
}

/// The rooms later than a place that a file names.
fn later(file: &Path, place: usize) -> Vec<&'static str> {
    let text = own(&fs::read_to_string(file).expect("the sources can be read"));
    ORDER[place + 1..].iter().copied().filter(|room| uses(&text, room)).collect()
}

/// A file without its tests, in it or in files of their own: what they build is theirs.
fn own(text: &str) -> String {
    let mut parts = text.split("#[cfg(test)]");
    let mut own = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let Some((_, after)) = part.split_once(";\n").filter(|(declared, _)| !declared.contains('{')) else { break };
        own += after;
    }
    own
}

#[test]
fn what_stands_behind_the_name_of_a_file_of_tests_is_read() {
    assert_eq!(own("a\n#[cfg(test)]\nmod sample;\nuse b;\n#[cfg(test)]\nmod tests { use c; }\n"), "a\nuse b;\n");
}

/// The page for contributors says who uses whom, as the sources do.
#[test]
fn the_table_of_rooms_is_true() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let page = fs::read_to_string(root.join("DEVELOPERS.md")).unwrap();
    let row = |room: &str| page.lines().find_map(|line| line.strip_prefix(&format!("| `{room}` | ")));
    let mut wrong = Vec::new();
    for room in ORDER {
        let told = row(room).expect("a row of the room").split('|').next().unwrap_or_default();
        let told: BTreeSet<&str> = told.split(',').map(str::trim).filter(|word| !word.is_empty()).collect();
        let texts: Vec<_> =
            files(&root.join("src"), room).iter().map(|file| own(&fs::read_to_string(file).unwrap())).collect();
        let is_used = |other: &&&str| *other != room && texts.iter().any(|text| uses(text, other));
        let used: BTreeSet<&str> = ORDER.iter().filter(is_used).copied().collect();
        if told != used {
            wrong.push(format!("| `{room}` | {} |", used.into_iter().collect::<Vec<_>>().join(", ")));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn uses(text: &str, room: &str) -> bool {
    taken(text).any(|name| name == room)
}

/// What the table of trade sizes names, no other file names again with a value of its own.
#[test]
fn trade_sizes_have_one_value() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let table = root.join("trade/usual.rs");
    let named = |file: &Path| -> Vec<String> {
        let text = fs::read_to_string(file).expect("the sources can be read");
        let names = text.lines().filter_map(|line| line.trim_start().split("const ").nth(1)?.split_once(':'));
        names.map(|(name, _)| name.to_owned()).collect()
    };
    let usual = named(&table);
    assert!(usual.iter().any(|name| name == "EYE") && usual.len() > 10, "{usual:?}");
    let rooms = ["design", "drape", "materials", "rules", "steps", "art/finding", "art", "measure", "trade"];
    for file in rooms.iter().flat_map(|room| files(&root, room)).filter(|file| *file != table) {
        let again: Vec<_> = named(&file).into_iter().filter(|name| usual.contains(name)).collect();
        assert!(again.is_empty(), "{} has its own {again:?}", file.display());
    }
}

/// Names that stand for more than one type, hidden ones too, with why.
const AGAIN: &[(&str, &str)] = &[
    ("Format", "each command has its own"),
    ("Node", "of a tree of values, and of a net of joints: the standard word for both"),
    ("Options", "each command has its own"),
    ("Shelf", "a file beside the pattern, and what is written in it"),
];

/// A type's name is given once in the whole program, hidden ones and the program's own among them.
#[test]
fn a_name_is_given_once() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut given: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for room in ORDER.iter().chain(&["cli"]) {
        for name in texts(&root, room).iter().flat_map(|text| types(text)) {
            given.entry(name).or_default().push(room);
        }
    }
    assert!(given.contains_key("Strand") && given.len() > 300, "{} names", given.len());
    // A pattern's words are those of its design, as written and resolved.
    let once = |rooms: &[&str]| usize::from(rooms.contains(&"pattern") && rooms.contains(&"design")) + 1;
    let again = given.iter().filter(|(_, rooms)| rooms.len() > once(rooms)).map(|(name, _)| name.as_str());
    let known: Vec<_> = AGAIN.iter().map(|(name, _)| *name).collect();
    assert_eq!(again.collect::<Vec<_>>(), known);
}

/// The texts of a room without their tests, and without what is said.
fn texts(root: &Path, room: &str) -> Vec<String> {
    let text = |file: PathBuf| own(&fs::read_to_string(file).expect("the sources can be read"));
    let is_said = |file: &PathBuf| file.parent().is_some_and(|folder| folder.ends_with("said"));
    files(root, room).into_iter().filter(|file| !is_said(file)).map(text).collect()
}

/// The types that a text declares, those that macros declare for the pattern among them.
fn types(text: &str) -> Vec<String> {
    let declared = |line: &str| {
        let is_own = !line.starts_with(char::is_whitespace);
        let line = line.strip_prefix("pub").unwrap_or(line);
        let line = line.strip_prefix('(').and_then(|line| line.split_once(')')).map_or(line, |(_, line)| line);
        let (kind, name) = line.trim_start().split_once(' ')?;
        (["struct", "enum", "trait"].contains(&kind) || kind == "type" && is_own)
            .then(|| names(name).next().map(str::to_owned))?
    };
    let by_macro = |declared: &str| {
        let name = declared.lines().find_map(|line| line.strip_prefix("    ")?.strip_suffix(" {"))?;
        name.starts_with(char::is_uppercase).then(|| name.to_owned())
    };
    let macros = ["\nrecord!(", "\nwords!("].into_iter().flat_map(|of| text.split(of).skip(1)).filter_map(by_macro);
    text.lines().filter_map(declared).chain(macros).collect()
}

fn names(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter: char| !letter.is_alphanumeric() && letter != '_').filter(|word| !word.is_empty())
}
