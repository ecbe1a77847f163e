//! Booklets: pages of half a paper's size set two by two on it, so that the printed stack, folded in the
//! middle, is read in order.

use std::sync::Arc;

use crate::geometry::Point;
use crate::paint::layout::moved;
use crate::paint::mark::Page;
use crate::trade::paper::Paper;

/// Pages on a folded sheet: two on each side.
const ON_A_SHEET: usize = 4;

/// Sets pages of half a paper's size on that paper, which lies across: fronts and backs by turns, to be
/// printed on both sides and turned over the short edge. Empty pages at the end fill the last sheet.
#[must_use]
pub fn booklet(pages: Vec<Page>, paper: Paper) -> Vec<Page> {
    let all = pages.len().next_multiple_of(ON_A_SHEET);
    let mut pages: Vec<_> = pages.into_iter().map(Some).collect();
    pages.resize_with(all, || None);
    let sides = (0..all / 2).map(|side| pair(side, all));
    sides.map(|pair| spread(pair.map(|at| pages[at].take()), pair, paper)).collect()
}

/// The pages left and right on a side of the stack: the first front has the last page and the first.
const fn pair(side: usize, all: usize) -> [usize; 2] {
    if side.is_multiple_of(2) { [all - 1 - side, side] } else { [side, all - 1 - side] }
}

/// Two pages on one, the inner edges on the fold.
fn spread(halves: [Option<Page>; 2], numbers: [usize; 2], paper: Paper) -> Page {
    let (height, width) = paper.size();
    let said = |of: fn(&Page) -> &str, between| halves.iter().flatten().map(of).collect::<Vec<_>>().join(between);
    let [title, description] = [said(|page| &page.title, "; "), said(|page| &page.description, " ")];
    let symbols = halves.iter().flatten().last().map_or_else(Arc::default, |page| Arc::clone(&page.symbols));
    let on_its_half = |(page, number): (Page, usize)| {
        let left = if number == numbers[0] { width / 2.0 - page.width } else { width / 2.0 };
        let corner = Point::new(left, (height - page.height) / 2.0);
        page.marks.into_iter().map(move |mark| moved(mark, corner))
    };
    let pages = halves.into_iter().zip(numbers).filter_map(|(page, number)| Some((page?, number)));
    let marks = pages.flat_map(on_its_half).collect();
    Page { width, height, title, description, symbols, marks }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The pages on each side of a stack that hold so many, from 1; 0 where one is empty.
    fn sides(count: usize) -> Vec<[usize; 2]> {
        let all = count.next_multiple_of(ON_A_SHEET);
        let number = |at: usize| if at < count { at + 1 } else { 0 };
        (0..all / 2).map(|side| pair(side, all).map(number)).collect()
    }

    #[test]
    fn a_folded_stack_is_read_in_order() {
        // A sheet folded once has pages 4 and 1 outside, 2 and 3 inside: fold a strip of paper and number it.
        assert_eq!(sides(4), [[4, 1], [2, 3]]);
        assert_eq!(sides(7), [[0, 1], [2, 7], [6, 3], [4, 5]]);
        for count in 1..40 {
            let mut seen: Vec<_> = sides(count).into_iter().flatten().filter(|page| *page > 0).collect();
            seen.sort_unstable();
            assert!(seen.into_iter().eq(1..=count), "{count}");
        }
    }

    #[test]
    fn pages_turned_over_meet_back_to_back() {
        // Turned over the short edge, left of a front has right of its back behind it: pages that follow
        // one another on one leaf.
        for side in sides(32).chunks(2) {
            assert_eq!([side[0][1] + 1, side[1][1] + 1], [side[1][0], side[0][0]]);
        }
    }
}
