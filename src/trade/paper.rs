//! Paper sizes: ISO 216 for A3, A4 and A5, ASME Y14.1 for letter and tabloid (ANSI A and B), legal at
//! 8 ½ × 14 in, and half a letter.

use crate::units::INCH;

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
#[non_exhaustive]
pub enum Paper {
    #[default]
    A4,
    Letter,
    A3,
    Tabloid,
    A5,
    Legal,
    HalfLetter,
}

impl Paper {
    /// Every size.
    pub const ALL: &[Self] =
        &[Self::A4, Self::Letter, Self::A3, Self::Tabloid, Self::A5, Self::Legal, Self::HalfLetter];

    /// The word on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
            Self::A3 => "a3",
            Self::Tabloid => "tabloid",
            Self::A5 => "a5",
            Self::Legal => "legal",
            Self::HalfLetter => "half-letter",
        }
    }

    /// The size of that name, in any case.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|paper| paper.word().eq_ignore_ascii_case(word))
    }

    /// The size of its halves, where that is a size of paper too; of papers by ISO 216 short of half by a millimetre
    /// at the most.
    #[must_use]
    pub const fn half(self) -> Option<Self> {
        match self {
            Self::A3 => Some(Self::A4),
            Self::A4 => Some(Self::A5),
            Self::Tabloid => Some(Self::Letter),
            Self::Letter => Some(Self::HalfLetter),
            Self::A5 | Self::Legal | Self::HalfLetter => None,
        }
    }

    /// Width and height in mm, upright.
    #[must_use]
    pub const fn size(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (8.5 * INCH, 11.0 * INCH),
            Self::A3 => (297.0, 420.0),
            Self::Tabloid => (11.0 * INCH, 17.0 * INCH),
            Self::A5 => (148.0, 210.0),
            Self::Legal => (8.5 * INCH, 14.0 * INCH),
            Self::HalfLetter => (5.5 * INCH, 8.5 * INCH),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_of_the_standards() {
        let rows = crate::trade::rows(include_str!("../../tests/oracles/data/paper.csv"));
        assert_eq!(rows.len(), Paper::ALL.len());
        for row in rows {
            let word = row[0].split(' ').next().unwrap();
            let (width, height) = Paper::named(word).unwrap().size();
            let expected: (f64, f64) = (row[1].parse().unwrap(), row[2].parse().unwrap());
            assert!((width - expected.0).abs() < 1e-9 && (height - expected.1).abs() < 1e-9, "{word}");
        }
    }

    #[test]
    fn two_halves_have_room_on_the_whole() {
        for whole in Paper::ALL {
            let Some(half) = whole.half() else { continue };
            let ((width, height), (high, wide)) = (half.size(), whole.size());
            assert!(2.0 * width <= wide + 1e-9 && 2.0 * width >= wide - 1.0 && (height - high).abs() < 1e-9);
        }
    }

    #[test]
    fn names_read_back() {
        assert!(Paper::ALL.iter().all(|paper| Paper::named(paper.word()) == Some(*paper)));
        assert_eq!(Paper::named("A6"), None);
    }
}
