//! Ties that are pressed along themselves: which they are, round by round, and how they become as long as they are.

use std::collections::BTreeSet;

use super::{Constraint, Net, Round, Tie, distance};

/// How often ties that are found pressed are told in a round.
const TRIES: u32 = 6;
/// Ties are drawn out to this, in mm, in so many rounds of all of them at the most.
const DRAWN_TO: f64 = 1e-7;
const DRAWN: u32 = 200;
/// A tie that is shorter by this share of its length is in no tension.
pub const TENSE: f64 = 1e-3;

impl<const D: usize> Net<D> {
    /// Solves one round in which no tie of stiff cord is shorter than it is: those that would be are pressed, and those in
    /// tension are pressed no more.
    pub fn solve_stiff(&mut self, constraints: &[Constraint<D>], pull: f64) -> Option<Round<D>> {
        let stiff: BTreeSet<usize> = self.bends.iter().flat_map(|bend| bend.links).collect();
        let mut round = self.solve(constraints, pull)?;
        for _ in 0..TRIES {
            if !self.press(stiff.iter(), TENSE, &round) {
                break;
            }
            round = self.solve(constraints, pull)?;
        }
        Some(round)
    }

    /// Presses those of some ties that a round made shorter, by more than a share of their length, and no more those that it
    /// pulls at; whether there were any.
    pub fn press<'a>(&mut self, ties: impl Iterator<Item = &'a usize>, share: f64, round: &Round<D>) -> bool {
        let amiss: Vec<usize> = ties.copied().filter(|tie| self.is_amiss(*tie, share, round)).collect();
        amiss.iter().for_each(|tie| self.ties[*tie].pressed ^= true);
        !amiss.is_empty()
    }

    /// Whether a round pulls at a tie that is pressed, or makes one shorter that is not.
    fn is_amiss(&self, tie: usize, share: f64, round: &Round<D>) -> bool {
        let Tie { ends, length, pressed } = self.ties[tie];
        let apart = distance(round.places[ends[0]], round.places[ends[1]]);
        if pressed { round.tensions[tie] > 0.0 } else { apart < length * (1.0 - share) }
    }

    /// Moves the joints of some ties along them, as little as that takes, until each is as long as it is.
    pub fn draw_out(&mut self, ties: &[usize]) {
        for _ in 0..DRAWN {
            let off = ties.iter().map(|tie| self.draw(*tie)).fold(0.0, f64::max);
            if off < DRAWN_TO {
                break;
            }
        }
    }

    /// Moves both joints of a tie along it by half of what it is off; how much that was.
    fn draw(&mut self, tie: usize) -> f64 {
        let (way, Tie { ends, length, .. }) = (self.way(tie), self.ties[tie]);
        let off = distance(self.nodes[ends[0]].at, self.nodes[ends[1]].at) - length;
        for (end, sign) in ends.into_iter().zip([0.5, -0.5]) {
            let node = &mut self.nodes[end];
            let free = node.at.iter_mut().zip(node.held).zip(way).filter(|((_, held), _)| !held);
            free.for_each(|((at, _), along)| *at += sign * off * along);
        }
        off.abs()
    }
}
