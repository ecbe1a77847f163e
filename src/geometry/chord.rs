//! What a closed row consists of, see [`taut`](super::taut).

use super::Point;
use super::nose::Nose;
use super::passage::Gate;

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
    /// How far the cord can lie off the hole's axis.
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

    /// Where the cord passes it, its centre and the angle of its axis given: through both mouths of a bead's hole, and
    /// through the centre of anything else.
    pub(super) fn gates(&self, centre: Point, axis: f64) -> Vec<Gate> {
        let (along, across) = (Point::towards(axis), Point::towards(axis).left());
        let Some(body) = self.body else { return vec![Gate { at: centre, across, play: 0.0 }] };
        let mouth = |off: f64| Gate { at: centre + along * off, across, play: body.play };
        vec![mouth(-self.before), mouth(self.after)]
    }
}
