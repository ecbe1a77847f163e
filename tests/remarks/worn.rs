//! How a piece hangs, wears, looks and weighs.

use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    [load(), hanging(), extenders(), rings(), looks(), wearers()].into_iter().flatten().collect()
}

fn load() -> Vec<Case> {
    let tension = made(&sound()).0.unwrap().drape.strands[0].tension;
    let five = 5.0 * tension.first.max(tension.last);
    let strength = |newtons: f64| changed(&[("67 N", &format!("{newtons:.6} N"))]);
    // 20 beads and 0.4064 m of cord at 0.55 g: 150 g at 7.48882 g a bead.
    let mass = |mass| changed(&[("0.27 g", mass)]);
    vec![
        Case::new(Code::WeakCord, strength(five * 1.001), strength(five * 0.999)),
        Case::new(Code::WireKnotted, sound(), changed(&[("kind: thread", "kind: wire")])),
        Case::new(Code::WireKnotted, crimped("crimp"), crimped("knot")),
        Case::new(Code::StrengthUnknown, sound(), changed(&[(" strength: 67 N,", "")])),
        Case::new(Code::HeavyPiece, mass("7.4888 g"), mass("7.4889 g")),
    ]
}

/// The sound pattern on wire, closed in some way.
fn crimped(ends: &str) -> String {
    let text =
        changed(&[("kind: thread", "kind: wire"), ("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
    if ends == "crimp" { joined(&text, &[CRIMP]) } else { text }
}

fn hanging() -> Vec<Case> {
    let neck = |girth| changed(&[("370 mm", girth)]);
    let strap = |length: &str| changed(&[("necklace", "strap"), ("16 in", length), ("[20 reed]", "[2 reed]")]);
    // A neck of 370 mm that is 1.2 times as broad as deep is 127.97 mm broad (perimeter of an ellipse).
    let held = |length: f64| strap(&format!("{length} mm"));
    let second = |length: &str| {
        let other = STRAND.replace("only", "other").replace("16 in", length);
        format!("{HEAD}{STRAND}{other}{WEAR}")
    };
    // 14 beads of 6 mm with holes of 1 mm take 14 × sqrt(36 − 1) = 82.825 mm, which is 60 % of 138.04 mm.
    let fixed =
        |length| changed(&[("16 in", length), ("[20 reed]", "[14 reed]\n    settle: fixed"), ("370 mm", "130 mm")]);
    let row = |row| changed(&[("beads:\n", MIST), ("[20 reed]", row)]);
    vec![
        Case::new(Code::TooShort, neck("406.4 mm"), neck("406.5 mm")),
        Case::new(Code::NoRest, held(129.0), held(127.5)),
        Case::new(Code::StrandsCrowd, second("26 in"), second("16 1/16 in")),
        Case::new(Code::BareCord, fixed("138.04 mm"), fixed("138.06 mm")),
        Case::new(
            Code::UnevenEnds,
            row("[{ repeat: 5, of: [reed, mist] }, reed]"),
            row("[{ repeat: 5, of: [reed, mist] }]"),
        ),
    ]
}

/// A pattern with a clasp of 12 mm and an extender of 60 mm, of which a link is 4 mm.
fn extended(text: &str) -> String {
    let links = "links: { kind: chain, link: 4 mm }";
    and(&with_findings(text, &[CLASP, links]), "closure: { left: [{ links: 60 mm }], right: [clasp] }")
}

fn extenders() -> Vec<Case> {
    // 16 in, the clasp and a link are 422.4 mm.
    let neck = |girth| extended(&changed(&[("370 mm", girth)]));
    let ring = made(&extended(&bracelet("{ wrist: 170 mm, ease: 30 mm }"))).0.unwrap().drape.ring.unwrap();
    let wrist = |girth: f64| extended(&bracelet(&format!("{{ wrist: {girth:.3} mm, ease: 10 mm }}")));
    vec![
        Case::new(Code::IdleExtender, neck("422.4 mm"), neck("422.5 mm")),
        Case::new(Code::IdleExtender, wrist(ring.inside_girth - 0.01), wrist(ring.inside_girth + 0.01)),
        // Let out as far as it goes it has the ease, or lacks it.
        Case::new(Code::RingLoose, wrist(ring.inside_girth - 12.49), wrist(ring.inside_girth - 12.51)),
    ]
}

#[test]
fn an_extender_is_let_out_before_a_piece_is_too_short() {
    // With the whole chain 478.4 mm.
    let neck = |girth| codes(&extended(&changed(&[("370 mm", girth)])));
    assert_eq!(neck("478.4 mm"), [Code::IdleExtender]);
    assert_eq!(neck("478.5 mm"), [Code::TooShort]);
    let ring = made(&extended(&bracelet("{ wrist: 170 mm, ease: 30 mm }"))).0.unwrap().drape.ring.unwrap();
    let wrist = |room: f64| {
        let girth = ring.longest_girth - room;
        codes(&extended(&bracelet(&format!("{{ wrist: {girth:.3} mm, ease: 10 mm }}"))))
    };
    assert_eq!(wrist(7.51), [Code::IdleExtender]);
    assert_eq!(wrist(7.49), [Code::RingTight, Code::IdleExtender]);
    assert_eq!(wrist(-0.01), [Code::TooShort]);
}

#[test]
fn a_clasp_helps_round_the_neck() {
    let clasped = with_findings(&changed(&[("370 mm", "418 mm")]), &[CLASP, RING]);
    assert_eq!(codes(&and(&clasped, CLOSED)), []);
}

fn rings() -> Vec<Case> {
    let ring = made(&bracelet("{ wrist: 150 mm, ease: 10 mm }")).0.unwrap().drape.ring.unwrap();
    let wrist =
        |room: f64, ease: f64| bracelet(&format!("{{ wrist: {:.3} mm, ease: {ease} mm }}", ring.inside_girth - room));
    vec![
        Case::new(Code::RingTight, wrist(7.51, 10.0), wrist(7.49, 10.0)),
        Case::new(Code::RingLoose, wrist(12.49, 10.0), wrist(12.51, 10.0)),
        Case::new(Code::TooShort, wrist(0.01, 1.0), wrist(-0.01, 1.0)),
        // Of two strands the tightest decides, wherever it stands.
        // Beads of 6 mm side by side.
        Case::new(Code::StrandsCrowd, barred("6.1 mm"), barred("6 mm")),
        Case::new(
            Code::RingTight,
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 30),
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 29),
        ),
        Case::new(
            Code::RingTight,
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 30),
            beside(29, "{ wrist: 150 mm, ease: 10 mm }", 30),
        ),
    ]
}

/// A bracelet of two strands, which end on bars that hold them so far apart.
fn barred(spacing: &str) -> String {
    let text = beside(29, "{ wrist: 150 mm, ease: 10 mm }", 29);
    let bar = format!("bar: {{ kind: end bar, length: 3 mm, spacing: {spacing}, holes: 2 }}");
    and(&with_findings(&text, &[&bar]), "closure: { each side: [bar] }")
}

/// A bracelet of two strands of so many beads.
fn beside(one: u32, wear: &str, other: u32) -> String {
    let second = format!("[{one} reed]\n  - {{ name: other, cord: line, beads: [{other} reed] }}\n");
    bracelet(wear).replace("[30 reed]\n", &second)
}

#[test]
fn the_tightest_of_two_rings_is_named() {
    let (piece, remarks) = made(&beside(30, "{ wrist: 150 mm, ease: 10 mm }", 28));
    assert_eq!(piece.unwrap().drape.ring.unwrap().strand, 1);
    assert!(remarks[0].headline.starts_with("the closed ring of strand other measures"), "{remarks:?}");
}

fn looks() -> Vec<Case> {
    let title = |title: &str| changed(&[("title: Try", &format!("title: {title}"))]);
    let mist = |colour, size| {
        let mist = MIST.replace("cube", "round").replace("4 mm", size).replace("#c9d6d8", colour);
        changed(&[("beads:\n", &mist), ("[20 reed]", "[reed, 8 mist, reed]")])
    };
    vec![
        Case::new(Code::MissingGlyph, title("Бусы и Χάντρες"), title("骨")),
        Case::new(Code::LookAlike, mist("#c9d6d8", "6 mm"), mist("#5e805c", "6 mm")),
        Case::new(Code::LookAlike, mist("#5e805c", "5 mm"), mist("#5e805c", "5.1 mm")),
    ]
}

fn wearers() -> Vec<Case> {
    let child = |clasp: &str| {
        let text = changed(&[("370 mm", "370 mm, child: yes")]);
        and(&with_findings(&text, &[clasp, RING]), CLOSED)
    };
    let material = |material| changed(&[("mass: 0.27 g", material)]);
    vec![
        Case::new(Code::ChildBreakaway, child(&CLASP.replace(" }", ", breakaway: yes }")), child(CLASP)),
        Case::new(Code::DeclareMetal, material("material: sterling silver"), material("material: brass")),
    ]
}
