//! Counting what a design takes: beads, findings, and pieces of cord and chain.
//!
//! Counts are those of the bits that are strung, with what hangs from them, times the design's
//! copies (a pair of earrings) and the makers.

use std::collections::BTreeMap;

use super::cutting::{Cut, CutFor};
use super::{Article, MOST_MAKERS};
use crate::design::{Bit, Cord, Finding, Index, Lot, Model, Strand, What};
use crate::pattern::FindingKind;

/// How often the pieces of one design are made.
#[must_use]
pub fn times(design: &Model, makers: u32) -> u64 {
    u64::from(design.copies) * u64::from(makers.min(MOST_MAKERS))
}

/// Whether an article is needed by length: every cord, and chain unless it is sold by the piece.
#[must_use]
pub fn by_length(design: &Model, article: Article) -> bool {
    match article {
        Article::Bead(_) | Article::Assorted(_) => false,
        Article::Cord(_) => true,
        Article::Finding(at) => {
            let by_piece =
                matches!(design.findings[at].sold.as_ref().map(|sold| &sold.lot), Some(Lot::Pack(_) | Lot::Each));
            design.findings[at].kind() == FindingKind::Chain && !by_piece
        }
    }
}

/// How many of each bead and finding one copy of the design takes.
///
/// A spacer bar or a bead with several holes is strung on every strand that it holds, and counted once for all that
/// share it.
#[must_use]
pub fn counts(design: &Model) -> BTreeMap<Article, u64> {
    let mut counts: BTreeMap<_, u64> = BTreeMap::new();
    let mut add = |article| *counts.entry(article).or_insert(0) += 1;
    for strand in &design.strands {
        strand.ends.iter().flat_map(|end| &end.findings).for_each(|at| add(Article::Finding(*at)));
        strand.in_end_knots(design).for_each(|at| add(Article::Bead(at)));
        strand.trains.iter().for_each(|train| each_article(&train.bits, &mut add));
    }
    design.closure.parts().for_each(|part| add(Article::Finding(part.finding)));
    for (shared, _, group) in design.shared() {
        counts.entry(shared.into()).and_modify(|count| *count -= group.again());
    }
    counts
}

/// How many of each article that is counted one copy of the design takes, as it is bought: what comes with it is
/// one with it.
#[must_use]
pub fn bought(design: &Model) -> BTreeMap<Article, u64> {
    let counts = counts(design);
    let whole = |article: Article| {
        let with = companions(design, article).map(Article::Finding);
        let most = with.chain([article]).filter_map(|one| counts.get(&one)).max();
        (article, most.copied().unwrap_or(0))
    };
    let is_counted =
        |article: &Article| !by_length(design, *article) && !comes_with(design, *article) && !is_made(design, *article);
    let is_strung = |article: &Article| !matches!(article, Article::Assorted(_));
    Article::all(design).filter(is_strung).filter(is_counted).map(whole).collect()
}

/// The findings that come with an article when it is bought.
pub fn companions(design: &Model, article: Article) -> impl Iterator<Item = Index<Finding>> {
    let comes = move |at: &Index<Finding>| design.findings[*at].comes_with.as_deref() == Some(article.id(design));
    design.findings.indices().filter(comes)
}

/// Whether an article is bought with another, and not by itself.
#[must_use]
pub fn comes_with(design: &Model, article: Article) -> bool {
    matches!(article, Article::Finding(at) if design.findings[at].comes_with.is_some())
}

fn each_article(bits: &[Bit], visit: &mut dyn FnMut(Article)) {
    for bit in bits {
        match &bit.what {
            What::Bead(at) => visit(Article::Bead(*at)),
            What::Finding(at) => visit(Article::Finding(*at)),
            What::Dangle(dangle) => {
                dangle.on.into_iter().for_each(|on| visit(Article::Finding(on)));
                each_article(&dangle.bits, visit);
            }
            What::Gap | What::Knot => {}
        }
    }
}

/// The pieces that one copy of the design takes of an article that is needed by length.
#[must_use]
pub fn pieces(design: &Model, article: Article) -> Vec<Cut> {
    match article {
        Article::Bead(_) | Article::Assorted(_) => Vec::new(),
        Article::Cord(at) => {
            let strands = design.strands.entries().filter(|(_, strand)| strand.cord == at);
            let of_strands =
                strands.map(|(at, strand)| Cut::new(CutFor::Strand(at, strand.name.clone()), strand.cut()));
            of_strands.chain(wound(design, at)).chain(tried(design, at)).collect()
        }
        Article::Finding(at) => chain_pieces(design, at),
    }
}

/// What is cut of a cord to see how much its knots take up.
fn tried(design: &Model, cord: Index<Cord>) -> Option<Cut> {
    let tried = design.strands.iter().filter(|strand| strand.cord == cord).find_map(Strand::trial)?;
    Some(Cut::new(CutFor::Trial, tried))
}

/// What is cut of a cord for tassels, one piece for each.
fn wound(design: &Model, cord: Index<Cord>) -> Vec<Cut> {
    let made = design.findings.entries().filter_map(|(at, finding)| {
        let (_, length) = finding.tassel()?.takes().filter(|(of, _)| *of == cord)?;
        Some((at, Cut::new(CutFor::Tassel(at, finding.name.clone()), length)))
    });
    let each = |(at, piece): (Index<Finding>, Cut)| {
        let many = counts(design).get(&Article::Finding(at)).copied().unwrap_or(0);
        (0..many).map(move |_| piece.clone())
    };
    made.flat_map(each).collect()
}

/// Whether a finding is made with the piece, and not bought.
#[must_use]
pub fn is_made(design: &Model, article: Article) -> bool {
    matches!(article, Article::Finding(at) if design.findings[at].tassel().is_some_and(|tassel| tassel.wound.is_some()))
}

/// Chain in the closure is cut as the closure says; elsewhere each piece is as long as the finding.
fn chain_pieces(design: &Model, at: Index<Finding>) -> Vec<Cut> {
    let chain = &design.findings[at];
    let piece = |length| Cut::new(CutFor::Chain(chain.name.clone()), length);
    let in_closure = design.closure.parts().filter(|part| part.finding == at).filter_map(|part| part.cut);
    let mut pieces: Vec<_> = in_closure.map(piece).collect();
    let all = counts(design).get(&Article::Finding(at)).copied().unwrap_or(0);
    if let Some(length) = chain.length() {
        pieces.extend((pieces.len() as u64..all).map(|_| piece(length)));
    }
    pieces
}
