//! The shipped patterns show the whole language between them.

use std::collections::BTreeSet;
use std::fmt::Display;

use festoon::Piece;
use festoon::design::{Design, Finding, Form, Lot, Pack};
use festoon::pattern::{
    BeadSize, CordKind, Drilled, FindingKind, Finish, Item, Kind, Outline, Pattern, Row, Settle, Shape, Skill, Times,
};
use festoon::source::At;
use festoon::units::UnitStyle;

use super::shipped::{Shipped, shipped};

/// Every one of a list of words is among those found.
fn all<T: Display>(words: &[T], found: impl Iterator<Item = String>) {
    let found: BTreeSet<_> = found.collect();
    let missing: Vec<_> = words.iter().map(ToString::to_string).filter(|word| !found.contains(word)).collect();
    assert!(missing.is_empty(), "no shipped pattern has: {missing:?}");
}

fn pieces() -> Vec<Piece> {
    shipped().iter().map(|shipped| shipped.piece(&festoon::design::Choice::default()).0).collect()
}

fn designs() -> Vec<Design> {
    pieces().into_iter().map(|piece| piece.design).collect()
}

#[test]
fn every_word_is_used() {
    let pieces = pieces();
    let designs: Vec<_> = pieces.iter().map(|piece| &piece.design).collect();
    let beads = || designs.iter().flat_map(|design| &design.beads);
    let findings = || designs.iter().flat_map(|design| &design.findings);
    let strands = || designs.iter().flat_map(|design| &design.strands);
    all(Kind::ALL, designs.iter().map(|design| design.heading.kind.to_string()));
    all(Skill::ALL, designs.iter().filter_map(|design| design.heading.skill).map(|skill| skill.to_string()));
    all(Shape::ALL, beads().map(|bead| bead.shape.to_string()));
    all(Finish::ALL, pieces.iter().flat_map(|piece| &piece.palette.beads).map(|coat| coat.finish.to_string()));
    all(Drilled::ALL, beads().map(|bead| bead.drilled.to_string()));
    all(Outline::ALL, findings().filter_map(outline));
    all(CordKind::ALL, designs.iter().flat_map(|design| &design.cords).map(|cord| cord.kind.to_string()));
    all(FindingKind::ALL, findings().map(|finding| finding.kind().to_string()));
    all(Settle::ALL, strands().map(|strand| strand.settle.to_string()));
    for units in [UnitStyle::In, UnitStyle::Mm, UnitStyle::Both] {
        assert!(pieces.iter().any(|piece| piece.telling.units == units), "{units:?}");
    }
}

/// A charm's outline in its word.
fn outline(finding: &Finding) -> Option<String> {
    match &finding.form {
        Form::Charm(charm) => Some(charm.outline.to_string()),
        _ => None,
    }
}

#[test]
fn every_way_to_sell_is_used() {
    let designs = designs();
    let lots = designs.iter().flat_map(|design| {
        let beads = design.beads.iter().map(|bead| &bead.sold);
        let cords = design.cords.iter().map(|cord| &cord.sold);
        beads.chain(cords).chain(design.findings.iter().map(|finding| &finding.sold))
    });
    let word = |lot: &Lot| match lot {
        Lot::Strand(_) => "strand",
        Lot::Hank(..) => "hank",
        Lot::Pack(_) => "pack",
        Lot::Each => "each",
        Lot::Grams(_) => "grams",
        Lot::Length(_) => "length",
    };
    let together = designs.iter().flat_map(|design| design.assorted.iter()).map(|one| match one.pack {
        Pack::Strand(_) => "graduated strand",
        Pack::Mix(_) => "mix",
    });
    let words = lots.flatten().map(|sold| word(&sold.lot)).chain(together);
    let known = ["strand", "hank", "pack", "each", "grams", "length", "graduated strand", "mix"];
    all(&known, words.map(str::to_owned));
}

#[test]
fn every_form_of_a_bead_list_is_used() {
    let mut found = BTreeSet::new();
    for shipped in shipped() {
        for strand in &shipped.pattern.strands.value {
            forms(&strand.value.beads.value, false, &mut found);
        }
    }
    let forms = [
        "run",
        "repeat",
        "repeat: fill",
        "nested repeat",
        "mirror",
        "about",
        "space",
        "links",
        "knot",
        "dangle",
        "stop",
        "random",
        "random: fill",
        "fade",
        "graduate",
    ];
    all(&forms, found.into_iter().map(str::to_owned));
}

fn forms(items: &[At<Item>], repeated: bool, found: &mut BTreeSet<&'static str>) {
    for item in items {
        match &item.value {
            Item::Run(_) => drop(found.insert("run")),
            Item::Repeat(repeat) => {
                found.insert(if repeat.repeat == Times::Fill { "repeat: fill" } else { "repeat" });
                if repeated {
                    found.insert("nested repeat");
                }
                forms(&repeat.of, true, found);
            }
            Item::Mirror(mirror) => {
                found.extend(["mirror"].into_iter().chain(mirror.about.as_ref().map(|_| "about")));
                forms(&mirror.mirror, repeated, found);
                mirror.about.iter().for_each(|about| forms(about, repeated, found));
            }
            Item::Space(_) => drop(found.insert("space")),
            Item::Links(_) => drop(found.insert("links")),
            Item::Knot(_) => drop(found.insert("knot")),
            Item::Dangle(dangle) => {
                found.insert("dangle");
                forms(&dangle.dangle, repeated, found);
            }
            Item::Stop(_) => drop(found.insert("stop")),
            Item::Row(row @ Row::Random(_)) => {
                found.extend(["random"].into_iter().chain(row.fills().then_some("random: fill")));
            }
            Item::Row(Row::Fade(_)) => drop(found.insert("fade")),
            Item::Row(Row::Graduate(_)) => drop(found.insert("graduate")),
        }
    }
}

#[test]
fn every_key_is_used() {
    let patterns: Vec<Pattern> = shipped().into_iter().map(|shipped| shipped.pattern).collect();
    let beads = || patterns.iter().flat_map(|pattern| &pattern.beads.entries).map(|(_, bead)| bead);
    let cords = || patterns.iter().flat_map(|pattern| &pattern.cords.entries).map(|(_, cord)| cord);
    let findings =
        || patterns.iter().flat_map(|pattern| &pattern.findings).flat_map(|all| &all.entries).map(|(_, one)| one);
    let strands = || patterns.iter().flat_map(|pattern| &pattern.strands.value).map(|strand| &strand.value);
    let wears = || patterns.iter().filter_map(|pattern| pattern.wear.as_ref()).map(|wear| &wear.value);
    let closures = || patterns.iter().filter_map(|pattern| pattern.closure.as_ref()).map(|closure| &closure.value);
    let used = [
        ("sizes", patterns.iter().any(|pattern| pattern.sizes.is_some())),
        ("colourways", patterns.iter().any(|pattern| pattern.colourways.is_some())),
        ("price", patterns.iter().any(|pattern| pattern.price.is_some())),
        ("expect", patterns.iter().any(|pattern| pattern.expect.is_some())),
        ("notes", patterns.iter().any(|pattern| pattern.notes.is_some())),
        ("seed size", beads().any(|bead| matches!(&bead.size.value, BeadSize::Seed(name) if name == "11/0"))),
        ("thick", beads().any(|bead| bead.thick.is_some())),
        ("tolerance", beads().any(|bead| bead.tolerance.is_some())),
        ("measured", beads().any(|bead| bead.measured.is_some())),
        ("mass", beads().any(|bead| bead.mass.is_some())),
        ("instead", beads().any(|bead| bead.instead.is_some())),
        ("gauge of a cord", cords().any(|cord| cord.gauge.is_some())),
        ("gauge of a finding", findings().any(|finding| finding.gauge.is_some())),
        ("wire", findings().any(|finding| finding.wire.is_some())),
        ("stiffness", cords().any(|cord| cord.stiffness.is_some())),
        ("links of a cord", cords().any(|cord| cord.links.is_some())),
        ("breakaway", findings().any(|finding| finding.breakaway.is_some())),
        ("leave", strands().any(|strand| strand.leave.is_some())),
        ("knots", strands().any(|strand| strand.knots.is_some())),
        ("neck base", wears().any(|wear| wear.neck_base.is_some())),
        ("wrist", wears().any(|wear| wear.wrist.is_some())),
        ("ankle", wears().any(|wear| wear.ankle.is_some())),
        ("breadth to depth", wears().any(|wear| wear.breadth_to_depth.is_some())),
        ("chest tilt", wears().any(|wear| wear.chest_tilt.is_some())),
        ("body", wears().any(|wear| wear.body.is_some())),
        ("child", wears().any(|wear| wear.child.is_some())),
        ("each side", closures().any(|closure| closure.each_side.is_some())),
        ("both ends", closures().any(|closure| closure.both_ends.is_some())),
    ];
    let missing: Vec<_> = used.iter().filter(|(_, used)| !used).map(|(key, _)| key).collect();
    assert!(missing.is_empty(), "no shipped pattern has: {missing:?}");
}

#[test]
fn every_shipped_pattern_is_offered_to_begin_from() {
    let offered = include_str!("../../src/cli/desk/start.rs");
    for Shipped { name, .. } in shipped() {
        assert!(offered.contains(&format!("worked!(\"{name}\")")), "put {name} on the list of src/cli/desk/start.rs");
    }
}
