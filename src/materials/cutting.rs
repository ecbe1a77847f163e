//! Cutting pieces of cord or chain from as few spools as will do.
//!
//! See `packing` for how. Up to some hundred pieces the plan is the best there is, unless the search gives
//! up; where the plan is not proven best, it states a lower bound beside it. A length from the stash is one
//! piece of cord, and is cut first. Chain is cut through a link, which is lost, between one piece and the next.

mod packing;

use packing::{Bins, PackSizes, pack};

use super::{Article, Stash};
use crate::design::{Finding, Index, Lot, Model, Strand};
use crate::units::Length;

/// Lengths are compared in whole ten-millionths of a millimetre, rounded down, so that the thirds of a spool
/// make a spool.
const GRAINS: f64 = 1e7;
/// What is less of a grain is rounding.
const HAIR: f64 = 0.01;

/// A piece to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// The name of the batch that it is cut for, among several.
    pub of: Option<String>,
    /// What of that it is cut for.
    pub what: CutFor,
    /// How long it is cut.
    pub length: Length,
}

/// What a piece is cut for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CutFor {
    /// A strand of its design, by its name.
    Strand(Index<Strand>, String),
    /// A tassel that is wound of it, a finding of its design, by its name.
    Tassel(Index<Finding>, String),
    /// Chain of that name.
    Chain(String),
    /// To see how much its knots take up.
    Trial,
}

impl Cut {
    /// A piece of that length for the only design there is.
    #[must_use]
    pub const fn new(what: CutFor, length: Length) -> Self {
        Self { of: None, what, length }
    }

    /// The name of what it is cut for, where that has one.
    #[must_use]
    pub const fn name(&self) -> Option<&String> {
        match &self.what {
            CutFor::Strand(_, name) | CutFor::Tassel(_, name) | CutFor::Chain(name) => Some(name),
            CutFor::Trial => None,
        }
    }
}

/// A length of cord and the pieces cut from it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Spool {
    /// How long it is.
    pub length: Length,
    /// Whether it is in hand already.
    pub in_stash: bool,
    /// What is cut from it, in order.
    pub pieces: Vec<Cut>,
    /// What remains.
    pub left: Length,
}

impl Spool {
    const fn new(length: Length, in_stash: bool) -> Self {
        Self { length, in_stash, pieces: Vec::new(), left: length }
    }

    fn cut(&mut self, piece: Cut, lost: Length) {
        let left = self.left - piece.length - lost;
        self.left = if left > Length::ZERO { left } else { Length::ZERO };
        self.pieces.push(piece);
    }
}

/// Which pieces of one cord or chain are cut from which spool.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Cutting {
    /// The cord or chain.
    pub article: Article,
    /// Length of one spool on sale; absent where the pattern does not say.
    pub lot: Option<Length>,
    /// The spools: first the one in the stash, then those bought.
    pub spools: Vec<Spool>,
    /// Pieces that fit no spool: longer than one on sale, or beyond the stash where none is on sale.
    pub unplaced: Vec<Cut>,
    /// No plan can do with fewer bought spools than this.
    pub least: u64,
    /// Steps that the search for a better plan than the first took.
    pub steps: u32,
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
    pub fn too_long(&self) -> &[Cut] {
        if self.lot.is_some() { &self.unplaced } else { &[] }
    }

    /// Every piece, placed or not.
    pub fn pieces(&self) -> impl Iterator<Item = &Cut> {
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
pub fn plan(design: &Model, article: Article, pieces: Vec<Cut>, stash: &Stash) -> Cutting {
    let (stash, lot) = (stash.length(article), lot_length(design, article));
    fewest(article, pieces, Supply { stash, lot, lost: lost(design, article) })
}

/// What a cut takes: the link of chain that is cut through, where its links are known; of a cord nothing.
#[must_use]
pub fn lost(design: &Model, article: Article) -> Length {
    let link = match article {
        Article::Cord(at) => design.cords[at].link,
        Article::Finding(at) => design.findings[at].opening(),
        Article::Bead(_) | Article::Assorted(_) => None,
    };
    link.unwrap_or_default()
}

/// Length of one lot of a cord or chain, where it is sold by anything that has one.
pub(super) fn lot_length(design: &Model, article: Article) -> Option<Length> {
    match &article.sold(design)?.lot {
        Lot::Strand(length) | Lot::Length(length) => Some(*length),
        Lot::Grams(mass) => {
            let per_metre = match article {
                Article::Cord(at) => *design.cords[at].mass_per_metre,
                Article::Finding(at) => *design.findings[at].mass,
                Article::Bead(_) | Article::Assorted(_) => return None,
            };
            (per_metre.value() > 0.0).then(|| Length::mm(mass.value() / per_metre.value() * 1000.0))
        }
        Lot::Hank(..) | Lot::Pack(_) | Lot::Each => None,
    }
}

/// What pieces are cut from.
#[derive(Clone, Copy, Debug, Default)]
pub struct Supply {
    /// What is in the stash.
    pub stash: Option<Length>,
    /// Length of one spool on sale.
    pub lot: Option<Length>,
    /// What is lost between one piece and the next.
    pub lost: Length,
}

/// Cuts the pieces from as few spools as will do.
///
/// What is longer than a spool on sale can only come from the stash, and the shortest of that first, so that as
/// much as may be comes from somewhere.
#[must_use]
pub fn fewest(article: Article, mut pieces: Vec<Cut>, supply: Supply) -> Cutting {
    let Supply { stash, lot, lost } = supply;
    pieces.sort_by(|a, b| b.length.value().total_cmp(&a.length.value()));
    let on_sale = lot.map_or(0, grains);
    let long = pieces.iter().take_while(|piece| grains(piece.length) > on_sale).count();
    let rest = pieces.split_off(long);
    let mut spools: Vec<_> = stash.map(|length| Spool::new(length, true)).into_iter().collect();
    let mut unplaced = Vec::new();
    for piece in pieces.into_iter().rev() {
        match spools.first_mut().filter(|stash| grains(piece.length) <= grains(stash.left)) {
            Some(stash) => stash.cut(piece, lost),
            None => unplaced.push(piece),
        }
    }
    unplaced.reverse();
    let mut cutting = Cutting { article, lot, spools, unplaced, least: 0, steps: 0 };
    if let Some(lot) = lot {
        cut_all(&mut cutting, rest, lot, lost);
    }
    cutting
}

/// Cuts pieces of which none is longer than a spool on sale.
fn cut_all(cutting: &mut Cutting, pieces: Vec<Cut>, lot: Length, lost: Length) {
    // Behind the last piece of a spool nothing is lost: as if the spool were so much longer, and every piece.
    let at_hand = cutting.spools.first().map(|stash| grains(stash.left + lost));
    let alike: Vec<Vec<Cut>> = alike(pieces);
    let sizes = alike.iter().map(|pieces| grains(pieces[0].length + lost)).collect();
    let counts = alike.iter().map(Vec::len).collect();
    let packing = pack(&PackSizes { sizes, counts }, Bins { first: at_hand, each: grains(lot + lost) });
    cutting.spools.resize_with(packing.bins.len(), || Spool::new(lot, false));
    let mut alike: Vec<_> = alike.into_iter().map(Vec::into_iter).collect();
    for (spool, kinds) in cutting.spools.iter_mut().zip(&packing.bins) {
        kinds.iter().filter_map(|kind| alike[*kind].next()).for_each(|piece| spool.cut(piece, lost));
    }
    (cutting.least, cutting.steps) = (packing.least as u64, packing.steps);
}

/// Pieces that are as long as one another, the longest first.
fn alike(pieces: Vec<Cut>) -> Vec<Vec<Cut>> {
    let mut alike: Vec<Vec<Cut>> = Vec::new();
    for piece in pieces {
        match alike.last_mut().filter(|pieces| grains(pieces[0].length) == grains(piece.length)) {
            Some(pieces) => pieces.push(piece),
            None => alike.push(vec![piece]),
        }
    }
    alike
}

/// A length in whole grains.
fn grains(length: Length) -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
    let whole = (length.value() * GRAINS + HAIR).max(0.0).floor() as u64;
    whole
}
