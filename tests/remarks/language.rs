//! What a pattern may say: its keys, words, quantities, names, lengths and expectations.

use festoon::remark::Code;
use festoon::remark::said::quantity::NoQuantity;
use festoon::units::Length;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    [writing(), names(), articles(), lengths(), filled(), worked_out(), stops(), expectations(), allowed()]
        .into_iter()
        .flatten()
        .collect()
}

/// The sound pattern against one that is changed in a place.
fn slip(code: Code, from: &str, to: &str) -> Case {
    Case::new(code, sound(), changed(&[(from, to)]))
}

fn writing() -> Vec<Case> {
    vec![
        slip(Code::Yaml, "[20 reed]", "[20 reed"),
        slip(Code::BareColour, "\"#5d7f5b\"", "#5d7f5b"),
        slip(Code::UnknownKey, "length:", "lenght:"),
        slip(Code::MissingKey, "title: Try\n", ""),
        slip(Code::WrongKind, "16 in", "[16 in]"),
        slip(Code::UnknownWord, "shape: round", "shape: rond"),
        slip(Code::BadQuantity, "16 in", "16"),
        slip(Code::BadQuantity, "strength: 60 N", "strength: 60 N, stiffness: 2 N"),
        slip(Code::Version, "festoon: 1", "festoon: 2"),
        slip(Code::NoShelf, "title: Try", "title: Try\nshelf: gone.yaml"),
    ]
}

fn names() -> Vec<Case> {
    let sizes = |second| {
        and(&sound(), &format!("sizes: [{{ name: long, change: +1 in }}, {{ name: {second}, change: +2 in }}]"))
    };
    let strands = |second: &str| {
        let other = STRAND.replace("only", second).replace("16 in", "26 in");
        format!("{HEAD}{STRAND}{other}{WEAR}")
    };
    let mist = |instead| changed(&[("beads:\n", MIST), ("mass: 0.27 g", instead)]);
    vec![
        slip(Code::UnknownId, "20 reed", "20 red"),
        Case::new(Code::TwiceNamed, sizes("longer"), sizes("long")),
        Case::new(Code::TwiceNamed, strands("other"), strands("only")),
        // A stand-in is used.
        Case::new(Code::Unused, mist("mass: 0.27 g, instead: [mist]"), mist("mass: 0.27 g")),
    ]
}

fn articles() -> Vec<Case> {
    let bead = |from, to| changed(&[(from, to)]);
    let crimp = |crimp: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: crimp")]);
        joined(&text, &[crimp])
    };
    let tassel = |wound: &str| {
        let text = changed(&[("[20 reed]", "[10 reed, { dangle: [end], on: ring }, 10 reed]")]);
        let end = format!("end: {{ kind: tassel, length: 60 mm, {wound} }}");
        with_findings(&text, &["ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm }", &end])
    };
    let cone = |cone: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: crimp")]);
        and(&with_findings(&text, &[CRIMP, cone]), "closure: { each side: [cone] }")
    };
    let pin = |wire: &str| cone(&format!("cone: {{ kind: eye pin, length: 50 mm, wire: {wire} }}"));
    vec![
        Case::new(Code::MissingSize, bead("round, size: 6", "oval, size: 6 x 6"), bead("round", "oval")),
        Case::new(Code::MissingSize, sound(), bead("diameter: 0.4 mm, ", "")),
        Case::new(Code::MissingSize, crimp(CRIMP), crimp(&CRIMP.replace(", inside: 1.3 mm", ""))),
        // A hole may be 95 % of its bead.
        Case::new(Code::BadSize, bead("hole: 1", "hole: 5.69"), bead("hole: 1", "hole: 5.7")),
        Case::new(
            Code::BadSize,
            bead("hole: 1", "tolerance: 3 mm, hole: 1"),
            bead("hole: 1", "tolerance: 3.1 mm, hole: 1"),
        ),
        Case::new(Code::OutOfBounds, long_bead("200"), long_bead("200.1")),
        Case::new(Code::BadSize, bead("diameter: 0.4 mm", "gauge: 40"), bead("diameter: 0.4 mm", "gauge: 41")),
        Case::new(Code::BadSize, crimp(&CRIMP.replace("1.3", "1.99")), crimp(&CRIMP.replace("1.3", "2"))),
        Case::new(
            Code::BadSize,
            cone(&CONE.replace("tip: 1.5", "tip: 8")),
            cone(&CONE.replace("tip: 1.5", "tip: 8.1")),
        ),
        Case::new(
            Code::BadSize,
            cone(&CONE.replace("tip", "mouth: 8 mm, tip")),
            cone(&CONE.replace("tip", "mouth: 7.9 mm, tip")),
        ),
        Case::new(Code::BadSize, pin("1.45 mm, outside: 3 mm"), pin("1.5 mm, outside: 3 mm")),
        // An eye of which nothing is said is 3 mm.
        Case::new(Code::BadSize, pin("1.45 mm"), pin("1.5 mm")),
        Case::new(
            Code::UnknownMaterial,
            bead("mass: 0.27 g", "material: glass"),
            bead("mass: 0.27 g", "material: moonrock"),
        ),
        Case::new(Code::Misplaced, crimp(CRIMP), crimp(&CRIMP.replace("kind: crimp", "kind: crimp, outline: leaf"))),
        Case::new(Code::Misplaced, crimp(CRIMP), crimp(&CRIMP.replace("kind: crimp", "kind: crimp, cord: line"))),
        Case::new(Code::MissingSize, tassel("threads: 40, cord: line"), tassel("cord: line")),
        // Resin has from 1.1 to 1.4 g/cm³; ebony from 1.1 to 1.2.
        Case::new(Code::RoughWeight, bead("mass: 0.27 g", "material: ebony"), bead("mass: 0.27 g", "material: resin")),
        Case::new(Code::HoleAssumed, sound(), bead(" hole: 1 mm,", "")),
    ]
}

/// One bead so long, on a strand that holds it.
fn long_bead(mm: &str) -> String {
    // So long a bead finds no place on a neck.
    let settled = format!("{}allow: [strands-unsettled, huge-bead]\n", WEAR.replace("370 mm", "350 mm"));
    changed(&[("6 mm", &format!("6 x {mm} mm")), ("round", "tube"), ("20 reed", "reed"), (WEAR, &settled)])
}

fn lengths() -> Vec<Case> {
    let unsaid = |settle: &str| {
        bracelet("{ wrist: 150 mm, ease: 10 mm }").replace("[30 reed]", &format!("[30 reed]\n    settle: {settle}"))
    };
    // 60 beads of 6 mm with holes of 1 mm take 60 × sqrt(36 − 1) = 354.965 mm.
    let sixty = |length: &str| changed(&[("20 reed", "60 reed"), ("16 in", length), ("370 mm", "350 mm")]);
    let packed = |length: &str| sixty(&format!("{length}\n    settle: fill"));
    // Earrings hang plumb, and are quick to hang however long they are.
    let many = |repeats: u32| {
        let text = changed(&[("necklace", "earrings"), (WEAR, ""), ("    length: 16 in\n", ""), ("0.27 g", "0.1 mg")]);
        text.replace("6 mm, hole: 1 mm", "0.6 mm, hole: 0.5 mm")
            .replace("[20 reed]", &format!("[{{ repeat: {repeats}, of: [5 reed] }}]"))
    };
    let chain = |more: &str| {
        let hung = "[{ dangle: [20 reed], on: pin }]";
        let text = changed(&[
            ("kind: thread", "kind: chain"),
            ("    cord: line\n", &format!("    cord: line\n{more}")),
            ("[20 reed]", hung),
        ]);
        joined(&text, &[&PIN.replace("20 mm", "200 mm")])
    };
    // Links of 3 mm: 400 mm are 133.3 of them, and nobody opens a third of one.
    let linked = |length: &str, list: &str| {
        chain("")
            .replace("16 in", length)
            .replace("kind: chain,", "kind: chain, links: 10 = 30 mm,")
            .replace("{ dangle: [20 reed], on: pin }", list)
    };
    let hung = "{ links: 5 }, { dangle: [20 reed], on: pin }";
    let uncounted = |list: &str| chain("").replace("{ dangle: [20 reed], on: pin }", list);
    vec![
        Case::new(
            Code::Misplaced,
            linked("399.5 mm", hung),
            linked("399.5 mm", hung).replace("kind: chain,", "kind: chain, stiffness: 2 N mm²,"),
        ),
        Case::new(Code::PartLink, linked("399.5 mm", hung), linked("400 mm", hung)),
        Case::new(Code::MissingSize, uncounted("{ dangle: [20 reed], on: pin }"), uncounted(hung)),
        Case::new(
            Code::Misplaced,
            linked("399 mm", hung),
            linked("399 mm", "{ links: 5 }, { dangle: [20 reed, { links: 2 }], on: pin }"),
        ),
        Case::new(Code::Misplaced, sound(), changed(&[("kind: thread,", "kind: thread, links: 10 = 30 mm,")])),
        Case::new(Code::Misplaced, sound(), changed(&[("kind: thread,", "kind: thread, filaments: 7,")])),
        Case::new(Code::Misplaced, sound(), changed(&[("kind: thread,", "kind: thread, material: copper,")])),
        Case::new(Code::NoLength, unsaid("fill"), unsaid("slide")),
        Case::new(Code::Overfull, sixty("354.97 mm"), sixty("354.96 mm")),
        Case::new(Code::LengthIgnored, chain(""), chain("    allowance: 4 mm\n")),
        Case::new(Code::LengthIgnored, packed("354.965 mm"), packed("354.97 mm")),
        Case::new(Code::TooManyBeads, many(4_000), many(4_001)),
    ]
}

fn filled() -> Vec<Case> {
    let filled = |of: &str, rest: &str, length: &str| {
        let list = format!("[{{ repeat: fill, of: [{of}] }}]{rest}");
        changed(&[("[20 reed]", &list), ("16 in", length), ("370 mm", "350 mm")])
    };
    // 60 beads of 6 mm with holes of 1 mm take 60 × sqrt(36 − 1) = 354.965 mm.
    let once = |length| filled("60 reed", "", length);
    // They stay half an inch short of 367.665 mm.
    let short = |length| filled("60 reed", "\n    settle: fill", length);
    let endless =
        filled("reed", "", "16 in").replace("    length: 16 in\n", "").replace("wear: { neck base: 350 mm }\n", "");
    vec![
        Case::new(Code::NoFill, once("354.97 mm"), once("354.96 mm")),
        Case::new(Code::NoFill, once("354.97 mm"), endless),
        Case::new(
            Code::NothingRepeated,
            changed(&[("20 reed", "{ repeat: 2, of: [10 reed] }")]),
            changed(&[("20 reed", "{ repeat: 2, of: [] }")]),
        ),
        Case::new(Code::FillShort, short("367.66 mm"), short("367.67 mm")),
    ]
}

fn worked_out() -> Vec<Case> {
    let row = |row: &str| changed(&[("beads:\n", MIST), ("[20 reed]", &format!("[{{ {row} }}]"))]);
    let mix = |mix: &str| row(&format!("random: {mix}"));
    let graded = |length: &str| row(&format!("graduate: [mist, reed], length: {length}"));
    vec![
        // Of 20 beads at most 10 can stand apart, of 21 at most 11; three apart, of 20 at most 5.
        Case::new(Code::NoMix, mix("20, of: { reed: 1, mist: 1 }"), mix("20, of: { reed: 11, mist: 9 }")),
        Case::new(Code::NoMix, mix("21, of: { reed: 11, mist: 10 }"), mix("21, of: { reed: 12, mist: 9 }")),
        Case::new(
            Code::NoMix,
            mix("20, of: { reed: 1, mist: 3 }, apart: { reed: 3 }"),
            mix("20, of: { reed: 3, mist: 7 }, apart: { reed: 3 }"),
        ),
        // Of 11 beads in the parts 1 : 20 the quota of the first is 0.52, of 10 it is 0.48.
        Case::new(
            Code::NoMix,
            mix("11, of: { reed: 1, mist: 20 }, apart: 0"),
            mix("10, of: { reed: 1, mist: 20 }, apart: 0"),
        ),
        Case::new(
            Code::UnknownId,
            mix("20, of: { reed: 1, mist: 1 }, apart: { reed: 1 }"),
            mix("20, of: { reed: 1, mist: 1 }, apart: { read: 1 }"),
        ),
        Case::new(Code::NoMix, row("fade: 2, from: reed, to: mist"), row("fade: 1, from: reed, to: mist")),
        Case::new(Code::NoMix, row("fade: 20, from: reed, to: mist"), row("fade: 20, from: reed, to: reed")),
        // Of a long row only every second bead may be a reed; 11 of 21 parts are too many, as are 2 of 3 where two lie
        // between.
        Case::new(Code::NoMix, mix("fill, of: { reed: 10, mist: 10 }"), mix("fill, of: { reed: 11, mist: 10 }")),
        Case::new(Code::NoMix, row("fade: fill, from: reed, to: mist"), row("fade: fill, from: reed, to: reed")),
        Case::new(
            Code::NoFill,
            mix("fill, of: { reed: 1, mist: 1 }"),
            row("repeat: 2, of: [{ random: fill, of: { reed: 1, mist: 1 } }]"),
        ),
        // Two cubes of 4 mm, three rounds of 6 mm with holes of 1 mm: 8 + 3 × sqrt(36 − 1) = 25.748 mm.
        Case::new(Code::NoFill, graded("25.75 mm"), graded("25.74 mm")),
        Case::new(
            Code::NoFill,
            row("repeat: 2, of: [{ graduate: [mist, reed], length: 60 mm }]"),
            row("repeat: 2, of: [{ graduate: [mist, reed] }]"),
        ),
        Case::new(
            Code::NothingRepeated,
            changed(&[("[20 reed]", "[{ graduate: [reed], length: 60 mm }]")]),
            changed(&[("[20 reed]", "[2 reed, { graduate: [] }]")]),
        ),
    ]
}

/// Bounds are rounded to the safe side, so that what a help line says is enough: 20 beads take 20 sqrt(36 - 1)
/// = 118.3216 mm, and a thread of 0.4 mm passes no hole of less.
#[test]
fn what_is_said_to_be_enough_is() {
    let strand = |length: &str| changed(&[("length: 16 in", &format!("length: {length}")), ("necklace", "strap")]);
    let over = made(&strand("118.3 mm")).1.remove(0);
    assert_eq!(over.headline(), "strand only: the beads are 0.1 mm longer than the strand");
    assert_eq!(over.help(), "string 19 reed instead of 20, or make the strand at least 118.4 mm long");
    let fewer = strand("118.3 mm").replace("20 reed", "19 reed");
    assert!([strand("118.4 mm"), fewer].iter().all(|text| !codes(text).contains(&Code::Overfull)));
    let holed = |hole: &str| changed(&[("hole: 1 mm", &format!("hole: {hole}"))]);
    let tight = made(&holed("0.3999 mm")).1.into_iter().find(|remark| remark.code() == Code::CordTooThick).unwrap();
    assert_eq!(tight.help(), "use a cord of at most 0.39 mm, or a hole of at least 0.4 mm");
    assert!(!codes(&holed("0.4 mm")).contains(&Code::CordTooThick));
}

#[test]
fn what_no_source_gives_is_called_assumed() {
    let said = |material: &str| {
        let remarks = made(&changed(&[("mass: 0.27 g", &format!("material: {material}"))])).1;
        remarks.into_iter().find(|remark| remark.code() == Code::RoughWeight).map(|remark| remark.headline())
    };
    assert!(said("acai seed").unwrap().contains("from 1.1 to 1.4 g/cm³ (assumed: no published range was found)"));
    assert!(!said("polymer clay").unwrap().contains("assumed"));
    assert_eq!(said("tagua"), None);
}

fn stops() -> Vec<Case> {
    let list = |list: &str| with_findings(&changed(&[("[20 reed]", list)]), &[CRIMP]);
    let stopped = |station: &str| list(&format!("[10 reed, {{ stop: crimp, at: {station} }}, 10 reed]"));
    let settled = |settle| list(&format!("[10 reed, {{ stop: crimp, at: 200 mm }}, 10 reed]\n    settle: {settle}"));
    let two = |second| list(&format!("[reed, {{ stop: crimp, at: 100 mm }}, {{ stop: crimp, at: {second} }}, reed]"));
    let bare = |station: &str| list(&format!("[{{ stop: crimp, at: {station} }}, 20 reed]"));
    let hung = |hung: &str| {
        let text = changed(&[("[20 reed]", &format!("[20 reed, {{ dangle: [{hung}], on: pin }}]"))]);
        with_findings(&text, &[&PIN.replace("20 mm", "50 mm")])
    };
    vec![
        // A crimp of 2 mm reaches 1 mm to both sides.
        Case::new(Code::MisplacedStop, bare("1 mm"), bare("0.9 mm")),
        Case::new(Code::MisplacedStop, two("102 mm"), two("101.9 mm")),
        Case::new(Code::MisplacedStop, settled("slide"), settled("fixed")),
        Case::new(
            Code::MisplacedStop,
            bare("100 mm"),
            list("[{ repeat: 2, of: [reed, { stop: crimp, at: 100 mm }] }]"),
        ),
        Case::new(Code::MisplacedStop, bare("100 mm"), list("[{ mirror: [reed, { stop: crimp, at: 100 mm }] }]")),
        Case::new(Code::NoFill, hung("5 reed"), hung("{ repeat: fill, of: [reed] }")),
        Case::new(Code::Misplaced, hung("5 reed"), hung("{ dangle: [reed], on: pin }")),
        Case::new(Code::Misplaced, hung("reed, { space: 1 mm }, reed"), hung("reed, { knot: 1 mm }, reed")),
        // Ten beads take 10 × sqrt(36 − 1) = 59.161 mm, and a crimp reaches 1 mm further.
        Case::new(Code::Overfull, stopped("60.17 mm"), stopped("60.15 mm")),
    ]
}

fn expectations() -> Vec<Case> {
    let expect = |figures: &str| and(&sound(), &format!("expect: {figures}"));
    let of_strand = |figure: &str| expect(&format!("{{ strands: {{ only: {{ {figure} }} }} }}"));
    vec![
        Case::new(Code::Expected, expect("{ beads: { reed: 20 } }"), expect("{ beads: { reed: 21 } }")),
        // 20 × sqrt(36 − 1) = 118.322 mm, which is 1.678 mm from 120 mm.
        Case::new(
            Code::Expected,
            of_strand("beaded: 120 mm within 1.68 mm"),
            of_strand("beaded: 120 mm within 1.67 mm"),
        ),
        Case::new(
            Code::Expected,
            of_strand("finished: 406 mm within 0.41 mm"),
            of_strand("finished: 406 mm within 0.39 mm"),
        ),
        Case::new(Code::Expected, of_strand("cut: 520 mm within 0.24 mm"), of_strand("cut: 520 mm within 0.23 mm")),
    ]
}

fn allowed() -> Vec<Case> {
    let of_piece = |text: &str| and(text, "allow: [hole-assumed]");
    let of_strand = |allow: &str| {
        let knotted = format!("length: 16 in\n    allow: [{allow}]");
        changed(&[("length: 16 in", &knotted), ("kind: thread", "kind: wire")])
    };
    vec![
        Case::new(Code::IdleAllow, of_piece(&changed(&[(" hole: 1 mm,", "")])), of_piece(&sound())),
        // A strand silences what is said at its own lines: wire is knotted there, its hole is not written elsewhere.
        Case::new(Code::IdleAllow, of_strand("wire-knotted"), of_strand("wire-knotted, hole-assumed")),
        Case::new(Code::UnknownWord, of_strand("wire-knotted"), of_strand("wire-knottd")),
        Case::new(Code::UnknownWord, of_strand("wire-knotted"), of_strand("wire-knotted, overfull")),
        Case::new(
            Code::HoleAssumed,
            of_piece(&changed(&[(" hole: 1 mm,", "")])),
            changed(&[(" hole: 1 mm,", ""), ("length: 16 in", "length: 16 in\n    allow: []")]),
        ),
    ]
}

/// What a remark says and what it helps with, of a pattern about which one thing is to be said.
fn said(text: &str) -> (Code, String, String) {
    let remarks = made(text).1;
    assert_eq!(remarks.len(), 1, "{remarks:#?}");
    (remarks[0].code(), remarks[0].headline(), remarks[0].help())
}

#[test]
fn a_decimal_comma_is_told_as_one() {
    let priced =
        |price: &str| changed(&[("mass: 0.27 g }", &format!("mass: 0.27 g, sold: {{ by: each, price: {price} }} }}"))]);
    assert_eq!(codes(&priced("5.60")), []);
    let (code, _, help) = said(&priced("5,60"));
    assert_eq!((code, help.as_str()), (Code::UnknownKey, "write decimals with a point: 5.60"));
    let (code, _, help) = said(&changed(&[("hole: 1 mm", "hole: 1,2 mm")]));
    assert_eq!((code, help.as_str()), (Code::UnknownKey, "write decimals with a point: 1.2 mm"));
    let alone = NoQuantity::from(Length::parse("1,2 mm").unwrap_err());
    assert_eq!(alone.to_string(), "has a comma in its number: write decimals with a point: 1.2 mm");
}

#[test]
fn units_are_offered_that_a_size_may_have() {
    let help = |from: &str, to: &str| said(&changed(&[(from, to)])).2;
    assert_eq!(help("size: 6 mm", "size: 6"), "say which unit: 6 mm, 6 cm, 6 in");
    assert_eq!(help("neck base: 370 mm", "neck base: 370"), "say which unit: 370 mm");
    assert_eq!(help("length: 16 in", "length: 16"), "say which unit: 16 mm, 16 cm, 16 m, 16 in, 16 ft, 16 yd");
}

#[test]
fn one_hole_is_not_told_as_several() {
    let (code, headline, _) = said(&changed(&[("hole: 1 mm", "hole: 6 mm")]));
    assert_eq!((code, headline.as_str()), (Code::BadSize, "bead reed: a hole of 6 mm leaves nothing of 6 mm"));
}

/// Charms alone on a chain are no beads, and none need be written.
#[test]
fn a_chain_of_charms_needs_no_beads() {
    let chain = "festoon: 1
title: Charms
kind: strap
cords: { chain: { kind: chain, diameter: 2 mm, links: 10 = 30 mm, strength: 60 N, mass: 5 g/m } }
findings:
  star: { kind: charm, length: 12 mm, outline: star }
  ring: { kind: jump ring, inside: 3 mm }
  grip: { kind: spectacle loop, length: 20 mm }
strands: [{ name: a, cord: chain, length: 600 mm, beads: [{ links: 99 }, { dangle: [star], on: ring }] }]
closure: { each side: [ring, grip] }
";
    assert_eq!(codes(chain), []);
    let beaded = chain.replace("{ dangle: [star]", "{ dangle: [star, pea]");
    assert!(codes(&beaded).contains(&Code::MissingKey));
}
