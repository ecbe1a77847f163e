//! Rigid bars in a net: what holds joints of several strands in one straight line, so far from each other.
//!
//! What several strands go through, a spacer bar or a bead with several holes, is two such lines, at both ends of its holes.
//! They may slide along each other: holes are wider than cord, so that a bar leans on its strands as far as their lengths ask
//! for.

use std::collections::BTreeMap;

use super::program::{Constraint, Net, Term, Tie};
use crate::design::Passage;

/// A bar turns no farther in a round, in radians.
const TURNS: f64 = 0.5;
/// And may always turn so far, by which it is told shorter by less than 0.0001 of its length.
const LEAST: f64 = 0.01;

/// A bar.
#[derive(Clone, Debug)]
pub struct RigidBar {
    /// The joints that it holds, by how far along it each is, in mm, in their order.
    joints: Vec<(f64, usize)>,
    /// Joints of its first strand before and after it, where that runs through it.
    through: Option<[usize; 2]>,
}

impl RigidBar {
    /// A bar that holds joints; nothing where they are fewer than two.
    pub fn new(mut joints: Vec<(f64, usize)>) -> Option<Self> {
        joints.sort_by(|one, other| one.0.total_cmp(&other.0));
        (joints.len() > 1).then_some(Self { joints, through: None })
    }

    /// The joints in their order, each with how far along it is in mm.
    pub fn joints(&self) -> &[(f64, usize)] {
        &self.joints
    }

    /// Its outermost joints.
    fn ends(&self) -> [(f64, usize); 2] {
        [self.joints[0], self.joints[self.joints.len() - 1]]
    }

    fn length(&self) -> f64 {
        let [first, last] = self.ends();
        last.0 - first.0
    }

    /// What keeps its outermost joints from parting.
    fn tie(&self) -> Tie {
        Tie::new(self.ends().map(|(_, node)| node), self.length())
    }

    /// From its first joint to its last.
    fn span<const D: usize>(&self, net: &Net<D>) -> [f64; D] {
        let [first, last] = self.ends().map(|(_, node)| net.nodes[node].at);
        less(last, first)
    }

    /// By how much its outermost joints are nearer to each other than it holds them, or farther, in mm.
    fn off<const D: usize>(&self, net: &Net<D>) -> f64 {
        (length(self.span(net)) - self.length()).abs()
    }

    /// How far in radians it may turn in the next round: twice as far as in the last, which began at another place of the
    /// net.
    fn next_turn<const D: usize>(&self, before: &Net<D>, now: &Net<D>) -> f64 {
        let [one, other] = [before, now].map(|net| unit(self.span(net)));
        let turned = one.zip(other).map(|(one, other)| length(less(one, other)));
        (2.0 * turned.unwrap_or(TURNS)).clamp(LEAST, TURNS)
    }

    /// What keeps its joints apart and in line while it turns so far in radians at the most; `out` is the unit vector
    /// outward from a strand that runs along a vector, where bars are kept to it.
    fn constraints<const D: usize>(
        &self,
        net: &Net<D>,
        turn: f64,
        out: impl Fn([f64; D]) -> Option<[f64; D]>,
    ) -> Vec<Constraint<D>> {
        self.spread(net, turn, out).into_iter().chain(self.straight(net)).collect()
    }

    /// It keeps its outermost joints apart, the last outside the first.
    fn spread<const D: usize>(
        &self,
        net: &Net<D>,
        turn: f64,
        out: impl Fn([f64; D]) -> Option<[f64; D]>,
    ) -> Option<Constraint<D>> {
        let [first, last] = self.ends().map(|(_, node)| node);
        let at = |node: usize| net.nodes[node].at;
        let apart = self.span(net);
        let outward = self.through.and_then(|[before, after]| out(less(at(after), at(before))));
        let along = match outward {
            Some(outward) if dot(apart, outward) <= 0.0 => outward,
            _ => unit(apart)?,
        };
        let terms = vec![Term { node: last, slope: along }, Term { node: first, slope: along.map(|part| -part) }];
        Some(Constraint { terms, gap: dot(apart, along) - self.length() * libm::cos(turn), gives: true })
    }

    /// The joints between its outermost ones stay in line with them: no farther to either side along any axis.
    fn straight<const D: usize>(&self, net: &Net<D>) -> Vec<Constraint<D>> {
        let [first, last] = self.ends();
        let mut constraints = Vec::new();
        for (along, node) in &self.joints[1..self.joints.len() - 1] {
            let share = (along - first.0) / self.length();
            let of = [(*node, 1.0), (first.1, share - 1.0), (last.1, -share)];
            for (axis, sign) in (0..D).flat_map(|axis| [(axis, 1.0), (axis, -1.0)]) {
                let off: f64 = of.iter().map(|(node, part)| part * net.nodes[*node].at[axis]).sum();
                let mut slope = [0.0; D];
                slope[axis] = sign;
                let term = |&(node, part): &(usize, f64)| Term { node, slope: slope.map(|one: f64| one * part) };
                constraints.push(Constraint { terms: of.iter().map(term).collect(), gap: sign * off, gives: true });
            }
        }
        constraints
    }
}

/// All bars of a net.
#[derive(Clone, Debug, Default)]
pub struct Bars {
    bars: Vec<RigidBar>,
    /// How far in radians each of them may turn in the next round.
    turns: Vec<f64>,
}

impl Bars {
    /// Adds bars, which may turn as far as any.
    pub fn add(&mut self, bars: impl IntoIterator<Item = RigidBar>) {
        self.bars.extend(bars);
        self.turns.resize(self.bars.len(), TURNS);
    }

    /// What keeps the outermost joints of each from parting.
    pub fn ties(&self) -> impl Iterator<Item = Tie> {
        self.bars.iter().map(RigidBar::tie)
    }

    /// One by one.
    pub fn iter(&self) -> impl Iterator<Item = &RigidBar> {
        self.bars.iter()
    }

    /// By how much any bar's joints are nearer to each other or farther apart than it holds them, in mm.
    pub fn off<const D: usize>(&self, net: &Net<D>) -> f64 {
        self.bars.iter().map(|bar| bar.off(net)).fold(0.0, f64::max)
    }

    /// What holds them; `out` as for one bar: the unit vector outward from a strand that runs along a vector.
    pub fn constraints<const D: usize>(
        &self,
        net: &Net<D>,
        out: impl Fn([f64; D]) -> Option<[f64; D]>,
    ) -> Vec<Constraint<D>> {
        let bars = self.bars.iter().zip(&self.turns);
        bars.flat_map(|(bar, turn)| bar.constraints(net, *turn, &out)).collect()
    }

    /// Puts a net's joints where a round found them.
    pub fn go<const D: usize>(&mut self, net: &mut Net<D>, places: &[[f64; D]]) {
        let before = net.clone();
        net.go(places);
        self.turns = self.bars.iter().map(|bar| bar.next_turn(&before, net)).collect();
    }
}

/// The bars that hold the joints at both ends of strands' passages through what they share.
pub fn crossbars(passages: impl Iterator<Item = (Passage, [usize; 2])>) -> Vec<RigidBar> {
    let mut shared: BTreeMap<[usize; 2], Vec<(f64, [usize; 2])>> = BTreeMap::new();
    for (Passage { of, across }, ends) in passages {
        shared.entry(of).or_default().push((across, ends));
    }
    let bar = |strands: &Vec<(f64, [usize; 2])>, end: usize| {
        let first = strands.iter().min_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, ends)| *ends);
        let bar = RigidBar::new(strands.iter().map(|(across, ends)| (*across, ends[end])).collect())?;
        Some(RigidBar { through: first, ..bar })
    };
    shared.values().flat_map(|strands| [bar(strands, 0), bar(strands, 1)]).flatten().collect()
}

fn less<const D: usize>(one: [f64; D], other: [f64; D]) -> [f64; D] {
    std::array::from_fn(|axis| one[axis] - other[axis])
}

fn dot<const D: usize>(one: [f64; D], other: [f64; D]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

fn length<const D: usize>(vector: [f64; D]) -> f64 {
    dot(vector, vector).sqrt()
}

/// A vector's direction, in shares of its length; none where it has no length.
pub fn unit<const D: usize>(vector: [f64; D]) -> Option<[f64; D]> {
    let length = length(vector);
    (length > 0.0).then(|| vector.map(|part| part / length))
}
