//! Beads, cords and findings where they belong, and where they do not.

use festoon::pattern::FindingKind;
use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    let ends = |ends: &str| {
        let text = changed(&[("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
        and(&with_findings(&text, &[CRIMP, CLASP, RING]), CLOSED)
    };
    let guarded = |ends: &str| {
        let text = changed(&[("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
        let findings: &[&str] = if ends.contains("crimp") { &[CRIMP, GUARD] } else { &[GUARD] };
        joined(&text, findings)
    };
    let lace = |inside: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: tip")]);
        let tip = format!("tip: {{ kind: cord end, length: 8 mm, inside: {inside} }}");
        and(&with_findings(&text, &[&tip, CLASP, RING]), "closure: { left: [ring], right: [ring, clasp] }")
    };
    let earrings = |closure: &str| {
        let text = with_findings(&changed(&[("kind: necklace", "kind: earrings"), (WEAR, "")]), &[HOOK, RING]);
        and(&text, &format!("closure: {{ {closure} }}"))
    };
    let pinned = |closure: &str, more: &str| {
        let line = "cords:\n  line: { kind: thread, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m }\n";
        let strand = format!("  - {{ name: only, cord: pin, beads: [2 reed]{more} }}\n");
        let text = HEAD.replace("necklace", "earrings").replace(line, "") + &strand;
        and(&with_findings(&text, &[PIN, HOOK]), &format!("closure: {{ {closure}: [hook] }}"))
    };
    let ring = |ring: &str| {
        let row = "[10 reed, { dangle: [reed], on: ring }, 10 reed]";
        with_findings(
            &changed(&[("[20 reed]", row)]),
            &[&RING.replace("ring: {", ring).replace("inside: 3", "inside: 7")],
        )
    };
    let pair = |bar: &str| {
        let (left, right) =
            ("loop: { kind: toggle ring, length: 14 mm, sold: { by: each } }", "links: { kind: chain, link: 3 mm }");
        let text = with_findings(&sound(), &[left, &bar.replace("BAR", "kind: toggle bar, length: 5 mm"), right]);
        and(&text, "closure: { each side: [{ links: 20 mm }], left: [loop], right: [bar] }")
    };
    let cover = |cover: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: end")]);
        joined(&text, &[cover])
    };
    let ended = |inside: &str, closure: &str| {
        let ring = format!("ring: {{ kind: jump ring, inside: {inside}, wire: 1 mm }}");
        and(&with_findings(&sound(), &[&ring]), &format!("closure: {{ {closure} }}"))
    };
    let open = |closure: &str| ended("7 mm", closure);
    let through = "left: [ring], open: through, tail: 50 mm";
    let tipped = |inside: &str| {
        let tip = format!("tip: {{ kind: jump ring, inside: {inside}, wire: 0.5 mm }}");
        open(&format!("{through}, right: [tip]")).replace("findings:\n", &format!("findings:\n  {tip}\n"))
    };
    let met = |changes: &[(&str, &str)]| {
        let text = with_findings(&changed(&[("    length: 16 in\n", ""), ("[20 reed]", "[80 reed]")]), &[RING]);
        let text = and(&text, "closure: { both ends: [reed, ring] }");
        changes.iter().fold(text, |text, (from, to)| text.replace(from, to))
    };
    let second = "    beads: [80 reed]\n  - { name: other, cord: line, beads: [90 reed] }\n";
    vec![
        Case::new(Code::RingNarrow, ended("6 mm", through), ended("5.9 mm", through)),
        // A ring of 6 mm of wire of 0.5 mm is 7 mm wide.
        Case::new(Code::RingNarrow, tipped("6 mm"), tipped("6.1 mm")),
        Case::new(Code::NoRing, open(through), open("right: [ring], open: through")),
        Case::new(Code::Misplaced, open(through), open("left: [ring], open: hanging, tail: 50 mm")),
        Case::new(
            Code::Misplaced,
            open("left: [ring], open: hanging"),
            open("left: [ring], open: hanging").replace("necklace", "strap"),
        ),
        Case::new(Code::Misplaced, met(&[]), met(&[("    beads: [80 reed]\n", second)])),
        Case::new(Code::Misplaced, met(&[]), met(&[("    beads:", "    length: 600 mm\n    beads:")])),
        // Two threads of 0.4 mm side by side in a hole.
        Case::new(Code::CordTooThick, met(&[("hole: 1 mm", "hole: 0.8 mm")]), met(&[("hole: 1 mm", "hole: 0.79 mm")])),
        Case::new(Code::WrongKind, met(&[]), met(&[("ring]", "{ ring: 20 mm }]")])),
        Case::new(Code::UnknownKey, met(&[]), met(&[("necklace", "strap")])),
        Case::new(Code::UnknownKey, met(&[]), met(&[("reed, ring]", "reed, ring], left: [ring]")])),
        Case::new(Code::Misplaced, earrings("left: [ring, hook]"), earrings("left: [hook], right: [ring]")),
        Case::new(Code::Misplaced, pinned("left", ""), pinned("both ends", "")),
        Case::new(Code::Misplaced, pinned("left", ""), pinned("left", ", allowance: 9 mm")),
        Case::new(Code::PinTooShort, pinned("left", ""), pinned("left", "").replace("2 reed", "3 reed")),
        Case::new(Code::Misplaced, earrings("both ends: [ring, hook]"), earrings("each side: [ring, hook]")),
        Case::new(Code::Misplaced, ring("ring: {"), ring("ring: { closed: yes,")),
        Case::new(
            Code::Misplaced,
            pair("bar: { BAR, comes with: loop }"),
            pair("bar: { BAR, comes with: loop, sold: { by: each } }"),
        ),
        Case::new(Code::Misplaced, pair("bar: { BAR, comes with: loop }"), pair("bar: { BAR, comes with: links }")),
        Case::new(Code::UnknownId, pair("bar: { BAR, comes with: loop }"), pair("bar: { BAR, comes with: lop }")),
        Case::new(
            Code::Misplaced,
            cover("end: { kind: knot cover, length: 7 mm, bead: reed }"),
            cover("end: { kind: cord end, length: 7 mm, inside: 0.5 mm, bead: reed }"),
        ),
        Case::new(
            Code::Misplaced,
            and(&with_findings(&sound(), &[RING, CLASP]), CLOSED),
            and(&with_findings(&sound(), &[RING, &CLASP.replace("kind", "closed: yes, kind")]), CLOSED),
        ),
        Case::new(Code::Misplaced, ends("crimp"), ends("clasp")),
        Case::new(Code::Misplaced, guarded("[guard, crimp]"), guarded("guard")),
        Case::new(Code::Misplaced, sound(), changed(&[("20 reed", "20 line")])),
        Case::new(Code::Misplaced, sound(), changed(&[("cord: line", "cord: reed")])),
        Case::new(Code::CordTooThick, lace("0.4 mm"), lace("0.39 mm")),
    ]
}

/// Each place, a pattern with `thing` there, and the kinds of finding that may be it.
const PLACES: &[(&str, &str, &[&str])] = &[
    (
        "length: 16 in",
        "length: 16 in\n    ends: thing",
        &["crimp", "crimp cover", "wire guard", "knot cover", "cord end"],
    ),
    ("title: Try", "title: Try\nclosure: { left: [PART] }", SIDE),
    ("title: Try", "title: Try\nclosure: { right: [PART] }", SIDE),
    ("title: Try", "title: Try\nclosure: { each side: [PART] }", SIDE),
    (
        "kind: necklace",
        "kind: earrings\nclosure: { both ends: [PART] }",
        &["eye pin", "cone", "bead cap", "end bar", "jump ring", "chain", "ear wire"],
    ),
    (
        "title: Try",
        "title: Try\nclosure: { open: hanging, left: [PART] }",
        &["eye pin", "cone", "bead cap", "jump ring", "chain", "toggle ring", "charm", "tassel"],
    ),
    ("[20 reed]", "[{ dangle: [reed], on: thing }]", &["head pin", "eye pin", "bail", "jump ring", "chain"]),
    ("[20 reed]", "[reed, { stop: thing, at: 200 mm }, reed]", &["crimp"]),
    ("[20 reed]", "[reed, thing, reed]", STRUNG),
    ("[20 reed]", "[reed, { repeat: 2, of: [{ mirror: [reed], about: [thing] }] }, reed]", STRUNG),
    (
        "    length: 16 in\n    beads: [20 reed]\n",
        "    beads: [90 reed]\nclosure: { both ends: [thing] }\n",
        &["bead cap", "jump ring", "charm", "tassel"],
    ),
];
const SIDE: &[&str] = &[
    "eye pin",
    "cone",
    "bead cap",
    "end bar",
    "jump ring",
    "chain",
    "clasp",
    "spring ring",
    "hook",
    "toggle ring",
    "toggle bar",
    "barrel half",
    "box half",
    "slide half",
    "ear wire",
    "spectacle loop",
];
const STRUNG: &[&str] = &["crimp", "spacer bar", "bead cap", "jump ring", "chain", "charm", "tassel"];

#[test]
fn each_kind_of_finding_stands_where_it_belongs_and_nowhere_else() {
    for (from, to, kinds) in PLACES {
        for kind in FindingKind::ALL {
            let part = if *kind == FindingKind::Chain { "{ thing: 20 mm }" } else { "thing" };
            let covers = matches!(kind, FindingKind::CrimpCover | FindingKind::WireGuard);
            let to = if covers { &to.replace("ends: thing", "ends: [thing, crimp]") } else { *to };
            let text = with_findings(&changed(&[(from, &to.replace("PART", part))]), &[&thing(*kind), CRIMP]);
            let refused = codes(&text).contains(&Code::Misplaced);
            assert_eq!(refused, !kinds.contains(&kind.word()), "{kind}: {to}");
        }
    }
}

/// A finding of any kind, with all the sizes that one may need.
fn thing(kind: FindingKind) -> String {
    let sizes = "length: 12 mm, outside: 5 mm, inside: 2 mm, mouth: 6 mm, tip: 1 mm, wire: 0.5 mm, link: 3 mm, \
                 spacing: 7 mm, holes: 2";
    let outline = if kind == FindingKind::Charm { ", outline: disc" } else { "" };
    format!("thing: {{ kind: {kind}, {sizes}{outline} }}")
}

#[test]
fn the_remark_names_both_what_would_fit_and_where_this_belongs() {
    let text = with_findings(&changed(&[("[20 reed]", "[10 reed, { dangle: [reed], on: clasp }, 10 reed]")]), &[CLASP]);
    let remark = &made(&text).1[0];
    assert_eq!(
        remark.headline(),
        "`clasp` is a finding of kind clasp, which does not stand as what a dangle hangs `on`"
    );
    assert_eq!(
        remark.help(),
        "a finding of kind clasp stands on a side of the `closure`; here one of kind head pin, eye pin, bail, jump \
         ring, chain"
    );
    let (pieces, at) = (made(&text), &text[remark.place.unwrap().start..remark.place.unwrap().end]);
    assert!(pieces.0.is_none() && at == "clasp", "{at}");
}

#[test]
fn a_bead_is_no_finding_wherever_one_belongs() {
    for (from, to, _) in &PLACES[..8] {
        let text = changed(&[(from, &to.replace("PART", "reed").replace("thing", "reed"))]);
        let (_, remarks) = made(&text);
        let told: Vec<_> = remarks.iter().map(|remark| (remark.code(), remark.headline())).collect();
        let words = "`reed` is a bead, and a finding belongs here".to_owned();
        assert_eq!(told, [(Code::Misplaced, words)], "{to}");
    }
}

#[test]
fn chain_on_a_strand_says_how_long_it_is() {
    let text = |chain: &str| with_findings(&changed(&[("[20 reed]", "[10 reed, thing, 10 reed]")]), &[chain]);
    assert_eq!(codes(&text("thing: { kind: chain, link: 3 mm, length: 12 mm }")), []);
    assert_eq!(codes(&text("thing: { kind: chain, link: 3 mm }")), [Code::MissingSize]);
}
