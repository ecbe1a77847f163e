//! Stringing: for each strand what to cut, the word chart, the row at actual size with
//! its ruler, and the lengths to check against.

mod checks;

use crate::art::Stencils;
use crate::design::{Bead, Bit, Design, Index, Strand, What, taken_by};
use crate::geometry::Point;
use crate::materials::render::words as amount;
use crate::pattern::Shape;
use crate::steps::english::words::list;
use crate::steps::posts::{Keeps, Posts, between};
use crate::steps::{chart, english};
use crate::units::Length;

use super::figure;
use super::{Sheet, page, sizes, words};
use crate::paint::layout::Block;
use crate::paint::layout::flow::Flow;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Mark, Role};
use crate::paint::{outline, style};

/// Room between strands, usually and where all stands close.
const STRANDS_APART: [f64; 2] = [4.0, 3.0];
/// Room between the lines of a row, likewise.
const LINES_APART: [f64; 2] = [2.5, 1.5];
/// Most lines of a word chart that is set in large type.
const LARGE_LINES: usize = 6;
/// The chart's large type, to be read from the bench.
const LARGE: Type = Type { colour: style::INK, weight: Type::BODY.weight, ..Type::HEADING };
/// Width and height in mm up to which a bead is drawn at actual size in the key.
const KEY_SIZE: (f64, f64) = (20.0, 12.0);

/// The scale of rows, for the footer.
const SCALE: &str = "rows at actual size (1 : 1)";

/// How a row is read.
const READ: &str = "Beads and rulers are at actual size when printed at 100 %. 5A stands for five of bead A; small \
                    figures count the beads in tens; rulers start";
/// Where rulers start; on memory wire, the loops of which are no part of what is measured.
const STARTS: [&str; 2] = [" at the outside of the first end.", " where the first loop is turned."];
/// How often a pair's strands are made.
const PAIR: &str = " Make each strand twice, once for each earring.";
/// What becomes of beads that do not fill their strand.
const SLIDES: &str =
    " Beads slide on bare cord and gather at its low point: nothing holds them there, as it should be.";
/// The same where stops keep them.
const SLIDES_BETWEEN: &str = " Beads slide on bare cord as far as the stops let them, as they should.";
/// Why sizes do not add up to lengths.
const TAKES: &str = "Lengths count what beads take of the cord: round ones sink a little into one another's holes. \
                     The key says what one takes among its own kind; below its row all parts of a strand are added up.";
/// The same where no bead lies beside another.
const TAKES_APART: &str = "Lengths count what beads take of the cord, from hole to hole, as the key says. Below its row all \
                           parts of a strand are added up.";

/// Pours all strands.
pub fn pour(flow: &mut Flow, sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) {
    let names: Vec<_> = sheet.piece.design.strands.iter().map(|strand| strand.name.as_str()).collect();
    let description = format!("The beads of the strands {} in a row, at actual size with a ruler.", names.join(", "));
    page::begin(flow, "Stringing", description);
    let width = flow.width();
    flow.add(intro(sheet, width));
    flow.gap(2.0);
    for row in key(sheet, width, stencils) {
        flow.add(row);
        flow.gap(1.0);
    }
    for alike in sheet.piece.design.alike() {
        flow.gap(flow.room(STRANDS_APART));
        strands(sheet, &alike, flow, stencils);
    }
}

/// What the letters mean that stand above a ruler: ` Above the ruler S stands for a stop, and K for a knot.`
fn names(design: &Design) -> String {
    let posts: Vec<_> = design.strands.iter().map(|strand| Posts::new(design, strand)).collect();
    let stand = Keeps::ALL.into_iter().filter(|keeps| posts.iter().any(|posts| posts.of(*keeps).next().is_some()));
    let told = |(at, keeps): (usize, Keeps)| {
        let verb = if at == 0 { " stands" } else { "" };
        format!("{}{verb} for {}", keeps.letter(design), keeps.meant())
    };
    match stand.enumerate().map(told).collect::<Vec<_>>() {
        told if told.is_empty() => String::new(),
        told => format!(" Above the ruler {}.", list(&told)),
    }
}

fn intro(sheet: &Sheet<'_>, width: f64) -> Block {
    let pair = if sheet.piece.design.copies > 1 { PAIR } else { "" };
    let design = &sheet.piece.design;
    let stopped = |strand: &Strand| Posts::new(design, strand).of(Keeps::Stop).next().is_some();
    let slides = design.strands.iter().filter(|strand| strand.slides(design)).map(stopped).min();
    let slides = slides.map_or("", |stopped| if stopped { SLIDES_BETWEEN } else { SLIDES });
    let names = names(design);
    let takes = match design.beads.iter().any(|bead| takes(bead).is_some()) {
        true if design.strands.iter().any(has_neighbours) => TAKES,
        true => TAKES_APART,
        false => "",
    };
    let starts = STARTS[usize::from(design.sprung().is_some())];
    let text = format!("{READ}{starts}{names}{slides}{pair} {takes}");
    Type::SMALL.paragraph(text.trim_end(), width)
}

/// Whether a bead lies beside another on a strand.
fn has_neighbours(strand: &Strand) -> bool {
    let is_bead = |bit: &Bit| matches!(bit.what, What::Bead(_));
    strand.bits().zip(strand.bits().skip(1)).any(|(one, next)| is_bead(one) && is_bead(next))
}

/// Every bead with its letter and name, in rows.
fn key(sheet: &Sheet<'_>, width: f64, stencils: &mut Stencils<'_>) -> Vec<Block> {
    let mut entries = Vec::new();
    for (index, bead) in sheet.piece.design.beads.entries() {
        let part = reduction(bead);
        let name = Type::SMALL.fitted(&bead.name, width * 0.5);
        let reduced = if part > 1 { format!(", drawn at 1 : {part}") } else { String::new() };
        let words = Block::stack([name, Type::TINY.line(&format!("{}{reduced}", size(bead)))], 0.0);
        let letter = Type::STRONG.line(&bead.letter);
        let drawing = drawing(index, bead, 1.0 / f64::from(part), stencils);
        entries.push(Block::middled([letter, drawing, words], 1.5).in_role(Role::Paragraph));
    }
    Block::rows(entries, 7.0, width)
}

/// Into how many parts a bead's size goes to have room in the key.
fn reduction(bead: &Bead) -> u32 {
    let (wide, high) = KEY_SIZE;
    let parts = (bead.along.value() / wide).max(bead.across.value() / high).ceil();
    // Sizes are finite and above 0, and `as` saturates.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 1 on")]
    let parts = parts.max(1.0) as u32;
    parts
}

fn drawing(index: Index<Bead>, bead: &Bead, scale: f64, stencils: &mut Stencils<'_>) -> Block {
    let size = Point::new(bead.along.value(), bead.across.value()) * scale;
    Block::new(size.x, size.y, vec![stencils.sample(index, size * 0.5, scale)])
}

/// A bead's size along the cord, and how much cord it takes in a row of its kind where that differs.
fn size(bead: &Bead) -> String {
    let (size, which) = match bead.shape {
        Shape::Seed => (bead.across, " wide"),
        _ if bead.along == bead.across => (bead.along, ""),
        _ if bead.hangs() => (bead.along, " long"),
        _ => (bead.along, " along the hole"),
    };
    let takes = takes(bead).map(|takes| format!(", takes {}", takes.hundredths())).unwrap_or_default();
    format!("{}{which}{takes}", size.tenths())
}

/// How much cord a bead takes in a row of its kind, where its size does not say it.
fn takes(bead: &Bead) -> Option<Length> {
    let size = if bead.shape == Shape::Seed { bead.across } else { bead.along };
    let takes = Length::mm(taken_by(bead, Some(bead)));
    (size.hundredths() != takes.hundredths()).then_some(takes)
}

/// Pours strands that are strung alike: one row for all of them.
fn strands(sheet: &Sheet<'_>, alike: &[Index<Strand>], flow: &mut Flow, stencils: &mut Stencils<'_>) {
    let (design, index) = (&sheet.piece.design, alike[0]);
    let strand = &design.strands[index];
    let width = flow.width();
    let apart = flow.room(LINES_APART);
    let row = figure::row(sheet.piece, index, width, stencils);
    let checks = checks::block(sheet, index, &row, width);
    let mut opening = vec![head(sheet, alike, width)];
    opening.extend(chart_lines(&chart::text(design, strand), width));
    opening.push(Block::stack([Type::SMALL.paragraph(&english::counts(design, strand), width), Block::gap(2.0)], 0.0));
    let mut lines = row.lines;
    // What it measures stays with the end of the row.
    let last = Block::stack(lines.pop().into_iter().chain([checks]), apart);
    let mut blocks = lines.into_iter().chain([last]);
    open(flow, opening, blocks.next().unwrap_or_default(), sheet.room().height);
    flow.scaled(SCALE.to_owned(), true);
    for block in blocks {
        flow.gap(apart);
        if block.height > flow.left() {
            flow.turn();
            flow.add(continued(&sizes::title(design, alike), width));
        }
        flow.add(block);
        flow.scaled(SCALE.to_owned(), true);
    }
}

/// Strands that are strung alike in words alone: what to cut, what to string, what it measures.
pub fn told(sheet: &Sheet<'_>, alike: &[Index<Strand>], width: f64) -> Block {
    let design = &sheet.piece.design;
    let strand = &design.strands[alike[0]];
    let measures = [english::counts(design, strand), english::measures(design, strand)];
    let opening = [head(sheet, alike, width)].into_iter().chain(chart_lines(&chart::text(design, strand), width));
    Block::stack(opening.chain(measures.map(|words| Type::SMALL.paragraph(&words, width))), 0.0)
}

/// Adds a strand's opening, which stays with the first line of its row where a page has room for
/// both.
fn open(flow: &mut Flow, opening: Vec<Block>, first: Block, page: f64) {
    let height: f64 = opening.iter().map(|block| block.height).sum();
    let together = height + first.height <= page;
    for block in opening {
        if together { flow.heading(block) } else { flow.add(block) }
    }
    flow.add(first);
}

/// Rule, number and name, cut length; below them cord, finished length and counts.
fn head(sheet: &Sheet<'_>, alike: &[Index<Strand>], width: f64) -> Block {
    let design = &sheet.piece.design;
    let (strand, units) = (&design.strands[alike[0]], design.heading.units);
    let times = if alike.len() > 1 { format!("{} × ", alike.len()) } else { String::new() };
    let cut = match strand.is_on_pin(design) {
        true => format!("{times}on a pin"),
        false => format!("Cut {times}{}", amount::cut(strand.cut(), units)),
    };
    let cut = LARGE.bold().line(&cut);
    let name = Type::HEADING.fitted(&sizes::title(design, alike), width - cut.width - 6.0).in_role(Role::Heading(2));
    let left = width - cut.width;
    let mut marks = vec![rule(width)];
    marks.extend(name.at(Point::new(0.0, 1.0)));
    let height = 1.0 + cut.height;
    marks.extend(cut.at(Point::new(left, 1.0)));
    let facts = on_what(design, strand);
    let facts = Type::SMALL.paragraph(&facts, width);
    Block::stack([Block::new(width, height, marks), facts, Block::gap(1.2)], 0.0)
}

/// What a strand is strung on, and how long it becomes.
fn on_what(design: &Design, strand: &Strand) -> String {
    let (units, cord) = (design.heading.units, &design.cords[strand.cord]);
    if let Some(pinned) = strand.hung().next().filter(|_| strand.is_on_pin(design)) {
        let (name, thick, drop) = (&cord.name, cord.diameter.hundredths(), units.ruler(Length::mm(pinned.drop)));
        return format!("On {name} {thick}. It hangs {drop} down, its loop counted.");
    }
    let doubled = if strand.legs > 1 { ", doubled" } else { "" };
    let ends = if strand.legs > 1 { "on each leg beyond the last end" } else { "beyond each end" };
    let more = Some(strand.allowance).filter(|more| *more > Length::ZERO);
    let more = more.map(|more| format!(", {} of it {ends}", units.ruler(more))).unwrap_or_default();
    let knots = Some(strand.in_knots()).filter(|knots| *knots > Length::ZERO);
    let more = more + &knots.map(|knots| format!(", about {} in its knots", units.ruler(knots))).unwrap_or_default();
    let (name, thick) = (&cord.name, cord.diameter.hundredths());
    let (finished, between) = (units.ruler(strand.finished), between(design, strand));
    let links = strand.links(design).map(|links| format!(", {links} links")).unwrap_or_default();
    let slack = strand.told_slack().map(|slack| {
        format!(
            " {} its beads touch on the inner side and part on the outer: that takes {} more {}.",
            if design.is_ring() { "Closed to a ring" } else { "Where it bends" },
            units.ruler(slack),
            cord.word()
        )
    });
    let slack = slack.unwrap_or_default();
    format!("On {name} {thick}{links}{doubled}{more}. The strand measures {finished} from {between}.{slack}")
}

/// The heading of a strand that runs on to another page.
fn continued(title: &str, width: f64) -> Block {
    let words = Type::HEADING.fitted(&format!("{title}, continued"), width).in_role(Role::Heading(2));
    Block::stack([words, Block::gap(2.0)], 0.0)
}

fn rule(width: f64) -> Mark {
    let y = style::INK_RULE.width / 2.0;
    let line = outline::line(Point::new(0.0, y), Point::new(width, y));
    Mark::Shape { outline: line, fill: None, stroke: Some(style::INK_RULE) }
}

/// The word chart, in large type unless it is long.
fn chart_lines(text: &str, width: f64) -> Vec<Block> {
    let large = words::set(text, LARGE, width);
    if large.len() <= LARGE_LINES { large } else { words::set(text, Type::BODY, width) }
}
