//! How a row breaks into lines, and what of it is left out: repeats that would fill many lines, of which some are drawn and a
//! line says the rest, and the middle of long runs of one bead, where a number stands for it.

use std::ops::Range;

use crate::design::{Phrase, Strand};
use crate::sheet::said::LeftOut;
use crate::steps::chart;
use crate::steps::posts::Post;
use crate::units::Length;

use super::spans::{Span, Spanned};

/// Most lines in which a whole row is drawn: about two pages. A longer one is shortened.
const MOST_LINES: f64 = 20.0;
/// Lines that the repeats must fill for some of them to be left out.
const LEAST_LINES: f64 = 6.0;
/// Fewest repeats of which some are left out.
const LEAST_TIMES: usize = 4;
/// Lines of repeats that are drawn before those left out, and after them.
const DRAWN_LINES: [f64; 2] = [2.0, 0.5];
/// Cord lengths in mm that differ by less are the same.
const SAME_CORD: f64 = 1e-6;

/// Most beads of a run that are drawn at either end of what is left out.
const DRAWN: usize = 10;
/// Width in mm of what stands for those left out: room for their number and length in both units.
const LEFT_OUT: f64 = 38.0;
/// The most of a line that a shortened run takes.
const RUN_SHARE: f64 = 0.85;
/// How many times as long a run is as what would be drawn of it, at least, for some of it to be left out.
const LEAST_LONGER: f64 = 1.6;

/// Shortest in mm that bare cord is drawn, with room for its length.
const SHORTEST_CORD: f64 = 14.0;
/// Share of a line below which the last one is made longer.
const LEAST_LAST: f64 = 0.33;
/// Share of a line at its end in which it may end beside bare cord or between runs, and where a repeat begins.
const NEAR: f64 = 0.2;
const FAR: f64 = 0.25;
/// Into how many steps a line is divided to find the shortest equal ones.
const STEPS: u8 = 24;
/// How many beads of a run that fills its line stand with bare cord on the next.
const FEW: usize = 6;

/// A portion of a row.
pub enum Portion<'a, 's> {
    /// Spans that are drawn.
    Drawn(&'s [Span<'a>]),
    /// Repeats that are not.
    LeftOut(LeftOut),
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

/// The row in portions: all of it, or without most of its longest repeats.
pub fn portions<'a, 's>(strand: &Strand, spans: &'s [Span<'a>], room: f64) -> Vec<Portion<'a, 's>> {
    if length(spans) <= MOST_LINES * room {
        return vec![Portion::Drawn(spans)];
    }
    let row = Spans::new(spans, room);
    let mut portions = Vec::new();
    let mut from = 0;
    for (range, said) in row.repeats(strand).into_iter().filter_map(|repeats| row.left_out(repeats)) {
        portions.push(Portion::Drawn(&spans[from..range.start]));
        portions.push(Portion::LeftOut(said));
        from = range.end;
    }
    portions.push(Portion::Drawn(&spans[from..]));
    portions
}

fn is_thing(span: &Span<'_>) -> bool {
    matches!(span.thing, Spanned::Bit(..)) && !span.is_knot()
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
        length(&self.spans[self.span(from)..self.span(to)])
    }

    /// What is left out of repeats, if they are long enough and all alike, and which spans those are.
    fn left_out(&self, repeats: Repeats) -> Option<(Range<usize>, LeftOut)> {
        let (first, times) = self.times_left_out(&repeats)?;
        let begins = |time: usize| self.span(repeats.start + time * repeats.each);
        let time = |time: usize| &self.spans[begins(time)..begins(time + 1)];
        let alike = (first..first + times).all(|other| all_same(time(first), time(other)));
        let range = begins(first)..begins(first + times);
        let spans = &self.spans[range.clone()];
        let said = LeftOut {
            times,
            list: repeats.list,
            backwards: repeats.backwards,
            beads: spans.iter().map(Span::beads).sum(),
            length: Length::mm(spans.iter().map(|span| span.cord).sum()),
        };
        alike.then_some((range, said))
    }

    /// How many of long repeats are drawn before those that are left out, and how many those are.
    fn times_left_out(&self, repeats: &Repeats) -> Option<(usize, usize)> {
        let length = self.length(repeats.start, repeats.start + repeats.each * repeats.times);
        if length <= LEAST_LINES * self.room || repeats.times < LEAST_TIMES {
            return None;
        }
        let one = length / repeats.times as f64;
        let [first, last] = DRAWN_LINES.map(|lines| ((lines * self.room / one).ceil() as usize).max(1));
        Some((first, repeats.times.checked_sub(first + last).filter(|times| *times > 0)?))
    }
}

fn all_same(one: &[Span<'_>], other: &[Span<'_>]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
}

fn same(one: &Span<'_>, other: &Span<'_>) -> bool {
    let thing = match (&one.thing, &other.thing) {
        (Spanned::Bit(one, _), Spanned::Bit(other, _)) => one.what == other.what,
        (Spanned::Bare { .. }, Spanned::Bare { .. }) => true,
        _ => false,
    };
    thing && (one.cord - other.cord).abs() < SAME_CORD
}

/// Spans without most of each run that is long in a room, unless something there has a place of its own.
pub fn shortened<'a>(spans: &[Span<'a>], posts: &[Post], room: f64) -> Vec<Span<'a>> {
    let mut kept = Vec::new();
    for run in spans.chunk_by(|one, next| goes_on(one, next)) {
        match middle(run, room).filter(|(from, to)| !holds_post(&run[*from..*to], posts)) {
            Some((from, to)) => {
                kept.extend_from_slice(&run[..from]);
                kept.extend(more(&run[from..to]));
                kept.extend_from_slice(&run[to..]);
            }
            None => kept.extend_from_slice(run),
        }
    }
    kept
}

/// Whether a run goes on from one span to the next: knots between beads of a kind do not end it.
fn goes_on(one: &Span<'_>, next: &Span<'_>) -> bool {
    let strung = |span: &Span<'_>| span.bead().is_some() || span.is_knot();
    strung(one) && strung(next) && !(next.bead().is_some() && next.run.0 == 0)
}

/// Which spans of a run are left out: from the first bead after those drawn to the last ones drawn.
fn middle(run: &[Span<'_>], room: f64) -> Option<(usize, usize)> {
    let beads: Vec<usize> = (0..run.len()).filter(|at| run[*at].bead().is_some()).collect();
    let whole = length(run);
    let each = whole / beads.len().max(1) as f64;
    let fit = ((RUN_SHARE * room - LEFT_OUT) / (2.0 * each)).floor().max(1.0) as usize;
    let drawn = DRAWN.min(fit);
    let last = beads.len().checked_sub(drawn)?;
    let long = whole > LEAST_LONGER * (2.0 * drawn as f64).mul_add(each, LEFT_OUT);
    (long && drawn < last).then(|| (beads[drawn], beads[last]))
}

/// Whether what stays in its place stands among spans.
fn holds_post(spans: &[Span<'_>], posts: &[Post]) -> bool {
    let [Some(first), Some(last)] = [spans.first(), spans.last()] else { return false };
    let among = first.from..last.from + last.cord;
    posts.iter().any(|post| among.contains(&post.station.value()))
}

/// What stands for spans that are left out.
fn more<'a>(spans: &[Span<'a>]) -> Option<Span<'a>> {
    let count = spans.iter().filter(|span| span.bead().is_some()).count();
    let first = *spans.first()?;
    let thing = Spanned::More(u32::try_from(count).ok()?, first.bead()?);
    let cord = spans.iter().map(|span| span.cord).sum();
    Some(Span { thing, cord, before: LEFT_OUT / 2.0, after: LEFT_OUT / 2.0, number: None, ..first })
}

/// The spans in lines no longer than the room: in equal ones where a few beads would stand on the last alone.
pub fn broken<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let full = filled(spans, room);
    let last = full.last().map_or(0.0, |last| length(last));
    if full.len() < 2 || last > LEAST_LAST * room {
        return full;
    }
    let rooms = (1..STEPS).map(|step| room * f64::from(step) / f64::from(STEPS));
    rooms.map(|room| filled(spans, room)).find(|even| even.len() == full.len()).unwrap_or(full)
}

/// The spans in lines as full as can be. A line ends where a run does, if that is near its end; bare cord that ends the
/// row stands on the line of the last beads.
fn filled<'a>(spans: &[Span<'a>], room: f64) -> Vec<Vec<Span<'a>>> {
    let (mut lines, mut from, mut long) = (Vec::new(), 0, 0.0);
    for (at, span) in spans.iter().enumerate() {
        if at > from && long + span.length() > room {
            let cut = last_place(spans, from, at, room);
            lines.push(spans[from..cut].to_vec());
            long = length(&spans[cut..at]);
            from = cut;
        }
        long += span.length();
    }
    if from < spans.len() {
        lines.push(spans[from..].to_vec());
    }
    gather(&mut lines, room);
    lines
}

/// Brings a last line without beads to the beads before it: up to them where there is room for its
/// cord cut short, or else the last run, or the last few beads of one that fills its line, down to it.
fn gather(lines: &mut Vec<Vec<Span<'_>>>, room: f64) {
    let Some(mut last) = lines.pop_if(|last| !last.iter().any(is_strung)) else { return };
    let Some(before) = lines.last_mut() else { return lines.push(last) };
    let beads = before.iter().rposition(is_strung).map_or(0, |at| at + 1);
    last.splice(0..0, before.drain(beads..));
    let bare = last.iter().filter(|span| span.is_bare()).count() as f64;
    let ends: f64 = last.iter().filter(|span| !span.is_bare()).map(Span::length).sum();
    let left = room - length(before) - ends;
    if left >= SHORTEST_CORD * bare {
        before.append(&mut last);
        shorten(before, beads, room);
    } else {
        let run = last_run(before);
        if length(&before[run..]) + length(&last) <= room {
            last.splice(0..0, before.split_off(run));
        }
        lines.push(last);
    }
}

/// Cuts bare cord of a line short to a room, all alike: what stands from a place on, and what is drawn shorter anyhow.
fn shorten(line: &mut [Span<'_>], from: usize, room: f64) {
    let gives = |at: &usize| line[*at].is_bare() && (*at >= from || line[*at].is_broken());
    let bare: Vec<usize> = (0..line.len()).filter(gives).collect();
    let kept = length(line) - bare.iter().map(|at| line[*at].length()).sum::<f64>();
    let each = (room - kept) / bare.len().max(1) as f64;
    bare.into_iter().for_each(|at| line[at] = line[at].cut_short(each));
}

/// Whether a bead, a finding or a branch stands there, or beads that are left out.
const fn is_strung(span: &Span<'_>) -> bool {
    matches!(span.thing, Spanned::Bit(..) | Spanned::More(..))
}

/// Length of spans on paper.
fn length(spans: &[Span<'_>]) -> f64 {
    spans.iter().map(Span::length).sum()
}

/// Where the last run of a line begins, or the last few beads of one that fills it.
fn last_run(line: &[Span<'_>]) -> usize {
    let starts_run = |at: &usize| line[*at].run.0 == 0 && !line[*at].is_knot();
    let few = line.len().saturating_sub(FEW).max(1).min(line.len());
    (1..line.len()).rev().find(starts_run).unwrap_or(few)
}

/// Where to end a line that has room up to a span: near its end beside bare cord, or where a repeat begins, or else where no
/// run goes on and no finding, such as a cap, is parted from what it faces.
fn last_place(spans: &[Span<'_>], from: usize, at: usize, room: f64) -> usize {
    let near = |share: f64| {
        let mut left = share * room;
        let is_near = move |cut: &usize| {
            let near = left >= 0.0;
            left -= spans[cut - 1].length();
            near
        };
        (from + 1..=at).rev().take_while(is_near)
    };
    let beside_bare = |cut: &usize| spans[*cut].is_bare() || spans[*cut - 1].is_bare();
    let parts_facing = |cut: usize| spans[cut].faces(false) || spans[cut - 1].faces(true);
    let between_runs = |cut: &usize| spans[*cut].run.0 == 0 && !spans[*cut].is_knot() && !parts_facing(*cut);
    let at_repeat = |cut: &usize| spans[*cut].opens && between_runs(cut);
    let bare = near(NEAR).find(beside_bare);
    bare.or_else(|| near(FAR).find(at_repeat)).or_else(|| near(NEAR).find(between_runs)).unwrap_or(at)
}
