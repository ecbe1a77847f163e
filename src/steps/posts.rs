//! Posts: what stays in its place on a strand, named, with its station from the outside of the first end.
//!
//! Steps, word charts, stringing pages, the proof and the table of sizes print positions from here alone.

use crate::design::{Bit, Design, Phrase, Rest, Strand, Train, What};
use crate::pattern::{CordKind, FindingKind, Settle};
use crate::units::Length;

/// Most posts of a kind that are all told; of more, the first ones and the last.
const MOST: usize = 24;
/// How many are told before the last of more than the most.
const FIRST: usize = 3;

/// What stays in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeps {
    /// A stop, by its middle.
    Stop,
    /// A knot that the pattern writes, by its middle.
    Knot,
    /// A spacer bar, by its middle.
    Bar,
    /// A group of beads on bare cord, by its start.
    Group,
}

impl Keeps {
    /// Every kind, in the order in which they are told.
    pub const ALL: [Self; 4] = [Self::Stop, Self::Knot, Self::Bar, Self::Group];

    const fn letter(self) -> char {
        match self {
            Self::Stop => 'S',
            Self::Knot => 'K',
            Self::Bar => 'B',
            Self::Group => 'G',
        }
    }

    /// Where it is measured, of one: `middle of a stop`.
    #[must_use]
    pub const fn place(self) -> &'static str {
        match self {
            Self::Stop => "middle of a stop",
            Self::Knot => "middle of a knot",
            Self::Bar => "middle of a bar",
            Self::Group => "start of a group",
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Stop => "middles of stops",
            Self::Knot => "middles of knots",
            Self::Bar => "middles of bars",
            Self::Group => "starts of groups",
        }
    }
}

/// Something that stays in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// Its name on the strand: S1, K1, B1, G1.
    pub name: String,
    /// What it is.
    pub keeps: Keeps,
    /// Where it is, from the outside of the first end.
    pub station: Length,
    /// Where a group ends; of others, the same place.
    pub until: Length,
}

/// Where a strand's stations are measured from, as a clause.
#[must_use]
pub fn datum(design: &Design, strand: &Strand) -> &'static str {
    match design.cords[strand.cord].kind {
        CordKind::Chain => "from the outside of the first end link",
        _ => "from the outside of the first end's loop",
    }
}

/// What stays in its place on a strand, in the order of the stations. What slides has no post.
#[must_use]
pub fn posts(design: &Design, strand: &Strand) -> Vec<Post> {
    let mut counts = [0; Keeps::ALL.len()];
    let name = |Found { keeps, at, until }| {
        let count = &mut counts[keeps as usize];
        *count += 1;
        let [station, until] = [at, until].map(Length::mm);
        Post { name: format!("{}{count}", keeps.letter()), keeps, station, until }
    };
    strand.trains.iter().flat_map(|train| of_train(design, strand, train)).map(name).collect()
}

/// A post before it has its name, in mm from the outside of the first end.
struct Found {
    keeps: Keeps,
    at: f64,
    until: f64,
}

fn of_train(design: &Design, strand: &Strand, train: &Train) -> Vec<Found> {
    let Rest::At(mut at) = train.rest else { return Vec::new() };
    if let Some((_, station)) = stop(design, strand, train) {
        return vec![Found { keeps: Keeps::Stop, at: station, until: station }];
    }
    let grouped = matches!(strand.settle, Settle::Spread | Settle::Fixed);
    let (mut found, mut group) = (Vec::<Found>::new(), None::<usize>);
    for bit in &train.bits {
        let until = at + bit.length();
        match group.filter(|_| bit.what != What::Gap) {
            Some(open) => found[open].until = until,
            None if grouped && bit.what != What::Gap => {
                group = Some(found.len());
                found.push(Found { keeps: Keeps::Group, at, until });
            }
            None => group = None,
        }
        let middle = at + bit.before;
        found.extend(keeps(design, strand, bit).map(|keeps| Found { keeps, at: middle, until: middle }));
        at = until;
    }
    found
}

fn keeps(design: &Design, strand: &Strand, bit: &Bit) -> Option<Keeps> {
    match bit.what {
        What::Knot => (!super::stringing::has_silent_knots(strand)).then_some(Keeps::Knot),
        What::Finding(at) => (design.findings[at].kind == FindingKind::SpacerBar).then_some(Keeps::Bar),
        _ => None,
    }
}

/// A stop's finding and its middle: on a strand that stops divide, what has a train to itself and is a crimp.
pub fn stop(design: &Design, strand: &Strand, train: &Train) -> Option<(usize, f64)> {
    let divided = strand.chart.iter().any(|phrase| matches!(phrase, Phrase::Stop(..)));
    match (train.bits.as_slice(), train.rest) {
        ([Bit { what: What::Finding(at), before, .. }], Rest::At(start))
            if divided && design.findings[*at].kind == FindingKind::Crimp =>
        {
            Some((*at, start + before))
        }
        _ => None,
    }
}

/// The posts of a kind on a strand.
#[must_use]
pub fn of_kind(design: &Design, strand: &Strand, keeps: Keeps) -> Vec<Post> {
    posts(design, strand).into_iter().filter(|post| post.keeps == keeps).collect()
}

/// Of more than the most, the first ones and the last; and whether some are left out before that.
fn few(mut posts: Vec<Post>) -> (Vec<Post>, bool) {
    let many = posts.len() > MOST;
    if many {
        posts.drain(FIRST..posts.len() - 1);
    }
    (posts, many)
}

/// The posts of a strand that lists tell: of more than the most of a kind, the first ones and the last.
#[must_use]
pub fn listed(design: &Design, strand: &Strand) -> Vec<Post> {
    Keeps::ALL.into_iter().flat_map(|keeps| few(of_kind(design, strand, keeps)).0).collect()
}

/// `S1 at 110 mm, S2 at 200 mm`: the posts of a kind, or nothing where there are none.
#[must_use]
pub fn told(design: &Design, strand: &Strand, keeps: Keeps) -> Option<String> {
    let (posts, many) = few(of_kind(design, strand, keeps));
    let say = |post: &Post| format!("{} at {}", post.name, design.heading.units.ruler(post.station));
    let (last, before) = posts.split_last()?;
    let between = if many { " and so on to " } else { ", " };
    let before = before.iter().map(say).collect::<Vec<_>>().join(", ");
    Some(if before.is_empty() { say(last) } else { format!("{before}{between}{}", say(last)) })
}

/// `Middles of bars, from the outside of the first end's loop: B1 at 40 mm.`
#[must_use]
pub fn sentence(design: &Design, strand: &Strand, keeps: Keeps) -> Option<String> {
    let what = keeps.words();
    let places = told(design, strand, keeps)?;
    Some(format!("{}{}, {}: {places}.", what[..1].to_uppercase(), &what[1..], datum(design, strand)))
}

/// `From the outside of the first end's loop, middles of stops: S1 at 110 mm, S2 at 200 mm.`
#[must_use]
pub fn positions(design: &Design, strand: &Strand) -> Option<String> {
    let each =
        Keeps::ALL.iter().filter_map(|keeps| Some(format!("{}: {}", keeps.words(), told(design, strand, *keeps)?)));
    let each = each.collect::<Vec<_>>().join("; ");
    let datum = datum(design, strand).replacen('f', "F", 1);
    (!each.is_empty()).then(|| format!("{datum}, {each}."))
}
