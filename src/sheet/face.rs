//! The face page: what the piece is, how it hangs, its beads and what it takes.

use crate::art::Stencils;
use crate::geometry::Point;
use crate::materials::Materials;

use super::Sheet;
use super::figure::{self, Labels};
use super::page::Body;
use super::{buying, check, drape, facts, legend, needs};
use crate::paint::layout::flow::{Flow, Section};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Mark, Role};

/// Room that the tools leave for the figure on the neck.
const WORN: f64 = 70.0;
/// The heading of the legend.
pub const BEADS: &str = "Beads, drawn at actual size";
/// Width of the column beside the drape, without the widest bead drawn in it.
const COLUMN: f64 = 52.0;
/// The most of the page's room that the column may take.
const COLUMN_SHARE: f64 = 0.42;
/// Gap between the drape and the column.
const GAP: f64 = 6.0;
/// The most of the page that the short list of needs may take before it is left to the buying page.
const NEEDS_SHARE: f64 = 0.3;

/// The face page, and pages for lists that it has no room for.
pub struct Face {
    /// The pages.
    pub bodies: Vec<Body>,
    /// Whether the tools stand among them.
    pub has_tools: bool,
}

/// Draws the face.
pub fn face(sheet: &Sheet<'_>, materials: &Materials, stencils: &mut Stencils<'_>) -> Face {
    let room = sheet.room();
    let mut over = Vec::new();
    let head = facts::head(sheet.piece, room.width);
    let needs = titled("What you need", needs::short(sheet.piece, materials, room.width));
    let mut rest = room.below(head.height + 4.0);
    let mut marks = head.at(room.corner());
    if needs.height <= room.height * NEEDS_SHARE {
        let top = rest.bottom() - needs.height;
        rest = rest.above(needs.height + 3.0);
        marks.extend(needs.at(Point::new(room.left, top)));
    }
    if let Some((rows, scale)) = drape::laid_straight(sheet.piece, room.width, stencils) {
        let rows = titled(&format!("Laid straight, {scale}"), rows);
        let top = rest.bottom() - rows.height;
        rest = rest.above(rows.height + 5.0);
        marks.extend(rows.at(Point::new(room.left, top)));
    }
    let (drape_room, column) = rest.split_right(column_width(sheet).min(room.width * COLUMN_SHARE), GAP);
    let legend = legend::table(sheet.piece, stencils);
    let legend_block = titled(BEADS, legend.set(column.width).block());
    let mut below = column;
    if legend_block.height <= column.height && legend.fits(column.width) {
        below = column.below(legend_block.height + 6.0);
        marks.extend(legend_block.at(column.corner()));
    } else {
        over.push((BEADS, legend.set(room.width)));
    }
    let tools = buying::tools(sheet, 1);
    let kept = if sheet.piece.drape.worn.is_some() { WORN } else { 0.0 };
    let has_tools = tools.height + kept <= below.height;
    if has_tools {
        below = below.above(tools.height + 6.0);
        marks.extend(tools.at(Point::new(below.left, below.bottom() + 6.0)));
    }
    marks.extend(worn(sheet, below, stencils));
    if matches!(figure::room_for_labels(sheet.piece, 1.0, drape_room.height), Labels::Listed) {
        over.push(("Strands", figure::strand_table(sheet.piece).set(room.width)));
    }
    let (figure, scale) = drape::figure(sheet.piece, drape_room, stencils);
    marks.extend(figure);
    let checked = check::stamps_at_actual_size(&marks);
    let first = Body { name: "Face".to_owned(), description: describe(sheet), marks, scale, checked };
    Face { bodies: std::iter::once(first).chain(more(over, room)).collect(), has_tools }
}

fn column_width(sheet: &Sheet<'_>) -> f64 {
    COLUMN + sheet.piece.design.beads.iter().map(|bead| bead.along.value()).fold(0.0, f64::max)
}

/// Pages for the lists that the face has no room for.
fn more(lists: Vec<(&'static str, crate::paint::layout::table::SetTable)>, room: Rect) -> Vec<Body> {
    let mut flow = Flow::new(room);
    flow.begin(Section { name: "Lists", description: "Lists that the face has no room for.".to_owned() });
    for (title, table) in lists {
        flow.gap(6.0);
        flow.heading(heading(title));
        flow.table(table);
    }
    flow.into_pages().into_iter().map(Body::from).collect()
}

/// A heading with room below it.
pub fn heading(title: &str) -> Block {
    Block::stack([Type::HEADING.line(title).in_role(Role::Heading(2)), Block::gap(1.0)], 0.0)
}

/// A block under its heading.
pub fn titled(title: &str, block: Block) -> Block {
    Block::stack([heading(title), block], 0.0)
}

fn describe(sheet: &Sheet<'_>) -> String {
    let design = &sheet.piece.design;
    let names: Vec<_> = design.strands.iter().map(|strand| strand.name.as_str()).collect();
    format!("{} with the strands {} at rest, the beads and the materials.", design.heading.kind, names.join(", "))
}

/// The worn figure with what it assumes, where there is room for both.
fn worn(sheet: &Sheet<'_>, room: Rect, stencils: &mut Stencils<'_>) -> Vec<Mark> {
    let Some(words) = facts::worn(sheet.piece) else { return Vec::new() };
    let title = heading("On the neck");
    let words = Type::TINY.paragraph(&words, room.width);
    let figure_room = room.below(title.height).above(words.height + 2.0);
    if figure_room.height < 25.0 {
        return Vec::new();
    }
    let Some(figure) = figure::worn(sheet.piece, room.width, figure_room.height, stencils) else { return Vec::new() };
    Block::stack([title, Block::stack([figure, words], 2.0)], 0.0).at(room.corner())
}
