//! What is true of every hanging chain, and the chains that are hard to hang.

#[path = "support/turned.rs"]
mod turned;

use festoon::drape::hang::{Hanging, Link, Unhung, solve};
use festoon::geometry::Point;
use proptest::prelude::*;
use turned::turned;

fn link(length: f64, weight: f64) -> Link {
    Link { length, weight, centre: 0.5 }
}

fn length(links: &[Link]) -> f64 {
    links.iter().map(|link| link.length).sum()
}

/// Potential energy, from the joints alone.
fn energy(links: &[Link], joints: &[Point]) -> f64 {
    let weight = |(link, pair): (&Link, &[Point])| link.weight * pair[0].between(pair[1], link.centre).y;
    links.iter().zip(joints.windows(2)).map(weight).sum()
}

/// Links from 1 mm to 10 mm with weights that differ up to a hundred times.
fn chains() -> impl Strategy<Value = Vec<Link>> {
    let link = (1.0..10.0, 0.01..1.0, 0.0..1.0);
    let link = link.prop_map(|(length, weight, centre)| Link { length, weight, centre });
    prop::collection::vec(link, 12..80)
}

/// Ends that leave a gap longer than any link, so that none is pressed.
fn ends() -> impl Strategy<Value = Point> {
    (0.3..0.999, -1.2..1.2).prop_map(|(share, angle)| Point::towards(angle) * share)
}

/// Moments and forces balance at every link: it lies along the force that acts on it.
fn assert_balance(links: &[Link], hanging: &Hanging) {
    let mut before = 0.0;
    for (link, pair) in links.iter().zip(hanging.joints.windows(2)) {
        let start = Point::new(hanging.across, hanging.up + before);
        before += link.weight;
        let end = Point::new(hanging.across, hanging.up + before);
        let arm = pair[1] - pair[0];
        let cross = |a: Point, b: Point| a.x * b.y - a.y * b.x;
        let moment = cross(arm * link.centre, start) + cross(arm * (1.0 - link.centre), end);
        assert!(moment.abs() <= 1e-9 * link.length * (start.length() + end.length()), "moment {moment}");
    }
}

proptest! {
    #[test]
    fn links_keep_their_lengths_and_meet_the_ends(links in chains(), end in ends()) {
        let end = end * length(&links);
        let hanging = solve(&links, end).unwrap();
        for (link, pair) in links.iter().zip(hanging.joints.windows(2)) {
            prop_assert!((pair[0].distance(pair[1]) - link.length).abs() < 1e-9);
        }
        prop_assert!(hanging.joints[0] == Point::ORIGIN);
        prop_assert!(hanging.joints[links.len()].distance(end) < 1e-9 * length(&links));
    }

    #[test]
    fn every_link_is_in_balance(links in chains(), end in ends()) {
        let end = end * length(&links);
        assert_balance(&links, &solve(&links, end).unwrap());
    }

    #[test]
    fn the_reversed_chain_hangs_in_the_mirror(links in chains(), end in ends()) {
        let end = end * length(&links);
        let reversed: Vec<Link> = links.iter().rev().map(|link| Link { centre: 1.0 - link.centre, ..*link }).collect();
        let hanging = solve(&links, end).unwrap();
        let mirror = solve(&reversed, Point::new(end.x, -end.y)).unwrap();
        for (joint, other) in hanging.joints.iter().zip(mirror.joints.iter().rev()) {
            let back = Point::new(end.x - other.x, other.y + end.y);
            prop_assert!(joint.distance(back) < 1e-6 * length(&links));
        }
    }

    #[test]
    fn no_small_move_lowers_the_weights(links in chains(), end in ends(), at in 0usize..9, turn in -0.05..0.05) {
        let end = end * length(&links);
        let hanging = solve(&links, end).unwrap();
        if let Some(moved) = turned(&links, &hanging.joints, at, turn) {
            let rise = energy(&links, &moved) - energy(&links, &hanging.joints);
            prop_assert!(rise > -1e-9 * length(&links), "lowered by {rise}");
        }
    }
}

const SHARES: [f64; 9] = [0.001, 0.003, 0.01, 0.1, 0.5, 0.9, 0.99, 0.999, 0.99999];

/// The chain hangs from level ends at every share of its length in few steps, in balance.
#[track_caller]
fn assert_hangs(links: &[Link]) {
    for share in SHARES {
        let hanging = solve(links, Point::new(share * length(links), 0.0)).expect("it hangs");
        assert!(hanging.iterations < 20, "{} steps at {share}", hanging.iterations);
        assert!(hanging.residual < 1e-9 * length(links), "misses by {} at {share}", hanging.residual);
        assert_balance(links, &hanging);
    }
}

#[test]
fn uniform_chains_of_any_number_of_links() {
    for count in [2, 3, 4, 5, 10, 101, 1000, 20_000] {
        assert_hangs(&vec![link(1.0, 0.01); count]);
    }
}

#[test]
fn one_heavy_bead_anywhere_among_light_ones() {
    for (count, at) in (0..100).map(|at| (100, at)).chain((0..101).map(|at| (101, at))) {
        let mut links = vec![link(1.0, 0.001); count];
        links[at].weight = 1.0;
        assert_hangs(&links);
    }
}

#[test]
fn heavy_and_light_beads_by_turns() {
    let links: Vec<Link> = (0..300).map(|at| link(2.0, if at % 7 == 0 { 1.0 } else { 0.001 })).collect();
    assert_hangs(&links);
}

#[test]
fn weightless_links_between_heavy_ones() {
    let links: Vec<Link> = (0..200).map(|at| link(1.0, if at % 2 == 0 { 0.1 } else { 0.0 })).collect();
    assert_hangs(&links);
}

#[test]
fn a_taut_chain_says_by_how_much_it_is_too_short() {
    let links = vec![link(1.0, 0.1); 10];
    assert_eq!(solve(&links, Point::new(10.0, 0.0)), Err(Unhung::TooShort(0.0)));
    assert_eq!(solve(&links, Point::new(6.0, 8.0)), Err(Unhung::TooShort(0.0)));
    assert_eq!(solve(&links, Point::new(-12.5, 0.0)), Err(Unhung::TooShort(2.5)));
    assert_eq!(solve(&[], Point::new(1.0, 0.0)), Err(Unhung::TooShort(1.0)));
}

#[test]
fn a_single_link_does_not_fold() {
    assert_eq!(solve(&[link(10.0, 1.0)], Point::new(4.0, 0.0)), Err(Unhung::TooStiff(6.0)));
    assert_eq!(solve(&[link(10.0, 1.0)], Point::new(10.0, 0.0)), Err(Unhung::TooShort(0.0)));
}

#[test]
fn ends_that_meet_let_the_chain_hang_in_two_plumb_legs() {
    let hanging = solve(&[link(1.0, 0.1); 10], Point::ORIGIN).unwrap();
    assert!(hanging.joints.iter().all(|joint| joint.x == 0.0));
    assert!((hanging.joints[5].y + 5.0).abs() < 1e-12);
    assert!((hanging.first - 0.5).abs() < 1e-12 && (hanging.last - 0.5).abs() < 1e-12 && hanging.lowest < 1e-12);
    assert_eq!(hanging.residual, 0.0);
}

#[test]
fn a_stiff_link_at_the_bottom_pushes_the_legs_apart() {
    let mut links = vec![link(1.0, 0.1); 41];
    links[20] = link(6.0, 0.5);
    for gap in [0.0, 0.5, 5.0, 5.99] {
        let hanging = solve(&links, Point::new(gap, 0.0)).unwrap();
        assert!(hanging.across < 0.0);
        assert!(hanging.joints[21].distance(hanging.joints[20] + Point::new(6.0, 0.0)) < 1e-9);
        assert_balance(&links, &hanging);
    }
}

#[test]
fn a_chain_without_weight_has_no_shape() {
    assert_eq!(solve(&[link(1.0, 0.0); 10], Point::new(5.0, 0.0)), Err(Unhung::Weightless));
}

#[test]
fn weightless_links_at_the_bottom_lie_slack() {
    let mut links = vec![link(1.0, 0.1); 20];
    links[8..12].fill(link(1.0, 0.0));
    assert_eq!(solve(&links, Point::new(1.0, 0.0)), Err(Unhung::Slack));
    assert!(solve(&links, Point::new(10.0, 0.0)).is_ok());
}

#[test]
fn a_symmetric_chain_hangs_symmetrically() {
    let links: Vec<Link> = (0..201).map(|at: i32| link(1.0, 1.0 / f64::from(10 + (at - 100).abs()))).collect();
    let hanging = solve(&links, Point::new(80.0, 0.0)).unwrap();
    for (joint, other) in hanging.joints.iter().zip(hanging.joints.iter().rev()) {
        assert!(joint.distance(Point::new(80.0 - other.x, other.y)) < 1e-10);
    }
    assert!((hanging.first - hanging.last).abs() < 1e-10 * hanging.first);
}

#[test]
fn a_chain_hung_to_the_left_is_the_mirror() {
    let links: Vec<Link> = (1..30).map(|at| link(1.0, f64::from(at))).collect();
    let right = solve(&links, Point::new(12.0, 3.0)).unwrap();
    let left = solve(&links, Point::new(-12.0, 3.0)).unwrap();
    assert!(right.joints.iter().zip(&left.joints).all(|(a, b)| a.x == -b.x && a.y == b.y));
    assert_eq!(right.across, -left.across);
}
