//! A pattern of a stated size, for all benchmarks.

use festoon::design::Choice;
use festoon::source::Source;
use festoon::{Piece, piece as made};

/// Everything above the strands.
const ARTICLES: &str = "\
festoon: 1
title: Measured necklace
summary: As many beads as a benchmark asks for, on strands of graduated lengths.
kind: necklace
designer: Marram Studio
beads:
  reed: { shape: round, size: 4 mm, hole: 0.9 mm, material: glass, colour: \"#5d7f5b\", sold: { by: strand, length: 16 in, price: 4.20 } }
  mist: { shape: bicone, size: 3 mm, hole: 0.8 mm, material: glass, colour: \"#c9d6d8\", finish: clear, sold: { by: pack, count: 96, price: 5.40 } }
  gilt: { shape: rondelle, size: 4 x 2 mm, hole: 1 mm, material: brass, colour: \"#c29a3f\", finish: metallic, sold: { by: pack, count: 50, price: 3.80 } }
cords:
  wire: { kind: wire, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m, sold: { by: spool, length: 10 m, price: 7.90 } }
findings:
  crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm, sold: { by: pack, count: 100, price: 3.40 } }
  cone: { kind: cone, length: 14 mm, inside: 8 mm, mouth: 9 mm, tip: 1.5 mm, sold: { by: each, price: 0.80 } }
  eye: { kind: eye pin, gauge: 21, length: 50 mm, sold: { by: pack, count: 20, price: 2.00 } }
  hook: { kind: clasp, length: 12 mm, sold: { by: each, price: 1.10 } }
  bar: { kind: end bar, length: 5 mm, holes: 4, spacing: 20 mm, sold: { by: pack, count: 2, price: 1.60 } }
";

/// What joins strands that hang clear of one another.
const APART: &str = "closure: { each side: [bar], right: [hook] }\nstrands:\n";
/// What gathers strands, so that they touch.
const GATHERED: &str = "closure: { each side: [eye, cone], right: [hook] }\nstrands:\n";

/// Beads on each strand: 25 groups of five.
const EACH: usize = 125;

/// A sound pattern of so many beads, a multiple of 125, sliding on crimped strands that bars hold apart.
pub fn pattern(beads: usize) -> Source {
    joined(beads, 3, APART)
}

/// Strands so many inches longer one than the other.
fn joined(beads: usize, inches: usize, closure: &str) -> Source {
    let strand = |at: usize| {
        let row = "{ repeat: 25, of: [3 mist, reed, gilt] }";
        format!(
            "  - {{ name: strand {at}, cord: wire, ends: crimp, length: {} in, beads: [{row}] }}\n",
            17 + inches * at
        )
    };
    let strands: String = (0..beads / EACH).map(strand).collect();
    Source::new("measured.yaml", format!("{ARTICLES}{closure}{strands}"))
}

/// A piece of the same strands gathered in cones, where they touch.
#[allow(dead_code, reason = "of the benchmarks one hangs it")]
pub fn gathered(beads: usize) -> Piece {
    made(&joined(beads, 1, GATHERED), &Choice::default(), None).0.expect("a sound pattern")
}

/// That pattern's piece.
pub fn piece(beads: usize) -> Piece {
    made(&pattern(beads), &Choice::default(), None).0.expect("a sound pattern")
}

/// So many strands of as many beads bead to bead, each four beads longer than the one before, gathered in cones: each lies on the
/// next all along.
#[allow(dead_code, reason = "of the benchmarks one hangs it")]
pub fn touching(strands: usize, each: usize) -> Piece {
    let strand = |at: usize| {
        let count = each + 4 * at;
        format!("  - {{ name: strand {at}, cord: wire, ends: crimp, beads: [{count} reed], settle: fill }}\n")
    };
    let strands: String = (0..strands).map(strand).collect();
    let source = Source::new("touching.yaml", format!("{ARTICLES}{GATHERED}{strands}"));
    made(&source, &Choice::default(), None).0.expect("a sound pattern")
}

/// A shipped pattern of three strands that touch.
#[allow(dead_code, reason = "of the benchmarks some hang it")]
pub fn saltmarsh() -> Source {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/saltmarsh.yaml");
    Source::new("saltmarsh.yaml", std::fs::read_to_string(path).expect("the shipped pattern"))
}
