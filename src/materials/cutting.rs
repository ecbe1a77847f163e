//! Cutting pieces of cord or chain from as few spools as can be found.
//!
//! The problem is one-dimensional bin packing. First-fit decreasing takes the pieces longest first
//! and cuts each from the first spool that still holds it; it needs at most 11/9 of the best count
//! and 6/9 of a spool (Dósa, "The tight bound of first fit decreasing bin-packing algorithm",
//! 2007; from memory). The plan states a lower bound beside it, so that the reader sees whether it
//! is proven best. A length from the stash is one piece of cord, and is cut first.

use super::{Article, Order, need};
use crate::design::{Design, Lot};
use crate::units::Length;

/// Cut pieces are measured with a ruler: sums that pass a spool's end by less are rounding.
const HAIR: f64 = 1e-6;

/// A piece to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is for: the strand's name, or the chain's.
    pub label: String,
    /// How long it is cut.
    pub length: Length,
}

/// A length of cord and the pieces cut from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Spool {
    /// How long it is.
    pub length: Length,
    /// Whether it is in hand already.
    pub in_stash: bool,
    /// What is cut from it, in order.
    pub pieces: Vec<Piece>,
    /// What remains.
    pub left: Length,
}

impl Spool {
    const fn new(length: Length, in_stash: bool) -> Self {
        Self { length, in_stash, pieces: Vec::new(), left: length }
    }

    fn holds(&self, length: Length) -> bool {
        length.value() <= self.left.value() + HAIR
    }

    fn cut(&mut self, piece: Piece) {
        let left = self.left - piece.length;
        self.left = if left > Length::ZERO { left } else { Length::ZERO };
        self.pieces.push(piece);
    }
}

/// Which pieces of one cord or chain are cut from which spool.
#[derive(Clone, Debug, PartialEq)]
pub struct Cutting {
    /// The cord or chain.
    pub article: Article,
    /// Length of one spool on sale; absent where the pattern does not say.
    pub lot: Option<Length>,
    /// The spools: first the one in the stash, then those bought.
    pub spools: Vec<Spool>,
    /// Pieces that fit no spool: longer than one on sale, or beyond the stash where none is on sale.
    pub unplaced: Vec<Piece>,
    /// No plan can do with fewer bought spools than this.
    pub least: u64,
}

impl Cutting {
    /// How many spools are bought.
    #[must_use]
    pub fn bought(&self) -> u64 {
        self.spools.iter().filter(|spool| !spool.in_stash).count() as u64
    }

    /// How many spools more than the lower bound: 0 is proven best, 1 within one of the best.
    #[must_use]
    pub fn beyond_least(&self) -> u64 {
        self.bought() - self.least.min(self.bought())
    }

    /// Pieces longer than a spool on sale and than what is in the stash.
    #[must_use]
    pub fn too_long(&self) -> &[Piece] {
        if self.lot.is_some() { &self.unplaced } else { &[] }
    }

    /// Every piece, placed or not.
    pub fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.spools.iter().flat_map(|spool| &spool.pieces).chain(&self.unplaced)
    }

    /// Length of all pieces together.
    #[must_use]
    pub fn total(&self) -> Length {
        self.pieces().map(|piece| piece.length).sum()
    }
}

/// Plans the cuts of an article that is needed by length.
#[must_use]
pub fn plan(design: &Design, article: Article, order: &Order) -> Cutting {
    let once = need::pieces(design, article);
    let pieces = (0..need::times(design, order.makers)).flat_map(|_| once.iter().cloned()).collect();
    first_fit_decreasing(article, pieces, order.stash.length(article), lot_length(design, article))
}

/// Length of one lot of a cord or chain, where it is sold by anything that has one.
fn lot_length(design: &Design, article: Article) -> Option<Length> {
    match &article.sold(design)?.lot {
        Lot::Strand(length) | Lot::Length(length) => Some(*length),
        Lot::Grams(mass) => {
            let per_metre = match article {
                Article::Cord(at) => design.cords[at].mass_per_metre,
                Article::Finding(at) => design.findings[at].mass,
                Article::Bead(_) => return None,
            };
            (per_metre.value() > 0.0).then(|| Length::mm(mass.value() / per_metre.value() * 1000.0))
        }
        Lot::Pack(_) | Lot::Each => None,
    }
}

/// Cuts the pieces, longest first, each from the first spool that still holds it.
#[must_use]
pub fn first_fit_decreasing(
    article: Article,
    mut pieces: Vec<Piece>,
    stash: Option<Length>,
    lot: Option<Length>,
) -> Cutting {
    pieces.sort_by(|a, b| b.length.value().total_cmp(&a.length.value()));
    let spools = stash.map(|length| Spool::new(length, true)).into_iter().collect();
    let mut cutting = Cutting { article, lot, spools, unplaced: Vec::new(), least: 0 };
    let (mut first, mut last) = (0, Length::ZERO);
    for piece in pieces {
        // A spool that could not hold a piece cannot hold another of the same length.
        first = if piece.length == last { first } else { 0 };
        last = piece.length;
        first = place(&mut cutting, piece, first);
    }
    cutting.least = least(&cutting);
    cutting
}

/// Cuts a piece from the first spool that holds it, no earlier than `from`; which one that was.
fn place(cutting: &mut Cutting, piece: Piece, from: usize) -> usize {
    let holds = |spool: &Spool| spool.holds(piece.length);
    let at = cutting.spools.iter().skip(from).position(holds).map_or(cutting.spools.len(), |ahead| from + ahead);
    let fresh = cutting.lot.map(|lot| Spool::new(lot, false)).filter(holds);
    match (cutting.spools.get_mut(at), fresh) {
        (Some(spool), _) => spool.cut(piece),
        (None, Some(mut spool)) => {
            spool.cut(piece);
            cutting.spools.push(spool);
        }
        (None, None) => cutting.unplaced.push(piece),
    }
    at
}

/// A lower bound for the spools bought: all placed pieces laid end to end beyond the stash, and
/// the pieces longer than half a spool, of which no two come from the same one.
fn least(cutting: &Cutting) -> u64 {
    let Some(lot) = cutting.lot else { return 0 };
    let stash: Length = cutting.spools.iter().filter(|spool| spool.in_stash).map(|spool| spool.length).sum();
    let placed = || cutting.spools.iter().flat_map(|spool| &spool.pieces);
    let sum: Length = placed().map(|piece| piece.length).sum();
    let end_to_end = up((sum - stash).value() / (lot.value() + HAIR) - 1e-9);
    let half = lot.value() / 2.0 + HAIR;
    let long = placed().filter(|piece| piece.length.value() > half).count() as u64;
    end_to_end.max(long.saturating_sub(up(stash.value() / half)))
}

/// Rounded up to a whole count; nothing for less than nothing.
fn up(value: f64) -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
    let whole = value.max(0.0).ceil() as u64;
    whole
}
