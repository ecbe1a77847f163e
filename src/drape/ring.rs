//! Strands closed to rings round a wrist or ankle, see [`taut`](crate::geometry::taut).
//!
//! The links of a strand as it lies straight, and the closure's, hooked up as short and as long as it goes:
//! one more rigid link for each part, except that chain is as many links as it has. Of a piece that goes round several
//! times see [`wound`](crate::geometry::wound).

use std::f64::consts::{FRAC_PI_2, PI};

use super::chain::{Chain, Content};
use super::hang::Link;
use super::{Coil, Hung, Joint, Ring, Seat, Tension, Waypoint, hang_alone, sort_places};
use crate::design::{Design, Index, Part, Spring, Strand, What, closing_parts};
use crate::geometry::chord::Chord;
use crate::geometry::taut::Taut;
use crate::geometry::wound::{Wound, wind};
use crate::geometry::{Point, Point3};
use crate::units::Length;

/// The rings that a design's strands make, each with the closure; `chains` and `hung` are its strands laid
/// straight. Strands that make none are passed over.
#[must_use]
pub fn rings(design: &Design, chains: &[Chain], hung: &[Hung]) -> Vec<Ring> {
    let laid = design.strands.indices().zip(chains.iter().zip(hung));
    laid.filter_map(|(strand, (chain, hung))| of(design, strand, chain, hung)).collect()
}

/// The girth inside a closed ring, hooked as short and as long as it goes; of several strands, the tightest one's.
#[must_use]
pub fn inside(design: &Design) -> Option<[Length; 2]> {
    let drape = design.is_ring().then(|| hang_alone(design, None))?.ok()?;
    drape.ring().map(|ring| [ring.inside_girth, ring.longest_girth].map(Length::mm))
}

/// The ring of one strand with the closure, of which the last end's side comes first.
fn of(design: &Design, index: Index<Strand>, chain: &Chain, hung: &Hung) -> Option<Ring> {
    let strand = &design.strands[index];
    if let Some(spring) = design.spring() {
        return Some(sprung(design, index, &spring, hung));
    }
    let links = chain.links.len();
    let pitch = design.stock().breadth(strand.bits(), strand.cord_width(design).value());
    let wound = |chords: &[Chord]| wind(chords, links, design.rounds(), pitch);
    let chain = &taken_up(chain, strand, |chain| wound(&closed(design, strand, chain, |part| part.least)));
    let chords = closed(design, strand, chain, |part| part.least);
    let wound_short = wound(&chords)?;
    let longest = wound(&closed(design, strand, chain, |part| part.reach));
    let inside_girth = wound_short.taut.girth();
    let longest_girth = longest.map_or(inside_girth, |longest| longest.taut.girth());
    let foot = if design.meeting().is_some() || design.rounds() > 1 { Lowest::Ends } else { Lowest::Middle };
    let way = TurnedRow::new(&chords, &wound_short.taut, links, foot);
    let closing = way.joints[links..].to_vec();
    let coil = (design.rounds() > 1).then(|| Coil {
        turns: f64::from(design.rounds()),
        pitch,
        way: way.in_space(&chords, &wound_short),
    });
    let round = way.round(strand, &chords, chain, hung);
    Some(Ring { strand: index, inside_girth, longest_girth, round, closing, coil })
}

/// What closes round a limb as one.
pub(super) struct Girdle {
    /// Girth inside it, hooked as short and as long as it goes.
    pub inside: [f64; 2],
    /// Its middle line on its way round, anticlockwise, hooked as short as it goes.
    pub line: Vec<Waypoint>,
    /// The closure's joints, as those of a [`Ring`].
    pub closing: Vec<Point>,
}

/// A rope of a length and thickness that bends freely, closed with the closure.
pub(super) fn rope(design: &Design, length: Length, thickness: Length) -> Option<Girdle> {
    let size = [length.value(), thickness.value()];
    let wound = |hook| {
        let (chords, links) = design.stock().rope(&design.closure, size, hook);
        Some((wind(&chords, links, 1, size[1])?.taut, chords, links))
    };
    let (taut, chords, links) = wound(|part: &Part| part.least)?;
    let longest = wound(|part: &Part| part.reach).map_or(taut.girth(), |(taut, ..)| taut.girth());
    let way = TurnedRow::new(&chords, &taut, links, Lowest::Middle);
    let step = size[0] / links as f64;
    let spot = |(at, joint): (usize, &Point)| Waypoint {
        station: at as f64 * step,
        at: Point3::new(joint.x, joint.y, 0.0),
        hidden: false,
    };
    Some(Girdle {
        inside: [taut.girth(), longest],
        line: way.joints[..=links].iter().enumerate().map(spot).collect(),
        closing: way.joints[links..].to_vec(),
    })
}

/// A straight chain with as much less bare cord as its beads take up when it is wound.
fn taken_up(chain: &Chain, strand: &Strand, wound: impl Fn(&Chain) -> Option<Wound>) -> Chain {
    let is_bare = |piece: &Content| piece.is_bare(strand);
    let mut chain = chain.clone();
    let bare: f64 =
        chain.links.iter().zip(&chain.pieces).filter(|(_, piece)| is_bare(piece)).map(|(link, _)| link.length).sum();
    if bare > 0.0
        && let Some(wound) = wound(&chain)
    {
        let left = 1.0 - (wound.taut.slack / bare).min(1.0);
        let links = chain.links.iter_mut().zip(&chain.pieces).filter(|(_, piece)| is_bare(piece));
        links.for_each(|(link, _)| link.length *= left);
    }
    chain
}

/// Angle in radians at which the first end of memory wire lies: in front, a little to the left.
const FIRST: f64 = -FRAC_PI_2 - 0.5;

/// A strand on memory wire, as it lies round its wearer.
fn sprung(design: &Design, index: Index<Strand>, spring: &Spring, laid: &Hung) -> Ring {
    let length = design.strands[index].finished.value();
    let all = places_of(laid);
    let front = |station: f64| on_coil(spring, station).at.front();
    let along = |station: f64| angle_on(spring, station) + FRAC_PI_2;
    let seat = |seat: &Seat| Seat { centre: front(seat.station), angle: along(seat.station), ..*seat };
    let coil = Coil {
        turns: spring.helix.turns(length),
        pitch: spring.helix.rise,
        way: all.iter().map(|station| on_coil(spring, *station)).collect(),
    };
    let round = Hung {
        ends: [front(0.0), front(length)],
        joints: all.iter().map(|station| Joint { station: *station, at: front(*station) }).collect(),
        seats: laid.seats.iter().map(seat).collect(),
        tension: Tension::default(),
        drop: 0.0,
        ..laid.clone()
    };
    let inside = spring.inside();
    Ring { strand: index, inside_girth: inside, longest_girth: inside, round, closing: Vec::new(), coil: Some(coil) }
}

/// The stations of joints, of the middles between them, and of seats, in order.
fn places_of(laid: &Hung) -> Vec<f64> {
    let stations = laid.joints.iter().map(|joint| joint.station);
    let middles = laid.joints.windows(2).map(|pair| pair[0].station.midpoint(pair[1].station));
    let mut all: Vec<_> = stations.chain(middles).chain(laid.seats.iter().map(|seat| seat.station)).collect();
    sort_places(&mut all);
    all
}

/// The angle round its wearer at a station of memory wire.
fn angle_on(spring: &Spring, station: f64) -> f64 {
    FIRST + 2.0 * PI * station / spring.helix.turn()
}

/// Where memory wire lies at a station.
fn on_coil(spring: &Spring, station: f64) -> Waypoint {
    let around = spring.helix.at(angle_on(spring, station));
    let at = Point3::new(around.x, around.y, spring.helix.rise * station / spring.helix.turn());
    Waypoint { station, at, hidden: false }
}

/// A strand's chords and those of the closure, each of whose parts is hooked up so long.
fn closed(design: &Design, strand: &Strand, chain: &Chain, hook: fn(&Part) -> Length) -> Vec<Chord> {
    let hooked = closing_parts(&design.closure).flat_map(|part| design.stock().hooked(part, hook(part)));
    strung(design, strand, chain).into_iter().chain(hooked).collect()
}

fn strung(design: &Design, strand: &Strand, chain: &Chain) -> Vec<Chord> {
    let (stock, cord) = (design.stock(), strand.cord_width(design).value());
    let reach = stock.of_ends(&strand.ends, cord);
    let chord = |(link, piece): (&Link, &Content)| match *piece {
        Content::Bit(train, bit) => {
            let bit = &strand.trains[train].bits[bit];
            let chord = stock.chord(bit, cord);
            if bit.what == What::Gap { Chord::even(link.length, chord.inward) } else { chord }
        }
        Content::Cord => Chord::even(link.length, 0.5 * cord),
        Content::End => Chord::even(link.length, reach),
    };
    chain.links.iter().zip(&chain.pieces).map(chord).collect()
}

/// What of a closed row lies at the foot.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Lowest {
    /// The middle of its strand.
    Middle,
    /// Its ends, where something hangs from them, or where they meet across the turns.
    Ends,
}

/// A closed row turned so that its foot is where it is asked for.
struct TurnedRow {
    /// One a chord.
    centres: Vec<Point>,
    /// Before the first chord and after each, where the row goes on into the next.
    joints: Vec<Point>,
    /// The angle in radians of each chord's axis.
    axes: Vec<f64>,
}

impl TurnedRow {
    /// `links` is how many of the chords are the strand's; the others are the closure's.
    fn new(chords: &[Chord], taut: &Taut, links: usize, foot: Lowest) -> Self {
        let count = chords.len();
        let joint = |at: usize| {
            let (last, next) = ((at + count - 1) % count, at % count);
            let step = chords[last].after + chords[next].before;
            let share = if step > 0.0 { chords[last].after / step } else { 0.5 };
            taut.centres[last].between(taut.centres[next], share)
        };
        let (first, last) = (joint(0).angle(), joint(links).angle());
        let span = if links == count { 2.0 * PI } else { (last - first).rem_euclid(2.0 * PI) };
        let foot = match foot {
            // Halfway through the closure; of ends that are tied, the ends.
            Lowest::Ends => first - 0.5 * (2.0 * PI - span),
            Lowest::Middle => first + 0.5 * span,
        };
        let turn = -FRAC_PI_2 - foot;
        Self {
            centres: taut.centres.iter().map(|at| at.turned(turn)).collect(),
            joints: (0..=count).map(|at| joint(at).turned(turn)).collect(),
            axes: taut.axes.iter().map(|axis| axis + turn).collect(),
        }
    }

    /// The way in space of a row that is wound: its joints and, between them, the centres of its chords.
    fn in_space(&self, chords: &[Chord], wound: &Wound) -> Vec<Waypoint> {
        let spot = |station: f64, at: Point| {
            let out = 1.0 + wound.climb.lift(station) / at.length().max(f64::MIN_POSITIVE);
            let at = Point3::new(at.x * out, at.y * out, wound.climb.height(station));
            Waypoint { station, at, hidden: false }
        };
        let mut station = 0.0;
        let mut way = vec![spot(0.0, self.joints[0])];
        for ((chord, centre), joint) in chords.iter().zip(&self.centres).zip(&self.joints[1..]) {
            way.push(spot(station + chord.before, *centre));
            station += chord.before + chord.after;
            way.push(spot(station, *joint));
        }
        way
    }

    /// A strand that lies straight put on this way, its cord through the centres of its links.
    fn round(&self, strand: &Strand, chords: &[Chord], chain: &Chain, laid: &Hung) -> Hung {
        let links = chain.links.len();
        let ends = [self.joints[0], self.joints[links]];
        let stations = laid.joints.iter().zip(chords).map(|(joint, chord)| joint.station + chord.before).take(links);
        let centres = stations.zip(&self.centres).map(|(station, at)| Joint { station, at: *at });
        let [first, last] =
            [(0.0, ends[0]), (strand.finished.value(), ends[1])].map(|(station, at)| Joint { station, at });
        let is_seat = |piece: &Content| matches!(*piece, Content::Bit(train, bit) if strand.trains[train].bits[bit].what != What::Gap);
        let seated = chain.pieces.iter().enumerate().filter(|(_, piece)| is_seat(piece));
        let seat = |(seat, (at, _)): (&Seat, (usize, &Content))| Seat {
            centre: self.centres[at],
            angle: self.axes[at],
            ..*seat
        };
        Hung {
            ends,
            joints: std::iter::once(first).chain(centres).chain([last]).collect(),
            seats: laid.seats.iter().zip(seated).map(seat).collect(),
            tension: Tension::default(),
            drop: 0.0,
            ..laid.clone()
        }
    }
}
