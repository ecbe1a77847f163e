//! A strand's row: all that is strung, laid straight at actual size and broken into lines.
//!
//! Lines break between beads. Bare cord of more than [`spans::LONG`] mm, and less of it where beads slide,
//! is cut short with a mark; so is the ruler there. What no page has room for is drawn smaller,
//! with the ruler broken, and [`StrandRow::reduced`] counts it. Of a long run of one bead the first and the last are drawn, with
//! the number of those between them. Of repeats that would fill many lines the first and the last are drawn, and a line
//! between them says what is left out. Nothing is left out otherwise: beads drawn and beads told as left out are the strand's.

mod drawn;
mod labels;
mod lines;
mod spans;

use crate::art::Stencils;
use crate::design::{Design, Index, Strand};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::LeftOut;
use crate::steps::posts::Posts;
use crate::units::UnitStyle;

pub use labels::{LETTER, runs};
pub use spans::half;

use super::fastened::Fastened;
use super::meeting::meeting;
use drawn::RowLine;
use lines::{Portion, broken, open, portions, shortened};
use spans::{Span, spans};

/// Least room left and right of a line in mm, for cord that goes on and the ruler's unit.
const LEAD: f64 = 7.0;

/// A row as drawn.
pub struct StrandRow {
    /// Its lines, from the first end to the last.
    pub lines: Vec<Block>,
    /// How many things are drawn smaller than they are.
    pub reduced: usize,
    /// How many runs are too short for their letter.
    pub unlettered: usize,
    /// Whether repeats are left out, which a line then tells.
    pub elided: bool,
}

/// What all lines of a row have in common.
struct RowOf<'a> {
    strand: &'a Strand,
    /// What stays in its place on the strand.
    posts: Posts<'a>,
    /// How its cord ends on both sides.
    fastened: [Fastened; 2],
    /// How lengths are printed.
    units: UnitStyle,
    stencils: &'a Stencils<'a>,
    /// Room at both sides of a line.
    lead: f64,
    /// Width with that.
    width: f64,
}

/// Draws the row of a strand in lines of a width.
pub fn row(piece: &Piece, strand: Index<Strand>, width: f64, stencils: &Stencils<'_>) -> StrandRow {
    let (design, units) = (&piece.design, piece.telling.units);
    let (strand, starts) = (&design.strands[strand], &piece.drape.strands[strand].starts);
    let fastened = [0, 1].map(|side| Fastened::of(strand, side, design));
    let mut spans = spans(design, strand, starts, fastened);
    let of = RowOf { strand, posts: Posts::new(design, strand), fastened, units, stencils, lead: lead(&spans), width };
    open(strand, &mut spans, of.room());
    let mut row = StrandRow { lines: Vec::new(), reduced: 0, unlettered: 0, elided: false };
    row.reduced = spans.iter().filter(|span| span.scale < 1.0).count();
    portions(strand, &spans, of.room()).iter().for_each(|portion| row.add(portion, &of));
    row.meet(&of);
    row
}

/// Room left and right of every line of a row: what reaches beyond its own length has it.
fn lead(spans: &[Span<'_>]) -> f64 {
    let over = spans.iter().map(|span| span.reach.aside - span.before.min(span.after));
    over.fold(LEAD, f64::max)
}

impl<'a> RowOf<'a> {
    const fn design(&self) -> &'a Design {
        self.stencils.design()
    }

    /// Width that the spans of a line have.
    fn room(&self) -> f64 {
        self.width - 2.0 * self.lead
    }

    /// The line that says what is left out.
    fn told(&self, said: &LeftOut) -> Block {
        Type::STRONG.paragraph(&english::left_out(self.design(), said, self.units), self.width)
    }
}

impl StrandRow {
    /// Adds the lines of a portion.
    fn add(&mut self, portion: &Portion<'_, '_>, of: &RowOf<'_>) {
        match portion {
            Portion::Drawn(spans) => self.draw(spans, of),
            Portion::LeftOut(said) => {
                self.elided = true;
                self.lines.push(of.told(said));
            }
        }
    }

    /// Adds lines on which spans are drawn.
    fn draw(&mut self, spans: &[Span<'_>], of: &RowOf<'_>) {
        for spans in broken(&shortened(spans, of.posts.all(), of.room()), of.room()) {
            let (block, unlettered) = RowLine::new(of, spans).draw();
            self.unlettered += unlettered;
            self.lines.push(block);
        }
    }

    /// Adds what both ends go through where they meet.
    fn meet(&mut self, of: &RowOf<'_>) {
        if let Some((block, reduced)) = meeting(of.strand, of.width, of.stencils) {
            self.reduced += usize::from(reduced);
            self.lines.push(block);
        }
    }
}
