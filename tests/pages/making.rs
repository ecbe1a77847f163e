//! The making pages: every caution and step is there, each step whole on one page.

use std::collections::BTreeMap;

use festoon::paint::mark::{Mark, Page};
use festoon::steps::english::{Told, cautions, drawing, told};

use super::boxes::boxes;
use super::{PAPERS, holds, pages, shipped};

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
                let first = step.drawing.map(|drawing| *drawn.entry(drawing).or_insert(number));
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
        let drawings = told(&piece.design, piece.telling.units).into_iter().filter_map(|step| step.drawing);
        let mut asked: Vec<_> = drawings.map(|one| drawing(one).to_owned()).collect();
        assert!(asked.iter().all(|label| !label.is_empty()), "{name}: {asked:?}");
        let drawn = sheet.iter().filter(|page| holds(page, "Making")).flat_map(|page| labels(&page.marks));
        let mut drawn: Vec<_> = drawn.filter(|label| asked.contains(label)).collect();
        drawn.sort_unstable();
        asked.sort_unstable();
        asked.dedup();
        assert_eq!(drawn, asked, "{name}: each drawing once");
    }
}
