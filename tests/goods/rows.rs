//! How long rows and branches are, and what a biased lot adds, each by a sum of its own.

use festoon::design::{Choice, Design, Strand, What, nth, resolve};
use festoon::pattern;
use festoon::source::Source;
use festoon::units::UnitStyle;

const GOODS: &str = "beads:
  a: { shape: round, size: 8 mm, hole: 1 mm, tolerance: 0.1 mm, material: glass, colour: '#aa3355' }
  b: { shape: round, size: 4 mm, hole: 2 mm, material: glass, colour: '#3355aa' }
  wide: { shape: rondelle, size: 14 x 8 mm, hole: 5 mm, material: glass, colour: '#55aa33' }
cords: { c: { kind: elastic, diameter: 0.8 mm } }
findings:
  pin: { kind: head pin, length: 60 mm, wire: 0.6 mm, outside: 2 mm }
  eye: { kind: eye pin, length: 60 mm, wire: 0.6 mm, outside: 4 mm }
";

fn ring(strand: &str) -> Design {
    let text = format!(
        "festoon: 1\ntitle: Ring\nkind: bracelet\n{GOODS}strands: [{{ name: s, cord: c, ends: knot, settle: fill, {strand} }}]\n"
    );
    let (pattern, remarks) = pattern::read(&Source::new("ring", text));
    let (design, more) = resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    design.unwrap_or_else(|| panic!("{more:?}"))
}

/// Length of a bead's substance along its hole at a distance from the axis.
fn along(across: f64, along: f64, radius: f64) -> f64 {
    along * (1.0 - (2.0 * radius / across).powi(2)).sqrt()
}

fn lengths(strand: &Strand) -> Vec<(What, f64, f64)> {
    strand.bits().map(|bit| (bit.what.clone(), bit.before, bit.after)).collect()
}

#[test]
fn a_row_filled_anew_is_the_one_that_its_length_makes() {
    let rows = [
        "beads: [a, { repeat: fill, of: [a, 2 b] }, b]",
        "beads: [{ mirror: [a, { repeat: fill, of: [a, 2 b] }, b], about: [a] }]",
    ];
    for (beads, knots) in rows.iter().flat_map(|beads| ["", ", knots: 1.2 mm"].map(|knots| (beads, knots))) {
        let filled = |length: u32| ring(&format!("{beads}, length: {length} mm{knots}"));
        let (many, few) = (filled(400), filled(200));
        let [most, least] = [&many, &few].map(|design| design.strands[nth(0)].fill.as_ref().unwrap().times);
        assert!(most > least + 2 && least > 2, "{beads}: {most}, {least}");
        for (from, to, times) in [(&many, &few, least), (&few, &many, most)] {
            let made = &from.refilled(nth(0), times).unwrap().strands[nth(0)];
            assert_eq!(lengths(made), lengths(&to.strands[nth(0)]), "{beads}{knots}");
            assert!((made.finished - to.strands[nth(0)].finished).value().abs() < 1e-9);
        }
    }
}

#[test]
fn the_last_joint_of_a_ring_lets_a_narrow_bead_slip_in_as_every_other() {
    // Rondelles meet at the rims of their holes; the small ones lie in the holes.
    let meeting = 20.0 * along(14.0, 8.0, 2.5);
    for of in ["[wide, b]", "[b, wide]"] {
        let row = &ring(&format!("beads: [{{ repeat: 20, of: {of} }}]")).strands[nth(0)];
        assert!((row.finished.value() - meeting).abs() < 1e-9, "{of}: {}", row.finished);
    }
}

#[test]
fn a_ring_is_as_long_wherever_it_begins() {
    let mut of = vec!["a", "b", "wide", "b", "a", "a", "wide", "b"];
    let length = |of: &[&str]| ring(&format!("beads: [{}]", of.join(", "))).strands[nth(0)].finished.value();
    let first = length(&of);
    for _ in 1..of.len() {
        of.rotate_left(1);
        assert!((length(&of) - first).abs() < 1e-9, "{of:?}");
    }
}

#[test]
fn a_branch_hangs_by_its_loop_and_ends_in_its_own_eye_or_head() {
    let drop = |pin: &str| {
        let design = ring(&format!("beads: [3 a, {{ dangle: [a], on: {pin} }}, 3 a]"));
        let drops = design.strands[nth(0)].bits().filter_map(|bit| match &bit.what {
            What::Dangle(dangle) => Some(dangle.drop),
            _ => None,
        });
        drops.sum::<f64>()
    };
    let bead = along(8.0, 8.0, 0.5);
    // A loop of 4 mm, the bead, the eye of 4 mm; a usual loop of 3 mm, the bead, a head of 0.6 mm, which is 2 mm wide.
    assert!((drop("eye") - (4.0 + bead + 4.0)).abs() < 1e-9);
    assert!((drop("pin") - (3.0 + bead + 0.6)).abs() < 1e-9);
}

#[test]
fn a_lot_that_is_off_one_way_adds_up() {
    // 47 times 0.1 mm is more than half a bead, four times is not.
    let bias = |count: u32| {
        let design = ring(&format!("beads: [{count} a]"));
        design.strands[nth(0)].bias(&design).map(|bias| festoon::steps::english::bias(&bias, UnitStyle::Mm))
    };
    assert_eq!(bias(47).as_deref(), Some("to within 4.7 mm if all beads are 0.1 mm larger or smaller than told"));
    assert_eq!(bias(4), None);
}

#[test]
fn beads_inside_others_add_nothing_to_the_spread() {
    // Nine 4 mm beads lie in the 5 mm holes of ten rondelles: by pencil only the ten, each 0.2 mm off, count.
    let text = "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  \
                big: { shape: rondelle, size: 14 x 8 mm, hole: 5 mm, tolerance: 0.2 mm, material: glass, colour: \"#5d7f5b\" }\n  \
                bit: { shape: round, size: 4 mm, hole: 1 mm, tolerance: 0.2 mm, material: glass, colour: \"#c9d6d8\" }\n\
                cords:\n  silk: { kind: silk, diameter: 0.5 mm }\n\
                strands:\n  - { name: row, cord: silk, ends: knot, beads: [{ repeat: 9, of: [big, bit] }, big], length: 400 mm }\n";
    let (pattern, remarks) = pattern::read(&Source::new("inside.yaml", text));
    let (design, more) = resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    let design = design.unwrap_or_else(|| panic!("{more:?}"));
    let row = &design.strands[nth(0)];
    assert!((row.worst_spread(&design).value() - 2.0).abs() < 1e-9, "{:?}", row.worst_spread(&design));
    assert!((row.spread(&design).value() - 0.2 * 10f64.sqrt()).abs() < 1e-9, "{:?}", row.spread(&design));
    // Rondelles meet at the rim of their holes: each takes 8 √(1 - (5/14)²) mm.
    assert!((row.beaded().value() - 80.0 * (1.0 - (5.0 / 14.0f64).powi(2)).sqrt()).abs() < 1e-9, "{:?}", row.beaded());
}

/// All that is `fill` in one list is one number: of a fade of n beads n / 2, rounded down, are the second.
#[test]
fn two_fades_that_fill_one_row_are_equally_long() {
    for length in [120, 200, 333] {
        let fades = "beads: [{ fade: fill, from: a, to: b }, { fade: fill, from: b, to: wide }]";
        let row = &ring(&format!("{fades}, length: {length} mm")).strands[nth(0)];
        let of =
            |bead: usize| row.bits().filter(|bit| bit.what == What::Bead(festoon::design::nth(bead))).count() as u32;
        // The second bead of the one and the first of the other together are as many as one fade has.
        let fill = of(1);
        assert_eq!([of(0), of(2)], [fill - fill / 2, fill / 2], "{length}");
        assert!(fill > 3 && row.beaded().value() <= f64::from(length), "{fill}");
    }
}
