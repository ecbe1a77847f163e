//! Sizes that the trade takes for granted, each in one place. Patterns may say others.
//!
//! Where no source is named, a figure is common practice or an assumption, and says so. Measures, drawings,
//! materials, rules and steps take them from here alone.

use std::f64::consts::PI;

use crate::units::Length;

/// Outside diameter of a pin's eye, and of the plain loop turned at its other end: common practice, no source.
pub const EYE: Length = Length::mm(3.0);
/// Wall of a stamped finding, such as a bead cap or cone: sheet of about 28 gauge; an assumption.
pub const WALL: Length = Length::mm(0.3);
/// Cord that binds a tassel's neck and makes its loop: common practice, no source.
pub const BINDING: Length = Length::mm(300.0);
/// By how much turns round a card take more than twice its height, as they go round its edges and lie on one another: an
/// assumption.
pub const PILED: f64 = 1.05;
/// Breadth of a tassel over its length, where the pattern does not say: by eye.
pub const TASSEL_BREADTH: f64 = 0.16;
/// Thickness of a tassel's head over the breadth of its threads, by eye, as are the shares that follow.
pub const TASSEL_HEAD: f64 = 0.85;
/// The most that half of that is of the tassel's length.
pub const TASSEL_HEAD_LENGTH: f64 = 0.12;
/// Length of a tassel's loop, and of its head from there to its binding, over half its head's thickness.
pub const TASSEL_LOOP: f64 = 0.8;
/// See [`TASSEL_LOOP`].
pub const TASSEL_NECK: f64 = 1.8;
/// How far the end that goes through the other's ring hangs below it, where the pattern does not say: an assumption.
pub const TAIL: Length = Length::mm(100.0);
/// Thickness of a charm's plate: common practice, no source.
pub const PLATE: Length = Length::mm(1.0);
/// Width of a barrel's ends as a share of its middle: an assumption, as makers state only the middle.
pub const BARREL_END: f64 = 0.7;
/// Share of its box that a chip fills: an assumption.
pub const CHIP_FILLS: f64 = 0.5;
/// Hole of a bead: an assumption.
pub const HOLE: Length = Length::mm(1.0);
/// The most that such a hole takes of a bead's width: an assumption.
pub const HOLE_SHARE: f64 = 0.25;
/// Thickness of a flat bead as a share of its width: an assumption.
pub const FLAT_SHARE: f64 = 0.4;
/// Wire of a chain's link as a share of the link's length: an assumption.
pub const LINK_WIRE: f64 = 0.2;
/// Wire of a jump ring as a share of its inside: an assumption.
pub const RING_WIRE: f64 = 0.2;
/// Wire of a hook as a share of its length: an assumption, as of all shares that follow.
pub const HOOK_WIRE: f64 = 0.08;
/// Wire of a toggle's ring.
pub const TOGGLE_WIRE: f64 = 0.13;
/// Rod of a toggle's bar, which lies across the end of a short shank.
pub const TOGGLE_ROD: f64 = 0.36;
/// Tube of a spring ring.
pub const SPRING_TUBE: f64 = 0.13;
/// Tube of a wire guard.
pub const GUARD_TUBE: f64 = 0.24;
/// Arm of a spectacle loop.
pub const SPECTACLE_WIRE: f64 = 0.05;
/// How thick a trigger clasp lies: one of 12 mm is about 3 mm thick.
pub const CLASP_THICK: f64 = 0.25;
/// Breadth of a knot cover.
pub const COVER_BREADTH: f64 = 0.45;
/// Breadth of a cord end.
pub const CORD_END_BREADTH: f64 = 0.4;
/// How thick half of a box clasp lies.
pub const BOX_THICK: f64 = 0.4;
/// Breadth of half of a barrel.
pub const BARREL_BREADTH: f64 = 0.62;
/// Wire of an ear wire or bail: 20 gauge; common practice, no source.
pub const EAR_WIRE: Length = Length::mm(0.8);
/// Cord in a crimped end's loop, measured along the piece: a 2 mm crimp with its loop adds 3/16 in
/// to the finished length (a bead shop's page on finishing).
pub const BIGHT: Length = Length::mm(3.0 / 16.0 * 25.4 - 2.0);
/// Tail that goes back through the beads, so that it holds even where the crimp gives: common practice, no source.
pub const HIDDEN: Length = Length::mm(25.4);
/// Least of a tail that stays out of the beads to be pulled by: an assumption.
pub const GRIP: Length = Length::mm(10.0);
/// Tail that is left of a knot set with glue which nothing covers: common practice, no source.
pub const STUB: Length = Length::mm(2.0);
/// Rings of clasps are at least so wide inside: an assumption.
pub const RING: Length = Length::mm(1.0);
/// How much wider a hole is than what goes through it where each of its kind is sure to take that: an assumption.
pub const PLAY: f64 = 1.2;
/// Extra cord for each end: room to hold it; common practice, no source.
pub const ALLOWANCE: Length = Length::mm(50.0);
/// How often a packed necklace is coiled round while its last end is closed, so that it will drape; makers coil once or more
/// (common practice, no source), and on the neck the shipped rows bend by 1.1 to 1.24 rounds; an assumption.
pub const COIL: f64 = 1.25;
/// What a lark's head takes along the piece, in thicknesses of its cord: its bar and the legs that
/// come out from under it; an assumption.
pub const HITCH: f64 = 3.0;
/// Length of the loop in which cord is tied to what holds it, in widths of the cord, outside: an assumption.
pub const TIED: f64 = 2.5;
/// Width of an overhand knot, and what it takes along the piece, in widths of its cord: in the middle of the tight knot three stretches of it lie
/// side by side; an assumption.
pub const KNOT_WIDTH: f64 = 3.0;
/// What one tight overhand knot makes a cord shorter, in its diameters: 10.1 (Pieranski, Przybyl and
/// Stasiak, Tight open knots, Eur. Phys. J. E 6, 123-128, 2001; the figure is from memory).
/// tests/oracles/scripts/tight_knots.py finds 10.09 for a rope without friction, pulled tight.
pub const OVERHAND: f64 = 10.1;
/// What a double overhand knot takes up, as a multiple of a single one: 17.27 diameters of a pulled rope
/// (the same script) by its 10.09.
pub const DOUBLE_OVERHAND: f64 = 1.712;

/// Factor from cost to the price for a shop ("wholesale = 2 × (supplies + labour + overhead)": a jewellery-making
/// business article).
pub const WHOLESALE: f64 = 2.0;
/// Factor from cost to the price for a wearer: the lesser of the same article's 2.5 to 3.
pub const RETAIL: f64 = 2.5;

/// How many knots are tied to see what they take up, before the cord is cut: common practice, no source.
pub const TRIAL_KNOTS: u32 = 10;
/// Cord to hold them by, both ends together: an assumption.
pub const TRIAL_HELD: Length = Length::mm(100.0);

/// Inside of the loop that memory wire is turned into at its ends: common practice, no source.
pub const TURNED: Length = Length::mm(3.0);

/// Memory wire that such a loop takes: once round its middle line.
#[must_use]
pub fn turned(wire: Length) -> Length {
    loop_wire(TURNED + wire * 2.0, wire)
}

/// Wire that a plain loop takes: once round its middle line, so that it goes round unstretched.
#[must_use]
pub fn loop_wire(outside: Length, wire: Length) -> Length {
    let round = (outside - wire) * PI;
    if round > Length::ZERO { round } else { Length::ZERO }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_loop_takes_the_wire_that_tutorials_leave() {
        // 3/8 in for a loop of 1/8 in or so: common practice, no source. 20 gauge, 0.81 mm.
        let leaves = loop_wire(Length::mm(25.4 / 8.0), Length::mm(0.81)).value();
        assert!((7.0..25.4 * 3.0 / 8.0).contains(&leaves), "{leaves}");
    }

    #[test]
    fn knots_take_up_what_a_pulled_rope_does() {
        let table = crate::trade::rows(include_str!("../../tests/oracles/data/tight_knots.csv"));
        let [single, double] = [0, 1].map(|row: usize| table[row][1].parse::<f64>().unwrap());
        assert!((OVERHAND - single).abs() < 0.05, "{single}");
        assert!((DOUBLE_OVERHAND - double / single).abs() < 1e-3, "{}", double / single);
    }
}
