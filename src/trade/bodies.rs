//! Girths of necks, wrists and ankles, by percentile.
//!
//! From the public release of ANSUR II (US Army anthropometric survey, 2012; a work of the United
//! States government, in the public domain): 1986 women and 4082 men, all soldiers, 17 to 58 years
//! old. Between the table's percentiles [`girth`] interpolates along a straight line, which is an
//! approximation. The neck is measured at its base, where a necklace lies.

use crate::units::Length;

/// Where the figures come from, as a sheet prints it.
pub const SOURCE: &str = "ANSUR II, 2012";

/// Whose body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sex {
    /// An adult woman.
    Woman,
    /// An adult man.
    Man,
}

/// What a girth is taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The wearer was measured.
    Measured,
    /// A table of bodies: of whom, and at which percentile.
    Table(Sex, u32),
    /// The proportions of a child of about eight.
    Child,
}

/// Where on the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Site {
    /// Round the base of the neck.
    NeckBase,
    /// Round the wrist.
    Wrist,
    /// Round the ankle.
    Ankle,
}

impl Site {
    /// The key of its girth in a pattern's `wear`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::NeckBase => "neck base",
            Self::Wrist => "wrist",
            Self::Ankle => "ankle",
        }
    }
}

/// Girth of the neck over that of its base, above which a choker lies: the medians of women, 328 and
/// 370 mm. Those of men, 395 and 433 mm, give 0.912.
pub const NECK_TO_BASE: f64 = 328.0 / 370.0;

/// Girth of a head over which a necklace without a clasp is to go: an assumption, about what 19 of 20 grown people do not
/// exceed (ANSUR II: women 561 mm, men 574 mm in the middle, each with a standard deviation of about 16 to 18; from memory).
pub const HEAD: Length = Length::mm(600.0);

/// How far the neck leans forward, in radians. This and the figures below shape the body on which pieces are
/// draped; all are assumptions, as no published figure was found that fits them.
pub const NECK_LEAN: f64 = 18.0 * DEGREE;
/// How far the neck's base falls to the front, in radians.
pub const BASE_TILT: f64 = 30.0 * DEGREE;
/// How far the shoulders fall to the side, in radians.
pub const SHOULDER_SLOPE: f64 = 20.0 * DEGREE;
/// How far the upper back leans from upright, in radians.
pub const BACK_TILT: f64 = 30.0 * DEGREE;
/// How softly the neck runs out into the shoulders, as a share of half the base's breadth.
pub const NECK_FILLET: f64 = 0.2;
/// How softly chest, back and shoulders meet, as a share of half the base's breadth.
pub const TORSO_EDGE: f64 = 0.16;
const DEGREE: f64 = std::f64::consts::PI / 180.0;

/// A child's girth where none was measured: of about eight years, from memory, without a source. It is for
/// drawing alone; nothing is judged by it.
#[must_use]
pub const fn guessed_child(place: Site) -> Length {
    Length::mm(match place {
        Site::NeckBase => 300.0,
        Site::Wrist => 135.0,
        Site::Ankle => 185.0,
    })
}

/// The percentiles that the tables give.
const PERCENTILES: [f64; 7] = [1.0, 5.0, 25.0, 50.0, 75.0, 95.0, 99.0];

const fn table(sex: Sex, place: Site) -> [f64; 7] {
    match (sex, place) {
        (Sex::Woman, Site::NeckBase) => [329.0, 340.0, 358.0, 370.0, 383.0, 405.0, 423.0],
        (Sex::Woman, Site::Wrist) => [138.0, 142.2, 150.0, 154.0, 160.0, 168.0, 174.0],
        (Sex::Woman, Site::Ankle) => [185.0, 193.0, 205.0, 215.0, 225.0, 242.0, 255.0],
        (Sex::Man, Site::NeckBase) => [380.8, 395.0, 417.0, 433.0, 450.8, 479.0, 502.0],
        (Sex::Man, Site::Wrist) => [156.0, 162.0, 170.0, 176.0, 182.0, 191.0, 198.0],
        (Sex::Man, Site::Ankle) => [198.0, 206.0, 219.2, 228.0, 239.0, 254.0, 268.0],
    }
}

/// The girth that this share of people do not exceed: percentile 1 to 99; what lies outside is read
/// as the nearest of these, for the tables end there.
#[must_use]
pub fn girth(sex: Sex, place: Site, percentile: u32) -> Length {
    let asked = f64::from(percentile.clamp(1, 99));
    let girths = table(sex, place);
    let above = PERCENTILES.partition_point(|known| *known < asked).max(1);
    // Percentiles run from 1 to 99, so `above` is a place in the tables and has one before it.
    let (low, high) = (PERCENTILES[above - 1], PERCENTILES[above]);
    let share = (asked - low) / (high - low);
    Length::mm(girths[above - 1] + (girths[above] - girths[above - 1]) * share)
}

/// From the first percentile of women to the 99th of men.
#[must_use]
pub fn usual(place: Site) -> [Length; 2] {
    [girth(Sex::Woman, place, 1), girth(Sex::Man, place, 99)]
}

/// Girths beyond which a measure is taken to be a slip: half of the least usual one, which is below that of a small child, and
/// one and a half times the most. Assumptions.
#[must_use]
pub fn extremes(place: Site) -> [Length; 2] {
    let [least, most] = usual(place);
    [least * 0.5, most * 1.5]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(word: &str, measure: &str) -> (Sex, Site) {
        let sex = if word == "female" { Sex::Woman } else { Sex::Man };
        match measure {
            "neckcircumferencebase" => (sex, Site::NeckBase),
            "wristcircumference" => (sex, Site::Wrist),
            _ => (sex, Site::Ankle),
        }
    }

    #[test]
    fn a_neck_is_narrower_than_its_base() {
        let medians = |measure: &str| {
            let table = crate::trade::rows(include_str!("../../tests/oracles/data/ansur2_girths.csv"));
            let rows = table.into_iter().filter(|row| row[1] == measure);
            rows.map(|row| row[8].parse::<f64>().unwrap()).collect::<Vec<_>>()
        };
        let (necks, bases) = (medians("neckcircumference"), medians("neckcircumferencebase"));
        let ratios: Vec<_> = necks.iter().zip(&bases).map(|(neck, base)| neck / base).collect();
        assert_eq!(ratios.len(), 2);
        assert!((ratios[0] - NECK_TO_BASE).abs() < 1e-12 && ratios[1] > NECK_TO_BASE, "{ratios:?}");
    }

    #[test]
    fn the_surveys_percentiles() {
        let table = crate::trade::rows(include_str!("../../tests/oracles/data/ansur2_girths.csv"));
        for row in table.into_iter().filter(|row| row[1] != "neckcircumference") {
            let (sex, place) = named(row[0], row[1]);
            for (percentile, column) in [1, 5, 25, 50, 75, 95, 99].into_iter().zip(5..) {
                let expected: f64 = row[column].parse().unwrap();
                let found = girth(sex, place, percentile).value();
                assert!((found - expected).abs() < 1e-9, "{sex:?} {place:?} {percentile}: {found}");
            }
        }
    }

    #[test]
    fn between_percentiles_a_straight_line() {
        let found = girth(Sex::Woman, Site::NeckBase, 15).value();
        assert!((found - 349.0).abs() < 1e-9, "{found}");
        let girths: Vec<_> = (1..=99).map(|p| girth(Sex::Man, Site::Wrist, p)).collect();
        assert!(girths.windows(2).all(|pair| pair[0] < pair[1]));
    }

    #[test]
    fn outside_the_tables_the_nearest() {
        assert_eq!(girth(Sex::Man, Site::Ankle, 0), girth(Sex::Man, Site::Ankle, 1));
        assert_eq!(girth(Sex::Man, Site::Ankle, 400), girth(Sex::Man, Site::Ankle, 99));
    }
}
