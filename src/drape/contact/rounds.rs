//! Rounds of the program until strands in contact lie still.

use super::super::program::TENSE;
use super::contacts::Contact;
use super::crowd::Crowd;
use super::program::{RoundOutcome, Web};
use super::rope::Rope;
use super::{Press, Unrest};
use crate::geometry::Point;

/// Rounds after which the best place found is taken, and where stiff cord is pressed, whose rounds go less far.
const ROUNDS: u32 = 20;
const PRESSED: u32 = 120;
/// Rounds with smooth tubes at the most, which end when no joint moves farther than this, in mm.
const PARTING: u32 = 3;
const PARTED: f64 = 0.5;
/// Rounds end when no joint moves farther than this, in mm, or would in the next, and no outline lies deeper in another.
pub const STILL: f64 = 0.01;
/// Strands of which links hang slack, or that jam, so many rounds after they were parted have no room; where stiff cord is
/// pressed, after more.
const PATIENCE: u32 = 3;
const PATIENT: u32 = 20;
/// The pull to the present place once rounds swing, and the strongest, in mean weights of a joint per mm.
const FAINT: f64 = 0.01;
const STRONG: f64 = 1.0;
/// Steps are alike where each goes the way of the last, to this cosine of an angle: the next leaps as far as all that
/// would follow add up to, but no joint farther than this, in mm.
const ALIKE: f64 = 0.9;
const LEAP: f64 = 2.0;
/// Links times rounds that are spent on one piece, and shared by many variants of it: a round takes time and room in
/// proportion to its links.
pub const WORK: usize = 24_000;
/// Strands are not tried for fewer rounds than this.
const LEAST: usize = 10;
/// Forces below this share of all that hangs are rounding.
pub const TOUCH: f64 = 1e-6;

/// Where strands came to lie.
pub struct RestingPlace {
    /// The strands from the inmost out; none where they stay as they hang alone.
    pub ropes: Vec<Rope>,
    /// Tension of each strand's links, in N.
    pub tensions: Vec<Vec<f64>>,
    /// Where they press on one another, by their numbers from the inmost out.
    pub presses: Vec<Press<usize>>,
    pub rounds: u32,
    pub unrest: Option<Unrest>,
}

impl RestingPlace {
    /// Whether no place worth drawing was found.
    pub fn is_lost(&self) -> bool {
        matches!(self.unrest, Some(Unrest::Lost { .. }))
    }
}

/// A place that was tried, and how far it is from rest.
struct Tried {
    found: RestingPlace,
    far: f64,
}

/// Where a crowd comes to lie.
///
/// # Errors
/// The pairs that have no room beside one another.
pub fn settle(crowd: &Crowd, work: &mut usize) -> Result<RestingPlace, Vec<[usize; 2]>> {
    let mut way = Settling::new(crowd);
    if way.links() * LEAST > *work {
        return Ok(alone(Unrest::TooMany));
    }
    while let Some(round) = way.solve(work) {
        let turn = way.go(round);
        let (next, is_tense) = (way.near(), turn.is_tense());
        if let Some(parted) = way.parted {
            if way.has_no_room(&turn, parted) {
                return way.no_room(&turn);
            }
            if way.rests(&turn, &next, parted) {
                return Ok(way.rest(turn));
            }
            way.keep(turn);
        }
        way.go_on(next, is_tense);
    }
    Ok(way.best_found())
}

/// Strands on their way to rest.
struct Settling<'a> {
    crowd: &'a Crowd,
    ropes: Vec<Rope>,
    web: Web,
    contacts: Vec<Contact>,
    pace: Pace,
    /// Rounds so far.
    rounds: u32,
    /// The round since which outlines are kept apart, in place of smooth tubes.
    parted: Option<u32>,
    /// Whether no link was slack before the last round.
    were_tense: bool,
    best: Option<Tried>,
}

/// What a round did.
struct Advance {
    round: RoundOutcome,
    /// The strands before it.
    before: Vec<Rope>,
    /// How deep its contacts' outlines then lay in one another, in mm.
    overlap: f64,
    /// Which strands it left slack.
    slack: Vec<bool>,
    /// Whether a link that was pressed became longer than it is.
    is_long: bool,
    /// How far the farthest joint went in the round before, in mm.
    last: f64,
}

impl Advance {
    fn is_tense(&self) -> bool {
        !self.slack.contains(&true)
    }
}

impl<'a> Settling<'a> {
    fn new(crowd: &'a Crowd) -> Self {
        let ropes = crowd.ropes.clone();
        let (web, contacts) = (Web::new(&ropes), crowd.near(&ropes, true));
        let pace = Pace::default();
        Self { crowd, ropes, web, contacts, pace, rounds: 0, parted: None, were_tense: true, best: None }
    }

    fn links(&self) -> usize {
        self.ropes.iter().map(|rope| rope.links.len()).sum()
    }

    /// Solves the next round, if there is one.
    fn solve(&mut self, work: &mut usize) -> Option<RoundOutcome> {
        let (links, most) = (self.links(), if self.web.is_pressed() { PRESSED } else { ROUNDS });
        if *work < links || self.rounds >= most {
            return None;
        }
        let round = self.web.solve(&self.ropes, &self.contacts, self.pace.pull, self.crowd.sided)?;
        *work -= links;
        self.rounds += 1;
        Some(round)
    }

    /// Goes where a round leads.
    fn go(&mut self, round: RoundOutcome) -> Advance {
        let before = self.ropes.clone();
        let steps = go(&mut self.ropes, &round.places);
        let overlap = deepest(&self.contacts, &self.web);
        let slack = self.ropes.iter().map(|rope| !is_tense(rope)).collect();
        let is_long = self.ropes.iter().any(is_stretched);
        let opened = self.ropes.iter_mut().map(Rope::open).fold(0.0, f64::max);
        self.web.go(&round, &self.ropes);
        let last = self.pace.go_on(steps, opened, self.web.is_pressed());
        Advance { round, before, overlap, slack, is_long, last }
    }

    /// The contacts where the strands now are.
    fn near(&self) -> Vec<Contact> {
        self.crowd.near(&self.ropes, self.is_parting())
    }

    /// Whether smooth tubes are still kept apart.
    fn is_parting(&self) -> bool {
        self.parted.is_none() && self.rounds < PARTING && self.pace.moved > PARTED
    }

    /// Whether links hang slack or strands jam long after they were parted.
    fn has_no_room(&self, turn: &Advance, parted: u32) -> bool {
        let patience = if self.web.is_pressed() { PATIENT } else { PATIENCE };
        self.rounds - parted >= patience && (!turn.is_tense() || self.web.is_jammed(&turn.round))
    }

    /// The pairs that have no room; that no place was found, where none presses.
    fn no_room(&self, turn: &Advance) -> Result<RestingPlace, Vec<[usize; 2]>> {
        let lost = || Ok(alone(Unrest::Lost { rounds: self.rounds }));
        no_room(&self.ropes, &turn.slack, &self.contacts, &turn.round).map_or_else(lost, Err)
    }

    /// Whether strands lie still beside one another.
    fn rests(&self, turn: &Advance, next: &[Contact], parted: u32) -> bool {
        let (moved, last) = (self.pace.moved, turn.last);
        // Steps shrink alike from round to round: the next one is told by the last two, and what all add up to where they are
        // many.
        let shrinks = self.rounds > parted + 1 && moved < last && last.is_finite();
        let next_is_still = || moved < STILL || shrinks && moved * moved / last < STILL;
        let all_are_still = || shrinks && moved * moved / (last - moved) < STILL;
        let is_still = if self.web.is_pressed() { all_are_still() } else { next_is_still() };
        is_still && deepest(next, &self.web) < STILL && turn.is_tense() && !turn.is_long
    }

    /// Where they lie still.
    fn rest(self, turn: Advance) -> RestingPlace {
        found(self.ropes, &self.contacts, turn.round, self.rounds, None)
    }

    /// Keeps the place before a round if it is nearest to rest so far.
    fn keep(&mut self, turn: Advance) {
        let (rounds, overlap, moves) = (self.rounds, turn.overlap, self.pace.moved);
        let far = moves.max(overlap);
        if self.were_tense && self.best.as_ref().is_none_or(|best| far < best.far) {
            let unrest = (far >= STILL).then_some(Unrest::Left { rounds, overlap, moves });
            let found = found(turn.before, &self.contacts, turn.round, rounds, unrest);
            self.best = Some(Tried { found, far });
        }
    }

    fn go_on(&mut self, next: Vec<Contact>, tense: bool) {
        self.parted = self.parted.or((!self.is_parting()).then_some(self.rounds));
        (self.contacts, self.were_tense) = (next, tense);
        if self.web.is_pressed() {
            self.leap();
        }
    }

    /// Goes on where steps are alike: pressed cord turns aside by small ones, and many of them.
    fn leap(&mut self) {
        let Some(by) = self.pace.leap() else { return };
        let joints = self.ropes.iter_mut().flat_map(|rope| &mut rope.joints);
        joints.zip(by).for_each(|(joint, by)| joint.at = joint.at + by);
        self.were_tense = self.ropes.iter().all(is_tense) && !self.ropes.iter().any(is_stretched);
        self.web.follow(&self.ropes);
        self.contacts = self.near();
    }

    /// The place nearest to rest.
    fn best_found(self) -> RestingPlace {
        self.best.map_or_else(|| alone(Unrest::Lost { rounds: self.rounds }), |best| best.found)
    }
}

/// How rounds go on.
struct Pace {
    /// The pull to the present place, in mean weights of a joint per mm.
    pull: f64,
    /// How far the farthest joint went in the last round, in mm; beyond all measure before the first, and after a leap.
    moved: f64,
    /// How far each went.
    steps: Vec<Point>,
    /// What the last step is of the one before, where it goes the same way.
    of_last: Option<f64>,
}

impl Default for Pace {
    fn default() -> Self {
        Self { pull: 0.0, moved: f64::INFINITY, steps: Vec::new(), of_last: None }
    }
}

impl Pace {
    /// Takes how far joints went in a round, and by how much links that opened moved any end along; how far the farthest
    /// went in the round before. The pull grows while steps do not become shorter, but fades where pressed cord goes on
    /// its way.
    fn go_on(&mut self, steps: Vec<Point>, opened: f64, pressed: bool) -> f64 {
        let moved = steps.iter().map(|step| step.length()).fold(opened, f64::max);
        let along: f64 = steps.iter().zip(&self.steps).map(|(one, other)| one.dot(*other)).sum();
        if moved > 0.5 * self.moved {
            let grown = (4.0 * self.pull).clamp(FAINT, STRONG);
            self.pull = if pressed && along > 0.0 { 0.5 * self.pull } else { grown };
        }
        self.of_last = if pressed { of_last(along, &self.steps, &steps) } else { None };
        self.steps = steps;
        std::mem::replace(&mut self.moved, moved)
    }

    /// How far joints go on where steps are alike: as far as all further ones would add up to.
    fn leap(&mut self) -> Option<Vec<Point>> {
        let (share, most) = (self.of_last.take()?, LEAP / self.moved);
        let more = if share < 1.0 { most.min(share / (1.0 - share)) } else { most };
        // The next step tells nothing of this one.
        self.moved = f64::INFINITY;
        Some(std::mem::take(&mut self.steps).into_iter().map(|step| step * more).collect())
    }
}

/// What steps are of those before them, if all joints go on the same way; `along` sums their products.
fn of_last(along: f64, before: &[Point], steps: &[Point]) -> Option<f64> {
    let [was, is] = [before, steps].map(|steps| steps.iter().map(|step| step.dot(*step)).sum::<f64>());
    (along > ALIKE * (was * is).sqrt()).then(|| along / was)
}

/// Strands as they hang alone.
fn alone(unrest: Unrest) -> RestingPlace {
    RestingPlace { ropes: Vec::new(), tensions: Vec::new(), presses: Vec::new(), rounds: 0, unrest: Some(unrest) }
}

fn found(
    ropes: Vec<Rope>,
    contacts: &[Contact],
    round: RoundOutcome,
    rounds: u32,
    unrest: Option<Unrest>,
) -> RestingPlace {
    let press = |(contact, force): (&Contact, &f64)| {
        let joints = &ropes[contact.strands[0]].joints;
        let station = joints[contact.link].station;
        let depth = station.min(joints.last().map_or(0.0, |last| last.station) - station);
        Press { between: contact.strands, station, depth, force: *force }
    };
    let presses = pressed(&ropes, contacts, &round).map(press).collect();
    RestingPlace { ropes, tensions: round.tensions, presses, rounds, unrest }
}

/// The contacts that press, each with its force.
fn pressed<'a>(
    ropes: &[Rope],
    contacts: &'a [Contact],
    round: &'a RoundOutcome,
) -> impl Iterator<Item = (&'a Contact, &'a f64)> {
    let whole: f64 = ropes.iter().flat_map(Rope::weights).sum();
    contacts.iter().zip(&round.forces).filter(move |(_, force)| **force > TOUCH * whole)
}

/// Puts the joints where a round found them; how far each went.
fn go(ropes: &mut [Rope], places: &[Vec<Point>]) -> Vec<Point> {
    let joints = ropes.iter_mut().flat_map(|rope| &mut rope.joints).zip(places.iter().flatten());
    joints.map(|(joint, place)| *place - std::mem::replace(&mut joint.at, *place)).collect()
}

/// How deep outlines lie in one another, or how far any bar's joints are from where it holds them.
fn deepest(contacts: &[Contact], web: &Web) -> f64 {
    contacts.iter().map(|contact| -contact.gap).fold(web.off(), f64::max)
}

/// Whether no link is shorter than it is.
fn is_tense(rope: &Rope) -> bool {
    stretched(rope).all(|(length, is)| is >= length * (1.0 - TENSE))
}

/// Whether a link that was pressed is longer than it is.
fn is_stretched(rope: &Rope) -> bool {
    stretched(rope).any(|(length, is)| is > length * (1.0 + TENSE) + STILL)
}

/// How long links are, and how far apart their joints.
fn stretched(rope: &Rope) -> impl Iterator<Item = (f64, f64)> {
    let links = rope.links.iter().zip(rope.joints.windows(2));
    links.map(|(link, pair)| (link.length, pair[0].at.distance(pair[1].at)))
}

/// The pairs that press on a strand that hangs slack, if any does.
fn no_room(ropes: &[Rope], slack: &[bool], contacts: &[Contact], round: &RoundOutcome) -> Option<Vec<[usize; 2]>> {
    let on_slack =
        pressed(ropes, contacts, round).filter(|(contact, _)| contact.strands.iter().any(|strand| slack[*strand]));
    let mut pairs: Vec<[usize; 2]> = on_slack.map(|(contact, _)| contact.strands).collect();
    pairs.sort_unstable();
    pairs.dedup();
    (!pairs.is_empty()).then_some(pairs)
}
