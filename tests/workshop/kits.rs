//! Kits and shopping for several pieces: every figure is worked out by hand beside its check.

use serde_json::{Value, json};

use crate::Desk;

const SHELF: &str = "festoon: 1
currency: EUR
beads:
  reed: { shape: round, size: 6 mm, hole: 1 mm, colour: \"#5d7f5b\", mass: 0.27 g, sold: { by: pack, count: 50, price: 4, from: the market } }
  mist: { shape: cube, size: 4 mm, hole: 1 mm, colour: \"#c9d6d8\", mass: 0.1 g, sold: { by: pack, count: 100, price: 3, from: the market } }
cords:
  line: { kind: thread, diameter: 0.4 mm, take-up: 6.25 mm, strength: 60 N, mass: 0.6 g/m, sold: { by: spool, length: 10 m, price: 5, from: \"=post\" } }
findings:
  hook: { kind: clasp, length: 12 mm, sold: { by: each, price: 1.50 } }
  ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm, sold: { by: pack, count: 50, price: 2 } }
";

/// A necklace of so many beads; 500 mm, 30 mm for each end and 1.712 x 6.25 mm for its double overhand knot are cut,
/// 581.4 mm in all, and in the long size 100 mm more.
fn piece(title: &str, beads: &str) -> String {
    format!(
        "festoon: 1\ntitle: {title}\nkind: necklace\nunits: mm\nshelf: shelf.yaml\n\
         strands: [{{ name: row, cord: line, length: 500 mm, allowance: 30 mm, beads: [{beads}] }}]\n\
         closure: {{ left: [ring], right: [hook] }}\nwear: {{ neck base: 370 mm }}\n\
         sizes: [{{ name: long, change: 100 mm }}]\n\
         colourways: {{ dusk: {{ reed: {{ name: plum, colour: \"#6b4a63\" }} }} }}\n\
         price: {{ labour: 1 h, rate: 10, wholesale: 2, retail: 3 }}\n"
    )
}

fn desk(name: &str) -> Desk {
    Desk::new(name)
        .with("shelf.yaml", SHELF)
        .with("a.yaml", &piece("Alder", "40 reed"))
        .with("b.yaml", &piece("Birch", "30 reed, 10 mist"))
}

fn listed(desk: &Desk, arguments: &[&str]) -> Value {
    serde_json::from_str(&desk.told(&[&["materials", "--format", "json"], arguments].concat())).unwrap()
}

fn line<'a>(list: &'a Value, id: &str) -> &'a Value {
    list["materials"].as_array().unwrap().iter().find(|line| line["id"] == id).unwrap_or_else(|| panic!("{id}: {list}"))
}

#[test]
fn several_patterns_are_bought_for_together_with_one_stash() {
    let desk = desk("together").with("stash.yaml", "reed: 20\nline: 700 mm\n");
    let list = listed(&desk, &["a.yaml", "b.yaml", "--makers", "2", "--stash", "stash.yaml"]);
    // 2 x (40 + 30) are 140; 5 % of them 7; 20 are in hand, and three packs of 50 hold the other 127.
    let reed = line(&list, "reed");
    assert_eq!([&reed["count"], &reed["spare"], &reed["in_hand"], &reed["packs"]], [140, 7, 20, 3]);
    // Each on its own would buy 40 + 2 and 30 + 2, a pack each; together 72 + 4 take two, and 76 more one.
    let apart: u64 = ["a.yaml", "b.yaml"]
        .iter()
        .map(|file| line(&listed(&desk, &[file, "--makers", "2"]), "reed")["packs"].as_u64().unwrap())
        .sum();
    assert_eq!(apart, 2 + 2);
    assert_eq!(line(&list, "mist")["count"], 20);
    // Four pieces of 581.4 mm: one from the 700 mm in hand, three from a spool.
    assert_eq!(line(&list, "line")["length_mm"], 2325.6);
    assert_eq!([&line(&list, "line")["packs"], &line(&list, "line")["from_stash"]], [&json!(1), &json!(581.4)]);
    assert_eq!(line(&list, "hook")["packs"], 4);
    let labels = list["cutting"][0].to_string();
    assert!(labels.contains("Alder row") && labels.contains("Birch row"), "{labels}");
}

#[test]
fn what_shares_an_id_but_not_a_kind_is_bought_apart() {
    let own = "beads: { reed: { shape: round, size: 8 mm, hole: 1 mm, colour: \"#000000\", mass: 1 g } }\n";
    let desk = desk("apart").with("c.yaml", &(piece("Cedar", "20 reed") + own));
    let list = listed(&desk, &["a.yaml", "c.yaml"]);
    assert_eq!([&line(&list, "reed")["count"], &line(&list, "reed (Cedar)")["count"]], [40, 20]);
    let dusk = listed(&desk, &["a.yaml", "--kits", "1,dusk=2"]);
    assert_eq!([&line(&dusk, "reed")["count"], &line(&dusk, "reed (Alder, dusk)")["count"]], [40, 80]);
    assert_eq!(line(&dusk, "reed (Alder, dusk)")["name"], "plum");
}

#[test]
fn each_bag_holds_its_spare_and_what_its_size_needs() {
    let desk = desk("kits");
    let list = listed(&desk, &["a.yaml", "--kits", "3,long=9", "--spare-findings", "1%"]);
    // 40 and 5 % in each of 12 bags; of one ring a spare one, however small the share.
    let reed = line(&list, "reed");
    assert_eq!([&reed["count"], &reed["spare"]], [480, 24]);
    assert_eq!([&line(&list, "ring")["count"], &line(&list, "ring")["spare"]], [12, 12]);
    // 3 x 581.4 and 9 x 681.4 mm.
    assert_eq!(line(&list, "line")["length_mm"], 7876.8);
    let kits = list["kits"].as_array().unwrap();
    assert_eq!(
        kits.iter().map(|kit| (&kit["bags"], &kit["variant"])).collect::<Vec<_>>(),
        [(&json!(3), &json!("")), (&json!(9), &json!("long"))]
    );
    let held = |kit: usize, id: &str| {
        kits[kit]["contents"].as_array().unwrap().iter().find(|one| one["id"] == id).unwrap().clone()
    };
    assert_eq!(held(0, "reed"), json!({ "kind": "bead", "id": "reed", "name": "reed", "count": 40, "spare": 2 }));
    assert_eq!(held(1, "line")["pieces"], json!([{ "for": "row", "length_mm": 681.4 }]));
    // 42 of 50 at 4.00 are 3.36; 581.4 mm of 10 m at 5.00 are 0.29; two hooks 3.00; two rings of 50 at 2.00 are 0.08.
    assert_eq!(kits[0]["cost"], json!(6.73));
    // A cut of 681.4 mm is told as the next whole mm that is enough.
    let table = desk.told(&["materials", "a.yaml", "--kits", "3,long=9", "--spare-findings", "1%"]);
    for said in [
        "pack 3 bags: Alder\n",
        "pack 9 bags: Alder, long\n",
        "40 + 2 spare reed",
        "line: row 682 mm",
        "one bag costs 6.73 EUR",
        "for a shop 2 × that = 13.46, for a maker 3 × that = 20.19",
    ] {
        assert!(table.contains(said), "{said}: {table}");
    }
}

#[test]
fn what_cannot_be_packed_is_refused() {
    let desk = desk("refused")
        .with("usd.yaml", &(piece("Elm", "10 reed").replace("shelf: shelf.yaml", "shelf: usd-shelf.yaml")))
        .with("usd-shelf.yaml", &SHELF.replace("EUR", "USD"));
    for (arguments, said) in [
        (&["a.yaml", "--kits", "tall=2"][..], "a.yaml: no size or colourway `tall`; it has long, dusk"),
        (&["a.yaml", "--kits", "0"], "write how many"),
        (&["a.yaml", "--kits", "2", "--makers", "3"], "cannot be used with"),
        (&["a.yaml", "--labels", "x.pdf"], "--kits"),
        (&["a.yaml", "--kits", "6000,long=6000"], "12000 pieces are more"),
        (&["a.yaml", "usd.yaml"], "Alder is priced in EUR and Elm in USD"),
        (&["a.yaml", "--kits", "2", "--labels", "x.txt"], "ends in .pdf, .png or .svg"),
        (&["-", "-"], "standard input"),
    ] {
        let ran = desk.run(&[&["materials"], arguments].concat());
        assert!(ran.code == 2 && ran.err.contains(said), "{arguments:?}: {} {}", ran.code, ran.err);
    }
}

/// RFC 4180: cells that hold the separator, a quote or a line break stand in quotes. A spreadsheet whose decimals have
/// a comma parts cells at semicolons (common practice, no source).
#[test]
fn a_list_opens_in_any_locale() {
    let desk = desk("csv").with("shelf.yaml", &SHELF.replace("reed: {", "reed: { name: 'reed; \"pale\", small',"));
    let rows = |separator: &str| {
        let text = desk.told(&["materials", "a.yaml", "--format", "csv", "--separator", separator]);
        assert!(text.ends_with("\r\n") && !text.replace("\r\n", "").contains(['\r', '\n']));
        text.split("\r\n").map(str::to_owned).collect::<Vec<_>>()
    };
    // 40 of 50 at 4.00 are used, 3.20.
    assert_eq!(rows("comma")[1], "bead,reed,\"reed; \"\"pale\"\", small\",40,,2,0,1,pack,50,10,3.20,4.00,0,the market");
    assert_eq!(
        rows("semicolon")[1],
        "bead;reed;\"reed; \"\"pale\"\", small\";40;;2;0;1;pack;50;10;3,20;4,00;0;the market"
    );
    assert_eq!(
        rows("tab")[1],
        "bead\treed\t\"reed; \"\"pale\"\", small\"\t40\t\t2\t0\t1\tpack\t50\t10\t3.20\t4.00\t0\tthe market"
    );
    assert!(rows("semicolon")[0].starts_with("\u{feff}kind;") && rows("comma")[0].starts_with("kind,"));
    assert!(rows("comma").iter().any(|row| row.starts_with("cord") && row.ends_with(",'=post")), "no formula");
}

#[test]
fn a_shopping_list_goes_by_seller() {
    let table = desk("sellers").told(&["materials", "b.yaml"]);
    // A pack of each bead; a spool; a hook and a pack of rings that nobody is named for.
    let order = [
        "from =post: 5.00 EUR",
        "  line · 1 spool of 10 m  5.00",
        "from the market: 7.00 EUR",
        "  reed · 1 pack of 50  4.00",
        "  mist · 1 pack of 100  3.00",
        "from elsewhere: 3.50 EUR",
    ];
    let places: Vec<_> =
        order.iter().map(|said| table.find(said).unwrap_or_else(|| panic!("{said}: {table}"))).collect();
    assert!(places.is_sorted(), "{table}");
}

#[test]
fn labels_are_drawn_one_a_bag() {
    let desk = desk("labels");
    let ran = desk.run(&["materials", "a.yaml", "--kits", "3,long=9", "--labels", "labels.svg"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let pages = ["labels.svg", "labels-1.svg", "labels-2.svg"].into_iter().filter(|file| desk.path(file).exists());
    let text: String = pages.map(|file| desk.read(file)).collect();
    for said in ["bag 1 of 3", "bag 9 of 9", "40 + 2", "long"] {
        assert!(text.contains(said), "{said}");
    }
    assert_eq!(text.matches("40 + 2").count(), 12);
    let ran = desk.run(&["materials", "a.yaml", "--kits", "2", "--labels", "shelf.yaml"]);
    assert!(ran.code == 2 && desk.read("shelf.yaml") == SHELF);
}

/// One shelf's strand of graduated beads serves two patterns that take other sizes of it: 40 reed and 30 mist, 2 spare
/// each, are on a strand of 42 and 32. The kits' bags hold 3 reed spare in 3 bags and 3 mist in 3: 3 x 44 of 42 a strand.
#[test]
fn beads_that_are_bought_together_are_bought_once_for_several_patterns() {
    let shelf = SHELF
        .replace(", sold: { by: pack, count: 50, price: 4, from: the market }", "")
        .replace(", sold: { by: pack, count: 100, price: 3, from: the market }", "")
        + "assorted:\n  both: { name: two sizes, sold: { by: graduated strand, price: 7.50, from: the fair }, holds: { reed: 42, mist: 32, dew: 2 } }\n";
    let shelf = shelf.replace("cords:", "  dew: { shape: round, size: 2 mm, colour: \"#ffffff\" }\ncords:");
    let desk = Desk::new("assorted")
        .with("shelf.yaml", &shelf)
        .with("a.yaml", &piece("Alder", "40 reed"))
        .with("b.yaml", &piece("Birch", "30 mist"));
    let list = listed(&desk, &["a.yaml", "b.yaml"]);
    let both = line(&list, "both");
    assert_eq!((&both["packs"], &both["cost_bought"], &both["from"]), (&json!(1), &json!(7.5), &json!("the fair")));
    assert_eq!((&line(&list, "reed")["in"], &line(&list, "reed")["left_over"]), (&json!("both"), &json!(2)));
    assert_eq!((&line(&list, "mist")["cost_bought"], &line(&list, "mist")["left_over"]), (&Value::Null, &json!(2)));
    // Each of three bags holds 40 and 2 spare; 126 are on three strands.
    let kits = listed(&desk, &["a.yaml", "--kits", "3"]);
    assert_eq!((&line(&kits, "both")["packs"], &line(&kits, "reed")["left_over"]), (&json!(3), &json!(6)));
    // A bag's 42 beads of 76 a strand: 7.50 x 42 / 76 = 4.14; 5814 mm of 10 m thread make 2.91, a hook 1.50, a ring 0.04.
    assert_eq!(kits["kits"][0]["unpriced"], json!([]));
    let thread = kits["kits"][0]["cost"].as_f64().unwrap() - 4.14 - 1.50 - 0.04;
    assert!((thread - 0.29).abs() < 0.005, "{thread}");
    let text = desk.told(&["materials", "a.yaml", "b.yaml"]);
    // In its row, the sum of 17.50, and the list by seller with that seller's sum.
    assert!(text.contains("from the fair: 7.50") && text.matches("7.50").count() == 4, "{text}");
    let stash = desk.with("stash.yaml", "both: 1\n");
    let list = listed(&stash, &["a.yaml", "b.yaml", "--stash", "stash.yaml"]);
    assert_eq!((&line(&list, "both")["packs"], &line(&list, "both")["from_stash"]), (&json!(0), &json!(1)));
    let csv = stash.told(&["materials", "a.yaml", "--format", "csv"]);
    assert!(csv.contains("bead,reed,reed,40,,2,0,,in both,,2,,,0,\r\n"), "{csv}");
    assert!(csv.contains("assorted,both,two sizes,1,,0,0,1,strand,76,2,3.95,7.50,0,the fair\r\n"), "{csv}");
}
