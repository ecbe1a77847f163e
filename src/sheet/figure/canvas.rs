//! Where and with what a figure is drawn.

use crate::art::Stencils;
use crate::design::Design;
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

/// What everything that draws a figure needs: its frame on the page, and the page's stencils, which are of a design.
#[derive(Clone, Copy)]
pub struct Canvas<'a> {
    /// Where the figure comes on the page.
    pub frame: Frame,
    /// With what it is drawn.
    pub stencils: &'a Stencils<'a>,
}

impl<'a> Canvas<'a> {
    /// A figure in a frame, drawn with a page's stencils.
    #[must_use]
    pub const fn new(frame: Frame, stencils: &'a Stencils<'a>) -> Self {
        Self { frame, stencils }
    }

    /// The design that is drawn.
    #[must_use]
    pub const fn design(&self) -> &'a Design {
        self.stencils.design()
    }

    /// A point of the figure on the page.
    #[must_use]
    pub fn page(&self, point: Point) -> Point {
        self.frame.page(point)
    }

    /// Page mm for each mm of the piece.
    #[must_use]
    pub const fn scale(&self) -> f64 {
        self.frame.scale
    }
}
