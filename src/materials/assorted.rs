//! Beads that are bought with others: how many packs hold enough of each kind, and what each leaves over.
//!
//! A graduated strand holds so many of each size: as many are bought as the size asks for that runs out first, and what
//! they leave over is spare: no strand is bought for the sake of spare beads (common practice, no source). In a
//! bag of a mix nothing is promised. If each of its n beads is of a kind with that kind's share p, the number of the
//! kind is binomial, with the mean n p and the standard deviation √(n p (1 − p)) (any handbook of statistics). As many
//! bags are bought as leave that number at least what is wanted when it falls three deviations below its mean:
//!
//!  n p − 3 √(n p (1 − p)) ≥ wanted, so that √n ≥ (3 s + √(9 s² + 4 p · wanted)) / 2p with s = √(p (1 − p)).
//!
//! By exact sums a kind is then wanting about once in a thousand times, one that is most of the mix up to four times; in
//! whole bags it mostly is so far less often, which is summed for what is bought. It is an estimate: packers do not draw lots.

use super::lots::{count_lots, whole};
use super::{Amount, Article, Buy, Line, SoldAs, Stash};
use crate::design::{Assorted, Bead, Held, Index, Model, Pack};

/// How many standard deviations a mix may hold less of a kind than its share.
const MARGIN: f64 = 3.0;
/// Probability below which a term of the binomial no longer counts.
const LEAST_TERM: f64 = 1e-18;

/// A bead among those that it is bought with.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct BoughtWith {
    /// The id of what they are bought in.
    pub id: String,
    /// Its name.
    pub name: String,
    /// As what it is sold.
    pub unit: SoldAs,
    /// What is left of the bead: of a mix what is to be expected.
    pub left_over: u64,
    /// Of a mix, of which that is only to be expected, how likely it is to hold fewer than are wanted: from 0 to 1.
    pub wanting: Option<f64>,
}

/// How many of a bead are needed, and how many are wanted beside those in hand.
pub type Wants<'a> = &'a dyn Fn(Index<Bead>) -> [u64; 2];

/// How many packs hold enough of a kind; nothing where they hold no bead at all.
#[must_use]
pub fn packs(assorted: &Assorted, held: &Held, wanted: u64) -> Option<u64> {
    let beads = Some(assorted.beads).filter(|beads| *beads > 0)?;
    if !assorted.is_mix() {
        return Some(wanted.div_ceil(u64::from(held.parts)));
    }
    let share = assorted.share(held);
    let deviation = MARGIN * (share * (1.0 - share)).sqrt();
    let root = (deviation + (deviation * deviation + 4.0 * share * wanted as f64).sqrt()) / (2.0 * share);
    let least = whole(root * root);
    // What is whole is taken down: the next bead may be the one that is wanting.
    let least = if likely(share, least) >= wanted { least } else { least + 1 };
    Some(if wanted == 0 { 0 } else { least.div_ceil(beads) })
}

/// How many of a kind can be counted on among so many beads.
fn likely(share: f64, beads: u64) -> u64 {
    let mean = beads as f64 * share;
    whole((mean - MARGIN * (mean * (1.0 - share)).sqrt()).max(0.0))
}

/// The probability of fewer than so many of a kind among beads of which it is a share: the binomial's terms, summed from
/// the last of them down to where they no longer count.
#[must_use]
pub fn fewer(beads: u64, share: f64, wanted: u64) -> f64 {
    if wanted > beads {
        return 1.0;
    }
    let Some(last) = wanted.checked_sub(1) else { return 0.0 };
    let (n, k, rest) = (beads as f64, last as f64, 1.0 - share);
    let choose = libm::lgamma(n + 1.0) - libm::lgamma(k + 1.0) - libm::lgamma(n - k + 1.0);
    let first = libm::exp(choose + k * libm::log(share) + (n - k) * libm::log(rest));
    let before = |term: &f64, at: &f64| term * at * rest / ((n - at + 1.0) * share);
    let terms = std::iter::successors(Some((first, k)), |(term, at)| (*at > 0.0).then(|| (before(term, at), at - 1.0)));
    terms.map(|(term, _)| term).take_while(|term| *term > LEAST_TERM).sum()
}

/// How many of a kind so many packs hold, or of a mix can be counted on to hold.
#[must_use]
pub fn surely(assorted: &Assorted, held: &Held, packs: u64) -> u64 {
    if assorted.is_mix() {
        return likely(assorted.share(held), packs * assorted.beads);
    }
    packs * u64::from(held.parts)
}

/// How many packs hold enough of every kind.
#[must_use]
pub fn all_packs(assorted: &Assorted, wanted: Wants<'_>) -> Option<u64> {
    assorted
        .used()
        .map(|(held, bead)| packs(assorted, held, wanted(bead)[1]))
        .try_fold(0, |most, one| Some(most.max(one?)))
}

/// The line of what several kinds are bought in, and how each kind of it stands.
#[must_use]
pub fn line(
    design: &Model,
    at: Index<Assorted>,
    wanted: Wants<'_>,
    stash: &Stash,
) -> (Line, Vec<(Index<Bead>, BoughtWith)>) {
    let (assorted, article) = (&design.assorted[at], Article::Assorted(at));
    let packs = all_packs(assorted, wanted);
    let in_hand = stash.count(article);
    let from_stash = in_hand.min(packs.unwrap_or(0));
    let lots = packs.map(|packs| packs - from_stash);
    let all = (lots.unwrap_or(0) + in_hand) * assorted.beads;
    let each = assorted.used();
    let among = |(held, bead)| (bead, among(assorted, held, all, wanted(bead), stash.count(Article::Bead(bead))));
    let within: Vec<_> = each.map(among).collect();
    let line = Line {
        article,
        id: assorted.id.clone(),
        names: vec![assorted.name.clone()],
        need: Amount::Count(packs.unwrap_or(0)),
        spare: Amount::Count(0),
        in_hand: Amount::Count(in_hand),
        from_stash: Amount::Count(from_stash),
        buy: lots.map(|lots| buy(assorted, lots, &within, wanted)),
        from: assorted.from.clone(),
        within: None,
    };
    (line, within)
}

/// How a kind stands, of which so many are needed and at least wanted, and so many are in hand by themselves: all that is
/// bought and in hand holds so many beads.
fn among(assorted: &Assorted, held: &Held, all: u64, [need, least]: [u64; 2], in_hand: u64) -> BoughtWith {
    let share = assorted.share(held);
    BoughtWith {
        id: assorted.id.clone(),
        name: assorted.name.clone(),
        unit: unit(assorted),
        left_over: (whole(all as f64 * share + 0.5) + in_hand).saturating_sub(need),
        wanting: assorted.is_mix().then(|| fewer(all, share, least)),
    }
}

/// So many lots, and what of each kind is left over.
fn buy(assorted: &Assorted, lots: u64, within: &[(Index<Bead>, BoughtWith)], wanted: Wants<'_>) -> Buy {
    let needed: u64 = within.iter().map(|(bead, _)| wanted(*bead)[0]).sum();
    Buy {
        lots,
        unit: unit(assorted),
        lot: Amount::Count(assorted.beads),
        mass: if let Pack::Mix(mass) = assorted.pack { mass } else { None },
        left_over: Amount::Count(within.iter().map(|(_, within)| within.left_over).sum()),
        used: assorted.price.map(|price| price.share(needed as f64, assorted.beads as f64)),
        bought: assorted.price.map(|price| count_lots(price, lots)),
    }
}

/// As what it is sold.
const fn unit(assorted: &Assorted) -> SoldAs {
    if assorted.is_mix() { SoldAs::Bag } else { SoldAs::Strand }
}
