//! How stiff wire is: E I in N mm².
//!
//! A round bar of diameter d has I = pi d⁴ / 64 (any handbook of mechanics). Stringing wire is stranded: the more
//! filaments share its breadth, the limper it is. It counts as the limpest that is usual, 49 filaments (seven strands of
//! seven, nine across; common practice, no source), which slip on one another freely, so that it is as stiff as all of them
//! one by one: the least that such wire can be. Wire of 19 filaments (five across) is four times as stiff, of 7 (three
//! across) twelve times. Its coat is taken for steel: a wire of 0.4 mm on a core of 0.3 mm comes out at 1.8 N mm², where
//! filaments alone have 0.6, and a nylon tube round them (2 kN/mm², from memory) 1.7.

use std::f64::consts::PI;

use crate::units::Length;

/// Young's modulus of stainless spring and stranding steel in N/mm²: 193 GPa (handbook value of grade 304, from memory).
const STEEL: f64 = 193_000.0;
/// Filaments of stringing wire, and how many lie across it.
const FILAMENTS: f64 = 49.0;
const ACROSS: f64 = 9.0;

/// Stiffness of a solid round steel wire, which no cord as thick exceeds.
#[must_use]
pub fn solid(diameter: Length) -> f64 {
    STEEL * PI / 64.0 * libm::pow(diameter.value(), 4.0)
}

/// The least stiffness of stranded steel wire.
#[must_use]
pub fn stranded(diameter: Length) -> f64 {
    FILAMENTS * solid(diameter * (1.0 / ACROSS))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wire_is_as_stiff_as_its_filaments() {
        // By hand: 0.4 mm / 9 = 0.0444 mm; pi 0.0444⁴ / 64 = 1.915e-7 mm⁴; times 193,000 and 49.
        let found = stranded(Length::mm(0.4));
        assert!((found - 1.811).abs() < 1e-3, "{found}");
        // Of one diameter 49 filaments in nine across are 49 / 9⁴ of a solid wire.
        assert!((found / solid(Length::mm(0.4)) - 49.0 / 6561.0).abs() < 1e-12);
    }
}
