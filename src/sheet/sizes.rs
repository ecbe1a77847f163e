//! The sizes of a graded pattern: a table of what each measures and takes, and what to string for
//! those that are not this sheet's.

mod comparison;

use crate::design::{Design, Index, LEAST_BARE, Size, Strand};
use crate::english::list;
use crate::steps;
use crate::steps::english::chart::{self, WordChart};
use crate::units::UnitStyle;

use super::said::Subheading;
use super::{english, words};
use crate::paint::layout::Block;
use crate::paint::layout::table::{Align, Cell, Column, Table};
use crate::paint::layout::text::Type;

use comparison::{Comparison, Sizes};

/// Most sizes side by side; more stand in another table below.
const MOST: usize = 4;

/// What is said below the tables: what is the same in all sizes, and from where positions are measured.
pub fn notes(sizes: &[Size], design: &Design, units: UnitStyle) -> Vec<String> {
    let sizes = Sizes { all: sizes, design, units };
    same(sizes).into_iter().chain(sizes.datum()).collect()
}

/// `In every size: 1 inner, beads 7 ⅞ in (201 mm); C brass rondelle 18.`
fn same(sizes: Sizes<'_>) -> Option<String> {
    let rows = sizes.rows();
    let each: Vec<_> = rows.iter().filter(|row| !row.is_shown()).filter_map(Comparison::of_all).collect();
    (!each.is_empty() && sizes.all.len() > 1).then(|| english::same_in_all(&each))
}

/// Tables of the sizes, a column a size, of what differs between them.
pub fn tables(sizes: &[Size], design: &Design, units: UnitStyle) -> Vec<Table> {
    let rows: Vec<_> = Sizes { all: sizes, design, units }.rows().into_iter().filter(Comparison::is_shown).collect();
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
pub fn recipes(sizes: &[Size], design: &Design, units: UnitStyle, width: f64) -> Vec<Block> {
    let recipe = |size: &Size| {
        let other = lettered(size.design.clone()?, design);
        Some(recipe(size.name.as_deref(), Recipe { design: &other, units }, Recipe { design, units }, width))
    };
    sizes.iter().filter(|size| !size.chosen).filter_map(recipe).collect()
}

/// What to string for a size beside this sheet's; strands that read as here are named alone.
fn recipe(name: Option<&str>, size: Recipe<'_>, sheet: Recipe<'_>, width: f64) -> Block {
    let title = Type::STRONG.paragraph(&english::heading(Subheading::Recipe(name)), width);
    let (as_here, others): (Vec<_>, Vec<_>) =
        size.design.alike().into_iter().partition(|alike| size.reads(alike[0]) == sheet.reads(alike[0]));
    let others = others.iter().flat_map(|alike| size.told(alike, width));
    let same = (!as_here.is_empty()).then(|| Type::SMALL.paragraph(&size.as_here(&as_here), width));
    Block::stack(std::iter::once(title).chain(others).chain(same).chain([Block::gap(2.0)]), 0.0)
}

/// A size that is told strand by strand.
#[derive(Clone, Copy)]
struct Recipe<'a> {
    design: &'a Design,
    units: UnitStyle,
}

impl Recipe<'_> {
    /// The word chart of a strand, and its counts, where there is such a strand.
    fn reads(self, at: Index<Strand>) -> Option<(WordChart, String)> {
        let strand = self.design.strands.get(at)?;
        Some((chart::whole(self.design, strand, self.units), steps::english::counts(self.design, strand)))
    }

    /// Strands that are strung alike.
    fn told(self, alike: &[Index<Strand>], width: f64) -> Vec<Block> {
        let (chart, counts) = self.reads(alike[0]).unwrap_or_default();
        let title =
            (self.design.strands.len() > 1).then(|| Type::SMALL_STRONG.fitted(&title(self.design, alike), width));
        let chart = words::set(&chart, Type::SMALL, width);
        title.into_iter().chain(chart).chain([Type::TINY.paragraph(&counts, width)]).collect()
    }

    /// Strands that read as on the sheet.
    fn as_here(self, groups: &[Vec<Index<Strand>>]) -> String {
        let is_bare = groups.iter().any(|alike| self.design.strands[alike[0]].bare() >= LEAST_BARE);
        let titles: Vec<_> = groups.iter().map(|alike| title(self.design, alike)).collect();
        english::as_here(self.design, &titles, is_bare)
    }
}

/// A size's design with the letters that another gives the same beads; one that the other does not
/// have stands with its id.
fn lettered(design: Design, other: &Design) -> Design {
    design.relettered(|bead| {
        let same = other.beads.iter().find(|same| same.id == bead.id);
        same.map_or_else(|| format!(" {}", bead.id), |same| same.letter.clone())
    })
}

/// Strands' numbers, where a design has several, and their names: `1 and 3 upper and lower`.
pub fn title(design: &Design, strands: &[Index<Strand>]) -> String {
    let names = steps::english::words::names(design, strands);
    let numbers: Vec<_> = strands.iter().map(|at| at.ordinal().to_string()).collect();
    if design.strands.len() > 1 { format!("{} {names}", list(&numbers)) } else { names }
}
