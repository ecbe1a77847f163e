//! Posts: what stays in its place on a strand, named, with its station from the outside of the first end.
//!
//! Steps, stringing pages and the table of sizes print positions from here alone.

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
    let name = |(keeps, station): (Keeps, f64)| {
        let count = &mut counts[keeps as usize];
        *count += 1;
        Post { name: format!("{}{count}", keeps.letter()), keeps, station: Length::mm(station) }
    };
    strand.trains.iter().flat_map(|train| of_train(design, strand, train)).map(name).collect()
}

fn of_train(design: &Design, strand: &Strand, train: &Train) -> Vec<(Keeps, f64)> {
    let Rest::At(mut at) = train.rest else { return Vec::new() };
    if let Some((_, station)) = stop(design, strand, train) {
        return vec![(Keeps::Stop, station)];
    }
    let grouped = matches!(strand.settle, Settle::Spread | Settle::Fixed);
    let mut found = Vec::new();
    let mut begins = grouped;
    for bit in &train.bits {
        if bit.what == What::Gap {
            begins = grouped;
        } else {
            found.extend(begins.then_some((Keeps::Group, at)));
            found.extend(keeps(design, strand, bit).map(|keeps| (keeps, at + bit.before)));
            begins = false;
        }
        at += bit.length();
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

/// `S1 at 110 mm, S2 at 200 mm`: the posts of a kind, or nothing where there are none.
#[must_use]
pub fn told(design: &Design, strand: &Strand, keeps: Keeps) -> Option<String> {
    let posts: Vec<_> = posts(design, strand).into_iter().filter(|post| post.keeps == keeps).collect();
    let say = |post: &Post| format!("{} at {}", post.name, design.heading.units.ruler(post.station));
    match posts.as_slice() {
        [] => None,
        [first, .., last] if posts.len() > MOST => {
            let first = std::iter::once(first).chain(&posts[1..FIRST]).map(say).collect::<Vec<_>>().join(", ");
            Some(format!("{first} and so on to {}", say(last)))
        }
        all => Some(all.iter().map(say).collect::<Vec<_>>().join(", ")),
    }
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
