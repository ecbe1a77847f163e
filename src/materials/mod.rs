//! Materials: what to buy and cut for a design, and what it costs.
//!
//! Derived from the [`Design`] alone: counts are those of the beads that are strung, findings those
//! that ends, closure, branches and bead lists name. See [`need`] for the counting, [`lots`] for
//! packs, [`cutting`] for cords and chains, [`price`] for the suggestion and [`render`] for text.
//!
//! Pieces for several makers, and several pieces, are bought once for all: needs are put together ([`pool`]) before
//! they are rounded up to whole packs. Kits ([`kit`]) are packed in bags that each hold their own spare. Money is whole coins, and every total is a sum of the lines' whole coins.

pub mod assorted;
pub mod cutting;
pub mod kit;
pub mod lots;
pub mod need;
pub mod pool;
pub mod price;
pub mod render;
pub mod stash;

use crate::design::{Assorted, Bead, Cord, Design, Entries, Finding, Index, Model, Shared, Sold};
use crate::palette::Palette;
use crate::units::{Length, Mass, Money};

pub use assorted::BoughtWith;
pub use cutting::{Cut, CutFor, Cutting, Spool, Supply};
pub use kit::{Bagged, Kit, Packed};
pub use pool::{Batch, Pool};
pub use price::Suggestion;
pub use stash::Stash;

/// Share of the beads that is bought beyond the count: common practice, no source.
pub const SPARE: f64 = 0.05;
/// Most makers that one list is written for. Beyond it a cutting plan is no use to anybody.
pub const MOST_MAKERS: u32 = 10_000;

/// What the materials are for.
#[derive(Clone, Debug)]
pub struct Order {
    /// How many pieces (pairs of earrings) are made; at most [`MOST_MAKERS`], more are not counted.
    pub makers: u32,
    /// Share of the beads that is bought beyond the count.
    pub spare: f64,
    /// Share of the findings that is bought beyond the count.
    pub spare_findings: f64,
    /// What is in hand already.
    pub stash: Stash,
}

impl Order {
    /// How many spare there are to so many of an article.
    #[must_use]
    pub fn spare_of(&self, article: Article, count: u64) -> u64 {
        let share = match article {
            Article::Bead(_) => self.spare,
            Article::Finding(_) => self.spare_findings,
            Article::Cord(_) | Article::Assorted(_) => 0.0,
        };
        lots::spare(count, share)
    }
}

impl Default for Order {
    fn default() -> Self {
        Self { makers: 1, spare: SPARE, spare_findings: 0.0, stash: Stash::default() }
    }
}

/// Something that is bought, by its index in the design's list of its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Article {
    /// A bead.
    Bead(Index<Bead>),
    /// A cord.
    Cord(Index<Cord>),
    /// A finding.
    Finding(Index<Finding>),
    /// Several kinds of bead together.
    Assorted(Index<Assorted>),
}

impl From<Shared> for Article {
    fn from(shared: Shared) -> Self {
        match shared {
            Shared::Bar(at) => Self::Finding(at),
            Shared::Bead(at) => Self::Bead(at),
        }
    }
}

impl Article {
    /// The word for its kind.
    #[must_use]
    pub const fn kind(self) -> &'static str {
        match self {
            Self::Bead(_) => "bead",
            Self::Cord(_) => "cord",
            Self::Finding(_) => "finding",
            Self::Assorted(_) => "assorted",
        }
    }

    /// Its id in the pattern.
    #[must_use]
    pub fn id(self, design: &Model) -> &str {
        match self {
            Self::Bead(at) => &design.beads[at].id,
            Self::Cord(at) => &design.cords[at].id,
            Self::Finding(at) => &design.findings[at].id,
            Self::Assorted(at) => &design.assorted[at].id,
        }
    }

    /// Its name on the sheet.
    #[must_use]
    pub fn name(self, design: &Model) -> &str {
        match self {
            Self::Bead(at) => &design.beads[at].name,
            Self::Cord(at) => &design.cords[at].name,
            Self::Finding(at) => &design.findings[at].name,
            Self::Assorted(at) => &design.assorted[at].name,
        }
    }

    /// How it is sold by itself, where the pattern says.
    #[must_use]
    pub fn sold(self, design: &Model) -> Option<&Sold> {
        match self {
            Self::Bead(at) => design.beads[at].sold.as_ref(),
            Self::Cord(at) => design.cords[at].sold.as_ref(),
            Self::Finding(at) => design.findings[at].sold.as_ref(),
            Self::Assorted(_) => None,
        }
    }

    /// Its name and those of the findings that come with it, where they have their own: a toggle ring and a toggle bar,
    /// but one slide clasp of two halves that are both called so.
    #[must_use]
    pub fn names(self, design: &Model) -> Vec<String> {
        let with = need::companions(design, self).map(|at| design.findings[at].name.as_str());
        let mut names: Vec<&str> = Vec::new();
        for name in std::iter::once(self.name(design)).chain(with) {
            if !names.contains(&name) {
                names.push(name);
            }
        }
        names.into_iter().map(str::to_owned).collect()
    }

    /// Everything that a design is made of, and what several kinds of bead are bought in: beads, these, cords,
    /// findings.
    pub fn all(design: &Model) -> impl Iterator<Item = Self> {
        let beads = design.beads.indices().map(Self::Bead);
        let assorted = design.assorted.indices().map(Self::Assorted);
        let cords = design.cords.entries().filter(|(_, cord)| !cord.is_pin).map(|(at, _)| Self::Cord(at));
        beads.chain(assorted).chain(cords).chain(design.findings.indices().map(Self::Finding))
    }
}

/// How much of something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// So many.
    Count(u64),
    /// So long.
    Length(Length),
}

/// One article with what comes with it: what the pieces need of it and what is bought.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Line {
    /// Which article.
    pub article: Article,
    /// Its id in the pattern.
    pub id: String,
    /// Its name on the sheet, and the names of what comes with it.
    pub names: Vec<String>,
    /// What the pieces take, exactly.
    pub need: Amount,
    /// What is bought beyond that in case some are lost or broken.
    pub spare: Amount,
    /// How much is in hand before anything is bought.
    pub in_hand: Amount,
    /// How much of need and spare comes out of what is in hand.
    pub from_stash: Amount,
    /// What to buy; absent where the pattern does not say how it is sold, or where one lot is too
    /// small to hold any.
    pub buy: Option<Buy>,
    /// Of whom it is bought, where the pattern says.
    pub from: Option<String>,
    /// With what it is bought, of a bead that is bought with others; that has a line of its own.
    pub within: Option<BoughtWith>,
}

impl Line {
    /// Buys it with others: spare is no more than what is left over.
    fn bought_within(&mut self, within: &BoughtWith) {
        if let Amount::Count(spare) = self.spare {
            self.spare = Amount::Count(spare.min(within.left_over));
        }
        self.within = Some(within.clone());
    }
}

/// As what a lot is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum SoldAs {
    Strand,
    Hank,
    Pack,
    Set,
    Piece,
    Bag,
    Coil,
    Spool,
    Length,
}

/// What to buy of one article.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Buy {
    /// How many lots (strands, packs, spools).
    pub lots: u64,
    /// As what one lot is sold.
    pub unit: SoldAs,
    /// What one lot holds.
    pub lot: Amount,
    /// What one lot weighs, where it is sold by mass.
    pub mass: Option<Mass>,
    /// What is left when the pieces are made and no spare was used: in hand + bought - need.
    /// Cord pieces that fit no spool are left out of the sum.
    pub left_over: Amount,
    /// Cost of what the pieces take, whether from the stash or not; absent where the pattern gives no
    /// price.
    pub used: Option<Money>,
    /// Cost of the lots; absent where the pattern gives no price.
    pub bought: Option<Money>,
}

/// Everything to buy and cut.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Materials {
    /// How many pieces they are for.
    pub makers: u32,
    /// Share of spare beads.
    pub spare: f64,
    /// One an article: beads, what several of them are bought in, cords, findings, each in the design's order.
    pub lines: Vec<Line>,
    /// How to cut what is sold by length: cords, then chains.
    pub cuttings: Vec<Cutting>,
    /// What one piece might be sold for, where the pattern says what the work costs.
    pub suggestion: Option<Suggestion>,
    /// What is packed for whom, where pieces are packed as kits.
    pub kits: Vec<Kit>,
}

impl Materials {
    /// Cost of what the pieces take: the sum of the lines'.
    #[must_use]
    pub fn used(&self) -> Money {
        self.lines.iter().filter_map(|line| line.buy.as_ref()).filter_map(|buy| buy.used).sum()
    }

    /// Cost of all that is bought: the sum of the lines'.
    #[must_use]
    pub fn bought(&self) -> Money {
        self.lines.iter().filter_map(|line| line.buy.as_ref()).filter_map(|buy| buy.bought).sum()
    }

    /// The cutting plan of an article that is bought by length.
    #[must_use]
    pub fn cutting(&self, article: Article) -> Option<&Cutting> {
        self.cuttings.iter().find(|cutting| cutting.article == article)
    }
}

/// Works out what to buy and cut for one design.
#[must_use]
pub fn materials(design: &Design, order: &Order) -> Materials {
    of(&alone(design, &Palette::default(), order), order)
}

/// Works out what to buy and cut for several designs together.
#[must_use]
pub fn of(pool: &Pool<'_>, order: &Order) -> Materials {
    let (lines, cuttings) = lines(pool, order);
    let price = |design: &Design| Some(price::suggest(design.price.as_ref()?, &one_piece(design)));
    Materials {
        makers: pool.batches.iter().map(|batch| batch.pieces).sum(),
        spare: order.spare,
        lines,
        cuttings,
        suggestion: if let [batch] = pool.batches.as_slice() { price(batch.design) } else { None },
        kits: pool.batches.iter().filter(|batch| batch.bagged).map(|batch| Kit::new(batch, order)).collect(),
    }
}

fn lines(pool: &Pool<'_>, order: &Order) -> (Vec<Line>, Vec<Cutting>) {
    let (stock, cuttings) = (&pool.stock, cuttings(pool, order));
    let together = |(at, assorted): (Index<Assorted>, &Assorted)| {
        assorted::line(stock, at, &|bead| pool.wanted(bead, assorted, order), &order.stash)
    };
    let together: Entries<_, Assorted> = stock.assorted.entries().map(together).collect();
    let cut = |article| cuttings.iter().find(|cutting| cutting.article == article);
    let line = |article| match (article, cut(article)) {
        (Article::Assorted(at), _) => together[at].0.clone(),
        (_, Some(cutting)) => lots::cut(stock, cutting),
        (_, None) => lots::counted(stock, article, pool.needed(article, order), &order.stash),
    };
    let mut lines: Vec<_> = bought(stock).map(line).collect();
    for (bead, within) in together.iter().flat_map(|(_, within)| within) {
        let of_bead = lines.iter_mut().find(|line| line.article == Article::Bead(*bead));
        of_bead.into_iter().for_each(|line| line.bought_within(within));
    }
    (lines, cuttings)
}

/// How all is cut that is needed by length.
fn cuttings(pool: &Pool<'_>, order: &Order) -> Vec<Cutting> {
    let stock = &pool.stock;
    let plan = |article| {
        let pieces = pool.pieces.get(&article).cloned().unwrap_or_default();
        cutting::plan(stock, article, pieces, &order.stash)
    };
    bought(stock).filter(|article| need::by_length(stock, *article)).map(plan).collect()
}

/// What is bought by itself: neither with another article nor made with the piece.
fn bought(stock: &Model) -> impl Iterator<Item = Article> {
    Article::all(stock).filter(|article| !need::comes_with(stock, *article) && !need::is_made(stock, *article))
}

/// The lines of one piece bought on its own, for the price.
fn one_piece(design: &Design) -> Vec<Line> {
    let order = Order::default();
    lines(&alone(design, &Palette::default(), &order), &order).0
}

/// One design as a list of articles, of which each has an id of its own.
fn alone<'a>(design: &'a Design, palette: &'a Palette, order: &Order) -> Pool<'a> {
    let (name, pieces) = (design.heading.title.as_str(), order.makers.min(MOST_MAKERS));
    Pool::new(Batch { design, palette, name, pieces, bagged: false }, Vec::new(), order)
}
