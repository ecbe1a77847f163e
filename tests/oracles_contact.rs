//! Strands that touch, and strands that bars join, against a general optimiser that knows neither.
//!
//! `tests/oracles/scripts/held_strands.py` (SLSQP of scipy) is given the links of each strand, where they end, which are
//! balls and which go through a bar; it puts all joints where their weights are lowest, with links as long as they
//! are, balls outside one another and bars rigid. Its answers stand beside what it was given in `held_strands.csv`.

#[path = "support/chain.rs"]
mod chain;

use chain::as_it_hangs;
use festoon::design::{Bit, Choice, Rest, Strand};
use festoon::drape::chain::Content as Kind;
use festoon::drape::hang;
use festoon::geometry::Point;
use festoon::source::Source;
use festoon::units::Length;
use festoon::{Piece, piece};

const TABLE: &str = include_str!("oracles/data/held_strands.csv");
/// Distance in mm between the points from which the innermost strand hangs.
const SPAN: f64 = 90.0;

/// Strands that a heavy bead presses together, without bars, limp and stiff, and between them, and two of which bars lean to
/// a heavy bead aside; and ladders, whose inner row is pressed between its rungs: one of wire, and one of cable so stiff that it
/// presses harder than all weighs, whose outer beads are larger by what the turn takes.
const CASES: [(&str, &str, [&str; 2]); 6] = [
    ("pressed", "thread", ["8 light, heavy, 8 light", "20 light"]),
    ("stiff", "wire", ["8 light, heavy, 6 light, long", "20 light"]),
    (
        "joined",
        "thread",
        ["6 light, bar, 2 light, heavy, 2 light, bar, 6 light", "7 light, bar, 6 light, bar, 7 light"],
    ),
    ("aslant", "wire", ["6 light, bar, 7 light, bar, 6 light", "2 light, heavy, 4 light, bar, 9 light, bar, 7 light"]),
    (
        "ladder",
        "wire",
        ["5 light, bar, 4 light, bar, 4 light, bar, 5 light", "7 light, bar, 4 light, bar, 4 light, bar, 7 light"],
    ),
    (
        "ladder of 8",
        "cable",
        ["{ repeat: 8, of: [5 light, bar] }, 5 light", "{ repeat: 8, of: [5 larger, bar] }, 5 larger"],
    ),
];

fn hung(cord: &str, strands: [&str; 2]) -> Piece {
    let strand =
        |(at, beads): (usize, &&str)| format!("  - {{ name: s{at}, cord: {cord}, ends: knot, beads: [{beads}] }}\n");
    let strands: String = strands.iter().enumerate().map(strand).collect();
    let text = format!(
        "festoon: 1\ntitle: test\nkind: necklace\nbeads:
  light: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }}
  long: {{ shape: tube, size: 2 x 12 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }}
  large: {{ shape: round, size: 6.5 mm, hole: 1 mm, mass: 0.4 g, colour: '#996633' }}
  larger: {{ shape: round, size: 6.56 mm, hole: 1 mm, mass: 0.4 g, colour: '#996633' }}
  heavy: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 6 g, colour: '#996633' }}
cords:
  thread: {{ kind: thread, diameter: 0.4 mm, mass: 0.6 g/m }}
  wire: {{ kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, stiffness: 3 N mm² }}
  cable: {{ kind: wire, diameter: 0.5 mm, mass: 0.8 g/m, stiffness: 60 N mm² }}
  rod: {{ kind: wire, diameter: 0.6 mm, mass: 2 g/m, stiffness: 250 N mm² }}
findings:
  bar: {{ kind: spacer bar, holes: 2, spacing: 8 mm, length: 3 mm, mass: 0.4 g }}
  end: {{ kind: end bar, holes: 2, spacing: 6.1 mm, length: 5 mm }}
  hook: {{ kind: clasp, length: 12 mm }}
  ring: {{ kind: jump ring, inside: 4 mm, gauge: 20 }}
strands:\n{strands}closure: {{ left: [end, ring], right: [end, hook] }}\nwear: {{ neck base: 370 mm }}\n"
    );
    let (piece, remarks) = piece(&Source::new("test", &text), &Choice::default(), Some(SPAN));
    let mut piece = piece.unwrap_or_else(|| panic!("{text}\n{remarks:?}"));
    // As the script was given them: none is left slack or tied, so that beads lie at their ends.
    piece.design = piece.design.changed(|model| model.strands.iter_mut().for_each(end_at_beads)).expect("a design");
    piece.drape = hang(&piece.design, Some(SPAN)).expect("it hangs");
    piece
}

/// Leaves nothing of a packed strand but its beads.
fn end_at_beads(strand: &mut Strand) {
    let tied = strand.ends[0].takes;
    for end in &mut strand.ends {
        (end.bight, end.takes) = (None, Length::ZERO);
    }
    let beads = strand.bits().map(Bit::length).sum();
    for train in &mut strand.trains {
        train.rest = match train.rest {
            Rest::At(start) => Rest::At(start - tied.value()),
            free => free,
        };
    }
    (strand.finished, strand.slack) = (Length::mm(beads), Length::ZERO);
}

/// What the script is given of a case: a line for each link.
fn given(name: &str, piece: &Piece) -> Vec<String> {
    let mut lines = Vec::new();
    for (at, (strand, hung)) in piece.design.strands.iter().zip(&piece.drape.strands).enumerate() {
        let chain = as_it_hangs(&piece.design, strand, hung);
        let pieces = chain.pieces.iter().zip(chain.passages(&piece.design, strand));
        for (link, (kind, passage)) in chain.links.iter().zip(pieces) {
            let across = passage.map_or_else(String::new, |passage| passage.across.to_string());
            let bead = match *kind {
                Kind::Bit(train, bit) => strand.trains[train].bits[bit].what.bead(),
                _ => None,
            };
            let radius = bead.map_or(0.0, |bead| piece.design.beads[bead].across.value() / 2.0);
            let [first, last] = hung.ends.map(|end| end.x);
            let (length, weight, centre) = (link.length, link.weight * 1000.0, link.centre);
            let stiff = chain.stiffness;
            let link = format!("{stiff},{length:.4},{weight:.4},{centre:.4},{radius},{across}");
            lines.push(format!("{name},{at},{first:.4},{last:.4},{link}"));
        }
    }
    lines
}

#[test]
fn strands_lie_where_an_optimiser_puts_them() {
    let pieces = CASES.map(|(name, cord, strands)| (name, hung(cord, strands)));
    let given: Vec<String> = pieces.iter().flat_map(|(name, piece)| given(name, piece)).collect();
    for (name, piece) in &pieces {
        assert_eq!(piece.drape.unrest, None, "{name}");
        let is_ladder = name.starts_with("ladder");
        assert_eq!(piece.drape.presses.is_empty(), *name == "aslant" || is_ladder, "{name}");
        let pressed = piece.drape.strands.iter().any(|hung| hung.tension.lowest < 0.0);
        assert_eq!(pressed, is_ladder, "{name}");
    }
    let strands = pieces.iter().flat_map(|(_, piece)| &piece.drape.strands);
    let joints = strands.flat_map(|hung| hung.joints.iter().skip(1));
    assert_eq!(TABLE.lines().skip(1).count(), given.len(), "the script is now to be given\n{}", given.join("\n"));
    for ((line, row), joint) in given.iter().zip(TABLE.lines().skip(1)).zip(joints) {
        let place = row
            .strip_prefix(line.as_str())
            .unwrap_or_else(|| panic!("the script is now to be given\n{}", given.join("\n")));
        let [x, y]: [f64; 2] =
            place.split(',').filter_map(|field| field.parse().ok()).collect::<Vec<_>>().try_into().unwrap();
        let off = libm::hypot(joint.at.x - x, joint.at.y - y);
        // Rounds end when no joint moves by 0.01 mm.
        assert!(off < 0.02, "{line}: {off} mm from {x}, {y}");
    }
}

/// Of limp cord and of the stiffest, of rows of one length and of such as the turn asks for. Rows of one length of thread, which
/// would have to fold, lie over one another; those of wire lie beside one another in waves.
#[test]
fn ladders_come_to_rest() {
    for (bars, beads, graded) in [(2, 16, "large"), (4, 9, "larger"), (8, 5, "larger"), (16, 3, "large")] {
        for outer in ["light", graded] {
            let row = |bead: &str| format!("{{ repeat: {bars}, of: [{beads} {bead}, bar] }}, {beads} {bead}");
            for cord in ["thread", "wire", "cable", "rod"] {
                let piece = hung(cord, [&row("light"), &row(outer)]);
                assert_eq!(piece.drape.unrest, None, "{bars} bars, {outer}, {cord}");
                assert_held(&piece, &format!("{bars} bars, {outer}, {cord}"));
            }
        }
    }
}

/// Each link is as long as it is, and bars hold both rows as far apart as their holes.
fn assert_held(piece: &Piece, name: &str) {
    let mut through: Vec<Vec<Point>> = Vec::new();
    for (strand, hung) in piece.design.strands.iter().zip(&piece.drape.strands) {
        let chain = as_it_hangs(&piece.design, strand, hung);
        for (link, pair) in chain.links.iter().zip(hung.joints.windows(2)) {
            let off = pair[0].at.distance(pair[1].at) - link.length;
            assert!(off.abs() < 1e-3, "{name}: a link is {off} mm longer than it is");
        }
        let joints = chain.passages(&piece.design, strand).into_iter().zip(hung.joints.windows(2));
        through
            .push(joints.filter_map(|(passage, pair)| passage.map(|_| pair[0].at.between(pair[1].at, 0.5))).collect());
    }
    for (inner, outer) in through[0].iter().zip(&through[1]) {
        let off = inner.distance(*outer) - 8.0;
        assert!(off.abs() < 0.05, "{name}: a bar's rows are {off} mm farther apart than its holes");
    }
}
