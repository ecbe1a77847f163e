//! Strands on the neck, or laid closed: each bead seated by its station along the way that its strand takes round the neck and
//! over the chest, as that is seen from the front.
//!
//! The frame is that of [`crate::drape::Worn`], looked at along z. What the body hides is not drawn: of each strand
//! what is seen is the stretch that holds its lowest place; of one whose ends are in front, both sides of the neck.

use crate::design::{Design, Entries, Part, Strand, What};
use crate::drape::{Hung, Joint, Seat, Waypoint, Worn, on_way};
use crate::geometry::Point3;
use crate::pattern::FindingKind;
use crate::piece::Piece;
use crate::units::Length;

use super::Canvas;
use super::side::{ClosureWay, Layers};

/// The way that a strand takes in front, from one side of the neck to the other.
pub struct Track {
    /// Places with their stations: less than nothing or more than the strand's length where the closure reaches
    /// to the front.
    spots: Vec<Waypoint>,
    /// Between which stations it is not seen, where both its ends are.
    unseen: Option<[f64; 2]>,
}

impl Track {
    /// The tracks of strands that take these ways; none where a strand does not reach round.
    pub fn all(lines: &Entries<Vec<Waypoint>, Strand>) -> Entries<Option<Self>, Strand> {
        lines.iter().map(|line| Self::new(line)).collect()
    }

    fn new(line: &[Waypoint]) -> Option<Self> {
        let in_sight = line.chunk_by(|one, other| one.hidden == other.hidden).filter(|run| !run[0].hidden);
        if let ([first, .., last], [one, .., other]) = (line, in_sight.clone().collect::<Vec<_>>().as_slice())
            && !first.hidden
            && !last.hidden
        {
            let unseen = Some([one[one.len() - 1].station, other[0].station]);
            return Some(Self { spots: [*one, *other].concat(), unseen });
        }
        let lowest = |run: &&[Waypoint]| run.iter().map(|spot| spot.at.y).fold(f64::INFINITY, f64::min);
        let run = in_sight.min_by(|one, other| lowest(one).total_cmp(&lowest(other)))?;
        (run.len() > 1).then(|| Self { spots: run.to_vec(), unseen: None })
    }

    /// The places in order, with their stations.
    pub fn spots(&self) -> &[Waypoint] {
        &self.spots
    }

    /// Where the strand is at a station, and the unit vector along it; nothing where it is not seen.
    fn at(&self, station: f64) -> Option<(Point3, Point3)> {
        let seen = self.unseen.is_none_or(|[from, to]| station <= from || station >= to);
        seen.then(|| on_way(&self.spots, station))?
    }

    /// A hung strand laid along the track, as far as it is seen.
    fn worn(&self, strand: &Strand, hung: &Hung) -> Option<Hung> {
        let seat = |seat: &Seat| {
            let (place, along) = self.at(seat.station)?;
            let angle = along.front().angle();
            Some(Seat { centre: place.front(), angle, near: place.z, toward: along.z, ..*seat })
        };
        let joint = |spot: &Waypoint| Joint { station: spot.station, at: spot.at.front() };
        let end = |station: f64| Some(Joint { station, at: self.at(station)?.0.front() });
        let length = strand.finished.value();
        let inside = self.spots.iter().filter(|spot| (0.0..=length).contains(&spot.station)).map(joint);
        let joints: Vec<_> = end(0.0).into_iter().chain(inside).chain(end(length)).collect();
        let ends = [joints.first()?.at, joints.last()?.at];
        Some(Hung {
            ends,
            joints,
            seats: hung.seats.iter().filter_map(seat).collect(),
            unseen: self.unseen,
            ..hung.clone()
        })
    }
}

/// The strands of a piece as they are worn, each branch as it lies on the body.
pub fn on_neck(piece: &Piece, worn: &Worn, tracks: &Entries<Option<Track>, Strand>) -> Entries<Option<Hung>, Strand> {
    let mut laid = on_tracks(piece, tracks);
    for (strand, hung) in piece.design.strands.iter().zip(laid.iter_mut()) {
        for seat in hung.iter_mut().flat_map(|hung| &mut hung.seats) {
            if let What::Dangle(dangle) = &strand.trains[seat.train].bits[seat.bit].what {
                seat.down = worn.hanging(&piece.design, dangle, seat.below(0.0));
            }
        }
    }
    laid
}

/// The strands of a piece laid along their tracks.
pub fn on_tracks(piece: &Piece, tracks: &Entries<Option<Track>, Strand>) -> Entries<Option<Hung>, Strand> {
    let rows = tracks.iter().zip(piece.design.strands.iter().zip(&piece.drape.strands));
    rows.map(|(track, (strand, hung))| track.as_ref()?.worn(strand, hung)).collect()
}

/// What of the closure reaches round to the front, closed as it is worn.
pub fn closing_on(tracks: &Entries<Option<Track>, Strand>, canvas: Canvas<'_>) -> Layers {
    let design = canvas.design();
    let Some((Some(track), strand)) = tracks.first().zip(design.strands.first()) else {
        return Layers::default();
    };
    let (closure, length) = (&design.closure, strand.finished.value());
    let left = track.spots.iter().rev().filter(|spot| spot.station < 0.0);
    let right = track.spots.iter().filter(|spot| spot.station > length);
    let side = |start: f64, outer: Vec<&Waypoint>, parts: &[Part]| {
        let end = track.at(start)?.0.front();
        let line: Vec<_> = std::iter::once(end).chain(outer.iter().map(|spot| spot.at.front())).collect();
        let room = (outer.last()?.station - start).abs();
        Some((ClosureWay::from(line), in_front(parts, room, design)))
    };
    let first = side(0.0, left.collect(), closure.left()).unwrap_or_default();
    let last = side(length, right.collect(), closure.right()).unwrap_or_default();
    let passes = |spot: &&Waypoint| closure.goes_through() && (0.0..=length).contains(&spot.station);
    let strand: Vec<_> = track.spots.iter().filter(passes).map(|spot| spot.at.front()).collect();
    Layers::of([(&first.0, &first.1), (&last.0, &last.1)], &strand, canvas)
}

/// The parts of a closure's side of which something lies within so many mm of the strands' ends: a
/// chain as much of it, others only whole.
fn in_front(parts: &[Part], room: f64, design: &Design) -> Vec<Part> {
    let mut left = room;
    let mut seen = Vec::new();
    for part in parts {
        let is_chain = design.findings[part.finding].kind() == FindingKind::Chain;
        let reach = if is_chain { part.least.value().min(left) } else { part.least.value() };
        if reach > left || left <= 0.0 {
            break;
        }
        seen.push(Part { reach: Length::mm(reach), ..part.clone() });
        left -= reach;
    }
    seen
}
