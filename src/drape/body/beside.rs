//! How close strands come to one another on the neck, outline to outline.
//!
//! Each link of a strand is a ball as wide as it is at its widest, swept along it (`outline`): two that are nearer than
//! 0.05 mm touch. As on the board, strands are compared farther than 25 mm from their ends; nearer to these, where they come
//! out of one closure, what is strung is told by itself.

use std::collections::BTreeMap;

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree, RTreeObject};

use super::super::chain::{Chain, Content};
use super::super::clearance::{ENDS, TOUCHES, form};
use super::super::contact::{Press, covered, hardest};
use super::super::{Waypoint, WornClearance, on_way};
use crate::design::{Design, Entries, Index, Strand};
use crate::geometry::{Point3, nearest_shares};

/// A link where it lies on the neck.
struct Swept {
    strand: Index<Strand>,
    /// Where the ball's middle is first, and the way along which it is swept.
    line: [Point3; 2],
    reach: f64,
    length: f64,
    /// Whether it is away from its strand's ends.
    is_amid: bool,
}

/// How close a link comes to another strand.
#[derive(Clone, Copy)]
struct NearPlace {
    distance: f64,
    at: Point3,
    is_amid: bool,
}

/// How close two strands come.
#[derive(Default)]
struct PairContact {
    amid: Option<NearPlace>,
    at_ends: Option<NearPlace>,
    /// Length of the first that touches the other.
    touching: f64,
}

/// The clearances of strands that touch on their ways, of which is known where they press on one another, or nothing.
pub fn clearances(
    design: &Design,
    chains: &[Chain],
    lines: &Entries<Vec<Waypoint>, Strand>,
    presses: Option<&[Press]>,
) -> Vec<WornClearance> {
    let strands = design.strands.entries().zip(chains).zip(lines);
    let swept: Vec<Swept> =
        strands.flat_map(|(((at, strand), chain), line)| swept(design, (at, strand), chain, line)).collect();
    let told = |(between, pair): ([Index<Strand>; 2], PairContact)| {
        let length = |link: &&Swept| link.strand == between[0] && link.is_amid;
        let whole: f64 = swept.iter().filter(length).map(|link| link.length).sum();
        let hardest = presses.map(|presses| hardest(presses, between, ENDS));
        pair.told(between, whole, hardest)
    };
    pairs(&swept).into_iter().filter_map(told).collect()
}

/// The links of a strand that are compared.
fn swept(design: &Design, (at, strand): (Index<Strand>, &Strand), chain: &Chain, line: &[Waypoint]) -> Vec<Swept> {
    let (whole, covered) = (strand.finished.value(), covered(design));
    let link = |(link, (from, content)): (usize, (f64, &Content))| {
        let length = chain.lengths[link];
        let depth = from.min(whole - from - length);
        let is_amid = depth >= ENDS;
        if length <= 0.0 || !is_amid && (depth < covered || !content.is_strung(strand)) {
            return None;
        }
        let (middle, along) = on_way(line, from + 0.5 * length)?;
        let widths = form(design, strand, chain, link).widths;
        let reach = widths.iter().map(|(_, width)| *width).fold(0.0, f64::max);
        let half = along * (0.5 * length - reach).max(0.0);
        Some(Swept { strand: at, line: [middle - half, half * 2.0], reach, length, is_amid })
    };
    chain.stations().into_iter().zip(&chain.pieces).enumerate().filter_map(link).collect()
}

/// Pairs of strands of which links come near.
fn pairs(swept: &[Swept]) -> BTreeMap<[Index<Strand>; 2], PairContact> {
    let boxed = |(at, link): (usize, &Swept)| GeomWithData::new(link.boxed(0.0), at);
    let tree = RTree::bulk_load(swept.iter().enumerate().map(boxed).collect());
    let mut pairs: BTreeMap<_, PairContact> = BTreeMap::new();
    for link in swept {
        let near = tree.locate_in_envelope_intersecting(&link.boxed(TOUCHES).envelope());
        let mut near: Vec<_> = near.map(|found| found.data).filter(|at| swept[*at].strand > link.strand).collect();
        near.sort_unstable();
        for of_strand in near.chunk_by(|one, other| swept[*one].strand == swept[*other].strand) {
            let pair = pairs.entry([link.strand, swept[of_strand[0]].strand]).or_default();
            pair.meet(link, of_strand.iter().map(|other| link.near(&swept[*other])));
        }
    }
    pairs
}

impl Swept {
    fn boxed(&self, more: f64) -> Rectangle<[f64; 3]> {
        let [from, way] = self.line;
        let (to, out) = (from + way, self.reach + more);
        let low = Point3::new(from.x.min(to.x) - out, from.y.min(to.y) - out, from.z.min(to.z) - out);
        let high = Point3::new(from.x.max(to.x) + out, from.y.max(to.y) + out, from.z.max(to.z) + out);
        Rectangle::from_aabb(AABB::from_corners(low.into(), high.into()))
    }

    fn near(&self, other: &Self) -> NearPlace {
        let [s, t] = nearest_shares(self.line, other.line);
        let (one, to) = (self.line[0] + self.line[1] * s, other.line[0] + other.line[1] * t);
        let distance = one.distance(to) - self.reach - other.reach;
        NearPlace { distance, at: one.between(to, 0.5), is_amid: self.is_amid && other.is_amid }
    }
}

impl PairContact {
    /// Takes how near a link of the first comes to links of the other that it touches.
    fn meet(&mut self, link: &Swept, near: impl Iterator<Item = NearPlace>) {
        let mut touches = false;
        for near in near.filter(|near| near.distance <= TOUCHES) {
            touches |= near.is_amid;
            let least = if near.is_amid { &mut self.amid } else { &mut self.at_ends };
            *least = Some(least.filter(|least| least.distance <= near.distance).unwrap_or(near));
        }
        self.touching += if touches { link.length } else { 0.0 };
    }

    /// What is told of two strands of which the first is so long away from its ends; nothing where they do not touch.
    fn told(self, between: [Index<Strand>; 2], whole: f64, hardest: Option<f64>) -> Option<WornClearance> {
        self.amid.or(self.at_ends)?;
        Some(WornClearance {
            between,
            least: self.amid.map(|near| (near.distance, near.at)),
            touching: self.touching / whole.max(f64::MIN_POSITIVE),
            hardest,
            at_ends: self.at_ends.map(|near| near.distance),
        })
    }
}
