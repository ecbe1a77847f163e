//! Stiff cord against the textbook: what it makes of a kink, and beams that bend under their load.

#![allow(clippy::unwrap_used, reason = "a test without a shape fails")]

use festoon::drape::hang::{Hanging, Link, solve, solve_stiff};
use festoon::geometry::Point;
use proptest::prelude::*;

const BEAMS: &str = include_str!("oracles/data/bent_beams.csv");

/// Links that weigh nothing on both sides of a short one that does.
fn loaded(side: &[f64], weight: f64) -> Vec<Link> {
    let light = |length: &f64| Link { length: *length, weight: 0.0, centre: 0.5 };
    let heavy = Link { length: 0.02, weight, centre: 0.5 };
    let back = side.iter().rev().map(light);
    side.iter().map(light).chain([heavy]).chain(back).collect()
}

fn hung(links: &[Link], stiffness: f64, gap: f64) -> Hanging {
    solve_stiff(links, &vec![stiffness; links.len()], Point::new(gap, 0.0)).unwrap()
}

fn lowest(hanging: &Hanging) -> f64 {
    hanging.joints.iter().map(|joint| -joint.y).fold(0.0, f64::max)
}

/// Wire without weight under a tension T obeys B t" = T sin t, with t its angle from the pull: the pendulum's equation. From
/// a place where it is turned by a, it comes back to the pull as tan(t / 4) = tan(a / 4) exp(-s / sqrt(B / T)) (its
/// separatrix; any textbook of the elastica or the pendulum), whatever links it is cut in.
#[test]
fn a_kink_is_rounded_off_within_the_root_of_stiffness_over_tension() {
    let even = vec![0.2; 600];
    let uneven: Vec<f64> = (0..1200).map(|at| [0.16, 0.05, 0.1, 0.09][at % 4]).collect();
    for (side, stiffness, gap) in
        [(&even, 2.0, 150.0), (&uneven, 2.0, 150.0), (&even, 8.0, 210.0), (&uneven, 0.5, 60.0)]
    {
        let links = loaded(side, 0.4);
        let hanging = hung(&links, stiffness, gap);
        let pull = Point::new(hanging.across, hanging.up);
        let within = (stiffness / hanging.first).sqrt();
        let (steep, middle) = (pull.angle(), side.len());
        let mut gone = 0.01;
        for at in (0..middle).rev() {
            let (middle_of_link, told) = (gone + 0.5 * side[at], hanging.directions[at].angle() - steep);
            gone += side[at];
            let expected = 4.0 * libm::atan(libm::tan(-0.25 * steep) * libm::exp(-middle_of_link / within));
            assert!((told - expected).abs() < 4e-3, "{told} is not {expected} after {middle_of_link} mm of {within}");
        }
    }
}

/// A wire that bends over its middle, its ends free to come nearer to each other, is two wires clamped level there, with half
/// of the load at the end of each.
#[test]
fn a_beam_bends_as_the_table_of_large_deflections_says() {
    let (length, stiffness) = (100.0, 900.0);
    let side: Vec<f64> = (0..400).map(|at| [0.2, 0.3][at % 2]).collect();
    for row in BEAMS.lines().skip(1) {
        let fields: Vec<f64> = row.split(',').take(3).map(|field| field.parse().unwrap()).collect();
        let [weight, sinks, reaches] = fields.try_into().unwrap();
        let links = loaded(&side, 2.0 * weight * stiffness / (length * length));
        // As far apart as nothing pulls them.
        let (mut low, mut high) = (20.0, 2.0 * length);
        for _ in 0..50 {
            let middle = 0.5 * (low + high);
            *if hung(&links, stiffness, middle).across > 0.0 { &mut high } else { &mut low } = middle;
        }
        let found = lowest(&hung(&links, stiffness, low)) / length;
        assert!((found - sinks).abs() < 5e-4, "{weight}: sinks {found}, not {sinks}");
        assert!((0.5 * low / length - reaches).abs() < 5e-4, "{weight}: reaches {}, not {reaches}", 0.5 * low / length);
        // What is recalled of the printed table has three places.
        let recalled: Option<f64> = row.split(',').nth(3).and_then(|field| field.parse().ok());
        assert!(recalled.is_none_or(|recalled| (found - recalled).abs() < 1e-3), "{weight}: {found}, {recalled:?}");
    }
}

/// A beam on two props under its own small weight sinks by 5 w l⁴ / 384 B (any handbook).
#[test]
fn a_beam_sags_as_handbooks_say() {
    let (length, stiffness, weight) = (200.0, 2_000.0, 1e-4);
    let links = vec![Link { length: 0.5, weight: 0.5 * weight, centre: 0.5 }; 400];
    let sags = 5.0 * weight * length * length * length * length / (384.0 * stiffness);
    // Its ends come nearer to each other by 17 w² l⁷ / 40320 B² (the integral of half the slope's square).
    let nearer = 17.0 * weight * weight * length.powi(7) / (40_320.0 * stiffness * stiffness);
    let hanging = hung(&links, stiffness, length - nearer);
    assert!((lowest(&hanging) / sags - 1.0).abs() < 2e-3, "{} {sags}", lowest(&hanging));
    assert!(hanging.across.abs() < 0.02 * weight * length, "{}", hanging.across);
}

#[test]
fn cord_that_is_hardly_stiff_hangs_as_limp_cord_does() {
    let links = vec![Link { length: 4.0, weight: 1e-3, centre: 0.5 }; 100];
    let (limp, stiff) = (solve(&links, Point::new(128.0, 0.0)).unwrap(), hung(&links, 1e-6, 128.0));
    for (one, other) in limp.joints.iter().zip(&stiff.joints) {
        assert!(one.distance(*other) < 1e-3);
    }
    assert_eq!(limp, hung(&links, 0.0, 128.0));
}

#[test]
fn cord_turns_freely_where_it_has_no_stiffness() {
    let links = vec![Link { length: 1.0, weight: 1e-3, centre: 0.5 }; 100];
    let mut stiffness = vec![50.0; 101];
    let joined = [&links[..50], &[Link { length: 0.0, weight: 0.5, centre: 0.5 }], &links[50..]].concat();
    stiffness[50] = 0.0;
    let hanging = solve_stiff(&joined, &stiffness, Point::new(60.0, 0.0)).unwrap();
    let limp = solve(&joined, Point::new(60.0, 0.0)).unwrap();
    let turn = |hanging: &Hanging| hanging.directions[51].angle() - hanging.directions[49].angle();
    assert!(turn(&hanging) > turn(&limp), "{} {}", turn(&hanging), turn(&limp));
}

proptest! {
    /// Every link of any chain is in balance: the moments of the forces at its ends and those of its cord add up to nothing.
    #[test]
    fn links_are_in_balance(
        links in prop::collection::vec((0.0..8.0_f64, 0.0..0.02_f64, 0.0..1.0_f64), 20..80),
        share in 0.05..0.95_f64,
        stiffness in -2.0..4.0_f64,
    ) {
        let link = |(length, weight, centre): &(f64, f64, f64)| Link { length: length.max(0.05), weight: weight + 1e-4, centre: *centre };
        let links: Vec<Link> = links.iter().map(link).collect();
        let length: f64 = links.iter().map(|link| link.length).sum();
        let stiffness = libm::pow(10.0, stiffness);
        let hanging = hung(&links, stiffness, share * length);
        let cross = |a: Point, b: Point| a.x * b.y - a.y * b.x;
        let angles: Vec<f64> = hanging.directions.iter().map(|direction| direction.angle()).collect();
        let moment = |at: usize| {
            let turn = (angles[at + 1] - angles[at] + std::f64::consts::PI).rem_euclid(std::f64::consts::TAU) - std::f64::consts::PI;
            2.0 * stiffness * turn / (links[at].length + links[at + 1].length)
        };
        let (mut before, mut last) = (0.0, 0.0);
        for (at, link) in links.iter().enumerate() {
            let [start, end] = [before, before + link.weight].map(|below| Point::new(hanging.across, hanging.up + below));
            before += link.weight;
            let arm = hanging.directions[at] * link.length;
            let next = if at + 1 < links.len() { moment(at) } else { 0.0 };
            let left = link.centre * cross(arm, start) + (1.0 - link.centre) * cross(arm, end) + next - last;
            last = next;
            let scale = link.length * start.length().max(end.length()) + next.abs();
            prop_assert!(left.abs() < 1e-7 * scale.max(1e-3 * length), "{left} of {scale} in link {at}");
        }
    }
}
