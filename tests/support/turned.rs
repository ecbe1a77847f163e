//! A small move of a chain.

use festoon::drape::hang::Link;
use festoon::geometry::Point;

/// The joints of links, one of which is turned about its start and the next two of which follow, all as long as they are;
/// nothing where they do not reach.
pub fn turned(links: &[Link], joints: &[Point], at: usize, turn: f64) -> Option<Vec<Point>> {
    let mut moved = joints.to_vec();
    let first = joints[at] + (joints[at + 1] - joints[at]).turned(turn);
    let gap = joints[at + 3] - first;
    let (far, near) = (links[at + 1].length, links[at + 2].length);
    let along = (gap.x * gap.x + gap.y * gap.y + far * far - near * near) / (2.0 * gap.length());
    let square = far * far - along * along;
    if square < 0.0 {
        return None;
    }
    let unit = gap * (1.0 / gap.length());
    let side = Point::new(-unit.y, unit.x) * square.sqrt();
    let corners = [first + unit * along + side, first + unit * along - side];
    let nearer =
        corners.into_iter().min_by(|a, b| a.distance(joints[at + 2]).total_cmp(&b.distance(joints[at + 2])))?;
    (moved[at + 1], moved[at + 2]) = (first, nearer);
    Some(moved)
}
