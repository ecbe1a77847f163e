//! What keeps loops off the body and off one another, and the ends of bars apart.
//!
//! Each piece is a tube as wide as the widest of what it holds, and outlined by [balls](super::outline). A ball keeps its reach
//! from the plane that touches the skin where it is nearest, from the nearest piece of each other strand, and from wider ones
//! near that: an outer strand on the outer side of an inner one, or straight away from it where it lies over it. Strands that
//! find no room so keep straight away from one another, and may cross: while pieces outline them, their middle lines keep apart
//! where they come nearest.

use rstar::RTree;
use rstar::primitives::GeomWithData;

use super::super::contact::{Press, TOUCH};
use super::super::program::{Constraint, Term};
use super::loops::{Loops, Member, Precedence};
use super::outline::Ball;
use super::skin::Surface;
use crate::geometry::{Point3, nearest_shares};

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
/// What is nearer than this, in mm, may be met by what moved half as far in the round before: of the body, and of all else where
/// beads lie nearly still.
const REACHED: (f64, f64) = (NEAR, 120.0);
const BEADED: (f64, f64) = (1.0, NEAR);

/// Two that touch, or may.
#[derive(Clone, Copy, Debug)]
enum Touch {
    /// A ball and the body.
    OnBody(Ball),
    /// A ball and a rod of another strand.
    Beside(Ball, usize),
    /// Two rods that lie across one another.
    Across([usize; 2]),
}

/// What may touch in a round.
pub struct Contacts {
    touches: Vec<Touch>,
    /// What keeps it apart; the last ones are those of bars.
    pub constraints: Vec<Constraint<3>>,
}

impl Contacts {
    /// All at the present place, to which no joint went farther in the last round than so many mm.
    pub fn new(loops: &Loops, skin: &impl Surface, went: f64) -> Self {
        let (least, most) = if loops.is_beaded { BEADED } else { REACHED };
        let widest = (2.0 * went).clamp(least, most);
        let told = |touch: Touch| Some((touch, touch.constraint(loops, skin)?));
        let on_body = loops.balls.iter().chain(&loops.lifts).filter_map(|ball| told(Touch::OnBody(*ball)));
        let mut found: Vec<_> = on_body.filter(|(_, constraint)| constraint.gap < widest).collect();
        if loops.strands.len() > 1 {
            found.extend(side_by_side(loops, widest.min(NEAR)).into_iter().filter_map(told));
        }
        let (touches, mut constraints): (Vec<_>, Vec<_>) = found.into_iter().unzip();
        constraints.extend(bars(loops));
        Self { touches, constraints }
    }

    /// The same constraints where the joints now are; nothing where one of them has no direction any more.
    pub fn anew(&self, loops: &Loops, skin: &impl Surface) -> Option<Vec<Constraint<3>>> {
        let touches = self.touches.iter().map(|touch| touch.constraint(loops, skin));
        touches.chain(bars(loops).into_iter().map(Some)).collect()
    }

    /// Where strands press on one another with such forces in N, by their numbers from the inmost out.
    pub fn presses(&self, loops: &Loops, forces: &[f64]) -> Vec<Press<usize>> {
        let least = TOUCH * loops.net.weight();
        let pressed = self.touches.iter().zip(forces).filter(|(_, force)| **force > least);
        pressed.filter_map(|(touch, force)| touch.press(loops, *force)).collect()
    }

    /// How deep anything lies in anything else, in mm.
    pub fn overlap(&self) -> f64 {
        self.constraints.iter().map(|constraint| -constraint.gap).fold(0.0, f64::max)
    }
}

fn bars(loops: &Loops) -> Vec<Constraint<3>> {
    loops.bars.constraints(&loops.net, |_| None)
}

impl Touch {
    /// What keeps both apart, as they now lie.
    fn constraint(self, loops: &Loops, skin: &impl Surface) -> Option<Constraint<3>> {
        match self {
            Self::OnBody(ball) => Some(on_body(loops, skin, ball)),
            Self::Beside(ball, rod) => clear(loops, skin, ball, rod),
            Self::Across(pair) => across(loops, pair),
        }
    }

    /// How hard it presses two strands on one another, where it does.
    fn press(self, loops: &Loops, force: f64) -> Option<Press<usize>> {
        let [one, other] = match self {
            Self::OnBody(_) => return None,
            Self::Beside(ball, rod) => {
                let foot = Nearest::new(loops, rod, loops.middle(ball));
                [(ball.rod, ball.share), (rod, foot.share)]
            }
            Self::Across(pair) => {
                let [s, t] = nearest(line(loops, pair[0]), line(loops, pair[1]))?;
                [(pair[0], s), (pair[1], t)]
            }
        };
        let [(one, at), (other, on)] = [one, other].map(|(rod, share)| (&loops.rods[rod], share));
        let [(inner, at), (outer, _)] =
            if one.strand < other.strand { [(one, at), (other, on)] } else { [(other, on), (one, at)] };
        let between = [inner.strand?, outer.strand?];
        Some(Press { between, station: inner.from + at * inner.length, depth: inner.depth, force })
    }
}

/// A ball on the skin.
fn on_body(loops: &Loops, skin: &impl Surface, ball: Ball) -> Constraint<3> {
    let (ends, share) = (loops.rods[ball.rod].ends, loops.share_of_tie(ball.rod, ball.share));
    let (distance, normal) = skin.at(loops.middle(ball));
    let terms = vec![term(ends[0], normal * (1.0 - share)), term(ends[1], normal * share)];
    Constraint { terms, gap: distance - ball.reach, gives: false }
}

fn term(node: usize, slope: Point3) -> Term<3> {
    Term { node, slope: slope.into() }
}

/// The rods of strands, with their numbers.
fn strung(loops: &Loops) -> impl Iterator<Item = (usize, &Member)> {
    loops.rods.iter().enumerate().filter(|(_, rod)| rod.strand.is_some())
}

/// Rods of strands, by their middles.
struct Surroundings {
    tree: RTree<GeomWithData<[f64; 3], usize>>,
    /// How far any of them reaches from its middle, in mm.
    far: f64,
}

impl Surroundings {
    fn new(loops: &Loops) -> Self {
        let boxed = |(at, rod)| GeomWithData::new(loops.middle(Ball::amid(at, rod)).into(), at);
        let far = strung(loops).map(|(_, rod)| rod.reach + 0.5 * rod.length).fold(0.0, f64::max);
        Self { tree: RTree::bulk_load(strung(loops).map(boxed).collect()), far }
    }

    /// Those of other strands that may be met by a ball.
    fn to(&self, loops: &Loops, ball: Ball) -> Vec<usize> {
        let within = ball.reach + self.far + NEAR;
        let near = self.tree.locate_within_distance(loops.middle(ball).into(), within * within).map(|near| near.data);
        let mut near: Vec<usize> = near.filter(|rod| loops.rods[*rod].strand != loops.rods[ball.rod].strand).collect();
        near.sort_unstable();
        near
    }
}

/// Each ball of a strand with the rods of each other strand that are so near, in mm, and rods that may cross.
fn side_by_side(loops: &Loops, within: f64) -> Vec<Touch> {
    let (near, mut touches) = (Surroundings::new(loops), Vec::new());
    for ball in loops.balls.iter().filter(|ball| loops.rods[ball.rod].strand.is_some()) {
        let near = near.to(loops, *ball);
        let of_strand = near.chunk_by(|one, other| loops.rods[*one].strand == loops.rods[*other].strand);
        touches.extend(of_strand.flat_map(|near| beside(loops, *ball, near, within)));
    }
    if loops.order == Precedence::Over && !loops.is_beaded {
        touches.extend(crossing(loops, &near));
    }
    touches
}

/// Rods that lie across inner ones.
fn crossing(loops: &Loops, near: &Surroundings) -> Vec<Touch> {
    let pairs = strung(loops).flat_map(|(at, rod)| {
        let near = near.to(loops, Ball::amid(at, rod)).into_iter();
        near.filter(|other| loops.rods[*other].strand < rod.strand).map(move |other| [at, other])
    });
    pairs.filter(|pair| !share_an_end(loops, *pair)).map(Touch::Across).collect()
}

/// Two rods that lie across one another, where their middle lines come nearest.
fn across(loops: &Loops, pair: [usize; 2]) -> Option<Constraint<3>> {
    let [one, other] = pair.map(|at| &loops.rods[at]);
    let [[a, u], [b, v]] = pair.map(|at| line(loops, at));
    let [s, t] = nearest([a, u], [b, v])?;
    let off = a + u * s - b - v * t;
    let reach = one.reach + other.reach;
    let normal = off.unit().filter(|_| off.length() < reach + CROSSES)?;
    Some(apart([(one, s), (other, t)], off, normal, reach))
}

/// Two rods keep so far apart along a normal, at shares of them that lie so far off one another.
fn apart([(one, s), (other, t)]: [(&Member, f64); 2], off: Point3, normal: Point3, reach: f64) -> Constraint<3> {
    let terms = vec![
        term(one.ends[0], normal * (1.0 - s)),
        term(one.ends[1], normal * s),
        term(other.ends[0], normal * (t - 1.0)),
        term(other.ends[1], normal * -t),
    ];
    Constraint { terms, gap: off.dot(normal) - reach, gives: true }
}

/// The shares of two lines, each a start and a way, at which they come nearest; none where they run almost alike.
fn nearest([a, u]: [Point3; 2], [b, v]: [Point3; 2]) -> Option<[f64; 2]> {
    let (uu, vv, uv) = (u.dot(u), v.dot(v), u.dot(v));
    (uu * vv - uv * uv >= ACROSS * ACROSS * uu * vv).then(|| nearest_shares([a, u], [b, v]))
}

/// A place on another strand's rod.
struct Nearest {
    rod: usize,
    /// How far along it.
    share: f64,
    at: Point3,
    /// Whether it lies between the rod's ends.
    is_within: bool,
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
        let along = (place - from).dot(line) / long;
        let share = along.clamp(first, 1.0 - last);
        Self { rod, share, at: from + line * share, is_within: share == along }
    }
}

/// Where a rod starts, and the way to its end.
fn line(loops: &Loops, rod: usize) -> [Point3; 2] {
    let [from, to] = loops.rods[rod].ends.map(|node| loops.at(node));
    [from, to - from]
}

/// A ball beside the nearest rod of another strand, outline to outline, those between whose ends it lies, as two do where that
/// strand bends round it, and those that are wider: a wide bead keeps clear where its narrow neighbour is nearer.
fn beside(loops: &Loops, ball: Ball, near: &[usize], within: f64) -> Vec<Touch> {
    let place = loops.middle(ball);
    let reach = |foot: &Nearest| loops.rods[foot.rod].reach;
    let gap = |foot: &Nearest| foot.at.distance(place) - reach(foot) - ball.reach;
    let feet: Vec<Nearest> = near.iter().map(|other| Nearest::new(loops, *other, place)).collect();
    let Some(nearest) = feet.iter().min_by(|a, b| gap(a).total_cmp(&gap(b))) else { return Vec::new() };
    let counts = |foot: &&Nearest| {
        (foot.rod == nearest.rod || foot.is_within || reach(foot) > reach(nearest) + WIDER)
            && gap(foot) <= within
            && !share_an_end(loops, [ball.rod, foot.rod])
    };
    feet.iter().filter(counts).map(|foot| Touch::Beside(ball, foot.rod)).collect()
}

/// A ball keeps clear of another strand's rod.
fn clear(loops: &Loops, skin: &impl Surface, ball: Ball, rod: usize) -> Option<Constraint<3>> {
    let place = loops.middle(ball);
    let foot = Nearest::new(loops, rod, place);
    let (one, other) = (&loops.rods[ball.rod], &loops.rods[rod]);
    let off = place - foot.at;
    let reach = ball.reach + other.reach;
    let [_, line] = line(loops, rod);
    let normal = match loops.order {
        Precedence::Beside => away(skin, one.strand > other.strand, off, foot.at, line, reach),
        Precedence::Over => off.unit(),
    }?;
    Some(apart([(one, loops.share_of_tie(ball.rod, ball.share)), (other, foot.share)], off, normal, reach))
}

/// Whether two rods lie so near the ends of their strands that they lie on one another.
fn share_an_end(loops: &Loops, pair: [usize; 2]) -> bool {
    let [one, other] = pair.map(|at| &loops.rods[at]);
    one.depth.min(other.depth) < shared(loops, one, other)
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
