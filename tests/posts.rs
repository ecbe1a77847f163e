//! What stays in its place is named and given from one datum: the outside of the first end. Chart, steps and
//! the list of positions print the stations that the pattern writes.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::design::{Choice, Design};
use festoon::source::Source;
use festoon::steps::posts::{Keeps, positions, posts};
use festoon::steps::{chart, steps};
use proptest::prelude::*;

/// A strand of 500 mm, crimped, with a bead before each of the stops.
fn design(stops: &[u32]) -> Design {
    let stops: Vec<_> = stops.iter().map(|at| format!("reed, {{ stop: crimp, at: {at} mm }}")).collect();
    let text = format!(
        "festoon: 1
title: Try
kind: necklace
units: mm
beads:
  reed: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 0.27 g, colour: '#5d7f5b' }}
cords:
  line: {{ kind: wire, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m }}
findings:
  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}
strands:
  - {{ name: only, cord: line, length: 500 mm, ends: crimp, beads: [{}] }}
",
        stops.join(", ")
    );
    festoon::piece(&Source::new("posts.yaml", text), &Choice::default(), None).0.unwrap().design
}

/// The figures of `S1 at 110 mm` or `stop S1: crimp at 110 mm` in a text, in order.
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
    #[test]
    fn chart_steps_and_list_say_the_stations_that_are_written(gaps in prop::collection::vec(20u32..60, 1..8)) {
        let stops: Vec<u32> = gaps.iter().scan(10, |at, gap| { *at += gap; Some(*at) }).collect();
        let design = design(&stops);
        let strand = &design.strands[0];
        let wanted: Vec<_> = (1..).zip(&stops).map(|(number, at)| (format!("S{number}"), *at)).collect();
        prop_assert_eq!(&stations(&chart::text(&design, strand)), &wanted);
        prop_assert_eq!(&stations(&positions(&design, strand).unwrap()), &wanted);
        let fixed = steps(&design).into_iter().find(|step| step.title == "Fix the stops").unwrap();
        prop_assert_eq!(&stations(&fixed.check.unwrap()), &wanted);
        let posts = posts(&design, strand);
        prop_assert!(posts.iter().all(|post| post.keeps == Keeps::Stop));
        for (post, at) in posts.iter().zip(&stops) {
            prop_assert!((post.station.value() - f64::from(*at)).abs() < 1e-9);
        }
    }
}
