//! Cord, wire and crimps in holes, eyes and cones.

use festoon::design::nth;
use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    [cords(), doubled_cords(), crimps(), pins(), cones(), closures(), drops(), groups(), inside(), knots()]
        .into_iter()
        .flatten()
        .collect()
}

/// Lets a cord fill its hole.
const TIGHT: &str = "allow: [cord-tight]";

fn cords() -> Vec<Case> {
    let cord = |diameter| changed(&[("0.4 mm", diameter)]);
    let stopped = |inside: &str| {
        let text = changed(&[("[20 reed]", "[10 reed, { stop: crimp, at: 200 mm }, 10 reed]")]);
        with_findings(&text, &[&CRIMP.replace("1.3 mm", inside)])
    };
    vec![
        Case::new(Code::CordTooThick, and(&cord("1 mm"), TIGHT), cord("1.01 mm")),
        // A tenth wider than 0.9 mm is 0.99 mm.
        Case::new(Code::CordTight, cord("0.9 mm"), cord("0.91 mm")),
        Case::new(Code::CordTooThick, stopped("0.4 mm"), stopped("0.39 mm")),
    ]
}

/// A strand on a folded cord, hitched to a jump ring.
fn doubled(from: &str, to: &str) -> String {
    let text = changed(&[("kind: thread", "kind: silk"), ("length: 16 in", "length: 16 in\n    doubled: yes")]);
    let text = with_findings(&text, &["ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm }", CRIMP]);
    (text + "closure: { left: [ring] }\n").replace(from, to)
}

fn doubled_cords() -> Vec<Case> {
    // Two circles need twice one's diameter (packing): a hole of 1 mm passes two cords of 0.5 mm.
    let cord = |diameter| doubled("0.4 mm", diameter).replace(&format!("  {CRIMP}\n"), "");
    // Four circles need 1 + sqrt(2) = 2.4142 times one's diameter (packing): 0.9657 mm for 0.4 mm.
    let crimped = |inside| doubled("doubled: yes", "doubled: yes\n    ends: crimp").replace("inside: 1.3 mm", inside);
    let hitched = || doubled("", "").replace(&format!("  {CRIMP}\n"), "");
    // Each leg bears half of the tension.
    let tension = made(&hitched()).0.unwrap().drape.strands[nth(0)].tension;
    let five = 5.0 * tension.first.max(tension.last) / 2.0;
    let strength = |newtons: f64| hitched().replace("60 N", &format!("{newtons:.6} N"));
    vec![
        Case::new(Code::CordTooThick, and(&cord("0.5 mm"), TIGHT), cord("0.51 mm")),
        Case::new(Code::CordTight, cord("0.45 mm"), cord("0.46 mm")),
        Case::new(Code::CrimpTooSmall, crimped("inside: 0.97 mm"), crimped("inside: 0.96 mm")),
        Case::new(Code::Unhitched, hitched(), hitched().replace("left: [ring]", "right: [ring]")),
        Case::new(Code::Unhitched, hitched(), hitched().replace("kind: silk", "kind: wire")),
        Case::new(Code::WeakCord, strength(five * 1.001), strength(five * 0.999)),
    ]
}

fn crimps() -> Vec<Case> {
    let ends = |ends: &str, inside: &str, others: &[&str]| {
        let text = changed(&[("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
        joined(&text, &[&[CRIMP.replace("1.3 mm", inside).as_str()], others].concat())
    };
    // Two circles need twice one's diameter (packing): 0.8 mm for a wire of 0.4 mm.
    let crimped = |inside| ends("crimp", inside, &[]);
    // Three circles need 2.1547 times one's diameter (packing): 0.8619 mm for a wire of 0.4 mm.
    let guarded = |inside| ends("[guard, crimp]", inside, &[GUARD]);
    let tubed =
        |tube: &str| ends("[guard, crimp]", "1.3 mm", &[&GUARD.replace("4 mm", &format!("4 mm, inside: {tube}"))]);
    let covered = |length: &str, inside: &str| {
        let cover = format!("cover: {{ kind: crimp cover, length: {length}, outside: 4 mm, inside: {inside} }}");
        ends("[crimp, cover]", "1.3 mm", &[&cover])
    };
    let cupped = |inside: &str, bead: &str| {
        let cup = format!("cup: {{ kind: knot cover, length: 5 mm, inside: {inside}{bead} }}");
        joined(&changed(&[("length: 16 in", "length: 16 in\n    ends: cup")]), &[&cup])
    };
    vec![
        Case::new(Code::CrimpTooSmall, crimped("0.8 mm"), crimped("0.79 mm")),
        Case::new(Code::CrimpTooSmall, guarded("0.87 mm"), guarded("0.86 mm")),
        Case::new(Code::CordTooThick, tubed("0.4 mm"), tubed("0.39 mm")),
        Case::new(Code::CoverTooSmall, covered("3 mm", "2 mm"), covered("3 mm", "1.99 mm")),
        Case::new(Code::CoverTooSmall, covered("2 mm", "3 mm"), covered("1.9 mm", "3 mm")),
        // Three widths of a cord of 0.4 mm.
        Case::new(Code::CoverTooSmall, cupped("1.2 mm", ""), cupped("1.19 mm", "")),
        Case::new(Code::CoverTooSmall, cupped("6 mm", ", bead: reed"), cupped("5.9 mm", ", bead: reed")),
    ]
}

fn groups() -> Vec<Case> {
    let spread = |group: &str, thick: &str| {
        let row = format!("[{{ repeat: 3, of: [{group}] }}]\n    settle: spread");
        changed(&[("[20 reed]", &row), ("0.4 mm", thick)])
    };
    let held = |group: &str| spread(group, "0.4 mm").replace("hole: 1 mm", "hole: 0.9 mm");
    let hung = |group: &str| with_findings(&held(group), &[PIN]);
    // A hole of 1 mm is a tenth wider than a cord of 0.909 mm.
    vec![
        Case::new(
            Code::NothingHolds,
            held("{ knot: 1.2 mm }, 2 reed, { knot: 1.2 mm }"),
            held("{ knot: 1.2 mm }, 2 reed"),
        ),
        Case::new(Code::NothingHolds, spread("2 reed", "0.91 mm"), spread("2 reed", "0.9 mm")),
        Case::new(
            Code::NothingHolds,
            hung("{ knot: 1.2 mm }, { dangle: [reed], on: pin }, { knot: 1.2 mm }"),
            hung("{ dangle: [reed], on: pin }"),
        ),
    ]
}

/// What hangs in a chain's links stays there.
#[test]
fn a_chain_holds_its_dangles() {
    let row = "[{ repeat: 3, of: [{ dangle: [reed], on: pin }] }]\n    settle: spread";
    let chain = changed(&[("kind: thread, diameter: 0.4 mm", "kind: chain, diameter: 1.5 mm"), ("[20 reed]", row)]);
    let found = codes(&with_findings(&chain, &[PIN]));
    assert!(!found.contains(&Code::NothingHolds), "{found:?}");
    assert!(made(&with_findings(&chain, &[PIN])).0.is_some(), "{found:?}");
}

fn closures() -> Vec<Case> {
    const BAR: &str = "bar: { kind: end bar, length: 5 mm, spacing: 8 mm, holes: 1 }";
    const SLIDE: &str = "  slide: { kind: barrel half, length: 5 mm, sold: { by: each } }";
    let closed = |closure: &str| and(&with_findings(&sound(), &[CLASP, RING, BAR]), closure);
    let halves = |left: &str, right: &str| {
        let findings = [left, right].map(|finding| format!("{finding}, length: 7 mm }}"));
        let text = with_findings(&sound(), &findings.each_ref().map(String::as_str));
        and(&text, "closure: { left: [one], right: [other] }")
    };
    let slide = |id: &str, loops: u32| format!("{id}: {{ kind: slide half, spacing: 8 mm, holes: {loops}");
    let toggle = "one: { kind: toggle ring";
    let ends = |ends: &str| changed(&[("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
    let crimped = with_findings(&ends("crimp"), &[CRIMP]);
    let lace = |ring: &str| {
        let tip = "tip: { kind: cord end, length: 8 mm, inside: 0.5 mm }";
        and(&with_findings(&ends("tip"), &[tip, RING]), "closure: { each side: [ring] }").replace("ring: {", ring)
    };
    vec![
        Case::new(Code::Unjoined, ends("knot"), crimped.clone()),
        Case::new(Code::Unjoined, joined(&ends("crimp"), &[CRIMP]), crimped),
        Case::new(
            Code::OneSided,
            closed("closure: { each side: [bar, ring], right: [clasp] }"),
            closed("closure: { right: [bar, ring, clasp] }"),
        ),
        Case::new(
            Code::OneSided,
            halves(&slide("one", 1), &slide("other", 1)),
            halves(&slide("one", 1), "other: { kind: box half, spacing: 8 mm, holes: 1"),
        ),
        Case::new(
            Code::OneSided,
            halves(&slide("one", 1), &slide("other", 1)),
            halves(&slide("one", 1), &slide("other", 2)),
        ),
        Case::new(
            Code::ClaspTwice,
            halves(&slide("one", 1), &slide("other", 1)),
            closed("closure: { each side: [slide] }").replace(&format!("  {CLASP}\n  {RING}\n  {BAR}"), SLIDE),
        ),
        Case::new(
            Code::ClaspTwice,
            closed("closure: { each side: [slide] }")
                .replace(&format!("  {CLASP}\n  {RING}\n  {BAR}"), &SLIDE.replace("by: each", "by: pack, count: 2")),
            closed("closure: { each side: [slide] }").replace(&format!("  {CLASP}\n  {RING}\n  {BAR}"), SLIDE),
        ),
        Case::new(
            Code::OneSided,
            halves(toggle, "other: { kind: toggle bar"),
            halves(toggle, "other: { kind: barrel half"),
        ),
        Case::new(
            Code::OneSided,
            halves(toggle, "other: { kind: hook"),
            halves("one: { kind: toggle bar", "other: { kind: hook"),
        ),
        Case::new(
            Code::OneSided,
            halves(toggle, "other: { kind: hook"),
            halves("one: { kind: clasp", "other: { kind: hook"),
        ),
        Case::new(
            Code::NoOpening,
            closed("closure: { left: [bar, ring], right: [ring, clasp] }"),
            closed("closure: { left: [ring], right: [bar, clasp] }"),
        ),
        Case::new(
            Code::NoOpening,
            closed("closure: { left: [bar, ring], right: [clasp] }"),
            closed("closure: { left: [bar, ring], right: [clasp] }").replace("inside: 3", "closed: yes, inside: 3"),
        ),
        Case::new(Code::NoOpening, lace("ring: {"), lace("ring: { closed: yes,")),
    ]
}

/// A knot of 2.5 mm goes through a hole of 2.5 mm, and so does one that is broader by less than a third.
fn knots() -> Vec<Case> {
    let knotted = |hole: &str, knot: &str, cord: &str| {
        let row = format!("[{{ knot: {knot} }}, 20 reed, {{ knot: {knot} }}]");
        changed(&[("hole: 1 mm", &format!("hole: {hole}")), ("[20 reed]", &row), ("0.4 mm", cord)])
    };
    let between = |knot: &str| changed(&[("length: 16 in", &format!("length: 16 in\n    knots: {knot}"))]);
    vec![
        // 2.5 mm x 4 / 3 is 3.33 mm; a cord of 1.2 mm makes knots 3.6 mm broad.
        Case::new(Code::KnotSlips, knotted("2.5 mm", "3.34 mm", "1.2 mm"), knotted("2.5 mm", "3.33 mm", "1.2 mm")),
        Case::new(Code::KnotSlips, knotted("2.5 mm", "3.34 mm", "1.2 mm"), knotted("2.5 mm", "2.5 mm", "1.2 mm")),
        // Three widths of a cord of 0.8 mm are 2.4 mm, and of one of 0.79 mm less: a hole of 1.8 mm x 4 / 3.
        Case::new(Code::KnotSlips, knotted("1.8 mm", "3 mm", "0.8 mm"), knotted("1.8 mm", "3 mm", "0.79 mm")),
        // Of 0.4 mm cord they are 1.2 mm broad, less than a third more than the hole of 1 mm, whatever is written.
        Case::new(Code::KnotSlips, between("1.2 mm").replace("hole: 1 mm", "hole: 0.9 mm"), between("1.2 mm")),
    ]
}

fn drops() -> Vec<Case> {
    const BAIL: &str = "bail: { kind: bail, length: 7 mm }";
    let drop = |drilled: &str, on: &str| {
        let drop = format!(
            "beads:\n  tear: {{ shape: drop, size: 8 x 14 mm, drilled: {drilled}, hole: 1 mm, colour: \"#c9d6d8\", mass: 1 g }}\n"
        );
        let row = format!("[10 reed, {on}, 10 reed]");
        with_findings(&changed(&[("beads:\n", &drop), ("[20 reed]", &row)]), &[BAIL, PIN])
    };
    let hung = |drilled: &str, on: &str| {
        let unused = if on == "bail" { format!("  {PIN}\n") } else { format!("  {BAIL}\n") };
        drop(drilled, &format!("{{ dangle: [tear], on: {on} }}")).replace(&unused, "").replace("20 mm }", "30 mm }")
    };
    let charm = |row: &str| {
        let text = changed(&[("[20 reed]", &format!("[10 reed, {row}, 10 reed]"))]);
        let hanger = if row.contains("bail") {
            vec![BAIL]
        } else if row.contains("pin") {
            vec!["pin: { kind: head pin, wire: 0.6 mm, length: 40 mm }"]
        } else {
            vec![]
        };
        with_findings(&text, &[&hanger[..], &["leaf: { kind: charm, outline: leaf, length: 14 mm }"]].concat())
    };
    let tassel = |row: &str| charm(row).replace("charm, outline: leaf", "tassel");
    let strung = |drilled| drop(drilled, "tear").replace(&format!("findings:\n  {BAIL}\n  {PIN}\n"), "");
    let round = |drilled: &str| changed(&[("shape: round,", &format!("shape: round, drilled: {drilled},"))]);
    // A round bead of 6 mm with its hole along it.
    let ringed = |inside: &str, row: &str| {
        let text = changed(&[("[20 reed]", &format!("[10 reed, {{ dangle: [{row}], on: loop }}, 10 reed]"))]);
        with_findings(&text, &[&format!("loop: {{ kind: jump ring, inside: {inside}, wire: 0.8 mm }}")])
    };
    vec![
        Case::new(Code::WrongHole, ringed("6 mm", "reed"), ringed("5.9 mm", "reed")),
        Case::new(Code::WrongHole, ringed("6 mm", "reed"), ringed("6 mm", "reed, reed")),
        Case::new(Code::WrongHole, ringed("6 mm", "loop, reed"), ringed("6 mm", "reed, loop")),
        Case::new(Code::WrongHole, hung("tip", "bail"), hung("lengthwise", "bail")),
        Case::new(Code::WrongHole, hung("lengthwise", "pin"), hung("tip", "pin")),
        Case::new(Code::WrongHole, strung("lengthwise"), strung("tip")),
        Case::new(Code::WrongHole, round("lengthwise"), round("tip")),
        Case::new(Code::WrongHole, round("lengthwise"), round("front")),
        Case::new(Code::WrongHole, charm("{ dangle: [leaf], on: bail }"), charm("{ dangle: [leaf], on: pin }")),
        Case::new(Code::WrongHole, charm("{ dangle: [leaf], on: bail }"), charm("{ dangle: [reed, leaf], on: bail }")),
        Case::new(Code::WrongHole, charm("{ dangle: [leaf], on: bail }"), charm("leaf")),
        Case::new(Code::WrongHole, tassel("{ dangle: [leaf], on: bail }"), tassel("leaf")),
    ]
}

fn pins() -> Vec<Case> {
    let dangling = |from, to| {
        let text = changed(&[("[20 reed]", "[10 reed, { dangle: [reed], on: pin }, 10 reed]")]);
        with_findings(&text, &[&PIN.replace(from, to)])
    };
    let thick = |thick| dangling("0.6 mm", thick);
    // A bead of 6 mm with a hole of 1 mm is sqrt(36 − 1) = 5.916 mm long; a loop of 3 mm from wire of 0.6 mm takes
    // π × 2.4 = 7.540 mm: 13.456 mm.
    let long = |length| dangling("20 mm", length);
    vec![
        Case::new(Code::PinTooThick, thick("1 mm"), thick("1.01 mm")),
        Case::new(Code::PinTooShort, long("13.46 mm"), long("13.45 mm")),
    ]
}

/// So many strands of falling length, crimped and gathered into cones by eye pins.
fn gathered(strands: u32, eye: &str, cone: &str, crimp: &str) -> String {
    let strand = |n: u32| {
        STRAND.replace("only", &format!("number {n}")).replace("16 in", &format!("{} in\n    ends: crimp", 16 + 20 * n))
    };
    let strands: String = (0..strands).map(strand).collect();
    let text = format!("{HEAD}{strands}closure: {{ each side: [eye, cone] }}\n{WEAR}");
    with_findings(&text, &[crimp, eye, cone])
}

fn cones() -> Vec<Case> {
    let tip = |tip| gathered(1, EYE, &CONE.replace("tip: 1.5", tip), CRIMP);
    // The cone is 3 mm wide, like the eye, 14 × 1.5 / 6.5 = 3.231 mm below its tip; the loops hang 3 − 0.72 mm lower
    // and the crimps begin 3/16 in − 2 mm below those, 8.273 mm below the tip, where the cone is 5.341 mm wide. Four
    // circles need 2.4142 times one's diameter (packing): crimps of 2.212 mm fit.
    let crimps = |outside| gathered(4, EYE, CONE, &CRIMP.replace("outside: 2 mm", outside));
    // A cone that narrows from 8 to 2.9 mm holds the eye a share 0.1 / 5.1 of its length below its tip; the crimps end
    // 2.28 + 4.7625 mm further down, at its mouth when it is 7.0425 × 5.1 / 5 = 7.183 mm long.
    let cone = |length| gathered(1, EYE, &CONE.replace("tip: 1.5", "tip: 2.9").replace("length: 14 mm", length), CRIMP);
    // An eye of 3 mm from wire of 0.72 mm is 1.56 mm open; four cords of 0.4 mm need 2.4142 × 0.4 = 0.966 mm.
    let eye = |wire| gathered(4, &EYE.replace("0.72 mm", wire), CONE, CRIMP);
    // Two rows of 6 mm beads strung against their crimps: side by side they are 12 mm broad. The first beads have their
    // middles 20 x 1.5 / 18.5 + 2.28 + 4.7625 + 3 = 11.66 mm below the tip, where a cone of 20 mm is 12.3 mm wide.
    let beads = |inside| {
        let cone = CONE.replace("14 mm", "20 mm").replace("inside: 8 mm", inside);
        let text = gathered(2, EYE, &cone, CRIMP).replace("    length: 16 in\n", "").replace("    length: 36 in\n", "");
        text.replacen("[20 reed]", "[70 reed]", 1).replace("[20 reed]", "[150 reed]")
    };
    vec![
        Case::new(Code::BeadsInCone, beads("inside: 20 mm"), beads("inside: 11.9 mm")),
        Case::new(Code::CrimpsInCone, crimps("outside: 2.21 mm"), crimps("outside: 2.22 mm")),
        Case::new(Code::CrimpsShow, cone("length: 7.19 mm"), cone("length: 7.18 mm")),
        Case::new(Code::EyeInCone, tip("tip: 2.99"), tip("tip: 3")),
        Case::new(Code::PinTooThick, tip("tip: 0.72"), tip("tip: 0.71")),
        Case::new(Code::EyeTooSmall, eye("1.01 mm"), eye("1.02 mm")),
    ]
}

/// A cone so narrow shows its crimps as well.
#[test]
fn an_eye_goes_into_its_cone() {
    let inside = |inside| gathered(1, EYE, &CONE.replace("inside: 8", inside).replace("tip: 1.5", "tip: 1"), CRIMP);
    assert!(!codes(&inside("inside: 3")).contains(&Code::EyeInCone));
    assert_eq!(codes(&inside("inside: 2.99")), [Code::EyeInCone]);
}

/// A round narrower than the hole of its neighbour, in a row, on a pin and against a crimp.
fn inside() -> Vec<Case> {
    const WIDE: &str = "wide: { shape: cube, size: 14 mm, hole: 5 mm, colour: \"#c9d6d8\", mass: 1 g }";
    let beads = |text: &str| text.replace("beads:\n  reed", &format!("beads:\n  {WIDE}\n  reed"));
    let wide = |across: &str| {
        let small =
            format!("small: {{ shape: rondelle, size: {across} x 4 mm, hole: 1 mm, colour: \"#402010\", mass: 1 g }}");
        beads(&sound()).replace("beads:\n", &format!("beads:\n  {small}\n"))
    };
    let row = |across: &str| wide(across).replace("[20 reed]", "[6 reed, small, wide, small, 6 reed]");
    let pinned = |across: &str| {
        let branch = "[6 reed, { dangle: [wide, small], on: pin }, 6 reed]";
        with_findings(&wide(across).replace("[20 reed]", branch), &[&PIN.replace("20 mm", "40 mm")])
    };
    let crimped = |outside: &str| {
        let text = beads(&changed(&[("[20 reed]", "[wide, 10 reed, wide]"), ("16 in", "16 in\n    ends: crimp")]));
        joined(&text, &[&CRIMP.replace("outside: 2 mm", &format!("outside: {outside}"))])
    };
    vec![
        Case::new(Code::SlipsInside, row("5 mm"), row("4.99 mm")),
        Case::new(Code::SlipsInside, pinned("5 mm"), pinned("4.99 mm")),
        Case::new(Code::SlipsInside, crimped("5 mm"), crimped("4.99 mm")),
    ]
}
