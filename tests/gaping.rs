//! Neighbouring beads where a strand that hangs bends: their cords' links turn about one point on the axis, and so what
//! lies on the inner side of the bend would lie in one another by a little. How much that is, on pieces as they are made.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::fs;

use festoon::design::{Choice, Design, Strand};
use festoon::drape::{Hung, Seat};
use festoon::geometry::Point;
use festoon::source::Source;
use festoon::{Piece, piece};

/// How deep in mm two neighbours on a strand lie in one another as they are drawn.
fn depth(design: &Design, strand: &Strand, [one, other]: [&Seat; 2]) -> Option<f64> {
    let bead = |seat: &Seat| strand.trains[seat.train].bits[seat.bit].what.bead().map(|at| &design.beads[at]);
    let (first, second) = (bead(one)?, bead(other)?);
    if one.train != other.train || one.bit + 1 != other.bit || first.hangs() || second.hangs() {
        return None;
    }
    let turn = other.angle - one.angle;
    let seen = (other.centre - one.centre).turned(-one.angle);
    // Beads are alike on both sides: the inner side of the bend is that of -y.
    let centre = Point::new(seen.x, -seen.y * turn.signum());
    let [near, far] = [first.hole.value(), second.hole.value()].map(|hole| 0.5 * hole);
    let parted = first.noses()[1].beside(far).parted(&second.noses()[0].beside(near), centre, turn.abs());
    Some(-parted.by)
}

/// How deep neighbours lie in one another, where they bend by less than so much in radians, and where by more; and how much
/// cord would part all of a strand's.
fn gapes(design: &Design, strand: &Strand, hung: &Hung) -> [f64; 3] {
    let mut gapes = [0.0_f64; 3];
    for pair in hung.seats.windows(2) {
        let deep = depth(design, strand, [&pair[0], &pair[1]]).unwrap_or_default().max(0.0);
        let sharp = usize::from((pair[1].angle - pair[0].angle).abs() > SHARP);
        gapes[sharp] = gapes[sharp].max(deep);
        gapes[2] += deep;
    }
    gapes
}

/// A bend beyond which it is a kink.
const SHARP: f64 = 0.2;

/// What the README says, and the explanation of `no-rest`, of all shipped pieces.
#[test]
fn neighbours_lie_in_one_another_by_as_much_as_is_told() {
    let patterns = fs::read_dir("patterns").unwrap().map(|file| file.unwrap().path());
    let mut most = [0.0_f64; 3];
    for path in patterns.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")) {
        let text = fs::read_to_string(path).unwrap();
        let read = piece(&Source::new("shipped", &text), &Choice::default(), None).0;
        let Some(Piece { design, drape, .. }) = read.filter(|piece| !piece.design.is_ring()) else { continue };
        for (strand, hung) in design.strands.iter().zip(&drape.strands).filter(|_| design.twist.is_none()) {
            let found = gapes(&design, strand, hung);
            most.iter_mut().zip(found).for_each(|(most, found)| *most = most.max(found));
        }
    }
    let told = [0.3, 2.6, 6.0];
    for (most, told) in most.into_iter().zip(told) {
        assert!((0.7 * told..told).contains(&most), "{most} mm, told as {told}");
    }
}

/// By hand: of two cubes 4 mm wide whose axes make an angle t where their faces meet, the inner rim of one, 2 mm off its
/// axis, lies 2 sin t beyond the face of the other.
#[test]
fn cubes_that_turn_about_their_axis_overlap_at_their_rims() {
    let text = "festoon: 1\ntitle: t\nkind: necklace\nbeads:
  cube: { shape: cube, size: 4 mm, hole: 1 mm, mass: 0.2 g, colour: '#336699' }
cords: { thread: { kind: thread, diameter: 0.3 mm, mass: 0.1 g/m } }
strands: [{ name: only, cord: thread, ends: knot, beads: [100 cube] }]\nwear: { neck base: 370 mm }\n";
    let Piece { design, drape, .. } = piece(&Source::new("t", text), &Choice::default(), None).0.unwrap();
    let (strand, hung) = (&design.strands[0], &drape.strands[0]);
    for pair in hung.seats.windows(2) {
        let expected = 2.0 * libm::sin(pair[1].angle - pair[0].angle);
        let found = depth(&design, strand, [&pair[0], &pair[1]]).unwrap();
        assert!((found - expected).abs() < 1e-3, "{found} is not {expected}");
    }
}
