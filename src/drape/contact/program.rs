//! One round of strands on the board: their joints and links as one net in the plane, all rows of which may give
//! way (see [`super::super::program`]).

use std::collections::BTreeMap;

use super::super::bar::Bar;
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
    /// All tensions and forces, those of bars too.
    whole: program::Round<2>,
}

/// Strands as one net.
#[derive(Default)]
struct Web {
    net: Net<2>,
    /// The node of each strand's first joint; its others follow.
    first: Vec<usize>,
    /// What several strands go through.
    bars: Vec<Bar>,
}

impl Web {
    fn new(ropes: &[Rope]) -> Self {
        let mut web = Self::default();
        ropes.iter().for_each(|rope| web.add(rope));
        web.bars = web.bars(ropes);
        web.net.ties.extend(web.bars.iter().map(Bar::tie));
        web
    }

    /// What several strands go through holds their joints on both sides of it apart.
    fn bars(&self, ropes: &[Rope]) -> Vec<Bar> {
        let mut bars: BTreeMap<([usize; 2], usize), Vec<(f64, usize)>> = BTreeMap::new();
        for (rope, first) in ropes.iter().zip(&self.first) {
            for ((link, passage), side) in rope.passages.iter().flat_map(|passage| [(passage, 0), (passage, 1)]) {
                bars.entry((passage.of, side)).or_default().push((passage.across, first + link + side));
            }
        }
        bars.into_values().filter_map(Bar::new).collect()
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

    /// What keeps sides apart, and then what holds bars, where no joint went farther in the last round than so many mm.
    fn rows(&self, rows: &[Row], went: f64) -> Vec<program::Row<2>> {
        let term = |term: &super::rows::Term| Term {
            node: self.first[term.strand] + term.joint,
            slope: [term.slope.x, term.slope.y],
        };
        let row = |row: &Row| program::Row { terms: row.terms.iter().map(term).collect(), gap: row.gap, gives: true };
        rows.iter().map(row).chain(self.bars.iter().flat_map(|bar| bar.rows(&self.net, went))).collect()
    }
}

/// By how much any bar's joints are nearer to each other or farther apart than it holds them, in mm.
pub fn off_bars(ropes: &[Rope]) -> f64 {
    let web = Web::new(ropes);
    web.bars.iter().map(|bar| bar.off(&web.net)).fold(0.0, f64::max)
}

/// Solves one round after one in which no joint went farther than so many mm; nothing where the solver finds no answer.
/// `pull` is in mean weights per mm.
pub fn solve(ropes: &[Rope], rows: &[Row], pull: f64, went: f64) -> Option<Round> {
    let web = Web::new(ropes);
    let found = web.net.solve(&web.rows(rows, went), pull)?;
    let mut places = found.places.iter().map(|[x, y]| Point::new(*x, *y));
    let mut tensions = found.tensions.iter().copied();
    Some(Round {
        places: ropes.iter().map(|rope| places.by_ref().take(rope.joints.len()).collect()).collect(),
        tensions: ropes.iter().map(|rope| tensions.by_ref().take(rope.links.len()).collect()).collect(),
        forces: found.forces[..rows.len()].to_vec(),
        whole: found,
    })
}

/// The greatest force in N by which a free joint is out of balance at a place, under the tensions and the forces
/// of rows that a round from there found, after one in which no joint went farther than so many mm.
pub fn imbalance(ropes: &[Rope], rows: &[Row], round: &Round, went: f64) -> f64 {
    let web = Web::new(ropes);
    web.net.imbalance(&web.rows(rows, went), &round.whole)
}
