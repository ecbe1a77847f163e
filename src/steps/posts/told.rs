//! What stays in its place, in words: names with their stations.

use std::ops::Range;

use super::{Keeps, Post, Posts, datum};
use crate::steps::english::words::list;

/// Most of a kind that are all told; of more, the first ones and the last.
const MOST: usize = 24;
/// How many are told before the last of more than the most.
const FIRST: usize = 3;
/// Fewest without bare cord between them that are told by their first and last.
const RUN: usize = 4;

impl Keeps {
    const fn words(self) -> &'static str {
        match self {
            Self::Stop => "middles of stops",
            Self::Knot => "middles of knots",
            Self::Bar => "middles of bars",
            Self::Group => "starts of groups",
        }
    }
}

/// Posts that are told in one: a run by its first and last, or one alone.
type Told<'p> = (&'p Post, Option<&'p Post>);

impl Posts<'_> {
    /// `S1 at 110 mm`.
    #[must_use]
    pub fn say(&self, post: &Post) -> String {
        format!("{} at {}", post.name, self.design.heading.units.ruler(post.station))
    }

    /// `S1 at 110 mm, S2 at 200 mm`, or `K1 at 10 mm to K60 at 490 mm`: the posts of a kind, or nothing where
    /// there are none.
    #[must_use]
    pub fn told(&self, keeps: Keeps) -> Option<String> {
        let say = |(first, last): &Told<'_>| {
            let last = last.map(|last| format!(" to {}", self.say(last))).unwrap_or_default();
            self.say(first) + &last
        };
        let (told, many) = few(self.runs(keeps));
        let (last, before) = told.split_last()?;
        let between = if many { " and so on to " } else { ", " };
        let before = before.iter().map(say).collect::<Vec<_>>().join(", ");
        Some(if before.is_empty() { say(last) } else { format!("{before}{between}{}", say(last)) })
    }

    /// `Middles of bars, from the outside of the first end's loop: B1 at 40 mm.`
    #[must_use]
    pub fn sentence(&self, keeps: Keeps) -> Option<String> {
        let (what, from) = (keeps.words(), datum(self.design, self.strand));
        Some(format!("{}{}, {from}: {}.", what[..1].to_uppercase(), &what[1..], self.told(keeps)?))
    }

    /// `From the outside of the first end's loop, middles of stops: S1 at 110 mm, S2 at 200 mm.`
    #[must_use]
    pub fn positions(&self) -> Option<String> {
        let each = Keeps::ALL.iter().filter_map(|keeps| Some(format!("{}: {}", keeps.words(), self.told(*keeps)?)));
        let each = each.collect::<Vec<_>>().join("; ");
        let datum = datum(self.design, self.strand).replacen('f', "F", 1);
        (!each.is_empty()).then(|| format!("{datum}, {each}."))
    }

    /// The posts that lists tell: the ends of runs, and of more than the most of a kind the first ones and the
    /// last.
    pub fn listed(&self) -> impl Iterator<Item = &Post> {
        let told = Keeps::ALL.into_iter().flat_map(|keeps| few(self.runs(keeps)).0);
        told.flat_map(|(first, last)| [Some(first), last]).flatten()
    }

    /// The names of posts among things that the word chart says, those of a kind together: `knots K2 to K13 and
    /// group G1`; nothing where there are none.
    pub(in crate::steps) fn names(&self, said: &Range<usize>) -> Option<String> {
        let posts = self.within(said);
        let of = |keeps: Keeps| {
            let posts: Vec<_> = posts.iter().filter(move |post| post.keeps == keeps).collect();
            let [one, several] = keeps.nouns();
            Some(format!("{} {}", if posts.len() == 1 { one } else { several }, span(posts.into_iter())?))
        };
        let kinds: Vec<_> = Keeps::ALL.into_iter().filter_map(of).collect();
        (!kinds.is_empty()).then(|| list(&kinds))
    }

    /// The posts of a kind, those of a long run together.
    fn runs(&self, keeps: Keeps) -> Vec<Told<'_>> {
        let posts: Vec<_> = self.of(keeps).collect();
        posts.chunk_by(|_, next| next.follows).flat_map(run).collect()
    }
}

fn run<'p>(posts: &[&'p Post]) -> Vec<Told<'p>> {
    match posts {
        [first, .., last] if posts.len() >= RUN => vec![(*first, Some(*last))],
        few => few.iter().map(|post| (*post, None)).collect(),
    }
}

/// Of more than the most, the first ones and the last; and whether some are left out before that.
fn few(mut told: Vec<Told<'_>>) -> (Vec<Told<'_>>, bool) {
    let many = told.len() > MOST;
    if many {
        told.drain(FIRST..told.len() - 1);
    }
    (told, many)
}

/// Names that follow one another: `K1`, `K1 and K2`, `K1 to K14`.
fn span<'p>(posts: impl Iterator<Item = &'p Post>) -> Option<String> {
    let names: Vec<_> = posts.map(|post| post.name.as_str()).collect();
    match names.as_slice() {
        [] => None,
        [first, _, .., last] if names.len() > 2 => Some(format!("{first} to {last}")),
        few => Some(list(few)),
    }
}
