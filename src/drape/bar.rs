//! Rigid bars in a net: what holds joints of several strands in one straight line, so far from each other.

use super::program::{Net, Row, Term, Tie};

/// A bar turns no farther in a round, in radians.
const TURNS: f64 = 0.5;

/// The joints that a bar holds, by how far along it each is, in mm.
#[derive(Clone, Debug)]
pub struct Bar(Vec<(f64, usize)>);

impl Bar {
    /// A bar that holds joints; nothing where they are fewer than two.
    pub fn new(mut joints: Vec<(f64, usize)>) -> Option<Self> {
        joints.sort_by(|one, other| one.0.total_cmp(&other.0));
        (joints.len() > 1).then_some(Self(joints))
    }

    /// The joints in their order.
    pub fn joints(&self) -> &[(f64, usize)] {
        &self.0
    }

    /// Its outermost joints.
    fn ends(&self) -> [(f64, usize); 2] {
        [self.0[0], self.0[self.0.len() - 1]]
    }

    fn length(&self) -> f64 {
        let [first, last] = self.ends();
        last.0 - first.0
    }

    /// What keeps its outermost joints from parting.
    pub fn tie(&self) -> Tie {
        Tie { ends: self.ends().map(|(_, node)| node), length: self.length() }
    }

    /// By how much its outermost joints are nearer to each other than it holds them, or farther, in mm.
    pub fn off<const D: usize>(&self, net: &Net<D>) -> f64 {
        let [first, last] = self.ends().map(|(_, node)| net.nodes[node].at);
        (length(less(last, first)) - self.length()).abs()
    }

    /// What keeps its joints apart and in line, where no joint of the net went farther in the last round than so many mm.
    pub fn rows<const D: usize>(&self, net: &Net<D>, went: f64) -> Vec<Row<D>> {
        self.spread(net, went).into_iter().chain(self.straight(net)).collect()
    }

    /// It keeps its outermost joints apart, and may turn twice as far as in the last round.
    fn spread<const D: usize>(&self, net: &Net<D>, went: f64) -> Option<Row<D>> {
        let [first, last] = self.ends().map(|(_, node)| node);
        let apart = less(net.nodes[last].at, net.nodes[first].at);
        let far = length(apart);
        let along = apart.map(|part| part / far);
        let terms = vec![Term { node: last, slope: along }, Term { node: first, slope: along.map(|part| -part) }];
        let turned = libm::cos((4.0 * went / self.length()).min(TURNS));
        (far > 0.0).then(|| Row { terms, gap: far - self.length() * turned, gives: true })
    }

    /// The joints between its outermost ones stay in line with them: no farther to either side along any axis.
    fn straight<const D: usize>(&self, net: &Net<D>) -> Vec<Row<D>> {
        let [first, last] = self.ends();
        let mut rows = Vec::new();
        for (along, node) in &self.0[1..self.0.len() - 1] {
            let share = (along - first.0) / self.length();
            let of = [(*node, 1.0), (first.1, share - 1.0), (last.1, -share)];
            for (axis, sign) in (0..D).flat_map(|axis| [(axis, 1.0), (axis, -1.0)]) {
                let off: f64 = of.iter().map(|(node, part)| part * net.nodes[*node].at[axis]).sum();
                let mut slope = [0.0; D];
                slope[axis] = sign;
                let term = |&(node, part): &(usize, f64)| Term { node, slope: slope.map(|one: f64| one * part) };
                rows.push(Row { terms: of.iter().map(term).collect(), gap: sign * off, gives: true });
            }
        }
        rows
    }
}

fn less<const D: usize>(one: [f64; D], other: [f64; D]) -> [f64; D] {
    std::array::from_fn(|axis| one[axis] - other[axis])
}

fn length<const D: usize>(vector: [f64; D]) -> f64 {
    vector.iter().map(|part| part * part).sum::<f64>().sqrt()
}
