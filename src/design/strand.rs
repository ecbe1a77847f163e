//! Strands: lengths, ends, and where the beads may rest.
//!
//! finished = loop to loop; bare = finished − beaded − what the ends take; cut = legs × finished + what
//! the knots take up + 2 × allowance. Station 0 is the first end's loop.
//!
//! A knot in a doubled cord is tied in both legs together. Both lie in a tube of twice their diameter, so
//! that each takes up at most what one cord of that thickness would.

use crate::pattern::{self, CordKind, FindingKind, Item, Repeat, Run, Settle, Times};
use crate::remark::Remark;
use crate::remark::said::strand::{self as said, Fewer};
use crate::source::{At, Place};
use crate::trade::usual;
use crate::units::{Length, Mass};

use super::Context;
use super::entries::{Entries, Index};
use super::expand::{Given, List};
use super::filling::{Asked, fill, largest, nearest};
use super::finding::Finding;
use super::limits::{too_long, too_many, too_many_findings};
use super::model::{Bit, Closure, End, Fill, Rest, Strand, Train, What};
use super::round::{Row, Stock};
use super::row;
use super::settling::settle;
use super::shelf::Shelf;
use super::spot::{self, Spot};
use super::spring::{self, Spring};
use super::stock::Cord;
use super::stops;
use super::wear::MadeTo;
use super::wraps;

/// A filled strand that is shorter than asked by more is worth a remark: half an inch, an assumption.
const MUCH_SHORT: Length = Length::mm(12.7);
/// Lengths that differ by less are the same: a thousandth of what a ruler shows.
pub const SAME: f64 = 1e-3;

/// Resolves one strand.
pub fn strand(
    written: &At<pattern::Strand>,
    made_to: MadeTo,
    closure: &Closure,
    shelf: &Shelf,
    context: &mut Context,
) -> Option<Strand> {
    let strand = &written.value;
    let cord = shelf.find_cord(&strand.cord, context);
    if cord.is_some_and(|cord| shelf.cords[cord].is_sprung()) {
        spring::check(strand, shelf, context)?;
    }
    let end = end(strand, cord, shelf, context);
    let given = Given::new(strand, cord.map(|cord| &shelf.cords[cord]));
    let list = List::new(&strand.beads.value, given, shelf, context);
    let (cord, end, list) = (cord?, end?, list?);
    if context.holes.spoil(written.place) {
        return None;
    }
    let legs = if strand.doubled.is_some_and(|doubled| doubled.0) { 2 } else { 1 };
    let take_up = take_up(&shelf.cords[cord], legs);
    let end = knot_end(end, take_up, shelf);
    let ends = [if legs > 1 { hitch(&shelf.cords[cord]) } else { end.clone() }, end];
    let settle = settle(strand, &shelf.cords[cord]);
    let length = target(strand, settle, made_to, list.has_fill(), context)?;
    let [first_takes, last_takes] = ends.each_ref().map(|end| end.takes.value());
    let takes = first_takes + last_takes;
    let place = strand.beads.place;
    if too_long(list.written(1), place, context) || too_many(list.count(1), place, context) {
        return None;
    }
    let stock = Stock { beads: &shelf.beads, findings: &shelf.findings };
    let thick = shelf.cords[cord].diameter.value() * f64::from(legs);
    let row = Row { stock, closure, cord: thick, ends: &ends, wraps: wraps::whole(made_to.wraps) };
    let asked = made_to.asked.filter(|_| closure.open().is_none());
    let spring = |bits: &[Bit]| Spring::of(stock, &shelf.cords[cord], bits.iter(), made_to.limb);
    let turns = |bits: &[Bit]| spring(bits).map_or(0.0, |spring| spring.turns(stock, bits));
    let inside = |bits: &[Bit]| match made_to.twisted {
        Some(twisted) => twisted.rope(stock, bits, thick, takes).map_or(0.0, |rope| row.inside_rope(rope)),
        None => row.inside(bits),
    };
    let leave = strand.leave.as_ref().map_or(0.0, |at| at.value.value());
    let measure = match (length, asked) {
        _ if shelf.cords[cord].is_sprung() => Some(Asked { asked: made_to.wraps, measure: &turns }),
        (None, Some(asked)) => Some(Asked { asked: asked.value() - leave, measure: &inside }),
        _ => None,
    };
    let fill = match measure {
        Some(measure) if list.has_fill() => nearest(strand, &list, &shelf.beads, measure, context)?,
        _ => fill(strand, &list, length, takes, context)?,
    };
    let count = list.count(fill);
    let more = list.written(fill) - list.written(1);
    if too_many(count, place, context)
        || too_many_findings(list.findings(fill), place, context)
        || too_long(more, place, context)
    {
        return None;
    }
    context.strung += count;
    let mut finished = finished(strand, settle, &list, fill, length, takes, context);
    let window = (first_takes, finished.value() - last_takes);
    let mut trains = trains(strand, settle, &list, fill, window, shelf, context)?;
    if let [train] = trains.as_mut_slice()
        && let Some(spring) = spring(&train.bits)
    {
        spring.curve(stock, &mut train.bits);
        finished = Length::mm(train.length() + takes);
    }
    weigh_knots(&mut trains, shelf.cords[cord].mass_per_metre, take_up);
    let gives = shelf.cords[cord].is_sprung() || shelf.cords[cord].kind == CordKind::Elastic;
    // Twisted strands lie now inside and now outside of the line round which they close.
    let closes = made_to.is_ring && closure.open().is_none() && made_to.twisted.is_none();
    let is_pin = shelf.cords[cord].is_pin;
    let strand = Strand {
        name: strand.name.value.clone(),
        cord,
        legs,
        finished,
        take_up,
        slack: if closes && !gives { slack(&row, &trains, finished - Length::mm(takes)) } else { Length::ZERO },
        allowance: allowance(strand, &shelf.cords[cord], !ends[1].findings.is_empty(), context),
        ends,
        trains,
        settle,
        aside: Length::ZERO,
        chart: list.chart(fill),
        place: strand.name.place,
        length_place: strand.length.as_ref().map_or(strand.name.place, |at| at.place),
        fill: filled(strand, settle, &list, fill),
    };
    Some(if is_pin { strand.without_cord() } else { strand })
}

/// Cord beyond a row's room that its beads take up when it is closed to a ring.
fn slack(row: &Row<'_>, trains: &[Train], room: Length) -> Length {
    let bits: Vec<_> = trains.iter().flat_map(|train| &train.bits).cloned().collect();
    let beaded: f64 = bits.iter().filter(|bit| bit.what != What::Gap).map(Bit::length).sum();
    let bare = (room.value() - beaded).max(0.0);
    Length::mm((row.slack(&bits) - bare).max(0.0))
}

/// The repeat that fills a row bead to bead.
fn filled(strand: &pattern::Strand, settle: Settle, list: &List<'_>, times: u32) -> Option<Fill> {
    let leave = strand.leave.as_ref().map_or(Length::ZERO, |at| at.value);
    let fills = settle == Settle::Fill && list.has_fill();
    // Of a row that goes round its wearer the count is the nearest, whatever it is that fills it.
    let nearest = strand.length.is_none().then(Vec::new);
    list.filled(times).or(nearest).filter(|_| fills).map(|ones| Fill { times, ones, leave })
}

/// The length that is asked for, with a size's change.
fn target(
    strand: &pattern::Strand,
    settle: Settle,
    made_to: MadeTo,
    has_fill: bool,
    context: &mut Context,
) -> Option<Option<Length>> {
    let change = made_to.change;
    let name = strand.name.value.clone();
    let wrong = match &strand.length {
        Some(length) if (length.value + change).value() <= 0.0 => said::Strand::NothingLeft { strand: name },
        Some(length) => return Some(Some(length.value + change)),
        None if settle != Settle::Fill => said::Strand::NoLength { strand: name, settle: settle.word() },
        None if has_fill => return Some(None),
        None if change != Length::ZERO || made_to.remade => said::Strand::Unchanged { strand: name },
        None => return Some(None),
    };
    context.refuse(Remark::new(wrong).at(strand.name.place))
}

/// Extra cord for each end; none for chain, whose end links are hung whole, and of memory wire what a turned loop takes.
fn allowance(strand: &pattern::Strand, cord: &Cord, is_glued: bool, context: &mut Context) -> Length {
    match (&strand.allowance, cord.kind) {
        (written, CordKind::Chain) => {
            let idle = || said::Strand::Allowance { strand: strand.name.value.clone() };
            context.remarks.extend(written.iter().map(|at| Remark::new(idle()).at(at.place)));
            Length::ZERO
        }
        (Some(written), _) => written.value,
        (None, CordKind::MemoryWire) if is_glued => Length::ZERO,
        (None, CordKind::MemoryWire) => usual::turned(cord.diameter),
        (None, _) => usual::ALLOWANCE,
    }
}

/// The end at which a doubled cord's fold is hitched.
fn hitch(cord: &Cord) -> End {
    let takes = cord.diameter * usual::HITCH;
    End { findings: Vec::new(), bight: takes, takes, take_up: Length::ZERO }
}

/// Cord that one overhand knot takes up, all legs together: each as much as a cord as thick as all.
fn take_up(cord: &Cord, legs: u32) -> Length {
    if cord.is_limp() { cord.take_up * f64::from(legs * legs) } else { Length::ZERO }
}

/// An end with the cord that its double overhand knot takes up, where it has one.
fn knot_end(end: End, take_up: Length, shelf: &Shelf) -> End {
    let knotted = end.is_knotted(&shelf.findings);
    End { take_up: if knotted { take_up * usual::DOUBLE_OVERHAND } else { Length::ZERO }, ..end }
}

impl End {
    /// Whether nothing but a knot holds it.
    #[must_use]
    pub fn is_knotted(&self, findings: &Entries<Finding>) -> bool {
        let holds = |at: &Index<Finding>| matches!(findings[*at].kind(), FindingKind::Crimp | FindingKind::CordEnd);
        !self.findings.iter().any(holds)
    }
}

/// Gives each knot the mass of the cord that it takes up.
fn weigh_knots(trains: &mut [Train], per_metre: Mass, take_up: Length) {
    let knots = trains.iter_mut().flat_map(|train| &mut train.bits).filter(|bit| bit.what == What::Knot);
    knots.for_each(|knot| knot.mass = per_metre.value() * take_up.value() / 1000.0);
}

fn end(strand: &pattern::Strand, cord: Option<Index<Cord>>, shelf: &Shelf, context: &mut Context) -> Option<End> {
    let ids = strand.ends.as_ref().map_or(&[][..], |ends| ends.ids());
    // A loop is turned of memory wire; of other cord it is a finding.
    let sprung = cord.is_some_and(|cord| shelf.cords[cord].is_sprung());
    let named = ids.iter().filter(|id| id.value != "knot" && !(sprung && id.value == "loop"));
    let found: Vec<_> = named.map(|id| spot::finding(id, Spot::Ends, shelf, context)).collect();
    let findings: Vec<_> = found.into_iter().collect::<Option<_>>()?;
    spot::check_crimped(ids, shelf, context);
    let is = |kind| findings.iter().find(|index| shelf.findings[**index].kind() == kind);
    let bight = match (is(FindingKind::WireGuard), is(FindingKind::Crimp)) {
        (Some(guard), _) => shelf.findings[*guard].length().unwrap_or_default(),
        (None, Some(_)) => usual::BIGHT,
        (None, None) => Length::ZERO,
    };
    let length = |kind| is(kind).and_then(|at| shelf.findings[*at].length());
    let over =
        length(FindingKind::CrimpCover).zip(length(FindingKind::Crimp)).map(|(cover, crimp)| overhang(cover, crimp));
    let takes = bight + findings.iter().map(|index| taken(&shelf.findings[*index])).sum() + over.unwrap_or_default();
    Some(End { findings, bight, takes, take_up: Length::ZERO })
}

/// How far a cover about the middle of a crimp reaches beyond it on either side.
fn overhang(cover: Length, crimp: Length) -> Length {
    ((cover - crimp) * 0.5).max(Length::ZERO)
}

/// Cord that an end's finding covers: a cover sits over the crimp, a guard in the loop.
fn taken(finding: &Finding) -> Length {
    match finding.kind() {
        FindingKind::CrimpCover | FindingKind::WireGuard => Length::ZERO,
        _ => finding.length().unwrap_or_default(),
    }
}

fn finished(
    strand: &pattern::Strand,
    settle: Settle,
    list: &List<'_>,
    fill: u32,
    length: Option<Length>,
    takes: f64,
    context: &mut Context,
) -> Length {
    match length {
        Some(length) if settle != Settle::Fill => length,
        length => {
            let finished = Length::mm(list.length(fill) + takes);
            if let Some(length) = length {
                compare(strand, list, length, finished, context);
            }
            finished
        }
    }
}

/// Says where a filled strand does not become as long as the pattern says.
fn compare(strand: &pattern::Strand, list: &List<'_>, length: Length, finished: Length, context: &mut Context) {
    let leave = strand.leave.as_ref().map_or(Length::ZERO, |at| at.value);
    let short = length - leave - finished;
    if !list.has_fill() && short.value().abs() > SAME {
        ignore_length(strand, finished, context);
    } else if short > MUCH_SHORT {
        let name = strand.name.value.clone();
        let fill_short = said::Strand::FillShort { strand: name, length: finished, short };
        context.remarks.push(Remark::new(fill_short).at(length_place(strand)));
    }
}

fn ignore_length(strand: &pattern::Strand, finished: Length, context: &mut Context) {
    let filled = said::Strand::Filled { strand: strand.name.value.clone(), length: finished };
    context.remarks.push(Remark::new(filled).at(length_place(strand)));
}

/// Where a strand's length stands, or else its name.
fn length_place(strand: &pattern::Strand) -> Place {
    strand.length.as_ref().map_or(strand.name.place, |at| at.place)
}

fn trains(
    strand: &pattern::Strand,
    settle: Settle,
    list: &List<'_>,
    fill: u32,
    window: (f64, f64),
    shelf: &Shelf,
    context: &mut Context,
) -> Option<Vec<Train>> {
    if strand.beads.value.iter().any(|item| matches!(item.value, Item::Stop(_))) {
        return stops::trains(strand, settle, window, list.given(), shelf, context);
    }
    rest(list, settle, fill, window, shelf).map_err(|over| refuse_overfull(strand, list, over, window, context)).ok()
}

/// Lays a list into a window of stations, or says by how much it is too long.
pub fn rest(
    list: &List<'_>,
    settle: Settle,
    fill: u32,
    (from, to): (f64, f64),
    shelf: &Shelf,
) -> Result<Vec<Train>, f64> {
    let mut bits = row::bits(&list.row(fill), &shelf.beads);
    if settle == Settle::Fixed {
        count_from_loop(&mut bits, from);
    }
    let length: f64 = bits.iter().map(Bit::length).sum();
    let spare = to - from - length;
    if spare < -SAME {
        return Err(-spare);
    }
    let rest = match settle {
        Settle::Slide if spare > SAME => Rest::Free(from, from + spare),
        Settle::Slide | Settle::Fill | Settle::Fixed => Rest::At(from),
        Settle::Spread => return Ok(spread(list, fill, (from, to), shelf)),
    };
    Ok(vec![Train { bits, rest }])
}

/// A space that opens a fixed row is counted from the first end's loop: what closes the end lies in it.
fn count_from_loop(bits: &mut [Bit], takes: f64) {
    if let Some(space) = bits.first_mut().filter(|bit| bit.what == What::Gap && bit.length() >= takes) {
        space.before -= takes / 2.0;
        space.after -= takes / 2.0;
    }
}

/// Equal bare cord before, between and after the groups.
fn spread(list: &List<'_>, fill: u32, (from, to): (f64, f64), shelf: &Shelf) -> Vec<Train> {
    let groups = list.groups(fill).into_iter().filter(|group| !group.is_empty());
    let rows: Vec<_> = groups.map(|group| row::bits(&list.knotted(group), &shelf.beads)).collect();
    let taken: f64 = rows.iter().flatten().map(Bit::length).sum();
    let gap = ((to - from - taken) / (rows.len() + 1) as f64).max(0.0);
    let mut at = from;
    let mut train = |bits: Vec<Bit>| {
        at += gap;
        let train = Train { bits, rest: Rest::At(at) };
        at += train.length();
        train
    };
    rows.into_iter().map(&mut train).collect()
}

fn refuse_overfull(strand: &pattern::Strand, list: &List<'_>, over: f64, window: (f64, f64), context: &mut Context) {
    let room = window.1 - window.0;
    let needs = Length::mm(list.length(1) + strand.length.as_ref().map_or(0.0, |at| at.value.value()) - room);
    let fewer = fewer(strand, list, room, context);
    let overfull = said::Strand::Overfull { strand: strand.name.value.clone(), over: Length::mm(over), fewer, needs };
    context.remarks.push(Remark::new(overfull).at(length_place(strand)));
}

/// Says how often the list's first repeat would fit, or of a list without one, how many beads of its longest run.
fn fewer(strand: &pattern::Strand, list: &List<'_>, room: f64, context: &mut Context) -> Option<Fewer> {
    let mut items = strand.beads.value.clone();
    let counted = |(at, item): (usize, &At<Item>)| match &item.value {
        Item::Repeat(Repeat { repeat: Times::Count(count), of }) => Some((at, *count, of.clone(), None)),
        Item::Run(Run { count, id }) => {
            let one = At { value: Item::Run(Run { count: 1, id: id.clone() }), place: item.place };
            Some((at, *count, vec![one], Some(id.clone())))
        }
        _ => None,
    };
    let all: Vec<_> = items.iter().enumerate().filter_map(counted).collect();
    let repeat = all.iter().find(|(.., run)| run.is_none());
    let (at, often, of, run) = repeat.or_else(|| all.iter().max_by_key(|(_, count, ..)| *count))?;
    items[*at].value = Item::Repeat(Repeat { repeat: Times::Fill, of: of.clone() });
    let list = List::new(&items, list.given(), list.shelf(), context)?;
    let fits = largest(|fill| list.fits(fill, room)).filter(|fits| fits < often)?;
    Some(match run {
        Some(id) => Fewer::Beads { id: id.clone(), fits, written: *often },
        None => Fewer::Times { fits, written: *often },
    })
}
