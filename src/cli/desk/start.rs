//! Patterns to begin from: one of each kind with a note at every key, and the worked pieces.

use axum::response::Response;
use serde::Serialize;

use festoon::design::Choice;
use festoon::export;
use festoon::pattern::Kind;
use festoon::source::Source;
use festoon::{bench, piece};

use super::answer::{json, refused};
use crate::cli::new;

/// A pattern to begin from.
#[derive(Serialize)]
struct Begin {
    name: &'static str,
    title: String,
    summary: String,
    /// Whether it is a kind with notes, and not a worked piece.
    is_kind: bool,
    svg: String,
}

/// Worked pieces, by name.
const WORKED: [(&str, &str); 6] = [
    ("saltmarsh", include_str!("../../../patterns/saltmarsh.yaml")),
    ("tideline", include_str!("../../../patterns/tideline.yaml")),
    ("moonwrack", include_str!("../../../patterns/moonwrack.yaml")),
    ("sandhopper", include_str!("../../../patterns/sandhopper.yaml")),
    ("halyard", include_str!("../../../patterns/halyard.yaml")),
    ("rockpool", include_str!("../../../patterns/rockpool.yaml")),
];

/// Every pattern to begin from: its name, its text, and whether it is a kind.
fn all() -> impl Iterator<Item = (&'static str, &'static str, bool)> {
    let kinds = Kind::ALL.iter().map(|kind| (kind.word(), new::start(*kind), true));
    kinds.chain(WORKED.map(|(name, text)| (name, text, false)))
}

/// Answers with all that there is to begin from, each with its drawing.
pub fn list() -> Response {
    json(all().filter_map(begin).collect::<Vec<_>>())
}

fn begin((name, text, is_kind): (&'static str, &'static str, bool)) -> Option<Begin> {
    let piece = piece(&Source::new(name, text), &Choice::default(), None).0?;
    let heading = &piece.design.heading;
    let title = if is_kind { capital(name) } else { heading.title.clone() };
    let summary =
        if is_kind { "With a note at every key.".to_owned() } else { heading.summary.clone().unwrap_or_default() };
    Some(Begin {
        name,
        title,
        summary,
        is_kind,
        svg: export::svg(&bench::bench(&piece, festoon::art::Ink::Colour).page),
    })
}

/// A word begun with a capital.
fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Answers with the text of a pattern to begin from.
pub fn text(name: &str) -> Response {
    let found = all().find(|(one, ..)| *one == name);
    found.map_or_else(|| refused("there is no such pattern"), |(_, text, _)| json(serde_json::json!({ "text": text })))
}
