//! Pieces worn round the neck, at rest on a body.
//!
//! **Problem.** Closed loops of strands and closure lie on neck, shoulders and chest ([`skin`]) under their weight,
//! without friction; no strand lies in the body or in another strand. The closure is hooked as short as it goes, or,
//! where that is too short to go round the neck's base, as much longer as an extender must be let out.
//!
//! **Method.** Rounds of the program that lays strands on the board (`super::program`), in space: constraints keep
//! each piece beyond the plane that touches the skin, and strands beside one another (`constraints`); solve, move, take
//! the planes anew (`rest`). A coarse net finds the place, a finer one follows, and in that the beads themselves: balls, or
//! swept ones, wherever they lie in its pieces (`outline`). A few strands that come to no rest beside one another, being of
//! one length, are laid anew and may cross. Each round is convex and comes with tensions and pushes. Rest is when these
//! leave no joint out of balance by more than a thousandth of a joint's mean weight, along ties and contacts as they lie at
//! the end, when no joint moves by more than 0.05 mm, or all weights together by less than 0.00001 mm, and when no bead lies
//! 0.01 mm in a bead of another strand or in the body.
//!
//! Cord is as stiff as it is along each strand, and turns freely at the closure. Beads part where a strand bends
//! (`super::open`), as much in all as they would if none were joined to pieces: that grows with their turns.
//!
//! **Trade-off.** What is strung is taken in pieces of at most 8 mm (in one net no more than a thousand or so), each as
//! wide for the beads of other strands as the widest in it: drops are within 1 mm of those with pieces half as long (0.6 mm
//! for three strands of 4 and 6 mm beads). Beads that slide keep the
//! stations at which they rest when the strand hangs from two points. Rows that are pressed along
//! themselves are as long as they are: once all lies still, rounds go on in which such pieces are no shorter along the way in
//! which they lie, and turn aside of it (`super::program`'s pressed ties). Where these come to no rest, such a row
//! stays shorter than it is, which is told of more than a mm in a strand. There is no friction, but for two things: a
//! smooth loop would turn until what is heaviest lies in front, and a heavy closure would slip down the back; skin
//! holds both. So the closure's middle joint stays in the body's middle plane, and what of the closure lies on the
//! nape weighs nothing. What hangs from a strand is weight where it hangs, lifts it off the skin where it must, and is laid on that
//! once all lies still (`hanging`).

mod beside;
mod constraints;
mod front;
mod hanging;
mod loops;
mod outline;
mod pushed;
mod rest;
mod round;
pub mod skin;
mod table;
mod way;
mod whole;

use std::collections::VecDeque;
use std::sync::Mutex;

use super::chain::Chain;
use super::clearance::form;
use super::contact::{Press, Unrest};
use super::hang::Link;
use super::open::Hinges;
use super::{Waypoint, Worn};
use crate::design::{Design, Finding, Index, Part, Passage, Strand, closing_parts, nth};
use crate::geometry::Point3;
use crate::units::NEWTON_PER_GRAM;
pub use beside::clearances;
use front::Front;
use loops::{Loops, Precedence, Straight, StrandPieces, halved, joined, length, reach};
use rest::{NEARLY, PULL, Still, WORK, settle};
use skin::{Skin, SkinShape, Surface};
use table::TableTop;
pub use table::{Closed, closed, closed_as_one};
use way::Way;
use whole::whole;

/// Longest pieces of the first net and of the last, in mm.
const COARSE: f64 = 25.0;
const FINE: f64 = 8.0;
/// Pieces of the last net, about, at the most; the first has a third of them.
const MOST: f64 = 1000.0;
/// Most strands that are laid: more would take too long.
const MOST_STRANDS: usize = 16;
/// When the first net has found the place, and when the last one rests.
const FOUND: Still = Still { moves: 2.0, overlap: 1.0, forces: f64::INFINITY, pull: PULL, is_rough: true };
const RESTS: Still = Still { moves: 0.05, overlap: 0.01, forces: 0.001, pull: NEARLY, is_rough: false };
/// What a strand may lie shorter than it is, in mm, before that is told: no more than drops are known.
const SHORT: f64 = 1.0;
/// Longest link of what of the closure is not rigid, in mm.
const CHAIN: f64 = 4.0;

/// The piece on its neck; `chains` are the design's strands in its order.
///
/// A strand that does not reach round the neck has no line and no drop.
#[must_use]
pub fn wear(design: &Design, chains: &[Chain]) -> Worn {
    let (strings, fronts) = turned(design, chains);
    let (mut worn, presses) = on_neck(design, &strings, &inmost_first(design), &fronts);
    worn.clearances = clearances(design, chains, &worn.lines, Some(&presses));
    worn
}

/// The places of strands among those of the design, from the inmost out.
fn inmost_first(design: &Design) -> Vec<usize> {
    super::contact::order(design).into_iter().map(Index::number).collect()
}

/// Strands from end to end, or from the nape round to it, and how those are turned.
fn turned(design: &Design, chains: &[Chain]) -> (Vec<StrandPieces>, Vec<Option<Front>>) {
    let turned = |(strand, chain): (&Strand, &Chain)| {
        let strung = strung(design, strand, chain);
        let front = Front::new(design, chain, &strung.pieces);
        let pieces = front.as_ref().map(|front| front.turned(&strung.pieces));
        (StrandPieces { pieces: pieces.unwrap_or(strung.pieces), ..strung }, front)
    };
    design.strands.iter().zip(chains).map(turned).unzip()
}

/// The line of twisted strands on its neck: links that reach so far from it.
#[must_use]
pub fn wear_as_one(design: &Design, links: &[Link], reach: f64) -> Worn {
    let pieces = links.iter().map(|link| Straight::new(*link, reach)).collect();
    on_neck(design, &[StrandPieces { pieces, aside: 0.0 }], &[0], &[None]).0
}

/// What is strung on its neck, laid in an order, and where its strands press on one another.
fn on_neck(design: &Design, strings: &[StrandPieces], order: &[usize], fronts: &[Option<Front>]) -> (Worn, Vec<Press>) {
    let skin = Skin::new(&SkinShape::from(&design.wear));
    let in_front = super::fall::falls(design);
    let closure = if in_front { 0.0 } else { closure(design) };
    let closing = if in_front { Vec::new() } else { closing(design, closure) };
    let spare =
        |strung: &StrandPieces| round::spare(&joined(&strung.pieces, FINE), &joined(&closing, FINE), skin.neck());
    let spare: Vec<f64> = strings.iter().map(spare).collect();
    let order: Vec<usize> = order.iter().copied().filter(|at| spare[*at] >= 0.0).collect();
    let strands = order.iter().map(|at| strings[*at].clone()).collect();
    let laid = Laying { strands, closing: closing.clone(), skin: Some(skin), work: design.heading.share(WORK) }.laid();
    let mut worn = Worn {
        skin,
        closure,
        lines: vec![Vec::new(); strings.len()].into(),
        drops: vec![0.0; strings.len()].into(),
        spare: spare.into(),
        clearances: Vec::new(),
        unrest: laid.unrest(),
    };
    let presses = laid.presses.iter().map(|press| press.of(|strand| nth(order[strand]))).collect();
    let front = skin.front().y;
    for (at, way) in order.into_iter().zip(laid.ways) {
        let seen = seen(&skin, &way, 0.5 * length(&closing));
        let line = match &fronts[at] {
            Some(front) => front.line(&way, &seen, |from, spots| hanging::laid_down(&skin, from, spots)),
            None => seen,
        };
        let lowest = line.iter().map(|spot| spot.at.y).fold(f64::INFINITY, f64::min);
        worn.drops[nth(at)] = (front - lowest).max(0.0);
        worn.lines[nth(at)] = line;
    }
    (worn, presses)
}

/// What the closure adds when it is hooked as short as the shortest strand goes round the neck.
fn closure(design: &Design) -> f64 {
    let (least, most) = design.closure_length();
    let shortest = design.strands.iter().map(|strand| design.reach_of(strand).value()).fold(f64::INFINITY, f64::min);
    (design.wear.girth.value() - shortest).max(least.value()).min(most.value())
}

/// A strand in pieces.
fn strung(design: &Design, strand: &Strand, chain: &Chain) -> StrandPieces {
    let hinges = Hinges::new(design, strand, chain);
    let piece = |(at, passage): (usize, Option<Passage>)| {
        let reach = form(design, strand, chain, at).reach();
        let link = chain.straight(at);
        Straight {
            passage,
            stiffness: chain.stiffness,
            hinge: hinges.after(at),
            bare: chain.bare(strand, at),
            spare: chain.spare[at],
            lift: hanging::lift(design, strand, chain.pieces[at]),
            ..Straight::new(link, reach)
        }
    };
    let passages = chain.passages(design, strand);
    StrandPieces { pieces: passages.into_iter().enumerate().map(piece).collect(), aside: strand.aside.value() }
}

/// The closure in pieces from the strands' last ends round to their first, so long in all.
fn closing(design: &Design, closure: f64) -> Vec<Straight> {
    let let_out = closure - design.closure_length().0.value();
    let parts = closing_parts(&design.closure).map(|part| (rigid(design, part, let_out), part.cut.is_some()));
    let pieces = parts.flat_map(|(piece, is_chain)| if is_chain { cut(piece) } else { vec![piece] });
    carried(pieces.collect(), 0.25 * design.wear.girth.value())
}

/// The closure without the weight of what lies on the nape, so far to either side of its middle: friction carries it.
fn carried(mut closing: Vec<Straight>, nape: f64) -> Vec<Straight> {
    let mut off = -0.5 * length(&closing);
    for piece in &mut closing {
        let middle = off + 0.5 * piece.link.length;
        off += piece.link.length;
        piece.link.weight *= f64::from(middle.abs() > nape);
    }
    closing
}

/// A part of the closure as one piece with all that it weighs.
fn rigid(design: &Design, part: &Part, let_out: f64) -> Straight {
    let length = (part.least.value() + let_out).min(part.reach.value());
    let weight = design.part_mass(part).value() * NEWTON_PER_GRAM;
    let link = Link { length, weight, centre: 0.5 };
    Straight::new(link, half_breadth(&design.findings[part.finding]))
}

/// How far a finding reaches from its middle line; a cone halfway along.
fn half_breadth(finding: &Finding) -> f64 {
    let half = 0.5 * finding.thickness().value();
    if finding.cone().is_some() { 0.5 * half } else { half }
}

/// A piece in links that bend.
fn cut(piece: Straight) -> Vec<Straight> {
    let count = super::chain::pieces(piece.link.length, CHAIN).max(1);
    let share = 1.0 / count as f64;
    let link = Link { length: piece.link.length * share, weight: piece.link.weight * share, centre: 0.5 };
    vec![Straight { link, ..piece }; count]
}

/// What was laid of late: sizes and colourways share most strands, and a piece is hung for many a question.
static KNOWN: Mutex<VecDeque<(Laying, Laid)>> = Mutex::new(VecDeque::new());
/// How many are kept.
const KEPT: usize = 32;

/// What is laid, and on what.
#[derive(Clone, PartialEq)]
struct Laying {
    strands: Vec<StrandPieces>,
    closing: Vec<Straight>,
    /// The body; without one, a table.
    skin: Option<Skin>,
    /// What is spent on it.
    work: usize,
}

impl Laying {
    /// Where it comes to lie, worked out where it is not known.
    fn laid(self) -> Laid {
        if self.strands.is_empty() || self.strands.len() > MOST_STRANDS {
            let unrest = (!self.strands.is_empty()).then_some(Unrest::TooMany);
            return Laid { unrest, ..Laid::default() };
        }
        let known = KNOWN.lock().ok().and_then(|known| Some(known.iter().find(|(asked, _)| *asked == self)?.1.clone()));
        known.unwrap_or_else(|| {
            let laid = match &self.skin {
                Some(skin) => lay(&self.strands, &self.closing, skin, self.work),
                None => lay(&self.strands, &self.closing, &TableTop, self.work),
            };
            if let Ok(mut known) = KNOWN.lock() {
                known.push_front((self, laid.clone()));
                known.truncate(KEPT);
            }
            laid
        })
    }
}

/// Where loops came to lie.
#[derive(Clone, Default)]
struct Laid {
    ways: Vec<Way>,
    /// Where they press on one another, by their numbers from the inmost out.
    presses: Vec<Press<usize>>,
    unrest: Option<Unrest>,
    /// By how much in mm the strand whose cord is pressed most lies shorter than it is.
    short: f64,
}

impl Laid {
    /// Why it is not as it would lie, where it is not.
    fn unrest(&self) -> Option<Unrest> {
        self.unrest.or_else(|| (self.short > SHORT).then_some(Unrest::Short { by: self.short }))
    }

    /// How deep in mm anything lies in anything else where they came to no rest; nothing where they did.
    fn left(&self) -> f64 {
        match self.unrest {
            None => 0.0,
            Some(Unrest::Left { overlap, .. }) => overlap,
            Some(_) => f64::INFINITY,
        }
    }
}

/// What loops are laid on.
trait Bed: Surface {
    /// A first guess for a loop of a length that lies so far outside the surface.
    fn guess(&self, length: f64, out: f64) -> Way;

    /// The longest pieces of the nets in which they are laid, the last one in pieces of at most a length.
    fn nets(&self, fine: f64) -> Vec<f64> {
        vec![COARSE.max(3.0 * fine), fine]
    }

    /// When they rest in the last one.
    fn rest(&self) -> Still {
        RESTS
    }

    /// Whether a strand with its closure, in such pieces, is easily long enough to lie on it.
    fn has_room(&self, _strand: &[Straight], _closing: &[Straight]) -> bool {
        true
    }

    /// Whether strands without room beside one another may lie over one another on it.
    fn lets_cross(&self) -> bool {
        true
    }

    /// What is done to loops that have their ways, before they are laid.
    fn prepare(&self, _loops: &mut Loops) {}
}

impl Bed for Skin {
    fn guess(&self, length: f64, out: f64) -> Way {
        Way::guess(self, length, out)
    }

    fn has_room(&self, strand: &[Straight], closing: &[Straight]) -> bool {
        /// What the planes that touch a neck take beyond it, as a share of its girth: by trial.
        const EASY: f64 = 0.03;
        round::spare(strand, closing, self.neck()) >= EASY * std::f64::consts::TAU * self.neck()
    }
}

/// No more strands than this are laid over one another: they take twice the time, and leave overlaps all the same.
const MOST_CROSSING: usize = 5;

/// Lays strands beside one another. Where they come to no rest so, as a few of one length do that have no room there, they
/// may lie over one another, if that leaves less of an overlap.
fn lay(strands: &[StrandPieces], closing: &[Straight], bed: &impl Bed, work: usize) -> Laid {
    let beside = lay_in(Precedence::Beside, strands, closing, bed, work);
    if beside.unrest.is_none() || !bed.lets_cross() || !(2..=MOST_CROSSING).contains(&strands.len()) {
        return beside;
    }
    let over = lay_in(Precedence::Over, strands, closing, bed, work);
    if over.left() < beside.left() { over } else { beside }
}

/// Lays strands from the inmost out, first roughly, with so much work on each net.
fn lay_in(order: Precedence, strands: &[StrandPieces], closing: &[Straight], bed: &impl Bed, work: usize) -> Laid {
    let all: f64 = strands.iter().map(|strand| length(&strand.pieces)).sum();
    let cut = |longest: f64| {
        let cut = |strand: &StrandPieces| StrandPieces { pieces: joined(&strand.pieces, longest), ..*strand };
        (strands.iter().map(cut).collect::<Vec<_>>(), halved(joined(closing, longest)))
    };
    let mut beyond = 0.0;
    let way = |strand: &StrandPieces| {
        let reach = reach(&strand.pieces);
        beyond += 2.0 * reach;
        bed.guess(length(&strand.pieces) + length(closing), beyond - reach)
    };
    let mut ways: Vec<Way> = strands.iter().map(way).collect();
    let mut laid = Laid::default();
    let fine = FINE.max(all / MOST);
    for longest in bed.nets(fine) {
        let (pieces, closing) = cut(longest);
        // Longer pieces take more room round the neck.
        if longest > fine && !pieces.iter().all(|strand| bed.has_room(&strand.pieces, &closing)) {
            continue;
        }
        let mut loops = Loops { order, ..Loops::new(&pieces, &closing, &ways) };
        bed.prepare(&mut loops);
        laid.unrest = settle(&mut loops, bed, FOUND, work).err();
        if longest <= fine && laid.unrest.is_none() {
            loops.outline_beads(strands);
            (loops, laid.unrest) = whole(loops, bed, bed.rest(), work);
        }
        if matches!(laid.unrest, Some(Unrest::Lost { .. })) {
            return laid;
        }
        (ways, laid.short, laid.presses) = (loops.ways(), loops.short(), loops.presses);
    }
    Laid { ways, ..laid }
}

/// A way with what of it the body hides, its stations counted from the strand's first end.
fn seen(skin: &Skin, way: &Way, closed: f64) -> Vec<Waypoint> {
    let stop = |(station, at): (f64, Point3)| Waypoint { station: station - closed, at, hidden: skin.hides(at) };
    let spot = |station: f64| stop((station, way.at(station)));
    let mut spots: Vec<Waypoint> = Vec::new();
    for next in way.stops().iter().copied().map(stop) {
        if let Some(last) = spots.last().copied().filter(|last| last.hidden != next.hidden) {
            spots.extend(edge(last, next, |share| spot(last.station + closed + (next.station - last.station) * share)));
        }
        spots.push(next);
    }
    spots
}

/// The two spots, close together, between which a way goes out of sight.
fn edge(from: Waypoint, to: Waypoint, spot: impl Fn(f64) -> Waypoint) -> [Waypoint; 2] {
    let (mut low, mut high) = ((0.0, from), (1.0, to));
    for _ in 0..6 {
        let middle = 0.5 * (low.0 + high.0);
        let found = spot(middle);
        *if found.hidden == from.hidden { &mut low } else { &mut high } = (middle, found);
    }
    [low.1, high.1]
}

#[cfg(test)]
mod tests;
