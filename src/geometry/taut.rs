//! A closed row of links, drawn up taut, and the largest limb that it goes round.
//!
//! **Problem.** Beads are rigid and their holes straight, so that cord drawn taut brings the holes of neighbours in line:
//! it goes round evenly, and bends between beads. A row that is drawn up so far that neighbours touch is closed; wanted
//! is the radius r of the largest limb inside. Lengths are mm.
//!
//! **Equation.** All links have their centres on one circle of a radius R and their axes along it. Neighbours whose
//! centres are a step d apart turn by 2 asin(d / 2R), each axis leaning by half of that from the line through the
//! centres; by as much as [`Nose::parts`](super::nose::Nose::parts) says the step is then longer than in a straight
//! row. All turns add up to 2 pi, or of a row that is wound N times to N times that, and r is R less what reaches
//! farthest inward. The cord is the shortest way through all holes, see [`passage`](super::passage).
//!
//! **Sign.** A larger R makes every turn smaller: R is found by halving between half the longest step and a quarter of
//! the row's length (no arc is more than pi/2 times its chord).
//!
//! **Tolerance.** Halved to the last bit, for steps taken anew from the leans until R moves by less than 1e-9 mm.
//!
//! **Approximation.** On a limb that presses thick beads outward and thin ones inward a row of unequal beads goes round
//! a little more: with as much cord as is told, a general optimiser finds up to 2 in 100 more
//! (`tests/oracles_ring.rs`). What is no bead bends at its centre and keeps its distance there
//! alone, and beads that are no neighbours are not kept apart, as two broad ones across a thin one between them.
//!
//! **Source.** Derived here. The trade's rule, the row's length less pi times the thickest bead, is its limit for many
//! small beads (common practice, no source).

use std::f64::consts::{FRAC_PI_2, PI};

use super::Point;
use super::chord::Chord;
use super::passage;

/// Halvings of the bracket: enough for the last bit of a double.
const HALVINGS: u32 = 60;
/// Steps are taken anew no more often.
const ROUNDS: u32 = 100;
/// A radius that moves by less, in mm, has settled.
const SETTLED: f64 = 1e-9;

/// A row closed round a limb whose centre is the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Taut {
    /// The limb's radius.
    pub radius: f64,
    /// One a chord: where its centre lies, anticlockwise, as often round as it is wound; the first to the right.
    pub centres: Vec<Point>,
    /// One a chord: the angle in radians of its axis.
    pub axes: Vec<f64>,
    /// How much more cord it takes than a straight row.
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
    let row = Row { chords, turns: f64::from(turns) };
    let (circle, steps) = row.settled().filter(|_| chords.len() > 2 * turns as usize)?;
    let inward = chords.iter().map(|chord| chord.inward).fold(0.0, f64::max);
    let fits = |chord: &Chord| chord.before + chord.after <= 2.0 * circle;
    (circle > inward && chords.iter().all(fits)).then(|| row.laid(circle, circle - inward, &steps))
}

struct Row<'a> {
    chords: &'a [Chord],
    /// How many times it goes round.
    turns: f64,
}

/// The angle in radians about a circle's centre of a step along its chord.
fn turn(step: f64, circle: f64) -> f64 {
    2.0 * libm::asin((0.5 * step / circle).min(1.0))
}

impl Row<'_> {
    /// Each chord with the next, the last with the first.
    fn pairs(&self) -> impl Iterator<Item = (&Chord, &Chord)> {
        self.chords.iter().zip(self.chords.iter().cycle().skip(1))
    }

    /// The circle's radius, and the steps from each centre to the next as the links lean on it.
    fn settled(&self) -> Option<(f64, Vec<f64>)> {
        let mut steps: Vec<_> = self.pairs().map(|(one, next)| one.step(next)).collect();
        let mut circle = self.circle(&steps)?;
        for _ in 0..ROUNDS {
            let lean = |step: &f64| 0.5 * turn(*step, circle);
            steps = self.pairs().zip(&steps).map(|((one, next), step)| one.leaning(next, [lean(step); 2])).collect();
            let before = std::mem::replace(&mut circle, self.circle(&steps)?);
            if (circle - before).abs() < SETTLED {
                break;
            }
        }
        Some((circle, steps))
    }

    /// The radius at which steps turn as often as they must.
    fn circle(&self, steps: &[f64]) -> Option<f64> {
        let excess = |circle: f64| steps.iter().map(|step| turn(*step, circle)).sum::<f64>() - 2.0 * PI * self.turns;
        let longest = steps.iter().copied().fold(0.0, f64::max);
        let (mut low, mut high) = (0.5 * longest, 0.25 * steps.iter().sum::<f64>() / self.turns);
        if !(low > 0.0 && excess(low) > 0.0) {
            return None;
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            *if excess(middle) > 0.0 { &mut low } else { &mut high } = middle;
        }
        Some(low)
    }

    /// The links on their circle.
    fn laid(&self, circle: f64, radius: f64, steps: &[f64]) -> Taut {
        let mut turned = 0.0;
        let next = |step: &f64| {
            let angle = turned;
            turned += turn(*step, circle);
            angle
        };
        let angles: Vec<f64> = steps.iter().map(next).collect();
        let centres: Vec<_> = angles.iter().map(|angle| Point::towards(*angle) * circle).collect();
        let axes: Vec<_> = angles.iter().map(|angle| angle + FRAC_PI_2).collect();
        let straight: f64 = self.pairs().map(|(one, next)| one.step(next)).sum();
        let placed = self.chords.iter().zip(&centres).zip(&axes);
        let gates: Vec<_> = placed.flat_map(|((chord, centre), axis)| chord.gates(*centre, *axis)).collect();
        let slack = (passage::shortest(gates) - straight).max(0.0);
        Taut { radius, centres, axes, slack }
    }
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

    /// What must hold of a closed row of links without rims: steps kept, nothing in the limb, once round on one circle.
    fn assert_taut(chords: &[Chord]) -> Taut {
        let taut = close(chords).unwrap();
        let (count, circle) = (chords.len(), taut.centres[0].length());
        let mut turned = 0.0;
        for at in 0..count {
            let [here, next] = [at, at + 1].map(|at| taut.centres[at % count]);
            assert!((here.distance(next) - chords[at].step(&chords[(at + 1) % count])).abs() < 1e-9, "{at}");
            assert!((here.length() - circle).abs() < 1e-9 && circle - taut.radius - chords[at].inward > -1e-9, "{at}");
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
    fn many_small_balls_leave_the_trades_rule() {
        // Length less pi times the thickest.
        let mut chords = balls(&[0.05], 4_000);
        chords.extend(balls(&[8.0], 1));
        assert!((assert_taut(&chords).girth() - (208.0 - 8.0 * PI)).abs() < 0.02);
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
            let taut = close(&chords).unwrap();
            let circle = taut.centres[0].length();
            let row = Row { chords: &chords, turns: 1.0 };
            let again = row.settled().unwrap().1;
            let lean = |step: f64| 0.5 * turn(step, circle);
            let kept = row
                .pairs()
                .zip(&again)
                .all(|((one, next), step)| (one.leaning(next, [lean(*step); 2]) - step).abs() < 1e-7);
            assert!(kept && taut.radius > 10.0, "{seed}: {}", taut.radius);
            let mut backward: Vec<_> = chords.iter().rev().copied().collect();
            backward.rotate_left(5);
            assert!((close(&backward).unwrap().radius - taut.radius).abs() < 1e-6, "{seed}");
            assert!(taut.slack > 0.0);
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
