//! A strand's row: all that is strung, laid straight at actual size and broken into lines.
//!
//! Lines break between beads. Bare cord of more than [`span::LONG`] mm, and cord along which beads slide,
//! is cut short with a mark; so is the ruler there. What no page has room for is drawn smaller,
//! with the ruler broken, and [`Row::reduced`] counts it. Of repeats that would fill many lines the
//! first and the last are drawn, and a line between them says what is left out. Nothing is left out
//! otherwise: beads drawn and beads told as left out are the strand's.

mod beside;
mod draw;
mod elide;
mod label;
mod line;
mod size;
mod span;

use crate::Piece;
use crate::art::Stencils;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::steps::posts::posts;
use crate::units::Length;

use elide::Part;
use line::Line;

/// A row as drawn.
pub struct Row {
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
pub fn row(piece: &Piece, strand: usize, width: f64, stencils: &mut Stencils<'_>) -> Row {
    let (strand, starts) = (&piece.design.strands[strand], &piece.drape.strands[strand].starts);
    let spans = span::spans(&piece.design, strand, starts);
    let lead = line::lead(&spans);
    let room = width - 2.0 * lead;
    let posts = posts(&piece.design, strand);
    let mut row = Row { lines: Vec::new(), reduced: 0, unlettered: 0, elided: false };
    row.reduced = spans.iter().filter(|span| span.scale < 1.0).count();
    for part in elide::parts(&piece.design, strand, &spans, room) {
        match part {
            Part::Drawn(spans) => {
                for spans in &line::broken(spans, room) {
                    let line = Line { design: &piece.design, strand, posts: &posts, spans, lead, width };
                    let (block, unlettered) = line.draw(stencils);
                    row.unlettered += unlettered;
                    row.lines.push(block);
                }
            }
            Part::Elided(elided) => {
                row.elided = true;
                row.lines.push(told(&elided, piece, width));
            }
        }
    }
    row
}

/// The line that says what is left out.
fn told(elided: &elide::Elided, piece: &Piece, width: f64) -> Block {
    let units = piece.design.heading.units;
    let (times, beads) = (elided.times, elided.beads);
    let again = if times == 1 { "once".to_owned() } else { format!("{times} times") };
    let length = units.ruler(Length::mm(elided.length));
    let words = format!("… the same {again} more ({}): {beads} beads, {length}, not drawn …", elided.words);
    Type::STRONG.paragraph(&words, width)
}
