//! A closed row of links wound several times round a limb, turn beside turn.
//!
//! **Shape.** Turns lie against one another, so that each turn rises along the limb by as much as the broadest
//! link is wide, the pitch. The row is closed: where its ends meet it must come back across all turns. It does so
//! evenly along a stretch about the middle of what closes it, as long as that or, where that is shorter, so long
//! that it comes back at no more than 45 degrees to the turns (an assumption).
//!
//! **Equation.** Links that rise with the sine s of a slope are seen along the limb shortened by sqrt(1 - s²). Over
//! a row of length L with N turns of pitch p the sine is N p / L where it rises; seen so, the row is wound N times
//! about a circle, which [`taut`] solves: all its turns add up to N times 2 pi.
//!
//! **Approximation.** A link keeps the slope that it has at its centre, and where the row comes back it lies over the
//! other turns without being lengthened for that.

use super::chord::Chord;
use super::taut::{self, Taut};

/// Cotangent of the steepest way back across the turns: that of 45 degrees, as a length along the row for each mm.
const STEEPEST: f64 = std::f64::consts::SQRT_2;

/// A row wound round a limb whose axis is z.
#[derive(Clone, Debug, PartialEq)]
pub struct Wound {
    /// The row as it is seen along the limb.
    pub taut: Taut,
    /// How far along the limb it is at each of its stations.
    pub climb: Climb,
}

/// How a closed row goes up and down along the limb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climb {
    /// Length of the row.
    length: f64,
    /// Station in the middle of the way back.
    back: f64,
    /// Length of the row that comes back.
    over: f64,
    /// How high it goes.
    height: f64,
    /// How far a turn lies beside the next; the row lifts by as much off the limb where it lies over other turns.
    pitch: f64,
}

impl Climb {
    /// A row that stays level: wound once.
    const LEVEL: Self = Self { length: 1.0, back: 0.0, over: 2.0, height: 0.0, pitch: 0.0 };

    /// Of a row of a length wound so many times, whose links from a station on close it; nothing where it is too short.
    fn new(length: f64, turns: u32, pitch: f64, closing: f64) -> Option<Self> {
        if turns < 2 {
            return Some(Self::LEVEL);
        }
        let breadth = pitch * f64::from(turns);
        let over = (length - closing).max(STEEPEST * breadth);
        let back = 0.5 * (closing + length);
        (over < 0.5 * length).then(|| Self { length, back, over, height: breadth * (1.0 - over / length), pitch })
    }

    /// From the middle of the way back on, and whether it comes back there.
    fn since_back(&self, station: f64) -> (f64, bool) {
        let since = (station - self.back).rem_euclid(self.length);
        (since, since < 0.5 * self.over || since > self.length - 0.5 * self.over)
    }

    /// How far along the limb the row is at a station.
    #[must_use]
    pub fn height(&self, station: f64) -> f64 {
        let (since, back) = self.since_back(station);
        let down = self.height / self.over;
        match back {
            false => (since - 0.5 * self.over) * self.height / (self.length - self.over),
            true if since < 0.5 * self.length => 0.5 * self.height - since * down,
            true => 0.5 * self.height + (self.length - since) * down,
        }
    }

    /// How much farther from the limb the row lies at a station than it would alone: where it comes back, over the other
    /// turns.
    #[must_use]
    pub fn lift(&self, station: f64) -> f64 {
        let (since, back) = self.since_back(station);
        let from_middle = since.min(self.length - since) / self.over;
        if back { self.pitch * libm::cos(std::f64::consts::PI * from_middle).powi(2) } else { 0.0 }
    }

    /// By how much a link at a station is shorter as it is seen along the limb.
    fn seen(&self, station: f64) -> f64 {
        let sine =
            if self.since_back(station).1 { self.height / self.over } else { self.height / (self.length - self.over) };
        (1.0 - sine * sine).max(0.0).sqrt()
    }
}

/// Winds chords so many times round a limb, of which those after the first `strung` close the row; nothing where they
/// do not reach round.
#[must_use]
pub fn wind(chords: &[Chord], strung: usize, turns: u32, pitch: f64) -> Option<Wound> {
    let sum = |chords: &[Chord]| chords.iter().map(|chord| chord.before + chord.after).sum::<f64>();
    let climb = Climb::new(sum(chords), turns, pitch, sum(&chords[..strung]))?;
    let mut station = 0.0;
    let seen = |chord: &Chord| {
        let share = climb.seen(station + chord.before);
        station += chord.before + chord.after;
        Chord { before: chord.before * share, after: chord.after * share, ..*chord }
    };
    let seen: Vec<_> = chords.iter().map(seen).collect();
    Some(Wound { taut: taut::wind(&seen, turns)?, climb })
}

#[cfg(test)]
mod tests {
    use super::super::helix::Helix;
    use super::*;

    fn balls(size: f64, count: usize) -> Vec<Chord> {
        vec![Chord::even(size, 0.5 * size); count]
    }

    #[test]
    fn wound_once_it_is_a_ring() {
        let balls = balls(6.0, 30);
        assert_eq!(wind(&balls, 30, 1, 6.0).map(|wound| wound.taut), taut::close(&balls));
    }

    #[test]
    fn where_it_rises_each_turn_is_that_of_a_helix() {
        // Small balls, whose chords are nearly arcs; the way back is as long as a closure of a tenth of the row.
        let (count, turns, pitch) = (3_000, 3, 2.0);
        let strung = count * 9 / 10;
        let wound = wind(&vec![Chord::even(0.2, 1.0); count], strung, turns, pitch).unwrap();
        let length = 0.2 * count as f64;
        let helix = Helix { radius: wound.taut.radius + 1.0, rise: pitch };
        // Of N turns those that rise take their share as a helix, and the rest comes back down along its slope.
        let back = 0.1 * length;
        let level = (back * back - wound.climb.height.powi(2)).sqrt();
        let rising = (length - back) / helix.turn();
        let turned = rising + level / (2.0 * std::f64::consts::PI * helix.radius);
        assert!((turned - 3.0).abs() < 2e-3, "{turned}");
    }

    #[test]
    fn it_comes_back_to_where_it_began_and_turns_lie_a_pitch_apart() {
        let wound = wind(&balls(6.0, 90), 88, 3, 6.0).unwrap();
        let climb = wound.climb;
        assert!((climb.height(0.0) - climb.height(climb.length)).abs() < 1e-9);
        let turn = climb.length / 3.0;
        assert!((climb.height(0.4 * turn + turn) - climb.height(0.4 * turn) - 6.0).abs() < 1e-9);
        let steps = (0..5_400).map(|at| f64::from(at) * 0.1);
        let jump = steps.map(|at| (climb.height(at + 0.1) - climb.height(at)).abs()).fold(0.0, f64::max);
        assert!(jump < 0.1 / STEEPEST + 1e-9, "{jump}");
        assert!(climb.lift(climb.back) > 5.99 && climb.lift(0.5 * climb.length) == 0.0);
    }

    #[test]
    fn what_is_too_short_for_its_turns_is_not_wound() {
        assert_eq!(wind(&balls(6.0, 8), 8, 3, 6.0), None);
    }
}
