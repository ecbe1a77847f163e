//! Strands: lengths, ends, and where the beads may rest.
//!
//! finished = loop to loop; bare = finished − beaded − what the ends take; cut = legs × finished + what
//! the knots take up + 2 × allowance. Station 0 is the first end's loop.

use crate::pattern::{self, CordKind, Settle};
use crate::remark::Remark;
use crate::remark::said::strand as said;
use crate::source::{At, Place};
use crate::units::{Length, Mass};

use super::Context;
use super::ends;
use super::entries::Index;
use super::filling::{RowGoal, fill, nearest};
use super::joins::Closure;
use super::limits::{too_long, too_many, too_many_findings};
use super::list::{self, Given, List};
use super::model::{Bit, End, FillRepeat, Strand, Train, What};
use super::overfull::overfull;
use super::resting::{SAME, rest};
use super::round::{Circlet, Stock};
use super::settling::settle;
use super::shelf::Inventory;
use super::spring::{self, Spring};
use super::stated::Stated;
use super::stock::Cord;
use super::stops;
use super::wear::MadeTo;
use super::wraps;

/// A filled strand that is shorter than asked by more is worth a remark: half an inch, an assumption.
const MUCH_SHORT: Length = Length::mm(12.7);

/// Resolves one strand.
pub fn strand(
    written: &At<pattern::Strand>,
    made_to: MadeTo,
    closure: &Closure,
    shelf: &Inventory,
    context: &mut Context,
) -> Option<Strand> {
    let known = Known::of(written, made_to, closure, shelf, context)?;
    let fill = known.fill(context)?;
    let mut finished = known.finished(fill, context);
    let mut trains = known.trains(fill, finished, context)?;
    if let [train] = trains.as_mut_slice()
        && let Some(spring) = known.spring(&train.bits)
    {
        spring.curve(known.stock(), &mut train.bits);
        finished = Length::mm(train.length() + known.takes());
    }
    weigh_knots(&mut trains, *known.cord().mass_per_metre, *known.take_up);
    let is_pin = known.cord().is_pin;
    let strand = known.strand(fill, finished, trains, context);
    Some(if is_pin { strand.without_cord() } else { strand })
}

/// What is known of a strand before its beads are counted.
struct Known<'a> {
    written: &'a pattern::Strand,
    made_to: MadeTo,
    closure: &'a Closure,
    shelf: &'a Inventory,
    cord: Index<Cord>,
    list: List<'a>,
    legs: u32,
    take_up: Stated<Length>,
    ends: [End; 2],
    settle: Settle,
    /// The length that is asked for, with a size's change.
    length: Option<Length>,
}

impl<'a> Known<'a> {
    fn of(
        At { value: written, place }: &'a At<pattern::Strand>,
        made_to: MadeTo,
        closure: &'a Closure,
        shelf: &'a Inventory,
        context: &mut Context,
    ) -> Option<Self> {
        let (cord, end, list) = named(written, shelf, context)?;
        if context.holes.spoil(*place) {
            return None;
        }
        let of = &shelf.cords[cord];
        let settle = settle(written, of, &list);
        stops::check(&list, settle, written.beads.place, context)?;
        let length = target(written, settle, made_to, list.has_fill(), context)?;
        let legs = if written.doubled.is_some_and(|doubled| doubled.0) { 2 } else { 1 };
        let take_up = ends::take_up(of, legs);
        let ends = ends::both(end, of, legs, *take_up, closure, &shelf.findings);
        Some(Self { written, made_to, closure, shelf, cord, list, legs, take_up, ends, settle, length })
    }

    fn cord(&self) -> &'a Cord {
        &self.shelf.cords[self.cord]
    }

    const fn stock(&self) -> Stock<'a> {
        self.shelf.stock()
    }

    /// What both ends take of its length, in mm.
    fn takes(&self) -> f64 {
        let [first, last] = self.ends.each_ref().map(|end| end.takes.value());
        first + last
    }

    /// How thick its cord is, all legs together, in mm.
    fn thick(&self) -> f64 {
        self.cord().diameter.value() * f64::from(self.legs)
    }

    /// It as a row that goes round.
    fn row(&self) -> Circlet<'_> {
        let wraps = wraps::whole(self.made_to.wraps);
        Circlet { stock: self.stock(), closure: self.closure, cord: self.thick(), ends: &self.ends, wraps }
    }

    /// How bits lie on it, where it is memory wire.
    fn spring(&self, bits: &[Bit]) -> Option<Spring> {
        Spring::of(self.stock(), self.cord(), bits.iter(), self.made_to.limb)
    }

    /// How often `fill` strings its list, where the piece may hold so much.
    fn fill(&self, context: &mut Context) -> Option<u32> {
        let (once, place) = (self.list.tally(1), self.written.beads.place);
        if too_long(once.written, place, context) || too_many(once.things, place, context) {
            return None;
        }
        let fill = self.times(context)?;
        let all = self.list.tally(fill);
        if too_many(all.things, place, context)
            || too_many_findings(all.findings, place, context)
            || too_long(all.written - once.written, place, context)
        {
            return None;
        }
        context.strung += all.things;
        Some(fill)
    }

    /// How often `fill` strings its list: as often as comes nearest to its wearer, or as fits its length.
    fn times(&self, context: &mut Context) -> Option<u32> {
        let turns = |bits: &[Bit]| self.spring(bits).map_or(0.0, |spring| spring.turns(self.stock(), bits));
        let inside = |bits: &[Bit]| self.inside(bits);
        let asked = self.made_to.asked.filter(|_| self.closure.open().is_none());
        let leave = self.leave().value();
        let measure = match (self.length, asked) {
            _ if self.cord().is_sprung() => Some(RowGoal { asked: self.made_to.wraps, measure: &turns }),
            (None, Some(asked)) => Some(RowGoal { asked: asked.value() - leave, measure: &inside }),
            _ => None,
        };
        match measure {
            Some(measure) if self.list.has_fill() => {
                nearest(self.written, &self.list, &self.shelf.beads, measure, context)
            }
            _ => fill(self.written, &self.list, self.length, self.takes(), context),
        }
    }

    /// Girth in mm of the largest limb that bits go round, closed or twisted.
    fn inside(&self, bits: &[Bit]) -> f64 {
        let Some(twisted) = self.made_to.twisted else { return self.row().inside(bits) };
        let rope = twisted.rope(self.stock(), bits, self.thick(), self.takes());
        rope.map_or(0.0, |rope| self.row().inside_rope(rope))
    }

    fn leave(&self) -> Length {
        self.written.leave.as_ref().map_or(Length::ZERO, |at| at.value)
    }

    /// How long it becomes; says so where that is not what the pattern says.
    fn finished(&self, fill: u32, context: &mut Context) -> Length {
        if let Some(length) = self.length.filter(|_| self.settle != Settle::Fill) {
            return length;
        }
        let finished = Length::mm(self.list.length(fill) + self.takes());
        context.remarks.extend(self.length.and_then(|length| self.compare(length, finished)));
        finished
    }

    /// A remark where a filled strand does not become as long as the pattern says.
    fn compare(&self, length: Length, finished: Length) -> Option<Remark> {
        let short = length - self.leave() - finished;
        let name = self.written.name.value.clone();
        let differs = if !self.list.has_fill() && short.value().abs() > SAME {
            said::Strand::Filled { strand: name, length: finished }
        } else if short > MUCH_SHORT {
            said::Strand::FillShort { strand: name, length: finished, short }
        } else {
            return None;
        };
        Some(Remark::new(differs).at(length_place(self.written)))
    }

    fn trains(&self, fill: u32, finished: Length, context: &mut Context) -> Option<Vec<Train>> {
        let [first, last] = self.ends.each_ref().map(|end| end.takes.value());
        let window = (first, finished.value() - last);
        if !self.list.held.is_empty() {
            return stops::trains(self.written, &self.list, self.settle, window, context);
        }
        let rest = rest(&self.list.last, self.list.given, self.settle, fill, window);
        context.take(rest.map_err(|over| overfull(self.written, &self.list, over, window.1 - window.0)))
    }

    /// Cord beyond its room that its beads take up where it bends as it is worn.
    fn slack(&self, trains: &[Train], finished: Length) -> Length {
        let gives = self.cord().is_sprung() || self.cord().kind == CordKind::Elastic;
        // Twisted strands lie now inside and now outside of the line round which they close.
        if gives || self.made_to.twisted.is_some() {
            return Length::ZERO;
        }
        let bits = trains.iter().flat_map(|train| &train.bits);
        let beaded: f64 = bits.filter(|bit| bit.what != What::Gap).map(Bit::length).sum();
        let bare = (finished.value() - self.takes() - beaded).max(0.0);
        let takes = self.made_to.bends.takes(&self.row(), trains, finished.value());
        if takes > bare { Length::mm(takes - bare) } else { Length::ZERO }
    }

    /// The repeat that fills it bead to bead.
    fn filled(&self, times: u32) -> Option<FillRepeat> {
        let fills = self.settle == Settle::Fill && self.list.has_fill();
        // Of a row that goes round its wearer the count is the nearest, whatever it is that fills it.
        let nearest = self.written.length.is_none().then(Vec::new);
        let ones = self.list.filled(times).or(nearest).filter(|_| fills);
        ones.map(|ones| FillRepeat { times, ones, leave: self.leave() })
    }

    fn strand(self, fill: u32, finished: Length, trains: Vec<Train>, context: &mut Context) -> Strand {
        let is_glued = !self.ends[1].findings.is_empty();
        Strand {
            name: self.written.name.value.clone(),
            cord: self.cord,
            legs: self.legs,
            finished,
            take_up: self.take_up,
            slack: self.slack(&trains, finished),
            allowance: ends::allowance(self.written, self.cord(), is_glued, context),
            chart: self.list.chart(fill),
            fill: self.filled(fill),
            ends: self.ends,
            trains,
            settle: self.settle,
            aside: Length::ZERO,
            place: self.written.name.place,
            length_place: length_place(self.written),
        }
    }
}

/// A strand's cord, what closes its ends, and its list, with all that they name.
fn named<'a>(
    strand: &'a pattern::Strand,
    shelf: &'a Inventory,
    context: &mut Context,
) -> Option<(Index<Cord>, End, List<'a>)> {
    let cord = shelf.find_cord(&strand.cord, context);
    if cord.is_some_and(|cord| shelf.cords[cord].is_sprung()) {
        spring::check(strand, shelf, context)?;
    }
    let end = ends::end(strand, cord, shelf, context);
    let list = list::list(&strand.beads.value, Given::new(strand, cord, shelf), context);
    Some((cord?, end?, list?))
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

/// Gives each knot the mass of the cord that it takes up.
fn weigh_knots(trains: &mut [Train], per_metre: Mass, take_up: Length) {
    let knots = trains.iter_mut().flat_map(|train| &mut train.bits).filter(|bit| bit.what == What::Knot);
    knots.for_each(|knot| knot.mass = per_metre.value() * take_up.value() / 1000.0);
}

/// Where a strand's length stands, or else its name.
pub fn length_place(strand: &pattern::Strand) -> Place {
    strand.length.as_ref().map_or(strand.name.place, |at| at.place)
}
