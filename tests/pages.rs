//! Pages: everything inside the margins, no text on text, beads drawn as many as are strung.

#[path = "support/boxes.rs"]
mod boxes;
#[path = "pages/buying.rs"]
mod buying;
#[path = "pages/cover.rs"]
mod cover;
#[path = "pages/drawn.rs"]
mod drawn;
#[path = "support/every.rs"]
mod every;
#[path = "pages/fill.rs"]
mod fill;
#[path = "fuzz/finite.rs"]
mod finite;
#[path = "pages/folded.rs"]
mod folded;
#[path = "pages/generated.rs"]
mod generated;
#[path = "support/language.rs"]
mod language;
#[path = "pages/lettering.rs"]
mod lettering;
#[path = "pages/making.rs"]
mod making;
#[path = "pages/posts.rs"]
mod posts;
#[path = "pages/proof.rs"]
mod proof;
#[path = "pages/stringing.rs"]
mod stringing;
#[path = "pages/texts.rs"]
mod texts;

#[path = "support/beside.rs"]
mod beside;
#[path = "support/shelved.rs"]
mod shelved;

use std::sync::OnceLock;

use festoon::art::Ink;
use festoon::design::Choice;
use festoon::paint::mark::Page;
use festoon::sheet::Style;
use festoon::source::Source;
use festoon::trade::paper::Paper;
use festoon::{Piece, piece};
use shelved::shelved;

/// The papers that pages are tested on.
const PAPERS: [Paper; 3] = [Paper::A4, Paper::Letter, Paper::A5];

/// The piece of a pattern; nothing where the pattern has errors.
fn read(text: &str) -> Result<Piece, String> {
    made(&Source::new("test.yaml", text))
}

fn made(source: &Source) -> Result<Piece, String> {
    let (piece, remarks) = piece(source, &Choice::default(), None);
    piece.ok_or_else(|| format!("{remarks:?}"))
}

fn pages(piece: &Piece, paper: Paper) -> Vec<Page> {
    festoon::pages(piece, &Style { paper, ink: Ink::Colour, prices: false })
}

/// The white edge that a sheet keeps: less on small papers.
fn margin(paper: Paper) -> f64 {
    if paper.size().0 < 180.0 { 10.0 } else { festoon::paint::style::MARGIN }
}

/// The pieces of the shipped patterns, hung once for all tests.
fn shipped() -> Vec<Piece> {
    static SHIPPED: OnceLock<Vec<Piece>> = OnceLock::new();
    SHIPPED.get_or_init(hung).clone()
}

fn hung() -> Vec<Piece> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/patterns");
    let mut files: Vec<_> =
        std::fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path()).collect();
    files.retain(|file| file.extension().is_some_and(|ending| ending == "yaml"));
    files.sort();
    let read = |path: std::path::PathBuf| {
        let name = path.file_name().and_then(|name| name.to_str()).expect("a shipped pattern has a plain name");
        made(&shelved(&format!("patterns/{name}"))).unwrap_or_else(|remarks| panic!("{name}: {remarks}"))
    };
    assert!(!files.is_empty(), "no patterns in {folder}");
    files.into_iter().map(read).collect()
}

/// The pages that these tests are about.
fn is_tested(page: &&Page) -> bool {
    ["Face", "Lists", "Stringing", "Buying and cutting", "Making"].iter().any(|name| holds(page, name))
}

/// Whether a section of that name stands on a page.
fn holds(page: &Page, section: &str) -> bool {
    page.title.rsplit(": ").next().is_some_and(|names| names.split("; ").any(|name| name == section))
}

/// Faults of these pages of the shipped patterns on all papers.
fn faults(of: impl Fn(&Page, Paper) -> Vec<String>) -> Vec<String> {
    let mut faults = Vec::new();
    for piece in shipped() {
        for paper in PAPERS {
            let pages = pages(&piece, paper);
            faults.extend(pages.iter().filter(is_tested).flat_map(|page| of(page, paper)));
        }
    }
    faults
}

#[test]
fn every_mark_of_the_shipped_sheets_lies_inside_the_margins() {
    let faults = faults(|page, paper| boxes::outside(page, margin(paper)));
    assert!(faults.is_empty(), "{} marks:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn no_text_of_the_shipped_sheets_overlaps_another() {
    let faults = faults(|page, _| boxes::overlapping_texts(page));
    assert!(faults.is_empty(), "{} pairs:\n{}", faults.len(), faults.join("\n"));
}

/// Three strands on many pages, and a pair of earrings.
#[test]
fn a_long_and_a_short_piece_have_sound_sheets_on_every_paper() {
    let pieces: Vec<_> =
        shipped().into_iter().filter(|piece| ["Saltmarsh", "Whelk"].contains(&&*piece.design.heading.title)).collect();
    assert_eq!(pieces.len(), 2);
    for piece in &pieces {
        for paper in Paper::ALL {
            let pages = pages(piece, *paper);
            let faults =
                pages.iter().flat_map(|page| [boxes::outside(page, margin(*paper)), boxes::overlapping_texts(page)]);
            let faults: Vec<_> = faults.flatten().collect();
            assert!(faults.is_empty(), "{paper:?}: {} faults:\n{}", faults.len(), faults.join("\n"));
        }
    }
}
