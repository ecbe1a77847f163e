//! The word chart in English: a strand's row in letters, the way a maker says it.
//!
//! `5A 1B, 11 times, then 5A` is eleven times five of bead A and one of bead B, and five of A. What is not a bead
//! stands in round brackets: `(½ in / 12 mm bare)`, `(knot)`, `(1 bead cap)`, `(dangle: 1C 2A on a head pin)`. Stops
//! and bars, which beads do not go through, are clauses of their own: `30A, then (bar: spacer bar with three holes,
//! hole 1), then 6A`, `2A, then (stop: crimp)`. A repeat of more than one phrase stands in square brackets: `[[3A 1B],
//! 4 times, then 1C], 6 times`; so does one that follows other phrases, or stands in brackets itself: `30A, then [6A
//! 1B], 3 times`. What stays in its place has its name and station, as every page prints them: `2A, then (stop S1 at
//! 110 mm: crimp)`, `(G1 at 40 mm) 3A (knot K1 at 51 mm)`; what does so in a repeat is named after it, in order: `5A
//! (knot), 12 times (knots K2 to K13)`. A row without a pattern is told in tens, which go on from what its list strings
//! before, as the counts above the drawn row do: `2C, then 30 in this order: (3–10) 3A 1B 4A (11–20) …`, and of many
//! beads of a kind on end the length as well, in a clause of their own: `2B, then 24A over 168 mm`.

use std::ops::Range;

pub use super::run::{ChartRun, WordChart};
use crate::design::{Bead, Design, Finding, Index, Phrase, Shared, Strand, taken_by};
use crate::english::{a, count, often};
use crate::pattern::FindingKind;
use crate::steps::chart::{self, TEN, beads, push, simple, things};
use crate::steps::posts::{self, Keeps, Posts};
use crate::units::{Length, UnitStyle, fraction};

/// Fewest beads of a kind on end whose length is told beside their number: an assumption.
const LONG_RUN: u32 = 20;

/// The word chart of a strand; of one on a pin what is on that, from its loop down.
#[must_use]
pub fn whole(design: &Design, strand: &Strand, units: UnitStyle) -> WordChart {
    told(design, strand, &chart::whole(design, strand), units)
}

/// The same without what its ends meet in, which is not strung with the row.
#[must_use]
pub fn strung(design: &Design, strand: &Strand, units: UnitStyle) -> WordChart {
    told(design, strand, &chart::strung(strand), units)
}

fn told(design: &Design, strand: &Strand, phrases: &[Phrase], units: UnitStyle) -> WordChart {
    let posts = Posts::new(design, strand);
    PhraseTeller { design, units, strand: Some(strand), posts: Some(&posts), is_inside: false }.all(phrases)
}

/// The words for a short row, such as what hangs on a pin.
#[must_use]
pub fn row(design: &Design, phrases: &[Phrase], units: UnitStyle) -> WordChart {
    PhraseTeller { design, units, strand: None, posts: None, is_inside: false }.sequence(&simple(phrases))
}

/// Puts phrases into words.
#[derive(Clone, Copy)]
struct PhraseTeller<'a> {
    design: &'a Design,
    units: UnitStyle,
    /// The strand that the phrases are strung on.
    strand: Option<&'a Strand>,
    /// What stays in its place there, where the phrases are the strand's own: in a repeat it has no one name.
    posts: Option<&'a Posts<'a>>,
    /// Whether the phrases stand in square brackets.
    is_inside: bool,
}

impl PhraseTeller<'_> {
    /// One that names nothing.
    const fn bare(self) -> Self {
        Self { posts: None, ..self }
    }

    /// One that tells what stands in square brackets.
    const fn inside(self) -> Self {
        Self { posts: None, is_inside: true, ..self }
    }

    /// A strand's own phrases.
    fn all(self, phrases: &[Phrase]) -> WordChart {
        match phrases {
            [Phrase::Mirror(side, middle)] => self.mirror(side, middle).and(self.names(&(0..things(phrases)))),
            phrases => self.sequence(phrases),
        }
    }

    /// The phrases joined by `then`; those that need no comma stay together. A repeat that follows others, or stands in
    /// brackets itself, has brackets of its own, for how often it is told might be read of others.
    fn sequence(self, phrases: &[Phrase]) -> WordChart {
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
            WordChart::join(words, " ")
        });
        WordChart::join(clauses, ", then ")
    }

    /// A phrase, which says things of the chart, after so many beads of its list.
    fn said(self, phrase: &Phrase, here: &Range<usize>, strung: usize) -> WordChart {
        let bare = self.bare();
        let words = match phrase {
            Phrase::Times(count, list)
                if (here.start > 0 || self.is_inside) && list.len() > 1 && self.are_short(list) =>
            {
                bare.sequence(list).bracketed().and(times_word(*count))
            }
            Phrase::Times(count, list) => bare.bracketed(list).and(times_word(*count)),
            Phrase::Mirror(side, middle) => self.inside().mirror(side, middle).bracketed(),
            Phrase::Ordered(list) => {
                WordChart::from(format!("{} in this order: ", things(list))).and(self.tens(list, strung))
            }
            one => return self.opening(here).and(self.one(one, here)),
        };
        words.and(self.names(here))
    }

    /// `(1–10) 3A 1B 6A (11–20) 10A`: runs in the tens in which the row's beads are counted, after so many of them.
    fn tens(self, runs: &[Phrase], strung: usize) -> WordChart {
        let each = runs.iter().flat_map(|run| match run {
            Phrase::Run(count, bead) => vec![Phrase::Run(1, *bead); *count as usize],
            other => vec![other.clone()],
        });
        let each: Vec<_> = (strung + 1..).zip(each).collect();
        let same_ten =
            |(one, _): &(usize, Phrase), (next, _): &(usize, Phrase)| one.div_ceil(TEN) == next.div_ceil(TEN);
        let tens = each.chunk_by(same_ten).map(|ten| self.ten(ten));
        WordChart::join(tens, " ")
    }

    /// `(11–14) 3A 1B`: beads with their numbers.
    fn ten(self, ten: &[(usize, Phrase)]) -> WordChart {
        let mut runs = Vec::new();
        ten.iter().for_each(|(_, one)| push(one.clone(), &mut runs));
        let (from, to) = (ten[0].0, ten[ten.len() - 1].0);
        let which = if from == to { from.to_string() } else { format!("{from}–{to}") };
        WordChart::from(which).aside().and(" ").and(self.bare().sequence(&runs))
    }

    /// A phrase that is no list.
    fn one(self, phrase: &Phrase, here: &Range<usize>) -> WordChart {
        match phrase {
            Phrase::Run(count, bead) => {
                WordChart::beads(*count, &self.design.beads[*bead].letter).and(self.long(*count, *bead))
            }
            Phrase::Gap(length) => WordChart::from(bare(self.units, *length)).aside(),
            Phrase::Links(links) => WordChart::from(links_bare(u64::from(*links))).aside(),
            Phrase::Knot => WordChart::from(format!("knot{}", self.named(Keeps::Knot, here))).aside(),
            Phrase::Finding(at) if self.is_bar(*at) => WordChart::from(self.bar(*at, here)).aside(),
            Phrase::Finding(at) => WordChart::from(format!("1 {}", self.design.findings[*at].name)).aside(),
            Phrase::Stop(_, at) => {
                let (named, finding) = (self.named(Keeps::Stop, here), &self.design.findings[*at].name);
                WordChart::from(format!("stop{named}: {finding}")).aside()
            }
            Phrase::Dangle(Some(on), list) => {
                let on = format!(" on {}", a(&self.design.findings[*on].name));
                WordChart::from("dangle: ").and(self.hung(list)).and(on).aside()
            }
            Phrase::Dangle(None, list) => WordChart::from(format!("{MEETING}: ")).and(self.hung(list)),
            Phrase::Times(..) | Phrase::Mirror(..) | Phrase::Ordered(_) => self.sequence(std::slice::from_ref(phrase)),
        }
    }

    /// What hangs from a branch, which needs no brackets of its own: `1A 1B`, `1B and 1 silk tassel`.
    fn hung(self, list: &[Phrase]) -> WordChart {
        let one = |phrase: &Phrase| match phrase {
            Phrase::Finding(at) if !self.is_bar(*at) => format!("1 {}", self.design.findings[*at].name).into(),
            other => self.bare().sequence(std::slice::from_ref(other)),
        };
        if list.iter().any(|phrase| matches!(phrase, Phrase::Finding(_))) {
            WordChart::list(list.iter().map(one))
        } else {
            self.bare().sequence(list)
        }
    }

    /// ` over 168 mm`, of so many of a bead that they are sooner measured than counted.
    fn long(self, count: u32, bead: Index<Bead>) -> String {
        let Some(strand) = self.strand.filter(|_| count >= LONG_RUN) else { return String::new() };
        let (bead, count) = (&self.design.beads[bead], f64::from(count));
        let length = match posts::silent_knot(strand) {
            Some(knot) => count * taken_by(bead, None) + (count - 1.0) * knot.length(),
            None => count * taken_by(bead, Some(bead)),
        };
        let length = Length::mm(length);
        format!(" over {}", self.units.ruler(length))
    }

    /// A spacer bar; of one that strands share, the hole, for it is strung only once.
    fn bar(self, at: Index<Finding>, here: &Range<usize>) -> String {
        let hole = self.strand.and_then(|strand| self.design.hole(Shared::Bar(at), strand));
        let hole = hole.map(|hole| format!(", hole {hole}")).unwrap_or_default();
        format!("bar{}: {}{hole}", self.named(Keeps::Bar, here), self.design.findings[at].name)
    }

    /// `K1 at 40 mm`: what of a kind stays in its place here.
    fn post(self, keeps: Keeps, here: &Range<usize>) -> Option<String> {
        let post = self.posts?.within(here).iter().find(|post| post.keeps == keeps)?;
        let (inches, mm) = (fraction(post.station), UnitStyle::Mm.ruler(post.station));
        Some(format!("{} at {}", post.name, in_brackets(self.units, &inches, &mm)))
    }

    /// ` K1 at 40 mm`: the same behind the word for its kind.
    fn named(self, keeps: Keeps, here: &Range<usize>) -> String {
        self.post(keeps, here).map(|post| format!(" {post}")).unwrap_or_default()
    }

    /// `(G1 at 40 mm) `, where a group starts here.
    fn opening(self, here: &Range<usize>) -> WordChart {
        self.post(Keeps::Group, here).map(|group| WordChart::from(group).aside().and(" ")).unwrap_or_default()
    }

    /// ` (knots K2 to K13)`: all that stays in its place here.
    fn names(self, here: &Range<usize>) -> WordChart {
        let names = self.posts.and_then(|posts| posts.names(here));
        names.map(|names| WordChart::from(" ").and(WordChart::from(names).aside())).unwrap_or_default()
    }

    fn is_bar(self, at: Index<Finding>) -> bool {
        self.design.findings[at].kind() == FindingKind::SpacerBar
    }

    /// Whether a phrase needs no comma beside others.
    fn is_short(self, phrase: &Phrase) -> bool {
        match phrase {
            Phrase::Times(..) | Phrase::Mirror(..) | Phrase::Ordered(_) | Phrase::Stop(..) => false,
            Phrase::Finding(at) => !self.is_bar(*at),
            Phrase::Run(count, _) => self.strand.is_none() || *count < LONG_RUN,
            Phrase::Dangle(on, _) => on.is_some(),
            Phrase::Gap(_) | Phrase::Links(_) | Phrase::Knot => true,
        }
    }

    fn are_short(self, phrases: &[Phrase]) -> bool {
        phrases.iter().all(|phrase| self.is_short(phrase))
    }

    /// The phrases, in square brackets where they are more than one clause.
    fn bracketed(self, phrases: &[Phrase]) -> WordChart {
        if self.are_short(phrases) { self.sequence(phrases) } else { self.inside().sequence(phrases).bracketed() }
    }

    fn mirror(self, side: &[Phrase], middle: &[Phrase]) -> WordChart {
        let bare = self.bare();
        let side = bare.sequence(side);
        if middle.is_empty() {
            return side.and(", then the same backwards");
        }
        side.and(", then ").and(bare.bracketed(middle)).and(" in the middle, then the same backwards")
    }
}

/// `, 4 times`
fn times_word(count: u32) -> String {
    format!(", {}", often(u64::from(count)))
}

/// A short stretch of cord: millimetres to the tenth, inches to the sixteenth.
fn gap(units: UnitStyle, length: Length) -> String {
    in_brackets(units, &fraction(length), &length.tenths())
}

/// A length where brackets stand round it already.
fn in_brackets(units: UnitStyle, inches: &str, mm: &str) -> String {
    match units {
        UnitStyle::In => format!("{inches} in"),
        UnitStyle::Mm => mm.to_owned(),
        UnitStyle::Both => format!("{inches} in / {mm}"),
    }
}

/// A length of bare cord.
fn bare(units: UnitStyle, length: Length) -> String {
    format!("{} bare", gap(units, length))
}

/// Links of chain in which nothing hangs.
pub fn links_bare(links: u64) -> String {
    format!("{} bare", count(links, "link"))
}

/// What is said of what both ends of a strand go through.
pub const MEETING: &str = "where the ends meet";
