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
    asked.filter(|(drawing, _)| !matches!(drawing, Drawing::Inspected(_) | Drawing::OnArm)).collect()
}

/// Why a drawing may be narrower than three quarters of its box.
fn is_narrow(drawing: Drawing) -> Option<&'static str> {
    match drawing {
        Drawing::Dangle(_) | Drawing::InLink => Some("a pin hangs upright, and is drawn as long as has room"),
        Drawing::Clasp => Some("a toggle bar hangs across its ring, and is as long as the drawing is high"),
        _ => None,
    }
}

fn assert_inside(drawing: Drawing, drawn: &[Found], name: &str) {
    const ROUNDING: f64 = 1e-9;
    let (width, height) = STEP_SIZE;
    let all = around(drawn);
    assert!(Box::new(0.0, 0.0, width, height).holds(&all, ROUNDING), "{name}, {drawing:?}: {all:?}");
}

fn too_narrow(drawing: Drawing, drawn: &[Found], name: &str) -> Option<String> {
    let all = around(drawn);
    let broad = all.right - all.left;
    let is_broad = broad > STEP_SIZE.0 * 0.75 || is_narrow(drawing).is_some();
    (!is_broad).then(|| format!("{name}, {drawing:?} is {broad} mm broad"))
}

#[test]
fn every_drawing_fills_its_box_and_no_more() {
    let mut narrow = Vec::new();
    for piece in pieces() {
        for (drawing, cast) in drawings(piece) {
            let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
            let marks = step(drawing, &cast, &stencils);
            let (drawn, name) = (boxes(&page(marks, stencils)), &piece.design.heading.title);
            assert_inside(drawing, &drawn, name);
            narrow.extend(too_narrow(drawing, &drawn, name));
        }
    }
    assert!(narrow.is_empty(), "{narrow:#?}");
}

/// A piece may have nothing of what a drawing could show.
#[test]
fn every_drawing_is_there_where_it_has_nothing_to_show() {
    let piece = &pieces()[0];
    let needs_own = |drawing: &Drawing| matches!(drawing, Drawing::Bored(_) | Drawing::Twist(_));
    let is_whole = |drawing: &Drawing| matches!(drawing, Drawing::Inspected(_) | Drawing::OnArm);
    for drawing in Drawing::all().filter(|drawing| !needs_own(drawing) && !is_whole(drawing)) {
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
                    let shown = |kind| drawn.iter().filter(|at| **at == kind).count();
                    assert!(piece.design.beads.indices().all(|at| shown(at) <= counts[at] as usize), "{name}");
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

/// The texts of marks, each with how far down it stands.
fn texts(marks: &[Mark]) -> Vec<(f64, String)> {
    let of = |mark: &Mark| match mark {
        Mark::Text(text) => vec![(text.at.y, text.text.clone())],
        held => texts(held.inner()),
    };
    marks.iter().flat_map(of).collect()
}

/// The texts of marks from the top down.
fn from_top(marks: &[Mark]) -> Vec<String> {
    let mut texts = texts(marks);
    texts.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    texts.into_iter().map(|(_, text)| text).collect()
}

/// Strands stand in one order, the first on top, in what holds them apart and in the beads that they share.
#[test]
fn the_first_strand_is_drawn_above_the_next() {
    let piece = pieces().iter().find(|piece| piece.design.heading.title == "Breakwater").unwrap();
    let stencils = Stencils::new(&piece.design, &piece.palette, Ink::Colour);
    let is_numbered = |drawing: &Drawing| matches!(drawing, Drawing::Bored(_) | Drawing::EndBar(_));
    let numbered: Vec<_> = drawings(piece).into_iter().filter(|(drawing, _)| is_numbered(drawing)).collect();
    assert!(numbered.len() > 2, "{}", numbered.len());
    for (drawing, cast) in numbered {
        assert_eq!(from_top(&step(drawing, &cast, &stencils)), ["1", "2"], "{drawing:?}");
    }
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
