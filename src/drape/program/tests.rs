//! Balls in a smooth trough, as in any textbook of statics: what they press with is worked out by hand from the balance of
//! each, and met by the multipliers of rounds that know of no forces.

use super::super::hang::{self, Link};
use super::*;
use crate::geometry::Point;

/// A wall: a place on it, and the unit vector away from it.
type Wall = ([f64; 2], [f64; 2]);

fn dot(one: [f64; 2], other: [f64; 2]) -> f64 {
    one[0] * other[0] + one[1] * other[1]
}

fn less(one: [f64; 2], other: [f64; 2]) -> [f64; 2] {
    [one[0] - other[0], one[1] - other[1]]
}

/// Balls of a radius between walls: each ball on each wall, and then each two balls on one another.
fn constraints(net: &Net<2>, walls: &[Wall], radius: f64) -> Vec<Constraint<2>> {
    let mut constraints = Vec::new();
    for (node, ball) in net.nodes.iter().enumerate() {
        for (on, out) in walls {
            let gap = dot(less(ball.at, *on), *out) - radius;
            constraints.push(Constraint { terms: vec![Term { node, slope: *out }], gap, gives: false });
        }
    }
    for one in 0..net.nodes.len() {
        for other in one + 1..net.nodes.len() {
            let apart = less(net.nodes[one].at, net.nodes[other].at);
            let far = dot(apart, apart).sqrt();
            let out = apart.map(|part| part / far);
            let terms = vec![Term { node: one, slope: out }, Term { node: other, slope: out.map(|part| -part) }];
            constraints.push(Constraint { terms, gap: far - 2.0 * radius, gives: true });
        }
    }
    constraints
}

/// The forces on all constraints once balls, which began at places, lie still.
fn forces(places: &[[f64; 2]], weight: f64, walls: &[Wall], radius: f64) -> Vec<f64> {
    let node = |at: &[f64; 2]| Node { at: *at, weight, down: down(), held: [false; 2] };
    let mut net = Net { nodes: places.iter().map(node).collect(), ..Net::default() };
    for _ in 0..400 {
        let constraints = constraints(&net, walls, radius);
        let round = net.solve(&constraints, 0.5).unwrap();
        let moved =
            net.nodes.iter().zip(&round.places).map(|(node, place)| distance(node.at, *place)).fold(0.0, f64::max);
        net.go(&round.places);
        if moved < 1e-7 {
            assert!(net.imbalance(&constraints, &round) < 1e-6);
            return round.forces;
        }
    }
    panic!("they come to no rest");
}

fn assert_forces(found: &[f64], expected: &[f64], weight: f64) {
    for (found, expected) in found.iter().zip(expected) {
        assert!((found - expected).abs() < 1e-5 * weight, "{found:?} is not {expected:?}");
    }
    assert_eq!(found.len(), expected.len());
}

/// One in a trough of walls that rise by a to the right and by b to the left presses on them with W sin b / sin(a + b) and
/// W sin a / sin(a + b) (the triangle of three forces).
#[test]
fn one_ball_in_a_trough_of_two_slopes() {
    let (a, b, weight) = (0.5_f64, 0.9_f64, 0.02);
    let walls = [([0.0, 0.0], [-libm::sin(a), libm::cos(a)]), ([0.0, 0.0], [libm::sin(b), libm::cos(b)])];
    let whole = libm::sin(a + b);
    let expected = [weight * libm::sin(b) / whole, weight * libm::sin(a) / whole];
    assert_forces(&forces(&[[0.3, 9.0]], weight, &walls, 2.0), &expected, weight);
}

/// Two in a box less than two balls wide: the line of their middles is at c from level, with cos c = (b - 2 r) / 2 r. The
/// upper one leans with W / sin c on the lower one and with W cot c on its wall, the lower as much on the other wall, and the
/// floor bears both.
#[test]
fn two_balls_in_a_box() {
    let (radius, breadth, weight) = (3.0_f64, 9.5_f64, 0.01_f64);
    let walls = [([0.0, 0.0], [1.0, 0.0]), ([breadth, 0.0], [-1.0, 0.0]), ([0.0, 0.0], [0.0, 1.0])];
    let cosine: f64 = (breadth - 2.0 * radius) / (2.0 * radius);
    let sine = (1.0 - cosine * cosine).sqrt();
    let aside = weight * cosine / sine;
    let expected = [aside, 0.0, 2.0 * weight, 0.0, aside, 0.0, weight / sine];
    let found = forces(&[[3.2, 3.5], [6.3, 9.0]], weight, &walls, radius);
    assert_forces(&found, &expected, weight);
}

/// Two in a trough of slopes a and b, one at its bottom and one above it on the right: that one leans with W sin a on the
/// lower one along the slope and with W cos a on it; the lower one bears that and its own weight on both walls.
#[test]
fn two_balls_in_a_trough() {
    let (a, b, radius, weight) = (0.6_f64, 0.7_f64, 2.0, 0.05);
    let (right, left) = ([-libm::sin(a), libm::cos(a)], [libm::sin(b), libm::cos(b)]);
    let walls = [([0.0, 0.0], right), ([0.0, 0.0], left)];
    let lean = weight * libm::sin(a);
    // On the lower one, along the right slope and square to it: its push from the left wall goes at a + b to that.
    let from_left = 2.0 * lean / libm::sin(a + b);
    let from_right = weight * libm::cos(a) - from_left * libm::cos(a + b);
    let expected = [from_right, from_left, weight * libm::cos(a), 0.0, lean];
    let found = forces(&[[0.2, 4.0], [4.0, 6.5]], weight, &walls, radius);
    assert_forces(&found, &expected, weight);
}

/// Two on the floor of a box a little wider than both, and one on them: it leans on each with W / 2 sin c, where
/// cos c = (b - 2 r) / 4 r; each wall holds the other part of that, W cot c / 2, and the floor bears half of all three.
#[test]
fn three_balls_in_a_box() {
    let (radius, breadth, weight) = (2.0_f64, 8.6_f64, 0.03_f64);
    let walls = [([0.0, 0.0], [1.0, 0.0]), ([breadth, 0.0], [-1.0, 0.0]), ([0.0, 0.0], [0.0, 1.0])];
    let cosine: f64 = (breadth - 2.0 * radius) / (4.0 * radius);
    let sine = (1.0 - cosine * cosine).sqrt();
    let (aside, on_each, floor) = (0.5 * weight * cosine / sine, 0.5 * weight / sine, 1.5 * weight);
    let expected = [aside, 0.0, floor, 0.0, aside, floor, 0.0, 0.0, 0.0, 0.0, on_each, on_each];
    let found = forces(&[[2.3, 2.4], [6.2, 2.2], [4.5, 6.5]], weight, &walls, radius);
    assert_forces(&found, &expected, weight);
}

/// Links of many lengths and weights, which follow from a number.
fn links(count: u32, of: f64) -> Vec<Link> {
    let share = |at: u32, by: f64| (f64::from(at) * by * of).fract();
    let link = |at: u32| Link {
        length: 1.0 + 7.0 * share(at, 0.618),
        weight: 1e-3 * (0.2 + 9.0 * share(at, 0.414)),
        centre: share(at, 0.732),
    };
    (1..=count).map(link).collect()
}

/// A chain held at both ends, its joints on the straight line between them.
fn chain(links: &[Link], end: Point) -> Net<2> {
    let mut weights = vec![0.0; links.len() + 1];
    for (at, link) in links.iter().enumerate() {
        weights[at] += link.weight * (1.0 - link.centre);
        weights[at + 1] += link.weight * link.centre;
    }
    let node = |(at, weight): (usize, &f64)| {
        let place = end * (at as f64 / links.len() as f64);
        Node { at: [place.x, place.y], weight: *weight, down: down(), held: [at == 0 || at == links.len(); 2] }
    };
    let nodes = weights.iter().enumerate().map(node).collect();
    let ties = links.iter().enumerate().map(|(at, link)| Tie::new([at, at + 1], link.length)).collect();
    Net { nodes, ties, bends: Vec::new() }
}

/// The other solver, Newton's method in the two unknowns of the dual, is met by tables of catenaries
/// (`tests/oracles_statics.rs`).
#[test]
fn where_nothing_touches_both_solvers_agree() {
    for (count, of, share, rise) in
        [(12, 1.0, 0.5, 0.0), (60, 1.3, 0.3, 0.1), (60, 2.1, 0.7, -0.3), (200, 0.7, 0.3, 0.0), (400, 1.7, 0.9, 0.2)]
    {
        let links = links(count, of);
        let length: f64 = links.iter().map(|link| link.length).sum();
        let end = Point::new(share * length, rise * length);
        let hung = hang::solve(&links, end).unwrap();
        let net = chain(&links, end);
        let round = net.solve(&[], 0.0).unwrap();
        for (place, joint) in round.places.iter().zip(&hung.joints) {
            let off = distance(*place, [joint.x, joint.y]);
            assert!(off < 1e-6 * length, "{count} links: {} of the length", off / length);
        }
        for (link, (tie, tension)) in net.ties.iter().zip(&round.tensions).enumerate() {
            let force =
                Point::new(hung.across, hung.up + net.nodes[..=link].iter().map(|node| node.weight).sum::<f64>());
            let off = (tension - force.length()).abs();
            assert!(off < 1e-6 * net.weight(), "{count} links: {off} N off in {tie:?}");
            let apart = distance(round.places[tie.ends[0]], round.places[tie.ends[1]]);
            assert!((apart - tie.length).abs() < 1e-6, "{count} links: {apart} {}", tie.length);
        }
    }
}

/// A row on the smooth floor of a round valley, whose lowest joint is held, bears up what of it lies higher: let the joints
/// above a link turn about the valley's middle by a little, and the link's length times its push must be what they fall by
/// times their weights (virtual work), so that each link is pressed by the sum of w sin a over the cosine of half a link's angle.
#[test]
fn a_row_in_a_valley_is_pressed_by_what_lies_above() {
    let (count, radius, step, weight) = (24_u32, 60.0, 0.05_f64, 0.01_f64);
    let at = |joint: u32, share: f64| {
        let (sin, cos) = libm::sincos(step * f64::from(joint) * share);
        [radius * sin, radius * (1.0 - cos)]
    };
    let length = 2.0 * radius * libm::sin(0.5 * step);
    let node = |joint: u32| Node { at: at(joint, 0.98), weight, down: down(), held: [joint == 0; 2] };
    let ties = (0..count as usize).map(|tie| Tie::new([tie, tie + 1], length)).collect::<Vec<_>>();
    let mut net = Net { nodes: (0..=count).map(node).collect(), ties, bends: Vec::new() };
    let all: Vec<usize> = (0..count as usize).collect();
    let floor = |(node, joint): (usize, &Node<2>)| {
        let up = less([0.0, radius], joint.at);
        let far = dot(up, up).sqrt();
        let terms = vec![Term { node, slope: up.map(|part| part / far) }];
        Constraint { terms, gap: radius - far, gives: false }
    };
    for _ in 0..400 {
        let constraints: Vec<_> = net.nodes.iter().enumerate().skip(1).map(floor).collect();
        let round = net.solve(&constraints, 0.5).unwrap();
        let amiss = net.press(all.iter(), 1e-6, &round);
        let moved =
            net.nodes.iter().zip(&round.places).map(|(node, place)| distance(node.at, *place)).fold(0.0, f64::max);
        net.go(&round.places);
        if amiss || moved > 1e-5 {
            continue;
        }
        net.draw_out(&all);
        for (tie, tension) in net.ties.iter().zip(&round.tensions) {
            let above = (tie.ends[1]..=count as usize).map(|joint| libm::sin(step * joint as f64)).sum::<f64>();
            let push = weight * above / libm::cos(0.5 * step);
            assert!((tension + push).abs() < 1e-4 * weight, "{tie:?}: {tension} is not {push}");
            let [one, other] = tie.ends.map(|end| net.nodes[end].at);
            assert!((distance(one, other) - length).abs() < 1e-6);
        }
        return;
    }
    panic!("it comes to no rest");
}
