//! What several pieces take together: alike in all but their colour, things are bought apart.

use festoon::design::Choice;
use festoon::materials::{Amount, Batch, Order, Pool, of};
use festoon::source::Source;
use festoon::{Piece, piece};

/// Twelve beads of two kinds on elastic, in colourways that change the colour of one, its finish, or nothing.
const TEXT: &str = "festoon: 1
title: Tide
kind: bracelet
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
  mist: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#c9d6d8' }
cords: { gum: { kind: elastic, diameter: 0.5 mm } }
strands: [{ name: one, cord: gum, ends: knot, beads: [{ repeat: 12, of: [reed, mist] }] }]
colourways:
  dusk: { reed: { colour: '#6b4a63' } }
  dull: { reed: { colour: '#5d7f5b', finish: matte } }
  same: { reed: { colour: '#5d7f5b' } }
";

fn made(colourway: Option<&str>) -> Piece {
    let choice = Choice { colourway: colourway.map(str::to_owned), ..Choice::default() };
    let (made, remarks) = piece(&Source::new("tide.yaml", TEXT), &choice, None);
    made.unwrap_or_else(|| panic!("{remarks:?}"))
}

/// The beads that the plain piece and one in a colourway take together, by their ids.
fn beads(colourway: &str) -> Vec<(String, u64)> {
    let pieces = [made(None), made(Some(colourway))];
    let names = pieces.each_ref().map(|piece| piece.design.heading.whole_title());
    let batch = |at: usize| {
        let Piece { design, palette, .. } = &pieces[at];
        Batch { design, palette, name: &names[at], pieces: 1, bagged: false }
    };
    let order = Order::default();
    let lines = of(&Pool::new(batch(0), vec![batch(1)], &order), &order).lines;
    let count = |amount| if let Amount::Count(count) = amount { Some(count) } else { None };
    lines.into_iter().filter_map(|line| Some((line.id, count(line.need)?))).collect()
}

#[test]
fn beads_of_another_colour_or_finish_are_bought_apart() {
    for (colourway, other) in [("dusk", "reed (Tide, dusk)"), ("dull", "reed (Tide, dull)")] {
        let apart = [("reed", 12), ("mist", 24), (other, 12)].map(|(id, count)| (id.to_owned(), count));
        assert_eq!(beads(colourway), apart, "{colourway}");
    }
    assert_eq!(beads("same"), [("reed".to_owned(), 24), ("mist".to_owned(), 24)]);
}
