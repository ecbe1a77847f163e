//! Where everything on a page is: every mark with the box round it, in mm.

use std::collections::BTreeMap;

use festoon::design::{Bead, Index, nth};
use festoon::geometry::{Extent, Point};
use festoon::paint::mark::{Anchor, Key, Mark, Page, Role, Segment, Stroke, Text};
use festoon::paint::{metrics, outline};

/// An upright box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Box {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Box {
    const NONE: Self =
        Self { left: f64::INFINITY, top: f64::INFINITY, right: f64::NEG_INFINITY, bottom: f64::NEG_INFINITY };

    pub const fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self { left, top, right, bottom }
    }

    /// The box round points; turned inside out where there are none.
    pub fn round(points: impl IntoIterator<Item = Point>) -> Self {
        points.into_iter().fold(Self::NONE, |all, at| Self {
            left: all.left.min(at.x),
            top: all.top.min(at.y),
            right: all.right.max(at.x),
            bottom: all.bottom.max(at.y),
        })
    }

    pub fn is_empty(&self) -> bool {
        self.left > self.right || self.top > self.bottom
    }

    /// Whether another box lies inside this one, give or take `slack` mm.
    pub fn holds(&self, other: &Self, slack: f64) -> bool {
        other.left >= self.left - slack
            && other.right <= self.right + slack
            && other.top >= self.top - slack
            && other.bottom <= self.bottom + slack
    }

    /// Whether two boxes share more than `slack` mm both ways.
    pub fn overlaps(&self, other: &Self, slack: f64) -> bool {
        self.left.max(other.left) + slack < self.right.min(other.right)
            && self.top.max(other.top) + slack < self.bottom.min(other.bottom)
    }

    /// What two boxes share; turned inside out where they share nothing.
    fn shared(&self, other: &Self) -> Self {
        Self {
            left: self.left.max(other.left),
            top: self.top.max(other.top),
            right: self.right.min(other.right),
            bottom: self.bottom.min(other.bottom),
        }
    }

    fn corners(&self) -> [Point; 4] {
        let Self { left, top, right, bottom } = *self;
        [Point::new(left, top), Point::new(right, top), Point::new(right, bottom), Point::new(left, bottom)]
    }

    fn grown(self, by: f64) -> Self {
        Self { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }
}

/// What a mark is.
#[derive(Clone, Debug, PartialEq)]
pub enum Seen {
    /// A line of text, and what it says.
    Text(String),
    /// A shape.
    Shape,
    /// A stamp, and of which symbol.
    Stamp(Key),
}

/// A mark in its place.
#[derive(Clone, Debug)]
pub struct Found {
    pub seen: Seen,
    pub bounds: Box,
    /// Whether the whole of it shows: nothing is clipped off.
    pub whole: bool,
    /// Labels of the groups that it is in, outermost first.
    pub within: Vec<String>,
}

impl Found {
    pub fn text(&self) -> Option<&str> {
        match &self.seen {
            Seen::Text(text) => Some(text),
            _ => None,
        }
    }

    /// Of what sort of thing it is a stamp, and of which, as its symbol's id in a file says: `front-half-3-12`.
    pub fn stamp(&self) -> Option<(String, usize)> {
        let Seen::Stamp(symbol) = self.seen else { return None };
        let id = symbol.to_string();
        let first = id.find(|letter: char| letter.is_ascii_digit())?;
        let number = id[first..].split('-').next()?.parse().ok()?;
        Some((id[..first].trim_end_matches('-').to_owned(), number))
    }

    /// Whether it is a stamp of a sort of thing.
    pub fn is_stamp_of(&self, sort: &str) -> bool {
        self.stamp().is_some_and(|(word, _)| word == sort)
    }

    /// The bead that it is a stamp of.
    pub fn bead(&self) -> Option<Index<Bead>> {
        let (word, number) = self.stamp()?;
        matches!(word.as_str(), "bead" | "speck").then(|| nth(number))
    }
}

/// Every mark of a page that draws something, in drawing order.
pub fn boxes(page: &Page) -> Vec<Found> {
    let symbols = page.symbols.iter().map(|symbol| (symbol.key, hull(&symbol.marks))).collect();
    let mut found = Vec::new();
    walk(&page.marks, &symbols, &mut Vec::new(), &mut found);
    found
}

fn walk(marks: &[Mark], symbols: &BTreeMap<Key, Vec<Point>>, within: &mut Vec<String>, found: &mut Vec<Found>) {
    for mark in marks {
        let (seen, bounds) = match mark {
            Mark::Group { role, marks } => {
                within.push(if *role == Role::Footer { "footer".to_owned() } else { role.label().to_owned() });
                walk(marks, symbols, within, found);
                within.pop();
                continue;
            }
            Mark::Raised { marks, .. } | Mark::Blurred { marks, .. } => {
                walk(marks, symbols, within, found);
                continue;
            }
            Mark::Clipped { within: Extent { low, high }, marks } => {
                let first = found.len();
                walk(marks, symbols, within, found);
                clip(found, first, &Box::new(low.x, low.y, high.x, high.y));
                continue;
            }
            Mark::Text(text) => (Seen::Text(text.text.clone()), Box::round(text_corners(text))),
            Mark::Shape { outline, stroke, .. } => (Seen::Shape, shape(outline, stroke.as_ref())),
            Mark::Stamp { symbol, at, angle, scale, along } => {
                let points = symbols.get(symbol).unwrap_or_else(|| panic!("no symbol {symbol}"));
                let stamped =
                    points.iter().map(|point| *at + Point::new(point.x * along, point.y).turned(*angle) * *scale);
                (Seen::Stamp(*symbol), Box::round(stamped))
            }
        };
        if !bounds.is_empty() {
            found.push(Found { seen, bounds, whole: true, within: within.clone() });
        }
    }
}

/// Leaves of what was found since the first what a clip shows.
fn clip(found: &mut Vec<Found>, first: usize, shown: &Box) {
    for inner in found.split_off(first) {
        let bounds = inner.bounds.shared(shown);
        let whole = inner.whole && shown.holds(&inner.bounds, 1e-9);
        found.extend((!bounds.is_empty()).then_some(Found { bounds, whole, ..inner }));
    }
}

/// Points of a symbol's marks, none of which lies inside all others' box on every turn.
fn hull(marks: &[Mark]) -> Vec<Point> {
    let mut points = Vec::new();
    for mark in marks {
        match mark {
            Mark::Shape { outline, stroke, .. } => {
                let half = half(stroke.as_ref());
                for point in outline::flattened(outline) {
                    points.extend(Box::round([point]).grown(half).corners());
                }
            }
            Mark::Text(text) => points.extend(text_corners(text)),
            Mark::Stamp { symbol, .. } => panic!("symbols hold no stamps, but one of {symbol}"),
            held => points.extend(hull(held.inner())),
        }
    }
    points
}

fn shape(outline: &[Segment], stroke: Option<&Stroke>) -> Box {
    let points = outline::flattened(outline);
    let bounds = Box::round(points);
    if bounds.is_empty() {
        return bounds;
    }
    // A level or upright line that is cut off square is no longer than from point to point.
    let square = stroke.is_some_and(|stroke| !stroke.round);
    let half = half(stroke);
    let level = square && bounds.top == bounds.bottom;
    let upright = square && bounds.left == bounds.right;
    let (aside, up) = (if level { 0.0 } else { half }, if upright { 0.0 } else { half });
    Box::new(bounds.left - aside, bounds.top - up, bounds.right + aside, bounds.bottom + up)
}

fn half(stroke: Option<&Stroke>) -> f64 {
    stroke.map_or(0.0, |stroke| stroke.width / 2.0)
}

/// Height of the letters d and l, and depth of g and p, as shares of the size of type: read off the
/// bundled font's outlines (712 and 205 of 1000 units).
const TALL: f64 = 0.712;
const DEEP: f64 = 0.205;

/// The corners of what a text draws, not of the line that it stands in.
fn text_corners(text: &Text) -> Vec<Point> {
    if text.text.trim().is_empty() {
        return Vec::new();
    }
    let width = metrics::width(&text.text, text.size, text.weight);
    let left = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -width / 2.0,
        Anchor::End => -width,
    };
    let deep = text.text.contains(|c: char| "gjpqyQ,;()[]{}/⁄|_₁₆".contains(c));
    let bounds = Box::new(left, -TALL * text.size, left + width, if deep { DEEP * text.size } else { 0.0 });
    bounds.corners().into_iter().map(|corner| text.at + corner.turned(text.angle)).collect()
}

/// A rule along the edge of a page's room stands out of it by half its width.
const HALF_RULE: f64 = 0.15;

/// Every mark that does not lie inside a page's margins.
pub fn outside(page: &Page, margin: f64) -> Vec<String> {
    let room = Box::new(margin, margin, page.width - margin, page.height - margin);
    let out = boxes(page).into_iter().filter(|found| !room.holds(&found.bounds, HALF_RULE));
    out.map(|found| format!("{}: {found:?}", page.title)).collect()
}

/// Every pair of texts of which one overlaps the other.
pub fn overlapping_texts(page: &Page) -> Vec<String> {
    let all = boxes(page);
    let mut texts: Vec<_> = all.iter().filter(|found| found.text().is_some()).collect();
    texts.sort_by(|a, b| a.bounds.top.total_cmp(&b.bounds.top));
    let mut pairs = Vec::new();
    for (at, one) in texts.iter().enumerate() {
        let near = texts[at + 1..].iter().take_while(|other| other.bounds.top < one.bounds.bottom);
        let over = near.filter(|other| one.bounds.overlaps(&other.bounds, 0.05));
        pairs.extend(over.map(|other| format!("{}: {one:?} and {other:?}", page.title)));
    }
    pairs
}

/// Every text that stands on a bead or finding.
pub fn texts_on_stamps(page: &Page) -> Vec<String> {
    let all = boxes(page);
    let stamps: Vec<_> = all.iter().filter(|found| matches!(found.seen, Seen::Stamp(_))).collect();
    let on = |text: &&Found| text.text().is_some() && stamps.iter().any(|s| s.bounds.overlaps(&text.bounds, 0.05));
    all.iter().filter(on).map(|text| format!("{}: {text:?}", page.title)).collect()
}
