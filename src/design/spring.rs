//! Memory wire: hard spring steel that keeps the round of the coil as which it is sold.
//!
//! Beads on it lie turn beside turn, so that the wire rises with each turn by as much as the broadest is wide (see
//! [`helix`](crate::geometry::helix)). Round a limb too thick for the coil it springs open; it never closes further.
//!
//! A bead is straight and the wire curved: a bead reaches on both sides as far as the plane through the coil's axis
//! that touches it, and takes the angle between them. The plane at an angle a from its middle touches it where
//! R sin a = s(a), the reach of its outline in the direction that is a from its hole, with R the wire's bend. Of a ball
//! that is asin(r / R); a tube touches its neighbours with its inner rims, and takes more wire than it is long. Derived
//! here.

use std::f64::consts::FRAC_PI_2;

use crate::geometry::helix::Helix;
use crate::geometry::nose::Nose;
use crate::pattern::{self, CordKind, FindingKind, Item, Settle};
use crate::remark::Remark;
use crate::remark::said::turns::{Sprung, Turns};
use crate::source::{At, Place};
use crate::units::Length;

use super::Context;
use super::model::{Bit, End, Model, Strand, What};
use super::round::Stock;
use super::shelf::Inventory;
use super::stock::{Bead, Cord};

/// Halvings of a right angle: a millionth of a degree.
const HALVINGS: u32 = 32;

/// Bare memory wire as it is sold: turn upon turn.
#[must_use]
pub fn at_rest(coil: Length, wire: Length) -> Helix {
    Helix { radius: 0.5 * (coil + wire).value(), rise: wire.value() }
}

/// Beads on memory wire, as they lie round their wearer. Lengths are mm.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Spring {
    /// The way of the wire's middle.
    pub helix: Helix,
    /// Radius of the wire's middle when the coil lies at rest, in mm.
    pub rest: f64,
    /// How far beads reach from the wire's middle inward, in mm.
    pub reach: f64,
}

impl Spring {
    /// Of bits on a wire, round a limb of a girth, where anybody says it; nothing on another cord.
    pub fn of<'b>(
        stock: Stock<'_>,
        cord: &Cord,
        bits: impl Iterator<Item = &'b Bit> + Clone,
        limb: Option<Length>,
    ) -> Option<Self> {
        let wire = cord.diameter.value();
        let rest = at_rest(cord.coil?, cord.diameter).radius;
        let reach = bits.clone().map(|bit| stock.chord(bit, wire).inward).fold(0.5 * wire, f64::max);
        let opened = limb.map_or(0.0, |limb| limb.value() / (2.0 * std::f64::consts::PI) + reach);
        let helix = Helix { radius: rest.max(opened), rise: stock.breadth(bits, wire) };
        Some(Self { helix, rest, reach })
    }

    /// Girth in mm that beads at rest leave inside; nothing where they fill the coil.
    #[must_use]
    pub fn inside_at_rest(&self) -> f64 {
        2.0 * std::f64::consts::PI * (self.rest - self.reach).max(0.0)
    }

    /// Girth in mm that is left inside the beads as they lie.
    #[must_use]
    pub fn inside(&self) -> f64 {
        2.0 * std::f64::consts::PI * (self.helix.radius - self.reach).max(0.0)
    }

    /// How many times bits, strung straight, go round on it.
    pub fn turns(&self, stock: Stock<'_>, bits: &[Bit]) -> f64 {
        let mut bits = bits.to_vec();
        self.curve(stock, &mut bits);
        self.helix.turns(bits.iter().map(Bit::length).sum())
    }

    /// Lets bits take as much wire as they do on its curve.
    pub fn curve(&self, stock: Stock<'_>, bits: &mut [Bit]) {
        for bit in bits {
            if let What::Bead(bead) = bit.what {
                let longer = self.longer(&stock.beads[bead]);
                (bit.before, bit.after) = (bit.before * longer, bit.after * longer);
            }
        }
    }

    /// How many times as much wire a bead takes on the curve as on a straight cord.
    fn longer(&self, bead: &Bead) -> f64 {
        let (bend, noses) = (self.helix.bend(), bead.noses());
        let straight: f64 = noses.iter().map(|nose| nose.reach(0.0)).sum();
        let curved: f64 = noses.iter().map(|nose| bend * taken(nose, bend)).sum();
        if straight > 0.0 { curved / straight } else { 1.0 }
    }
}

/// Angle in radians from a bead's middle to the plane through the axis of a bend that touches its end.
fn taken(nose: &Nose, bend: f64) -> f64 {
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        *if nose.reach(middle) > bend * libm::sin(middle) { &mut low } else { &mut high } = middle;
    }
    low
}

impl Cord {
    /// Whether it is memory wire.
    #[must_use]
    pub const fn is_sprung(&self) -> bool {
        self.coil.is_some()
    }

    /// Whether it is limp, so that beads are strung on it and knots tied in it: neither chain nor memory wire.
    #[must_use]
    pub fn is_limp(&self) -> bool {
        self.kind != CordKind::Chain && !self.is_sprung()
    }
}

impl Strand {
    /// Whether an end is a loop that its own wire is turned into.
    #[must_use]
    pub fn is_turned(&self, end: &End, design: &Model) -> bool {
        end.findings.is_empty() && design.cords[self.cord].is_sprung()
    }
}

impl Model {
    /// The strand of a piece on memory wire, which has no other.
    #[must_use]
    pub fn sprung(&self) -> Option<&Strand> {
        let [strand] = self.strands.as_slice() else { return None };
        Some(strand).filter(|strand| self.cords[strand.cord].is_sprung())
    }

    /// How a piece on memory wire lies.
    #[must_use]
    pub fn spring(&self) -> Option<Spring> {
        let strand = self.sprung()?;
        let limb = self.wear.is_told().then_some(self.wear.narrowest);
        Spring::of(self.stock(), &self.cords[strand.cord], strand.bits(), limb)
    }

    /// How many times the piece goes round: on memory wire as often as its beads do.
    #[must_use]
    pub fn turns(&self) -> f64 {
        let sprung = self.spring().zip(self.sprung());
        sprung.map_or(self.wraps, |(spring, strand)| spring.helix.turns(strand.finished.value()))
    }

    /// How many turns of its coil, as it is sold, are cut of memory wire for a strand.
    #[must_use]
    pub fn coil_turns(&self, strand: &Strand) -> Option<f64> {
        let cord = &self.cords[strand.cord];
        Some(at_rest(cord.coil?, cord.diameter).turns(strand.cut().value()))
    }
}

/// Refuses on memory wire what it is too hard for, or what its coil settles.
pub fn check(strand: &pattern::Strand, shelf: &Inventory, context: &mut Context) -> Option<()> {
    let sprung = |why| Turns::Sprung { strand: strand.name.value.clone(), why };
    context.refuse_if(reason(strand, shelf).map(|(why, place)| Remark::new(sprung(why)).at(place)))
}

fn reason(strand: &pattern::Strand, shelf: &Inventory) -> Option<(Sprung, Place)> {
    if let Some(length) = &strand.length {
        return Some((Sprung::Length, length.place));
    }
    if let Some(settle) = strand.settle.as_ref().filter(|settle| settle.value != Settle::Fill) {
        return Some((Sprung::Settle(settle.value.word()), settle.place));
    }
    if let Some(knots) = &strand.knots {
        return Some((Sprung::Knots, knots.place));
    }
    if let Some(place) = held(&strand.beads.value) {
        return Some((Sprung::Held, place));
    }
    if strand.doubled.is_some_and(|doubled| doubled.0) {
        return Some((Sprung::Doubled, strand.name.place));
    }
    let holds =
        |id: &str| id == "loop" || shelf.finding(id).is_none_or(|at| shelf.findings[at].kind() == FindingKind::CordEnd);
    let ends = strand.ends.as_ref().map_or(&[][..], |ends| ends.ids());
    let wrong = ends.iter().find(|id| id.value == "knot" || !holds(&id.value))?;
    Some((Sprung::End(wrong.value.clone()), wrong.place))
}

/// Where a list has a knot or a stop.
fn held(items: &[At<Item>]) -> Option<Place> {
    items.iter().find_map(|item| match &item.value {
        Item::Knot(_) | Item::Stop(_) => Some(item.place),
        Item::Dangle(_) => None,
        other => other.lists().into_iter().find_map(held),
    })
}

/// Whether a cord of a pattern is memory wire.
pub fn is_sprung(pattern: &pattern::Pattern, strand: &pattern::Strand) -> bool {
    pattern.cords.get(&strand.cord.value).is_some_and(|cord| cord.kind == CordKind::MemoryWire)
}
