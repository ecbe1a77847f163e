//! Whether bars, clasps and beads have a hole or loop for every strand, are strung alike on all that share them, and
//! lie where those strands do.

use crate::design::{Bores, Design, Finding, Index, Shared, Sharer, Sharers, Strand};
use crate::drape::{Drape, Unrest};
use crate::geometry::Point;
use crate::materials::Article;
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::bar::{self, Bar};
use crate::units::Length;

use super::lean::leaning;

/// By how much in mm strands may lie farther apart or closer than the holes of a bead that they share: an assumption.
const ASTRAY: f64 = 1.0;

/// Remarks about end bars, clasps with loops and spacer bars.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let ends = design.closure.parts().map(|part| &design.findings[part.finding]);
    let ends = ends.filter_map(|finding| comb(finding, design.strands.len()));
    let shared: Vec<_> = design.shared().collect();
    let uneven = shared.iter().filter_map(|(shared, bores, group)| uneven(design, *shared, *bores, group));
    let alone = shared.iter().filter_map(|(shared, bores, group)| alone(design, *shared, *bores, group));
    let between = shared.iter().filter_map(|(shared, _, group)| between(design, *shared, group));
    let astray = shared.iter().filter_map(|(shared, bores, group)| {
        leaning(design, drape, *shared, *bores, group).or_else(|| astray(design, drape, *shared, *bores, group))
    });
    ends.chain(uneven).chain(alone).chain(between).chain(astray).collect()
}

fn comb(finding: &Finding, strands: usize) -> Option<Remark> {
    let loops = finding.comb()?.holes;
    (strands > loops as usize).then(|| {
        let (name, kind) = (finding.name.clone(), finding.kind().word());
        Remark::new(Bar::TooFewLoops { finding: name, kind, loops, strands }).at(finding.place)
    })
}

/// What strands share, each must go through equally often.
fn uneven(design: &Design, shared: Shared, bores: Bores, group: &Sharers) -> Option<Remark> {
    let (first, rest) = group.0.split_first()?;
    let other = rest.iter().find(|other| other.through != first.through)?;
    let named =
        |sharer: &Sharer| bar::Sharer { strand: design.strands[sharer.strand].name.clone(), through: sharer.through };
    let (what, id) = named_article(design, shared);
    let (is_bar, strands) = (matches!(shared, Shared::Bar(_)), [first, other].map(named));
    let said = Bar::Uneven { what, id, is_bar, holes: bores.count, strands };
    Some(Remark::new(said).at(design.strands[other.strand].place))
}

/// A bar through which one of several strands goes alone holds it beside none.
fn alone(design: &Design, shared: Shared, bores: Bores, group: &Sharers) -> Option<Remark> {
    let (Shared::Bar(bar), [sharer]) = (shared, &group.0[..]) else { return None };
    let (strand, bar) = (&design.strands[sharer.strand], &design.findings[bar]);
    let said =
        || Bar::Alone { bar: bar.name.clone(), id: bar.id.clone(), holes: bores.count, strand: strand.name.clone() };
    (design.strands.len() > 1).then(|| Remark::new(said()).at(strand.place))
}

/// Rows that share something are neighbours: what lies between them would have to go through it.
fn between(design: &Design, shared: Shared, group: &Sharers) -> Option<Remark> {
    let mut pairs = group.0.windows(2).map(|pair| [pair[0].strand, pair[1].strand]);
    let lies_within = |[one, other]: [Index<Strand>; 2]| design.strands.indices().find(|at| one < *at && *at < other);
    let ([one, other], skipped) = pairs.find_map(|pair| Some((pair, lies_within(pair)?)))?;
    let [one, skipped, other] = [one, skipped, other].map(|at| &design.strands[at]);
    let (what, id) = named_article(design, shared);
    let strands = [one, other].map(|strand| strand.name.clone());
    Some(Remark::new(Bar::Between { what, id, strands, skipped: skipped.name.clone() }).at(skipped.place))
}

/// The name and id of what strands share.
fn named_article(design: &Design, shared: Shared) -> (String, String) {
    let article = Article::from(shared);
    (article.name(design).to_owned(), article.id(design).to_owned())
}

/// A bead that two strands share must lie on both where its holes are: strands that come to no rest miss it. Where each is
/// drawn as it hangs alone, that is said instead.
fn astray(design: &Design, drape: &Drape, shared: Shared, bores: Bores, group: &Sharers) -> Option<Remark> {
    let Shared::Bead(bead) = shared else { return None };
    if matches!(drape.unrest, Some(Unrest::Lost { .. } | Unrest::TooMany)) {
        return None;
    }
    let abreast = rows(design);
    let pairs = group.0.windows(2).filter(|pair| pair[0].through == pair[1].through);
    let worst = pairs.filter_map(|pair| {
        let [one, other] = [pair[0].strand, pair[1].strand];
        let seats = [one, other].map(|at| centres(design, drape, at, shared, abreast.as_deref()));
        let apart = seats[0].iter().zip(&seats[1]).map(|(one, other)| one.distance(*other));
        let miss = |apart: &f64| (apart - bores.apart.value()).abs();
        apart.max_by(|a, b| miss(a).total_cmp(&miss(b))).map(|apart| (other, apart, miss(&apart)))
    });
    let (strand, apart, _) = worst.max_by(|a, b| a.2.total_cmp(&b.2)).filter(|(.., miss)| *miss > ASTRAY)?;
    let bead = design.beads[bead].name.clone();
    let said = Bar::Astray { bead, holes: bores.apart, strands: Length::mm(apart) };
    Some(Remark::new(said).at(design.strands[strand].place))
}

/// How far along a limb the strands lie that go round it.
fn rows(design: &Design) -> Option<Vec<Length>> {
    matches!(design.heading.kind, Kind::Bracelet | Kind::Anklet).then(|| design.abreast())
}

/// Where a strand goes through what it shares, in order; rows round a limb as far along it as they lie there.
fn centres(
    design: &Design,
    drape: &Drape,
    strand: Index<Strand>,
    shared: Shared,
    rows: Option<&[Length]>,
) -> Vec<Point> {
    let along = rows.and_then(|rows| rows.get(strand.number())).map(|along| along.value());
    let seats = drape.strands.get(strand).into_iter().flat_map(|hung| hung.through(&design.strands[strand], shared));
    seats.map(|seat| along.map_or(seat.centre, |along| Point::new(seat.centre.x, along))).collect()
}
