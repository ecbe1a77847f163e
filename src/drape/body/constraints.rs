//! What keeps loops off the body and off one another, and the ends of bars apart.
//!
//! Each piece is a tube as wide as the widest of what it holds. A place on its middle line keeps its reach from the
//! plane that touches the skin where it is nearest, from the nearest piece of each other strand, and from wider ones near that:
//! an outer strand on the outer side of an inner one, or straight away from it where it lies over it. Strands that find no room
//! so keep straight away from one another, and may cross: there their middle lines keep apart where they come nearest.

use rstar::RTree;
use rstar::primitives::GeomWithData;

use super::super::program::{Constraint, Term};
use super::loops::{Loops, Member, Precedence};
use super::skin::Surface;
use crate::geometry::Point3;

/// Strands farther apart than this, in mm, do not meet in a round.
const NEAR: f64 = 4.0;
/// Strands that leave one point lie on one another along this much of them, in mm, and farther until their fan
/// need open by no more than 60 degrees.
const SHARED: f64 = 15.0;
/// Rods that cross meet in a round when they are nearer than this, in mm, beyond their reach, and lie across one another by more
/// than this, as the sine of an angle: of those that do not, the middle of one meets the other.
const CROSSES: f64 = 2.0;
const ACROSS: f64 = 0.4;
/// A rod is wider than another if it reaches farther by this, in mm.
const WIDER: f64 = 0.01;
/// A strand that lies less than this share of the reach to the outer side of another is moved straight outward.
const OUTWARD: f64 = 0.1;
/// What of the body is nearer than this, in mm, may be met by what moved half as far in the round before.
const REACHED: (f64, f64) = (4.0, 120.0);
/// Longer pieces touch the body in more than one place, in mm.
const LONG: f64 = 10.0;
/// But in no more than so many: no bead is longer than 200 mm.
const PLACES: f64 = 20.0;

/// All constraints at the present place, to which no joint went farther in the last round than so many mm.
pub fn contacts(loops: &Loops, skin: &impl Surface, went: f64) -> Vec<Constraint<3>> {
    let widest = (2.0 * went).clamp(REACHED.0, REACHED.1);
    let on_body = loops.rods.iter().flat_map(|rod| on_skin(loops, skin, rod));
    let mut constraints: Vec<Constraint<3>> = on_body.filter(|constraint| constraint.gap < widest).collect();
    if loops.strands.len() > 1 {
        constraints.extend(side_by_side(loops, skin));
    }
    constraints.extend(loops.bars.constraints(&loops.net, |_| None));
    constraints
}

/// A rod on the skin, at a place or more along it.
fn on_skin(loops: &Loops, skin: &impl Surface, rod: &Member) -> Vec<Constraint<3>> {
    let places = (rod.length / LONG).ceil().clamp(1.0, PLACES);
    let share = |place: u32| (f64::from(place) + 0.5) / places;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count, not negative")]
    let shares = (0..places as u32).map(share);
    let constraint = |share: f64| {
        let [one, other] = rod.ends.map(|node| loops.at(node));
        let (distance, normal) = skin.at(one.between(other, share));
        let terms = vec![term(rod.ends[0], normal * (1.0 - share)), term(rod.ends[1], normal * share)];
        Constraint { terms, gap: distance - rod.reach, gives: false }
    };
    shares.map(constraint).collect()
}

fn term(node: usize, slope: Point3) -> Term<3> {
    Term { node, slope: slope.into() }
}

fn middle(loops: &Loops, rod: &Member) -> Point3 {
    loops.at(rod.ends[0]).between(loops.at(rod.ends[1]), 0.5)
}

/// Each rod of a strand with those of each other strand that are near.
fn side_by_side(loops: &Loops, skin: &impl Surface) -> Vec<Constraint<3>> {
    let strung = || loops.rods.iter().enumerate().filter(|(_, rod)| rod.strand.is_some());
    let boxed = |(at, rod): (usize, &Member)| GeomWithData::new(<[f64; 3]>::from(middle(loops, rod)), at);
    let tree = RTree::bulk_load(strung().map(boxed).collect());
    let far = strung().map(|(_, rod)| rod.reach + 0.5 * rod.length).fold(0.0, f64::max);
    let mut constraints = Vec::new();
    for (at, rod) in strung() {
        let within = rod.reach + far + NEAR;
        let near = tree.locate_within_distance(middle(loops, rod).into(), within * within).map(|near| near.data);
        let mut near: Vec<usize> = near.filter(|other| loops.rods[*other].strand != rod.strand).collect();
        near.sort_unstable();
        let of_strand = near.chunk_by(|one, other| loops.rods[*one].strand == loops.rods[*other].strand);
        constraints.extend(of_strand.flat_map(|near| beside(loops, skin, at, near)));
        if loops.order == Precedence::Over {
            let inner = near.iter().filter(|other| loops.rods[**other].strand < rod.strand);
            constraints.extend(inner.filter_map(|other| crossing(loops, [at, *other])));
        }
    }
    constraints
}

/// Two rods that lie across one another, where their middle lines come nearest.
fn crossing(loops: &Loops, pair: [usize; 2]) -> Option<Constraint<3>> {
    let [one, other] = pair.map(|at| &loops.rods[at]);
    if one.depth.min(other.depth) < shared(loops, one, other) {
        return None;
    }
    let [[a, u], [b, v]] = pair.map(|at| line(loops, at));
    let [s, t] = nearest([a, u], [b, v])?;
    let off = a + u * s - b - v * t;
    let normal = off.unit().filter(|_| off.length() < one.reach + other.reach + CROSSES)?;
    Some(apart([(one, s), (other, t)], off, normal))
}

/// Two rods keep apart by their reach along a normal, at shares of them that lie so far off one another.
fn apart([(one, s), (other, t)]: [(&Member, f64); 2], off: Point3, normal: Point3) -> Constraint<3> {
    let terms = vec![
        term(one.ends[0], normal * (1.0 - s)),
        term(one.ends[1], normal * s),
        term(other.ends[0], normal * (t - 1.0)),
        term(other.ends[1], normal * -t),
    ];
    Constraint { terms, gap: off.dot(normal) - (one.reach + other.reach), gives: true }
}

/// The shares of two lines, each a start and a way, at which they come nearest; none where they run almost alike.
fn nearest([a, u]: [Point3; 2], [b, v]: [Point3; 2]) -> Option<[f64; 2]> {
    let (uu, vv, uv, from) = (u.dot(u), v.dot(v), u.dot(v), a - b);
    let square = uu * vv - uv * uv;
    if square < ACROSS * ACROSS * uu * vv {
        return None;
    }
    let s = ((uv * v.dot(from) - vv * u.dot(from)) / square).clamp(0.0, 1.0);
    let t = ((uv * s + v.dot(from)) / vv).clamp(0.0, 1.0);
    let s = ((uv * t - u.dot(from)) / uu).clamp(0.0, 1.0);
    Some([s, t])
}

/// A place on another strand's rod.
struct Nearest {
    rod: usize,
    /// How far along it.
    share: f64,
    at: Point3,
}

impl Nearest {
    /// The place of a rod that is nearest to another: as part of a tube, whose end is round where what follows is narrower.
    fn new(loops: &Loops, rod: usize, place: Point3) -> Self {
        let [from, line] = line(loops, rod);
        let long = line.dot(line).max(f64::MIN_POSITIVE);
        let reach = loops.rods[rod].reach;
        let narrows = |next: Option<&Member>| {
            next.is_some_and(|next| next.strand == loops.rods[rod].strand && next.reach < reach - WIDER)
        };
        let end = (reach / long.sqrt()).min(0.5);
        let [first, last] = [rod.checked_sub(1), Some(rod + 1)].map(|next| next.and_then(|next| loops.rods.get(next)));
        let [first, last] = [first, last].map(|next| if narrows(next) { end } else { 0.0 });
        let share = ((place - from).dot(line) / long).clamp(first, 1.0 - last);
        Self { rod, share, at: from + line * share }
    }
}

/// Where a rod starts, and the way to its end.
fn line(loops: &Loops, rod: usize) -> [Point3; 2] {
    let [from, to] = loops.rods[rod].ends.map(|node| loops.at(node));
    [from, to - from]
}

/// A rod beside the nearest of another strand, outline to outline, and those that are wider: a wide bead keeps clear where its
/// narrow neighbour is nearer.
fn beside(loops: &Loops, skin: &impl Surface, at: usize, near: &[usize]) -> Vec<Constraint<3>> {
    let place = middle(loops, &loops.rods[at]);
    let reach = |foot: &Nearest| loops.rods[foot.rod].reach;
    let gap = |foot: &Nearest| foot.at.distance(place) - reach(foot);
    let feet: Vec<Nearest> = near.iter().map(|other| Nearest::new(loops, *other, place)).collect();
    let Some(nearest) = feet.iter().min_by(|a, b| gap(a).total_cmp(&gap(b))) else { return Vec::new() };
    let wider = feet.iter().filter(|foot| reach(foot) > reach(nearest) + WIDER);
    std::iter::once(nearest).chain(wider).filter_map(|foot| clear(loops, skin, at, foot)).collect()
}

/// The middle of a rod keeps clear of a place on another strand's.
fn clear(loops: &Loops, skin: &impl Surface, at: usize, foot: &Nearest) -> Option<Constraint<3>> {
    let (rod, other) = (&loops.rods[at], &loops.rods[foot.rod]);
    let off = middle(loops, rod) - foot.at;
    let reach = rod.reach + other.reach;
    if rod.depth.min(other.depth) < shared(loops, rod, other) || off.length() > reach + NEAR {
        return None;
    }
    let [_, line] = line(loops, foot.rod);
    let normal = match loops.order {
        Precedence::Beside => away(skin, rod.strand > other.strand, off, foot.at, line, reach),
        Precedence::Over => off.unit(),
    }?;
    Some(apart([(rod, 0.5), (other, foot.share)], off, normal))
}

/// How far from their ends two strands lie on one another.
fn shared(loops: &Loops, one: &Member, other: &Member) -> f64 {
    let ends = [one, other].map(|rod| rod.strand.map_or(0, |strand| loops.strands[strand][0]));
    let needed = one.reach + other.reach - loops.at(ends[0]).distance(loops.at(ends[1]));
    if needed <= 0.0 { 0.0 } else { SHARED.max(needed * (loops.strands.len() - 1).max(2) as f64) }
}

/// The direction in which a place `off` a foot on another strand's line keeps away from it.
fn away(skin: &impl Surface, is_outer: bool, off: Point3, foot: Point3, line: Point3, reach: f64) -> Option<Point3> {
    let out = line.cross(skin.at(foot).1).unit()? * if is_outer { 1.0 } else { -1.0 };
    if off.dot(out) < OUTWARD * reach { Some(out) } else { off.unit() }
}
