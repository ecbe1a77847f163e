//! Rows side by side, and what several of them go through.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::design::nth;
use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    [bars(), rows(), ladders()].into_iter().flatten().collect()
}

fn bars() -> Vec<Case> {
    const ONE: &str = "14 reed, tile, 14 reed";
    let barred = |first: &str, second: &str, holes: &str| {
        let strand = |name, length, bars: &str| {
            let list = format!("[5 reed, {bars}, 5 reed]");
            STRAND.replace("only", name).replace("16 in", length).replace("[20 reed]", &list)
        };
        let strands = [strand("inner", "16 in", first), strand("outer", "26 in", second)].concat();
        let bar = format!("bar: {{ kind: spacer bar, length: 3 mm, spacing: 8 mm{holes} }}");
        with_findings(&format!("{HEAD}{strands}{WEAR}"), &[&bar])
    };
    let tiled = |first: &str, second: &str, holes: &str| {
        let strand = |name, list: &str| format!("  - {{ name: {name}, cord: line, beads: [{list}] }}\n");
        let tile = format!(
            "  tile: {{ shape: square, size: 10 x 5 mm, thick: 3 mm, hole: 1 mm, apart: 5 mm{holes}, colour: \"#c9d6d8\", mass: 0.4 g }}\n"
        );
        let strands = strand("one", first) + &strand("other", second);
        format!("{HEAD}{strands}wear: {{ wrist: 140 mm, ease: 12 mm }}\n")
            .replace("necklace", "bracelet")
            .replace("beads:\n", &format!("beads:\n{tile}"))
    };
    let ends = |kind, holes| {
        let strands = [STRAND.replace("only", "inner"), STRAND.replace("only", "outer").replace("16 in", "26 in")];
        let bar = format!("bar: {{ kind: {kind}, length: 3 mm, spacing: 8 mm, holes: {holes} }}");
        // Halves that are bought in pairs.
        let bar = bar.replace(" }", ", sold: { by: pack, count: 2 } }");
        let text = with_findings(&format!("{HEAD}{}{WEAR}", strands.concat()), &[&bar]);
        and(&text, "closure: { each side: [bar] }")
    };
    let two = ", holes: 2";
    let joined = tiled(ONE, ONE, two);
    vec![
        Case::new(Code::BarHoles, barred("bar", "bar", two), barred("bar, reed, bar", "bar", two)),
        Case::new(Code::BarHoles, joined.clone(), tiled("13 reed, tile, reed, tile, 13 reed", ONE, two)),
        Case::new(Code::HolesAstray, joined.clone(), tiled(ONE, "15 reed, tile, 13 reed", two)),
        Case::new(Code::MissingSize, joined.clone(), joined.replace("apart: 5 mm, ", "")),
        Case::new(Code::BadSize, joined.clone(), tiled(ONE, ONE, ", holes: 1")),
        Case::new(Code::BadSize, joined.replace("10 x 5", "6.1 x 5"), joined.replace("10 x 5", "6 x 5")),
        Case::new(Code::BarHoles, barred("bar", "bar", two), barred("bar", "reed", two)),
        // Bars of one hole are not shared.
        Case::new(Code::BarHoles, barred("bar, reed, bar", "bar", ", holes: 1"), barred("bar, reed, bar", "bar", two)),
        Case::new(Code::BarHoles, ends("end bar", 2), ends("end bar", 1)),
        Case::new(Code::BarHoles, ends("box half", 2), ends("box half", 1)),
        Case::new(Code::MissingSize, barred("bar", "bar", two), barred("bar", "bar", "")),
    ]
}

/// Two rows of one length on a clasp with two loops, joined at many places. Such a ladder does not bend in its own plane,
/// but limp rows fold over one another, which stiff ones do not.
fn ladders() -> Vec<Case> {
    let rows = |stiffness: &str| {
        let strand = |name| {
            format!(
                "  - {{ name: {name}, cord: line, ends: crimp, beads: [{{ repeat: 13, of: [5 reed, tile] }}, 5 reed] }}\n"
            )
        };
        let tile = "tile: { shape: square, size: 12 x 6 mm, thick: 3 mm, hole: 1 mm, holes: 2, apart: 6 mm, colour: \"#c9d6d8\", mass: 0.4 g }";
        let text = format!("{HEAD}{}{}{WEAR}", strand("one"), strand("other"))
            .replace("beads:\n  reed", &format!("beads:\n  {tile}\n  reed"))
            .replace("6 mm, hole: 1 mm, colour", "4 mm, hole: 1 mm, colour")
            .replace("kind: thread", &format!("kind: wire{stiffness}"));
        let half = "kind: box half, length: 6 mm, holes: 2, spacing: 6 mm";
        let (first, last) = (format!("box: {{ {half} }}"), format!("tongue: {{ {half}, comes with: box }}"));
        and(&with_findings(&text, &[CRIMP, &first, &last]), "closure: { left: [box], right: [tongue] }")
    };
    let folded = rows(", stiffness: 0 N mm²");
    // Three strands that touch, of 1,000 beads each: together more parts than are laid side by side.
    let many = |names: &[&str]| {
        let strand = |name: &&str| format!("  - {{ name: {name}, cord: line, length: 1040 mm, beads: [1000 reed] }}\n");
        let strands: String = names.iter().map(strand).collect();
        let text = format!("{HEAD}{strands}{WEAR}").replace("size: 6 mm, hole: 1 mm", "size: 1 mm, hole: 0.6 mm");
        let text = text.replace("mass: 0.27 g", "mass: 0.002 g");
        if names.len() > 1 { and(&text, "allow: [strands-crowd]") } else { text }
    };
    vec![
        Case::new(Code::StrandsUnsettled, many(&["one"]), many(&["one", "two", "three"])),
        Case::new(Code::StrandsCrowd, and(&folded, "allow: [strands-crowd]"), folded),
    ]
}

/// Rows that go through the same bars, whose holes are 8 mm apart: a bar that lies 2 mm farther along one of them leans
/// by a quarter of that.
fn rows() -> Vec<Case> {
    let rows = |kind: &str, lists: &[&str], thin: &str| {
        let strand = |(at, list): (usize, &&str)| format!("  - {{ name: row {at}, cord: line, beads: [{list}] }}\n");
        let strands: String = lists.iter().enumerate().map(strand).collect();
        let thin = format!("  thin: {{ shape: cube, size: {thin}, hole: 1 mm, colour: \"#c9d6d8\", mass: 0.1 g }}\n");
        let holes = lists.len();
        let bar = format!("bar: {{ kind: spacer bar, length: 3 mm, spacing: 8 mm, inside: 1 mm, holes: {holes} }}");
        let wear = if kind == "bracelet" { "{ wrist: 146 mm, ease: 8 mm }" } else { "{ neck base: 170 mm }" };
        let text = HEAD.replace("necklace", kind).replace("beads:\n", &format!("beads:\n{thin}"));
        with_findings(&format!("{text}{strands}wear: {wear}\n"), &[&bar])
    };
    let round = |thin| rows("bracelet", &["14 reed, bar, thin, 14 reed", "14 reed, thin, bar, 14 reed"], thin);
    // The outer row may be longer between the ends and the bar, and the inner one by 2 mm.
    let swags = |inner: &str, outer: &str| rows("necklace", &[inner, outer], "1.9 mm");
    let between = |reeds: u32, middle: &str| format!("{reeds} reed, bar, {middle}, bar, {reeds} reed");
    let outer = || between(28, "reed, thin, reed");
    let inner = |thin: &str| between(13, &format!("reed, {thin}, reed"));
    let three =
        |middle| rows("bracelet", &["14 reed, bar, thin, 14 reed", middle, "14 reed, bar, thin, 14 reed"], "1.9 mm");
    vec![
        Case::new(Code::HolesAstray, round("1.9 mm"), round("2.1 mm")),
        Case::new(Code::HolesAstray, swags(&inner("2 thin"), &outer()), swags(&inner("3 thin"), &outer())),
        Case::new(Code::HolesAstray, swags(&inner("thin"), &outer()), swags(&outer(), &inner("thin"))),
        Case::new(Code::BarHoles, three("14 reed, bar, thin, 14 reed"), three("14 reed, 3 thin, 14 reed")),
    ]
}

/// A bead with two holes is strung on two strands, weighs once and is bought once, and holds them apart.
#[test]
fn a_bead_with_two_holes_counts_once() {
    let row = |name| format!("  - {{ name: {name}, cord: line, beads: [{{ repeat: 6, of: [3 reed, tile] }}] }}\n");
    let tile =
        "tile: { shape: square, size: 10 x 5 mm, thick: 3 mm, hole: 1 mm, holes: 2, apart: 5 mm, colour: \"#c9d6d8\"";
    let made = |mass: &str| {
        let text = format!("{HEAD}{}{}wear: {{ wrist: 150 mm }}\n", row("one"), row("other"));
        let text = text.replace("necklace", "bracelet").replace("beads:\n", &format!("beads:\n  {tile}{mass} }}\n"));
        made(&text).0.unwrap().design
    };
    let design = made(", mass: 0.4 g");
    assert_eq!(design.counts().as_slice(), [36, 6]);
    let bought: Vec<u64> = festoon::materials::need::bought(&design).into_values().collect();
    assert_eq!(bought, [36, 6]);
    let without = 36.0 * 0.27 + design.strands.iter().map(|one| one.cord_used().value() * 0.6e-3).sum::<f64>();
    assert!((design.mass().value() - without - 6.0 * 0.4).abs() < 1e-9);
    assert_eq!(design.abreast().iter().map(|at| at.value()).collect::<Vec<_>>(), [0.0, 5.0]);
    // Glass of 2.5 g/cm³: a slab of 10 x 5 x 3 mm less two bores of 1 mm along its 5 mm.
    let slab = 2.5e-3 * (150.0 - 2.0 * std::f64::consts::PI * 0.25 * 5.0);
    let tile = &made(", material: glass").beads[festoon::design::nth(1)];
    assert!((tile.mass.value() - slab).abs() < 1e-9, "{}", tile.mass.value());
}

/// A clasp lengthens the piece once, weighs once and holds its rows as far apart as its loops, however many
/// strands end on it.
#[test]
fn a_clasp_with_loops_counts_once() {
    let rows = |count: usize| {
        let strand = |at: usize| format!("  - {{ name: row {at}, cord: line, beads: [30 reed] }}\n");
        let strands: String = (0..count).map(strand).collect();
        let half = |id| format!("{id}: {{ kind: slide half, length: 7 mm, spacing: 7 mm, holes: 3, mass: 2 g }}");
        let text = format!("{}{strands}wear: {{ wrist: 160 mm }}\n", HEAD.replace("necklace", "bracelet"));
        let text = with_findings(&text, &[&half("one"), &half("other")]);
        made(&and(&text, "closure: { left: [one], right: [other] }")).0.unwrap()
    };
    let (one, three) = (rows(1), rows(3));
    let length = |piece: &festoon::Piece| piece.design.piece_length().1.value();
    assert!(
        (length(&one) - (one.design.strands[nth(0)].finished + one.design.strands[nth(0)].slack).value() - 14.0).abs()
            < 1e-9
    );
    assert!((length(&three) - length(&one)).abs() < 1e-9);
    let row = one.design.mass().value() - 4.0;
    assert!((three.design.mass().value() - 3.0 * row - 4.0).abs() < 1e-9);
    let lie: Vec<f64> = three.drape.strands.iter().map(|hung| hung.ends[0].y).collect();
    assert_eq!(lie, [0.0, -7.0, -14.0]);
    let along: Vec<f64> = three.design.abreast().iter().map(|at| at.value()).collect();
    assert_eq!(along, [0.0, 7.0, 14.0]);
}

/// What a shared bar weighs, each strand bears a part of.
#[test]
fn a_shared_bar_weighs_once() {
    let bar = "bar: { kind: spacer bar, length: 3 mm, spacing: 8 mm, holes: 2, mass: 3 g }";
    let mass = |beads: &str| {
        let strand = |name, length| STRAND.replace("only", name).replace("16 in", length).replace("[20 reed]", beads);
        let text = format!("{HEAD}{}{}{WEAR}", strand("inner", "16 in"), strand("outer", "26 in"));
        made(&with_findings(&text, &[bar])).0.unwrap().design.mass().value()
    };
    assert!((mass("[5 reed, bar, 5 reed, bar, 5 reed]") - mass("[15 reed]") - 6.0).abs() < 1e-9);
}
