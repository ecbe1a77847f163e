//! A closed row of links, taut round the largest limb that it goes round.
//!
//! **Problem.** The centres c(i) of neighbouring links lie a pitch apart, |c(i+1) - c(i)| = after(i) +
//! before(i+1), the last link's and the first's included. A link keeps a round limb of radius r about the
//! origin its own reach away: |c(i)| >= r + reach(i). Wanted is the greatest r for which the row closes
//! once round the origin, or as many times as it is wound. Lengths are mm.
//!
//! **Equation.** A taut row runs straight but where it bends over a link that touches. Along a straight line
//! the square of the distance from the origin, as a function of the length s, has the second derivative 2,
//! so that u = |c|² - s² is straight between links that touch, bends down at each, and lies nowhere below
//! (r + reach)² - s² of any link. That is the upper hull of these points over the whole row, which begins at the
//! link that reaches farthest, as that one always touches. An edge of the hull of length l between
//! distances a and b passes its foot t = (l² + a² - b²) / 2l from its start, h = sqrt(a² - t²) from the
//! origin, and turns by atan(t / h) + atan((l - t) / h). All turns add up to 2 pi at the r wanted, and of a row that is wound N
//! times to N times that.
//!
//! **Sign.** A larger r makes every turn smaller, since the row bends down over what touches: the sum
//! falls steadily, and is found by halving between nothing and a quarter of the row's length (no arc is
//! more than pi/2 times its chord).
//!
//! **Tolerance.** Halved to the last bit; 0.01 mm of girth is promised, and `tests/oracles_statics.rs` holds the
//! result against a general optimiser to 0.001 mm.
//!
//! **Approximation.** A link bends at its centre and keeps its distance there alone, which is exact for balls
//! that touch. A long rigid link that touches takes a little more room: one clasp as thick as beads of 6 mm
//! leaves half a millimetre of girth less where it is 12 mm long, and 3 mm where it is 25 mm. A drilled bead counts with the pitch that it has
//! in a straight row, up to a hundredth less than in a tight ring, where beads touch beside the hole. Beads with flat
//! ends touch at their inner rims and part outside, where the cord is longer than the row: n of them of a length l
//! close round l / (2 tan(pi / n)), and not half their thickness less than l / (2 sin(pi / n)), as is found here.
//!
//! **Source.** Derived here: the obstacle problem of a stretched string in one dimension.

use std::f64::consts::PI;

use super::Point;

/// Halvings of the bracket: enough for the last bit of a double.
const HALVINGS: u32 = 60;

/// Something rigid in the row, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chord {
    /// From its start to its centre along the strand.
    pub before: f64,
    /// From its centre to its end.
    pub after: f64,
    /// How far it reaches inward from its centre.
    pub inward: f64,
}

impl Chord {
    /// One whose centre is its middle.
    #[must_use]
    pub fn even(length: f64, inward: f64) -> Self {
        Self { before: 0.5 * length, after: 0.5 * length, inward }
    }
}

/// A row closed round a limb whose centre is the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Taut {
    /// The limb's radius.
    pub radius: f64,
    /// One a chord: where its centre lies, anticlockwise, as often round as it is wound.
    pub centres: Vec<Point>,
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
    let radius = row.radius()?;
    let fits = |chord: &Chord| chord.before + chord.after <= 2.0 * (radius + chord.inward);
    chords.iter().all(fits).then(|| Taut { radius, centres: row.centres(radius) })
}

/// All the way round, from the chord that reaches farthest to itself again.
struct Row {
    /// How many times it goes round.
    turns: f64,
    /// Length of the row up to each centre.
    stations: Vec<f64>,
    reaches: Vec<f64>,
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

    /// By how much it has turned about the origin so far along it.
    fn turn(&self, along: f64) -> f64 {
        libm::atan2(self.foot, self.height) + libm::atan2(along - self.foot, self.height)
    }
}

impl Row {
    fn new(chords: &[Chord], turns: u32) -> Option<Self> {
        let (first, _) = chords.iter().enumerate().max_by(|a, b| a.1.inward.total_cmp(&b.1.inward))?;
        let round = || chords.iter().cycle().skip(first);
        let steps = round().zip(round().skip(1)).map(|(chord, next)| chord.after + next.before);
        let add = |station: &mut f64, step: f64| {
            *station += step;
            Some(*station)
        };
        let stations: Vec<_> = std::iter::once(0.0).chain(steps.take(chords.len()).scan(0.0, add)).collect();
        let reaches = round().map(|chord| chord.inward).take(stations.len()).collect();
        (stations[chords.len()] > 0.0).then_some(Self { turns: f64::from(turns), stations, reaches, first })
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
        Edge::new(radius + self.reaches[ends[0]], radius + self.reaches[ends[1]], self.length(ends))
    }

    /// The straight stretches in order, each with the chord at which it starts.
    fn edges(&self, radius: f64) -> Vec<(usize, Edge)> {
        self.touching(radius).windows(2).map(|ends| (ends[0], self.edge(radius, ends))).collect()
    }

    /// The chords that touch the limb: those on the upper hull.
    fn touching(&self, radius: f64) -> Vec<usize> {
        let point = |at: usize| {
            let (station, distance) = (self.stations[at], radius + self.reaches[at]);
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

    /// Where the centres lie, in the chords' own order; the farthest-reaching one to the right.
    fn centres(&self, radius: f64) -> Vec<Point> {
        let edges = self.edges(radius);
        let count = self.stations.len() - 1;
        let (mut start, mut edge) = (0.0, 0);
        let mut centres = vec![Point::ORIGIN; count];
        for at in 0..count {
            if edges.get(edge + 1).is_some_and(|next| next.0 == at) {
                start += edges[edge].1.turn(self.stations[at] - self.stations[edges[edge].0]);
                edge += 1;
            }
            let (from, straight) = &edges[edge];
            let along = self.stations[at] - self.stations[*from];
            let distance = libm::hypot(straight.height, along - straight.foot);
            centres[(self.first + at) % count] = Point::towards(start + straight.turn(along)) * distance;
        }
        centres
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
