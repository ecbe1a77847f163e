//! Materials as CSV, JSON and a table.

use festoon::design::{Lot, Price, Sold, Stated, nth};
use festoon::materials::{Amount, Article, Materials, Order, Stash, materials, render};
use festoon::pattern::Overhead;
use festoon::units::{Length, Money, Telling, UnitStyle};
use serde_json::{Value, json};

use crate::designs::{gathered, sold};

const TOLD: Telling = Telling { units: UnitStyle::Mm, currency: None };

fn priced() -> Materials {
    let mut design = gathered()
        .changed(|model| {
            model.beads[nth(0)].sold = sold(Lot::Pack(50), 420);
            model.beads[nth(1)].name = "mist, \"pale\"".into();
        })
        .expect("a design");
    let mut price = Price::new(1.5, Money::coins(1800));
    price.overhead = Stated::Stated(Overhead::Sum(Money::coins(250)));
    (price.wholesale, price.retail) = (Stated::Stated(2.0), Stated::Stated(2.5));
    design = design.changed(|model| model.price = Some(price)).expect("a design");
    materials(&design, &Order::default())
}

#[test]
fn csv_quotes_what_needs_it_and_ends_lines_with_crlf() {
    let csv = render::csv(&priced(), render::Separator::Comma);
    let lines: Vec<_> = csv.split("\r\n").collect();
    assert_eq!(
        lines[0],
        "kind,id,name,count,length_mm,spare,from_stash,packs,sold_by,pack,left_over,cost_used,cost_bought,in_hand,from"
    );
    // 10 x 5 + 5 and 11 x 5 + 5 are 115; 6 spare; three packs of 50 hold 150.
    assert_eq!(lines[1], "bead,reed,reed bead,115,,6,0,3,pack,50,35,9.66,12.60,0,");
    assert_eq!(lines[2], "bead,mist,\"mist, \"\"pale\"\"\",21,,2,0,,,,,,,0,");
    assert_eq!(lines[3], "cord,wire,wire cord,,914.65,0,0,1,spool,10000,9085.35,0.72,7.90,0,");
    assert!(csv.ends_with("\r\n") && !csv.replace("\r\n", "").contains(['\r', '\n']));
    // A header, two beads, a cord, seven findings, and what follows the last line end.
    assert_eq!(lines.len(), 1 + 2 + 1 + 7 + 1);
}

#[test]
fn json_has_the_fields_of_the_contract() {
    let array = render::array(&priced());
    let reed = json!({
        "kind": "bead", "id": "reed", "name": "reed bead", "count": 115, "spare": 6, "in_hand": 0, "from_stash": 0,
        "packs": 3, "sold_by": "pack", "pack": 50, "left_over": 35, "cost_used": 9.66, "cost_bought": 12.6,
    });
    assert_eq!(array[0], reed);
    assert_eq!(array[2]["length_mm"], json!(914.65));
    assert_eq!(array[1]["cost_used"], Value::Null);
    let whole: Value = serde_json::from_str(&render::json(&priced(), Some("EUR"))).unwrap();
    assert_eq!(whole["materials"], array);
    assert_eq!(whole["cutting"][0]["id"], json!("wire"));
    assert_eq!(whole["price"]["labour"], json!(27.0));
    // Used: 9.66 of reed, 0.72 of wire, 0.30 of chain (60 mm of a metre at 5.00).
    assert_eq!(whole["cost_used"], json!(10.68));
    assert_eq!(whole["price"]["cost"], json!(40.18));
    assert_eq!(whole["price"]["wholesale"], json!(80.36));
    assert_eq!(whole["price"]["retail"], json!(100.45));
}

/// What a maker has lying about costs her nothing; what she gives no price for costs who knows what.
#[test]
fn a_price_of_nothing_is_told_from_none() {
    let design = gathered()
        .changed(|model| {
            model.beads[nth(0)].sold = sold(Lot::Pack(50), 0);
            model.beads[nth(1)].sold = Some(Sold::new(Lot::Pack(50)));
        })
        .expect("a design");
    let materials = materials(&design, &Order::default());
    let csv = render::csv(&materials, render::Separator::Comma);
    assert!(csv.lines().nth(1).is_some_and(|line| line.ends_with(",35,0.00,0.00,0,")), "{csv}");
    assert!(csv.lines().nth(2).is_some_and(|line| line.ends_with(",29,,,0,")), "{csv}");
    let array = render::array(&materials);
    assert_eq!((&array[0]["cost_bought"], &array[1]["cost_bought"]), (&json!(0.0), &Value::Null));
}

#[test]
fn the_table_reads_at_a_glance() {
    let table = render::table(&priced(), &Telling { currency: Some("EUR".into()), ..TOLD });
    let lines: Vec<_> = table.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    assert_eq!(lines[1], "reed bead 115 6 3 packs of 50 35 12.60");
    assert!(lines.contains(&"bought for the piece: 25.50 EUR".to_owned()), "{table}");
    assert!(lines.contains(&"cut wire cord from 1 length".to_owned()), "{table}");
    assert!(lines.contains(&"1. bought, 10 m: outer 480 mm, inner 436 mm; 9.084 m left".to_owned()), "{table}");
    assert!(table.contains("without what has no price in the pattern: mist"), "{table}");
}

/// Nothing is bought of what is in hand, and no plan counts lengths that nobody buys.
#[test]
fn the_table_of_what_is_all_in_hand() {
    let mut design = gathered();
    design = design
        .changed(|model| model.beads.iter_mut().for_each(|bead| bead.sold = sold(Lot::Pack(50), 420)))
        .expect("a design");
    let counts =
        [(Article::Bead(nth(0)), 200), (Article::Bead(nth(1)), 40)].map(|(at, many)| (at, Amount::Count(many)));
    let lengths = [Article::Cord(nth(0)), Article::Finding(nth(5))].map(|at| (at, Amount::Length(Length::mm(1000.0))));
    let stash = counts.into_iter().chain(lengths).fold(Stash::default(), |stash, (at, much)| stash.with(at, much));
    let table = render::table(&materials(&design, &Order { stash, ..Order::default() }), &TOLD);
    let lines: Vec<_> = table.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    assert_eq!(lines[1], "reed bead 115 6 200 nothing 85 0.00");
    assert!(lines.contains(&"to buy for the piece, beside what is in hand: nothing".to_owned()), "{table}");
    assert!(lines.contains(&"cut wire cord from the length in hand".to_owned()), "{table}");
    assert!(!table.contains("0 lengths") && !table.contains("bought for"), "{table}");
}

/// What is bought is counted beside what is in hand, where pieces come off both.
#[test]
fn lengths_in_hand_and_bought_are_both_said() {
    let mut design = gathered();
    let stash = Stash::default().with(Article::Cord(nth(0)), Amount::Length(Length::mm(500.0)));
    design =
        design.changed(|model| model.cords[nth(0)].sold = sold(Lot::Length(Length::mm(500.0)), 500)).expect("a design");
    let table = render::table(&materials(&design, &Order { stash, ..Order::default() }), &TOLD);
    assert!(table.contains("cut wire cord from what is in hand and 1 length more"), "{table}");
}

/// Of 960 mm two pieces of 480 mm leave nothing for a third, and of two metres more than one.
#[test]
fn makers_are_told_where_no_piece_more_is_left() {
    let amiss = |makers: u32, spool: f64| {
        let mut design = gathered();
        design = design
            .changed(|model| model.cords[nth(0)].sold = sold(Lot::Length(Length::mm(spool)), 500))
            .expect("a design");
        let order = Order { makers, ..Order::default() };
        render::table(&materials(&design, &order), &TOLD).contains("buy one more in case somebody cuts amiss")
    };
    // A piece of 480 mm and one of 435 mm for each maker.
    assert!(amiss(2, 1_850.0) && !amiss(2, 3_000.0) && !amiss(1, 1_000.0));
}
