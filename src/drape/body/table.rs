//! Necklaces laid closed on a table, in an easy curve.
//!
//! **Problem.** A hand lays a closed piece out: every mm of it is pushed outward alike, no strand lies in another, and
//! the closure, hooked as short as it goes, lies opposite the middle of the strands.
//!
//! **Method.** Each joint is pushed as it would be on a circle as long as its loop, whatever place it comes to: so a
//! strand alone is that circle, found exactly ([`Pushed`]), and there is one place of rest. From there go the rounds that
//! lay loops on a body ([`settle`](super::rest::settle)), in a plane. Strands of several lengths that share a closure are nearly circles, one within the other.
//!
//! **Trade-off.** How a hand lays a piece out is a matter of choice: this is a picture of the piece at its true
//! lengths, and not a shape that its weight gives it. Cord is taken as limp: a push alike on every mm bends a stiff ring no
//! otherwise, and where several strands lie side by side it would weigh against no force that is known.

use std::f64::consts::{PI, TAU};

use super::super::chain::Chain;
use super::super::contact::Unrest;
use super::super::hang::{self, Link};
use super::super::{Drape, Hung, Waypoint, fall};
use super::front::Front;
use super::hanging::HangingSpot;
use super::loops::{Loops, Straight, StrandPieces, length};
use super::pushed::Pushed;
use super::rest::{PULL, Still, WORK};
use super::skin::Surface;
use super::way::Way;
use super::{Bed, Laying, MOST_STRANDS, closing, turned};
use crate::design::{Design, Entries, Strand, WornOpen};
use crate::geometry::{Point, Point3};
use crate::pattern::Kind;

/// Corners of the first guess.
const CORNERS: u32 = 96;

/// When they lie as still as a picture shows: what is left is a pixel of 2,000 across a necklace.
const DRAWN: Still = Still { moves: 0.1, overlap: 0.05, forces: f64::INFINITY, pull: PULL, is_rough: false };

/// A necklace laid closed: x to the right, y away from who looks down on it, and z up.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Closed {
    /// Each strand's way, with half of the closure at either end.
    pub lines: Entries<Vec<Waypoint>, Strand>,
    /// The closure's way from the strands' last ends round to their first; a single point of a piece whose ends are in
    /// front.
    pub closing: Vec<Point>,
}

/// The plane y = 0 in the frame of what is worn; the middle of the closure lies behind the origin.
pub struct TableTop;

impl Surface for TableTop {
    /// All lies on it, and nothing is kept off it.
    fn at(&self, _place: Point3) -> (f64, Point3) {
        (f64::INFINITY, Point3::new(0.0, 1.0, 0.0))
    }
}

impl Bed for TableTop {
    /// A circle.
    fn guess(&self, length: f64, _out: f64) -> Way {
        let radius = length / TAU;
        let place = |corner: u32| outward(f64::from(corner) / f64::from(CORNERS)) * radius;
        let behind = Point3::new(0.0, 0.0, radius);
        let step = length / f64::from(CORNERS);
        Way::new((0..=CORNERS).map(|corner| place(corner) + behind).collect(), (0..CORNERS).map(|_| step))
    }

    /// Strands start where they lie alone, which is near enough.
    fn nets(&self, fine: f64) -> Vec<f64> {
        vec![fine]
    }

    fn rest(&self) -> Still {
        DRAWN
    }

    /// All lies in one plane.
    fn lets_cross(&self) -> bool {
        false
    }

    /// The closure is laid first, and stays. All else is pushed outward in the plane.
    fn prepare(&self, loops: &mut Loops) {
        loops.net.nodes.iter_mut().for_each(|node| (node.at[1], node.held[1]) = (0.0, true));
        let round: Vec<_> = (0..loops.strands.len()).flat_map(|strand| loops.round(strand)).collect();
        for (node, share) in round {
            loops.net.nodes[node].down = outward(share).into();
        }
        lay_closure(loops);
        (0..loops.strands.len()).for_each(|strand| lay_alone(loops, strand));
        // Beads part on that, and the strands are laid anew as long as they then are.
        loops.open();
        (0..loops.strands.len()).for_each(|strand| lay_alone(loops, strand));
    }
}

/// Lays the closure along the inmost strand's circle, and bars at its ends straight outward.
fn lay_closure(loops: &mut Loops) {
    let arc = Arc::new(&loops.closing_lengths(), loops.lengths(0).iter().sum());
    for (at, node) in loops.closing.clone().into_iter().enumerate() {
        loops.hold(node, arc.place(at, 0.0));
    }
    let last = loops.closing.len() - 1;
    for (at, bar) in [0, last].into_iter().zip(loops.end_bars()) {
        let middle = 0.5 * bar.joints().last().map_or(0.0, |(along, _)| *along);
        bar.joints().iter().for_each(|(along, node)| loops.hold(*node, arc.place(at, along - middle)));
    }
}

/// Lays a strand between its ends as it lies alone, which is where it stays unless others are in its way.
fn lay_alone(loops: &mut Loops, strand: usize) {
    let round = loops.round(strand);
    let flat = |at: Point3| Point::new(at.x, at.z);
    let joint = |node: usize| &loops.net.nodes[node];
    let push = |(node, _): &(usize, f64)| flat(joint(*node).down.into()) * joint(*node).weight;
    let (Some((first, share)), Some((last, _))) = (round.first().copied(), round.last().copied()) else { return };
    let inner = &round[1..round.len() - 1];
    let [from, to] = [first, last].map(|node| flat(loops.at(node)));
    let lengths = loops.tied(strand);
    let chain = Pushed::new(&lengths, inner.iter().map(push), from, to);
    // On a circle every mm of which is pushed by 1 the tension is as great as the radius.
    let radius = (1.0 - 2.0 * share).recip() * lengths.iter().sum::<f64>() / TAU;
    let (sin, cos) = libm::sincos(TAU * share);
    let places = chain.joints(Point::new(-cos, sin) * radius).unwrap_or_default();
    for ((node, _), at) in round.iter().zip(places) {
        loops.net.nodes[*node].at = [at.x, 0.0, at.y];
    }
}

/// The closure as chords of a circle.
struct Arc {
    radius: f64,
    /// Where its joints are, in turns from the middle of it.
    turns: Vec<f64>,
}

impl Arc {
    /// Pieces of these lengths in a loop with so much else.
    fn new(lengths: &[f64], strand: f64) -> Self {
        let radius = (strand + lengths.iter().sum::<f64>()) / TAU;
        let turn = |length: &f64| libm::asin((0.5 * length / radius).min(1.0)) / PI;
        let turns = hang::stations(lengths.iter().map(turn));
        let half = 0.5 * turns.last().copied().unwrap_or_default();
        Self { radius, turns: turns.into_iter().map(|turn| turn - half).collect() }
    }

    /// Where a joint is, or what lies so far out from it.
    fn place(&self, joint: usize, out: f64) -> Point3 {
        outward(self.turns[joint]) * (self.radius + out) + Point3::new(0.0, 0.0, self.radius)
    }
}

/// The unit vector outward at a share of the way round from the middle of the closure.
fn outward(share: f64) -> Point3 {
    let (sin, cos) = libm::sincos(TAU * share);
    Point3::new(-sin, 0.0, -cos)
}

/// A hung design laid closed; nothing of what is not closed behind a neck, or has more strands than are laid.
#[must_use]
pub fn closed(design: &Design, drape: &Drape) -> Option<Closed> {
    let chain = |(strand, hung): (&Strand, &Hung)| Chain::new(design, strand, &hung.starts);
    let chains: Vec<_> = design.strands.iter().zip(&drape.strands).map(chain).collect();
    let (strands, fronts) = turned(design, &chains);
    on_table(design, &strands, &super::inmost_first(design), &fronts)
}

/// The line of twisted strands laid closed, so long and so thick.
#[must_use]
pub fn closed_as_one(design: &Design, links: &[Link], reach: f64) -> Option<Closed> {
    let pieces: Vec<_> = links.iter().map(|link| Straight::new(*link, reach)).collect();
    on_table(design, &[StrandPieces { pieces, aside: 0.0 }], &[0], &[None])
}

fn on_table(design: &Design, strands: &[StrandPieces], order: &[usize], fronts: &[Option<Front>]) -> Option<Closed> {
    if !closes(design) || strands.is_empty() || strands.len() > MOST_STRANDS {
        return None;
    }
    let closing = if fall::falls(design) { Vec::new() } else { closing(design, design.closure_length().0.value()) };
    let closing = even(&closing);
    let pushed = |at: &usize| StrandPieces { pieces: even(&strands[*at].pieces), ..strands[*at] };
    let inmost: Vec<_> = order.iter().map(pushed).collect();
    let asked =
        Laying { strands: inmost.clone(), closing: closing.clone(), skin: None, work: design.heading.share(WORK) };
    let laid = asked.laid();
    let ways = laid.ways;
    let around = length(&inmost.first().filter(|_| !ways.is_empty() && is_neat(laid.unrest))?.pieces);
    let mut lines = vec![Vec::new(); strands.len()];
    for (at, way) in order.iter().zip(&ways) {
        let along = along(way, 0.5 * length(&closing));
        let line = fronts[*at].as_ref().map(|front| front.line(way, &along, straight_down));
        lines[*at] = line.unwrap_or(along).into_iter().map(from_above).collect();
    }
    Some(Closed { lines: lines.into(), closing: closed_way(&closing, around) })
}

/// Whether what is left where strands came to no rest does not show: a hand lays them no truer.
fn is_neat(unrest: Option<Unrest>) -> bool {
    const SHOWS: f64 = 1.0;
    unrest.is_none_or(|unrest| matches!(unrest, Unrest::Left { overlap, .. } if overlap < SHOWS))
}

/// Whether a design is a necklace with ends that meet.
fn closes(design: &Design) -> bool {
    design.heading.kind == Kind::Necklace && design.closure.open() != Some(WornOpen::Hanging)
}

/// The way of the closure of a loop with so much else.
fn closed_way(closing: &[Straight], strand: f64) -> Vec<Point> {
    let lengths: Vec<_> = closing.iter().map(|piece| piece.link.length).collect();
    let arc = Arc::new(&lengths, strand);
    (0..=closing.len()).map(|joint| arc.place(joint, 0.0)).map(|at| Point::new(at.x, -at.z)).collect()
}

/// Pieces that are pushed alike for every mm of theirs.
fn even(pieces: &[Straight]) -> Vec<Straight> {
    let even = |piece: &Straight| Straight {
        link: Link { weight: piece.link.length, centre: 0.5, ..piece.link },
        stiffness: 0.0,
        ..*piece
    };
    pieces.iter().map(even).collect()
}

/// A way's places, with stations counted from the strand's first end.
fn along(way: &Way, half: f64) -> Vec<Waypoint> {
    way.stops().iter().map(|(station, at)| Waypoint { station: station - half, at: *at, hidden: false }).collect()
}

/// What hangs below a place lies straight away from the closure.
fn straight_down(from: Point3, spots: &[HangingSpot]) -> Vec<Point3> {
    spots.iter().map(|spot| from + Point3::new(0.0, 0.0, spot.below)).collect()
}

/// A spot as it is looked down on.
fn from_above(spot: Waypoint) -> Waypoint {
    Waypoint { at: Point3::new(spot.at.x, -spot.at.z, spot.at.y), ..spot }
}

#[cfg(test)]
mod tests {
    use super::super::super::{lay_closed, on_way};
    use super::*;
    use crate::design::nth;
    use crate::source::Source;

    fn laid(name: &str, text: &str) -> (crate::piece::Piece, Closed) {
        let piece = crate::piece(&Source::new(name, text), &crate::design::Choice::default(), None).0.unwrap();
        let closed = lay_closed(&piece.design, &piece.drape).unwrap();
        (piece, closed)
    }

    /// A loop that is pushed outward alike all round is a circle, as every textbook has it of a ring under pressure.
    #[test]
    fn a_strand_alone_is_a_circle() {
        let (piece, closed) = laid("moonwrack", include_str!("../../../patterns/moonwrack.yaml"));
        let whole = piece.design.strands[nth(0)].finished.value() + piece.design.closure_length().0.value();
        let (radius, spots) = (whole / TAU, &closed.lines[nth(0)]);
        let middle = Point3::new(0.0, -radius, 0.0);
        for spot in spots {
            let off = spot.at.distance(middle) - radius;
            // Pieces are chords of at most 12 mm: their joints lie as far outside as a polygon of that girth has them.
            assert!(off.abs() < 0.3, "{off} mm off the circle at {}", spot.station);
        }
    }

    #[test]
    fn strands_have_their_lengths_and_lie_beside_one_another() {
        for (name, text, across) in [
            ("saltmarsh", include_str!("../../../patterns/saltmarsh.yaml"), 4.0),
            ("pierhead", include_str!("../../../patterns/pierhead.yaml"), 4.0),
        ] {
            let (piece, closed) = laid(name, text);
            for (strand, line) in piece.design.strands.iter().zip(&closed.lines) {
                let on = line.iter().filter(|spot| (0.0..=strand.finished.value()).contains(&spot.station));
                let spots: Vec<_> = on.collect();
                let gone: f64 = spots.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
                let told = spots[spots.len() - 1].station - spots[0].station;
                // A row without bare cord takes its slack. Where holes meet, cord lies at their inner side: it is shorter than
                // the beads' axes by half of their play for each radian of the circle.
                let hole =
                    strand.bits().filter_map(|bit| bit.what.bead()).map(|at| piece.design.beads[at].hole.value());
                let play = hole.fold(0.0, f64::max) - strand.cord_width(&piece.design).value();
                let (most, given) = (strand.slack.value() + 0.5 * TAU * play, strand.bare().value() < 1e-6);
                let least = if given { 0.9 * most } else { 0.0 };
                let longer = gone - told;
                assert!((least - 5e-4 * told..most + 5e-4 * told).contains(&longer), "{name}: {longer} mm of {most}");
            }
            let (inner, outer) = (&closed.lines[nth(0)], &closed.lines[nth(1)]);
            let middle = |line: &[Waypoint], strand| {
                let length = piece.design.strands[nth(strand)].finished.value();
                let at = |share: u32| on_way(line, length * f64::from(share) / 100.0).unwrap().0;
                (25..=75).map(at).collect::<Vec<_>>()
            };
            for place in middle(inner, 0) {
                let near = middle(outer, 1).iter().map(|other| other.distance(place)).fold(f64::INFINITY, f64::min);
                assert!(near > across - 0.1, "{name}: {near} mm apart");
            }
        }
    }

    /// The sum of forces on a bar is nothing where it turns freely: but it never is longer or shorter.
    #[test]
    fn bars_hold_strands_as_far_apart_as_their_holes() {
        let (piece, closed) = laid("pierhead", include_str!("../../../patterns/pierhead.yaml"));
        let passages: Vec<_> = piece.design.strands.iter().map(|strand| piece.design.passages(strand)).collect();
        let place = |strand: usize, (train, bit, _): &(usize, usize, crate::design::Passage)| {
            let seats = &piece.drape.strands[nth(strand)].seats;
            let seat = seats.iter().find(|seat| (seat.train, seat.bit) == (*train, *bit)).unwrap();
            on_way(&closed.lines[nth(strand)], seat.station).unwrap().0
        };
        assert!(!passages[0].is_empty());
        for (inner, outer) in passages[0].iter().zip(&passages[2]) {
            let apart = place(0, inner).distance(place(2, outer));
            let across = outer.2.across - inner.2.across;
            assert!((apart - across).abs() < 0.1, "{apart} mm for {across}");
        }
    }
}
