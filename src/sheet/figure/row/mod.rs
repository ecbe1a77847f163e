//! A strand's row: all that is strung, laid straight at actual size and broken into lines.
//!
//! Lines break between beads. Bare cord of more than [`span::LONG`] mm, and less of it where beads slide,
//! is cut short with a mark; so is the ruler there. What no page has room for is drawn smaller,
//! with the ruler broken, and [`StrandRow::reduced`] counts it. Of a long run of one bead the first and the last are drawn, with
//! the number of those between them. Of repeats that would fill many lines the first and the last are drawn, and a line
//! between them says what is left out. Nothing is left out otherwise: beads drawn and beads told as left out are the strand's.

mod broken;
mod drawn;
mod label;
mod line;
mod lowered;
mod meeting;
mod repeats;
mod run;
mod span;
mod spans;

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Index, Strand};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::sheet::english;
use crate::sheet::said::LeftOut;
use crate::steps::posts::Posts;
use crate::units::Length;

pub use meeting::meeting;

use line::RowLine;
use repeats::{Elided, RowPart, open, parts};
use span::Span;

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

/// Draws the row of a strand in lines of a width.
pub fn row(piece: &Piece, strand: Index<Strand>, width: f64, stencils: &Stencils<'_>) -> StrandRow {
    let (design, units) = (&piece.design, piece.telling.units);
    let (strand, starts) = (&design.strands[strand], &piece.drape.strands[strand].starts);
    let fastened = spans::fastened(design, strand);
    let mut spans = spans::spans(design, strand, starts, fastened);
    let lead = line::lead(&spans);
    let room = width - 2.0 * lead;
    open(strand, &mut spans, room);
    let posts = Posts::new(design, strand);
    let blank = RowLine { design, units, strand, fastened, posts: posts.all(), spans: &[], lead, width };
    let mut row = StrandRow { lines: Vec::new(), reduced: 0, unlettered: 0, elided: false };
    row.reduced = spans.iter().filter(|span| span.scale < 1.0).count();
    parts(strand, &spans, room).iter().for_each(|part| row.add(part, &blank, stencils));
    row.meet(&blank, stencils);
    row
}

impl StrandRow {
    /// Adds the lines of a part, each with what is blank on it.
    fn add(&mut self, part: &RowPart<'_, '_>, blank: &RowLine<'_, '_>, stencils: &Stencils<'_>) {
        match part {
            RowPart::Drawn(spans) => self.draw(spans, blank, stencils),
            RowPart::Elided(elided) => {
                self.elided = true;
                self.lines.push(told(elided, blank));
            }
        }
    }

    /// Adds lines on which spans are drawn.
    fn draw(&mut self, spans: &[Span<'_>], blank: &RowLine<'_, '_>, stencils: &Stencils<'_>) {
        let room = blank.width - 2.0 * blank.lead;
        for spans in &broken::broken(&run::shortened(spans, blank.posts, room), room) {
            let (block, unlettered) = RowLine { spans, ..*blank }.draw(stencils);
            self.unlettered += unlettered;
            self.lines.push(block);
        }
    }

    /// Adds what both ends go through where they meet.
    fn meet(&mut self, blank: &RowLine<'_, '_>, stencils: &Stencils<'_>) {
        if let Some((block, reduced)) = meeting(blank.strand, blank.width, stencils) {
            self.reduced += usize::from(reduced);
            self.lines.push(block);
        }
    }
}

/// The line that says what is left out.
fn told(elided: &Elided, blank: &RowLine<'_, '_>) -> Block {
    let Elided { times, beads, backwards, .. } = *elided;
    let said = LeftOut { times, list: &elided.list, backwards, beads, length: Length::mm(elided.length) };
    Type::STRONG.paragraph(&english::left_out(blank.design, &said, blank.units), blank.width)
}
