//! Strands twisted round one line.
//!
//! **Problem.** How the strands of a torsade hang, lie on the neck, or close round a limb, all of them together.
//!
//! **Method.** The line round which they lie hangs, and is worn, as one strand as long as the twisted piece, with the
//! weight of all strands spread over it, and as thick as they are together. Each strand is a helix round it ([`Twist`]), along
//! which it is spread evenly: where the line bends, strands slide past one another. Frames along the line do not turn about
//! it by themselves (each is the one before, set upright on the line).
//!
//! Round a limb the line is a ring of the twisted length, half as far out from the limb as the strands are thick together.
//!
//! **Trade-off.** The twist is even, right-handed, and nothing hinders the line in bending, its wire neither. Beads that slide stay in the middle of where they may be, since
//! the twist holds them. Within the breadth of the twisted strands from either end all gather in the line, and what is loose stands out beyond the cones. A strand
//! bears its share of the line's tension among those that are not loose, and is drawn so much harder as it runs aslant.

use std::f64::consts::TAU;

use super::chain::{Chain, Piece};
use super::hang::{Hanging, Link, Unhung, solve};
use super::{Closed, Drape, Hung, Joint, Ring, Seat, Spot, Tension, Worn, body, contact, ring, slide, sort_places};
use crate::design::{Design, Strand, Twist, What};
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
    let mut worn = worn.then(|| body::wear_as_one(design, &links, 0.5 * twist.thickness().value()));
    if let Some(worn) = &mut worn {
        twine(design, twist, worn);
    }
    let axis = Axis::new(&hung_line(&links, &hanging));
    let strands = design.strands.iter().zip(&chains).enumerate();
    let strands = strands.map(|(at, (strand, chain))| {
        let strung = Strung { strand, chain, way: Winding::new(design, twist, at).way(&axis) };
        let share = share(design, twist);
        let (first, lowest, last) = (hanging.first * share, hanging.lowest * share, hanging.last * share);
        let drop = 0.0 - hanging.joints.iter().map(|joint| joint.y).fold(0.0, f64::min);
        let (iterations, residual) = (hanging.iterations, hanging.residual);
        let tension = Tension { first, lowest, last };
        Hung { tension, drop, iterations, residual, ..strung.laid(slide::middles(strand)) }
    });
    let strands: Vec<_> = strands.collect();
    let rings = if design.is_ring() { rings(design, twist, &strands) } else { Vec::new() };
    Ok(Drape { span, strands, clearances: Vec::new(), presses: Vec::new(), unrest: None, worn, rings })
}

/// Twisted strands closed round a limb: their line is the ring of one strand as thick as they are together. `laid` are
/// they laid straight.
pub fn rings(design: &Design, twist: &Twist, laid: &[Hung]) -> Vec<Ring> {
    let Some(rope) = ring::rope(design, twist.length(), twist.thickness()) else { return Vec::new() };
    let axis = Axis::new(&rope.line);
    let of = |(at, (strand, laid)): (usize, (&Strand, &Hung))| {
        let chain = Chain::new(design, strand, &laid.starts);
        let strung = Strung { strand, chain: &chain, way: Winding::new(design, twist, at).way(&axis) };
        let [inside_girth, longest_girth] = rope.inside;
        let (round, closing) = (strung.laid(laid.starts.clone()), rope.closing.clone());
        Ring { strand: at, inside_girth, longest_girth, round, closing, coil: None }
    };
    design.strands.iter().zip(laid).enumerate().map(of).collect()
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

/// What of the line's tension a strand bears that is not loose.
fn share(design: &Design, twist: &Twist) -> f64 {
    let taut = (0..design.strands.len()).filter(|at| twist.slack(*at).is_none()).count();
    1.0 / (taut as f64 * libm::cos(twist.angle()))
}

/// The line as it hangs.
fn hung_line(links: &[Link], hanging: &Hanging) -> Vec<Spot> {
    let stations = super::hang::stations(links.iter().map(|link| link.length));
    let spot = |(station, at): (f64, &Point)| Spot { station, at: Point3::new(at.x, at.y, 0.0), hidden: false };
    stations.into_iter().zip(&hanging.joints).map(spot).collect()
}

/// The line on the neck made the strands that lie round it; all hang as low as it does.
fn twine(design: &Design, twist: &Twist, worn: &mut Worn) {
    let drop = worn.drops.first().copied().unwrap_or_default();
    worn.lines = wound(design, twist, worn.lines.first().map_or(&[], Vec::as_slice));
    worn.drops = vec![drop; design.strands.len()];
}

/// The ways of the strands round a line.
fn wound(design: &Design, twist: &Twist, line: &[Spot]) -> Vec<Vec<Spot>> {
    let axis = Axis::new(line);
    (0..design.strands.len()).map(|at| Winding::new(design, twist, at).way(&axis)).collect()
}

/// Twisted strands laid closed; nothing of what does not close behind a neck.
pub fn closed(design: &Design, twist: &Twist) -> Option<Closed> {
    let links = line(&chains(design), twist.length().value());
    let closed = body::closed_as_one(design, &links, 0.5 * twist.thickness().value())?;
    Some(Closed { lines: wound(design, twist, closed.lines.first()?), ..closed })
}

/// A line with a frame at each of its spots.
struct Axis {
    spots: Vec<Spot>,
    /// Unit vectors across the line.
    across: Vec<Point3>,
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
    fn new(spots: &[Spot]) -> Self {
        let mut across = vec![Point3::new(0.0, 0.0, 1.0); spots.len()];
        let middle = spots.len() / 2;
        for at in middle..spots.len() {
            across[at] = upright(across[at.saturating_sub(1).max(middle)], along(spots, at));
        }
        for at in (0..middle).rev() {
            across[at] = upright(across[at + 1], along(spots, at));
        }
        Self { spots: spots.to_vec(), across }
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

    /// A place on the line; nothing beyond its ends.
    fn at(&self, station: f64) -> Option<Stand> {
        let next = self.spots.partition_point(|spot| spot.station <= station).clamp(1, self.spots.len().max(2) - 1);
        let (from, to) = (self.spots.get(next - 1)?, self.spots.get(next)?);
        let share = (station - from.station) / (to.station - from.station);
        (-1e-6..=1.0 + 1e-6).contains(&share).then_some(())?;
        let along = along(&self.spots, next - 1).between(along(&self.spots, next), share).unit()?;
        let across = upright(self.across[next - 1].between(self.across[next], share), along);
        Some(Stand { at: from.at.between(to.at, share), along, across, hidden: from.hidden && to.hidden })
    }
}

/// The direction of a line at one of its spots: from the spot before to the one after.
fn along(spots: &[Spot], at: usize) -> Point3 {
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
    /// How far from either end it goes out from the line, and where it begins to stand out loose.
    gathers: f64,
    covered: f64,
}

impl Winding {
    fn new(design: &Design, twist: &Twist, at: usize) -> Self {
        let lay = twist.lays()[at];
        Self {
            lay,
            turns: twist.turns,
            lengths: [design.strands[at].finished.value(), twist.length().value()],
            loose: twist.aside(at).unwrap_or(lay.radius),
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
    fn at(&self, axis: &Axis, on_line: f64) -> Option<Spot> {
        let line = self.lengths[1];
        let stand = axis.at(on_line)?;
        let out = self.aside(on_line.min(line - on_line));
        let (sine, cosine) = libm::sincos(self.lay.start + TAU * self.turns * on_line / line);
        let aside = stand.across * cosine + stand.along.cross(stand.across) * sine;
        Some(Spot { station: on_line, at: stand.at + aside * out, hidden: stand.hidden })
    }

    /// The strand's way round a line: stations are the strand's own, spread evenly along its way.
    fn way(&self, axis: &Axis) -> Vec<Spot> {
        let [own, line] = self.lengths;
        let mut way: Vec<Spot> =
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

/// Where a way is at a station, which lies between its ends.
fn on(way: &[Spot], station: f64) -> Option<Point3> {
    let next = way.partition_point(|spot| spot.station <= station).clamp(1, way.len().max(2) - 1);
    let (from, to) = (way.get(next - 1)?, way.get(next)?);
    Some(from.at.between(to.at, (station - from.station) / (to.station - from.station)))
}

/// A strand in its chain's links, and its way round the line.
struct Strung<'a> {
    strand: &'a Strand,
    chain: &'a Chain,
    way: Vec<Spot>,
}

impl Strung<'_> {
    /// The strand round the line, in no tension.
    fn laid(&self, starts: Vec<f64>) -> Hung {
        let stations = self.chain.stations();
        let joint = |station: &f64| Some(Joint { station: *station, at: on(&self.way, *station)?.front() });
        let joints: Vec<_> = stations.iter().filter_map(joint).collect();
        let ends = [joints.first(), joints.last()].map(|joint| joint.map_or(Point::ORIGIN, |joint| joint.at));
        let seats = stations.iter().zip(&self.chain.pieces).filter_map(|(from, piece)| self.seat(*from, *piece));
        Hung {
            ends,
            seats: seats.collect(),
            joints,
            starts,
            tension: Tension::default(),
            drop: 0.0,
            iterations: 0,
            residual: 0.0,
            unseen: None,
        }
    }

    /// Where a bit sits whose link starts at a station.
    fn seat(&self, from: f64, piece: Piece) -> Option<Seat> {
        let Piece::Bit(train, index) = piece else { return None };
        let bit = &self.strand.trains[train].bits[index];
        let station = from + bit.before;
        let [at, before, after] = [station, from, from + bit.length()].map(|station| on(&self.way, station));
        let (at, along) = (at?, (after? - before?).unit()?);
        (bit.what != What::Gap).then(|| Seat {
            train,
            bit: index,
            station,
            centre: at.front(),
            angle: along.front().angle(),
            near: at.z,
            toward: along.z,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Choice;
    use crate::source::Source;

    const HAWSER: &str = include_str!("../../patterns/hawser.yaml");

    fn design(text: &str) -> Design {
        crate::piece(&Source::new("hawser", text), &Choice::default(), None).0.unwrap().design
    }

    /// The line from two points and the ways of strands round it.
    fn hung(design: &Design) -> (Vec<Link>, Hanging, Axis) {
        let links = line(&chains(design), design.twist.as_ref().unwrap().length().value());
        let hanging = solve(&links, Point::new(128.0, 0.0)).unwrap();
        let axis = Axis::new(&hung_line(&links, &hanging));
        (links, hanging, axis)
    }

    /// Where a strand is from one end of the line to the other, a millimetre from place to place.
    fn places(design: &Design, at: usize, axis: &Axis) -> Vec<Point3> {
        let way = Winding::new(design, design.twist.as_ref().unwrap(), at).way(axis);
        let stations = (0..).map(f64::from).take_while(|station| *station < design.strands[at].finished.value());
        stations.filter_map(|station| on(&way, station)).collect()
    }

    /// Hawser's strands, shorter, round a wrist, with hardly any closure.
    fn bracelet() -> crate::Piece {
        let closure = "closure: { each side: [eye, cone], left: [{ links: 50 mm }], right: [hook] }";
        assert!(HAWSER.contains(closure));
        let text = HAWSER
            .replace(closure, "closure: { each side: [small] }")
            .replace("findings:\n", "findings:\n  small: { kind: jump ring, inside: 1.6 mm, wire: 0.4 mm }\n")
            .replace("kind: necklace", "kind: bracelet")
            .replace("twist: 9", "twist: 4")
            .replace("440 mm", "172 mm")
            .replace("neck base: 370 mm", "wrist: 160 mm");
        crate::piece(&Source::new("hawser", &text), &Choice::default(), None).0.unwrap()
    }

    /// By pencil: the line goes round a circle that is as far out of the limb as half of what the strands are thick together.
    /// The closure of two rings of 2 mm lies a little nearer to the limb.
    #[test]
    fn round_a_limb_the_twisted_length_and_thickness_count() {
        let piece = bracelet();
        let (design, ring) = (&piece.design, piece.drape.ring().unwrap());
        let twist = design.twist.as_ref().unwrap();
        let round = twist.length().value() + design.closure_length().0.value();
        let inside = round - 0.5 * TAU * twist.thickness().value();
        assert!((0.0..0.5).contains(&(ring.inside_girth - inside)), "{} is not {inside}", ring.inside_girth);
        assert!(piece.drape.worn.is_none() && piece.drape.rings.len() == 3);
        let told = piece.drape.rings.iter().all(|other| other.inside_girth == ring.inside_girth);
        assert!(told, "each strand's ring is that of all");
    }

    #[test]
    fn round_a_limb_strands_lie_beside_one_another_and_outside_of_it() {
        let piece = bracelet();
        let limb = piece.drape.ring().unwrap().inside_girth / TAU;
        let space = |seat: &Seat| Point3::new(seat.centre.x, seat.centre.y, seat.near);
        for (at, ring) in piece.drape.rings.iter().enumerate() {
            let others =
                || piece.drape.rings.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, other)| other);
            let seats = &ring.round.seats;
            for seat in &seats[8..seats.len() - 8] {
                // Half a bead of 3.3 mm, the widest way across of what is 6.7 mm thick.
                assert!(libm::hypot(seat.centre.x, seat.centre.y) > limb + 1.5, "{seat:?} in a limb of {limb}");
                let near =
                    others().flat_map(|other| &other.round.seats).map(|other| space(other).distance(space(seat)));
                let least = near.fold(f64::INFINITY, f64::min);
                assert!(least > 3.0, "{least}");
            }
            let gone: f64 = ring.round.joints.windows(2).map(|pair| pair[1].station - pair[0].station).sum();
            let whole = piece.design.strands[at].finished.value();
            assert!((gone - whole).abs() < 1e-6, "{gone} of {whole}");
        }
    }

    /// A strand that is longer than it need be is wound farther than it is long.
    #[test]
    fn stations_rise_along_a_slack_strand_and_the_closure() {
        let text = "festoon: 1\ntitle: t\nkind: necklace\ntwist: 1\nbeads:
  pin: { shape: seed, size: 15/0, material: glass, colour: '#d9b98a' }
  pea: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
cords: { wire: { kind: wire, diameter: 0.4 mm, mass: 0.6 g/m } }
findings:
  ring: { kind: jump ring, inside: 4 mm, wire: 1 mm }
  crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }
strands:
  - { name: tight, cord: wire, ends: crimp, length: 289 mm, beads: [{ repeat: fill, of: [pin] }], settle: fill }
  - { name: loose, cord: wire, ends: crimp, length: 308 mm, beads: [{ repeat: fill, of: [pea] }], settle: fill }
closure: { each side: [ring] }
";
        let piece = crate::piece(&Source::new("t", text), &Choice::default(), None).0.unwrap();
        let closed = super::super::lay_closed(&piece.design, &piece.drape).unwrap();
        let half = 0.5 * piece.design.closure_length().0.value();
        for (strand, line) in piece.design.strands.iter().zip(&closed.lines) {
            assert!(line.windows(2).all(|pair| pair[0].station <= pair[1].station), "{}", strand.name);
            let (first, last) = (line[0].station, line[line.len() - 1].station);
            assert!((first + half).abs() < 1e-6 && (last - strand.finished.value() - half).abs() < 1e-6);
        }
    }

    #[test]
    fn a_strand_is_as_long_in_the_twist_as_it_is_straight() {
        let design = design(HAWSER);
        let (.., axis) = hung(&design);
        for at in 0..3 {
            let places = places(&design, at, &axis);
            let long: f64 = places.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
            assert!(places.windows(2).all(|pair| (pair[0].distance(pair[1]) - 1.0).abs() < 0.01));
            // Less by what it gathers at both ends.
            let whole = (places.len() - 1) as f64;
            assert!((long - whole).abs() < 0.004 * whole, "{long}, {whole}");
        }
    }

    #[test]
    fn strands_lie_beside_one_another_all_along_the_line() {
        let design = design(HAWSER);
        let (.., axis) = hung(&design);
        let all: Vec<_> = (0..3).map(|at| places(&design, at, &axis)).collect();
        for (one, other) in [(0, 1), (1, 2), (2, 0)] {
            let near = |place: &Point3| all[other].iter().map(|at| at.distance(*place)).fold(f64::INFINITY, f64::min);
            let least = all[one][20..all[one].len() - 20].iter().map(near).fold(f64::INFINITY, f64::min);
            // Beads of 3.3 and 4 mm: tubes of 3.2 mm or so with the bare cord at both ends.
            assert!(least > 3.1 && least < 3.5, "{least}");
        }
    }

    #[test]
    fn the_line_weighs_what_the_strands_do() {
        let design = design(HAWSER);
        let (links, hanging, _) = hung(&design);
        let grams: f64 = design.strands.iter().map(|strand| strand.mass(&design).value()).sum();
        let weight: f64 = links.iter().map(|link| link.weight).sum();
        assert!((weight - grams * crate::units::NEWTON_PER_GRAM).abs() < 1e-3 * weight, "{weight}");
        // Evenly strung, it hangs as a catenary: of a length over a span sinh(x) / x is the ratio, and the least tension
        // is the weight of a span over 2x of it (textbook). Its ends weigh a little less.
        let ratio = links.iter().map(|link| link.length).sum::<f64>() / 128.0;
        let (mut low, mut high): (f64, f64) = (1e-3, 20.0);
        for _ in 0..60 {
            let middle = low.midpoint(high);
            *if libm::sinh(middle) / middle < ratio { &mut low } else { &mut high } = middle;
        }
        let least = weight / (2.0 * ratio * low);
        assert!((hanging.lowest - least).abs() < 0.02 * least, "{}, {least}", hanging.lowest);
    }

    #[test]
    fn on_the_neck_strands_lie_round_the_line_outside_the_body() {
        let piece = crate::piece(&Source::new("hawser", HAWSER), &Choice::default(), None).0.unwrap();
        let worn = piece.drape.worn.unwrap();
        assert_eq!(worn.unrest, None);
        for line in &worn.lines {
            // Their outlines, half a bead wide, no more than half a millimetre in.
            let into = |spot: &Spot| worn.skin.outside(spot.at, 1.1).distance(spot.at);
            assert!(line.iter().map(into).fold(0.0, f64::max) < 0.01);
        }
    }
}
