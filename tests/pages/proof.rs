//! The proof: actual size, whole beads, squares to measure on every page.

use festoon::art::Ink;
use festoon::sheet::mark::{Mark, Page};
use festoon::sheet::{self, Style};
use festoon::trade::paper::Paper;
use festoon::{Piece, sheet::outline};

use super::boxes::{self, Found};
use super::{PAPERS, margin, shipped};

fn proof(piece: &Piece, paper: Paper) -> Vec<Page> {
    sheet::proof(piece, &Style { paper, ink: Ink::Colour, prices: false })
}

/// Every proof of the shipped patterns.
fn proofs() -> Vec<(Piece, Paper, Vec<Page>)> {
    let all = shipped().into_iter().flat_map(|piece| PAPERS.map(|paper| (piece.clone(), paper)));
    all.map(|(piece, paper)| (piece.clone(), paper, proof(&piece, paper))).collect()
}

#[test]
fn every_mark_lies_inside_the_margins_and_no_text_on_another() {
    for (_, paper, pages) in proofs() {
        let faults = pages.iter().flat_map(|page| {
            let outside = boxes::outside(page, margin(paper));
            outside.into_iter().chain(boxes::overlapping_texts(page)).chain(boxes::texts_on_stamps(page))
        });
        let faults: Vec<_> = faults.collect();
        assert!(faults.is_empty(), "{paper:?}: {} faults:\n{}", faults.len(), faults.join("\n"));
    }
}

/// The stamps among marks, with all that groups hold.
fn stamps(marks: &[Mark]) -> Vec<&Mark> {
    let (mut found, mut to_search) = (Vec::new(), vec![marks]);
    while let Some(marks) = to_search.pop() {
        found.extend(marks.iter().filter(|mark| matches!(mark, Mark::Stamp { .. })));
        to_search.extend(marks.iter().filter_map(|mark| match mark {
            Mark::Group { marks, .. } => Some(marks.as_slice()),
            _ => None,
        }));
    }
    found
}

#[test]
fn everything_is_drawn_at_actual_size() {
    for (_, _, pages) in proofs() {
        for stamp in pages.iter().flat_map(|page| stamps(&page.marks)) {
            assert!(matches!(stamp, Mark::Stamp { scale: 1.0, .. }), "{stamp:?}");
        }
    }
}

/// Inch: 25.4 mm by definition.
#[test]
fn every_page_has_squares_of_50_mm_and_2_in() {
    for (_, _, pages) in proofs() {
        for page in &pages {
            for (name, side) in [("a square of 50 mm", 50.0), ("a square of 2 in", 50.8)] {
                let group = page.marks.iter().find_map(|mark| match mark {
                    Mark::Group { label, marks } if label == name => Some(marks),
                    _ => None,
                });
                let Some(Mark::Shape { outline, .. }) = group.and_then(|marks| marks.first()) else {
                    panic!("{}: no {name}", page.title)
                };
                let corners = boxes::Box::round(outline::flattened(outline));
                assert!((corners.right - corners.left - side).abs() < 1e-9, "{name}: {corners:?}");
                assert!((corners.bottom - corners.top - side).abs() < 1e-9, "{name}: {corners:?}");
            }
        }
    }
}

#[test]
fn pages_together_draw_every_bead() {
    for (piece, paper, pages) in proofs() {
        let found: Vec<Found> = pages.iter().flat_map(boxes::boxes).collect();
        for strand in &piece.design.strands {
            let lane = format!("{}: finished", strand.name);
            let is_bead = |found: &&Found| found.symbol().is_some_and(|symbol| symbol.starts_with("bead-"));
            let is_in = |found: &&Found| found.within.iter().any(|label| label.starts_with(&lane));
            let drawn = found.iter().filter(is_bead).filter(is_in).count();
            let counted: u32 = strand.counts(&piece.design).iter().sum();
            assert!(drawn >= counted as usize, "{paper:?} {}: {drawn} of {counted}", strand.name);
        }
    }
}
