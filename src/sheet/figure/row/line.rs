//! One line of a row, and where everything on it stands.
//!
//! From top to bottom: letters of runs and lengths of bare cord over thin brackets, the count of
//! every ten beads, the beads with what hangs from them, the ruler.

use crate::art::Stencils;
use crate::design::{Design, Strand};
use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::mark::Mark;
use crate::sheet::english;
use crate::sheet::figure::fastened::Fastened;
use crate::sheet::figure::names::{Lies, Names};
use crate::sheet::figure::ruler::{Ruler, RulerStretch};
use crate::sheet::said::Alternative;
use crate::steps::posts::{Keeps, Post};
use crate::units::{Length, UnitStyle};

use super::drawn;
use super::label::{self, LineLabels};
use super::span::{Span, Spanned};

/// Least room left and right of a line, for cord that goes on and the ruler's unit.
pub const LEAD: f64 = 7.0;
/// Stations that differ by less are the same.
const SAME: f64 = 1e-6;
/// Room between the beads and what stands below them.
const ABOVE_RULER: f64 = 1.0;
/// Shortest stretch in mm along which a ruler has anything to read.
const LEAST_RULER: f64 = 5.0;
/// Room left and right of every line of a row: what reaches beyond its own length has it.
pub fn lead(spans: &[Span<'_>]) -> f64 {
    let over = spans.iter().map(|span| span.reach.aside - span.before.min(span.after));
    over.fold(LEAD, f64::max)
}

/// A line to draw.
pub struct RowLine<'a, 's> {
    /// The design.
    pub design: &'a Design,
    /// How lengths are printed.
    pub units: UnitStyle,
    /// The strand.
    pub strand: &'a Strand,
    /// How its cord ends on both sides.
    pub fastened: [Fastened; 2],
    /// What stays in its place on the strand.
    pub posts: &'s [Post],
    /// What stands on the line.
    pub spans: &'s [Span<'a>],
    /// Room at its left.
    pub lead: f64,
    /// Width with the room at both sides.
    pub width: f64,
}

/// A span on its line.
#[derive(Clone, Copy)]
pub struct PlacedSpan<'a, 's> {
    /// The span.
    pub span: &'s Span<'a>,
    /// Where it starts.
    pub x: f64,
}

impl PlacedSpan<'_, '_> {
    /// Where its centre stands.
    #[must_use]
    pub fn centre(&self) -> f64 {
        self.x + self.span.before
    }

    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.x + self.span.length()
    }
}

impl<'a, 's> RowLine<'a, 's> {
    /// The line as a block, and how many of its runs are too short for their letter.
    pub fn draw(&self, stencils: &Stencils<'_>) -> (Block, usize) {
        let placed = self.placed();
        let most = |of: fn(&Span<'_>) -> f64| self.spans.iter().map(of).fold(1.0, f64::max);
        let labels = LineLabels::new(self, &placed);
        let cord = labels.height() + label::counts_height(self.spans) + most(|span| span.reach.above);
        let names_top = cord + most(|span| span.reach.below) + ABOVE_RULER;
        let names = Names::new(self.names(&placed), self.width);
        let ruler_top = names_top + names.height();
        let mut marks = labels.marks();
        marks.extend(label::counts(&placed, cord, self.units, self.width));
        let row = drawn::row(self, &placed, cord, stencils);
        marks.extend(label::beside_branches(self.design, &placed, cord, self.width));
        marks.push(Mark::figure(english::figure(&self.shows()), row));
        marks.extend(names.marks(names_top, Lies::Above));
        let (ruler, stretches) = (Ruler::new(self.units, self.width), stretches(&placed, self.strand.finished));
        if stretches.iter().all(|stretch| stretch.length < LEAST_RULER) {
            return (Block::new(self.width, ruler_top, marks), labels.left_out);
        }
        marks.extend(ruler.marks(&stretches, Point::new(0.0, ruler_top)));
        (Block::new(self.width, ruler_top + ruler.height(), marks), labels.left_out)
    }

    fn placed(&self) -> Vec<PlacedSpan<'a, 's>> {
        let mut x = self.lead;
        let place = |span: &'s Span<'a>| {
            let placed = PlacedSpan { span, x };
            x += span.length();
            placed
        };
        self.spans.iter().map(place).collect()
    }

    /// What stays in its place on this line, by name, with where on it that stands.
    fn names(&self, placed: &[PlacedSpan<'_, '_>]) -> Vec<(String, f64)> {
        let named = |post: &Post| {
            let on = |one: &&PlacedSpan<'_, '_>| {
                let Spanned::Bit(bit) = one.span.thing else { return false };
                let at = if post.keeps == Keeps::Group { 0.0 } else { bit.before };
                (one.span.from + at - post.station.value()).abs() < SAME
            };
            let one = placed.iter().find(on)?;
            Some((post.name.clone(), if post.keeps == Keeps::Group { one.x } else { one.centre() }))
        };
        self.posts.iter().filter_map(named).collect()
    }

    fn shows(&self) -> Alternative<'_> {
        let numbers = || self.spans.iter().map(|span| span.number).filter(|number| *number > 0);
        let name = &self.strand.name;
        match (numbers().next(), numbers().next_back()) {
            (Some(first), Some(last)) => Alternative::Beads(name, [first, last]),
            _ => Alternative::Strand(name),
        }
    }
}

/// Where the ruler runs, on a line of a strand of a length.
fn stretches(placed: &[PlacedSpan<'_, '_>], finished: Length) -> Vec<RulerStretch> {
    let mut stretches: Vec<RulerStretch> = Vec::new();
    let mut goes_on = false;
    for one in placed {
        let measured = one.span.is_measured();
        match stretches.last_mut().filter(|_| goes_on && measured) {
            Some(stretch) => stretch.length += one.span.cord,
            None if measured => {
                stretches.push(RulerStretch { x: one.x, from: one.span.from, length: one.span.cord, closes: false });
            }
            None => {}
        }
        goes_on = measured;
    }
    for stretch in &mut stretches {
        stretch.closes = (stretch.from + stretch.length - finished.value()).abs() < SAME;
    }
    stretches
}
