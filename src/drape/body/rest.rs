//! Rounds of the program until loops on a body lie still.
//!
//! **Rest.** A round's tensions and pushes balance all weights but for its pull to the place from which it started, along ties
//! and contacts as they lay there. So they are asked again where the joints then are: each along its tie as it now lies, or
//! straight away from what it touches there ([`Contacts::anew`]). What they leave of any joint's balance is to be less than a
//! thousandth of a joint's mean weight, however strong the pull and however short the step; and there nothing overlaps.
//!
//! **What that leaves.** A loop that turns on itself does so with next to no work: so small a force may then lead it far, which
//! the least step that counts bounds as well.

use super::super::contact::Unrest;
use super::super::program::{Net, Node};
use super::constraints::Contacts;
use super::loops::{Loops, Precedence};
use super::skin::Surface;
use crate::geometry::Point3;

/// Rounds after which what was found is taken, those of strands that may cross, which roll on one another a long way, and the
/// fewest that are tried.
const ROUNDS: u32 = 40;
const CROSSING: u32 = 120;
const LEAST: u32 = 4;
/// Strands beside one another that lie in one another by more than this, in mm, and no less deep than by this share of what they did so many rounds
/// before, have no room.
const DEEP: f64 = 1.0;
const LESS: f64 = 0.9;
const PATIENCE: u32 = 10;
/// Work that is spent on one settling, in joints times the square of strands: a round factors a matrix as broad as the strands
/// that lie beside one another. About 2 s.
pub const WORK: usize = 800_000;
/// The pull to the present place at first, that where all lies nearly still, the faintest, that of strands that may cross, which
/// a far step would lead through one another, and the strongest, in mean weights of a joint per mm. It is made four times as
/// strong where a round goes back on the last one's way by more than a share of it, and halved where it goes on.
pub const PULL: f64 = 0.06;
pub const NEARLY: f64 = 0.008;
const FAINT: f64 = 1e-3;
const HELD: f64 = 0.01;
const STRONG: f64 = 1.0;
const BACK: f64 = -0.3;

/// Loops that turn on themselves, and bars that lean, move without any work: they rest when a round lifts or lowers all
/// weights together, what is bent counted, by less than this, in mm.
const RISES: f64 = 1e-5;
/// A round that takes no joint as far as this, in mm, is the solver's rounding, which stiff cord answers with a force.
const ROUNDING: f64 = 1e-5;

/// When loops lie still.
#[derive(Clone, Copy, Debug)]
pub struct Still {
    /// No joint moves farther in a round, in mm.
    pub moves: f64,
    /// Nothing lies deeper in anything else, nor is any bar's joint farther from where it holds it, in mm.
    pub overlap: f64,
    /// Nor is more left of any joint's balance, in mean weights of a joint, where a round is not rounding.
    pub forces: f64,
    /// The pull to the present place in the first round, in mean weights of a joint per mm.
    pub pull: f64,
    /// Whether rounds are solved roughly, as what follows is laid from there.
    pub is_rough: bool,
}

/// How far each joint went in a round.
struct Moves(Vec<Point3>);

impl Moves {
    fn new(loops: &Loops, places: &[[f64; 3]]) -> Self {
        Self(places.iter().enumerate().map(|(node, place)| Point3::from(*place) - loops.at(node)).collect())
    }

    fn farthest(&self) -> f64 {
        self.0.iter().map(|step| step.length()).fold(0.0, f64::max)
    }

    /// How far all weights together rose, in mm.
    fn rises(&self, loops: &Loops) -> f64 {
        let rise = |(step, node): (&Point3, &Node<3>)| -step.dot(node.down.into()) * node.weight;
        self.0.iter().zip(&loops.net.nodes).map(rise).sum::<f64>() / loops.net.weight()
    }

    /// How far these go on where others went, as a share of those.
    fn along(&self, before: &Self) -> f64 {
        let square: f64 = before.0.iter().map(|step| step.dot(*step)).sum();
        let dot: f64 = self.0.iter().zip(&before.0).map(|(one, other)| one.dot(*other)).sum();
        dot / square.max(f64::MIN_POSITIVE)
    }
}

/// How many rounds are tried, and the faintest pull in them.
fn limits(loops: &Loops, most: usize) -> (u32, f64) {
    let work = loops.net.nodes.len() * loops.strands.len().pow(2);
    let (rounds, faint) = if loops.order == Precedence::Over { (CROSSING, HELD) } else { (ROUNDS, FAINT) };
    (((most / work.max(1)) as u32).clamp(LEAST, rounds), faint)
}

/// How deep what is laid still lies in anything else.
struct Depths {
    /// The least so far, in mm.
    least: f64,
    /// The round in which that became much less.
    since: u32,
}

impl Depths {
    /// Takes that of a round; whether there is no hope of less.
    fn are_hopeless(&mut self, round: u32, overlap: f64) -> bool {
        if overlap < LESS * self.least {
            *self = Self { least: overlap, since: round };
        }
        overlap > DEEP && round >= self.since + PATIENCE
    }
}

/// Lays loops down on a body, with so much [work](WORK); the tension of each tie in N.
///
/// # Errors
/// What is left where they come to no rest; they are then where the last round found them.
pub fn settle(loops: &mut Loops, skin: &impl Surface, still: Still, work: usize) -> Result<Vec<f64>, Unrest> {
    let (mut pull, mut last, mut rounds): (f64, Option<Went>, u32) = (still.pull, None, 0);
    let ((most, faint), mut depths) = (limits(loops, work), Depths { least: f64::INFINITY, since: 0 });
    loop {
        let moves = last.as_ref().map_or(f64::INFINITY, |last| last.moves.farthest());
        let contacts = Contacts::new(loops, skin, moves);
        let overlap = contacts.overlap().max(loops.off());
        if let Some(last) = last.take_if(|last| last.rests && overlap < still.overlap) {
            return Ok(last.tensions);
        }
        if rounds == most || loops.order == Precedence::Beside && depths.are_hopeless(rounds, overlap) {
            return Err(Unrest::Left { rounds, overlap, moves });
        }
        rounds += 1;
        loops.open();
        let Some(went) = Went::new(loops, skin, &contacts, pull, still) else { return Err(Unrest::Lost { rounds }) };
        let along = last.as_ref().map_or(0.0, |last| went.moves.along(&last.moves));
        pull = stepped(pull, along).clamp(faint, STRONG);
        last = Some(went);
    }
}

/// The pull after a round that went on by a share of the last one's way.
fn stepped(pull: f64, along: f64) -> f64 {
    if along < BACK {
        4.0 * pull
    } else if along < 0.0 {
        pull
    } else {
        0.5 * pull
    }
}

/// Where a round led.
struct Went {
    moves: Moves,
    tensions: Vec<f64>,
    /// Whether all lies still there.
    rests: bool,
}

impl Went {
    /// Takes loops where a round finds them; nothing where it finds no place.
    fn new(loops: &mut Loops, skin: &impl Surface, contacts: &Contacts, pull: f64, still: Still) -> Option<Self> {
        let solve = if still.is_rough { Net::solve_roughly } else { Net::solve };
        let round = solve(&loops.net, &contacts.constraints, pull)?;
        let (moves, bent) = (Moves::new(loops, &round.places), loops.net.bent());
        loops.go(&round.places);
        loops.presses = contacts.presses(loops, &round.forces);
        let rises = moves.rises(loops) + (loops.net.bent() - bent) / loops.net.weight();
        let far = moves.farthest();
        let is_still = far < still.moves || rises.abs() < RISES;
        let is_pressed_anew = loops.press(&round);
        let forces = || contacts.anew(loops, skin).map_or(f64::INFINITY, |anew| loops.net.imbalance(&anew, &round));
        let is_balanced = || far < ROUNDING || still.forces.is_infinite() || forces() <= still.forces;
        let rests = !is_pressed_anew && is_still && is_balanced();
        Some(Self { moves, tensions: round.tensions, rests })
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::TAU;

    use super::super::super::hang::Link;
    use super::super::loops::{Straight, StrandPieces, halved};
    use super::super::way::Way;
    use super::*;

    const RESTS: Still = Still { moves: 1e-3, overlap: 1e-3, forces: 1e-3, pull: PULL, is_rough: false };

    /// An upright cone about the y axis, its tip at the origin, of a half angle.
    struct Cone(f64);

    impl Surface for Cone {
        fn at(&self, place: Point3) -> (f64, Point3) {
            let (sin, cos) = libm::sincos(self.0);
            let round = libm::hypot(place.x, place.z);
            let out = Point3::new(place.x / round, 0.0, place.z / round);
            let normal = out * cos + Point3::new(0.0, sin, 0.0);
            (place.dot(normal), normal)
        }
    }

    /// A plane through the origin that leans back from upright by an angle.
    struct Slope(f64);

    impl Surface for Slope {
        fn at(&self, place: Point3) -> (f64, Point3) {
            let (sin, cos) = libm::sincos(self.0);
            let normal = Point3::new(0.0, sin, cos);
            (place.dot(normal), normal)
        }
    }

    /// A round bar along x, of a radius.
    struct Peg(f64);

    impl Surface for Peg {
        fn at(&self, place: Point3) -> (f64, Point3) {
            let far = libm::hypot(place.y, place.z);
            (far - self.0, Point3::new(0.0, place.y / far, place.z / far))
        }
    }

    fn pieces(count: usize, length: f64, weight: f64) -> Vec<Straight> {
        let link = Link { length: length / count as f64, weight: weight / count as f64, centre: 0.5 };
        vec![Straight::new(link, 0.0); count]
    }

    /// A loop of a chain along a closed way, most of it strand and some closure.
    fn closed(count: usize, length: f64, weight: f64, place: impl Fn(f64) -> Point3) -> Loops {
        let share = |part: f64, of: usize| pieces(of, length * part, weight * part);
        let closing = halved(share(0.1, count / 10));
        let strand = StrandPieces { pieces: share(0.9, count - count / 10), aside: 0.0 };
        let places = (0..=count).map(|at| place(at as f64 / count as f64)).collect();
        let way = Way::new(places, (0..count).map(|_| length / count as f64));
        Loops::new(&[strand], &closing, &[way])
    }

    /// Statics, as in any textbook: in a loop round a smooth upright cone of half angle a the tension is
    /// W cot a / 2 pi. By virtual work: let it down by dy, and it must lengthen by 2 pi tan a dy.
    #[test]
    fn a_loop_round_a_cone_carries_its_weight_by_tension() {
        for angle in [0.3, 0.6, 0.9] {
            let (length, weight) = (300.0, 0.2);
            let round = |share: f64| {
                let (sin, cos) = libm::sincos(TAU * share);
                Point3::new(-55.0 * sin, -40.0, -55.0 * cos)
            };
            let mut loops = closed(120, length, weight, round);
            let tensions = settle(&mut loops, &Cone(angle), RESTS, WORK).unwrap();
            let expected = weight / (TAU * libm::tan(angle));
            for tension in tensions {
                assert!((tension / expected - 1.0).abs() < 2e-3, "{angle}: {tension} is not {expected}");
            }
        }
    }

    /// Rest is told by what is left of forces alone, however far the last round went: the tension is then as true as they are.
    #[test]
    fn what_is_in_balance_rests_however_far_it_went() {
        let (angle, length, weight) = (0.6, 300.0, 0.2);
        let oval = |share: f64| {
            let (sin, cos) = libm::sincos(TAU * share);
            Point3::new(-45.0 * sin, -60.0, -65.0 * cos)
        };
        for pull in [PULL, STRONG] {
            let mut loops = closed(120, length, weight, oval);
            let still = Still { moves: f64::INFINITY, pull, ..RESTS };
            let tensions = settle(&mut loops, &Cone(angle), still, WORK).unwrap();
            let expected = weight / (TAU * libm::tan(angle));
            // A joint bears 0.02 of the tension.
            let off = tensions.iter().map(|tension| (tension / expected - 1.0).abs()).fold(0.0, f64::max);
            assert!(off < 2e-3, "pulled by {pull}, tensions are {off} off");
        }
    }

    /// A ring that is bent alike all round holds no force across itself, so that nothing of what a cone carries is taken from
    /// its tension, however stiff it is: the balance of a piece of it with the push of the cone on it alone.
    #[test]
    fn a_stiff_loop_round_a_cone_is_in_the_same_tension() {
        let (angle, length, weight) = (0.6, 300.0, 0.2);
        let round = |share: f64| {
            let (sin, cos) = libm::sincos(TAU * share);
            Point3::new(-55.0 * sin, -40.0, -55.0 * cos)
        };
        let mut loops = closed(120, length, weight, round);
        let (count, closing) = (loops.net.ties.len(), loops.strands[0].len() - 1);
        loops.rods.iter_mut().for_each(|rod| rod.stiffness = 400.0);
        loops.cords = vec![(0..count).chain([0]).collect()];
        loops.bend();
        assert!(loops.net.bends.iter().any(|bend| bend.links == [closing - 1, closing]));
        // Bent as it is, it holds as much as its weight by 20 mm.
        let tensions = settle(&mut loops, &Cone(angle), RESTS, WORK).unwrap();
        let expected = weight / (TAU * libm::tan(angle));
        for tension in tensions {
            assert!((tension / expected - 1.0).abs() < 5e-3, "{tension} is not {expected}");
        }
    }

    /// Statics, as in any textbook: on a smooth slope a chain hangs in the catenary that it would hang in upright,
    /// its weight less by the sine of the slope. The upright one is the plane solver's, which is met by tables.
    #[test]
    fn on_a_slope_a_chain_hangs_as_if_upright() {
        for stiffness in [0.0, 2.0, 10.0] {
            hangs_as_if_upright(stiffness);
        }
    }

    fn hangs_as_if_upright(stiffness: f64) {
        let (span, length, weight, tilt) = (120.0, 300.0, 0.1, 0.5);
        let stiff = |piece: &Straight| Straight { stiffness, ..*piece };
        let strand = StrandPieces { pieces: pieces(100, length, weight).iter().map(stiff).collect(), aside: 0.0 };
        let (sin, cos) = libm::sincos(tilt);
        let on = |x: f64, down: f64| Point3::new(x, -down * cos, down * sin);
        let corners = vec![on(0.0, 0.0), on(-0.5 * span, 0.0), on(0.0, 135.0), on(0.5 * span, 0.0), on(0.0, 0.0)];
        let way = Way::new(corners, [0.5 * span, 0.5 * length, 0.5 * length, 0.5 * span].into_iter());
        let mut loops = Loops::new(&[strand], &halved(pieces(1, span, 0.0)), &[way]);
        for node in [loops.closing[0], loops.closing[2]] {
            loops.net.nodes[node].held = [true; 3];
        }
        let tensions = settle(&mut loops, &Slope(tilt), RESTS, WORK).unwrap();
        let links = vec![Link { length: length / 100.0, weight: weight / 100.0 * cos, centre: 0.5 }; 100];
        let end = crate::geometry::Point::new(span, 0.0);
        let upright = super::super::super::hang::solve_stiff(&links, &[stiffness; 100], end).unwrap();
        // The first link's own weight acts in its middle there, and at its joints here.
        let pull = crate::geometry::Point::new(upright.across, upright.up + 0.5 * links[0].weight);
        let first = pull.dot(upright.directions[0]);
        assert!((tensions[0] / first - 1.0).abs() < 1e-3, "{} {first}", tensions[0]);
        for (node, joint) in loops.strands[0].iter().zip(&upright.joints) {
            let away = loops.at(*node).distance(on(joint.x - 0.5 * span, -joint.y));
            assert!(away < 0.05, "{stiffness}: {away} mm from the catenary");
        }
    }

    /// Statics, as in any textbook: along a smooth chain over a peg the tension changes by the weight of a unit of
    /// length times the height; so both sides of a loop over a small peg are catenaries of one directrix, or where
    /// it hangs straight down, plumb.
    #[test]
    fn over_a_peg_tension_changes_with_height() {
        let (length, weight) = (200.0, 0.1);
        let oval = |share: f64| {
            let (sin, cos) = libm::sincos(TAU * share);
            Point3::new(0.0, -35.0 + 45.0 * cos, -9.0 * sin)
        };
        let mut loops = closed(400, length, weight, oval);
        let tensions = settle(&mut loops, &Peg(8.0), RESTS, WORK).unwrap();
        let unit = weight / length;
        let height = |ends: [usize; 2]| loops.at(ends[0]).between(loops.at(ends[1]), 0.5).y;
        let directrix: Vec<f64> =
            loops.net.ties.iter().zip(&tensions).map(|(tie, tension)| height(tie.ends) - tension / unit).collect();
        let (low, high) =
            directrix.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(*at), high.max(*at)));
        // Links of 0.5 mm turn by a sixteenth on the peg, so that the pulls of two are off a push between them by an eighth of
        // its square, and no joint's balance by more than a thousandth of its weight.
        assert!(high - low < 2e-3 * length, "directrices from {low} to {high}");
    }
}
