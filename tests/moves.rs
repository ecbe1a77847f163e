//! What must not matter: that a point is held a hundredth of a millimetre farther, the order in which strands are given, and
//! which side is left. A drape that jumps, or is another one, tells of rounds that have gone to another place of rest.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

#[path = "support/beside.rs"]
mod beside;
#[path = "support/shelved.rs"]
mod shelved;

use std::fs;

use festoon::design::{Choice, Design, nth};
use festoon::drape::{Drape, Waypoint, hang, on_way};
use festoon::source::Source;
use festoon::{Piece, piece};
use shelved::shelved;

/// How much farther a point is held, in mm.
const MOVE: f64 = 0.01;
/// Joints of strands in contact are known to this, in mm (`drape/contact/rounds.rs`), wherever they begin.
const STILL: f64 = 0.01;
/// On the body what is strung is taken in pieces, from its first end on, and places are within 1 mm (`drape/body/mod.rs`).
const WORN: f64 = 1.0;

const STOCK: &str = "festoon: 1\ntitle: t\nkind: necklace\nwear: { neck base: 370 mm }\nbeads:
  ball: { shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, colour: '#336699' }
  six: { shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
  lead: { shape: round, size: 10 mm, hole: 1 mm, mass: 6 g, colour: '#333333' }
  cube: { shape: cube, size: 4 mm, hole: 1 mm, mass: 0.2 g, colour: '#996633' }
  cone: { shape: bicone, size: 5 mm, hole: 1 mm, mass: 0.2 g, colour: '#996633' }
  oval: { shape: oval, size: 5 x 7 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
cords:
  wire: { kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }
  silk: { kind: silk, diameter: 0.4 mm, mass: 0.6 g/m }
strands:\n";

/// Strands on cord: a length, nothing for a row that is filled, and what is strung.
const MADE: [&[(&str, &str, &str)]; 6] = [
    &[
        ("wire", "400 mm", "{ repeat: 12, of: [cone, 2 ball] }, { repeat: 10, of: [six, 2 ball] }"),
        ("wire", "", "71 six"),
    ],
    &[("silk", "", "100 cube"), ("silk", "", "108 cube"), ("silk", "", "118 cube")],
    &[("silk", "", "40 six, lead, 30 six"), ("silk", "", "110 ball")],
    &[("wire", "460 mm", "20 cube, lead, 20 cube"), ("wire", "470 mm", "30 oval, 12 cube"), ("silk", "", "120 ball")],
    &[("silk", "", "80 oval")],
    &[("wire", "430 mm", "{ repeat: 20, of: [cube, 3 ball] }")],
];

/// A made piece.
fn made(strands: &[(&str, &str, &str)]) -> Design {
    let strand = |(at, (cord, length, beads)): (usize, &(&str, &str, &str))| {
        let length = if length.is_empty() { String::new() } else { format!("length: {length}, ") };
        format!("  - {{ name: s{at}, cord: {cord}, {length}ends: knot, beads: [{beads}] }}\n")
    };
    let text = STOCK.to_owned() + &strands.iter().enumerate().map(strand).collect::<String>();
    piece(&Source::new("t", &text), &Choice::default(), None).0.unwrap().design
}

/// Shipped pieces that hang from points, and made ones, with their names.
fn hanging() -> Vec<(String, Design)> {
    let files = fs::read_dir("patterns").unwrap().map(|file| file.unwrap().path());
    let mut pieces = Vec::new();
    for path in files.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")) {
        let (read, remarks) = piece(&shelved(path.to_str().unwrap()), &Choice::default(), None);
        let Piece { design, drape, .. } = read.unwrap_or_else(|| panic!("{}: {remarks:?}", path.display()));
        if drape.strands[nth(0)].ends[0].y == drape.strands[nth(0)].ends[1].y && !design.is_ring() && drape.span > 50.0
        {
            pieces.push((path.display().to_string(), design));
        }
    }
    pieces.extend(MADE.iter().enumerate().map(|(at, strands)| (format!("made {at}"), made(strands))));
    pieces
}

/// How far apart beads hang at most in two drapes, whose strands answer to each other by `of`.
fn farthest(one: &Drape, other: &Drape, of: impl Fn(usize) -> usize) -> f64 {
    let mut most: f64 = 0.0;
    for (at, hung) in one.strands.entries() {
        let seats = &other.strands[nth(of(at.number()))].seats;
        assert_eq!(hung.seats.len(), seats.len());
        most = hung.seats.iter().zip(seats).map(|(one, two)| one.centre.distance(two.centre)).fold(most, f64::max);
    }
    most
}

/// How far apart two ways on the body are at most. Where beads part at a bend, both their faces and the joint between them
/// have one station.
fn ways(one: &[Waypoint], other: &[Waypoint]) -> f64 {
    let away = |spot: &Waypoint| {
        let there = other.iter().filter(|other| (other.station - spot.station).abs() < 1e-6).map(|other| other.at);
        let places = there.chain(on_way(other, spot.station).map(|(at, _)| at));
        places.map(|at| at.distance(spot.at)).reduce(f64::min)
    };
    one.iter().filter_map(away).fold(0.0, f64::max)
}

/// No place of a strand that is twice as long as its points are apart, or longer, moves by more than the point does.
#[test]
fn a_small_move_of_an_end_moves_all_by_little() {
    for (name, design) in hanging() {
        let span = hang(&design, None).unwrap().span;
        let [here, there] = [span, span + MOVE].map(|span| hang(&design, Some(span)).unwrap());
        let moved = farthest(&here, &there, |at| at);
        let known = if here.presses.is_empty() { 1e-3 } else { STILL };
        assert!(moved < MOVE + known, "{name}: moved by {moved} mm");
    }
}

/// Bars and twists say by the order of strands which lies where.
#[test]
fn strands_in_another_order_hang_and_lie_alike() {
    for (name, design) in hanging() {
        let barred = design.strands.iter().any(|strand| strand.aside.value() > 0.0) || design.shared().next().is_some();
        if barred || design.twist.is_some() || design.strands.len() < 2 {
            continue;
        }
        let turned = design.changed(|model| model.strands.reverse()).expect("a design");
        let [one, other] = [&design, &turned].map(|design| hang(design, None).unwrap());
        let last = design.strands.len() - 1;
        let moved = farthest(&one, &other, |at| last - at);
        assert!(moved < 1e-9, "{name}: {moved} mm");
        let [one, other] = [one, other].map(|drape| drape.worn.unwrap());
        for (at, line) in one.lines.iter().enumerate() {
            let moved = ways(line, &other.lines[nth(last - at)]);
            assert!(moved < 1e-9, "{name}: {moved} mm on the neck");
        }
    }
}

/// Given from the other side, all hangs and lies in the mirror.
#[test]
fn pieces_from_the_other_side_hang_and_lie_in_the_mirror() {
    let lists = [
        ("30 six, 2 lead, 20 ball", "20 ball, 2 lead, 30 six"),
        ("{ repeat: 14, of: [cone, ball, cube] }, 20 six", "20 six, { repeat: 14, of: [cube, ball, cone] }"),
        ("60 cube, 20 oval", "20 oval, 60 cube"),
    ];
    for (at, (list, back)) in lists.into_iter().enumerate() {
        let [one, other] = [list, back].map(|list| hang(&made(&[("wire", "460 mm", list)]), None).unwrap());
        for (hung, other) in one.strands[nth(0)].seats.iter().zip(other.strands[nth(0)].seats.iter().rev()) {
            let across = (hung.centre.x + other.centre.x - one.span).abs();
            assert!(across < 1e-4 && (hung.centre.y - other.centre.y).abs() < 1e-4, "{at}: {hung:?} {other:?}");
        }
        let [one, other] = [one, other].map(|drape| drape.worn.unwrap());
        let back = other.lines[nth(0)].iter().rev().map(|spot| {
            let mut back = *spot;
            (back.station, back.at) = (460.0 - spot.station, mirrored(spot));
            back
        });
        let moved = ways(&one.lines[nth(0)], &back.collect::<Vec<_>>());
        assert!(moved < WORN, "{at}: {moved} mm on the neck");
    }
}

/// Several strands that touch on the neck lie there in the mirror too.
#[test]
fn strands_from_the_other_side_lie_in_the_mirror() {
    let inner = ["30 six, lead, 24 ball, 6 six", "6 six, 24 ball, lead, 30 six"];
    let outer = ["20 cube, 70 ball", "70 ball, 20 cube"];
    let [one, other] = [0, 1].map(|side| {
        let design = made(&[("silk", "460 mm", inner[side]), ("silk", "500 mm", outer[side])]);
        hang(&design, None).unwrap().worn.unwrap()
    });
    assert!(one.unrest.is_none() && !one.clearances.is_empty(), "{:?}", one.unrest);
    for (line, mirror) in one.lines.iter().zip(&other.lines) {
        let length = if line.last().unwrap().station < 480.0 { 460.0 } else { 500.0 };
        let back = mirror.iter().rev().map(|spot| {
            let mut back = *spot;
            (back.station, back.at) = (length - spot.station, mirrored(spot));
            back
        });
        let moved = ways(line, &back.collect::<Vec<_>>());
        assert!(moved < WORN, "{moved} mm on the neck");
    }
}

fn mirrored(spot: &Waypoint) -> festoon::geometry::Point3 {
    festoon::geometry::Point3::new(-spot.at.x, spot.at.y, spot.at.z)
}
