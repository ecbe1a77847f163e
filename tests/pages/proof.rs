//! The proof: actual size, whole beads, squares to measure on every page, strips that join.

use std::collections::{BTreeMap, BTreeSet};

use festoon::art::Ink;
use festoon::design::{Bead, Index};
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

/// Room between an upright line and its words.
const ASIDE: f64 = 1.0;
/// Words at a strip's cuts stand no more than this above its own.
const ABOVE: f64 = 8.0;

/// The number of a strip, by its words.
fn strip(words: &str) -> Option<usize> {
    words.strip_prefix("Strip ")?.split_once(' ')?.0.parse().ok()
}

/// A page as its maker reads it, by words and corner marks.
struct Read {
    /// The words of the strips that begin there, and how far down those stand.
    begun: Vec<(String, f64)>,
    /// The left and right lines of strips, by number.
    left: Vec<(usize, f64)>,
    right: Vec<(usize, f64)>,
    /// The lines to the page above and to that below.
    upper: Option<f64>,
    lower: Option<f64>,
}

impl Read {
    fn new(found: &[Found], width: f64) -> Self {
        let texts: Vec<_> = found.iter().filter_map(|found| Some((found.text()?, found.bounds))).collect();
        let is_own = |words: &str| strip(words).is_some() || words.contains(": finished");
        let begun: Vec<_> =
            texts.iter().filter(|(words, _)| is_own(words)).map(|(words, at)| ((*words).to_owned(), at.top)).collect();
        let own = |top: f64| begun.iter().find(|(_, own)| (0.0..ABOVE).contains(&(own - top)));
        let (mut left, mut right) = (Vec::new(), Vec::new());
        for (words, at) in &texts {
            let Some(own) = own(at.top).and_then(|(own, _)| strip(own)) else { continue };
            if let Some(next) = words.strip_prefix("cut here; lay on the left line of strip ") {
                assert_eq!(next.parse(), Ok(own + 1));
                right.push((own, at.right + ASIDE));
            } else if let Some(before) = words.strip_prefix("strip ") {
                assert_eq!(before, format!("{} ends here", own - 1));
                left.push((own, at.left - ASIDE));
            }
        }
        let has = |part: &str| texts.iter().any(|(words, _)| words.contains(part));
        let levels = levels(found, width);
        let upper = has("ends at the upper line").then(|| levels.iter().copied().fold(f64::INFINITY, f64::min));
        let lower = has("cut at the lower line").then(|| levels.iter().copied().fold(0.0, f64::max));
        Self { begun, left, right, upper, lower }
    }
}

/// Where level lines lie, by their corner marks.
fn levels(found: &[Found], width: f64) -> Vec<f64> {
    let level = |found: &&Found| {
        let (wide, high) = (found.bounds.right - found.bounds.left, found.bounds.bottom - found.bounds.top);
        found.seen == Seen::Shape && wide > width * 0.7 && (high - 4.2).abs() < 1e-6
    };
    found.iter().filter(level).map(|found| found.bounds.top.midpoint(found.bounds.bottom)).collect()
}

/// How far each strip lies to the right of the first of its lane, once all are laid on one another's lines.
fn across(pages: &[Read]) -> BTreeMap<usize, f64> {
    let left: BTreeMap<_, _> = pages.iter().flat_map(|page| page.left.iter().copied()).collect();
    let mut right: Vec<_> = pages.iter().flat_map(|page| page.right.iter().copied()).collect();
    right.sort_by_key(|(strip, _)| *strip);
    let mut places = BTreeMap::new();
    for (strip, line) in right {
        let place = *places.entry(strip).or_insert(0.0);
        places.insert(strip + 1, place + line - left.get(&(strip + 1)).expect("the next strip has a left line"));
    }
    places
}

/// How far the words of the strip of a label are below the top of a page, once all pages on which it goes on are laid
/// on one another's lines.
fn down(pages: &[Read], page: usize, label: &str) -> f64 {
    let begun = pages[page]
        .begun
        .iter()
        .find(|(words, _)| words == label || (strip(label).is_some() && strip(words) == strip(label)));
    begun.map_or_else(
        || {
            let (above, Some(upper)) = (page.checked_sub(1).expect("it begins on some page"), pages[page].upper) else {
                panic!("page {page} joins none above it: {label}")
            };
            down(pages, above, label) - pages[above].lower.expect("a lower line on the page above") + upper
        },
        |(_, top)| *top,
    )
}

/// Lays the strips together: every bead is there whole, once.
fn assert_all_beads(piece: &Piece, paper: Paper, pages: &[Page], largest: f64) {
    let found: Vec<Vec<Found>> = pages.iter().map(boxes::boxes).collect();
    let read: Vec<_> = found.iter().zip(pages).map(|(found, page)| Read::new(found, page.width)).collect();
    let across = across(&read);
    let hundredths = |value: f64| (value * 100.0).round() as i64;
    let mut seen = BTreeSet::new();
    for (page, found) in found.iter().enumerate() {
        for bead in found.iter().filter(|found| found.whole) {
            let Some(index) = bead.bead() else { continue };
            let Some(label) = bead.within.iter().find(|label| label.contains(": finished ")) else { continue };
            let right = strip(label).and_then(|strip| across.get(&strip)).copied().unwrap_or_default();
            let at = (hundredths(bead.bounds.left + right), hundredths(bead.bounds.top - down(&read, page, label)));
            let lane = label.split_once(" · ").map_or(label.as_str(), |(_, lane)| lane);
            seen.insert((lane.to_owned(), index, at));
        }
    }
    // What both ends go through where they meet lies apart from the strand.
    let met = |bead: Index<Bead>| {
        let (_, through) = piece.design.met();
        through.iter().filter(|bit| bit.what.bead() == Some(bead)).count()
    };
    let apart = |found: &&Found| found.within.iter().any(|label| label.ends_with("where the ends meet"));
    for bead in piece.design.beads.indices() {
        let drawn = found.iter().flatten().filter(apart).filter(|found| found.bead() == Some(bead));
        assert_eq!(drawn.count(), met(bead), "{paper:?}");
    }
    let beads = &piece.design.beads;
    let is_small = |at: &Index<Bead>| beads[*at].across.value().max(beads[*at].along.value()) <= largest;
    for strand in &piece.design.strands {
        let lane = format!("{}: finished", strand.name);
        let drawn = seen.iter().filter(|(label, index, _)| label.starts_with(&lane) && is_small(index));
        let counts = strand.counts(&piece.design);
        let strung = beads.indices().filter(is_small).map(|at| counts[at] as usize - met(at));
        assert_eq!(drawn.count(), strung.sum::<usize>(), "{paper:?} {}", strand.name);
    }
}

#[test]
fn shipped_proofs_are_whole_and_true_on_every_paper() {
    for piece in shipped() {
        for paper in Paper::ALL {
            let pages = assert_sound(&piece, *paper, 60.0);
            let is_one = piece.design.strands.len() == 1 && matches!(paper, Paper::A4 | Paper::Letter);
            assert!(pages > 0 && (!is_one || pages <= 2), "{}: {pages} pages", piece.design.heading.title);
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
fn a_rope_and_many_strands_are_laid_in_strips() {
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
        assert_eq!(assert_sound(&one, *paper, 60.0), 1);
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
    let rope = necklace(6, "length: 9 m, settle: slide, beads: [700 pea]");
    let error = sheet::proof(&rope, &Style { paper: Paper::A5, ink: Ink::Colour, prices: false })
        .expect_err("84 strips a strand");
    assert!(error.to_string().contains("pages of a5, more than 60") && error.help().contains("--paper a3"), "{error}");
}
