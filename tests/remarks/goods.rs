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
    .into_iter()
    .chain(assorted())
    .collect()
}

/// Beads that are bought together: ten reed, ten mist and a spare of each.
fn assorted() -> Vec<Case> {
    let both = changed(&[("beads:\n", MIST), ("[20 reed]", "[5 reed, 10 mist, 5 reed]")]);
    let lots = |lots: &str| and(&both, &format!("assorted: {{ {lots} }}"));
    let strand = |holds: &str| lots(&format!("lot: {{ sold: {{ by: graduated strand }}, holds: {{ {holds} }} }}"));
    let sand = "  sand: { shape: tube, size: 3 x 9 mm, hole: 1 mm, colour: \"#d9bf92\", mass: 0.1 g }\n";
    let sandy = |holds: &str| strand(holds).replace("cords:\n", &format!("{sand}cords:\n"));
    let mix = |much: &str| lots(&format!("lot: {{ sold: {{ by: mix, {much} }}, holds: {{ reed: 1, mist: 1 }} }}"));
    let fine = strand("reed: 11, mist: 11");
    let itself = fine.replace("mass: 0.27 g", "mass: 0.27 g, sold: { by: each }");
    let twice = fine.replace("assorted: {", "assorted: { other: { sold: { by: mix, count: 99 }, holds: { reed: 1 } },");
    vec![
        Case::new(Code::SoldTwice, fine.clone(), itself),
        Case::new(Code::SoldTwice, fine.clone(), twice),
        Case::new(Code::ScarceKind, fine.clone(), strand("reed: 11, mist: 9")),
        // No second strand is bought for a spare bead.
        Case::new(Code::NoSpare, fine.clone(), strand("reed: 11, mist: 10")),
        // A bead more of each of two kinds are two of the 40 that a second strand holds.
        Case::new(Code::LastPack, sandy("reed: 11, mist: 11, sand: 18"), sandy("reed: 9, mist: 9, sand: 22")),
        // Half of 40 less 3 x sqrt(10) is 10.5: enough without the spare.
        Case::new(Code::LastPack, mix("count: 42"), mix("count: 40")),
        // Half of 42 less 3 x sqrt(10.5) is 11.3; two fifths of 42 less 3 x sqrt(10.08) is 7.3, three fifths 15.7.
        Case::new(
            Code::ScarceKind,
            mix("count: 42"),
            lots("lot: { sold: { by: mix, count: 42 }, holds: { reed: 3, mist: 2 } }"),
        ),
        // Two beads of 0.185 g on average.
        Case::new(Code::LotTooSmall, fine.clone(), mix("mass: 0.18 g")),
        Case::new(Code::MissingKey, mix("count: 42"), mix("price: 2")),
        Case::new(Code::MissingKey, mix("count: 42"), mix("count: 42, mass: 4 g")),
        Case::new(Code::Misplaced, mix("count: 42"), lots("lot: { sold: { by: pack, count: 9 }, holds: { reed: 9 } }")),
        Case::new(
            Code::Misplaced,
            both.clone(),
            both.replace("mass: 0.27 g", "mass: 0.27 g, sold: { by: mix, count: 9 }"),
        ),
        Case::new(Code::UnknownId, fine.clone(), strand("reed: 11, mist: 11, mint: 2")),
        Case::new(Code::Unused, both.clone(), lots("lot: { sold: { by: graduated strand }, holds: {} }")),
    ]
}

/// So many beads in packs of 40, on a strand that holds them.
fn long(count: &str) -> String {
    let sold = "mass: 0.27 g, sold: { by: pack, count: 40 }";
    changed(&[("mass: 0.27 g", sold), ("16 in", "26 in"), ("20 reed", &format!("{count} reed"))])
}
