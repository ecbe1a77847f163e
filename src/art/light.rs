//! Light and colour: where the light comes from, and how a finish turns a colour into shades.

use crate::geometry::Point;
use crate::paint::mark::{ColourStop, Rgb};
use crate::pattern::Finish;
use crate::trade::sight;

/// What a page is printed with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Ink {
    /// Colours, shaded.
    #[default]
    Colour,
    /// Greys, shaded, each bead with a hatch of its own.
    Grey,
    /// Black lines on white, each bead with a hatch of its own.
    Outline,
}

impl Ink {
    /// Every ink.
    pub const ALL: &[Self] = &[Self::Colour, Self::Grey, Self::Outline];

    /// The word on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Colour => "colour",
            Self::Grey => "grey",
            Self::Outline => "outline",
        }
    }

    /// The ink of that name.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|ink| ink.word() == word)
    }

    /// What this ink makes of a colour: itself, or a grey of the same lightness that leaves room for
    /// a black hatch on it.
    #[must_use]
    pub fn tone(self, colour: Rgb) -> Rgb {
        match self {
            Self::Colour => colour,
            Self::Grey => grey(colour).mixed(Rgb::WHITE, 0.45),
            Self::Outline => Rgb::WHITE,
        }
    }

    /// What this ink makes of the colour of a text or a line: itself, a grey of the same lightness,
    /// or black unless it is light.
    #[must_use]
    pub fn line(self, colour: Rgb) -> Rgb {
        match self {
            Self::Colour => colour,
            Self::Grey => grey(colour),
            Self::Outline if grey(colour).0 > LIGHT => grey(colour),
            Self::Outline => Rgb::BLACK,
        }
    }
}

/// Lightness in sRGB values above which a line in outline stays grey: thin rules, white paper.
const LIGHT: u8 = 0x80;

/// Rec. 709 luma of the sRGB values, up to 1: an approximation of lightness that is good enough to print by.
pub fn lightness(Rgb(red, green, blue): Rgb) -> f64 {
    (0.2126 * f64::from(red) + 0.7152 * f64::from(green) + 0.0722 * f64::from(blue)) / 255.0
}

fn grey(colour: Rgb) -> Rgb {
    Rgb::BLACK.mixed(Rgb::WHITE, lightness(colour))
}

/// How many directions of light a bead is drawn for, all round.
pub const TURNS: u32 = 24;

/// Which of the light's turns is nearest to an angle, and thus which symbol a bead turned by that
/// angle takes.
#[must_use]
pub fn turn(angle: f64) -> u32 {
    let turns = f64::from(TURNS);
    let share = libm::round(angle / std::f64::consts::TAU * turns);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 23 by the remainder")]
    let turn = (share - turns * libm::floor(share / turns)) as u32;
    turn % TURNS
}

/// Where the light stands as a thing turned by so many turns sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light {
    /// Towards the light in the plane of the page, of length 1.
    pub towards: Point,
    /// How far the thing is turned, in radians, clockwise on the page.
    pub turned: f64,
}

impl Light {
    /// The light on a thing that its stamp turns by so many turns, clockwise on the page.
    #[must_use]
    pub fn on_turn(turn: u32) -> Self {
        let turned = f64::from(turn) / f64::from(TURNS) * std::f64::consts::TAU;
        let above_left = Point::towards(-0.7 * std::f64::consts::PI);
        Self { towards: above_left.turned(-turned), turned }
    }

    /// How squarely a surface with this outward direction faces the light: from −1 to 1.
    #[must_use]
    pub fn falls_on(self, normal: [f64; 3]) -> f64 {
        const ALONG_PAGE: f64 = 0.6;
        const OUT_OF_PAGE: f64 = 0.8;
        let [x, y, z] = normal;
        (x * self.towards.x + y * self.towards.y) * ALONG_PAGE + z * OUT_OF_PAGE
    }
}

/// A colour lightened (above 0, towards warm white) or darkened (below 0, towards cool dark); a grey
/// stays grey.
#[must_use]
pub fn toned(colour: Rgb, tone: f64) -> Rgb {
    const WARM: (Rgb, Rgb) = (Rgb(20, 16, 34), Rgb(255, 253, 247));
    const NEUTRAL: (Rgb, Rgb) = (Rgb(18, 18, 18), Rgb::WHITE);
    let Rgb(red, green, blue) = colour;
    let (dark, white) = if red == green && green == blue { NEUTRAL } else { WARM };
    if tone < 0.0 { colour.mixed(dark, -tone) } else { colour.mixed(white, tone) }
}

/// The colour of the line round a thing: its own, darkened, and dark enough to be seen on white paper.
/// WCAG 2.2, 1.4.11, asks for a contrast of 3 : 1 of what must be seen to understand a figure.
#[must_use]
pub fn edge_tone(colour: Rgb, tone: f64) -> Rgb {
    const CONTRAST: f64 = 3.0;
    let tones = (0..10).map(|step| tone - 0.05 * f64::from(step));
    let mut toned = tones.map(|tone| toned(colour, tone.max(-1.0)));
    let seen = |colour: &Rgb| sight::contrast(*colour, Rgb::WHITE) >= CONTRAST;
    toned.find(seen).unwrap_or(Rgb::BLACK)
}

/// A metal's colour lightened or darkened: its shadows are its own light thrown back once more, so that
/// they are its colour squared and not grey.
#[must_use]
pub fn metal_toned(colour: Rgb, tone: f64) -> Rgb {
    const DEEP: f64 = 0.3;
    let squared = |byte: u8| {
        let share = f64::from(byte) / 255.0;
        Rgb(0, 0, 0).mixed(Rgb::WHITE, share * share * DEEP).0
    };
    if tone >= 0.0 {
        return toned(colour, tone);
    }
    colour.mixed(Rgb(squared(colour.0), squared(colour.1), squared(colour.2)), -tone)
}

/// How a finish shades a round surface.
#[derive(Clone, Copy, Debug)]
pub struct Shading {
    /// Tones from the brightest point (0) outward to the farthest edge (1).
    pub ramp: &'static [(f64, f64)],
    /// The brightest point lies where the light leaves the bead, not where it meets it.
    pub see_through: bool,
    /// Opacity of the light's reflection; 0 for none.
    pub glint: f64,
    /// The reflection's size, as a share of the bead's.
    pub glint_size: f64,
    /// Opacity of the light thrown back on the far edge.
    pub rim: f64,
    /// How much facets differ.
    pub contrast: f64,
    /// Tone that all facets have in common.
    pub lift: f64,
    /// Opacity of the light on edges between facets, and how much neighbours differ; 0 for soft ones.
    pub crisp: f64,
    /// Opacity of what lies before the hole.
    pub veil: f64,
    /// What makes a tone of the colour.
    pub toned: fn(Rgb, f64) -> Rgb,
}

const GLOSS: &[(f64, f64)] = &[(0.0, 0.46), (0.16, 0.26), (0.36, 0.0), (0.66, 0.0), (0.84, -0.22), (1.0, -0.52)];
const MATTE: &[(f64, f64)] = &[(0.0, 0.08), (0.3, 0.0), (0.62, 0.0), (0.82, -0.07), (1.0, -0.26)];
const METALLIC: &[(f64, f64)] =
    &[(0.0, 0.8), (0.16, 0.5), (0.34, 0.05), (0.5, -0.3), (0.6, -0.42), (0.72, -0.1), (0.88, 0.28), (1.0, -0.4)];
const PEARL: &[(f64, f64)] =
    &[(0.0, 0.85), (0.18, 0.62), (0.4, 0.16), (0.58, -0.05), (0.76, -0.17), (0.9, -0.03), (1.0, -0.34)];
const FROSTED: &[(f64, f64)] = &[(0.0, 0.58), (0.35, 0.44), (0.7, 0.26), (1.0, 0.06)];
const CLEAR: &[(f64, f64)] = &[(0.0, 0.8), (0.25, 0.55), (0.55, 0.2), (0.8, -0.02), (1.0, -0.3)];

/// How a finish takes the light.
#[must_use]
pub const fn shading(finish: Finish) -> Shading {
    let (ramp, veil, (glint, glint_size), rim, (contrast, lift, crisp)) = match finish {
        Finish::Gloss => (GLOSS, 1.0, (0.95, 0.26), 0.2, (0.85, 0.0, 0.25)),
        Finish::Matte => (MATTE, 1.0, (0.0, 0.0), 0.0, (0.5, -0.02, 0.0)),
        Finish::Metallic => (METALLIC, 1.0, (0.75, 0.12), 0.0, (1.5, 0.0, 0.3)),
        Finish::Pearl => (PEARL, 1.0, (0.5, 0.3), 0.4, (0.6, 0.26, 0.1)),
        Finish::Frosted => (FROSTED, 0.88, (0.0, 0.0), 0.0, (0.3, 0.28, 0.0)),
        Finish::Clear => (CLEAR, 0.6, (0.95, 0.17), 0.0, (1.2, 0.2, 0.3)),
        Finish::Faceted => (GLOSS, 1.0, (0.95, 0.3), 0.0, (1.2, 0.0, 0.5)),
    };
    let see_through = veil < 1.0;
    let toned = if matches!(finish, Finish::Metallic) { metal_toned } else { toned };
    Shading { ramp, see_through, glint, glint_size, rim, contrast, lift, crisp, veil, toned }
}

impl Shading {
    /// The ramp as gradient stops.
    #[must_use]
    pub fn stops(&self, colour: Rgb) -> Vec<ColourStop> {
        self.ramp.iter().map(|(at, tone)| solid(*at, (self.toned)(colour, *tone))).collect()
    }

    /// Stops across a cylinder from −1 to 1, written as 0 to 1, with the brightest line at `bright`.
    #[must_use]
    pub fn stops_across(&self, colour: Rgb, bright: f64) -> Vec<ColourStop> {
        let reach = 1.0 + bright.abs();
        let near = self.ramp.iter().rev().map(|(at, tone)| (bright - at * reach, *tone));
        let far = self.ramp.iter().skip(1).map(|(at, tone)| (bright + at * reach, *tone));
        let line: Vec<(f64, f64)> = near.chain(far).collect();
        let inside = line.iter().copied().filter(|(at, _)| at.abs() < 1.0);
        let ends = |at: f64| (at, tone_at(&line, at));
        let all = std::iter::once(ends(-1.0)).chain(inside).chain([ends(1.0)]);
        all.map(|(at, tone)| solid(f64::midpoint(at, 1.0), (self.toned)(colour, tone))).collect()
    }
}

/// The tone at a place on a line of tones, between its neighbours.
fn tone_at(line: &[(f64, f64)], at: f64) -> f64 {
    // Every ramp has two stops or more, so that `next` has a neighbour before it.
    let next = line.partition_point(|(place, _)| *place < at).clamp(1, line.len() - 1);
    let ((from, a), (to, b)) = (line[next - 1], line[next]);
    a + (b - a) * ((at - from) / (to - from)).clamp(0.0, 1.0)
}

const fn solid(at: f64, colour: Rgb) -> ColourStop {
    ColourStop { at, colour, opacity: 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn angles_take_the_nearest_turn() {
        for (degrees, expected) in [(0.0, 0), (7.4, 0), (7.6, 1), (-15.0, 23), (359.0, 0), (725.0, 0), (90.0, 6)] {
            assert_eq!(turn(f64::to_radians(degrees)), expected, "{degrees}");
        }
    }

    #[test]
    fn the_light_stays_above_left_on_the_page() {
        let page = Light::on_turn(0).towards;
        assert!(page.x < 0.0 && page.y < 0.0);
        for turn in 0..TURNS {
            let angle = f64::from(turn) * 15_f64.to_radians();
            assert!(Light::on_turn(turn).towards.turned(angle).distance(page) < 1e-12);
        }
    }

    #[test]
    fn stops_across_a_cylinder_rise_from_0_to_1() {
        for finish in Finish::ALL {
            for bright in [-0.6, 0.0, 0.3] {
                let stops = shading(*finish).stops_across(Rgb(90, 120, 90), bright);
                assert_eq!((stops[0].at, stops[stops.len() - 1].at), (0.0, 1.0));
                assert!(stops.is_sorted_by(|a, b| a.at <= b.at), "{finish} {bright}");
            }
        }
    }
}
