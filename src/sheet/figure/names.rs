//! Names of what stays in its place, between a row and its ruler, each with a tick towards it.

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark};
use crate::paint::{outline, style};

/// Height of a row of names in mm.
const ROW: f64 = style::TINY * 1.05;
/// Most rows of names: one that its neighbour leaves no room goes to the next row.
const ROWS: usize = 2;
/// Room in mm for the ticks, and how much of it they take.
const TICK: f64 = 1.0;
const TICK_SHARE: f64 = 0.8;
/// Least room in mm between names.
const NAMES_APART: f64 = 0.6;
/// How the names look.
const FACE: Type = Type { weight: Type::SMALL_STRONG.weight, colour: style::INK, ..Type::TINY };

/// On which side of its name what is named lies.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Lies {
    /// Above it.
    Above,
    /// Below it.
    Below,
}

/// A name in its place.
struct PlacedName {
    name: String,
    /// Where what it names stands along the row.
    x: f64,
    /// Its left edge and its row of names; nothing where there is no room.
    room: Option<(f64, usize)>,
}

/// Names in their places.
pub struct Names {
    placed: Vec<PlacedName>,
}

impl Names {
    /// Finds room for names, each at its place along a row of a width, in order.
    pub fn new(names: impl IntoIterator<Item = (String, f64)>, width: f64) -> Self {
        let mut taken = [0.0; ROWS];
        let place = |(name, x): (String, f64)| {
            let wide = FACE.width(&name);
            let left = (x - wide / 2.0).clamp(0.0, (width - wide).max(0.0));
            let room = taken.iter().position(|taken| *taken <= left).map(|row| (left, row));
            if let Some((left, row)) = room {
                taken[row] = left + wide + NAMES_APART;
            }
            PlacedName { name, x, room }
        };
        Self { placed: names.into_iter().map(place).collect() }
    }

    /// Their height in mm with the ticks; none where there are no names.
    pub fn height(&self) -> f64 {
        if self.placed.is_empty() { 0.0 } else { TICK + self.rows() as f64 * ROW }
    }

    fn rows(&self) -> usize {
        self.placed.iter().filter_map(|one| one.room).map(|(_, row)| row + 1).max().unwrap_or_default()
    }

    /// The names below a height, with ticks towards what they name.
    pub fn marks(&self, top: f64, lies: Lies) -> Vec<Mark> {
        let (first, step, edge) = match lies {
            Lies::Above => (top + TICK, ROW, top),
            Lies::Below => (top + (self.rows() as f64 - 1.0) * ROW, -ROW, top + self.height()),
        };
        let way = if lies == Lies::Above { TICK } else { -TICK };
        let tick = |x: f64| outline::line(Point::new(x, edge), Point::new(x, edge + way * TICK_SHARE));
        let ticks: Vec<_> = self.placed.iter().flat_map(|one| tick(one.x)).collect();
        let name = |one: &PlacedName| {
            let (left, row) = one.room?;
            let baseline = first + step * row as f64 + style::TINY * style::CAPITAL;
            Some(FACE.mark(&one.name, Point::new(left, baseline), Anchor::Start))
        };
        let lines = Mark::Shape { outline: ticks, fill: None, stroke: Some(style::INK_LINE) };
        let names = self.placed.iter().filter_map(name);
        Some(lines).filter(|_| !self.placed.is_empty()).into_iter().chain(names).collect()
    }
}
