//! The proof: actual size, whole beads, squares to measure on every page, pages that join.

use std::collections::BTreeSet;

use festoon::art::Ink;
use festoon::design::{Bead, Index};
use festoon::geometry::Point;
use festoon::paint::mark::{Mark, Page};
use festoon::sheet::{self, MOST_PAGES, Style};
use festoon::trade::paper::Paper;
use festoon::{Piece, paint::outline};

use super::boxes::{self, Found, Seen};
use super::{PAPERS, margin, read, shipped};

/// The proof of a piece; nothing where it would have too many pages.
fn proof(piece: &Piece, paper: Paper) -> Option<Vec<Page>> {
    let proof = sheet::proof(piece, &Style { paper, ink: Ink::Colour, prices: false });
    if let Err(error) = &proof {
        assert!(error.pages > MOST_PAGES && error.to_string().contains(paper.word()), "{error}: {}", error.help());
    }
    proof.ok()
}

/// Asserts what holds for the proof of every piece on a paper, and tells how many pages it has. Beads
/// up to `largest` mm must show whole on some page.
pub fn assert_sound(piece: &Piece, paper: Paper, largest: f64) -> usize {
    let Some(pages) = proof(piece, paper) else { return 0 };
    for page in &pages {
        let checks =
            [boxes::outside(page, margin(paper)), boxes::overlapping_texts(page), boxes::texts_on_stamps(page)];
        assert!(checks.iter().all(Vec::is_empty), "{paper:?}:\n{}", checks.concat().join("\n"));
        assert_actual_size(page);
        assert_squares(page);
    }
    assert_all_beads(piece, paper, &pages, largest);
    pages.len()
}

fn assert_actual_size(page: &Page) {
    for stamp in stamps(&page.marks) {
        assert!(matches!(stamp, Mark::Stamp { scale: 1.0, .. }), "{}: {stamp:?}", page.title);
    }
}

/// The stamps among marks, with all that others hold.
fn stamps(marks: &[Mark]) -> Vec<&Mark> {
    marks
        .iter()
        .flat_map(|mark| if matches!(mark, Mark::Stamp { .. }) { vec![mark] } else { stamps(mark.inner()) })
        .collect()
}

/// Inch: 25.4 mm by definition.
fn assert_squares(page: &Page) {
    for (name, side) in [("a square of 50 mm", 50.0), ("a square of 2 in", 50.8)] {
        let group = page.marks.iter().find_map(|mark| match mark {
            Mark::Group { role, marks } if role.label() == name => Some(marks),
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

/// Where the lines of a page's joins lie, and with which pages they join it.
#[derive(Default)]
struct Joins {
    left: Option<f64>,
    right: Option<(f64, usize)>,
    upper: Option<f64>,
    lower: Option<(f64, usize)>,
}

/// Room between an upright line and its words.
const ASIDE: f64 = 1.0;

/// Reads the joins off a page as its maker does, by their words and corner marks.
fn joins(found: &[Found], width: f64) -> Joins {
    let mut joins = Joins::default();
    let levels = found.iter().filter(|found| {
        let (wide, high) = (found.bounds.right - found.bounds.left, found.bounds.bottom - found.bounds.top);
        found.seen == Seen::Shape && wide > width * 0.7 && (high - 4.2).abs() < 1e-6
    });
    let levels: Vec<_> = levels.map(|found| found.bounds.top.midpoint(found.bounds.bottom)).collect();
    for text in found {
        let Some(words) = text.text() else { continue };
        let page = |before: &str| words.strip_prefix(before).and_then(|number| number.parse::<usize>().ok());
        if let Some(page) = page("cut here; lay on the left line of page ") {
            joins.right = Some((text.bounds.right + ASIDE, page - 1));
        } else if let Some(page) = page("cut at the lower line; lay it on the upper line of page ") {
            joins.lower = levels.iter().copied().reduce(f64::max).map(|y| (y, page - 1));
        } else if words.ends_with(" ends here") {
            joins.left = Some(text.bounds.left - ASIDE);
        } else if words.ends_with(" ends at the upper line") {
            joins.upper = levels.iter().copied().reduce(f64::min);
        }
    }
    joins
}

/// How far each page lies from the first of its row, once all are laid on one another's lines.
fn laid(joins: &[Joins]) -> Vec<Point> {
    let mut places = vec![Point::ORIGIN; joins.len()];
    for (at, join) in joins.iter().enumerate() {
        if let Some((x, next)) = join.right {
            let line = joins[next].left.expect("the next page has a left line");
            places[next] = places[at] + Point::new(x - line, 0.0);
        }
        if let Some((y, next)) = join.lower {
            let line = joins[next].upper.expect("the page below has an upper line");
            places[next] = places[at] + Point::new(0.0, y - line);
        }
    }
    places
}

/// Lays the pages together: every bead is there whole, once.
fn assert_all_beads(piece: &Piece, paper: Paper, pages: &[Page], largest: f64) {
    let found: Vec<Vec<Found>> = pages.iter().map(boxes::boxes).collect();
    let joins: Vec<_> = found.iter().zip(pages).map(|(found, page)| joins(found, page.width)).collect();
    let places = laid(&joins);
    let hundredths = |value: f64| (value * 100.0).round() as i64;
    let mut seen = BTreeSet::new();
    for (found, place) in found.iter().zip(&places) {
        for bead in found.iter().filter(|found| found.whole) {
            let Some(index) = bead.bead() else { continue };
            let Some(lane) = bead.within.iter().find(|label| label.contains(": finished ")) else { continue };
            let at = (hundredths(bead.bounds.left + place.x), hundredths(bead.bounds.top + place.y));
            seen.insert((lane.clone(), index, at));
        }
    }
    let beads = &piece.design.beads;
    let is_small = |at: &Index<Bead>| beads[*at].across.value().max(beads[*at].along.value()) <= largest;
    for strand in &piece.design.strands {
        let lane = format!("{}: finished", strand.name);
        let drawn = seen.iter().filter(|(label, index, _)| label.starts_with(&lane) && is_small(index));
        let counts = strand.counts(&piece.design);
        let strung: u32 = beads.indices().filter(is_small).map(|at| counts[at.number()]).sum();
        assert_eq!(drawn.count(), strung as usize, "{paper:?} {}", strand.name);
    }
}

#[test]
fn shipped_proofs_are_whole_and_true_on_every_paper() {
    for piece in shipped() {
        for paper in Paper::ALL {
            assert!(assert_sound(&piece, *paper, 60.0) > 0, "{}", piece.design.heading.title);
        }
    }
}

const STOCK: &str = "
beads:
  pea: { name: pea, shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
  disc: { name: disc, shape: coin, size: 40 mm, hole: 1 mm, material: shell, colour: '#e9d9c8' }
  slab: { name: slab, shape: tube, size: 20 x 190 mm, hole: 1 mm, mass: 9 g, material: horn, colour: '#8a6a4b' }
cords:
  wire: { name: steel wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, colour: '#aaaaaa' }
findings:
  crimp: { name: tube crimp, kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }
  short: { name: head pin, kind: head pin, gauge: 21, length: 50 mm }
  hang: { name: long head pin, kind: head pin, gauge: 21, length: 340 mm }
  wire hook: { name: ear wire, kind: ear wire, length: 20 mm }
";

fn made(kind: &str, rest: &str) -> Piece {
    let text = format!("festoon: 1\ntitle: test\nkind: {kind}\n{STOCK}{rest}");
    read(&text).unwrap_or_else(|remarks| panic!("{remarks}"))
}

fn necklace(strands: usize, list: &str) -> Piece {
    let strand = |at: usize| format!("  - {{ name: strand {at}, cord: wire, ends: crimp, {list} }}\n");
    made("necklace", &format!("strands:\n{}", (1..=strands).map(strand).collect::<String>()))
}

#[test]
fn a_rope_and_many_strands_are_tiled() {
    let rope = necklace(1, "length: 120 in, settle: slide, beads: [700 pea]");
    let twelve = necklace(12, "length: 18 in, settle: slide, beads: [100 pea]");
    for paper in Paper::ALL {
        assert!(assert_sound(&rope, *paper, 60.0) > 0, "{paper:?}");
        assert!(assert_sound(&twelve, *paper, 60.0) > 0, "{paper:?}");
    }
}

#[test]
fn a_branch_longer_than_the_page_goes_on_below() {
    let tassel =
        necklace(1, "length: 400 mm, settle: slide, beads: [20 pea, { dangle: [70 pea, disc], on: hang }, 20 pea]");
    let drop = made(
        "earrings",
        "closure: { both ends: [wire hook] }\nstrands:\n  - { name: drop, cord: wire, length: 30 mm, settle: slide, beads: [2 pea, { dangle: [70 pea], on: hang }, 2 pea] }\n",
    );
    for paper in Paper::ALL {
        assert!(assert_sound(&tassel, *paper, 39.0) > 0);
        assert!(assert_sound(&drop, *paper, 39.0) > 0);
    }
    let pages = proof(&tassel, Paper::A4).expect("a few pages");
    let below = pages.iter().filter(|page| {
        boxes::boxes(page).iter().any(|found| found.text().is_some_and(|text| text.ends_with("ends at the upper line")))
    });
    assert_eq!(below.count(), 2, "320 mm on pages of about 180, with overlaps of 60");
}

#[test]
fn one_bead_and_what_reaches_beyond_its_strand_have_a_proof() {
    let one = made("earrings", "strands:\n  - { name: drop, cord: wire, settle: fill, beads: [pea] }\n");
    let wide =
        necklace(1, "settle: fill, beads: [{ dangle: [disc], on: short }, 40 pea, { dangle: [disc], on: short }]");
    for paper in Paper::ALL {
        assert_eq!(assert_sound(&one, *paper, 60.0), 2);
        assert!(assert_sound(&wide, *paper, 60.0) > 0);
    }
}

#[test]
fn what_is_larger_than_a_page_ends_at_its_edge() {
    let piece =
        necklace(1, "length: 1 m, settle: slide, beads: [20 pea, slab, 20 pea, { dangle: [slab], on: hang }, 20 pea]");
    PAPERS.into_iter().for_each(|paper| assert!(assert_sound(&piece, paper, 20.0) > 0));
}

#[test]
fn more_pages_than_anyone_joins_are_refused() {
    let rope = necklace(2, "length: 9 m, settle: slide, beads: [700 pea]");
    let error = sheet::proof(&rope, &Style { paper: Paper::A5, ink: Ink::Colour, prices: false })
        .expect_err("78 pages a strand");
    assert!(error.to_string().contains("pages of a5, more than 60") && error.help().contains("--paper a3"), "{error}");
}
