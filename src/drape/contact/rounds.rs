//! Rounds of the program until strands in contact lie still.

use super::contacts::Contact;
use super::crowd::Crowd;
use super::program::{Round, Web};
use super::rope::Rope;
use super::{Press, Unrest};
use crate::geometry::Point;

/// Rounds after which the best place found is taken.
const ROUNDS: u32 = 20;
/// Rounds with smooth tubes at the most, which end when no joint moves farther than this, in mm.
const PARTING: u32 = 3;
const PARTED: f64 = 0.5;
/// Rounds end when no joint moves farther than this, in mm, or would in the next, and no outline lies deeper in another.
pub const STILL: f64 = 0.01;
/// Strands of which links hang slack so many rounds after they were parted have no room.
const PATIENCE: u32 = 3;
/// A link that is shorter by this share of its length is in no tension.
const TENSE: f64 = 1e-3;
/// The pull to the present place once rounds swing, and the strongest, in mean weights of a joint per mm.
const FAINT: f64 = 0.01;
const STRONG: f64 = 1.0;
/// Links times rounds that are spent on one piece, and shared by many variants of it: a round takes time and room in
/// proportion to its links.
pub const WORK: usize = 24_000;
/// Strands are not tried for fewer rounds than this.
const LEAST: usize = 10;
/// Forces below this share of all that hangs are rounding.
const TOUCH: f64 = 1e-6;

/// Where strands came to lie.
pub struct Found {
    /// The strands from the inmost out; none where they stay as they hang alone.
    pub ropes: Vec<Rope>,
    /// Tension of each strand's links, in N.
    pub tensions: Vec<Vec<f64>>,
    /// Where they press on one another, by their numbers from the inmost out.
    pub presses: Vec<Press<usize>>,
    pub rounds: u32,
    pub unrest: Option<Unrest>,
}

impl Found {
    /// Whether no place worth drawing was found.
    pub fn is_lost(&self) -> bool {
        matches!(self.unrest, Some(Unrest::Lost { .. }))
    }
}

/// A place that was tried, and how far it is from rest.
struct Tried {
    found: Found,
    far: f64,
}

/// Where a crowd comes to lie.
///
/// # Errors
/// The pairs that have no room beside one another.
pub fn settle(crowd: &Crowd, work: &mut usize) -> Result<Found, Vec<[usize; 2]>> {
    let mut ropes = crowd.ropes.clone();
    let links: usize = ropes.iter().map(|rope| rope.links.len()).sum();
    if links * LEAST > *work {
        return Ok(alone(Unrest::TooMany));
    }
    let (mut best, mut rounds): (Option<Tried>, u32) = (None, 0);
    let mut contacts = crowd.near(&ropes, true);
    let (mut pull, mut last, mut parted) = (0.0, f64::INFINITY, None);
    let (mut web, mut were_tense) = (Web::new(&ropes), true);
    for count in 1..=ROUNDS {
        let Some(round) = web.solve(&ropes, &contacts, pull, crowd.sided).filter(|_| *work >= links) else { break };
        *work -= links;
        rounds = count;
        let (from, moved) = (ropes.clone(), go(&mut ropes, &round.places));
        let before = web.clone();
        let slack: Vec<bool> = ropes.iter().map(|rope| !is_tense(rope)).collect();
        let tense = slack.iter().all(|slack| !slack);
        let moved = ropes.iter_mut().map(Rope::open).fold(moved, f64::max);
        web.go(&round, &ropes);
        let as_tubes = parted.is_none() && count < PARTING && moved > PARTED;
        let next = crowd.near(&ropes, as_tubes);
        if let Some(parted) = parted {
            if count - parted >= PATIENCE && !tense {
                return no_room(&ropes, &slack, &contacts, &round)
                    .map_or_else(|| Ok(alone(Unrest::Lost { rounds })), Err);
            }
            // Steps shrink alike from round to round: the next one is told by the last two.
            let rests = moved < STILL || count > parted + 1 && moved < last && moved * moved / last < STILL;
            if rests && deepest(&next, &web) < STILL && tense {
                return Ok(found(ropes, &contacts, round, count, None));
            }
            let overlap = deepest(&contacts, &before);
            let far = moved.max(overlap);
            if best.as_ref().is_none_or(|best| far < best.far) && were_tense {
                let imbalance = before.imbalance(&contacts, &round, crowd.sided);
                let unrest = Unrest::Left { rounds, overlap, imbalance };
                best = Some(Tried { found: found(from, &contacts, round, rounds, Some(unrest)), far });
            }
        }
        parted = parted.or((!as_tubes).then_some(count));
        pull = if moved > 0.5 * last { (4.0 * pull).clamp(FAINT, STRONG) } else { pull };
        (last, contacts, were_tense) = (moved, next, tense);
    }
    Ok(best.map_or_else(|| alone(Unrest::Lost { rounds }), |best| best.found))
}

/// Strands as they hang alone.
fn alone(unrest: Unrest) -> Found {
    Found { ropes: Vec::new(), tensions: Vec::new(), presses: Vec::new(), rounds: 0, unrest: Some(unrest) }
}

fn found(ropes: Vec<Rope>, contacts: &[Contact], round: Round, rounds: u32, unrest: Option<Unrest>) -> Found {
    let press = |(contact, force): (&Contact, &f64)| {
        let joints = &ropes[contact.strands[0]].joints;
        let station = joints[contact.link].station;
        let depth = station.min(joints.last().map_or(0.0, |last| last.station) - station);
        Press { between: contact.strands, station, depth, force: *force }
    };
    let presses = pressed(&ropes, contacts, &round).map(press).collect();
    Found { ropes, tensions: round.tensions, presses, rounds, unrest }
}

/// The contacts that press, each with its force.
fn pressed<'a>(
    ropes: &[Rope],
    contacts: &'a [Contact],
    round: &'a Round,
) -> impl Iterator<Item = (&'a Contact, &'a f64)> {
    let whole: f64 = ropes.iter().flat_map(Rope::weights).sum();
    contacts.iter().zip(&round.forces).filter(move |(_, force)| **force > TOUCH * whole)
}

/// Puts the joints where a round found them; how far the farthest went.
fn go(ropes: &mut [Rope], places: &[Vec<Point>]) -> f64 {
    let mut moved: f64 = 0.0;
    for (rope, places) in ropes.iter_mut().zip(places) {
        for (joint, place) in rope.joints.iter_mut().zip(places) {
            moved = moved.max(joint.at.distance(*place));
            joint.at = *place;
        }
    }
    moved
}

/// How deep outlines lie in one another, or how far any bar's joints are from where it holds them.
fn deepest(contacts: &[Contact], web: &Web) -> f64 {
    contacts.iter().map(|contact| -contact.gap).fold(web.off(), f64::max)
}

fn is_tense(rope: &Rope) -> bool {
    let links = rope.links.iter().zip(rope.joints.windows(2));
    links.into_iter().all(|(link, pair)| pair[0].at.distance(pair[1].at) >= link.length * (1.0 - TENSE))
}

/// The pairs that press on a strand that hangs slack, if any does.
fn no_room(ropes: &[Rope], slack: &[bool], contacts: &[Contact], round: &Round) -> Option<Vec<[usize; 2]>> {
    let on_slack =
        pressed(ropes, contacts, round).filter(|(contact, _)| contact.strands.iter().any(|strand| slack[*strand]));
    let mut pairs: Vec<[usize; 2]> = on_slack.map(|(contact, _)| contact.strands).collect();
    pairs.sort_unstable();
    pairs.dedup();
    (!pairs.is_empty()).then_some(pairs)
}
