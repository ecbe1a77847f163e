//! What several designs take together: bought once for all, with one stash.
//!
//! Articles are the same where they have the same id and are alike in everything that one buys, and in colour: from a shelf
//! they always are. Others that share an id are told apart by the name of their piece.

use std::collections::BTreeMap;

use super::cutting::Cut;
use super::{Article, Order, need};
use crate::design::{Assorted, Bead, Cord, Design, Entries, Finding, Form, Index, KnotCover, Model};
use crate::palette::Palette;
use crate::source::Place;

/// A design that is made so often.
#[derive(Clone, Copy, Debug)]
pub struct Batch<'a> {
    /// The design.
    pub design: &'a Design,
    /// Its colours, which tell what is bought for it from what is bought for others.
    pub palette: &'a Palette,
    /// What it is called beside others.
    pub name: &'a str,
    /// How many pieces (pairs of earrings).
    pub pieces: u32,
    /// Whether each is packed in a bag that holds its own spare.
    pub bagged: bool,
}

/// How many of something are needed, and how many spare are put into bags.
#[derive(Clone, Copy, Debug, Default)]
pub struct Need {
    /// What the pieces take.
    pub count: u64,
    /// Of that, what pieces take that are packed in bags.
    pub bagged: u64,
    /// The spare in those bags.
    pub spare: u64,
}

/// Several designs as one list of articles.
#[derive(Debug)]
pub struct Pool<'a> {
    /// The designs.
    pub batches: Vec<Batch<'a>>,
    /// All their articles, and no strand.
    pub stock: Model,
    /// The articles' colours.
    pub palette: Palette,
    /// How many of each that is counted.
    pub needs: BTreeMap<Article, Need>,
    /// The pieces of each that is needed by length.
    pub pieces: BTreeMap<Article, Vec<Cut>>,
}

impl<'a> Pool<'a> {
    /// Puts batches together.
    #[must_use]
    pub fn new(first: Batch<'a>, others: Vec<Batch<'a>>, order: &Order) -> Self {
        let (beads, cords, findings) = (Entries::default(), Entries::default(), Entries::default());
        let assorted = Entries::default();
        let stock =
            Model { beads, cords, findings, assorted, strands: Entries::default(), ..Model::clone(first.design) };
        let batches: Vec<_> = std::iter::once(first).chain(others).collect();
        let mut pool = Self {
            batches: batches.clone(),
            stock,
            palette: Palette::default(),
            needs: BTreeMap::new(),
            pieces: BTreeMap::new(),
        };
        for batch in &batches {
            let same = pool.shelve(batch);
            pool.need(batch, &same, order);
            pool.cut(batch, &same);
        }
        pool
    }

    /// Puts a design's articles with those that are there; gives where each has come to stand.
    fn shelve(&mut self, batch: &Batch<'_>) -> BTreeMap<Article, Article> {
        let mut same: BTreeMap<_, _> = self.shelve_beads(batch).collect();
        for (at, assorted) in batch.design.assorted.entries() {
            let assorted = held(assorted.clone(), &same);
            let stands = put_together(&mut self.stock.assorted, assorted, batch.name);
            same.insert(Article::Assorted(at), Article::Assorted(stands));
        }
        same.extend(self.shelve_cords(batch));
        let findings: Vec<_> = self.shelve_findings(batch, &same).collect();
        same.extend(findings);
        same
    }

    fn shelve_beads(&mut self, batch: &Batch<'_>) -> impl Iterator<Item = (Article, Article)> {
        batch.design.beads.entries().map(|(at, bead)| {
            let bead = Bead { letter: String::new(), place: Place::default(), ..bead.clone() };
            let look = batch.palette.bead(at);
            let stands = put(&mut self.stock.beads, &mut self.palette.beads, (bead, look), batch.name);
            (Article::Bead(at), Article::Bead(stands))
        })
    }

    fn shelve_cords(&mut self, batch: &Batch<'_>) -> impl Iterator<Item = (Article, Article)> {
        let cords = batch.design.cords.entries().filter(|(_, cord)| !cord.is_pin);
        cords.map(|(at, cord)| {
            let cord = Cord { place: Place::default(), ..cord.clone() };
            let look = batch.palette.cord(at);
            let stands = put(&mut self.stock.cords, &mut self.palette.cords, (cord, look), batch.name);
            (Article::Cord(at), Article::Cord(stands))
        })
    }

    fn shelve_findings(
        &mut self,
        batch: &Batch<'_>,
        same: &BTreeMap<Article, Article>,
    ) -> impl Iterator<Item = (Article, Article)> {
        batch.design.findings.entries().map(|(at, finding)| {
            let finding = Finding { form: moved(finding.form, same), place: Place::default(), ..finding.clone() };
            let look = batch.palette.finding(at);
            let stands = put(&mut self.stock.findings, &mut self.palette.findings, (finding, look), batch.name);
            (Article::Finding(at), Article::Finding(stands))
        })
    }

    fn need(&mut self, batch: &Batch<'_>, same: &BTreeMap<Article, Article>, order: &Order) {
        let pieces = u64::from(batch.pieces);
        for (article, count) in need::bought(batch.design) {
            let each = count * u64::from(batch.design.copies);
            let need = self.needs.entry(same[&article]).or_default();
            need.count += each * pieces;
            if batch.bagged {
                need.bagged += each * pieces;
                need.spare += order.spare_of(article, each) * pieces;
            }
        }
    }

    /// How many of an article the pieces take, and how many spare are bought.
    #[must_use]
    pub fn needed(&self, article: Article, order: &Order) -> [u64; 2] {
        let need = self.needs.get(&article).copied().unwrap_or_default();
        [need.count, need.spare + order.spare_of(article, need.count - need.bagged)]
    }

    /// How many of a bead the pieces take, and how many are bought with others that are not in hand: of a strand no
    /// spare but those that kits hold, for no whole strand is bought for the sake of one.
    #[must_use]
    pub fn wanted(&self, bead: Index<Bead>, within: &Assorted, order: &Order) -> [u64; 2] {
        let article = Article::Bead(bead);
        let [need, spare] = self.needed(article, order);
        let packed = self.needs.get(&article).map_or(0, |need| need.spare);
        let spare = if within.is_mix() { spare } else { packed };
        [need, (need + spare).saturating_sub(order.stash.count(article))]
    }

    fn cut(&mut self, batch: &Batch<'_>, same: &BTreeMap<Article, Article>) {
        let of = (self.batches.len() > 1).then(|| batch.name.to_owned());
        for article in Article::all(batch.design).filter(|article| need::by_length(batch.design, *article)) {
            let once = need::pieces(batch.design, article).into_iter();
            let once: Vec<_> = once.map(|piece| Cut { of: of.clone(), ..piece }).collect();
            let all = (0..need::times(batch.design, batch.pieces)).flat_map(|_| once.iter().cloned());
            self.pieces.entry(same[&article]).or_default().extend(all);
        }
    }
}

/// What has an id.
trait HasId: PartialEq {
    fn id(&mut self) -> &mut String;
}

impl HasId for Bead {
    fn id(&mut self) -> &mut String {
        &mut self.id
    }
}

impl HasId for Cord {
    fn id(&mut self) -> &mut String {
        &mut self.id
    }
}

impl HasId for Finding {
    fn id(&mut self) -> &mut String {
        &mut self.id
    }
}

/// Where an article of a look stands among others with theirs, to which it is added where none is like it; under the name
/// of its piece where another has its id.
fn put<T: HasId, L: PartialEq>(
    all: &mut Entries<T>,
    looks: &mut Entries<L, T>,
    (mut one, look): (T, L),
    piece: &str,
) -> Index<T> {
    for _ in 0..2 {
        if let Some((at, _)) = all.entries().find(|(at, other)| **other == one && looks[*at] == look) {
            return at;
        }
        let id = one.id().clone();
        if all.iter_mut().any(|other| *other.id() == id) {
            *one.id() = format!("{id} ({piece})");
        }
    }
    looks.extend([look]);
    all.push(one)
}

/// What several kinds are bought in, with its beads where those have come to stand.
fn held(mut assorted: Assorted, same: &BTreeMap<Article, Article>) -> Assorted {
    for held in &mut assorted.holds {
        held.bead = held.bead.and_then(|at| stands(at, same));
    }
    assorted
}

/// Where something that several kinds are bought in stands among others: with one that holds the same, of which each
/// piece may use other kinds.
fn put_together(all: &mut Entries<Assorted>, mut one: Assorted, piece: &str) -> Index<Assorted> {
    let same = all.find(|other| other.is_same(&one));
    if let Some(at) = same {
        for (held, new) in all[at].holds.iter_mut().zip(&one.holds) {
            held.bead = held.bead.or(new.bead);
        }
        return at;
    }
    if all.iter().any(|other| other.id == one.id) {
        one.id = format!("{} ({piece})", one.id);
    }
    all.push(one)
}

/// Where a bead has come to stand.
fn stands(at: Index<Bead>, same: &BTreeMap<Article, Article>) -> Option<Index<Bead>> {
    match same.get(&Article::Bead(at)) {
        Some(Article::Bead(bead)) => Some(*bead),
        _ => None,
    }
}

/// A finding's form with the bead that its knot is tied round where that has come to stand.
fn moved(form: Form, same: &BTreeMap<Article, Article>) -> Form {
    match form {
        Form::KnotCover(cover) => {
            let bead = cover.bead.and_then(|at| stands(at, same));
            Form::KnotCover(KnotCover { bead, ..cover })
        }
        other => other,
    }
}
