//! Findings as marks: the origin where they join the strand side, +x outward, in mm, to their true
//! dimensions. A size that a pattern does not say is drawn in proportion, by eye.

mod bar;
mod charm;
mod fastener;
mod hook;
mod loops;
mod tassel;
mod tube;

use super::light::{Ink, Light, metal_toned, shading};
use super::wire::wire;
use crate::design::{ChainLinks, Finding, Form};
use crate::geometry::Point;
use crate::paint::mark::{ColourStop, Fill, Mark, Rgb, Segment, Stroke};
use crate::pattern::Finish;
use crate::units::Length;

use loops::Hoop;

pub use loops::{closed_pin, link, link_on_edge, pin_loop};
pub use tube::pressed;

/// Width in mm of the line round a part of a finding, which lies within its sizes.
const EDGE: f64 = 0.1;
/// Width in mm of the line round a small part on another.
const FINE_EDGE: f64 = 0.08;
/// Width in mm of a seam or a slit, and of the edge of what stands out.
const SEAM: f64 = 0.12;

/// How a finding is drawn.
pub struct FindingDrawing {
    metal: Rgb,
    ink: Ink,
    light: Light,
    colour: Rgb,
}

/// The marks of a finding; of a chain, one link seen on its face.
#[must_use]
pub fn marks(drawing: &FindingDrawing, finding: &Finding) -> Vec<Mark> {
    match &finding.form {
        Form::Crimp(crimp) => tube::crimp(drawing, crimp),
        Form::Cone(cone) => tube::cone(drawing, cone, says(finding, FLUTED)),
        Form::BeadCap(cap) => tube::cap(drawing, cap),
        Form::CrimpCover(body) => tube::cover(drawing, body),
        Form::KnotCover(cover) => tube::knot_cover(drawing, &cover.body),
        Form::CordEnd(end) => tube::cord_end(drawing, end),
        Form::Pin(pin) => loops::pin(drawing, pin),
        Form::JumpRing(ring) => loops::jump_ring(drawing, ring),
        Form::Chain(chain) => loops::link(drawing, chain),
        Form::WireGuard(body) => loops::guard(drawing, body),
        Form::Bail(hanger) => loops::bail(drawing, hanger),
        Form::Clasp(body) => hook::clasp(drawing, body),
        Form::Tassel(tassel) => tassel::tassel(drawing, tassel),
        Form::Charm(charm) => charm::charm(drawing, charm),
        Form::SpectacleLoop(body) => tube::spectacle_loop(drawing, body),
        Form::SpringRing(body) => fastener::spring_ring(drawing, body),
        Form::Hook(body) => fastener::hook(drawing, body),
        Form::ToggleRing(body) => fastener::toggle_ring(drawing, body),
        Form::ToggleBar(body) => fastener::toggle_bar(drawing, body),
        Form::BarrelHalf(body) => fastener::barrel(drawing, body),
        Form::EarWire(hanger) => hook::ear_wire(drawing, hanger),
        Form::SpacerBar(bar) => bar::spacer(drawing, bar),
        Form::EndBar(bar) => bar::end(drawing, bar),
        Form::BoxHalf(bar) => bar::box_half(drawing, bar),
        Form::SlideHalf(bar) => bar::slide_half(drawing, bar),
    }
}

/// Part of a ring through which something goes, between angles from its way outward: what lies before that; nothing of what
/// is no ring.
#[must_use]
pub fn part(drawing: &FindingDrawing, finding: &Finding, angles: [f64; 2]) -> Vec<Mark> {
    hoop(finding).map(|hoop| hoop.part(drawing, angles)).unwrap_or_default()
}

/// The round of wire through which something may go.
fn hoop(finding: &Finding) -> Option<Hoop> {
    match &finding.form {
        Form::JumpRing(ring) => Some(Hoop::of_ring(ring)),
        Form::ToggleRing(body) => Some(fastener::toggle_hoop(body)),
        _ => None,
    }
}

/// How far outward the middle of a ring lies through which something may go, and the radius of its wire's middle line, in
/// mm; nothing of what is no ring.
#[must_use]
pub fn ring_round(finding: &Finding) -> Option<[f64; 2]> {
    hoop(finding).map(|hoop| [hoop.centre.x, hoop.radius])
}

/// The half of a ring that lies before what it goes through at both ends; nothing of what is no ring.
#[must_use]
pub fn front(drawing: &FindingDrawing, finding: &Finding) -> Vec<Mark> {
    if let Form::JumpRing(ring) = &finding.form { loops::front_ring(drawing, ring) } else { Vec::new() }
}

/// The rounds of wire by which a finding hangs on the strands' side, each of which links with what holds it.
fn eyes(finding: &Finding) -> Vec<Hoop> {
    match &finding.form {
        Form::JumpRing(ring) => vec![Hoop::of_ring(ring)],
        Form::Clasp(body) => vec![hook::clasp_eye(body)],
        Form::SpringRing(body) => vec![fastener::spring_eye(body)],
        Form::Hook(body) => vec![fastener::hook_eye(body)],
        Form::ToggleRing(body) => vec![fastener::toggle_eye(body)],
        Form::ToggleBar(body) => vec![fastener::bar_eye(body)],
        Form::BarrelHalf(body) => vec![fastener::barrel_eye(body)],
        Form::EarWire(hanger) => vec![hook::wire_eye(hanger)],
        Form::EndBar(bar) | Form::BoxHalf(bar) | Form::SlideHalf(bar) => bar::eyes(bar),
        _ => Vec::new(),
    }
}

/// Thickness in mm of the wire by which a finding hangs, as it is drawn; 0 where it has none.
#[must_use]
pub fn eye_wire(finding: &Finding) -> f64 {
    eyes(finding).first().map_or(0.0, |eye| eye.thick)
}

/// What of a finding's eyes lies before the loops or rings that they link with.
#[must_use]
pub fn linked(drawing: &FindingDrawing, finding: &Finding) -> Vec<Mark> {
    eyes(finding).into_iter().flat_map(|eye| eye.quarter(drawing)).collect()
}

impl FindingDrawing {
    /// Gets ready to draw a finding of a colour.
    #[must_use]
    pub fn new(metal: Rgb, ink: Ink, light: Light) -> Self {
        Self { metal, ink, light, colour: ink.tone(metal) }
    }

    fn wire(&self, outline: &[Segment], thick: f64) -> Vec<Mark> {
        wire(outline, thick, self.metal, self.ink)
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

    /// A flat plate about x that reaches so far across it: a little lighter on the side of the light.
    fn plate(&self, [from, to]: [f64; 2], half: f64) -> Fill {
        const TONES: [(f64, f64); 3] = [(0.0, 0.5), (0.45, 0.12), (1.0, -0.12)];
        let [centre, reach] =
            [Point::new(f64::midpoint(from, to), 0.0), self.light.towards * half.max((to - from) / 2.0)];
        let stop = |(at, tone)| ColourStop { at, colour: metal_toned(self.colour, tone), opacity: 1.0 };
        match self.ink {
            Ink::Outline => self.flat(0.0),
            Ink::Colour | Ink::Grey => Fill::Linear(centre + reach, centre - reach, TONES.map(stop).to_vec()),
        }
    }

    /// The colour of an edge or a shade line.
    fn dark(&self) -> Rgb {
        if self.ink == Ink::Outline { Rgb::BLACK } else { metal_toned(self.colour, -0.7) }
    }

    fn solid(&self, outline: Vec<Segment>, fill: Fill, edge: f64) -> Mark {
        let stroke = Some(Stroke { round: true, ..Stroke::new(self.dark(), edge) });
        Mark::Shape { outline, fill: Some(fill), stroke }
    }

    fn line(&self, outline: Vec<Segment>, width: f64) -> Mark {
        let stroke = Some(Stroke { round: true, ..Stroke::new(self.dark(), width) });
        Mark::Shape { outline, fill: None, stroke }
    }
}

/// Inside length of a chain's link: by how much each lengthens the chain.
#[must_use]
pub fn link_inside(chain: &ChainLinks) -> f64 {
    let (length, _, thick) = loops::link_size(chain);
    length - 2.0 * thick
}

/// Thickness of a chain's wire.
#[must_use]
pub fn link_wire(chain: &ChainLinks) -> f64 {
    loops::link_size(chain).2
}

/// The word by which a name says that a finding has flutes.
const FLUTED: &str = "fluted";

/// Whether a finding's name has a word.
fn says(finding: &Finding, word: &str) -> bool {
    finding.name.split(|sign: char| !sign.is_alphanumeric()).any(|one| one.eq_ignore_ascii_case(word))
}

/// A size in mm, or the default where the pattern does not state it.
fn or(size: Option<Length>, default: f64) -> f64 {
    size.map_or(default, Length::value)
}
