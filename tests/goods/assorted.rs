//! What is bought with several kinds of bead in it, against counts by pencil and exact sums of the binomial.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use festoon::design::{Assorted, Choice, Design, Held, Pack, nth, resolve};
use festoon::materials::assorted::{fewer, packs, surely};
use festoon::materials::{Amount, Article, Line, Materials, Order, SoldAs, Stash, materials};
use festoon::pattern;
use festoon::source::Source;
use festoon::units::Money;

/// A bag of a mix of so many beads in which two kinds have such parts.
fn mix(beads: u64, parts: [u32; 2]) -> Assorted {
    let held = |(at, parts): (usize, u32)| Held::new(String::new(), parts, nth(at));
    Assorted::new("mix", Pack::Mix(None), beads, parts.into_iter().enumerate().map(held).collect())
}

/// How many beads are bought for so many of a kind with such parts, one of its and the others' to a bag.
fn bought(parts: [u32; 2], wanted: u64) -> u64 {
    let mix = mix(1, parts);
    packs(&mix, &mix.holds[0], wanted).unwrap()
}

/// scipy.stats.binom.cdf(wanted - 1, n, p) of scipy 1.x, with n by a search upward of the least that keeps
/// n p - 3 sqrt(n p (1 - p)) >= wanted.
#[test]
fn a_mix_is_bought_by_three_deviations_of_the_binomial() {
    let table = [
        ([1, 8], 5, 149, 1.448_305e-4),
        ([1, 2], 11, 68, 4.443_540e-4),
        ([2, 7], 8, 89, 2.870_567e-4),
        ([1, 1], 40, 112, 8.473_411e-4),
        ([1, 19], 10, 490, 2.363_240e-4),
        ([9, 1], 100, 123, 1.078_013e-3),
        ([1, 8], 60, 777, 6.663_906e-4),
        ([1, 49], 3, 710, 7.093_296e-5),
    ];
    for (parts, wanted, beads, chance) in table {
        let share = f64::from(parts[0]) / f64::from(parts[0] + parts[1]);
        assert_eq!(bought(parts, wanted), beads, "{parts:?}, {wanted}");
        assert!((fewer(beads, share, wanted) / chance - 1.0).abs() < 1e-5, "{parts:?}, {wanted}");
    }
}

/// The rule against a search, and what it promises against exact sums: a kind is wanting once in a thousand bags, of
/// one that is most of the mix at most four times.
#[test]
fn no_fewer_would_do_and_few_bags_fail() {
    let holds = |beads: u64, share: f64| {
        let mean = beads as f64 * share;
        mean - 3.0 * (mean * (1.0 - share)).sqrt() + 1e-9
    };
    for parts in [[1, 1], [1, 3], [3, 1], [1, 9], [9, 1], [1, 40], [2, 3]] {
        let share = f64::from(parts[0]) / f64::from(parts[0] + parts[1]);
        for wanted in 1..80 {
            let least = (wanted..).find(|beads| holds(*beads, share) >= wanted as f64).unwrap();
            assert_eq!(bought(parts, wanted), least, "{parts:?}, {wanted}");
            let chance = if share > 0.5 { 4e-3 } else { 1.2e-3 };
            assert!(fewer(least, share, wanted) < chance, "{parts:?}, {wanted}");
            let one = mix(1, parts);
            assert!(surely(&one, &one.holds[0], least) >= wanted && surely(&one, &one.holds[0], least - 1) < wanted);
        }
    }
}

fn made(assorted: &str, beads: &str) -> Design {
    let text = format!(
        "festoon: 1\ntitle: Assorted\nkind: necklace\nbeads:
  small: {{ shape: round, size: 6 mm, hole: 1 mm, colour: '#aa3355', mass: 0.25 g }}
  middle: {{ shape: round, size: 8 mm, hole: 1 mm, colour: '#3355aa', mass: 0.5 g }}
  large: {{ shape: round, size: 10 mm, hole: 1 mm, colour: '#55aa33', mass: 1 g }}
cords: {{ silk: {{ kind: silk, diameter: 0.4 mm }} }}
assorted: {{ lot: {{ {assorted} }} }}
strands: [{{ name: s, cord: silk, ends: knot, length: 900 mm, beads: [{beads}] }}]
price: {{ labour: 1 h, rate: 10 }}
"
    );
    let (pattern, remarks) = pattern::read(&Source::new("assorted", text));
    let (design, more) = resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    design.unwrap_or_else(|| panic!("{more:?}"))
}

fn line<'a>(list: &'a Materials, id: &str) -> &'a Line {
    list.lines.iter().find(|line| line.id == id).unwrap()
}

fn left(list: &Materials, id: &str) -> u64 {
    line(list, id).within.as_ref().unwrap().left_over
}

const STRAND: &str =
    "sold: { by: graduated strand, length: 40 cm, price: 30 }, holds: { small: 24, middle: 16, large: 9 }";

/// 20, 10 and 9 beads: all are on one strand for 30, which leaves 4, 6 and none, so that no large one is spare. Of its 49
/// beads 39 are used: 30 x 39 / 49 = 23.88 for one piece. A tenth large one takes a second strand.
#[test]
fn a_graduated_strand_is_bought_for_all_its_sizes_at_once() {
    let list = materials(&made(STRAND, "20 small, 10 middle, 9 large"), &Order::default());
    let buy = line(&list, "lot").buy.clone().unwrap();
    assert_eq!((buy.lots, buy.unit, buy.lot), (1, SoldAs::Strand, Amount::Count(49)));
    assert_eq!((buy.bought, buy.used), (Some(Money::coins(3000)), Some(Money::coins(2388))));
    assert_eq!((list.bought(), list.used()), (Money::coins(3000), Money::coins(2388)));
    assert_eq!(["small", "middle", "large"].map(|id| left(&list, id)), [4, 6, 0]);
    assert_eq!(["small", "middle", "large"].map(|id| line(&list, id).spare), [1, 1, 0].map(Amount::Count));
    let price = list.suggestion.unwrap();
    assert_eq!((price.materials, price.unpriced.as_slice()), (Money::coins(2388), &["silk".to_owned()][..]));
    let more = materials(&made(STRAND, "20 small, 10 middle, 10 large"), &Order::default());
    assert_eq!(line(&more, "lot").buy.as_ref().unwrap().lots, 2);
    assert_eq!(["small", "middle", "large"].map(|id| left(&more, id)), [28, 22, 8]);
}

/// Two large ones in hand are enough for one strand; a strand in hand as well, and nothing is bought.
#[test]
fn what_is_in_hand_is_taken_first() {
    let design = made(STRAND, "20 small, 10 middle, 9 large");
    let large = Stash::default().with(Article::Bead(nth(2)), Amount::Count(2));
    let list = materials(&design, &Order { stash: large.clone(), ..Order::default() });
    assert_eq!(line(&list, "lot").buy.as_ref().unwrap().lots, 1);
    assert_eq!(["small", "middle", "large"].map(|id| left(&list, id)), [4, 6, 2]);
    let stash = large.with(Article::Assorted(nth(0)), Amount::Count(1));
    let list = materials(&design, &Order { stash, ..Order::default() });
    assert_eq!((line(&list, "lot").buy.as_ref().unwrap().lots, list.bought()), (0, Money::ZERO));
    assert_eq!(left(&list, "small"), 4);
}

/// In the parts 2 : 1 : 1 a bead of the mix weighs (2 x 0.25 + 0.5 + 1) / 4 = 0.5 g: a bag of 60 g holds 120.
#[test]
fn a_mix_by_mass_holds_as_many_as_weigh_so_much() {
    let design = made(
        "sold: { by: mix, mass: 60 g, price: 8 }, holds: { small: 2, middle: 1, large: 1 }",
        "20 small, 10 middle",
    );
    assert_eq!(design.assorted[nth(0)].beads, 120);
    let list = materials(&design, &Order::default());
    let buy = line(&list, "lot").buy.clone().unwrap();
    // 21 of one in two ask for 80 beads or fewer, 11 of one in four for 92: both are in a bag, in which 60 and 30 are
    // to be expected.
    assert_eq!((buy.lots, buy.unit), (1, SoldAs::Bag));
    assert_eq!((left(&list, "small"), left(&list, "middle")), (40, 20));
}

/// A hank by pencil: 508 mm hold 84 beads of 6 mm, three such strands 252; 260 beads and 13 spare take two hanks.
#[test]
fn a_hank_is_so_many_strands() {
    let text = "festoon: 1\ntitle: Hank\nkind: necklace\nbeads:
  small: { shape: round, size: 6 mm, hole: 1 mm, colour: '#aa3355', mass: 0.25 g, sold: { by: hank, strands: 3, length: 20 in, price: 9 } }
cords: { silk: { kind: silk, diameter: 0.4 mm } }
strands: [{ name: s, cord: silk, ends: knot, length: 2 m, beads: [260 small] }]\n";
    let (pattern, _) = pattern::read(&Source::new("hank", text));
    let design = resolve(&pattern.unwrap(), &Choice::default()).0.unwrap();
    let list = materials(&design, &Order::default());
    let buy = line(&list, "small").buy.clone().unwrap();
    assert_eq!((buy.lots, buy.lot, buy.left_over), (2, Amount::Count(252), Amount::Count(504 - 260)));
    // 9 x 260 / 252 = 9.2857.
    assert_eq!((buy.used, buy.bought), (Some(Money::coins(929)), Some(Money::coins(1800))));
}
