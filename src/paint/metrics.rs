//! How much room text takes, measured with the bundled fonts.
//!
//! Lengths in mm. Shaping is that of the renderer (kerning and ligatures included), so that a width
//! is the width drawn. What a font cannot draw counts as wide as its empty box; [`missing`] names it.

use std::sync::LazyLock;

use rustybuzz::{Direction, Face, GlyphBuffer, ShapePlan, UnicodeBuffer, script};

use super::advances::advance;
pub use super::advances::forget;
use super::font;
use super::fraction::{LARGER, runs, tucks};
pub use super::lines::{lines, widest, wrap};
use super::mark::Weight;

const ELLIPSIS: char = '…';

/// A font ready for shaping, with the plans for Latin text and for figures alone, which nearly all
/// text is.
pub(super) struct Shaper {
    face: Face<'static>,
    latin: ShapePlan,
    figures: ShapePlan,
}

static REGULAR: LazyLock<Shaper> = LazyLock::new(|| Shaper::new(Weight::Regular));
static SEMIBOLD: LazyLock<Shaper> = LazyLock::new(|| Shaper::new(Weight::Semibold));

impl Shaper {
    fn new(weight: Weight) -> Self {
        #[expect(clippy::expect_used, reason = "the file is part of the program and a test opens it")]
        let face = Face::from_slice(font::file(weight), 0).expect("the bundled font opens");
        let plan = |script| ShapePlan::new(&face, Direction::LeftToRight, script, None, &[]);
        let (latin, figures) = (plan(Some(script::LATIN)), plan(None));
        Self { face, latin, figures }
    }

    pub(super) fn of(weight: Weight) -> &'static Self {
        match weight {
            Weight::Regular => &REGULAR,
            Weight::Semibold => &SEMIBOLD,
        }
    }

    /// Advance of a text in font units.
    pub(super) fn advance(&self, text: &str) -> f64 {
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.guess_segment_properties();
        let glyphs = match self.plan(&buffer) {
            Some(plan) => rustybuzz::shape_with_plan(&self.face, plan, buffer),
            None => rustybuzz::shape(&self.face, &[], buffer),
        };
        set(text, &glyphs) - tucks(text).iter().sum::<f64>() * f64::from(self.face.units_per_em())
    }

    /// The plan that is ready for a text, where there is one.
    fn plan(&self, buffer: &UnicodeBuffer) -> Option<&ShapePlan> {
        let plain = buffer.direction() == Direction::LeftToRight && buffer.language().is_none();
        match buffer.script() {
            script::LATIN if plain => Some(&self.latin),
            script::UNKNOWN if plain => Some(&self.figures),
            _ => None,
        }
    }

    /// Font units in mm at a size.
    fn millimetres(&self, units: impl Into<f64>, size: f64) -> f64 {
        units.into() * size / f64::from(self.face.units_per_em())
    }
}

/// Advance of a text's glyphs, its fractions larger.
fn set(text: &str, glyphs: &GlyphBuffer) -> f64 {
    let ends = runs(text).into_iter().scan(0, |end, (is_fraction, run)| {
        *end += run.len();
        Some((*end, if is_fraction { LARGER } else { 1.0 }))
    });
    let ends: Vec<_> = ends.collect();
    let size = |cluster: u32| ends.iter().find(|(end, _)| (cluster as usize) < *end).map_or(1.0, |(_, size)| *size);
    let each = glyphs.glyph_infos().iter().zip(glyphs.glyph_positions());
    each.map(|(glyph, position)| f64::from(position.x_advance) * size(glyph.cluster)).sum()
}

/// Width of a line of text.
#[must_use]
pub fn width(text: &str, size: f64, weight: Weight) -> f64 {
    Shaper::of(weight).millimetres(advance(text, weight), size)
}

/// The text, shortened with an ellipsis where it is wider than `most`; empty where not even the
/// ellipsis fits.
#[must_use]
pub fn fit(text: &str, size: f64, weight: Weight, most: f64) -> String {
    let fits = |line: &str| width(line, size, weight) <= most;
    if fits(text) {
        return text.to_owned();
    }
    let ends: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
    // Each end is the start of a character, so that slices end between characters.
    let shortened = |end: usize| format!("{}{ELLIPSIS}", text[..end].trim_end());
    let kept = ends.partition_point(|end| fits(&shortened(*end)));
    kept.checked_sub(1).map_or_else(String::new, |last| shortened(ends[last]))
}

/// The characters that the font cannot draw, each once, in order of appearance. White space and
/// control characters are never among them: they draw nothing.
#[must_use]
pub fn missing(text: &str) -> Vec<char> {
    let face = &Shaper::of(Weight::Regular).face;
    let mut missing = Vec::new();
    for c in text.chars() {
        let drawn = c.is_whitespace() || c.is_control() || face.glyph_index(c).is_some();
        if !drawn && !missing.contains(&c) {
            missing.push(c);
        }
    }
    missing
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn width_grows_with_size_and_kerns() {
        let wide = width("AVAVAV", 10.0, Weight::Regular);
        assert!((width("AVAVAV", 20.0, Weight::Regular) - 2.0 * wide).abs() < 1e-12);
        assert!(wide < 3.0 * (width("A", 10.0, Weight::Regular) + width("V", 10.0, Weight::Regular)));
    }

    /// What is drawn: figures one below another in a column stand at the same places.
    #[test]
    fn figures_are_all_as_wide_as_one_another() {
        for weight in [Weight::Regular, Weight::Semibold] {
            let wide = |text: &str| width(text, 10.0, weight);
            let digits = ('0'..='9').map(String::from).collect::<Vec<_>>();
            assert!(digits.iter().all(|digit| wide(digit) == wide("0")));
            let pairs = digits.iter().flat_map(|one| digits.iter().map(move |other| format!("{one}{other}")));
            assert!(pairs.into_iter().all(|pair| (wide(&pair) - 2.0 * wide("0")).abs() < 1e-12));
        }
    }

    #[test]
    fn shortened_texts_end_in_an_ellipsis_and_fit() {
        let text = "nylon-coated steel wire";
        assert_eq!(fit(text, 3.0, Weight::Regular, 100.0), text);
        let short = fit(text, 3.0, Weight::Regular, 15.0);
        assert!(short.ends_with(ELLIPSIS) && width(&short, 3.0, Weight::Regular) <= 15.0);
        assert_eq!(fit(text, 3.0, Weight::Regular, 0.1), "");
    }

    #[test]
    fn characters_without_a_glyph_are_named_once() {
        assert_eq!(missing("½ in Ω Ж × 珠 珠 \n"), ['珠']);
    }
}
