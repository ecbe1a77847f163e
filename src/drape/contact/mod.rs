//! Strands that lie beside one another.
//!
//! **Problem.** Several strands hang from their points before an upright board; no outline may lie on
//! another strand's. All holes lie in one plane, so that the whole is a problem in that plane. Strands keep
//! the order in which bars hold them, or else the shorter ones lie inside the longer ones. Those that what they go
//! through together joins may cross only where they have no room side by side.
//!
//! **Method.** The strands as they hang alone are the start, and the answer where nothing touches. Then
//! [`rounds`]: where two sides come near, a direction in which they are kept apart ([`contacts`]); the
//! lowest place of all joints (a second-order cone program, [`program`]); new directions at the new place,
//! until nothing moves by 0.01 mm. What several strands go through is rigid in these rounds (`super::bar`). Rounds begin with smooth tubes round the beads, which part strands
//! without catching, and go on with the beads' own outlines. Links of stiff cord that bars press are as long as they are all the
//! same, and turn ([`program`]'s pressed ties): rows that are joined at many places lie so where there is room for them in
//! the plane.
//!
//! **Trade-off.** No friction. Strands whose lines cross when they hang alone, and
//! strands without room beside one another, lie over one another, in front of the board: they stay as they
//! hang. Strands that leave one point, or a cone's mouth, are left to lie on one another along the first 15 mm,
//! and farther where their fan would have to open by more than 60 degrees. Beads that slide keep the stations at which they rest
//! when the strand hangs alone. Where rounds come to no rest, the best place found is given with what is left
//! ([`Unrest`]).

mod contacts;
mod crowd;
mod flank;
mod near;
mod program;
mod rope;
mod rounds;

use super::Hung;
use super::chain::Chain;
use super::hang::Hanging;
use super::open::Hinges;
use crate::design::{Design, Index, Strand};
pub use crate::remark::said::hang::Unrest;
use crowd::Crowd;
use rope::Rope;
pub use rope::covered;
use rounds::RestingPlace;
pub use rounds::TOUCH;

/// What strands in contact came to.
pub struct Settled {
    /// Each strand, in the design's order; none where all stay as they hang alone.
    pub strands: Vec<Hanging>,
    /// Where they press on one another.
    pub presses: Vec<Press>,
    /// What is left, if they came to no rest.
    pub unrest: Option<Unrest>,
}

/// How hard two strands, or ropes by their numbers, press on one another at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Press<Of = Index<Strand>> {
    /// The two strands, the one that comes first in the design before the other.
    pub between: [Of; 2],
    /// Where on the one that lies inside, in mm from its first end.
    pub station: f64,
    /// And from the nearer of its ends.
    pub depth: f64,
    /// The force in N.
    pub force: f64,
}

impl Press<usize> {
    /// The same of strands of a design, told by their numbers here.
    pub(super) fn of(&self, strand: impl Fn(usize) -> Index<Strand>) -> Press {
        let mut between = self.between.map(strand);
        between.sort_unstable();
        Press { between, station: self.station, depth: self.depth, force: self.force }
    }
}

/// Strands in contact, their chains as they then hang; nothing where no two of them touch, or none of those that do has room beside the other.
pub fn settle(design: &Design, chains: &mut [Chain], hung: &[Hung]) -> Option<Settled> {
    if !near::come_near(design, hung) && design.joined().next().is_none() {
        return None;
    }
    let order = order(design);
    let rope = |&at: &Index<Strand>| Rope::new(design, &design.strands[at], &chains[at.number()], &hung[at.number()]);
    let mut crowd = Crowd::new(order.iter().map(rope).collect(), covered(design));
    let mut work = design.heading.share(rounds::WORK);
    while crowd.touches() {
        match rounds::settle(&crowd, &mut work) {
            Ok(found) if found.is_lost() && crowd.let_cross() => {}
            Ok(found) => return Some(settled(design, found, &order, chains)),
            Err(pairs) => crowd.lay_over(pairs),
        }
    }
    None
}

/// The strands from the inmost out: as bars hold them, then by length.
pub fn order(design: &Design) -> Vec<Index<Strand>> {
    let mut order: Vec<_> = design.strands.indices().collect();
    let key = |at: Index<Strand>| (design.strands[at].aside.value(), design.strands[at].finished.value());
    order.sort_by(|&a, &b| key(a).0.total_cmp(&key(b).0).then(key(a).1.total_cmp(&key(b).1)));
    order
}

/// What was found, in the design's order.
fn settled(design: &Design, found: RestingPlace, order: &[Index<Strand>], chains: &mut [Chain]) -> Settled {
    let mut laid: Vec<_> = order.iter().zip(&found.ropes).zip(&found.tensions).collect();
    laid.sort_by_key(|((at, _), _)| **at);
    let strand = |((&at, rope), tensions): ((&Index<Strand>, &Rope), &Vec<f64>)| {
        let (strand, chain) = (&design.strands[at], &mut chains[at.number()]);
        rope.laid(strand, &Hinges::new(design, strand, chain), chain, tensions, found.rounds)
    };
    let strands = laid.into_iter().map(strand).collect();
    let presses = found.presses.iter().map(|press| press.of(|rope| order[rope])).collect();
    Settled { strands, presses, unrest: found.unrest }
}

/// The greatest force in N with which two strands press on one another along any 10 mm of the inner one, farther
/// from its ends than so many mm.
pub fn hardest(presses: &[Press], between: [Index<Strand>; 2], ends: f64) -> f64 {
    const WINDOW: f64 = 10.0;
    let counts = |press: &&Press| press.between == between && press.depth >= ends;
    let mut of_pair: Vec<&Press> = presses.iter().filter(counts).collect();
    of_pair.sort_by(|one, other| one.station.total_cmp(&other.station));
    let from = |(at, first): (usize, &&Press)| -> f64 {
        let within = of_pair[at..].iter().take_while(|press| press.station < first.station + WINDOW);
        within.map(|press| press.force).sum()
    };
    of_pair.iter().enumerate().map(from).fold(0.0, f64::max)
}
