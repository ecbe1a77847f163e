//! What a closed row consists of, see [`taut`](super::taut).

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
    pub body: Option<Body>,
}

/// The outline of a bead in the plane of a ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Its start and its end.
    pub noses: [Nose; 2],
    /// The radius of its hole.
    pub hole: f64,
    /// How far the cord lies inward of its axis, drawn to the inner side of the hole.
    pub play: f64,
}

impl Chord {
    /// One whose centre is its middle, without rims.
    #[must_use]
    pub fn even(length: f64, inward: f64) -> Self {
        Self { before: 0.5 * length, after: 0.5 * length, inward, body: None }
    }

    /// From its centre to the next one's in a straight row.
    pub(super) fn step(&self, next: &Self) -> f64 {
        self.after + next.before
    }

    /// The same where their axes lean so far from the line through the centres.
    pub(super) fn leaning(&self, next: &Self, leans: [f64; 2]) -> f64 {
        let parts =
            |(one, other): (Body, Body)| one.noses[1].beside(other.hole).parts(&other.noses[0].beside(one.hole), leans);
        self.step(next) + self.body.zip(next.body).map_or(0.0, parts)
    }

    /// How much more cord than in a straight row lies between its centre and the next one's, a step apart.
    pub(super) fn slack(&self, next: &Self, step: f64, [lean, leans]: [f64; 2]) -> f64 {
        let Some((one, other)) = self.body.zip(next.body) else { return 0.0 };
        let mouth = Point::new(self.after, -one.play).turned(lean);
        let next_mouth = Point::new(step, 0.0) + Point::new(-next.before, -other.play).turned(-leans);
        mouth.distance(next_mouth)
    }
}
