//! The trade's names for necklace lengths.
//!
//! Sources differ, so a sheet prints the range beside the name. The ranges are those of one list
//! (glossaria.net, pearl necklace lengths, 2020); others begin the rope at 32 or 36 in, end the
//! opera at 32 or 36 in, and call 18 in alone princess. Lengths between two names have none.

use crate::units::{INCH, Length};

/// What the trade calls a necklace by its length; the words are in [`super::english::length_name`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum NecklaceName {
    Collar,
    Choker,
    Princess,
    Matinee,
    Opera,
    Rope,
}

/// Names with the least and the most inches; a rope has no upper end.
const NAMES: &[(NecklaceName, f64, Option<f64>)] = &[
    (NecklaceName::Collar, 12.0, Some(13.0)),
    (NecklaceName::Choker, 14.0, Some(16.0)),
    (NecklaceName::Princess, 17.0, Some(19.0)),
    (NecklaceName::Matinee, 20.0, Some(24.0)),
    (NecklaceName::Opera, 28.0, Some(34.0)),
    (NecklaceName::Rope, 45.0, None),
];

/// A maker does not measure a necklace closer than this, in mm: half of the sixteenth of an inch to which it is told.
const RULER: f64 = INCH / 32.0;

/// The name of a necklace's length with the range it stands for: least, and most where it has one.
#[must_use]
pub fn length_name(length: Length) -> Option<(NecklaceName, Length, Option<Length>)> {
    let mm = length.value();
    let ranges = NAMES.iter().map(|(name, low, high)| (*name, Length::inches(*low), high.map(Length::inches)));
    let fits = |(_, low, high): &(_, Length, Option<Length>)| {
        low.value() - RULER <= mm && high.is_none_or(|high| mm <= high.value() + RULER)
    };
    ranges.into_iter().find(fits)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn name(inches: f64) -> Option<NecklaceName> {
        length_name(Length::inches(inches)).map(|(name, _, _)| name)
    }

    #[test]
    fn names_of_one_list() {
        // glossaria.net, pearl necklace lengths (2020-05-12).
        let expected = [
            (12.0, NecklaceName::Collar),
            (16.0, NecklaceName::Choker),
            (18.0, NecklaceName::Princess),
            (24.0, NecklaceName::Matinee),
            (34.0, NecklaceName::Opera),
        ];
        for (inches, named) in expected {
            assert_eq!(name(inches), Some(named), "{inches}");
        }
        assert_eq!(name(60.0), Some(NecklaceName::Rope));
        assert_eq!(name(19.03), Some(NecklaceName::Princess), "told as 19 in");
        assert_eq!(
            length_name(Length::inches(15.0)),
            Some((NecklaceName::Choker, Length::inches(14.0), Some(Length::inches(16.0))))
        );
    }

    #[test]
    fn between_two_names_there_is_none() {
        for inches in [5.0, 13.5, 16.5, 26.0, 40.0] {
            assert_eq!(name(inches), None, "{inches}");
        }
    }
}
