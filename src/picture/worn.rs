//! Strands on the bust: each bead seated by its station along the line that its strand takes round
//! the neck and over the chest.
//!
//! The frame is that of [`crate::drape::Worn`]: seen from the front, in mm, y up from the line between the neck's
//! sides. Slight approximation: beads keep their round outline, though the chest leans back from us.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Strand, What};
use crate::drape::Worn;
use crate::drape::neck::CHEST_TILT;
use crate::geometry::Point;
use crate::sheet::figure::{Extent, Frame, branch};
use crate::sheet::mark::Mark;

use super::bust::Bust;
use super::shade;
use super::subject::longest_first;

/// Points along a quarter of the neck's back.
const STEPS: u32 = 40;

/// A piece on its bust.
pub struct Bearing {
    bust: Bust,
    /// One a strand; none where it does not reach round.
    tracks: Vec<Option<Track>>,
}

/// The way that a strand takes.
struct Track {
    /// Points seen from the front, with their stations.
    points: Vec<(f64, Point)>,
    /// The stations between which it lies in front.
    front: (f64, f64),
}

/// Which side of the neck is drawn.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Front,
    Back,
}

impl Bearing {
    /// Puts a piece that is worn round the neck on a bust.
    pub fn of(piece: &Piece) -> Option<Self> {
        let worn = piece.drape.worn.as_ref()?;
        let closure: f64 = sides(piece).map(|part| part.least.value()).sum();
        let behind = 0.25 * piece.design.wear.girth.value() - 0.5 * closure;
        let tracks: Vec<_> = worn.lines.iter().map(|line| Track::new(worn, line, behind)).collect();
        let lines = tracks.iter().flatten().flat_map(|track| track.points.iter().map(|(_, point)| point.y));
        let lowest = lines.fold(f64::INFINITY, f64::min);
        let hanging = piece.design.strands.iter().map(longest_branch).fold(0.0, f64::max);
        let bust = Bust { breadth: worn.breadth, depth: worn.depth, lowest: lowest - hanging };
        tracks.iter().any(Option::is_some).then_some(Self { bust, tracks })
    }

    /// The box round bust and piece.
    pub fn extent(&self) -> Extent {
        self.bust.extent()
    }

    /// The bust's body, what lies behind the neck, the neck, and what lies before it.
    pub fn marks(&self, piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let mut marks = vec![shade::standing(self.bust.body(frame))];
        marks.extend(self.strands(piece, Side::Back, frame, stencils));
        marks.extend(self.bust.neck(frame));
        marks.extend(self.strands(piece, Side::Front, frame, stencils));
        marks
    }

    fn strands(&self, piece: &Piece, side: Side, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let order = longest_first(piece).into_iter();
        // There is a track, or none, for each strand.
        let tracks = order.filter_map(|index| Some((index, self.tracks.get(index)?.as_ref()?)));
        tracks
            .map(|(index, track)| {
                let marks = track.marks(piece, index, side, frame, stencils);
                shade::resting(vec![shade::touching(marks)])
            })
            .collect()
    }
}

fn sides(piece: &Piece) -> impl Iterator<Item = &crate::design::Part> {
    piece.design.closure.left.iter().chain(&piece.design.closure.right)
}

fn longest_branch(strand: &Strand) -> f64 {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    bits.map(|bit| if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 }).fold(0.0, f64::max)
}

impl Track {
    /// Measures a line over the chest from the station at which it comes round the neck's side.
    fn new(worn: &Worn, line: &[Point], behind: f64) -> Option<Self> {
        let (first, last) = line.first().zip(line.last())?;
        let back = |sign: f64, step: u32| {
            let (sin, cos) = libm::sincos(FRAC_PI_2 * f64::from(step) / f64::from(STEPS));
            Point::new(sign * worn.breadth / 2.0 * cos, worn.depth / 2.0 * sin * libm::cos(CHEST_TILT))
        };
        let left = (0..=STEPS).rev().map(|step| back(-1.0, step)).filter(|point| point != first);
        let right = (0..=STEPS).map(|step| back(1.0, step)).filter(|point| point != last);
        let path: Vec<_> = left.chain(line.iter().copied()).chain(right).collect();
        let mut points = measured(&path);
        let on =
            |points: &[(f64, Point)], end: &Point| points.iter().find(|(_, at)| at == end).map(|(station, _)| *station);
        let shift = behind - on(&points, first)?;
        points.iter_mut().for_each(|(station, _)| *station += shift);
        let front = (behind, on(&points, last)?);
        Some(Self { points, front })
    }

    /// Where the strand is at a station, and the direction there.
    fn at(&self, station: f64) -> Option<(Point, f64)> {
        let next = self.points.partition_point(|(at, _)| *at <= station);
        let ((from, start), (to, end)) = (self.points.get(next.checked_sub(1)?)?, self.points.get(next)?);
        Some((start.between(*end, (station - from) / (to - from)), (*end - *start).angle()))
    }

    fn is_on(&self, side: Side, station: f64) -> bool {
        (side == Side::Front) == (self.front.0..=self.front.1).contains(&station)
    }

    fn marks(&self, piece: &Piece, index: usize, side: Side, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        // The index is that of a strand, seats are those of its bits.
        let (strand, hung) = (&piece.design.strands[index], &piece.drape.strands[index]);
        let mut marks = self.cords(strand, side, frame, stencils);
        marks.extend(self.ends(piece, strand, side, frame, stencils));
        for seat in hung.seats.iter().filter(|seat| self.is_on(side, seat.station)) {
            let Some((centre, angle)) = self.at(seat.station) else { continue };
            let bit = &strand.trains[seat.train].bits[seat.bit];
            let (at, turn) = (frame.page(centre), -angle);
            match &bit.what {
                What::Bead(bead) => marks.push(stencils.bead(*bead, at, turn, frame.scale)),
                What::Knot => marks.push(stencils.knot(strand.cord, at, turn, frame.scale, bit.length())),
                What::Finding(finding) => {
                    let start = at - Point::towards(turn) * (bit.before * frame.scale);
                    marks.push(stencils.finding(*finding, start, turn, frame.scale));
                }
                What::Dangle(dangle) => marks.extend(branch(dangle, at, &piece.design, frame.scale, stencils)),
                What::Gap => {}
            }
        }
        marks
    }

    /// The cord on one side: in front one piece, behind one left and one right.
    fn cords(&self, strand: &Strand, side: Side, frame: &Frame, stencils: &Stencils<'_>) -> Vec<Mark> {
        let (first, last) = self.front;
        let parts = match side {
            Side::Front => vec![(first.max(0.0), last.min(strand.finished.value()))],
            Side::Back => vec![(0.0, first), (last, strand.finished.value())],
        };
        let part = |(from, to): (f64, f64)| {
            let inside = self.points.iter().filter(|(station, _)| (from..=to).contains(station));
            let path: Vec<_> = inside.map(|(_, point)| frame.page(*point)).collect();
            (path.len() > 1).then(|| stencils.cord(strand.cord, &path, frame.scale))
        };
        parts.into_iter().filter_map(part).collect()
    }

    /// The findings that close both ends, where they are seen.
    fn ends(
        &self,
        piece: &Piece,
        strand: &Strand,
        side: Side,
        frame: &Frame,
        stencils: &mut Stencils<'_>,
    ) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (end, from_last) in strand.ends.iter().zip([false, true]) {
            let mut depth = end.bight.value();
            for index in &end.findings {
                let station = if from_last { strand.finished.value() - depth } else { depth };
                if let Some((point, angle)) = self.at(station).filter(|_| self.is_on(side, station)) {
                    let inward = if from_last { PI - angle } else { -angle };
                    marks.push(stencils.finding(*index, frame.page(point), inward, frame.scale));
                }
                depth += piece.design.findings[*index].length.value();
            }
        }
        marks
    }
}

/// Stations of points along a path that lies in the leaning plane, from its first point.
fn measured(path: &[Point]) -> Vec<(f64, Point)> {
    let mut station = 0.0;
    let mut before = path.first().copied().unwrap_or_default();
    let mut points = Vec::with_capacity(path.len());
    for point in path {
        let step = *point - before;
        station += Point::new(step.x, step.y / libm::cos(CHEST_TILT)).length();
        points.push((station, *point));
        before = *point;
    }
    points
}
