//! One round of strands in contact: the lowest place of all joints that links and constraints allow.
//!
//! **Problem.** Least potential energy of all joints' weights and of what bends, in a plane (`D` is 2) or in
//! space (3); links at most as long as they are (second-order cones: tight under tension, their multiplier is the
//! tension), constraints not less than nothing. Ties that are pressed are no shorter along the way in which they lie; they
//! turn aside of it, and round by round become as long as they are (`press`). Some constraints may give way at a price
//! per mm ([`Net::price`]), which nothing that presses comes near where there is room; what gives way shows as overlap of
//! outlines.
//!
//! **Method.** The interior-point solver of the crate `clarabel`, with lengths in mm and weights in the
//! mean weight of a joint. A faint pull to the present place, which grows when rounds swing, has no part
//! in where they end.

mod balance;
mod cones;
mod pressed;

use clarabel::solver::{NonnegativeConeT, SecondOrderConeT, SupportedConeT};

use super::bend::{Bend, Turn};
use cones::{Energy, Matrix, Program};
pub use pressed::TENSE;

/// The direction straight down.
pub const fn down<const D: usize>() -> [f64; D] {
    let mut down = [0.0; D];
    down[1] = -1.0;
    down
}

/// A joint.
#[derive(Clone, Copy, Debug)]
pub struct Node<const D: usize> {
    /// Where it is.
    pub at: [f64; D],
    /// What it weighs in N.
    pub weight: f64,
    /// The unit vector along which its weight pulls.
    pub down: [f64; D],
    /// Along which axes it is held.
    pub held: [bool; D],
}

/// What is least is found to this share of itself: joints are off by about the root of it, as a share of the length.
const EXACT: f64 = 1e-10;
/// The same for a net from which a finer one starts.
const ROUGH: f64 = 1e-6;
/// How much farther apart than it is long a pressed tie's joints may come in a round, as a share: it turns by 8 degrees at
/// the most.
const TURNS: f64 = 0.01;

/// No cord is bent round less than this radius, in mm: what bends it so is its stiffness by the square of that.
const KINK: f64 = 2.0;

/// Two joints that are at most so many mm apart.
#[derive(Clone, Copy, Debug)]
pub struct Tie {
    pub ends: [usize; 2],
    pub length: f64,
    /// Whether it is pressed: it is as long along the way in which it lies, and turns aside of that.
    pub pressed: bool,
}

impl Tie {
    /// One in tension.
    pub const fn new(ends: [usize; 2], length: f64) -> Self {
        Self { ends, length, pressed: false }
    }
}

/// Joints and what holds them together.
#[derive(Clone, Debug, Default)]
pub struct Net<const D: usize> {
    pub nodes: Vec<Node<D>>,
    pub ties: Vec<Tie>,
    /// Stiff cord from ties to others that go on from them.
    pub bends: Vec<Bend>,
}

/// A joint and the slope of a constraint by its place.
#[derive(Clone, Copy, Debug)]
pub struct Term<const D: usize> {
    pub node: usize,
    pub slope: [f64; D],
}

/// The sum of slopes times places is to be nothing or more: it is the gap.
#[derive(Clone, Debug)]
pub struct Constraint<const D: usize> {
    pub terms: Vec<Term<D>>,
    pub gap: f64,
    /// Whether it may give way.
    pub gives: bool,
}

/// What a round found.
pub struct Round<const D: usize> {
    /// The joints.
    pub places: Vec<[f64; D]>,
    /// Tension of each tie, in N; less than nothing where it is pressed.
    pub tensions: Vec<f64>,
    /// Force of each constraint, in N.
    pub forces: Vec<f64>,
}

impl<const D: usize> Round<D> {
    /// How hard the hardest pressed tie is pressed, in N.
    pub fn thrust(&self) -> f64 {
        self.tensions.iter().fold(0.0, |most, tension| most.max(-tension))
    }
}

/// The free coordinates of a net, numbered.
struct Columns<const D: usize> {
    of: Vec<[Option<usize>; D]>,
    count: usize,
}

impl<const D: usize> Columns<D> {
    fn new(net: &Net<D>) -> Self {
        let mut count = 0;
        let mut number = |held: bool| {
            count += usize::from(!held);
            (!held).then(|| count - 1)
        };
        let of = net.nodes.iter().map(|node| node.held.map(&mut number)).collect();
        Self { of, count }
    }
}

impl<const D: usize> Net<D> {
    /// What all joints weigh, in N.
    pub fn weight(&self) -> f64 {
        self.nodes.iter().map(|node| node.weight).sum()
    }

    /// What each mm by which a constraint gives way costs, in N: as much as all weighs, and as the stiffest cord presses with
    /// where it is bent as sharply as any. Bars press on stiff cord many times as hard as all that hangs weighs.
    pub fn price(&self) -> f64 {
        let stiff = |bend: &Bend| {
            let [one, other] = bend.links.map(|link| self.ties[link].length);
            bend.hardness * 0.5 * (one + other)
        };
        let stiffest = self.bends.iter().map(stiff).fold(0.0, f64::max);
        self.weight() + stiffest / (KINK * KINK)
    }

    /// How many joints are not held, or one.
    fn free(&self) -> usize {
        self.nodes.iter().filter(|node| !node.held.iter().all(|held| *held)).count().max(1)
    }

    /// Solves one round; nothing where the solver finds no answer. `pull` is in mean weights per mm.
    pub fn solve(&self, constraints: &[Constraint<D>], pull: f64) -> Option<Round<D>> {
        self.solve_to(EXACT, constraints, pull)
    }

    /// The same less finely, for a net that is laid finer from there.
    pub fn solve_roughly(&self, constraints: &[Constraint<D>], pull: f64) -> Option<Round<D>> {
        self.solve_to(ROUGH, constraints, pull)
    }

    fn solve_to(&self, share: f64, constraints: &[Constraint<D>], pull: f64) -> Option<Round<D>> {
        let columns = Columns::new(self);
        let mean = self.weight() / self.free() as f64;
        let pushes: Vec<Constraint<D>> = self.pressed().map(|tie| self.push(tie)).collect();
        let all: Vec<&Constraint<D>> = constraints.iter().chain(&pushes).collect();
        let giving = all.iter().filter(|constraint| constraint.gives).count();
        let energy = self.energy(&columns, mean, pull, giving, self.price() / mean);
        let found = self.program(&columns, &all, energy).least(share)?;
        let multipliers = found.z.iter().map(|force| force * mean).collect::<Vec<_>>();
        Some(self.read(&columns, [constraints.len(), all.len() + giving], &found.x, &multipliers))
    }

    /// The round as the solver takes it: bounds of gaps and of what gives way, then a cone for each tie.
    fn program(&self, columns: &Columns<D>, constraints: &[&Constraint<D>], energy: Energy) -> Program {
        let (square, linear) = (energy.matrix(), energy.linear);
        let mut table = Matrix::default();
        let mut slacks = columns.count..linear.len();
        for constraint in constraints {
            let slack = if constraint.gives { slacks.next() } else { None };
            self.constraint(&mut table, columns, constraint, slack);
        }
        (columns.count..linear.len()).for_each(|slack| table.row(0.0, [(slack, -1.0)]));
        let mut cones: Vec<SupportedConeT<f64>> = vec![NonnegativeConeT(table.right.len())];
        for tie in &self.ties {
            self.length(&mut table, columns, tie);
            cones.push(SecondOrderConeT(D + 1));
        }
        let (matrix, right) = table.matrix(linear.len());
        Program { square, linear, matrix, right, cones }
    }

    /// The numbers of the ties that are pressed.
    fn pressed(&self) -> impl Iterator<Item = usize> {
        (0..self.ties.len()).filter(|tie| self.ties[*tie].pressed)
    }

    /// A tie is no shorter along the way in which it lies.
    fn push(&self, tie: usize) -> Constraint<D> {
        let (way, Tie { ends, length, .. }) = (self.way(tie), self.ties[tie]);
        let [one, other] = ends.map(|end| self.nodes[end].at);
        let terms = vec![Term { node: ends[1], slope: way }, Term { node: ends[0], slope: way.map(|part| -part) }];
        Constraint { terms, gap: distance(one, other) - length, gives: true }
    }

    fn energy(&self, columns: &Columns<D>, mean: f64, pull: f64, giving: usize, price: f64) -> Energy {
        let mut energy = Energy { square: Vec::new(), linear: vec![price; columns.count + giving] };
        for (node, free) in self.nodes.iter().zip(&columns.of) {
            for (axis, column) in free.iter().enumerate() {
                let rise = -node.down[axis] * node.weight / mean;
                column.iter().for_each(|column| energy.linear[*column] = rise - pull * node.at[axis]);
            }
        }
        energy.square.extend((0..columns.count).filter(|_| pull > 0.0).map(|column| (column, column, pull)));
        self.bends.iter().for_each(|bend| self.bend(&mut energy, columns, bend, mean));
        energy
    }

    /// Adds what a bend holds, less what it would gain if its ties were shorter.
    fn bend(&self, energy: &mut Energy, columns: &Columns<D>, bend: &Bend, mean: f64) {
        let turn = self.turn(bend, mean);
        let shares = self.shares(bend);
        for axis in 0..D {
            let held = shares.iter().filter(|(node, _)| columns.of[*node][axis].is_none());
            let constant = held.map(|(node, share)| share * self.nodes[*node].at[axis]).sum();
            let free = shares.iter().filter_map(|(node, share)| Some((columns.of[*node][axis]?, *share)));
            energy.bend(turn.hardness, &free.collect::<Vec<_>>(), constant);
        }
        for (node, pull) in self.along(bend, &turn) {
            let free = columns.of[node].iter().zip(pull);
            free.for_each(|(column, pull)| column.iter().for_each(|column| energy.linear[*column] -= pull));
        }
    }

    /// What all that is bent holds, in N mm.
    pub fn bent(&self) -> f64 {
        self.bends.iter().map(|bend| 0.5 * bend.hardness * self.turn(bend, 1.0).angle.powi(2)).sum()
    }

    /// A bend as its ties lie, its hardness in so many N.
    fn turn(&self, bend: &Bend, unit: f64) -> Turn<D> {
        Turn::new(bend.hardness / unit, bend.links.map(|link| self.way(link)))
    }

    /// The direction of a tie.
    fn way(&self, tie: usize) -> [f64; D] {
        let [from, to] = self.ties[tie].ends.map(|end| self.nodes[end].at);
        let distance = distance(from, to).max(f64::MIN_POSITIVE);
        std::array::from_fn(|axis| (to[axis] - from[axis]) / distance)
    }

    /// The way of the second tie of a bend less that of the first, each by its length, as shares of joints' places.
    fn shares(&self, bend: &Bend) -> Vec<(usize, f64)> {
        let mut shares: Vec<(usize, f64)> = Vec::with_capacity(4);
        for (tie, sign) in bend.links.iter().map(|link| &self.ties[*link]).zip([-1.0, 1.0]) {
            for (node, end) in tie.ends.iter().zip([-sign, sign]) {
                let share = end / tie.length;
                match shares.iter_mut().find(|(known, _)| known == node) {
                    Some((_, known)) => *known += share,
                    None => shares.push((*node, share)),
                }
            }
        }
        shares
    }

    /// With which a bend would pull the joints of its two ties nearer to each other.
    fn along(&self, bend: &Bend, turn: &Turn<D>) -> impl Iterator<Item = (usize, [f64; D])> {
        let of = |(link, way): (usize, [f64; D])| {
            let (tie, along) = (self.ties[link], turn.along);
            let ends = tie.ends.into_iter().zip([-1.0, 1.0]);
            ends.map(move |(node, end)| (node, way.map(|part| part * end * along / tie.length)))
        };
        bend.links.into_iter().zip(turn.ways).flat_map(of)
    }

    /// The gap and what gives way are nothing or more.
    fn constraint(&self, table: &mut Matrix, columns: &Columns<D>, constraint: &Constraint<D>, slack: Option<usize>) {
        let mut right = constraint.gap;
        let mut entries: Vec<(usize, f64)> = slack.map(|slack| (slack, -1.0)).into_iter().collect();
        for term in &constraint.terms {
            for axis in 0..D {
                if let Some(column) = columns.of[term.node][axis] {
                    right -= term.slope[axis] * self.nodes[term.node].at[axis];
                    entries.push((column, -term.slope[axis]));
                }
            }
        }
        table.row(right, entries);
    }

    /// A tie is as long as it is or shorter; a pressed one may turn.
    fn length(&self, table: &mut Matrix, columns: &Columns<D>, tie: &Tie) {
        table.row(if tie.pressed { tie.length * (1.0 + TURNS) } else { tie.length }, []);
        let ends = [(tie.ends[0], 1.0), (tie.ends[1], -1.0)];
        for axis in 0..D {
            let free = |&(node, sign): &(usize, f64)| Some((columns.of[node][axis]?, sign));
            let held = ends.iter().filter(|(node, _)| columns.of[*node][axis].is_none());
            let right: f64 = held.map(|(node, sign)| -sign * self.nodes[*node].at[axis]).sum();
            table.row(right, ends.iter().filter_map(free));
        }
    }

    fn read(&self, columns: &Columns<D>, [count, bounds]: [usize; 2], places: &[f64], multipliers: &[f64]) -> Round<D> {
        let place = |(node, free): (&Node<D>, &[Option<usize>; D])| {
            let mut at = node.at;
            at.iter_mut().zip(free).for_each(|(at, column)| column.iter().for_each(|column| *at = places[*column]));
            at
        };
        let mut tensions: Vec<f64> = multipliers.iter().skip(bounds).step_by(D + 1).copied().collect();
        self.pressed().zip(&multipliers[count..]).for_each(|(tie, push)| tensions[tie] -= push);
        Round {
            places: self.nodes.iter().zip(&columns.of).map(place).collect(),
            tensions,
            forces: multipliers[..count].to_vec(),
        }
    }

    /// Puts the joints where a round found them.
    pub fn go(&mut self, places: &[[f64; D]]) {
        self.nodes.iter_mut().zip(places).for_each(|(node, place)| node.at = *place);
    }
}

fn distance<const D: usize>(one: [f64; D], other: [f64; D]) -> f64 {
    one.iter().zip(other).map(|(a, b)| (a - b) * (a - b)).sum::<f64>().sqrt()
}

#[cfg(test)]
mod tests;
