//! Rounds of the program until loops on a body lie still.

use super::super::contact::Unrest;
use super::super::program::Row;
use super::loops::Loops;
use super::rows::contacts;
use super::skin::Skin;
use crate::geometry::Point3;

/// Rounds after which what was found is taken.
const ROUNDS: u32 = 40;
/// The pull to the present place at first, the faintest and the strongest, in mean weights of a joint per mm. It is
/// doubled where a round goes back on the last one's way, and halved where it goes on.
const PULL: f64 = 0.06;
const FAINT: f64 = 1e-4;
const STRONG: f64 = 1.0;

/// When loops lie still: no joint moves farther, in mm, and nothing lies deeper in anything else.
#[derive(Clone, Copy, Debug)]
pub struct Still {
    pub moves: f64,
    pub overlap: f64,
}

/// How far each joint went in a round.
struct Steps(Vec<Point3>);

impl Steps {
    fn new(loops: &Loops, places: &[[f64; 3]]) -> Self {
        Self(places.iter().enumerate().map(|(node, place)| Point3::from(*place) - loops.at(node)).collect())
    }

    fn farthest(&self) -> f64 {
        self.0.iter().map(|step| step.length()).fold(0.0, f64::max)
    }

    /// How far these go on where others went, as a share of those.
    fn along(&self, before: &Self) -> f64 {
        let square: f64 = before.0.iter().map(|step| step.dot(*step)).sum();
        let dot: f64 = self.0.iter().zip(&before.0).map(|(one, other)| one.dot(*other)).sum();
        dot / square.max(f64::MIN_POSITIVE)
    }
}

/// Lays loops down on a body; how many rounds that took.
///
/// # Errors
/// What is left where they come to no rest; they are then where the last round found them.
pub fn settle(loops: &mut Loops, skin: &Skin, still: Still) -> Result<u32, Unrest> {
    let (mut pull, mut last): (f64, Option<Steps>) = (PULL, None);
    for rounds in 1..=ROUNDS {
        let rows: Vec<Row<3>> = contacts(loops, skin, last.as_ref().map_or(f64::INFINITY, Steps::farthest));
        let Some(round) = loops.net.solve(&rows, pull) else { return Err(Unrest::Lost { rounds }) };
        let overlap = rows.iter().map(|row| -row.gap).fold(0.0, f64::max);
        let steps = Steps::new(loops, &round.places);
        if rounds == ROUNDS {
            return Err(Unrest::Left { rounds, overlap, imbalance: loops.net.imbalance(&rows, &round) });
        }
        loops.net.go(&round.places);
        if steps.farthest() < still.moves && overlap < still.overlap {
            return Ok(rounds);
        }
        let swings = last.as_ref().is_some_and(|last| steps.along(last) < 0.0);
        pull = (pull * if swings { 2.0 } else { 0.5 }).clamp(FAINT, STRONG);
        last = Some(steps);
    }
    Err(Unrest::Lost { rounds: ROUNDS })
}
