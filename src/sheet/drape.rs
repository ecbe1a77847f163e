//! The cover's figures: the picture of the finished piece, the drape with its measures, and rows laid straight.
//! Lengths in mm on paper.

use crate::art::Stencils;
use crate::design::{Design, Index, Strand};
use crate::drape::Drape;
use crate::geometry::{Extent, Point};
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::units::Length;

use super::figure::{self, BAR_HEIGHT, Canvas, DROPS_WIDTH, Frame, LabelRoom, OpenClosure, Scale, Sketch};
use super::said::FooterScale;
use super::{Illustration, english};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::Mark;

/// Marks, and to what scale they are drawn, for the footer.
pub type ScaledMarks = (Vec<Mark>, FooterScale);

/// What a cover shows of how a piece is, so that it shows nothing twice.
pub enum Shows {
    /// The picture to a round scale: closed round a limb, or a pair, a piece is measured as it is pictured.
    Picture,
    /// The drape alone: what hangs open is pictured as it hangs.
    Drape,
    /// Both: a necklace is pictured closed, a strap in a curve, and measured as it hangs.
    Both,
}

/// What the cover of a piece shows.
pub fn shows(piece: &Piece, picture: &dyn Illustration) -> Shows {
    if piece.drape.ring().is_some() || piece.design.heading.kind == Kind::Earrings {
        Shows::Picture
    } else if picture.hangs() {
        Shows::Drape
    } else {
        Shows::Both
    }
}

/// The picture as large as its room, and about what scale that is.
pub fn picture(picture: &dyn Illustration, room: Rect, stencils: &Stencils<'_>) -> Vec<Mark> {
    let words = room.below(room.height - Type::TINY.line_height());
    let frame = Frame::filling(picture.extent(), room.above(words.height));
    let mut marks = pictured(picture, Canvas::new(frame, stencils));
    marks.extend(Type::TINY.line(&english::about(frame.scale)).at(words.corner()));
    marks
}

fn pictured(picture: &dyn Illustration, canvas: Canvas<'_>) -> Vec<Mark> {
    vec![Mark::figure(picture.alternative(), picture.marks(canvas))]
}

/// The picture to a round scale, with its bar below it, and the drops of what hangs.
pub fn measured_picture(piece: &Piece, picture: &dyn Illustration, room: Rect, stencils: &Stencils<'_>) -> ScaledMarks {
    let extent = picture.extent();
    let hangs = piece.drape.ring().is_none();
    let aside = if hangs { 2.0 * DROPS_WIDTH } else { 0.0 };
    let below = BAR_GAP + BAR_HEIGHT;
    let scale = Scale::fitting((extent.width(), extent.height()), (room.width - aside, room.height - below));
    let spare = (room.height - below - extent.height() * scale.factor()).max(0.0);
    let room = room.below(ABOVE_PICTURE * spare);
    let frame = framed(extent, room, scale);
    let mut marks = pictured(picture, Canvas::new(frame, stencils));
    let foot = stencils.around(&marks).map_or(room.top, |drawn| drawn.high.y);
    if hangs {
        marks.extend(figure::drops(piece, &frame, frame.page(extent.low).x - DROPS_WIDTH));
    }
    marks.extend(bar(room, foot - room.top, scale, piece));
    (marks, FooterScale::Picture(scale))
}

/// Share of the room that a picture leaves which is above it: a little less than below it, by eye.
const ABOVE_PICTURE: f64 = 0.4;
/// Room between a figure and its scale bar.
const BAR_GAP: f64 = 5.0;

/// The scale bar below a figure, or at the foot of the room.
fn bar(room: Rect, height: f64, scale: Scale, piece: &Piece) -> Vec<Mark> {
    let below = (room.top + height + BAR_GAP).min(room.bottom() - BAR_HEIGHT);
    figure::scale_bar(
        (Point::new(room.left, below + BAR_HEIGHT), room.width),
        scale,
        piece.telling.units,
        figure::seen_as(piece),
    )
}

/// A frame that sets a figure's box into a room: in the middle across, at the top.
fn framed(extent: Extent, room: Rect, scale: Scale) -> Frame {
    let factor = scale.factor();
    let spare = (room.width - extent.width() * factor) / 2.0;
    let origin = Point::new(room.left + spare - extent.low.x * factor, room.top + extent.high.y * factor);
    Frame { origin, scale: factor }
}

/// The strands at rest with the closure laid open above them, with their names and measures.
pub fn hanging(piece: &Piece, whole_room: Rect, stencils: &Stencils<'_>) -> ScaledMarks {
    let strands = figure::outline_box(piece).unwrap_or_default();
    let closing = figure::closing(piece);
    let closure = closing.as_ref().and_then(|closing| closing.extent(&piece.design));
    let whole = closure.map_or(strands, |closure| strands.and(closure));
    let (room, scale) = beside_labels(piece, whole, whole_room);
    let frame = framed(whole, room, scale);
    let mut marks = at_rest(&piece.drape, closing, Canvas::new(frame, stencils));
    marks.extend(figure::drops(piece, &frame, whole_room.left));
    let (labels, labelled) = figure::labels(piece, &frame, whole, room);
    marks.extend(labels);
    let height = (whole.height() * frame.scale).max(labelled - whole_room.top);
    marks.extend(bar(whole_room, height, scale, piece));
    (marks, FooterScale::Drape(scale))
}

/// The room for a figure above its scale bar, beside its drops and its labels, and the largest scale that it has room for there.
fn beside_labels(piece: &Piece, whole: Extent, room: Rect) -> (Rect, Scale) {
    let size = (whole.width(), whole.height());
    let mut room = room.above(BAR_HEIGHT);
    room.left += DROPS_WIDTH;
    room.width -= DROPS_WIDTH;
    let scale = Scale::fitting(size, (room.width, room.height));
    let LabelRoom::Beside(width) = figure::room_for_labels(piece, scale.factor(), room.height) else {
        return (room, scale);
    };
    room.width -= width;
    (room, Scale::fitting(size, (room.width, room.height)))
}

/// All strands as they hang, and the closure laid open.
fn at_rest(drape: &Drape, closing: Option<OpenClosure>, canvas: Canvas<'_>) -> Vec<Mark> {
    let hung = drape.strands.iter().map(Some).collect();
    let closure = closing.map(|closing| closing.layers(canvas)).unwrap_or_default();
    let rail = drape.strands.first().and_then(|first| figure::rail(first, canvas));
    [rail.into_iter().collect(), closure.around(figure::strands(&hung, canvas))].concat()
}

/// Smallest scale at which beads laid straight tell anything: half their size.
const SMALLEST: f64 = 0.5;
/// Strands whose lengths in mm differ by less lie abreast.
const ALIKE: f64 = 1.0;
/// Room between the rows of a bracelet's strands.
const ROW_GAP: f64 = 4.0;

/// The strands of a piece that closes round a limb, laid straight across the page's width, unless they are so long that
/// little is seen of them; says their scale.
pub fn laid_straight(piece: &Piece, width: f64, stencils: &Stencils<'_>) -> Option<(Block, Scale)> {
    let laid = piece.design.is_ring().then(|| straight(piece, width, stencils));
    laid.filter(|(_, scale)| scale.factor() >= SMALLEST)
}

/// The strands laid straight with the closure beside the first, below one another, or in one figure where the
/// closure holds them apart.
fn straight(piece: &Piece, width: f64, stencils: &Stencils<'_>) -> (Block, Scale) {
    if let Some(abreast) = abreast(piece, width, stencils) {
        return abreast;
    }
    let closing = figure::closing(piece);
    let extents = extents(piece, closing.as_ref());
    let widest = extents.iter().map(|(_, extent)| extent.width()).fold(1.0, f64::max);
    let scale = Scale::fitting((widest, 0.0), (width, 1.0));
    let row = |(index, extent): (Index<Strand>, Extent)| {
        let height = extent.height() * scale.factor();
        let frame = framed(extent, Rect::new(0.0, 0.0, width, height), scale);
        let closing = closing.as_ref().filter(|_| index.is_first());
        let (strand, hung) = (&piece.design.strands[index], &piece.drape.strands[index]);
        let sketch = Sketch::new(strand, hung, Canvas::new(frame, stencils));
        let drawn = Block::new(width, height, alone(&sketch, closing));
        Block::stack([Type::TINY.fitted(&caption(piece, index), width), drawn], 1.0)
    };
    (Block::stack(extents.into_iter().map(row), ROW_GAP), scale)
}

/// The boxes round strands, that of the first with the closure.
fn extents(piece: &Piece, closing: Option<&OpenClosure>) -> Vec<(Index<Strand>, Extent)> {
    let design = &piece.design;
    let closure = closing.and_then(|closing| closing.extent(design));
    let beside = |index: Index<Strand>| closure.filter(|_| index.is_first());
    let strands = design.strands.entries().zip(&piece.drape.strands);
    let extent = strands.filter_map(|((index, strand), hung)| {
        let extent = figure::strand_box(design, strand, hung)?;
        Some((index, beside(index).map_or(extent, |closure| extent.and(closure))))
    });
    extent.collect()
}

/// A strand by itself, with the closure beside it where that is given.
fn alone(sketch: &Sketch<'_>, closing: Option<&OpenClosure>) -> Vec<Mark> {
    let closure = closing.map(|closing| closing.layers(sketch.canvas)).unwrap_or_default();
    closure.around(sketch.alone())
}

fn caption(piece: &Piece, index: Index<Strand>) -> String {
    let (design, strand) = (&piece.design, &piece.design.strands[index]);
    english::straight(&strand.name, strand.finished, design.twist.is_some(), piece.telling.units)
}

/// Strands of one length laid straight between the loops of their closure, as far apart as those hold them.
fn abreast(piece: &Piece, width: f64, stencils: &Stencils<'_>) -> Option<(Block, Scale)> {
    let design = &piece.design;
    let finished = held_apart(design)?;
    let extent = figure::hanging_extent(piece);
    let scale = Scale::fitting((extent.width(), 0.0), (width, 1.0));
    let height = extent.height() * scale.factor();
    let frame = framed(extent, Rect::new(0.0, 0.0, width, height), scale);
    let marks = at_rest(&piece.drape, figure::closing(piece), Canvas::new(frame, stencils));
    let names: Vec<_> = design.strands.iter().map(|strand| strand.name.as_str()).collect();
    let words = Type::TINY.paragraph(&english::abreast(&names, finished, piece.telling.units), width);
    Some((Block::stack([words, Block::new(width, height, marks)], 1.0), scale))
}

/// The length of strands of one length that their closure holds apart.
fn held_apart(design: &Design) -> Option<Length> {
    let [first, .., _] = design.strands.as_slice() else { return None };
    let alike = |strand: &Strand| (strand.finished - first.finished).value().abs() < ALIKE;
    (design.are_held_apart() && design.strands.iter().all(alike)).then_some(first.finished)
}
