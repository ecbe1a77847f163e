//! Pieces that go round more than once.

use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

/// A bracelet of 60 beads tied to a row that goes twice round, for a wrist that leaves it just so much room.
fn wound() -> String {
    let text = bracelet("{ wrist: 150 mm, ease: 10 mm }").replace("[30 reed]", "[60 reed]");
    let inside = made(&and(&text, "wraps: 2")).0.unwrap().drape.ring().unwrap().inside_girth;
    text.replace("150 mm", &format!("{:.3} mm", inside - 10.0))
}

pub fn cases() -> Vec<Case> {
    let wraps = |text: &str, wraps: &str| and(text, &format!("wraps: {wraps}"));
    let other = "    beads: [60 reed]\n  - { name: other, cord: line, beads: [60 reed] }\n";
    let two = wound().replace("    beads: [60 reed]\n", other);
    let open = changed(&[("length: 16 in", "length: 32 in")]);
    let earrings = |text: &str| {
        let text = text.replace("kind: bracelet", "kind: earrings").replace("[60 reed]", "[6 reed]");
        and(&with_findings(&text, &[HOOK]), "closure: { left: [hook] }")
    };
    vec![
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
