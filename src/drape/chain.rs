//! A strand as a chain of links: bare cord in short pieces, everything else rigid.
//!
//! Lengths are mm, weights N. A bit is one link whose weight, with that of the cord inside it, acts
//! where bit and cord together have their centre. What closes an end (crimps, covers, guards) is one
//! link between the loop's cord and the rest. A gap held by the beads is bare cord. What dangles
//! weighs at its link. The loop's cord counts once, although it lies double.

use super::hang::{self, Hanging, Link, Unhung, stations};
use super::open::{Partings, given};
use crate::design::{Bit, Design, End, Entries, Finding, Passage, Rest, Strand, Train, What};
use crate::geometry::Point;
use crate::units::NEWTON_PER_GRAM;

/// Longest piece of bare cord in mm. A chain of such pieces misses the smooth curve by the square
/// of piece over length: under 10⁻⁵ of the length of anything that is worn.
const PIECE: f64 = 1.0;
/// A strand has no more pieces of bare cord than about this many: longer strands get longer pieces.
const PIECES: f64 = 2000.0;

/// What a link is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Content {
    /// Bare cord, loose.
    Cord,
    /// Bare cord between held beads, or the bit of this index in the train of this index.
    Bit(usize, usize),
    /// An end's loop and what closes it.
    End,
}

impl Content {
    /// Whether it is bare cord, which gives where beads want more.
    #[must_use]
    pub fn is_bare(self, strand: &Strand) -> bool {
        match self {
            Self::Bit(train, bit) => strand.trains[train].bits[bit].what == What::Gap,
            Self::Cord => true,
            Self::End => false,
        }
    }

    /// Whether it is neither cord nor what closes an end.
    #[must_use]
    pub fn is_strung(self, strand: &Strand) -> bool {
        self != Self::End && !self.is_bare(strand)
    }
}

/// A strand cut in links.
#[derive(Clone, Debug, Default)]
pub struct Chain {
    /// The links from the first end to the last, as they hang: cut anew they are those of a strand that is laid straight.
    pub links: Vec<Link>,
    /// How long each is when the strand is laid straight.
    pub lengths: Vec<f64>,
    /// Cord that each has beyond that, for neighbours that part: what the maker leaves bare for the round.
    pub spare: Vec<f64>,
    /// How they part from their neighbours.
    pub parted: Partings,
    /// What each link is.
    pub pieces: Vec<Content>,
    /// How stiff its cord is all along: its E I in N mm².
    pub stiffness: f64,
}

impl Chain {
    /// The stations of its joints, where the strand is laid straight.
    #[must_use]
    pub fn stations(&self) -> Vec<f64> {
        stations(self.lengths.iter().copied())
    }

    /// Cuts a strand whose trains start at these stations.
    ///
    /// Bare cord beside a train that slides is cut into as many pieces as its longest extent
    /// needs, wherever the train is, so that a small slide changes the chain a little.
    #[must_use]
    pub fn new(design: &Design, strand: &Strand, starts: &[f64]) -> Self {
        let cutter = Cutter::new(design, strand);
        let mut chain = Self { stiffness: strand.stiffness(design), ..Self::default() };
        let [first, last] = &strand.ends;
        cutter.end(&mut chain, first, false);
        cutter.spare(&mut chain);
        let mut from = (first.takes.value(), first.takes.value());
        for (index, (train, &start)) in strand.trains.iter().zip(starts).enumerate() {
            cutter.cord(&mut chain, start - from.0, latest(train) - from.1);
            cutter.train(&mut chain, index, train);
            from = (start + train.length(), earliest(train) + train.length());
        }
        let to = strand.finished.value() - last.takes.value();
        cutter.cord(&mut chain, to - from.0, to - from.1);
        if strand.meeting().is_none() {
            cutter.spare(&mut chain);
        }
        cutter.end(&mut chain, last, true);
        chain
    }

    /// Length of all links in mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.links.iter().map(|link| link.length).sum()
    }

    /// One a link: where it is a passage through what its strand shares with others.
    #[must_use]
    pub fn passages(&self, design: &Design, strand: &Strand) -> Vec<Option<Passage>> {
        let passages = design.passages(strand);
        let of = |piece: &Content| {
            let is = |(train, bit, _): &&(usize, usize, Passage)| *piece == Content::Bit(*train, *bit);
            passages.iter().find(is).map(|(.., passage)| *passage)
        };
        self.pieces.iter().map(of).collect()
    }

    /// Hangs it from the origin and from an end, near where it hung before its links changed a little.
    ///
    /// # Errors
    /// See [`Unhung`]; never a shape that is not in balance.
    pub fn hang(&self, end: Point, near: Option<&Hanging>) -> Result<Hanging, Unhung> {
        hang::solve_near(&self.links, &vec![self.stiffness; self.links.len()], end, near)
    }

    /// Makes links longer by how far they go on to their neighbours, for which bare cord gives what it has, all of it alike.
    pub fn open(&mut self, strand: &Strand, parted: Partings) {
        let bare: Vec<f64> = (0..self.links.len()).map(|at| self.bare(strand, at)).collect();
        let given = given(parted.takes.iter().sum(), bare.iter().copied());
        for (at, ([before, after], bare)) in parted.beyond.iter().zip(bare).enumerate() {
            let straight = self.straight(at);
            let length = before + straight.length + self.spare[at] - given * bare + after;
            let acts = (before + straight.centre * straight.length) / length;
            self.links[at] =
                Link { length, centre: if before + after > 0.0 { acts } else { straight.centre }, ..straight };
        }
        self.parted = parted;
    }

    /// How much bare cord a link has to give.
    #[must_use]
    pub fn bare(&self, strand: &Strand, at: usize) -> f64 {
        if self.pieces[at].is_bare(strand) { self.lengths[at] + self.spare[at] } else { 0.0 }
    }

    /// A link as it is when the strand is laid straight.
    #[must_use]
    pub fn straight(&self, at: usize) -> Link {
        let (link, length) = (self.links[at], self.lengths[at]);
        let [before, after] = self.parted.beyond[at];
        let opened = before > 0.0 || after > 0.0;
        let centre = if opened { (link.centre * link.length - before) / length } else { link.centre };
        Link { length, centre, ..link }
    }

    /// How much more cord its neighbours take where they part than it has bare.
    #[must_use]
    pub fn lacks(&self, strand: &Strand) -> f64 {
        let bare: f64 = (0..self.links.len()).map(|at| self.bare(strand, at)).sum();
        (self.parted.takes.iter().sum::<f64>() - bare).max(0.0)
    }

    fn push(&mut self, piece: Content, link: Link) {
        self.lengths.push(link.length);
        self.spare.push(0.0);
        self.parted.beyond.push([0.0; 2]);
        self.parted.takes.push(0.0);
        self.pieces.push(piece);
        self.links.push(link);
    }
}

/// First station at which a train may start.
pub(super) fn earliest(train: &Train) -> f64 {
    match train.rest {
        Rest::At(start) | Rest::Free(start, _) => start,
    }
}

/// Last station at which a train may start.
pub(super) fn latest(train: &Train) -> f64 {
    match train.rest {
        Rest::At(start) | Rest::Free(_, start) => start,
    }
}

/// What the links of one strand are cut from.
struct Cutter<'a> {
    findings: &'a Entries<Finding>,
    /// Weight of 1 mm of cord in N.
    weight: f64,
    /// Longest piece of bare cord.
    piece: f64,
    /// Cord beyond all stations at each end of what is strung.
    spare: f64,
}

impl<'a> Cutter<'a> {
    fn new(design: &'a Design, strand: &Strand) -> Self {
        let piece = PIECE.max(strand.finished.value() / PIECES);
        let spare = if design.is_ring() { 0.0 } else { 0.5 * strand.slack.value() };
        Self { findings: &design.findings, weight: cord_weight(design, strand), piece, spare }
    }

    /// Bare cord of a length, in as many equal pieces as its longest extent needs.
    fn cord(&self, chain: &mut Chain, length: f64, longest: f64) {
        self.bare(chain, Content::Cord, length.max(0.0), longest, 0.0);
    }

    /// Cord that no station counts: half of what is left bare for the round.
    fn spare(&self, chain: &mut Chain) {
        let length = self.spare;
        if length > 0.0 {
            chain.push(Content::Cord, Link { length: 0.0, weight: length * self.weight, centre: 0.5 });
            let at = chain.links.len() - 1;
            (chain.links[at].length, chain.spare[at]) = (length, length);
        }
    }

    fn bare(&self, chain: &mut Chain, piece: Content, length: f64, longest: f64, weight: f64) {
        let count = pieces(longest, self.piece);
        for _ in 0..count {
            let share = length / count as f64;
            chain.push(piece, Link { length: share, weight: share * self.weight + weight / count as f64, centre: 0.5 });
        }
    }

    fn train(&self, chain: &mut Chain, index: usize, train: &Train) {
        for (number, bit) in train.bits.iter().enumerate() {
            let piece = Content::Bit(index, number);
            if bit.what.is_meeting() {
                self.spare(chain);
            }
            if bit.what == What::Gap {
                self.bare(chain, piece, bit.length(), bit.length(), bit.mass * NEWTON_PER_GRAM);
            } else {
                chain.push(piece, self.rigid(bit));
            }
        }
    }

    fn rigid(&self, bit: &Bit) -> Link {
        let (length, weight) = (bit.length(), bit.mass * NEWTON_PER_GRAM);
        let cord = length * self.weight;
        let (moment, whole) = (weight * bit.before + cord * 0.5 * length, weight + cord);
        let centre = if whole * length > 0.0 { moment / (whole * length) } else { 0.5 };
        Link { length, weight: whole, centre }
    }

    /// The loop's cord outermost, then what closes it.
    fn end(&self, chain: &mut Chain, end: &End, last: bool) {
        let bight = end.bight.unwrap_or_default().value().clamp(0.0, end.takes.value());
        let closed = end.takes.value() - bight;
        let mass: f64 = end.findings.iter().map(|index| self.findings[*index].mass.value()).sum();
        let weight = mass * NEWTON_PER_GRAM + closed * self.weight;
        let link = (closed > 0.0 || weight > 0.0).then_some(Link { length: closed, weight, centre: 0.5 });
        if last {
            link.into_iter().for_each(|link| chain.push(Content::End, link));
        }
        self.bare(chain, Content::End, bight, bight, 0.0);
        if !last {
            link.into_iter().for_each(|link| chain.push(Content::End, link));
        }
    }
}

/// How many pieces, none longer than `piece`, a length is cut into: none where it is not positive.
pub(super) fn pieces(length: f64, piece: f64) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count, not negative")]
    let count = (length / piece).ceil().max(0.0) as usize;
    count
}

/// Weight in N of 1 mm of a strand's cord.
pub(super) fn cord_weight(design: &Design, strand: &Strand) -> f64 {
    strand.cord_mass(design).value() / 1000.0 * NEWTON_PER_GRAM
}
