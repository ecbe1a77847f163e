//! The way of a closed loop: from the middle of the closure round to it. Lengths are mm.

use std::f64::consts::FRAC_PI_2;

use super::super::ellipse;
use super::loops::{Loops, Member, Precedence};
use super::skin::Skin;
use crate::geometry::Point3;

/// Places along a loop.
#[derive(Clone, Debug)]
pub struct Way {
    /// With the length of loop before each.
    stops: Vec<(f64, Point3)>,
}

impl Way {
    /// A way through places, so much of the loop from each to the next.
    pub fn new(places: Vec<Point3>, lengths: impl Iterator<Item = f64>) -> Self {
        let mut station = 0.0;
        let stations = lengths.map(|length| {
            station += length;
            station
        });
        let stations: Vec<f64> = std::iter::once(0.0).chain(stations).collect();
        Self { stops: stations.into_iter().zip(places).collect() }
    }

    /// The same between both halves of the closure, of which the way from the strands' last ends to their first is
    /// given.
    pub fn closed_by(self, closing: &Self) -> Self {
        let (half, length) = (0.5 * closing.length(), self.length());
        let middle = closing.at(half);
        // Where a bar holds the strand, it begins and ends beside the closure's own ends.
        let between =
            |from: f64, to: f64| closing.stops.iter().filter(move |(station, _)| (from < *station) && (*station < to));
        let before = between(half, 2.0 * half).map(|(station, at)| (station - half, *at));
        let after = between(0.0, half).map(|(station, at)| (station + half + length, *at));
        let own = self.stops.iter().map(|(station, at)| (station + half, *at));
        let stops = std::iter::once((0.0, middle)).chain(before).chain(own).chain(after);
        Self { stops: stops.chain([(length + 2.0 * half, middle)]).collect() }
    }

    /// A first guess for a loop of a length that reaches so far from its middle line: half an ellipse behind the
    /// neck, and half of a longer one down the chest, outside the skin.
    pub fn guess(skin: &Skin, length: f64, reach: f64) -> Self {
        const STEPS: u32 = 24;
        let [a, b] = skin.base().map(|half| half + reach);
        let in_front = length - 0.5 * ellipse::girth(a, b);
        let ahead = ahead(skin, b, half_axis(a, in_front.max(0.0)));
        let quarter = |step: u32| libm::sincos(FRAC_PI_2 * f64::from(step) / f64::from(STEPS));
        let at = |(sin, cos): (f64, f64), front: Point3| Point3::new(-a * sin, 0.0, 0.0) + front * cos;
        let back = skin.forward() * -b;
        let behind = (0..STEPS).map(|step| at(quarter(step), back));
        let left: Vec<Point3> = behind.chain((0..=STEPS).rev().map(|step| at(quarter(step), ahead))).collect();
        let right = left.iter().rev().skip(1).map(|point| Point3::new(-point.x, point.y, point.z));
        let places: Vec<Point3> = left.iter().copied().chain(right).map(|place| skin.outside(place, reach)).collect();
        let steps: Vec<f64> = places.windows(2).map(|pair| pair[0].distance(pair[1])).collect();
        let whole = steps.iter().sum::<f64>().max(f64::MIN_POSITIVE);
        Self::new(places, steps.into_iter().map(|step| step * length / whole))
    }

    /// How long the loop is.
    pub fn length(&self) -> f64 {
        self.stops.last().map_or(0.0, |last| last.0)
    }

    /// The places, with the length of loop before each.
    pub fn stops(&self) -> &[(f64, Point3)] {
        &self.stops
    }

    /// The place at a station.
    pub fn at(&self, station: f64) -> Point3 {
        let last = self.stops.len() - 1;
        let next = self.stops.partition_point(|(before, _)| *before <= station).clamp(1.min(last), last);
        let ((from, one), (to, other)) = (self.stops[next.saturating_sub(1)], self.stops[next]);
        let share = if to > from { ((station - from) / (to - from)).clamp(0.0, 1.0) } else { 0.0 };
        one.between(other, share)
    }
}

impl Loops {
    /// The way of each strand as it lies now, from the middle of the closure round to it.
    pub fn ways(&self) -> Vec<Way> {
        let places = self.closing.iter().map(|node| self.at(*node));
        let closing = Way::new(places.collect(), self.closing_lengths().into_iter());
        (0..self.strands.len()).map(|strand| self.way(strand).closed_by(&closing)).collect()
    }

    /// The way of a strand: each of its pieces lies where it does on its tie, as far from either joint as it opens there.
    fn way(&self, strand: usize) -> Way {
        let mut stops = Vec::new();
        let mut station = 0.0;
        for tie in self.ties_of(strand) {
            let (Member { ends, length, .. }, opens) = (self.rods[tie], self.opens(tie));
            let [from, to] = ends.map(|node| self.at(node));
            let stop = |share: f64| (station + share * length, from.between(to, self.along(tie, opens, share)));
            stops.push((station, from));
            stops.extend((opens[0] > 0.0).then(|| stop(0.0)));
            stops.extend((opens[1] > 0.0).then(|| stop(1.0)));
            station += length;
        }
        let last = self.strands[strand].last().map(|node| (station, self.at(*node)));
        Way { stops: stops.into_iter().chain(last).collect() }
    }

    /// How far a piece goes on to where it meets its neighbours. Nets that are laid roughly are spread over that.
    fn opens(&self, tie: usize) -> [f64; 2] {
        if self.is_beaded { self.rods[tie].opens } else { [0.0; 2] }
    }

    /// How far along its tie a share of a piece lies, as a share of that, where it goes on so far to either side.
    fn along(&self, tie: usize, [before, after]: [f64; 2], share: f64) -> f64 {
        let length = self.net.ties[tie].length;
        if length > 0.0 { (before + share * (length - before - after)) / length } else { share }
    }

    /// The same as it counts in rounds. Where strands cross, what opens at a kink would shift what touches there from round to
    /// round, and they would come to no rest: there pieces are spread over it, which moves beads by hundredths of a mm.
    pub fn share_of_tie(&self, tie: usize, share: f64) -> f64 {
        let opens = if self.order == Precedence::Over { [0.0; 2] } else { self.opens(tie) };
        self.along(tie, opens, share)
    }
}

/// The half axis of an ellipse of which half the girth and the other half axis are given.
fn half_axis(a: f64, half_girth: f64) -> f64 {
    let (mut low, mut high) = (0.0, half_girth);
    for _ in 0..30 {
        let middle = 0.5 * (low + high);
        *if 0.5 * ellipse::girth(a, middle) < half_girth { &mut low } else { &mut high } = middle;
    }
    high
}

/// The farthest point in front, so far from the middle of the base: along the chest once it is past the neck.
fn ahead(skin: &Skin, b: f64, far: f64) -> Point3 {
    let (front, down) = (skin.forward() * b, skin.down());
    if far <= b {
        return front;
    }
    let along = front.dot(down);
    front + down * ((along * along + far * far - b * b).sqrt() - along)
}
