//! Strands twisted round one line.
//!
//! **Problem.** Strands of given lengths and widths are gathered at both ends, one end is turned so many times, and
//! they are drawn out: how long is the twisted piece, which of them are slack, and how long must they be for a wanted
//! length?
//!
//! **Equation.** A strand that lies round the line at a radius R and rises by p with each turn is a [`Helix`]; of N
//! turns its length L and the twisted length H obey L² = H² + (2 pi N R)², with H = N p. R is the least at which no
//! strand lies in another. Two helices of one R and p, the one so far round from the other as the angle f says, have
//! between them, at the turn s of the one seen from the other, the square 2 R² (1 - cos(s + f)) + (p s / 2 pi)². It is
//! least where R² sin(s + f) = -(p / 2 pi)² s; with u = s + f and a = p / 2 pi R they touch at the distance
//! R sqrt(2 (1 - cos u) + sin² u / a²) where f = u + sin u / a². All angles round a ring add up to a whole turn, or
//! leave room. H follows from the strands' lengths step by step: R of the p that is known, then p of the strand that is
//! drawn tautest. From above this falls to the longest H there is; where it falls through, so many turns do not go in:
//! strands have a greatest number of turns (Bohr and Olsen, "The ancient art of laying rope", EPL 93 (2011) 60004,
//! arXiv 1004.0814).
//!
//! **Approximation.** A strand is a smooth tube: beads do not settle into the gaps of their neighbours, which lets real
//! strands of round beads come out a little longer (0.3 % in the tests). Strands lie in rings, as wires in a cable, the shortest inmost, in as
//! few rings as come out thinnest; all of a ring lie at one radius, and a ring on a core lies clear of all of it.
//! Equally long strands of a core are slack by what the outer ones need more. Without friction, stiffness or stretch; the
//! whole length is twisted evenly.

use std::f64::consts::{PI, TAU};
use std::ops::Range;

use super::helix::Helix;

/// Halvings after which an angle or a radius is known to the last figure that counts.
const HALVINGS: u32 = 50;
/// Steps after which strands so near their greatest number of turns count as turned too often.
const STEPS: u32 = 1_000;
/// The twisted length is known to this share of it.
const NEAR: f64 = 1e-12;
/// Rings as thin as others to this share of their radius are no thinner.
const THINNER: f64 = 1e-9;

/// A strand that is to be twisted. Lengths are mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ply {
    /// From end to end.
    pub length: f64,
    /// Its diameter.
    pub width: f64,
}

/// Strands round one line, whatever the number of turns: in rings from the core out.
#[derive(Clone, Debug, PartialEq)]
pub struct Bundle {
    plies: Vec<Ply>,
    /// Indices of the strands, the shortest first.
    order: Vec<usize>,
    /// Which of the order lie in each ring.
    rings: Vec<Range<usize>>,
}

/// What twisting makes of strands.
#[derive(Clone, Debug, PartialEq)]
pub struct Twisted {
    /// Along the line, from end to end.
    pub length: f64,
    /// How each strand lies, in the order in which they were given.
    pub lays: Vec<Lay>,
}

/// How a strand lies in the twist.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Lay {
    /// From the line to the strand's middle, drawn taut.
    pub radius: f64,
    /// How far round it starts, in radians.
    pub start: f64,
    /// How much longer it is than its way.
    pub slack: f64,
}

impl Bundle {
    /// Arranges strands. Widths and lengths are positive.
    #[must_use]
    pub fn new(plies: &[Ply]) -> Self {
        let mut order: Vec<usize> = (0..plies.len()).collect();
        order.sort_by(|one, other| plies[*one].length.total_cmp(&plies[*other].length));
        let mut bundle = Self { plies: plies.to_vec(), order, rings: Vec::new() };
        bundle.rings = bundle.thinnest();
        bundle
    }

    /// The strands, in the order in which they were given.
    #[must_use]
    pub fn plies(&self) -> &[Ply] {
        &self.plies
    }

    /// The rings that come out thinnest, untwisted: of each number of the shortest strands the thinnest core is that of
    /// one ring, or of a ring of three or more on the thinnest core of fewer.
    fn thinnest(&self) -> Vec<Range<usize>> {
        let mut best: Vec<(f64, Vec<Range<usize>>)> = vec![(0.0, Vec::new())];
        for count in 1..=self.plies.len() {
            let mut thinnest: Option<(f64, Vec<Range<usize>>)> = None;
            for core in (0..count).filter(|core| *core == 0 || count - core > 2) {
                let ring = core..count;
                let radius = self.radius(&ring, best[core].0, f64::INFINITY).unwrap_or(f64::INFINITY);
                let outside = radius + 0.5 * self.widest(&ring);
                if thinnest.as_ref().is_none_or(|(least, _)| outside < least * (1.0 - THINNER)) {
                    thinnest = Some((outside, [best[core].1.clone(), vec![ring]].concat()));
                }
            }
            best.extend(thinnest);
        }
        best.pop().map(|(_, rings)| rings).unwrap_or_default()
    }

    fn in_ring(&self, ring: &Range<usize>) -> impl Iterator<Item = &Ply> + Clone {
        self.order[ring.clone()].iter().map(|at| &self.plies[*at])
    }

    fn widest(&self, ring: &Range<usize>) -> f64 {
        self.in_ring(ring).map(|ply| ply.width).fold(0.0, f64::max)
    }

    /// How far apart the middles of neighbours in a ring are where they touch, from the first on and round to it.
    fn apart(&self, ring: &Range<usize>) -> Vec<f64> {
        let next = self.in_ring(ring).cycle().skip(1);
        self.in_ring(ring).zip(next).map(|(one, other)| 0.5 * (one.width + other.width)).collect()
    }

    /// The least radius of a ring on a core so thick that rises by p with each turn; none where it does not go round
    /// at all.
    fn radius(&self, ring: &Range<usize>, core: f64, rise: f64) -> Option<f64> {
        let least = if core > 0.0 { core + 0.5 * self.widest(ring) } else { 0.0 };
        if ring.len() < 2 {
            return Some(least);
        }
        let apart = self.apart(ring);
        if rise <= apart.iter().sum() {
            return None;
        }
        let fits = |radius: f64| angles(&apart, radius, rise).is_some_and(|angles| angles.iter().sum::<f64>() <= TAU);
        let mut low = least.max(0.5 * apart.iter().copied().fold(0.0, f64::max));
        if fits(low) {
            return Some(low);
        }
        let mut high = 2.0 * low;
        while !fits(high) {
            (low, high) = (high, 2.0 * high);
            if !high.is_finite() {
                return None;
            }
        }
        for _ in 0..HALVINGS {
            let middle = low.midpoint(high);
            *if fits(middle) { &mut high } else { &mut low } = middle;
        }
        Some(high)
    }

    /// The radius of each ring.
    fn radii(&self, rise: f64) -> Option<Vec<f64>> {
        let mut core = 0.0;
        let radius = |ring: &Range<usize>| {
            let radius = self.radius(ring, core, rise)?;
            core = radius + 0.5 * self.widest(ring);
            Some(radius)
        };
        self.rings.iter().map(radius).collect()
    }

    /// The strands drawn out after so many turns; none where so many do not go in.
    #[must_use]
    pub fn twisted(&self, turns: f64) -> Option<Twisted> {
        let tautest = |radii: &[f64]| {
            let left = self.rings.iter().zip(radii).flat_map(|(ring, radius)| {
                let round = TAU * radius;
                self.in_ring(ring).map(move |ply| (ply.length / turns).powi(2) - round * round)
            });
            Some(left.fold(f64::INFINITY, f64::min)).filter(|left| *left > 0.0).map(f64::sqrt)
        };
        let mut rise = self.plies.iter().map(|ply| ply.length).fold(f64::INFINITY, f64::min) / turns;
        for _ in 0..STEPS {
            let next = tautest(&self.radii(rise)?)?;
            if rise - next <= NEAR * rise {
                return self.lying(turns, next);
            }
            rise = next;
        }
        None
    }

    /// How they lie that rise so much with each of so many turns.
    fn lying(&self, turns: f64, rise: f64) -> Option<Twisted> {
        let mut lays = vec![Lay::default(); self.plies.len()];
        for (ring, radius) in self.rings.iter().zip(self.radii(rise)?) {
            let way = turns * Helix { radius, rise }.turn();
            for (at, start) in self.order[ring.clone()].iter().zip(self.starts(ring, radius, rise)?) {
                lays[*at] = Lay { radius, start, slack: (self.plies[*at].length - way).max(0.0) };
            }
        }
        Some(Twisted { length: turns * rise, lays })
    }

    /// How far round each of a ring starts: what room is left lies evenly between them.
    fn starts(&self, ring: &Range<usize>, radius: f64, rise: f64) -> Option<Vec<f64>> {
        if ring.len() < 2 {
            return Some(vec![0.0; ring.len()]);
        }
        let angles = angles(&self.apart(ring), radius, rise)?;
        let room = (TAU - angles.iter().sum::<f64>()) / ring.len() as f64;
        let mut start = 0.0;
        let next = |angle: &f64| {
            let at = start;
            start += angle + room;
            at
        };
        Some(angles.iter().map(next).collect())
    }

    /// How long each strand must be to be taut in a twisted piece of a length with so many turns; none where so many do
    /// not go into it.
    #[must_use]
    pub fn needed(&self, turns: f64, length: f64) -> Option<Vec<f64>> {
        let rise = length / turns;
        let mut needed = vec![0.0; self.plies.len()];
        for (ring, radius) in self.rings.iter().zip(self.radii(rise)?) {
            let way = turns * Helix { radius, rise }.turn();
            self.order[ring.clone()].iter().for_each(|at| needed[*at] = way);
        }
        Some(needed)
    }

    /// How thick the bundle is whose strands lie so.
    #[must_use]
    pub fn thickness(&self, lays: &[Lay]) -> f64 {
        let outside = self.plies.iter().zip(lays).map(|(ply, lay)| 2.0 * lay.radius + ply.width);
        outside.fold(0.0, f64::max)
    }
}

/// How far round neighbours lie from each other that touch so far apart, at a radius and a rise; none where some cannot
/// touch there but lie in each other.
fn angles(apart: &[f64], radius: f64, rise: f64) -> Option<Vec<f64>> {
    // Most rings are of strands alike.
    let mut known: Option<(f64, f64)> = None;
    let angle = |apart: &f64| match known.filter(|(same, _)| same == apart) {
        Some((_, angle)) => Some(angle),
        None => {
            let angle = touching(apart / radius, rise / (TAU * radius))?;
            known = Some((*apart, angle));
            Some(angle)
        }
    };
    apart.iter().map(angle).collect()
}

/// How far round one helix lies from another, in radians, that touch so many radii apart and rise by so many radii with
/// each radian; none where they are never so far apart.
fn touching(apart: f64, rise: f64) -> Option<f64> {
    let steep = 1.0 / (rise * rise);
    let distance = |turned: f64| 2.0 * (1.0 - libm::cos(turned)) + steep * libm::sin(turned).powi(2);
    let most = if rise < 1.0 { libm::acos(-rise * rise) } else { PI };
    if apart * apart > distance(most) {
        return None;
    }
    let (mut low, mut high): (f64, f64) = (0.0, most);
    for _ in 0..HALVINGS {
        let middle = low.midpoint(high);
        *if distance(middle) < apart * apart { &mut low } else { &mut high } = middle;
    }
    Some(high + steep * libm::sin(high))
}

#[cfg(test)]
mod tests {
    use super::super::Point3;
    use super::*;

    fn alike(count: usize, length: f64, width: f64) -> Bundle {
        Bundle::new(&vec![Ply { length, width }; count])
    }

    /// The least distance between two strands of a twist, by places along both: a fine look about the nearest of coarse
    /// ones.
    fn nearest(rise: f64, one: Lay, other: Lay) -> f64 {
        let at = |lay: Lay, turned: f64| {
            let Point3 { x, y, .. } = Helix { radius: lay.radius, rise: 0.0 }.at(turned + lay.start);
            Point3::new(x, y, rise * turned / TAU)
        };
        let here = at(one, 0.0);
        let away = |turned: f64| here.distance(at(other, turned));
        let look = |middle: f64, half: f64| {
            let places = (-2_000..=2_000).map(|step| middle + half * f64::from(step) / 2_000.0);
            places.min_by(|one, other| away(*one).total_cmp(&away(*other))).unwrap_or_default()
        };
        let coarse = look(0.0, 1.5 * TAU);
        away(look(coarse, 1.5 * TAU / 1_000.0))
    }

    #[test]
    fn neighbours_just_touch_and_none_lies_in_another() {
        for (count, turns) in [(2, 3.0), (2, 20.0), (3, 5.0), (3, 17.0), (4, 12.0), (5, 10.0), (7, 8.0), (12, 6.0)] {
            let Twisted { length, lays } = alike(count, 450.0, 4.0).twisted(turns).unwrap();
            let rise = length / turns;
            let pairs = (0..count).flat_map(|one| (one + 1..count).map(move |other| (one, other)));
            let apart: Vec<_> = pairs.map(|(one, other)| nearest(rise, lays[one], lays[other])).collect();
            let least = apart.iter().copied().fold(f64::INFINITY, f64::min);
            assert!((least - 4.0).abs() < 1e-4, "{count} strands, {turns} turns: {least}");
            let lengths = lays.iter().map(|lay| libm::hypot(length, TAU * turns * lay.radius) + lay.slack);
            lengths.for_each(|long| assert!((long - 450.0).abs() < 1e-6, "{long}"));
        }
    }

    #[test]
    fn strands_of_other_widths_touch_their_neighbours() {
        let plies = [(450.0, 4.0), (450.0, 2.0), (450.0, 3.0), (450.0, 2.5)];
        let bundle = Bundle::new(&plies.map(|(length, width)| Ply { length, width }));
        let Twisted { length, lays } = bundle.twisted(9.0).unwrap();
        for at in 0..4 {
            let (one, other) = (at, (at + 1) % 4);
            let apart = nearest(length / 9.0, lays[one], lays[other]);
            assert!((apart - 0.5 * (plies[one].1 + plies[other].1)).abs() < 1e-4, "{apart}");
        }
    }

    #[test]
    fn without_turns_they_lie_as_circles_do() {
        // Touching circles round a point, by the chord d = 2 R sin(pi / n); 7 have one within, 12 have three.
        for (count, radius) in [(1, 0.0), (2, 1.0), (3, 2.0 / 3.0_f64.sqrt()), (4, 2.0_f64.sqrt()), (6, 2.0), (7, 2.0)]
        {
            let Twisted { length, lays } = alike(count, 1e4, 2.0).twisted(1e-3).unwrap();
            assert!((lays[count - 1].radius - radius).abs() < 1e-6, "{count}: {}", lays[count - 1].radius);
            assert!((length - 1e4).abs() < 1e-3, "{length}");
        }
        assert_eq!(alike(7, 1e4, 2.0).rings, [0..1, 1..7]);
        assert_eq!(alike(12, 1e4, 2.0).rings, [0..3, 3..12]);
    }

    #[test]
    fn bundles_of_few_rings_are_hardly_thicker_than_the_densest_known() {
        // Circles in a circle: `circle_packing.csv`, of known packings. Rings are one way to lie, so never thinner.
        for row in include_str!("../../tests/oracles/data/circle_packing.csv").lines().skip(1) {
            let cells: Vec<_> = row.split(',').collect();
            let (count, best): (usize, f64) =
                (cells[0].parse().unwrap(), cells[3].trim_end_matches('.').parse().unwrap());
            let bundle = alike(count, 1e4, 2.0);
            let lays = bundle.twisted(1e-3).unwrap().lays;
            let ratio = 0.5 * bundle.thickness(&lays);
            assert!(ratio > best - 1e-3 && ratio < 1.05 * best, "{count}: {ratio}, {best}");
        }
    }

    #[test]
    fn a_cable_of_wires_follows_the_handbook() {
        // Costello, "Theory of Wire Rope": wires of radius r just touch at r sqrt(1 + tan²(pi/2 - pi/m) / sin²(a)), a
        // the angle to the cross-section (from memory; it takes the wires' sections as ellipses, and holds for steep a).
        for (count, angle) in [(3, 80.0_f64), (4, 75.0), (5, 75.0), (6, 72.0)] {
            let (sine, tangent) = (libm::sin(angle.to_radians()), libm::tan(0.5 * PI - PI / count as f64));
            let handbook = (1.0 + (tangent / sine).powi(2)).sqrt();
            let rise = TAU * handbook * libm::tan(angle.to_radians());
            let radius = alike(count, 450.0, 2.0).radius(&(0..count), 0.0, rise).unwrap();
            assert!((radius / handbook - 1.0).abs() < 0.01, "{count}: {radius}, {handbook}");
        }
    }

    #[test]
    fn strands_have_a_greatest_number_of_turns() {
        // Three strands then make a rope of 68 % of their length (Bohr and Olsen 2010, as told by Science News).
        let bundle = alike(3, 1_000.0, 4.0);
        let (mut low, mut high) = (1.0, 200.0);
        for _ in 0..20 {
            let middle = 0.5 * (low + high);
            *if bundle.twisted(middle).is_some() { &mut low } else { &mut high } = middle;
        }
        let share = bundle.twisted(low).unwrap().length / 1_000.0;
        assert!((share - 0.68).abs() < 0.005, "{share}");
    }

    #[test]
    fn what_is_needed_for_a_length_gives_that_length() {
        for (count, turns) in [(2, 4.0), (3, 6.0), (8, 5.0)] {
            let bundle = alike(count, 450.0, 3.0);
            let needed = bundle.needed(turns, 420.0).unwrap();
            let plies: Vec<_> = needed.iter().map(|length| Ply { length: *length, width: 3.0 }).collect();
            let twisted = Bundle::new(&plies).twisted(turns).unwrap();
            assert!((twisted.length - 420.0).abs() < 1e-6, "{}", twisted.length);
            assert!(twisted.lays.iter().all(|lay| lay.slack < 1e-6));
        }
        assert_eq!(alike(3, 450.0, 4.0).needed(10.0, 110.0), None);
    }

    #[test]
    fn the_shortest_strand_is_taut_and_others_are_slack() {
        let plies = [(460.0, 3.0), (450.0, 3.0), (455.0, 3.0)].map(|(length, width)| Ply { length, width });
        let Twisted { length, lays } = Bundle::new(&plies).twisted(5.0).unwrap();
        assert!(lays[1].slack < 1e-6 && (lays[0].slack - 10.0).abs() < 1e-6 && (lays[2].slack - 5.0).abs() < 1e-6);
        assert!((length - alike(3, 450.0, 3.0).twisted(5.0).unwrap().length).abs() < 1e-9);
    }

    #[test]
    fn an_optimiser_that_knows_no_helix_draws_them_out_as_far() {
        // `twisted_strands.csv`, by its script: one turn of strings of balls, drawn out as far as they go. Balls close
        // together are tubes, whose dents are a few thousandths of their width deep; beads lie in each other's gaps and
        // come out a little longer.
        for row in include_str!("../../tests/oracles/data/twisted_strands.csv").lines().skip(1) {
            let cells: Vec<_> = row.split(',').collect();
            let [count, length, width, best] = [1, 2, 3, 4].map(|at| cells[at].parse::<f64>().unwrap());
            let more = best - alike(count as usize, length, width).twisted(1.0).unwrap().length;
            let most = if cells[0] == "tubes" { 0.02 } else { 0.35 };
            assert!((-1e-3..most).contains(&more), "{row}: {more}");
        }
    }
}
