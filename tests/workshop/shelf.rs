//! One shelf for several patterns: what is taken from it, where its faults are told, and which files are read.

use std::fs;

use crate::{Desk, Ran};

const SHELF: &str = "festoon: 1
currency: EUR
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", mass: 0.27 g, sold: { by: each, price: 0.20 } }
  mist: { shape: cube, size: 4 mm, hole: 1 mm, colour: \"#c9d6d8\", mass: 0.1 g, sold: { by: each, price: 0.10 } }
cords:
  line: { kind: thread, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m }
";

/// A necklace of so many beads from a shelf.
fn piece(shelf: &str, beads: &str) -> String {
    format!(
        "festoon: 1\ntitle: Try\nkind: necklace\nshelf: {shelf}\n\
         strands: [{{ name: only, cord: line, length: 26 in, beads: [{beads}] }}]\nwear: {{ neck base: 370 mm }}\n"
    )
}

fn desk(name: &str) -> Desk {
    Desk::new(name).with("shelf.yaml", SHELF).with("a.yaml", &piece("shelf.yaml", "20 reed"))
}

/// The run said this and nothing was made.
fn assert_refused(ran: &Ran, said: &str) {
    assert!(ran.code != 0 && ran.err.contains(said), "{}: {}", ran.code, ran.err);
}

#[test]
fn two_patterns_are_made_from_one_shelf_of_which_nothing_else_is_said() {
    let desk = desk("two").with("b.yaml", &piece("[shelf.yaml]", "30 mist"));
    let ran = desk.run(&["check", "--strict", "a.yaml", "b.yaml", "shelf.yaml"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(desk.told(&["materials", "a.yaml"]).contains("bought for the piece: 4.20 EUR"), "21 of 0.20");
    assert!(desk.told(&["materials", "b.yaml"]).contains("bought for the piece: 3.20 EUR"), "32 of 0.10");
}

#[test]
fn what_the_pattern_writes_itself_wins_and_then_the_first_shelf() {
    let own = "beads: { reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#000000\", mass: 0.27 g, sold: { by: each, price: 1 } } }\n";
    let desk = desk("wins").with("own.yaml", &(piece("shelf.yaml", "20 reed") + own));
    assert!(desk.told(&["materials", "own.yaml"]).contains("21.00 EUR"));
    let desk = desk
        .with("dear.yaml", &SHELF.replace("0.20", "2"))
        .with("c.yaml", &piece("[dear.yaml, shelf.yaml]", "20 reed"));
    assert!(desk.told(&["materials", "c.yaml"]).contains("42.00 EUR"));
    // A bead of the pattern's hides a cord of the shelf's that has its name.
    let clash = own.replace("reed:", "line:");
    let desk = desk.with("d.yaml", &(piece("shelf.yaml", "20 reed, line") + &clash));
    assert_refused(&desk.run(&["check", "d.yaml"]), "`line` is a bead, and a cord belongs here");
}

#[test]
fn a_fault_is_told_with_the_file_and_line_it_stands_in() {
    let desk = desk("faults").with("shelf.yaml", &SHELF.replace("size: 6 mm", "size: 6"));
    assert_refused(&desk.run(&["check", "a.yaml"]), "shelf.yaml:4:31: error[bad-quantity]: `6` has no unit");
    assert_refused(&desk.run(&["check", "shelf.yaml"]), "shelf.yaml:4:31: error[bad-quantity]");
    for style in ["plain", "full", "json"] {
        let ran = desk.run_as(style, &["check", "a.yaml"]);
        let (file, line) = (ran.err.contains("shelf.yaml"), ran.err.contains('4'));
        assert!(file && line && !ran.err.contains("title"), "{style}: {}", ran.err);
    }
    // The other bead of the shelf is sound.
    let desk = desk.with("b.yaml", &piece("shelf.yaml", "30 mist"));
    assert_eq!(desk.run(&["check", "--strict", "b.yaml"]).err, "");
    // What the numbers say of an article is told where it stands, too.
    let desk = desk.with("shelf.yaml", &SHELF.replace("hole: 1 mm, colour: \"#5", "hole: 5.9 mm, colour: \"#5"));
    assert_refused(&desk.run(&["check", "a.yaml"]), "shelf.yaml:4:43: error[bad-size]");
    let desk = desk.with("a.yaml", &piece("shelf.yaml", "20 red"));
    assert_refused(
        &desk.run(&["check", "a.yaml"]),
        "a.yaml:5:60: error[unknown-id]: the pattern defines no bead `red`",
    );
}

#[test]
fn a_shelf_that_is_none_is_told_where_the_pattern_names_it() {
    let desk = desk("none").with("deep/b.yaml", "").with("big.yaml", &"# \n".repeat(1_500_000)).with("a.txt", SHELF);
    fs::write(desk.path("latin.yaml"), b"festoon: 1 # \xe9\n").unwrap();
    for (shelf, reason) in [
        ("gone.yaml", "there is no such file"),
        ("deep", "a shelf's file ends in .yaml"),
        ("a.txt", "a shelf's file ends in .yaml"),
        ("big.yaml", "is larger than 4 MiB"),
        ("latin.yaml", "is not text in UTF-8"),
        ("self.yaml", "it is a pattern and no shelf"),
    ] {
        let desk = Desk(desk.0.clone()).with("self.yaml", &piece(shelf, "20 reed"));
        let ran = desk.run(&["check", "self.yaml"]);
        assert_refused(&ran, &format!("self.yaml:4:8: error[no-shelf]: the shelf {shelf} cannot be used"));
        assert!(ran.err.contains(reason) && ran.err.contains("1 error\n"), "{shelf}: {}", ran.err);
    }
    let desk = desk.with("a.yaml", &piece("[shelf.yaml, shelf.yaml]", "20 reed"));
    assert_refused(&desk.run(&["check", "a.yaml"]), "error[twice-named]");
    let desk = desk.with("shelf.yaml", &SHELF.replace("beads:", "beads: ["));
    assert_refused(&desk.run(&["check", "a.yaml"]), "shelf.yaml:");
}

#[cfg(unix)]
#[test]
fn what_never_ends_is_not_read() {
    use std::os::unix::fs::symlink;
    let desk = desk("endless");
    symlink("/dev/zero", desk.path("zero.yaml")).unwrap();
    symlink("loop.yaml", desk.path("loop.yaml")).unwrap();
    assert!(std::process::Command::new("mkfifo").arg(desk.path("pipe.yaml")).status().unwrap().success());
    for (shelf, reason) in [("zero.yaml", "ends in .yaml"), ("loop.yaml", ""), ("pipe.yaml", "a pipe or a device")] {
        let desk = Desk(desk.0.clone()).with("a.yaml", &piece(shelf, "20 reed"));
        let ran = desk.run(&["check", "a.yaml"]);
        assert_refused(&ran, "error[no-shelf]");
        assert!(ran.err.contains(reason), "{shelf}: {}", ran.err);
    }
}

#[test]
fn only_shelves_beside_and_above_are_read_unless_they_are_named() {
    let desk =
        desk("places").with("in/deep/shelf.yaml", SHELF).with("other/shelf.yaml", SHELF).with("beads.yaml", SHELF);
    let made = |shelf: &str, arguments: &[&str]| {
        let desk = Desk(desk.0.clone()).with("in/p.yaml", &piece(shelf, "20 reed"));
        desk.run(&[&["check", "in/p.yaml"], arguments].concat())
    };
    for shelf in ["deep/shelf.yaml", "../shelf.yaml"] {
        assert_eq!(made(shelf, &[]).err, "", "{shelf}");
    }
    let there = desk.path("beads.yaml").canonicalize().unwrap();
    for shelf in ["../beads.yaml", "../other/shelf.yaml", there.to_str().unwrap()] {
        assert_refused(&made(shelf, &[]), "it stands outside the pattern's folder");
    }
    assert_eq!(made("../beads.yaml", &["--shelf", "beads.yaml"]).err, "");
    // One that the pattern does not name is read as well.
    let desk = Desk(desk.0.clone())
        .with("in/p.yaml", &piece("deep/shelf.yaml", "20 reed").replace("shelf: deep/shelf.yaml\n", ""));
    assert_refused(&desk.run(&["check", "in/p.yaml"]), "error[missing-key]: `beads` is not written");
    assert_eq!(desk.run(&["check", "in/p.yaml", "--shelf", "beads.yaml"]).err, "");
    assert_refused(&desk.run(&["check", "in/p.yaml", "--shelf", "gone.yaml"]), "gone.yaml: there is no such file");
}

#[cfg(unix)]
#[test]
fn a_link_does_not_lead_out_of_the_folder() {
    let desk = desk("links").with("in/p.yaml", &piece("beads.yaml", "20 reed")).with("out/secret.yaml", SHELF);
    std::os::unix::fs::symlink("../out/secret.yaml", desk.path("in/beads.yaml")).unwrap();
    assert_refused(&desk.run(&["check", "in/p.yaml"]), "it stands outside the pattern's folder");
}

#[test]
fn no_result_is_written_over_a_shelf() {
    let desk = desk("kept");
    fs::hard_link(desk.path("shelf.yaml"), desk.path("sheet.pdf")).unwrap();
    fs::hard_link(desk.path("shelf.yaml"), desk.path("a.png")).unwrap();
    for arguments in
        [&["sheet", "a.yaml", "-o", "sheet.pdf"][..], &["picture", "a.yaml", "-o", "a.png", "--pixels", "16"]]
    {
        assert_refused(&desk.run(arguments), "is a shelf that is read, and is not written over");
    }
    assert_eq!(desk.read("shelf.yaml"), SHELF);
}

#[test]
fn a_gallery_follows_its_shelf_and_draws_none_of_it() {
    let desk = desk("gallery").with("out/.keep", "");
    let desk = Desk(desk.0.clone()).with("in/shelf.yaml", SHELF).with("in/a.yaml", &piece("shelf.yaml", "20 reed"));
    let make = || desk.run(&["gallery", "in", "-o", "out", "--pixels", "60"]).err;
    assert!(make().contains("1 drawn, 0 unchanged, 0 with errors"));
    assert!(make().contains("0 drawn, 1 unchanged"));
    fs::write(desk.path("in/shelf.yaml"), SHELF.replace("#5d7f5b", "#7f5b5d")).unwrap();
    let said = make();
    assert!(said.contains("1 drawn, 0 unchanged"), "{said}");
    fs::remove_file(desk.path("in/shelf.yaml")).unwrap();
    let said = make();
    assert!(said.contains("1 with errors") && said.contains("error[no-shelf]"), "{said}");
}

#[test]
fn prices_in_two_currencies_are_not_added_up() {
    let desk = desk("coins").with("dollars.yaml", &SHELF.replace("EUR", "USD"));
    let priced = piece("[shelf.yaml, dollars.yaml]", "20 reed");
    // Nothing comes from the second shelf, and the cord has no price.
    assert_eq!(Desk(desk.0.clone()).with("a.yaml", &priced).run(&["check", "a.yaml"]).err, "");
    let desk = desk.with("a.yaml", &(piece("dollars.yaml", "20 reed") + "currency: EUR\n"));
    assert_refused(
        &desk.run(&["check", "a.yaml"]),
        "dollars.yaml:2:11: error[two-currencies]: the price of `reed` is told in USD, and the piece's prices in EUR",
    );
}

#[test]
fn a_shelf_is_no_piece() {
    assert_refused(&desk("piece").run(&["sheet", "shelf.yaml"]), "is a shelf");
}

#[test]
fn the_shelf_to_start_from_is_sound_and_follows_its_schema() {
    let desk = Desk::new("start");
    let shelf = desk.told(&["new", "shelf"]);
    let own = "festoon: 1\ntitle: Mine\nkind: bracelet\nshelf: shelf.yaml\nstrands: [{ name: row, cord: stretch, ends: knot, \
               beads: [{ repeat: 18, of: [moss, grain] }], settle: fill }]\nwear: { wrist: 148 mm, ease: 10 mm }\n";
    let desk = desk.with("shelf.yaml", &shelf).with("mine.yaml", own);
    let ran = desk.run(&["check", "--strict", "shelf.yaml", "mine.yaml"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let schema = |of: &str| serde_json::from_str(&desk.told(&["schema", of])).unwrap();
    let holds = |of: &str, text: &str| {
        let value: serde_json::Value = serde_yaml::from_str(text).unwrap();
        jsonschema::validator_for(&schema(of)).unwrap().is_valid(&value)
    };
    assert!(holds("shelf", &shelf) && !holds("shelf", own));
    assert!(holds("pattern", own) && !holds("pattern", &own.replace("shelf: shelf.yaml\n", "")));
}
