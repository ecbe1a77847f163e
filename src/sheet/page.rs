//! Pages from their contents: footers, page numbers, titles.

use std::sync::Arc;

use crate::design::Heading;
use crate::geometry::Point;
use crate::trade::paper::Paper;

use super::inked::inked;
use super::said::SectionKind;
use super::{Style, check, english};
use crate::paint::layout::flow::{self, Flow, Poured};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, Rect};
use crate::paint::mark::{Anchor, Mark, Page, Role, Symbol};
use crate::paint::{metrics, outline, style};

/// Room in mm below a section's title.
const BELOW_TITLE: f64 = 0.8;
/// Width in mm of paper from which on the usual margin has room, and the margin of smaller paper.
const SMALL_PAPER: f64 = 180.0;
const SMALL_MARGIN: f64 = 10.0;
/// Room in mm between the footer's rule and its words, and between those at the left and those at the right.
const BELOW_RULE: f64 = 1.0;
const FOOT_APART: f64 = 5.0;
/// Narrowest room in mm in which lists and steps stand in two columns.
pub const TWO_COLUMNS: f64 = 160.0;
/// Room in mm between two columns.
pub const COLUMNS_APART: f64 = 8.0;

/// A page's contents, before it has its footer.
pub struct PageBody {
    /// What the page is for: Face, Stringing, …
    pub name: String,
    /// What the page shows, in a sentence, for those who cannot see it.
    pub description: String,
    /// What is drawn.
    pub marks: Vec<Mark>,
    /// The scale of its drawings, for the footer; empty where nothing is drawn.
    pub scale: String,
    /// Whether a bar is to tell if it was printed at its size.
    pub checked: bool,
}

impl From<Poured> for PageBody {
    fn from(page: Poured) -> Self {
        let all = |part: fn(&flow::Section) -> &str, between: &str| {
            page.sections.iter().map(part).collect::<Vec<_>>().join(between)
        };
        Self {
            name: all(|section| section.name, "; "),
            description: all(|section| &section.description, " "),
            scale: page.scales.join("; "),
            checked: page.at_actual_size,
            marks: page.marks,
        }
    }
}

/// Begins a section under its title.
pub fn begin(flow: &mut Flow, section: &SectionKind<'_>) {
    let section = english::section(section);
    let name = section.name;
    flow.begin(section);
    flow.heading(Block::stack([Type::TITLE.line(name).in_role(Role::Heading(1)), Block::gap(BELOW_TITLE)], 0.0));
}

/// Room for contents on a paper.
pub fn room(paper: Paper) -> Rect {
    let (width, height) = paper.size();
    let margin = margin(paper);
    Rect::new(margin, margin, width - 2.0 * margin, height - 2.0 * margin).above(style::FOOTER)
}

/// White edge of a paper: less on small ones.
fn margin(paper: Paper) -> f64 {
    if paper.size().0 < SMALL_PAPER { SMALL_MARGIN } else { style::MARGIN }
}

/// Puts footers under all bodies; all pages share the symbols, of which exports write those stamped.
pub fn pages(bodies: Vec<PageBody>, symbols: Vec<Symbol>, heading: &Heading, style: &Style) -> Vec<Page> {
    let (count, symbols) = (bodies.len(), Arc::from(symbols));
    let (width, height) = style.paper.size();
    let page = |(index, body): (usize, PageBody)| {
        let [first, _] = foot_lines(style.paper);
        let bar = body.checked.then(|| check::bar(rule_end(style.paper), first));
        let foot = footer(heading, &body, index + 1, count, style.paper);
        Page {
            width,
            height,
            title: english::page_title(&heading.title, index + 1, count, &body.name),
            description: body.description,
            symbols: Arc::clone(&symbols),
            marks: inked([body.marks, foot, Vec::from_iter(bar)].concat(), style.ink),
        }
    };
    bodies.into_iter().enumerate().map(page).collect()
}

/// Where the rule above the footer ends.
fn rule_end(paper: Paper) -> Point {
    let room = room(paper);
    Point::new(room.right(), room.bottom() + style::FOOTER - 2.0 * Type::TINY.line_height() - BELOW_RULE)
}

/// On what lines the footer's words stand.
fn foot_lines(paper: Paper) -> [f64; 2] {
    let first = rule_end(paper).y + BELOW_RULE + style::TINY;
    [first, first + Type::TINY.line_height()]
}

/// Title, designer, page number, permissions and scale below a thin rule.
fn footer(heading: &Heading, body: &PageBody, number: usize, count: usize, paper: Paper) -> Vec<Mark> {
    let (room, end) = (room(paper), rule_end(paper));
    let rule = outline::line(Point::new(room.left, end.y), end);
    let rule = Mark::Shape { outline: rule, fill: None, stroke: Some(style::RULE_HAIRLINE) };
    let [first, second] = foot_lines(paper);
    let page = english::page(number, count);
    let bar = if body.checked { check::FROM_RIGHT } else { 0.0 };
    let mut marks = vec![rule];
    marks.extend(foot_line(room, first, Some(&by(heading)), &page, bar));
    marks.extend(foot_line(room, second, heading.permissions.as_deref(), &body.scale, 0.0));
    vec![Mark::Group { role: Role::Footer, marks }]
}

/// The title and who designed it.
fn by(heading: &Heading) -> String {
    let title = heading.whole_title();
    heading.designer.as_ref().map_or_else(|| title.clone(), |designer| format!("{title} · {designer}"))
}

/// A line of a footer: words at the left as far as those at the right, or something else of a width there, leave room.
fn foot_line(room: Rect, y: f64, left: Option<&str>, right: &str, taken: f64) -> impl Iterator<Item = Mark> {
    let width = room.width - Type::TINY.width(right).max(taken) - FOOT_APART;
    let left = left.map(|left| {
        let left = metrics::fit(left, style::TINY, Type::TINY.weight, width);
        Type::TINY.mark(&left, Point::new(room.left, y), Anchor::Start)
    });
    let right = (!right.is_empty()).then(|| Type::TINY.mark(right, Point::new(room.right(), y), Anchor::End));
    left.into_iter().chain(right)
}
