//! What metals look like, by the words that makers use for them.
//!
//! Colours are of polished metal in a room that is half bright, as pages draw it: chosen by eye, with
//! the hue of the metal's reflectance where optical constants are to be had (see the test).

use crate::paint::mark::Rgb;

/// What is drawn where nothing says which metal it is.
pub const PLAIN: Rgb = Rgb(0xb3, 0xb1, 0xac);

const SILVER: Rgb = Rgb(0xc1, 0xc2, 0xc1);
const GOLD: Rgb = Rgb(0xde, 0xab, 0x3a);
const ROSE_GOLD: Rgb = Rgb(0xd0, 0x99, 0x81);
const BRASS: Rgb = Rgb(0xb0, 0x90, 0x46);
const BRONZE: Rgb = Rgb(0x93, 0x70, 0x44);
const COPPER: Rgb = Rgb(0xb9, 0x6f, 0x4c);
const GUNMETAL: Rgb = Rgb(0x50, 0x54, 0x5a);
const STEEL: Rgb = Rgb(0xa4, 0xa8, 0xac);
const NICKEL: Rgb = Rgb(0xb4, 0xae, 0xa0);
const PEWTER: Rgb = Rgb(0x8c, 0x8e, 0x90);
const ALUMINIUM: Rgb = Rgb(0xc9, 0xcc, 0xcf);
const TITANIUM: Rgb = Rgb(0x93, 0x8d, 0x87);

/// A metal's words, one after another, and its colour.
const TABLE: &[(&str, Rgb)] = &[
    ("silver", SILVER),
    ("sterling", SILVER),
    ("gold", GOLD),
    ("vermeil", GOLD),
    ("rose gold", ROSE_GOLD),
    ("white gold", ALUMINIUM),
    ("brass", BRASS),
    ("bronze", BRONZE),
    ("copper", COPPER),
    ("gunmetal", GUNMETAL),
    ("gun metal", GUNMETAL),
    ("steel", STEEL),
    ("nickel", NICKEL),
    ("nickel silver", NICKEL),
    ("german silver", NICKEL),
    ("alpaca", NICKEL),
    ("pewter", PEWTER),
    ("zinc", PEWTER),
    ("aluminium", ALUMINIUM),
    ("aluminum", ALUMINIUM),
    ("rhodium", ALUMINIUM),
    ("platinum", ALUMINIUM),
    ("titanium", TITANIUM),
    ("niobium", TITANIUM),
];

/// Words for a metal made dark, and what darkens it by which share.
const DARKENED: &[&str] = &["antique", "antiqued", "oxidised", "oxidized", "blackened", "patinated"];
const DARK: (Rgb, f64) = (Rgb(0x26, 0x22, 0x1e), 0.38);

/// The colour of the metal that a phrase names, the first where it names several: that of
/// `gold-plated brass` is gold's. Nothing where it names none.
#[must_use]
pub fn colour(phrase: &str) -> Option<Rgb> {
    let phrase = phrase.to_lowercase();
    let words: Vec<_> = phrase.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let (_, metal) = (0..words.len()).find_map(|at| first(&words[at..]))?;
    let dark = words.iter().any(|word| DARKENED.contains(word));
    Some(if dark { metal.mixed(DARK.0, DARK.1) } else { *metal })
}

/// The longest entry that words begin with, unless they say that there is none of it: `nickel-free`.
fn first<'a>(words: &[&str]) -> Option<&'a (&'static str, Rgb)> {
    let here = TABLE.iter().filter(|(name, _)| words_start(words, name) && words.get(1) != Some(&"free"));
    here.max_by_key(|(name, _)| name.len())
}

fn words_start(words: &[&str], name: &str) -> bool {
    name.split(' ').enumerate().all(|(at, word)| words.get(at) == Some(&word))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::sight::{Lab, Sight, ciede2000, seen_by};

    #[test]
    fn the_first_metal_named_is_what_is_seen() {
        let cases = [
            ("sterling silver", SILVER),
            ("Gold-plated brass", GOLD),
            ("14k gold filled", GOLD),
            ("rose gold vermeil", ROSE_GOLD),
            ("nickel-free brass", BRASS),
            ("German silver", NICKEL),
            ("fluted brass cone", BRASS),
        ];
        for (phrase, metal) in cases {
            assert_eq!(colour(phrase), Some(metal), "{phrase}");
        }
        for phrase in ["", "lobster clasp", "glass", "silverware"] {
            assert_eq!(colour(phrase), None, "{phrase}");
        }
        assert!(colour("antique brass").unwrap().0 < BRASS.0);
    }

    /// Metals that lie side by side are told apart: CIEDE2000 of 10 and more, where 1 is about what
    /// can just be seen.
    #[test]
    fn metals_differ_to_the_eye() {
        let metals = [SILVER, GOLD, BRASS, COPPER, GUNMETAL, ROSE_GOLD, BRONZE];
        let lab = |colour: Rgb| Lab::of(seen_by(colour, Sight::Normal));
        for (at, one) in metals.iter().enumerate() {
            for other in &metals[..at] {
                let apart = ciede2000(lab(*one), lab(*other));
                assert!(apart > 10.0, "{one:?} and {other:?}: {apart}");
            }
        }
    }

    /// Optical constants n and k at 617, 549 and 451 nm, P. B. Johnson and R. W. Christy, Physical
    /// Review B 6, 4370 (1972), from memory.
    const CONSTANTS: [(Rgb, [(f64, f64); 3]); 3] = [
        (SILVER, [(0.06, 4.152), (0.06, 3.586), (0.04, 2.657)]),
        (GOLD, [(0.21, 3.272), (0.43, 2.455), (1.38, 1.914)]),
        (COPPER, [(0.30, 3.205), (1.02, 2.577), (1.24, 2.397)]),
    ];

    /// Hue in degrees and chroma of red, green and blue, 0 to 1 (the hexagon of HSV).
    fn hue([red, green, blue]: [f64; 3]) -> (f64, f64) {
        let chroma = red.max(green).max(blue) - red.min(green).min(blue);
        (60.0 * (green - blue) / chroma, chroma)
    }

    /// Fresnel's reflectance at right angles, ((n − 1)² + k²) / ((n + 1)² + k²), in sRGB values.
    #[test]
    fn hues_are_those_of_the_metals_reflectance() {
        let reflected = |(n, k): (f64, f64)| ((n - 1.0).powi(2) + k * k) / ((n + 1.0).powi(2) + k * k);
        for (drawn, constants) in CONSTANTS {
            let encoded = constants.map(|at| libm::pow(reflected(at), 1.0 / 2.2));
            let ours = [drawn.0, drawn.1, drawn.2].map(|byte| f64::from(byte) / 255.0);
            let ((drawn_hue, drawn_chroma), (real_hue, real_chroma)) = (hue(ours), hue(encoded));
            if real_chroma < 0.05 {
                assert!(drawn_chroma < 0.05, "{drawn:?} is not neutral");
            } else {
                assert!((drawn_hue - real_hue).abs() < 10.0, "{drawn:?}: {drawn_hue}°, not {real_hue}°");
            }
        }
    }
}
