//! A chain between two held ends whose joints are pushed each its own way, with nothing in its way.
//!
//! **Equation.** As of a chain that hangs ([`hang`](super::super::hang)): cut it at its first end, and let T be its
//! tension there. Each joint takes its push off that, so that link i lies along T - F(i), F(i) being the pushes of the
//! joints before it. The chain ends in the right place where the gradient of the convex
//! D(T) = sum l(i) |T - F(i)| - T · (end - start) vanishes.
//!
//! **Method.** Newton's method in two unknowns from a guess of T, each step halved until D falls.

use crate::geometry::Point;

/// How far the chain may miss its end, in mm.
const MISS: f64 = 1e-6;
/// Steps after which the guess was a bad one.
const STEPS: u32 = 40;
/// Times that a step is halved.
const HALVES: u32 = 30;

/// Links and the pushes on them.
pub struct Pushed {
    /// Length of each link, and the pushes of all joints before it.
    links: Vec<(f64, Point)>,
    from: Point,
    way: Point,
}

impl Pushed {
    /// Links of lengths from a place to another, with the push on the joint after each but the last.
    pub fn new(lengths: &[f64], pushes: impl Iterator<Item = Point>, from: Point, to: Point) -> Self {
        let mut before = Point::ORIGIN;
        let befores = std::iter::once(before).chain(pushes.map(|push| {
            before = before + push;
            before
        }));
        Self { links: lengths.iter().copied().zip(befores.collect::<Vec<_>>()).collect(), from, way: to - from }
    }

    /// Where its joints lie, from a guess of the tension at its first end; nothing where that was none.
    pub fn joints(&self, guess: Point) -> Option<Vec<Point>> {
        let mut tension = guess;
        for _ in 0..STEPS {
            let (joints, miss) = self.laid(tension);
            if miss.length() < MISS {
                return Some(joints);
            }
            tension = self.nearer(tension, miss)?;
        }
        None
    }

    /// The joints under a tension, and by how much the last lies beyond the end.
    fn laid(&self, tension: Point) -> (Vec<Point>, Point) {
        let mut at = self.from;
        let mut joints = vec![at];
        for (length, before) in &self.links {
            at = at + unit(tension - *before) * *length;
            joints.push(at);
        }
        (joints, at - self.from - self.way)
    }

    /// A better tension: Newton's step as far as D falls.
    fn nearer(&self, tension: Point, miss: Point) -> Option<Point> {
        let step = self.step(tension, miss)?;
        let (now, falls) = (self.dual(tension), miss.dot(step));
        let shares = (0..HALVES).map(|halves| libm::exp2(-f64::from(halves)));
        let enough = |share: &f64| self.dual(tension + step * *share) <= now + 1e-4 * share * falls;
        shares.into_iter().find(enough).map(|share| tension + step * share)
    }

    /// The step that would bring the miss to nothing if D were a parabola.
    fn step(&self, tension: Point, miss: Point) -> Option<Point> {
        let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
        for (length, before) in &self.links {
            let pull = tension - *before;
            let (along, stiff) = (unit(pull), length / pull.length().max(f64::MIN_POSITIVE));
            xx += stiff * along.y * along.y;
            xy -= stiff * along.x * along.y;
            yy += stiff * along.x * along.x;
        }
        let det = xx * yy - xy * xy;
        let step = Point::new(xy * miss.y - yy * miss.x, xy * miss.x - xx * miss.y) * (1.0 / det);
        (step.x.is_finite() && step.y.is_finite()).then_some(step)
    }

    fn dual(&self, tension: Point) -> f64 {
        let lengths: f64 = self.links.iter().map(|(length, before)| length * (tension - *before).length()).sum();
        lengths - tension.dot(self.way)
    }
}

fn unit(way: Point) -> Point {
    way * (1.0 / way.length().max(f64::MIN_POSITIVE))
}

#[cfg(test)]
mod tests {
    use std::f64::consts::{PI, TAU};

    use super::*;

    /// Joints of a regular polygon that are pushed outward alike, each as hard as a link's share of the pressure, stay
    /// where they are: the polygon of forces is regular too (statics, by symmetry).
    #[test]
    fn a_regular_polygon_stays_where_it_is() {
        let (count, radius) = (90_u32, 60.0);
        let turn = |joint: f64| Point::towards(TAU * joint / f64::from(count));
        let side = 2.0 * radius * libm::sin(PI / f64::from(count));
        // All but the last side are the chain.
        let lengths = vec![side; count as usize - 1];
        let corner = |joint: u32| turn(f64::from(joint)) * radius;
        let pushes = (1..count - 1).map(|joint| turn(f64::from(joint)));
        let chain = Pushed::new(&lengths, pushes, corner(0), corner(count - 1));
        let guess = Point::new(-1.0, 12.0);
        for (joint, at) in (0..count).zip(chain.joints(guess).unwrap()) {
            assert!(at.distance(corner(joint)) < 1e-5, "{joint}: {at:?}");
        }
    }

    /// Pushed down alike everywhere it is a chain that hangs, which the other solver finds its own way.
    #[test]
    fn pushed_down_it_hangs() {
        use super::super::super::hang::{Link, solve};
        let links: Vec<_> =
            (1..=40).map(|at| Link { length: 2.0 + f64::from(at % 5), weight: 0.01, centre: 1.0 }).collect();
        let end = Point::new(70.0, 12.0);
        let hung = solve(&links, end).unwrap();
        let lengths: Vec<_> = links.iter().map(|link| link.length).collect();
        let pushes = links[1..].iter().map(|_| Point::new(0.0, -0.01));
        let chain = Pushed::new(&lengths, pushes, Point::ORIGIN, end);
        for (one, other) in chain.joints(Point::new(0.2, -0.3)).unwrap().iter().zip(&hung.joints) {
            assert!(one.distance(*other) < 1e-5, "{one:?} {other:?}");
        }
    }
}
