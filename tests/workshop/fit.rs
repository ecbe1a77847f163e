//! Pieces made to measure: rows that go round their wearer, and lengths remade for another.

use std::f64::consts::PI;

use serde_json::Value;

use crate::Desk;

const BEADS: &str = "beads: { moss: { shape: round, size: 8 mm, hole: 1.2 mm, colour: \"#5a6e3c\", mass: 0.66 g } }
cords: { stretch: { kind: elastic, diameter: 0.8 mm, strength: 20 N, mass: 0.5 g/m } }
";

/// A bracelet whose row goes round its wearer, with other top-level keys.
fn round(keys: &str) -> String {
    format!(
        "festoon: 1\ntitle: Try\nkind: bracelet\n{BEADS}\
         strands: [{{ name: row, cord: stretch, ends: knot, beads: [{{ repeat: fill, of: [moss] }}] }}]\n{keys}\n"
    )
}

/// A necklace of a written length, with other top-level keys.
fn hung(keys: &str) -> String {
    format!(
        "festoon: 1\ntitle: Try\nkind: necklace\n{BEADS}\
         strands: [{{ name: row, cord: stretch, length: 450 mm, beads: [20 moss] }}]\n{keys}\n"
    )
}

fn measured(desk: &Desk, arguments: &[&str]) -> Value {
    serde_json::from_str(&desk.told(&[&["measure", "--json"], arguments].concat())).unwrap()
}

fn beads(measures: &Value) -> usize {
    measures["strands"][0]["beads"].as_array().unwrap().len()
}

/// Girth of a round limb inside a ring of so many balls of 8 mm: they touch as balls, or where their holes of 1.2 mm have
/// taken that, at the inner edges of those.
fn inside(count: usize) -> f64 {
    let (lean, hole) = (PI / count as f64, 0.6_f64);
    let touch = 4.0 * libm::sin(lean);
    let centres =
        if touch < hole { (16.0 - hole * hole).sqrt() / libm::tan(lean) + hole } else { 4.0 / libm::sin(lean) };
    2.0 * PI * (centres - 4.0)
}

/// A regular polygon (its inscribed and circumscribed circle: any handbook of geometry).
#[test]
fn a_row_goes_round_its_wearer_as_often_as_comes_nearest() {
    let desk = Desk::new("round").with("a.yaml", &round("wear: { wrist: 150 mm, ease: 10 mm }"));
    for wrist in [130.0, 138.5, 152.0, 163.0, 171.0, 190.0] {
        let counts = 10..60;
        let nearest = counts.min_by(|a, b| {
            let miss = |count: &usize| (inside(*count) - wrist - 10.0).abs();
            miss(a).total_cmp(&miss(b))
        });
        let made = measured(&desk, &["a.yaml", "--wrist", &format!("{wrist} mm")]);
        assert_eq!(Some(beads(&made)), nearest, "{wrist}");
        let girth = made["piece"]["ring"]["inside_girth_mm"].as_f64().unwrap();
        assert!((girth - inside(beads(&made))).abs() < 0.1, "{wrist}: {girth}");
    }
    assert_eq!(beads(&measured(&desk, &["a.yaml"])), beads(&measured(&desk, &["a.yaml", "--wrist", "5.906 in"])));
    let [close, roomy] = ["3 mm", "24 mm"].map(|ease| beads(&measured(&desk, &["a.yaml", "--ease", ease])));
    assert!(close + 2 <= roomy, "{close} and {roomy}");
}

/// Every count of a row in no order by itself: the one that goes round nearest is the one that `fill` takes.
#[test]
fn a_row_in_no_order_goes_round_with_the_count_that_comes_nearest() {
    let of = "of: { moss: 3, fern: 3, log: 1 }, seed: 3";
    let beads = "beads: { moss: { shape: round, size: 4 mm, hole: 1 mm, colour: \"#5a6e3c\" }, \
                 fern: { shape: round, size: 5 mm, hole: 1.4 mm, colour: \"#7a8e5c\" }, \
                 log: { shape: tube, size: 3 x 16 mm, hole: 1 mm, colour: \"#6f4a2f\" } }\n";
    let text = |times: &str| {
        let of = format!("{{ random: {times}, {of} }}");
        let written = round("wear: { wrist: 150 mm, ease: 10 mm }").replace("{ repeat: fill, of: [moss] }", &of);
        let cords = written.find("cords:").unwrap();
        format!("{}{beads}{}", &written[..written.find("beads:").unwrap()], &written[cords..])
    };
    let girth = |text: String, wrist: Option<f64>| {
        let (pattern, _) = festoon::pattern::read(&festoon::source::Source::new("round", text));
        let fit = festoon::design::Fit { wrist: wrist.map(festoon::units::Length::mm), ..Default::default() };
        let choice = festoon::design::Choice { fit, ..Default::default() };
        let (design, remarks) = festoon::design::resolve(&pattern.unwrap(), &choice);
        let design = design.unwrap_or_else(|| panic!("{remarks:?}"));
        let rings = festoon::drape::hang(&design, None).unwrap().rings;
        (design.strands[0].bits().count(), rings[0].inside_girth)
    };
    let all: Vec<_> = (14..60).map(|beads| girth(text(&beads.to_string()), None)).collect();
    for wrist in [120.0, 133.0, 141.5, 150.0, 158.2, 166.0] {
        let miss = |one: &&(usize, f64)| (one.1 - wrist - 10.0).abs();
        let nearest = all.iter().min_by(|one, other| miss(one).total_cmp(&miss(other))).unwrap();
        assert_eq!(girth(text("fill"), Some(wrist)), *nearest, "{wrist}: {all:?}");
    }
}

#[test]
fn with_a_clasp_no_other_count_comes_nearer() {
    let closed = |beads: &str| {
        let findings = "findings:\n  crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.8 mm }\n  \
                        hook: { kind: clasp, length: 12 mm }\n  ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm }\n\
                        closure: { left: [ring], right: [hook] }\nwear: { wrist: 161 mm, ease: 10 mm }";
        round(findings).replace("ends: knot", "ends: crimp").replace("{ repeat: fill, of: [moss] }", beads)
    };
    let desk = Desk::new("clasp").with("fill.yaml", &closed("{ repeat: fill, of: [moss] }"));
    let girth = |made: &Value| made["piece"]["ring"]["inside_girth_mm"].as_f64().unwrap();
    let made = measured(&desk, &["fill.yaml"]);
    let (count, miss) = (beads(&made), (girth(&made) - 171.0).abs());
    for other in [count - 1, count + 1] {
        let desk = Desk(desk.0.clone()).with("other.yaml", &closed(&format!("{other} moss")));
        let farther = (girth(&measured(&desk, &["other.yaml"])) - 171.0).abs();
        assert!(farther > miss, "{other}: {farther}, {count}: {miss}");
    }
}

/// The necks of ANSUR II: women's medians of neck and its base are 328 and 370 mm (`src/trade/bodies.rs`), so a
/// choker for a base of 370 mm lies where the neck measures 328.
#[test]
fn a_choker_goes_round_the_neck_above_its_base() {
    let choker = round("wear: { neck base: 370 mm, ease: 12 mm }").replace("kind: bracelet", "kind: necklace");
    let desk = Desk::new("choker").with("a.yaml", &choker);
    let made = beads(&measured(&desk, &["a.yaml"]));
    assert!((inside(made) - 340.0).abs() < 4.1, "{made}");
    assert!(beads(&measured(&desk, &["a.yaml", "--neck", "400 mm"])) > made);
}

#[test]
fn written_lengths_change_by_as_much_as_the_wearer_differs() {
    let finished = |made: &Value| made["strands"][0]["finished_mm"].as_f64().unwrap();
    let sizes = "sizes: [{ name: broad, wear: { neck base: 400 mm } }, { name: long, change: 50 mm, wear: { neck base: 390 mm } }]";
    let desk = Desk::new("written").with("a.yaml", &hung(&format!("wear: {{ neck base: 370 mm }}\n{sizes}")));
    let of = |arguments: &[&str]| finished(&measured(&desk, &[&["a.yaml"], arguments].concat()));
    assert_eq!([of(&[]), of(&["--neck", "400 mm"]), of(&["--size", "broad"])], [450.0, 480.0, 480.0]);
    assert_eq!([of(&["--neck", "360 mm"]), of(&["--neck", "380 mm", "--ease", "17 mm"])], [440.0, 465.0]);
    // A size says how much longer it is for its own wearer.
    assert_eq!([of(&["--size", "long"]), of(&["--size", "long", "--neck", "400 mm"])], [500.0, 510.0]);
    assert_eq!(desk.run(&["check", "--strict", "a.yaml"]).err, "");
}

#[test]
fn a_size_may_give_its_wearer_alone() {
    let keys = "wear: { wrist: 150 mm, ease: 10 mm }\nsizes: [{ name: large, wear: { wrist: 175 mm } }]";
    let desk = Desk::new("sizes").with("a.yaml", &round(keys));
    let [size, order] = [["--size", "large"], ["--wrist", "175 mm"]]
        .map(|variant| beads(&measured(&desk, &[&["a.yaml"], &variant[..]].concat())));
    assert_eq!(size, order);
    assert!(size > beads(&measured(&desk, &["a.yaml"])));
}

#[test]
fn measures_that_tell_nothing_are_refused() {
    let desk = Desk::new("refused")
        .with("round.yaml", &round("wear: { wrist: 150 mm }"))
        .with("nobody.yaml", &round(""))
        .with("hung.yaml", &hung(""))
        .with("counted.yaml", &round("wear: { wrist: 150 mm }").replace("repeat: fill", "repeat: 20"))
        .with("nothing.yaml", &round("wear: { wrist: 150 mm }\nsizes: [{ name: other }]"));
    for (arguments, said) in [
        (&["round.yaml", "--neck", "400 mm"][..], "error[other-limb]: a measure of the neck"),
        (&["hung.yaml", "--neck", "400 mm"], "error[no-length]: the pattern's lengths are made to no measure"),
        (&["nobody.yaml"], "error[no-fill]"),
        (&["counted.yaml", "--wrist", "160 mm"], "error[no-length]: strand row: nothing of it changes"),
        (&["nothing.yaml"], "error[missing-key]: size other is like no size at all"),
    ] {
        let ran = desk.run(&[&["check"], arguments].concat());
        assert!(ran.code == 1 && ran.err.contains(said), "{arguments:?}: {}", ran.err);
    }
    let asked = ["--wrist", "150 mm", "--ease", "10 mm"];
    let [nobody, round] =
        ["nobody.yaml", "round.yaml"].map(|file| beads(&measured(&desk, &[&[file], &asked[..]].concat())));
    assert_eq!(nobody, round);
    for wrong in ["152", "5 mm", "3 m"] {
        assert_eq!(desk.run(&["check", "round.yaml", "--wrist", wrong]).code, 2, "{wrong}");
    }
}

#[test]
fn every_command_makes_it_to_measure() {
    let desk = Desk::new("commands").with("a.yaml", &round("wear: { wrist: 150 mm, ease: 10 mm }"));
    for (command, file) in [("sheet", "a-wrist-152mm.pdf"), ("proof", "a-wrist-152mm-proof.pdf")] {
        desk.told(&[command, "a.yaml", "--wrist", "152 mm"]);
        assert!(desk.path(file).exists(), "{file}");
    }
    desk.told(&["picture", "a.yaml", "--wrist", "152 mm", "--pixels", "60"]);
    assert!(desk.path("a-wrist-152mm.png").exists());
    let [small, large] = ["140 mm", "200 mm"].map(|wrist| desk.told(&["materials", "a.yaml", "--wrist", wrist]));
    assert!(small != large && large.contains("moss"));
}
