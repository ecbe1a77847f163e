//! How a strand's cord ends: plain, in a loop, hitched, tied, or within a finding; for strands as they hang and for rows.
//!
//! Loops, hitches and knots lie within the strand's length, their outside at its end. Lengths of a closure's findings are
//! added to that from outside to outside, so that drawn together a loop would but touch what it goes round: it is drawn so
//! much farther out, as long as it is, where bare cord makes up for that; else it is drawn longer.
//! Lengths in mm of the piece, which its canvas scales.

use crate::art::eye_wire;
use crate::design::{Design, Finding, Part, Strand};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{self, QUARTER};
use crate::pattern::FindingKind;
use crate::steps::ends::{Fastening, way};
use crate::steps::side::Side;

use super::Canvas;

/// Breadth of a loop as a share of its length, by eye.
const LOOP_BREADTH: f64 = 0.6;
/// Places on its side: how far along as a share of its length, and how far aside as a share of half its breadth, by eye.
const LOOP_SIDE: [(f64, f64); 3] = [(0.12, 0.72), (0.42, 1.0), (0.76, 0.62)];
/// Least length in mm of a knot that ends a cord or closes its loop, so that it is seen.
pub const LEAST_KNOT: f64 = 0.8;
/// How far a hitch's bar lies from its turns about what it is hitched to, in thicknesses of its cord, by eye.
const HITCH_BAR: [f64; 2] = [1.0, 2.5];

/// How a strand's cord ends on one side; all in mm from the outside of its end inward.
#[derive(Clone, Copy, Debug)]
pub enum Fastened {
    /// Plain up to its end.
    Plain,
    /// In a loop so long, which a crimp closes.
    Looped(f64),
    /// In a lark's head, whose bar lies so deep.
    Hitched(f64),
    /// In a loop so long, which a knot of a length closes.
    Tied(f64, f64),
    /// In a finding that reaches so deep.
    Within(f64),
}

impl Fastened {
    /// How the first end (0) or the last (1) of a strand ends.
    pub fn of(strand: &Strand, side: usize, design: &Design) -> Self {
        let end = &strand.ends[side];
        match way_of(strand, side, design) {
            Fastening::Hitched => Self::Hitched(bar(strand, design.closure.onto(side), design)),
            Fastening::Crimped => end.bight.map_or(Self::Plain, |bight| Self::Looped(bight.value())),
            Fastening::Covered | Fastening::Glued => Self::Within(end.takes.value()),
            Fastening::Knotted => end
                .bight
                .map_or(Self::Plain, |bight| Self::Tied(bight.value(), (end.takes - bight).value().max(LEAST_KNOT))),
            _ => Self::Plain,
        }
    }

    /// From where the cord is plain.
    pub const fn plain_from(self) -> f64 {
        match self {
            Self::Plain => 0.0,
            Self::Looped(at) | Self::Hitched(at) | Self::Within(at) => at,
            Self::Tied(long, knot) => long + 0.5 * knot,
        }
    }

    /// How far its loop, or the finding that it ends in, is drawn to reach beyond the end, so that it goes round the wire
    /// of what holds it.
    pub fn through(self, strand: &Strand, side: usize, design: &Design) -> f64 {
        let wire = design.closure.onto(side).first().map_or(0.0, |part| eye_wire(&design.findings[part.finding]));
        match self {
            _ if wire == 0.0 => 0.0,
            Self::Plain | Self::Hitched(_) => 0.0,
            Self::Within(_) => wire,
            Self::Looped(_) | Self::Tied(..) => wire + strand.cord_width(design).value(),
        }
    }

    /// How far beyond its place in the strand what closes it is drawn, so that its loop is as long as it is: as far as its loop
    /// reaches, but no farther than bare cord makes up for.
    pub fn drawn_out(self, strand: &Strand, side: usize, design: &Design) -> f64 {
        self.through(strand, side, design).min(0.5 * strand.bare().value())
    }

    /// How far out what hangs in the closure is drawn, and how much longer than it is, so that it reaches round the wire
    /// that it hangs on: a finding that the end lies in stays at its beads.
    pub fn hung_out(self, strand: &Strand, side: usize, design: &Design) -> [f64; 2] {
        let through = self.through(strand, side, design);
        let out = if matches!(self, Self::Within(_)) { self.drawn_out(strand, side, design) } else { through };
        [out, through - out]
    }

    /// What is drawn of the cord before that, from the end's place on the page inward along an angle; a loop reaches so
    /// far beyond it, and what closes it is drawn so far out.
    pub fn marks(
        self,
        strand: &Strand,
        (end, inward, [through, out]): (Point, f64, [f64; 2]),
        canvas: Canvas<'_>,
    ) -> Vec<Mark> {
        let (design, stencils, scale) = (canvas.design(), canvas.stencils, canvas.scale());
        let on = |at: Point| end + at.turned(inward) * scale;
        let cord = |path: Vec<Segment>| outline::flattened(&path).into_iter().map(on).collect::<Vec<_>>();
        let outside = 0.5 * strand.cord_width(design).value() - through;
        match self {
            Self::Plain | Self::Within(_) => Vec::new(),
            Self::Looped(long) if long <= 0.0 => Vec::new(),
            Self::Looped(long) => {
                let thick = design.cords[strand.cord].diameter.value();
                vec![stencils.cord(strand.cord, &cord(eye(outside, long - out, thick)), scale)]
            }
            Self::Hitched(bar) => {
                let thick = design.cords[strand.cord].diameter.value();
                vec![stencils.cord(strand.cord, &cord(hitch(bar, thick)), scale)]
            }
            Self::Tied(long, knot) => {
                let middle = on(Point::new(long - out + 0.5 * knot, 0.0));
                let loops = stencils.strand_cord(strand, &cord(oval(outside, long - out)), scale);
                vec![loops, stencils.knot(strand.cord, strand.legs, middle, inward, scale, knot)]
            }
        }
    }
}

fn way_of(strand: &Strand, side: usize, design: &Design) -> Fastening {
    way(design, strand, if side == 0 { Side::First } else { Side::Last })
}

/// Whether a finding at an end is what hangs in the closure.
pub fn is_hung(finding: &Finding) -> bool {
    matches!(finding.kind(), FindingKind::KnotCover | FindingKind::CordEnd | FindingKind::WireGuard)
}

/// A finding's copy so many times as long as it is.
pub fn lengthened(mark: Mark, times: f64) -> Mark {
    match mark {
        Mark::Stamp { symbol, at, angle, scale, along } => {
            Mark::Stamp { symbol, at, angle, scale, along: along * times }
        }
        held => held,
    }
}

/// Whether strands are hitched on a side to what holds them, which then lies behind their turns.
pub fn is_hitched(design: &Design, side: usize) -> bool {
    let holds = !design.closure.onto(side).is_empty();
    holds && design.strands.iter().any(|strand| way_of(strand, side, design) == Fastening::Hitched)
}

/// Whether strands end on a side in loops that reach round the wire of what holds them.
pub fn reach_round(design: &Design, side: usize) -> bool {
    let reaches = |strand| Fastened::of(strand, side, design).through(strand, side, design) > 0.0;
    design.strands.iter().any(reaches)
}

/// How deep the bar of a hitch lies: clear of the wire of what it is hitched to.
fn bar(strand: &Strand, onto: &[Part], design: &Design) -> f64 {
    let thick = design.cords[strand.cord].diameter.value();
    let wire = onto.first().and_then(|part| design.findings[part.finding].wire()).map_or(0.0, |wire| wire.value());
    (wire + 0.5 * thick).clamp(HITCH_BAR[0] * thick, HITCH_BAR[1] * thick)
}

/// A loop that reaches from a crimp, where both its legs lie side by side, out to a place.
fn eye(from: f64, to: f64, thick: f64) -> Vec<Segment> {
    let (long, broad) = (to - from, 0.5 * (to - from) * LOOP_BREADTH);
    let side = LOOP_SIDE.map(|(along, aside)| (from + along * long, aside * broad));
    let side: Vec<_> = side.into_iter().chain([(to, 0.5 * thick)]).collect();
    let back = side.iter().rev().map(|(along, aside)| Point::new(*along, -aside));
    let out = side.iter().map(|(along, aside)| Point::new(*along, *aside));
    outline::curve(&back.chain([Point::new(from, 0.0)]).chain(out).collect::<Vec<_>>())
}

/// A loop between two places.
fn oval(from: f64, to: f64) -> Vec<Segment> {
    let half = 0.5 * (to - from);
    outline::ellipse(Point::new(from + half, 0.0), half, half * LOOP_BREADTH)
}

/// A lark's head as its bar is seen: from a turn about what it is hitched to across both legs to the other.
fn hitch(bar: f64, thick: f64) -> Vec<Segment> {
    let at = |x: f64, y: f64| Point::new(bar - thick * x, thick * y);
    let bent = 1.0 - QUARTER;
    vec![
        Segment::Move(Point::new(0.0, thick)),
        Segment::Line(at(1.0, 1.0)),
        Segment::Curve(at(bent, 1.0), at(0.0, bent), at(0.0, 0.0)),
        Segment::Curve(at(0.0, -bent), at(bent, -1.0), at(1.0, -1.0)),
        Segment::Line(Point::new(0.0, -thick)),
    ]
}
