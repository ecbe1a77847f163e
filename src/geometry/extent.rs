//! Upright boxes.

use super::Point;

/// An upright box, by the corners of least and most x and y: lower left and upper right in a drape, upper
/// left and lower right on a page.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extent {
    /// Least x and y.
    pub low: Point,
    /// Most x and y.
    pub high: Point,
}

impl Extent {
    /// The box with nothing in it but a point.
    #[must_use]
    pub const fn at(point: Point) -> Self {
        Self { low: point, high: point }
    }

    /// The smallest box round points; nothing where there are none.
    pub fn of(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        points.into_iter().map(Self::at).reduce(Self::and)
    }

    /// The smallest box round both.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            low: Point::new(self.low.x.min(other.low.x), self.low.y.min(other.low.y)),
            high: Point::new(self.high.x.max(other.high.x), self.high.y.max(other.high.y)),
        }
    }

    /// Widened on every side.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        Self { low: self.low - Point::new(by, by), high: self.high + Point::new(by, by) }
    }

    /// Moved by a displacement.
    #[must_use]
    pub fn moved(self, by: Point) -> Self {
        Self { low: self.low + by, high: self.high + by }
    }

    /// The point of the box nearest to one.
    #[must_use]
    pub fn nearest(&self, point: Point) -> Point {
        Point::new(point.x.max(self.low.x).min(self.high.x), point.y.max(self.low.y).min(self.high.y))
    }

    /// What of it another holds; where they are apart, the edge or corner of the other that is nearest.
    #[must_use]
    pub fn within(self, other: Self) -> Self {
        Self { low: other.nearest(self.low), high: other.nearest(self.high) }
    }

    /// Its four corners, one after another.
    #[must_use]
    pub const fn corners(&self) -> [Point; 4] {
        let (low, high) = (self.low, self.high);
        [low, Point::new(high.x, low.y), high, Point::new(low.x, high.y)]
    }

    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Point {
        self.low.between(self.high, 0.5)
    }

    /// Whether two boxes have a place in common.
    #[must_use]
    pub fn meets(&self, other: Self) -> bool {
        let apart = self.high.x < other.low.x || other.high.x < self.low.x;
        !apart && self.high.y >= other.low.y && other.high.y >= self.low.y
    }

    /// Its width, in mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.high.x - self.low.x
    }

    /// Its height, in mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.high.y - self.low.y
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn boxes_meet_where_they_share_a_place() {
        let one = Extent { low: Point::new(0.0, 0.0), high: Point::new(2.0, 1.0) };
        let moved = |x: f64, y: f64| one.meets(one.moved(Point::new(x, y)));
        assert!(moved(2.0, 0.0) && moved(-1.0, 0.5) && moved(0.0, -1.0));
        assert!(!moved(2.1, 0.0) && !moved(0.0, 1.1) && !moved(-2.1, -1.1));
    }

    #[test]
    fn a_box_holds_its_points_and_grows_to_others() {
        let points = [Point::new(1.0, 5.0), Point::new(-2.0, 3.0), Point::new(0.0, 4.0)];
        let extent = Extent::of(points).expect("there are points");
        assert_eq!((extent.low, extent.high), (Point::new(-2.0, 3.0), Point::new(1.0, 5.0)));
        assert_eq!((extent.width(), extent.height(), extent.middle()), (3.0, 2.0, Point::new(-0.5, 4.0)));
        assert_eq!(extent.and(Extent::at(Point::ORIGIN)).low, Point::new(-2.0, 0.0));
        assert_eq!(extent.grown(1.0).nearest(Point::new(9.0, 0.0)), Point::new(2.0, 2.0));
        assert!(extent.corners().iter().all(|corner| extent.nearest(*corner) == *corner));
        assert_eq!(Extent::of([]), None);
    }
}
