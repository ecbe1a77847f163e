//! Whether what several rows go through lies opposite itself on all of them.
//!
//! A bar or bead with several holes is straight. Where one row goes through it farther along than its neighbour, it
//! leans, by asin(how much farther / distance of its holes). Rows side by side round a limb, and rows that hang straight
//! down, must agree both ways. Round a neck each row lies outside the one before and may be longer between two bars,
//! as swags are; the inner one may not.

use crate::design::{Bores, Design, Index, Joins, Shared, Sharers, Strand};
use crate::drape::Drape;
use crate::materials::Article;
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::bar::{Bar, Spot};
use crate::units::Length;

/// How much farther along one row than along its neighbour something may lie, as a share of the distance between its
/// holes: it leans by 14.5 degrees, and its rows come 3 % closer. What leans more is seen to be aslant, and beads beside
/// it gape on one side: common practice, no source.
const LEANS: f64 = 0.25;

/// The worst place where neighbours in a group do not let what they share stand straight.
pub fn leaning(design: &Design, drape: &Drape, shared: Shared, bores: Bores, group: &Sharers) -> Option<Remark> {
    let most = bores.apart.value() * LEANS;
    let pairs = group.0.windows(2).filter(|pair| pair[0].through == pair[1].through && design.twist.is_none());
    let worst = pairs.filter_map(|pair| {
        let rows = [pair[0].strand, pair[1].strand].map(|at| HeldRow::of(design, drape, at, shared));
        let [inner, outer] = rows;
        Pair { inner: inner?, outer: outer?, swags: swags(design) }.worst()
    });
    let worst = worst.max_by(|one, other| one.by.total_cmp(&other.by)).filter(|worst| worst.by > most)?;
    let name = Article::from(shared).name(design).to_owned();
    Some(worst.remark(&name, Length::mm(most)))
}

/// Whether an outer row may be longer than the inner one between two bars.
fn swags(design: &Design) -> bool {
    !design.is_ring() && (design.heading.kind != Kind::Earrings || design.closure.loops())
}

/// Whether last ends are held beside one another too.
fn joins_last_ends(design: &Design) -> bool {
    match &design.closure.joins {
        Joins::Above(_) => false,
        Joins::Open([_, last], _) => !last.is_empty(),
        Joins::Nothing | Joins::Sides(_) | Joins::BothEnds(_) => true,
    }
}

/// A row with the places at which it is held to its neighbours.
struct HeldRow<'a> {
    strand: &'a Strand,
    /// How far along it each thing lies that it shares, in mm, between its ends where both are held.
    places: Vec<f64>,
    /// Whether its last place is its last end.
    ends: bool,
}

impl<'a> HeldRow<'a> {
    fn of(design: &'a Design, drape: &Drape, at: Index<Strand>, shared: Shared) -> Option<Self> {
        let strand = &design.strands[at];
        let stations = drape.strands.get(at)?.through(strand, shared).map(|seat| seat.station);
        let ends = joins_last_ends(design);
        let last = ends.then(|| strand.finished.value());
        Some(Self { strand, places: std::iter::once(0.0).chain(stations).chain(last).collect(), ends })
    }

    fn length(&self) -> f64 {
        self.strand.finished.value()
    }
}

/// Two neighbouring rows.
struct Pair<'a> {
    inner: HeldRow<'a>,
    outer: HeldRow<'a>,
    swags: bool,
}

impl<'a> Pair<'a> {
    /// How much farther along the inner row than along the outer each thing lies.
    fn ahead(&self) -> Vec<f64> {
        let [inner, outer] = [&self.inner, &self.outer].map(HeldRow::length);
        // Round a limb a row of thicker beads is longer, and each of its stretches by its share.
        let alike = if !self.swags && self.inner.ends { 0.5 * (inner + outer) } else { 0.0 };
        let scale = |length: f64| if alike > 0.0 { alike / length } else { 1.0 };
        let places = self.inner.places.iter().zip(&self.outer.places);
        places.map(|(one, other)| one * scale(inner) - other * scale(outer)).collect()
    }

    fn worst(self) -> Option<Worst<'a>> {
        let ahead = self.ahead();
        let spans = (1..ahead.len()).flat_map(|to| (0..to).map(move |from| (from, to)));
        let spans = spans.filter(|(from, _)| self.swags || *from == 0);
        let by = |(from, to): (usize, usize)| {
            let more: f64 = ahead[to] - ahead[from];
            if self.swags { more } else { more.abs() }
        };
        let (from, to) = spans.max_by(|one, other| by(*one).total_cmp(&by(*other)))?;
        Some(Worst { by: by((from, to)), from, to, pair: self })
    }
}

/// Where a pair of rows disagrees most.
struct Worst<'a> {
    by: f64,
    from: usize,
    to: usize,
    pair: Pair<'a>,
}

impl Worst<'_> {
    fn remark(&self, name: &str, most: Length) -> Remark {
        let Pair { inner, outer, swags } = &self.pair;
        let lengths = [inner, outer].map(|row| Length::mm(row.places[self.to] - row.places[self.from]));
        let (strands, by) = ([inner, outer].map(|row| row.strand.name.clone()), Length::mm(self.by));
        let said = if *swags {
            let between = [self.from, self.to].map(|at| self.spot(at, name));
            Bar::Bulges { strands, between, lengths, by, most }
        } else {
            Bar::Leans { what: self.spot(self.to, name), strands, along: lengths, by, most }
        };
        Remark::new(said).at(outer.strand.place)
    }

    fn spot(&self, at: usize, name: &str) -> Spot {
        let row = &self.pair.inner;
        match at {
            0 => Spot::First,
            at if row.ends && at + 1 == row.places.len() => Spot::Last,
            at => Spot::Shared(name.to_owned(), at),
        }
    }
}
