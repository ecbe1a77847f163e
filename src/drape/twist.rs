//! Strands twisted round one line.
//!
//! **Problem.** How the strands of a torsade hang, lie on the neck, or close round a limb, all of them together.
//!
//! **Method.** The line round which they lie hangs, and is worn, as one strand as long as the twisted piece, with the
//! weight of all strands spread over it, and as thick as the widest beads of what is taut make it. Each strand is a helix round it ([`Twist`]), along
//! which it is spread evenly: where the line bends, strands slide past one another. Frames along the line do not turn about
//! it by themselves (each is the one before, set upright on the line).
//!
//! Round a limb the line is a ring of the twisted length, half as far out from the limb as the strands are thick together.
//!
//! **Trade-off.** The twist is even, right-handed, and nothing hinders the line in bending, its wire neither. Beads that slide stay in the middle of where they may be, since
//! the twist holds them. Within the breadth of the twisted strands from either end all gather in the line, and what is loose stands out beyond the cones. A strand
//! bears its share of the line's tension among those that are not loose, and is drawn so much harder as it runs aslant.

use std::f64::consts::TAU;

use super::body::skin::Skin;
use super::chain::{Chain, Content};
use super::hang::{Hanging, Link, Unhung, solve};
use super::{
    Closed, Drape, Hung, Joint, Ring, Seat, Tension, Waypoint, Worn, body, contact, on_way, ring, slide, sort_places,
    stretch,
};
use crate::design::{Design, Entries, Index, Strand, Twist, What};
use crate::geometry::twist::Lay;
use crate::geometry::{Point, Point3};

/// Stations nearer to each other than this, in mm, are one.
const SAME: f64 = 1e-9;
/// Longest link of the line in mm, and most of them.
const LINK: f64 = 1.0;
const LINKS: f64 = 2_000.0;

/// Hangs twisted strands from two points so far apart, and lays on the neck what is to be worn there.
pub fn hang(design: &Design, twist: &Twist, span: f64, worn: bool) -> Result<Drape, Unhung> {
    let chains = chains(design);
    let links = line(&chains, twist.length().value());
    let hanging = solve(&links, Point::new(span, 0.0))?;
    let mut worn = worn.then(|| body::wear_as_one(design, &links, reach(design, twist)));
    if let Some(worn) = &mut worn {
        twine(design, twist, worn);
    }
    let axis = Axis::new(&hung_line(&links, &hanging));
    let strands = design.strands.entries().zip(&chains);
    let strands = strands.map(|((at, strand), chain)| {
        let strung = LaidStrand { strand, chain, way: Winding::new(design, twist, at).way(&axis) };
        let share = share(design, twist);
        let (first, lowest, last) = (hanging.first * share, hanging.lowest * share, hanging.last * share);
        let drop = 0.0 - hanging.joints.iter().map(|joint| joint.y).fold(0.0, f64::min);
        let (iterations, residual) = (hanging.iterations, hanging.residual);
        let tension = Tension { first, lowest, last };
        Hung { tension, drop, iterations, residual, ..strung.laid(slide::middles(strand)) }
    });
    let strands: Entries<_, Strand> = strands.collect();
    let rings = if design.is_ring() { rings(design, twist, &strands) } else { Vec::new() };
    Ok(Drape { span, strands, clearances: Vec::new(), presses: Vec::new(), unrest: None, worn, rings })
}

/// Twisted strands closed round a limb: their line is the ring of one strand as thick as they are together. `laid` are
/// they laid straight.
pub fn rings(design: &Design, twist: &Twist, laid: &[Hung]) -> Vec<Ring> {
    let Some(rope) = ring::rope(design, twist.length(), twist.thickness()) else { return Vec::new() };
    let axis = Axis::new(&rope.line);
    let of = |((at, strand), laid): ((Index<Strand>, &Strand), &Hung)| {
        let chain = Chain::new(design, strand, &laid.starts);
        let strung = LaidStrand { strand, chain: &chain, way: Winding::new(design, twist, at).way(&axis) };
        let [inside_girth, longest_girth] = rope.inside;
        let (round, closing) = (strung.laid(laid.starts.clone()), rope.closing.clone());
        Ring { strand: at, inside_girth, longest_girth, round, closing, coil: None }
    };
    design.strands.entries().zip(laid).map(of).collect()
}

/// The strands as chains, what slides in the middle of where it may be.
fn chains(design: &Design) -> Vec<Chain> {
    design.strands.iter().map(|strand| Chain::new(design, strand, &slide::middles(strand))).collect()
}

/// The line's links: as long as the twisted piece in all, with the weight of all strands where it lies.
fn line(chains: &[Chain], length: f64) -> Vec<Link> {
    let count = super::chain::pieces(length, LINK.max(length / LINKS)).max(1);
    let mut weights = vec![0.0; count];
    for chain in chains {
        let whole = chain.length();
        for (link, start) in chain.links.iter().zip(chain.stations()) {
            let share = (start + link.length * link.centre) / whole;
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a small count")]
            let at = ((share * count as f64) as usize).min(count - 1);
            weights[at] += link.weight;
        }
    }
    let link = |weight| Link { length: length / count as f64, weight, centre: 0.5 };
    weights.into_iter().map(link).collect()
}

/// How wide the widest bead of a strand is, in mm.
fn widest(design: &Design, at: Index<Strand>) -> f64 {
    let beads = design.strands[at].bits().filter_map(|bit| bit.what.bead());
    beads.map(|bead| design.beads[bead].across.value()).fold(0.0, f64::max)
}

/// How far what lies in its place in the twist reaches from the line; what is loose lies flat where there is no room for it.
fn reach(design: &Design, twist: &Twist) -> f64 {
    let taut = design.strands.indices().filter(|at| twist.slack(*at).is_none());
    taut.map(|at| twist.lay(at).radius + 0.5 * widest(design, at)).fold(0.0, f64::max)
}

/// What of the line's tension a strand bears that is not loose.
fn share(design: &Design, twist: &Twist) -> f64 {
    let taut = design.strands.indices().filter(|at| twist.slack(*at).is_none()).count();
    1.0 / (taut as f64 * libm::cos(twist.angle()))
}

/// The line as it hangs.
fn hung_line(links: &[Link], hanging: &Hanging) -> Vec<Waypoint> {
    let stations = super::hang::stations(links.iter().map(|link| link.length));
    let spot = |(station, at): (f64, &Point)| Waypoint { station, at: Point3::new(at.x, at.y, 0.0), hidden: false };
    stations.into_iter().zip(&hanging.joints).map(spot).collect()
}

/// The line on the neck made the strands that lie round it; all hang as low as it does.
fn twine(design: &Design, twist: &Twist, worn: &mut Worn) {
    let drop = worn.drops.first().copied().unwrap_or_default();
    let spare = worn.spare.first().copied().unwrap_or_default();
    let line = worn.lines.first().map_or(&[][..], Vec::as_slice);
    worn.lines = wound(design, twist, &Axis { body: Some(worn.skin), ..Axis::new(line) });
    worn.drops = vec![drop; design.strands.len()].into();
    worn.spare = vec![spare; design.strands.len()].into();
    worn.clearances = body::clearances(design, &chains(design), &worn.lines, None);
}

/// The ways of the strands round a line.
fn wound(design: &Design, twist: &Twist, axis: &Axis) -> Entries<Vec<Waypoint>, Strand> {
    design.strands.indices().map(|at| Winding::new(design, twist, at).way(axis)).collect()
}

/// Twisted strands laid closed; nothing of what does not close behind a neck.
pub fn closed(design: &Design, twist: &Twist) -> Option<Closed> {
    let links = line(&chains(design), twist.length().value());
    let closed = body::closed_as_one(design, &links, reach(design, twist))?;
    Some(Closed { lines: wound(design, twist, &Axis::new(closed.lines.first()?)), ..closed })
}

/// A line with a frame at each of its spots.
struct Axis {
    spots: Vec<Waypoint>,
    /// Unit vectors across the line.
    across: Vec<Point3>,
    /// The body on which it lies.
    body: Option<Skin>,
}

/// A place on a line: where it is, the unit vectors along and across it, and whether the body hides it.
struct Stand {
    at: Point3,
    along: Point3,
    across: Point3,
    hidden: bool,
}

impl Axis {
    /// Sets frames on a line, from its middle out, where they look towards who looks.
    fn new(spots: &[Waypoint]) -> Self {
        let mut across = vec![Point3::new(0.0, 0.0, 1.0); spots.len()];
        let middle = spots.len() / 2;
        for at in middle..spots.len() {
            across[at] = upright(across[at.saturating_sub(1).max(middle)], along(spots, at));
        }
        for at in (0..middle).rev() {
            across[at] = upright(across[at + 1], along(spots, at));
        }
        Self { spots: spots.to_vec(), across, body: None }
    }

    /// Stations all along it, no farther apart than the links of a line, with some that must be among them.
    fn stations(&self, must: [f64; 2]) -> Vec<f64> {
        let mut all: Vec<f64> = self.spots.iter().map(|spot| spot.station).chain(must).collect();
        sort_places(&mut all);
        let finer = all.windows(2).flat_map(|pair| {
            let (from, count) = (pair[0], super::chain::pieces(pair[1] - pair[0], LINK));
            let step = (pair[1] - from) / count.max(1) as f64;
            (0..count).map(move |at| from + step * at as f64)
        });
        finer.chain(all.last().copied()).collect()
    }

    /// A place, or the nearest at which a ball lies outside the body.
    fn outside(&self, at: Point3, radius: f64) -> Point3 {
        self.body.map_or(at, |skin| skin.outside(at, radius))
    }

    /// A place on the line; nothing beyond its ends.
    fn at(&self, station: f64) -> Option<Stand> {
        let (before, share) = stretch(&self.spots, station)?;
        let [from, to] = [&self.spots[before], &self.spots[before + 1]];
        let along = along(&self.spots, before).between(along(&self.spots, before + 1), share).unit()?;
        let across = upright(self.across[before].between(self.across[before + 1], share), along);
        Some(Stand { at: from.at.between(to.at, share), along, across, hidden: from.hidden && to.hidden })
    }
}

/// The direction of a line at one of its spots: from the spot before to the one after.
fn along(spots: &[Waypoint], at: usize) -> Point3 {
    let after = (at + 1).min(spots.len() - 1);
    (spots[after].at - spots[at.saturating_sub(1)].at).unit().unwrap_or(Point3::new(1.0, 0.0, 0.0))
}

/// A vector as it stands upright on a direction, one long.
fn upright(vector: Point3, along: Point3) -> Point3 {
    (vector - along * vector.dot(along)).unit().unwrap_or(Point3::new(0.0, 0.0, 1.0))
}

/// How a strand goes round the line.
#[derive(Clone, Copy)]
struct Winding {
    lay: Lay,
    turns: f64,
    /// Of the strand, and of the line.
    lengths: [f64; 2],
    /// How far from the line it lies, loose as it is.
    loose: f64,
    /// Half as wide as its widest bead.
    wide: f64,
    /// How far from either end it goes out from the line, and where it begins to stand out loose.
    gathers: f64,
    covered: f64,
}

impl Winding {
    fn new(design: &Design, twist: &Twist, at: Index<Strand>) -> Self {
        let lay = *twist.lay(at);
        Self {
            lay,
            turns: twist.turns,
            lengths: [design.strands[at].finished.value(), twist.length().value()],
            loose: twist.aside(at),
            wide: 0.5 * widest(design, at),
            gathers: twist.thickness().value(),
            covered: contact::covered(design),
        }
    }

    /// How far from the line it is at a distance from the nearer end.
    fn aside(&self, from_end: f64) -> f64 {
        let rising = |from: f64| {
            let share = ((from_end - from) / self.gathers).clamp(0.0, 1.0);
            share * share * (3.0 - 2.0 * share)
        };
        self.lay.radius * rising(0.0) + (self.loose - self.lay.radius) * rising(self.covered)
    }

    /// A place on the strand, by its place on the line: in the closure, beyond its ends, on the line.
    fn at(&self, axis: &Axis, on_line: f64) -> Option<Waypoint> {
        let line = self.lengths[1];
        let stand = axis.at(on_line)?;
        let out = self.aside(on_line.min(line - on_line));
        let (sine, cosine) = libm::sincos(self.lay.start + TAU * self.turns * on_line / line);
        let aside = stand.across * cosine + stand.along.cross(stand.across) * sine;
        let at = axis.outside(stand.at + aside * out, self.wide);
        Some(Waypoint { station: on_line, at, hidden: stand.hidden })
    }

    /// The strand's way round a line: stations are the strand's own, spread evenly along its way.
    fn way(&self, axis: &Axis) -> Vec<Waypoint> {
        let [own, line] = self.lengths;
        let mut way: Vec<Waypoint> =
            axis.stations([0.0, line]).into_iter().filter_map(|station| self.at(axis, station)).collect();
        let closing = way.partition_point(|spot| spot.station <= line + SAME);
        way[closing..].iter_mut().for_each(|spot| spot.station += own - line);
        let strung = &mut way[..closing];
        let first = strung.partition_point(|spot| spot.station < -SAME);
        let strung = &mut strung[first..];
        let places: Vec<Point3> = strung.iter().map(|spot| spot.at).collect();
        let gone = super::hang::stations(places.windows(2).map(|pair| pair[0].distance(pair[1])));
        let share = own / gone.last().copied().unwrap_or_default();
        strung.iter_mut().zip(gone).for_each(|(spot, gone)| spot.station = gone * share);
        way
    }
}

/// A strand in its chain's links, and its way round the line.
struct LaidStrand<'a> {
    strand: &'a Strand,
    chain: &'a Chain,
    way: Vec<Waypoint>,
}

impl LaidStrand<'_> {
    /// The strand round the line, in no tension.
    fn laid(&self, starts: Vec<f64>) -> Hung {
        let stations = self.chain.stations();
        let joint = |station: &f64| Some(Joint { station: *station, at: self.at(*station)?.front() });
        let joints: Vec<_> = stations.iter().filter_map(joint).collect();
        let ends = [joints.first(), joints.last()].map(|joint| joint.map_or(Point::ORIGIN, |joint| joint.at));
        let seats = stations.iter().zip(&self.chain.pieces).filter_map(|(from, piece)| self.seat(*from, *piece));
        Hung::placed(ends, joints, seats.collect(), starts)
    }

    fn at(&self, station: f64) -> Option<Point3> {
        Some(on_way(&self.way, station)?.0)
    }

    /// Where a bit sits whose link starts at a station.
    fn seat(&self, from: f64, piece: Content) -> Option<Seat> {
        let Content::Bit(train, index) = piece else { return None };
        let bit = &self.strand.trains[train].bits[index];
        let station = from + bit.before;
        let [at, before, after] = [station, from, from + bit.length()].map(|station| self.at(station));
        let (at, along) = (at?, (after? - before?).unit()?);
        (bit.what != What::Gap).then(|| Seat {
            train,
            bit: index,
            station,
            centre: at.front(),
            angle: along.front().angle(),
            near: at.z,
            toward: along.z,
            down: Point3::DOWN,
        })
    }
}

#[cfg(test)]
mod tests;
