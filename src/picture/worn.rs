//! Strands on the bust: each bead seated by its station along the line that its strand takes round
//! the neck and over the chest.
//!
//! The frame is that of [`crate::drape::Worn`]: seen from the front, in mm, y up from the line
//! between the neck's sides. What lies behind the neck or the shoulders is not drawn. Slight
//! approximation: beads keep their round outline, though the chest leans back from us.

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Design, Part, Strand, What};
use crate::drape::{Hung, Joint, Seat};
use crate::geometry::{Extent, Point};
use crate::paint::mark::Mark;
use crate::pattern::FindingKind;
use crate::sheet::figure::{Frame, side};
use crate::units::Length;

use super::bust::Bust;
use super::shade::Shade;
use super::subject::strung;

/// A piece on its bust.
pub struct Bearing {
    bust: Bust,
    /// One a strand; none where it does not reach round.
    tracks: Vec<Option<Track>>,
    close: bool,
}

/// The way that a strand takes in front, from one side of the neck to the other.
struct Track {
    /// Points seen from the front, with their stations: less than nothing or more than the strand's
    /// length where the closure reaches to the front.
    points: Vec<Joint>,
}

impl Bearing {
    /// Puts a piece that is worn round the neck on a bust, which may be seen close.
    pub fn of(piece: &Piece, close: bool) -> Option<Self> {
        let worn = piece.drape.worn.as_ref()?;
        let lowest = worn.lines.iter().flatten().map(|point| point.y).fold(f64::INFINITY, f64::min);
        let hanging = piece.design.strands.iter().map(longest_branch).fold(0.0, f64::max);
        let bust = Bust { breadth: worn.breadth, depth: worn.depth, lowest: lowest - hanging };
        let tracks: Vec<_> = worn.lines.iter().map(|line| Track::new(line, worn.behind, worn.tilt, &bust)).collect();
        tracks.iter().any(Option::is_some).then_some(Self { bust, tracks, close })
    }

    /// The box to show: round the bust, or close round the piece.
    pub fn extent(&self) -> Extent {
        if self.close { self.bust.close() } else { self.bust.extent() }
    }

    /// The bust, and what of the piece lies in front of it.
    pub fn marks(&self, piece: &Piece, shade: Shade, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let rows = self.tracks.iter().zip(piece.design.strands.iter().zip(&piece.drape.strands));
        let worn = |(track, (strand, hung)): (&Option<Track>, (&Strand, &Hung))| track.as_ref()?.worn(strand, hung);
        let mut marks = strung(piece, &rows.map(worn).collect::<Vec<_>>(), shade, frame, stencils);
        let closing = self.closing(piece, frame, stencils);
        marks.extend((!closing.is_empty()).then(|| shade.touching(closing)));
        let mut all = self.bust.marks(frame);
        all.push(shade.resting(marks));
        all
    }

    /// What of the closure reaches round to the front, closed as short as it goes.
    fn closing(&self, piece: &Piece, frame: &Frame, stencils: &mut Stencils<'_>) -> Vec<Mark> {
        let Some((Some(track), strand)) = self.tracks.first().zip(piece.design.strands.first()) else {
            return Vec::new();
        };
        let closure = &piece.design.closure;
        let left = track.points.iter().rev().filter(|joint| joint.station < 0.0);
        let right = track.points.iter().filter(|joint| joint.station > strand.finished.value());
        let sides = [
            (0.0, left.collect::<Vec<_>>(), &closure.left),
            (strand.finished.value(), right.collect(), &closure.right),
        ];
        let side = |(start, outer, parts): (f64, Vec<&Joint>, &Vec<Part>)| {
            let end = track.at(start)?.0;
            let line: Vec<_> = std::iter::once(end).chain(outer.iter().map(|joint| joint.at)).collect();
            let room = (outer.last()?.station - start).abs();
            Some(side(&line, &in_front(parts, room, &piece.design), &piece.design, frame, stencils))
        };
        sides.into_iter().filter_map(side).flatten().collect()
    }
}

/// The parts of a closure's side of which something lies within so many mm of the strands' ends: a
/// chain as much of it, others only whole.
fn in_front(parts: &[Part], room: f64, design: &Design) -> Vec<Part> {
    let mut left = room;
    let mut seen = Vec::new();
    for part in parts {
        let is_chain = design.findings[part.finding].kind == FindingKind::Chain;
        let reach = if is_chain { part.least.value().min(left) } else { part.least.value() };
        if reach > left || left <= 0.0 {
            break;
        }
        seen.push(Part { reach: Length::mm(reach), ..part.clone() });
        left -= reach;
    }
    seen
}

fn longest_branch(strand: &Strand) -> f64 {
    let bits = strand.trains.iter().flat_map(|train| &train.bits);
    bits.map(|bit| if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 }).fold(0.0, f64::max)
}

impl Track {
    /// Measures a line over the chest from the station at which it comes round the neck's side; what
    /// lies behind the bust's shoulders is left out.
    fn new(line: &[Point], behind: f64, tilt: f64, bust: &Bust) -> Option<Self> {
        let points = measured(line, behind, tilt).into_iter().filter(|joint| !bust.hides(joint.at));
        let points: Vec<_> = points.collect();
        (points.len() > 1).then_some(Self { points })
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Choice;
    use crate::source::Source;

    fn piece(name: &str, text: &str) -> Piece {
        crate::piece(&Source::new(name, text), &Choice::default(), None).0.unwrap()
    }

    #[test]
    fn what_lies_in_front_and_behind_is_the_strand() {
        let piece = piece("saltmarsh", include_str!("../../patterns/saltmarsh.yaml"));
        let bearing = Bearing::of(&piece, false).unwrap();
        for (strand, track) in piece.design.strands.iter().zip(&bearing.tracks) {
            let points = &track.as_ref().unwrap().points;
            let (first, last) = (points[0].station, points[points.len() - 1].station);
            // As much lies behind the neck at the last end as at the first; chords cut a neck's curve
            // short by less than a tenth of a millimetre.
            assert!(first > 0.0 && (strand.finished.value() - last - first).abs() < 0.1, "{}", strand.name);
        }
    }

    #[test]
    fn strands_that_bars_hold_apart_come_over_the_shoulders_side_by_side() {
        let piece = piece("pierhead", include_str!("../../patterns/pierhead.yaml"));
        let bearing = Bearing::of(&piece, false).unwrap();
        let starts: Vec<_> = bearing.tracks.iter().map(|track| track.as_ref().unwrap().points[0].at).collect();
        for pair in starts.windows(2) {
            // The bars hold them 8 mm apart, and the shoulder slopes.
            assert!(pair[0].x - pair[1].x > 6.0 && pair[1].y <= pair[0].y, "{starts:?}");
        }
    }

    #[test]
    fn of_a_closure_is_seen_what_fits_in_front() {
        let chain = "findings:\n  links: { kind: chain, link: 4 mm, mass: 6 g }\n  hook: { kind: clasp, length: 12 mm }\n  \
                     ring: { kind: jump ring, inside: 4 mm }\n";
        let text = format!(
            "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: {{ shape: round, size: 6 mm, hole: 1 mm, \
             material: glass, colour: '#5d7f5b' }}\ncords:\n  wire: {{ kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }}\n\
             {chain}strands:\n  - {{ name: only, cord: wire, ends: knot, beads: [25 a], settle: fill }}\n\
             closure: {{ left: [{{ links: 160 mm }}, ring], right: [{{ links: 150 mm }}, hook] }}\n\
             wear: {{ neck base: 370 mm }}\n"
        );
        let piece = piece("t", &text);
        let bearing = Bearing::of(&piece, false).unwrap();
        let mut stencils = Stencils::new(&piece.design, crate::art::Ink::Colour);
        let marks = bearing.closing(&piece, &Frame::ACTUAL, &mut stencils);
        let links: Vec<_> = marks.iter().map(|mark| mark.inner().len()).collect();
        // Chain alone, and less of it than there is: 3 mm and more a link.
        assert_eq!(links.len(), 2);
        assert!(links.iter().all(|links| (5..40).contains(links)), "{links:?}");
    }
}
