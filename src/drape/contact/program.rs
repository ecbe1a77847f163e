//! One round of strands on the board: their joints and links as one net in the plane, all contacts of which may give
//! way (see [`super::super::program`]).

use super::super::bar::{Bars, crossbars, unit};
use super::super::bend::Bend;
use super::super::program::{self, Net, Node, Term, Tie};
use super::contacts::Contact;
use super::rope::Rope;
use crate::design::Passage;
use crate::geometry::Point;

/// What gives way presses as hard as that costs, to this share.
const GIVES: f64 = 0.99;

/// What a round found.
pub struct RoundOutcome {
    /// The joints of each strand.
    pub places: Vec<Vec<Point>>,
    /// Tension of each link of each strand, in N.
    pub tensions: Vec<Vec<f64>>,
    /// Force of each contact, in N.
    pub forces: Vec<f64>,
    /// All tensions and forces, those of bars too.
    whole: program::Round<2>,
}

/// Strands as one net.
#[derive(Clone, Default)]
pub struct Web {
    net: Net<2>,
    /// The node of each strand's first joint; its others follow.
    first: Vec<usize>,
    /// What several strands go through.
    bars: Bars,
}

impl Web {
    /// The net of strands, from the inmost out.
    pub fn new(ropes: &[Rope]) -> Self {
        let mut web = Self::default();
        ropes.iter().for_each(|rope| web.add(rope));
        web.hold_together(ropes);
        web.net.bends = bends(ropes);
        web
    }

    /// What several strands go through holds their joints on both sides of it apart.
    fn hold_together(&mut self, ropes: &[Rope]) {
        let of = |(rope, first): (&Rope, &usize)| {
            let through = |(link, passage): &(usize, Passage)| (*passage, [first + link, first + link + 1]);
            rope.passages.iter().map(through).collect::<Vec<_>>()
        };
        self.bars.add(crossbars(ropes.iter().zip(&self.first).flat_map(of)));
        self.net.ties.extend(self.bars.ties());
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
        self.net.ties.extend(links.map(|(link, from)| Tie::new([from, from + 1], link.length)));
        self.first.push(start);
    }

    /// What keeps sides apart, and then what holds bars; `sided` where bars keep their outer strands outside.
    fn constraints(&self, contacts: &[Contact], sided: bool) -> Vec<program::Constraint<2>> {
        let term = |term: &super::contacts::JointSlope| Term {
            node: self.first[term.strand] + term.joint,
            slope: [term.slope.x, term.slope.y],
        };
        let out = |line| if sided { outward(line) } else { None };
        let constraint = |contact: &Contact| program::Constraint {
            terms: contact.terms.iter().map(term).collect(),
            gap: contact.gap,
            gives: true,
        };
        contacts.iter().map(constraint).chain(self.bars.constraints(&self.net, out)).collect()
    }

    /// Solves one round; nothing where the solver finds no answer. `pull` is in mean weights of a joint per mm.
    pub fn solve(&mut self, ropes: &[Rope], contacts: &[Contact], pull: f64, sided: bool) -> Option<RoundOutcome> {
        let held = self.constraints(contacts, sided);
        let is_joined = self.bars.iter().next().is_some();
        let found = if is_joined { self.net.solve_stiff(&held, pull) } else { self.net.solve(&held, pull) }?;
        let mut places = found.places.iter().map(|[x, y]| Point::new(*x, *y));
        let mut tensions = found.tensions.iter().copied();
        Some(RoundOutcome {
            places: ropes.iter().map(|rope| places.by_ref().take(rope.joints.len()).collect()).collect(),
            tensions: ropes.iter().map(|rope| tensions.by_ref().take(rope.links.len()).collect()).collect(),
            forces: found.forces[..contacts.len()].to_vec(),
            whole: found,
        })
    }

    /// Puts the joints where a round found them, and makes links as long as strands have them there.
    pub fn go(&mut self, round: &RoundOutcome, ropes: &[Rope]) {
        self.bars.go(&mut self.net, &round.whole.places);
        let links = ropes.iter().flat_map(|rope| &rope.links);
        self.net.ties.iter_mut().zip(links).for_each(|(tie, link)| tie.length = link.length);
        self.net.bends = bends(ropes);
    }

    /// Puts the joints where strands have them.
    pub fn follow(&mut self, ropes: &[Rope]) {
        let joints = ropes.iter().flat_map(|rope| &rope.joints);
        let places: Vec<_> = joints.map(|joint| [joint.at.x, joint.at.y]).collect();
        self.net.go(&places);
    }

    /// By how much any bar's joints are nearer to each other or farther apart than it holds them, in mm.
    pub fn off(&self) -> f64 {
        self.bars.off(&self.net)
    }

    /// Whether stiff cord is pressed.
    pub fn is_pressed(&self) -> bool {
        self.net.ties.iter().any(|tie| tie.pressed)
    }

    /// Whether stiff cord is pressed as hard as giving way costs: it has no room in the plane, and would bend out of it.
    pub fn is_jammed(&self, round: &RoundOutcome) -> bool {
        round.whole.thrust() > GIVES * self.net.price()
    }
}

/// The bends of strands, whose links are numbered one strand after the other.
fn bends(ropes: &[Rope]) -> Vec<Bend> {
    let mut before = 0;
    let of = |rope: &Rope| {
        let from = before;
        before += rope.links.len();
        rope.bends().into_iter().map(move |bend| bend.on_from(from))
    };
    ropes.iter().flat_map(of).collect()
}

/// The outer side of a strand that runs along a line from its first end on: below it where it lies level.
fn outward([x, y]: [f64; 2]) -> Option<[f64; 2]> {
    unit([y, -x])
}
