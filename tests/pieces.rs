//! Twenty pieces that makers sell, written as a new user would from README.md and patterns/README.md alone: each passes
//! the strict check, is drawn, and takes what one counts by hand.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;

/// Their files, without the shelf that two of them share.
const PIECES: [&str; 20] = [
    "chandelier",
    "charms",
    "ear-drop",
    "illusion",
    "joined-choker",
    "kit",
    "lariat",
    "mala",
    "memory-wire",
    "ombre",
    "pearls",
    "priced",
    "random-mix",
    "remade",
    "shelf-bracelet",
    "shelf-necklace",
    "spectacle-chain",
    "three-rows",
    "torsade",
    "y-necklace",
];

fn file(piece: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/pieces").join(piece).with_extension("yaml")
}

/// Runs a command on pieces.
fn run(command: &str, pieces: &[&str], arguments: &[&str]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_festoon"));
    program.arg(command).args(pieces.iter().map(|piece| file(piece))).args(arguments).output().unwrap()
}

/// What a command prints as JSON.
fn told(command: &str, pieces: &[&str], arguments: &[&str]) -> Value {
    let ran = run(command, pieces, arguments);
    assert!(ran.status.success(), "{pieces:?}: {}", String::from_utf8_lossy(&ran.stderr));
    serde_json::from_slice(&ran.stdout).unwrap()
}

fn measured(piece: &str, arguments: &[&str]) -> Value {
    told("measure", &[piece], &[&["--json"], arguments].concat())
}

fn bought(pieces: &[&str], arguments: &[&str]) -> Value {
    told("materials", pieces, &[&["--format", "json"], arguments].concat())
}

fn of<'a>(list: &'a Value, key: &str, name: &str) -> &'a Value {
    list.as_array().unwrap().iter().find(|one| one[key] == name).unwrap_or_else(|| panic!("no {name} in {list}"))
}

/// How many of what a piece takes.
fn takes(piece: &str, counts: &[(&str, u64)]) {
    let list = measured(piece, &[]);
    for (id, count) in counts {
        assert_eq!(of(&list["materials"], "id", id)["count"], *count, "{id} of {piece}");
    }
}

/// A length in mm that one adds up by hand to a hundredth.
fn assert_near(value: &Value, expected: f64) {
    let value = value.as_f64().unwrap();
    assert!((value - expected).abs() < 0.01, "{value} is not {expected}");
}

/// All stand in the folder, and none is missing here.
#[test]
fn all_are_looked_at() {
    let here = fs::read_dir(file("kit").parent().unwrap()).unwrap();
    let mut here: Vec<_> = here.map(|file| file.unwrap().path().file_stem().unwrap().to_owned()).collect();
    here.retain(|name| name != "shelf");
    here.sort();
    assert_eq!(here, PIECES);
}

/// The joined choker alone allows a warning, and says why at its line.
#[test]
fn each_passes_the_strict_check() {
    for piece in PIECES.into_iter().chain(["shelf"]) {
        let ran = run("check", &[piece], &["--strict"]);
        assert!(ran.status.success(), "{piece}: {}", String::from_utf8_lossy(&ran.stderr));
        let allows = fs::read_to_string(file(piece)).unwrap().contains("allow:");
        assert_eq!(allows, piece == "joined-choker", "{piece}");
    }
}

#[test]
fn each_is_drawn() {
    for piece in PIECES {
        let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("piece-{piece}.pdf"));
        let ran = run("sheet", &[piece], &["-o", out.to_str().unwrap()]);
        assert!(ran.status.success(), "{piece}: {}", String::from_utf8_lossy(&ran.stderr));
        assert!(fs::read(&out).unwrap().starts_with(b"%PDF-"), "{piece}");
    }
}

#[test]
fn rows_take_what_their_lists_say() {
    // 19 times nine seeds and a round, and nine seeds more; the third strand in fours and fives.
    takes("torsade", &[("leaf", 19 * 9 + 9 + 20 * 4), ("stem", 19 * 9 + 9 + 20 * 5), ("bell", 3 * 19), ("cone", 2)]);
    // Two crimps a bead, and one at either end.
    takes("illusion", &[("dew", 13), ("crimp", 2 * 13 + 2)]);
    takes("lariat", &[("oat", 31 * 5), ("rust", 30), ("tassel", 2)]);
    takes("y-necklace", &[("ink", 5), ("tear", 1), ("pin", 1), ("ring", 2), ("clasp", 1)]);
    takes("mala", &[("seed", 108), ("head", 1)]);
    // Sixty in the parts 3 : 2 : 1.
    takes("random-mix", &[("ash", 30), ("clay", 20), ("bone", 10)]);
    // Of two fades of 62 each gives half of itself to either colour, and both share the middle one.
    takes("ombre", &[("night", 31), ("dusk", 62), ("dawn", 31)]);
}

#[test]
fn a_knot_lies_between_all_beads_of_a_mala() {
    // From hole to hole a bead of 8 mm with a hole of 1.2 mm measures sqrt(8² - 1.2²) mm (Pythagoras).
    let row = 108.0 * (64.0_f64 - 1.44).sqrt() + 107.0 * 1.6;
    assert_near(&measured("mala", &[])["strands"][0]["beaded_mm"], row);
}

#[test]
fn pearls_grow_to_the_middle() {
    let list = measured("pearls", &[]);
    let beads = list["strands"][0]["beads"].as_array().unwrap();
    let ids: Vec<_> = beads.iter().filter_map(|bead| bead["bead"].as_str()).collect();
    let sizes: Vec<_> =
        ids.iter().map(|id| ["five", "six", "seven", "eight"].iter().position(|of| of == id).unwrap()).collect();
    let middle = sizes.len() / 2;
    assert!(sizes[..=middle].is_sorted() && sizes.iter().eq(sizes.iter().rev()) && sizes.len() % 2 == 1, "{ids:?}");
    assert_eq!(sizes[middle], 3);
}

/// All is counted for the pair; one bar carries five bits of chain, of which the middle one has most links.
#[test]
fn a_chandelier_hangs_from_one_bar() {
    takes("chandelier", &[("pale", 2 * 5), ("deep", 2 * 5), ("pin", 2 * 5), ("bar", 2), ("hook", 2)]);
    let list = measured("chandelier", &[]);
    // So many bare links and the one in which the pin hangs, of 2 mm each.
    for (strand, links) in [("first", 4.0), ("second", 7.0), ("middle", 10.0), ("fourth", 7.0), ("fifth", 4.0)] {
        assert_near(&of(&list["strands"], "name", strand)["finished_mm"], 2.0 * links);
    }
}

/// Beads on a pin in the ring of an ear wire take no cord: none is bought or cut.
#[test]
fn an_ear_drop_takes_no_cord() {
    takes("ear-drop", &[("rim", 2 * 2), ("dew", 2), ("pin", 2), ("hook", 2)]);
    let list = bought(&["ear-drop"], &[]);
    let kinds: Vec<_> = list["materials"].as_array().unwrap().iter().map(|line| &line["kind"]).collect();
    assert_eq!(kinds, ["bead", "bead", "finding", "finding"]);
    assert_eq!(list["cutting"].as_array().unwrap().len(), 0);
}

#[test]
fn rows_share_one_clasp_and_their_joining_beads() {
    takes("three-rows", &[("clod", 3 * 14), ("straw", 3 * 14), ("tube", 1), ("crimp", 6)]);
    // A tile is on both rows, and is one.
    takes("joined-choker", &[("green", 2 * 14 * 5), ("tile", 13), ("box", 1), ("crimp", 4)]);
}

/// Wire of memory goes round as often as is asked for to the nearest repeat of four beads.
#[test]
fn a_coil_is_filled() {
    let list = measured("memory-wire", &[]);
    let [slate, brass] = ["slate", "brass"].map(|id| of(&list["materials"], "id", id)["count"].as_u64().unwrap());
    assert_eq!(slate, 3 * brass);
    // A turn on a coil of 57 mm inside runs about π × (57 + 5) mm on the middle line of beads of 5 mm.
    let turns = list["strands"][0]["beaded_mm"].as_f64().unwrap() / (std::f64::consts::PI * 62.0);
    assert!((turns - 4.25).abs() < 0.35, "{turns} turns");
}

#[test]
fn charms_hang_in_counted_links() {
    // Six bare links, and after each of seven charms five; each charm takes a link of 3.5 mm too.
    assert_near(&measured("charms", &[])["strands"][0]["finished_mm"], 3.5 * f64::from(6 + 7 * 5 + 7));
    takes("charms", &[("leaf", 3), ("sloe", 3), ("heart", 1), ("ring", 7 + 1)]);
}

#[test]
fn a_spectacle_chain_is_filled_to_its_length() {
    // A repeat is two brass rounds between which a barrel lies; where two of them meet, 27 in less both ends hold 46.
    let list = measured("spectacle-chain", &[]);
    let [gold, horn] = ["gold", "horn"].map(|id| of(&list["materials"], "id", id)["count"].as_u64().unwrap());
    assert_eq!((gold, horn), (2 * horn, 46));
    let row = &list["strands"][0];
    let (long, repeat) = (row["beaded_mm"].as_f64().unwrap(), row["beaded_mm"].as_f64().unwrap() / 46.0);
    assert_near(&row["finished_mm"], 27.0 * 25.4);
    assert!(long <= 685.8 && long + repeat > 685.8 - 2.0 * 7.0, "{long}");
    takes("spectacle-chain", &[("grip", 2)]);
}

/// Two pieces from one shelf are bought for together.
#[test]
fn two_pieces_are_bought_from_one_shelf() {
    let list = bought(&["shelf-necklace", "shelf-bracelet"], &[]);
    let count = |id: &str| of(&list["materials"], "id", id)["count"].as_u64().unwrap();
    // 16 times two and one, and two; and 13 times one and one.
    assert_eq!([count("spine"), count("head")], [16 * 2 + 2 + 13, 16 + 13]);
    assert_eq!([count("crimp"), count("ring"), count("hook")], [4, 2, 2]);
}

/// A ring of n balls of 8 mm that touch is a polygon with sides of 8 mm; its inside is 2π (8 / (2 sin(π/n)) - 4): of 21 to
/// 28 balls 143.5, 151.5, 159.4, 167.4, 175.4, 183.4, 191.3 and 199.3 mm (plane geometry).
#[test]
fn a_row_is_remade_for_another_wrist() {
    // 10 mm of ease with each.
    for (wrist, beads) in [("140mm", 22), ("155mm", 24), ("180mm", 27)] {
        let list = measured("remade", &["--wrist", wrist]);
        assert_eq!(of(&list["materials"], "id", "russet")["count"], beads, "{wrist}");
    }
}

#[test]
fn twelve_bags_hold_what_twelve_take() {
    let list = bought(&["kit"], &["--kits", "12"]);
    for id in ["red", "cream"] {
        // Twelve a bag, and of 5 % of twelve one to spare in each: 156, which four packs of 50 hold.
        let line = of(&list["materials"], "id", id);
        assert_eq!([&line["count"], &line["spare"], &line["packs"]], [144, 12, 4]);
    }
    assert_eq!(list["kits"][0]["bags"], 12);
}

#[test]
fn a_price_adds_up() {
    let list = bought(&["priced"], &[]);
    // 20 beads at 0.25, two crimps at 0.04, a toggle at 6.00, and wire of which a metre is 1.00.
    let wire = of(&list["materials"], "id", "wire")["length_mm"].as_f64().unwrap() / 1000.0;
    let cents = |sum: f64| (100.0 * sum).round() / 100.0;
    let materials = 20.0 * 0.25 + 2.0 * 0.04 + 6.0 + cents(wire);
    let cost = materials + 0.5 * 20.0 + 2.50;
    for (key, sum) in [("materials", materials), ("cost", cost), ("wholesale", 2.0 * cost), ("retail", 2.5 * cost)] {
        let told = list["price"][key].as_f64().unwrap();
        // Half a cent is rounded up.
        assert!((told - cents(sum + 1e-6)).abs() < 1e-6, "{key}: {told} is not {sum}");
    }
}
