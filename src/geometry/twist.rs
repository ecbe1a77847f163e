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
const HALVINGS: u32 = 55;
/// Steps after which strands so near their greatest number of turns count as turned too often.
const STEPS: u32 = 1_000;
/// The twisted length is known to this share of it, or nearly.
const NEAR: f64 = 1e-10;
/// Rings as thin as others to this share of their radius are no thinner.
const THINNER: f64 = 1e-9;
/// Strands of a ring keep clear of so many that follow on either side.
const BESIDE: usize = 5;
/// A ring that goes round by more than a whole turn by less than this, in radians, does not.
const ROUNDING: f64 = 1e-12;
/// Where strands do not lie beside one another at a radius so many times the least, they do so nowhere.
const FAR: f64 = 1e3;

/// A strand that is to be twisted. Lengths are mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ply {
    /// From end to end, in mm.
    pub length: f64,
    /// Its diameter, in mm.
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
    /// Along the line, from end to end, in mm.
    pub length: f64,
    /// How each strand lies, in the order in which they were given.
    pub lays: Vec<Lay>,
}

/// How a strand lies in the twist.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Lay {
    /// From the line to the strand's middle, drawn taut, in mm.
    pub radius: f64,
    /// How far round it starts, in radians.
    pub start: f64,
    /// How much longer it is than its way, in mm.
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
    /// one ring, or of a ring of three or more on the thinnest core of fewer. For this alone, all of a ring count as
    /// equally wide.
    fn thinnest(&self) -> Vec<Range<usize>> {
        let mut best: Vec<(f64, Vec<Range<usize>>)> = vec![(0.0, Vec::new())];
        for count in 1..=self.plies.len() {
            let mut thinnest: Option<(f64, Vec<Range<usize>>)> = None;
            for core in (0..count).filter(|core| *core == 0 || count - core > 2) {
                let ring = core..count;
                let outside = self.least(&ring, best[core].0).max(self.circle(&ring)) + 0.5 * self.widest(&ring);
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

    /// The least radius of a ring on a core so thick.
    fn least(&self, ring: &Range<usize>, core: f64) -> f64 {
        if core > 0.0 { core + 0.5 * self.widest(ring) } else { 0.0 }
    }

    /// The radius at which circles in a ring touch, all of them as wide as they are on average.
    fn circle(&self, ring: &Range<usize>) -> f64 {
        let count = ring.len() as f64;
        let mean = self.in_ring(ring).map(|ply| ply.width).sum::<f64>() / count;
        if ring.len() < 2 { 0.0 } else { 0.5 * mean / libm::sin(PI / count) }
    }

    /// The least radius of a ring on a core so thick that rises by p with each turn; none where it does not go round
    /// at all.
    fn radius(&self, ring: &Range<usize>, core: f64, rise: f64) -> Option<f64> {
        let least = self.least(ring, core);
        if ring.len() < 2 {
            return Some(least);
        }
        let widths: Vec<f64> = self.in_ring(ring).map(|ply| ply.width).collect();
        let fits = |radius: f64| starts(&widths, radius, rise).is_some();
        let mut low = least.max(0.25 * (widths[0] + widths[1]));
        let mut high = FAR * low;
        if fits(low) {
            return Some(low);
        }
        fits(high).then_some(())?;
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
            let widths: Vec<f64> = self.in_ring(ring).map(|ply| ply.width).collect();
            for (at, start) in self.order[ring.clone()].iter().zip(starts(&widths, radius, rise)?) {
                lays[*at] = Lay { radius, start, slack: (self.plies[*at].length - way).max(0.0) };
            }
        }
        Some(Twisted { length: turns * rise, lays })
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

/// How far round each strand of a ring starts, of such widths, at a radius and a rise: each as soon as it keeps clear of
/// those before, and what room is left evenly between them; none where there is less than none.
fn starts(widths: &[f64], radius: f64, rise: f64) -> Option<Vec<f64>> {
    if widths.len() < 2 {
        return Some(vec![0.0; widths.len()]);
    }
    let count = widths.len();
    let mut known = Vec::new();
    let mut angle = |one: usize, other: usize| clear(0.5 * (widths[one] + widths[other]), radius, rise, &mut known);
    let mut starts = vec![0.0_f64; count];
    let mut room = f64::INFINITY;
    for at in 1..count {
        for before in at.saturating_sub(BESIDE)..at {
            starts[at] = starts[at].max(starts[before] + angle(before, at)?);
        }
        // On round to the first ones.
        for after in 0..at.min((at + BESIDE + 1).saturating_sub(count)) {
            room = room.min(TAU - (starts[at] - starts[after]) - angle(after, at)?);
        }
    }
    let between = room / count as f64;
    (room >= -ROUNDING).then(|| starts.iter().enumerate().map(|(at, start)| start + between * at as f64).collect())
}

/// How far round strands lie from each other that touch so far apart; most rings are of strands alike, whose angle is
/// known.
fn clear(apart: f64, radius: f64, rise: f64, known: &mut Vec<(f64, f64)>) -> Option<f64> {
    if let Some((_, angle)) = known.iter().find(|(same, _)| *same == apart) {
        return Some(*angle);
    }
    let angle = touching(apart / radius, rise / (TAU * radius))?;
    known.push((apart, angle));
    Some(angle)
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
mod tests;
