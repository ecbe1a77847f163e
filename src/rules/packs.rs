//! Packs: what is bought for the sake of a few, and cords too short for their strands.
//!
//! Of one piece made on its own. A last pack is remarked on where it is bought for the spare beads
//! alone, or for no more than [`FEW`] of its content: a count changed a little would save it.

use crate::design::{Assorted, Bead, Design, Held, Index};
use crate::materials::{Amount, Article, Line, Materials, Order, assorted, materials, need};
use crate::remark::Remark;
use crate::remark::said::buying::{Buying, Unit};
use crate::source::Place;

/// Share of a pack that is too little to buy one for: an assumption.
const FEW: f64 = 0.05;

/// Remarks about what is bought.
#[must_use]
pub fn check(design: &Design) -> Vec<Remark> {
    let materials = materials(design, &Order::default());
    let packs = materials.lines.iter().filter_map(|line| last_pack(design, line));
    let packs = packs.chain(design.assorted.iter().filter_map(|assorted| together(design, assorted)));
    packs.chain(too_small(design, &materials)).chain(too_long(design, &materials)).collect()
}

/// A pack or strand that is bought for few beads.
fn last_pack(design: &Design, line: &Line) -> Option<Remark> {
    let buy = line.buy.as_ref()?;
    let (Amount::Count(need), Amount::Count(spare), Amount::Count(lot)) = (line.need, line.spare, buy.lot) else {
        return None;
    };
    let before = buy.lots.checked_sub(1).filter(|before| *before > 0)? * lot;
    let few = (need + spare).checked_sub(before).filter(|_| lot > 1)?;
    let (what, packs) = (line.names.clone(), buy.lots);
    let said = match need.checked_sub(before) {
        None | Some(0) => Buying::PackForSpare { what, packs, few, need },
        Some(over) if over as f64 <= lot as f64 * FEW => Buying::PackForFew { what, packs, holds: lot, over },
        Some(_) => return None,
    };
    Some(Remark::new(said).at(place(design, line.article)))
}

/// What is bought with several kinds in it: for the sake of one kind, of a few beads, of spare ones, or with none to
/// spare.
fn together(design: &Design, assorted: &Assorted) -> Option<Remark> {
    let counts = need::bought(design);
    let of = |(held, bead)| {
        let (article, order) = (Article::Bead(bead), Order::default());
        let count = counts.get(&article).copied().unwrap_or(0) * u64::from(design.copies);
        let spare = order.spare_of(article, count);
        let bought = if assorted.is_mix() { count + spare } else { count };
        Some(WantedKind { held, bead, count, spare, packs: assorted::packs(assorted, held, bought)? })
    };
    let mut kinds: Vec<_> = assorted.used().map(of).collect::<Option<_>>()?;
    kinds.sort_by_key(|kind| std::cmp::Reverse(kind.packs));
    let most = kinds.first()?.packs;
    let found = scarce(design, assorted, &kinds);
    found.or_else(|| last_together(assorted, &kinds, most)).or_else(|| spareless(design, assorted, &kinds, most))
}

/// A kind of bead among those that are bought together.
struct WantedKind<'a> {
    held: &'a Held,
    bead: Index<Bead>,
    count: u64,
    spare: u64,
    /// How many packs hold enough of it.
    packs: u64,
}

/// A kind for whose sake alone more is bought of what holds several.
fn scarce(design: &Design, assorted: &Assorted, kinds: &[WantedKind<'_>]) -> Option<Remark> {
    let [most, next, ..] = kinds else { return None };
    let (packs, fewer) = (most.packs, next.packs.max(1));
    let spare = if assorted.is_mix() { most.spare } else { 0 };
    let enough = assorted::surely(assorted, most.held, fewer).saturating_sub(spare);
    (packs > fewer).then(|| {
        let (what, kind) = (assorted.name.clone(), design.beads[most.bead].name.clone());
        let said = Buying::ScarceKind { what, kind, packs, fewer, strung: most.count, enough };
        Remark::new(said).at(assorted.place)
    })
}

/// The last of several packs, bought for few beads or for spare ones.
fn last_together(assorted: &Assorted, kinds: &[WantedKind<'_>], packs: u64) -> Option<Remark> {
    let before = packs.checked_sub(1).filter(|before| *before > 0)?;
    let over = |kind: &WantedKind<'_>| kind.count.saturating_sub(assorted::surely(assorted, kind.held, before));
    let over: u64 = kinds.iter().map(over).sum();
    let (what, holds) = (assorted.name.clone(), assorted.beads);
    let unit = if assorted.is_mix() { Unit::Bag } else { Unit::Strand };
    let said = match over {
        0 => Buying::LastForSpare { what, packs, unit },
        over if over as f64 <= holds as f64 * FEW => Buying::LastForFew { what, packs, unit, holds, over },
        _ => return None,
    };
    Some(Remark::new(said).at(assorted.place))
}

/// Kinds of which a strand leaves nothing over: no other is bought for the sake of a spare bead.
fn spareless(design: &Design, assorted: &Assorted, kinds: &[WantedKind<'_>], packs: u64) -> Option<Remark> {
    let used_up = |kind: &&WantedKind<'_>| kind.count == packs * u64::from(kind.held.parts) && !assorted.is_mix();
    let mut kinds: Vec<_> = kinds.iter().filter(used_up).map(|kind| design.beads[kind.bead].name.clone()).collect();
    kinds.sort_unstable();
    let what = assorted.name.clone();
    (!kinds.is_empty()).then(|| Remark::new(Buying::NoSpare { what, kinds }).at(assorted.place))
}

/// Articles of which one lot does not hold a single one.
fn too_small(design: &Design, materials: &Materials) -> Vec<Remark> {
    let unbuyable = |line: &&Line| {
        let is_sold = matches!(line.article, Article::Assorted(_)) || line.article.sold(design).is_some();
        line.buy.is_none() && is_sold
    };
    let remark = |line: &Line| {
        let by_length = need::by_length(design, line.article);
        Remark::new(Buying::LotTooSmall { what: line.names.clone(), by_length }).at(place(design, line.article))
    };
    materials.lines.iter().filter(unbuyable).map(remark).collect()
}

/// Pieces that no spool on sale is long enough for.
fn too_long(design: &Design, materials: &Materials) -> Vec<Remark> {
    let cuts =
        materials.cuttings.iter().flat_map(|cutting| cutting.too_long().iter().map(move |piece| (cutting, piece)));
    let remark = |(cutting, piece): (&crate::materials::Cutting, &crate::materials::Cut)| {
        let (what, piece, needed) = (cutting.article.name(design).to_owned(), piece.name().cloned(), piece.length);
        let sold = cutting.lot.unwrap_or_default();
        Remark::new(Buying::SpoolTooShort { what, piece, needed, sold }).at(place(design, cutting.article))
    };
    cuts.map(remark).collect()
}

fn place(design: &Design, article: Article) -> Place {
    match article {
        Article::Bead(at) => design.beads[at].place,
        Article::Cord(at) => design.cords[at].place,
        Article::Finding(at) => design.findings[at].place,
        Article::Assorted(at) => design.assorted[at].place,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Lot, Sold, nth};
    use crate::remark::Code;
    use crate::rules::sample;
    use crate::units::{Length, Money};

    /// A strand of so many beads, sold in such lots.
    fn beads(count: usize, lot: Lot) -> Design {
        let mut design = sample::necklace();
        let bit = design.strands[nth(0)].trains[0].bits[0].clone();
        design = design
            .changed(|model| {
                sample::string(model, vec![bit; count]);
                model.beads[nth(0)].sold = Some(Sold { price: Some(Money::coins(420)), ..Sold::new(lot) });
            })
            .unwrap();
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
        assert_eq!(remark.code(), Code::LastPack);
        assert_eq!(remark.headline(), "reed: the last of 2 packs is bought for 3 spare alone");
    }

    #[test]
    fn a_pack_bought_for_two_of_its_beads() {
        let remark = only(&beads(98, Lot::Pack(48)));
        assert_eq!(remark.headline(), "reed: the last of 3 packs of 48 is bought for 2 of its beads");
        assert_eq!(remark.help(), "string 2 fewer, and one pack less will do, without spare");
    }

    #[test]
    fn what_is_well_packed_is_passed_over() {
        for (count, lot) in [(60, Lot::Pack(48)), (20, Lot::Pack(48)), (66, Lot::Each)] {
            assert_eq!(check(&beads(count, lot.clone())), [], "{count} in {lot:?}");
        }
    }

    #[test]
    fn a_lot_that_holds_nothing() {
        assert_eq!(only(&beads(10, Lot::Strand(Length::mm(4.0)))).code(), Code::LotTooSmall);
    }

    #[test]
    fn a_spool_shorter_than_its_strand() {
        let design = beads(10, Lot::Each)
            .changed(|model| {
                model.cords[nth(0)].sold =
                    Some(Sold { price: Some(Money::coins(500)), ..Sold::new(Lot::Length(Length::mm(300.0))) });
            })
            .unwrap();
        let remark = only(&design);
        assert_eq!(remark.code(), Code::SpoolTooShort);
        assert!(
            remark.headline().ends_with("is needed in one piece, but it is sold 300 mm long"),
            "{}",
            remark.headline()
        );
    }
}
