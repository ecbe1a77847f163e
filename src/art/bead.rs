//! A bead as marks: outline, shading by finish, facets, hole ends, hatch.

use super::facet::{self, Facet};
use super::hatch::upright_hatch;
use super::light::{Ink, Light, Shading, shading, toned};
use super::shape::{self, Size};
use crate::design::Bead;
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Rgb, Step, Stroke};
use crate::paint::outline::{self, flattened, rect};
use crate::pattern::{Finish, Shape};

/// Whether a bead looks the same whichever way its hole lies.
#[must_use]
pub fn looks_the_same_turned(bead: &Bead) -> bool {
    let ball = bead.shape == Shape::Round && (bead.along.value() - bead.across.value()).abs() < 1e-9;
    let smooth = matches!(bead.finish, Finish::Gloss | Finish::Matte | Finish::Metallic | Finish::Pearl);
    ball && smooth
}

/// Whether a bead looks the same with its ends swapped.
#[must_use]
pub const fn looks_the_same_reversed(shape: Shape) -> bool {
    !matches!(shape, Shape::Drop | Shape::Chip)
}

/// Everything that a bead's marks depend on.
struct Drawing<'a> {
    bead: &'a Bead,
    ink: Ink,
    colour: Rgb,
    light: Light,
    shading: Shading,
    size: Size,
    outline: Vec<Step>,
    edge: f64,
}

/// The marks of a bead about its centre, the hole along x.
#[must_use]
pub fn marks(bead: &Bead, index: usize, ink: Ink, light: Light) -> Vec<Mark> {
    let drawing = Drawing::new(bead, ink, light);
    let facets = facet::facets(bead.shape, bead.finish, drawing.size);
    let mut marks = match ink {
        Ink::Outline => vec![drawing.plain(&facets)],
        Ink::Colour | Ink::Grey if facets.is_empty() => drawing.smooth(),
        Ink::Colour | Ink::Grey => drawing.cut(&facets),
    };
    if ink != Ink::Colour {
        let points = drawing.seen(&facets);
        marks.extend(upright_hatch(index, &points, Point::new(drawing.size.along, drawing.size.across), light.turned));
    }
    marks
}

impl<'a> Drawing<'a> {
    fn new(bead: &'a Bead, ink: Ink, light: Light) -> Self {
        let (along, across) = (bead.along.value(), bead.across.value());
        let (least, thinnest) = (along.min(across), if ink == Ink::Outline { 0.12 } else { 0.04 });
        let edge = (least * 0.022).clamp(thinnest, 0.25).min(least * 0.2);
        // The edge is drawn half outside the outline, and all of it belongs to the bead.
        let half = |size: f64| (size - edge) / 2.0;
        let size = Size { along: half(along), across: half(across), hole: bead.hole.value() / 2.0 };
        let outline = shape::outline(bead.shape, size);
        Self { bead, ink, colour: ink.tone(bead.colour), light, shading: shading(bead.finish), size, outline, edge }
    }

    fn seen(&self, facets: &[Facet]) -> Vec<Point> {
        if facets.is_empty() { flattened(&self.outline) } else { facet::hull(facets) }
    }

    fn plain(&self, facets: &[Facet]) -> Mark {
        let outline = if facets.is_empty() { self.outline.clone() } else { outline::polygon(&facet::hull(facets)) };
        area(outline, Fill::Flat(Rgb::WHITE, 1.0), Some(Stroke::new(Rgb::BLACK, self.edge)))
    }

    fn edge(&self) -> Stroke {
        let tone = if self.shading.see_through { -0.38 } else { -0.5 };
        Stroke { round: true, ..Stroke::new(toned(self.colour, tone), self.edge) }
    }

    fn cut(&self, facets: &[Facet]) -> Vec<Mark> {
        let hull = outline::polygon(&facet::hull(facets));
        let mut marks = vec![area(hull, Fill::Flat(self.colour, 1.0), Some(self.edge()))];
        marks.extend(facet::lit(facets, self.colour, self.light, &self.shading));
        marks.extend(self.table(facets));
        marks.extend((self.ink == Ink::Colour).then(|| self.edges(facets)));
        marks.extend(self.hole_ends());
        if matches!(self.bead.shape, Shape::Cube | Shape::Bicone | Shape::Chip) {
            marks.extend(self.glint());
        }
        marks
    }

    fn table(&self, facets: &[Facet]) -> Option<Mark> {
        let table = facet::table(facets);
        let reach = flattened(&table).iter().map(|point| point.length()).fold(0.0, f64::max);
        let fill = self.along_the_light(reach * 0.9);
        (!table.is_empty()).then(|| area(table, fill, None))
    }

    /// Light caught by the edges between facets.
    fn edges(&self, facets: &[Facet]) -> Mark {
        let stroke = Stroke { opacity: 0.25, round: true, ..Stroke::new(toned(self.colour, 0.8), self.edge * 0.5) };
        let outline = facet::edges(facets, self.bead.finish == Finish::Clear);
        Mark::Shape { outline, fill: None, stroke: Some(stroke) }
    }

    fn smooth(&self) -> Vec<Mark> {
        let mut marks = vec![area(self.outline.clone(), self.body(), Some(self.edge()))];
        marks.extend(self.channel());
        marks.extend(self.coin_face());
        marks.extend(self.rim_light());
        marks.extend(self.hole_ends());
        marks.extend(self.glint());
        marks
    }

    /// Where the surface is brightest.
    fn bright(&self) -> Point {
        let side = if self.shading.see_through { -0.4 } else { 0.42 };
        let middle = Point::new(self.fat_place(), 0.0);
        let reach = Point::new(self.size.along - self.fat_place().abs(), self.size.across);
        middle + Point::new(self.light.towards.x * reach.x, self.light.towards.y * reach.y) * side
    }

    /// The widest place along the hole.
    fn fat_place(&self) -> f64 {
        if self.bead.shape == Shape::Drop { self.size.along - self.size.across.min(self.size.along) } else { 0.0 }
    }

    /// Whether it shines along its whole length.
    const fn is_cylinder(&self) -> bool {
        matches!(self.bead.shape, Shape::Tube | Shape::Barrel | Shape::Seed)
    }

    fn body(&self) -> Fill {
        let Size { along, across, .. } = self.size;
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

    /// The coin's flat face inside its rim.
    fn coin_face(&self) -> Option<Mark> {
        let Size { along, across, .. } = self.size;
        let face = || outline::ellipse(Point::ORIGIN, along * 0.76, across * 0.76);
        let groove = Stroke { opacity: 0.55, ..Stroke::new(toned(self.colour, -0.4), self.edge) };
        (self.bead.shape == Shape::Coin).then(|| Mark::Shape { outline: face(), fill: None, stroke: Some(groove) })
    }

    /// The hole seen through the bead.
    fn channel(&self) -> Option<Mark> {
        let Size { along, across, hole } = self.size;
        let (opacity, wall) = if self.bead.finish == Finish::Clear { (0.07, 0.3) } else { (0.06, 0.0) };
        let reach = along * libm::sqrt((1.0 - (hole / across) * (hole / across)).max(0.0)) * 0.98;
        let band = rect(Point::new(-reach, -hole), reach * 2.0, hole * 2.0);
        let dark = toned(self.colour, -0.7);
        let walls = Stroke { opacity: wall, ..Stroke::new(dark, self.edge * 0.6) };
        let wanted = self.shading.see_through && hole < across;
        wanted.then(|| area(band, Fill::Flat(dark, opacity), (wall > 0.0).then_some(walls)))
    }

    /// Light thrown back on the edge that is turned away: a sickle along it.
    fn rim_light(&self) -> Option<Mark> {
        const REACH: f64 = 0.9;
        const OUTER: f64 = 0.91;
        const BREADTH: f64 = 0.11;
        let away = self.light.towards * -1.0;
        // Angle off the direction away from the light, of every second point of the edge.
        let off = |p: Point| Point::new(p.x * away.x + p.y * away.y, p.y * away.x - p.x * away.y).angle();
        let edge = flattened(&self.outline).into_iter().step_by(2);
        let mut rim: Vec<(f64, Point)> = edge.map(|p| (off(p), p)).filter(|(off, _)| off.abs() < REACH).collect();
        rim.sort_by(|a, b| a.0.total_cmp(&b.0));
        let outer = rim.iter().map(|(_, point)| *point * OUTER);
        let share = |off: f64| OUTER - BREADTH * (1.0 - (off / REACH) * (off / REACH));
        let inner = rim.iter().rev().map(|(off, point)| *point * share(*off));
        let sickle: Vec<Point> = outer.chain(inner).collect();
        let fill = Fill::Flat(toned(self.colour, 0.75), self.shading.rim);
        let wanted = self.shading.rim > 0.0 && !self.is_cylinder() && rim.len() > 2;
        wanted.then(|| area(outline::closed_curve(&sickle), fill, None))
    }

    /// The light's reflection.
    fn glint(&self) -> Option<Mark> {
        let Size { along, across, .. } = self.size;
        let fill = Fill::Flat(Rgb::WHITE, self.shading.glint);
        let size = along.min(across) * self.shading.glint_size;
        let outline = if self.is_cylinder() {
            let (y, reach) = (self.light.towards.y * across * 0.55, along * 0.62);
            outline::rounded_rect(Point::new(-reach, y - size * 0.4), reach * 2.0, size * 0.8, size)
        } else {
            self.spot(size)
        };
        (self.shading.glint > 0.0).then(|| area(outline, fill, None))
    }

    /// An oval spot on the way to the light, lying across that way.
    fn spot(&self, size: f64) -> Vec<Step> {
        let middle = Point::new(self.fat_place(), 0.0);
        let reach = Point::new(self.size.along - self.fat_place().abs(), self.size.across);
        let at = middle + Point::new(self.light.towards.x * reach.x, self.light.towards.y * reach.y) * 0.52;
        let flat = outline::ellipse(Point::ORIGIN, size * 0.68, size * 1.15);
        let turn = Point::new(self.light.towards.x / reach.x, self.light.towards.y / reach.y).angle();
        outline::mapped(&flat, |point| at + point.turned(turn))
    }

    /// Dark half rounds where the hole comes out of flat ends.
    fn hole_ends(&self) -> Option<Mark> {
        let Size { along, across, hole } = self.size;
        let flat_ended =
            !matches!(self.bead.shape, Shape::Round | Shape::Oval | Shape::Rondelle | Shape::Bicone | Shape::Chip);
        let hole = hole.min(across * 0.6);
        let depth = (hole * 0.4).min(along * 0.12);
        let end = |side: f64| {
            let at = |x: f64, y: f64| Point::new(side * (along - x * depth), y * hole);
            let round = Step::Curve(at(1.33, -1.0), at(1.33, 1.0), at(0.0, 1.0));
            vec![Step::Move(at(0.0, -1.0)), round, Step::Close]
        };
        let first = if self.bead.shape == Shape::Drop { Vec::new() } else { end(1.0) };
        let ends = [end(-1.0), first].concat();
        flat_ended.then(|| area(ends, Fill::Flat(toned(self.colour, -0.65), 1.0), None))
    }
}

fn area(outline: Vec<Step>, fill: Fill, stroke: Option<Stroke>) -> Mark {
    Mark::Shape { outline, fill: Some(fill), stroke }
}
