//! The making pages: every caution and step is there, each step whole on one page.

use festoon::sheet::mark::{Mark, Page};
use festoon::steps::{Step, cautions, steps};

use super::boxes::boxes;
use super::{PAPERS, pages, shipped};

/// A text without its white space, so that it does not matter where lines break.
fn dense(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// The words of every making page, dense.
fn making(pages: &[Page]) -> Vec<String> {
    let pages = pages.iter().filter(|page| page.title.ends_with(": Making"));
    let words = |page: &Page| boxes(page).iter().filter_map(|found| found.text()).map(dense).collect::<String>();
    pages.map(words).collect()
}

fn words(number: usize, step: &Step) -> String {
    let check = step.check.as_deref().unwrap_or_default();
    dense(&format!("{number}{}{}{check}", step.title, step.text))
}

#[test]
fn every_step_and_caution_is_whole_on_one_page() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        for paper in PAPERS {
            let pages = making(&pages(&piece, paper));
            for (at, step) in steps(&piece.design).iter().enumerate() {
                let whole = words(at + 1, step);
                assert!(pages.iter().any(|page| page.contains(&whole)), "{name} on {paper:?}: {whole}");
            }
            for caution in cautions(&piece.design) {
                let whole = dense(&format!("{}{}", caution.title, caution.text));
                assert!(pages[0].contains(&whole), "{name} on {paper:?}: {whole}");
            }
            let notes = piece.design.heading.notes.as_deref().map(dense).unwrap_or_default();
            assert!(pages.iter().any(|page| page.contains(&notes)), "{name} on {paper:?}: {notes}");
        }
    }
}

#[test]
fn every_drawing_that_a_step_asks_for_is_drawn_with_its_words_for_the_blind() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let sheet = pages(&piece, PAPERS[0]);
        let asked = steps(&piece.design).iter().filter(|step| step.drawing.is_some()).count();
        let marks = sheet.iter().filter(|page| page.title.ends_with(": Making")).flat_map(|page| &page.marks);
        let label = |mark: &Mark| match mark {
            Mark::Group { label, .. } if label != "footer" => Some(label.clone()),
            _ => None,
        };
        let drawings: Vec<_> = marks.filter_map(label).collect();
        assert_eq!(drawings.len(), asked, "{name}: {drawings:?}");
        assert!(drawings.iter().all(|label| !label.is_empty()), "{name}");
    }
}
