//! Strands twisted round one another.

use festoon::design::nth;
use festoon::remark::Code;
use festoon::units::Length;

use crate::Case;
use crate::sound::*;

/// Two strands of 74 beads of 6 mm, bead to bead, joined on both sides and twisted so often.
fn twisted(turns: &str) -> String {
    let strand = STRAND.replace("    length: 16 in\n", "").replace("[20 reed]", "[74 reed]");
    let both = strand.clone() + &strand.replace("only", "other");
    and(&joined(&[HEAD, &both, WEAR].concat(), &[]), &format!("twist: {turns}"))
}

/// A bracelet of two strands of 30 beads, twisted twice, for a wrist that asks for so much more than it measures inside.
fn bracelet(more: f64) -> String {
    let text = twisted("2").replace("kind: necklace", "kind: bracelet").replace("[74 reed]", "[30 reed]");
    let worn = |wrist: f64| text.replace(WEAR, &format!("wear: {{ wrist: {wrist:.3} mm, ease: 10 mm }}\n"));
    let inside = made(&worn(150.0)).0.unwrap().drape.ring().unwrap().inside_girth;
    worn(inside + more - 10.0)
}

/// The same with the second strand of a length, the first of 444 mm, and beads that slide.
fn beside(length: &str) -> String {
    let text = twisted("6").replacen("    beads: [74 reed]", "    length: 444 mm\n    beads: [74 reed]", 1);
    text.replace("name: other\n    cord: line\n", &format!("name: other\n    cord: line\n    length: {length}\n"))
}

/// The same with the first strand of a length, the second of 491 mm, and beads that slide.
fn bare(length: &str) -> String {
    let beads = "    beads:";
    let long = twisted("6").replace(beads, &format!("    length: 491 mm\n{beads}"));
    long.replacen("491 mm", length, 1)
}

pub fn cases() -> Vec<Case> {
    let kept = || twisted("6");
    let passed = |from: &str, to: &str| {
        assert!(kept().contains(from), "{from}");
        Case::new(Code::CannotTwist, kept(), kept().replace(from, to))
    };
    let slim = |turns: &str| twisted(turns).replace("370 mm", "340 mm");
    let single = changed(&[]);
    let closed = |text: &str| joined(text, &[]);
    let held = |comb: &str| {
        let bars = kept().replace(CLASP, &format!("{CLASP}\n  bar: {comb}"));
        bars.replace(CLOSED, "closure: { left: [bar, ring], right: [bar, clasp] }")
    };
    vec![
        // The tangent is 2 pi 3 N / H, on 74 x sqrt(6² - 1²) + 2 x 5.5 x 0.4 = 442.2 mm of strand: 2.4 degrees at one turn, 4.9
        // at two; the sine of 40 degrees is passed between 15 and 16 turns.
        Case::new(Code::TwistLoose, twisted("2"), twisted("1")),
        Case::new(Code::TwistTight, slim("15"), slim("16")),
        // 4.4 mm are 0.98 % of 448.4 mm, and 4.5 mm 1.003 % of 448.5 mm.
        Case::new(Code::TwistSlack, beside("448.4 mm"), beside("448.5 mm")),
        Case::new(Code::CannotTwist, twisted("6 1/2"), twisted("6.3")),
        Case::new(Code::CannotTwist, slim("14"), slim("19")),
        Case::new(Code::CannotTwist, closed(&single), and(&closed(&single), "twist: 6")),
        passed("kind: necklace", "kind: strap"),
        // Round a wrist: its ease may be missed by 2.5 mm.
        Case::new(Code::RingTight, bracelet(2.4), bracelet(2.6)),
        Case::new(Code::RingLoose, bracelet(-2.4), bracelet(-2.6)),
        passed(CLOSED, ""),
        passed(CLOSED, "closure: { right: [clasp] }"),
        passed(CLOSED, "closure: { open: hanging, left: [ring] }"),
        // 74 beads and two tied ends take 442.2 mm, and of 491 mm leave 9.9 % bare.
        Case::new(Code::TwistBare, bare("491 mm"), bare("492 mm")),
        Case::new(Code::CannotTwist, kept(), held("{ kind: end bar, length: 8 mm, holes: 2, spacing: 7 mm }")),
    ]
}

/// Where one of three strands is short, it is told, and not that all others are long.
#[test]
fn the_one_strand_that_is_drawn_taut_is_told() {
    let third = STRAND.replace("only", "short").replace("    length: 16 in\n", "").replace("[20 reed]", "[70 reed]");
    let remarks = made(&twisted("6").replace(WEAR, &(third + WEAR))).1;
    let slack: Vec<_> = remarks.iter().filter(|remark| remark.code() == Code::TwistSlack).collect();
    let [one] = slack.as_slice() else { panic!("{remarks:#?}") };
    assert!(one.headline().starts_with("strand short is drawn taut, and all others stand loose"), "{}", one.headline());
}

#[test]
fn a_twisted_piece_measures_as_its_helices_do_everywhere() {
    let piece = made(&twisted("6")).0.unwrap();
    let (design, twist) = (&piece.design, piece.design.twist.as_ref().unwrap());
    // Each end is tied: a loop of 2.5 widths of its thread and a knot of 3.
    let (beads, tied) = (74.0 * 35.0_f64.sqrt(), 2.0 * 5.5 * 0.4);
    let own = beads + tied;
    assert!((design.strands[nth(0)].finished.value() - own).abs() < 1e-9, "{}", design.strands[nth(0)].finished);
    // Two strands lie half their width from the line while they run across it at less than 45 degrees: tubes as wide as
    // their beads and the thread of their ends on average.
    let across = std::f64::consts::TAU * 0.5 * (6.0 * beads + 0.4 * tied) / own * 6.0;
    let long = (own * own - across.powi(2)).sqrt();
    assert!((twist.length().value() - long).abs() < 1e-6, "{}, {long}", twist.length());
    let needed = (own * own + across.powi(2)).sqrt();
    let needs = twist.needed(design.untwisted().unwrap()).unwrap();
    assert!(needs.iter().all(|need| (need.value() - needed).abs() < 1e-6), "{needs:?}, {needed}");
    let (least, most) = design.piece_length();
    // The jump ring is 3 mm inside, the clasp 12 mm long.
    assert!((least.value() - long - 15.0).abs() < 1e-6 && least == most, "{least}");
    let worn = piece.drape.worn.as_ref().unwrap();
    let whole: f64 = worn.lines[nth(0)].windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
    assert!(whole > long + 15.0 && whole < own + 16.0, "{whole}");
}

#[test]
fn twisting_changes_nothing_of_what_is_bought_and_cut() {
    use festoon::materials::{Order, materials};
    let bought = |turns: &str| {
        let piece = made(&twisted(turns)).0.unwrap();
        materials(&piece.design, &Order::default()).lines.iter().map(|line| format!("{line:?}")).collect::<Vec<_>>()
    };
    let untwisted = made(&twisted("6").replace("twist: 6\n", "allow: [strands-crowd]\n")).0.unwrap();
    // Strands that are not twisted are left slack for the round; twisted ones lie now inside and now outside of it.
    assert!(untwisted.design.strands.iter().all(|strand| strand.slack.value() > 1.0));
    let taut =
        untwisted.design.changed(|model| model.strands.iter_mut().for_each(|strand| strand.slack = Length::ZERO));
    let lines = materials(&taut.unwrap(), &Order::default()).lines;
    assert_eq!(bought("6"), lines.iter().map(|line| format!("{line:?}")).collect::<Vec<_>>());
    assert_eq!(bought("6"), bought("12"));
}

#[test]
fn a_twisted_necklace_must_reach_round_when_it_is_twisted() {
    let neck = |girth: &str| twisted("14").replace("370 mm", girth);
    let piece = made(&twisted("14")).0.unwrap();
    // A choker lies where a neck is 0.886 times as wide as at its base, and the line of a torsade half as far out as it is
    // thick.
    let thick = piece.design.twist.as_ref().unwrap().thickness().value();
    let reach = (piece.design.piece_length().1.value() - 0.5 * std::f64::consts::TAU * thick) / 0.886;
    assert_eq!(codes(&neck(&format!("{:.1} mm", reach - 4.0))), []);
    assert_eq!(codes(&neck(&format!("{:.1} mm", reach + 2.0))), [Code::TooShort]);
}

#[test]
fn rows_that_count_themselves_to_their_wearer_do_so_twisted() {
    let filled = twisted("9").replace("[74 reed]", "[{ repeat: fill, of: [reed] }]");
    let piece = made(&filled).0.unwrap();
    let (design, twist) = (&piece.design, piece.design.twist.as_ref().unwrap());
    // A neck of 370 mm is 0.886 times as wide where a choker lies, with 12 mm of ease; the line of a torsade of two strands
    // of 6 mm lies 6 mm from it.
    let asked = 0.886 * 370.0 + 12.0 + std::f64::consts::TAU * 0.5 * twist.thickness().value();
    let reached = design.piece_length().0.value();
    // To within half a bead, and what the corners of links leave beside a circle.
    assert!((reached - asked).abs() < 4.5, "{reached}, {asked}");
}
