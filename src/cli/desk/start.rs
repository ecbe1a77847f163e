//! Patterns to begin from: one of each kind with a note at every key, and the worked pieces.

use std::borrow::Cow;
use std::sync::LazyLock;

use axum::response::Response;
use rayon::prelude::*;
use serde::Serialize;

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::english::capital;
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

macro_rules! worked {
    ($name:literal) => {
        ($name, include_str!(concat!("../../../patterns/", $name, ".yaml")))
    };
}

/// Worked pieces, by name.
const WORKED: [(&str, &str); 29] = [
    worked!("saltmarsh"),
    worked!("groyne"),
    worked!("moonwrack"),
    worked!("sandhopper"),
    worked!("halyard"),
    worked!("rockpool"),
    worked!("beachcomber"),
    worked!("bollard"),
    worked!("breakwater"),
    worked!("dune"),
    worked!("ebb"),
    worked!("eddy"),
    worked!("fathom"),
    worked!("hawser"),
    worked!("lockgate"),
    worked!("painter"),
    worked!("pierhead"),
    worked!("plumb-line"),
    worked!("sea-fret"),
    worked!("shingle"),
    worked!("skerries"),
    worked!("slack-tide"),
    worked!("sounding-line"),
    worked!("spindrift"),
    worked!("tideline"),
    worked!("turnstone"),
    worked!("whelk"),
    worked!("windlass"),
    worked!("wrackline"),
];

/// The shelf from which some of them take their beads, by the line that names it.
const SHELF: (&str, &str) = ("shelf: shelf/tide.yaml\n", include_str!("../../../patterns/shelf/tide.yaml"));

/// Every pattern to begin from: its name, its text, and whether it is a kind.
fn all() -> impl Iterator<Item = (&'static str, Cow<'static, str>, bool)> {
    let kinds = Kind::ALL.iter().map(|kind| (kind.word(), Cow::Borrowed(new::start(*kind)), true));
    kinds.chain(WORKED.map(|(name, text)| (name, by_itself(text), false)))
}

/// A worked piece as it stands in one file, with what it takes from the shelf.
fn by_itself(text: &'static str) -> Cow<'static, str> {
    let (line, shelf) = SHELF;
    let stock = shelf.split_once("festoon: 1\n").map_or("", |(_, stock)| stock);
    match text.split_once(line) {
        Some((before, after)) => Cow::Owned(before.to_owned() + stock + after),
        None => Cow::Borrowed(text),
    }
}

/// Answers with all that there is to begin from, each with its drawing. They are drawn once.
pub fn list() -> Response {
    static ALL: LazyLock<Vec<Begin>> = LazyLock::new(|| {
        let all: Vec<_> = all().collect();
        all.into_par_iter().filter_map(begin).collect()
    });
    json(&*ALL)
}

fn begin((name, text, is_kind): (&'static str, Cow<'static, str>, bool)) -> Option<Begin> {
    let piece = piece(&Source::new(name, text), &Choice::default(), None).0?;
    let heading = &piece.design.heading;
    let title = if is_kind { capital(name) } else { heading.title.clone() };
    let summary =
        if is_kind { "With a note at every key.".to_owned() } else { heading.summary.clone().unwrap_or_default() };
    let svg = export::svg(&bench::bench(&piece, Ink::Colour).page);
    Some(Begin { name, title, summary, is_kind, svg })
}

/// Answers with the text of a pattern to begin from.
pub fn text(name: &str) -> Response {
    let found = all().find(|(one, ..)| *one == name);
    found.map_or_else(|| refused("there is no such pattern"), |(_, text, _)| json(serde_json::json!({ "text": text })))
}
