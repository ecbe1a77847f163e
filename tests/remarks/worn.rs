//! How a piece hangs, wears, looks and weighs.

use festoon::design::nth;
use festoon::remark::said::hang::Hang;
use festoon::remark::{Code, Said};
use festoon::units::Length;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    [load(), hanging(), extenders(), rings(), looks(), wearers(), gross(), drops()].into_iter().flatten().collect()
}

fn load() -> Vec<Case> {
    let tension = made(&sound()).0.unwrap().drape.strands[nth(0)].tension;
    let five = 5.0 * tension.first.max(tension.last);
    let strength = |newtons: f64| changed(&[("60 N", &format!("{newtons:.6} N"))]);
    // 20 beads, 0.4064 m of cord at 0.6 g, and in two double overhand knots 2 x 17.29 x 0.4 mm of it: 150 g
    // at 7.487393 g a bead.
    let mass = |mass| changed(&[("0.27 g", mass)]);
    let stiff = |stiffness: &str| changed(&[("strength: 60 N", &format!("strength: 60 N, stiffness: {stiffness}"))]);
    let wire = |more: &str| crimped("crimp").replace("kind: wire", &format!("kind: wire, {more}"));
    vec![
        Case::new(Code::BadSize, wire("filaments: 7"), wire("filaments: 8")),
        Case::new(Code::UnknownMaterial, wire("material: copper"), wire("material: moonbeam")),
        Case::new(Code::WeakCord, strength(five * 1.001), strength(five * 0.999)),
        Case::new(Code::WireKnotted, sound(), changed(&[("kind: thread", "kind: wire")])),
        Case::new(Code::WireKnotted, crimped("crimp"), crimped("knot")),
        // 193,000 pi 0.4⁴ / 64 N mm² is 242.5.
        Case::new(Code::CordTooStiff, stiff("242 N mm²"), stiff("243 N mm²")),
        Case::new(Code::StrengthUnknown, sound(), changed(&[(" strength: 60 N,", "")])),
        Case::new(Code::HeavyPiece, mass("7.4873 g"), mass("7.4874 g")),
    ]
}

/// A bracelet tires no neck.
#[test]
fn a_heavy_piece_tires_what_it_hangs_on() {
    let heavy = bracelet("{ wrist: 150 mm, ease: 10 mm }").replace("0.27 g", "6 g");
    let remarks = made(&heavy).1;
    let heavy = remarks.iter().find(|remark| remark.code() == Code::HeavyPiece).unwrap();
    assert!(heavy.headline().ends_with("may tire the arm"), "{}", heavy.headline());
}

/// The sound pattern on wire, closed in some way.
fn crimped(ends: &str) -> String {
    let text =
        changed(&[("kind: thread", "kind: wire"), ("length: 16 in", &format!("length: 16 in\n    ends: {ends}"))]);
    if ends == "crimp" { joined(&text, &[CRIMP]) } else { text }
}

fn hanging() -> Vec<Case> {
    let neck = |girth: &str| changed(&[("370 mm", girth)]);
    let strap = |length: &str| changed(&[("necklace", "strap"), ("16 in", length), ("[20 reed]", "[2 reed]")]);
    // A neck of 370 mm that is 1.2 times as broad as deep is 127.97 mm broad (perimeter of an ellipse).
    let held = |length: f64| strap(&format!("{length} mm"));
    let second = |length: &str| {
        let other = STRAND.replace("only", "other").replace("16 in", length);
        format!("{HEAD}{STRAND}{other}{WEAR}")
    };
    // 14 beads of 6 mm with holes of 1 mm take 14 × sqrt(36 − 1) = 82.825 mm, which is 60 % of 138.04 mm.
    // Round so thin a neck no place is found.
    let thin = "{ neck base: 130 mm }\nallow: [odd-measure]";
    let fixed = |length| {
        let list = ("[20 reed]", "[14 reed]\n    settle: fixed");
        changed(&[("16 in", length), list, ("{ neck base: 370 mm }", thin)])
    };
    let row = |row| changed(&[("beads:\n", MIST), ("[20 reed]", row)]);
    // Two strands of 3,100 beads have more than 2,400 parts, which are not tried.
    let many = |others: &[&str]| {
        let small = [("size: 6 mm, hole: 1 mm", "size: 1 mm, hole: 0.6 mm"), ("0.27 g", "0.2 mg"), ("16 in", "3.4 m")];
        let one = changed(&[small.as_slice(), &[("20 reed", "3100 reed")]].concat());
        let other = |length| STRAND.replace("only", "other").replace("16 in", length).replace("20 reed", "3100 reed");
        one.replace(WEAR, &(others.iter().map(|length| other(length)).collect::<String>() + WEAR))
    };
    vec![
        // 118.3 mm of beads hold the cord 3 mm off the skin, and 288.1 mm of cord 0.2 mm: on average 1.015 mm, and 2 pi times
        // that are 6.38 mm. Pieces of 6 to 8 mm are chords that touch a circle: 0.4 mm more. Cord lies 0.3 mm off the axis of
        // each hole: beads that turn by 1.8 radians in all give it 0.54 mm. With less than 2 mm to spare no place is found.
        Case::new(Code::StrandsUnsettled, neck(&base(397.0)), neck(&base(400.1))),
        Case::new(Code::TooShort, neck(&base(397.0)), neck(&base(400.2))),
        // Inside it is as long as it is less pi times its widest bead: 600 + 6 pi = 618.85 mm.
        Case::new(Code::OverHead, changed(&[("16 in", "618.9 mm")]), changed(&[("16 in", "618.8 mm")])),
        Case::new(Code::StrandsUnsettled, many(&[]), many(&["3.404 m"])),
        Case::new(Code::StrandsCrowd, second("26 in"), and(&second("16 1/8 in"), "allow: [strands-unsettled]")),
        Case::new(Code::NoRest, held(129.0), held(127.5)),
        Case::new(Code::BareCord, fixed("138.04 mm"), fixed("138.06 mm")),
        Case::new(
            Code::UnevenEnds,
            row("[{ repeat: 5, of: [reed, mist] }, reed]"),
            row("[{ repeat: 5, of: [reed, mist] }]"),
        ),
    ]
}

fn gross() -> Vec<Case> {
    let neck = |girth: &str| changed(&[("16 in", "27 in"), ("370 mm", girth)]);
    let wrist = |girth: &str| {
        extended(&bracelet(&format!("{{ wrist: {girth}, ease: 10 mm }}")).replace("[30 reed]", "[13 reed]"))
    };
    let bead = |size: &str| {
        let large = format!("  large: {{ shape: oval, size: {size}, hole: 1 mm, colour: \"#c9d6d8\", mass: 9 g }}\n");
        changed(&[("beads:\n", &format!("beads:\n{large}")), ("[20 reed]", "[10 reed, large, 10 reed]")])
    };
    vec![
        // Half of 138 mm and of 329 mm, and one and a half times 502 mm (ANSUR II, by percentile 1 of women and 99 of men).
        Case::new(Code::OddMeasure, wrist("69 mm"), wrist("68.9 mm")),
        Case::new(Code::OddMeasure, neck("164.5 mm"), neck("164.4 mm")),
        Case::new(Code::OddMeasure, neck("753 mm"), neck("753.1 mm")),
        Case::new(Code::HugeBead, bead("10 x 50 mm"), bead("10 x 50.1 mm")),
        Case::new(Code::HugeBead, bead("50 x 10 mm"), bead("50.1 x 10 mm")),
    ]
}

/// Pins with a bead of 6 mm on chains that hang side by side.
fn drops() -> Vec<Case> {
    let hung = |spacing: &str, other: &str| {
        let strand = |name: &str, length: &str| {
            format!("  - {{ name: {name}, cord: line, length: {length}, beads: [{{ dangle: [reed], on: pin }}] }}\n")
        };
        let bar = format!("bar: {{ kind: end bar, length: 6 mm, spacing: {spacing}, holes: 2 }}");
        let text = format!("{HEAD}{}{}", strand("one", "12 mm"), strand("other", other));
        let text = text.replace("necklace", "earrings").replace("thread, diameter: 0.4", "chain, diameter: 1.4");
        and(&with_findings(&text, &[PIN, HOOK, &bar]), "closure: { left: [bar, hook] }")
    };
    vec![
        // Balls side by side may lie 0.5 mm in one another; one below the other they are clear.
        Case::new(Code::DropsCrowd, hung("5.5 mm", "12 mm"), hung("5.4 mm", "12 mm")),
        Case::new(Code::DropsCrowd, hung("3 mm", "20 mm"), hung("3 mm", "16 mm")),
    ]
}

/// The base of a neck that measures so much above it, where chokers lie: ANSUR II's medians of women are 328
/// and 370 mm. A hundredth less, for rounding.
fn base(neck: f64) -> String {
    format!("{:.3} mm", (neck - 0.01) * 370.0 / 328.0)
}

/// A pattern with a clasp of 12 mm and an extender of 60 mm, of which a link is 4 mm.
fn extended(text: &str) -> String {
    let links = "links: { kind: chain, link: 4 mm }";
    and(&with_findings(text, &[CLASP, links]), "closure: { left: [{ links: 60 mm }], right: [clasp] }")
}

fn extenders() -> Vec<Case> {
    // 16 in, the clasp and a link are 422.4 mm, of which beads and cord take 6.4 mm as they lie on the skin.
    let neck = |girth: &str| extended(&changed(&[("370 mm", girth)]));
    let ring = made(&extended(&bracelet("{ wrist: 170 mm, ease: 30 mm }"))).0.unwrap().drape.ring().unwrap().clone();
    let wrist = |girth: f64| extended(&bracelet(&format!("{{ wrist: {girth:.3} mm, ease: 10 mm }}")));
    vec![
        Case::new(Code::IdleExtender, neck(&base(416.4)), neck(&base(416.6))),
        Case::new(Code::IdleExtender, wrist(ring.inside_girth - 0.01), wrist(ring.inside_girth + 0.01)),
        // Let out as far as it goes it has the ease, or lacks it.
        Case::new(Code::RingLoose, wrist(ring.inside_girth - 12.49), wrist(ring.inside_girth - 12.51)),
    ]
}

#[test]
fn an_extender_is_let_out_before_a_piece_is_too_short() {
    // With the whole chain 478.4 mm.
    let neck = |girth: &str| codes(&extended(&changed(&[("370 mm", girth)])));
    // What is strung takes 6 mm of that, by as much as it holds the cord off the skin, and chords 0.3 mm.
    assert_eq!(neck(&base(470.0)), [Code::IdleExtender]);
    assert_eq!(neck(&base(472.9)), [Code::TooShort]);
    let ring = made(&extended(&bracelet("{ wrist: 170 mm, ease: 30 mm }"))).0.unwrap().drape.ring().unwrap().clone();
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
    let ring = made(&bracelet("{ wrist: 150 mm, ease: 10 mm }")).0.unwrap().drape.ring().unwrap().clone();
    let wrist =
        |room: f64, ease: f64| bracelet(&format!("{{ wrist: {:.3} mm, ease: {ease} mm }}", ring.inside_girth - room));
    // So many times as wide inside as the wrist, and as wide as is asked for.
    let wide_as = |times: f64| {
        let girth = ring.inside_girth / times;
        bracelet(&format!("{{ wrist: {girth:.3} mm, ease: {:.3} mm }}", ring.inside_girth - girth))
    };
    vec![
        Case::new(Code::RingTight, wrist(7.51, 10.0), wrist(7.49, 10.0)),
        Case::new(Code::RingLoose, wrist(12.49, 10.0), wrist(12.51, 10.0)),
        Case::new(Code::TooShort, wrist(0.01, 1.0), wrist(-0.01, 1.0)),
        // Of two strands the tightest decides, wherever it stands.
        // Beads of 6 mm side by side.
        Case::new(Code::StrandsCrowd, barred("6.1 mm"), barred("6 mm")),
        // Two beads of 10 mm side by side, among smaller ones.
        Case::new(Code::StrandsCrowd, wide("10 mm"), wide("9.94 mm")),
        Case::new(
            Code::RingTight,
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 30),
            and(&beside(30, "{ wrist: 150 mm, ease: 10 mm }", 29), "allow: [uneven-rows]"),
        ),
        Case::new(
            Code::RingTight,
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 30),
            and(&beside(29, "{ wrist: 150 mm, ease: 10 mm }", 30), "allow: [uneven-rows]"),
        ),
        // A row longer by a bead has 5.9 mm more room, by a cube of 4 mm 4.1 mm.
        Case::new(
            Code::UnevenRows,
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 30)
                .replace("[30 reed] }", "[30 reed, mist] }")
                .replace("beads:\n", MIST),
            beside(30, "{ wrist: 150 mm, ease: 10 mm }", 31),
        ),
        Case::new(Code::FallsOff, wide_as(1.499), wide_as(1.501)),
    ]
}

/// A bracelet of two strands, which end on bars that hold them so far apart.
fn barred(spacing: &str) -> String {
    // Each end that is tied to its bar takes 2.2 mm.
    let text = beside(29, "{ wrist: 155 mm, ease: 10 mm }", 29);
    let bar = format!("bar: {{ kind: end bar, length: 3 mm, spacing: {spacing}, holes: 2 }}");
    and(&with_findings(&text, &[&bar]), "closure: { each side: [bar] }")
}

/// The same with a broader bead in the middle of each.
fn wide(spacing: &str) -> String {
    const WIDE: &str = "beads:\n  wide: { shape: round, size: 10 mm, hole: 1 mm, colour: \"#c9d6d8\", mass: 1.2 g }\n";
    barred(spacing)
        .replace("beads:\n", WIDE)
        .replace("[29 reed]", "[14 reed, wide, 14 reed]")
        .replace("wrist: 155", "wrist: 158")
}

/// A bracelet of two strands of so many beads.
fn beside(one: u32, wear: &str, other: u32) -> String {
    let second = format!("[{one} reed]\n  - {{ name: other, cord: line, beads: [{other} reed] }}\n");
    bracelet(wear).replace("[30 reed]\n", &second)
}

#[test]
fn the_tightest_of_two_rings_is_named() {
    let (piece, remarks) = made(&beside(30, "{ wrist: 150 mm, ease: 10 mm }", 28));
    assert_eq!(piece.unwrap().drape.ring().unwrap().strand, nth(1));
    assert!(remarks[0].headline().starts_with("the closed ring of strand other measures"), "{remarks:?}");
}

/// A bracelet that fills a length with beads of 6 mm, so many in a repeat.
fn filled(length: f64, each: u32) -> Vec<String> {
    let fill = format!("[{{ repeat: fill, of: [{each} reed] }}]\n    length: {length} mm\n    settle: fill");
    let remarks = made(&bracelet("{ wrist: 150 mm, ease: 10 mm }").replace("[30 reed]", &fill)).1;
    remarks.into_iter().map(|remark| remark.help()).collect()
}

/// Two fades of as many beads each grow by two at a time: 28 of them miss 155 + 12 mm as 30 do.
#[test]
fn fades_that_come_nearest_are_not_told_to_grow() {
    let fades = "[{ fade: fill, from: reed, to: mist }, { fade: fill, from: mist, to: reed }]";
    let text = |ease: u32| {
        bracelet(&format!("{{ wrist: 150 mm, ease: {ease} mm }}")).replace("[30 reed]", fades).replace("beads:\n", MIST)
    };
    let found = (4..16).flat_map(|ease| made(&text(ease)).1);
    let help: Vec<_> = found.filter(|remark| matches!(remark.code(), Code::RingTight | Code::RingLoose)).collect();
    assert!(!help.is_empty());
    assert!(
        help.iter().all(|remark| remark.help().starts_with("as many beads are strung as come nearest")),
        "{help:#?}"
    );
}

#[test]
fn a_row_that_fills_says_which_count_fits() {
    // Balls of 6 mm drilled 1 mm wide touch at their holes' inner edges, sqrt(9 - 0.25) = 2.958 mm from their middles and
    // 0.5 mm inward: 24 of them leave 125.5 mm inside, 30 161.1 and 32 173.0; asked is 160.
    let inside = |beads: f64| {
        let radius = 0.5 * 35_f64.sqrt() / libm::tan(std::f64::consts::PI / beads) + 0.5 - 3.0;
        Length::mm(std::f64::consts::TAU * radius).tenths()
    };
    assert_eq!(filled(178.0, 1), [] as [String; 0]);
    let expected = format!("take 30 repeats instead of 32 (`length: 177.5 mm`): 30 measure {} inside", inside(30.0));
    assert_eq!(filled(192.0, 1), [expected]);
    let expected = format!(
        "no whole count of repeats fits: 3 measure {} inside, 4 measure {} inside; repeat a shorter list, or write another `ease:`",
        inside(24.0),
        inside(32.0)
    );
    assert_eq!(filled(150.0, 8), [expected]);
}

#[test]
fn a_choker_goes_round_the_neck_above_its_base() {
    // 16 in are 406.4 mm.
    let neck = |base: &str| codes(&changed(&[("370 mm", base)]));
    assert_eq!(neck("430 mm"), []);
    assert_eq!(neck("460 mm"), [Code::TooShort]);
}

#[test]
fn nothing_is_said_of_the_fit_of_a_child_without_measures() {
    let child = changed(&[("neck base: 370 mm", "child: yes"), ("16 in", "300 mm")]);
    assert_eq!(codes(&child), [Code::ChildBreakaway, Code::ChildUnmeasured]);
}

#[test]
fn strands_that_crowd_are_told_by_how_much_to_differ() {
    let other = STRAND.replace("only", "other");
    let help = made(&format!("{HEAD}{STRAND}{other}{WEAR}")).1.remove(0).help();
    let by: f64 = help.split(' ').find_map(|word| word.parse().ok()).unwrap();
    let longer = other.replace("length: 16 in", &format!("length: {} mm", 406.4 + by));
    assert_eq!(codes(&format!("{HEAD}{STRAND}{longer}{WEAR}")), [], "{help}");
    for spacing in ["5 mm", "6 mm"] {
        let help = made(&barred(spacing)).1.remove(0).help();
        assert_eq!(
            help, "hold them apart with bars or clasps whose holes or loops are 6.1 mm apart or more",
            "{spacing}"
        );
    }
}

/// Rows of one length from two points rest in either order on a neck, as only friction decides; rows that differ hang in order.
#[test]
fn of_strands_alike_in_length_it_is_told_that_they_find_several_places_on_the_neck() {
    let rows = |counts: [u32; 3]| {
        let row = |(at, count): (usize, &u32)| {
            let length = f64::from(*count) * 6.0 + 12.0;
            format!("  - {{ name: row {at}, cord: line, length: {length} mm, beads: [{count} reed] }}\n")
        };
        let rows: String = counts.iter().enumerate().map(row).collect();
        format!("{HEAD}{rows}{WEAR}")
    };
    let told = |counts| {
        let remarks = made(&rows(counts)).1;
        remarks.iter().any(|remark| matches!(&*remark.said, Said::Hang(Hang::SeveralPlaces { .. })))
    };
    assert!(told([70, 70, 70]));
    assert!(!told([70, 78, 86]));
}

/// Strands of other lengths, each of 30 round beads of a size, with or without an end bar.
fn several(strands: &[(f64, f64)], settle: &str, bar: Option<f64>) -> String {
    let beads: String = strands
        .iter()
        .enumerate()
        .map(|(at, (_, size))| {
            format!(
                "  b{at}: {{ shape: round, size: {size} mm, hole: 1 mm, mass: 0.1 g, colour: '#5d7f{:x}' }}\n",
                80 + at
            )
        })
        .collect();
    let rows: String = strands
        .iter()
        .enumerate()
        .map(|(at, (length, _))| {
            let row = if settle == "fill" { format!("{{ repeat: fill, of: [b{at}] }}") } else { format!("30 b{at}") };
            format!("  - {{ name: s{at}, cord: line, length: {length} mm, settle: {settle}, beads: [{row}] }}\n")
        })
        .collect();
    let head =
        HEAD.replace("  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", mass: 0.27 g }\n", &beads);
    let text = format!("{head}{rows}{WEAR}");
    let Some(spacing) = bar else { return text };
    let holes = strands.len();
    let bar = format!("bar: {{ kind: end bar, length: 5 mm, holes: {holes}, spacing: {spacing} mm }}");
    and(&with_findings(&text, &[&bar]), "closure: { each side: [bar] }")
}

/// The figure in a text before some words.
fn before(text: &str, words: &str) -> Option<f64> {
    text.split_once(words)?.0.rsplit(' ').next()?.parse().ok()
}

/// The first pair of strands that crowds in a piece.
fn crowded(text: &str) -> Option<festoon::remark::Remark> {
    made(text).1.into_iter().find(|remark| remark.code() == Code::StrandsCrowd)
}

/// Rows of one length with bars narrower than their beads are pressed along themselves on the neck, and rest there as long as
/// they are: nothing is told of it.
#[test]
fn rows_that_are_pressed_on_the_neck_rest_as_long_as_they_are() {
    let (_, remarks) = made(&several(&[(480.0, 10.0), (480.0, 6.0)], "slide", Some(4.0)));
    assert!(remarks.iter().all(|remark| !remark.headline().contains("on the neck")), "{remarks:#?}");
}

#[test]
fn each_way_out_of_a_crowd_gives_the_strands_room() {
    type Strands = &'static [(f64, f64)];
    let pieces: [(Strands, &str, Option<f64>); 8] = [
        (&[(400.0, 3.0), (408.0, 10.0)], "fill", Some(4.0)),
        (&[(480.0, 10.0), (480.0, 6.0)], "slide", Some(4.0)),
        (&[(400.0, 10.0), (405.0, 4.0)], "slide", Some(6.0)),
        (&[(405.0, 4.0), (400.0, 8.0)], "fill", None),
        (&[(430.0, 10.0), (432.0, 10.0)], "slide", None),
        (&[(480.0, 8.0), (488.0, 6.0)], "fill", None),
        (&[(400.0, 10.0), (400.0, 10.0)], "fill", Some(8.0)),
        (&[(400.0, 4.0), (412.0, 10.0)], "fill", None),
    ];
    let mut ways = 0;
    for (strands, settle, bar) in pieces {
        let Some(remark) = crowded(&several(strands, settle, bar)) else { continue };
        let help = &remark.help();
        let apart = before(help, " mm apart or more");
        let longer = before(help, " mm longer or more");
        let mut longest = strands.to_vec();
        if let Some(by) = longer {
            longest[usize::from(!help.contains("strand s0"))].0 += by;
        }
        assert!(apart.is_some() || longer.is_some(), "nothing to do: {help}");
        let tried = if help.contains(", and ") {
            vec![several(&longest, settle, apart)]
        } else {
            let wider = apart.map(|apart| several(strands, settle, Some(apart)));
            wider.into_iter().chain(longer.map(|_| several(&longest, settle, bar))).collect()
        };
        ways += tried.len();
        tried.iter().for_each(|tried| assert_eq!(crowded(tried), None, "{help}"));
    }
    assert!(ways >= pieces.len(), "{ways} ways tried");
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
        Case::new(
            Code::ChildUnmeasured,
            bracelet("{ child: yes, wrist: 150 mm, ease: 10 mm }"),
            bracelet("{ child: yes }"),
        ),
        Case::new(Code::ChildBreakaway, child(&CLASP.replace(" }", ", breakaway: yes }")), child(CLASP)),
        Case::new(Code::DeclareMetal, material("material: sterling silver"), material("material: brass")),
    ]
}
