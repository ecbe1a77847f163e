//! Strands that lie beside one another.
//!
//! **Problem.** Several strands hang from their points before an upright board; no outline may lie on
//! another strand's. All holes lie in one plane, so that the whole is a problem in that plane. Strands keep
//! the order in which bars hold them, or else the shorter ones lie inside the longer ones.
//!
//! **Method.** The strands as they hang alone are the start, and the answer where nothing touches. Then
//! rounds: where outlines come near, a line between them that both keep to their side of ([`rows`]); the
//! lowest place of all joints (a second-order cone program, [`program`]); new lines at the new place,
//! until nothing moves by 0.01 mm.
//!
//! **Trade-off.** No friction, no stiffness of cord. Strands that leave one point, or a cone's mouth, are
//! left to lie on one another for as long as they would have to part by more than 30 degrees. Beads that
//! slide keep the stations at which they rest when the strand hangs alone. Where what was found is not in
//! balance (cord that hangs slack, no answer), the strands stay as they hang alone and what overlaps is
//! reported.

mod program;
mod rope;
mod rows;

use super::Hung;
use super::chain::Chain;
use super::hang::Hanging;
use crate::design::Design;
use crate::geometry::Point;
use rope::{Rope, covered, have_room};
use rows::{Rod, Row};

/// Rounds after which the best place found is taken.
const ROUNDS: u32 = 20;
/// Rounds end when no joint moves farther than this, in mm.
const STILL: f64 = 0.01;
/// The pull to the present place once rounds swing, and the strongest, in mean weights of a joint per mm.
const FAINT: f64 = 0.01;
const STRONG: f64 = 1.0;
/// Forces below this share of all that hangs are rounding.
const TOUCH: f64 = 1e-6;
/// A link that is shorter by this share of its length is in no tension.
const TENSE: f64 = 1e-3;

/// What strands in contact came to.
pub struct Settled {
    /// Each strand, in the design's order.
    pub strands: Vec<Hanging>,
    /// The pairs that press on one another.
    pub presses: Vec<Press>,
}

/// How hard two strands press on one another at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Press {
    /// Indices of the two strands, the lower first.
    pub between: [usize; 2],
    /// The force in N.
    pub force: f64,
}

/// Strands in contact at rest; nothing where no two of them touch, or no rest was found.
pub fn settle(design: &Design, chains: &[Chain], hung: &[Hung]) -> Option<Settled> {
    let order = order(design, hung);
    let mut ropes: Vec<Rope> = order.iter().map(|&at| Rope::new(&chains[at], &hung[at])).collect();
    let mut rows = near(design, &order, &ropes);
    if rows.iter().all(|row| row.gap >= 0.0) {
        return None;
    }
    let (mut pull, mut last) = (0.0, f64::INFINITY);
    for count in 1..=ROUNDS {
        let round = program::solve(&ropes, &rows, pull)?;
        let moved = go(&mut ropes, &round.places);
        let next = near(design, &order, &ropes);
        let deepest = next.iter().map(|row| row.gap).fold(0.0, f64::min);
        if (moved < STILL && deepest > -STILL) || count == ROUNDS {
            return tense(&ropes).then(|| {
                let strands = order.iter().zip(&ropes).zip(&round.tensions);
                let laid = strands.map(|((&at, rope), tensions)| (at, rope.laid(&chains[at], tensions, count)));
                let presses = presses(&order, &ropes, &rows, &round.forces);
                Settled { strands: in_order(laid.collect()), presses }
            });
        }
        pull = if moved > 0.5 * last { (4.0 * pull).clamp(FAINT, STRONG) } else { pull };
        last = moved;
        rows = next;
    }
    None
}

/// The strands from the inmost out: as bars hold them, then by length.
fn order(design: &Design, hung: &[Hung]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..hung.len()).collect();
    let key = |at: usize| (design.strands[at].aside.value(), design.strands[at].finished.value());
    order.sort_by(|&a, &b| key(a).0.total_cmp(&key(b).0).then(key(a).1.total_cmp(&key(b).1)));
    order
}

/// The rows between links that have room to lie beside one another.
fn near(design: &Design, order: &[usize], ropes: &[Rope]) -> Vec<Row> {
    let covered = covered(design);
    let mut rods = Vec::new();
    for (strand, (&at, rope)) in order.iter().zip(ropes).enumerate() {
        let rod = |link: usize| {
            let outline = rope.outline(link, design, &design.strands[at])?;
            let joints = [rope.joints[link].at, rope.joints[link + 1].at];
            Some(Rod { strand, link, joints, outline, depth: rope.depth(link, covered) })
        };
        rods.extend((0..rope.links.len()).filter_map(rod));
    }
    let apart = |a: usize, b: usize| ropes[a].joints[0].at.distance(ropes[b].joints[0].at);
    let may = |a: &Rod, b: &Rod| {
        let needed = a.outline.half_width + b.outline.half_width;
        have_room(needed, apart(a.strand, b.strand), a.depth.min(b.depth))
    };
    rows::rows(&rods, may)
}

/// Puts the joints where a round found them; how far the farthest went.
fn go(ropes: &mut [Rope], places: &[Vec<Point>]) -> f64 {
    let mut moved: f64 = 0.0;
    for (rope, places) in ropes.iter_mut().zip(places) {
        for (joint, place) in rope.joints.iter_mut().zip(places) {
            moved = moved.max(joint.at.distance(*place));
            joint.at = *place;
        }
    }
    moved
}

fn tense(ropes: &[Rope]) -> bool {
    let links = ropes.iter().flat_map(|rope| rope.links.iter().zip(rope.joints.windows(2)));
    links.into_iter().all(|(link, pair)| pair[0].at.distance(pair[1].at) >= link.length * (1.0 - TENSE))
}

fn presses(order: &[usize], ropes: &[Rope], rows: &[Row], forces: &[f64]) -> Vec<Press> {
    let whole: f64 = ropes.iter().flat_map(Rope::weights).sum();
    let pressed = rows.iter().zip(forces).filter(|(_, force)| **force > TOUCH * whole);
    let press = |(row, force): (&Row, &f64)| {
        let mut between = row.strands.map(|strand| order[strand]);
        between.sort_unstable();
        Press { between, force: *force }
    };
    pressed.map(press).collect()
}

fn in_order(mut laid: Vec<(usize, Hanging)>) -> Vec<Hanging> {
    laid.sort_by_key(|(at, _)| *at);
    laid.into_iter().map(|(_, hanging)| hanging).collect()
}
