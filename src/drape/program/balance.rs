//! What is left of weights by the forces that a round found.

use super::{Constraint, Net, Node, Round};

impl<const D: usize> Net<D> {
    /// The greatest force by which a joint is out of balance where it now is, along the axes in which it is not held, as a share
    /// of a joint's mean weight: that of its weight, of what is bent, and of the tensions and the pushes that a round found, each
    /// along its tie or its constraint as those now lie.
    pub fn imbalance(&self, constraints: &[Constraint<D>], round: &Round<D>) -> f64 {
        let mut forces: Vec<[f64; D]> =
            self.nodes.iter().map(|node| node.down.map(|share| share * node.weight)).collect();
        self.pull(&mut forces, round);
        self.straighten(&mut forces);
        for (constraint, force) in constraints.iter().zip(&round.forces) {
            constraint.terms.iter().for_each(|term| add(&mut forces[term.node], term.slope, *force));
        }
        let free = |(node, force): (&Node<D>, &[f64; D])| {
            let along = node.held.iter().zip(force).filter(|(held, _)| !**held);
            along.map(|(_, force)| force * force).sum::<f64>().sqrt()
        };
        let most = self.nodes.iter().zip(&forces).map(free).fold(0.0, f64::max);
        most * self.free() as f64 / self.weight()
    }

    /// Adds the tensions of ties.
    fn pull(&self, forces: &mut [[f64; D]], round: &Round<D>) {
        for (at, (tie, tension)) in self.ties.iter().zip(&round.tensions).enumerate() {
            let way = self.way(at);
            add(&mut forces[tie.ends[0]], way, *tension);
            add(&mut forces[tie.ends[1]], way, -tension);
        }
    }

    /// Adds the forces of what is bent.
    fn straighten(&self, forces: &mut [[f64; D]]) {
        for bend in &self.bends {
            let turn = self.turn(bend, 1.0);
            let turned = std::array::from_fn(|axis| turn.ways[1][axis] - turn.ways[0][axis]);
            for (node, share) in self.shares(bend) {
                add(&mut forces[node], turned, -turn.hardness * share);
            }
            for (node, pull) in self.along(bend, &turn) {
                add(&mut forces[node], pull, 1.0);
            }
        }
    }
}

/// Adds so many times a vector.
fn add<const D: usize>(sum: &mut [f64; D], part: [f64; D], times: f64) {
    sum.iter_mut().zip(part).for_each(|(sum, part)| *sum += times * part);
}
