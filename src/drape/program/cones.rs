//! A second-order cone program as the solver takes it. Its columns are in mm, its energies in a unit of force of its own
//! times mm.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{DefaultSettings, DefaultSolution, DefaultSolver, IPSolver, SolverStatus, SupportedConeT};

/// The finest share of itself to which what is least is found without refining the solver's steps: rods that bars hold come to
/// no rest in finer rounds whose steps are not refined.
const UNREFINED: f64 = 1e-8;

/// A second-order cone program: half of a square form and a linear one to be made least, where what is `right` less `matrix`
/// times the answer lies in the cones.
pub struct Program {
    pub square: CscMatrix<f64>,
    pub linear: Vec<f64>,
    pub matrix: CscMatrix<f64>,
    pub right: Vec<f64>,
    pub cones: Vec<SupportedConeT<f64>>,
}

impl Program {
    /// What makes it least, to a share of itself. Where that is rough the solver's steps are exact enough as they are
    /// factored: what it ends with is held against the same bounds, and refining each step takes a third of its time.
    pub fn least(&self, share: f64) -> Option<DefaultSolution<f64>> {
        let refined = share < UNREFINED;
        let found = self.solved(share, refined);
        let found = if refined || found.status == SolverStatus::Solved { found } else { self.solved(share, true) };
        matches!(found.status, SolverStatus::Solved | SolverStatus::AlmostSolved).then_some(found)
    }

    fn solved(&self, share: f64, refined: bool) -> DefaultSolution<f64> {
        let settings = DefaultSettings {
            verbose: false,
            tol_gap_abs: share,
            tol_gap_rel: share,
            iterative_refinement_enable: refined,
            ..DefaultSettings::default()
        };
        let mut solver =
            DefaultSolver::new(&self.square, &self.linear, &self.matrix, &self.right, &self.cones, settings);
        solver.solve();
        solver.solution
    }
}

/// What is least: half of a square form and a line.
pub struct Energy {
    /// Row, column and value of its entries on and above the diagonal.
    pub square: Vec<(usize, usize, f64)>,
    pub linear: Vec<f64>,
}

impl Energy {
    /// Adds half of a hardness times the square of a sum of shares of columns and a constant.
    pub fn bend(&mut self, hardness: f64, shares: &[(usize, f64)], constant: f64) {
        for (at, share) in shares {
            self.linear[*at] += hardness * share * constant;
            let above = shares.iter().filter(|(other, _)| other >= at);
            self.square.extend(above.map(|(other, part)| (*at, *other, hardness * share * part)));
        }
    }

    pub fn matrix(&self) -> CscMatrix<f64> {
        let part = |pick: fn(&(usize, usize, f64)) -> usize| self.square.iter().map(pick).collect();
        let values = self.square.iter().map(|(.., value)| *value).collect();
        CscMatrix::new_from_triplets(self.linear.len(), self.linear.len(), part(|at| at.0), part(|at| at.1), values)
    }
}

/// The program's matrix, a row at a time.
#[derive(Default)]
pub struct Matrix {
    rows: Vec<usize>,
    columns: Vec<usize>,
    values: Vec<f64>,
    pub right: Vec<f64>,
}

impl Matrix {
    /// A row by which `right` less the sum of its entries is what the cone holds.
    pub fn row(&mut self, right: f64, entries: impl IntoIterator<Item = (usize, f64)>) {
        for (column, value) in entries {
            self.rows.push(self.right.len());
            self.columns.push(column);
            self.values.push(value);
        }
        self.right.push(right);
    }

    pub fn matrix(self, columns: usize) -> (CscMatrix<f64>, Vec<f64>) {
        (CscMatrix::new_from_triplets(self.right.len(), columns, self.rows, self.columns, self.values), self.right)
    }
}
