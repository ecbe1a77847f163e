//! Texts of the whole language: pieces of every kind, with every entry, finding and key where it may stand. Many of them
//! cannot be made, for chance puts together what does not fit.

use proptest::prelude::*;

use festoon::source::Source;

use super::beside::beside;

/// What a text is written from, above its strands or on a shelf.
const STOCK: &str = "
beads:
  seed: { name: seed, shape: seed, size: 11/0, material: glass, colour: '#d9b98a', sold: { by: grams, mass: 20 g, price: 3 } }
  reed: { name: reed, shape: round, size: 6 mm, hole: 1 mm, material: glass, finish: faceted, colour: '#5d7f5b', tolerance: 0.1 mm, measured: 10 = 59 mm, instead: [oval], sold: { by: strand, length: 16 in, price: 4.20, from: the bead market } }
  tube: { name: tube, shape: tube, size: 3 x 9 mm, hole: 1 mm, material: brass, finish: metallic, colour: '#c29a3f' }
  drop: { name: drop, shape: drop, size: 8 x 12 mm, hole: 1 mm, material: glass, finish: clear, colour: '#8fb9ad', drilled: lengthwise }
  disc: { name: rondelle, shape: rondelle, size: 6 x 4 mm, hole: 1 mm, material: glass, finish: gloss, colour: '#a34a2e', sold: { by: hank, strands: 4, length: 40 cm, price: 9 } }
  oval: { name: oval, shape: oval, size: 5 x 7 mm, hole: 1 mm, mass: 0.3 g, finish: pearl, colour: '#efe6da' }
  mist: { name: mist, shape: bicone, size: 4 mm, hole: 0.9 mm, material: glass, finish: frosted, colour: '#c9d6d8', sold: { by: pack, count: 50, price: 0 } }
  die: { name: cube, shape: cube, size: 5 mm, hole: 1 mm, material: beech wood, finish: matte, colour: '#8a6a4b' }
  pad: { name: square, shape: square, size: 8 mm, thick: 3 mm, hole: 1 mm, material: shell, colour: '#e9d9c8' }
  cask: { name: barrel, shape: barrel, size: 5 x 8 mm, hole: 1.2 mm, material: ash wood, colour: '#dcc27a' }
  coin: { name: coin, shape: coin, size: 12 mm, thick: 3 mm, hole: 1 mm, material: shell, colour: '#e9d9c8' }
  chip: { name: chip, shape: chip, size: 7 x 4 mm, hole: 0.9 mm, material: glass, colour: '#69727a' }
  tile: { name: two-hole tile, shape: square, size: 14 x 6 mm, thick: 3 mm, holes: 2, apart: 8 mm, hole: 1 mm, material: glass, colour: '#d8d2bd' }
  tear: { name: tear, shape: drop, size: 6 x 9 mm, hole: 1 mm, drilled: tip, material: glass, colour: '#2f3552' }
  plate: { name: plate, shape: coin, size: 10 mm, thick: 2 mm, hole: 1 mm, drilled: front, material: shell, colour: '#e9d9c8' }
  guru: { name: guru, shape: round, size: 12 mm, hole: 3 mm, material: wood, colour: '#6f4a2f', sold: { by: each, price: 1.20 } }
cords:
  wire: { name: steel wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, strength: 60 N, filaments: 7, material: steel, stiffness: 4 N mm², colour: '#aaaaaa', sold: { by: spool, length: 9 m, price: 7.20 } }
  silk: { name: silk, kind: silk, diameter: 0.5 mm, mass: 0.3 g/m, take-up: 6.5 mm, needle: yes, colour: '#554433', sold: { by: length, length: 2 m, price: 2.50 } }
  twine: { name: nylon thread, kind: thread, diameter: 0.3 mm, strength: 11 lbf }
  lace: { name: leather lace, kind: leather, diameter: 0.8 mm, mass: 3 g/m, colour: '#553322' }
  stretch: { name: stretch cord, kind: elastic, diameter: 0.7 mm, strength: 3 kgf, mass: 0.4 g/m }
  cable: { name: cable chain, kind: chain, links: 10 = 35 mm, diameter: 3 mm, strength: 90 N, mass: 14 g/m }
  spring: { name: memory wire, kind: memory wire, gauge: 22, coil: 57 mm, colour: '#b4b8bb', sold: { by: turns, count: 12, price: 4.90 } }
findings:
  crimp: { name: tube crimp, kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm, mass: 0.02 g, material: brass }
  cover: { name: crimp cover, kind: crimp cover, length: 3.5 mm, outside: 3.5 mm, inside: 2.5 mm, colour: '#c0c0c0' }
  guard: { name: wire guard, kind: wire guard, length: 4 mm }
  cup: { name: knot cover, kind: knot cover, length: 7 mm, outside: 4 mm, inside: 3 mm, bead: seed }
  tip: { name: cord end, kind: cord end, length: 9 mm, outside: 3 mm, inside: 1.8 mm }
  cone: { name: cone, kind: cone, length: 14 mm, inside: 8 mm, mouth: 9 mm, tip: 1.5 mm }
  eye: { name: eye pin, kind: eye pin, gauge: 21, length: 50 mm }
  pin: { name: head pin, kind: head pin, gauge: 21, length: 50 mm }
  bail: { name: bail, kind: bail, length: 7 mm }
  cap: { name: bead cap, kind: bead cap, length: 2 mm, outside: 6 mm }
  ring: { name: jump ring, kind: jump ring, inside: 4 mm, gauge: 20 }
  shut: { name: closed ring, kind: jump ring, inside: 16 mm, wire: 2 mm, closed: yes }
  bar: { name: spacer bar, kind: spacer bar, length: 3 mm, holes: 3, spacing: 6 mm }
  end: { name: end bar, kind: end bar, length: 5 mm, holes: 3, spacing: 6 mm }
  links: { name: chain, kind: chain, link: 4 mm, length: 20 mm, sold: { by: length, length: 1 m, price: 4 } }
  hook: { name: hook, kind: hook, length: 18 mm }
  clasp: { name: lobster clasp, kind: clasp, length: 12 mm }
  spring: { name: spring ring, kind: spring ring, length: 8 mm }
  loop: { name: toggle ring, kind: toggle ring, length: 14 mm, sold: { by: each, price: 6 } }
  stick: { name: toggle bar, kind: toggle bar, length: 5 mm, outside: 19 mm, comes with: loop }
  half: { name: barrel half, kind: barrel half, length: 8 mm, outside: 5 mm, breakaway: yes }
  box: { name: box half, kind: box half, length: 7 mm, holes: 2, spacing: 8 mm }
  slide: { name: slide half, kind: slide half, length: 7 mm, outside: 5 mm, holes: 2, spacing: 8 mm }
  thrum: { name: tassel, kind: tassel, length: 40 mm, outside: 7 mm }
  wound: { name: silk tassel, kind: tassel, length: 60 mm, threads: 60, cord: silk }
  grip: { name: spectacle loop, kind: spectacle loop, length: 20 mm, breakaway: yes }
  shell: { name: shell charm, kind: charm, length: 12 mm, outside: 9 mm, outline: leaf }
  penny: { name: penny charm, kind: charm, length: 10 mm, outline: disc }
  star: { name: star charm, kind: charm, length: 12 mm, outline: star }
  heart: { name: heart charm, kind: charm, length: 12 mm, outline: heart }
  plank: { name: bar charm, kind: charm, length: 20 mm, outline: bar }
  fish: { name: ear wire, kind: ear wire, length: 18 mm }
";

const BEADS: [&str; 12] =
    ["seed", "reed", "tube", "drop", "disc", "oval", "mist", "die", "pad", "cask", "coin", "chip"];
/// What hangs by a loop or across its hole.
const HUNG: [&str; 9] = ["tear", "plate", "shell", "penny", "star", "heart", "plank", "thrum", "wound"];
const LOOPS: [&str; 3] = ["bail", "ring", "links"];
const HANGERS: [&str; 5] = ["pin", "eye", "bail", "ring", "links"];
const CORDS: [&str; 5] = ["wire", "silk", "twine", "lace", "stretch"];
const ENDS: [&str; 6] = ["crimp", "[crimp, cover]", "[crimp, guard]", "cup", "tip", "knot"];
const CLOSURES: [&str; 14] = [
    "left: [ring], right: [hook]",
    "each side: [eye, cone], left: [{ links: 40 mm }], right: [clasp]",
    "each side: [end, ring], right: [spring]",
    "left: [loop], right: [stick]",
    "each side: [half]",
    "each side: [box]",
    "each side: [slide]",
    "open: hanging, left: [ring], right: [thrum]",
    "both ends: [thrum]",
    "both ends: [guru, shell]",
    "each side: [ring, grip]",
    "each side: [eye, cap], left: [ring], right: [hook]",
    "left: [fish]",
    "both ends: [ring, fish]",
];
/// What may be said of any piece.
const ABOUT: [&str; 12] = [
    "summary: Drawn by chance.",
    "designer: Marram Studio",
    "permissions: For personal use.",
    "time: 1.5 h",
    "currency: EUR",
    "care: Keep it dry.",
    "notes: Made up.",
    "allow: [strands-crowd]",
    "price: { labour: 1.5 h, rate: 18, overhead: 2.50, wholesale: 2, retail: 2.5 }",
    "price: { labour: 90 min, rate: 20, overhead: 15 % }",
    "colourways: { dusk: { reed: { name: plum, colour: '#6b4a63', finish: matte } }, fog: { mist: { colour: '#cccccc' } } }",
    "wear: { body: woman 50, breadth to depth: 1.1, chest tilt: 25 deg }",
];

/// What the reference names and no key or word of the schema tells: a text has it if it says so.
pub const BESIDES: [&str; 21] = [
    "units: in",
    "units: mm",
    "units: both",
    "shelf: [shelf.yaml]",
    "mirror: [{ repeat: fill",
    "random: fill",
    "fade: fill",
    "graduate: [mist, reed, drop] }",
    "at: 280 mm",
    "ends: loop",
    "ends: knot",
    "cord: pin",
    "cord: eye",
    "dangle: [shell]",
    "dangle: [thrum]",
    "cap, reed, cap",
    "reed, bar",
    "both ends: [guru",
    "both ends: [ring, fish]",
    "{ links: 40 mm }",
    "assorted: { marsh",
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
        1 => (4..30_u32, 0..3_u32).prop_map(|(count, apart)| format!("{{ random: {count}, of: {{ reed: 2, seed: 2, tube: 3 }}, seed: 7, apart: {apart} }}")),
        1 => (2..30_u32, word(&BEADS)).prop_map(|(count, bead)| format!("{{ fade: {count}, from: {bead}, to: drop }}")),
        1 => (50..200_u32).prop_map(|length| format!("{{ graduate: [seed, reed, tube], length: {length} mm }}")),
        1 => (word(&HUNG), word(&LOOPS)).prop_map(|(hung, on)| format!("{{ dangle: [{hung}], on: {on} }}")),
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
    let filled = word(&[
        "",
        "",
        "",
        ", { repeat: fill, of: [reed, 2 seed] }",
        ", { random: fill, of: { reed: 2, seed: 3, tube: 2 }, apart: { reed: 2 } }",
        ", { fade: fill, from: reed, to: tube }",
    ]);
    let more = word(&["", "", "allowance: 40 mm, ", "knots: 1 mm, ", "doubled: yes, ", "allow: [strands-crowd], "]);
    let list = prop::collection::vec(item(), 1..4).prop_map(|items| items.join(", "));
    (word(&CORDS), word(&ENDS), settle, list, filled, more).prop_map(move |(cord, ends, settle, list, filled, more)| {
        format!(
            "  - {{ name: strand {number}, cord: {cord}, ends: {ends}, {more}{settle}, beads: [{list}{filled}] }}\n"
        )
    })
}

/// Whatever chance puts together, of any kind.
fn any() -> impl Strategy<Value = String> {
    let kind = word(&["necklace", "bracelet", "anklet", "earrings", "strap"]);
    let second = prop_oneof![2 => Just(String::new()).boxed(), 1 => strand(2).boxed()];
    (kind, strand(1), second, word(&CLOSURES)).prop_map(|(kind, one, other, closure)| {
        format!("kind: {kind}\nstrands:\n{one}{other}closure: {{ {closure} }}\n")
    })
}

/// A row of chain in whose links something hangs.
fn linked() -> impl Strategy<Value = String> {
    (2..7_u32, word(&HUNG), word(&HUNG), word(&["ring", "bail"])).prop_map(|(links, one, other, on)| {
        format!(
            "kind: bracelet\nwear: {{ wrist: 155 mm, ease: 20 mm }}\nstrands:\n  - {{ name: only, cord: cable, beads: [{{ links: 6 }}, \
             {{ repeat: 3, of: [{{ dangle: [{one}], on: {on} }}, {{ links: {links} }}, {{ dangle: [{other}], on: ring }}, \
             {{ links: 5 }}] }}, {{ dangle: [2 reed, drop], on: pin }}, {{ links: 5 }}] }}\nclosure: {{ left: [ring], right: [clasp] }}\n"
        )
    })
}

/// Earrings without cord.
fn pinned() -> impl Strategy<Value = String> {
    (word(&["pin", "eye"]), word(&BEADS), word(&BEADS)).prop_map(|(pin, one, other)| {
        format!(
            "kind: earrings\nstrands: [{{ name: only, cord: {pin}, beads: [{one}, reed, {other}] }}]\nclosure: {{ left: [fish] }}\n"
        )
    })
}

/// A row that goes round its wearer several times: a coil of memory wire, or a wound strand, which has a size.
fn wound() -> impl Strategy<Value = String> {
    let ends = word(&[
        "cord: spring, ends: loop",
        "cord: spring, ends: tip",
        "cord: silk, ends: knot",
        "cord: twine, ends: crimp",
    ]);
    (ends, word(&["2", "3", "3 1/2"]), word(&BEADS)).prop_map(|(ends, wraps, bead)| {
        format!(
            "kind: bracelet\nwraps: {wraps}\nwear: {{ wrist: 160 mm, ease: 8 mm }}\nsizes: [{{ name: large, wear: {{ wrist: 175 mm }} }}]\n\
             strands:\n  - {{ name: only, {ends}, beads: [{{ repeat: fill, of: [3 {bead}, reed] }}] }}\n"
        )
    })
}

/// Strands twisted round one another.
fn twisted() -> impl Strategy<Value = String> {
    (word(&["2", "5", "7 1/2"]), word(&["seed", "mist"])).prop_map(|(twist, bead)| {
        format!(
            "kind: necklace\ntwist: {twist}\nallow: [twist-slack]\nstrands:\n  - {{ name: green, cord: wire, ends: crimp, beads: [70 reed] }}\n  \
             - {{ name: pale, cord: wire, ends: crimp, beads: [{{ repeat: 11, of: [8 {bead}, reed] }}, 9 mist] }}\n\
             closure: {{ each side: [eye, cone], left: [ring], right: [hook] }}\n"
        )
    })
}

/// A necklace whose ends nothing joins, or that is closed for good.
fn unclasped() -> impl Strategy<Value = String> {
    let closure = word(&[
        "open: through, left: [shut], right: [wound], tail: 120 mm",
        "open: hanging, left: [plank], right: [star]",
        "both ends: [guru, wound]",
        "both ends: [cap, heart]",
    ]);
    (closure, word(&BEADS), 1..7_u32).prop_map(|(closure, bead, count)| {
        format!(
            "kind: necklace\nstrands:\n  - {{ name: only, cord: silk, ends: knot, allowance: 40 mm, knots: 1.4 mm, \
             beads: [{{ repeat: 20, of: [{count} {bead}, 2 reed] }}] }}\nclosure: {{ {closure} }}\n"
        )
    })
}

/// Two rows between the halves of a clasp or two bars, which share what they go through.
fn joined() -> impl Strategy<Value = String> {
    let closure =
        word(&["left: [box], right: [box]", "each side: [slide]", "each side: [end], left: [ring], right: [hook]"]);
    (closure, word(&["bar", "tile"]), 3..6_u32).prop_map(|(closure, shared, count)| {
        let row = |name| format!("  - {{ name: {name}, cord: wire, ends: crimp, beads: [{{ repeat: 4, of: [{count} reed, {shared}] }}, 3 reed, {shared}, 3 reed] }}\n");
        format!("kind: bracelet\nwear: {{ wrist: 140 mm, ease: 12 mm }}\nstrands:\n{}{}closure: {{ {closure} }}\n", row("upper"), row("lower"))
    })
}

/// A row whose beads and lengths its text counts itself, in two sizes.
fn counted() -> impl Strategy<Value = String> {
    (40..60_u32, word(&BEADS), word(&["[guard, crimp, cover]", "cup"])).prop_map(|(count, bead, ends)| {
        let counts = if bead == "reed" { format!("{{ reed: {} }}", count + 1) } else { format!("{{ {bead}: {count}, reed: 1 }}") };
        format!(
            "kind: necklace\nwear: {{ neck base: 360 mm }}\nstrands:\n  - {{ name: only, cord: wire, ends: {ends}, length: 700 mm, \
             beads: [{count} {bead}, reed] }}\nclosure: {{ left: [ring], right: [clasp] }}\n\
             sizes: [{{ name: long, change: 1 in, wear: {{ neck base: 400 mm }} }}]\n\
             expect: {{ beads: {counts}, strands: {{ only: {{ beads: {counts}, beaded: 1 m within 1 m, finished: 1 m within 1 m, \
             cut: 1 m within 1 m }} }} }}\n"
        )
    })
}

/// A folded cord, filled alike from both ends so far as is left.
fn doubled() -> impl Strategy<Value = String> {
    (word(&BEADS), 10..40_u32).prop_map(|(bead, leave)| {
        format!(
            "kind: anklet\nwear: {{ ankle: 220 mm, child: yes }}\nstrands:\n  - {{ name: only, cord: twine, doubled: yes, length: 260 mm, \
             leave: {leave} mm, beads: [{{ mirror: [{{ repeat: fill, of: [2 mist, {bead}] }}], about: [coin] }}] }}\n\
             closure: {{ left: [ring], right: [hook] }}\n"
        )
    })
}

/// A row round the wrist of beads that are bought together.
fn assorted() -> impl Strategy<Value = String> {
    (3..6_u32, word(&BEADS)).prop_map(|(times, bead)| {
        format!(
            "kind: bracelet\nassorted: {{ marsh: {{ name: marsh mix, sold: {{ by: mix, count: 200, price: 6.50 }}, holds: {{ tube: 5, oval: 2 }} }}, \
             row: {{ sold: {{ by: graduated strand, length: 40 cm }}, holds: {{ die: 20, pad: 3 }} }} }}\n\
             strands:\n  - {{ name: only, cord: stretch, ends: knot, beads: [{{ repeat: {times}, of: [tube, oval, die, 2 tube, pad, {bead}] }}] }}\n"
        )
    })
}

/// A strand that is held by stops, graduated or bridged by chain.
fn held() -> impl Strategy<Value = String> {
    let beads = prop_oneof![
        Just("{ stop: crimp, at: 140 mm }, { repeat: 4, of: [2 mist, reed] }, { stop: crimp, at: 280 mm }"),
        Just("{ graduate: [mist, reed, drop] }"),
        Just("10 reed, links, 10 reed"),
    ];
    (beads, word(&CLOSURES)).prop_map(|(beads, closure)| {
        format!(
            "kind: necklace\nstrands:\n  - {{ name: only, cord: wire, ends: crimp, length: 420 mm, settle: slide, \
             beads: [{beads}] }}\nclosure: {{ {closure} }}\n"
        )
    })
}

/// A text of the language, in which as much is said beside the strands as chance will have.
fn text() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        8 => any().boxed(),
        1 => linked().boxed(),
        1 => pinned().boxed(),
        1 => wound().boxed(),
        1 => twisted().boxed(),
        1 => unclasped().boxed(),
        1 => joined().boxed(),
        1 => counted().boxed(),
        1 => doubled().boxed(),
        1 => assorted().boxed(),
        1 => held().boxed(),
    ];
    let units = word(&["in", "mm", "both"]);
    let skill = word(&["skill: first piece", "skill: beginner", "skill: intermediate", "skill: advanced"]);
    let stock = prop_oneof![8 => Just(STOCK), 1 => Just("shelf: shelf.yaml\n"), 1 => Just("shelf: [shelf.yaml]\n")];
    let about = prop::sample::subsequence(ABOUT.to_vec(), 0..=ABOUT.len());
    (piece, units, skill, stock, about).prop_map(|(piece, units, skill, stock, about)| {
        let key = |line: &str| line.split(':').next().map(|key| format!("\n{key}:")).unwrap_or_default();
        let mut text = format!("festoon: 1\ntitle: generated\nunits: {units}\n{stock}{piece}");
        for line in about.into_iter().chain([skill]) {
            if !text.contains(&key(line)) {
                text += &format!("{line}\n");
            }
        }
        text
    })
}

/// A text beside the shelf that it may name.
pub fn source() -> impl Strategy<Value = Source> {
    text().prop_map(|text| {
        let shelf = |name: &str| (name == "shelf.yaml").then(|| format!("festoon: 1\n{STOCK}"));
        beside(Source::new("generated.yaml", text), shelf)
    })
}
