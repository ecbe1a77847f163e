//! A piece drawn in every way, and its counts compared wherever they are said.

use festoon::Piece;
use festoon::art::Ink;
use festoon::design::{Phrase, Strand};
use festoon::export;
use festoon::materials::{self, Order, render};
use festoon::measure::Measures;
use festoon::paint::mark::{Mark, Page};
use festoon::picture::{Ground, Proportion, Setting};
use festoon::remark::Remark;
use festoon::sheet::Style;
use festoon::source::Source;
use festoon::trade::paper::Paper;
use festoon::units::UnitStyle;

use super::{every, finite};

/// Grounds that a picture may lie on.
const GROUNDS: [Ground; 5] =
    [Ground::Linen, Ground::Neck, Ground::Slate, Ground::Transparent, Ground::Plain(Ground::PAPER)];
/// Proportions that a picture may have.
const PROPORTIONS: [Proportion; 3] = [Proportion::Square, Proportion::Upright, Proportion::Level];

/// Draws everything, and says what is wrong with it. Paper, ink, ground and proportion follow from the text, so
/// that among many pieces all are drawn.
pub fn check(piece: &Piece, remarks: &[Remark], source: &Source) -> Result<(), String> {
    let chance = source.text().len();
    let paper = Paper::ALL[chance % Paper::ALL.len()];
    let style = Style { paper, ink: Ink::ALL[chance % Ink::ALL.len()], prices: chance.is_multiple_of(2) };
    let pages = festoon::pages(piece, &style);
    whole(&pages)?;
    legend(piece, &pages)?;
    let (ground, proportion) = (GROUNDS[chance % GROUNDS.len()], PROPORTIONS[chance % PROPORTIONS.len()]);
    let setting = Setting { ground, proportion, caption: chance.is_multiple_of(2) };
    whole(&every::besides_the_sheet(std::slice::from_ref(piece), &style, &setting))?;
    chart(piece)?;
    tables(piece, remarks, source)
}

/// Whether every number of the pages is finite, and they become files.
fn whole(pages: &[Page]) -> Result<(), String> {
    pages.iter().try_for_each(|page| match finite::fault(page) {
        Some(fault) => Err(format!("{}: not finite: {fault}", page.title)),
        None if export::svg(page).is_empty() => Err(format!("{}: no SVG", page.title)),
        None => Ok(()),
    })
}

/// Whether the pages say each bead's count of the piece.
fn legend(piece: &Piece, pages: &[Page]) -> Result<(), String> {
    let mut texts = Vec::new();
    let mut marks: Vec<&Mark> = pages.iter().flat_map(|page| &page.marks).collect();
    while let Some(mark) = marks.pop() {
        if let Mark::Text(text) = mark {
            texts.push(text.text.as_str());
        }
        marks.extend(mark.inner());
    }
    for (bead, count) in piece.design.beads.iter().zip(piece.design.counts()) {
        let count = format!("{} ×", u64::from(count) * u64::from(piece.design.copies));
        if !texts.contains(&count.as_str()) {
            return Err(format!("the legend does not say {count} for {}", bead.id));
        }
    }
    Ok(())
}

/// Whether each strand's word chart, said aloud, strings what the strand holds.
fn chart(piece: &Piece) -> Result<(), String> {
    let beads = piece.design.beads.len();
    let differs = |strand: &&Strand| spoken(&strand.chart, beads) != strand.counts(&piece.design).as_slice();
    match piece.design.strands.iter().find(differs) {
        Some(strand) => Err(format!("the chart of {} strings {:?}", strand.name, spoken(&strand.chart, beads))),
        None => Ok(()),
    }
}

/// How many of each bead a chart strings.
fn spoken(chart: &[Phrase], beads: usize) -> Vec<u32> {
    let mut counts = vec![0; beads];
    let mut add = |times: u32, inner: &[Phrase]| {
        counts.iter_mut().zip(spoken(inner, beads)).for_each(|(sum, count)| *sum += times * count);
    };
    for phrase in chart {
        match phrase {
            Phrase::Times(times, inner) => add(*times, inner),
            Phrase::Mirror(side, about) => {
                add(2, side);
                add(1, about);
            }
            Phrase::Dangle(_, inner) | Phrase::Ordered(inner) => add(1, inner),
            Phrase::Run(..)
            | Phrase::Gap(_)
            | Phrase::Links(_)
            | Phrase::Knot
            | Phrase::Finding(_)
            | Phrase::Stop(..) => {}
        }
    }
    for phrase in chart {
        if let Phrase::Run(count, bead) = phrase {
            counts[bead.number()] += count;
        }
    }
    counts
}

/// Whether the tables are written, and need as many beads as are strung.
fn tables(piece: &Piece, remarks: &[Remark], source: &Source) -> Result<(), String> {
    let list = materials::materials(&piece.design, &Order { makers: 1, spare: 0.0, ..Order::default() });
    let csv = render::csv(&list, render::Separator::Comma);
    let copies = u64::from(piece.design.copies);
    for (bead, count) in piece.design.beads.iter().zip(piece.design.counts()) {
        let line = list.lines.iter().find(|line| line.article.kind() == "bead" && line.id == bead.id);
        let need = line.map(|line| format!("{:?}", line.need)).unwrap_or_default();
        if need != format!("Count({})", u64::from(count) * copies) {
            return Err(format!("{}: strung {count}, and the table needs {need}", bead.id));
        }
    }
    let measures = Measures::new(piece, remarks, source);
    let texts = [
        csv,
        render::table(&list, &piece.telling),
        render::json(&list, piece.telling.currency.as_deref()),
        measures.json(),
        measures.table(UnitStyle::Mm),
    ];
    if texts.iter().any(|text| text.is_empty() || text.contains("NaN")) {
        Err("a table is not whole".into())
    } else {
        Ok(())
    }
}
