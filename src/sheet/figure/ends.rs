//! A strand's end as it is drawn: the findings that close it, where each lies and which way it faces, and all of it on a
//! level line. Lengths in mm on paper.

use std::f64::consts::PI;

use crate::design::{Design, End, Finding, Index, Strand};
use crate::geometry::Point;
use crate::paint::mark::Mark;
use crate::pattern::{CordKind, FindingKind};
use crate::steps::ends::{Fastening, way};
use crate::steps::side::Side;

use super::Canvas;
use super::fastened::{Fastened, LEAST_KNOT};

/// Length of the tail that is drawn beyond an end's knot.
pub const TAIL: f64 = 7.0;

/// An end's finding in its place.
pub struct EndFinding {
    /// Index of the finding.
    pub finding: Index<Finding>,
    /// How far its drawing's origin lies from the loop inward, in mm of the piece.
    pub depth: f64,
    /// Whether it is drawn from there outward, or inward.
    pub outward: bool,
}

/// An end's findings from the loop inward: those that hold the cord with their strand side inward, a
/// cover about the crimp's middle, a guard in the loop.
pub fn closed(end: &End, design: &Design) -> Vec<EndFinding> {
    let bight = end.bight.unwrap_or_default().value();
    let crimp =
        end.findings.iter().find_map(|at| design.findings[*at].crimp()).map_or(0.0, |crimp| crimp.length.value());
    let mut depth = bight;
    let place = |finding: &Index<Finding>| {
        let (kind, length) = (design.findings[*finding].kind(), design.findings[*finding].along().value());
        let (at, outward) = match kind {
            FindingKind::CrimpCover => (bight + 0.5 * (crimp - length), false),
            FindingKind::WireGuard => (bight, true),
            _ => {
                depth += length;
                (depth, true)
            }
        };
        EndFinding { finding: *finding, depth: at, outward }
    };
    end.findings.iter().map(place).collect()
}

/// An end of a strand that lies level.
pub struct LevelEnd<'a> {
    pub strand: &'a Strand,
    /// The first (0) or the last (1).
    pub side: usize,
    pub fastened: Fastened,
    /// Its loop's outside, and where it ends inward.
    pub between: [Point; 2],
    pub canvas: Canvas<'a>,
}

impl LevelEnd<'_> {
    /// The end with its loop and findings, or its knot and tail.
    pub fn marks(&self) -> Vec<Mark> {
        let (strand, design) = (self.strand, self.canvas.design());
        let end = &strand.ends[self.side];
        match () {
            () if strand.is_turned(end, design) => {
                vec![self.canvas.turned_loop(strand, self.between[1], self.outward())]
            }
            () if way(design, strand, Side::First) == Fastening::Tied => Vec::new(),
            () if matches!(self.fastened, Fastened::Plain) && end.findings.is_empty() => {
                self.knot().into_iter().collect()
            }
            () => self.in_findings(end),
        }
    }

    /// The end with what fastens it, and its findings.
    fn in_findings(&self, end: &End) -> Vec<Mark> {
        let (canvas, outward) = (self.canvas, self.outward());
        let mut marks = self.fastened.marks(self.strand, (self.point(0.0), PI - outward, [0.0; 2]), canvas);
        for closed in closed(end, canvas.design()) {
            let angle = if closed.outward { outward } else { outward + PI };
            marks.push(canvas.stencils.finding(closed.finding, self.point(closed.depth), angle, canvas.scale()));
        }
        marks
    }

    /// The knot that ends a cord, at the foot of its tail; chain ends with its last link.
    fn knot(&self) -> Option<Mark> {
        let (strand, canvas) = (self.strand, self.canvas);
        let size = strand.knot_width(canvas.design()).value().clamp(LEAST_KNOT, TAIL);
        let at = self.point(TAIL - size / 2.0);
        let is_chain = canvas.design().cords[strand.cord].kind == CordKind::Chain;
        (!is_chain).then(|| canvas.stencils.knot(strand.cord, strand.legs, at, 0.0, canvas.scale(), size))
    }

    /// The direction outward.
    const fn outward(&self) -> f64 {
        if self.side == 0 { PI } else { 0.0 }
    }

    /// A point so far from its loop inward.
    fn point(&self, distance: f64) -> Point {
        let inward = if self.side == 0 { distance } else { -distance };
        self.between[0] + Point::new(inward * self.canvas.scale(), 0.0)
    }
}
