//! A strand's row: all that is strung, laid straight at actual size and broken into lines.
//!
//! Lines break between beads. Bare cord of more than [`span::LONG`] mm, and cord along which beads slide,
//! is cut short with a mark; so is the ruler there. What no page has room for is drawn smaller,
//! with the ruler broken, and [`Row::reduced`] counts it. Of a long run of one bead the first and the last are drawn, with
//! the number of those between them. Of repeats that would fill many lines the first and the last are drawn, and a line
//! between them says what is left out. Nothing is left out otherwise: beads drawn and beads told as left out are the strand's.

mod label;
mod line;
mod lowered;
mod meeting;
mod run;
mod span;

use crate::Piece;
use crate::art::Stencils;
use crate::design::{Design, Index, Phrase, Strand};
use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::steps::chart;
use crate::steps::posts::Posts;
use crate::units::Length;

pub use meeting::meeting;

use line::Line;
use span::{Span, Thing};

/// Most lines in which a whole row is drawn: about two pages. A longer one is shortened.
const MOST_LINES: f64 = 20.0;
/// Lines that the repeats must fill for some of them to be left out.
const LEAST_LINES: f64 = 6.0;
/// Lines of repeats that are drawn before those left out, and after them.
const DRAWN_LINES: [f64; 2] = [2.0, 0.5];
/// Cord lengths in mm that differ by less are the same.
const SAME: f64 = 1e-6;

/// A row as drawn.
pub struct Row {
    /// Its lines, from the first end to the last.
    pub lines: Vec<Block>,
    /// How many things are drawn smaller than they are.
    pub reduced: usize,
    /// How many runs are too short for their letter.
    pub unlettered: usize,
    /// Whether repeats are left out, which a line then tells.
    pub elided: bool,
}

/// Draws the row of a strand in lines of a width.
pub fn row(piece: &Piece, strand: Index<Strand>, width: f64, stencils: &mut Stencils<'_>) -> Row {
    let (strand, starts) = (&piece.design.strands[strand], &piece.drape.strands[strand].starts);
    let fastened = span::fastened(&piece.design, strand);
    let mut spans = span::spans(&piece.design, strand, starts, fastened);
    let lead = line::lead(&spans);
    let room = width - 2.0 * lead;
    open(&piece.design, strand, &mut spans, room);
    let posts = Posts::new(&piece.design, strand);
    let mut row = Row { lines: Vec::new(), reduced: 0, unlettered: 0, elided: false };
    row.reduced = spans.iter().filter(|span| span.scale < 1.0).count();
    for part in parts(&piece.design, strand, &spans, room) {
        match part {
            Part::Drawn(spans) => {
                for spans in &line::broken(&run::shortened(spans, posts.all(), room), room) {
                    let posts = posts.all();
                    let line = Line { design: &piece.design, strand, fastened, posts, spans, lead, width };
                    let (block, unlettered) = line.draw(stencils);
                    row.unlettered += unlettered;
                    row.lines.push(block);
                }
            }
            Part::Elided(elided) => {
                row.elided = true;
                row.lines.push(told(&elided, piece, width));
            }
        }
    }
    if let Some((block, reduced)) = meeting(&piece.design, strand, width, stencils) {
        row.reduced += usize::from(reduced);
        row.lines.push(block);
    }
    row
}

/// The line that says what is left out.
fn told(elided: &Elided, piece: &Piece, width: f64) -> Block {
    let units = piece.design.heading.units;
    let (times, beads) = (elided.times, elided.beads);
    let again = if times == 1 { "once".to_owned() } else { format!("{times} times") };
    let length = units.ruler(Length::mm(elided.length));
    let words = format!("… the same {again} more ({}): {beads} beads, {length}, not drawn …", elided.words);
    Type::STRONG.paragraph(&words, width)
}

/// A part of a row.
enum Part<'a, 's> {
    /// Spans that are drawn.
    Drawn(&'s [Span<'a>]),
    /// Repeats that are not.
    Elided(Elided),
}

/// Repeats that are left out.
struct Elided {
    /// How many.
    times: usize,
    /// What is repeated, as the word chart says it.
    words: String,
    /// How many beads they have, branches included.
    beads: usize,
    /// Length of cord that they take.
    length: f64,
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

/// Marks the spans with which repeats begin.
fn open(design: &Design, strand: &Strand, spans: &mut [Span<'_>], room: f64) {
    let row = Spans::new(design, spans, room);
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
fn parts<'a, 's>(design: &Design, strand: &Strand, spans: &'s [Span<'a>], room: f64) -> Vec<Part<'a, 's>> {
    let whole: f64 = spans.iter().map(Span::length).sum();
    if whole <= MOST_LINES * room {
        return vec![Part::Drawn(spans)];
    }
    let row = Spans::new(design, spans, room);
    let mut parts = Vec::new();
    let mut from = 0;
    for elided in row.repeats(strand).iter().filter_map(|repeats| row.elided(repeats)) {
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

/// How many things, beads, branches and findings, a list puts on the cord.
fn things(phrases: &[Phrase]) -> usize {
    chart::count(phrases, |phrase| !matches!(phrase, Phrase::Gap(_) | Phrase::Links(_) | Phrase::Knot))
}

struct Spans<'a, 's> {
    design: &'s Design,
    spans: &'s [Span<'a>],
    /// Spans of the things.
    things: Vec<usize>,
    room: f64,
}

impl<'a, 's> Spans<'a, 's> {
    fn new(design: &'s Design, spans: &'s [Span<'a>], room: f64) -> Self {
        let things = (0..spans.len()).filter(|at| is_thing(&spans[*at])).collect();
        Self { design, spans, things, room }
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
