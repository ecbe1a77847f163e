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

/// How a bracelet sits; the words are in [`super::english::sits`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum RingFit {
    Close,
    Easy,
    Roomy,
}

/// How a bracelet sits, by the room in mm between its inside girth and the wrist's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ease {
    /// What the fit is.
    pub fit: RingFit,
    /// Least room in mm.
    pub least: f64,
    /// Most room in mm.
    pub most: f64,
}

/// Fits of a bracelet: names and limits of our own, assumptions. Room in girth is pi times the gap that opens
/// on one side of the wrist when the row rests on the other. `close` leaves less than a small bead's
/// thickness, 3 mm, and the row lies still; `easy` leaves 3 to 5 mm, a usual bead's, and the row turns on
/// the wrist; `roomy` leaves 5 to 8 mm, a large bead's, and the row slides along it.
pub const EASES: [Ease; 3] = [
    Ease { fit: RingFit::Close, least: 3.0, most: 10.0 },
    Ease { fit: RingFit::Easy, least: 10.0, most: 16.0 },
    Ease { fit: RingFit::Roomy, least: 16.0, most: 25.0 },
];

/// The fit that a bracelet with this much room has; nothing where it is tighter or looser than any.
#[must_use]
pub fn fit(ease: f64) -> Option<&'static Ease> {
    EASES.iter().find(|fit| (fit.least..=fit.most).contains(&ease))
}

/// Wire and crimp that suit beads of a size, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stringing {
    /// Beads below this size across, in mm.
    pub below: f64,
    /// Thinnest wire, in mm.
    pub thinnest: f64,
    /// Thickest wire, in mm.
    pub thickest: f64,
    /// Outside diameter of the crimp, in mm.
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
        let sits = |ease| fit(ease).map(|fit| fit.fit);
        assert_eq!([6.0, 12.0, 20.0].map(sits), [RingFit::Close, RingFit::Easy, RingFit::Roomy].map(Some));
        assert_eq!([2.9, 25.1, f64::NAN].map(sits), [None; 3]);
        for (at, gap) in [3.0, 5.0, 8.0].into_iter().enumerate() {
            let miss = EASES[at].most - std::f64::consts::PI * gap;
            assert!(miss.abs() < 0.6, "{gap} mm: {miss}");
        }
    }

    #[test]
    fn makers_rooms_have_a_name() {
        // Three makers' pages seen: 6 to 20 mm, 3/4 to 1 in and 1/2 to 1 in. 1 in is 0.4 mm more than roomy's end.
        let named = |ease: f64| fit(ease).is_some();
        assert!([6.0, 20.0, 0.5 * 25.4, 0.75 * 25.4, 25.4 - 0.4].into_iter().all(named));
        // Of rings of equal beads, three thicknesses less than the row (two pages) is within the
        // least of these fits of the true inside.
        for row in crate::trade::rows(include_str!("../../tests/oracles/data/bracelet_inner.csv")) {
            let [exact, rule] = [4, 5].map(|column| row[column].parse::<f64>().unwrap());
            assert!((0.0..EASES[0].least).contains(&(rule - exact)), "{row:?}");
        }
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
