//! Whole lots: how many strands, packs or spools cover a need, what is left and what it costs.

use super::cutting::Cutting;
use super::need::companions;
use super::{Amount, Article, Buy, Line, SoldAs, Stash};
use crate::design::{Bead, Lot, Model, Sold};
use crate::pattern::CordKind;
use crate::units::{Length, Mass, Money};

/// Guards a quotient that should be whole from falling just short of it.
const HAIR: f64 = 1e-9;

/// How many of a bead a lot holds; nothing where it is too small for one.
///
/// A strand holds its length divided by the bead's pitch: the measured or tabled pitch where there
/// is one, else the nominal size along the hole. Sellers count strands by nominal size, and the
/// published counts never exceed `floor(length / size)`. A lot by mass holds its mass divided by
/// the mass of one.
#[must_use]
pub fn beads_in(bead: &Bead, lot: &Lot) -> u64 {
    match lot {
        Lot::Strand(length) | Lot::Length(length) => whole(*length / bead.pitch.unwrap_or(bead.along)),
        Lot::Hank(strands, length) => beads_in(bead, &Lot::Strand(*length)) * u64::from(*strands),
        Lot::Grams(mass) => whole(*mass / *bead.mass),
        Lot::Pack(count) => u64::from(*count),
        Lot::Each => 1,
    }
}

pub(super) fn whole(quotient: f64) -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a positive quotient; `as` saturates")]
    let count = (quotient + HAIR).floor() as u64;
    count
}

/// Spare beads: a share of the count, rounded up. Any share above nothing gives at least one.
#[must_use]
pub fn spare(count: u64, share: f64) -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates and maps NaN to 0")]
    let beads = (count as f64 * share - HAIR).ceil().max(0.0) as u64;
    if share > 0.0 && count > 0 { beads.max(1) } else { 0 }
}

/// The line of an article that is counted: so many, and so many spare.
#[must_use]
pub fn counted(design: &Model, article: Article, [need, spare]: [u64; 2], stash: &Stash) -> Line {
    let wanted = need.saturating_add(spare);
    let in_hand = stash.count(article);
    let from_stash = in_hand.min(wanted);
    let lot = lot_count(design, article).filter(|(_, holds)| *holds > 0);
    let buy = lot.map(|(sold, holds)| {
        let lots = (wanted - from_stash).div_ceil(holds);
        let left_over = lots.saturating_mul(holds).saturating_add(in_hand) - need;
        Buy {
            lots,
            unit: unit(design, article, &sold.lot),
            lot: Amount::Count(holds),
            mass: mass(&sold.lot),
            left_over: Amount::Count(left_over),
            used: sold.price.map(|price| price.share(need as f64, holds as f64)),
            bought: sold.price.map(|price| count_lots(price, lots)),
        }
    });
    line(design, article, [need, spare, in_hand, from_stash].map(Amount::Count), buy)
}

/// How a counted article is sold, and how many one lot holds.
pub(super) fn lot_count(design: &Model, article: Article) -> Option<(&Sold, u64)> {
    let sold = article.sold(design)?;
    let holds = match article {
        Article::Bead(at) => beads_in(&design.beads[at], &sold.lot),
        Article::Finding(at) => findings_in(design.findings[at].mass.value(), &sold.lot),
        Article::Cord(_) | Article::Assorted(_) => 0,
    };
    Some((sold, holds))
}

/// How many findings of this mass in grams a lot holds. Single findings are not sold by length.
fn findings_in(mass: f64, lot: &Lot) -> u64 {
    match lot {
        Lot::Pack(count) => u64::from(*count),
        Lot::Each => 1,
        Lot::Grams(grams) if mass > 0.0 => whole(grams.value() / mass),
        Lot::Grams(_) | Lot::Strand(_) | Lot::Hank(..) | Lot::Length(_) => 0,
    }
}

/// The line of an article that is cut from lengths.
#[must_use]
pub fn cut(design: &Model, cutting: &Cutting) -> Line {
    let stash = || cutting.spools.iter().filter(|spool| spool.in_stash);
    let in_hand: Length = stash().map(|spool| spool.length).sum();
    let from_stash: Length = stash().map(|spool| spool.length - spool.left).sum();
    let left_over: Length = cutting.spools.iter().map(|spool| spool.left).sum();
    let buy = cutting.article.sold(design).zip(cutting.lot).map(|(sold, lot)| Buy {
        lots: cutting.bought(),
        unit: unit(design, cutting.article, &sold.lot),
        lot: Amount::Length(lot),
        mass: mass(&sold.lot),
        left_over: Amount::Length(left_over),
        used: sold.price.map(|price| price.share(cutting.total().value(), lot.value())),
        bought: sold.price.map(|price| count_lots(price, cutting.bought())),
    });
    line(design, cutting.article, [cutting.total(), Length::ZERO, in_hand, from_stash].map(Amount::Length), buy)
}

fn line(design: &Model, article: Article, amounts: [Amount; 4], buy: Option<Buy>) -> Line {
    let [need, spare, in_hand, from_stash] = amounts;
    let (id, names) = (article.id(design).to_owned(), article.names(design));
    let from = article.sold(design).and_then(|sold| sold.from.clone());
    Line { article, id, names, need, spare, in_hand, from_stash, buy, from, within: None }
}

const fn mass(lot: &Lot) -> Option<Mass> {
    match lot {
        Lot::Grams(mass) => Some(*mass),
        _ => None,
    }
}

/// As what a lot is sold.
fn unit(design: &Model, article: Article, lot: &Lot) -> SoldAs {
    match (lot, article) {
        (Lot::Strand(_), _) => SoldAs::Strand,
        (Lot::Hank(..), _) => SoldAs::Hank,
        (Lot::Pack(_), _) => SoldAs::Pack,
        (Lot::Each, _) if companions(design, article).next().is_some() => SoldAs::Set,
        (Lot::Each, _) => SoldAs::Piece,
        (Lot::Grams(_), _) => SoldAs::Bag,
        (Lot::Length(_), Article::Cord(at)) if design.cords[at].is_sprung() => SoldAs::Coil,
        (Lot::Length(_), Article::Cord(at)) if design.cords[at].kind != CordKind::Chain => SoldAs::Spool,
        (Lot::Length(_), _) => SoldAs::Length,
    }
}

/// The price of so many lots.
pub(super) fn count_lots(price: Money, lots: u64) -> Money {
    price * u32::try_from(lots).unwrap_or(u32::MAX)
}
