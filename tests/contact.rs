//! Strands that touch lie beside one another, in balance.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

#[path = "support/chain.rs"]
mod chain;
#[path = "support/turned.rs"]
mod turned;

use chain::as_it_hangs;
use festoon::design::{self, Choice, Design, nth};
use festoon::drape::chain::{Chain, Content};
use festoon::drape::hang::Link;
use festoon::drape::{Drape, Hung, hang, hang_alone};
use festoon::geometry::Point;
use festoon::pattern;
use festoon::source::Source;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use turned::turned;

/// What outlines are known to: a round one stands out from its polygon by 0.02 mm, on both sides of a gap.
const KNOWN: f64 = 0.04;
/// How deep balls, which are known exactly, may lie in one another: rounds end below 0.01 mm, and finer links that are laid
/// along those found turn by as much as these miss their end.
const REST: f64 = 0.015;
/// Length at either end along which strands from one point may lie in one another.
const ENDS: f64 = 25.0;

const STOCK: &str = "
beads:
  ball: { name: ball, shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, colour: '#336699' }
  six: { name: six, shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
  lead: { name: lead, shape: round, size: 10 mm, hole: 1 mm, mass: 6 g, colour: '#333333' }
  seed: { name: seed, shape: seed, size: 8/0, colour: '#bfe0dc' }
  cube: { name: cube, shape: cube, size: 4 mm, hole: 1 mm, mass: 0.2 g, colour: '#996633' }
  cone: { name: cone, shape: bicone, size: 5 mm, hole: 1 mm, mass: 0.2 g, colour: '#996633' }
  oval: { name: oval, shape: oval, size: 5 x 7 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
  disc: { name: disc, shape: rondelle, size: 6 x 3 mm, hole: 1 mm, mass: 0.2 g, colour: '#333333' }
cords:
  wire: { name: wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, colour: '#aaaaaa' }
";

/// Strands of a length in mm, each filled or strung with a list of beads.
fn design(strands: &[(f64, String, &str)]) -> Design {
    strung(STOCK, strands)
}

/// The same on cord that is limp.
fn limp(strands: &[(f64, String, &str)]) -> Design {
    strung(&STOCK.replace("kind: wire", "kind: thread"), strands)
}

fn strung(stock: &str, strands: &[(f64, String, &str)]) -> Design {
    let one = |(at, (length, beads, settle)): (usize, &(f64, String, &str))| {
        format!(
            "  - {{ name: s{at}, cord: wire, length: {length} mm, ends: knot, beads: [{beads}], settle: {settle} }}\n"
        )
    };
    let strands: String = strands.iter().enumerate().map(one).collect();
    let text =
        format!("festoon: 1\ntitle: test\nkind: necklace\n{stock}strands:\n{strands}wear: {{ neck base: 370 mm }}\n");
    let (pattern, remarks) = pattern::read(&Source::new("test", text));
    let (design, more) = design::resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    design.unwrap_or_else(|| panic!("{more:?}"))
}

fn filled(length: f64, bead: &str) -> (f64, String, &str) {
    (length, format!("{{ repeat: fill, of: [{bead}] }}"), "fill")
}

/// Two strands that would lie in one another along one side, and the same strung the other way round.
fn crowded() -> [Design; 2] {
    crowded_on(design)
}

fn crowded_on(design: fn(&[(f64, String, &str)]) -> Design) -> [Design; 2] {
    let of = |inner: &str| design(&[(400.0, inner.to_owned(), "slide"), filled(426.0, "six")]);
    [
        of("{ repeat: 12, of: [cone, 2 ball] }, { repeat: 10, of: [six, 2 ball] }"),
        of("{ repeat: 10, of: [2 ball, six] }, { repeat: 12, of: [2 ball, cone] }"),
    ]
}

/// The strands' links as they hang.
fn chains(design: &Design, drape: &Drape) -> Vec<Chain> {
    let strands = design.strands.iter().zip(&drape.strands);
    strands.map(|(strand, hung)| as_it_hangs(design, strand, hung)).collect()
}

/// Potential energy in N mm.
fn energy(chains: &[Chain], joints: &[Vec<Point>]) -> f64 {
    let one = |(chain, joints): (&Chain, &Vec<Point>)| -> f64 {
        let places = chain.links.iter().zip(joints.windows(2));
        places.map(|(link, pair)| link.weight * pair[0].between(pair[1], link.centre).y).sum()
    };
    chains.iter().zip(joints).map(one).sum()
}

fn places(drape: &Drape) -> Vec<Vec<Point>> {
    drape.strands.iter().map(|hung| hung.joints.iter().map(|joint| joint.at).collect()).collect()
}

/// Where the strands would be if each hung alone.
fn alone(chains: &[Chain], drape: &Drape) -> Vec<Vec<Point>> {
    let one = |(chain, hung): (&Chain, &Hung)| chain.hang(hung.ends[1] - hung.ends[0], None).unwrap().joints;
    chains.iter().zip(&drape.strands).map(one).collect()
}

/// Every link is as long as it is, in tension or not.
fn assert_whole(design: &Design, drape: &Drape) {
    for (hung, chain) in drape.strands.iter().zip(chains(design, drape)) {
        for (pair, Link { length, .. }) in hung.joints.windows(2).zip(&chain.links) {
            let off = pair[0].at.distance(pair[1].at) - length;
            assert!(off.abs() < 1e-6, "{pair:?} {off}");
        }
    }
}

#[test]
fn strands_that_touch_lie_beside_one_another() {
    let [design, _] = crowded();
    let drape = hang(&design, None).unwrap();
    assert!(drape.unrest.is_none() && !drape.presses.is_empty(), "{:?}", drape.unrest);
    assert!(drape.clearances[0].least.abs() < KNOWN, "{:?}", drape.clearances);
    assert_whole(&design, &drape);
    // Contact takes places away: the lowest place of all is no lower for it.
    let chains = chains(&design, &drape);
    assert!(energy(&chains, &places(&drape)) > energy(&chains, &alone(&chains, &drape)));
}

#[test]
fn the_mirrored_piece_lies_in_the_mirror() {
    let [one, other] = crowded().map(|design| hang(&design, None).unwrap());
    for (hung, other) in one.strands.iter().zip(&other.strands) {
        for (seat, other) in hung.seats.iter().zip(other.seats.iter().rev()) {
            let across = (seat.centre.x + other.centre.x - one.span).abs();
            assert!(across < 0.05 && (seat.centre.y - other.centre.y).abs() < 0.05, "{seat:?} {other:?}");
        }
    }
}

/// Statics, as in any textbook: of bodies at rest that touch one another and nothing else, the ends carry
/// the whole weight, and the pulls across them are in balance. Limp cord pulls along itself alone.
#[test]
fn ends_of_strands_in_contact_carry_the_whole_weight() {
    let designs = [
        crowded_on(limp).into_iter().next().unwrap(),
        limp(&[filled(450.0, "ball"), filled(464.0, "ball"), filled(478.0, "ball")]),
    ];
    for design in designs {
        let drape = hang(&design, None).unwrap();
        assert!(!drape.presses.is_empty());
        let chains = chains(&design, &drape);
        let mut sum = Point::ORIGIN;
        for hung in &drape.strands {
            let joints = &hung.joints;
            let last = joints.len() - 1;
            let ends = [(hung.tension.first, 1, 0), (hung.tension.last, last - 1, last)];
            for (tension, from, to) in ends {
                let way = joints[to].at - joints[from].at;
                sum = sum + way * (tension / way.length());
            }
        }
        // What weighs on the first and the last joint is carried by the ends themselves.
        let weight: f64 = chains.iter().flat_map(|chain| &chain.links).map(|link| link.weight).sum();
        let of_ends = |chain: &Chain| {
            let (first, last) = (chain.links[0], chain.links[chain.links.len() - 1]);
            first.weight * (1.0 - first.centre) + last.weight * last.centre
        };
        let carried = sum.y + chains.iter().map(of_ends).sum::<f64>();
        assert!((carried / weight - 1.0).abs() < 1e-4, "{carried} {weight}");
        assert!(sum.x.abs() < 1e-4 * weight, "{}", sum.x);
    }
}

#[test]
fn strands_that_do_not_touch_hang_as_if_alone() {
    let apart = design(&[(450.0, "30 ball".to_owned(), "slide"), (560.0, "30 six".to_owned(), "slide")]);
    let drape = hang(&apart, None).unwrap();
    assert!(drape.presses.is_empty());
    assert_eq!(places(&drape), places(&hang_alone(&apart, None).unwrap()));
}

#[test]
fn strands_without_room_lie_over_one_another_and_the_rest_side_by_side() {
    let three = design(&[filled(450.0, "seed"), filled(450.0, "seed"), filled(480.0, "ball")]);
    let drape = hang(&three, None).unwrap();
    assert!(drape.unrest.is_none());
    assert!(drape.clearances[0].touching > 0.9 && drape.clearances[0].hardest == 0.0, "{:?}", drape.clearances);
    assert!(drape.clearances[1].least > -KNOWN, "{:?}", drape.clearances);
    assert!(drape.presses.iter().all(|press| press.between != [nth(0), nth(1)] && press.force > 0.0));
}

/// Lists of beads, by number.
const LISTS: [&str; 7] = ["ball", "seed", "cube", "six", "cone, seed", "oval, ball", "2 disc, six"];

/// Round beads, which part nowhere.
const ROUND: [&str; 3] = ["ball", "six", "lead, 3 ball"];
/// How much all that hangs may come to lie lower, in mm.
const RISES: f64 = 1e-6;

/// Middle and radius of each bead that is a link.
fn balls(design: &Design, strand: usize, chain: &Chain, joints: &[Point]) -> Vec<(Point, f64)> {
    let strand = &design.strands[nth(strand)];
    let links = chain.pieces.iter().zip(&chain.links).zip(joints.windows(2));
    let ball = |((content, link), pair): ((&Content, &Link), &[Point])| {
        let Content::Bit(train, bit) = *content else { return None };
        let bead = strand.trains[train].bits[bit].what.bead()?;
        Some((pair[0].between(pair[1], link.centre), design.beads[bead].across.value() / 2.0))
    };
    links.filter_map(ball).collect()
}

/// How deep balls of two strands lie in one another away from their ends, in mm.
fn deepest(design: &Design, chains: &[Chain], rest: &[Vec<Point>]) -> f64 {
    let amid = |at: usize| {
        let (first, last) = (rest[at][0], rest[at][rest[at].len() - 1]);
        let mut balls = balls(design, at, &chains[at], &rest[at]);
        balls.retain(|(middle, _)| middle.distance(first).min(middle.distance(last)) > ENDS);
        balls
    };
    let (one, other) = (amid(0), amid(1));
    let pairs = one.iter().flat_map(|one| other.iter().map(move |other| (one, other)));
    pairs.map(|(one, other)| one.1 + other.1 - one.0.distance(other.0)).fold(f64::NEG_INFINITY, f64::max)
}

/// Whether no bead comes to lie deeper in one of the other strand than it lies.
fn is_allowed(design: &Design, chains: &[Chain], [rest, moved]: [&[Vec<Point>]; 2]) -> bool {
    let of = |joints: &[Vec<Point>]| [0, 1].map(|at| balls(design, at, &chains[at], &joints[at]));
    let ([one, other], [went, stayed]) = (of(rest), of(moved));
    let pairs = one.iter().zip(&went).flat_map(|one| other.iter().zip(&stayed).map(move |other| (one, other)));
    pairs.into_iter().all(|((was, is), (before, now))| {
        let apart = was.1 + before.1;
        is.0.distance(now.0) >= was.0.distance(before.0).min(apart)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, rng_seed: RngSeed::Fixed(11), ..ProptestConfig::default() })]

    /// Strands either lie side by side, without overlap, or one over the other, or it is said that they came to
    /// no rest; and each is as long as it is.
    #[test]
    fn no_strand_lies_in_another(first in 0..7_usize, second in 0..7_usize, more in 4.0..30.0_f64, length in 300.0..420.0_f64) {
        let design = design(&[filled(length, LISTS[first]), filled(length + more, LISTS[second])]);
        let drape = hang(&design, None).unwrap();
        assert_whole(&design, &drape);
        if drape.unrest.is_none() && !drape.presses.is_empty() {
            prop_assert!(drape.clearances[0].least > -KNOWN, "{:?}", drape.clearances);
        }
        let over = drape.presses.is_empty() && drape.clearances[0].least < -KNOWN;
        prop_assert!(!over || more < 20.0, "room enough: {:?}", drape.clearances);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, rng_seed: RngSeed::Fixed(12), ..ProptestConfig::default() })]

    /// Contact takes places away from limp strands: their lowest place of all is no lower for it, and a place near by that
    /// they may take is none lower either.
    #[test]
    fn contact_lowers_nothing_and_no_move_that_it_allows_does(
        [first, second] in [0..3_usize, 0..3_usize], more in 6.0..30.0_f64, length in 300.0..420.0_f64,
        [at, turn] in [0.0..1.0_f64, -0.05..0.05_f64], which in 0..2_usize,
    ) {
        let design = limp(&[filled(length, ROUND[first]), filled(length + more, ROUND[second])]);
        let drape = hang(&design, None).unwrap();
        prop_assume!(drape.unrest.is_none() && !drape.presses.is_empty());
        let (chains, rest) = (chains(&design, &drape), places(&drape));
        let deep = deepest(&design, &chains, &rest);
        prop_assert!(deep < REST, "{deep} mm in one another");
        let weight: f64 = chains.iter().flat_map(|chain| &chain.links).map(|link| link.weight).sum();
        let lowest = energy(&chains, &rest);
        prop_assert!(lowest > energy(&chains, &alone(&chains, &drape)) - RISES * weight);
        let start = (at * (chains[which].links.len() - 3) as f64) as usize;
        let Some(turned) = turned(&chains[which].links, &rest[which], start, turn) else { return Ok(()) };
        let mut moved = rest.clone();
        moved[which] = turned;
        if is_allowed(&design, &chains, [&rest, &moved]) {
            let rise = energy(&chains, &moved) - lowest;
            prop_assert!(rise > -RISES * weight, "lowered by {} mm", -rise / weight);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, rng_seed: RngSeed::Fixed(13), ..ProptestConfig::default() })]

    /// The weights of a stiff strand, and what its cord holds that is bent, are together no less at a place near by.
    #[test]
    fn no_move_of_a_stiff_strand_lowers_it(
        first in 0..3_usize, length in 200.0..420.0_f64, stiffness in 0.5..30.0_f64,
        [at, turn] in [0.0..1.0_f64, -0.05..0.05_f64],
    ) {
        let stiff = format!("kind: wire, stiffness: {stiffness} N mm²");
        let design = strung(&STOCK.replace("kind: wire", &stiff), &[filled(length, ROUND[first])]);
        let drape = hang(&design, None).unwrap();
        let (chains, rest) = (chains(&design, &drape), places(&drape));
        let weight: f64 = chains[0].links.iter().map(|link| link.weight).sum();
        let start = (at * (chains[0].links.len() - 3) as f64) as usize;
        let Some(moved) = turned(&chains[0].links, &rest[0], start, turn) else { return Ok(()) };
        let [before, after] = [&rest[0], &moved].map(|joints| {
            energy(&chains, std::slice::from_ref(joints)) + bent(&chains[0], joints)
        });
        prop_assert!(after - before > -RISES * weight, "lowered by {} mm", (before - after) / weight);
    }
}

/// What stiff cord holds that bends evenly from the middle of each link to that of the next, in N mm.
fn bent(chain: &Chain, joints: &[Point]) -> f64 {
    let ways = joints.windows(2).map(|pair| pair[1] - pair[0]);
    let ways: Vec<Point> = ways.filter(|way| way.length() > 1e-6).collect();
    let bend = |pair: &[Point]| {
        let turn = libm::atan2(pair[0].x * pair[1].y - pair[0].y * pair[1].x, pair[0].dot(pair[1]));
        chain.stiffness * turn * turn / (pair[0].length() + pair[1].length())
    };
    ways.windows(2).map(bend).sum()
}
