//! Whether a loop is long enough to go round a neck.
//!
//! **Equation.** Round a neck of radius r a straight piece l long, that keeps its reach w off the skin at its middle, turns by
//! 2 atan(l / 2 (r + w)). All turns make at least one round: what is beyond that times the mean of r + w is to spare.
//! Where beads part in these turns (`super::super::open`) the loop is so much longer, less what bare cord gives for it.
//!
//! **Approximation.** The neck counts as round, with the girth that it has: tapes of one breadth laid round any smooth neck
//! are as much longer than its girth, whatever its section.

use std::f64::consts::TAU;

use super::loops::{Straight, length};

/// How much longer in mm a strand and its closure are than what goes round a neck of a radius; less than nothing where they
/// are shorter.
pub fn spare(strand: &[Straight], closing: &[Straight], neck: f64) -> f64 {
    let turn = |piece: &Straight| 2.0 * libm::atan(0.5 * piece.link.length / (neck + piece.reach));
    let pieces = || strand.iter().chain(closing);
    let outward = pieces().map(|piece| piece.link.length * (neck + piece.reach)).sum::<f64>();
    let mean = outward / (length(strand) + length(closing)).max(f64::MIN_POSITIVE);
    (pieces().map(turn).sum::<f64>() - TAU) * mean + parted(strand, turn)
}

/// By how much longer than laid straight a strand is where pieces turn so.
fn parted(strand: &[Straight], turn: impl Fn(&Straight) -> f64) -> f64 {
    let joint = |pair: &[Straight]| Some((pair[0].hinge?, 0.5 * (turn(&pair[0]) + turn(&pair[1]))));
    let turns: Vec<_> = strand.windows(2).filter_map(joint).collect();
    let opens: f64 = turns.iter().map(|(hinge, turn)| 2.0 * hinge.opens(*turn)).sum();
    let takes: f64 = turns.iter().map(|(hinge, turn)| hinge.takes(*turn)).sum();
    let spare: f64 = strand.iter().map(|piece| piece.spare).sum();
    let bare: f64 = strand.iter().map(|piece| piece.bare).sum();
    spare + opens - takes.min(bare)
}

#[cfg(test)]
mod tests {
    use super::super::super::hang::Link;
    use super::*;

    /// By pencil: n pieces whose middles touch a circle are the sides of a polygon about it, 2 n R tan(pi / n) round.
    #[test]
    fn what_is_to_spare_is_what_the_loop_has_more_than_the_polygon() {
        let (neck, reach, count) = (50.0, 3.0, 40_u32);
        let side = 2.0 * (neck + reach) * libm::tan(0.5 * TAU / f64::from(count));
        let piece = |length: f64| Straight::new(Link { length, weight: 1.0, centre: 0.5 }, reach);
        assert!(spare(&[piece(side); 40], &[], neck).abs() < 1e-9);
        let short = spare(&[piece(side - 0.1); 40], &[], neck);
        assert!((short + 4.0).abs() < 0.05, "{short}");
        assert!((spare(&[piece(side); 30], &[piece(side + 0.1); 10], neck) - 1.0).abs() < 0.02);
    }
}
