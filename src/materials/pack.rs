//! Cutting pieces from the fewest lengths on sale: exact, where there are few of them.
//!
//! Branch and bound. Pieces come longest first; each is tried in every length that still holds it, equal
//! remains once, and only where it just fills one. A branch ends where the remains that still hold the shortest
//! piece are together shorter than the pieces to come, or where the same remains were met before.

use std::collections::HashSet;

/// More pieces are planned longest first alone, with a lower bound beside.
pub const FEW: usize = 24;
/// Branches after which the search gives up: far beyond what any plan in the tests takes.
const MOST: usize = 200_000;

/// What the search found.
pub enum Found {
    /// For each piece which length it is cut from.
    Plan(Vec<usize>),
    /// No plan holds them all.
    Nothing,
    /// The search was given up.
    GivenUp,
}

/// Whether pieces, longest first, can be cut from lengths of these sizes, in whole units.
pub fn cut(pieces: &[i64], lengths: Vec<i64>) -> Found {
    let mut search = Search { pieces, left: lengths, plan: Vec::new(), met: HashSet::new() };
    match search.place(0) {
        true => Found::Plan(search.plan),
        false if search.met.len() >= MOST => Found::GivenUp,
        false => Found::Nothing,
    }
}

struct Search<'a> {
    pieces: &'a [i64],
    left: Vec<i64>,
    plan: Vec<usize>,
    met: HashSet<(usize, Vec<i64>)>,
}

impl Search<'_> {
    /// Whether the pieces from this one on find their places; they are in the plan if they do.
    fn place(&mut self, at: usize) -> bool {
        let Some(&piece) = self.pieces.get(at) else { return true };
        let mut remains = self.left.clone();
        remains.sort_unstable();
        if self.is_hopeless(at) || self.met.len() >= MOST || !self.met.insert((at, remains.clone())) {
            return false;
        }
        remains.dedup();
        let just = remains.contains(&piece);
        let fits = remains.into_iter().filter(|left| if just { *left == piece } else { *left > piece });
        fits.collect::<Vec<_>>().into_iter().any(|left| self.try_in(at, piece, left))
    }

    /// Tries a piece in the first length of which so much is left.
    fn try_in(&mut self, at: usize, piece: i64, left: i64) -> bool {
        let Some(length) = self.left.iter().position(|one| *one == left) else { return false };
        self.left[length] -= piece;
        self.plan.push(length);
        if self.place(at + 1) {
            return true;
        }
        self.plan.pop();
        self.left[length] += piece;
        false
    }

    fn is_hopeless(&self, at: usize) -> bool {
        let shortest = self.pieces.last().copied().unwrap_or_default();
        let usable: i64 = self.left.iter().filter(|left| **left >= shortest).sum();
        usable < self.pieces[at..].iter().sum()
    }
}
