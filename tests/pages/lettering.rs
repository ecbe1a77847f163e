//! What is set in type: nothing too small to read, fractions in small figures, columns of figures in
//! line, no word alone on a paragraph's last line, and a bar to measure where anything has its size.

use festoon::art::Ink;
use festoon::export::svg;
use festoon::gallery::{self, Exhibit};
use festoon::paint::mark::{Mark, Page, Role, Text};
use festoon::paint::outline;
use festoon::picture::Proportion;
use festoon::sheet::{self, Style};
use festoon::trade::paper::Paper;
use festoon::{Piece, paint::fraction};

use super::boxes::{Box, Found, boxes};
use super::{PAPERS, pages, shipped};

/// One point in mm: 1/72 in, the DTP point.
const POINT: f64 = 25.4 / 72.0;

/// All pages of a piece on a paper.
fn all(piece: &Piece, paper: Paper) -> Vec<Page> {
    let proof = sheet::proof(piece, &Style { paper, ink: Ink::Colour, prices: false });
    pages(piece, paper).into_iter().chain(proof.into_iter().flatten()).collect()
}

fn texts(marks: &[Mark]) -> Vec<&Text> {
    marks.iter().flat_map(|mark| if let Mark::Text(text) = mark { vec![text] } else { texts(mark.inner()) }).collect()
}

/// Whether beads or findings are stamped at actual size, or words say that something is.
fn has_actual_size(marks: &[Mark]) -> bool {
    marks.iter().any(|mark| match mark {
        Mark::Stamp { scale, .. } => *scale == 1.0,
        Mark::Text(text) => text.text.contains("actual size (1 : 1)"),
        held => has_actual_size(held.inner()),
    })
}

/// 7 pt: the least that the design of the sheet allows.
#[test]
fn no_text_of_any_page_is_smaller_than_seven_points() {
    for piece in shipped() {
        for page in PAPERS.iter().flat_map(|paper| all(&piece, *paper)) {
            assert!(page.symbols.iter().all(|symbol| texts(&symbol.marks).is_empty()), "{}", page.title);
            for text in texts(&page.marks) {
                assert!(text.size >= 7.0 * POINT, "{}: {} pt: {}", page.title, text.size / POINT, text.text);
            }
        }
    }
}

#[test]
fn a_gallerys_contact_sheet_is_no_smaller() {
    let piece = shipped().remove(0);
    let entry = Exhibit::new("", std::slice::from_ref(&piece), Proportion::Square, false).expect("an entry");
    let page = gallery::contact("Patterns", &[(piece, &entry)], 1, 1, Paper::A4);
    assert!(texts(&page.marks).iter().all(|text| text.size >= 7.0 * POINT));
}

/// Fractions are figures about a fraction slash, which the shaper sets small, or letters of their own;
/// never figures about a plain slash. Their 1s are tucked in.
#[test]
fn fractions_are_set_as_fractions() {
    let mut slashed = 0;
    for page in shipped().iter().flat_map(|piece| pages(piece, Paper::A4)) {
        let tucked = texts(&page.marks).iter().filter(|text| text.text.contains(fraction::SLASH)).count();
        assert_eq!(svg(&page).matches(" dx=\"").count(), tucked, "{}", page.title);
        let inches = |text: &&&Text| text.text.ends_with(" in") && text.text.contains('/');
        assert_eq!(texts(&page.marks).iter().find(inches), None);
        slashed += tucked;
    }
    assert!(slashed > 50, "{slashed}");
}

#[test]
fn every_page_with_something_at_actual_size_has_lengths_to_measure() {
    for piece in shipped() {
        for page in PAPERS.iter().flat_map(|paper| all(&piece, *paper)) {
            let squares = page.title.ends_with("Proof");
            let bars: Vec<_> = page.marks.iter().filter_map(bar).collect();
            // What is drawn beside steps is to no scale, though it may happen to be at actual size.
            let steps_alone = page.title.contains("Making") && !page.title.contains("Stringing");
            let wanted = !squares && !steps_alone && has_actual_size(&page.marks);
            assert_eq!(bars.len(), usize::from(wanted), "{}", page.title);
            for [mm, inches] in bars {
                // 25.4 mm an inch by definition (international yard and pound agreement, 1959).
                assert!((mm - 50.0).abs() < 1e-9 && (inches - 50.8).abs() < 1e-9, "{mm} {inches}");
            }
        }
    }
}

/// Lengths of the bar's edges.
fn bar(mark: &Mark) -> Option<[f64; 2]> {
    let Mark::Group { role: Role::Figure(label), marks } = mark else { return None };
    let long = |mark: &Mark| match mark {
        Mark::Shape { outline, .. } => {
            let round = Box::round(outline::flattened(outline));
            Some(round.right - round.left)
        }
        _ => None,
    };
    let edges: Vec<_> = marks.iter().filter_map(long).collect();
    label.contains("to measure").then(|| edges.try_into().expect("two edges"))
}

/// Least room in mm between the bar's words and what stands above them.
const CLEAR: f64 = 0.5;

#[test]
fn the_bars_words_keep_clear_of_the_contents() {
    for piece in shipped() {
        for page in PAPERS.iter().flat_map(|paper| pages(&piece, *paper)) {
            let all = boxes(&page);
            let is_bars = |found: &&Found| found.within.iter().any(|label| label.contains("to measure"));
            let Some(words) = all.iter().filter(is_bars).find(|found| found.text().is_some()) else { continue };
            let others =
                all.iter().filter(|found| !is_bars(found) && !found.within.iter().any(|label| label == "footer"));
            let near: Vec<_> = others.filter(|other| other.bounds.overlaps(&words.bounds, -CLEAR)).collect();
            assert!(near.is_empty(), "{}: {near:?}", page.title);
        }
    }
}
