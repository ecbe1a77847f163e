//! Cord that knots take up, in kits and cutting lists: every figure is worked out by hand beside its check.
//!
//! The pitch of round pearls of 6 mm with holes of 1.1 mm is 2 sqrt(3^2 - 0.55^2) = 5.8983 mm, so that 41 of them
//! with 40 knots of 1.2 mm take 289.8305 mm. A tight overhand knot takes up 10.1 diameters of a cord, 5.05 mm of
//! one of 0.5 mm; a double one at an end 1.712 times as much; in a doubled cord each of two legs as much as a cord
//! twice as thick, four times in all.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::design::{Choice, Design, nth};
use festoon::materials::render::table;
use festoon::materials::render::words::cut_for;
use festoon::materials::{Amount, Order, Stash, materials};
use festoon::source::Source;
use festoon::units::{Telling, UnitStyle};

const ROW: f64 = 289.830_498;
/// Ten knots to try, and 100 mm to hold them by.
const TRIED: f64 = 10.0 * 5.05 + 100.0;

/// A necklace of 41 pearls on silk that is sold by 2 m.
fn pearls(silk: &str, strand: &str) -> Design {
    let text = format!(
        "festoon: 1
title: Kit
kind: necklace
units: mm
beads:
  pearl: {{ shape: round, size: 6 mm, hole: 1.1 mm, mass: 0.3 g, colour: '#ece3d4' }}
cords:
  silk: {{ kind: silk, diameter: 0.5 mm, mass: 0.3 g/m, strength: 30 N{silk}, sold: {{ by: length, length: 2 m, price: 3 }} }}
findings:
  ring: {{ kind: jump ring, inside: 4 mm, closed: yes }}
  hook: {{ kind: hook, length: 15 mm }}
  cup: {{ kind: knot cover, length: 7 mm, inside: 4 mm }}
  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}
strands:
  - {{ name: only, cord: silk, allowance: 100 mm, {strand} }}
closure: {{ left: [ring], right: [hook] }}
wear: {{ neck base: 290 mm }}
"
    );
    let (piece, remarks) = festoon::piece(&Source::new("kit.yaml", text), &Choice::default(), None);
    piece.unwrap_or_else(|| panic!("{remarks:?}")).design
}

/// Checks what one piece is cut to, and what twelve makers need, buy and cut; the lengths are sold by 2 m, of which the
/// first has so many pieces, and so many are bought. Each maker ties ten knots to try, in a piece with 100 mm for each leg
/// to hold it by.
fn kit(design: &Design, [cut, tried]: [f64; 2], each: usize, lots: u64) {
    let near = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-3, "{found} and not {wanted}");
    near(design.strands[nth(0)].cut().value(), cut);
    let list = materials(design, &Order { makers: 12, ..Order::default() });
    let silk = list.lines.iter().find(|line| line.id == "silk").unwrap();
    let Amount::Length(need) = silk.need else { panic!("{:?}", silk.need) };
    near(need.value(), 12.0 * (cut + tried));
    assert_eq!(silk.buy.as_ref().unwrap().lots, lots);
    let pieces = || list.cuttings[0].spools.iter().flat_map(|spool| &spool.pieces);
    for (label, length) in [("only", cut), ("knots to try", tried)] {
        let alike: Vec<_> = pieces().filter(|piece| cut_for(piece) == label).collect();
        assert_eq!(alike.len(), 12, "{label}");
        alike.iter().for_each(|piece| near(piece.length.value(), length));
    }
    let left: f64 = list.cuttings[0].spools.iter().map(|spool| spool.left.value()).sum();
    near(left, 2000.0 * lots as f64 - need.value());
    // No piece is told shorter than it is.
    let (times, cut) = (if each > 1 { format!("{each} × ") } else { String::new() }, cut.ceil());
    let said = format!("1. bought, 2 m: {times}only {cut} mm");
    let text = table(&list, &Telling { units: UnitStyle::Mm, currency: None });
    assert!(text.contains(&said), "{said}: {text}");
}

/// A loop of two and a half widths of the silk of 0.5 mm and a knot of three, by which an end is tied.
const TIED: f64 = 5.5 * 0.5;

#[test]
fn knots_between_all_beads() {
    // Without the knots' cord a length of 2 m would give four pieces, with it two of 715 mm and two of 150.5 mm to try.
    let cut = ROW + 2.0 * TIED + 40.0 * 5.05 + 2.0 * 1.712 * 5.05 + 2.0 * 100.0;
    kit(&pearls(", needle: yes", "ends: knot, knots: 1.2 mm, beads: [41 pearl]"), [cut, TRIED], 2, 6);
    let written = "ends: knot, beads: [{ repeat: 40, of: [pearl, { knot: 1.2 mm }] }, pearl]";
    kit(&pearls("", written), [cut, TRIED], 2, 6);
}

#[test]
fn the_makers_own_measure() {
    let cut = ROW + 2.0 * TIED + 40.0 * 4.0 + 2.0 * 1.712 * 4.0 + 2.0 * 100.0;
    // Three of 669 mm are longer than a length: two leave 662 mm, of which 140 mm to try are cut.
    kit(&pearls(", needle: yes, take-up: 4 mm", "ends: knot, knots: 1.2 mm, beads: [41 pearl]"), [cut, 140.0], 2, 6);
}

#[test]
fn both_legs_of_a_doubled_cord() {
    // A lark's head takes three diameters, 1.5 mm, and has no knot; the other end's knot is tied in both legs, side by side.
    let row = ROW + 1.5 + 2.0 * TIED;
    let cut = 2.0 * row + 40.0 * 20.2 + 1.712 * 20.2 + 2.0 * 100.0;
    // One of 1636 mm leaves less than the 402 mm to try ten knots in both legs, of which a length gives four.
    let doubled = pearls(", needle: yes", "doubled: yes, ends: knot, knots: 1.2 mm, beads: [41 pearl]");
    kit(&doubled, [cut, 10.0 * 20.2 + 200.0], 1, 12 + 3);
    let own = 2.0 * row + 40.0 * 16.0 + 1.712 * 16.0 + 2.0 * 100.0;
    let doubled = pearls(", take-up: 4 mm", "doubled: yes, ends: knot, knots: 1.2 mm, beads: [41 pearl]");
    kit(&doubled, [own, 10.0 * 16.0 + 200.0], 1, 12);
}

#[test]
fn knots_in_covers_and_none_in_crimps() {
    // A cover takes 7 mm of the strand at each end; a crimp of 2 mm with its loop 3/16 in, and has no knot.
    let covered = ROW + 2.0 * 7.0 + 40.0 * 5.05 + 2.0 * 1.712 * 5.05 + 2.0 * 100.0;
    kit(&pearls("", "ends: cup, knots: 1.2 mm, beads: [41 pearl]"), [covered, TRIED], 2, 6);
    let crimped = ROW + 2.0 * 25.4 * 3.0 / 16.0 + 40.0 * 5.05 + 2.0 * 100.0;
    kit(&pearls("", "ends: crimp, knots: 1.2 mm, beads: [41 pearl]"), [crimped, TRIED], 2, 6);
}

#[test]
fn a_stash_lends_what_knots_take_up_as_well() {
    let design = pearls("", "ends: knot, knots: 1.2 mm, beads: [41 pearl]");
    // 714.62 mm and 150.5 mm to try are cut from 866 mm in hand, and from 865 mm they are not.
    for (in_hand, lots) in [("866 mm", 0), ("865 mm", 1)] {
        let stash = Stash::read(&Source::new("stash.yaml", format!("silk: {in_hand}\n")), &design).0;
        let list = materials(&design, &Order { stash: stash.unwrap(), ..Order::default() });
        let silk = list.lines.iter().find(|line| line.id == "silk").unwrap();
        assert_eq!(silk.buy.as_ref().unwrap().lots, lots, "{in_hand}");
    }
}
