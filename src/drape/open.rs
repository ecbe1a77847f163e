//! Neighbouring beads part where a strand bends.
//!
//! **Problem.** Beads of a row turn towards one another where it bends, and must not lie in one another. Their cord lies in
//! the middle of their holes and turns by half of the bend at each mouth.
//!
//! **Method.** [`Hinge`] tells how far the axes of two beads go on beyond their mouths to where they meet: their links are
//! so much longer, and turn about that joint. Longer links hang otherwise, so that both are found in turn until no link
//! changes by more than a millionth of a mm. Each time the chain is in balance ([`mod@super::hang`]).
//!
//! **Where the cord comes from.** Cord does not stretch: it is the strand's bare cord, all of it giving alike, with what its
//! maker leaves bare so that the row closes to a round ([`Strand::slack`]). What a row lacks beyond that is told
//! ([`Chain::lacks`]): strung so, flat ends lock, and the row hangs stiffer than drawn.
//!
//! **Trade-off.** Each bead is held where it lies by the grip of its cord: neighbours touch and do not press. Beads that
//! slid freely would press on those below them: a row of 4 mm cubes would hang rounder by less than 0.2 mm (`tests/gaping.rs`).
//! Findings, knots and what hangs by its tip keep turning about the ends of their links, and so do beads that several
//! strands go through. A turn sharper than 115 degrees opens as one of 115 does.

use super::chain::{Chain, Content};
use super::hang::{Hanging, Unhung};
use crate::design::{Bit, Design, Strand};
use crate::geometry::Point;
use crate::geometry::hinge::Hinge;

/// Rounds after which it is taken as it is: each leaves a tenth of what was amiss, in a kink a half.
const ROUNDS: u32 = 40;
/// Links that change by less than this, in mm, are as they should be.
const SETTLED: f64 = 1e-6;

/// Where neighbouring beads of a strand meet: each joint by the link before it.
#[derive(Clone, Debug, Default)]
pub struct Hinges(Vec<(usize, Hinge)>);

impl Hinges {
    /// Those of a strand's chain.
    #[must_use]
    pub fn new(design: &Design, strand: &Strand, chain: &Chain) -> Self {
        let pairs = chain.pieces.windows(2).enumerate();
        Self(pairs.filter_map(|(at, pair)| Some((at, hinge(design, strand, [pair[0], pair[1]])?))).collect())
    }

    /// Those that are not at some joints.
    #[must_use]
    pub fn without(mut self, joints: &[usize]) -> Self {
        self.0.retain(|(link, _)| !joints.contains(&(link + 1)));
        self
    }

    /// The hinge after a link.
    #[must_use]
    pub fn after(&self, link: usize) -> Option<Hinge> {
        let found = self.0.binary_search_by_key(&link, |(at, _)| *at).ok()?;
        Some(self.0[found].1)
    }

    /// How links that run in these directions, unit vectors, part.
    #[must_use]
    pub fn parted(&self, directions: &[Point]) -> Partings {
        let mut parted = Partings { beyond: vec![[0.0; 2]; directions.len()], takes: vec![0.0; directions.len()] };
        for (at, hinge) in &self.0 {
            let turn = turn(directions[*at], directions[at + 1]);
            let opens = hinge.opens(turn);
            (parted.beyond[*at][1], parted.beyond[at + 1][0]) = (opens, opens);
            parted.takes[*at] = hinge.takes(turn);
        }
        parted
    }
}

/// How the links of a chain part from their neighbours, in mm.
#[derive(Clone, Debug, Default)]
pub struct Partings {
    /// How far each goes on before what it holds, and beyond, to where it meets its neighbour.
    pub beyond: Vec<[f64; 2]>,
    /// Cord that parting takes at the end of each.
    pub takes: Vec<f64>,
}

/// The angle between two unit vectors, in radians.
pub(super) fn turn(one: Point, other: Point) -> f64 {
    libm::atan2(one.left().dot(other).abs(), one.dot(other))
}

/// What share of its bare cord a strand gives where parting takes so much in all; `bare` are its pieces of that.
pub(super) fn given(taken: f64, bare: impl Iterator<Item = f64>) -> f64 {
    let bare: f64 = bare.sum();
    if bare > 0.0 { (taken / bare).min(1.0) } else { 0.0 }
}

/// The hinge between two pieces; none where they are not beads one after the other, each on its own strand.
fn hinge(design: &Design, strand: &Strand, pieces: [Content; 2]) -> Option<Hinge> {
    let [Content::Bit(train, one), Content::Bit(next, other)] = pieces else { return None };
    let bits = strand.trains[train].bits.get(one..=other).filter(|_| train == next && one + 1 == other)?;
    let is_shared = |bit: &Bit| design.shared_bit(bit, strand).is_some();
    let cord = strand.cord_width(design).value();
    design.stock().hinge([&bits[0], &bits[1]], cord).filter(|_| !bits.iter().any(is_shared))
}

/// Hangs a chain whose beads part where it bends; it is then as it hangs. `hang` is given how it hung the last time.
///
/// # Errors
/// Where it cannot be hung.
pub(super) fn hang(
    strand: &Strand,
    hinges: &Hinges,
    chain: &mut Chain,
    hang: impl Fn(&Chain, Option<&Hanging>) -> Result<Hanging, Unhung>,
) -> Result<Hanging, Unhung> {
    let mut hanging = hang(chain, None)?;
    for _ in 0..ROUNDS {
        let parted = hinges.parted(&hanging.directions);
        let pairs = parted.beyond.iter().flatten().zip(chain.parted.beyond.iter().flatten());
        if pairs.map(|(new, old)| (new - old).abs()).fold(0.0, f64::max) < SETTLED {
            break;
        }
        chain.open(strand, parted);
        hanging = hang(chain, Some(&hanging))?;
    }
    Ok(hanging)
}
