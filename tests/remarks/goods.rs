//! What is bought.

use festoon::remark::Code;

use crate::Case;
use crate::sound::*;

pub fn cases() -> Vec<Case> {
    let reed = |sold: &str| changed(&[("mass: 0.27 g", &format!("mass: 0.27 g, sold: {sold}"))]);
    let pack = |count: u32| reed(&format!("{{ by: pack, count: {count} }}"));
    let wire = |length| {
        let sold = format!("0.6 g/m, sold: {{ by: spool, length: {length} }}");
        changed(&[("0.6 g/m", &sold)])
    };
    let price = |factors: &str| and(&sound(), &format!("price: {{ labour: 1 h, rate: 18, {factors} }}"));
    vec![
        // Both factors multiply the cost: a shop that pays what a wearer does earns nothing.
        Case::new(Code::RetailFactor, price("wholesale: 2, retail: 2.01"), price("wholesale: 2, retail: 2")),
        Case::new(Code::RetailFactor, price("wholesale: 2.49"), price("wholesale: 2.5")),
        // 20 beads and one spare; a second pack of 20 would be bought for the spare.
        Case::new(Code::LastPack, pack(21), pack(20)),
        // A twentieth of a pack of 40 is two beads: the third pack of 40 holds two of 82, or three of 83.
        Case::new(Code::LastPack, long("83"), long("82")),
        Case::new(Code::LotTooSmall, reed("{ by: strand, length: 6 mm }"), reed("{ by: strand, length: 5.9 mm }")),
        // Half a gram holds one bead of 0.27 g.
        Case::new(Code::LotTooSmall, reed("{ by: grams, mass: 0.27 g }"), reed("{ by: grams, mass: 0.26 g }")),
        // 16 in, 50 mm for each end and two double overhand knots of 17.29 x 0.4 mm are 520.233 mm in one piece.
        Case::new(Code::SpoolTooShort, wire("520.3 mm"), wire("520.2 mm")),
    ]
}

/// So many beads in packs of 40, on a strand that holds them.
fn long(count: &str) -> String {
    let sold = "mass: 0.27 g, sold: { by: pack, count: 40 }";
    changed(&[("mass: 0.27 g", sold), ("16 in", "26 in"), ("20 reed", &format!("{count} reed"))])
}
