//! Shadows under the one light that stands above left.

use crate::design::Design;
use crate::geometry::Point;
use crate::paint::mark::{Mark, Rgb, Shadow};
use crate::sheet::figure::Layers;

/// Direction on the page in which shadows fall: away from the light that shades the beads.
pub const AWAY: Point = Point::new(0.588, 0.809);
/// Breadths of beads, in mm, within which shadows grow with them.
const BREADTHS: (f64, f64) = (3.0, 12.0);

/// A shadow: how far it is thrown and how soft it is, as shares of a usual bead's breadth, and how dark.
type Thrown = (f64, f64, f64);
/// That of what touches the ground: short and dark.
const TOUCHING: Thrown = (0.13, 0.09, 0.62);
/// That of a whole piece, which keeps some light from the ground: wide and faint.
const RESTING: Thrown = (0.45, 0.42, 0.34);
/// What is left on dark ground of the light in a shadow.
const LEFT_ON_DARK: f64 = 0.35;

/// How things throw shadows.
#[derive(Clone, Copy, Debug)]
pub struct Shade {
    /// Breadth of a usual bead in mm, which lifts cord and findings as high.
    breadth: f64,
    /// What is left of the light in a shadow on this ground: dark stone takes a deeper one.
    left: f64,
}

impl Shade {
    /// The shadows of a design on dark or light ground.
    pub fn of(design: &Design, on_dark: bool) -> Self {
        let counts = design.counts();
        let many: u32 = counts.iter().sum();
        let breadths: f64 =
            design.beads.iter().zip(counts).map(|(bead, count)| bead.across.value() * f64::from(count)).sum();
        let breadth = breadths / f64::from(many.max(1));
        Self { breadth: breadth.clamp(BREADTHS.0, BREADTHS.1), left: if on_dark { LEFT_ON_DARK } else { 1.0 } }
    }

    /// Marks with the shadow of what touches the ground.
    pub fn touching(self, marks: Vec<Mark>) -> Mark {
        self.thrown(marks, TOUCHING)
    }

    /// Marks with the shadow of a whole piece.
    pub fn resting(self, marks: Vec<Mark>) -> Mark {
        self.thrown(marks, RESTING)
    }

    /// Strands, and the closure behind and before them.
    pub fn closed(self, strands: Vec<Mark>, closure: Layers) -> Vec<Mark> {
        let touching = |marks: Vec<Mark>| (!marks.is_empty()).then(|| self.touching(marks));
        touching(closure.behind).into_iter().chain(strands).chain(touching(closure.before)).collect()
    }

    fn opacity(self, on_light: f64) -> f64 {
        1.0 - (1.0 - on_light) * self.left
    }

    fn thrown(self, marks: Vec<Mark>, (throw, blur, on_light): Thrown) -> Mark {
        let [throw, blur] = [throw, blur].map(|share| share * self.breadth);
        // Black alone keeps its hue where a renderer rounds what is nearly transparent.
        let shadow = Shadow { throw: AWAY * throw, blur, colour: Rgb::BLACK, opacity: self.opacity(on_light) };
        Mark::Raised { shadow, marks }
    }
}

/// The mark without its shadows, for paper.
#[must_use]
pub fn without(mark: Mark) -> Mark {
    let all = |marks: Vec<Mark>| marks.into_iter().map(without).collect();
    match mark {
        Mark::Raised { marks, .. } => Mark::ornament(all(marks)),
        held => held.map_inner(all),
    }
}
