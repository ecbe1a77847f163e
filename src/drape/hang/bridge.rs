//! The balance of a chain whose lowest link is stiff and longer than the gap it bridges.
//!
//! That link k is pressed and pushes the plumb legs apart. The unknowns are its direction t and
//! the force r along it, negative when it is pressed: H = r cos t and V = r sin t - s_k. In these
//! the miss of the chain's end is smooth where (H, V) has its kink, and r = 0 is a good start.

use super::{Balance, CAP, Fold, ROUNDING, Scaled, TOLERANCE, unit};
use crate::geometry::Point;

/// How often a step is halved to make the miss smaller.
const HALVINGS: u32 = 30;

/// The miss and its derivatives by force and direction.
struct Miss {
    force: f64,
    angle: f64,
    miss: Point,
    by_force: Point,
    by_angle: Point,
}

impl Miss {
    fn at(chain: &Scaled, link: usize, force: f64, angle: f64) -> Self {
        let along = Point::towards(angle);
        let aside = along.left();
        let mut miss = along * chain.lengths[link] - chain.end;
        let (mut by_force, mut by_angle) = (Point::ORIGIN, aside * chain.lengths[link]);
        let bottom = chain.loads[link];
        for (_, (length, load)) in chain.links().enumerate().filter(|&(other, (l, _))| other != link && l > 0.0) {
            let pull = along * force + Point::new(0.0, load - bottom);
            let direction = unit(pull);
            miss = miss + direction * length;
            let turn = length / pull.length();
            let across = |change: Point| change - direction * change.dot(direction);
            by_force = by_force + across(along) * turn;
            by_angle = by_angle + across(aside * force) * turn;
        }
        Self { force, angle, miss, by_force, by_angle }
    }

    /// Newton's step in force and direction.
    fn step(&self) -> (f64, f64) {
        let cross = |a: Point, b: Point| a.x * b.y - a.y * b.x;
        let determinant = cross(self.by_force, self.by_angle);
        (-cross(self.miss, self.by_angle) / determinant, -cross(self.by_force, self.miss) / determinant)
    }
}

/// The balance, or the best that was found when the steps ran out: the caller checks the miss.
pub(super) fn settle(chain: &Scaled, fold: &Fold) -> Balance {
    let steepness = (fold.gap.y / chain.lengths[fold.link]).clamp(-1.0, 1.0);
    let mut here = Miss::at(chain, fold.link, 0.0, libm::asin(steepness));
    let mut iterations = 0;
    while iterations < CAP && here.miss.length() > ROUNDING {
        iterations += 1;
        let Some(next) = advance(chain, fold.link, &here) else { break };
        here = next;
    }
    let along = Point::towards(here.angle);
    let (across, up) = (here.force * along.x, here.force * along.y - chain.loads[fold.link]);
    let mut directions = chain.directions(across, up);
    directions[fold.link] = along;
    Balance { across, up, directions, iterations }
}

/// One step, halved until the miss is smaller; nothing where it does not get smaller.
fn advance(chain: &Scaled, link: usize, here: &Miss) -> Option<Miss> {
    let (force, angle) = here.step();
    let worst = here.miss.length() * if here.miss.length() < TOLERANCE { 0.5 } else { 1.0 };
    let mut share = 1.0;
    for _ in 0..HALVINGS {
        let next = Miss::at(chain, link, here.force + share * force, here.angle + share * angle);
        if next.miss.length() < worst {
            return Some(next);
        }
        share *= 0.5;
    }
    None
}
