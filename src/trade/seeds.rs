//! Sizes of seed beads: common practice, in ranges.
//!
//! A seed bead's pitch along the thread is not its diameter, and makers differ. Each size has one
//! usual figure inside the range that the sources give: diameters from a craft shop's table of
//! round seed beads (Japanese types run larger: the upper ends), pitches from counts for the inch
//! in two bead shops and a beaders' guide, counts from a shop's blog, holes from memory. The pitch
//! and hole of 10/0 lie between those of its neighbours and have no source.
//!
//! Two claims in circulation were rejected: 6/0 of 6 mm, and eleven 11/0 to the inch, which caliper
//! counts contradict. 12/0 and 13/0 are not in the table: one count for the inch was found for each,
//! no diameter, and 13/0 came out shorter than 15/0.

use crate::units::{Length, Mass};

/// A size of seed bead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seed {
    /// Its name: `11/0`.
    pub name: &'static str,
    /// Diameter across the hole in mm: usual, least, most.
    pub across: Range,
    /// Length of thread that one takes in a row in mm: usual, least, most.
    pub pitch: Range,
    /// Diameter of the hole in mm, from memory.
    pub hole: f64,
    /// How many make 10 g, where a count was found.
    pub per_10_grams: Option<u32>,
}

/// A figure of common practice with the least and the most that sources give.
#[derive(Clone, Copy, Debug, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub struct Range {
    pub usual: f64,
    pub least: f64,
    pub most: f64,
}

const fn range(usual: f64, least: f64, most: f64) -> Range {
    Range { usual, least, most }
}

/// The sizes known, from small to large.
pub const SEEDS: &[Seed] = &[
    Seed {
        name: "15/0",
        across: range(1.3, 1.3, 1.5),
        pitch: range(1.10, 1.10, 1.10),
        hole: 0.65,
        per_10_grams: Some(2715),
    },
    Seed {
        name: "11/0",
        across: range(1.8, 1.8, 2.2),
        pitch: range(1.49, 1.49, 1.59),
        hole: 0.8,
        per_10_grams: Some(1050),
    },
    Seed { name: "10/0", across: range(2.0, 2.0, 2.0), pitch: range(1.7, 1.49, 2.31), hole: 0.9, per_10_grams: None },
    Seed {
        name: "8/0",
        across: range(2.5, 2.5, 3.0),
        pitch: range(2.12, 1.95, 2.31),
        hole: 1.05,
        per_10_grams: Some(347),
    },
    Seed {
        name: "6/0",
        across: range(3.3, 3.3, 4.0),
        pitch: range(2.54, 2.54, 3.17),
        hole: 1.45,
        per_10_grams: Some(150),
    },
];

/// The size of that name; `11/0`, `11o` and `size 11/0` are the same.
#[must_use]
pub fn seed(name: &str) -> Option<&'static Seed> {
    let name = name.trim().trim_start_matches("size").trim();
    let number = name.strip_suffix("/0").or_else(|| name.strip_suffix(['o', '°']))?;
    SEEDS.iter().find(|seed| seed.name.strip_suffix("/0") == Some(number))
}

impl Seed {
    /// Diameter across the hole, usual figure.
    #[must_use]
    pub const fn diameter(&self) -> Length {
        Length::mm(self.across.usual)
    }

    /// Length of thread that one takes in a row, usual figure.
    #[must_use]
    pub const fn row_pitch(&self) -> Length {
        Length::mm(self.pitch.usual)
    }

    /// Mass of one, where a count by weight was found.
    #[must_use]
    pub fn mass(&self) -> Option<Mass> {
        self.per_10_grams.map(|count| Mass::grams(10.0 / f64::from(count)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_figures_lie_in_their_ranges() {
        for seed in SEEDS {
            for range in [seed.across, seed.pitch] {
                assert!((range.least..=range.most).contains(&range.usual), "{seed:?}");
            }
            assert!(seed.hole < seed.across.usual && seed.pitch.usual < seed.across.usual, "{seed:?}");
        }
    }

    #[test]
    fn counts_for_the_inch() {
        // Bead shop blog 2013-10: 15/0 23, 11/0 17, 8/0 11; local bead shop 2016: 11/0 16, 8/0 12, 6/0 8;
        // a beaders' guide: 6/0 10, 8/0 13.
        let counts =
            [("15/0", 23), ("11/0", 17), ("11/0", 16), ("8/0", 11), ("8/0", 12), ("8/0", 13), ("6/0", 8), ("6/0", 10)];
        for (name, count) in counts {
            let (pitch, found) = (seed(name).unwrap().pitch, 25.4 / f64::from(count));
            // The sources' pitches are rounded to the hundredth.
            assert!(pitch.least - 0.006 <= found && found <= pitch.most + 0.006, "{name}: {found}");
        }
    }

    #[test]
    fn sizes_grow_as_their_numbers_fall() {
        let larger =
            |pair: &[Seed]| pair[0].across.usual < pair[1].across.usual && pair[0].pitch.usual < pair[1].pitch.usual;
        assert!(SEEDS.windows(2).all(larger));
    }

    #[test]
    fn names_as_makers_write_them() {
        for name in ["11/0", " 11/0 ", "size 11/0", "11o", "11°"] {
            assert_eq!(seed(name).unwrap().name, "11/0", "{name}");
        }
        for name in ["11", "13/0", "0", "/0", "6 mm"] {
            assert!(seed(name).is_none(), "{name}");
        }
        // Bead shop blog 2013-10: 1050 beads of 11/0 in 10 g.
        assert_eq!(seed("11/0").unwrap().mass(), Some(Mass::grams(10.0 / 1050.0)));
        assert_eq!(seed("10/0").unwrap().mass(), None);
    }
}
