//! A page of headings, text and a table, set by the layout layer.

use festoon::art::{Ink, Stencils};
use festoon::geometry::Point;
use festoon::pattern::{Finish, Shape};
use festoon::sheet::flow::Flow;
use festoon::sheet::layout::{Block, Rect};
use festoon::sheet::mark::{Mark, Page, Rgb};
use festoon::sheet::style::{ACCENT, BODY, GRID, HEADING, MARGIN, SMALL, TITLE};
use festoon::sheet::table::{Align, Cell, Column, Table};

use crate::{contact, samples};

const TEXT: &str = "Three graduated strands in reed green, mist and brass, gathered into fluted cones. String the inner \
    strand first: 5 A, 1 B, eleven times, then 5 A. The beads measure 12 in, give or take ⅛ in (305 mm).";

fn legend(stencils: &mut Stencils, beads: usize) -> Table {
    let columns = vec![
        Column::new("", Align::Left, 0.0),
        Column::new("Bead", Align::Left, 0.0),
        Column::new("Name", Align::Left, 1.0),
        Column::new("Size", Align::Left, 0.0),
        Column::new("Count", Align::Number, 0.0),
        Column::new("Mass, g", Align::Number, 0.0),
    ];
    let mut table = Table::new(columns);
    for index in 0..beads {
        let stamp = stencils.bead(index, Point::new(5.0, 4.0), 0.0, 1.0);
        let mass = format!("{:.1}", 0.7 * libm::pow(index as f64 + 1.0, 1.9));
        let name = format!("{} glass, first pressed and then polished", ["reed", "mist", "brass"][index % 3]);
        let letter = char::from(b'A' + u8::try_from(index).unwrap());
        table.rows.push(vec![
            letter.to_string().into(),
            Cell::Drawing(Block::new(10.0, 8.0, vec![stamp])),
            name.into(),
            "6 × 4 mm".into(),
            (index * 37 + 4).to_string().into(),
            mass.into(),
        ]);
    }
    table
}

#[test]
fn a_sheet_flows_over_pages() {
    let beads: Vec<_> =
        (0..26).map(|i| samples::bead(Shape::ALL[i % 12], Finish::ALL[i % 7], 6.0, Rgb(93, 127, 91))).collect();
    let design = samples::design(beads, Vec::new(), Vec::new());
    let mut stencils = Stencils::new(&design, Ink::Colour);
    let table = legend(&mut stencils, 26);
    let mut flow = Flow::new(Rect::new(0.0, 0.0, 210.0, 297.0).inset(MARGIN));
    flow.add(Block::line("Saltmarsh", TITLE.in_colour(ACCENT)));
    flow.paragraph(TEXT, BODY);
    flow.space(GRID);
    flow.heading(Block::line("Legend", HEADING));
    flow.table(&table);
    flow.space(GRID);
    flow.heading(Block::line("Notes", HEADING));
    let column = |text: &str| Block::paragraph(text, SMALL, 90.0);
    flow.add(Block::beside(vec![column(TEXT), column(TEXT)], 6.0));
    let pages = flow.finish();
    assert_eq!(pages.len(), 2);
    let symbols = stencils.into_symbols();
    for (index, marks) in pages.into_iter().enumerate() {
        assert!(marks.iter().any(|mark| matches!(mark, Mark::Stamp { .. })));
        let (title, description) = (format!("Page {index}"), String::new());
        let page = Page { width: 210.0, height: 297.0, title, description, symbols: symbols.clone(), marks };
        contact::write(&page, &format!("sheet-{index}"));
    }
}
