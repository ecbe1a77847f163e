//! Repeats that would fill many lines: which of them are drawn, and what is left out between those.

use crate::design::{Phrase, Strand};
use crate::steps::chart;

use super::span::{Span, Spanned};

/// Most lines in which a whole row is drawn: about two pages. A longer one is shortened.
const MOST_LINES: f64 = 20.0;
/// Lines that the repeats must fill for some of them to be left out.
const LEAST_LINES: f64 = 6.0;
/// Fewest repeats of which some are left out.
const LEAST_TIMES: usize = 4;
/// Lines of repeats that are drawn before those left out, and after them.
const DRAWN_LINES: [f64; 2] = [2.0, 0.5];
/// Cord lengths in mm that differ by less are the same.
const SAME: f64 = 1e-6;

/// A part of a row.
pub enum RowPart<'a, 's> {
    /// Spans that are drawn.
    Drawn(&'s [Span<'a>]),
    /// Repeats that are not.
    Elided(Elided),
}

/// Repeats that are left out.
pub struct Elided {
    /// How many.
    pub times: usize,
    /// What is repeated.
    pub list: Vec<Phrase>,
    /// Whether it is strung backwards.
    pub backwards: bool,
    /// How many beads they have, branches included.
    pub beads: usize,
    /// Length of cord that they take.
    pub length: f64,
    from: usize,
    to: usize,
}

/// A list that is strung several times on end, counted in things: beads, branches and findings.
struct Repeats {
    start: usize,
    each: usize,
    times: usize,
    list: Vec<Phrase>,
    backwards: bool,
}

/// Marks the spans with which repeats begin.
pub fn open(strand: &Strand, spans: &mut [Span<'_>], room: f64) {
    let row = Spans::new(spans, room);
    let begin = |repeats: &Repeats| {
        let [start, each] = [repeats.start, repeats.each];
        (0..=repeats.times).map(|time| row.span(start + time * each)).collect::<Vec<_>>()
    };
    let opening: Vec<_> = row.repeats(strand).iter().flat_map(begin).collect();
    for at in opening {
        spans.get_mut(at).into_iter().for_each(|span| span.opens = true);
    }
}

/// The row in parts: all of it, or without most of its longest repeats.
pub fn parts<'a, 's>(strand: &Strand, spans: &'s [Span<'a>], room: f64) -> Vec<RowPart<'a, 's>> {
    let whole: f64 = spans.iter().map(Span::length).sum();
    if whole <= MOST_LINES * room {
        return vec![RowPart::Drawn(spans)];
    }
    let row = Spans::new(spans, room);
    let mut parts = Vec::new();
    let mut from = 0;
    for elided in row.repeats(strand).iter().filter_map(|repeats| row.elided(repeats)) {
        parts.push(RowPart::Drawn(&spans[from..elided.from]));
        from = elided.to;
        parts.push(RowPart::Elided(elided));
    }
    parts.push(RowPart::Drawn(&spans[from..]));
    parts
}

fn is_thing(span: &Span<'_>) -> bool {
    matches!(span.thing, Spanned::Bit(_)) && !span.is_knot()
}

/// How many things, beads, branches and findings, a list puts on the cord.
fn things(phrases: &[Phrase]) -> usize {
    chart::count(phrases, |phrase| !matches!(phrase, Phrase::Gap(_) | Phrase::Links(_) | Phrase::Knot))
}

struct Spans<'a, 's> {
    spans: &'s [Span<'a>],
    /// Spans of the things.
    things: Vec<usize>,
    room: f64,
}

impl<'a, 's> Spans<'a, 's> {
    fn new(spans: &'s [Span<'a>], room: f64) -> Self {
        let things = (0..spans.len()).filter(|at| is_thing(&spans[*at])).collect();
        Self { spans, things, room }
    }

    /// The outermost repeats of a strand.
    fn repeats(&self, strand: &Strand) -> Vec<Repeats> {
        let mut found = Vec::new();
        self.find(&chart::simple(&strand.chart), 0, &mut found);
        found
    }

    /// Finds the outermost repeats of a list whose first thing has a number; inside a repeat only
    /// where one of them alone fills many lines.
    fn find(&self, phrases: &[Phrase], mut at: usize, found: &mut Vec<Repeats>) {
        for phrase in phrases {
            let all = things(std::slice::from_ref(phrase));
            match phrase {
                Phrase::Times(count, list) => self.find_times(*count as usize, list, at, found),
                Phrase::Mirror(side, middle) => self.find_mirror(side, middle, at, found),
                _ => {}
            }
            at += all;
        }
    }

    fn find_times(&self, times: usize, list: &[Phrase], at: usize, found: &mut Vec<Repeats>) {
        let each = things(list);
        if each > 0 && self.length(at, at + each) > LEAST_LINES * self.room {
            (0..times).for_each(|time| self.find(list, at + time * each, found));
        } else if each > 0 {
            found.push(Repeats { start: at, each, times, list: list.to_vec(), backwards: false });
        }
    }

    /// What stands in a mirror's side stands backwards, at the same distance, on the other.
    fn find_mirror(&self, side: &[Phrase], middle: &[Phrase], at: usize, found: &mut Vec<Repeats>) {
        let (half, all) = (things(side), 2 * things(side) + things(middle));
        let mut forward = Vec::new();
        self.find(side, at, &mut forward);
        let backward = forward.iter().rev().map(|repeats| Repeats {
            start: 2 * at + all - repeats.start - repeats.each * repeats.times,
            list: repeats.list.clone(),
            backwards: !repeats.backwards,
            ..*repeats
        });
        let backward: Vec<Repeats> = backward.collect();
        found.extend(forward);
        self.find(middle, at + half, found);
        found.extend(backward);
    }

    /// The span with which a thing begins.
    fn span(&self, thing: usize) -> usize {
        self.things.get(thing).copied().unwrap_or(self.spans.len())
    }

    /// Length on paper from one thing to another.
    fn length(&self, from: usize, to: usize) -> f64 {
        self.spans[self.span(from)..self.span(to)].iter().map(Span::length).sum()
    }

    /// What is left out of repeats, if they are long enough and all alike.
    fn elided(&self, repeats: &Repeats) -> Option<Elided> {
        let (first, left_out) = self.left_out(repeats)?;
        let begins = |time: usize| self.span(repeats.start + time * repeats.each);
        let time = |time: usize| &self.spans[begins(time)..begins(time + 1)];
        let alike = (first..first + left_out).all(|other| all_same(time(first), time(other)));
        let (from, to) = (begins(first), begins(first + left_out));
        let spans = &self.spans[from..to];
        alike.then(|| Elided {
            times: left_out,
            list: repeats.list.clone(),
            backwards: repeats.backwards,
            beads: spans.iter().map(Span::beads).sum(),
            length: spans.iter().map(|span| span.cord).sum(),
            from,
            to,
        })
    }

    /// How many of long repeats are drawn before those that are left out, and how many those are.
    fn left_out(&self, repeats: &Repeats) -> Option<(usize, usize)> {
        let length = self.length(repeats.start, repeats.start + repeats.each * repeats.times);
        if length <= LEAST_LINES * self.room || repeats.times < LEAST_TIMES {
            return None;
        }
        let one = length / repeats.times as f64;
        let [first, last] = DRAWN_LINES.map(|lines| ((lines * self.room / one).ceil() as usize).max(1));
        Some((first, repeats.times.checked_sub(first + last).filter(|left_out| *left_out > 0)?))
    }
}

fn all_same(one: &[Span<'_>], other: &[Span<'_>]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
}

fn same(one: &Span<'_>, other: &Span<'_>) -> bool {
    let thing = match (&one.thing, &other.thing) {
        (Spanned::Bit(one), Spanned::Bit(other)) => one.what == other.what,
        (Spanned::Bare { .. }, Spanned::Bare { .. }) => true,
        _ => false,
    };
    thing && (one.cord - other.cord).abs() < SAME
}
