//! Each rule appears where its limit is passed, and just does not where it is kept.

use festoon::Piece;
use festoon::design::Choice;
use festoon::remark::{Code, Level, Remark};
use festoon::source::Source;

const HEAD: &str = "\
festoon: 1
title: Try
kind: necklace
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", mass: 0.27 g }
cords:
  wire: { kind: wire, diameter: 0.38 mm, strength: 67 N, mass: 0.55 g/m }
strands:
";
const STRAND: &str = "  - name: only
    cord: wire
    length: 16 in
    beads: [20 reed]
";
const WEAR: &str = "wear: { neck base: 370 mm }\n";

const CRIMP: &str = "crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }";
const GUARD: &str = "guard: { kind: wire guard, length: 4 mm }";
const PIN: &str = "pin: { kind: head pin, wire: 0.6 mm, length: 20 mm }";
const EYE: &str = "eye: { kind: eye pin, wire: 0.72 mm, length: 50 mm }";
const CONE: &str = "cone: { kind: cone, length: 14 mm, inside: 8 mm, tip: 1.5 mm }";
const CLASP: &str = "clasp: { kind: clasp, length: 12 mm }";

/// A pattern about which no rule has anything to say.
fn sound() -> String {
    [HEAD, STRAND, WEAR].concat()
}

/// The sound pattern with each text replaced by another.
fn changed(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(sound(), |text, (from, to)| {
        assert!(text.contains(from), "{from} in {text}");
        text.replace(from, to)
    })
}

fn with_findings(text: &str, findings: &[&str]) -> String {
    let lines: String = findings.iter().map(|finding| format!("  {finding}\n")).collect();
    text.replace("strands:\n", &format!("findings:\n{lines}strands:\n"))
}

fn made(text: &str) -> (Option<Piece>, Vec<Remark>) {
    festoon::piece(&Source::new("try.yaml", text), &Choice::default(), None)
}

fn codes(text: &str) -> Vec<Code> {
    made(text).1.iter().map(|remark| remark.code).collect()
}

/// A remark appears with the second text, and none at all with the first.
fn appears(code: Code, kept: &str, passed: &str) {
    assert_eq!(made(kept).1, [], "{kept}");
    let (_, remarks) = made(passed);
    let [remark] = remarks.as_slice() else { panic!("{remarks:#?}\n{passed}") };
    assert_eq!(remark.code, code, "{passed}");
    assert!(!remark.headline.is_empty() && !remark.help.is_empty(), "{remark:?}");
}

#[test]
fn a_sound_pattern_has_no_remark() {
    assert_eq!(made(&sound()).1, []);
}

#[test]
fn a_cord_passes_its_beads() {
    let cord = |diameter| changed(&[("0.38 mm", diameter)]);
    appears(Code::CordTooThick, &cord("1 mm"), &cord("1.01 mm"));
}

#[test]
fn a_cord_passes_what_stops_its_beads() {
    let stopped = |inside: &str| {
        let text = changed(&[("[20 reed]", "[10 reed, { stop: crimp, at: 200 mm }, 10 reed]")]);
        with_findings(&text, &[&CRIMP.replace("1.3 mm", inside)])
    };
    appears(Code::CordTooThick, &stopped("0.38 mm"), &stopped("0.37 mm"));
}

#[test]
fn a_cord_goes_twice_through_its_crimp() {
    // Two circles need twice one's diameter (packing): 0.76 mm for a wire of 0.38 mm.
    let crimped = |inside: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: crimp")]);
        with_findings(&text, &[&CRIMP.replace("1.3 mm", inside)])
    };
    appears(Code::CrimpTooSmall, &crimped("0.76 mm"), &crimped("0.75 mm"));
}

/// A strand on a folded cord, hitched to a jump ring.
fn doubled(changes: &[(&str, &str)]) -> String {
    let text = changed(&[("kind: wire", "kind: silk"), ("length: 16 in", "length: 16 in\n    doubled: yes")]);
    let text = changes.iter().fold(text, |text, (from, to)| text.replace(from, to));
    with_findings(&text, &["ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm }"]) + "closure: { left: [ring] }\n"
}

#[test]
fn a_doubled_cord_goes_twice_through_its_beads() {
    // Two circles need twice one's diameter (packing): a hole of 1 mm passes two cords of 0.5 mm.
    let cord = |diameter| doubled(&[("0.38 mm", diameter)]);
    appears(Code::CordTooThick, &cord("0.5 mm"), &cord("0.51 mm"));
}

#[test]
fn a_doubled_cord_goes_four_times_through_its_crimp() {
    // Four circles need 1 + sqrt(2) = 2.4142 times one's diameter (packing): 0.9174 mm for 0.38 mm.
    let crimped = |inside: &str| {
        let text = doubled(&[("doubled: yes", "doubled: yes\n    ends: crimp")]);
        text.replace("findings:\n", &format!("findings:\n  {}\n", CRIMP.replace("1.3 mm", inside)))
    };
    appears(Code::CrimpTooSmall, &crimped("0.92 mm"), &crimped("0.91 mm"));
}

#[test]
fn a_fold_is_hitched_to_something_and_bends() {
    appears(Code::Unhitched, &doubled(&[]), &doubled(&[]).replace("left: [ring]", "right: [ring]"));
    appears(Code::Unhitched, &doubled(&[]), &doubled(&[("kind: silk", "kind: wire")]));
}

#[test]
fn each_leg_of_a_doubled_cord_bears_half() {
    let tension = made(&doubled(&[])).0.unwrap().drape.strands[0].tension;
    let five = 5.0 * tension.first.max(tension.last) / 2.0;
    let strength = |newtons: f64| doubled(&[("67 N", &format!("{newtons:.6} N"))]);
    appears(Code::WeakCord, &strength(five * 1.001), &strength(five * 0.999));
}

#[test]
fn a_guards_leg_is_a_third_pass() {
    // Three circles need 2.1547 times one's diameter (packing): 0.8188 mm for a wire of 0.38 mm.
    let guarded = |inside: &str| {
        let text = changed(&[("length: 16 in", "length: 16 in\n    ends: [guard, crimp]")]);
        with_findings(&text, &[&CRIMP.replace("1.3 mm", inside), GUARD])
    };
    appears(Code::CrimpTooSmall, &guarded("0.82 mm"), &guarded("0.81 mm"));
}

fn dangling(pin: &str) -> String {
    let text = changed(&[("[20 reed]", "[10 reed, { dangle: [reed], on: pin }, 10 reed]")]);
    with_findings(&text, &[pin])
}

#[test]
fn a_pin_passes_its_beads() {
    appears(Code::PinTooThick, &dangling(&PIN.replace("0.6 mm", "1 mm")), &dangling(&PIN.replace("0.6 mm", "1.01 mm")));
}

#[test]
fn a_pin_is_as_long_as_its_beads_and_its_loop() {
    // A bead of 6 mm with a hole of 1 mm is sqrt(36 − 1) = 5.916 mm long; a loop of 3 mm from wire of 0.6 mm takes
    // π × 2.4 = 7.540 mm: 13.456 mm.
    let long = |length| dangling(&PIN.replace("20 mm", length));
    appears(Code::PinTooShort, &long("13.46 mm"), &long("13.45 mm"));
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

#[test]
fn crimps_lie_side_by_side_in_a_cone() {
    // The cone is 3 mm wide, like the eye, 14 × 1.5 / 6.5 = 3.231 mm below its tip; the loops hang 3 − 0.72 mm lower
    // and the crimps begin 3/16 in − 2 mm below those, 8.273 mm below the tip, where the cone is 5.341 mm wide. Four
    // circles need 2.4142 times one's diameter (packing): crimps of 2.212 mm fit.
    let crimps = |outside| gathered(4, EYE, CONE, &CRIMP.replace("outside: 2 mm", outside));
    appears(Code::CrimpsInCone, &crimps("outside: 2.21 mm"), &crimps("outside: 2.22 mm"));
}

#[test]
fn crimps_hide_in_their_cone() {
    // A cone that narrows from 8 to 2.9 mm holds the eye a share 0.1 / 5.1 of its length below its tip; the crimps end
    // 2.28 + 4.7625 mm further down, at its mouth when it is 7.0425 × 5.1 / 5 = 7.183 mm long.
    let cone = |length| gathered(1, EYE, &CONE.replace("tip: 1.5", "tip: 2.9").replace("length: 14 mm", length), CRIMP);
    appears(Code::CrimpsShow, &cone("length: 7.19 mm"), &cone("length: 7.18 mm"));
}

#[test]
fn an_eye_stays_in_its_cone() {
    let tip = |tip| gathered(1, EYE, &CONE.replace("tip: 1.5", tip), CRIMP);
    appears(Code::EyeInCone, &tip("tip: 2.99"), &tip("tip: 3"));
    let inside = |inside| gathered(1, EYE, &CONE.replace("inside: 8", inside).replace("tip: 1.5", "tip: 1"), CRIMP);
    assert!(!codes(&inside("inside: 3")).contains(&Code::EyeInCone));
    assert_eq!(codes(&inside("inside: 2.99")), [Code::EyeInCone]);
}

#[test]
fn a_pin_passes_its_cones_tip() {
    let tip = |tip| gathered(1, EYE, &CONE.replace("tip: 1.5", tip), CRIMP);
    appears(Code::PinTooThick, &tip("tip: 0.72"), &tip("tip: 0.71"));
}

#[test]
fn loops_fill_an_eye() {
    // An eye of 3 mm from wire of 0.72 mm is 1.56 mm open; four cords of 0.38 mm need 2.4142 × 0.38 = 0.917 mm.
    let eye = |wire| gathered(4, &EYE.replace("0.72 mm", wire), CONE, CRIMP);
    appears(Code::EyeTooSmall, &eye("1.04 mm"), &eye("1.05 mm"));
}

#[test]
fn a_cord_bears_five_times_its_largest_tension() {
    let (piece, _) = made(&sound());
    let tension = piece.unwrap().drape.strands[0].tension;
    let five = 5.0 * tension.first.max(tension.last);
    let strength = |newtons: f64| changed(&[("67 N", &format!("{newtons:.6} N"))]);
    appears(Code::WeakCord, &strength(five * 1.001), &strength(five * 0.999));
}

#[test]
fn a_strength_that_is_not_written_is_not_checked() {
    appears(Code::StrengthUnknown, &sound(), &changed(&[(" strength: 67 N,", "")]));
}

#[test]
fn heavy_pieces() {
    // 20 beads and 0.4064 m of cord at 0.55 g: 150 g at 7.48882 g a bead.
    let mass = |mass| changed(&[("0.27 g", mass)]);
    appears(Code::HeavyPiece, &mass("7.4888 g"), &mass("7.4889 g"));
}

#[test]
fn a_necklace_goes_round_its_neck() {
    let neck = |girth| changed(&[("370 mm", girth)]);
    appears(Code::TooShort, &neck("406.4 mm"), &neck("406.5 mm"));
    let clasped = with_findings(&neck("418 mm"), &[CLASP]) + "closure: { right: [clasp] }\n";
    assert_eq!(codes(&clasped), []);
}

#[test]
fn strands_that_lie_on_one_another_crowd() {
    let second = |length: &str| {
        let other = STRAND.replace("only", "other").replace("16 in", length);
        format!("{HEAD}{STRAND}{other}{WEAR}")
    };
    appears(Code::StrandsCrowd, &second("26 in"), &second("16 1/16 in"));
}

#[test]
fn beads_that_are_fixed_leave_little_over() {
    // 14 beads of 6 mm with holes of 1 mm take 14 × sqrt(36 − 1) = 82.825 mm, which is 60 % of 138.04 mm.
    let fixed =
        |length| changed(&[("16 in", length), ("[20 reed]", "[14 reed]\n    settle: fixed"), ("370 mm", "130 mm")]);
    appears(Code::BareCord, &fixed("138.04 mm"), &fixed("138.06 mm"));
}

const MIST: &str = "beads:\n  mist: { shape: cube, size: 4 mm, hole: 1 mm, colour: \"#c9d6d8\", mass: 0.1 g }\n";

#[test]
fn both_ends_of_a_row_match() {
    let row = |row| changed(&[("beads:\n", MIST), ("[20 reed]", row)]);
    appears(
        Code::UnevenEnds,
        &row("[{ repeat: 5, of: [reed, mist] }, reed]"),
        &row("[{ repeat: 5, of: [reed, mist] }]"),
    );
}

fn bracelet(wear: &str) -> String {
    changed(&[
        ("necklace", "bracelet"),
        ("    length: 16 in\n", ""),
        ("[20 reed]", "[30 reed]"),
        ("{ neck base: 370 mm }", wear),
    ])
}

#[test]
fn a_bracelet_has_its_ease() {
    let ring = made(&bracelet("{ wrist: 150 mm, ease: 10 mm }")).0.unwrap().drape.ring.unwrap();
    let wrist =
        |room: f64, ease: f64| bracelet(&format!("{{ wrist: {:.3} mm, ease: {ease} mm }}", ring.inside_girth - room));
    appears(Code::RingTight, &wrist(7.51, 10.0), &wrist(7.49, 10.0));
    appears(Code::RingLoose, &wrist(12.49, 10.0), &wrist(12.51, 10.0));
    appears(Code::TooShort, &wrist(0.01, 1.0), &wrist(-0.01, 1.0));
}

#[test]
fn characters_without_a_glyph() {
    let title = |title: &str| changed(&[("title: Try", &format!("title: {title}"))]);
    appears(Code::MissingGlyph, &title("Бусы и Χάντρες"), &title("骨"));
}

#[test]
fn beads_are_told_apart() {
    let mist = |colour, size| {
        let mist = MIST.replace("cube", "round").replace("4 mm", size).replace("#c9d6d8", colour);
        changed(&[("beads:\n", &mist), ("[20 reed]", "[reed, 8 mist, reed]")])
    };
    appears(Code::LookAlike, &mist("#c9d6d8", "6 mm"), &mist("#5e805c", "6 mm"));
    appears(Code::LookAlike, &mist("#5e805c", "5 mm"), &mist("#5e805c", "5.1 mm"));
}

#[test]
fn a_childs_necklace_opens_when_pulled() {
    let child = |clasp: &str| {
        let text = changed(&[("370 mm", "370 mm, child: yes")]);
        with_findings(&text, &[clasp]) + "closure: { right: [clasp] }\n"
    };
    appears(Code::ChildBreakaway, &child(&CLASP.replace(" }", ", breakaway: yes }")), &child(CLASP));
}

#[test]
fn metals_are_declared() {
    let material = |material| changed(&[("mass: 0.27 g", material)]);
    appears(Code::DeclareMetal, &material("material: sterling silver"), &material("material: brass"));
}

#[test]
fn every_explanation_is_in_whole_sentences() {
    for code in Code::ALL {
        let text = code.explanation();
        assert!(text.starts_with(|c: char| c.is_uppercase() || c == '`' || c == 'n'), "{}: {text}", code.name());
        assert!(text.ends_with('.') && !text.contains("  "), "{}: {text}", code.name());
        assert_eq!(Code::named(code.name()), Some(*code));
    }
}

#[test]
fn errors_are_errors() {
    for code in [Code::CordTooThick, Code::CrimpTooSmall, Code::PinTooThick, Code::PinTooShort, Code::TooShort] {
        assert_eq!(code.level(), Level::Error, "{}", code.name());
    }
}
