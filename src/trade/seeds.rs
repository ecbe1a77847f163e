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

/// The usual figures of a size of seed bead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeedSize {
    /// Diameter across the hole.
    pub diameter: Length,
    /// Length of thread that one takes in a row.
    pub pitch: Length,
    /// Least and most diameter that sources give.
    pub diameters: [Length; 2],
    /// Least and most pitch that sources give.
    pub pitches: [Length; 2],
    /// Diameter of the hole.
    pub hole: Length,
    /// Mass of one, where a count by weight was found.
    pub mass: Option<Mass>,
}

/// A row of the table, in mm: the usual figure, the least and the most that sources give.
#[derive(Clone, Copy, Debug)]
struct Figures {
    name: &'static str,
    across: [f64; 3],
    pitch: [f64; 3],
    hole: f64,
    per_10_grams: Option<u32>,
}

/// From small to large.
const TABLE: &[Figures] = &[
    Figures { name: "15/0", across: [1.3, 1.3, 1.5], pitch: [1.10, 1.10, 1.10], hole: 0.65, per_10_grams: Some(2715) },
    Figures { name: "11/0", across: [1.8, 1.8, 2.2], pitch: [1.49, 1.49, 1.59], hole: 0.8, per_10_grams: Some(1050) },
    Figures { name: "10/0", across: [2.0, 2.0, 2.0], pitch: [1.7, 1.49, 2.31], hole: 0.9, per_10_grams: None },
    Figures { name: "8/0", across: [2.5, 2.5, 3.0], pitch: [2.12, 1.95, 2.31], hole: 1.05, per_10_grams: Some(347) },
    Figures { name: "6/0", across: [3.3, 3.3, 4.0], pitch: [2.54, 2.54, 3.17], hole: 1.45, per_10_grams: Some(150) },
];

/// The name of the size with that usual diameter, as shops call it.
#[must_use]
pub fn seed_name(diameter: Length) -> Option<&'static str> {
    let is_its = |row: &&Figures| (row.across[0] - diameter.value()).abs() < 1e-6;
    TABLE.iter().find(is_its).map(|row| row.name)
}

/// The size of that name; `11/0`, `11o` and `size 11/0` are the same.
#[must_use]
pub fn seed_size(name: &str) -> Option<SeedSize> {
    let row = entry(name)?;
    let (across, pitch) = (row.across.map(Length::mm), row.pitch.map(Length::mm));
    Some(SeedSize {
        diameter: across[0],
        diameters: [across[1], across[2]],
        pitch: pitch[0],
        pitches: [pitch[1], pitch[2]],
        hole: Length::mm(row.hole),
        mass: row.per_10_grams.map(|count| Mass::grams(10.0 / f64::from(count))),
    })
}

/// The names of the sizes known, from small to large.
#[must_use]
pub fn names() -> Vec<&'static str> {
    TABLE.iter().map(|row| row.name).collect()
}

fn entry(name: &str) -> Option<&'static Figures> {
    let name = name.trim().trim_start_matches("size").trim();
    let number = name.strip_suffix("/0").or_else(|| name.strip_suffix(['o', '°']))?;
    TABLE.iter().find(|row| row.name.strip_suffix("/0") == Some(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_figures_lie_in_their_ranges() {
        for seed in TABLE {
            for [usual, least, most] in [seed.across, seed.pitch] {
                assert!((least..=most).contains(&usual), "{seed:?}");
            }
            assert!(seed.hole < seed.across[0] && seed.pitch[0] < seed.across[0], "{seed:?}");
        }
    }

    #[test]
    fn counts_for_the_inch() {
        // Bead shop blog 2013-10: 15/0 23, 11/0 17, 8/0 11; local bead shop 2016: 11/0 16, 8/0 12, 6/0 8;
        // a beaders' guide: 6/0 10, 8/0 13.
        let counts =
            [("15/0", 23), ("11/0", 17), ("11/0", 16), ("8/0", 11), ("8/0", 12), ("8/0", 13), ("6/0", 8), ("6/0", 10)];
        for (name, count) in counts {
            let ([_, least, most], found) = (entry(name).unwrap().pitch, 25.4 / f64::from(count));
            // The sources' pitches are rounded to the hundredth.
            assert!(least - 0.006 <= found && found <= most + 0.006, "{name}: {found}");
        }
    }

    #[test]
    fn sizes_grow_as_their_numbers_fall() {
        let larger = |pair: &[Figures]| pair[0].across[0] < pair[1].across[0] && pair[0].pitch[0] < pair[1].pitch[0];
        assert!(TABLE.windows(2).all(larger));
    }

    #[test]
    fn names_as_makers_write_them() {
        for name in ["11/0", " 11/0 ", "size 11/0", "11o", "11°"] {
            assert_eq!(entry(name).unwrap().name, "11/0", "{name}");
        }
        for name in ["11", "13/0", "0", "/0", "6 mm"] {
            assert!(entry(name).is_none(), "{name}");
        }
        // Bead shop blog 2013-10: 1050 beads of 11/0 in 10 g.
        assert_eq!(seed_size("11/0").unwrap().mass, Some(Mass::grams(10.0 / 1050.0)));
        assert_eq!(seed_size("10/0").unwrap().mass, None);
    }
}
