//! The card and the booklet: one page that says what to string, and pages two by two in the order of folding.

use festoon::art::Ink;
use festoon::sheet::{self, Style};
use festoon::steps::english::chart;
use festoon::trade::paper::Paper;

use super::boxes::{self, boxes};
use super::making::{dense, words_of};
use super::{margin, pages, shipped};

#[test]
fn a_card_says_on_one_page_what_to_string() {
    for piece in shipped() {
        for paper in [Paper::A4, Paper::Letter] {
            let style = Style { paper, ink: Ink::Colour, prices: false };
            let card = sheet::card(&piece, &style);
            let name = &piece.design.heading.title;
            let [page] = card.as_slice() else { panic!("{name}: {} pages on {paper:?}", card.len()) };
            let faults = [boxes::outside(page, margin(paper)), boxes::overlapping_texts(page)].concat();
            assert!(faults.is_empty(), "{name}: {faults:?}");
            let said = words_of(page);
            for strand in &piece.design.strands {
                let chart = dense(&chart::whole(&piece.design, strand, piece.telling.units).to_string());
                assert!(said.contains(&chart), "{name}: {chart} is not in {said}");
            }
        }
    }
}

#[test]
fn a_booklet_holds_every_page_once_on_the_half_where_it_is_read() {
    for piece in shipped().iter().take(4) {
        for (paper, half) in [(Paper::A4, Paper::A5), (Paper::Letter, Paper::HalfLetter)] {
            let single = pages(piece, half);
            let sides = sheet::booklet(single.clone(), paper);
            assert_eq!(sides.len(), single.len().next_multiple_of(4) / 2);
            let fold = paper.size().1 / 2.0;
            for (at, page) in single.iter().enumerate() {
                // Odd pages stand at the right.
                let on_right = at % 2 == 0;
                let number = format!("page {} of {}", at + 1, single.len());
                let found = sides.iter().flat_map(boxes).find(|found| found.text() == Some(number.as_str()));
                assert_eq!(found.expect("its footer").bounds.left > fold, on_right, "{number}");
                let whole = words_of(page);
                assert!(sides.iter().any(|side| words_of(side).contains(&whole)), "{number}");
            }
            for side in &sides {
                assert_eq!((side.height, side.width), paper.size());
                let faults = [boxes::outside(side, 9.9), boxes::overlapping_texts(side)].concat();
                assert!(faults.is_empty(), "{faults:?}");
            }
        }
    }
}
