//! The making pages: every caution and step is there, each step whole on one page.

use std::collections::{BTreeMap, BTreeSet};

use festoon::art::STEP_SIZE;
use festoon::geometry::Point;
use festoon::paint::mark::{Mark, Page};
use festoon::steps::Drawing;
use festoon::steps::english::{Told, cautions, drawing, told};

use super::boxes::{Box, Found, boxes};
use super::{PAPERS, holds, pages, shipped};

/// Breadth in mm of the board on which beads are laid out, with its edge.
const BOARD: f64 = 23.82;

/// A text without its white space, so that it does not matter where lines break.
pub fn dense(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// The words of a page in the order in which they are drawn, dense.
pub fn words_of(page: &Page) -> String {
    boxes(page).iter().filter_map(|found| found.text()).map(dense).collect()
}

/// The words of every making page, dense.
fn making(pages: &[Page]) -> Vec<String> {
    let pages = pages.iter().filter(|page| holds(page, "Making"));
    pages.map(words_of).collect()
}

/// What a step's drawing shows: the same work, with what hangs where that is drawn.
fn shown(step: &Told) -> Option<(Drawing, Option<usize>)> {
    let hangs = |drawing| matches!(drawing, Drawing::Clasp | Drawing::InLoop);
    let first = || step.cast.findings.first().map(|finding| finding.number());
    step.drawing.map(|drawing| (drawing, hangs(drawing).then(first).flatten()))
}

fn words(number: usize, step: &Told, drawn_at: Option<usize>) -> String {
    let drawn = drawn_at.map(|at| format!("drawn at step {at}")).unwrap_or_default();
    let check = step.check.as_deref().unwrap_or_default();
    dense(&format!("{number}{}{drawn}{}{check}", step.title, step.text))
}

#[test]
fn every_step_and_caution_is_whole_on_one_page() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        for paper in PAPERS {
            let sheet = pages(&piece, paper);
            let (cover, pages) = (words_of(&sheet[0]), making(&sheet));
            let mut drawn = BTreeMap::new();
            for (number, step) in (1..).zip(&told(&piece.design, piece.telling.units)) {
                let first = shown(step).map(|shown| *drawn.entry(shown).or_insert(number));
                let whole = words(number, step, first.filter(|first| *first != number));
                assert!(pages.iter().any(|page| page.contains(&whole)), "{name} on {paper:?}: {whole}");
            }
            // They stand on the cover or before the steps, all in one place.
            let all: Vec<_> =
                cautions(&piece.design).iter().map(|one| dense(&format!("{}. {}", one.title, one.text))).collect();
            let holds_all = |page: &String| all.iter().all(|caution| page.contains(caution));
            assert!([&cover, &pages[0]].into_iter().any(holds_all), "{name} on {paper:?}: {all:?}");
            let notes = piece.design.heading.notes.as_deref().map(dense).unwrap_or_default();
            assert!(pages.iter().any(|page| page.contains(&notes)), "{name} on {paper:?}: {notes}");
        }
    }
}

/// The labels of the groups among marks.
fn labels(marks: &[Mark]) -> Vec<String> {
    let label = |mark: &Mark| match mark {
        Mark::Group { role, .. } => Some(role.label().to_owned()),
        _ => None,
    };
    marks.iter().filter_map(label).collect()
}

#[test]
fn every_drawing_that_a_step_asks_for_is_drawn_with_its_words_for_the_blind() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let sheet = pages(&piece, PAPERS[0]);
        let shown: BTreeSet<_> = told(&piece.design, piece.telling.units).iter().filter_map(shown).collect();
        let mut asked: Vec<_> = shown.into_iter().map(|(one, _)| drawing(one).to_owned()).collect();
        assert!(asked.iter().all(|label| !label.is_empty()), "{name}: {asked:?}");
        let drawn = sheet.iter().filter(|page| holds(page, "Making")).flat_map(|page| labels(&page.marks));
        let mut drawn: Vec<_> = drawn.filter(|label| asked.contains(label)).collect();
        drawn.sort_unstable();
        asked.sort_unstable();
        assert_eq!(drawn, asked, "{name}: each drawing once");
    }
}

/// What is seen of a drawing on pages, by its label.
fn drawn(pages: &[Page], label: &str) -> Vec<Found> {
    let all = pages.iter().filter(|page| holds(page, "Making")).flat_map(boxes);
    all.filter(|found| found.within.iter().any(|within| within == label)).collect()
}

/// How broad and how high all of a drawing is.
fn size(drawn: &[Found]) -> (f64, f64) {
    let corners = |found: &Found| {
        let Box { left, top, right, bottom } = found.bounds;
        [Point::new(left, top), Point::new(right, bottom)]
    };
    let Box { left, top, right, bottom } = Box::round(drawn.iter().flat_map(corners));
    (right - left, bottom - top)
}

/// A finished piece is drawn in its box, of which the board with the beads fills the breadth: nothing of it is cut off, and it
/// is as broad or as tall as has room. An earring is narrow, beside its ruler.
#[test]
fn finished_pieces_are_drawn_whole() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let sheet = pages(&piece, PAPERS[0]);
        let steps = told(&piece.design, piece.telling.units);
        let finished = |step: &Told| step.drawing.filter(|drawing| matches!(drawing, Drawing::Inspected(_)));
        for asked in steps.iter().filter_map(finished) {
            let (board, all) = (drawn(&sheet, drawing(Drawing::LaidOut)), drawn(&sheet, drawing(asked)));
            let scale = size(&board).0 / BOARD;
            let (broad, tall) = size(&all);
            let (width, height) = (STEP_SIZE.0 * scale, STEP_SIZE.1 * scale);
            assert!(broad <= width + 1e-6 && tall <= height + 1e-6, "{name}, {asked:?}: {broad} x {tall}");
            assert!(broad > 0.75 * width || tall > 0.9 * height, "{name}, {asked:?}: {broad} x {tall}");
            let cut = all.iter().find(|found| !found.whole);
            assert!(cut.is_none(), "{name}, {asked:?}: {cut:?}");
        }
    }
}
