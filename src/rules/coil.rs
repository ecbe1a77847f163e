//! Memory wire: whether its beads bend with it, and how it lies round its wearer.

use crate::design::{Bead, Cord, Design, Spring};
use crate::remark::Remark;
use crate::remark::said::winding::Winding;
use crate::units::Length;

use super::strung;

/// How far, in turns, a coil may miss what `wraps:` says: an assumption.
const NEAR: f64 = 0.25;
/// How far past a whole turn the ends should lie: a quarter at least; common practice, no source.
const OVERLAP: f64 = 0.2;

/// Remarks about memory wire.
pub fn check(design: &Design) -> Vec<Remark> {
    let Some((spring, strand)) = design.spring().zip(design.sprung()) else { return Vec::new() };
    let cord = &design.cords[strand.cord];
    let stiff = strung(strand).filter_map(|bead| stiff(&design.beads[bead], cord, &spring));
    stiff.chain(small(design, &spring, cord)).chain(turns(design)).collect()
}

/// The narrowest straight hole of a length that hard wire passes, bent as a circle about its middle line. All in mm.
fn narrowest(length: f64, wire: f64, bend: f64) -> f64 {
    let inner = bend - 0.5 * wire;
    let depth = (inner * inner - 0.25 * length * length).max(0.0).sqrt();
    bend + 0.5 * wire - depth
}

/// A bead through whose hole the wire does not bend.
fn stiff(bead: &Bead, cord: &Cord, spring: &Spring) -> Option<Remark> {
    let (length, wire, bend) =
        (2.0 * bead.half_length(0.5 * bead.hole.value()), cord.diameter.value(), spring.helix.bend());
    let needed = Length::mm(narrowest(length, wire, bend));
    // A hole narrower than the wire itself is told of every cord.
    (needed > *bead.hole && cord.diameter <= *bead.hole).then(|| {
        let (name, cord) = (bead.name.clone(), cord.name.clone());
        Remark::new(Winding::BeadStiff { bead: name, cord, hole: *bead.hole, needed }).at(bead.place)
    })
}

/// A coil that stays sprung open round its wearer.
fn small(design: &Design, spring: &Spring, cord: &Cord) -> Option<Remark> {
    let limb = design.wear.narrowest;
    let inside = Length::mm(spring.inside_at_rest());
    (design.wear.is_told() && !design.wear.is_guessed() && limb > inside).then(|| {
        let needed = Length::mm(2.0 * (limb.value() / (2.0 * std::f64::consts::PI) + spring.reach)) - cord.diameter;
        Remark::new(Winding::CoilSmall { inside, limb, needed }).at(cord.place)
    })
}

/// How often it goes round, and whether its ends lie over each other.
fn turns(design: &Design) -> Option<Remark> {
    let (turns, strand) = (design.turns(), design.strands.first()?);
    if (turns - design.wraps).abs() > NEAR {
        return Some(Remark::new(Winding::OtherTurns { turns, wraps: design.wraps }).at(strand.place));
    }
    let past = turns - turns.floor();
    let said = Winding::EndsMeet { turns, better: turns.round() + NEAR };
    (!(OVERLAP..=1.0 - OVERLAP).contains(&past)).then(|| Remark::new(said).at(strand.place))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whether a wire's outline, as points on its two sides, lies between the walls of a hole: the least breadth of the
    /// band that holds it along the hole's length.
    fn tried(length: f64, wire: f64, bend: f64) -> f64 {
        let heights = |radius: f64| {
            (0..=2_000).map(move |step| {
                let across = length * (f64::from(step) / 2_000.0 - 0.5);
                (radius * radius - across * across).sqrt()
            })
        };
        let outer = heights(bend + 0.5 * wire).fold(0.0, f64::max);
        let inner = heights(bend - 0.5 * wire).fold(f64::INFINITY, f64::min);
        outer - inner
    }

    #[test]
    fn a_straight_hole_holds_an_arc() {
        for (length, wire, bend) in [(6.0, 0.6, 28.0), (15.0, 0.7, 28.0), (25.0, 0.6, 55.0), (0.5, 0.6, 10.0)] {
            let needed = narrowest(length, wire, bend);
            assert!((needed - tried(length, wire, bend)).abs() < 1e-6, "{needed}");
            // The height of the arc to first order, l² / 8R.
            assert!(
                (needed - wire - length * length / (8.0 * bend)).abs() < 0.05 * (needed - wire).max(0.02),
                "{needed}"
            );
        }
    }
}
