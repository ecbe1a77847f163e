//! Rows that are worked out from a rule, against counts, orders and lengths found another way.

use std::collections::BTreeMap;

use festoon::design::{Choice, Design, What, nth, resolve};
use festoon::materials::CutFor;
use festoon::palette::Palette;
use festoon::pattern;
use festoon::source::Source;
use festoon::units::UnitStyle;

fn made(strand: &str) -> Design {
    let text = format!(
        "festoon: 1
title: Worked
kind: necklace
beads:
  a: {{ shape: round, size: 3 mm, hole: 0.8 mm, material: glass, colour: '#aa3355' }}
  b: {{ shape: round, size: 4 mm, hole: 0.8 mm, material: glass, colour: '#3355aa' }}
  c: {{ shape: round, size: 5 mm, hole: 0.8 mm, material: glass, colour: '#55aa33' }}
  d: {{ shape: round, size: 7 mm, hole: 0.8 mm, material: glass, colour: '#eeaa33' }}
cords: {{ silk: {{ kind: silk, diameter: 0.4 mm }} }}
findings: {{ cover: {{ kind: knot cover, length: 4 mm }} }}
strands: [{{ name: s, cord: silk, ends: cover, {strand} }}]
"
    );
    let (pattern, remarks) = pattern::read(&Source::new("worked", text));
    let (design, more) = resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    design.unwrap_or_else(|| panic!("{strand}: {more:?}"))
}

/// The row as ids.
fn row(strand: &str) -> String {
    let design = made(strand);
    let bead = |what: &What| what.bead().map(|at| design.beads[at].id.clone());
    design.strands[nth(0)].bits().filter_map(|bit| bead(&bit.what)).collect()
}

fn random(beads: u32, of: &str, seed: u32, apart: &str) -> String {
    row(&format!("beads: [{{ random: {beads}, of: {{ {of} }}, seed: {seed}{apart} }}]"))
}

/// Largest remainder, worked by hand: of 17 beads in the parts 3 : 2 : 2 the quotas are 7.29, 4.86 and 4.86.
#[test]
fn counts_are_those_of_the_largest_remainder() {
    let row = random(17, "a: 3, b: 2, c: 2", 5, "");
    assert_eq!(['a', 'b', 'c'].map(|bead| row.matches(bead).count()), [7, 5, 5], "{row}");
}

#[test]
fn the_same_seed_gives_the_same_row_and_another_another() {
    let row = |seed| random(60, "a: 2, b: 2, c: 1", seed, "");
    assert_eq!(row(7), row(7));
    assert!((8..40).all(|seed| row(seed) != row(7)));
    // Kept, so that a row that was sold stays what it is.
    assert_eq!(random(20, "a: 2, b: 2, c: 1", 7, ""), "abacbababacbcbcababa");
}

#[test]
fn beads_stay_as_far_apart_as_is_said() {
    for (apart, least) in [("", 1), (", apart: 2", 2), (", apart: 1", 1)] {
        for seed in 1..40 {
            let row = random(30, "a: 1, b: 1, c: 1, d: 1", seed, apart);
            let kept = |bead: char| {
                let at: Vec<_> = row.match_indices(bead).map(|(at, _)| at).collect();
                at.windows(2).all(|pair| pair[1] - pair[0] > least)
            };
            assert!("abcd".chars().all(kept), "{row}");
        }
    }
    let some: Vec<_> = (1..40).map(|seed| random(30, "a: 3, b: 1", seed, ", apart: { b: 1 }")).collect();
    assert!(some.iter().all(|row| !row.contains("bb")) && some.iter().any(|row| row.contains("aaaa")));
    assert!((1..40).any(|seed| random(30, "a: 1, b: 1", seed, ", apart: 0").contains("aaa")));
}

/// Every order of three a, two b and one c of which none touch stands as often as any other. All are found by
/// trying each of the 60 orders; the statistic of Pearson's chi-square for 1,000 rows stays below what 9 degrees of
/// freedom exceed once in a thousand, 27.88 (scipy.stats.chi2.ppf(0.999, 9) = 27.877).
#[test]
fn all_orders_are_equally_likely() {
    let mut found: BTreeMap<String, u32> = BTreeMap::new();
    for seed in 1..=1000 {
        *found.entry(random(6, "a: 3, b: 2, c: 1", seed, "")).or_default() += 1;
    }
    let mut orders = Vec::new();
    all_orders("", [3, 2, 1], &mut orders);
    assert_eq!(orders.len(), 10, "{orders:?}");
    let expected = 1000.0 / orders.len() as f64;
    let square = |order: &String| (f64::from(found.get(order).copied().unwrap_or(0)) - expected).powi(2) / expected;
    let chi: f64 = orders.iter().map(square).sum();
    assert!(found.len() == orders.len() && chi < 27.88, "{chi}: {found:?}");
}

fn all_orders(begun: &str, left: [u32; 3], found: &mut Vec<String>) {
    if left == [0; 3] {
        found.push(begun.to_owned());
    }
    for (at, bead) in ["a", "b", "c"].iter().enumerate().filter(|(at, bead)| left[*at] > 0 && !begun.ends_with(**bead))
    {
        let mut rest = left;
        rest[at] -= 1;
        all_orders(&format!("{begun}{bead}"), rest, found);
    }
}

#[test]
fn a_fade_goes_from_the_one_to_the_other() {
    assert_eq!(row("beads: [{ fade: 12, from: a, to: b }]"), "aaababababbb");
}

/// Rows that fill their strand against every count there is: counts by Hamilton's method with remainders in floating
/// point, lengths by a sum. Each bead of diameter D takes sqrt(D² - 0.8²) mm, a knot lies between any two, and both
/// ends take 4 mm. In the parts 3 : 3 : 1, 11 beads may be shorter than 10, for they have one long bead less: then only
/// the larger count fits.
#[test]
fn a_row_in_no_order_takes_all_the_beads_that_fit() {
    let pitch = [3.0, 4.0, 5.0, 7.0].map(|across: f64| (across.powi(2) - 0.64).sqrt());
    let mut wavered = 0;
    for (parts, knot) in [([3, 3, 0, 1], 0.0), ([2, 2, 1, 0], 0.0), ([1, 1, 1, 1], 1.2), ([3, 3, 0, 1], 0.7)] {
        let shares = "abcd".chars().zip(parts).filter(|(_, part)| *part > 0);
        let of: Vec<_> = shares.map(|(bead, part)| format!("{bead}: {part}")).collect();
        let long = |beads: u32| {
            let counts = hamilton(parts, beads);
            let made = counts.iter().zip(parts).all(|(count, part)| part == 0 || *count > 0);
            let sum: f64 = counts.iter().zip(pitch).map(|(count, pitch)| f64::from(*count) * pitch).sum();
            made.then(|| sum + knot * f64::from(beads - 1))
        };
        for step in 0..90_u32 {
            let room = 30.0 + 0.23 * f64::from(step);
            let fits = |beads: &u32| long(*beads).is_some_and(|long| long <= room);
            let most = (1..200).rev().find(fits).unwrap();
            wavered += u32::from((1..most).any(|fewer| long(fewer).is_some_and(|long| long > room)));
            let knots = if knot > 0.0 { format!(", knots: {knot} mm") } else { String::new() };
            let filled = format!("{{ random: fill, of: {{ {} }}, seed: 3 }}", of.join(", "));
            let row = row(&format!("beads: [{filled}], settle: fill, length: {} mm{knots}", room + 8.0));
            let counts = ['a', 'b', 'c', 'd'].map(|bead| u32::try_from(row.matches(bead).count()).unwrap());
            assert_eq!(counts, hamilton(parts, most), "{of:?} in {room}: {row}");
        }
    }
    assert!(wavered > 0, "no room lay between a count that is too long and a larger one that fits");
}

fn hamilton(parts: [u32; 4], beads: u32) -> [u32; 4] {
    let all: u32 = parts.iter().sum();
    let quota = parts.map(|part| f64::from(part) * f64::from(beads) / f64::from(all));
    let mut counts = quota.map(|quota| (quota + 1e-9).floor() as u32);
    let mut order: Vec<usize> = (0..4).collect();
    let left = |kind: usize| ((quota[kind] - f64::from(counts[kind])) * 1e6).round() as i64;
    order.sort_by_key(|kind| -left(*kind));
    let missing = beads - counts.iter().sum::<u32>();
    order.iter().take(missing as usize).for_each(|kind| counts[*kind] += 1);
    counts
}

#[test]
fn a_row_that_fills_is_the_row_of_its_count() {
    let of = "of: { a: 2, b: 2, c: 1 }, seed: 7";
    let filled = row(&format!("beads: [{{ random: fill, {of} }}], settle: fill, length: 90 mm"));
    let counted = row(&format!("beads: [{{ random: {}, {of} }}], settle: fill", filled.len()));
    assert_eq!(filled, counted);
    let faded = row("beads: [2 d, { fade: fill, from: a, to: b }], settle: fill, length: 90 mm");
    // What two beads of 7 mm leave holds so many pairs of 3 and 4 mm, and perhaps one more of 3 mm.
    let short = |across: f64| (across.powi(2) - 0.64).sqrt();
    let (room, pair) = (82.0 - 2.0 * short(7.0), short(3.0) + short(4.0));
    let pairs = (room / pair).floor();
    let one_more = if room - pairs * pair >= short(3.0) { 1 } else { 0 };
    assert_eq!(faded.len() - 2, 2 * pairs as usize + one_more);
}

/// Length in mm of a graduated row by its counts on a side: each bead of diameter D takes √(D² − h²), the distance
/// between the rims of its hole, and a knot of 1.2 mm lies between beads.
fn taken(side: [u32; 4], knot: f64) -> f64 {
    let one = |across: f64| (across * across - 0.64).sqrt();
    let sides: f64 = side.iter().zip([3.0, 4.0, 5.0, 7.0]).map(|(count, across)| f64::from(*count) * one(across)).sum();
    let beads: u32 = 2 * side.iter().sum::<u32>() + 1;
    2.0 * sides + one(7.0) + f64::from(beads - 1) * knot
}

/// The longest row within a length, by trying all counts that differ by at most one.
fn longest(room: f64, knot: f64) -> f64 {
    let mut best: f64 = 0.0;
    for side in
        (0..16_u32.pow(4)).map(|all| [all % 16, all / 16 % 16, all / 256 % 16, all / 4096].map(|count| count + 1))
    {
        let even = side.iter().max().unwrap_or(&0) - side.iter().min().unwrap_or(&0) <= 1;
        let length = taken(side, knot);
        if even && length <= room && length > best {
            best = length;
        }
    }
    best
}

#[test]
fn graduated_rows_are_the_longest_that_have_room() {
    for (length, knot) in [(420.0, 1.2), (180.0, 1.2), (300.0, 0.0)] {
        let knots = if knot > 0.0 { format!(", knots: {knot} mm") } else { String::new() };
        let best = longest(length, knot);
        // By the row's own length, and as long as the strand has room between its two covers.
        let own = made(&format!("beads: [{{ graduate: [a, b, c, d], length: {length} mm }}]{knots}"));
        let filled =
            made(&format!("length: {} mm, settle: fill, beads: [{{ graduate: [a, b, c, d] }}]{knots}", length + 8.0));
        for design in [own, filled] {
            let strand = &design.strands[nth(0)];
            assert!((strand.finished.value() - 8.0 - best).abs() < 1e-6, "{length}: {} {best}", strand.finished);
            let row: String =
                strand.bits().filter_map(|bit| bit.what.bead()).map(|at| design.beads[at].id.clone()).collect();
            assert_eq!(row, row.chars().rev().collect::<String>(), "symmetrical about the middle");
            assert!(row.chars().take(row.len() / 2).is_sorted(), "{row}");
        }
    }
}

/// Links of 3.3 mm: what follows four bare ones hangs in the fifth, with its middle at 4.5 × 3.3 = 14.85 mm, and
/// the next five links on; 14 links measure 14 × 3.3 = 46.2 mm.
#[test]
fn dangles_hang_in_the_links_that_are_counted() {
    let text = "festoon: 1
title: Linked
kind: bracelet
beads: { tip: { shape: round, size: 6 mm, hole: 1 mm, drilled: tip, material: glass, colour: '#aa3355' } }
cords: { chain: { kind: chain, links: 10 = 33 mm, diameter: 3 mm } }
findings: { ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm } }
strands: [{ name: s, cord: chain, beads: [{ repeat: 2, of: [{ links: 4 }, { dangle: [tip], on: ring }] }, { links: 4 }] }]
";
    let (pattern, remarks) = pattern::read(&Source::new("linked", text.to_owned()));
    let design = resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default()).0.expect("sound");
    let strand = &design.strands[nth(0)];
    let mut at = 0.0;
    let mut hung = Vec::new();
    for bit in strand.bits() {
        if let What::Dangle(dangle) = &bit.what {
            hung.push((at + bit.before, dangle.drop));
        }
        at += bit.length();
    }
    // A hole's width of the bead stands up into the ring: 4 + 6 - 1 mm.
    let expected = [(14.85, 9.0), (31.35, 9.0)];
    let near = |one: &(f64, f64), other: &(f64, f64)| (one.0 - other.0).abs() < 1e-9 && (one.1 - other.1).abs() < 1e-9;
    assert!(hung.len() == 2 && hung.iter().zip(&expected).all(|(one, other)| near(one, other)), "{hung:?}");
    assert!((strand.finished.value() - 46.2).abs() < 1e-9);
    assert_eq!(
        festoon::steps::english::chart::whole(&design, strand, UnitStyle::Both).to_string(),
        "(4 links bare) (dangle: 1A on a ring), twice, then (4 links bare)"
    );
}

/// 80 threads of 70 mm, 5 % more for turns that lie on one another, and 300 mm for neck and loop: 80 × 70 × 1.05 + 300
/// = 6,180 mm of silk, which weigh 2.472 g at 0.4 g/m.
#[test]
fn a_tassel_takes_a_thread_as_long_as_itself_for_each_that_hangs() {
    let text = "festoon: 1
title: Tasselled
kind: necklace
beads: { a: { shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: '#aa3355' } }
cords: { silk: { kind: silk, diameter: 0.5 mm, mass: 0.4 g/m, colour: '#a2433c' } }
findings:
  ring: { kind: jump ring, inside: 4 mm, wire: 0.8 mm }
  tassel: { kind: tassel, length: 70 mm, threads: 80, cord: silk }
strands: [{ name: s, cord: silk, ends: knot, beads: [40 a, { dangle: [tassel], on: ring }, 40 a] }]
";
    let (pattern, remarks) = pattern::read(&Source::new("tasselled", text.to_owned()));
    let pattern = pattern.unwrap_or_else(|| panic!("{remarks:?}"));
    let design = resolve(&pattern, &Choice::default()).0.expect("sound");
    let tassel = design.findings.find(|finding| finding.tassel().is_some()).expect("it hangs");
    assert!((design.findings[tassel].mass.value() - 2.472).abs() < 1e-9);
    let palette = Palette::of(&pattern, &design);
    assert_eq!(palette.finding(tassel), palette.cord(nth(0)));
    let list = festoon::materials::materials(&design, &festoon::materials::Order::default());
    let pieces: Vec<_> = list.cuttings[0].pieces().collect();
    assert!(
        pieces.iter().any(|piece| matches!(&piece.what, CutFor::Tassel(at, _) if *at == tassel)
            && (piece.length.value() - 6180.0).abs() < 1e-9),
        "{pieces:?}"
    );
    assert!(list.lines.iter().all(|line| line.id != "tassel"), "it is made, not bought");
}
