//! How stiff wire is: E I in N mm².
//!
//! **Equation.** A round bar of diameter d has I = pi d⁴ / 64 (any handbook of mechanics). Filaments that slip on one another
//! freely are as stiff as all of them one by one: of n, each an m-th of the breadth, n / m⁴ of a solid one.
//!
//! **Assumption.** Stringing wire is stranded: the more filaments share its breadth, the limper it is. Where a pattern does
//! not say how many, it counts as the limpest that is usual, 49 (seven strands of seven, nine across; common practice, no
//! source): the least that such wire can be. Wire of 19 filaments (five across) is four times as stiff, of 7 (three across)
//! twelve times. Its coat is taken for metal: a wire of 0.4 mm on a core of 0.3 mm comes out at 1.8 N mm², where
//! filaments alone have 0.6, and a nylon tube round them (2 kN/mm², from memory) 1.7.

use std::f64::consts::PI;

use super::phrase;
use crate::units::Length;

/// Young's modulus of stainless spring and stranding steel in N/mm²: 193 GPa (handbook value of grade 304, from memory).
const STEEL: f64 = 193_000.0;
/// As many as lie in the limpest wire that is usual.
pub const LIMPEST: u32 = 49;
/// Filaments of wire, and how many lie across it: in rings round one (3, 5), and seven or three strands of seven, of which
/// three touch one another in a circle 1 + 2 / root 3 as broad as each. Which are sold is common practice, no source.
const LAYS: [(u32, f64); 5] = [(1, 1.0), (7, 3.0), (19, 5.0), (21, 6.464_101_615_137_755), (LIMPEST, 9.0)];

/// Metals of wire, Young's modulus of each in N/mm²; of alloys the middle of what tables of engineers say.
const METALS: &[(&str, f64)] = &[
    ("steel", STEEL),
    // A general table of engineers, seen: 117 GPa.
    ("copper", 117_000.0),
    // The same: 102 to 125; in three others, of drawn brass, 15 to 17 million psi, 103 to 117.
    ("brass", 110_000.0),
    // The same: 96 to 120; phosphor bronze, of another maker of parts, 16 million psi, 110.
    ("bronze", 110_000.0),
    // The same: 18.5 million psi, 128.
    ("nickel silver", 128_000.0),
    ("german silver", 128_000.0),
    // Handbooks, from memory: 71 to 83; sterling is within that.
    ("silver", 76_000.0),
    // A general table of engineers, seen: 74; handbooks, from memory: 78.
    ("gold", 76_000.0),
    // Nineteen parts of twenty are brass.
    ("gold filled", 110_000.0),
    // A general table of engineers, seen: 69.
    ("aluminium", 69_000.0),
    ("aluminum", 69_000.0),
    // A maker of parts, seen: 14.9 million psi, 103.
    ("titanium", 103_000.0),
    // A general table of engineers, seen: 15 million psi, 103.
    ("niobium", 103_000.0),
];

/// Young's modulus of a metal in N/mm², as a pattern names it; nothing where the table does not know it.
#[must_use]
pub fn modulus(metal: &str) -> Option<f64> {
    phrase::named(METALS, |(name, _)| name, metal).map(|(_, modulus)| *modulus)
}

/// The metals that the table knows.
pub fn names() -> impl Iterator<Item = &'static str> {
    METALS.iter().map(|(name, _)| *name)
}

/// How many filaments lie in wire.
pub fn filaments() -> impl Iterator<Item = u32> {
    LAYS.iter().map(|(count, _)| *count)
}

/// Stiffness of a solid round steel wire, which no cord as thick exceeds.
#[must_use]
pub fn solid(diameter: Length) -> f64 {
    of(diameter, 1, None)
}

/// The least stiffness of wire of so many [`filaments`] of a metal, which is steel where it is not said or not known.
#[must_use]
pub fn of(diameter: Length, filaments: u32, metal: Option<&str>) -> f64 {
    let across = LAYS.iter().find(|(count, _)| *count == filaments).map_or(1.0, |(_, across)| *across);
    let modulus = metal.and_then(modulus).unwrap_or(STEEL);
    f64::from(filaments) * modulus * PI / 64.0 * libm::pow(diameter.value() / across, 4.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wire_is_as_stiff_as_its_filaments() {
        // By hand: 0.4 mm / 9 = 0.0444 mm; pi 0.0444⁴ / 64 = 1.915e-7 mm⁴; times 193,000 and 49.
        let found = of(Length::mm(0.4), LIMPEST, None);
        assert!((found - 1.811).abs() < 1e-3, "{found}");
        // Of one diameter 49 filaments in nine across are 49 / 9⁴ of a solid wire.
        assert!((found / solid(Length::mm(0.4)) - 49.0 / 6561.0).abs() < 1e-12);
        // 21 are three strands, each a 1 / (1 + 2 / root 3) of the breadth: 3 / 2.1547⁴ of a wire of 7 that is 7 / 3⁴ of a solid one.
        let three = of(Length::mm(0.4), 21, None) / solid(Length::mm(0.4));
        assert!((three - 3.0 / libm::pow(2.154_700_54, 4.0) * 7.0 / 81.0).abs() < 1e-9, "{three}");
    }

    #[test]
    fn solid_wire_is_as_stiff_as_its_metal() {
        // By hand: pi 0.8⁴ / 64 = 0.020106 mm⁴; times 117,000 N/mm².
        let found = of(Length::mm(0.8), 1, Some("bare copper"));
        assert!((found - 2352.4).abs() < 0.1, "{found}");
        assert_eq!(modulus("silver-plated copper"), modulus("copper"));
        assert_eq!(modulus("sterling silver"), modulus("silver"));
        assert!(modulus("nickel silver") > modulus("silver") && modulus("jade").is_none());
    }
}
