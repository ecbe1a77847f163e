//! The sizes of a graded pattern: a table of what each measures and takes, and what to string for
//! those that are not this sheet's.

use crate::Piece;
use crate::design::{Design, Index, LEAST_BARE, Size, Strand};
use crate::materials::render::words::{self as amount, long};
use crate::steps::english::words::list;
use crate::steps::posts::{Post, Posts};
use crate::steps::{self, english::chart};
use crate::units::{Length, UnitStyle};

use super::said::{Compared, LengthOf, Subheading};
use super::{english, words};
use crate::paint::layout::Block;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;

/// Most sizes side by side; more stand in another table below.
const MOST: usize = 4;

/// What is the same in all sizes: `In every size: 1 inner, beads 7 ⅞ in (201 mm); C brass rondelle 18.`
pub fn same(piece: &Piece) -> Option<String> {
    let rows = rows(piece);
    let each: Vec<_> = rows.iter().filter(|row| !row.is_shown()).filter_map(Comparison::of_all).collect();
    (!each.is_empty() && piece.sizes.len() > 1).then(|| english::same_in_all(&each))
}

/// A row of the table: what it tells, and how of each size that can be made, as it is printed: what is rounded to the same
/// tells no size from another.
struct Comparison {
    name: String,
    told: Vec<Option<String>>,
    /// Whether it stands in the table where it tells no size from another.
    always: bool,
}

impl Comparison {
    fn new(what: &Compared<'_>, sizes: &[Size], tell: impl Fn(&Design) -> String) -> Self {
        Self {
            name: english::compared(what),
            told: sizes.iter().map(|size| size.design.as_ref().map(&tell)).collect(),
            always: false,
        }
    }

    /// The same, to stand in the table in any case.
    fn always(self) -> Self {
        Self { always: true, ..self }
    }

    /// Whether it stands in the table.
    fn is_shown(&self) -> bool {
        self.always || self.differs()
    }

    /// What it tells of all sizes alike.
    fn of_all(&self) -> Option<(&str, &str)> {
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

/// Tables of the sizes, a column a size, of what differs between them.
pub fn tables(piece: &Piece) -> Vec<Table> {
    let (sizes, rows) = (&piece.sizes, rows(piece));
    let rows: Vec<_> = rows.into_iter().filter(Comparison::is_shown).collect();
    let first = (0..sizes.len()).step_by(MOST);
    first.zip(sizes.chunks(MOST)).map(|(first, sizes)| table(sizes, first, &rows)).collect()
}

/// The table of some sizes, the first of which has a number among all.
fn table(sizes: &[Size], first: usize, rows: &[Comparison]) -> Table {
    let mut columns = vec![Column::wrapping("")];
    columns.extend(sizes.iter().map(|size| Column::new(&english::column(size), Align::Right)));
    let mut table = Table::new(columns);
    for row in rows {
        let mut cells = vec![Cell::text(&row.name)];
        cells.extend(sizes.iter().zip(&row.told[first..]).map(|(size, told)| {
            let told = told.as_deref().unwrap_or(english::NO_FIT).to_owned();
            if size.chosen { Cell::strong(told) } else { Cell::text(told) }
        }));
        table.push(cells);
    }
    table
}

/// What the other sizes are strung of: a block a size, its strands' word charts in the letters of
/// this sheet.
pub fn recipes(piece: &Piece, width: f64) -> Vec<Block> {
    let others = piece.sizes.iter().filter(|size| !size.chosen);
    others
        .filter_map(|size| {
            Some(recipe(size.name.as_deref(), &lettered(size.design.clone()?, &piece.design), piece, width))
        })
        .collect()
}

/// What to string for a size beside this sheet's; strands whose beads are the same are named alone.
fn recipe(name: Option<&str>, design: &Design, sheet: &Piece, width: f64) -> Block {
    let mut blocks = vec![Type::STRONG.paragraph(&english::heading(Subheading::Recipe(name)), width)];
    let (units, here) = (sheet.telling.units, &sheet.design);
    let told =
        |design: &Design, strand: &Strand| [chart::text(design, strand, units), steps::english::counts(design, strand)];
    let (mut alike_here, mut is_bare) = (Vec::new(), false);
    for alike in design.alike() {
        let (strand, titled) = (&design.strands[alike[0]], title(design, &alike));
        let said = told(design, strand);
        if here.strands.get(alike[0]).map(|strand| told(here, strand)).as_ref() == Some(&said) {
            is_bare |= strand.bare() >= LEAST_BARE;
            alike_here.push(titled);
            continue;
        }
        blocks.extend((design.strands.len() > 1).then(|| Type::SMALL_STRONG.fitted(&titled, width)));
        blocks.extend(words::set(&said[0], Type::SMALL, width));
        blocks.push(Type::TINY.paragraph(&said[1], width));
    }
    let same = english::as_here(&alike_here, is_bare);
    blocks.extend((!alike_here.is_empty()).then(|| Type::SMALL.paragraph(&same, width)));
    blocks.push(Block::gap(2.0));
    Block::stack(blocks, 0.0)
}

/// A size's design with the letters that another gives the same beads; one that the other does not
/// have stands with its id.
fn lettered(design: Design, other: &Design) -> Design {
    design.relettered(|bead| {
        let same = other.beads.iter().find(|same| same.id == bead.id);
        same.map_or_else(|| format!(" {}", bead.id), |same| same.letter.clone())
    })
}

/// What the piece goes round, its length, each strand's lengths and what stays in its place on it, cord in all, then the count of
/// each bead.
fn rows(piece: &Piece) -> Vec<Comparison> {
    let (sizes, design, units) = (piece.sizes.as_slice(), &piece.design, piece.telling.units);
    let whole =
        Comparison::new(&Compared::Whole(english::length_fact(design)), sizes, |design| english::length(design, units));
    let groups = alike(sizes, design);
    let strands = groups.iter().flat_map(|group| {
        let lengths = strand_rows(sizes, design, group, units).into_iter();
        lengths.chain(post_rows(sizes, design, group, units))
    });
    // An only strand's cut is told with its lengths.
    let cords =
        design.cords.iter().filter(|_| design.strands.len() > 1 || design.copies > 1).map(|cord| {
            Comparison::new(&Compared::Cord(&cord.name), sizes, |design| long(cut(design, &cord.id), units))
        });
    let beads = design.beads.iter().map(|bead| {
        Comparison::new(&Compared::Bead(&bead.letter, &bead.name), sizes, |design| count(design, &bead.id))
    });
    let fact = |tell: fn(&Design, UnitStyle) -> Option<(&'static str, String)>| {
        let (name, _) = tell(design, units)?;
        Some(Comparison::new(&Compared::Fact(name), sizes, |design| {
            tell(design, units).map(|(_, told)| told).unwrap_or_default()
        }))
    };
    let twisted = |design: &Design| design.twist.as_ref().map(|twist| units.ruler(twist.length())).unwrap_or_default();
    let twisted = design.twist.as_ref().map(|_| Comparison::new(&Compared::Twisted, sizes, twisted));
    // Whom each size fits is told in any case; how it lies, and what the trade calls it, where that tells sizes apart.
    let inside = fact(english::inside).filter(Comparison::differs).filter(Comparison::is_full);
    let called = Comparison::new(&Compared::Called, sizes, |design| {
        english::called(design).map_or_else(|| english::NO_NAME.to_owned(), |(_, name)| name)
    });
    let lies = inside.into_iter().chain(Some(called).filter(Comparison::differs));
    let facts = fact(english::worn_round).into_iter().chain(lies).chain([whole]).chain(twisted).map(Comparison::always);
    facts.chain(strands).chain(cords).chain(beads).collect()
}

/// The strands, those together that are alike in every size.
fn alike(sizes: &[Size], design: &Design) -> Vec<Vec<Index<Strand>>> {
    let groups = design.alike();
    let same = sizes.iter().filter_map(|size| size.design.as_ref()).all(|design| design.alike() == groups);
    if same { groups } else { design.strands.indices().map(|at| vec![at]).collect() }
}

fn strand_rows(sizes: &[Size], design: &Design, group: &[Index<Strand>], units: UnitStyle) -> Vec<Comparison> {
    let titled = title(design, group);
    let told = |what: LengthOf, length: fn(&Strand) -> Length, say: fn(Length, UnitStyle) -> String| {
        Comparison::new(&Compared::Length(&titled, what), sizes, |design| {
            design.strands.get(group[0]).map(|strand| say(length(strand), units)).unwrap_or_default()
        })
    };
    let row = |what, length| told(what, length, |length, units| units.ruler(length));
    let strands = sizes.iter().filter_map(|size| size.design.as_ref()?.strands.get(group[0]));
    let is_bare = strands.into_iter().any(|strand| strand.bare() >= LEAST_BARE);
    let bare = is_bare.then(|| row(LengthOf::Bare, Strand::bare));
    let lengths = [row(LengthOf::Finished, |strand| strand.finished), row(LengthOf::Beads, Strand::beaded)];
    lengths
        .into_iter()
        .chain(bare)
        .chain([told(LengthOf::Cut, Strand::cut, amount::cut)])
        .chain(knots(sizes, design, group))
        .collect()
}

/// How many knots are tied among a strand's beads, where there are some.
fn knots(sizes: &[Size], design: &Design, group: &[Index<Strand>]) -> Option<Comparison> {
    let tied = |design: &Design| {
        let knots = design.strands.get(group[0])?.knots();
        (knots > 0).then_some(knots)
    };
    let row = Comparison::new(&Compared::Knots(&title(design, group)), sizes, |design| {
        tied(design).unwrap_or_default().to_string()
    });
    sizes.iter().any(|size| size.design.as_ref().and_then(tied).is_some()).then_some(row)
}

/// What stays in its place on a strand in any of the sizes, each by its name once, with where it stands in each
/// size; nothing where a size has no such thing.
fn post_rows(sizes: &[Size], design: &Design, group: &[Index<Strand>], units: UnitStyle) -> Vec<Comparison> {
    let posts = sizes.iter().map(|size| {
        let design = size.design.as_ref()?;
        Some(Posts::new(design, design.strands.get(group[0])?))
    });
    let posts: Vec<_> = posts.collect();
    let titled = title(design, group);
    let row = |post: &Post| {
        let station = |posts: &Option<Posts<'_>>| {
            let same = posts.as_ref()?.all().iter().find(|other| other.name == post.name);
            Some(same.map(|same| units.ruler(same.station)).unwrap_or_default())
        };
        let name = english::compared(&Compared::Post(&titled, &post.name, post.keeps));
        Comparison { name, told: posts.iter().map(station).collect(), always: true }
    };
    listed(&posts).into_iter().map(row).collect()
}

/// The posts that any of the sizes lists, each by its name once.
fn listed<'p>(posts: &'p [Option<Posts<'_>>]) -> Vec<&'p Post> {
    let mut listed: Vec<_> = posts.iter().flatten().flat_map(Posts::listed).collect();
    listed.sort_by_key(|post| (post.keeps as usize, post.name.len(), &post.name));
    listed.dedup_by_key(|post| &post.name);
    listed
}

/// Where the positions in the table are measured from, where it has any.
pub fn datum(sizes: &[Size], design: &Design) -> Option<String> {
    let has_posts = |at: &Index<Strand>| {
        let designs = sizes.iter().filter_map(|size| size.design.as_ref());
        let mut strands = designs.filter_map(|design| Some((design, design.strands.get(*at)?)));
        strands.any(|(design, strand)| !Posts::new(design, strand).all().is_empty())
    };
    let strand = design.strands.indices().find(has_posts)?;
    Some(english::positions(design, &design.strands[strand]))
}

/// Strands' numbers, where a design has several, and their names: `1 and 3 upper and lower`.
pub fn title(design: &Design, strands: &[Index<Strand>]) -> String {
    let names = steps::english::words::names(design, strands);
    let numbers: Vec<_> = strands.iter().map(|at| at.ordinal().to_string()).collect();
    if design.strands.len() > 1 { format!("{} {names}", list(&numbers)) } else { names }
}

/// How much of a cord a size takes, in all copies.
fn cut(design: &Design, id: &str) -> Length {
    let on_it = design.strands.iter().filter(|strand| design.cords[strand.cord].id == id);
    on_it.map(Strand::cut).sum::<Length>() * f64::from(design.copies)
}

/// How many of a bead a size takes, in all copies.
fn count(design: &Design, id: &str) -> String {
    let counts = design.beads.iter().zip(design.counts());
    let count = counts.filter(|(bead, _)| bead.id == id).map(|(_, count)| u64::from(count)).sum::<u64>();
    (count * u64::from(design.copies)).to_string()
}
