//! Which things of a row are one of the repeats that fill it.

use std::ops::Range;

use crate::source::{At, Place};

use crate::design::row::Strung;

use super::{Along, Entry, Given, Item, List, Own, string};

/// Things of a row, once or as often as fill it.
#[derive(Clone)]
struct RowSection {
    fills: bool,
    row: Vec<Strung>,
}

impl RowSection {
    fn times(&self, times: u32) -> Vec<Strung> {
        vec![self.row.as_slice(); times as usize].concat()
    }

    fn backwards(&self) -> Self {
        Self { row: self.row.iter().rev().cloned().collect(), ..*self }
    }
}

impl List<'_> {
    /// Which things of the row are one repeat, the last but one where there are several, of the repeat that fills,
    /// or of two that fill alike, as in a mirror; nothing where none does. A single repeat between knots shows
    /// nothing of how the next would follow it.
    pub fn filled(&self, fill: u32) -> Option<Vec<Range<usize>>> {
        let long = |row: Vec<Strung>| self.given.knotted(row).len();
        let (mut row, mut ones) = (Vec::new(), Vec::new());
        for section in self.sections()? {
            if section.fills {
                let start = long([row.clone(), section.times(fill.saturating_sub(2))].concat());
                ones.push(start..start + long(section.times(2)) - long(section.times(1)));
            }
            row.extend(section.times(if section.fills { fill } else { 1 }));
        }
        let alike = ones.iter().all(|one| one.len() == ones[0].len());
        let shown = fill > 1 || self.given.knots.is_none();
        Some(ones).filter(|ones| alike && shown && matches!(ones.len(), 1 | 2))
    }

    /// It in parts that fill and others; nothing where a repeat that fills stands in another, or a row fills too.
    fn sections(&self) -> Option<Vec<RowSection>> {
        let own = |item: &At<Own<'_>>| match &item.value {
            Own::Entry(entry) => within(entry, item.place, self.given),
            Own::Row(_) => None,
        };
        Some(self.items().map(own).collect::<Option<Vec<_>>>()?.concat())
    }
}

fn sections(items: &[At<Entry<'_>>], given: Given<'_>) -> Option<Vec<RowSection>> {
    Some(items.iter().map(|item| within(&item.value, item.place, given)).collect::<Option<Vec<_>>>()?.concat())
}

fn within(entry: &Entry<'_>, place: Place, given: Given<'_>) -> Option<Vec<RowSection>> {
    Some(match entry {
        Item::More(Along::Fill(of)) => {
            let is_nested = of.iter().any(|item| item.value.fills());
            let row = Some(string::row(of, 1, given)).filter(|_| !is_nested)?;
            vec![RowSection { fills: true, row }]
        }
        Item::Repeat(times, of) if entry.fills() => vec![sections(of, given)?; *times as usize].concat(),
        Item::Mirror(side, about) => {
            let side = sections(side, given)?;
            let back = side.iter().rev().map(RowSection::backwards).collect();
            [side.clone(), sections(about, given)?, back].concat()
        }
        _ => vec![RowSection { fills: false, row: string::placed(entry, place, 1, given).collect() }],
    })
}
