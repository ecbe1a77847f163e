//! What stays in its place is named and given from one datum: the outside of the first end. Chart, steps, the
//! list of positions, the rulers of sheet and proof and the table of sizes print the stations that the pattern
//! writes.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::Piece;
use festoon::design::{Choice, nth};
use festoon::paint::mark::Page;
use festoon::sheet::{self, Style};
use festoon::source::Source;
use festoon::steps::english::{self, chart};
use festoon::steps::posts::{Keeps, Posts};
use proptest::prelude::*;

use super::boxes::{Found, boxes};

/// A strand of so many mm, crimped, with a list of beads, and a size that is 100 mm longer.
fn piece(length: u32, settle: &str, beads: &str) -> Piece {
    let text = format!(
        "festoon: 1
title: Try
kind: necklace
units: mm
beads:
  reed: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 0.27 g, colour: '#5d7f5b' }}
cords:
  line: {{ kind: thread, diameter: 0.5 mm, strength: 60 N, mass: 0.6 g/m }}
findings:
  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}
strands:
  - {{ name: only, cord: line, length: {length} mm, ends: crimp, beads: [{beads}], settle: {settle} }}
sizes: [{{ name: long, change: 100 mm }}]
"
    );
    let (piece, remarks) = festoon::piece(&Source::new("posts.yaml", text), &Choice::default(), None);
    piece.unwrap_or_else(|| panic!("{remarks:?}"))
}

/// A bead before each of the stops, on a strand of 500 mm.
fn stopped(stops: &[u32]) -> Piece {
    let stops: Vec<_> = stops.iter().map(|at| format!("reed, {{ stop: crimp, at: {at} mm }}")).collect();
    piece(500, "slide", &stops.join(", "))
}

/// Where the ruler of each line of pages says that a name stands: what the figure under or over it says, in cm, and
/// how far beside that figure the name is.
fn ruled(pages: &[Page], names: &[String]) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    for page in pages {
        let all = boxes(page);
        let figures: Vec<_> = all.iter().filter(|one| one.within.iter().any(|label| label == "ruler")).collect();
        let figures: Vec<_> =
            figures.iter().filter_map(|one| Some((one.text()?.parse::<f64>().ok()?, middle(one)))).collect();
        let named = all.iter().filter(|one| one.text().is_some_and(|text| names.iter().any(|name| name == text)));
        for one in named.filter(|one| one.within.is_empty()) {
            let (x, y) = middle(one);
            let line = figures.iter().map(|(_, at)| (at.1 - y).abs()).fold(f64::INFINITY, f64::min);
            let near = figures.iter().filter(|(_, at)| ((at.1 - y).abs() - line).abs() < 0.5);
            let near = near.min_by(|a, b| (a.1.0 - x).abs().total_cmp(&(b.1.0 - x).abs()));
            let Some((figure, at)) = near else { continue };
            found.push((one.text().unwrap().to_owned(), figure * 10.0 + x - at.0));
        }
    }
    found
}

fn middle(found: &Found) -> (f64, f64) {
    let bounds = found.bounds;
    (bounds.left.midpoint(bounds.right), bounds.top.midpoint(bounds.bottom))
}

/// Whether a page has a row with a post's name and its station beside it.
fn tabled(pages: &[Page], name: &str, station: &str) -> bool {
    pages.iter().any(|page| {
        let all = boxes(page);
        let row = all.iter().find(|one| one.text().is_some_and(|text| text.starts_with(&format!("only, {name}, "))));
        row.is_some_and(|row| {
            all.iter().any(|one| one.text() == Some(station) && (middle(one).1 - middle(row).1).abs() < 0.5)
        })
    })
}

/// The figures of `S1 at 110 mm` in a text, in order.
fn stations(text: &str) -> Vec<(String, u32)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices(" at ") {
        let name = text[..at]
            .rsplit(['(', ' ', ':'])
            .find(|word| word.strip_prefix('S').is_some_and(|digits| digits.parse::<u32>().is_ok()));
        let figure = text[at + 4..].split(' ').next().unwrap_or_default();
        found.push((name.unwrap().to_owned(), figure.parse().unwrap()));
    }
    found
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn chart_steps_list_rulers_and_table_say_the_stations_that_are_written(gaps in prop::collection::vec(3u32..6, 1..8)) {
        let stops: Vec<u32> = gaps.iter().scan(10, |at, gap| { *at += 10 * gap; Some(*at) }).collect();
        let piece = stopped(&stops);
        let design = &piece.design;
        let strand = &design.strands[nth(0)];
        let wanted: Vec<_> = (1..).zip(&stops).map(|(number, at)| (format!("S{number}"), *at)).collect();
        prop_assert_eq!(&stations(&chart::whole(design, strand, piece.telling.units).to_string()), &wanted);
        prop_assert_eq!(&stations(&Posts::new(design, strand).positions(piece.telling.units).unwrap()), &wanted);
        let fixed = english::told(design, piece.telling.units).into_iter().find(|step| step.title == "Fix the stops").unwrap();
        prop_assert_eq!(&stations(&fixed.check.unwrap()), &wanted);
        let posts = Posts::new(design, strand);
        let posts = posts.all();
        prop_assert!(posts.iter().all(|post| post.keeps == Keeps::Stop));
        for (post, at) in posts.iter().zip(&stops) {
            prop_assert!((post.station.value() - f64::from(*at)).abs() < 1e-9);
        }
        let names: Vec<_> = wanted.iter().map(|(name, _)| name.clone()).collect();
        let pages = festoon::pages(&piece, &Style::default());
        for drawn in [ruled(&pages, &names), ruled(&sheet::proof(&piece, &Style::default()).unwrap(), &names)] {
            for (name, at) in &wanted {
                let seen: Vec<_> = drawn.iter().filter(|(drawn, _)| drawn == name).collect();
                prop_assert!(!seen.is_empty(), "{} is not drawn: {:?}", name, drawn);
                prop_assert!(seen.iter().all(|(_, station)| (station - f64::from(*at)).abs() < 0.2), "{} {} {:?}", name, at, seen);
            }
        }
        for (name, at) in &wanted {
            prop_assert!(tabled(&pages, name, &format!("{at} mm")), "{} at {} is not in the table of sizes", name, at);
        }
    }

    /// Beads about knots, apart by whole spaces: where each group starts and each knot has its middle is added up by
    /// hand.
    #[test]
    fn knots_and_groups_are_where_their_lengths_add_up_to(spaces in prop::collection::vec(12u32..40, 1..6)) {
        let group = "reed, { knot: 2 mm }, reed";
        let row: Vec<_> = spaces.iter().map(|space| format!("{{ space: {space} mm }}, {group}")).collect();
        let piece = piece(500, "fixed", &row.join(", "));
        let (design, strand) = (&piece.design, &piece.design.strands[nth(0)]);
        // A knot lies flat against a round bead of 6 mm with a hole of 1 mm, which takes 2 sqrt(3^2 - 0.5^2).
        let reed = 2.0 * (9.0_f64 - 0.25).sqrt();
        let mut at = 0.0;
        let mut wanted = Vec::new();
        for (number, space) in (1..).zip(&spaces) {
            let start = at + f64::from(*space);
            wanted.extend([(format!("G{number}"), start), (format!("K{number}"), start + reed + 1.0)]);
            at = start + 2.0 * reed + 2.0;
        }
        let posts = Posts::new(design, strand);
        let posts = posts.all();
        prop_assert_eq!(posts.len(), wanted.len());
        for (post, (name, at)) in posts.iter().zip(&wanted) {
            prop_assert_eq!(&post.name, name);
            prop_assert!((post.station.value() - at).abs() < 1e-6, "{} {:?}", at, post);
        }
        let steps = english::told(design, piece.telling.units);
        let strung = steps.iter().find(|step| step.title == "String the beads").unwrap().check.clone().unwrap();
        let pages = festoon::pages(&piece, &Style::default());
        for (name, at) in &wanted {
            let said = format!("{at:.0} mm");
            // Of groups that are spread evenly the first and the last are told, and what lies between.
            let is_even = spaces.windows(2).skip(1).all(|pair| pair[0] == pair[1]) && spaces.len() > 2;
            let is_between = name.starts_with('G') && ![1, spaces.len()].map(|at| format!("G{at}")).contains(name);
            let is_told = !(is_even && is_between);
            prop_assert!(!is_told || tabled(&pages, name, &said), "{} at {} is not in the table of sizes", name, said);
            if name.starts_with('K') {
                prop_assert!(strung.contains(&format!("{name} at {said}")), "{} {}: {}", name, said, strung);
            }
        }
    }
}

/// A group that begins with a knot is where that is, and has no name beside it.
#[test]
fn a_group_that_begins_with_a_knot_is_told_by_it() {
    let piece = piece(500, "fixed", "{ space: 90 mm }, { knot: 2 mm }, reed, { space: 20 mm }, reed");
    let names = |posts: &Posts<'_>| posts.all().iter().map(|post| post.name.clone()).collect::<Vec<_>>();
    assert_eq!(names(&Posts::new(&piece.design, &piece.design.strands[nth(0)])), ["K1", "G1"]);
    let string = english::told(&piece.design, piece.telling.units)
        .into_iter()
        .find(|step| step.title == "String the beads")
        .unwrap();
    // The knot's middle, 1 mm behind its start.
    assert!(
        string.text.contains("K1 comes before any bead: tie it 91 mm from the outside of the first end's loop."),
        "{string:?}"
    );
}
