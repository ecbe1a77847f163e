//! A strand as it hangs: where its cord runs, and what sits where on it.

use super::{Hung, Joint, Seat, Tension};
use crate::design::{Shared, Strand};
use crate::geometry::{Extent, Point};

impl Hung {
    /// Where the strand is at a station, and the direction of the cord there in radians from +x.
    /// Stations before the first end or past the last count as the end.
    #[must_use]
    pub fn at(&self, station: f64) -> (Point, f64) {
        let next = self.joints.partition_point(|joint| joint.station <= station);
        let next = next.clamp(1, self.joints.len().saturating_sub(1).max(1));
        let [from, to] = match self.joints.get(next - 1..=next) {
            Some(&[from, to]) => [from, to],
            _ => return (self.ends[0], 0.0),
        };
        let angle = (to.at - from.at).angle();
        let [from, to] = self.about(station, [from, to]);
        let length = to.station - from.station;
        let share = if length > 0.0 { ((station - from.station) / length).clamp(0.0, 1.0) } else { 0.0 };
        (from.at.between(to.at, share), angle)
    }

    /// Two joints, or what sits between them and that one on whose side of it a station is.
    fn about(&self, station: f64, [from, to]: [Joint; 2]) -> [Joint; 2] {
        let next = self.seats.partition_point(|seat| seat.station <= from.station);
        match self.seats.get(next).filter(|seat| seat.station < to.station) {
            Some(seat) if station < seat.station => [from, Joint { station: seat.station, at: seat.centre }],
            Some(seat) => [Joint { station: seat.station, at: seat.centre }, to],
            None => [from, to],
        }
    }

    /// The strand's seats in things of a kind that it shares with others, from its first end.
    pub fn through<'a>(&'a self, strand: &'a Strand, shared: Shared) -> impl Iterator<Item = &'a Seat> {
        self.seats.iter().filter(move |seat| shared.is(&seat.bit(strand).what))
    }

    /// Whether a station lies on what is laid of the strand.
    #[must_use]
    pub fn reaches(&self, station: f64) -> bool {
        const ROUNDING: f64 = 1e-6;
        let ends = self.joints.first().zip(self.joints.last());
        ends.is_some_and(|(first, last)| (first.station - ROUNDING..=last.station + ROUNDING).contains(&station))
    }

    /// A stretch of the strand laid straight along x from the origin, each station at its x, with
    /// the seats that `wanted` keeps. It is in no tension.
    #[must_use]
    pub fn straight(&self, from: f64, to: f64, wanted: impl Fn(&Seat) -> bool) -> Self {
        let joint = |station: f64| Joint { station, at: Point::new(station, 0.0) };
        let (first, last) = (joint(from), joint(to));
        let seat = |seat: &Seat| Seat { centre: Point::new(seat.station, 0.0), angle: 0.0, ..*seat };
        let seats = self.seats.iter().filter(|seat| wanted(seat)).map(seat).collect();
        Self::placed([first.at, last.at], vec![first, last], seats, self.starts.clone())
    }

    /// A strand that is put where it lies: in no tension, and found by no solver.
    pub(super) fn placed(ends: [Point; 2], joints: Vec<Joint>, seats: Vec<Seat>, starts: Vec<f64>) -> Self {
        Self {
            ends,
            joints,
            seats,
            starts,
            lacks: 0.0,
            tension: Tension::default(),
            drop: 0.0,
            iterations: 0,
            residual: 0.0,
            unseen: None,
        }
    }

    /// The box round the strand's cord.
    #[must_use]
    pub fn bounds(&self) -> Extent {
        let [first, last] = self.ends.map(Extent::at);
        self.joints.iter().map(|joint| Extent::at(joint.at)).fold(first.and(last), Extent::and)
    }
}
