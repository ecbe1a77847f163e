//! Posts: what stays in its place on a strand, named, with its station from the outside of the first end.
//!
//! Steps, word charts, stringing pages, the proof and the table of sizes print positions from here alone.

mod runs;

pub use runs::PostRun;

use std::ops::Range;

use crate::design::{Bit, Design, End, Finding, Index, Phrase, Rest, Strand, Train, What};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::steps::ends::{Fastening, way};
use crate::steps::side::Side;
use crate::units::Length;

/// Gaps in mm that differ by less are told as equal: half of what a ruler shows.
const SAME: f64 = 0.5;

/// What stays in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeps {
    /// A stop, by its middle.
    Stop,
    /// A knot that the pattern's list writes, by its middle.
    Knot,
    /// A spacer bar, by its middle.
    Bar,
    /// A group of beads on bare cord, by its start.
    Group,
}

impl Keeps {
    /// Every kind, in the order in which they are told.
    pub const ALL: [Self; 4] = [Self::Stop, Self::Knot, Self::Bar, Self::Group];
}

/// Something that stays in its place.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Post {
    /// Its name on the strand: S1, K1, B1, G1, or with another letter where a bead has that.
    pub name: String,
    /// What it is.
    pub keeps: Keeps,
    /// Where it is, from the outside of the first end.
    pub station: Length,
    /// Where a group ends; of others, the same place.
    pub until: Length,
    /// How many things the word chart says before it; of a group, before the first thing in it.
    pub said: usize,
    /// Whether no bare cord lies between it and the last one of its kind, so that the beads put it where it is.
    pub follows: bool,
}

/// What stays in its place on a strand, in the order of the stations. What slides has no post.
#[derive(Debug)]
pub struct Posts<'a> {
    design: &'a Design,
    strand: &'a Strand,
    all: Vec<Post>,
}

impl<'a> Posts<'a> {
    /// Finds them.
    #[must_use]
    pub fn new(design: &'a Design, strand: &'a Strand) -> Self {
        let mut counts = [0; Keeps::ALL.len()];
        let name = |UnnamedPost { keeps, at, until, said, follows }| {
            let count = &mut counts[keeps as usize];
            *count += 1;
            let [station, until] = [at, until].map(Length::mm);
            Post { name: format!("{}{count}", keeps.letter(design)), keeps, station, until, said, follows }
        };
        Self { design, strand, all: found(design, strand).into_iter().map(name).collect() }
    }

    /// All of them.
    #[must_use]
    pub fn all(&self) -> &[Post] {
        &self.all
    }

    /// From where their stations are measured.
    #[must_use]
    pub fn datum(&self) -> Datum {
        datum(self.design, self.strand)
    }

    /// Those of a kind.
    pub fn of(&self, keeps: Keeps) -> impl Iterator<Item = &Post> {
        self.all.iter().filter(move |post| post.keeps == keeps)
    }

    /// How much bare cord lies between groups, where that is the same between all.
    #[must_use]
    pub fn between_groups(&self) -> Option<Length> {
        let groups: Vec<_> = self.of(Keeps::Group).collect();
        let gaps: Vec<_> = groups.windows(2).map(|pair| pair[1].station - pair[0].until).collect();
        let (gap, rest) = gaps.split_first()?;
        rest.iter().all(|other| (*other - *gap).value().abs() < SAME).then_some(*gap)
    }

    /// Those among things that the word chart says.
    pub(super) fn within(&self, said: &Range<usize>) -> &[Post] {
        let [from, to] = [said.start, said.end].map(|end| self.all.partition_point(|post| post.said < end));
        &self.all[from..to]
    }
}

/// Where a strand's stations are measured from: the outside of its first end, but of chain the inside, where it hangs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Datum {
    /// Of chain, its end link.
    EndLink,
    /// Its loop.
    Loop,
    /// Its knot cover.
    KnotCover,
    /// What it has.
    End,
}

/// Where a strand's stations are measured from.
#[must_use]
pub fn datum(design: &Design, strand: &Strand) -> Datum {
    let first = strand.ends.first();
    match design.cords[strand.cord].kind {
        CordKind::Chain => Datum::EndLink,
        _ if first.is_some_and(|end| end.bight.is_some()) => Datum::Loop,
        _ if first.is_some_and(|end| is_covered(design, end)) => Datum::KnotCover,
        _ => Datum::End,
    }
}

/// Between what a strand's finished length is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredBetween {
    /// The insides of its end links.
    EndLinks,
    /// The outsides of its knot covers.
    KnotCovers,
    /// Its ends, which nothing closes.
    Ends,
    /// Where its fold is hitched, and its loop.
    HitchAndLoop,
    /// Its loops.
    Loops,
}

/// Between what a strand's finished length is measured.
#[must_use]
pub fn between(design: &Design, strand: &Strand) -> MeasuredBetween {
    match design.cords[strand.cord].kind {
        CordKind::Chain => MeasuredBetween::EndLinks,
        _ if strand.ends.iter().all(|end| is_covered(design, end)) => MeasuredBetween::KnotCovers,
        _ if design.closure.is_empty() => MeasuredBetween::Ends,
        _ if is_hitched(design, strand) => MeasuredBetween::HitchAndLoop,
        _ => MeasuredBetween::Loops,
    }
}

/// Whether a strand's fold is hitched, so that its first end has no loop.
#[must_use]
pub fn is_hitched(design: &Design, strand: &Strand) -> bool {
    way(design, strand, Side::First) == Fastening::Hitched
}

fn is_covered(design: &Design, end: &End) -> bool {
    end.findings.iter().any(|at| design.findings[*at].kind() == FindingKind::KnotCover)
}

/// A post before it has its name, in mm from the outside of the first end.
struct UnnamedPost {
    keeps: Keeps,
    at: f64,
    until: f64,
    said: usize,
    follows: bool,
}

/// A bit where it rests.
#[derive(Clone, Copy)]
struct Placed<'a> {
    bit: &'a Bit,
    /// Where it starts.
    at: f64,
    /// How many things the word chart says before it.
    said: usize,
    /// Whether the word chart leaves it out: a knot that comes between all beads.
    silent: bool,
}

impl Placed<'_> {
    fn is_gap(&self) -> bool {
        self.bit.what == What::Gap
    }

    /// A post here, by its middle.
    fn post(self, keeps: Keeps, follows: bool) -> UnnamedPost {
        let at = self.at + self.bit.before;
        UnnamedPost { keeps, at, until: at, said: self.said, follows }
    }
}

fn found(design: &Design, strand: &Strand) -> Vec<UnnamedPost> {
    let knots = knots_said(&strand.chart);
    let mut said = 0;
    let mut found = Vec::new();
    for train in &strand.trains {
        let placed = placed(train, &knots, &mut said);
        if let Rest::At(_) = train.rest {
            found.extend(of_train(design, strand, train, &placed));
        }
    }
    found
}

/// The first knot that the word chart leaves out, because one comes between all beads.
pub(super) fn silent_knot(strand: &Strand) -> Option<&Bit> {
    silent_knots(strand).into_iter().next()
}

/// The knots that it leaves out.
pub(super) fn silent_knots(strand: &Strand) -> Vec<&Bit> {
    let knots = knots_said(&strand.chart);
    let mut said = 0;
    let placed = strand.trains.iter().flat_map(|train| placed(train, &knots, &mut said));
    placed.filter(|one| one.silent).map(|one| one.bit).collect()
}

/// The first knot that the word chart says, where it says some.
pub(super) fn written_knot(strand: &Strand) -> Option<&Bit> {
    strand.bits().find(|bit| bit.what == What::Knot).filter(|_| knots(strand) > 0)
}

/// How many knots a word chart says.
pub(super) fn knots(strand: &Strand) -> usize {
    knots_said(&strand.chart).into_iter().filter(|knot| *knot).count()
}

/// Of each thing that a chart says, whether it is a knot.
fn knots_said(chart: &[Phrase]) -> Vec<bool> {
    chart.iter().flat_map(knots_in).collect()
}

fn knots_in(phrase: &Phrase) -> Vec<bool> {
    match phrase {
        Phrase::Run(count, _) => vec![false; *count as usize],
        Phrase::Times(count, list) => knots_said(list).repeat(*count as usize),
        Phrase::Mirror(side, middle) => {
            let side = knots_said(side);
            let back: Vec<_> = side.iter().rev().copied().collect();
            [side, knots_said(middle), back].concat()
        }
        Phrase::Ordered(list) => knots_said(list),
        other => vec![*other == Phrase::Knot],
    }
}

/// A train's bits where they rest; `said` counts on what the chart says.
fn placed<'a>(train: &'a Train, knots: &[bool], said: &mut usize) -> Vec<Placed<'a>> {
    let (Rest::At(mut at) | Rest::Free(mut at, _)) = train.rest;
    let mut place = |bit: &'a Bit| {
        let silent = bit.what == What::Knot && knots.get(*said) != Some(&true);
        let placed = Placed { bit, at, said: *said, silent };
        *said += usize::from(!silent);
        at += bit.length();
        placed
    };
    train.bits.iter().map(&mut place).collect()
}

fn of_train(design: &Design, strand: &Strand, train: &Train, placed: &[Placed<'_>]) -> Vec<UnnamedPost> {
    if stop(design, strand, train).is_some() {
        return placed.iter().map(|stop| stop.post(Keeps::Stop, false)).collect();
    }
    let grouped = matches!(strand.settle, Settle::Spread | Settle::Fixed);
    let mut found = Vec::new();
    for group in placed.split(Placed::is_gap).filter(|group| !group.is_empty()) {
        // What has a name of its own where a fixed group starts tells where that is.
        let named = strand.settle == Settle::Fixed && keeps(design, &group[0]).is_some();
        found.extend(start(group).filter(|_| grouped && !named));
        for (at, one) in group.iter().enumerate() {
            let alike = |other: &&Placed<'_>| keeps(design, other) == keeps(design, one);
            let follows = group[..at].iter().rev().find(alike).is_some();
            found.extend(keeps(design, one).map(|keeps| one.post(keeps, follows)));
        }
    }
    found
}

/// The start of a group.
fn start(group: &[Placed<'_>]) -> Option<UnnamedPost> {
    let (first, last) = (group.first()?, group.last()?);
    let until = last.at + last.bit.length();
    Some(UnnamedPost { keeps: Keeps::Group, at: first.at, until, said: first.said, follows: false })
}

fn keeps(design: &Design, placed: &Placed<'_>) -> Option<Keeps> {
    match placed.bit.what {
        What::Knot => (!placed.silent).then_some(Keeps::Knot),
        What::Finding(at) => (design.findings[at].kind() == FindingKind::SpacerBar).then_some(Keeps::Bar),
        _ => None,
    }
}

/// A stop's finding and its middle in mm of the strand: on a strand that stops divide, what has a train to itself and is a crimp.
pub fn stop(design: &Design, strand: &Strand, train: &Train) -> Option<(Index<Finding>, f64)> {
    let divided = strand.chart.iter().any(|phrase| matches!(phrase, Phrase::Stop(..)));
    match (train.bits.as_slice(), train.rest) {
        ([Bit { what: What::Finding(at), before, .. }], Rest::At(start))
            if divided && design.findings[*at].kind() == FindingKind::Crimp =>
        {
            Some((*at, start + before))
        }
        _ => None,
    }
}
