//! The words for a shop's page: all that the pattern says and what follows from it, and nothing else.

use serde_json::Value;

use crate::Desk;

const PATTERN: &str = "festoon: 1
title: Alder
summary: Green beads *in a row*.
kind: bracelet
designer: A Maker
units: mm
beads: { reed: { name: reed green round, shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", material: glass } }
cords: { line: { name: stretch cord, kind: elastic, diameter: 0.8 mm, strength: 20 N, mass: 0.5 g/m } }
findings: { hook: { name: small hook, kind: hook, length: 12 mm }, ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm, material: sterling silver } }
strands: [{ name: row, cord: line, ends: knot, beads: [{ repeat: fill, of: [reed] }] }]
closure: { left: [ring], right: [hook] }
";

fn desk(keys: &str) -> Desk {
    Desk::new(&format!("listing-{}", keys.len())).with("a.yaml", &format!("{PATTERN}{keys}"))
}

#[test]
fn a_listing_says_what_the_pattern_says() {
    let keys = "wear: { wrist: 155 mm, ease: 10 mm }\nsizes: [{ name: large, wear: { wrist: 175 mm } }]\n\
                colourways: { dusk: { reed: { name: plum, colour: \"#6b4a63\" } } }\ncare: |\n  Keep it dry.\n  Wipe it with a cloth.\n";
    let desk = desk(keys);
    let text = desk.told(&["listing", "a.yaml"]);
    let whole: Value = serde_json::from_str(&desk.told(&["listing", "a.yaml", "--format", "json"])).unwrap();
    let measures: Value = serde_json::from_str(&desk.told(&["measure", "--json", "a.yaml"])).unwrap();
    let beads = measures["strands"][0]["beads"].as_array().unwrap().len();
    for said in [
        "Alder\n\nA bracelet. Green beads *in a row*. Designed by A Maker.\n".to_owned(),
        format!("- {beads} × reed green round (6 mm round, hole\u{a0}1 mm, glass)\n"),
        "- made for a wrist of: 155 mm\n".to_owned(),
        "Materials, as the maker declares them\n- glass\n- stretch cord\n- sterling silver\n".to_owned(),
        "Colourways\n- dusk\n".to_owned(),
        "Care\n- Keep it dry.\n- Wipe it with a cloth.\n".to_owned(),
    ] {
        assert!(text.contains(&said), "{said}: {text}");
    }
    assert!(
        text.contains("- as written: ") && text.contains(", for 155 mm\n- large: ") && text.contains(", for 175 mm\n"),
        "{text}"
    );
    assert_eq!(whole["undeclared"], serde_json::json!(["small hook"]));
    assert_eq!(whole["contents"][0]["count"], beads);
    assert!(whole["alt"].as_str().unwrap().starts_with("Alder: a bracelet, with reed green round; "));
}

#[test]
fn nothing_is_claimed_that_the_pattern_does_not_say() {
    let desk = desk("").with("b.yaml", &PATTERN.replace("beads: [{ repeat: fill, of: [reed] }]", "beads: [28 reed]"));
    let ran = desk.run(&["listing", "b.yaml"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.err.contains("no `material` is written, and none is claimed, of: small hook"), "{}", ran.err);
    for unsaid in ["worn", "Sizes", "Colourways", "Care", "wrist", "assumed", "safe", "hypo", "nickel"] {
        assert!(!ran.out.contains(unsaid), "{unsaid}: {}", ran.out);
    }
}

/// CommonMark 0.31, section 2.4: any ASCII punctuation may be backslash-escaped, and is then no markup.
#[test]
fn in_markdown_the_patterns_words_are_words() {
    let desk = desk("wear: { wrist: 155 mm }\ncare: '# <b>1. [a](b)</b> & `c` ~d~'\n");
    let text = desk.told(&["listing", "a.yaml", "--format", "markdown"]);
    assert!(
        text.starts_with(
            "# Alder\n\nA bracelet. Green beads \\*in a row\\*. Designed by A Maker.\n\n## What is in it\n\n- "
        ),
        "{text}"
    );
    assert!(text.contains("## Care\n\n- \\# \\<b\\>1. \\[a\\](b)\\</b\\> \\& \\`c\\` \\~d\\~\n"), "{text}");
}
