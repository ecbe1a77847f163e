//! Findings as marks: the origin where they join the strand side, +x outward, in mm, to their true
//! dimensions. A size that a pattern does not say is drawn in proportion, by eye.

mod bar;
mod fastener;
mod hook;
mod loops;
mod tube;

use super::light::{Ink, Light, metal_toned, shading};
use super::wire::wire;
use crate::design::Finding;
use crate::geometry::Point;
use crate::paint::mark::{Fill, Mark, Rgb, Step, Stroke};
use crate::pattern::{FindingKind, Finish};
use crate::units::Length;

pub use loops::{closed_pin, link, link_on_edge};
pub use tube::pressed;

/// A finding to draw, and how.
pub struct Drawing<'a> {
    finding: &'a Finding,
    ink: Ink,
    light: Light,
    colour: Rgb,
}

/// The marks of a finding; of a chain, one link seen on its face.
#[must_use]
pub fn marks(finding: &Finding, ink: Ink, light: Light) -> Vec<Mark> {
    let drawing = Drawing::new(finding, ink, light);
    match finding.kind {
        FindingKind::Crimp => tube::crimp(&drawing),
        FindingKind::Cone => tube::cone(&drawing),
        FindingKind::BeadCap => tube::cap(&drawing),
        FindingKind::CrimpCover => tube::cover(&drawing),
        FindingKind::KnotCover => tube::knot_cover(&drawing),
        FindingKind::CordEnd => tube::cord_end(&drawing),
        FindingKind::EyePin => loops::eye_pin(&drawing),
        FindingKind::HeadPin => loops::head_pin(&drawing),
        FindingKind::JumpRing => loops::jump_ring(&drawing),
        FindingKind::Chain => loops::link(&drawing),
        FindingKind::WireGuard => loops::guard(&drawing),
        FindingKind::Bail => loops::bail(&drawing),
        FindingKind::Clasp => hook::clasp(&drawing),
        FindingKind::SpectacleLoop => tube::spectacle_loop(&drawing),
        FindingKind::SpringRing => fastener::spring_ring(&drawing),
        FindingKind::Hook => fastener::hook(&drawing),
        FindingKind::ToggleRing => fastener::toggle_ring(&drawing),
        FindingKind::ToggleBar => fastener::toggle_bar(&drawing),
        FindingKind::BarrelHalf => fastener::barrel(&drawing),
        FindingKind::EarWire => hook::ear_wire(&drawing),
        FindingKind::SpacerBar => bar::spacer(&drawing),
        FindingKind::EndBar => bar::end(&drawing),
    }
}

impl<'a> Drawing<'a> {
    /// Gets a finding ready to draw.
    #[must_use]
    pub fn new(finding: &'a Finding, ink: Ink, light: Light) -> Self {
        Self { finding, ink, light, colour: ink.tone(finding.colour) }
    }

    fn length(&self, default: f64) -> f64 {
        or(self.finding.length, default)
    }

    /// Thickness of its wire.
    fn thick(&self, default: f64) -> f64 {
        or(self.finding.wire, default)
    }

    fn wire(&self, outline: &[Step], thick: f64) -> Vec<Mark> {
        wire(outline, thick, self.finding.colour, self.ink)
    }

    /// Metal turned about x, from −`half` to `half` across it.
    fn turned(&self, half: f64) -> Fill {
        if self.ink == Ink::Outline {
            return Fill::Flat(Rgb::WHITE, 1.0);
        }
        let bright = self.light.towards.y * 0.5;
        let stops = shading(Finish::Metallic).stops_across(self.colour, bright);
        Fill::Linear(Point::new(0.0, -half), Point::new(0.0, half), stops)
    }

    /// Metal rounded across its length, from one place along x to another.
    fn along(&self, from: f64, to: f64) -> Fill {
        if self.ink == Ink::Outline {
            return Fill::Flat(Rgb::WHITE, 1.0);
        }
        let stops = shading(Finish::Metallic).stops_across(self.colour, self.light.towards.x * 0.5);
        Fill::Linear(Point::new(from, 0.0), Point::new(to, 0.0), stops)
    }

    /// A metal ball.
    fn ball(&self, centre: Point, radius: f64) -> Fill {
        if self.ink == Ink::Outline {
            return Fill::Flat(Rgb::WHITE, 1.0);
        }
        let bright = centre + self.light.towards * (radius * 0.4);
        Fill::Radial(bright, radius * 1.4, shading(Finish::Metallic).stops(self.colour))
    }

    /// Flat metal.
    fn flat(&self, tone: f64) -> Fill {
        let colour = if self.ink == Ink::Outline { Rgb::WHITE } else { metal_toned(self.colour, tone) };
        Fill::Flat(colour, 1.0)
    }

    /// The colour of an edge or a shade line.
    fn dark(&self) -> Rgb {
        if self.ink == Ink::Outline { Rgb::BLACK } else { metal_toned(self.colour, -0.7) }
    }

    fn solid(&self, outline: Vec<Step>, fill: Fill, edge: f64) -> Mark {
        let stroke = Some(Stroke { round: true, ..Stroke::new(self.dark(), edge) });
        Mark::Shape { outline, fill: Some(fill), stroke }
    }

    fn line(&self, outline: Vec<Step>, width: f64) -> Mark {
        let stroke = Some(Stroke { round: true, ..Stroke::new(self.dark(), width) });
        Mark::Shape { outline, fill: None, stroke }
    }
}

/// Inside length of a chain's link: by how much each lengthens the chain.
#[must_use]
pub fn link_inside(finding: &Finding) -> f64 {
    let (length, _, thick) = loops::link_size(&Drawing::new(finding, Ink::Colour, Light::on_turn(0)));
    length - 2.0 * thick
}

/// Thickness of a chain's wire.
#[must_use]
pub fn link_wire(finding: &Finding) -> f64 {
    loops::link_size(&Drawing::new(finding, Ink::Colour, Light::on_turn(0))).2
}

/// A length in mm, or the default where the pattern says nothing.
fn or(length: Length, default: f64) -> f64 {
    if length.value() > 0.0 { length.value() } else { default }
}
