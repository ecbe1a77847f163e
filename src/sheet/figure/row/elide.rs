//! Leaving out repeats that would fill many lines.

use crate::design::{Design, Phrase, Strand};
use crate::steps::chart;

use super::span::{Span, Thing};

/// Most lines in which a whole row is drawn: about two pages. A longer one is shortened.
const MOST_LINES: f64 = 20.0;
/// Lines that the repeats must fill for some of them to be left out.
const LEAST_LINES: f64 = 6.0;
/// Lines of repeats that are drawn before those left out, and after them.
const DRAWN_LINES: [f64; 2] = [2.0, 0.5];
/// Cord lengths in mm that differ by less are the same.
const SAME: f64 = 1e-6;

/// A part of a row.
pub enum Part<'a, 's> {
    /// Spans that are drawn.
    Drawn(&'s [Span<'a>]),
    /// Repeats that are not.
    Elided(Elided),
}

/// Repeats that are left out.
pub struct Elided {
    /// How many.
    pub times: usize,
    /// What is repeated, as the word chart says it.
    pub words: String,
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
    words: String,
}

/// The row in parts: all of it, or without most of its longest repeats.
pub fn parts<'a, 's>(design: &Design, strand: &Strand, spans: &'s [Span<'a>], room: f64) -> Vec<Part<'a, 's>> {
    let whole: f64 = spans.iter().map(Span::length).sum();
    if whole <= MOST_LINES * room {
        return vec![Part::Drawn(spans)];
    }
    let things: Vec<usize> = (0..spans.len()).filter(|at| is_thing(&spans[*at])).collect();
    let row = Row { design, spans, things, room };
    let mut repeats = Vec::new();
    row.find(&chart::simple(&strand.chart), 0, &mut repeats);
    let mut parts = Vec::new();
    let mut from = 0;
    for elided in repeats.iter().filter_map(|repeats| row.elided(repeats)) {
        parts.push(Part::Drawn(&spans[from..elided.from]));
        from = elided.to;
        parts.push(Part::Elided(elided));
    }
    parts.push(Part::Drawn(&spans[from..]));
    parts
}

fn is_thing(span: &Span<'_>) -> bool {
    matches!(span.thing, Thing::Bit(_)) && !span.is_knot()
}

/// How many things a list puts on the cord.
fn things(phrases: &[Phrase]) -> usize {
    let of = |phrase: &Phrase| match phrase {
        Phrase::Run(count, _) => *count as usize,
        Phrase::Times(count, list) => *count as usize * things(list),
        Phrase::Mirror(side, middle) => 2 * things(side) + things(middle),
        Phrase::Finding(_) | Phrase::Stop(..) | Phrase::Dangle(..) => 1,
        Phrase::Gap(_) | Phrase::Knot => 0,
    };
    phrases.iter().map(of).sum()
}

struct Row<'a, 's> {
    design: &'s Design,
    spans: &'s [Span<'a>],
    /// Spans of the things.
    things: Vec<usize>,
    room: f64,
}

impl Row<'_, '_> {
    /// Finds the outermost repeats of a list whose first thing has a number; inside a repeat only
    /// where one of them alone fills many lines.
    fn find(&self, phrases: &[Phrase], mut at: usize, found: &mut Vec<Repeats>) {
        for phrase in phrases {
            let all = things(std::slice::from_ref(phrase));
            match phrase {
                Phrase::Run(count, _) => {
                    let words = chart::row(self.design, &[with_count(phrase)]);
                    found.push(Repeats { start: at, each: 1, times: *count as usize, words });
                }
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
            found.push(Repeats { start: at, each, times, words: chart::row(self.design, list) });
        }
    }

    /// What stands in a mirror's side stands backwards, at the same distance, on the other.
    fn find_mirror(&self, side: &[Phrase], middle: &[Phrase], at: usize, found: &mut Vec<Repeats>) {
        let (half, all) = (things(side), 2 * things(side) + things(middle));
        let mut forward = Vec::new();
        self.find(side, at, &mut forward);
        let backward = forward.iter().rev().map(|repeats| Repeats {
            start: 2 * at + all - repeats.start - repeats.each * repeats.times,
            words: format!("{}, backwards", repeats.words),
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
        let Repeats { start, each, times, .. } = *repeats;
        let length = self.length(start, start + each * times);
        if length <= LEAST_LINES * self.room || times < 4 {
            return None;
        }
        let one = length / times as f64;
        let [first, last] = DRAWN_LINES.map(|lines| ((lines * self.room / one).ceil() as usize).max(1));
        let left_out = times.checked_sub(first + last).filter(|left_out| *left_out > 0)?;
        let begins = |time: usize| self.span(start + time * each);
        let time = |time: usize| &self.spans[begins(time)..begins(time + 1)];
        let alike = (first..first + left_out).all(|other| all_same(time(first), time(other)));
        let (from, to) = (begins(first), begins(first + left_out));
        let spans = &self.spans[from..to];
        alike.then(|| Elided {
            times: left_out,
            words: repeats.words.clone(),
            beads: spans.iter().map(Span::beads).sum(),
            length: spans.iter().map(|span| span.cord).sum(),
            from,
            to,
        })
    }
}

fn with_count(phrase: &Phrase) -> Phrase {
    match phrase {
        Phrase::Run(_, bead) => Phrase::Run(1, *bead),
        other => other.clone(),
    }
}

fn all_same(one: &[Span<'_>], other: &[Span<'_>]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
}

fn same(one: &Span<'_>, other: &Span<'_>) -> bool {
    let thing = match (&one.thing, &other.thing) {
        (Thing::Bit(one), Thing::Bit(other)) => one.what == other.what,
        (Thing::Bare { .. }, Thing::Bare { .. }) => true,
        _ => false,
    };
    thing && (one.cord - other.cord).abs() < SAME
}
