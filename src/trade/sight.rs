//! How colours look and how far apart they are, for different eyes.
//!
//! - sRGB to linear light and to CIE XYZ: IEC 61966-2-1; white point D65 (0.950 47, 1, 1.088 83).
//! - XYZ to Lab: CIE 15. Difference of two colours: CIEDE2000 (Sharma, Wu and Dalal 2005).
//! - Contrast of text on paper: WCAG 2, (L₁ + 0.05) / (L₂ + 0.05).
//! - Missing cones: Machado, Oliveira and Fernandes 2009, severity 1, a matrix on linear RGB. A model
//!   of the average eye, not of a person's.

use crate::paint::mark::Rgb;

/// Red, green and blue in linear light, 0 to 1.
type Linear = [f64; 3];

/// Which cones an eye has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// All three.
    Normal,
    /// No long-wave cones: reds darken and join the greens.
    Protan,
    /// No middle-wave cones: reds and greens join.
    Deutan,
    /// No short-wave cones: blues join the greens, yellows the pinks.
    Tritan,
}

impl Sight {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::Normal, Self::Protan, Self::Deutan, Self::Tritan];

    const fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Normal => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            Self::Protan => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deutan => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritan => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }
}

/// A colour as it looks to an eye, in linear light; what the screen cannot show is cut off.
#[must_use]
pub fn seen_by(colour: Rgb, sight: Sight) -> Linear {
    times(sight.matrix(), linear(colour)).map(|part| part.clamp(0.0, 1.0))
}

/// A colour in linear light.
#[must_use]
pub fn linear(colour: Rgb) -> Linear {
    [colour.0, colour.1, colour.2].map(|byte| {
        let share = f64::from(byte) / 255.0;
        if share <= 0.040_45 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
    })
}

/// A colour in CIE Lab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness, from 0 to 100.
    pub l: f64,
    /// Green to red, in the same unit.
    pub a: f64,
    /// Blue to yellow, in the same unit.
    pub b: f64,
}

impl Lab {
    /// From linear light, for the white point D65.
    #[must_use]
    pub fn of(light: Linear) -> Self {
        const XYZ: [[f64; 3]; 3] = [
            [0.412_456_4, 0.357_576_1, 0.180_437_5],
            [0.212_672_9, 0.715_152_2, 0.072_175_0],
            [0.019_333_9, 0.119_192_0, 0.950_304_1],
        ];
        let [x, y, z] = times(XYZ, light);
        let (x, y, z) = (bent(x / 0.950_47), bent(y), bent(z / 1.088_83));
        Self { l: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }
}

/// The cube root, with a straight piece near black.
fn bent(share: f64) -> f64 {
    const FOOT: f64 = 6.0 / 29.0;
    if share > FOOT * FOOT * FOOT { libm::cbrt(share) } else { share / (3.0 * FOOT * FOOT) + 4.0 / 29.0 }
}

fn times(matrix: [[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

/// CIEDE2000 difference of two colours in its own unit, with all parametric factors 1: about 1 is just noticed side
/// by side.
#[must_use]
pub fn ciede2000(one: Lab, two: Lab) -> f64 {
    let stretch = 1.0 + grey_shift((libm::hypot(one.a, one.b) + libm::hypot(two.a, two.b)) / 2.0);
    let (c1, h1) = polar(one.a * stretch, one.b);
    let (c2, h2) = polar(two.a * stretch, two.b);
    let grey = c1 * c2 == 0.0;
    let (turn, hue) = if grey { (0.0, h1 + h2) } else { (shorter_turn(h2 - h1), mean_hue(h1, h2)) };
    let (l, c) = ((one.l + two.l) / 2.0, (c1 + c2) / 2.0);
    let scales = scales(l, c, hue);
    let lightness = (two.l - one.l) / scales[0];
    let chroma = (c2 - c1) / scales[1];
    let hue_step = 2.0 * (c1 * c2).sqrt() * sin(turn / 2.0) / scales[2];
    (lightness * lightness + chroma * chroma + hue_step * hue_step + rotation(c, hue) * chroma * hue_step).sqrt()
}

/// By which share the a axis is stretched near grey.
fn grey_shift(chroma: f64) -> f64 {
    0.5 * (1.0 - high_chroma(chroma))
}

/// Near 0 for greys, near 1 from a chroma of about 40: √(c⁷ / (c⁷ + 25⁷)).
fn high_chroma(chroma: f64) -> f64 {
    let seventh = libm::pow(chroma, 7.0);
    (seventh / (seventh + libm::pow(25.0, 7.0))).sqrt()
}

/// Chroma, and hue in degrees from 0 to 360.
fn polar(a: f64, b: f64) -> (f64, f64) {
    let hue = libm::atan2(b, a).to_degrees();
    (libm::hypot(a, b), if hue < 0.0 { hue + 360.0 } else { hue })
}

fn shorter_turn(turn: f64) -> f64 {
    if turn > 180.0 {
        turn - 360.0
    } else if turn < -180.0 {
        turn + 360.0
    } else {
        turn
    }
}

fn mean_hue(h1: f64, h2: f64) -> f64 {
    let sum = h1 + h2;
    match ((h1 - h2).abs() <= 180.0, sum < 360.0) {
        (true, _) => sum / 2.0,
        (false, true) => (sum + 360.0) / 2.0,
        (false, false) => (sum - 360.0) / 2.0,
    }
}

/// Weights of lightness, chroma and hue.
fn scales(l: f64, c: f64, hue: f64) -> [f64; 3] {
    let middle = (l - 50.0) * (l - 50.0);
    let t = 1.0 - 0.17 * cos(hue - 30.0) + 0.24 * cos(2.0 * hue) + 0.32 * cos(3.0 * hue + 6.0)
        - 0.20 * cos(4.0 * hue - 63.0);
    [1.0 + 0.015 * middle / (20.0 + middle).sqrt(), 1.0 + 0.045 * c, 1.0 + 0.015 * c * t]
}

/// The turn of the difference's axes among blues.
fn rotation(c: f64, hue: f64) -> f64 {
    let blue = (hue - 275.0) / 25.0;
    -2.0 * high_chroma(c) * sin(60.0 * libm::exp(-blue * blue))
}

fn sin(degrees: f64) -> f64 {
    libm::sin(degrees.to_radians())
}

fn cos(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

/// Relative luminance by WCAG 2, from 0 to 1.
#[must_use]
pub fn luminance(colour: Rgb) -> f64 {
    let [r, g, b] = linear(colour);
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

/// Contrast of two colours by WCAG 2, a ratio from 1 to 21.
#[must_use]
pub fn contrast(a: Rgb, b: Rgb) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn number(text: &str) -> f64 {
        text.parse().unwrap()
    }

    fn colour(hex: &str) -> Rgb {
        let byte = |at: usize| u8::from_str_radix(&hex[at..at + 2], 16).unwrap();
        Rgb(byte(1), byte(3), byte(5))
    }

    #[test]
    fn ciede2000_pairs_of_sharma_wu_and_dalal() {
        let rows = crate::trade::rows(include_str!("../../tests/oracles/data/ciede2000_pairs.csv"));
        assert_eq!(rows.len(), 34);
        for row in rows {
            let lab = |at: usize| Lab { l: number(row[at]), a: number(row[at + 1]), b: number(row[at + 2]) };
            for found in [ciede2000(lab(1), lab(4)), ciede2000(lab(4), lab(1))] {
                assert!((found - number(row[7])).abs() < 1e-4, "pair {}: {found}", row[0]);
            }
        }
    }

    #[test]
    fn contrast_by_wcag() {
        for row in crate::trade::rows(include_str!("../../tests/oracles/data/wcag_contrast.csv")) {
            let (ink, paper) = (colour(row[0]), colour(row[1]));
            assert!((luminance(ink) - number(row[2])).abs() < 1e-6, "{}", row[0]);
            assert!((contrast(ink, paper) - number(row[4])).abs() < 1e-4, "{} on {}", row[0], row[1]);
        }
    }

    #[test]
    fn missing_cones_by_machado() {
        let rows = crate::trade::rows(include_str!("../../tests/oracles/data/machado_matrices.csv"));
        let kinds = [("Protanomaly", Sight::Protan), ("Deuteranomaly", Sight::Deutan), ("Tritanomaly", Sight::Tritan)];
        for (name, sight) in kinds {
            let row = rows.iter().find(|row| row[0] == name && row[1] == "1.0").unwrap();
            let flat: Vec<f64> = sight.matrix().concat();
            let published: Vec<f64> = row[2..11].iter().map(|text| number(text)).collect();
            assert_eq!(flat, published, "{name}");
        }
    }

    #[test]
    fn every_eye_sees_greys_as_they_are() {
        for sight in Sight::ALL {
            for grey in [0_u8, 90, 255] {
                let seen = seen_by(Rgb(grey, grey, grey), sight);
                // The published matrices' rows sum to 1 within a millionth or so.
                assert!(seen.iter().all(|part| (part - linear(Rgb(grey, grey, grey))[0]).abs() < 3e-6), "{sight:?}");
            }
        }
    }

    #[test]
    fn white_and_red_in_lab() {
        let white = Lab::of(linear(Rgb::WHITE));
        assert!((white.l - 100.0).abs() < 1e-3 && white.a.abs() < 0.01 && white.b.abs() < 0.02, "{white:?}");
        // sRGB red is L 53.24, a 80.09, b 67.20 for D65 (from memory).
        let red = Lab::of(linear(Rgb(255, 0, 0)));
        assert!(
            (red.l - 53.24).abs() < 0.01 && (red.a - 80.09).abs() < 0.01 && (red.b - 67.20).abs() < 0.01,
            "{red:?}"
        );
    }

    #[test]
    fn red_and_green_join_without_their_cones() {
        let difference = |a, b, sight| ciede2000(Lab::of(seen_by(a, sight)), Lab::of(seen_by(b, sight)));
        let (red, green) = (Rgb(0xa8, 0x50, 0x3c), Rgb(0x6e, 0x6e, 0x3a));
        assert!(difference(red, green, Sight::Normal) > 25.0);
        assert!(difference(red, green, Sight::Deutan) < difference(red, green, Sight::Normal) / 2.0);
    }
}
