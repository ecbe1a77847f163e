//! Each act, on both ways to write a list; comments and line breaks stay.

use super::*;
use crate::pattern;

const TEXT: &str = "festoon: 1
title: Row   # the name
kind: bracelet
beads:
  reed:            # green
    shape: round
    size: 6 mm     # across
    hole: 1 mm
    material: glass
    colour: \"#5d7f5b\"
  mist: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: \"#c9d6d8\" }
cords:
  wire: { kind: elastic, diameter: 0.5 mm }
strands:
  - name: one
    cord: wire
    ends: knot
    beads:
      - { repeat: 11, of: [5 mist, reed] }   # the body
      - 5 mist
      # the end
      - reed
  - { name: two, cord: wire, ends: knot, beads: [3 reed, mist, { mirror: [reed], about: [2 mist] }] }
colourways:
  dusk: { reed: { colour: \"#6b4a63\" } }
";

fn source() -> Source {
    Source::new("row.yaml", TEXT)
}

/// The place of a text's nth appearance.
fn nth(text: &str, nth: usize) -> Place {
    let start = TEXT.match_indices(text).nth(nth).unwrap().0;
    Place { file: 0, start, end: start + text.len() }
}

/// The text after an act, which is one sound pattern still.
fn done(what: &Act) -> String {
    let text = act(&source(), what).unwrap();
    let (pattern, remarks) = pattern::read(&Source::new("row.yaml", text.as_str()));
    assert!(pattern.is_some(), "{remarks:?}\n{text}");
    text
}

/// Checks that an act changes just these lines, each from one to the other.
fn changes(what: &Act, lines: &[(&str, &str)]) {
    let text = done(what);
    let expected = lines.iter().fold(TEXT.to_owned(), |text, (from, to)| {
        assert_eq!(text.matches(from).count(), 1, "{from}");
        text.replace(from, to)
    });
    assert_eq!(text, expected);
}

#[test]
fn the_text_of_the_tests_is_sound() {
    let (pattern, remarks) = pattern::read(&source());
    assert!(pattern.is_some(), "{remarks:?}");
}

#[test]
fn a_run_is_swapped_alone_or_everywhere() {
    let run = nth("5 mist", 0);
    changes(
        &Act::Swap { run, from: "mist".into(), to: "reed".into(), everywhere: false },
        &[("[5 mist, reed] }   #", "[5 reed, reed] }   #")],
    );
    let everywhere = done(&Act::Swap { run, from: "mist".into(), to: "reed".into(), everywhere: true });
    assert_eq!(everywhere.matches("mist").count(), 1, "its definition alone: {everywhere}");
    assert!(everywhere.contains("about: [2 reed]") && everywhere.contains("- 5 reed\n      # the end"));
}

#[test]
fn rows_that_are_worked_out_are_swapped_and_counted_too() {
    let rows = "{ random: 40, of: { mist: 3, reed: 1 }, apart: { mist: 1 } }, { fade: 20, from: mist, to: reed }, { graduate: [mist, reed] }";
    let source = Source::new("row.yaml", TEXT.replacen("3 reed, mist", &format!("3 mist, {rows}"), 1));
    let place = |text: &str| {
        let start = source.text().find(text).unwrap();
        Place { file: 0, start, end: start + text.len() - 1 }
    };
    let swapped = |run: Place, to: &str, everywhere: bool| {
        act(&source, &Act::Swap { run, from: "mist".into(), to: to.into(), everywhere })
    };
    let random = spot::spots(&node::parse(&source).root.unwrap())
        .into_iter()
        .find(|spot| source.slice(spot.place()).starts_with("{ random"))
        .unwrap()
        .place();
    let all = swapped(place("3 mist,"), "rush", true).unwrap();
    assert_eq!(all.matches("mist").count(), 1, "its definition alone: {all}");
    assert!(all.contains("of: { rush: 3, reed: 1 }, apart: { rush: 1 }"), "{all}");
    assert!(all.contains("from: rush, to: reed }, { graduate: [rush, reed] }"), "{all}");
    let one = swapped(random, "rush", false).unwrap();
    assert!(one.contains("of: { rush: 3, reed: 1 }, apart: { rush: 1 }") && one.contains("from: mist"), "{one}");
    let both = swapped(random, "reed", false);
    assert!(both.is_err_and(|refusal| refusal == Refusal::BothInNoOrder), "a bead has its parts once");
    let counted = act(&source, &Act::Count { run: random, count: 50 }).unwrap();
    assert_eq!(counted, source.text().replace("random: 40", "random: 50"));
}

#[test]
fn a_run_has_another_count() {
    changes(&Act::Count { run: nth("5 mist", 1), count: 7 }, &[("- 5 mist", "- 7 mist")]);
    changes(&Act::Count { run: nth("3 reed", 0), count: 1 }, &[("[3 reed,", "[reed,")]);
    assert!(act(&source(), &Act::Count { run: nth("3 reed", 0), count: 0 }).is_err());
}

#[test]
fn a_beads_key_is_set_everywhere() {
    let set = |bead: &str, key: &str, value: &str| Act::Set {
        bead: bead.into(),
        key: key.into(),
        value: value.into(),
        only: None,
        colourway: None,
    };
    changes(&set("reed", "size", "8 mm"), &[("size: 6 mm     # across", "size: 8 mm     # across")]);
    changes(&set("mist", "colour", "\"#112233\""), &[("#c9d6d8", "#112233")]);
    changes(&set("mist", "finish", "clear"), &[("#c9d6d8\" }", "#c9d6d8\", finish: clear }")]);
    changes(&set("reed", "finish", "matte"), &[("#5d7f5b\"\n", "#5d7f5b\"\n    finish: matte\n")]);
    assert!(act(&source(), &set("rush", "size", "8 mm")).is_err());
}

#[test]
fn a_beads_key_is_set_in_one_run_alone() {
    let only = |bead: &str, run| Act::Set {
        bead: bead.into(),
        key: "size".into(),
        value: "5 mm".into(),
        only: Some(run),
        colourway: None,
    };
    let text = done(&only("reed", nth("3 reed", 0)));
    assert!(text.contains("[3 reed-2,"), "{text}");
    assert!(text.contains("  reed-2:            # green\n    shape: round\n    size: 5 mm     # across\n"), "{text}");
    assert!(text.contains("size: 6 mm"), "the first is as it was: {text}");
    let text = done(&only("mist", nth("5 mist", 1)));
    assert!(text.contains("- 5 mist-2\n") && text.contains("  mist-2: { shape: round, size: 5 mm,"), "{text}");
}

/// The text without `mist`, which stands on a shelf as it is written there.
fn shelved(entry: &str) -> Source {
    let own = TEXT.lines().filter(|line| !line.starts_with("  mist:")).map(|line| line.to_owned() + "\n");
    let shelf = Source::new("shelf.yaml", format!("festoon: 1\nbeads:\n{entry}"));
    Source::new("row.yaml", own.collect::<String>()).with_shelf(None, Ok(shelf))
}

#[test]
fn a_bead_of_a_shelf_is_copied_where_a_key_of_it_is_set() {
    let set = |only| Act::Set { bead: "mist".into(), key: "size".into(), value: "5 mm".into(), only, colourway: None };
    let flow = "  mist: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: \"#c9d6d8\" }   # pale\n";
    let block = "    mist:\n        shape: round\n        # across\n        size: 4 mm\n        hole: 1 mm\n        material: glass\n        colour: \"#c9d6d8\"\n";
    for (entry, written) in [
        (
            flow,
            "  mist: { shape: round, size: 5 mm, hole: 1 mm, material: glass, colour: \"#c9d6d8\" }   # pale\ncords:",
        ),
        (
            block,
            "  mist:\n      shape: round\n      # across\n      size: 5 mm\n      hole: 1 mm\n      material: glass\n      colour: \"#c9d6d8\"\ncords:",
        ),
    ] {
        let source = shelved(entry);
        let text = act(&source, &set(None)).unwrap();
        assert!(text.contains(&format!("colour: \"#5d7f5b\"\n{written}")), "{text}");
        let changed = Source::new("", text.as_str()).with_shelf(None, source.shelves()[0].read.clone());
        let (pattern, remarks) = pattern::read(&changed);
        assert!(pattern.is_some(), "{remarks:?}");
        let start = source.text().find("5 mist").unwrap();
        let alone = act(&source, &set(Some(Place { file: 0, start, end: start + 6 }))).unwrap();
        assert!(alone.contains("of: [5 mist-2, reed]") && alone.contains("  mist-2:"), "{alone}");
    }
    let bare = Source::new("", "title: Row\nshelf: shelf.yaml\nstrands: [{ beads: [mist] }]\n");
    let bare = bare.with_shelf(None, shelved(flow).shelves()[0].read.clone());
    let text = act(&bare, &set(None)).unwrap();
    assert!(text.contains("shelf.yaml\nbeads:\n  mist: { shape: round, size: 5 mm,"), "{text}");
    assert!(text.contains("# pale\n\nstrands:"), "{text}");
}

#[test]
fn sizes_are_added_and_changed() {
    let add = |text: &str, name: &str, key: &str, value: &str| {
        act(&Source::new("", text), &Act::AddSize { name: name.into(), key: key.into(), value: value.into() })
    };
    let one = add(TEXT, "long", "change", "+1 in").unwrap();
    assert_eq!(one, format!("{TEXT}\nsizes:\n  - {{ name: long, change: +1 in }}\n"));
    let two = add(&one, "her 2nd: \"wide\"", "wrist", "175 mm").unwrap();
    let line = "  - { name: \"her 2nd: \\\"wide\\\"\", wear: { wrist: 175 mm } }\n";
    assert_eq!(two, one.clone() + line);
    assert!(pattern::read(&Source::new("", two.as_str())).0.is_some_and(|pattern| pattern.size_names().len() == 2));
    assert!(add(&two, "long", "change", "+2 in").is_err() && add(&two, " ", "change", "+2 in").is_err());
    let flow = TEXT.to_owned() + "sizes: [{ name: a, change: 1 in }]\n";
    assert_eq!(add(&flow, "b", "change", "-1 in").unwrap(), flow.replace("in }]", "in }, { name: b, change: -1 in }]"));
    let resize = |size: &str, by: f64| act(&Source::new("", two.as_str()), &Act::Resize { size: size.into(), by });
    assert_eq!(resize("long", -38.1).unwrap(), two.replace("+1 in", "-1/2 in"));
    assert!(resize("her 2nd: \"wide\"", 5.0).is_err_and(|refusal| refusal == Refusal::SizeFollows));
    assert!(resize("short", 5.0).is_err());
}

#[test]
fn colourways_are_added() {
    let add = |text: &str, name: &str| {
        let act = Act::AddColourway { name: name.into(), bead: "mist".into(), colour: "\"#112233\"".into() };
        super::act(&Source::new("", text), &act)
    };
    let with = add(TEXT, "low tide").unwrap();
    assert_eq!(with, format!("{TEXT}  low tide: {{ mist: {{ colour: \"#112233\" }} }}\n"));
    assert!(add(TEXT, "dusk").is_err());
    let without = TEXT.split("colourways:").next().unwrap();
    let first = add(without, "dusk").unwrap();
    assert_eq!(first, format!("{without}\ncolourways:\n  dusk: {{ mist: {{ colour: \"#112233\" }} }}\n"));
    for text in [with, first] {
        assert!(pattern::read(&Source::new("", text)).0.is_some());
    }
}

#[test]
fn a_colourway_alone_changes() {
    let recolour = |bead: &str, key: &str, value: &str| Act::Set {
        bead: bead.into(),
        key: key.into(),
        value: value.into(),
        only: None,
        colourway: Some("dusk".into()),
    };
    changes(&recolour("reed", "colour", "\"#000000\""), &[("#6b4a63", "#000000")]);
    changes(
        &recolour("mist", "colour", "\"#000000\""),
        &[("#6b4a63\" } }", "#6b4a63\" }, mist: { colour: \"#000000\" } }")],
    );
    assert!(act(&source(), &recolour("mist", "size", "5 mm")).is_err());
}

#[test]
fn repeats_are_added_doubled_and_deleted() {
    let run = nth("5 mist", 0);
    changes(&Act::RepeatMore { run }, &[("repeat: 11", "repeat: 12")]);
    changes(&Act::RepeatDouble { run }, &[("repeat: 11", "repeat: 22")]);
    changes(&Act::RepeatDelete { run }, &[("      - { repeat: 11, of: [5 mist, reed] }   # the body\n", "")]);
    let alone = nth("5 mist", 1);
    changes(&Act::RepeatDouble { run: alone }, &[("- 5 mist\n", "- { repeat: 2, of: [5 mist] }\n")]);
    changes(&Act::RepeatDelete { run: alone }, &[("      - 5 mist\n", "")]);
    changes(&Act::RepeatDelete { run: nth("3 reed", 0) }, &[("[3 reed, mist", "[mist")]);
    let last = Place { file: 0, start: nth("[reed], about", 0).start + 1, end: nth("[reed], about", 0).start + 5 };
    assert!(act(&source(), &Act::RepeatDelete { run: last }).is_err(), "nothing would be left");
}

#[test]
fn a_strand_without_a_length_is_not_lengthened() {
    assert!(act(&source(), &Act::Lengthen { strand: 0, length: 200.0 }).is_err());
    let text = TEXT.replacen("ends: knot\n", "length: 7 in   # round\n    ends: knot\n", 1);
    let longer = act(&Source::new("", text.as_str()), &Act::Lengthen { strand: 0, length: 190.5 }).unwrap();
    assert_eq!(longer, text.replace("7 in   # round", "7 1/2 in   # round"));
}

#[test]
fn what_cannot_be_read_is_not_edited() {
    let broken = Source::new("", TEXT.replace("title: Row", "title Row"));
    assert!(act(&broken, &Act::RepeatMore { run: nth("5 mist", 0) }).is_err());
}

#[test]
fn every_run_of_every_shipped_pattern_can_be_swapped_and_doubled() {
    for path in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns")).unwrap() {
        let path = path.unwrap().path();
        if path.extension().is_none_or(|ending| ending != "yaml") {
            continue;
        }
        let source = Source::new("", std::fs::read_to_string(&path).unwrap());
        let root = node::parse(&source).root.unwrap();
        let spots = spot::spots(&root);
        assert!(!spots.is_empty(), "{path:?}");
        for spot in spots {
            let Some(id) = spot.id() else { continue };
            assert!(source.slice(spot.place()).contains(id), "{path:?}: {id}");
            let same = act(
                &source,
                &Act::Swap { run: spot.place(), from: id.to_owned(), to: id.to_owned(), everywhere: true },
            );
            assert_eq!(same.as_deref(), Ok(source.text()), "{path:?}: {id}");
        }
    }
}
