//! What a closed row consists of, see [`taut`](super::taut). Lengths are mm.

use super::Point;
use super::nose::Nose;

/// Something rigid in the row, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chord {
    /// From its start to its centre along the strand.
    pub before: f64,
    /// From its centre to its end.
    pub after: f64,
    /// How far it reaches inward from its centre.
    pub inward: f64,
    /// Its outline, where it has rims by which it keeps its neighbours off.
    pub body: Option<Profile>,
}

/// The outline of a bead in the plane of a ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Profile {
    /// Its start and its end.
    pub noses: [Nose; 2],
    /// The radius of its hole.
    pub hole: f64,
    /// How far the cord can lie off the hole's axis.
    pub play: f64,
}

impl Chord {
    /// One whose centre is its middle, without rims.
    #[must_use]
    pub fn even(length: f64, inward: f64) -> Self {
        Self { before: 0.5 * length, after: 0.5 * length, inward, body: None }
    }

    /// How far the cord keeps from a limb on which it lies, drawn to the inner side of a bead's hole.
    pub(super) fn cord_inward(&self) -> f64 {
        self.inward - self.body.map_or(0.0, |body| body.play)
    }

    /// Its centre where the cord enters it at a place and goes on along a way, anticlockwise about a limb of a radius:
    /// beside the cord as far as it must lie to keep off the limb.
    pub(super) fn centre(&self, enters: Point, way: Point, radius: f64) -> Point {
        if self.body.is_none() {
            return enters;
        }
        let along = Point::towards(way.angle());
        let on_cord = enters + along * self.before;
        on_cord - along.left() * self.aside(on_cord, radius)
    }

    /// How far outward of a place of its cord its axis lies, to keep off a limb of a radius about the origin.
    pub(super) fn aside(&self, on_cord: Point, radius: f64) -> f64 {
        let play = self.body.map_or(0.0, |body| body.play);
        (radius + self.inward - on_cord.length()).clamp(0.0, play)
    }
}

/// A chord and the next.
#[derive(Clone, Copy)]
pub(super) struct ChordPair<'a> {
    pub one: &'a Chord,
    pub other: &'a Chord,
}

impl ChordPair<'_> {
    /// How much cord lies bare between their mouths, so that they just touch, where the cord bends by so much at the one's
    /// mouth and at the other's, and their axes lie so far outward of it. Nothing between what are not both beads. It is
    /// one step nearer (Newton's) than a gap to begin from.
    pub(super) fn gap(&self, [bend, next]: [f64; 2], [aside, beside]: [f64; 2], from: f64) -> f64 {
        let bodies = self.one.body.zip(self.other.body).filter(|_| bend > 0.0 || next > 0.0);
        let Some((one, other)) = bodies else { return 0.0 };
        let noses = [one.noses[1].beside(other.hole), other.noses[0].beside(one.hole)];
        // In a straight row they touch where they are packed.
        let straight = self.one.after + self.other.before;
        let packed = noses[0].reach(0.0) + noses[1].reach(0.0) - straight;
        let (turn, along) = (bend + next, Point::towards(-bend));
        let mouth = Point::new(self.one.after, -aside);
        let beyond = Point::new(self.other.before, beside).turned(-turn);
        let parted = noses[0].parted(&noses[1], mouth + along * from + beyond, turn);
        let missing = (parted.by + packed) / along.dot(parted.across).max(0.1);
        (from - missing).max(0.0)
    }
}
