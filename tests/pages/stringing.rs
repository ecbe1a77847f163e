//! The stringing pages.

use festoon::Piece;
use festoon::design::nth;
use festoon::paint::mark::Page;
use festoon::trade::paper::Paper;

use super::boxes::{self, Found, boxes};
use super::{PAPERS, holds, margin, pages, read, shipped};

/// The stringing pages among a sheet's pages.
pub fn stringing(pages: &[Page]) -> Vec<&Page> {
    pages.iter().filter(|page| holds(page, "Stringing")).collect()
}

/// Whether a mark stands in a strand's row, and not in the key of beads.
fn in_row(found: &Found) -> bool {
    found.within.iter().any(|label| label.starts_with("strand "))
}

/// How many of each bead the rows of all strands draw.
fn drawn(pages: &[&Page], beads: usize) -> Vec<u32> {
    let mut counts = vec![0; beads];
    for found in pages.iter().flat_map(|page| boxes(page)).filter(in_row) {
        found.bead().into_iter().for_each(|index| counts[index.number()] += 1);
    }
    counts
}

/// How many beads the pages say that they leave out: of repeats, and of runs.
fn told(pages: &[&Page]) -> u32 {
    let texts = pages.iter().flat_map(|page| boxes(page)).filter_map(|found| found.text().map(str::to_owned));
    let texts: Vec<_> = texts.collect();
    let of_run = |text: &String| {
        let (count, rest) = text.split_once(" more")?;
        (rest.is_empty() || rest.starts_with(", ")).then(|| count.parse::<u32>().ok())?
    };
    let of_runs: u32 = texts.iter().filter_map(of_run).sum();
    let all = texts.join(" ");
    let elisions = all.split(" beads, ").zip(all.split(" beads, ").skip(1));
    let number = |before: &str| before.rsplit([' ', '\u{a0}']).next().and_then(|word| word.parse::<u32>().ok());
    let of_repeats = elisions.filter(|(before, _)| before.contains("… the same"));
    of_repeats.filter_map(|(before, _)| number(before)).sum::<u32>() + of_runs
}

/// Asserts what holds for the stringing pages of every piece on a paper.
pub fn assert_sound(piece: &Piece, paper: Paper) {
    let pages = pages(piece, paper);
    let pages = stringing(&pages);
    for page in &pages {
        let checks =
            [boxes::outside(page, margin(paper)), boxes::overlapping_texts(page), boxes::texts_on_stamps(page)];
        assert!(checks.iter().all(Vec::is_empty), "{}", checks.concat().join("\n"));
    }
    let drawn = drawn(&pages, piece.design.beads.len());
    // What is strung: beads that the knots at the ends are tied round are no part of the rows, and of strands that are
    // alike there is one.
    let mut strung = vec![0; piece.design.beads.len()];
    for alike in piece.design.alike() {
        let strand = &piece.design.strands[alike[0]];
        strung.iter_mut().zip(strand.counts(&piece.design)).for_each(|(all, count)| *all += count);
    }
    let missing: u32 = strung.iter().zip(&drawn).map(|(strung, drawn)| strung - drawn).sum();
    assert_eq!(missing, told(&pages), "strung {strung:?}, drawn {drawn:?}");
}

#[test]
fn shipped_rows_are_whole_and_clear() {
    for piece in shipped() {
        PAPERS.into_iter().for_each(|paper| assert_sound(&piece, paper));
    }
}

#[test]
fn the_key_draws_every_bead_beside_its_letter() {
    for piece in shipped() {
        for paper in PAPERS {
            let pages = pages(&piece, paper);
            let found: Vec<_> = stringing(&pages).into_iter().flat_map(boxes).filter(|found| !in_row(found)).collect();
            for (index, bead) in piece.design.beads.entries() {
                let drawn = found.iter().find(|found| found.bead() == Some(index));
                let drawn = drawn.unwrap_or_else(|| panic!("{} is not in the key", bead.name)).bounds;
                let beside = |found: &&Found| found.bounds.top < drawn.bottom && found.bounds.bottom > drawn.top;
                let letter = found.iter().filter(beside).find(|found| found.text() == Some(bead.letter.as_str()));
                assert!(letter.is_some_and(|letter| letter.bounds.right < drawn.left), "{}", bead.name);
            }
        }
    }
}

fn pattern(beads: &str, strands: &str) -> Piece {
    let text = format!(
        "festoon: 1
title: test
kind: necklace
beads:
  sand: {{ name: sand seed, shape: seed, size: 11/0, material: glass, colour: '#d9b98a' }}
  sea: {{ name: sea round, shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: '#3f7f8f' }}
{beads}cords:
  thread: {{ name: thread, kind: thread, diameter: 0.2 mm, mass: 0.05 g/m, colour: '#eeeeee' }}
findings:
  pin: {{ name: head pin, kind: head pin, gauge: 21, length: 50 mm }}
strands:
{strands}"
    );
    read(&text).unwrap_or_else(|remarks| panic!("{remarks}"))
}

fn filled(beads: &str, list: &str) -> Piece {
    pattern(beads, &format!("  - {{ name: row, cord: thread, settle: fill, beads: [{list}] }}\n"))
}

#[test]
fn a_rope_of_twenty_thousand_beads_tells_what_it_leaves_out() {
    let piece = filled("", "{ repeat: 2499, of: [5 sand, 1 sea, 2 sand] }, 5 sea");
    assert_eq!(piece.design.counts().iter().sum::<u32>(), 19_997);
    let all = pages(&piece, Paper::A4);
    let pages = stringing(&all);
    assert!(pages.len() <= 2, "{} pages", pages.len());
    assert!(told(&pages) > 15_000);
    assert_sound(&piece, Paper::A4);
}

#[test]
fn mirrored_repeats_are_left_out_on_both_sides() {
    let piece = filled("", "{ mirror: [3000 sand, { repeat: 900, of: [1 sea, 2 sand] }], about: [sea] }");
    let all = pages(&piece, Paper::A5);
    assert!(stringing(&all).len() < 12);
    assert_sound(&piece, Paper::A5);
}

#[test]
fn without_repeats_nothing_is_left_out() {
    let list: Vec<_> = (1..120).map(|at| format!("{} sand, {} sea", at % 7 + 1, at * at % 11 + 1)).collect();
    let piece = filled("", &list.join(", "));
    let all = pages(&piece, Paper::A5);
    assert_eq!(told(&stringing(&all)), 0);
    assert_sound(&piece, Paper::A5);
}

#[test]
fn a_key_of_many_beads_runs_on_to_the_next_page() {
    let bead = |at: u32| {
        format!(
            "  b{at}: {{ name: bead number {at} of many in a long list, shape: round, size: 13 mm, hole: 1 mm, material: glass, colour: '#3f7f8f' }}\n"
        )
    };
    let list: Vec<_> = (0..80).map(|at| format!("b{at}")).collect();
    let piece = filled(&(0..80).map(bead).collect::<String>(), &list.join(", "));
    assert_sound(&piece, Paper::A5);
}

#[test]
fn what_no_page_has_room_for_is_drawn_smaller() {
    let boulder =
        "  boulder: { name: boulder, shape: round, size: 190 mm, hole: 1 mm, mass: 1 g, colour: '#777777' }\n";
    let piece = filled(
        boulder,
        "40 sea, boulder, 7 sea, { dangle: [60 sea], on: pin }, { dangle: [boulder], on: pin }, 60 sand, 60 sea",
    );
    PAPERS.into_iter().for_each(|paper| assert_sound(&piece, paper));
}

#[test]
fn beads_are_drawn_at_actual_size_beside_one_another() {
    let piece = filled("", "{ repeat: 4, of: [14 sea, sand] }");
    let all = pages(&piece, Paper::A4);
    let pages = stringing(&all);
    let beads: Vec<_> =
        boxes(pages[0]).into_iter().filter(|found| in_row(found) && found.bead() == Some(nth(0))).collect();
    assert_eq!(beads.len(), 56);
    // Drilled-sphere geometry: the hole takes 2 (3 − √(3² − 0.5²)) mm of a 6 mm bead.
    let pitch = 2.0 * (9.0_f64 - 0.25).sqrt();
    let pairs = beads.chunks(14).flat_map(|run| run.iter().zip(&run[1..]));
    for (bead, next) in pairs.filter(|(bead, next)| bead.bounds.top == next.bounds.top) {
        assert!((bead.bounds.right - bead.bounds.left - 6.0).abs() < 0.1, "{bead:?}");
        assert!((next.bounds.left - bead.bounds.left - pitch).abs() < 1e-9);
    }
}

/// The texts of the stringing pages in drawing order.
fn texts(piece: &Piece) -> Vec<Found> {
    let all = pages(piece, Paper::A4);
    stringing(&all).into_iter().flat_map(boxes).filter(|found| found.text().is_some()).collect()
}

fn said(piece: &Piece) -> String {
    texts(piece).iter().filter_map(Found::text).collect::<Vec<_>>().join(" ")
}

#[test]
fn bare_cord_is_told_in_all_and_at_each_end() {
    let strand = "  - { name: row, cord: thread, length: 300 mm, settle: slide, beads: [20 sea] }\n";
    let piece = pattern("", strand);
    let strand = &piece.design.strands[nth(0)];
    let units = piece.telling.units;
    let half = units.ruler(strand.bare() * 0.5);
    let told = said(&piece);
    let all = units.fine(strand.bare());
    assert!(told.contains(&format!("Bare thread: in all {all}, about {half} at each end")), "{told}");
    assert!(told.contains("nothing holds them there, as it should be"), "{told}");
    assert_eq!(told.matches(&format!("about {half}")).count(), 3, "two brackets and the note: {told}");
}

#[test]
fn fixed_beads_say_nothing_of_sliding() {
    let strand = "  - { name: row, cord: thread, length: 300 mm, settle: fixed, beads: [{ space: 50 mm }, 20 sea] }\n";
    let told = said(&pattern("", strand));
    assert!(told.contains("at the first end") && !told.contains("slide"), "{told}");
    assert!(told.contains("(50 mm) at the first end"), "{told}");
}

#[test]
fn bare_cord_at_the_end_has_no_line_of_its_own() {
    for beads in 20..70 {
        let strand =
            format!("  - {{ name: row, cord: thread, length: 700 mm, settle: slide, beads: [{beads} sea, 1 sand] }}\n");
        let piece = pattern("", &strand);
        let all = pages(&piece, Paper::A4);
        let rows = stringing(&all).into_iter().flat_map(boxes).filter(in_row).collect::<Vec<_>>();
        let lines: std::collections::BTreeSet<_> = rows.iter().flat_map(|found| found.within.clone()).collect();
        assert!(
            lines.iter().filter(|line| line.starts_with("strand")).all(|line| line.contains(", beads ")),
            "{beads}: {lines:?}"
        );
    }
}

#[test]
fn labels_of_neighbouring_runs_do_not_read_as_one_word() {
    let piece = filled("", "{ repeat: 8, of: [1 sea, 1 sand, 1 sea, 4 sand] }");
    let is_label = |found: &Found| {
        let text = found.text().unwrap_or_default();
        found.within.is_empty() && ["A", "B", "1A", "1B", "4A", "4B"].contains(&text)
    };
    let labels: Vec<_> = texts(&piece).into_iter().filter(is_label).collect();
    assert!(labels.len() > 20, "{}", labels.len());
    for (at, one) in labels.iter().enumerate() {
        for other in &labels[at + 1..] {
            let same_row = (one.bounds.bottom - other.bounds.bottom).abs() < 0.1;
            let apart = (other.bounds.left - one.bounds.right).max(one.bounds.left - other.bounds.right);
            assert!(!same_row || apart > 0.9, "{one:?} {other:?}");
        }
    }
}

#[test]
fn a_hanger_hangs_clear_of_the_beads_beside_it() {
    let piece = filled(
        "",
        "{ repeat: 8, of: [11 sand, sea] }, { dangle: [sand, sea], on: pin }, { repeat: 8, of: [11 sand, sea] }",
    );
    let all = pages(&piece, Paper::A4);
    let row: Vec<_> = stringing(&all).into_iter().flat_map(boxes).filter(in_row).collect();
    let pin = row.iter().find(|found| found.is_stamp_of("pin")).expect("the pin is drawn");
    let seed = 2.0 * piece.design.beads[nth(0)].across.value();
    let is_on_cord = |found: &&Found| found.bead() == Some(nth(0)) && found.bounds.top < pin.bounds.top - seed / 4.0;
    let on_cord: Vec<_> = row.iter().filter(|found| found.within == pin.within).filter(is_on_cord).collect();
    assert!(on_cord.len() > 60, "{}", on_cord.len());
    assert!(on_cord.iter().all(|bead| !bead.bounds.overlaps(&pin.bounds, 0.0)), "{pin:?}");
    let told = said(&piece);
    assert!(told.contains("192 beads on the thread, 2 on the dangle: 177A and 17B."), "{told}");
    assert!(told.contains(" A B "), "letters beside the dangle: {told}");
}

#[test]
fn the_key_tells_what_beads_take_that_is_not_their_size() {
    let told = said(&filled("", "100 sand, 100 sea"));
    // Drilled-sphere geometry: 2 (3 − √(3² − 0.5²)) = 0.08 mm of a 6 mm bead lies in the holes.
    assert!(told.contains("(6 mm), takes 0.233 in (5.92 mm)"), "{told}");
    assert!(told.contains("mm) wide, takes "), "{told}");
    assert!(told.contains("each may be off, A by 0.004 in (0.1 mm), B by 0.008 in (0.2 mm) (assumed)"), "{told}");
}

/// The ends of a strand that is tied in a ring are drawn longer than they are: its first bead begins at 0.
#[test]
fn a_ruler_counts_from_the_first_bead_where_ends_are_tied() {
    let rope = shipped().into_iter().find(|piece| piece.design.heading.title == "Sounding Line").expect("a rope");
    let pages = pages(&rope, Paper::A4);
    let found: Vec<_> = stringing(&pages).into_iter().flat_map(boxes).collect();
    let zero =
        found.iter().find(|found| found.text() == Some("0") && found.within.iter().any(|label| label == "ruler"));
    let zero = zero.map(|found| found.bounds.left.midpoint(found.bounds.right)).expect("a ruler from 0");
    let first = found.iter().filter(|found| in_row(found) && found.bead().is_some());
    let first = first.map(|found| found.bounds.left).fold(f64::INFINITY, f64::min);
    assert!((first - zero).abs() < 0.3, "{first} {zero}");
}

#[test]
fn ends_that_meet_are_drawn_to_go_together_through_what_they_meet_in() {
    let shipped = shipped();
    let piece = shipped.iter().find(|piece| piece.design.heading.title == "Sounding Line").expect("a shipped pattern");
    let all = pages(piece, Paper::A4);
    let found: Vec<_> = stringing(&all).into_iter().flat_map(boxes).collect();
    let here = |found: &&Found| found.within.iter().any(|label| label.ends_with("where the ends meet"));
    let met: Vec<_> = found.iter().filter(here).collect();
    let [guru, tassel] = [0, 1].map(|at| met.iter().filter(|found| found.stamp().is_some()).nth(at).expect("a stamp"));
    assert_eq!(guru.bead().map(|at| piece.design.beads[at].letter.as_str()), Some("B"));
    assert!(guru.bounds.right <= tassel.bounds.left + 0.5);
    let end = |words: &str| found.iter().find(|found| found.text() == Some(words)).expect("an end").bounds;
    let [first, last] = [end("first end"), end("last end")];
    assert!(first.bottom < last.top && first.right < guru.bounds.left && last.right < guru.bounds.left);
    // The guru bead stands between the two ends, and on no strand's line.
    let middle = guru.bounds.top.midpoint(guru.bounds.bottom);
    assert!((middle - first.top.midpoint(last.bottom)).abs() < 0.5);
    let on_line = found.iter().filter(|found| in_row(found) && !here(found));
    assert!(on_line.clone().all(|found| found.bounds.bottom < guru.bounds.top));
    // What is tied to each other has no knot of its own: one between each bead drawn and the next.
    let [beads, knots] = ["bead", "knot"].map(|sort| on_line.clone().filter(|found| found.is_stamp_of(sort)).count());
    assert!(beads > 10 && knots == beads - 1, "{beads} beads, {knots} knots");
}

/// Where beads are off, which of them there may be more or fewer of, and at which end: so that a pattern goes on and both sides
/// stay alike.
#[test]
fn rows_of_other_beads_change_where_their_pattern_allows() {
    let remedies = [
        ("Ebb", "Add or leave out whole repeats of 1A 1B before the last 1A until it comes nearest."),
        ("Hawser", "Add or leave out B at the last end until it comes nearest."),
        ("Lockgate", "Add or leave out whole repeats of 2C 1B before the last 2C, alike in every strand, until"),
        (
            "Pierhead",
            "Add or leave out A at both ends, as many at the one as at the other, alike in every strand, until",
        ),
        ("Fathom", "Add or leave out A at both ends, as many at the one as at the other, until it comes nearest."),
        ("Rockpool", "Add or leave out beads, in the order of the repeat, at the last end until it comes nearest."),
        ("Windlass", "Add or leave out beads, in the order of the repeat, at the last end until it comes nearest."),
        ("Wrackline", "Add or leave out beads at the last end until it comes nearest."),
        ("Spindrift", "looser; then add or leave out A at the last end until it comes nearest."),
        ("Bollard", "Keep the counts and the strand's length"),
    ];
    let pieces = shipped();
    for (title, remedy) in remedies {
        let piece = pieces.iter().find(|piece| piece.design.heading.title == title).expect("a shipped pattern");
        let all = pages(piece, Paper::A4);
        let words: String = stringing(&all).into_iter().map(super::making::words_of).collect();
        assert!(words.contains(&super::making::dense(remedy)), "{title}: {remedy} is not in {words}");
    }
}
