//! One round of strands on the board: their joints and links as one net in the plane, all rows of which may give
//! way (see [`super::super::program`]).

use super::super::program::{self, Net, Node, Term, Tie};
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

/// Strands as one net.
#[derive(Default)]
struct Web {
    net: Net<2>,
    /// The node of each strand's first joint; its others follow.
    first: Vec<usize>,
}

impl Web {
    fn new(ropes: &[Rope]) -> Self {
        let mut web = Self::default();
        ropes.iter().for_each(|rope| web.add(rope));
        web
    }

    /// Adds a strand, held at both ends.
    fn add(&mut self, rope: &Rope) {
        let (start, last) = (self.net.nodes.len(), rope.joints.len() - 1);
        let joints = rope.joints.iter().zip(rope.weights()).enumerate();
        self.net.nodes.extend(joints.map(|(at, (joint, weight))| Node {
            at: [joint.at.x, joint.at.y],
            weight,
            down: program::down(),
            held: [at == 0 || at == last; 2],
        }));
        let links = rope.links.iter().zip(start..);
        self.net.ties.extend(links.map(|(link, from)| Tie { ends: [from, from + 1], length: link.length }));
        self.first.push(start);
    }

    fn rows(&self, rows: &[Row]) -> Vec<program::Row<2>> {
        let term = |term: &super::rows::Term| Term {
            node: self.first[term.strand] + term.joint,
            slope: [term.slope.x, term.slope.y],
        };
        let row = |row: &Row| program::Row { terms: row.terms.iter().map(term).collect(), gap: row.gap, gives: true };
        rows.iter().map(row).collect()
    }
}

/// Solves one round; nothing where the solver finds no answer. `pull` is in mean weights per mm.
pub fn solve(ropes: &[Rope], rows: &[Row], pull: f64) -> Option<Round> {
    let web = Web::new(ropes);
    let found = web.net.solve(&web.rows(rows), pull)?;
    let mut places = found.places.into_iter().map(|[x, y]| Point::new(x, y));
    let mut tensions = found.tensions.into_iter();
    Some(Round {
        places: ropes.iter().map(|rope| places.by_ref().take(rope.joints.len()).collect()).collect(),
        tensions: ropes.iter().map(|rope| tensions.by_ref().take(rope.links.len()).collect()).collect(),
        forces: found.forces,
    })
}

/// The greatest force in N by which a free joint is out of balance at a place, under the tensions and the forces
/// of rows that a round from there found.
pub fn imbalance(ropes: &[Rope], rows: &[Row], round: &Round) -> f64 {
    let web = Web::new(ropes);
    let (tensions, forces) = (round.tensions.concat(), round.forces.clone());
    web.net.imbalance(&web.rows(rows), &program::Round { places: Vec::new(), tensions, forces })
}
