//! Figures: the piece drawn to a scale, as marks.
//!
//! Figures are laid out in the drape's own frame (mm, x to the right, y up) and put on the page
//! through a [`Frame`].

mod bars;
mod closure;
mod coil;
mod cord;
mod drops;
mod ends;
mod extender;
mod fastened;
mod labels;
pub mod names;
mod ring;
mod row;
mod ruler;
mod scale;
mod side;
mod strands;
mod track;
pub mod twined;
mod worn;

pub use bars::{bars, middle};
pub use closure::{Closing, closing, hanging_extent};
pub use drops::{DROPS_WIDTH, drops};
pub use extender::{hooked, joined};
pub use labels::{DISC, Labels, disc, labels, room_for_labels, strand_table};
pub use ring::{closed_box, is_along_the_limb, note, ring, ring_extent, rows};
pub use row::{Row, meeting, row};
pub use ruler::{Ruler, Stretch};
pub use scale::{BAR_HEIGHT, Scale, scale_bar};
pub use side::{Layers, Way, laid_side, mouths};
pub use strands::{Sketch, bit_box, branch, longest_first, outline_box, strand_box, strands};
pub use track::{Track, closing_on, on_tracks};
pub use worn::worn;

use crate::geometry::{Extent, Point};
use crate::paint::layout::Rect;

/// How a figure's own coordinates come onto the page.
#[derive(Clone, Copy, Debug)]
pub struct Frame {
    /// Where the figure's origin comes to stand on the page.
    pub origin: Point,
    /// Page mm for each mm of the piece.
    pub scale: f64,
}

impl Frame {
    /// The figure at actual size about the page's corner.
    pub const ACTUAL: Self = Self { origin: Point::ORIGIN, scale: 1.0 };

    /// The frame that sets the middle of a figure's box on the middle of a room.
    #[must_use]
    pub fn centred(extent: Extent, room: Rect, scale: f64) -> Self {
        let middle = extent.low.between(extent.high, 0.5);
        let centre = room.corner() + Point::new(room.width, room.height) * 0.5;
        Self { origin: centre + Point::new(-middle.x, middle.y) * scale, scale }
    }

    /// The same as large as the room allows.
    #[must_use]
    pub fn filling(extent: Extent, room: Rect) -> Self {
        let scale = (room.width / extent.width().max(1.0)).min(room.height / extent.height().max(1.0));
        Self::centred(extent, room, scale)
    }

    /// A box on the page in the figure's own coordinates, which count upward.
    #[must_use]
    pub fn piece(&self, page: Extent) -> Extent {
        let own = |at: Point| Point::new(at.x - self.origin.x, self.origin.y - at.y) * (1.0 / self.scale);
        let [one, other] = [page.low, page.high].map(own);
        Extent { low: Point::new(one.x, other.y), high: Point::new(other.x, one.y) }
    }

    /// A point of the figure on the page.
    #[must_use]
    pub fn page(&self, point: Point) -> Point {
        Point::new(self.origin.x + point.x * self.scale, self.origin.y - point.y * self.scale)
    }
}

/// Farthest in mm that a left-out joint of the cord may lie beside the line drawn.
const STRAIGHT: f64 = 0.01;

/// Points without those that lie on the way between their neighbours.
pub fn straightened(points: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    for (index, point) in points.iter().enumerate() {
        let needless = kept.last().zip(points.get(index + 1)).is_some_and(|(last, next)| {
            let (way, aside) = (*next - *last, *point - *last);
            let off = (way.x * aside.y - way.y * aside.x).abs();
            way.length() < 8.0 && off <= STRAIGHT * way.length()
        });
        if !needless {
            kept.push(*point);
        }
    }
    kept
}

/// How much higher than the lowest a point may lie and still count as the lowest.
const LEVEL: f64 = 0.05;

/// The lowest of some points, in the middle of all that lie as low.
fn lowest_point(points: impl Iterator<Item = Point> + Clone) -> Point {
    let least = points.clone().map(|point| point.y).fold(f64::INFINITY, f64::min);
    let low: Vec<_> = points.filter(|point| point.y < least + LEVEL).map(|point| point.x).collect();
    let Some((first, last)) = low.first().zip(low.last()) else { return Point::ORIGIN };
    Point::new(first.midpoint(*last), least)
}
