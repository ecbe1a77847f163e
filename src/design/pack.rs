//! Beads pushed together on a cord: where each lies, and how long they run.
//!
//! Two beads touch along the hole where both have substance: at the rim of the wider hole. A bead that
//! is narrower than that hole touches nothing there; it slips inside, and the beads on both sides of it
//! meet. So each bead is held apart from every bead before it, not from the next one alone:
//! x(j) >= x(i) + apart(i, j) for all i < j that touch at all. The smallest x that do it are the longest
//! paths from the first end, and the last end is where no bead reaches beyond.

use super::row::reach;
use super::stock::Bead;

/// Places that differ by less are the same: rounding.
const HAIR: f64 = 1e-9;

/// A run of beads pushed towards its first end, in mm from there.
struct PushedRun {
    centres: Vec<f64>,
    length: f64,
}

/// How much cord each bead of a run takes before and after its centre, in mm. What lies inside another bead,
/// or loose, has its place where the beads beside it leave it one.
pub fn shares(run: &[&Bead]) -> Vec<(f64, f64)> {
    let PushedRun { centres, length } = packed(run);
    let apart = |at: usize| share(run[at], run[at + 1], centres[at + 1] - centres[at]);
    let inner: Vec<_> = (1..run.len()).map(|next| apart(next - 1)).collect();
    let first = centres.first().copied().unwrap_or_default();
    let last = length - centres.last().copied().unwrap_or_default();
    let before = std::iter::once(first).chain(inner.iter().map(|(_, before)| *before));
    let after = inner.iter().map(|(after, _)| *after).chain(std::iter::once(last));
    before.zip(after).take(run.len()).collect()
}

/// The same of a run that closes on itself, so that its last bead meets its first one: the middle one of three
/// times round, which no end disturbs.
pub fn closed(run: &[&Bead]) -> Vec<(f64, f64)> {
    let round = shares(&run.repeat(3));
    round.into_iter().skip(run.len()).take(run.len()).collect()
}

/// Where two neighbours so far apart part the cord between them: where they touch, if they do.
fn share(one: &Bead, next: &Bead, apart: f64) -> (f64, f64) {
    let (left, right) = (reach(one, Some(next))[1], reach(next, Some(one))[0]);
    let both = left + right;
    if (apart - both).abs() < HAIR || both <= 0.0 {
        return (left, right);
    }
    (apart * left / both, apart * right / both)
}

fn packed(run: &[&Bead]) -> PushedRun {
    let most = run.iter().flat_map(|bead| reach(bead, None)).fold(0.0, f64::max);
    let mut centres: Vec<f64> = Vec::with_capacity(run.len());
    // The highest centre up to each bead: farther back than two reaches nothing touches.
    let mut highest: Vec<f64> = Vec::with_capacity(run.len());
    for (at, bead) in run.iter().enumerate() {
        let mut centre = reach(bead, None)[0];
        for before in (0..at).rev() {
            if highest[before] + 2.0 * most < centre {
                break;
            }
            let apart = apart(run[before], bead).unwrap_or(f64::NEG_INFINITY);
            centre = centre.max(centres[before] + apart);
        }
        centres.push(centre);
        highest.push(highest.last().map_or(centre, |before| before.max(centre)));
    }
    let ends = run.iter().zip(&centres).map(|(bead, centre)| centre + reach(bead, None)[1]);
    PushedRun { length: ends.fold(0.0, f64::max), centres: highest }
}

/// How far two beads' centres are apart when they touch; nothing where one goes through the other.
fn apart(one: &Bead, other: &Bead) -> Option<f64> {
    (!one.slips_into(other) && !other.slips_into(one)).then(|| reach(one, Some(other))[1] + reach(other, Some(one))[0])
}

impl Bead {
    /// Whether it is narrower than the hole of another, and so goes inside.
    #[must_use]
    pub fn slips_into(&self, other: &Self) -> bool {
        self.broadest() < *other.hole
    }
}
