//! A bead as marks: body, facets, what shows through it, its surface, its edge, its hatch.

use super::facet::{self, Facet};
use super::glass::Window;
use super::hatch::upright_hatch;
use super::light::{Ink, Light, Shading, edge_tone, shading, toned};
use super::pearl::PearlVariant;
use super::shape::{self, Extents};
use super::surface;
use crate::design::Bead;
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};
use crate::paint::outline::{self, flattened, polygon};
use crate::palette::Coat;
use crate::pattern::{Finish, Shape};

/// Whether a bead looks the same whichever way its hole lies.
#[must_use]
pub fn looks_the_same_turned(bead: &Bead, finish: Finish) -> bool {
    let ball = bead.shape == Shape::Round && (bead.along.value() - bead.across.value()).abs() < 1e-9;
    let smooth = matches!(finish, Finish::Gloss | Finish::Matte | Finish::Metallic | Finish::Pearl);
    ball && smooth
}

/// Whether a bead looks the same with its ends swapped.
#[must_use]
pub const fn looks_the_same_reversed(shape: Shape) -> bool {
    !matches!(shape, Shape::Drop | Shape::Chip)
}

/// Everything that a bead's marks depend on.
pub struct BeadDrawing<'a> {
    /// The bead.
    pub bead: &'a Bead,
    /// How its surface takes the light.
    pub finish: Finish,
    /// What it is printed with.
    pub ink: Ink,
    /// Its colour in that ink.
    pub colour: Rgb,
    /// Where the light is.
    pub light: Light,
    /// How it takes the light.
    pub shading: Shading,
    /// The room that it fills.
    pub size: Extents,
    /// Its outline, where it is not cut.
    pub outline: Vec<Segment>,
    /// Width of its edge in mm.
    pub edge: f64,
    /// What of it lets its hole be seen.
    pub window: Option<Window>,
}

/// What tells a bead from others of its kind, and from itself drawn larger.
#[derive(Clone, Copy, Debug, Default)]
pub struct DrawnAs {
    /// Which of the pearls that differ it is.
    pub variant: PearlVariant,
    /// How often it is halved on paper, about: lines are so much thicker.
    pub halved: u32,
}

/// The marks of a bead about its centre, the hole along x; in grey and outline with a hatch.
#[must_use]
pub fn marks(bead: &Bead, coat: Coat, (ink, hatch): (Ink, usize), light: Light, seen: DrawnAs) -> Vec<Mark> {
    let drawing = BeadDrawing::new(bead, coat, ink, light, seen);
    let facets = facet::facets(bead.shape, coat.finish, drawing.size);
    let mut marks = match ink {
        Ink::Outline => vec![drawing.plain(&facets)],
        Ink::Colour | Ink::Grey if facets.is_empty() => drawing.smooth(),
        Ink::Colour | Ink::Grey => drawing.cut(&facets),
    };
    if ink != Ink::Colour {
        let points = drawing.seen(&facets);
        marks.extend(upright_hatch(hatch, &points, Point::new(drawing.size.along, drawing.size.across), light.turned));
    }
    marks
}

/// A bead's outline in its colour.
#[must_use]
pub fn speck(bead: &Bead, coat: Coat, ink: Ink) -> Mark {
    let drawing = BeadDrawing::new(bead, coat, ink, Light::on_turn(0), DrawnAs::default());
    area(drawing.outline, Fill::Flat(drawing.colour, 1.0), None)
}

impl<'a> BeadDrawing<'a> {
    fn new(bead: &'a Bead, coat: Coat, ink: Ink, light: Light, DrawnAs { variant, halved }: DrawnAs) -> Self {
        /// A quarter of a point: the thinnest line that printers hold; common practice, no source.
        const HAIRLINE: f64 = 0.088;
        let (along, across) = (bead.along.value(), bead.across.value());
        let (least, thinnest) = (along.min(across), if ink == Ink::Outline { 0.12 } else { HAIRLINE });
        let edge = (least * 0.022).min(0.25).max(thinnest * f64::from(1_u32 << halved)).min(least * 0.2);
        // The edge is drawn half outside the outline, and all of it belongs to the bead.
        let half = |size: f64| (size - edge) / 2.0;
        let size = Extents { along: half(along), across: half(across), hole: bead.hole.value() / 2.0 };
        let outline = shape::outline(bead.shape, size, bead.hangs());
        let shading = shading(coat.finish);
        let window = Window::of(bead, size).filter(|_| shading.see_through && ink != Ink::Outline);
        let colour = ink.tone(variant.tinted(coat.colour));
        let finish = coat.finish;
        Self { bead, finish, ink, colour, light: variant.lit(light), shading, size, outline, edge, window }
    }

    fn seen(&self, facets: &[Facet]) -> Vec<Point> {
        if facets.is_empty() { flattened(&self.outline) } else { facet::hull(facets) }
    }

    fn plain(&self, facets: &[Facet]) -> Mark {
        let outline = if facets.is_empty() { self.outline.clone() } else { polygon(&facet::hull(facets)) };
        area(outline, Fill::Flat(Rgb::WHITE, 1.0), Some(Stroke::new(Rgb::BLACK, self.edge)))
    }

    /// The line round it, which shows on white paper however pale it is.
    fn edged(&self, outline: Vec<Segment>) -> Mark {
        let tone = if self.shading.see_through { -0.38 } else { -0.5 };
        let stroke = Stroke { round: true, ..Stroke::new(edge_tone(self.colour, tone), self.edge) };
        Mark::Shape { outline, fill: None, stroke: Some(stroke) }
    }

    fn cut(&self, facets: &[Facet]) -> Vec<Mark> {
        let hull = facet::hull(facets);
        let mut marks = vec![area(self.but_window(&hull), Fill::Flat(self.colour, 1.0), None)];
        marks.extend(self.faces(facets));
        marks.extend(self.table(facets));
        marks.extend(self.walls(&hull));
        marks.extend((self.ink == Ink::Colour && self.shading.crisp > 0.0).then(|| self.edges(facets)));
        marks.extend(self.rim(&polygon(&hull)));
        marks.extend(self.grain(&hull));
        marks.extend(surface::hole_ends(self));
        marks.extend(surface::glint(self));
        marks.push(self.edged(polygon(&hull)));
        marks
    }

    /// The sloping faces; those before the hole let it be seen.
    fn faces(&self, facets: &[Facet]) -> Vec<Mark> {
        let Some(window) = &self.window else { return facet::lit(facets, self, 1.0) };
        let (beside, before) = facet::split(facets, window);
        [facet::lit(&beside, self, 1.0), facet::lit(&before, self, self.shading.veil)].concat()
    }

    fn table(&self, facets: &[Facet]) -> Vec<Mark> {
        let corners = facet::table(facets);
        let reach = corners.iter().map(|point| point.length()).fold(0.0, f64::max);
        if corners.is_empty() { Vec::new() } else { self.filled(&corners, self.along_the_light(reach * 0.9)) }
    }

    /// An area, thin before the hole.
    fn filled(&self, points: &[Point], fill: Fill) -> Vec<Mark> {
        let pane = self.window.as_ref().map(|window| window.pane(points, fill.clone(), self.shading.veil));
        std::iter::once(area(self.but_window(points), fill, None)).chain(pane).collect()
    }

    /// Light caught by the edges between facets.
    fn edges(&self, facets: &[Facet]) -> Mark {
        let (opacity, white) = (self.shading.crisp, toned(self.colour, 0.8));
        let stroke = Stroke { opacity, round: true, ..Stroke::new(white, self.edge * 0.5) };
        let outline = facet::edges(facets, self.finish == Finish::Clear);
        Mark::Shape { outline, fill: None, stroke: Some(stroke) }
    }

    fn smooth(&self) -> Vec<Mark> {
        let points = flattened(&self.outline);
        let mut marks = match self.window {
            Some(_) => self.filled(&points, self.body()),
            None => vec![area(self.outline.clone(), self.body(), None)],
        };
        marks.extend(self.walls(&points));
        marks.extend(surface::coin_face(self));
        marks.extend(surface::rim_light(self));
        marks.extend(self.rim(&self.outline));
        marks.extend(self.grain(&points));
        marks.extend(surface::hole_ends(self));
        marks.extend(surface::glint(self));
        marks.push(self.edged(self.outline.clone()));
        marks
    }

    /// An area without its part before the hole.
    fn but_window(&self, points: &[Point]) -> Vec<Segment> {
        let window = self.window.iter().flat_map(|window| polygon(&window.part(points)));
        polygon(points).into_iter().chain(window).collect()
    }

    fn walls(&self, points: &[Point]) -> Option<Mark> {
        let window = self.window.as_ref()?;
        let opacity = if self.finish == Finish::Clear { 0.5 } else { 0.22 };
        let stroke = Stroke { opacity, ..Stroke::new(toned(self.colour, -0.7), self.edge * 0.7) };
        Some(Mark::Shape { outline: window.walls(points), fill: None, stroke: Some(stroke) })
    }

    /// The pale rim of frosted glass, which is lit all through.
    fn rim(&self, outline: &[Segment]) -> Vec<Mark> {
        /// Lines inside the edge: how far in and how broad, as shares of its size, and their opacity.
        const LINES: [(f64, f64, f64); 3] = [(0.94, 0.1, 0.3), (0.9, 0.18, 0.2), (0.84, 0.3, 0.12)];
        let least = self.size.along.min(self.size.across);
        let line = |(inside, width, opacity): (f64, f64, f64)| {
            let stroke = Stroke { opacity, round: true, ..Stroke::new(toned(self.colour, 0.85), least * width) };
            let outline = outline::mapped(outline, |point| point * inside);
            Mark::Shape { outline, fill: None, stroke: Some(stroke) }
        };
        if self.finish == Finish::Frosted { LINES.map(line).to_vec() } else { Vec::new() }
    }

    fn grain(&self, points: &[Point]) -> Option<Mark> {
        (self.ink == Ink::Colour).then(|| surface::grain(self, points))?
    }

    /// Where the surface is brightest.
    fn bright(&self) -> Point {
        let side = if self.shading.see_through { -0.4 } else { 0.42 };
        self.towards_light(side)
    }

    /// A place on the way from its middle to the light, as a share of its reach.
    pub fn towards_light(&self, share: f64) -> Point {
        let reach = self.reach();
        let towards = Point::new(self.light.towards.x * reach.x, self.light.towards.y * reach.y);
        Point::new(self.fat_place(), 0.0) + towards * share
    }

    /// How far it reaches from its middle each way.
    pub fn reach(&self) -> Point {
        Point::new(self.size.along - self.fat_place().abs(), self.size.across)
    }

    /// The widest place along the hole.
    fn fat_place(&self) -> f64 {
        if self.bead.shape == Shape::Drop { self.size.along - self.size.across.min(self.size.along) } else { 0.0 }
    }

    /// Whether it shines along its whole length.
    pub const fn is_cylinder(&self) -> bool {
        matches!(self.bead.shape, Shape::Tube | Shape::Barrel | Shape::Seed)
    }

    fn body(&self) -> Fill {
        let Extents { along, across, .. } = self.size;
        match self.bead.shape {
            _ if self.is_cylinder() => self.across_a_cylinder(across),
            Shape::Coin => self.along_the_light(along.max(across)),
            _ => {
                let bright = self.bright();
                let farthest = flattened(&self.outline).iter().map(|p| p.distance(bright)).fold(0.0, f64::max);
                Fill::Radial(bright, farthest, self.shading.stops(self.colour))
            }
        }
    }

    fn across_a_cylinder(&self, across: f64) -> Fill {
        let side = if self.shading.see_through { -0.5 } else { 0.55 };
        let stops = self.shading.stops_across(self.colour, self.light.towards.y * side);
        Fill::Linear(Point::new(0.0, -across), Point::new(0.0, across), stops)
    }

    /// A flat face that bends only at its rim.
    fn along_the_light(&self, reach: f64) -> Fill {
        let towards = self.light.towards * reach;
        let (from, to) = if self.shading.see_through { (towards * -1.0, towards) } else { (towards, towards * -1.0) };
        Fill::Linear(from, to, self.shading.stops(self.colour))
    }
}

/// An area with or without a line round it.
pub fn area(outline: Vec<Segment>, fill: Fill, stroke: Option<Stroke>) -> Mark {
    Mark::Shape { outline, fill: Some(fill), stroke }
}
