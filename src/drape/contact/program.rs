//! One round: the lowest place of all joints that links and rows allow.
//!
//! **Problem.** Least potential energy of all joints' weights, links at most as long as they are
//! (second-order cones: tight under tension, their multiplier is the tension), rows not less than nothing.
//! Each row may give way at a price per mm, the weight of all that hangs, which no contact comes near
//! where there is room; what gives way shows as overlap of outlines.
//!
//! **Method.** The interior-point solver of the crate `clarabel`, with lengths in mm and weights in the
//! mean weight of a joint. A faint pull to the present place, which grows when rounds swing, has no part
//! in where they end.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettings, DefaultSolver, IPSolver, NonnegativeConeT, SecondOrderConeT, SolverStatus, SupportedConeT,
};

use super::rope::Rope;
use super::rows::Row;
use crate::geometry::Point;

/// What a round found.
pub struct Round {
    /// The joints of each strand.
    pub places: Vec<Vec<Point>>,
    /// Tension of each link of each strand, in N.
    pub tensions: Vec<Vec<f64>>,
    /// Force of each row, in N.
    pub forces: Vec<f64>,
}

/// The program's matrix, a row at a time.
#[derive(Default)]
struct Table {
    rows: Vec<usize>,
    columns: Vec<usize>,
    values: Vec<f64>,
    right: Vec<f64>,
}

impl Table {
    /// A row by which `right` less the sum of its entries is what the cone holds.
    fn row(&mut self, right: f64, entries: impl IntoIterator<Item = (usize, f64)>) {
        for (column, value) in entries {
            self.rows.push(self.right.len());
            self.columns.push(column);
            self.values.push(value);
        }
        self.right.push(right);
    }

    fn matrix(self, columns: usize) -> (CscMatrix<f64>, Vec<f64>) {
        (CscMatrix::new_from_triplets(self.right.len(), columns, self.rows, self.columns, self.values), self.right)
    }
}

/// The free joints of all strands, numbered.
struct Joints<'a> {
    ropes: &'a [Rope],
    first: Vec<usize>,
    count: usize,
}

impl<'a> Joints<'a> {
    fn new(ropes: &'a [Rope]) -> Self {
        let mut count = 0;
        let first = ropes.iter().map(|rope| {
            count += rope.joints.len() - 2;
            count - (rope.joints.len() - 2)
        });
        let first = first.collect();
        Self { ropes, first, count }
    }

    /// The number of a joint that may move.
    fn free(&self, strand: usize, joint: usize) -> Option<usize> {
        (joint > 0 && joint + 1 < self.ropes[strand].joints.len()).then(|| self.first[strand] + joint - 1)
    }

    fn at(&self, strand: usize, joint: usize) -> Point {
        self.ropes[strand].joints[joint].at
    }
}

/// Solves one round; nothing where the solver finds no answer. `pull` is in mean weights per mm.
pub fn solve(ropes: &[Rope], rows: &[Row], pull: f64) -> Option<Round> {
    let joints = Joints::new(ropes);
    let columns = 2 * joints.count + rows.len();
    let weights: Vec<Vec<f64>> = ropes.iter().map(Rope::weights).collect();
    let whole: f64 = weights.iter().flatten().sum();
    let mean = whole / joints.count as f64;
    let (square, linear) = energy(&joints, &weights, mean, rows.len(), pull);
    let mut table = Table::default();
    for (at, row) in rows.iter().enumerate() {
        contact(&mut table, &joints, row, 2 * joints.count + at);
    }
    (2 * joints.count..columns).for_each(|slack| table.row(0.0, [(slack, -1.0)]));
    let mut cones: Vec<SupportedConeT<f64>> = vec![NonnegativeConeT(2 * rows.len())];
    for (strand, rope) in ropes.iter().enumerate() {
        for link in 0..rope.links.len() {
            length(&mut table, &joints, strand, link);
            cones.push(SecondOrderConeT(3));
        }
    }
    let (matrix, right) = table.matrix(columns);
    let settings = DefaultSettings { verbose: false, ..DefaultSettings::default() };
    let mut solver = DefaultSolver::new(&square, &linear, &matrix, &right, &cones, settings);
    solver.solve();
    let solved = matches!(solver.solution.status, SolverStatus::Solved | SolverStatus::AlmostSolved);
    solved.then(|| read(&joints, rows.len(), &solver.solution.x, &solver.solution.z, mean))
}

fn energy(joints: &Joints<'_>, weights: &[Vec<f64>], mean: f64, rows: usize, pull: f64) -> (CscMatrix<f64>, Vec<f64>) {
    let mut linear = Vec::with_capacity(2 * joints.count + rows);
    for (rope, weights) in joints.ropes.iter().zip(weights) {
        for (joint, weight) in rope.joints.iter().zip(weights).skip(1).take(rope.joints.len() - 2) {
            linear.extend([-pull * joint.at.x, weight / mean - pull * joint.at.y]);
        }
    }
    linear.resize(2 * joints.count + rows, joints.count as f64);
    let places: Vec<usize> = if pull > 0.0 { (0..2 * joints.count).collect() } else { Vec::new() };
    let values = vec![pull; places.len()];
    (CscMatrix::new_from_triplets(linear.len(), linear.len(), places.clone(), places, values), linear)
}

/// The gap and what gives way are nothing or more.
fn contact(table: &mut Table, joints: &Joints<'_>, row: &Row, slack: usize) {
    let mut right = row.gap;
    let mut entries = vec![(slack, -1.0)];
    for term in &row.terms {
        if let Some(free) = joints.free(term.strand, term.joint) {
            let at = joints.at(term.strand, term.joint);
            right -= term.slope.dot(at);
            entries.extend([(2 * free, -term.slope.x), (2 * free + 1, -term.slope.y)]);
        }
    }
    table.row(right, entries);
}

/// A link is as long as it is or shorter.
fn length(table: &mut Table, joints: &Joints<'_>, strand: usize, link: usize) {
    table.row(joints.ropes[strand].links[link].length, []);
    let ends = [(link, 1.0), (link + 1, -1.0)];
    let fixed = |pick: fn(Point) -> f64| -> f64 {
        let held = ends.iter().filter(|(joint, _)| joints.free(strand, *joint).is_none());
        held.map(|(joint, sign)| -sign * pick(joints.at(strand, *joint))).sum()
    };
    for (axis, right) in [fixed(|at| at.x), fixed(|at| at.y)].into_iter().enumerate() {
        let free = ends.iter().filter_map(|&(joint, sign)| Some((2 * joints.free(strand, joint)? + axis, sign)));
        table.row(right, free);
    }
}

fn read(joints: &Joints<'_>, rows: usize, places: &[f64], multipliers: &[f64], mean: f64) -> Round {
    let place = |strand: usize, joint: usize| {
        joints
            .free(strand, joint)
            .map_or_else(|| joints.at(strand, joint), |free| Point::new(places[2 * free], places[2 * free + 1]))
    };
    let strands = || joints.ropes.iter().enumerate();
    let mut tension = multipliers.iter().skip(2 * rows).step_by(3).map(|tension| tension * mean);
    Round {
        places: strands().map(|(at, rope)| (0..rope.joints.len()).map(|joint| place(at, joint)).collect()).collect(),
        tensions: strands().map(|(_, rope)| tension.by_ref().take(rope.links.len()).collect()).collect(),
        forces: multipliers.iter().take(rows).map(|force| force * mean).collect(),
    }
}

/// The greatest force in N by which a free joint is out of balance at a place, under the tensions and the forces
/// of rows that a round from there found.
pub fn imbalance(ropes: &[Rope], rows: &[Row], round: &Round) -> f64 {
    let joints = Joints::new(ropes);
    let mut forces: Vec<Vec<Point>> =
        ropes.iter().map(|rope| rope.weights().iter().map(|weight| Point::new(0.0, -weight)).collect()).collect();
    for (at, (rope, tensions)) in ropes.iter().zip(&round.tensions).enumerate() {
        for (link, (pair, tension)) in rope.joints.windows(2).zip(tensions).enumerate() {
            let way = pair[1].at - pair[0].at;
            let pull = if way.length() > 0.0 { way * (tension / way.length()) } else { way };
            forces[at][link] = forces[at][link] + pull;
            forces[at][link + 1] = forces[at][link + 1] - pull;
        }
    }
    for (row, force) in rows.iter().zip(&round.forces) {
        for term in &row.terms {
            forces[term.strand][term.joint] = forces[term.strand][term.joint] + term.slope * *force;
        }
    }
    let free = |strand: usize, joint: usize| joints.free(strand, joint).is_some();
    let each =
        forces.iter().enumerate().flat_map(|(strand, forces)| forces.iter().enumerate().map(move |one| (strand, one)));
    each.filter(|(strand, (joint, _))| free(*strand, *joint)).map(|(_, (_, force))| force.length()).fold(0.0, f64::max)
}
