//! The cover: the finished piece, its colours, what it is and takes, and how it hangs.
//!
//! Two columns below the title: at the left the picture, and below it what is measured of it; at the right what the piece is,
//! its colourways, what it takes, and where it sits on the neck or the tools. Lengths in mm on paper.

use crate::art::Stencils;
use crate::geometry::Point;
use crate::materials::Materials;
use crate::piece::Piece;

use super::drape::Shows;
use super::english as say;
use super::figure::{self, LabelRoom};
use super::making::cautions;
use super::page::PageBody;
use super::said::{FooterScale, SectionKind, Subheading};
use super::{Illustration, Sheet, buying, drape, facts, legend, needs, page};
use crate::paint::layout::flow::{self, Flow};
use crate::paint::layout::table::SetTable;
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Mark, Role};
use crate::paint::style;
use crate::steps::english;

/// Widths up to this have the tools one a line, where there is room for all of them.
const LISTED: f64 = 70.0;
/// Room between the legend's heading and its first bead.
const BELOW_LEGEND: f64 = 0.8;
/// Room that the tools leave for the figure on the neck.
const WORN: f64 = 70.0;
/// Least height of that figure.
const LEAST_WORN: f64 = 22.0;
/// Room in mm between that figure and what is said of it.
const BELOW_WORN: f64 = 2.0;
/// Room in mm below a heading.
const BELOW_HEADING: f64 = 1.0;
/// Room in mm between what stands in a column, and between lists.
const APART: f64 = 6.0;
/// Room above the bar that stands on the footer, and its words.
const ABOVE_CHECK: f64 = 3.0;
/// Room between the beads and what else it takes.
const BESIDES_APART: f64 = 2.5;
/// Width of the column at the right, without the widest bead drawn in it, and that of a bead which it has room for on every
/// cover, so that columns stand alike.
const COLUMN: f64 = 54.0;
const BEAD: f64 = 12.0;
/// The most of the page's room that the column may take.
const COLUMN_SHARE: f64 = 0.42;
/// Share of the left column's height that is left to the drape below a picture.
const DRAPE_SHARE: f64 = 0.4;

/// The cover, and lists that it has no room for.
pub struct Face {
    /// Its page.
    pub cover: PageBody,
    /// Lists for the pages behind it.
    over: Lists,
    /// Whether the tools stand on it.
    pub has_tools: bool,
    /// Whether it shows the piece as it is worn.
    is_worn: bool,
    /// What is drawn on it to which scale.
    scaled: FooterScale,
}

/// What a cover is drawn from.
pub struct Cover<'a> {
    /// The sheet.
    pub sheet: &'a Sheet<'a>,
    /// The picture of the piece.
    pub picture: &'a dyn Illustration,
    /// What it takes.
    pub materials: &'a Materials,
    /// The pages' stencils.
    pub stencils: &'a Stencils<'a>,
}

impl Cover<'_> {
    /// Draws it.
    pub fn face(&self) -> Face {
        self.drawn(None)
    }

    /// The cover with the cautions at its foot, for which nothing goes over: where that has room which a picture that is all
    /// the cover shows leaves, so that nothing is drawn smaller, or where they save a page there. A piece for a child has
    /// cautions of its own there.
    pub fn cautious(&self, face: &Face, saves: bool) -> Option<Face> {
        let may = saves || matches!(drape::shows(self.piece(), self.picture), Shows::Picture);
        let may = may && !self.piece().design.wear.child;
        let cautions = may.then(|| cautions::boxed(&self.piece().design, self.sheet.room().width))?;
        let cautious = self.drawn(Some(cautions));
        let is_whole = |face: &Face| (face.has_tools, face.is_worn, face.over.len());
        let fits = is_whole(&cautious) == is_whole(face) && (saves || cautious.scaled == face.scaled);
        fits.then_some(cautious)
    }

    const fn piece(&self) -> &Piece {
        self.sheet.piece
    }

    fn drawn(&self, cautions: Option<Block>) -> Face {
        let room = self.sheet.room().above(ABOVE_CHECK);
        let mut page = Filled::new(room);
        page.top(facts::head(self.piece(), room.width), APART);
        let head = std::mem::take(&mut page.marks);
        let section = section(self.sheet, cautions.is_some());
        cautions.into_iter().for_each(|cautions| page.foot(cautions, APART));
        if let Some((rows, scale)) = drape::laid_straight(self.piece(), room.width, self.stencils) {
            page.foot(titled(Subheading::Straight(scale), rows), APART);
        }
        let aside = column_width(self.sheet).min(room.width * COLUMN_SHARE);
        let (left, column) = page.left.split_right(aside, page::COLUMNS_APART);
        let (mut over, mut column) = (Vec::new(), Filled::new(column));
        let (has_tools, is_worn) = self.fill(&mut column, &mut over);
        let (figures, scaled) = self.figures(left, &mut over);
        let marks = [head, figures, column.marks, page.marks].concat();
        Face { cover: body(section, marks, scaled), over, has_tools, is_worn, scaled }
    }

    /// The picture and the drape, as far as they differ.
    fn figures(&self, room: Rect, over: &mut Lists) -> drape::ScaledMarks {
        let shows = drape::shows(self.piece(), self.picture);
        if let Shows::Picture = shows {
            return drape::measured_picture(self.piece(), self.picture, room, self.stencils);
        }
        if matches!(figure::room_for_labels(self.piece(), 1.0, room.height), LabelRoom::Listed) {
            over.push((Subheading::Strands, figure::strand_table(self.piece()).set(self.sheet.room().width)));
        }
        if let Shows::Drape = shows {
            return self.titled_drape(room);
        }
        self.picture_above_drape(room)
    }

    /// The picture, and below it the drape under its heading.
    fn picture_above_drape(&self, room: Rect) -> drape::ScaledMarks {
        let below = room.below(room.height * (1.0 - DRAPE_SHARE));
        let mut marks = drape::picture(self.picture, room.above(below.height + APART), self.stencils);
        let (drape, scaled) = self.titled_drape(below);
        marks.extend(drape);
        (marks, scaled)
    }

    /// The drape under its heading, to which sentences refer.
    fn titled_drape(&self, room: Rect) -> drape::ScaledMarks {
        let heading = heading(Subheading::Hanging);
        let (drape, scaled) = drape::hanging(self.piece(), room.below(heading.height + BELOW_HEADING), self.stencils);
        ([heading.at(room.corner()), drape].concat(), scaled)
    }

    /// Fills the column at the right; a legend that it has no room for goes over. Says whether the tools stand there, and
    /// the piece as it is worn.
    fn fill(&self, column: &mut Filled, over: &mut Lists) -> (bool, bool) {
        let width = column.left.width;
        column.top(facts::list(self.piece(), width), APART);
        for_a_child(self.sheet, width).into_iter().for_each(|cautions| column.top(cautions, APART));
        let ways = legend::colourways(self.piece(), width, self.sheet.style.ink);
        let ways = ways.map(|ways| titled(Subheading::Colourways, ways)).filter(|ways| column.holds(ways, 0.0));
        ways.into_iter().for_each(|ways| column.top(ways, APART));
        self.needed(column, over);
        self.rest(column)
    }

    /// What one piece takes, the beads as the legend that all pages refer to; that goes over where it has no room. What else
    /// there is to buy stands with what to ask for on a page of its own in any case, and here where it has room.
    fn needed(&self, column: &mut Filled, over: &mut Lists) {
        let width = column.left.width;
        let legend = legend::table(self.piece(), self.stencils);
        let title = Type::TINY.line(&say::heading(Subheading::Legend));
        let beads = Block::stack([title, legend.set(width).block()], BELOW_LEGEND);
        let besides = needs::besides(self.piece(), self.materials, width, (self.sheet.style.ink, self.stencils));
        let all = titled(Subheading::Needs, Block::stack([beads.clone(), besides.clone()], BESIDES_APART));
        let shown = if legend.fits(width) { [all, titled(Subheading::NeededBeads, beads)].into() } else { Vec::new() };
        match shown.into_iter().find(|block| column.holds(block, 0.0)) {
            Some(block) => column.top(block, APART),
            None => over.push((Subheading::Legend, legend.set(self.sheet.room().width))),
        }
    }

    /// Puts the tools below that, and the piece as it is worn at the foot of the column; says whether they stand there.
    fn rest(&self, column: &mut Filled) -> (bool, bool) {
        let width = column.left.width;
        let besides = if self.piece().drape.worn.is_some() { WORN } else { 0.0 };
        let sets = [width < LISTED, false].map(|one_a_line| buying::tools(self.sheet, width, one_a_line));
        let tools = sets.into_iter().find(|tools| column.holds(tools, besides));
        let has_tools = tools.is_some();
        tools.into_iter().for_each(|tools| column.top(tools, APART));
        let worn = worn(self.sheet, column.left, self.stencils);
        let is_worn = worn.is_some();
        worn.into_iter().for_each(|worn| column.foot(worn, 0.0));
        (has_tools, is_worn)
    }
}

fn body(section: flow::Section, marks: Vec<Mark>, scaled: FooterScale) -> PageBody {
    let checked = flow::stamps_at_actual_size(&marks);
    let flow::Section { name, description } = section;
    PageBody { name: name.to_owned(), description, marks, scale: say::scaled(scaled), checked }
}

/// Room on a page, filled from its top and its foot.
struct Filled {
    left: Rect,
    marks: Vec<Mark>,
}

impl Filled {
    const fn new(room: Rect) -> Self {
        Self { left: room, marks: Vec::new() }
    }

    /// Whether a block has room, and so much besides.
    fn holds(&self, block: &Block, besides: f64) -> bool {
        block.height + besides <= self.left.height
    }

    /// Adds a block at the top, and room below it.
    fn top(&mut self, block: Block, apart: f64) {
        let corner = self.left.corner();
        self.left = self.left.below(block.height + apart);
        self.marks.extend(block.at(corner));
    }

    /// Adds a block at the foot, and room above it.
    fn foot(&mut self, block: Block, apart: f64) {
        let corner = Point::new(self.left.left, self.left.bottom() - block.height);
        self.left = self.left.above(block.height + apart);
        self.marks.extend(block.at(corner));
    }
}

/// Lists with their titles.
type Lists = Vec<(Subheading<'static>, SetTable)>;

/// What a buyer of a piece for a child is to know before all else.
fn for_a_child(sheet: &Sheet<'_>, width: f64) -> Option<Block> {
    let caution = english::FOR_A_CHILD;
    let title = Type::SMALL_STRONG.coloured(style::ACCENT).line(caution.title);
    let told = Block::stack([title, Type::SMALL.paragraph(caution.text, width)], 0.0);
    sheet.piece.design.wear.child.then_some(told)
}

fn column_width(sheet: &Sheet<'_>) -> f64 {
    COLUMN + sheet.piece.design.beads.iter().map(|bead| bead.along.value()).fold(BEAD, f64::max)
}

impl Face {
    /// Pours the lists that it has no room for.
    pub fn pour_over(&self, flow: &mut Flow) {
        if !self.over.is_empty() {
            flow.begin(say::section(&SectionKind::Lists));
        }
        for (title, table) in &self.over {
            flow.gap(APART);
            flow.heading(heading(*title));
            flow.table(table.clone());
        }
    }
}

/// A heading with room below it.
pub fn heading(title: Subheading<'_>) -> Block {
    Block::stack([Type::HEADING.line(&say::heading(title)).in_role(Role::Heading(2)), Block::gap(BELOW_HEADING)], 0.0)
}

/// A block under its heading.
pub fn titled(title: Subheading<'_>, block: Block) -> Block {
    Block::stack([heading(title), block], 0.0)
}

fn section(sheet: &Sheet<'_>, has_cautions: bool) -> flow::Section {
    let design = &sheet.piece.design;
    let strands = design.strands.iter().map(|strand| strand.name.as_str()).collect();
    say::section(&SectionKind::Face { kind: design.heading.kind, strands, has_cautions })
}

/// The worn figure with what it assumes, where there is room for both.
fn worn(sheet: &Sheet<'_>, room: Rect, stencils: &Stencils<'_>) -> Option<Block> {
    let said = say::on_neck(&facts::worn(sheet.piece)?, sheet.piece.telling.units);
    let words = Type::TINY.paragraph(&said, room.width);
    let title = heading(Subheading::OnNeck);
    let height = room.height - title.height - words.height - BELOW_WORN;
    if sheet.piece.drape.worn.is_none() {
        return (height >= 0.0).then(|| Block::stack([title, words], 0.0));
    }
    let figure = (height >= LEAST_WORN).then(|| figure::worn(sheet.piece, room.width, height, stencils)).flatten()?;
    Some(Block::stack([title, Block::stack([figure, words], BELOW_WORN)], 0.0))
}
