//! A closed row of links, drawn up taut round the largest limb that it goes round.
//!
//! **Problem.** Beads are rigid and their holes straight: the cord runs straight through each, on the inner side of its
//! hole, and bends at the mouths. A bead keeps a round limb of radius r about the origin its own reach w away. Wanted is
//! the greatest r for which the row closes once round the origin, or as many times as it is wound, with no more cord
//! than keeps neighbours touching. Lengths are mm.
//!
//! **Equation.** A bead whose cord lies across the limb's radius has its mouths, m from its middle, at the distance
//! sqrt((r + w)² + m²) from the origin; nearer they never are. What is no bead has its middle at r + w or farther. A taut
//! cord runs straight but where it bends over such a place. Along a straight line the square of the distance from the
//! origin, as a function of the length s, has the second derivative 2, so that u = |c|² - s² is straight between places
//! that are touched, bends down at each, and lies nowhere below what they ask for: that is the upper hull of these points
//! over the whole row, which begins at the place that lies farthest out, as that one is always touched. An edge of the
//! hull of length l between distances a and b passes its foot t = (l² + a² - b²) / 2l from its start, h = sqrt(a² - t²)
//! from the origin, and turns by atan(t / h) + atan((l - t) / h). All turns add up to 2 pi at the r wanted, or to N times
//! that. Where the cord bends between two beads, so much of it lies bare that their outlines just touch, see [`nose`](super::nose).
//!
//! **Sign.** A larger r makes every turn smaller, since the cord bends down over what it touches: the sum falls steadily,
//! and is found by halving between nothing and a quarter of the row's length (no arc is more than pi/2 times its chord).
//!
//! **Tolerance.** Halved to 1e-10 mm, for gaps taken anew from the bends until r moves by less than 1e-7 mm.
//!
//! **Approximation.** What is no bead bends at its middle and keeps its distance there alone. Beads that are no
//! neighbours are not kept apart, as two broad ones across a thin one between them.
//!
//! **Source.** Derived here: the obstacle problem of a stretched string in one dimension. `tests/oracles_ring.rs` holds it
//! against beads as polygons and against a general optimiser. The trade's rule, the row's length less pi times the
//! thickest bead, is its limit for thick beads that follow one another closely (common practice, no source).

use std::f64::consts::PI;

use super::Point;
use super::chord::{Chord, ChordPair};

/// A bracket of the radius is halved until it is as narrow, in mm, or as doubles allow.
const NARROW: f64 = 1e-10;
/// Gaps are taken anew no more often.
const ROUNDS: u32 = 100;
/// A radius that moves by less, in mm, has settled.
const SETTLED: f64 = 1e-7;

/// A row closed round a limb whose centre is the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Taut {
    /// The limb's radius, in mm.
    pub radius: f64,
    /// One a chord: where its centre lies, anticlockwise, as often round as it is wound.
    pub centres: Vec<Point>,
    /// One a chord: the angle in radians of its axis.
    pub axes: Vec<f64>,
    /// How much more cord it takes than a straight row, in mm.
    pub slack: f64,
}

impl Taut {
    /// The limb's girth.
    #[must_use]
    pub fn girth(&self) -> f64 {
        2.0 * PI * self.radius
    }
}

/// Closes chords to a ring; nothing where they do not reach round a limb.
#[must_use]
pub fn close(chords: &[Chord]) -> Option<Taut> {
    wind(chords, 1)
}

/// Winds chords so many times round before they close; nothing where they do not reach round a limb.
#[must_use]
pub fn wind(chords: &[Chord], turns: u32) -> Option<Taut> {
    let mut belt = Belt::new(chords, turns).filter(|_| chords.len() > 2 * turns as usize)?;
    let (mut radius, mut moved) = (belt.radius(None)?, f64::INFINITY);
    for _ in 0..ROUNDS {
        belt.open(radius);
        let about = [radius - moved, radius + moved];
        let before = std::mem::replace(&mut radius, belt.radius(Some(about))?);
        moved = (radius - before).abs();
        if moved < SETTLED {
            break;
        }
    }
    let fits = |chord: &Chord| chord.before + chord.after <= 2.0 * (radius + chord.inward);
    chords.iter().all(fits).then(|| belt.laid(radius))
}

/// A place of the cord that keeps away from the limb.
#[derive(Clone, Copy)]
struct Lifted {
    /// Which chord's.
    chord: usize,
    /// Length of the row up to it.
    station: f64,
    /// How far the cord keeps from the limb at the middle of the chord.
    reach: f64,
    /// How far along the chord it is from there.
    off: f64,
}

impl Lifted {
    /// How far from the origin it is at least.
    fn distance(&self, radius: f64) -> f64 {
        libm::hypot(radius + self.reach, self.off)
    }
}

/// All the way round.
struct Belt<'a> {
    chords: &'a [Chord],
    /// How many times it goes round.
    turns: f64,
    places: Vec<Lifted>,
    /// Bare cord after each chord, where it bends between two beads.
    gaps: Vec<f64>,
}

/// A straight stretch of the cord between two places that touch, by their numbers and so on round.
struct Edge {
    from: usize,
    to: usize,
    /// Along it to the place nearest the origin.
    foot: f64,
    /// How far from the origin that is.
    height: f64,
    length: f64,
}

impl Edge {
    /// By how much it leans from the limb at its start, and at its end.
    fn leans(&self) -> [f64; 2] {
        [self.foot, self.length - self.foot].map(|along| libm::atan2(along, self.height))
    }

    /// By how much it has turned about the origin so far along it.
    fn turn(&self, along: f64) -> f64 {
        libm::atan2(self.foot, self.height) + libm::atan2(along - self.foot, self.height)
    }
}

impl<'a> Belt<'a> {
    fn new(chords: &'a [Chord], turns: u32) -> Option<Self> {
        let mut belt = Self { chords, turns: f64::from(turns), places: Vec::new(), gaps: vec![0.0; chords.len()] };
        belt.place();
        (belt.length() > 0.0).then_some(belt)
    }

    /// Sets the places out along the row.
    fn place(&mut self) {
        let mut station = 0.0;
        self.places.clear();
        for (chord, (link, gap)) in self.chords.iter().zip(&self.gaps).enumerate() {
            let middle = station + link.before;
            let place = |off: f64| Lifted { chord, station: middle + off, reach: link.cord_inward(), off };
            let offs = if link.body.is_some() { vec![-link.before, link.after] } else { vec![0.0] };
            self.places.extend(offs.into_iter().map(place));
            station = middle + link.after + gap;
        }
    }

    fn length(&self) -> f64 {
        self.chords.iter().map(|chord| chord.before + chord.after).sum::<f64>() + self.gaps.iter().sum::<f64>()
    }

    /// The radius at which the row turns as often as it must; looked for between two, if it is there.
    fn radius(&self, about: Option<[f64; 2]>) -> Option<f64> {
        let turned = |radius: f64| self.edges(radius).iter().map(|edge| edge.turn(edge.length)).sum::<f64>();
        let is_small = |radius: f64| turned(radius) > 2.0 * PI * self.turns;
        let brackets = |[low, high]: &[f64; 2]| *low > 0.0 && high.is_finite() && is_small(*low) && !is_small(*high);
        let [mut low, mut high] = about.filter(brackets).unwrap_or([0.0, 0.25 * self.length() / self.turns]);
        while high - low > NARROW.max(high * f64::EPSILON * 4.0) {
            let middle = 0.5 * (low + high);
            *if is_small(middle) { &mut low } else { &mut high } = middle;
        }
        (low > 0.0 && self.edges(low).iter().all(|edge| edge.height > 0.0)).then_some(low)
    }

    /// The stretches between places that touch, from the one that lies farthest out to itself again.
    fn edges(&self, radius: f64) -> Vec<Edge> {
        let count = self.places.len();
        let far = |at: &usize| self.places[*at].distance(radius);
        let Some(first) = (0..count).max_by(|one, other| far(one).total_cmp(&far(other))) else { return Vec::new() };
        let (start, length) = (self.places[first].station, self.length());
        let station = |at: usize| self.places[at % count].station - start + if at < count { 0.0 } else { length };
        let point = |at: usize| {
            let (station, distance) = (station(at), self.places[at % count].distance(radius));
            Point::new(station, (distance - station) * (distance + station))
        };
        let mut hull: Vec<(usize, Point)> = Vec::new();
        for at in first..=first + count {
            let to = point(at);
            while let [.., (_, from), (_, middle)] = hull[..]
                && is_below(middle, from, to)
            {
                hull.pop();
            }
            hull.push((at, to));
        }
        let edge = |ends: &[(usize, Point)]| {
            let ([from, to], length) = ([ends[0].0, ends[1].0], ends[1].1.x - ends[0].1.x);
            let [near, far] = [from, to].map(|at| self.places[at % count].distance(radius));
            let foot = if length > 0.0 { 0.5 * (length + (near - far) * (near + far) / length) } else { 0.0 };
            Edge { from, to, foot, height: (near * near - foot * foot).max(0.0).sqrt(), length }
        };
        hull.windows(2).map(edge).collect()
    }

    /// Opens the gaps that the bends of the cord ask for.
    fn open(&mut self, radius: f64) {
        let mut bends = vec![0.0; self.places.len()];
        let (count, edges) = (bends.len(), self.edges(radius));
        for edge in &edges {
            let [start, end] = edge.leans();
            bends[edge.from % count] += start;
            bends[edge.to % count] += end;
        }
        let aside = self.aside(radius, &edges);
        for at in 0..count {
            let next = (at + 1) % count;
            let [one, other] = [at, next].map(|at| self.places[at].chord);
            if one != other {
                let link = ChordPair { one: &self.chords[one], other: &self.chords[other] };
                self.gaps[one] = link.gap([bends[at], bends[next]], [aside[one], aside[other]], self.gaps[one]);
            }
        }
        self.place();
    }

    /// How far outward of the cord each link's axis lies.
    fn aside(&self, radius: f64, edges: &[Edge]) -> Vec<f64> {
        let points = self.points(edges);
        let mut aside = vec![0.0; self.chords.len()];
        for (pair, ends) in
            self.places.windows(2).zip(points.windows(2)).filter(|(pair, _)| pair[0].chord == pair[1].chord)
        {
            let chord = &self.chords[pair[0].chord];
            let share = chord.before / (chord.before + chord.after);
            aside[pair[0].chord] = chord.aside(ends[0].between(ends[1], share), radius);
        }
        aside
    }

    /// The links where they lie.
    fn laid(&self, radius: f64) -> Taut {
        let points = self.points(&self.edges(radius));
        let count = points.len();
        let way = |from: usize, to: usize| points[to % count] - points[from % count];
        let (mut centres, mut axes, mut at) = (Vec::new(), Vec::new(), 0);
        for chord in self.chords {
            let axis = match chord.body {
                Some(_) => way(at, at + 1),
                None => way(at + count - 1, at + 1),
            };
            axes.push(axis.angle());
            centres.push(chord.centre(points[at], axis, radius));
            at += if chord.body.is_some() { 2 } else { 1 };
        }
        Taut { radius, centres, axes, slack: self.gaps.iter().sum() }
    }

    /// Where the places lie along the stretches; the farthest one to the right.
    fn points(&self, edges: &[Edge]) -> Vec<Point> {
        let (count, length) = (self.places.len(), self.length());
        let mut points = vec![Point::ORIGIN; count];
        let mut turned = 0.0;
        for edge in edges {
            let start = self.places[edge.from % count].station;
            for at in edge.from..edge.to {
                let along = (self.places[at % count].station - start).rem_euclid(length);
                let distance = libm::hypot(edge.height, along - edge.foot);
                points[at % count] = Point::towards(turned + edge.turn(along)) * distance;
            }
            turned += edge.turn(edge.length);
        }
        points
    }
}

/// Whether a point lies on or below the line from one to another.
fn is_below(middle: Point, from: Point, to: Point) -> bool {
    let (short, long) = (middle - from, to - from);
    short.y * long.x <= long.y * short.x
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::chord::Profile;
    use crate::geometry::nose::{Nose, Oval};

    /// A ball of a diameter, its cord in a narrow hole.
    fn ball(size: f64) -> Chord {
        let half = 0.5 * size;
        let nose =
            Nose { rim: Point::new(half, 0.0), swell: Oval { centre: Point::ORIGIN, along: half, across: half } };
        Chord { body: Some(Profile { noses: [nose; 2], hole: 0.0, play: 0.0 }), ..Chord::even(size, half) }
    }

    /// Balls of these sizes in a row, so often.
    fn balls(sizes: &[f64], times: usize) -> Vec<Chord> {
        sizes.iter().cycle().take(sizes.len() * times).map(|size| ball(*size)).collect()
    }

    #[test]
    fn equal_balls_lie_on_one_circle() {
        let taut = close(&balls(&[8.0], 20)).unwrap();
        // The circle through their centres has the radius d / (2 sin(pi / n)).
        let radius = 4.0 / libm::sin(PI / 20.0) - 4.0;
        assert!((taut.radius - radius).abs() < 1e-6, "{}", taut.radius);
    }

    #[test]
    fn a_row_lifts_over_one_thick_ball() {
        // A thread round a circle of r + 2, drawn off it to a ball that stands 8 mm off the limb.
        let taut = close(&[balls(&[4.0], 50), balls(&[16.0], 1)].concat()).unwrap();
        let (round, far) = (taut.radius + 2.0, taut.radius + 8.0);
        let off = libm::hypot(far, 8.0);
        let lift = (off * off - round * round).sqrt();
        let free = libm::acos(round / off) + libm::atan2(8.0, far);
        let length = 16.0 + 2.0 * lift + 2.0 * (PI - free) * round;
        assert!((length - 216.0 - taut.slack).abs() < 1.0, "{length} and {}", taut.slack);
    }

    #[test]
    fn thick_balls_one_after_another_leave_the_trades_rule() {
        // Length less pi times the thickest.
        let girth = close(&balls(&[2.0], 100)).unwrap().girth();
        assert!((girth - (200.0 - 2.0 * PI)).abs() < 0.2, "{girth}");
    }

    #[test]
    fn a_thin_clasp_is_carried_clear_between_beads() {
        let mut clasped: Vec<_> = vec![Chord::even(8.0, 4.0); 20];
        clasped.push(Chord::even(12.0, 0.0));
        let radius = close(&clasped).unwrap().radius + 4.0;
        // 19 chords of 8 mm and a straight one of 4 + 12 + 4 mm on one circle.
        let turn = 19.0 * 2.0 * libm::asin(4.0 / radius) + 2.0 * libm::asin(10.0 / radius);
        assert!((turn - 2.0 * PI).abs() < 1e-9, "{turn}");
    }

    /// A row of tubes, balls and double cones of many sizes.
    fn mixed(count: u32, seed: u32) -> Vec<Chord> {
        let size = |at: u32, least: f64, most: f64| {
            let share = f64::from(at.wrapping_mul(2_654_435_761).wrapping_add(seed.wrapping_mul(40_503)) >> 16 & 0xff);
            least + (most - least) * share / 255.0
        };
        let bead = |at: u32| {
            let (half, wide) = (0.5 * size(3 * at, 1.5, 12.0), 0.5 * size(3 * at + 1, 2.0, 10.0));
            let nose = match at % 3 {
                0 => Nose::flat(Point::new(half, wide)),
                1 => Nose {
                    rim: Point::new(half, 0.0),
                    swell: Oval { centre: Point::ORIGIN, along: half, across: wide },
                },
                _ => Nose::cornered(Point::new(half, 0.0), Point::new(0.0, wide)),
            };
            let body = Some(Profile { noses: [nose; 2], hole: 0.0, play: 0.0 });
            Chord { body, ..Chord::even(2.0 * half, wide) }
        };
        (0..count).map(bead).collect()
    }

    #[test]
    fn rows_that_go_round_a_wrist_settle_and_keep_off_it_either_way_round() {
        for seed in 0..40 {
            let chords = mixed(24, seed);
            let taut = close(&chords).unwrap();
            let clear = |(chord, (centre, axis)): (&Chord, (&Point, &f64))| {
                // Of a tube's inner side the nearest place is the foot of its line, or an end of it.
                let along = Point::towards(*axis);
                let foot = (-centre.dot(along)).clamp(-chord.before, chord.after);
                (*centre + along * foot).length() - chord.inward - taut.radius
            };
            let placed = chords.iter().zip(taut.centres.iter().zip(&taut.axes));
            let least = placed.map(clear).fold(f64::INFINITY, f64::min);
            assert!(least.abs() < 1e-6 && taut.radius > 10.0, "{seed}: {least}, {}", taut.radius);
            let mut backward: Vec<_> = chords.iter().rev().copied().collect();
            backward.rotate_left(5);
            assert!((close(&backward).unwrap().radius - taut.radius).abs() < 1e-5, "{seed}");
            assert!(taut.slack > 0.0);
        }
    }

    #[test]
    fn what_does_not_reach_round_is_no_ring() {
        assert_eq!(close(&[]), None);
        assert_eq!(close(&balls(&[8.0], 2)), None);
        assert_eq!(close(&[Chord::even(0.0, 1.0); 5]), None);
        assert!(close(&balls(&[8.0], 6)).is_some_and(|taut| taut.radius > 0.0));
        let long = [Chord::even(90.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0)];
        assert_eq!(close(&long), None);
    }
}
