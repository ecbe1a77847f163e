//! Who may use whom: data walks one way, so no module imports from one that stands later.

#[path = "rooms/words.rs"]
mod words;

use std::fs;
use std::path::{Path, PathBuf};

/// The rooms of the library, each using only those before it.
const ORDER: &[&str] = &[
    "source",
    "units",
    "geometry",
    "paint",
    "trade",
    "remark",
    "pattern",
    "design",
    "drape",
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

/// The files of a room.
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
    found.retain(|path| path.extension().is_some_and(|ending| ending == "rs"));
    found
}

/// The rooms later than a place that a file names; what its own tests build is theirs.
fn later(file: &Path, place: usize) -> Vec<&'static str> {
    let text = fs::read_to_string(file).expect("the sources can be read");
    let text = text.split("#[cfg(test)]").next().unwrap_or_default().to_owned();
    ORDER[place + 1..].iter().copied().filter(|room| uses(&text, room)).collect()
}

fn uses(text: &str, room: &str) -> bool {
    let name = format!("crate::{room}");
    text.lines().filter(|line| !line.trim_start().starts_with("//")).any(|line| {
        line.match_indices(&name).any(|(at, _)| {
            !line[at + name.len()..].starts_with(|letter: char| letter.is_alphanumeric() || letter == '_')
        })
    })
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
