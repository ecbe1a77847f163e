//! A closed row of links, taut round the largest limb that it goes round.
//!
//! **Problem.** A link keeps a round limb of radius r about the origin its own reach away: its centre c has |c| >= r +
//! reach. Neighbours touch, and their centres lie a step apart, |c(i+1) - c(i)| = after(i) + before(i+1), the last
//! link's and the first's included; where bodies with rims lean towards each other it is longer by as much as
//! [`Nose::parts`](super::nose::Nose::parts) says. Wanted is the greatest r for which the row closes once round the origin, or as many times as
//! it is wound. Lengths are mm.
//!
//! **Equation.** A taut row runs straight but where it bends over a link that touches. Along a straight line
//! the square of the distance from the origin, as a function of the length s, has the second derivative 2,
//! so that u = |c|² - s² is straight between links that touch, bends down at each, and lies nowhere below
//! (r + reach)² - s² of any link. That is the upper hull of these points over the whole row, which begins at the
//! link that reaches farthest, as that one always touches. An edge of the hull of length l between
//! distances a and b passes its foot t = (l² + a² - b²) / 2l from its start, h = sqrt(a² - t²) from the
//! origin, and turns by atan(t / h) + atan((l - t) / h). All turns add up to 2 pi at the r wanted, and of a row that is wound N
//! times to N times that. A link that touches lies along the limb, so that its axis leans by atan(t / h) from the edge;
//! one that is carried clear lies along its edge.
//!
//! **Sign.** A larger r makes every turn smaller, since the row bends down over what touches: the sum
//! falls steadily, and is found by halving between nothing and a quarter of the row's length (no arc is
//! more than pi/2 times its chord).
//!
//! **Tolerance.** Halved to the last bit, for steps taken anew from the leans until none moves by 1e-9 mm. 0.01 mm of
//! girth is promised: `tests/oracles_statics.rs` holds the result against a general optimiser, and
//! `tests/oracles_ring.rs` against beads as polygons.
//!
//! **Approximation.** What is no bead bends at its centre and keeps its distance there alone: one clasp as thick as
//! beads of 6 mm leaves half a millimetre of girth less where it is 12 mm long, and 3 mm where it is 25 mm. Beads that
//! are no neighbours are not kept apart, as two broad ones across a thin one between them.
//!
//! **Source.** Derived here: the obstacle problem of a stretched string in one dimension.

use std::f64::consts::{FRAC_PI_2, PI};

use super::Point;
use super::chord::Chord;

/// Halvings of the bracket: enough for the last bit of a double.
const HALVINGS: u32 = 60;
/// Steps are taken anew no more often.
const ROUNDS: u32 = 100;
/// Steps that move by less, in mm, have settled.
const SETTLED: f64 = 1e-9;

/// A row closed round a limb whose centre is the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Taut {
    /// The limb's radius.
    pub radius: f64,
    /// One a chord: where its centre lies, anticlockwise, as often round as it is wound.
    pub centres: Vec<Point>,
    /// One a chord: the angle in radians of its axis, along the limb where it touches.
    pub axes: Vec<f64>,
    /// One a chord: how much more cord than in a straight row lies between it and the next.
    pub slack: Vec<f64>,
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
    let row = Row::new(chords, turns).filter(|_| chords.len() > 2 * turns as usize)?;
    let (row, radius) = row.settled()?;
    let fits = |chord: &Chord| chord.before + chord.after <= 2.0 * (radius + chord.inward);
    chords.iter().all(fits).then(|| {
        let (centres, axes) = row.laid(radius).into_iter().unzip();
        Taut { radius, centres, axes, slack: row.slack(radius) }
    })
}

/// All the way round, from the chord that reaches farthest to itself again.
struct Row {
    /// How many times it goes round.
    turns: f64,
    chords: Vec<Chord>,
    /// Length of the row up to each centre.
    stations: Vec<f64>,
    /// Which chord comes first.
    first: usize,
}

/// A straight stretch of the row.
struct Edge {
    /// Along it to the place nearest the origin.
    foot: f64,
    /// How far from the origin that is.
    height: f64,
}

impl Edge {
    fn new(from: f64, to: f64, length: f64) -> Self {
        let foot = 0.5 * (length + (from - to) * (from + to) / length);
        Self { foot, height: (from * from - foot * foot).max(0.0).sqrt() }
    }

    /// By how much it leans from the limb at its start, and at its end a length on.
    fn leans(&self, length: f64) -> [f64; 2] {
        [self.foot, length - self.foot].map(|along| libm::atan2(along, self.height))
    }

    /// By how much it has turned about the origin so far along it.
    fn turn(&self, along: f64) -> f64 {
        libm::atan2(self.foot, self.height) + libm::atan2(along - self.foot, self.height)
    }
}

impl Row {
    fn new(chords: &[Chord], turns: u32) -> Option<Self> {
        let (first, _) = chords.iter().enumerate().max_by(|a, b| a.1.inward.total_cmp(&b.1.inward))?;
        let chords: Vec<_> = chords.iter().cycle().skip(first).take(chords.len() + 1).copied().collect();
        let stations = summed(chords.windows(2).map(|pair| pair[0].step(&pair[1])));
        (stations[stations.len() - 1] > 0.0).then_some(Self { turns: f64::from(turns), chords, stations, first })
    }

    /// With the steps that its links take where they lean, and its radius.
    fn settled(mut self) -> Option<(Self, f64)> {
        let mut radius = self.radius()?;
        for _ in 0..ROUNDS {
            let leaning = self.leaning(radius);
            if self.moved(&leaning) < SETTLED {
                break;
            }
            self.stations = leaning;
            radius = self.radius()?;
        }
        Some((self, radius))
    }

    /// By how much stations differ from its own at most.
    fn moved(&self, stations: &[f64]) -> f64 {
        stations.iter().zip(&self.stations).map(|(one, other)| (one - other).abs()).fold(0.0, f64::max)
    }

    /// The stations of its links as they lean round a limb.
    fn leaning(&self, radius: f64) -> Vec<f64> {
        let pairs = self.chords.windows(2).zip(self.leans(radius));
        summed(pairs.map(|(pair, leans)| pair[0].leaning(&pair[1], leans)))
    }

    /// By how much the axes of each link and the next lean from the line through their centres.
    fn leans(&self, radius: f64) -> Vec<[f64; 2]> {
        let mut leans = vec![[0.0; 2]; self.chords.len() - 1];
        for ends in self.touching(radius).windows(2) {
            let [lean, leaning] = self.edge(radius, ends).leans(self.length(ends));
            (leans[ends[0]][0], leans[ends[1] - 1][1]) = (lean, leaning);
        }
        leans
    }

    /// In the chords' own order, how much more cord than in a straight row lies between each and the next.
    fn slack(&self, radius: f64) -> Vec<f64> {
        let pairs = self.chords.windows(2).zip(self.stations.windows(2)).zip(self.leans(radius));
        let mut slack: Vec<_> =
            pairs.map(|((pair, stations), leans)| pair[0].slack(&pair[1], stations[1] - stations[0], leans)).collect();
        slack.rotate_right(self.first);
        slack
    }

    /// The radius at which the row turns as often as it must.
    fn radius(&self) -> Option<f64> {
        let excess = |radius: f64| self.turn(radius) - 2.0 * PI * self.turns;
        let (mut low, mut high) = (0.0, 0.25 * self.stations[self.stations.len() - 1] / self.turns);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            *if excess(middle) > 0.0 { &mut low } else { &mut high } = middle;
        }
        let is_open = |(_, edge): &(usize, Edge)| edge.height > 0.0;
        (low > 0.0 && self.edges(low).iter().all(is_open)).then_some(low)
    }

    fn turn(&self, radius: f64) -> f64 {
        let touching = self.touching(radius);
        touching.windows(2).map(|ends| self.edge(radius, ends).turn(self.length(ends))).sum()
    }

    fn length(&self, ends: &[usize]) -> f64 {
        self.stations[ends[1]] - self.stations[ends[0]]
    }

    fn edge(&self, radius: f64, ends: &[usize]) -> Edge {
        let [from, to] = [ends[0], ends[1]].map(|at| radius + self.chords[at].inward);
        Edge::new(from, to, self.length(ends))
    }

    /// The straight stretches in order, each with the chord at which it starts.
    fn edges(&self, radius: f64) -> Vec<(usize, Edge)> {
        self.touching(radius).windows(2).map(|ends| (ends[0], self.edge(radius, ends))).collect()
    }

    /// The chords that touch the limb: those on the upper hull.
    fn touching(&self, radius: f64) -> Vec<usize> {
        let point = |at: usize| {
            let (station, distance) = (self.stations[at], radius + self.chords[at].inward);
            Point::new(station, (distance - station) * (distance + station))
        };
        let is_below = |middle: Point, from: Point, to: Point| {
            let (short, long) = (middle - from, to - from);
            short.y * long.x <= long.y * short.x
        };
        let mut hull: Vec<usize> = Vec::new();
        for at in 0..self.stations.len() {
            while let [.., from, middle] = hull[..]
                && is_below(point(middle), point(from), point(at))
            {
                hull.pop();
            }
            hull.push(at);
        }
        hull
    }

    /// Where the centres lie and the angles of the axes, in the chords' own order; the farthest-reaching one to the
    /// right.
    fn laid(&self, radius: f64) -> Vec<(Point, f64)> {
        let edges = self.edges(radius);
        let count = self.stations.len() - 1;
        let (mut start, mut edge) = (0.0, 0);
        let mut laid = vec![(Point::ORIGIN, 0.0); count];
        for at in 0..count {
            if edges.get(edge + 1).is_some_and(|next| next.0 == at) {
                start += edges[edge].1.turn(self.stations[at] - self.stations[edges[edge].0]);
                edge += 1;
            }
            let (from, straight) = &edges[edge];
            let along = self.stations[at] - self.stations[*from];
            let distance = libm::hypot(straight.height, along - straight.foot);
            let across = if at == *from { 0.0 } else { straight.turn(straight.foot) };
            let centre = Point::towards(start + straight.turn(along)) * distance;
            laid[(self.first + at) % count] = (centre, start + across + FRAC_PI_2);
        }
        laid
    }
}

/// Sums of the first none, one, two, … of steps.
fn summed(steps: impl Iterator<Item = f64>) -> Vec<f64> {
    let add = |station: &mut f64, step: f64| {
        *station += step;
        Some(*station)
    };
    std::iter::once(0.0).chain(steps.scan(0.0, add)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::chord::Body;
    use crate::geometry::nose::{Nose, Oval};

    /// Balls of these sizes in a row, so often.
    fn balls(sizes: &[f64], times: usize) -> Vec<Chord> {
        sizes.iter().cycle().take(sizes.len() * times).map(|size| Chord::even(*size, 0.5 * size)).collect()
    }

    /// What must hold of a closed row: pitches kept, nothing in the limb, once round, bent only where it touches.
    fn assert_taut(chords: &[Chord]) -> Taut {
        let taut = close(chords).unwrap();
        let count = chords.len();
        let mut turned = 0.0;
        for at in 0..count {
            let [here, next, then] = [at, at + 1, at + 2].map(|at| taut.centres[at % count]);
            let (chord, after) = (chords[at], chords[(at + 1) % count]);
            assert!((here.distance(next) - chord.after - after.before).abs() < 1e-9, "{at}: {here:?} {next:?}");
            let clear = here.length() - taut.radius - chord.inward;
            assert!(clear > -1e-9, "{at}: {clear}");
            let bend = libm::remainder((then - next).angle() - (next - here).angle(), 2.0 * PI);
            let touches = next.length() - taut.radius - after.inward < 1e-9;
            assert!(bend > -1e-7 && (touches || bend < 1e-7), "{at}: {bend}, {touches}");
            turned += libm::remainder(next.angle() - here.angle(), 2.0 * PI);
        }
        assert!((turned - 2.0 * PI).abs() < 1e-9, "{turned}");
        taut
    }

    #[test]
    fn equal_balls_lie_on_one_circle() {
        let taut = assert_taut(&balls(&[8.0], 20));
        // The circle through their centres has the radius d / (2 sin(pi / n)).
        let radius = 4.0 / libm::sin(PI / 20.0) - 4.0;
        assert!((taut.radius - radius).abs() < 1e-12);
    }

    #[test]
    fn small_balls_are_carried_clear_between_large_ones() {
        let taut = assert_taut(&balls(&[14.0, 4.0, 4.0, 4.0, 4.0, 4.0], 6));
        // A hexagon of straight sides 9 + 4 x 4 + 9 mm long, whose corners are the large balls.
        let side = 9.0 + 4.0 * 4.0 + 9.0;
        let middle = libm::sqrt(side * side - 0.25 * side * side);
        assert!(middle - 2.0 > side - 7.0, "the small ones in the middle would touch");
        assert!((taut.radius - (side - 7.0)).abs() < 1e-9, "{}", taut.radius);
    }

    #[test]
    fn small_balls_between_far_large_ones_touch() {
        let taut = assert_taut(&balls(&[14.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0], 4));
        let touching = taut.centres.iter().filter(|centre| centre.length() < taut.radius + 2.0 + 1e-9);
        assert!(touching.count() >= 4);
    }

    #[test]
    fn uneven_links_close_wherever_the_row_begins() {
        let uneven = |at: u32| Chord {
            before: 1.0 + f64::from(at % 3),
            after: 2.5 - 0.5 * f64::from(at % 4),
            inward: [1.0, 4.0, 2.0, 0.5, 3.0][at as usize % 5],
            body: None,
        };
        let mut chords: Vec<_> = (0..37).map(uneven).collect();
        let radius = assert_taut(&chords).radius;
        for _ in 0..5 {
            chords.rotate_left(7);
            assert!((assert_taut(&chords).radius - radius).abs() < 1e-12);
        }
    }

    #[test]
    fn a_thin_clasp_is_carried_clear_between_beads() {
        let mut clasped = balls(&[8.0], 20);
        clasped.push(Chord::even(12.0, 0.0));
        let radius = assert_taut(&clasped).radius + 4.0;
        // 19 chords of 8 mm and a straight one of 4 + 12 + 4 mm on one circle.
        let turn = 19.0 * 2.0 * libm::asin(4.0 / radius) + 2.0 * libm::asin(10.0 / radius);
        assert!((turn - 2.0 * PI).abs() < 1e-12, "{turn}");
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
            let body = Some(Body { noses: [nose; 2], hole: 0.0, play: 0.0 });
            Chord { body, ..Chord::even(2.0 * half, wide) }
        };
        (0..count).map(bead).collect()
    }

    #[test]
    fn steps_settle_in_rows_that_go_round_a_wrist() {
        for seed in 0..40 {
            let chords = mixed(24, seed);
            let (row, radius) = Row::new(&chords, 1).unwrap().settled().unwrap();
            assert!(row.moved(&row.leaning(radius)) < SETTLED && radius > 15.0, "{seed}: {radius}");
            let taut = close(&chords).unwrap();
            let mut backward: Vec<_> = chords.iter().rev().copied().collect();
            backward.rotate_left(5);
            assert!((close(&backward).unwrap().radius - taut.radius).abs() < 1e-6, "{seed}");
            assert!(taut.slack.iter().sum::<f64>() > 0.0);
        }
    }

    #[test]
    fn what_does_not_reach_round_is_no_ring() {
        assert_eq!(close(&[]), None);
        assert_eq!(close(&balls(&[8.0], 2)), None);
        assert_eq!(close(&[Chord::even(0.0, 1.0); 5]), None);
        assert!(close(&balls(&[8.0], 3)).is_some_and(|taut| taut.radius > 0.0));
        let long = [Chord::even(90.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0), Chord::even(5.0, 1.0)];
        assert_eq!(close(&long), None);
    }
}
