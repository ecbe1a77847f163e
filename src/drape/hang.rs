//! How a chain of rigid, weighted links hangs from two points.
//!
//! **Problem.** Links of lengths `l` (mm) with weights `w` (N) run from the origin to a given end
//! point (X, Y) (mm, y up). Find the shape in which every link is in balance.
//!
//! **Equation.** Cut the chain at the first end and let (H, V) be the force with which the chain
//! pulls at its own start, along the chain. H is the same all the way; V grows by each weight that
//! is passed: below the first end V is negative, past the lowest point positive. A link whose
//! weight acts at a share f from its start carries (H, A) before and (H, A + w) after the weight;
//! its moments about the weight's point vanish when it lies along
//! f (H, A) + (1 - f) (H, A + w) = (H, A + w (1 - f)).
//! With s the sum of the weights before the link plus w (1 - f), link i lies along (H, V + s_i),
//! and the chain ends in the right place where the gradient of
//! D(H, V) = sum l_i sqrt(H² + (V + s_i)²) - H X - V Y
//! vanishes. D is convex. It is the dual of the chain's potential energy E, in which the links may
//! also be shorter than they are: E = W Y - min D, with W the whole weight.
//!
//! **Source.** Statics of hanging cables, as in any textbook of engineering mechanics; the dual is
//! derived here. In the limit of many equal links it is the catenary.
//!
//! **Method.** Newton's method in two unknowns, O(n) a step, on the chain scaled to length 1 and
//! weight 1 (`newton`). D has a kink where a link carries no force at all (H = 0 and
//! V = -s_k). The best (H, V) lies on that kink only when link k, at the bottom, is longer than
//! the gap that it has to bridge; then the link is pressed, H is negative, and `bridge` finds
//! the balance. A chain whose ends meet and that folds at a joint hangs in two plumb legs.
//!
//! **Tolerance and cap.** The chain misses its end by less than [`TOLERANCE`] of its length or the
//! answer is a fault; at most [`CAP`] steps.
//!
//! **Stiff cord.** Newton's method in all angles from the limp chain (`stiff`).
//!
//! **Trade-off.** Cord does not stretch. Links turn about the joint between them; how they become longer where beads part in
//! a bend is found round this (`super::open`). A force below the rounding of the
//! weights' sum is not resolved, so in a chain with weights 10⁹ apart the light links' directions
//! are only as good as that.

mod bridge;
mod newton;
mod stiff;

use super::bend::bends;
use crate::geometry::Point;
pub use crate::remark::said::hang::Unhung;

/// How far a solved chain may miss its end, as a share of its length.
pub const TOLERANCE: f64 = 1e-9;
/// Newton steps after which the solver gives up. Most chains need under 10; with level ends, a span of
/// 0.001 to 0.99999 of the length and weights within 1000 of one another, under 20.
pub const CAP: u32 = 100;
/// A miss below this share of the length is rounding: no step can better it.
const ROUNDING: f64 = 1e-15;

/// A rigid link.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// Length in mm; may be 0.
    pub length: f64,
    /// Weight in N; may be 0.
    pub weight: f64,
    /// Where its weight acts, as a share of the length from its start.
    pub centre: f64,
}

impl Link {
    /// The same as one meets it from its end.
    #[must_use]
    pub fn backwards(self) -> Self {
        Self { centre: 1.0 - self.centre, ..self }
    }

    /// This and the next as one.
    #[must_use]
    pub fn and(self, next: Self) -> Self {
        let (length, weight) = (self.length + next.length, self.weight + next.weight);
        let moment = self.weight * self.centre * self.length + next.weight * (self.length + next.centre * next.length);
        let centre = if weight * length > 0.0 { moment / (weight * length) } else { 0.5 };
        Self { length, weight, centre }
    }
}

/// Where each of some lengths in a row starts, and where the last one ends.
#[must_use]
pub fn stations(lengths: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut at = 0.0;
    let ends = lengths.map(|length| {
        at += length;
        at
    });
    std::iter::once(0.0).chain(ends.collect::<Vec<_>>()).collect()
}

/// A chain at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanging {
    /// Start of the first link, then the end of every link; mm from the first end, y up.
    pub joints: Vec<Point>,
    /// The links' directions, as unit vectors.
    pub directions: Vec<Point>,
    /// Force H along x in N, the same all along; negative where a stiff link pushes the legs apart.
    pub across: f64,
    /// Force V along y at the first end in N.
    pub up: f64,
    /// Tension in N at the first end.
    pub first: f64,
    /// The least tension at any joint in N.
    pub lowest: f64,
    /// Tension in N at the last end.
    pub last: f64,
    /// Steps taken.
    pub iterations: u32,
    /// Distance in mm by which the last joint misses the end.
    pub residual: f64,
}

/// Hangs a chain from the origin and from `end`.
///
/// # Errors
/// See [`Unhung`]; never a shape that is not in balance.
pub fn solve(links: &[Link], end: Point) -> Result<Hanging, Unhung> {
    solve_stiff(links, &[], end)
}

/// Hangs a chain on cord that is stiff: `stiffness` is its E I in N mm² in each link, none where it turns freely.
///
/// # Errors
/// As for [`solve`].
pub fn solve_stiff(links: &[Link], stiffness: &[f64], end: Point) -> Result<Hanging, Unhung> {
    solve_near(links, stiffness, end, None)
}

/// The same, from near where it hung with links a little longer or shorter, which saves steps where it is stiff.
///
/// # Errors
/// As for [`solve`].
pub fn solve_near(links: &[Link], stiffness: &[f64], end: Point, near: Option<&Hanging>) -> Result<Hanging, Unhung> {
    if end.x < 0.0 {
        let near = near.cloned().map(mirrored);
        return solve_near(links, stiffness, Point::new(-end.x, end.y), near.as_ref()).map(mirrored);
    }
    let length: f64 = links.iter().map(|link| link.length).sum();
    check(links, length, end)?;
    let chain = Scaled::new(links, length, end);
    let bends = bends(links.iter().map(|link| link.length).zip(stiffness.iter().copied()));
    let from = |start: &Balance| stiff::settle(&chain, links, &bends, start);
    let near = near.filter(|near| !bends.is_empty() && near.directions.len() == links.len());
    let found = match near.map(|near| from(&chain.as_hung(near))) {
        Some(Ok(found)) => found,
        _ if bends.is_empty() => chain.settle()?,
        _ => from(&chain.settle()?)?,
    };
    lay(links, found, chain.weight, end)
}

/// The shape on the other side of the y axis.
fn mirrored(hanging: Hanging) -> Hanging {
    let flip = |points: Vec<Point>| points.into_iter().map(|p| Point::new(-p.x, p.y)).collect();
    Hanging { joints: flip(hanging.joints), directions: flip(hanging.directions), across: -hanging.across, ..hanging }
}

/// Whether the chain has any shape between its ends.
fn check(links: &[Link], length: f64, end: Point) -> Result<(), Unhung> {
    let span = end.length();
    if span >= length {
        return Err(Unhung::TooShort(span - length));
    }
    let longest = links.iter().map(|link| link.length).fold(0.0, f64::max);
    let stiff = longest - (length - longest) - span;
    if stiff > TOLERANCE * length {
        return Err(Unhung::TooStiff(stiff));
    }
    if links.iter().all(|link| link.weight <= 0.0) { Err(Unhung::Weightless) } else { Ok(()) }
}

/// The chain scaled to length 1 and weight 1.
struct Scaled {
    /// Lengths of the links.
    lengths: Vec<f64>,
    /// The weight s before each link's centre; never less than the one before.
    loads: Vec<f64>,
    /// The end.
    end: Point,
    /// The whole weight in N.
    weight: f64,
}

/// A balance that was found, in lengths and weights of the whole chain.
struct Balance {
    across: f64,
    up: f64,
    directions: Vec<Point>,
    iterations: u32,
}

/// Where the chain would turn back up if it hung plumb.
struct Fold {
    /// The link in which, or at whose end, it turns.
    link: usize,
    /// Its length, with that of the links that carry the same force.
    length: f64,
    /// What it would have to bridge, with these.
    gap: Point,
}

impl Scaled {
    fn new(links: &[Link], length: f64, end: Point) -> Self {
        let weight: f64 = links.iter().map(|link| link.weight).sum();
        let mut before = 0.0;
        let load = |link: &Link| {
            let load = (before + link.weight * (1.0 - link.centre)) / weight;
            before += link.weight;
            load
        };
        let loads = links.iter().map(load).collect();
        let lengths = links.iter().map(|link| link.length / length).collect();
        Self { lengths, loads, end: end * (1.0 / length), weight }
    }

    fn links(&self) -> impl Iterator<Item = (f64, f64)> {
        self.lengths.iter().copied().zip(self.loads.iter().copied())
    }

    fn settle(&self) -> Result<Balance, Unhung> {
        let fold = self.fold();
        let spare = fold.length - fold.gap.length();
        let rounding = ROUNDING * self.lengths.len() as f64;
        if self.end.x <= 0.0 && spare <= rounding {
            Ok(self.plumb(&fold))
        } else if spare < 0.0 {
            Ok(newton::settle(self))
        } else if fold.length > self.lengths[fold.link] {
            Err(Unhung::Slack)
        } else {
            Ok(bridge::settle(self, &fold))
        }
    }

    /// Half the length that the height between the ends does not use up runs down before the fold.
    /// Links with no weight between them carry the same force and turn as one.
    fn fold(&self) -> Fold {
        let down = 0.5 * (1.0 - self.end.y);
        let mut before = 0.0;
        let mut link = 0;
        while link + 1 < self.lengths.len() && before + self.lengths[link] < down {
            before += self.lengths[link];
            link += 1;
        }
        let bottom = self.loads[link];
        let sum = |pick: &dyn Fn(f64) -> bool| self.links().filter(|&(_, s)| pick(s)).map(|(l, _)| l).sum::<f64>();
        let (before, after) = (sum(&|s| s < bottom), sum(&|s| s > bottom));
        Fold { link, length: sum(&|s| s == bottom), gap: Point::new(self.end.x, self.end.y + before - after) }
    }

    /// Two plumb legs that meet at a joint, where the chain carries nothing.
    fn plumb(&self, fold: &Fold) -> Balance {
        let legs = fold.link + usize::from(fold.gap.y < 0.0);
        let direction = |link| Point::new(0.0, if link < legs { -1.0 } else { 1.0 });
        let at_joint = self.loads.get(legs).zip(legs.checked_sub(1).map(|leg| self.loads[leg]));
        let up = at_joint.map_or(-self.loads[fold.link], |(after, before)| -0.5 * (after + before));
        Balance { across: 0.0, up, directions: (0..self.lengths.len()).map(direction).collect(), iterations: 0 }
    }

    /// A start as another chain of as many links hangs.
    fn as_hung(&self, near: &Hanging) -> Balance {
        let (across, up) = (near.across / self.weight, near.up / self.weight);
        Balance { across, up, directions: near.directions.clone(), iterations: near.iterations }
    }

    /// The links' directions under a force at the start.
    fn directions(&self, across: f64, up: f64) -> Vec<Point> {
        self.loads.iter().map(|load| unit(Point::new(across, up + load))).collect()
    }
}

/// A force's direction; along x where there is none.
fn unit(force: Point) -> Point {
    let size = (force.x * force.x + force.y * force.y).sqrt();
    if size > 0.0 { force * (1.0 / size) } else { Point::new(1.0, 0.0) }
}

/// The joints of links with these directions.
pub(super) fn joints(links: &[Link], directions: &[Point]) -> Vec<Point> {
    let mut joints = Vec::with_capacity(links.len() + 1);
    let mut at = Point::ORIGIN;
    joints.push(at);
    for (link, &direction) in links.iter().zip(directions) {
        at = at + direction * link.length;
        joints.push(at);
    }
    joints
}

/// Puts a balance back into mm and N, and checks it.
fn lay(links: &[Link], found: Balance, weight: f64, end: Point) -> Result<Hanging, Unhung> {
    let joints = joints(links, &found.directions);
    let residual = joints.last().map_or(0.0, |last| last.distance(end));
    let length: f64 = links.iter().map(|link| link.length).sum();
    if residual.is_nan() || residual >= TOLERANCE * length {
        return Err(Unhung::Unbalanced(residual));
    }
    let (across, up) = (found.across * weight, found.up * weight);
    let tension = |below: f64| (across * across + (up + below) * (up + below)).sqrt();
    let mut below = 0.0;
    let mut lowest = tension(0.0);
    for link in links {
        below += link.weight;
        lowest = lowest.min(tension(below));
    }
    let (first, last) = (tension(0.0), tension(below));
    Ok(Hanging {
        joints,
        directions: found.directions,
        across,
        up,
        first,
        lowest,
        last,
        iterations: found.iterations,
        residual,
    })
}
