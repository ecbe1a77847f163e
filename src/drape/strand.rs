//! Hanging a whole design: each strand in its place, and what follows from all of them.

use super::chain::{Chain, Content};
use super::fall;
use super::hang::{Hanging, Unhung};
use super::open::{self, Hinges};
use super::{
    Clearance, Drape, Hung, Joint, Ring, Seat, Tension, body, clearance, contact, ellipse, fold, ring, slide, twist,
};
use crate::design::{Design, Index, Strand, Wear, What, WornOpen, nth};
use crate::geometry::{Point, Point3};
use crate::many;
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::hang::Hang;
use crate::units::Length;

/// A strand that cannot be hung.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Fault {
    /// Which it is.
    pub strand: Index<Strand>,
    /// Why not.
    pub why: Unhung,
}

impl Fault {
    /// The fault in the pattern's terms.
    #[must_use]
    pub fn remark(&self, design: &Design) -> Remark {
        let strand = &design.strands[self.strand];
        Remark::new(Hang::CannotHang { strand: strand.name.clone(), why: self.why }).at(strand.length_place)
    }
}

/// How a strand is held.
#[derive(Clone, Copy)]
enum Suspension {
    /// By two points so far apart.
    Points(f64),
    /// Over a rail so broad, with its ends in front.
    Rail(f64),
    /// Laid straight, for pieces that close round a limb.
    Straight,
    /// By the first end alone.
    Plumb,
    /// By both ends side by side, so far apart.
    Loop(f64),
}

/// Hangs a design. Without a `span` in mm a necklace or strap hangs from two points as far apart as
/// the neck is broad, a bracelet or anklet lies straight and an earring hangs from its first end, or
/// from both where it is a loop;
/// with one, every strand hangs from two points. A necklace whose ends are in front lies over a rail so broad. Strands that a bar holds apart hang from points
/// that lie so much farther out on both sides, or lie straight so much lower; earrings hang so far aside,
/// each from its own hole.
///
/// Strands that hang from points and would lie on one another lie side by side (`contact`).
///
/// # Errors
/// The first strand that cannot be hung: too short for its span, most likely.
pub fn hang(design: &Design, span: Option<f64>) -> Result<Drape, Fault> {
    hang_with(design, span, Scope::Worn)
}

/// Hangs a design as [`hang`] does, but lays nothing on the neck.
///
/// # Errors
/// As for [`hang`].
pub fn hang_unworn(design: &Design, span: Option<f64>) -> Result<Drape, Fault> {
    hang_with(design, span, Scope::Touching)
}

/// Hangs a design soon: as [`hang_unworn`] does, but each strand alone, so that strands may lie on one another.
///
/// # Errors
/// As for [`hang`].
pub fn hang_alone(design: &Design, span: Option<f64>) -> Result<Drape, Fault> {
    hang_with(design, span, Scope::Alone)
}

/// How much of a drape is asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Scope {
    /// Each strand as it hangs alone.
    Alone,
    /// Strands beside one another.
    Touching,
    /// And on the neck.
    Worn,
}

/// Hangs each strand, and then, as far as it is asked for, lets them touch and lays them on the neck.
fn hang_with(design: &Design, span: Option<f64>, asked: Scope) -> Result<Drape, Fault> {
    let hold = hold(design, span);
    let lies = asked == Scope::Worn && lies_on_neck(design);
    if let (Some(twist), Suspension::Points(span)) = (&design.twist, hold) {
        // All as one: what they are told by is the first.
        return twist::hang(design, twist, span, lies).map_err(|why| Fault { strand: nth(0), why });
    }
    let (mut chains, mut hung) = places(design, hold)?;
    let alone = lies.then(|| chains.clone());
    let touching = || if asked == Scope::Alone { None } else { touch(design, hold, &mut chains, &mut hung) };
    let wearing = || alone.map(|chains| body::wear(design, &chains));
    let (settled, worn) = many::both(touching, wearing);
    let (presses, unrest) = settled.map_or_else(Default::default, |settled| (settled.presses, settled.unrest));
    Ok(Drape {
        span: hung.first().map_or(0.0, |hung| hung.ends[1].x - hung.ends[0].x),
        clearances: clearances(design, hold, &chains, &hung, &presses),
        presses,
        unrest,
        worn,
        rings: rings(design, &chains, &hung),
        strands: hung.into(),
    })
}

/// Whether a piece lies on the neck in a way that is its own: how ends lie that hang free is the wearer's.
fn lies_on_neck(design: &Design) -> bool {
    let hangs_free = design.closure.open() == Some(WornOpen::Hanging);
    design.heading.kind == Kind::Necklace && !design.is_ring() && !hangs_free
}

/// Each strand as it hangs alone.
fn places(design: &Design, hold: Suspension) -> Result<(Vec<Chain>, Vec<Hung>), Fault> {
    let placed = many::map(&design.strands, |strand| place(design, strand, hold));
    let named = design.strands.indices().zip(placed);
    named.map(|(strand, placed)| placed.map_err(|why| Fault { strand, why })).collect()
}

/// How close neighbouring strands come, where they lie as they would be worn.
fn clearances(
    design: &Design,
    hold: Suspension,
    chains: &[Chain],
    hung: &[Hung],
    presses: &[contact::Press],
) -> Vec<Clearance> {
    if lie_apart(design, hold) { clearance::clearances(design, chains, hung, presses) } else { Vec::new() }
}

/// What is worn round a limb, closed.
fn rings(design: &Design, chains: &[Chain], hung: &[Hung]) -> Vec<Ring> {
    match &design.twist {
        _ if !design.is_ring() => Vec::new(),
        Some(twist) => twist::rings(design, twist, hung),
        None => ring::rings(design, chains, hung),
    }
}

/// Puts strands that hang from points and touch where contact leaves them.
fn touch(design: &Design, hold: Suspension, chains: &mut [Chain], hung: &mut [Hung]) -> Option<contact::Settled> {
    if !matches!(hold, Suspension::Points(_)) || hung.len() < 2 {
        return None;
    }
    let mut settled = contact::settle(design, chains, hung)?;
    let strands = design.strands.iter().zip(&*chains).zip(hung);
    for (((strand, chain), hung), hanging) in strands.zip(settled.strands.drain(..)) {
        *hung = seat(strand, chain, hanging, hung.ends, std::mem::take(&mut hung.starts));
    }
    Some(settled)
}

/// How the strands of a design are held.
fn hold(design: &Design, span: Option<f64>) -> Suspension {
    match (span, design.heading.kind) {
        (span, Kind::Necklace) if fall::falls(design) => Suspension::Rail(span.unwrap_or_else(|| across(&design.wear))),
        (Some(span), _) => Suspension::Points(span),
        (None, _) if design.is_ring() => Suspension::Straight,
        (None, Kind::Necklace | Kind::Strap | Kind::Bracelet | Kind::Anklet) => {
            Suspension::Points(across(&design.wear))
        }
        (None, Kind::Earrings) if design.closure.loops() => Suspension::Loop(side_by_side(design)),
        (None, Kind::Earrings) => Suspension::Plumb,
    }
}

/// Distance between the neck's sides: the span from which a necklace hangs on the sheet.
fn across(wear: &Wear) -> f64 {
    2.0 * ellipse::half_axes(wear.girth.value(), *wear.build.breadth_to_depth).0
}

/// How close two strands of a design come, each as it hangs alone.
#[must_use]
pub fn clearance(design: &Design, between: [Index<Strand>; 2]) -> Option<Clearance> {
    let hold = hold(design, None);
    let place = |index| place(design, design.strands.get(index)?, hold).ok();
    let both: Option<Vec<_>> = between.into_iter().map(place).collect();
    let (chains, hung): (Vec<_>, Vec<_>) = both?.into_iter().unzip();
    lie_apart(design, hold).then(|| clearance::clearance(design, between, &chains, &hung)).flatten()
}

/// Whether strands lie where they would be worn. Those that are laid straight are not, and those that hang
/// plumb from one point hang in a bunch, unless a bar holds them apart.
fn lie_apart(design: &Design, hold: Suspension) -> bool {
    !matches!(hold, Suspension::Straight | Suspension::Plumb | Suspension::Loop(_) | Suspension::Rail(_))
        || design.strands.iter().any(|strand| strand.aside > Length::ZERO)
}

/// How far apart the two sides of a hanging loop are held: its cord has no stiffness here, so that
/// they would fall together, but their beads lie side by side.
fn side_by_side(design: &Design) -> f64 {
    let bits = design.strands.iter().flat_map(Strand::bits);
    let across = bits.map(|bit| match bit.what {
        What::Bead(bead) => design.beads[bead].across.value(),
        _ => 0.0,
    });
    across.fold(0.0, f64::max)
}

/// One strand in its place, as a chain and hung.
fn place(design: &Design, strand: &Strand, hold: Suspension) -> Result<(Chain, Hung), Unhung> {
    let aside = strand.aside.value();
    match hold {
        Suspension::Points(span) => between(design, strand, Point::new(0.0 - aside, 0.0), span + 2.0 * aside),
        Suspension::Loop(span) => looped(design, strand, Point::new(aside, 0.0), span),
        Suspension::Rail(span) => over(design, strand, span),
        Suspension::Straight => {
            let from = Point::new(0.0, 0.0 - aside);
            Ok(lay(design, strand, slide::middles(strand), from, Point::new(1.0, 0.0)))
        }
        Suspension::Plumb => {
            Ok(lay(design, strand, slide::lows(strand), Point::new(aside, 0.0), Point::new(0.0, -1.0)))
        }
    }
}

/// A strand hung from two points on a level.
fn between(design: &Design, strand: &Strand, first: Point, span: f64) -> Result<(Chain, Hung), Unhung> {
    let end = Point::new(span, 0.0);
    let (mut chain, starts) = alone(design, strand, end)?;
    let hinges = Hinges::new(design, strand, &chain);
    let hanging = open::hang(strand, &hinges, &mut chain, |chain, near| chain.hang(end, near))?;
    let hung = seat(strand, &chain, hanging, [first, first + end], starts);
    Ok((chain, hung))
}

/// The chain of a strand that hangs alone from the origin and from an end on its level, and where its trains start.
fn alone(design: &Design, strand: &Strand, end: Point) -> Result<(Chain, Vec<f64>), Unhung> {
    let starts = slide::starts(design, strand, end)?;
    Ok((Chain::new(design, strand, &starts), starts))
}

/// A strand hung from two points side by side, which its beads keep open.
fn looped(design: &Design, strand: &Strand, first: Point, span: f64) -> Result<(Chain, Hung), Unhung> {
    let end = Point::new(span, 0.0);
    let (mut chain, starts) = alone(design, strand, end)?;
    let hinges = Hinges::new(design, strand, &chain);
    let side_by_side = |chain: &Chain, _: Option<&Hanging>| {
        let hanging = super::hang::solve(&chain.links, end)?;
        Ok(fold::opened(design, strand, chain, &hanging).unwrap_or(hanging))
    };
    let hanging = open::hang(strand, &hinges, &mut chain, side_by_side)?;
    let hung = seat(strand, &chain, hanging, [first, first + end], starts);
    Ok((chain, hung))
}

/// A strand over a rail. Beads that slide stay in the middle of where they may be.
fn over(design: &Design, strand: &Strand, across: f64) -> Result<(Chain, Hung), Unhung> {
    let starts = slide::middles(strand);
    let mut chain = Chain::new(design, strand, &starts);
    let turns = fall::turns(design, &chain, across);
    let [left, right] = turns.rail;
    let hinges = Hinges::new(design, strand, &chain).without(&[left, right, turns.meets.unwrap_or_default()]);
    let hanging = open::hang(strand, &hinges, &mut chain, |chain, _| Ok(fall::hang(design, chain, across)?.hanging()))?;
    // The left end of the rail is the origin.
    let start = hanging.joints[left] * -1.0;
    let [first, last] = fall::feet(design);
    let [first, last] = [hanging.joints[0].y - first, hanging.joints[hanging.joints.len() - 1].y - last];
    let low = hanging.joints.iter().map(|joint| joint.y).fold(first.min(last), f64::min) + start.y;
    let ends = [left, right].map(|at| hanging.joints[at] + start);
    let hung = seat(strand, &chain, hanging, [start; 2], starts);
    Ok((chain, Hung { ends, drop: 0.0 - low, ..hung }))
}

/// A strand in a straight line from a point: without tension on a table, with its own weight
/// when it hangs.
fn lay(design: &Design, strand: &Strand, starts: Vec<f64>, from: Point, along: Point) -> (Chain, Hung) {
    let chain = Chain::new(design, strand, &starts);
    let mut at = Point::ORIGIN;
    let step = |link: &super::hang::Link| {
        at = at + along * link.length;
        at
    };
    let joints = std::iter::once(Point::ORIGIN).chain(chain.links.iter().map(step)).collect();
    let weight: f64 = chain.links.iter().map(|link| link.weight).sum();
    let hanging = Hanging {
        joints,
        directions: vec![along; chain.links.len()],
        across: 0.0,
        up: 0.0,
        first: 0.0 - weight * along.y,
        lowest: 0.0,
        last: 0.0,
        iterations: 0,
        residual: 0.0,
    };
    let hung = seat(strand, &chain, hanging, [from, from + at], starts);
    (chain, hung)
}

/// Names what hangs where.
fn seat(strand: &Strand, chain: &Chain, hanging: Hanging, ends: [Point; 2], starts: Vec<f64>) -> Hung {
    let joints = stations(chain, &hanging, ends[0]);
    let lowest = joints.iter().map(|joint| joint.at.y).fold(f64::INFINITY, f64::min);
    Hung {
        ends,
        seats: seats(strand, chain, &hanging, &joints),
        starts,
        lacks: chain.lacks(strand),
        tension: Tension { first: hanging.first, lowest: hanging.lowest, last: hanging.last },
        drop: ends[0].y.max(ends[1].y) - lowest,
        iterations: hanging.iterations,
        residual: hanging.residual,
        unseen: None,
        joints,
    }
}

fn stations(chain: &Chain, hanging: &Hanging, first: Point) -> Vec<Joint> {
    let places = hanging.joints.iter().map(|&joint| first + joint);
    chain.stations().into_iter().zip(places).map(|(station, at)| Joint { station, at }).collect()
}

fn seats(strand: &Strand, chain: &Chain, hanging: &Hanging, joints: &[Joint]) -> Vec<Seat> {
    let links = chain.pieces.iter().zip(&chain.parted.beyond).zip(&hanging.directions).zip(joints);
    let seat = |(((piece, beyond), direction), joint): (((&Content, &[f64; 2]), &Point), &Joint)| {
        let Content::Bit(train, index) = *piece else { return None };
        let bit = &strand.trains[train].bits[index];
        let centre = joint.at + *direction * (beyond[0] + bit.before);
        let station = joint.station + bit.before;
        (bit.what != What::Gap).then(|| Seat {
            train,
            bit: index,
            station,
            centre,
            angle: direction.angle(),
            near: 0.0,
            toward: 0.0,
            down: Point3::DOWN,
        })
    };
    links.filter_map(seat).collect()
}
