//! Strands on the neck: each bead seated by its station along the line that its strand takes round the
//! neck and over the chest.
//!
//! The frame is that of [`crate::drape::Worn`]: seen from the front, in mm, y up from the line between
//! the neck's sides. What lies behind the neck is not drawn. Slight approximation: beads keep their round
//! outline, though the chest leans back from us.

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Design, Part, Strand};
use crate::drape::{Hung, Joint, Seat, Worn};
use crate::geometry::Point;
use crate::paint::mark::Mark;
use crate::pattern::FindingKind;
use crate::units::Length;

use super::{Frame, side};

/// The way that a strand takes in front, from one side of the neck to the other.
pub struct Track {
    /// Points seen from the front, with their stations: less than nothing or more than the strand's
    /// length where the closure reaches to the front.
    points: Vec<Joint>,
}

impl Track {
    /// The strands' tracks, one a strand, without what hides behind something; none where a strand does not
    /// reach round.
    pub fn all(worn: &Worn, hides: impl Fn(Point) -> bool) -> Vec<Option<Self>> {
        worn.lines.iter().map(|line| Self::new(line, worn, &hides)).collect()
    }

    /// Measures a line over the chest from the station at which it comes round the neck's side.
    fn new(line: &[Point], worn: &Worn, hides: &dyn Fn(Point) -> bool) -> Option<Self> {
        let points = measured(line, worn.behind, worn.tilt).into_iter().filter(|joint| !hides(joint.at));
        let points: Vec<_> = points.collect();
        (points.len() > 1).then_some(Self { points })
    }

    /// The points in order, with their stations.
    pub fn points(&self) -> &[Joint] {
        &self.points
    }

    /// Where the strand is at a station, and the direction there; nothing where it is not seen.
    fn at(&self, station: f64) -> Option<(Point, f64)> {
        let next = self.points.partition_point(|joint| joint.station <= station);
        let (from, to) = (self.points.get(next.checked_sub(1)?)?, self.points.get(next)?);
        let share = (station - from.station) / (to.station - from.station);
        Some((from.at.between(to.at, share), (to.at - from.at).angle()))
    }

    /// A hung strand laid along the track, as far as it is seen.
    fn worn(&self, strand: &Strand, hung: &Hung) -> Option<Hung> {
        let seat = |seat: &Seat| {
            let (centre, angle) = self.at(seat.station)?;
            Some(Seat { centre, angle, ..*seat })
        };
        let end = |station: f64| Some(Joint { station, at: self.at(station)?.0 });
        let length = strand.finished.value();
        let inside = self.points.iter().filter(|joint| (0.0..=length).contains(&joint.station)).copied();
        let joints: Vec<_> = end(0.0).into_iter().chain(inside).chain(end(length)).collect();
        let ends = [joints.first()?.at, joints.last()?.at];
        Some(Hung { ends, joints, seats: hung.seats.iter().filter_map(seat).collect(), ..hung.clone() })
    }
}

/// The strands of a piece laid along their tracks, one a strand.
pub fn on_tracks(piece: &Piece, tracks: &[Option<Track>]) -> Vec<Option<Hung>> {
    let rows = tracks.iter().zip(piece.design.strands.iter().zip(&piece.drape.strands));
    rows.map(|(track, (strand, hung))| track.as_ref()?.worn(strand, hung)).collect()
}

/// What of the closure reaches round to the front, closed as short as it goes.
pub fn closing_on(tracks: &[Option<Track>], piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let Some((Some(track), strand)) = tracks.first().zip(piece.design.strands.first()) else {
        return Vec::new();
    };
    let closure = &piece.design.closure;
    let left = track.points.iter().rev().filter(|joint| joint.station < 0.0);
    let right = track.points.iter().filter(|joint| joint.station > strand.finished.value());
    let sides =
        [(0.0, left.collect::<Vec<_>>(), closure.left()), (strand.finished.value(), right.collect(), closure.right())];
    let side = |(start, outer, parts): (f64, Vec<&Joint>, &[Part])| {
        let end = track.at(start)?.0;
        let line: Vec<_> = std::iter::once(end).chain(outer.iter().map(|joint| joint.at)).collect();
        let room = (outer.last()?.station - start).abs();
        Some(side(&line, &in_front(parts, room, &piece.design), &piece.design, frame, stencils))
    };
    sides.into_iter().filter_map(side).flatten().collect()
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

/// Stations of points along a path that lies in the leaning plane, the first point's given.
fn measured(path: &[Point], first: f64, tilt: f64) -> Vec<Joint> {
    let mut station = first;
    let mut before = path.first().copied().unwrap_or_default();
    let mut joints = Vec::with_capacity(path.len());
    for at in path {
        let step = *at - before;
        station += Point::new(step.x, step.y / libm::cos(tilt)).length();
        joints.push(Joint { station, at: *at });
        before = *at;
    }
    joints
}
