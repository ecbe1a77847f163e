//! Strands on the bust: each bead seated by its station along the line that its strand takes round
//! the neck and over the chest.
//!
//! The frame is that of [`crate::drape::Worn`]: seen from the front, in mm, y up from the line between the neck's
//! sides. Slight approximation: beads keep their round outline, though the chest leans back from us.

use std::f64::consts::PI;

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Strand, What};
use crate::geometry::Point;
use crate::sheet::figure::{Extent, Frame, branch, longest_first};
use crate::sheet::mark::Mark;

use super::bust::Bust;
use super::shade;

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
}

impl Bearing {
    /// Puts a piece that is worn round the neck on a bust.
    pub fn of(piece: &Piece) -> Option<Self> {
        let worn = piece.drape.worn.as_ref()?;
        let behind = 0.25 * piece.design.wear.girth.value() - 0.5 * worn.closure;
        let tracks: Vec<_> = worn.lines.iter().map(|line| Track::new(line, behind, worn.tilt)).collect();
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

    /// The bust, and what of the strands lies in front of the neck.
    pub fn marks(&self, piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let mut marks = vec![shade::standing(self.bust.marks(frame))];
        marks.extend(self.strands(piece, frame, stencils));
        marks
    }

    fn strands(&self, piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let order = longest_first(piece).into_iter();
        // There is a track, or none, for each strand.
        let tracks = order.filter_map(|index| Some((index, self.tracks.get(index)?.as_ref()?)));
        tracks
            .map(|(index, track)| {
                let marks = track.marks(piece, index, frame, stencils);
                shade::resting(vec![shade::touching(marks)])
            })
            .collect()
    }
}

fn longest_branch(strand: &Strand) -> f64 {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    bits.map(|bit| if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 }).fold(0.0, f64::max)
}

impl Track {
    /// Measures a line over the chest from the station at which it comes round the neck's side.
    fn new(line: &[Point], behind: f64, tilt: f64) -> Option<Self> {
        let mut points = measured(line, tilt);
        points.iter_mut().for_each(|(station, _)| *station += behind);
        (points.len() > 1).then_some(Self { points })
    }

    /// Where the strand is at a station, and the direction there; nothing behind the neck.
    fn at(&self, station: f64) -> Option<(Point, f64)> {
        let next = self.points.partition_point(|(at, _)| *at <= station);
        let ((from, start), (to, end)) = (self.points.get(next.checked_sub(1)?)?, self.points.get(next)?);
        Some((start.between(*end, (station - from) / (to - from)), (*end - *start).angle()))
    }

    fn marks(&self, piece: &Piece, index: usize, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        // The index is that of a strand, seats are those of its bits.
        let (strand, hung) = (&piece.design.strands[index], &piece.drape.strands[index]);
        let mut marks: Vec<_> = self.cord(strand, frame, stencils).into_iter().collect();
        marks.extend(self.ends(piece, strand, frame, stencils));
        for seat in &hung.seats {
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

    /// The cord in front.
    fn cord(&self, strand: &Strand, frame: &Frame, stencils: &Stencils<'_>) -> Option<Mark> {
        let strung = 0.0..=strand.finished.value();
        let inside = self.points.iter().filter(|(station, _)| strung.contains(station));
        let path: Vec<_> = inside.map(|(_, point)| frame.page(*point)).collect();
        (path.len() > 1).then(|| stencils.strand_cord(strand, &path, frame.scale))
    }

    /// The findings that close both ends, where they are seen.
    fn ends(&self, piece: &Piece, strand: &Strand, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (end, from_last) in strand.ends.iter().zip([false, true]) {
            let mut depth = end.bight.value();
            for index in &end.findings {
                let station = if from_last { strand.finished.value() - depth } else { depth };
                if let Some((point, angle)) = self.at(station) {
                    let inward = if from_last { PI - angle } else { -angle };
                    marks.push(stencils.finding(*index, frame.page(point), inward, frame.scale));
                }
                depth += piece.design.findings[*index].length.value();
            }
        }
        marks
    }
}

/// Stations of points along a path in the plane that leans back so far, from its first point.
fn measured(path: &[Point], tilt: f64) -> Vec<(f64, Point)> {
    let mut station = 0.0;
    let mut before = path.first().copied().unwrap_or_default();
    let mut points = Vec::with_capacity(path.len());
    for point in path {
        let step = *point - before;
        station += Point::new(step.x, step.y / libm::cos(tilt)).length();
        points.push((station, *point));
        before = *point;
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Choice;
    use crate::source::Source;

    #[test]
    fn what_lies_in_front_and_behind_is_the_strand() {
        let source = Source::new("saltmarsh", include_str!("../../patterns/saltmarsh.yaml"));
        let piece = crate::piece(&source, &Choice::default(), None).0.unwrap();
        let bearing = Bearing::of(&piece).unwrap();
        for (strand, track) in piece.design.strands.iter().zip(&bearing.tracks) {
            let points = &track.as_ref().unwrap().points;
            let (first, last) = (points[0].0, points[points.len() - 1].0);
            // As much lies behind the neck at the last end as at the first; chords cut a neck's curve
            // short by less than a tenth of a millimetre.
            assert!(first > 0.0 && (strand.finished.value() - last - first).abs() < 0.1, "{}", strand.name);
        }
    }
}
