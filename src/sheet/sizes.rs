//! The size table of a graded pattern: what each size measures and takes.

use crate::design::{Design, Size, Strand};
use crate::units::UnitStyle;

use super::layout::table::{Align, Cell, Column, Table};

/// Most sizes side by side; more stand in another table below.
const MOST: usize = 4;

/// A row of the table: what it tells and how, from the design of a size.
struct Row {
    name: String,
    tell: Box<dyn Fn(&Design) -> String>,
}

/// Tables of the sizes, a column a size.
pub fn tables(sizes: &[Size], design: &Design) -> Vec<Table> {
    let rows = rows(design);
    sizes.chunks(MOST).map(|sizes| table(sizes, &rows)).collect()
}

fn table(sizes: &[Size], rows: &[Row]) -> Table {
    let mut columns = vec![Column::wrapping("")];
    columns.extend(sizes.iter().map(|size| Column::new(&name(size), Align::Right)));
    let mut table = Table::new(columns);
    for row in rows {
        let mut cells = vec![Cell::text(&row.name)];
        let tell =
            |size: &Size| size.design.as_ref().map_or_else(|| "does not fit".to_owned(), |design| (row.tell)(design));
        cells.extend(sizes.iter().map(|size| match size.chosen {
            true => Cell::strong(tell(size)),
            false => Cell::text(tell(size)),
        }));
        table.push(cells);
    }
    table
}

fn name(size: &Size) -> String {
    let name = size.name.as_deref().unwrap_or("base size");
    if size.chosen { format!("{name}, this sheet") } else { name.to_owned() }
}

/// Finished and cut length of each strand, then the count of each bead.
fn rows(design: &Design) -> Vec<Row> {
    let units = design.heading.units;
    let strands = design.strands.iter().enumerate().flat_map(|(at, strand)| strand_rows(at, strand, units));
    let beads = design.beads.iter().map(|bead| {
        let id = bead.id.clone();
        Row { name: format!("{} {}", bead.letter, bead.name), tell: Box::new(move |design| count(design, &id)) }
    });
    strands.chain(beads).collect()
}

fn strand_rows(at: usize, strand: &Strand, units: UnitStyle) -> [Row; 2] {
    let of = move |design: &Design, length: fn(&Strand) -> crate::units::Length| {
        design.strands.get(at).map(|strand| units.ruler(length(strand))).unwrap_or_default()
    };
    [
        Row {
            name: format!("{}, finished", strand.name),
            tell: Box::new(move |design| of(design, |one| one.finished)),
        },
        Row { name: format!("{}, cut", strand.name), tell: Box::new(move |design| of(design, Strand::cut)) },
    ]
}

/// How many of a bead a size takes, in all copies.
fn count(design: &Design, id: &str) -> String {
    let counts = design.beads.iter().zip(design.counts());
    let count = counts.filter(|(bead, _)| bead.id == id).map(|(_, count)| u64::from(count)).sum::<u64>();
    (count * u64::from(design.copies)).to_string()
}
