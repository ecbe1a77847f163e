//! Which posts are told: all of a few, of long runs and of many those at the ends.

use super::{Keeps, Post, Posts};

/// Most of a kind that are all told; of more, the first ones and the last.
const MOST: usize = 24;
/// How many are told before the last of more than the most.
const FIRST: usize = 3;
/// Fewest without bare cord between them that are told by their first and last.
const RUN: usize = 4;

/// Posts that are told in one: a run by its first and last, or one alone.
pub type PostRun<'p> = (&'p Post, Option<&'p Post>);

impl Posts<'_> {
    /// The posts that lists tell: the ends of runs, and of more than the most of a kind the first ones and the
    /// last.
    pub fn listed(&self) -> impl Iterator<Item = &Post> {
        let told = Keeps::ALL.into_iter().flat_map(|keeps| self.told(keeps).0);
        told.flat_map(|(first, last)| [Some(first), last]).flatten()
    }

    /// Those of a kind that are told, and whether some are left out before the last.
    pub(in crate::steps) fn told(&self, keeps: Keeps) -> (Vec<PostRun<'_>>, bool) {
        few(self.runs(keeps))
    }

    /// The posts of a kind, those of a long run together.
    fn runs(&self, keeps: Keeps) -> Vec<PostRun<'_>> {
        let posts: Vec<_> = self.of(keeps).collect();
        posts.chunk_by(|_, next| next.follows).flat_map(run).collect()
    }
}

fn run<'p>(posts: &[&'p Post]) -> Vec<PostRun<'p>> {
    match posts {
        [first, .., last] if posts.len() >= RUN => vec![(*first, Some(*last))],
        few => few.iter().map(|post| (*post, None)).collect(),
    }
}

/// Of more than the most, the first ones and the last; and whether some are left out before that.
fn few(mut told: Vec<PostRun<'_>>) -> (Vec<PostRun<'_>>, bool) {
    let many = told.len() > MOST;
    if many {
        told.drain(FIRST..told.len() - 1);
    }
    (told, many)
}
