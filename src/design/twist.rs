//! Strands twisted round one another: a torsade.
//!
//! A strand's `length:` stays its own, from loop to loop; twisted, all reach as far as the one that is drawn tautest
//! ([`Bundle`]). It counts as a smooth tube as wide as what it is, on average along it: its beads where they are
//! widest (flat ones as the mean of both ways), its cord where that is bare or runs through what closes an end.
//! A row that counts itself to its wearer does so as if all strands were like it.

use std::f64::consts::TAU;

use crate::geometry::twist::{Bundle, Lay, Ply, Twisted};
use crate::pattern::{self, Kind, Pattern};
use crate::remark::Remark;
use crate::remark::said::turns::{NoTwist, Turns};
use crate::source::Place;
use crate::trade::usual::KNOT_WIDTH;
use crate::units::Length;

use super::bars::Shared;
use super::entries::{Entries, Index};
use super::model::{Bit, Model, Strand, What};
use super::round::Stock;
use super::stock::Bead;
use super::{Context, spring};

/// Share of its length by which a strand may be longer than its way before it stands out of the twist: an assumption.
const SLACK: f64 = 0.01;

/// How strands are twisted.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Twist {
    /// How many times one end is turned.
    pub turns: f64,
    /// Where the pattern says it.
    pub place: Place,
    bundle: Bundle,
    twisted: Twisted,
}

impl Twist {
    /// How long the twisted strands are, from loop to loop.
    #[must_use]
    pub const fn length(&self) -> Length {
        Length::mm(self.twisted.length)
    }

    /// How a strand of the design lies. Lengths are mm.
    #[must_use]
    pub fn lay(&self, strand: Index<Strand>) -> &Lay {
        &self.lays()[strand.number()]
    }

    /// How each strand lies, in the design's order.
    pub(super) fn lays(&self) -> &[Lay] {
        &self.twisted.lays
    }

    /// How thick the twisted strands are together.
    #[must_use]
    pub fn thickness(&self) -> Length {
        Length::mm(self.bundle.thickness(self.lays()))
    }

    /// How steeply the outermost strands run across the line round which they lie, in radians.
    #[must_use]
    pub fn angle(&self) -> f64 {
        let widest = self.lays().iter().map(|lay| lay.radius).fold(0.0, f64::max);
        libm::atan2(TAU * widest * self.turns, self.twisted.length)
    }

    /// How long each strand must be for a twisted length; nothing where so many turns do not go into it.
    #[must_use]
    pub fn needed(&self, twisted: Length) -> Option<Entries<Length, Strand>> {
        let needed = self.bundle.needed(self.turns, twisted.value())?;
        Some(needed.into_iter().map(Length::mm).collect())
    }

    /// How much longer than its way a strand of the design is that stands loose in the twist; nothing of one that lies in
    /// its place, or nearly.
    #[must_use]
    pub fn slack(&self, strand: Index<Strand>) -> Option<Length> {
        let (lay, whole) = (self.lay(strand), self.whole(strand));
        (lay.slack > SLACK * whole).then_some(Length::mm(lay.slack))
    }

    /// How far from the line a strand lies that stands loose, all of its length in one even helix, in mm; one that is taut
    /// where it is taut.
    #[must_use]
    pub fn aside(&self, strand: Index<Strand>) -> f64 {
        let (lay, whole) = (self.lay(strand), self.whole(strand));
        let aside = (whole * whole - self.twisted.length * self.twisted.length).max(0.0).sqrt();
        self.slack(strand).map_or(lay.radius, |_| aside / (TAU * self.turns))
    }

    /// How long a strand is, in mm.
    fn whole(&self, strand: Index<Strand>) -> f64 {
        self.bundle.plies()[strand.number()].length
    }
}

impl Model {
    /// How long a strand is as it lies in the piece, from loop to loop: twisted with others, as long as all of them.
    #[must_use]
    pub fn reach_of(&self, strand: &Strand) -> Length {
        self.twist.as_ref().map_or(strand.finished, Twist::length)
    }

    /// The length of the shortest of strands that are twisted, before that: what one would have the twisted piece reach
    /// who had not thought of it.
    #[must_use]
    pub fn untwisted(&self) -> Option<Length> {
        self.twist.as_ref()?;
        self.strands.iter().map(|strand| strand.finished).reduce(Length::min)
    }

    /// By how much twisted strands draw in: the shortest by so much.
    #[must_use]
    pub fn drawn_in(&self) -> Option<Length> {
        Some(self.untwisted()? - self.twist.as_ref()?.length())
    }
}

/// Refuses what cannot be twisted, as far as the pattern tells it.
pub fn check(pattern: &Pattern, context: &mut Context) -> Option<()> {
    let Some(turns) = pattern.twist.as_ref().filter(|_| !context.wants(pattern)) else { return Some(()) };
    let told = reason(pattern, turns.value.0);
    context.refuse_if(told.map(|why| Remark::new(Turns::Twist(why)).at(turns.place)))
}

/// Why not.
fn reason(pattern: &Pattern, turns: f64) -> Option<NoTwist> {
    let kind = pattern.kind.value;
    let strands = || pattern.strands.value.iter().map(|strand| &strand.value);
    let gathers = |closure: &pattern::Closure| {
        let has = |side: &Option<pattern::Parts>| side.as_ref().is_some_and(|parts| !parts.is_empty());
        closure.open.is_none() && (has(&closure.each_side) || has(&closure.left) && has(&closure.right))
    };
    let halves = 2.0 * turns;
    match () {
        () if !matches!(kind, Kind::Necklace | Kind::Bracelet | Kind::Anklet) => Some(NoTwist::Kind(kind.word())),
        () if strands().count() < 2 => Some(NoTwist::Alone),
        () if strands().any(|strand| spring::is_sprung(pattern, strand)) => Some(NoTwist::Sprung),
        () if !pattern.closure.as_ref().is_some_and(|closure| gathers(&closure.value)) => Some(NoTwist::Ungathered),
        () => Some(NoTwist::Part(turns)).filter(|_| (halves - halves.round()).abs() > 1e-9),
    }
}

/// Strands that are all alike, twisted so often.
#[derive(Clone, Copy)]
pub struct Alike {
    turns: f64,
    count: usize,
}

impl Alike {
    /// Those of a pattern, if it twists its strands.
    pub fn of(pattern: &Pattern) -> Option<Self> {
        let turns = pattern.twist.as_ref()?.value.0;
        Some(Self { turns, count: pattern.strands.value.len() })
    }

    /// How long and how thick in mm twisted strands of such bits are, on cord so thick, whose ends take so much; nothing where
    /// they cannot be turned so often.
    pub fn rope(self, stock: Stock<'_>, bits: &[Bit], cord: f64, takes: f64) -> Option<[f64; 2]> {
        let length = takes + bits.iter().map(Bit::length).sum::<f64>();
        let ply = Ply { length, width: width(stock, bits.iter(), cord, length) };
        let bundle = Bundle::new(&vec![ply; self.count]);
        let twisted = bundle.twisted(self.turns)?;
        Some([twisted.length, bundle.thickness(&twisted.lays)])
    }
}

/// What comes of strands that hang apart by their own closure, where a pattern twists them.
pub fn twist(design: &Model, pattern: &Pattern, context: &mut Context) -> Option<Twist> {
    let turns = pattern.twist.as_ref()?;
    let (turns, place) = (turns.value.0, turns.place);
    if let Some(what) = held_apart(design) {
        return context.refuse(Remark::new(Turns::Twist(NoTwist::HeldApart(what))).at(place));
    }
    let ply = |strand: &Strand| {
        let (length, cord) = (strand.finished.value(), strand.cord_width(design).value());
        Ply { length, width: width(design.stock(), strand.bits(), cord, length) }
    };
    let bundle = Bundle::new(&design.strands.iter().map(ply).collect::<Vec<_>>());
    match bundle.twisted(turns) {
        Some(twisted) => Some(Twist { turns, place, bundle, twisted }),
        None => context.refuse(Remark::new(Turns::Twist(too_often(&bundle, turns))).at(place)),
    }
}

/// What holds strands apart: a bar, a bead with several holes or a clasp with several loops.
fn held_apart(design: &Model) -> Option<String> {
    let comb = design.closure.parts().map(|part| &design.findings[part.finding]);
    let comb = comb.filter(|finding| finding.comb().is_some_and(|comb| comb.holes > 1)).map(|finding| &finding.name);
    let name = |shared| match shared {
        Shared::Bar(at) => &design.findings[at].name,
        Shared::Bead(at) => &design.beads[at].name,
    };
    let shared = design.joined().map(|(shared, ..)| name(shared));
    comb.chain(shared).next().cloned()
}

/// More turns than strands take.
fn too_often(bundle: &Bundle, turns: f64) -> NoTwist {
    let halves = |halves: u32| bundle.twisted(0.5 * f64::from(halves)).is_some();
    let most = super::filling::largest(halves).map(|most| 0.5 * f64::from(most));
    NoTwist::Locked { turns, most }
}

/// How wide a strand of a length with such bits is on average along it, in mm.
fn width<'b>(stock: Stock<'_>, bits: impl Iterator<Item = &'b Bit>, cord: f64, length: f64) -> f64 {
    let more = |bit: &Bit| bit.length() * (wide(stock, bit, cord) - cord);
    cord + bits.map(more).sum::<f64>() / length
}

/// How wide a bit is, at least as its cord.
fn wide(stock: Stock<'_>, bit: &Bit, cord: f64) -> f64 {
    let both_ways = |bead: &Bead| bead.across.value().midpoint(bead.thick.value().min(bead.across.value()));
    let wide = match bit.what {
        What::Bead(bead) => both_ways(&stock.beads[bead]),
        What::Finding(finding) => stock.findings[finding].across_or(cord),
        What::Knot => KNOT_WIDTH * cord,
        What::Gap | What::Dangle(_) => cord,
    };
    wide.max(cord)
}
