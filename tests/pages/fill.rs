//! How many pages the shipped sheets take, and how full they are.

use festoon::paint::style::FOOTER;
use festoon::trade::paper::Paper;

use super::boxes::boxes;
use super::{margin, pages, shipped};

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

/// The papers of sheets and booklets.
const PRINTED: [Paper; 4] = [Paper::A4, Paper::Letter, Paper::A5, Paper::HalfLetter];

#[test]
fn no_page_is_left_nearly_empty() {
    for (piece, paper) in shipped().iter().flat_map(|piece| PRINTED.map(|paper| (piece, paper))) {
        for page in pages(piece, paper) {
            let contents = boxes(&page).into_iter().filter(|found| !found.within.iter().any(|label| label == "footer"));
            let contents =
                contents.filter(|found| !found.within.iter().any(|label| label.starts_with("a bar of 50 mm")));
            let lowest = contents.map(|found| found.bounds.bottom).fold(0.0, f64::max);
            let (filled, room) = (lowest - margin(paper), page.height - 2.0 * margin(paper) - FOOTER);
            assert!(filled >= room / 3.0, "{}, {}: it fills {filled:.0} mm of {room:.0} mm", page.title, paper.word());
        }
    }
}
