//! The shortest closed way through a row of gates, as taut cord takes it through the mouths of beads.
//!
//! **Problem.** Of all closed lines that pass given segments in their order, the shortest. Lengths are mm.
//!
//! **Method.** Each gate's point is moved to where the straight line between its neighbours' points passes the gate, or
//! to the end of the gate beyond which it passes, one after another, over and over. Every move shortens the line, which
//! is a convex function of all the points, until none moves by more than 1e-7 mm.
//!
//! **Source.** Coordinate descent on a convex function: any textbook of optimisation.

use super::Point;

/// Moved no more often.
const ROUNDS: u32 = 2_000;
/// Points that move by less, in mm, have settled.
const SETTLED: f64 = 1e-7;

/// A segment to pass.
#[derive(Clone, Copy, Debug)]
pub struct Gate {
    /// Its middle.
    pub at: Point,
    /// The unit vector along it.
    pub across: Point,
    /// Half its length.
    pub play: f64,
}

/// The length of the shortest closed way through gates in their order.
#[must_use]
pub fn shortest(gates: Vec<Gate>) -> f64 {
    let mut points: Vec<_> = gates.iter().map(|gate| gate.at).collect();
    let count = points.len();
    for _ in 0..ROUNDS {
        let mut moved = 0.0_f64;
        for (at, gate) in gates.iter().enumerate() {
            let point = gate.nearest(points[(at + count - 1) % count], points[(at + 1) % count]);
            moved = moved.max(point.distance(points[at]));
            points[at] = point;
        }
        if moved < SETTLED {
            break;
        }
    }
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(one, next)| one.distance(*next)).sum()
}

impl Gate {
    /// Its point on the shortest way from one point through it to another.
    fn nearest(&self, from: Point, to: Point) -> Point {
        let along = Point::new(self.across.y, -self.across.x);
        let off = |point: Point| ((point - self.at).dot(along).abs(), (point - self.at).dot(self.across));
        let ((before, one), (after, other)) = (off(from), off(to));
        let whole = before + after;
        let straight = if whole > 0.0 { (one * after + other * before) / whole } else { 0.5 * (one + other) };
        self.at + self.across * straight.clamp(-self.play, self.play)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cord_hugs_the_inner_side_of_its_gates() {
        // Gates on the radii of a circle of 10 mm, 1 mm to either side: a hexagon whose corners lie at 9 mm.
        let gate = |at: u32| {
            let out = Point::towards(f64::from(at) * std::f64::consts::FRAC_PI_3);
            Gate { at: out * 10.0, across: out, play: 1.0 }
        };
        assert!((shortest((0..6).map(gate).collect()) - 54.0).abs() < 1e-6);
    }

    #[test]
    fn cord_runs_straight_where_gates_let_it() {
        // There and back between two ends, past gates that are off the line by less than their play.
        let gate = |x: f64, y: f64, play: f64| Gate { at: Point::new(x, y), across: Point::new(0.0, 1.0), play };
        let gates = vec![gate(0.0, 0.0, 0.0), gate(3.0, 0.4, 0.5), gate(7.0, -0.3, 0.5), gate(10.0, 0.0, 0.0)];
        assert!((shortest(gates) - 20.0).abs() < 1e-6);
        let bent = vec![gate(0.0, 0.0, 0.0), gate(3.0, 4.5, 0.5), gate(6.0, 0.0, 0.0)];
        assert!((shortest(bent) - 16.0).abs() < 1e-6);
    }
}
