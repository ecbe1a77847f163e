//! Where beads that slide on bare cord come to rest.
//!
//! **Problem.** A train may start anywhere in its range. Friction between beads and cord is
//! neglected: it rests where the strand's potential energy is least.
//!
//! **Equation.** The least energy over all shapes is E = W Y - D (see [`mod@super::hang`]), so the
//! train rests where D, at its own minimum over (H, V), is greatest. As (H, V) is best already, the
//! slope of D by the train's start is its slope at fixed (H, V): with r the force in a link,
//! u its direction's rise, and dl and ds the changes of length and of the weight before the centre,
//! dD = sum dl r + l u ds. Sliding lengthens the cord before the train and shortens that after it.
//! A train weighs more for its length than the cord alone, so that E is taken to have one lowest
//! place.
//!
//! **Trade-off.** Stiff cord counts as limp here: a train rests where it would on that.
//!
//! **Source.** Least potential energy, as in any textbook of mechanics; the slope is derived here.
//!
//! **Method.** The slope's zero between the ends of the range, by regula falsi (Illinois rule) down
//! to 10⁻⁷ mm; at an end where the slope pushes against it. Several trains in turn until none
//! moves. A strand that reads the same from both ends rests in the middle exactly, by symmetry.
//!
//! **Cap.** 100 hangs a train and 100 rounds over the trains; past these a fault.

use super::chain::{Chain, Content, cord_weight, earliest, latest};
use super::hang::{self, Hanging, Unhung};
use crate::design::{Design, Rest, Strand, Train};
use crate::geometry::Point;

/// Stations are exact to this many mm.
const EXACT: f64 = 1e-7;
/// Hangs in the search for one train's place; halving alone would need 33 for a metre.
const SEARCHES: u32 = 100;
/// Rounds over several trains. Each moves the others ever less.
const ROUNDS: u32 = 100;
/// Lengths (mm) and weights (N) that differ by less are the same, for symmetry.
const SAME: f64 = 1e-9;

/// The stations at which a strand's trains start when it hangs from the origin and `end`.
///
/// # Errors
/// Where the strand cannot be hung, or no place of rest was found.
pub fn starts(design: &Design, strand: &Strand, end: Point) -> Result<Vec<f64>, Unhung> {
    let mut starts = middles(strand);
    let free: Vec<usize> = (0..starts.len()).filter(|&index| is_free(&strand.trains[index])).collect();
    if free.is_empty() || (free.len() == 1 && end.y == 0.0 && is_symmetric(design, strand)) {
        return Ok(starts);
    }
    for _ in 0..ROUNDS {
        let mut moved: f64 = 0.0;
        for &index in &free {
            let before = starts[index];
            settle(design, strand, end, &mut starts, index)?;
            moved = moved.max((starts[index] - before).abs());
        }
        if free.len() == 1 || moved < 10.0 * EXACT {
            return Ok(starts);
        }
    }
    Err(Unhung::Unsettled)
}

/// The middle of every train's range.
#[must_use]
pub fn middles(strand: &Strand) -> Vec<f64> {
    strand.trains.iter().map(|train| 0.5 * (earliest(train) + latest(train))).collect()
}

/// The last station of every train's range: where it slides when the last end hangs free.
#[must_use]
pub fn lows(strand: &Strand) -> Vec<f64> {
    strand.trains.iter().map(latest).collect()
}

fn is_free(train: &Train) -> bool {
    !train.bits.is_empty() && matches!(train.rest, Rest::Free(from, to) if to > from)
}

/// Puts one train where the slope vanishes and leaves the others.
fn settle(design: &Design, strand: &Strand, end: Point, starts: &mut [f64], index: usize) -> Result<(), Unhung> {
    let train = &strand.trains[index];
    let weight = cord_weight(design, strand);
    let slope = |start: f64| {
        let mut starts = starts.to_vec();
        starts[index] = start;
        let chain = Chain::new(design, strand, &starts);
        hang::solve(&chain.links, end).map(|hanging| pull(&chain, &hanging, weight, index))
    };
    starts[index] = zero(earliest(train), latest(train), slope)?;
    Ok(())
}

/// Where a falling slope between two places vanishes, or the end that it pushes against.
fn zero(from: f64, to: f64, slope: impl Fn(f64) -> Result<f64, Unhung>) -> Result<f64, Unhung> {
    let (mut low, mut high) = ((from, slope(from)?), (to, slope(to)?));
    if low.1 <= 0.0 {
        return Ok(low.0);
    }
    if high.1 >= 0.0 {
        return Ok(high.0);
    }
    let mut before = 0.0;
    for _ in 0..SEARCHES {
        if high.0 - low.0 <= EXACT {
            return Ok(0.5 * (low.0 + high.0));
        }
        let guess = low.0 + (high.0 - low.0) * low.1 / (low.1 - high.1);
        let at = guess.clamp(low.0 + 0.5 * EXACT, high.0 - 0.5 * EXACT);
        let here = slope(at)?;
        // An end that is kept twice counts half, so that the next guess falls beyond the zero.
        let kept = if before * here > 0.0 { 0.5 } else { 1.0 };
        if here > 0.0 {
            (low, high.1) = ((at, here), kept * high.1);
        } else {
            (high, low.1) = ((at, here), kept * low.1);
        }
        before = here;
    }
    Err(Unhung::Unsettled)
}

/// The slope of D by the start of a train, in N: the force with which it is pulled on.
fn pull(chain: &Chain, hanging: &Hanging, weight: f64, train: usize) -> f64 {
    let rates = rates(chain, train);
    let (mut before, mut added, mut pull) = (0.0, 0.0, 0.0);
    for ((link, direction), rate) in chain.links.iter().zip(&hanging.directions).zip(rates) {
        let up = hanging.up + before + link.weight * (1.0 - link.centre);
        let force = hanging.across * direction.x + up * direction.y;
        let change = added + weight * rate * (1.0 - link.centre);
        pull += rate * force + link.length * direction.y * change;
        before += link.weight;
        added += weight * rate;
    }
    pull
}

/// How fast each link lengthens as a train slides on.
fn rates(chain: &Chain, train: usize) -> Vec<f64> {
    let is_train = |piece: &Content| matches!(piece, Content::Bit(index, _) if *index == train);
    let first = chain.pieces.iter().position(is_train).unwrap_or(0);
    let last = chain.pieces.iter().rposition(is_train).map_or(0, |last| last + 1);
    let mut from = first;
    while from > 0 && chain.pieces[from - 1] == Content::Cord {
        from -= 1;
    }
    let after = chain.pieces[last..].iter().take_while(|piece| **piece == Content::Cord).count();
    let mut rates = vec![0.0; chain.pieces.len()];
    rates[from..first].fill(1.0 / (first - from) as f64);
    rates[last..last + after].fill(-1.0 / after as f64);
    rates
}

/// Whether a strand, its trains in the middle of their ranges, reads the same from both ends.
fn is_symmetric(design: &Design, strand: &Strand) -> bool {
    let links = Chain::new(design, strand, &middles(strand)).links;
    let near = |a: f64, b: f64| (a - b).abs() < SAME;
    links.iter().zip(links.iter().rev()).all(|(a, b)| {
        near(a.length, b.length) && near(a.weight, b.weight) && near(a.centre * a.length, (1.0 - b.centre) * b.length)
    })
}
