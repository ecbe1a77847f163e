//! Pictures for catalogue pages: the piece at actual size on a ground, lit from above left, with
//! soft shadows.
//!
//! A picture is a [`Page`] like any other, in mm at the piece's own size; [`resolution`] says how
//! finely to draw it for a number of pixels. Every seed of every ground is fixed, so that the same
//! piece gives the same picture.

mod bust;
mod caption;
mod closed;
mod english;
mod ground;
mod loose;
mod mirror;
mod portrait;
mod shade;
mod shine;
mod subject;
mod worn;

pub use english::{alternative, subject};
pub use portrait::Portrait;

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::art::{Ink, Look, Stencils};
use crate::geometry::{Extent, Point};
use crate::paint::layout::Rect;
use crate::paint::mark::{Mark, Page, Rgb, Symbol};
use crate::piece::Piece;
use crate::sheet::figure::{Canvas, Frame};
use crate::units::INCH;

use subject::Subject;

/// How a picture is made.
#[derive(Clone, Debug)]
pub struct Setting {
    /// What the piece lies on.
    pub ground: Ground,
    /// Width to height.
    pub proportion: Proportion,
    /// Whether title and length stand below.
    pub caption: bool,
}

/// What a piece lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Ground {
    /// An even colour, a little darker towards the edges.
    Plain(Rgb),
    /// Undyed woven cloth.
    Linen,
    /// Dark stone.
    Slate,
    /// Nothing.
    Transparent,
    /// A display bust; pieces that are not worn round the neck lie on plain ground in its colour.
    Neck,
}

impl Ground {
    /// Colour of plain ground unless another is asked for.
    pub const PAPER: Rgb = Rgb(0xf4, 0xef, 0xe6);

    /// Whether writing on it must be light.
    const fn is_dark(self) -> bool {
        match self {
            Self::Plain(Rgb(red, green, blue)) => red as u16 + green as u16 + (blue as u16) < 330,
            Self::Slate => true,
            Self::Linen | Self::Transparent | Self::Neck => false,
        }
    }
}

/// A picture's width to its height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub enum Proportion {
    /// 1 : 1.
    Square,
    /// 4 : 5, upright.
    Upright,
    /// 3 : 2, level.
    Level,
}

impl Proportion {
    /// Width over height.
    #[must_use]
    pub const fn ratio(self) -> f64 {
        match self {
            Self::Square => 1.0,
            Self::Upright => 0.8,
            Self::Level => 1.5,
        }
    }
}

/// White room round a piece, as a share of the picture's shorter side.
const MARGIN: f64 = 0.07;
/// Least width of one piece's cell among several, as a share of its height: room for a caption.
const NARROWEST: f64 = 0.6;

/// The picture of a piece, or of several variants of one side by side, each with its name.
#[must_use]
pub fn picture(pieces: &[Piece], setting: &Setting) -> Page {
    let captioned = setting.caption || pieces.len() > 1;
    let subjects: Vec<_> = pieces.iter().map(|piece| Subject::of(piece, setting.ground, !captioned)).collect();
    let extent = subjects.iter().map(Subject::extent).reduce(Extent::and);
    let extent = extent.unwrap_or(Extent { low: Point::ORIGIN, high: Point::new(1.0, 1.0) });
    let cell = cell(extent, setting.proportion, captioned, pieces.len() > 1);
    let mut page = bare(pieces, cell);
    let mut symbols = Vec::new();
    page.marks = ground::marks(setting.ground, page.width, page.height, &mut symbols);
    for (index, subject) in subjects.iter().enumerate() {
        let cell = Rect { left: cell.width * index as f64, ..cell };
        page.marks.extend(placed(subject, index, extent, cell, captioned, &mut symbols));
        if captioned {
            page.marks.extend(caption::marks(subject.piece, cell, pieces.len() > 1, setting.ground.is_dark()));
        }
    }
    page.symbols = symbols.into();
    page
}

/// An empty page with a cell for each piece.
fn bare(pieces: &[Piece], cell: Rect) -> Page {
    Page {
        width: cell.width * pieces.len().max(1) as f64,
        height: cell.height,
        title: pieces.first().map(|piece| piece.design.heading.title.clone()).unwrap_or_default(),
        description: pieces.iter().map(alternative).collect::<Vec<_>>().join(" "),
        symbols: Arc::default(),
        marks: Vec::new(),
    }
}

/// Dots an inch at which a picture's longer side measures so many pixels.
#[must_use]
pub fn resolution(page: &Page, pixels: u32) -> f64 {
    f64::from(pixels) * INCH / page.width.max(page.height)
}

/// The smallest cell of a proportion in which a piece has its margin, and its caption. Among others
/// it is no broader than the piece needs, or a caption.
fn cell(extent: Extent, proportion: Proportion, captioned: bool, among_several: bool) -> Rect {
    let ratio = proportion.ratio();
    let margin = MARGIN * ratio.min(1.0);
    let strip = if captioned { caption::STRIP } else { 0.0 };
    let by_height = extent.height() / (1.0 - strip - 2.0 * margin);
    let by_width = extent.width() / (ratio - 2.0 * margin);
    let height = by_height.max(by_width);
    let needed = (extent.width() + 2.0 * margin * height).max(NARROWEST * height);
    let width = if among_several { needed.min(height * ratio) } else { height * ratio };
    Rect::new(0.0, 0.0, width, height)
}

/// A subject in the middle of its cell, its symbols named for its place in the row.
fn placed(
    subject: &Subject<'_>,
    index: usize,
    extent: Extent,
    cell: Rect,
    captioned: bool,
    symbols: &mut Vec<Symbol>,
) -> Vec<Mark> {
    let strip = if captioned { cell.height * caption::STRIP } else { 0.0 };
    let (marks, drawn) = drawn(subject, Frame::centred(extent, cell.above(strip), 1.0), index);
    symbols.extend(drawn.into_iter().map(|(look, symbol)| shine::polished(look, symbol, subject.piece)));
    marks
}

/// A piece without ground and shadows as large as its room allows, and the symbols that it stamps,
/// which are those of the page's figure of that number.
#[must_use]
pub fn figure(piece: &Piece, room: Rect, number: usize) -> (Vec<Mark>, Vec<Symbol>) {
    let subject = Subject::of(piece, Ground::Transparent, false);
    let (marks, symbols) = drawn(&subject, Frame::filling(subject.extent(), room), number);
    (marks.into_iter().map(shade::without).collect(), symbols.into_iter().map(|(_, symbol)| symbol).collect())
}

/// A subject's marks in a frame with the symbols that they stamp, and what those show.
fn drawn(subject: &Subject<'_>, frame: Frame, number: usize) -> (Vec<Mark>, Vec<(Look, Symbol)>) {
    let stencils = Stencils::new(&subject.piece.design, &subject.piece.palette, Ink::Colour);
    let marks = subject.marks(Canvas::new(frame, &stencils));
    let own = |marks: Vec<Mark>| marks.into_iter().map(|mark| of_figure(mark, number)).collect::<Vec<_>>();
    let symbol = |Symbol { key, marks }| Symbol { key: key.in_figure(number), marks: own(marks) };
    (own(marks), stencils.into_looks().into_iter().map(|(look, drawn)| (look, symbol(drawn))).collect())
}

/// A mark whose stamps are of a figure's own symbols.
fn of_figure(mark: Mark, number: usize) -> Mark {
    match mark {
        Mark::Stamp { symbol, at, angle, scale, along } => {
            Mark::Stamp { symbol: symbol.in_figure(number), at, angle, scale, along }
        }
        held => held.map_inner(|marks| marks.into_iter().map(|mark| of_figure(mark, number)).collect()),
    }
}
