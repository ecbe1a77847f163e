//! Packs: what is bought covers what is needed, and money adds up to the coin.

use festoon::design::{Lot, Phrase, Stated, nth};
use festoon::materials::lots::{beads_in, spare};
use festoon::materials::{Amount, Article, Line, Order, Stash, materials};
use festoon::units::{Length, Mass, Money};
use proptest::prelude::*;

use crate::designs::{bead, design, gathered, sold, strand};

/// Beads on a 16 in strand: size in mm, published count, `floor(406.4 / size)`.
/// Source: gemsociety.org, "Bead and necklace size charts" (International Gem Society); the last
/// column is exact arithmetic.
const STRANDS: &[(f64, u64, u64)] = &[
    (2.0, 200, 203),
    (3.0, 133, 135),
    (4.0, 100, 101),
    (5.0, 80, 81),
    (6.0, 66, 67),
    (7.0, 57, 58),
    (8.0, 50, 50),
    (10.0, 40, 40),
    (12.0, 33, 33),
];

#[test]
fn beads_on_a_strand_are_as_many_as_fit_and_no_fewer_than_published() {
    for (size, published, floor) in STRANDS {
        let count = beads_in(&bead("one", "A", *size), &Lot::Strand(Length::inches(16.0)));
        assert_eq!(count, *floor, "{size} mm");
        assert!(count >= *published && count - published <= 3, "{size} mm: published {published}");
    }
}

#[test]
fn a_measured_pitch_counts_before_the_size() {
    let mut bead = bead("one", "A", 6.0);
    bead.pitch = Some(Length::mm(5.9));
    assert_eq!(beads_in(&bead, &Lot::Strand(Length::mm(400.0))), 67);
}

#[test]
fn seed_beads_by_mass() {
    // 10 g of 11/0 are 1050, of 8/0 347 (a bead shop's blog, 2013-10).
    for (count, mass) in [(1050, 10.0 / 1050.0), (347, 10.0 / 347.0)] {
        let mut seed = bead("seed", "A", 2.0);
        seed.mass = Stated::Stated(Mass::grams(mass));
        assert_eq!(beads_in(&seed, &Lot::Grams(Mass::grams(10.0))), count);
    }
}

#[test]
fn spare_is_a_share_rounded_up_and_at_least_one() {
    let spares = [(0, 0.05), (1, 0.05), (20, 0.05), (21, 0.05), (100, 0.07), (60, 0.0)];
    assert_eq!(spares.map(|(count, share)| spare(count, share)), [0, 1, 1, 2, 7, 0]);
}

/// One strand of so many reed beads, sold in such lots at such a price.
fn line(count: u32, lot: Lot, price: i64, order: &Order) -> Line {
    let design = design(vec![strand("one", 400.0, &[0], vec![Phrase::Run(count, nth(0))])])
        .changed(|model| model.beads[nth(0)].sold = sold(lot, price))
        .expect("a design");
    materials(&design, order).lines.remove(0)
}

#[test]
fn kits_are_bought_once_for_all() {
    // 30 beads and 2 spare fill one pack of 48; for ten makers 300 and 15 are 7 packs, not 10.
    let order = |makers| Order { makers, ..Order::default() };
    assert_eq!(line(30, Lot::Pack(48), 310, &order(1)).buy.unwrap().lots, 1);
    let ten = line(30, Lot::Pack(48), 310, &order(10)).buy.unwrap();
    assert_eq!((ten.lots, ten.left_over, ten.bought), (7, Amount::Count(36), Some(Money::coins(2170))));
    // 3.10 for 48 makes 19.375 for 300.
    assert_eq!(ten.used, Some(Money::coins(1938)));
}

#[test]
fn the_stash_is_taken_before_buying() {
    let stash = Stash::default().with(Article::Bead(nth(0)), Amount::Count(20));
    let line = line(30, Lot::Pack(10), 310, &Order { stash, ..Order::default() });
    assert_eq!((line.need, line.spare, line.from_stash), (Amount::Count(30), Amount::Count(2), Amount::Count(20)));
    let buy = line.buy.unwrap();
    assert_eq!((buy.lots, buy.left_over), (2, Amount::Count(10)));
}

/// What is in hand beyond the need is left over, as it is of cord.
#[test]
fn what_is_left_of_the_stash_is_left_over() {
    let stash = Stash::default().with(Article::Bead(nth(0)), Amount::Count(500));
    let line = line(30, Lot::Pack(10), 310, &Order { stash, ..Order::default() });
    assert_eq!((line.in_hand, line.from_stash), (Amount::Count(500), Amount::Count(32)));
    let buy = line.buy.unwrap();
    assert_eq!((buy.lots, buy.left_over), (0, Amount::Count(470)));
}

#[test]
fn a_lot_too_small_for_a_bead_is_not_bought() {
    assert_eq!(line(3, Lot::Strand(Length::mm(5.0)), 310, &Order::default()).buy, None);
}

#[test]
fn findings_follow_from_ends_and_closure() {
    let materials = materials(&gathered(), &Order { makers: 3, ..Order::default() });
    let need = |id: &str| materials.lines.iter().find(|line| line.id == id).unwrap().need;
    // Two strands have four crimped ends; each side has a pin and a cone.
    assert_eq!(need("tube crimp"), Amount::Count(12));
    assert_eq!(need("eye pin"), Amount::Count(6));
    assert_eq!(need("fluted cone"), Amount::Count(6));
    assert_eq!(need("lobster clasp"), Amount::Count(3));
    assert_eq!(need("cable chain"), Amount::Length(Length::mm(180.0)));
}

#[test]
fn a_spacer_bar_is_bought_once_for_all_the_strands_that_share_it() {
    // Strands that each go through so many bars of so many holes, and the bars they take.
    let cases: [(&[u32], u32, u64); 6] = [
        (&[1, 1, 1], 3, 1),
        (&[5, 5], 3, 5),
        (&[2, 2, 2, 2], 2, 4),
        (&[2, 0, 2, 2], 2, 4),
        (&[2, 3], 2, 3),
        (&[4], 1, 4),
    ];
    for (passes, holes, bars) in cases {
        let chart = |times| {
            let passed = vec![Phrase::Finding(nth(2)), Phrase::Run(1, nth(0))];
            std::iter::once(Phrase::Run(5, nth(0))).chain((times > 0).then_some(Phrase::Times(times, passed))).collect()
        };
        let design = design(passes.iter().map(|times| strand("one", 400.0, &[0], chart(*times))).collect())
            .changed(|model| model.findings[nth(2)].form = crate::designs::bar(holes))
            .expect("a design");
        let materials = materials(&design, &Order::default());
        let found = materials.lines.iter().find(|line| line.id == "stop").unwrap().need;
        assert_eq!(found, Amount::Count(bars), "{passes:?} through {holes}");
    }
}

fn lots() -> impl Strategy<Value = Lot> {
    prop_oneof![
        (10.0..500.0f64).prop_map(|mm| Lot::Strand(Length::mm(mm))),
        (1u32..20, 10.0..500.0f64).prop_map(|(strands, mm)| Lot::Hank(strands, Length::mm(mm))),
        (1u32..200).prop_map(Lot::Pack),
        Just(Lot::Each),
        (0.5..50.0f64).prop_map(|grams| Lot::Grams(Mass::grams(grams))),
    ]
}

proptest! {
    #[test]
    fn packs_cover_the_need_and_the_last_one_is_needed(
        count in 1u32..400, lot in lots(), price in 0i64..10_000, makers in 1u32..30, share in 0.0..0.5f64, held in 0u64..500,
    ) {
        let stash = Stash::default().with(Article::Bead(nth(0)), Amount::Count(held));
        let line = line(count, lot, price, &Order { makers, spare: share, stash, ..Order::default() });
        let (Amount::Count(need), Amount::Count(spare), Amount::Count(from_stash)) = (line.need, line.spare, line.from_stash)
            else { panic!("beads are counted") };
        let buy = line.buy.unwrap();
        let (Amount::Count(lot), Amount::Count(left)) = (buy.lot, buy.left_over) else { panic!("beads are counted") };
        prop_assert!(buy.lots * lot + from_stash >= need + spare);
        prop_assert!(buy.lots == 0 || (buy.lots - 1) * lot + from_stash < need + spare);
        prop_assert_eq!(line.in_hand, Amount::Count(held));
        prop_assert_eq!(left, buy.lots * lot + held - need);
        prop_assert!(spare as f64 >= need as f64 * share - 1e-6 && (spare as f64) < need as f64 * share + 1.0 + 1e-6);
        prop_assert_eq!(buy.bought, Some(Money::coins(price * i64::try_from(buy.lots).unwrap())));
        prop_assert!(buy.used <= buy.bought || from_stash > 0);
    }

    #[test]
    fn totals_are_sums_of_whole_coins(prices in prop::collection::vec(0i64..5000, 3), makers in 1u32..20) {
        let priced = gathered().changed(|model| {
            for (bead, price) in model.beads.iter_mut().zip(&prices) {
                bead.sold = sold(Lot::Pack(7), *price);
            }
        });
        let design = priced.unwrap();
        let materials = materials(&design, &Order { makers, ..Order::default() });
        let buys: Vec<_> = materials.lines.iter().filter_map(|line| line.buy.as_ref()).collect();
        prop_assert_eq!(materials.bought().value(), buys.iter().filter_map(|buy| buy.bought).map(Money::value).sum::<i64>());
        prop_assert_eq!(materials.used().value(), buys.iter().filter_map(|buy| buy.used).map(Money::value).sum::<i64>());
    }
}
