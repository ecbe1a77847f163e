//! The balance of a chain whose cord is stiff.
//!
//! **Equation.** With the links' angles t, the hardness k of the bends between them ([`bend`](super::super::bend)) and in each
//! the force (H, V + s) of the chain that is limp, no moment is left in a link where
//! l ((V + s) cos t - H sin t) + k' (t' - t) - k (t - t") vanishes: ' is the next one's, " the one's before. The
//! ends turn freely. With the two conditions of the last end that is a system in all angles, H and V.
//!
//! **Method.** Newton's method from the limp chain. The angles' part of the system has three diagonals, so that a step is
//! O(n). A step is halved until what is out of balance falls.

use super::super::bend::{self, Bend};
use super::{Balance, Link, ROUNDING, Scaled, TOLERANCE, Unhung};
use crate::geometry::Point;

/// Steps after which it gives up: most chains need under 15.
const STEPS: u32 = 100;
/// How often a step is halved.
const HALVINGS: u32 = 12;
/// What turns as one: a link with those after it that are too short to have a direction; and how hard the bends between are.
struct Rigid {
    /// One a link.
    of: Vec<usize>,
    /// One between each and the next.
    hardness: Vec<f64>,
}

impl Rigid {
    fn new(chain: &Scaled, links: &[Link], bends: &[Bend]) -> Self {
        let mut count: usize = 0;
        let of: Vec<usize> = links
            .iter()
            .map(|link| {
                count += usize::from(bend::is_long(link.length));
                count.saturating_sub(1)
            })
            .collect();
        let mut hardness = vec![0.0; count.saturating_sub(1)];
        let length: f64 = links.iter().map(|link| link.length).sum();
        bends.iter().for_each(|bend| hardness[of[bend.links[0]]] = bend.hardness / (length * chain.weight));
        Self { of, hardness }
    }
}

/// A shape, what is out of balance in it, and the derivatives of that.
struct Imbalance {
    angles: Vec<f64>,
    force: Point,
    /// How far and in which direction each reaches.
    reach: Vec<Point>,
    moments: Vec<f64>,
    /// By which each moment falls with its own angle and rises with the next.
    diagonal: Vec<f64>,
    beside: Vec<f64>,
    miss: Point,
}

impl Imbalance {
    fn at(chain: &Scaled, rigid: &Rigid, angles: Vec<f64>, force: Point) -> Self {
        let along: Vec<Point> = angles.iter().map(|angle| Point::towards(*angle)).collect();
        let count = angles.len();
        let (mut moments, mut diagonal, mut reach) = (vec![0.0; count], vec![0.0; count], vec![Point::ORIGIN; count]);
        for ((length, load), &at) in chain.links().zip(&rigid.of) {
            let pull = force + Point::new(0.0, load);
            moments[at] += length * pull.dot(along[at].left());
            diagonal[at] += length * pull.dot(along[at]);
            reach[at] = reach[at] + along[at] * length;
        }
        let miss = reach.iter().fold(chain.end * -1.0, |sum, reach| sum + *reach);
        let mut look = Self { angles, force, reach, moments, diagonal, beside: Vec::with_capacity(count), miss };
        rigid.hardness.iter().enumerate().for_each(|(at, hard)| look.bend(at, *hard));
        look
    }

    /// Adds the bend between one and the next.
    fn bend(&mut self, at: usize, hard: f64) {
        let moment = hard * (self.angles[at + 1] - self.angles[at]);
        self.moments[at] += moment;
        self.moments[at + 1] -= moment;
        self.diagonal[at] += hard;
        self.diagonal[at + 1] += hard;
        self.beside.push(hard);
    }

    fn off(&self) -> f64 {
        self.miss.length() + self.moments.iter().map(|moment| moment.abs()).sum::<f64>()
    }

    /// Newton's step in angles and force.
    fn step(&self) -> (Vec<f64>, Point) {
        let aside: Vec<Point> = self.reach.iter().map(|reach| reach.left()).collect();
        let by = |part: fn(&Point) -> f64| self.turned(aside.iter().map(part));
        let (own, across, up) = (self.turned(self.moments.iter().copied()), by(|aside| aside.x), by(|aside| aside.y));
        let sum =
            |turns: &[f64]| aside.iter().zip(turns).fold(Point::ORIGIN, |sum, (aside, turn)| sum + *aside * *turn);
        let (left, x, y) = (self.miss + sum(&own), sum(&across), sum(&up));
        let cross = |a: Point, b: Point| a.x * b.y - a.y * b.x;
        let determinant = cross(x, y);
        let force = Point::new(-cross(left, y) / determinant, -cross(x, left) / determinant);
        let turn = |((own, across), up): ((&f64, &f64), &f64)| own + across * force.x + up * force.y;
        (own.iter().zip(&across).zip(&up).map(turn).collect(), force)
    }

    /// By how much all turn under such moments, while the force is what it is.
    fn turned(&self, moments: impl Iterator<Item = f64>) -> Vec<f64> {
        let mut turned: Vec<f64> = moments.collect();
        let mut pivots = self.diagonal.clone();
        for (at, beside) in self.beside.iter().enumerate() {
            let share = beside / pivots[at];
            pivots[at + 1] -= share * beside;
            turned[at + 1] += share * turned[at];
        }
        for at in (0..turned.len()).rev() {
            let next = self.beside.get(at).map_or(0.0, |beside| beside * turned[at + 1]);
            turned[at] = (turned[at] + next) / pivots[at];
        }
        turned
    }

    /// A step, halved until less is out of balance; nothing where it never is.
    fn advance(&self, chain: &Scaled, rigid: &Rigid) -> Option<Self> {
        let (turns, force) = self.step();
        let mut share = 1.0;
        for _ in 0..HALVINGS {
            let angles = self.angles.iter().zip(&turns).map(|(angle, turn)| angle + share * turn).collect();
            let next = Self::at(chain, rigid, angles, self.force + force * share);
            if next.off() < self.off() {
                return Some(next);
            }
            share *= 0.5;
        }
        None
    }
}

/// The balance of a chain that hangs limp as was found.
///
/// # Errors
/// Where no balance was found.
pub(super) fn settle(chain: &Scaled, links: &[Link], bends: &[Bend], limp: &Balance) -> Result<Balance, Unhung> {
    let rigid = Rigid::new(chain, links, bends);
    let long = limp.directions.iter().zip(links).filter(|(_, link)| bend::is_long(link.length));
    let angles = unwound(long.map(|(direction, _)| direction.angle()));
    let start = Imbalance::at(chain, &rigid, angles, Point::new(limp.across, limp.up));
    let (look, steps) = descend(chain, &rigid, start);
    if look.off().is_nan() || look.off() >= TOLERANCE {
        return Err(Unhung::Unbalanced(look.off() * links.iter().map(|link| link.length).sum::<f64>()));
    }
    Ok(Balance {
        across: look.force.x,
        up: look.force.y,
        directions: rigid.of.iter().map(|at| Point::towards(look.angles[*at])).collect(),
        iterations: limp.iterations + steps,
    })
}

/// Angles of which none is more than half a turn from the one before.
fn unwound(angles: impl Iterator<Item = f64>) -> Vec<f64> {
    use std::f64::consts::{PI, TAU};
    let mut last = 0.0;
    let near = |angle: f64| {
        last += (angle - last + PI).rem_euclid(TAU) - PI;
        last
    };
    angles.map(near).collect()
}

/// The balance near a shape, or the best that was found, and the steps it took.
fn descend(chain: &Scaled, rigid: &Rigid, start: Imbalance) -> (Imbalance, u32) {
    let rounding = ROUNDING * (1.0 + rigid.hardness.iter().sum::<f64>());
    let (mut here, mut steps) = (start, 0);
    while steps < STEPS && here.off() > rounding {
        let Some(next) = here.advance(chain, rigid) else { break };
        (here, steps) = (next, steps + 1);
    }
    (here, steps)
}
