//! The drape against statics and geometry from outside the project.
//!
//! Each table in `oracles/data` names its source in its last column. A chain of n equal links
//! with their weights in the middle misses the smooth catenary by less than 1.1/n² of its length up
//! to a length of four spans, which one test shows; with 20,000 links the tables are met to 10⁻⁶.

use festoon::drape::hang::{Hanging, Link, solve};
use festoon::drape::{ellipse, hang};
use festoon::geometry::Point;
use festoon::geometry::chord::Chord;
use festoon::geometry::taut::close;

/// The numbers of a table's rows; its last column, the source, is not a number.
fn rows(table: &str) -> Vec<Vec<f64>> {
    let number = |row: &str| row.split(',').map_while(|cell| cell.parse().ok()).collect();
    table.lines().skip(1).map(number).collect()
}

#[track_caller]
fn near(found: f64, expected: f64, share: f64) {
    assert!((found - expected).abs() <= share * expected.abs(), "{found} is not {expected}");
}

fn uniform(length: f64, weight: f64, links: usize) -> Vec<Link> {
    vec![Link { length: length / links as f64, weight: weight / links as f64, centre: 0.5 }; links]
}

/// Weightless cords of these lengths with these weights tied between them.
fn tied(lengths: &[f64], weights: &[f64]) -> Vec<Link> {
    let knot = |&weight: &f64| Link { length: 0.0, weight, centre: 0.5 };
    let cord = |&length: &f64| Link { length, weight: 0.0, centre: 0.5 };
    let mut links = vec![cord(&lengths[0])];
    for (weight, length) in weights.iter().zip(&lengths[1..]) {
        links.extend([knot(weight), cord(length)]);
    }
    links
}

fn sag(hanging: &Hanging) -> f64 {
    hanging.joints.iter().map(|joint| -joint.y).fold(0.0, f64::max)
}

/// Tensions in the cords of a tied chain.
fn tensions(links: &[Link], hanging: &Hanging) -> Vec<f64> {
    let mut up = hanging.up;
    let mut tensions = Vec::new();
    for link in links {
        up += link.weight;
        if link.length > 0.0 {
            tensions.push(libm::hypot(hanging.across, up));
        }
    }
    tensions
}

#[test]
fn uniform_chains_hang_in_catenaries() {
    let table = rows(include_str!("oracles/data/catenary_unit_table.csv"));
    assert_eq!(table.len(), 11);
    for row in table {
        let hanging = solve(&uniform(row[0], row[0], 20_000), Point::new(1.0, 0.0)).unwrap();
        near(hanging.across, row[1], 1e-6);
        near(sag(&hanging), row[2], 1e-6);
        near(hanging.first / hanging.across, row[3], 1e-6);
        near(hanging.last / hanging.across, row[3], 1e-6);
        near(libm::atan2(-hanging.up, hanging.across).to_degrees(), row[4], 1e-6);
        assert!(hanging.iterations < 20 && hanging.residual < 1e-9);
    }
}

#[test]
fn twice_the_links_leave_a_quarter_of_the_error() {
    for row in rows(include_str!("oracles/data/catenary_unit_table.csv")) {
        let error = |links| {
            let hanging = solve(&uniform(row[0], 1.0, links), Point::new(1.0, 0.0)).unwrap();
            sag(&hanging) - row[2]
        };
        near(error(200) / error(400), 4.0, 0.002);
        assert!(error(400).abs() < 1.1 * row[0] / f64::powi(400.0, 2));
    }
}

#[test]
fn equal_loads_at_equal_steps_across_hang_in_a_parabola() {
    const STEPS: usize = 1000;
    for row in rows(include_str!("oracles/data/catenary_unit_table.csv")) {
        let place = |step: usize| {
            let x = step as f64 / STEPS as f64;
            Point::new(x, 4.0 * row[5] * x * (x - 1.0))
        };
        let lengths: Vec<f64> = (0..STEPS).map(|step| place(step).distance(place(step + 1))).collect();
        near(lengths.iter().sum(), row[0], 1e-5);
        let hanging = solve(&tied(&lengths, &[1.0; STEPS - 1]), Point::new(1.0, 0.0)).unwrap();
        near(sag(&hanging), row[5], 1e-8);
    }
}

/// Slide set "6.7 Cables: Catenaries Example 1": 140 m at 3 kg/m between points 120 m apart.
#[test]
fn a_cable_between_level_supports() {
    let weight = 3.0 * 9.81;
    let hanging = solve(&uniform(140.0, 140.0 * weight, 20_000), Point::new(120.0, 0.0)).unwrap();
    near(hanging.across / weight, 61.44573, 1e-6);
    near(sag(&hanging), 31.69705, 1e-6);
    near(hanging.first, 2741.19, 2e-6);
}

/// Mathhelpforum thread 104833: the catenary through (±10, 6) with its vertex in the origin.
#[test]
fn a_catenary_through_two_points_and_its_vertex() {
    let hanging = solve(&uniform(24.188_203_47, 24.188_203_47, 20_000), Point::new(20.0, 0.0)).unwrap();
    near(hanging.across, 9.188_941_402, 1e-6);
    near(sag(&hanging), 6.0, 1e-6);
}

/// 2a sinh(d/2a) = sqrt(s² - h²) and x1 + x2 = a ln((s + h)/(s - h)); numbers for d = 20, h = 5 and
/// s = 20.7 computed from these outside the project.
#[test]
fn a_cable_between_unequal_supports() {
    let hanging = solve(&uniform(20.7, 20.7, 20_000), Point::new(20.0, 5.0)).unwrap();
    let (a, sum) = (61.917_293_0, 30.514_716_8);
    near(hanging.across, a, 1e-6);
    let first: f64 = 0.5 * (sum - 20.0);
    near(hanging.up, a * libm::sinh(first / a), 1e-5);
}

/// Beer and Johnston, *Vector Mechanics for Engineers: Statics*, problem 7.116 (7.92b): 360 lb,
/// 720 lb and 240 lb at 2 ft, 4 ft and 6 ft from A; E lies 8 ft from A and 2.4 ft below it.
#[test]
fn three_loads_between_unequal_supports() {
    let links = tied(&[2.990_666, 2.427_894, 2.025_068, 2.185_989], &[360.0, 720.0, 240.0]);
    let hanging = solve(&links, Point::new(8.0, -2.4)).unwrap();
    near(hanging.across, 850.0, 1e-5);
    for (joint, (x, depth)) in [(1, (2.0, 2.223_529)), (3, (4.0, 3.6)), (5, (6.0, 3.282_353))] {
        near(hanging.joints[joint].x, x, 1e-5);
        near(-hanging.joints[joint].y, depth, 1e-5);
    }
    for (found, expected) in tensions(&links, &hanging).into_iter().zip([1271.03, 1031.86, 860.65, 929.05]) {
        near(found, expected, 1e-5);
    }
}

/// The same book, problem 7.115 (7.89a): 600 lb at 4 ft and 450 lb at 8 ft of a span of 10 ft, with
/// a largest tension of 720 lb.
#[test]
fn two_loads_between_level_supports() {
    let links = tied(&[6.037_760, 4.274_661, 3.618_136], &[600.0, 450.0]);
    let hanging = solve(&links, Point::new(10.0, 0.0)).unwrap();
    near(hanging.across, 397.9950, 1e-5);
    near(-hanging.joints[1].y, 4.522_670, 1e-5);
    near(-hanging.joints[3].y, 3.015_113, 1e-5);
    near(tensions(&links, &hanging).into_iter().fold(0.0, f64::max), 720.0, 1e-5);
}

/// General cable theorem (Engineering LibreTexts, *Structural Analysis*, 6.2): H times the depth of
/// the cable below its chord is the bending moment of a beam under the same loads.
#[test]
fn depth_below_the_chord_is_a_beams_bending_moment() {
    let loads = [3.0, 1.0, 7.0, 2.0, 5.0];
    let links = tied(&[4.0, 3.0, 6.0, 2.0, 5.0, 4.0], &loads);
    let end = Point::new(17.0, 3.0);
    let hanging = solve(&links, end).unwrap();
    let knots: Vec<Point> = (0..loads.len()).map(|load| hanging.joints[2 * load + 1]).collect();
    let reaction: f64 = knots.iter().zip(loads).map(|(knot, load)| load * (1.0 - knot.x / end.x)).sum();
    for knot in &knots {
        let passed = knots.iter().zip(loads).map(|(other, load)| load * (knot.x - other.x).max(0.0));
        let moment = reaction * knot.x - passed.sum::<f64>();
        near(hanging.across * (knot.x * end.y / end.x - knot.y), moment, 1e-9);
    }
}

#[test]
fn girths_of_ellipses() {
    let table = rows(include_str!("oracles/data/ellipse_perimeter.csv"));
    assert_eq!(table.len(), 10);
    for row in table {
        near(ellipse::girth(row[0], row[1]), row[2], 1e-13);
    }
}

/// Three decimals are printed.
#[test]
fn insides_of_bracelets_of_touching_round_beads() {
    let table = rows(include_str!("oracles/data/bracelet_inner.csv"));
    assert_eq!(table.len(), 12);
    for row in table {
        let beads = vec![Chord::even(row[0], 0.5 * row[0]); row[1] as usize];
        let ring = close(&beads).unwrap();
        assert!((ring.girth() - row[4]).abs() < 5.1e-4, "{} is not {}", ring.girth(), row[4]);
    }
}

/// Concentric circles whose girths differ by 2π times the distance of their centre lines lie so far
/// apart. Chords of 0.1 mm of a circle 300 mm round miss it by a share of 10⁻⁷.
#[test]
fn nested_circles_lie_their_difference_apart() {
    for row in rows(include_str!("oracles/data/nested_strands.csv")) {
        let round = |length: f64| close(&vec![Chord::even(length / 3000.0, 0.0); 3000]).unwrap().radius;
        near(round(300.0 + row[5]) - round(300.0), row[3], 1e-5);
    }
}

#[test]
fn a_missing_balance_is_a_fault() {
    let links = uniform(100.0, 1.0, 10);
    assert_eq!(solve(&links, Point::new(110.0, 0.0)), Err(hang::Unhung::TooShort(110.0 - 100.0)));
}
