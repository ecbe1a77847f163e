//! How far a crimped end's tail goes back through the beads, and what hangs in the links of a chain.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::Piece;
use festoon::design::{Choice, nth};
use festoon::source::Source;
use festoon::steps::english::{Told, told};
use festoon::units::UnitStyle;

fn made(text: &str) -> Piece {
    let (piece, remarks) = festoon::piece(&Source::new("tails", text), &Choice::default(), None);
    piece.unwrap_or_else(|| panic!("{remarks:?}"))
}

/// Strands of wide and narrow beads on a wire of 0.4 mm: twice side by side it needs 0.8 mm.
fn steps(rows: &[&str]) -> Vec<Told> {
    let strand =
        |(at, row): (usize, &&str)| format!("  - {{ name: row {at}, cord: wire, ends: crimp, beads: [{row}] }}\n");
    let strands: String = rows.iter().enumerate().map(strand).collect();
    told(
        &made(&format!(
            "festoon: 1
title: Tails
kind: necklace
beads:
  wide: {{ shape: round, size: 6 mm, hole: 0.8 mm, material: glass, colour: '#aa3355' }}
  narrow: {{ shape: cube, size: 6 mm, hole: 0.79 mm, material: glass, colour: '#3355aa' }}
cords: {{ wire: {{ kind: wire, diameter: 0.4 mm }} }}
findings:
  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}
  ring: {{ kind: jump ring, inside: 4 mm }}
  hook: {{ kind: clasp, length: 12 mm }}
strands:
{strands}closure: {{ left: [ring], right: [hook] }}
"
        ))
        .design,
        UnitStyle::Both,
    )
}

fn all(steps: &[Told]) -> String {
    steps.iter().map(|step| format!("{}: {}\n", step.title, step.text)).collect()
}

#[test]
fn a_tail_goes_only_through_holes_that_take_the_cord_twice() {
    let wide = all(&steps(&["60 wide"]));
    assert!(wide.contains("then on through about 1 in (25 mm) of beads"), "{wide}");
    assert!(wide.contains("Take the first beads over the tail as well, until it is covered."), "{wide}");
    let narrow = all(&steps(&["60 narrow"]));
    assert!(!narrow.contains("then on through") && !narrow.contains("over the tail"), "{narrow}");
    assert_eq!(narrow.matches("Cut the tail: Cut the tail off close to the crimp.").count(), 2, "{narrow}");
    let some = all(&steps(&["2 wide, 57 narrow, wide"]));
    assert!(some.contains("then on through the last bead: the next does not take the wire twice."), "{some}");
    assert!(
        some.contains(
            "Take the first 2 beads over the tail as well, and cut it off there: the next does not take the wire twice."
        ),
        "{some}"
    );
}

#[test]
fn strands_that_differ_are_told_by_their_names() {
    let text = all(&steps(&["60 wide", "60 narrow", "3 wide, 54 narrow, 3 wide"]));
    assert!(text.contains("Cut that of the row 1 strand close to the crimp."), "{text}");
    assert!(
        text.contains("of the row 2 strand through the last 3 beads and of the row 1 strand through none."),
        "{text}"
    );
    assert!(
        text.contains("Cut the tail off where it leaves the beads, of the row 1 strand close to the crimp."),
        "{text}"
    );
}

/// Three links of 5 mm are bare, so that what follows hangs in the fourth, whose middle is at 17.5 mm: in the row as
/// in what is drawn and said, however the row is to settle.
#[test]
fn what_hangs_in_a_counted_link_stays_there() {
    let chain = |settle: &str, beads: &str| {
        made(&format!(
            "festoon: 1
title: Links
kind: bracelet
beads: {{ plum: {{ shape: round, size: 8 mm, hole: 1 mm, material: glass, colour: '#aa3355' }} }}
cords: {{ chain: {{ kind: chain, diameter: 4 mm, links: 10 = 50 mm, mass: 14 g/m }} }}
findings:
  pin: {{ kind: head pin, gauge: 22, length: 40 mm }}
  ring: {{ kind: jump ring, inside: 4 mm, gauge: 18 }}
  hook: {{ kind: clasp, length: 14 mm }}
strands: [{{ name: s, cord: chain, length: 170 mm, {settle}beads: [{beads}] }}]
closure: {{ left: [ring], right: [ring, hook] }}
"
        ))
    };
    for settle in ["", "settle: slide, ", "settle: fixed, ", "settle: fill, "] {
        for (beads, stations) in [
            ("{ links: 3 }, { dangle: [plum], on: pin }", &[17.5][..]),
            ("{ space: 15 mm }, { dangle: [plum], on: pin }", &[17.5]),
            ("{ repeat: 2, of: [{ links: 3 }, { dangle: [plum], on: pin }] }", &[17.5, 37.5]),
        ] {
            let piece = chain(settle, beads);
            let found: Vec<_> = piece.drape.strands[nth(0)].seats.iter().map(|seat| seat.station).collect();
            assert!(
                found.iter().zip(stations).all(|(one, other)| (one - other).abs() < 1e-9),
                "{settle}{beads}: {found:?}"
            );
            assert_eq!(found.len(), stations.len());
        }
    }
    let steps = all(&told(&chain("", "{ links: 3 }, { dangle: [plum], on: pin }").design, UnitStyle::Both));
    assert!(steps.contains("(3 links bare)"), "{steps}");
}
