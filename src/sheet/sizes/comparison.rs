//! What is compared between the sizes of a graded pattern, a row a thing.

use crate::design::{Cord, Design, Index, LEAST_BARE, Size, Strand, Twist};
use crate::english::times;
use crate::materials::render::words as amount;
use crate::materials::{Article, need};
use crate::sheet::english;
use crate::sheet::fact::{self, Fact};
use crate::sheet::said::{Compared, LengthOf};
use crate::steps::posts::{Keeps, Post, Posts};
use crate::units::{Length, UnitStyle};

use super::title;

/// A row of the table: what it tells, and how of each size that can be made, as it is printed: what is rounded to the same
/// tells no size from another.
pub struct Comparison {
    /// What it tells.
    pub name: String,
    /// How it is of each size.
    pub told: Vec<Option<String>>,
    /// Whether it stands in the table where it tells no size from another.
    always: bool,
}

impl Comparison {
    /// The same, to stand in the table in any case.
    fn always(self) -> Self {
        Self { always: true, ..self }
    }

    /// Whether it stands in the table.
    pub fn is_shown(&self) -> bool {
        self.always || self.differs()
    }

    /// What it tells of all sizes alike.
    pub fn of_all(&self) -> Option<(&str, &str)> {
        Some((&self.name, self.told.iter().flatten().next()?))
    }

    /// Whether it tells of each size.
    fn is_full(&self) -> bool {
        self.told.iter().flatten().all(|told| !told.is_empty())
    }

    /// Whether it tells sizes apart.
    fn differs(&self) -> bool {
        let mut told = self.told.iter().flatten();
        told.next().is_some_and(|first| told.any(|other| other != first))
    }
}

/// The sizes of a design, to be compared.
#[derive(Clone, Copy)]
pub struct Sizes<'a> {
    /// All of them.
    pub all: &'a [Size],
    /// That of the sheet.
    pub design: &'a Design,
    /// How lengths are printed.
    pub units: UnitStyle,
}

impl<'a> Sizes<'a> {
    /// What the piece goes round, its length, each strand's lengths and what stays in its place on it, cord in all, then the
    /// count of each bead.
    pub fn rows(self) -> Vec<Comparison> {
        let groups = self.alike();
        let strands = groups.iter().flat_map(|group| self.lengths(group).chain(self.posts(group)).collect::<Vec<_>>());
        self.piece().chain(strands).chain(self.cords()).chain(self.beads()).collect()
    }

    /// The designs of those that can be made.
    fn designs(self) -> impl Iterator<Item = &'a Design> {
        self.all.iter().filter_map(|size| size.design.as_ref())
    }

    fn row(self, what: &Compared<'_>, tell: impl Fn(&Design) -> String) -> Comparison {
        let told = self.all.iter().map(|size| size.design.as_ref().map(&tell)).collect();
        Comparison { name: english::compared(what), told, always: false }
    }

    fn fact(self, of: fn(&Design) -> Option<Fact>) -> Option<Comparison> {
        let told = |design: &Design| of(design).map(|fact| english::fact(&fact, self.units)).unwrap_or_default();
        Some(self.row(&Compared::Fact(&of(self.design)?), told))
    }

    /// Whom each size fits and how long it is are told in any case; how it lies, and what the trade calls it, where that tells
    /// sizes apart.
    fn piece(self) -> impl Iterator<Item = Comparison> {
        let inside = self.fact(fact::inside).filter(Comparison::differs).filter(Comparison::is_full);
        let called = Some(self.called()).filter(Comparison::differs);
        let whole = self.row(&Compared::Whole(fact::along(self.design)), |design| english::length(design, self.units));
        let facts = [self.fact(fact::worn_round), inside, called, Some(whole)];
        facts.into_iter().flatten().map(Comparison::always).chain(self.twisted())
    }

    fn called(self) -> Comparison {
        self.row(&Compared::Called, |design| english::called(fact::trade_length(design).map(|(name, ..)| name)))
    }

    /// How often strands are twisted, by how much they draw in, and how far they reach then.
    fn twisted(self) -> impl Iterator<Item = Comparison> {
        let twist = self.design.twist.as_ref();
        let ruler = |length: Option<Length>| length.map(|length| self.units.ruler(length)).unwrap_or_default();
        let reach = |design: &Design| design.twist.as_ref().map(Twist::length);
        let tips = |design: &Design| design.tip_to_tip(reach(design)?);
        let turns = |design: &Design| design.twist.as_ref().map(|twist| times(twist.turns)).unwrap_or_default();
        let rows = twist.map(|_| {
            [
                Some(self.row(&Compared::Turned, turns)),
                Some(self.row(&Compared::DrawnIn, |design| ruler(design.drawn_in())).always()),
                tips(self.design).map(|_| {
                    self.row(&Compared::TipToTip, |design| ruler(tips(design).map(|(_, length)| length))).always()
                }),
                Some(self.row(&Compared::Twisted, |design| ruler(reach(design))).always()),
            ]
        });
        rows.into_iter().flatten().flatten()
    }

    /// Cords in all; an only piece's length is told with its strand's.
    fn cords(self) -> impl Iterator<Item = Comparison> {
        let several = move |cord: &&Cord| pieces(self.design, &cord.id).count() > 1;
        let cords = self.design.cords.iter().filter(several);
        cords.map(move |cord| {
            self.row(&Compared::Cord(&cord.name), |design| amount::cut_in_all(pieces(design, &cord.id), self.units))
        })
    }

    fn beads(self) -> impl Iterator<Item = Comparison> {
        let row = move |letter: &str, name: &str, id: &str| {
            self.row(&Compared::Bead(letter, name), |design| count(design, id))
        };
        self.design.beads.iter().map(move |bead| row(&bead.letter, &bead.name, &bead.id))
    }

    /// The strands, those together that are alike in every size.
    fn alike(self) -> Vec<Vec<Index<Strand>>> {
        let groups = self.design.alike();
        let same = self.designs().all(|design| design.alike() == groups);
        if same { groups } else { self.design.strands.indices().map(|at| vec![at]).collect() }
    }

    /// A strand in each size that has it.
    fn strands(self, at: Index<Strand>) -> impl Iterator<Item = (&'a Design, &'a Strand)> {
        self.designs().filter_map(move |design| Some((design, design.strands.get(at)?)))
    }

    fn lengths(self, group: &[Index<Strand>]) -> impl Iterator<Item = Comparison> {
        let is_bare = self.strands(group[0]).any(|(_, strand)| strand.bare() >= LEAST_BARE);
        let ruler: fn(Length, UnitStyle) -> String = |length, units| units.ruler(length);
        let is_bent = self.strands(group[0]).any(|(_, strand)| strand.told_slack().is_some());
        let rows = [
            Some(self.length(group, LengthOf::Finished, |strand| strand.finished, ruler)),
            is_bent.then(|| self.length(group, LengthOf::Pulled, Strand::pulled, ruler)),
            Some(self.length(group, LengthOf::Beads, Strand::beaded, ruler)),
            is_bare.then(|| self.length(group, LengthOf::Bare, Strand::bare, |length, units| units.fine(length))),
            Some(self.length(group, LengthOf::Cut, Strand::cut, amount::cut)),
            self.knots(group),
            self.in_knots(group),
            self.between_groups(group),
        ];
        rows.into_iter().flatten()
    }

    fn length(
        self,
        group: &[Index<Strand>],
        what: LengthOf,
        length: fn(&Strand) -> Length,
        say: fn(Length, UnitStyle) -> String,
    ) -> Comparison {
        self.row(&Compared::Length(&title(self.design, group), what), |design| {
            design.strands.get(group[0]).map(|strand| say(length(strand), self.units)).unwrap_or_default()
        })
    }

    /// How much cord those take up.
    fn in_knots(self, group: &[Index<Strand>]) -> Option<Comparison> {
        let are_tied = self.strands(group[0]).any(|(_, strand)| strand.take_up_between() > Length::ZERO);
        let taken = |design: &Design| {
            let strand = design.strands.get(group[0]);
            strand.map(|strand| self.units.ruler(strand.take_up_between())).unwrap_or_default()
        };
        are_tied.then(|| self.row(&Compared::InKnots(&title(self.design, group)), taken))
    }

    /// How much bare cord lies between a strand's groups, where that is alike in each size.
    fn between_groups(self, group: &[Index<Strand>]) -> Option<Comparison> {
        let between = |design: &Design| Posts::new(design, design.strands.get(group[0])?).between_groups();
        let are_even = self.designs().all(|design| between(design).is_some());
        let told = |design: &Design| between(design).map(|gap| self.units.fine(gap)).unwrap_or_default();
        are_even.then(|| self.row(&Compared::BetweenGroups(&title(self.design, group)), told))
    }

    /// How many knots are tied among a strand's beads, where there are some.
    fn knots(self, group: &[Index<Strand>]) -> Option<Comparison> {
        let are_tied = self.strands(group[0]).any(|(_, strand)| strand.knots() > 0);
        let knots = |design: &Design| design.strands.get(group[0]).map_or(0, Strand::knots).to_string();
        are_tied.then(|| self.row(&Compared::Knots(&title(self.design, group)), knots))
    }

    /// What stays in its place on a strand in any of the sizes, each by its name once, with where it stands in each
    /// size; nothing where a size has no such thing.
    fn posts(self, group: &[Index<Strand>]) -> impl Iterator<Item = Comparison> {
        let posts = self.all.iter().map(|size| {
            let design = size.design.as_ref()?;
            Some(Posts::new(design, design.strands.get(group[0])?))
        });
        let (posts, title) = (posts.collect::<Vec<_>>(), title(self.design, group));
        let are_even = self.between_groups(group).is_some();
        let told = listed(&posts).into_iter().filter(|post| !are_even || is_end(post, &posts));
        let rows: Vec<_> = told.map(|post| self.post(&title, post, &posts)).collect();
        rows.into_iter()
    }

    /// Where a post of strands of a title stands in each size.
    fn post(self, title: &str, post: &Post, posts: &[Option<Posts<'_>>]) -> Comparison {
        let station = |posts: &Option<Posts<'_>>| {
            let same = posts.as_ref()?.all().iter().find(|other| other.name == post.name);
            Some(same.map(|same| self.units.ruler(same.station)).unwrap_or_default())
        };
        let name = english::compared(&Compared::Post(title, &post.name, post.keeps));
        Comparison { name, told: posts.iter().map(station).collect(), always: true }
    }

    /// Where the positions in the table are measured from, where it has any.
    pub fn datum(self) -> Option<String> {
        let has_posts =
            |at: &Index<Strand>| self.strands(*at).any(|(design, strand)| !Posts::new(design, strand).all().is_empty());
        let strand = self.design.strands.indices().find(has_posts)?;
        Some(english::positions(self.design, &self.design.strands[strand]))
    }
}

/// Whether a post is no group between others, which lie as far apart as all.
fn is_end(post: &Post, posts: &[Option<Posts<'_>>]) -> bool {
    let mut ends = posts.iter().flatten().flat_map(|posts| {
        let groups: Vec<_> = posts.of(Keeps::Group).collect();
        [groups.first().copied(), groups.last().copied()]
    });
    post.keeps != Keeps::Group || ends.any(|end| end.is_some_and(|end| end.name == post.name))
}

/// The posts that any of the sizes lists, each by its name once.
fn listed<'p>(posts: &'p [Option<Posts<'_>>]) -> Vec<&'p Post> {
    let mut listed: Vec<_> = posts.iter().flatten().flat_map(Posts::listed).collect();
    listed.sort_by_key(|post| (post.keeps as usize, post.name.len(), &post.name));
    listed.dedup_by_key(|post| &post.name);
    listed
}

/// The pieces that a size takes of a cord, in all copies, with those for tassels and to try knots in.
fn pieces(design: &Design, id: &str) -> impl Iterator<Item = Length> {
    let cords = design.cords.entries().filter(move |(_, cord)| cord.id == id);
    let one = cords.flat_map(|(at, _)| need::pieces(design, Article::Cord(at))).map(|piece| piece.length);
    let one: Vec<_> = one.collect();
    one.repeat(design.copies as usize).into_iter()
}

/// How many of a bead a size takes, in all copies.
fn count(design: &Design, id: &str) -> String {
    let counts = design.beads.iter().zip(design.counts());
    let count = counts.filter(|(bead, _)| bead.id == id).map(|(_, count)| u64::from(count)).sum::<u64>();
    (count * u64::from(design.copies)).to_string()
}
