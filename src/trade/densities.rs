//! Densities of bead and finding materials in g/cm³.
//!
//! [`density`] forgives case, hyphens and adjectives as `phrase` does: `lead-free crystal` is not lead crystal, and
//! `turquoise glass` is glass. Natural materials vary; the table gives one figure inside the range of its source.

use super::phrase;

/// A material's words, its density in g/cm³ and where the figure comes from.
type DensityRow = (&'static str, f64, &'static str);

const COLLEGE_PHYSICS: &str = "OpenStax College Physics, table 11.1, Densities of Various Substances";
const GEM_REFERENCES: &str = "gem references, from memory";
const SCIENCE_VIEWS: &str = "scienceviews.com, gems";
const GEM_PAGE: &str = "a page on gems";
const ENCYCLOPEDIA: &str = "an old encyclopedia's table";
const HANDBOOKS: &str = "handbooks, from memory";
const GENERAL_TABLES: &str = "general density tables";
const GEM_TABLE: &str = "International Gem Society, specific gravity values of selected gems";
const GEM_LISTING: &str = "a listing of gems' specific gravities: jet 1.30 to 1.35";
const ENCYCLOPEDIA_OF_GEMS: &str = "a general encyclopedia's table of important gemstones";
const CAST_PHENOLIC: &str = "cast phenolic resin 1.27 to 1.32, A. J. Lockrey, Plastics in the School and Home Workshop";
const COCONUT: &str = "coconut shell as aggregate in concrete, 1.31, De Costa and others (2017), as cited";
const VEGETABLE_IVORY: &str =
    "1.38 to 1.42, CAMEO, Museum of Fine Arts Boston; 1.376, A. Connell, Trans. R. Soc. Edinburgh (1844)";
const FILLED_PVC: &str = "filled plasticised PVC, 1.35 to 1.7, Practical Guide to Polyvinyl Chloride, chapter 4";
const POROUS_BASALT: &str = "assumed: basalt (2.8 to 3.2) with a quarter of pores; scoria has up to a half of them \
    (rock guides) and sinks in water (geology.com)";
const BASALT: &str = "2.8 to 3.2, matmake.com, properties of basalt";
const SEEDS: &str = "assumed, lighter than vegetable ivory: no figure was found";
const AS_GLASS: &str = "taken as soda-lime glass; recipes vary and no figure was found";

const TABLE: &[DensityRow] = &[
    ("acrylic", 1.18, HANDBOOKS),
    ("amazonite", 2.65, SCIENCE_VIEWS),
    ("amber", 1.08, GEM_PAGE),
    ("amethyst", 2.65, GEM_REFERENCES),
    ("aquamarine", 2.77, SCIENCE_VIEWS),
    ("ash wood", 0.75, GENERAL_TABLES),
    ("beech wood", 0.75, GENERAL_TABLES),
    ("beryl", 2.77, SCIENCE_VIEWS),
    ("bone", 1.85, COLLEGE_PHYSICS),
    ("brass", 8.5, "between 8.44 (OpenStax College Physics, table 11.1) and 8.6 (a general table)"),
    ("ceramic", 2.4, "taken as porcelain; clays vary and no figure was found"),
    ("copper", 8.96, HANDBOOKS),
    ("crystal", 2.5, AS_GLASS),
    ("ebony", 1.15, GENERAL_TABLES),
    ("feldspar", 2.65, SCIENCE_VIEWS),
    ("fine silver", 10.5, GENERAL_TABLES),
    ("flint glass", 3.3, ENCYCLOPEDIA),
    ("glass", 2.5, "crown glass 2.5 in a general table, soda-lime 2.44 to 2.52 in handbooks"),
    ("14k gold", 13.1, HANDBOOKS),
    ("fine gold", 19.3, COLLEGE_PHYSICS),
    ("gold filled", 8.65, "alloy rule for 1/20 of 14 k (13.1) on brass (8.5)"),
    ("labradorite", 2.65, SCIENCE_VIEWS),
    ("lapis", 2.8, GEM_REFERENCES),
    ("lapis lazuli", 2.8, GEM_REFERENCES),
    ("lead crystal", 3.0, HANDBOOKS),
    ("lead free crystal", 2.5, AS_GLASS),
    ("lead glass", 3.0, HANDBOOKS),
    ("moonstone", 2.65, SCIENCE_VIEWS),
    ("opal", 2.05, GEM_PAGE),
    ("pearl", 2.7, GEM_REFERENCES),
    ("freshwater pearl", 2.7, GEM_REFERENCES),
    ("crystal pearl", 2.5, AS_GLASS),
    ("glass pearl", 2.5, AS_GLASS),
    ("porcelain", 2.4, ENCYCLOPEDIA),
    ("quartz", 2.65, GEM_REFERENCES),
    ("rock crystal", 2.65, GEM_REFERENCES),
    ("silver", 10.36, "alloy rule for sterling: 1 / (0.925 / 10.49 + 0.075 / 8.96)"),
    ("sterling silver", 10.36, "alloy rule: 1 / (0.925 / 10.49 + 0.075 / 8.96)"),
    ("stainless steel", 7.85, GENERAL_TABLES),
    ("steel", 7.85, GENERAL_TABLES),
    ("turquoise", 2.7, GEM_REFERENCES),
    ("wood", 0.7, COLLEGE_PHYSICS),
    ("agate", 2.61, GEM_REFERENCES),
    ("carnelian", 2.61, GEM_REFERENCES),
    ("onyx", 2.61, GEM_REFERENCES),
    ("coral", 2.65, GEM_REFERENCES),
    ("garnet", 3.9, GEM_REFERENCES),
    ("hematite", 5.2, GEM_TABLE),
    ("horn", 1.3, HANDBOOKS),
    ("jade", 3.17, GEM_REFERENCES),
    ("jadeite", 3.34, GEM_REFERENCES),
    ("nephrite", 2.97, GEM_REFERENCES),
    ("jasper", 2.75, GEM_REFERENCES),
    ("pewter", 7.28, "alloy rule from memory: 92 % tin (7.29), 6 % antimony (6.69), 2 % copper (8.96)"),
    ("pyrite", 5.1, GEM_TABLE),
    ("shell", 2.8, GEM_REFERENCES),
    ("mother of pearl", 2.8, GEM_REFERENCES),
    ("tagua", 1.4, VEGETABLE_IVORY),
    ("corozo", 1.4, VEGETABLE_IVORY),
    ("vegetable ivory", 1.4, VEGETABLE_IVORY),
    ("chalcedony", 2.61, GEM_REFERENCES),
    ("chrysoprase", 2.61, GEM_REFERENCES),
    ("bloodstone", 2.61, GEM_REFERENCES),
    ("sardonyx", 2.61, GEM_REFERENCES),
    ("aventurine", 2.65, GEM_REFERENCES),
    ("citrine", 2.65, ENCYCLOPEDIA_OF_GEMS),
    ("tiger eye", 2.65, GEM_REFERENCES),
    ("sunstone", 2.65, SCIENCE_VIEWS),
    ("peridot", 3.4, ENCYCLOPEDIA_OF_GEMS),
    ("spinel", 3.6, ENCYCLOPEDIA_OF_GEMS),
    ("emerald", 2.71, ENCYCLOPEDIA_OF_GEMS),
    ("sapphire", 4.0, SCIENCE_VIEWS),
    ("ruby", 4.0, SCIENCE_VIEWS),
    ("tourmaline", 3.06, GEM_REFERENCES),
    ("malachite", 3.9, GEM_REFERENCES),
    ("sodalite", 2.28, GEM_REFERENCES),
    ("rhodonite", 3.5, GEM_REFERENCES),
    ("fluorite", 3.18, GEM_REFERENCES),
    ("obsidian", 2.4, GEM_REFERENCES),
    ("howlite", 2.58, GEM_REFERENCES),
    ("serpentine", 2.57, GEM_REFERENCES),
    ("jet", 1.32, GEM_LISTING),
    ("phenolic resin", 1.29, CAST_PHENOLIC),
    ("resin", 1.2, "between 1.1 and 1.4, a science page on cast epoxy and polyester; common epoxy 1.20"),
    ("polymer clay", 1.55, FILLED_PVC),
    ("lava", 2.2, POROUS_BASALT),
    ("basalt", 2.9, BASALT),
    ("terracotta", 1.9, HANDBOOKS),
    ("coconut", 1.31, COCONUT),
    ("coconut shell", 1.31, COCONUT),
    ("nutshell", 1.3, "assumed, as coconut shell: no figure was found"),
    ("rudraksha", 1.1, "assumed, a woody fruit stone, hollow where its seeds lie: no figure was found"),
    ("acai", 1.2, SEEDS),
    ("palm seed", 1.2, SEEDS),
    ("lotus seed", 1.2, SEEDS),
    ("sandalwood", 0.9, HANDBOOKS),
    ("rosewood", 0.9, HANDBOOKS),
    ("olive wood", 0.9, HANDBOOKS),
    ("bamboo", 0.7, HANDBOOKS),
    ("aluminium", 2.7, COLLEGE_PHYSICS),
    ("aluminum", 2.7, COLLEGE_PHYSICS),
    ("bronze", 8.8, HANDBOOKS),
    ("zinc alloy", 6.7, HANDBOOKS),
    ("nickel silver", 8.7, HANDBOOKS),
    ("german silver", 8.7, HANDBOOKS),
    ("titanium", 4.51, HANDBOOKS),
];

/// Stuffs that differ by a quarter and more from piece to piece.
const VARYING: &[(&str, Range)] = &[
    ("lava", Range::assumed(1.4, 2.9)),
    ("polymer clay", Range::published(1.35, 1.7)),
    ("resin", Range::published(1.1, 1.4)),
    ("rudraksha", Range::assumed(0.9, 1.3)),
    ("acai", Range::assumed(1.1, 1.4)),
    ("palm seed", Range::assumed(1.1, 1.4)),
    ("lotus seed", Range::assumed(1.1, 1.4)),
    ("coconut", Range::assumed(1.1, 1.4)),
    ("coconut shell", Range::assumed(1.1, 1.4)),
    ("nutshell", Range::assumed(1.1, 1.4)),
    ("wood", Range::published(0.3, 0.9)),
];

/// Densities in g/cm³ between which a material lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Whether it is an assumption, as no published range was found.
    pub assumed: bool,
}

impl Range {
    const fn published(least: f64, most: f64) -> Self {
        Self { least, most, assumed: false }
    }

    const fn assumed(least: f64, most: f64) -> Self {
        Self { least, most, assumed: true }
    }
}

/// Words that make a material another one: what they name is a thin skin on something unknown.
const SKINS: &[&str] = &["plated", "coated", "vermeil", "tone", "toned", "coloured", "imitation", "simulated", "faux"];

/// Density in g/cm³ of a material as a pattern names it; nothing where the table does not know it.
#[must_use]
pub fn density(material: &str) -> Option<f64> {
    entry(material).map(|(_, density, _)| *density)
}

/// Density in g/cm³ of wire of a metal; of steel where that is not said.
#[must_use]
pub fn of_wire(metal: Option<&str>) -> Option<f64> {
    density(metal.unwrap_or("steel"))
}

/// Where [`density`] takes its figure from.
#[must_use]
pub fn source(material: &str) -> Option<&'static str> {
    entry(material).map(|(_, _, source)| *source)
}

/// Between which densities a material lies that differs by a quarter and more from piece to piece.
#[must_use]
pub fn range(material: &str) -> Option<Range> {
    let (name, ..) = entry(material)?;
    VARYING.iter().find(|(varying, _)| varying == name).map(|(_, range)| *range)
}

/// The names that the table knows.
pub fn names() -> impl Iterator<Item = &'static str> {
    TABLE.iter().map(|(name, _, _)| *name)
}

fn entry(material: &str) -> Option<&'static DensityRow> {
    let is_skin = |word: &String| SKINS.contains(&word.as_str());
    if phrase::words(material).iter().any(is_skin) { None } else { phrase::named(TABLE, |entry| entry.0, material) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Material, lowest and highest figure of the source named beside it.
    const RANGES: &[(&str, f64, f64)] = &[
        ("glass", 2.44, 2.6),             // soda-lime 2.44–2.52, handbooks, from memory; OpenStax 11.1: 2.6
        ("lead crystal", 2.9, 3.1),       // 24–30 % PbO, handbooks, from memory
        ("flint glass", 3.3, 3.5),        // an old encyclopedia 3.3; a general table 3.5
        ("brass", 8.4, 8.6),              // OpenStax College Physics, table 11.1: 8.44; three general tables
        ("copper", 8.77, 8.96),           // OpenStax 11.1: 8.8; handbooks 8.96, from memory
        ("fine silver", 10.5, 10.5),      // two general tables
        ("sterling silver", 10.2, 10.4),  // alloy rule 10.357
        ("fine gold", 19.3, 19.3),        // OpenStax 11.1
        ("gold-filled", 8.65, 8.7),       // alloy rule 8.652
        ("bone", 1.7, 2.0),               // OpenStax 11.1
        ("porcelain", 2.4, 2.4),          // an old encyclopedia
        ("wood", 0.3, 0.9),               // OpenStax 11.1
        ("ebony", 1.1, 1.2),              // a general table
        ("acrylic", 1.18, 1.18),          // handbooks, from memory
        ("turquoise", 2.60, 2.90),        // gem references, from memory
        ("quartz", 2.65, 2.65),           // gem references, from memory
        ("lapis lazuli", 2.7, 2.9),       // gem references, from memory
        ("freshwater pearl", 2.66, 2.78), // gem references, from memory
        ("moonstone", 2.55, 2.76),        // scienceviews.com, gems
        ("beryl", 2.63, 2.91),            // scienceviews.com, gems
        ("opal", 2.05, 2.05),             // a gem page
        ("amber", 1.08, 1.08),            // a gem page
        ("stainless steel", 7.8, 7.9),    // general tables
        ("agate", 2.58, 2.64),            // gem references, from memory; carnelian and onyx are the same
        ("coral", 2.60, 2.70),            // gem references, from memory
        ("garnet", 3.5, 4.3),             // gem references, from memory
        ("hematite", 5.12, 5.28),         // International Gem Society's table, seen
        ("pyrite", 5.00, 5.20),           // the same table, seen
        ("horn", 1.28, 1.32),             // handbooks, from memory
        ("jade", 2.90, 3.43),             // nephrite and jadeite, gem references, from memory
        ("nephrite", 2.90, 3.03),         // gem references, from memory
        ("jadeite", 3.24, 3.43),          // gem references, from memory
        ("jasper", 2.58, 2.91),           // gem references, from memory
        ("shell", 2.70, 2.89),            // gem references, from memory
        ("tagua", 1.376, 1.42),           // CAMEO (Museum of Fine Arts Boston) and Connell (1844), seen
        ("pewter", 7.27, 7.29),           // alloy rule 7.278, from memory
        ("chalcedony", 2.58, 2.64),       // gem references, from memory
        ("citrine", 2.65, 2.65),          // a general encyclopedia's table of important gemstones, seen
        ("peridot", 3.3, 3.5),            // the same
        ("spinel", 3.6, 3.6),             // the same
        ("emerald", 2.68, 2.74),          // the same
        ("ruby", 3.96, 4.05),             // scienceviews.com, gems: corundum
        ("sunstone", 2.55, 2.76),         // scienceviews.com, gems: feldspar
        ("tourmaline", 2.90, 3.26),       // gem references, from memory
        ("malachite", 3.25, 4.10),        // gem references, from memory
        ("sodalite", 2.14, 2.40),         // gem references, from memory
        ("rhodonite", 3.40, 3.74),        // gem references, from memory
        ("fluorite", 3.17, 3.19),         // gem references, from memory
        ("obsidian", 2.35, 2.60),         // gem references, from memory
        ("howlite", 2.45, 2.58),          // gem references, from memory
        ("jet", 1.30, 1.35),              // a listing of gems' specific gravities, seen
        ("phenolic resin", 1.27, 1.32),   // cast phenolic resin, an old workshop book, seen
        ("resin", 1.1, 1.4),              // a science page on cast resins, seen
        ("polymer clay", 1.35, 1.7),      // Practical Guide to Polyvinyl Chloride, chapter 4, seen: filled PVC-P
        ("lava stone", 1.0, 3.2),         // scoria sinks in water (geology.com), solid basalt is at most 3.2, seen
        ("basalt", 2.8, 3.2),             // matmake.com, properties of basalt, seen
        ("coconut shell", 1.31, 1.31),    // De Costa and others (2017), as cited in an essay, seen
        ("aluminium", 2.7, 2.7),          // OpenStax 11.1
        ("bronze", 8.7, 8.9),             // handbooks, from memory
        ("nickel silver", 8.4, 8.9),      // handbooks, from memory
        ("titanium", 4.5, 4.51),          // handbooks, from memory
    ];

    #[test]
    fn every_figure_lies_in_its_sources_range() {
        for (material, least, most) in RANGES {
            let found = density(material).unwrap();
            assert!((*least..=*most).contains(&found), "{material}: {found}");
        }
    }

    #[test]
    fn adjectives_case_and_plurals_do_not_matter() {
        assert_eq!(density("Common Glass"), density("glass"));
        assert_eq!(density("reed-green pressed glass"), density("glass"));
        assert_eq!(density("Freshwater Pearls"), density("freshwater pearl"));
        assert_eq!(density("oiled beech wood"), Some(0.75));
        assert_eq!(source("gold-filled").unwrap(), "alloy rule for 1/20 of 14 k (13.1) on brass (8.5)");
    }

    #[test]
    fn the_longest_entry_wins() {
        assert_eq!(density("lead-free crystal"), Some(2.5));
        assert_eq!(density("lead crystal"), Some(3.0));
        assert_eq!(density("rock crystal"), Some(2.65));
        assert_eq!(density("gold-filled"), Some(8.65));
        assert_eq!(density("turquoise glass"), Some(2.5));
        assert_eq!(density("silver-lined glass"), Some(2.5));
    }

    #[test]
    fn what_the_table_does_not_know_is_nothing() {
        for unknown in ["", "unobtainium", "gold", "silver-plated", "imitation pearl"] {
            assert_eq!(density(unknown), None, "{unknown}");
        }
    }

    #[test]
    fn what_varies_has_its_figure_within() {
        for (name, one) in VARYING {
            let figure = density(name).unwrap();
            assert!(one.least < figure && figure < one.most && one.most / one.least >= 1.25, "{name}");
            assert_eq!(range(name), Some(*one), "{name}");
        }
        assert_eq!(range("black lava stone"), Some(Range::assumed(1.4, 2.9)));
        assert_eq!((range("ebony"), range("beech wood"), range("glass")), (None, None, None));
    }

    #[test]
    fn no_entry_hides_another() {
        for (name, figure, _) in TABLE {
            assert_eq!(density(name), Some(*figure), "{name}");
        }
    }
}
