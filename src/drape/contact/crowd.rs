//! Strands that come near one another, and which of them lie side by side.

use std::collections::BTreeSet;

use super::contacts::{self, Contact, Rod};
use super::flank::Flank;
use super::program::Web;
use super::rope::Rope;
use super::rounds::STILL;

/// Strands from one point lie on one another until their fan need open by no more than 60 degrees: each of so
/// many has run this far, in mm, for each mm that it needs beside the next.
const FAN: f64 = 1.0;
/// And along this much of them in any case, in mm.
const SHARED: f64 = 15.0;

/// Strands from the inmost out, as they hang alone.
pub struct Crowd {
    pub ropes: Vec<Rope>,
    tubes: Vec<Vec<Option<Flank>>>,
    /// Length of each end that the closure covers.
    covered: f64,
    /// The pairs that lie over one another.
    over: BTreeSet<[usize; 2]>,
    /// Whether those that bars join keep their outer strands outside.
    pub sided: bool,
}

impl Crowd {
    pub fn new(ropes: Vec<Rope>, covered: f64) -> Self {
        let tubes = ropes.iter().map(Rope::tubes).collect();
        let mut crowd = Self { ropes, tubes, covered, over: BTreeSet::new(), sided: true };
        crowd.over = crowd.crossing().filter(|pair| !crowd.are_joined(*pair)).collect();
        crowd
    }

    /// The pairs whose lines cross.
    fn crossing(&self) -> impl Iterator<Item = [usize; 2]> + use<> {
        self.near(&self.ropes, true).into_iter().filter(|contact| contact.apart <= 0.0).map(|contact| contact.strands)
    }

    /// Leaves those that bars join to lie as they hang alone, over one another too; whether they did not before.
    pub fn let_cross(&mut self) -> bool {
        let joined: Vec<_> = self.crossing().filter(|pair| self.are_joined(*pair)).collect();
        self.over.extend(&joined);
        std::mem::take(&mut self.sided) && self.ropes.iter().any(|rope| !rope.passages.is_empty())
    }

    /// Whether two strands go through anything together.
    fn are_joined(&self, pair: [usize; 2]) -> bool {
        let [one, other] = pair.map(|strand| &self.ropes[strand].passages);
        one.iter().any(|(_, passage)| other.iter().any(|(_, other)| other.of == passage.of))
    }

    /// Whether any lie on one another that may lie side by side, or not where bars hold them.
    pub fn touches(&self) -> bool {
        Web::new(&self.ropes).off() > STILL || self.near(&self.ropes, false).iter().any(|contact| contact.gap < 0.0)
    }

    /// Leaves pairs to lie over one another.
    pub fn lay_over(&mut self, pairs: Vec<[usize; 2]>) {
        self.over.extend(pairs);
    }

    /// The contacts between links that have room to lie beside one another, with the strands where they are now;
    /// as smooth tubes, or by their own outlines.
    pub fn near(&self, ropes: &[Rope], as_tubes: bool) -> Vec<Contact> {
        let sides = |strand: usize| if as_tubes { &self.tubes[strand] } else { &ropes[strand].sides };
        let each = ropes.iter().enumerate();
        let rods: Vec<Rod<'_>> =
            each.flat_map(|(strand, rope)| rope.rods(strand, sides(strand), self.covered)).collect();
        contacts::contacts(&rods, |one, other| self.may_part(one, other))
    }

    fn may_part(&self, one: &Rod<'_>, other: &Rod<'_>) -> bool {
        let first = |rod: &Rod<'_>| self.ropes[rod.strand].joints[0].at;
        let needed = one.side.reach() + other.side.reach() - first(one).distance(first(other));
        let fan = FAN * (self.ropes.len() - 1).max(2) as f64;
        let pair = [one.strand.min(other.strand), one.strand.max(other.strand)];
        let depth = one.depth.min(other.depth);
        let parted = needed <= 0.0 || depth > (fan * needed).max(SHARED - self.covered);
        parted && !self.over.contains(&pair)
    }
}
