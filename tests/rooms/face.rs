//! What the library shows may grow: what others are answered with they do not make by its fields.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::{names, own, texts};

/// Rooms whose structs others are answered with.
const ANSWERS: &[&str] =
    &["pattern", "design", "palette", "drape", "piece", "materials", "steps", "measure", "bench", "gallery", "assist"];

/// What is asked with, or lent to ask with.
const ASKED: &[&str] = &["Attempt", "Batch", "Choice", "Cut", "Fit", "Order", "Pool", "Stock", "Supply"];

#[test]
fn what_others_are_answered_with_may_grow() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut bound = BTreeSet::new();
    for room in ANSWERS {
        let shown = shown(&root, room);
        let open = texts(&root, room).into_iter().flat_map(|text| bound_to_fields(&text));
        bound.extend(open.filter(|name| shown.contains(name)));
    }
    assert_eq!(bound.iter().map(String::as_str).collect::<Vec<_>>(), ASKED);
}

/// The names that a room shows in its own file: those declared there, and those handed on, all of a file where a star says
/// so.
fn shown(root: &Path, room: &str) -> BTreeSet<String> {
    let inner = root.join(room).join("mod.rs");
    let file = if inner.exists() { inner } else { root.join(room).with_extension("rs") };
    let text = own(&fs::read_to_string(file).expect("the sources can be read"));
    let mut shown: BTreeSet<_> = structs(&text).map(|(name, _)| name).collect();
    for used in text.split("\npub use ").skip(1).filter_map(|used| used.split(';').next()) {
        match used.strip_suffix("::*") {
            Some(all) => {
                let text =
                    fs::read_to_string(root.join(room).join(all).with_extension("rs")).expect("a file of the room");
                shown.extend(structs(&text).map(|(name, _)| name));
            }
            None => shown.extend(names(used).map(str::to_owned)),
        }
    }
    shown
}

/// The structs of a text whose fields others fill, and that may not grow.
fn bound_to_fields(text: &str) -> Vec<String> {
    let is_bound = |body: &str| {
        let (before, fields) = body.split_once("pub struct ").unwrap_or_default();
        let fields = fields.split("\n}").next().unwrap_or_default();
        !before.contains("#[non_exhaustive]") && fields.lines().skip(1).any(|line| line.starts_with("    pub "))
    };
    structs(text).filter(|(_, body)| is_bound(body)).map(|(name, _)| name).collect()
}

/// The public structs of a text, each with its attributes and what follows.
fn structs(text: &str) -> impl Iterator<Item = (String, &str)> {
    text.split("\n\n").filter_map(|part| {
        let (_, declared) =
            part.split_once("\npub struct ").or_else(|| Some(("", part.strip_prefix("pub struct ")?)))?;
        Some((names(declared).next()?.to_owned(), part))
    })
}

#[test]
fn a_struct_that_may_not_grow_is_told_from_one_that_may() {
    let text = "/// One.\n#[non_exhaustive]\npub struct A {\n    pub a: f64,\n}\n\n/// Other.\npub struct B {\n    pub b: f64,\n}\n\n\
                pub struct C {\n    c: f64,\n}\n";
    assert_eq!(bound_to_fields(text), ["B"]);
}
