//! A pattern about which nothing is said, and small changes to it.

use festoon::Piece;
use festoon::design::Choice;
use festoon::remark::{Code, Remark};
use festoon::source::Source;

pub const HEAD: &str = "\
festoon: 1
title: Try
kind: necklace
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", mass: 0.27 g }
cords:
  line: { kind: thread, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m }
strands:
";
pub const STRAND: &str = "  - name: only
    cord: line
    length: 16 in
    beads: [20 reed]
";
pub const WEAR: &str = "wear: { neck base: 370 mm }\n";

pub const CRIMP: &str = "crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }";
pub const GUARD: &str = "guard: { kind: wire guard, length: 4 mm }";
pub const PIN: &str = "pin: { kind: head pin, wire: 0.6 mm, length: 20 mm }";
pub const EYE: &str = "eye: { kind: eye pin, wire: 0.72 mm, length: 50 mm }";
pub const CONE: &str = "cone: { kind: cone, length: 14 mm, inside: 8 mm, tip: 1.5 mm }";
pub const CLASP: &str = "clasp: { kind: clasp, length: 12 mm }";
pub const RING: &str = "ring: { kind: jump ring, inside: 3 mm, wire: 0.8 mm }";
pub const HOOK: &str = "hook: { kind: ear wire, length: 18 mm }";
/// A closure of both.
pub const CLOSED: &str = "closure: { left: [ring], right: [clasp] }";

/// A second bead that looks like no other.
pub const MIST: &str = "beads:\n  mist: { shape: cube, size: 4 mm, hole: 1 mm, colour: \"#c9d6d8\", mass: 0.1 g }\n";

/// A pattern about which no rule has anything to say.
pub fn sound() -> String {
    [HEAD, STRAND, WEAR].concat()
}

/// The sound pattern with each text replaced by another.
pub fn changed(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(sound(), |text, (from, to)| {
        assert!(text.contains(from), "{from} in {text}");
        text.replace(from, to)
    })
}

/// The pattern with findings, which it did not have.
pub fn with_findings(text: &str, findings: &[&str]) -> String {
    let lines: String = findings.iter().map(|finding| format!("  {finding}\n")).collect();
    text.replace("strands:\n", &format!("findings:\n{lines}strands:\n"))
}

/// The pattern with findings, and a closure that joins its ends.
pub fn joined(text: &str, findings: &[&str]) -> String {
    and(&with_findings(text, &[findings, &[CLASP, RING]].concat()), CLOSED)
}

/// The pattern with another top-level key.
pub fn and(text: &str, key: &str) -> String {
    format!("{text}{key}\n")
}

/// The sound pattern as a bracelet of 30 beads.
pub fn bracelet(wear: &str) -> String {
    changed(&[
        ("necklace", "bracelet"),
        ("    length: 16 in\n", ""),
        ("[20 reed]", "[30 reed]"),
        ("{ neck base: 370 mm }", wear),
    ])
}

/// A piece and what is said of it. The sound piece is short, so that its numbers are small, and goes over no head: that
/// is looked at in its own case alone.
pub fn made(text: &str) -> (Option<Piece>, Vec<Remark>) {
    let (piece, mut remarks) = told(text);
    remarks.retain(|remark| remark.code() != Code::OverHead);
    (piece, remarks)
}

/// A piece and all that is said of it.
pub fn told(text: &str) -> (Option<Piece>, Vec<Remark>) {
    festoon::piece(&Source::new("try.yaml", text), &Choice::default(), None)
}

pub fn codes(text: &str) -> Vec<Code> {
    made(text).1.iter().map(|remark| remark.code()).collect()
}
