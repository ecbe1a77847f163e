//! How stiffly cord bends at the joints of a chain.
//!
//! **Equation.** Cord of stiffness B (E I, in N mm²) that turns by an angle t evenly along a length s holds the energy
//! B t² / 2 s. From the middle of a link a long to that of the next, b long, their joint has a hardness of
//! 1 / (a / 2 A + b / 2 B) for each radian: both halves in series. Equal links have the B / 2 l³ |x - 2 y + z|² of three joints
//! in a row. In a round of a program the turn is the difference of the links' ways, each by its length: its square is
//! convex. [`Turn`] makes it so much harder that its force is true for the angle as it lies, and takes out by how
//! much that energy would fall if links were shorter, so that tensions stay tensions. The stiffer cord is for its tension, the
//! less far a round goes: rounds are few for stringing wire, and many for rods.
//!
//! **Source.** Elastic beams, as in any textbook of mechanics; joints of unequal links are derived here.
//!
//! **Approximation.** Cord is a smooth line through loose beads: within a bead's hole it bends as it does between them. Drawn
//! are straight beads between joints.

/// A link shorter than this, in mm, has no direction of its own to bend from.
const SHORT: f64 = 0.01;

/// Cord that bends from one link to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// The two links: those between them are too short to count.
    pub links: [usize; 2],
    /// How hard it is to bend, in N mm for each radian.
    pub hardness: f64,
}

impl Bend {
    /// The same of links that follow so many others.
    pub fn on_from(self, count: usize) -> Self {
        Self { links: self.links.map(|link| link + count), ..self }
    }
}

/// Whether a link of a length has a direction.
pub fn is_long(length: f64) -> bool {
    length >= SHORT
}

/// The bends along links in a row, each of a length in mm and with cord of a stiffness in N mm²; where that is none, it
/// turns freely.
pub fn bends(links: impl Iterator<Item = (f64, f64)>) -> Vec<Bend> {
    let mut bends = Vec::new();
    let mut last: Option<(usize, f64)> = None;
    for (at, (length, stiffness)) in links.enumerate() {
        let half = (stiffness > 0.0).then(|| 0.5 * length / stiffness);
        if !is_long(length) {
            last = last.filter(|_| half.is_some());
            continue;
        }
        if let (Some((from, before)), Some(after)) = (last, half) {
            bends.push(Bend { links: [from, at], hardness: 1.0 / (before + after) });
        }
        last = half.map(|half| (at, half));
    }
    bends
}

/// A bend between two ways as they lie.
#[derive(Clone, Copy, Debug)]
pub struct Turn<const D: usize> {
    /// Their directions.
    pub ways: [[f64; D]; 2],
    /// From the one to the other, in radians.
    pub angle: f64,
    /// The hardness of which half times the square of their difference falls as it should when either turns.
    pub hardness: f64,
    /// By how much that falls for each share of its length by which either is shorter.
    pub along: f64,
}

impl<const D: usize> Turn<D> {
    pub fn new(hardness: f64, ways: [[f64; D]; 2]) -> Self {
        /// The sine of the sharpest turn that is told: one of all but half a turn is soon none.
        const SHARP: f64 = 0.1;
        let cosine: f64 = ways[0].iter().zip(ways[1]).map(|(one, other)| one * other).sum();
        let angle = libm::acos(cosine.clamp(-1.0, 1.0));
        let sine = libm::sin(angle);
        let hardness =
            if angle > SHARP { hardness * angle / sine.max(SHARP) } else { hardness * (1.0 + angle * angle / 6.0) };
        Self { ways, angle, hardness, along: hardness * (1.0 - cosine) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_links_bend_as_three_joints_do() {
        // B / 2 l³ |x - 2 y + z|² is B / 2 l of the unit vectors' difference squared: a hardness of B / l.
        let found = bends([(2.0, 3.0); 3].into_iter());
        let bend = |links| Bend { links, hardness: 1.5 };
        assert_eq!(found, [bend([0, 1]), bend([1, 2])]);
    }

    #[test]
    fn what_is_limp_turns_freely_and_what_has_no_length_bends_no_more() {
        let found =
            bends([(2.0, 3.0), (0.0, 3.0), (4.0, 3.0), (0.0, 0.0), (1.0, 3.0), (1.0, 0.0), (1.0, 3.0)].into_iter());
        assert_eq!(found, [Bend { links: [0, 2], hardness: 1.0 }]);
    }

    /// The angle t from one way to another holds k t² / 2: whoever turns one of them feels k t, and who shortens it nothing.
    #[test]
    fn a_turn_is_felt_aside_and_not_along() {
        for angle in [0.05_f64, 0.3, 1.2] {
            let way = |angle: f64| [libm::cos(angle), libm::sin(angle)];
            let turn = Turn::new(2.0, [way(0.0), way(angle)]);
            let energy = |way: [f64; 2]| {
                let half: f64 = way.iter().zip(turn.ways[0]).map(|(one, other)| 0.5 * (one - other).powi(2)).sum();
                let along: f64 = way.iter().zip(turn.ways[1]).map(|(one, other)| one * other).sum();
                turn.hardness * half - turn.along * along
            };
            let small = 1e-5;
            let aside = (energy(way(angle + small)) - energy(way(angle - small))) / (2.0 * small);
            assert!((aside / (2.0 * angle) - 1.0).abs() < 1e-4, "{aside} for {angle}");
            let [shorter, longer] =
                [1.0 - small, 1.0 + small].map(|length| energy(way(angle).map(|part| part * length)));
            assert!(((longer - shorter) / (2.0 * small)).abs() < 1e-8);
        }
    }

    /// An arc of radius R holds B / 2 R for each mm, however its length is parted: textbook.
    #[test]
    fn an_arc_holds_the_same_energy_however_it_is_parted() {
        let (radius, stiffness) = (50.0, 3.0);
        let lengths: Vec<f64> = (0..400).map(|at| [0.3, 0.7, 0.2, 1.1][at % 4]).collect();
        let mut before = 0.0;
        let middles: Vec<f64> = lengths
            .iter()
            .map(|length| {
                before += length;
                (before - 0.5 * length) / radius
            })
            .collect();
        let found = bends(lengths.iter().map(|length| (*length, stiffness)));
        let energy = |bend: &Bend| 0.5 * bend.hardness * (middles[bend.links[1]] - middles[bend.links[0]]).powi(2);
        let arc = (middles[399] - middles[0]) * radius;
        let expected = 0.5 * stiffness / (radius * radius) * arc;
        let held: f64 = found.iter().map(energy).sum();
        assert!((held / expected - 1.0).abs() < 1e-4, "{held} {expected}");
    }
}
