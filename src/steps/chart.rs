//! The word chart: a strand's row in letters, the way a maker says it.
//!
//! `5A 1B, 11 times, then 5A` is eleven times five of bead A and one of bead B, and five of A. What
//! is not a bead stands in round brackets: `(½ in = 12 mm bare)`, `(knot)`, `(1 bead cap)`,
//! `(dangle: 1C 2A on a head pin)`. Stops and bars, which beads do not go through, are clauses of their own:
//! `30A, then (bar: spacer bar with three holes, hole 1), then 6A`, `2A, then (stop: crimp)`. A repeat of more
//! than one phrase stands in square brackets: `[[3A 1B], 4 times, then 1C], 6 times`; so does one that follows
//! other phrases, or stands in brackets itself: `30A, then [6A 1B], 3 times`. What stays in its place has its name and station, as every page
//! prints them: `2A, then (stop S1 at 110 mm: crimp)`, `(G1 at 40 mm) 3A (knot K1 at 51 mm)`; what does so in a
//! repeat is named after it, in order: `5A (knot), 12 times (knots K2 to K13)`. The chart is first made as short as its
//! writing allows: neighbouring runs of one bead are added, repeats of repeats multiplied, lists written out
//! three times or more told as repeats. The row stays the same. A row without a pattern is told in tens, which go on from
//! what its list strings before, as the counts above the drawn row do: `2C, then 30 in this order: (3–10) 3A 1B 4A
//! (11–20) …`, and of many beads of a kind on end the length as well: `24A (168 mm long)`.

use std::ops::Range;

use super::english::words::a;
use super::posts::{self, Keeps, Posts};
use crate::design::{Bead, Design, Finding, Index, LEAST_BARE, Phrase, Rest, Shared, Strand, What, taken_by};
use crate::pattern::{FindingKind, Settle};
use crate::units::{Length, UnitStyle, fraction};

/// Longest list, in phrases, that is told as a repeat where it is written out.
const LONGEST_FOLD: usize = 12;
/// Fewest beads of a kind on end whose length is told beside their number: an assumption.
const LONG_RUN: u32 = 20;
/// How many beads of a row without a pattern are told together.
const TEN: usize = 10;
/// How often a list must be written out to be told as a repeat.
const LEAST_FOLD: usize = 3;

/// The word chart of a strand; of one on a pin what is on that, from its loop down.
#[must_use]
pub fn text(design: &Design, strand: &Strand) -> String {
    match strand.chart.as_slice() {
        [Phrase::Dangle(Some(_), list)] if strand.is_on_pin(design) => told(design, strand, list.clone()),
        _ => told(design, strand, bared(strand)),
    }
}

/// The same without what its ends meet in, which is not strung with the row.
#[must_use]
pub fn strung(design: &Design, strand: &Strand) -> String {
    let row = bared(strand).into_iter().filter(|phrase| !matches!(phrase, Phrase::Dangle(None, _)));
    told(design, strand, row.collect())
}

fn told(design: &Design, strand: &Strand, written: Vec<Phrase>) -> String {
    let phrases = if strand.settle == Settle::Spread { groups(&written) } else { simple(&written) };
    let posts = Posts::new(design, strand);
    Teller { design, strand: Some(strand), posts: Some(&posts), is_inside: false }.all(&phrases)
}

/// The row as written, but for a space that opens a fixed one: it is counted from the first end's loop, and
/// what of it is bare is what the end's findings leave; then what is left bare at the last end is told too.
fn bared(strand: &Strand) -> Vec<Phrase> {
    let first = strand.bits().next().filter(|bit| strand.settle == Settle::Fixed && bit.what == What::Gap);
    match (strand.chart.split_first(), first) {
        (Some((Phrase::Gap(_), rest)), Some(bare)) => {
            let first = Phrase::Gap(Length::mm(bare.length()));
            std::iter::once(first).chain(rest.iter().cloned()).chain(left_bare(strand)).collect()
        }
        _ => strand.chart.clone(),
    }
}

/// The bare cord between a fixed row and the last end's findings, where a ruler shows it.
fn left_bare(strand: &Strand) -> Option<Phrase> {
    let train = strand.trains.last()?;
    let Rest::At(start) = train.rest else { return None };
    let left = strand.finished - strand.ends[1].takes - Length::mm(start + train.length());
    (left >= LEAST_BARE && !matches!(strand.chart.last(), Some(Phrase::Gap(_)))).then_some(Phrase::Gap(left))
}

/// The words for a short row, such as what hangs on a pin.
#[must_use]
pub fn row(design: &Design, phrases: &[Phrase]) -> String {
    Teller { design, strand: None, posts: None, is_inside: false }.sequence(&simple(phrases))
}

/// The same row in fewer phrases.
#[must_use]
pub fn simple(phrases: &[Phrase]) -> Vec<Phrase> {
    folded(&joined(phrases))
}

/// Tells a list that is written out again and again as a repeat.
fn folded(row: &[Phrase]) -> Vec<Phrase> {
    let mut folded = Vec::new();
    let mut rest = row;
    while let Some((first, after)) = rest.split_first() {
        let ways = (1..=LONGEST_FOLD.min(rest.len())).map(|length| (length, repeats(rest, length)));
        // Of folds that tell equally much, the first has the shortest list.
        let best = ways.filter(|(_, often)| *often >= LEAST_FOLD).rev().max_by_key(|(length, often)| length * often);
        match best.and_then(|(length, often)| Some((length * often, u32::try_from(often).ok()?, rest.get(..length)?))) {
            Some((told, often, list)) => {
                times(often, list.to_vec(), &mut folded);
                // `told` phrases were found to stand here, so the rest begins no later than the end.
                rest = &rest[told..];
            }
            None => {
                push(first.clone(), &mut folded);
                rest = after;
            }
        }
    }
    folded
}

/// How often the first so many phrases stand at the row's beginning.
fn repeats(row: &[Phrase], length: usize) -> usize {
    let (list, _) = row.split_at(length);
    row.chunks_exact(length).take_while(|chunk| *chunk == list).count()
}

/// The same row without repeats of repeats, or runs beside runs of the same bead.
fn joined(phrases: &[Phrase]) -> Vec<Phrase> {
    let mut row = Vec::new();
    for phrase in phrases {
        match phrase {
            Phrase::Times(count, list) => times(*count, simple(list), &mut row),
            Phrase::Mirror(side, middle) => match (simple(side), simple(middle)) {
                (side, middle) if side.is_empty() => middle.into_iter().for_each(|phrase| push(phrase, &mut row)),
                (side, middle) => row.push(Phrase::Mirror(side, middle)),
            },
            Phrase::Dangle(on, list) => row.push(Phrase::Dangle(*on, simple(list))),
            // One that is short, or turns but once, needs no tens.
            Phrase::Ordered(list) if things(list) <= TEN || list.len() <= 2 => {
                list.iter().for_each(|phrase| push(phrase.clone(), &mut row));
            }
            other => push(other.clone(), &mut row),
        }
    }
    row
}

/// The row with its repeats left as they are, for a strand whose repeats are spread apart.
fn groups(phrases: &[Phrase]) -> Vec<Phrase> {
    let group = |phrase: &Phrase| match phrase {
        Phrase::Times(count, list) => vec![Phrase::Times(*count, simple(list))],
        other => simple(std::slice::from_ref(other)),
    };
    phrases.iter().flat_map(group).collect()
}

/// Adds a repeat of a list that is already simple.
fn times(count: u32, list: Vec<Phrase>, row: &mut Vec<Phrase>) {
    match (count, list.as_slice()) {
        (0, _) | (_, []) => {}
        (1, list) => list.iter().for_each(|phrase| push(phrase.clone(), row)),
        (count, [Phrase::Run(run, bead)]) => push(Phrase::Run(count.saturating_mul(*run), *bead), row),
        (count, [Phrase::Times(inner, list)]) => push(Phrase::Times(count.saturating_mul(*inner), list.clone()), row),
        _ => push(Phrase::Times(count, list), row),
    }
}

/// Adds a phrase, joined to the last one where both say the same thing.
fn push(phrase: Phrase, row: &mut Vec<Phrase>) {
    match (row.last_mut(), &phrase) {
        (_, Phrase::Run(0, _)) => {}
        (Some(Phrase::Run(count, bead)), Phrase::Run(more, same)) if bead == same => *count += more,
        (Some(Phrase::Times(count, list)), Phrase::Times(more, same)) if list == same => *count += more,
        _ => row.push(phrase),
    }
}

/// Puts phrases into words.
#[derive(Clone, Copy)]
struct Teller<'a> {
    design: &'a Design,
    /// The strand that the phrases are strung on.
    strand: Option<&'a Strand>,
    /// What stays in its place there, where the phrases are the strand's own: in a repeat it has no one name.
    posts: Option<&'a Posts<'a>>,
    /// Whether the phrases stand in square brackets.
    is_inside: bool,
}

impl Teller<'_> {
    /// One that names nothing.
    const fn bare(self) -> Self {
        Self { posts: None, ..self }
    }

    /// One that tells what stands in square brackets.
    const fn inside(self) -> Self {
        Self { posts: None, is_inside: true, ..self }
    }

    /// A strand's own phrases.
    fn all(self, phrases: &[Phrase]) -> String {
        match phrases {
            [Phrase::Mirror(side, middle)] => self.mirror(side, middle) + &self.names(&(0..things(phrases))),
            phrases => self.sequence(phrases),
        }
    }

    /// The phrases joined by `then`; those that need no comma stay together. A repeat that follows others, or stands in
    /// brackets itself, has brackets of its own, for how often it is told might be read of others.
    fn sequence(self, phrases: &[Phrase]) -> String {
        let together = |a: &Phrase, b: &Phrase| self.is_short(a) && self.is_short(b);
        let (mut said, mut strung) = (0, 0);
        let clauses = phrases.chunk_by(together).map(|clause| {
            let words = clause.iter().map(|phrase| {
                let phrases = std::slice::from_ref(phrase);
                let here = said..said + things(phrases);
                said = here.end;
                let words = self.said(phrase, &here, strung);
                strung += beads(phrases);
                words
            });
            words.collect::<Vec<_>>().join(" ")
        });
        clauses.collect::<Vec<_>>().join(", then ")
    }

    /// A phrase, which says things of the chart, after so many beads of its list.
    fn said(self, phrase: &Phrase, here: &Range<usize>, strung: usize) -> String {
        let bare = self.bare();
        let words = match phrase {
            Phrase::Times(count, list)
                if (here.start > 0 || self.is_inside) && list.len() > 1 && self.are_short(list) =>
            {
                format!("[{}], {}", bare.sequence(list), times_word(*count))
            }
            Phrase::Times(count, list) => format!("{}, {}", bare.bracketed(list), times_word(*count)),
            Phrase::Mirror(side, middle) => format!("[{}]", self.inside().mirror(side, middle)),
            Phrase::Ordered(list) => format!("{} in this order: {}", things(list), self.tens(list, strung)),
            one => return self.opening(here) + &self.one(one, here),
        };
        words + &self.names(here)
    }

    /// `(1–10) 3A 1B 6A (11–20) 10A`: runs in the tens in which the row's beads are counted, after so many of them.
    fn tens(self, runs: &[Phrase], strung: usize) -> String {
        let each = runs.iter().flat_map(|run| match run {
            Phrase::Run(count, bead) => vec![Phrase::Run(1, *bead); *count as usize],
            other => vec![other.clone()],
        });
        let each: Vec<_> = (strung + 1..).zip(each).collect();
        let same_ten =
            |(one, _): &(usize, Phrase), (next, _): &(usize, Phrase)| one.div_ceil(TEN) == next.div_ceil(TEN);
        let tens = each.chunk_by(same_ten).map(|ten| self.ten(ten));
        tens.collect::<Vec<_>>().join(" ")
    }

    /// `(11–14) 3A 1B`: beads with their numbers.
    fn ten(self, ten: &[(usize, Phrase)]) -> String {
        let mut runs = Vec::new();
        ten.iter().for_each(|(_, one)| push(one.clone(), &mut runs));
        let (from, to) = (ten[0].0, ten[ten.len() - 1].0);
        let which = if from == to { from.to_string() } else { format!("{from}–{to}") };
        format!("({which}) {}", self.bare().sequence(&runs))
    }

    /// A phrase that is no list.
    fn one(self, phrase: &Phrase, here: &Range<usize>) -> String {
        match phrase {
            Phrase::Run(count, bead) => {
                format!("{count}{}{}", self.design.beads[*bead].letter, self.long(*count, *bead))
            }
            Phrase::Gap(length) => format!("({} bare)", gap(self.design.heading.units, *length)),
            Phrase::Links(1) => "(1 link bare)".to_owned(),
            Phrase::Links(links) => format!("({links} links bare)"),
            Phrase::Knot => format!("(knot{})", self.post(Keeps::Knot, here)),
            Phrase::Finding(at) if self.is_bar(*at) => self.bar(*at, here),
            Phrase::Finding(at) => format!("(1 {})", self.design.findings[*at].name),
            Phrase::Stop(_, at) => {
                format!("(stop{}: {})", self.post(Keeps::Stop, here), self.design.findings[*at].name)
            }
            Phrase::Dangle(Some(on), list) => {
                format!("(dangle: {} on {})", self.bare().sequence(list), a(&self.design.findings[*on].name))
            }
            Phrase::Dangle(None, list) => format!("(where the ends meet: {})", self.bare().sequence(list)),
            Phrase::Times(..) | Phrase::Mirror(..) | Phrase::Ordered(_) => self.sequence(std::slice::from_ref(phrase)),
        }
    }

    /// ` (168 mm long)`, of so many of a bead that they are sooner measured than counted.
    fn long(self, count: u32, bead: Index<Bead>) -> String {
        let Some(strand) = self.strand.filter(|_| count >= LONG_RUN) else { return String::new() };
        let (bead, count) = (&self.design.beads[bead], f64::from(count));
        let length = match posts::silent_knot(strand) {
            Some(knot) => count * taken_by(bead, None) + (count - 1.0) * knot.length(),
            None => count * taken_by(bead, Some(bead)),
        };
        let length = Length::mm(length);
        format!(" ({} long)", in_brackets(self.design.heading.units, length, &UnitStyle::Mm.ruler(length)))
    }

    /// A spacer bar; of one that strands share, the hole, for it is strung only once.
    fn bar(self, at: Index<Finding>, here: &Range<usize>) -> String {
        let hole = self.strand.and_then(|strand| self.design.hole(Shared::Bar(at), strand));
        let hole = hole.map(|hole| format!(", hole {hole}")).unwrap_or_default();
        format!("(bar{}: {}{hole})", self.post(Keeps::Bar, here), self.design.findings[at].name)
    }

    /// ` K1 at 40 mm`: what of a kind stays in its place here.
    fn post(self, keeps: Keeps, here: &Range<usize>) -> String {
        let said = self.posts.and_then(|posts| {
            let post = posts.within(here).iter().find(|post| post.keeps == keeps)?;
            Some(format!(" {}", posts.say(post)))
        });
        said.unwrap_or_default()
    }

    /// `(G1 at 40 mm) `, where a group starts here.
    fn opening(self, here: &Range<usize>) -> String {
        match self.post(Keeps::Group, here) {
            none if none.is_empty() => none,
            group => format!("({}) ", group.trim_start()),
        }
    }

    /// ` (knots K2 to K13)`: all that stays in its place here.
    fn names(self, here: &Range<usize>) -> String {
        let names = self.posts.and_then(|posts| posts.names(here));
        names.map(|names| format!(" ({names})")).unwrap_or_default()
    }

    fn is_bar(self, at: Index<Finding>) -> bool {
        self.design.findings[at].kind() == FindingKind::SpacerBar
    }

    /// Whether a phrase needs no comma beside others.
    fn is_short(self, phrase: &Phrase) -> bool {
        match phrase {
            Phrase::Times(..) | Phrase::Mirror(..) | Phrase::Ordered(_) | Phrase::Stop(..) => false,
            Phrase::Finding(at) => !self.is_bar(*at),
            Phrase::Run(..) | Phrase::Gap(_) | Phrase::Links(_) | Phrase::Knot | Phrase::Dangle(..) => true,
        }
    }

    fn are_short(self, phrases: &[Phrase]) -> bool {
        phrases.iter().all(|phrase| self.is_short(phrase))
    }

    /// The phrases, in square brackets where they are more than one clause.
    fn bracketed(self, phrases: &[Phrase]) -> String {
        if self.are_short(phrases) { self.sequence(phrases) } else { format!("[{}]", self.inside().sequence(phrases)) }
    }

    fn mirror(self, side: &[Phrase], middle: &[Phrase]) -> String {
        let bare = self.bare();
        let side = bare.sequence(side);
        if middle.is_empty() {
            return format!("{side}, then the same backwards");
        }
        format!("{side}, then {} in the middle, then the same backwards", bare.bracketed(middle))
    }
}

/// How many things phrases say.
fn things(phrases: &[Phrase]) -> usize {
    count(phrases, |_| true)
}

/// How many beads on the cord phrases say.
fn beads(phrases: &[Phrase]) -> usize {
    count(phrases, |phrase| matches!(phrase, Phrase::Run(..)))
}

/// How many things of some sort phrases say.
pub fn count(phrases: &[Phrase], is: fn(&Phrase) -> bool) -> usize {
    let of = |phrase: &Phrase| match phrase {
        Phrase::Times(times, list) => *times as usize * count(list, is),
        Phrase::Mirror(side, middle) => 2 * count(side, is) + count(middle, is),
        Phrase::Ordered(list) => count(list, is),
        Phrase::Run(beads, _) => usize::from(is(phrase)) * *beads as usize,
        one => usize::from(is(one)),
    };
    phrases.iter().map(of).sum()
}

fn times_word(count: u32) -> String {
    if count == 2 { "twice".to_owned() } else { format!("{count} times") }
}

/// A short stretch of cord: millimetres to the tenth, inches to the sixteenth.
pub fn gap(units: UnitStyle, length: Length) -> String {
    in_brackets(units, length, &length.tenths())
}

/// A length where brackets stand round it already.
fn in_brackets(units: UnitStyle, length: Length, mm: &str) -> String {
    match units {
        UnitStyle::In => format!("{} in", fraction(length)),
        UnitStyle::Mm => mm.to_owned(),
        UnitStyle::Both => format!("{} in = {mm}", fraction(length)),
    }
}
