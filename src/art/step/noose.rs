//! Cord round a ring: tied back on itself, and a fold that is hitched.

use crate::art::pen::{PLAIN, arrow, at, breadth, cord, cord_over, legs_over, stretch, tails, wire};
use crate::geometry::Point;
use crate::paint::mark::{Mark, Segment};
use crate::paint::outline::{circle, curve};

/// One cord, or both legs of a doubled one, through a ring and back: the end turns twice about the standing part, back
/// towards the ring, and goes out through both turns.
pub fn tied_back(count: u8) -> Vec<Mark> {
    let Noose { way, out } = Noose::of(breadth(count));
    let mut marks = tails(&way, count);
    marks.extend(ring(at(3.6, 9.0)));
    marks.extend(legs_over(&stretch(&way, 0, 4), count));
    marks.extend(
        [[17, 20], [8, 10], [13, 15]].iter().flat_map(|[from, to]| legs_over(&stretch(&way, *from, *to), count)),
    );
    let below = out + 0.5 * breadth(count) + 2.0;
    marks.extend(arrow(&[at(19.6, below), at(23.4, below)]));
    marks
}

/// What the loop goes round.
pub fn ring(middle: Point) -> Vec<Mark> {
    wire(&circle(middle, 3.1))
}

/// The way of what is tied back: from the right round the ring (its piece 4), back below, in front of the standing part up
/// (8 to 10), behind it down, so once more (13 to 15), and out (from 17).
struct Noose {
    way: Vec<Segment>,
    /// Where it goes out.
    out: f64,
}

impl Noose {
    /// Of something so broad.
    fn of(broad: f64) -> Self {
        let stands = 8.0 - broad;
        let out = stands + broad + 0.25;
        let (top, foot) = (stands - 0.5 * broad - 1.5, out + 0.5 * broad + 1.5);
        let (back, middle) = (foot + broad + 0.3, stands.midpoint(out));
        let [far, near] = [16.8, 14.6 - broad];
        let turn = |x: f64| [at(x + 0.8, foot), at(x + 0.1, middle), at(x - 0.7, top)];
        let down = |x: f64| [at(x - 1.5, stands), at(x - 1.7, out)];
        let points = [
            vec![at(23.2, stands), at(16.0, stands), at(9.4, stands), at(6.0, stands + 0.4), at(3.9, 9.2)],
            vec![at(5.6, back - 0.6), at(9.4, back), at(far - 1.8, back)],
            turn(far).to_vec(),
            down(far).to_vec(),
            turn(near).to_vec(),
            vec![at(near - 1.7, stands), at(near - 1.5, out), at(near + 0.6, out), at(19.4, out), at(22.2, out + 0.7)],
        ];
        Self { way: curve(&points.concat()), out }
    }
}

/// A folded cord about a ring: its legs come out of the ring over its near side, from behind which
/// the fold comes round and lies across them.
pub fn larks_head() -> Vec<Mark> {
    let (middle, inside, fold) = (9.0, 8.2, 13.6);
    let leg = |side: f64| {
        let y = |off: f64| middle + side * off;
        curve(&[
            at(23.4, y(0.8)),
            at(17.0, y(0.8)),
            at(10.4, y(0.8)),
            at(inside, y(1.3)),
            at(8.0, y(2.3)),
            at(8.6, y(3.0)),
        ])
    };
    let half = [at(inside, middle - 2.7), at(9.4, middle - 3.3), at(11.6, middle - 3.2), at(fold - 0.5, middle - 1.9)];
    let other = half.iter().rev().map(|point| at(point.x, 2.0 * middle - point.y));
    let way = curve(&half.into_iter().chain([at(fold, middle)]).chain(other).collect::<Vec<_>>());
    let mut marks = cord(&way, PLAIN);
    marks.extend(wire(&circle(at(5.4, middle), 4.8)));
    marks.extend([-1.0, 1.0].into_iter().flat_map(|side| cord_over(&leg(side), PLAIN)));
    marks.extend(cord_over(&stretch(&way, 3, 5), PLAIN));
    marks.extend(arrow(&[at(18.6, 5.6), at(20.8, 5.6), at(23.4, 5.6)]));
    marks
}
