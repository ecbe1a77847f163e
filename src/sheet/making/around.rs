//! Words that run round a drawing at their right: narrow beside it, and broad below it. Lengths in mm on paper.

use std::ops::Range;

use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::Role;
use crate::paint::metrics;

/// Gap between words and the drawing beside them.
const GAP: f64 = 5.0;
/// Room between paragraphs.
const APART: f64 = 0.3;

/// Paragraphs of a width, set one after another round a drawing.
pub struct Around {
    width: f64,
    /// The widest that lines are, however wide the block is.
    widest: f64,
    drawing: Block,
    words: Block,
}

impl Around {
    /// Starts beside a drawing, or without one.
    pub fn new(width: f64, widest: f64, drawing: Option<Block>) -> Self {
        Self { width, widest, drawing: drawing.unwrap_or_default(), words: Block::default() }
    }

    /// The room for words, so many mm in from the left: beside the drawing, and below it.
    pub fn rooms(&self, indent: f64) -> [f64; 2] {
        let drawn = if self.drawing.height > 0.0 { self.drawing.width + GAP } else { 0.0 };
        [self.width - drawn, self.width].map(|room| room.min(self.widest) - indent)
    }

    /// Adds a block as it is.
    pub fn block(&mut self, block: Block) {
        self.words = Block::stack([std::mem::take(&mut self.words), block], APART);
    }

    /// A text's lines as they come next, so many mm in from the left.
    pub fn lines(&self, text: &str, face: Type, indent: f64) -> Block {
        let [narrow, broad] = self.rooms(indent);
        let left = self.drawing.height - self.words.height;
        // Heights are finite, and `as` saturates.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few lines")]
        let beside = (left / face.line_height()).ceil().max(0.0) as usize;
        let mut lines = metrics::lines(text, face.size, face.weight, narrow);
        lines.truncate(beside);
        let (lines, rest) = parted(text, &lines);
        let below = metrics::wrap(rest, face.size, face.weight, broad);
        Block::stack(lines.into_iter().chain(below).map(|line| face.line(line)), 0.0).in_role(Role::Paragraph)
    }

    /// The words with the drawing at their right.
    pub fn whole(self) -> Block {
        let height = self.words.height.max(self.drawing.height);
        let corner = Point::new(self.width - self.drawing.width, 0.0);
        Block::new(self.width, height, [self.words.marks, self.drawing.at(corner)].concat())
    }
}

/// The first lines of a text, and what comes after them.
pub fn parted<'t>(text: &'t str, first: &[Range<usize>]) -> (Vec<&'t str>, &'t str) {
    let end = first.last().map_or(0, |line| line.end);
    (first.iter().map(|line| &text[line.clone()]).collect(), text[end..].trim_start())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::mark::Mark;

    /// The texts of a block's lines, in order.
    fn told(marks: &[Mark]) -> Vec<String> {
        let of = |mark: &Mark| if let Mark::Text(text) = mark { vec![text.text.clone()] } else { told(mark.inner()) };
        marks.iter().flat_map(of).collect()
    }

    #[test]
    fn lines_are_narrow_beside_the_drawing_and_broad_below_it() {
        let text = "Take the wire through the eye of the first eye pin and back through the tube crimp, and leave a \
                    tail of two inches-and-a-half beyond it, which is cut when all is done.";
        let drawing = Block::new(30.0, 8.0, Type::BODY.line("x").marks);
        let around = Around::new(80.0, 80.0, Some(drawing));
        let lines = told(&around.lines(text, Type::BODY, 0.0).marks);
        let wide = |line: &String| Type::BODY.width(line);
        // 8 mm are two lines of 3.2 mm type, set 1.32 of that apart.
        assert!(lines[..2].iter().all(|line| wide(line) <= 45.0), "{lines:?}");
        assert!(wide(&lines[2]) > 45.0 && lines[2..].iter().all(|line| wide(line) <= 80.0), "{lines:?}");
        let said = |text: &str| text.split_whitespace().collect::<String>();
        assert_eq!(said(&lines.concat()), said(text));
    }
}
