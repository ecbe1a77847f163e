//! The face: a patch for every bead in every colourway, tools, and the piece on the neck.

use festoon::design::Choice;
use festoon::paint::mark::{Fill, Mark, Page, Rgb};
use festoon::source::Source;
use festoon::steps;
use festoon::trade::paper::Paper;

use super::boxes::{Found, boxes};
use super::{pages, shipped};

/// The flat colours of all shapes, in the order in which they are drawn.
fn colours(marks: &[Mark]) -> Vec<Rgb> {
    let of = |mark: &Mark| match mark {
        Mark::Shape { fill: Some(Fill::Flat(colour, _)), .. } => vec![*colour],
        held => colours(held.inner()),
    };
    marks.iter().flat_map(of).collect()
}

#[test]
fn every_colourway_has_a_patch_for_every_bead() {
    let text = include_str!("../../patterns/saltmarsh.yaml");
    for (way, drawn) in [(None, "base colours, this sheet"), (Some("dusk"), "dusk, this sheet")] {
        let choice = Choice { colourway: way.map(str::to_owned), ..Choice::default() };
        let piece = festoon::piece(&Source::new("saltmarsh.yaml", text.to_owned()), &choice, None).0.expect("a piece");
        let face = &pages(&piece, Paper::A4)[0];
        // As the pattern writes them, in the order of the legend: mist, reed, gilt.
        let rows =
            [["#c9d6d8", "#5d7f5b", "#b09046"], ["#dcc9cf", "#6b4a63", "#b09046"], ["#c9d6d8", "#4a5560", "#b09046"]];
        let patches: Vec<_> = rows.concat().into_iter().map(|hex| Rgb::parse(hex).expect("a colour")).collect();
        let all = colours(&face.marks);
        assert!(all.windows(patches.len()).any(|some| some == patches), "{all:?}");
        assert!(boxes(face).iter().any(|found| found.text() == Some(drawn)), "{drawn}");
    }
}

#[test]
fn tools_are_told_once() {
    for piece in shipped() {
        let pages = pages(&piece, Paper::A4);
        for tool in steps::english::tools(&piece.design, piece.telling.units) {
            let ticked = pages.iter().flat_map(boxes).filter(|found| found.text() == Some(tool.as_str())).count();
            assert_eq!(ticked, 1, "{}: {tool}", piece.design.heading.title);
        }
    }
}

/// How many beads of a page stand in groups of a label.
fn beads_within(page: &Page, label: &str) -> usize {
    let is_in = |found: &Found| found.within.iter().any(|group| group == label);
    boxes(page).iter().filter(|found| found.bead().is_some() && is_in(found)).count()
}

#[test]
fn a_cover_shows_the_finished_piece() {
    for piece in shipped() {
        let (design, name) = (&piece.design, &piece.design.heading.title);
        let drawn = beads_within(&pages(&piece, Paper::A4)[0], &festoon::picture::alternative(&piece));
        // Beads that knots are tied round lie in their covers.
        let hidden = design.strands.iter().flat_map(|strand| strand.in_end_knots(design)).count();
        let strung = design.counts().iter().sum::<u32>() as usize - hidden;
        // A pair is pictured whole.
        assert_eq!(drawn, strung * design.copies as usize, "{name}");
    }
}

/// A coin strung from edge to edge turns freely on its cord: of a bracelet on a table it shows its face, as laid straight.
#[test]
fn flat_beads_of_a_ring_lie_with_their_faces_up() {
    let shipped = shipped();
    let piece = shipped.iter().find(|piece| piece.design.heading.title == "Rockpool").expect("a shipped pattern");
    let coin = piece.design.beads.find(|bead| bead.id == "shell").expect("its coin");
    let found = boxes(&pages(piece, Paper::A4)[0]);
    let seen: Vec<_> = found.iter().filter(|found| found.bead() == Some(coin)).map(|found| found.bounds).collect();
    let shape = |bounds: &super::boxes::Box| (bounds.right - bounds.left) / (bounds.bottom - bounds.top);
    let shapes: Vec<_> = seen.iter().map(shape).collect();
    assert!(shapes.iter().all(|shape| (0.95..1.05).contains(shape)), "{shapes:?}");
    let count = piece.design.counts()[coin] as usize;
    // Once in the legend, in the ring, and in the row laid straight.
    assert_eq!(seen.len(), 2 * count + 1);
}
