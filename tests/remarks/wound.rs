//! Pieces that go round more than once.

use festoon::design::nth;
use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

/// A bracelet of 60 beads tied to a row that goes twice round, for a wrist that leaves it just so much room.
fn wound() -> String {
    let text = bracelet("{ wrist: 150 mm, ease: 10 mm }").replace("[30 reed]", "[60 reed]");
    let inside = made(&and(&text, "wraps: 2")).0.unwrap().drape.ring().unwrap().inside_girth;
    text.replace("150 mm", &format!("{:.3} mm", inside - 10.0))
}

/// A bracelet on memory wire, two turns and a half of it.
fn sprung() -> String {
    let wire = (
        "kind: thread, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m",
        "kind: memory wire, diameter: 0.4 mm, coil: 57 mm",
    );
    let text = bracelet("{ wrist: 150 mm, ease: 5 mm }").replace("[30 reed]", "[{ repeat: fill, of: [reed] }]");
    and(&text.replace(wire.0, wire.1), "wraps: 2 1/2")
}

fn with_beads(text: &str, shape: &str) -> String {
    text.replace("shape: round, size: 6 mm", shape)
}

pub fn cases() -> Vec<Case> {
    let wraps = |text: &str, wraps: &str| and(text, &format!("wraps: {wraps}"));
    let other = "    beads: [60 reed]\n  - { name: other, cord: line, beads: [60 reed] }\n";
    let two = wound().replace("    beads: [60 reed]\n", other);
    let clasped = || and(&with_findings(&sprung(), &[CLASP]), "closure: { right: [clasp] }");
    let tubes = |length: &str| with_beads(&sprung(), &format!("shape: tube, size: 4 x {length}"));
    let counted = |wraps: &str| sprung().replace("{ repeat: fill, of: [reed] }", "75 reed").replace("2 1/2", wraps);
    let wrist = |girth: &str| sprung().replace("150 mm", girth);
    let ended = |ends: &str| sprung().replace("    beads", &format!("    ends: {ends}\n    beads"));
    let open = changed(&[("length: 16 in", "length: 32 in")]);
    let earrings = |text: &str| {
        let text = text.replace("kind: bracelet", "kind: earrings").replace("[60 reed]", "[6 reed]");
        and(&with_findings(&text, &[HOOK]), "closure: { left: [hook] }")
    };
    vec![
        // Inside the beads it measures pi x (57 + 0.4 - 6) mm = 161.48 mm.
        Case::new(Code::CoilSmall, wrist("161.4 mm"), wrist("161.6 mm")),
        // 11² / 8R = 0.53 mm and 12² / 8R = 0.63 mm of 0.6 mm that the wire leaves of the hole.
        Case::new(Code::BeadStiff, tubes("11 mm"), tubes("12 mm")),
        // 75 balls of 6 mm each take 2 R asin(3 / R) = 6.01 mm of turns that are 180.4 mm long: 2.5 turns.
        Case::new(Code::OtherTurns, counted("2.7"), counted("2.8")),
        Case::new(Code::EndsMeet, sprung(), sprung().replace("2 1/2", "2")),
        Case::new(Code::CannotWrap, sprung(), clasped()),
        Case::new(Code::Misplaced, ended("loop"), ended("knot")),
        Case::new(Code::Misplaced, sprung(), ended("loop").replace("ends: loop", "length: 400 mm")),
        Case::new(Code::Misplaced, sprung(), sprung().replace("of: [reed] }", "of: [reed] }, { knot: 2 mm }, reed")),
        Case::new(Code::Misplaced, sound(), changed(&[("kind: thread,", "kind: thread, coil: 57 mm,")])),
        Case::new(Code::Misplaced, sprung(), sprung().replace("coil: 57 mm", "coil: 57 mm, stiffness: 2 N mm²")),
        Case::new(Code::MissingSize, sprung(), sprung().replace(", coil: 57 mm", "")),
        Case::new(Code::CannotWrap, wraps(&wound(), "2"), wraps(&wound(), "2 1/2")),
        Case::new(Code::CannotWrap, wraps(&wound(), "2"), wraps(&two, "2")),
        Case::new(Code::CannotWrap, wraps(&wound(), "2"), wraps(&earrings(&wound()), "2")),
        Case::new(Code::CannotWrap, open.clone(), and(&wraps(&open, "2"), "closure: { open: hanging }")),
    ]
}

#[test]
fn each_time_round_is_let_out_for_another_wrist() {
    let piece = |change: f64| {
        let text = wound();
        let wrist = made(&and(&text, "wraps: 2")).0.unwrap().design.wear.girth.value() + change;
        let from = text.find("wrist: ").unwrap();
        let to = from + text[from..].find(" mm").unwrap();
        codes(&and(&(text[..from].to_owned() + &format!("wrist: {wrist:.3}") + &text[to..]), "wraps: 2"))
    };
    assert_eq!(piece(2.4), []);
    assert_eq!(piece(2.6), [Code::RingTight]);
    assert_eq!(piece(-2.6), [Code::RingLoose]);
    assert_eq!(piece(11.0), [Code::TooShort]);
}

#[test]
fn a_necklace_that_is_wound_goes_round_the_neck_each_time() {
    let long = |length: &str| {
        let text = changed(&[("length: 16 in", length)]);
        codes(&and(&joined(&text.replace("    beads", "    ends: crimp\n    beads"), &[CRIMP]), "wraps: 2"))
    };
    assert_eq!(long("length: 32 in"), []);
    assert_eq!(long("length: 24 in"), [Code::TooShort]);
}

#[test]
fn beads_on_memory_wire_take_the_curve() {
    let piece = made(&sprung()).0.unwrap();
    let (design, strand) = (&piece.design, &piece.design.strands[nth(0)]);
    // Balls of 6 mm on a circle of 28.7 mm touch where each takes 2 asin(3 / 28.7) of it; the helix is bent as one of
    // r + (p / 2 pi)² / r.
    let bend = 28.7 + (6.0 / std::f64::consts::TAU).powi(2) / 28.7;
    let counted = strand.bits().count() as f64;
    let each = 2.0 * bend * libm::asin(3.0 / bend);
    assert!((strand.finished.value() - counted * each).abs() < 0.02 * counted, "{}", strand.finished);
    let turn = libm::hypot(std::f64::consts::TAU * 28.7, 6.0);
    assert!((design.turns() - strand.finished.value() / turn).abs() < 1e-9);
    assert!((design.turns() - 2.5).abs() < 0.5 * each / turn + 1e-9);
    // A loop of 3 mm inside at each end, of wire of 0.4 mm.
    assert!((strand.cut() - strand.finished).value() - 2.0 * std::f64::consts::PI * 3.4 < 1e-9);
    let coil = piece.drape.ring().unwrap().coil.as_ref().unwrap();
    let long: f64 = coil.way.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
    assert!((long - strand.finished.value()).abs() < 0.5, "{long}");
}
