//! Generated patterns: whatever is strung, its pages are whole and clear, and its beads are counted alike
//! in legend, word chart, materials and drawings.

use proptest::prelude::*;

use festoon::trade::paper::Paper;

use festoon::Piece;
use festoon::paint::mark::Page;

use super::boxes::{self, boxes};
use super::stringing::assert_sound;
use super::{PAPERS, holds, margin, pages, proof, read};

const STOCK: &str = "
beads:
  pin: { name: pinhead seed, shape: seed, size: 15/0, material: glass, colour: '#d9b98a' }
  pea: { name: pea green glass round with a long name, shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
  nut: { name: nut, shape: bicone, size: 14 mm, hole: 1.2 mm, material: beech wood, colour: '#8a6a4b' }
  disc: { name: disc, shape: coin, size: 30 mm, hole: 1 mm, material: shell, colour: '#e9d9c8' }
  pipe: { name: pipe, shape: tube, size: 3 x 20 mm, hole: 1 mm, material: brass, colour: '#c29a3f' }
cords:
  wire: { name: steel wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, colour: '#aaaaaa' }
  lace: { name: leather lace, kind: leather, diameter: 2 mm, mass: 3 g/m, colour: '#553322' }
findings:
  crimp: { name: tube crimp, kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }
  hang: { name: head pin, kind: head pin, gauge: 21, length: 50 mm }
  bar: { name: spacer bar, kind: spacer bar, length: 3 mm, holes: 3, spacing: 6 mm }
";

fn bead() -> impl Strategy<Value = &'static str> {
    prop_oneof![Just("pin"), Just("pea"), Just("nut"), Just("disc"), Just("pipe")]
}

fn item() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        4 => (1..40_u32, bead()).prop_map(|(count, bead)| format!("{count} {bead}")),
        1 => (1..1500_u32).prop_map(|tenths| format!("{{ space: {:.1} mm }}", f64::from(tenths) / 10.0)),
        1 => Just("{ knot: 1.5 mm }".to_owned()),
        1 => Just("bar".to_owned()),
        1 => (1..5_u32, bead(), bead()).prop_map(|(count, one, other)| format!("{{ dangle: [{count} {one}, {other}], on: hang }}")),
    ];
    leaf.prop_recursive(2, 12, 4, |inner| {
        let list = prop::collection::vec(inner, 1..4).prop_map(|items| items.join(", "));
        prop_oneof![
            (1..60_u32, list.clone()).prop_map(|(times, list)| format!("{{ repeat: {times}, of: [{list}] }}")),
            (list.clone(), bead()).prop_map(|(list, bead)| format!("{{ mirror: [{list}], about: [{bead}] }}")),
        ]
    })
}

fn strand() -> impl Strategy<Value = String> {
    let settle = prop_oneof![
        Just("settle: fill"),
        Just("settle: slide, length: 9 m"),
        Just("settle: spread, length: 9 m"),
        Just("settle: fixed, length: 9 m")
    ];
    let ends = prop_oneof![Just("ends: crimp, "), Just("")];
    let cord = prop_oneof![Just("wire"), Just("lace")];
    let knots = prop_oneof![3 => Just(""), 1 => Just("knots: 1 mm, ")];
    (cord, ends, knots, settle, prop::collection::vec(item(), 1..5)).prop_map(|(cord, ends, knots, settle, items)| {
        format!("  - {{ name: strand, cord: {cord}, {ends}{knots}{settle}, beads: [{}] }}\n", items.join(", "))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn rows_are_whole_and_clear(
        strand in strand(),
        units in prop_oneof![Just("in"), Just("mm"), Just("both")],
        paper in prop::sample::select(PAPERS.to_vec()),
    ) {
        let text = format!("festoon: 1\ntitle: generated\nkind: necklace\nunits: {units}\n{STOCK}strands:\n{strand}");
        let piece = read(&text);
        // A list too long for its strand is refused, which other tests are about.
        prop_assume!(piece.is_ok());
        if let Ok(piece) = piece {
            assert_sound(&piece, paper);
        }
    }
}

#[test]
fn a_pins_loop_wider_than_its_beads_is_whole_on_a_tile() {
    let beads = "{ repeat: 14, of: [3 nut] }, { mirror: [28 pin, { repeat: 24, of: [4 pipe, { dangle: [1 pin, pin], on: \
                 hang }] }], about: [disc] }";
    let strand = format!("  - {{ name: strand, cord: wire, ends: crimp, settle: fill, beads: [{beads}] }}\n");
    let text = format!("festoon: 1\ntitle: generated\nkind: necklace\n{STOCK}strands:\n{strand}");
    proof::assert_sound(&read(&text).expect("a piece"), Paper::A4, 40.0);
}

#[test]
fn a_knot_wider_than_its_cord_keeps_clear_of_the_ruler() {
    let strand =
        "  - { name: strand, cord: lace, ends: crimp, settle: slide, length: 9 m, beads: [{ knot: 1.5 mm }] }\n";
    let text = format!("festoon: 1\ntitle: generated\nkind: necklace\n{STOCK}strands:\n{strand}");
    proof::assert_sound(&read(&text).expect("a piece"), Paper::Letter, 40.0);
}

proptest! {
    // A proof has up to 60 pages, and every one is looked at.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(12) })]

    #[test]
    fn proofs_are_whole_and_true(strand in strand(), paper in prop::sample::select(Paper::ALL.to_vec())) {
        let text = format!("festoon: 1\ntitle: generated\nkind: necklace\n{STOCK}strands:\n{strand}");
        let piece = read(&text);
        prop_assume!(piece.is_ok());
        if let Ok(piece) = piece {
            proof::assert_sound(&piece, paper, 40.0);
        }
    }
}

/// What the figure of the piece as it is worn is called.
const ON_THE_NECK: &str = "the piece on the neck";

/// Asserts that the legend and the drape have as many of each bead as are strung. The legend stands on the
/// face, or among the lists that the face has no room for.
fn assert_counted(pages: &[Page], piece: &Piece) {
    let faces = pages.iter().filter(|page| holds(page, "Face") || holds(page, "Lists"));
    // Below lists that the face has no room for stringing may begin.
    let listed = |page: &Page| {
        let found = boxes(page);
        let ends = found.iter().find(|found| found.text() == Some("Stringing")).map(|found| found.bounds.top);
        found.into_iter().filter(move |found| ends.is_none_or(|ends| found.bounds.top < ends))
    };
    let found: Vec<_> = faces.flat_map(listed).collect();
    let picture = festoon::picture::alternative(piece);
    for ((index, bead), count) in piece.design.beads.entries().zip(piece.design.counts()) {
        let drawn = found.iter().filter(|found| found.bead() == Some(index));
        let (worn, drawn): (Vec<_>, Vec<_>) =
            drawn.partition(|found| found.within.iter().any(|label| label == ON_THE_NECK));
        // A picture shows as many as are strung.
        let (pictured, drawn): (Vec<_>, Vec<_>) = drawn.into_iter().partition(|found| found.within.contains(&picture));
        assert!([0, count as usize].contains(&pictured.len()), "{}: {} pictured", bead.id, pictured.len());
        // The legend shows each bead once more.
        assert_eq!(drawn.len(), count as usize + 1, "{}", bead.id);
        // On the neck, what lies behind it is not seen.
        assert!(worn.len() <= count as usize, "{}", bead.id);
        let told = format!("{count} ×");
        assert!(found.iter().any(|found| found.text() == Some(told.as_str())), "{told} {}", bead.id);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(24) })]

    #[test]
    fn sheets_are_whole_and_count_alike(strand in strand(), paper in prop::sample::select(PAPERS.to_vec())) {
        let text = format!("festoon: 1\ntitle: generated\nkind: necklace\n{STOCK}strands:\n{strand}");
        let piece = read(&text);
        prop_assume!(piece.is_ok());
        if let Ok(piece) = piece {
            let pages = pages(&piece, paper);
            assert_counted(&pages, &piece);
            for page in &pages {
                prop_assert_eq!(boxes::outside(page, margin(paper)), Vec::<String>::new());
                prop_assert_eq!(boxes::overlapping_texts(page), Vec::<String>::new());
            }
            prop_assert!(pages.iter().any(|page| holds(page, "Making")));
        }
    }
}

/// Two to four strands of small beads, twisted round one another.
fn twisted() -> impl Strategy<Value = String> {
    let small = prop_oneof![Just("pin"), Just("pea")];
    let strand = (280..330_u32, small, prop::bool::ANY).prop_map(|(length, bead, slides)| {
        let settle = if slides { "" } else { ", settle: fill" };
        format!("length: {length} mm, beads: [{{ repeat: fill, of: [{bead}] }}]{settle} }}\n")
    });
    (prop::collection::vec(strand, 2..5), 2..20_u32).prop_map(|(strands, halves)| {
        let named = |(at, strand): (usize, &String)| format!("  - {{ name: s{at}, cord: wire, ends: crimp, {strand}");
        let strands: String = strands.iter().enumerate().map(named).collect();
        let rings = "  ring: { name: ring, kind: jump ring, inside: 4 mm, wire: 1 mm }\n";
        let stock = STOCK.replace("findings:\n", &format!("findings:\n{rings}"));
        let twist = 0.5 * f64::from(halves);
        format!(
            "festoon: 1\ntitle: generated\nkind: necklace\ntwist: {twist}\n{stock}strands:\n{strands}\
             closure: {{ each side: [ring] }}\n"
        )
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(12) })]

    #[test]
    fn sheets_of_twisted_strands_are_whole_and_count_alike(
        text in twisted(),
        paper in prop::sample::select(PAPERS.to_vec()),
    ) {
        let piece = read(&text);
        prop_assert!(piece.is_ok(), "{text}");
        if let Ok(piece) = piece {
            prop_assert!(piece.design.twist.is_some());
            let pages = pages(&piece, paper);
            assert_counted(&pages, &piece);
            for page in &pages {
                prop_assert_eq!(boxes::outside(page, margin(paper)), Vec::<String>::new());
                prop_assert_eq!(boxes::overlapping_texts(page), Vec::<String>::new());
            }
        }
    }
}

/// What the figure of a piece that is closed to a ring or coil is called.
const CLOSED: &str = "the piece closed";

/// A row that is tied to a ring, wound, or bent to a coil by hard wire; some of its beads are bought in a mix.
fn round() -> impl Strategy<Value = String> {
    let beads = prop::collection::vec((1..30_u32, bead()), 1..5);
    let kind = prop_oneof![Just("bracelet"), Just("anklet")];
    let cord = prop_oneof![2 => Just("wire, ends: knot"), 1 => Just("spring, ends: loop")];
    let mix =
        prop_oneof![Just(""), Just("assorted: { mix: { sold: { by: mix, count: 90 }, holds: { pea: 2, nut: 1 } } }\n")];
    (beads, kind, cord, 1..4_u32, mix).prop_map(|(beads, kind, cord, wraps, mix)| {
        let beads = beads.iter().map(|(count, bead)| format!("{count} {bead}")).collect::<Vec<_>>().join(", ");
        let spring =
            "  spring: { name: memory wire, kind: memory wire, diameter: 0.6 mm, coil: 57 mm, colour: '#b4b8bb' }\n";
        let stock = STOCK.replace("findings:\n", &format!("{spring}findings:\n"));
        let strand =
            format!("  - {{ name: strand, cord: {cord}, settle: fill, beads: [{{ repeat: 4, of: [{beads}] }}] }}\n");
        format!("festoon: 1\ntitle: generated\nkind: {kind}\nwraps: {wraps}\n{stock}{mix}strands:\n{strand}")
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(24) })]

    #[test]
    fn what_goes_round_is_whole_and_counted(text in round(), paper in prop::sample::select(PAPERS.to_vec())) {
        let piece = read(&text);
        // What does not go round so often is refused, which other tests are about.
        prop_assume!(piece.is_ok());
        if let Ok(piece) = piece {
            let pages = pages(&piece, paper);
            let found: Vec<_> = pages.iter().filter(|page| holds(page, "Face")).flat_map(boxes).collect();
            let is_closed = |found: &&boxes::Found| found.within.iter().any(|label| label == CLOSED);
            for ((index, bead), count) in piece.design.beads.entries().zip(piece.design.counts()) {
                let drawn = found.iter().filter(is_closed).filter(|found| found.bead() == Some(index)).count();
                prop_assert_eq!(drawn, if piece.drape.ring().is_some() { count as usize } else { 0 }, "{}", bead.id);
            }
            for page in &pages {
                prop_assert_eq!(boxes::outside(page, margin(paper)), Vec::<String>::new());
                prop_assert_eq!(boxes::overlapping_texts(page), Vec::<String>::new());
            }
        }
    }
}
