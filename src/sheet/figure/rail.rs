//! The rail over which hangs what is open in front: as broad as the neck, seen from its end.

use crate::drape::{Hung, Joint, fall};
use crate::geometry::{Extent, Point};
use crate::paint::mark::{Fill, Mark, Rgb};
use crate::paint::{outline, style};

use super::{Canvas, LEVEL};

/// Its height in mm, and how far its corners are rounded.
const SIZE: [f64; 2] = [6.0, 2.0];
/// Its colour.
const WOOD: Rgb = Rgb(0xee, 0xec, 0xe8);

/// The rail below a piece that lies over it, as its first strand does.
pub fn rail(first: &Hung, canvas: Canvas<'_>) -> Option<Mark> {
    let joints = fall::falls(canvas.design()).then_some(&first.joints)?;
    let Extent { low, high } = Extent::of(on_top(joints))?;
    let (corner, width) = (canvas.page(Point::new(low.x, high.y)), (high.x - low.x) * canvas.scale());
    let [height, round] = SIZE.map(|size| size * canvas.scale());
    let stroke = Some(style::RULE_HAIRLINE);
    let outline = outline::rounded_rect(corner, width, height, round);
    (width > 2.0 * round).then_some(Mark::Shape { outline, fill: Some(Fill::Flat(WOOD, 1.0)), stroke })
}

/// The highest joints.
fn on_top(joints: &[Joint]) -> impl Iterator<Item = Point> {
    let top = joints.iter().map(|joint| joint.at.y).fold(f64::NEG_INFINITY, f64::max);
    joints.iter().map(|joint| joint.at).filter(move |at| top - at.y < LEVEL)
}
