//! The rule on packs: a last pack bought for few, lots too small, spools too short.

use festoon::design::{Design, Lot, Phrase};
use festoon::remark::{Code, Remark};
use festoon::rules::packs::check;
use festoon::units::Length;

use crate::designs::{design, sold, strand};

/// A strand of so many beads, sold in such lots.
fn beads(count: u32, lot: Lot) -> Design {
    let mut design = design(vec![strand("inner", 400.0, &[0], vec![Phrase::Run(count, 0)])]);
    design.beads[0].sold = sold(lot, 420);
    design
}

fn only(design: &Design) -> Remark {
    let mut remarks = check(design);
    assert_eq!(remarks.len(), 1, "{remarks:?}");
    remarks.remove(0)
}

#[test]
fn a_strand_bought_for_the_spare_alone() {
    // A 16 in strand of 6 mm beads holds 67; 66 and 4 spare need a second one.
    let remark = only(&beads(66, Lot::Strand(Length::inches(16.0))));
    assert_eq!(remark.code, Code::LastPack);
    assert_eq!(remark.headline, "reed bead: the last of 2 packs is bought for 3 spare ones alone");
}

#[test]
fn a_pack_bought_for_two_of_its_beads() {
    let remark = only(&beads(98, Lot::Pack(48)));
    assert_eq!(remark.headline, "reed bead: the last of 3 packs of 48 is bought for 2 of its beads");
    assert_eq!(remark.help, "string 2 fewer and 2 packs will do");
}

#[test]
fn what_is_well_packed_is_passed_over() {
    for (count, lot) in [(60, Lot::Pack(48)), (20, Lot::Pack(48)), (66, Lot::Each)] {
        assert_eq!(check(&beads(count, lot.clone())), [], "{count} in {lot:?}");
    }
}

#[test]
fn a_lot_that_holds_nothing() {
    assert_eq!(only(&beads(10, Lot::Strand(Length::mm(4.0)))).code, Code::LotTooSmall);
}

#[test]
fn a_spool_shorter_than_its_strand() {
    let mut design = beads(10, Lot::Each);
    design.cords[0].sold = sold(Lot::Length(Length::mm(300.0)), 500);
    let remark = only(&design);
    assert_eq!(remark.code, Code::SpoolTooShort);
    assert_eq!(remark.headline, "inner: 416 mm of wire cord is needed in one piece, but it is sold 300 mm long");
}
