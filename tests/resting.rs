//! What is worn lies on the body, all of it: every bead, of strands, of branches and of tails, as `measure --json` tells it.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::fs;

use festoon::design::{Bead, Choice};
use festoon::drape::body::skin::{Skin, Surface};
use festoon::geometry::Point3;
use festoon::measure::Measures;
use festoon::piece;
use festoon::source::Source;

/// What overlaps by less than this, in mm, is at rest (`drape/body/mod.rs`).
const RESTS: f64 = 0.01;

/// How far a bead keeps off the skin, less than nothing in it: by circles round its hole, as wide as it is there, but no wider
/// than a ball that is swept along it, since edges of rows are rounded so (`drape/body/outline.rs`).
fn off(skin: &Skin, bead: &Bead, at: Point3, along: Point3) -> f64 {
    const CIRCLES: i32 = 40;
    let [half, ball] = [bead.along, bead.across].map(|size| 0.5 * size.value());
    let rise = along.dot(skin.at(at).1);
    let circle = |step: i32| {
        let far = half * f64::from(step) / f64::from(CIRCLES);
        let beyond = (far.abs() - (half - ball).max(0.0)).max(0.0);
        let wide = bead.half_width(far).min((ball * ball - beyond * beyond).max(0.0).sqrt());
        skin.at(at + along * far).0 - wide * (1.0 - rise * rise).max(0.0).sqrt()
    };
    (-CIRCLES..=CIRCLES).map(circle).fold(f64::INFINITY, f64::min)
}

/// How many beads of a piece lie on a neck, and how deep in mm the deepest lies in it; nothing of what does not stand alone.
fn deepest(name: &str, text: &str) -> (usize, f64) {
    let source = Source::new(name, text);
    let (read, remarks) = piece(&source, &Choice::default(), None);
    let Some(read) = read else { return (0, 0.0) };
    let measures = Measures::new(&read, &remarks, &source);
    let Some(worn) = &read.drape.worn else { return (0, 0.0) };
    let beads = measures.strands.iter().flat_map(|strand| &strand.beads);
    let depths: Vec<f64> = beads
        .filter_map(|told| {
            let place = told.worn.as_ref()?;
            let bead = read.design.beads.iter().find(|bead| bead.id == told.bead)?;
            let at = Point3::new(place.x_mm, place.y_mm, place.z_mm);
            Some(0.0 - off(&worn.skin, bead, at, place.direction.into()))
        })
        .collect();
    (depths.len(), depths.into_iter().fold(0.0, f64::max))
}

#[test]
fn no_bead_of_a_shipped_piece_lies_in_the_body() {
    let patterns = fs::read_dir("patterns").unwrap().map(|file| file.unwrap().path());
    let mut seen = 0;
    let mut all = Vec::new();
    for path in patterns.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")) {
        let (count, depth) = deepest(&path.display().to_string(), &fs::read_to_string(&path).unwrap());
        all.extend((depth >= RESTS).then(|| format!("{}: {depth:.3}", path.display())));
        seen += usize::from(count > 0);
    }
    assert!(all.is_empty() && seen > 10, "of {seen}, mm deep: {all:?}");
}

const STOCK: &str =
    "festoon: 1\ntitle: t\nkind: necklace\nskill: beginner\ntime: 1 h\nwear: { neck base: 370 mm }\nbeads:
  four: { shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, colour: '#336699' }
  six: { shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
  eight: { shape: round, size: 8 mm, hole: 1 mm, mass: 0.7 g, colour: '#223355' }
  ten: { shape: round, size: 10 mm, hole: 1.2 mm, mass: 1.4 g, colour: '#223355' }
  drop: { shape: drop, size: 12 x 30 mm, hole: 1 mm, drilled: tip, mass: 6 g, colour: '#882233' }
  tube: { shape: tube, size: 4 x 24 mm, hole: 1 mm, mass: 0.8 g, colour: '#882233' }
cords:
  silk: { kind: silk, diameter: 0.4 mm, strength: 30 N, mass: 0.2 g/m }
findings:
  cone: { kind: cone, length: 14 mm, inside: 9 mm, mouth: 10 mm, tip: 1.5 mm, mass: 0.9 g }
  eye: { kind: eye pin, gauge: 21, length: 50 mm, mass: 0.2 g }
  hook: { kind: clasp, length: 12 mm, mass: 0.9 g }
  ring: { kind: jump ring, inside: 4 mm, gauge: 20, mass: 0.1 g }
  big: { kind: jump ring, inside: 16 mm, wire: 2 mm, closed: yes, mass: 1.9 g }
  bail: { kind: bail, length: 8 mm, inside: 3 mm, mass: 0.3 g }
  pin: { kind: head pin, gauge: 21, length: 60 mm, mass: 0.2 g }
";

fn assert_clear(strands: &[&str], rest: &str) {
    let strand =
        |(at, beads): (usize, &&str)| format!("  - {{ name: s{at}, cord: silk, ends: knot, beads: [{beads}] }}\n");
    let strands: String = strands.iter().enumerate().map(strand).collect();
    let (count, depth) = deepest("t", &format!("{STOCK}strands:\n{strands}{rest}"));
    assert!(count > 0 && depth < RESTS, "{depth} mm deep: {strands}");
}

/// A drop hangs from the front, from a side where the body turns away, and beads on a pin.
#[test]
fn what_hangs_from_a_strand_lies_on_the_chest() {
    let closure = "closure: { left: [ring], right: [hook] }\n";
    for beads in [
        "37 six, { dangle: [drop], on: bail }, 37 six",
        "20 six, { dangle: [drop], on: bail }, 54 six",
        "37 six, { dangle: [2 six, ten, 2 six], on: pin }, 37 six",
        "55 four, { dangle: [tube, ten], on: pin }, 55 four",
        "30 ten, { dangle: [four, tube], on: pin }, 20 ten",
    ] {
        assert_clear(&[beads], closure);
    }
}

/// Its beads are wider than those of the loop, or stand alone below bare cord.
#[test]
fn a_tail_lies_on_the_chest() {
    let closure = "closure: { open: through, left: [big], right: [ring], tail: 100 mm }\n";
    for beads in ["170 six, ten", "150 four, ten, 5 four, eight, tube", "150 four, { space: 40 mm }, ten"] {
        assert_clear(&[beads], closure);
    }
}

/// One strand of wider beads stands loose out of the twist.
#[test]
fn a_loose_strand_of_a_torsade_lies_on_the_chest() {
    let closure = "twist: 5\nclosure: { each side: [eye, cone], left: [ring], right: [hook] }\nallow: [twist-slack]\n";
    assert_clear(&["110 four", "74 six", "114 four", "58 eight"], closure);
}
