//! Sizes that the trade takes for granted, each in one place. Patterns may say others.
//!
//! Where no source is named, a figure is common practice or an assumption, and says so.

/// Outside diameter in mm of a pin's eye and of a plain loop: common practice, no source.
pub const EYE: f64 = 3.0;
/// Thickness in mm of the sheet that caps and cones are made of: assumed.
pub const WALL: f64 = 0.3;
/// Width of a barrel's ends as a share of its middle: assumed, as makers state only the middle.
pub const BARREL_END: f64 = 0.7;
/// How broad a tight overhand knot is, in diameters of its cord: assumed; a knot of three passes in the
/// smallest circle is 2.15 broad (circle packing), and it does not lie as close.
pub const KNOT_WIDTH: f64 = 2.5;

/// What one tight overhand knot makes a cord shorter, in its diameters: 10.1 (Pieranski, Przybyl and
/// Stasiak, Tight open knots, Eur. Phys. J. E 6, 123-128, 2001; the figure is from memory). A computation of
/// the project's own, tests/oracles/scripts/tight_knots.py, bounds it from above.
pub const OVERHAND: f64 = 10.1;
/// What a double overhand knot takes up, as a multiple of a single one.
pub const DOUBLE_OVERHAND: f64 = 1.7;
