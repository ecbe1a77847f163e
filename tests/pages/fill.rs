//! How many pages the shipped sheets take, and how full they are.

use festoon::paint::style::{FOOTER, MARGIN};
use festoon::trade::paper::Paper;

use super::boxes::boxes;
use super::{pages, shipped};

/// Patterns of every kind, and how many pages they take together at the most: both are our own
/// choice.
const COUNTED: [&str; 17] = [
    "Dune",
    "Eddy",
    "Fathom",
    "Groyne",
    "Halyard",
    "Moonwrack",
    "Pierhead",
    "Plumb Line",
    "Rockpool",
    "Sandhopper",
    "Saltmarsh",
    "Shingle",
    "Skerries",
    "Slack Tide",
    "Tideline",
    "Whelk",
    "Bollard",
];
const MOST: usize = 57;

#[test]
fn sheets_take_few_pages() {
    let pieces = shipped();
    let counted: Vec<_> = pieces.iter().filter(|piece| COUNTED.contains(&&*piece.design.heading.title)).collect();
    assert_eq!(counted.len(), COUNTED.len());
    let taken: Vec<_> =
        counted.iter().map(|piece| (&piece.design.heading.title, pages(piece, Paper::A4).len())).collect();
    assert!(taken.iter().map(|(_, count)| count).sum::<usize>() <= MOST, "{taken:?}");
}

/// The papers of sheets and booklets, each with its margin.
const MARGINS: [(Paper, f64); 4] =
    [(Paper::A4, MARGIN), (Paper::Letter, MARGIN), (Paper::A5, SMALL_MARGIN), (Paper::HalfLetter, SMALL_MARGIN)];
const SMALL_MARGIN: f64 = 10.0;

#[test]
fn no_page_is_left_nearly_empty() {
    for (piece, (paper, margin)) in shipped().iter().flat_map(|piece| MARGINS.map(|paper| (piece, paper))) {
        for page in pages(piece, paper) {
            let contents = boxes(&page).into_iter().filter(|found| !found.within.iter().any(|label| label == "footer"));
            let contents =
                contents.filter(|found| !found.within.iter().any(|label| label.starts_with("a bar of 50 mm")));
            let lowest = contents.map(|found| found.bounds.bottom).fold(0.0, f64::max);
            let (filled, room) = (lowest - margin, page.height - 2.0 * margin - FOOTER);
            assert!(filled >= room / 3.0, "{}, {}: it fills {filled:.0} mm of {room:.0} mm", page.title, paper.word());
        }
    }
}
