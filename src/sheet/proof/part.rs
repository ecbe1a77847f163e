//! The part of a drawing that lies in a page's room.

use crate::art::Stencils;
use crate::geometry::{Extent, Point};
use crate::paint::layout::Rect;
use crate::paint::mark::Mark;

/// Marks without those outside a room, cut off at its edges. Words that do not begin in the room are
/// left out.
pub fn part(marks: Vec<Mark>, room: Rect, stencils: &Stencils<'_>) -> Vec<Mark> {
    let marks = inside(marks, room, stencils);
    let within = Extent { low: room.corner(), high: Point::new(room.right(), room.bottom()) };
    if marks.is_empty() { marks } else { vec![Mark::Clipped { within, marks }] }
}

fn inside(marks: Vec<Mark>, room: Rect, stencils: &Stencils<'_>) -> Vec<Mark> {
    let keep = |mark: Mark| match mark {
        Mark::Group { role, marks } => {
            let marks = inside(marks, room, stencils);
            (!marks.is_empty()).then_some(Mark::Group { role, marks })
        }
        Mark::Text(text) => (room.top <= text.at.y && text.at.y <= room.bottom()).then_some(Mark::Text(text)),
        other => stencils.bounds(&other).is_some_and(|bounds| touches(room, bounds)).then_some(other),
    };
    marks.into_iter().filter_map(keep).collect()
}

fn touches(room: Rect, Extent { low, high }: Extent) -> bool {
    low.x < room.right() && high.x > room.left && low.y < room.bottom() && high.y > room.top
}
