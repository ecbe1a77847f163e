//! Generated pieces of every kind, with every finding where it may stand: every page of sheet, proof and
//! picture is drawn, whole and of finite numbers.

use std::collections::BTreeSet;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngSeed, TestRunner};

use festoon::design::{Choice, Design, resolve};
use festoon::export::svg;
use festoon::paint::mark::{Page, Rgb};
use festoon::pattern::FindingKind;
use festoon::picture::{self, Ground, Proportion};
use festoon::remark::has_errors;
use festoon::sheet::{self, Style};
use festoon::{Piece, pattern, source::Source};

use super::boxes::{self, boxes};
use super::{PAPERS, margin, read};

const STOCK: &str = "
beads:
  seed: { name: seed, shape: seed, size: 11/0, material: glass, colour: '#d9b98a' }
  reed: { name: reed, shape: round, size: 6 mm, hole: 1 mm, material: glass, finish: faceted, colour: '#5d7f5b' }
  tube: { name: tube, shape: tube, size: 3 x 9 mm, hole: 1 mm, material: brass, finish: metallic, colour: '#c29a3f' }
  drop: { name: drop, shape: drop, size: 8 x 12 mm, hole: 1 mm, material: glass, finish: clear, colour: '#8fb9ad' }
cords:
  wire: { name: steel wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, colour: '#aaaaaa' }
  silk: { name: silk, kind: silk, diameter: 0.5 mm, mass: 0.3 g/m, colour: '#554433' }
findings:
  crimp: { name: tube crimp, kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }
  cover: { name: crimp cover, kind: crimp cover, length: 3.5 mm, outside: 3.5 mm, inside: 2.5 mm }
  guard: { name: wire guard, kind: wire guard, length: 4 mm }
  cup: { name: knot cover, kind: knot cover, length: 7 mm, outside: 4 mm, inside: 3 mm }
  tip: { name: cord end, kind: cord end, length: 9 mm, outside: 3 mm, inside: 1.8 mm }
  cone: { name: cone, kind: cone, length: 14 mm, inside: 8 mm, mouth: 9 mm, tip: 1.5 mm }
  eye: { name: eye pin, kind: eye pin, gauge: 21, length: 50 mm }
  pin: { name: head pin, kind: head pin, gauge: 21, length: 50 mm }
  bail: { name: bail, kind: bail, length: 7 mm }
  cap: { name: bead cap, kind: bead cap, length: 2 mm, outside: 6 mm }
  ring: { name: jump ring, kind: jump ring, inside: 4 mm, gauge: 20 }
  bar: { name: spacer bar, kind: spacer bar, length: 3 mm, holes: 3, spacing: 6 mm }
  end: { name: end bar, kind: end bar, length: 5 mm, holes: 3, spacing: 6 mm }
  links: { name: chain, kind: chain, link: 4 mm, length: 20 mm }
  hook: { name: hook, kind: hook, length: 18 mm }
  clasp: { name: lobster clasp, kind: clasp, length: 12 mm }
  spring: { name: spring ring, kind: spring ring, length: 8 mm }
  loop: { name: toggle ring, kind: toggle ring, length: 14 mm }
  stick: { name: toggle bar, kind: toggle bar, length: 5 mm, outside: 19 mm }
  half: { name: barrel half, kind: barrel half, length: 8 mm, outside: 5 mm, breakaway: yes }
  box: { name: box half, kind: box half, length: 7 mm, holes: 2, spacing: 8 mm }
  slide: { name: slide half, kind: slide half, length: 7 mm, outside: 5 mm, holes: 2, spacing: 8 mm }
  thrum: { name: tassel, kind: tassel, length: 40 mm, outside: 7 mm }
  grip: { name: spectacle loop, kind: spectacle loop, length: 20 mm, breakaway: yes }
  shell: { name: shell charm, kind: charm, length: 12 mm, outside: 9 mm, outline: leaf }
  fish: { name: ear wire, kind: ear wire, length: 18 mm }
";

const BEADS: [&str; 4] = ["seed", "reed", "tube", "drop"];
const HANGERS: [&str; 5] = ["pin", "eye", "bail", "ring", "links"];
const ENDS: [&str; 6] = ["crimp", "[crimp, cover]", "[crimp, guard]", "cup", "tip", "knot"];
const CLOSURES: [&str; 13] = [
    "left: [ring], right: [hook]",
    "each side: [eye, cone], left: [{ links: 40 mm }], right: [clasp]",
    "each side: [end, ring], right: [spring]",
    "left: [loop], right: [stick]",
    "each side: [half]",
    "each side: [box]",
    "each side: [slide]",
    "open: hanging, left: [ring], right: [thrum]",
    "both ends: [thrum]",
    "each side: [ring, grip]",
    "each side: [eye, cap], left: [ring], right: [hook]",
    "left: [fish]",
    "both ends: [ring, fish]",
];

fn word(words: &'static [&'static str]) -> impl Strategy<Value = &'static str> {
    prop::sample::select(words)
}

fn item() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        6 => (1..9_u32, word(&BEADS)).prop_map(|(count, bead)| format!("{count} {bead}")),
        1 => (1..300_u32).prop_map(|tenths| format!("{{ space: {:.1} mm }}", f64::from(tenths) / 10.0)),
        1 => Just("{ knot: 1.5 mm }".to_owned()),
        1 => word(&["bar", "ring", "crimp", "links"]).prop_map(str::to_owned),
        1 => word(&BEADS).prop_map(|bead| format!("cap, {bead}, cap")),
        1 => (4..30_u32, 0..3_u32).prop_map(|(count, apart)| format!("{{ random: {count}, of: {{ reed: 2, seed: 2, tube: 3 }}, apart: {apart} }}")),
        1 => (2..30_u32, word(&BEADS)).prop_map(|(count, bead)| format!("{{ fade: {count}, from: {bead}, to: drop }}")),
        1 => (50..200_u32).prop_map(|length| format!("{{ graduate: [seed, reed, tube], length: {length} mm }}")),
        1 => Just("{ dangle: [shell], on: ring }".to_owned()),
        2 => (1..4_u32, word(&BEADS), word(&HANGERS)).prop_map(|(n, bead, on)| format!("{{ dangle: [{n} {bead}], on: {on} }}")),
    ];
    leaf.prop_recursive(2, 10, 3, |inner| {
        let list = prop::collection::vec(inner, 1..4).prop_map(|items| items.join(", "));
        prop_oneof![
            (1..6_u32, list.clone()).prop_map(|(times, list)| format!("{{ repeat: {times}, of: [{list}] }}")),
            (list.clone(), list).prop_map(|(side, about)| format!("{{ mirror: [{side}], about: [{about}] }}")),
        ]
    })
}

fn strand(number: u32) -> impl Strategy<Value = String> {
    let settle = word(&[
        "settle: fill",
        "settle: slide, length: 420 mm",
        "settle: spread, length: 420 mm",
        "settle: fixed, length: 420 mm",
    ]);
    let stop = prop_oneof![3 => Just(""), 1 => Just(", { stop: crimp, at: 80 mm }")];
    let filled = prop_oneof![4 => Just(""), 1 => Just(", { repeat: fill, of: [reed, 2 seed] }"), 1 => Just(", { random: fill, of: { reed: 2, seed: 3, tube: 2 } }"), 1 => Just(", { fade: fill, from: reed, to: tube }")];
    let list = prop::collection::vec(item(), 1..4).prop_map(|items| items.join(", "));
    (word(&["wire", "silk"]), word(&ENDS), settle, list, filled, stop).prop_map(
        move |(cord, ends, settle, list, filled, stop)| {
            format!(
                "  - {{ name: strand {number}, cord: {cord}, ends: {ends}, {settle}, beads: [{list}{filled}{stop}] }}\n"
            )
        },
    )
}

fn text() -> impl Strategy<Value = String> {
    let kind = word(&["necklace", "bracelet", "anklet", "earrings", "strap"]);
    let second = prop_oneof![2 => Just(String::new()).boxed(), 1 => strand(2).boxed()];
    (kind, strand(1), second, word(&CLOSURES)).prop_map(|(kind, one, other, closure)| {
        format!("festoon: 1\ntitle: generated\nkind: {kind}\n{STOCK}strands:\n{one}{other}closure: {{ {closure} }}\n")
    })
}

/// Every page that can be drawn of a piece.
fn all_pages(piece: &Piece, style: &Style) -> Vec<Page> {
    let mut pages = festoon::pages(piece, style);
    pages.extend(sheet::proof(piece, style).into_iter().flatten());
    let ground = Ground::Plain(Rgb::WHITE);
    let setting = picture::Setting { ground, proportion: Proportion::Square, caption: true };
    pages.push(picture::picture(std::slice::from_ref(piece), &setting));
    pages
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, rng_seed: RngSeed::Fixed(11), max_global_rejects: 4096, ..ProptestConfig::with_cases(12) })]

    #[test]
    fn every_page_of_every_kind_is_drawn(text in text(), paper in prop::sample::select(PAPERS.to_vec())) {
        let piece = read(&text);
        // What cannot be made is refused, which other tests are about.
        prop_assume!(piece.is_ok());
        if let Ok(piece) = piece {
            let style = Style { paper, ..Style::default() };
            for page in festoon::pages(&piece, &style) {
                prop_assert_eq!(boxes::outside(&page, margin(paper)), Vec::<String>::new());
            }
            for page in all_pages(&piece, &style) {
                let svg = svg(&page);
                prop_assert!(!boxes(&page).is_empty() && !svg.contains("NaN") && !svg.contains("inf"), "{}", page.title);
            }
        }
    }
}

/// The generator reaches every finding and every kind of entry.
#[test]
fn generated_patterns_use_the_whole_language() {
    let mut runner = TestRunner::deterministic();
    let texts: Vec<_> = (0..400).map(|_| text().new_tree(&mut runner).expect("a text").current()).collect();
    let sound: Vec<(&String, Design)> = texts.iter().filter_map(|text| Some((text, resolved(text)?))).collect();
    assert!(sound.len() > 40, "{} of 400 can be made", sound.len());
    let words = [
        "stop:",
        "repeat: fill",
        "mirror:",
        "about:",
        "dangle:",
        "space:",
        "knot:",
        "bar",
        "cap",
        "random:",
        "fade:",
        "graduate:",
    ];
    for word in words {
        assert!(
            sound.iter().any(|(text, _)| text.split("strands:").nth(1).is_some_and(|own| own.contains(word))),
            "{word}"
        );
    }
    let used: BTreeSet<_> = sound.iter().flat_map(|(_, design)| kinds(design)).collect();
    let missing: Vec<_> = FindingKind::ALL.iter().filter(|kind| !used.contains(kind)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// What a text makes, before it is hung; nothing where it has errors.
fn resolved(text: &str) -> Option<Design> {
    let (pattern, remarks) = pattern::read(&Source::new("generated", text.to_owned()));
    pattern.filter(|_| !has_errors(&remarks)).and_then(|pattern| resolve(&pattern, &Choice::default()).0)
}

/// The kinds of finding that a design takes.
fn kinds(design: &Design) -> Vec<FindingKind> {
    let lines = festoon::materials::materials(design, &festoon::materials::Order::default()).lines;
    let kind = |article| match article {
        festoon::materials::Article::Finding(at) => Some(design.findings[at].kind()),
        _ => None,
    };
    lines.into_iter().filter_map(|line| kind(line.article)).collect()
}
