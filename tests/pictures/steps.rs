//! The small drawings beside the steps of all shipped patterns, to look at; each stays inside its box and shows the piece's
//! own beads.

use std::sync::{Arc, OnceLock};

use festoon::Piece;
use festoon::art::{Ink, Look, STEP_SIZE, Stencils, step};
use festoon::design::{Bead, Index, What};
use festoon::export::{Effort, png};
use festoon::geometry::Point;
use festoon::paint::layout::Block;
use festoon::paint::mark::{Mark, Page};
use festoon::steps::{Cast, Drawing, steps};

use crate::boxes::{Box, Found, boxes};
use crate::told::shipped;

/// The shipped patterns' pieces, made once.
fn pieces() -> &'static [Piece] {
    static PIECES: OnceLock<Vec<Piece>> = OnceLock::new();
    PIECES.get_or_init(shipped)
}

/// A drawing on a page of its own.
fn page(marks: Vec<Mark>, stencils: Stencils<'_>) -> Page {
    let (width, height) = STEP_SIZE;
    let symbols = stencils.into_symbols().into();
    Page { width, height, title: String::new(), description: String::new(), symbols, marks }
}

/// The box round all that is seen of a drawing.
fn around(drawn: &[Found]) -> Box {
    let corners = |found: &Found| {
        let Box { left, top, right, bottom } = found.bounds;
        [Point::new(left, top), Point::new(right, bottom)]
    };
    Box::round(drawn.iter().flat_map(corners))
}

/// The beads that marks are stamps of, in the order in which they are drawn.
fn beads(marks: &[Mark], stencils: &Stencils<'_>) -> Vec<Index<Bead>> {
    let of = |mark: &Mark| match mark {
        Mark::Stamp { symbol, .. } => match stencils.look(*symbol) {
            Some(Look::Bead { bead, .. } | Look::Speck { bead }) => vec![bead],
            _ => Vec::new(),
        },
        held => beads(held.inner(), stencils),
    };
    marks.iter().flat_map(of).collect()
}

/// Each drawing that the steps of a piece ask for, with what of the piece it shows; a finished piece is drawn elsewhere.
fn drawings(piece: &Piece) -> Vec<(Drawing, Cast)> {
    let asked = steps(&piece.design).into_iter().filter_map(|step| Some((step.drawing?, step.cast)));
    asked.filter(|(drawing, _)| !matches!(drawing, Drawing::Inspected(_))).collect()
}

/// Why a drawing may be narrower than three quarters of its box.
fn is_narrow(drawing: Drawing) -> Option<&'static str> {
    match drawing {
        Drawing::Dangle(_) | Drawing::InLink => Some("a pin hangs upright, and is drawn as long as has room"),
        _ => None,
    }
}

fn assert_inside(drawing: Drawing, drawn: &[Found], name: &str) {
    const ROUNDING: f64 = 1e-9;
    let (width, height) = STEP_SIZE;
    let all = around(drawn);
    assert!(Box::new(0.0, 0.0, width, height).holds(&all, ROUNDING), "{name}, {drawing:?}: {all:?}");
}

fn assert_broad(drawing: Drawing, drawn: &[Found], name: &str) {
    let all = around(drawn);
    let broad = all.right - all.left;
    assert!(broad > STEP_SIZE.0 * 0.75 || is_narrow(drawing).is_some(), "{name}, {drawing:?} is {broad} mm broad");
}

#[test]
fn every_drawing_fills_its_box_and_no_more() {
    for piece in pieces() {
        for (drawing, cast) in drawings(piece) {
            let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
            let marks = step(drawing, &cast, &stencils);
            let (drawn, name) = (boxes(&page(marks, stencils)), &piece.design.heading.title);
            assert_inside(drawing, &drawn, name);
            assert_broad(drawing, &drawn, name);
        }
    }
}

/// A piece may have nothing of what a drawing could show.
#[test]
fn every_drawing_is_there_where_it_has_nothing_to_show() {
    let piece = &pieces()[0];
    let own = |drawing: &Drawing| !matches!(drawing, Drawing::Inspected(_) | Drawing::Bored(_) | Drawing::Twist(_));
    for drawing in Drawing::all().filter(own) {
        let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Outline);
        let drawn = boxes(&page(step(drawing, &Cast::default(), &stencils), stencils));
        assert_inside(drawing, &drawn, "nothing");
        assert!(!drawn.is_empty(), "{drawing:?}");
        assert!(drawn.iter().all(|found| found.bead().is_none()), "{drawing:?}");
    }
}

/// Beads are threaded and measured in the order in which the strand has them, each of its kind, and every kind is laid out.
#[test]
fn drawings_show_the_beads_that_their_step_handles() {
    let mut seen = 0;
    for piece in pieces() {
        let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
        let name = &piece.design.heading.title;
        let counts = piece.design.counts();
        for (drawing, cast) in drawings(piece) {
            let drawn = beads(&step(drawing, &cast, &stencils), &stencils);
            let strung = |row: usize| cast.rows[row].iter().filter_map(|bit| bit.what.bead()).collect::<Vec<_>>();
            match drawing {
                Drawing::LaidOut => {
                    let mut kinds = drawn;
                    kinds.dedup();
                    let used = piece.design.beads.indices().filter(|at| counts[*at] > 0);
                    assert_eq!(kinds, used.collect::<Vec<_>>(), "{name}");
                }
                Drawing::Threaded(_) | Drawing::Measure(_) => {
                    assert!(!drawn.is_empty(), "{name}: {drawing:?}");
                    assert!(strung(0).starts_with(&drawn), "{name}: {drawing:?} shows {drawn:?}");
                }
                Drawing::Dangle(_) => assert_eq!(drawn, strung(0).repeat(2), "{name}"),
                _ => continue,
            }
            seen += 1;
        }
    }
    assert!(seen > 80, "{seen}");
}

/// Each end's drawings show that end's beads: of a strand that begins and ends unlike, others at the last end.
#[test]
fn drawings_of_the_last_end_show_its_beads() {
    let piece = pieces().iter().find(|piece| piece.design.heading.title == "Painter").unwrap();
    let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
    let all = drawings(piece);
    let drawn = |wanted: Drawing| {
        let (drawing, cast) = all.iter().find(|(drawing, _)| *drawing == wanted).unwrap();
        beads(&step(*drawing, cast, &stencils), &stencils)
    };
    let ends = |strand: usize| {
        let bits = piece.design.strands.as_slice()[strand].bits().filter(|bit| matches!(bit.what, What::Bead(_)));
        let beads: Vec<_> = bits.filter_map(|bit| bit.what.bead()).collect();
        [beads[0], beads[beads.len() - 1]]
    };
    let [first, last] = ends(0);
    assert_ne!(first, last);
    assert_eq!(drawn(Drawing::TailCovered)[0], first);
    assert_eq!(drawn(Drawing::CrimpPacked)[0], last);
    assert_eq!(drawn(Drawing::TailOut)[0], last);
}

#[test]
fn contact_sheet_of_the_steps() {
    let (width, height) = STEP_SIZE;
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/target/pictures");
    std::fs::create_dir_all(folder).unwrap();
    for piece in pieces().iter().filter(|piece| ["Painter", "Saltmarsh"].contains(&piece.design.heading.title.as_str()))
    {
        let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
        let all = drawings(piece);
        let place = |(at, (drawing, cast)): (usize, &(Drawing, Cast))| {
            let corner = Point::new(3.0 + (at % 4) as f64 * (width + 6.0), 3.0 + (at / 4) as f64 * (height + 6.0));
            Block::new(width, height, step(*drawing, cast, &stencils)).at(corner)
        };
        let marks = all.iter().enumerate().flat_map(place).collect();
        let (title, description) = ("Steps".into(), "Drawn to be looked at.".into());
        let high = 3.0 + all.len().div_ceil(4) as f64 * (height + 6.0);
        let symbols = Arc::from(stencils.into_symbols());
        let page = Page { width: 127.0, height: high, title, description, symbols, marks };
        let picture = png(&page, 330.0, Effort::Preview).unwrap();
        std::fs::write(format!("{folder}/steps-{}.png", piece.design.heading.title), &picture).unwrap();
        assert!(!picture.is_empty());
    }
}
