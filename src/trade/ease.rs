//! Room and fittings by common practice: bracelet ease, crimp and wire by bead size.
//!
//! None of this is a standard. Each figure says whether a source was seen or it is from memory.

/// Where a figure of common practice comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// In a maker's or shop's page that was seen.
    Seen,
    /// From memory.
    Recalled,
}

/// How a bracelet sits, with the room in mm beyond the wrist's girth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ease {
    /// The word for the fit.
    pub name: &'static str,
    /// Least room in mm.
    pub least: f64,
    /// Most room in mm.
    pub most: f64,
    /// How sure.
    pub confidence: Confidence,
}

/// Fits of a bracelet, from a maker's sizing page. Measured inside the closed ring; that page adds
/// three thicknesses to get the strung length, where the exact sum is about π. Other makers add
/// ½ to 1 in.
pub const EASES: [Ease; 3] = [
    Ease { name: "snug", least: 6.0, most: 10.0, confidence: Confidence::Seen },
    Ease { name: "medium", least: 10.0, most: 15.0, confidence: Confidence::Seen },
    Ease { name: "loose", least: 15.0, most: 20.0, confidence: Confidence::Seen },
];

/// The fit that a bracelet with this much room has; nothing where it is tighter or looser than any.
#[must_use]
pub fn fit(ease: f64) -> Option<&'static Ease> {
    EASES.iter().find(|fit| (fit.least..=fit.most).contains(&ease))
}

/// Wire and crimp that suit beads of a size, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stringing {
    /// Beads below this size across.
    pub below: f64,
    /// Thinnest wire.
    pub thinnest: f64,
    /// Thickest wire.
    pub thickest: f64,
    /// Outside diameter of the crimp.
    pub crimp: f64,
    /// How sure.
    pub confidence: Confidence,
}

/// Wire and crimp by bead size, from a craft site's article on crimp and wire sizes, which calls
/// them really general guidelines.
pub const STRINGING: [Stringing; 3] = [
    Stringing { below: 4.0, thinnest: 0.254, thickest: 0.305, crimp: 1.0, confidence: Confidence::Seen },
    Stringing { below: 10.0, thinnest: 0.356, thickest: 0.381, crimp: 2.0, confidence: Confidence::Seen },
    Stringing { below: f64::INFINITY, thinnest: 0.483, thickest: 0.610, crimp: 3.0, confidence: Confidence::Seen },
];

/// What suits beads of this size across in mm.
#[must_use]
pub fn stringing(across: f64) -> &'static Stringing {
    // The last row has no upper end, so that one always fits.
    STRINGING.iter().find(|row| across < row.below).unwrap_or(&STRINGING[2])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fits_of_a_bracelet() {
        // A maker's sizing page: snug 6–10 mm, medium 10–15, loose 15–20.
        let word = |ease| fit(ease).map(|fit| fit.name);
        assert_eq!([word(6.0), word(12.0), word(20.0)], [Some("snug"), Some("medium"), Some("loose")]);
        assert_eq!([word(5.9), word(20.1), word(f64::NAN)], [None, None, None]);
    }

    #[test]
    fn wire_by_bead_size() {
        // The article: beads below 4 mm 0.010–0.012 in and 1 × 1 mm crimps; 4 to 8 (10) mm 0.014–0.015 in and
        // 2 × 2; from 10 mm 0.019–0.024 in and 3 × 3.
        for (across, thinnest, thickest, crimp) in
            [(3.0, 0.010, 0.012, 1.0), (4.0, 0.014, 0.015, 2.0), (8.0, 0.014, 0.015, 2.0), (10.0, 0.019, 0.024, 3.0)]
        {
            let row = stringing(across);
            // The table's mm are rounded to the thousandth.
            assert!((row.thinnest / 25.4 - thinnest).abs() < 2e-5, "{across}");
            assert!((row.thickest / 25.4 - thickest).abs() < 2e-5, "{across}");
            assert!((row.crimp - crimp).abs() < f64::EPSILON, "{across}");
        }
        assert_eq!(stringing(f64::NAN), &STRINGING[2]);
    }
}
