//! A page in elements for those who hear it: headings, paragraphs, tables, figures with their labels, and
//! what is only ornament.
//!
//! Elements follow one another as the page's marks do, so that drawn one after another they are the page.

use std::collections::BTreeSet;

use crate::paint::mark::{Anchor, Mark, Role, Text};
use crate::paint::metrics;

/// Words on a line that are less than this share of their size apart are one word.
const JOINED: f64 = 0.1;

/// A part of a page that is told as one.
#[derive(Clone, Debug, PartialEq)]
pub enum Element<'a> {
    /// Marks that are drawn together.
    Drawn(ElementKind, &'a [Mark]),
    /// Elements that are one thing together.
    Held(Holder, Vec<Self>),
}

/// What marks that are drawn together are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ElementKind {
    /// Words.
    Words,
    /// A drawing, and what it shows.
    Figure(String),
    /// A drawing that shows nothing: rules, brackets, beads beside their names.
    Ornament,
    /// The page's footer.
    Footer,
}

/// What elements are together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Holder {
    /// A heading of a level from 1, and what it says.
    Heading(u16, String),
    /// Words that are read as one.
    Paragraph,
    /// Rows, the first of them with headings where the table has some.
    Table,
    /// A row of cells that are headings, or are not.
    Row {
        /// Whether they are.
        of_headings: bool,
    },
    /// What stands in one column of a row.
    Cell,
    /// The cell that says what its row is about.
    RowName,
}

/// The elements of marks, in drawing order: what has no role joins what is next to it.
pub fn elements(marks: &[Mark]) -> Vec<Element<'_>> {
    marks.chunk_by(is_one).map(element).filter(|element| !says_nothing(element)).collect()
}

/// Whether an element is words without any: an empty cell keeps its column.
fn says_nothing(element: &Element<'_>) -> bool {
    matches!(element, Element::Held(Holder::Heading(..) | Holder::Paragraph, held) if held.is_empty())
}

/// How marks join their neighbours.
#[derive(PartialEq)]
enum Class {
    Words,
    Drawn,
    Table,
    Alone,
}

fn class(mark: &Mark) -> Class {
    match mark {
        Mark::Text(_) => Class::Words,
        Mark::Group { role: Role::Headings | Role::Row, .. } => Class::Table,
        Mark::Group { role: Role::Figure(_) | Role::Ornament, .. } => Class::Drawn,
        Mark::Group { .. } => Class::Alone,
        _ => Class::Drawn,
    }
}

/// Whether neighbours are in one element: headings begin a table.
fn is_one(mark: &Mark, next: &Mark) -> bool {
    let begins = matches!(next, Mark::Group { role: Role::Headings, .. });
    class(mark) == class(next) && class(mark) != Class::Alone && !begins
}

fn element(marks: &[Mark]) -> Element<'_> {
    match marks {
        [Mark::Group { role: Role::Headings | Role::Row, .. }, ..] => {
            Element::Held(Holder::Table, marks.iter().filter_map(row).collect())
        }
        [Mark::Group { role: Role::Footer, .. }] => Element::Drawn(ElementKind::Footer, marks),
        [Mark::Group { role, marks: held }] => match holder(role, held) {
            Some(holder) => Element::Held(holder, elements(held)),
            None => Element::Drawn(drawing(marks), marks),
        },
        [Mark::Text(_), ..] => Element::Drawn(ElementKind::Words, marks),
        _ => Element::Drawn(drawing(marks), marks),
    }
}

fn row(mark: &Mark) -> Option<Element<'_>> {
    let Mark::Group { role, marks } = mark else { return None };
    Some(Element::Held(Holder::Row { of_headings: *role == Role::Headings }, elements(marks)))
}

fn holder(role: &Role, marks: &[Mark]) -> Option<Holder> {
    match role {
        Role::Heading(level) => Some(Holder::Heading(*level, words(marks))),
        Role::Paragraph => Some(Holder::Paragraph),
        Role::Cell => Some(Holder::Cell),
        Role::RowName => Some(Holder::RowName),
        _ => None,
    }
}

fn words(marks: &[Mark]) -> String {
    let text = |mark: &Mark| if let Mark::Text(text) = mark { Some(text.text.clone()) } else { None };
    marks.iter().filter_map(text).collect::<Vec<_>>().join(" ")
}

/// What drawn marks show: each of their outermost labels once.
fn drawing(marks: &[Mark]) -> ElementKind {
    let mut labels = Vec::new();
    gather_labels(marks, &mut labels);
    let mut seen = BTreeSet::new();
    labels.retain(|label| seen.insert(*label));
    if labels.is_empty() { ElementKind::Ornament } else { ElementKind::Figure(labels.join("; ")) }
}

/// The outermost labels of marks.
fn gather_labels<'a>(marks: &'a [Mark], labels: &mut Vec<&'a str>) {
    for mark in marks {
        match mark {
            Mark::Group { role: Role::Figure(label), .. } => labels.push(label),
            held => gather_labels(held.inner(), labels),
        }
    }
}

/// Marks with a space between words that only their places keep apart, so that they are read apart
/// too. Spaces stand where they move nothing: after words set from the left, before words set to the
/// right.
pub fn read_apart(marks: &[Mark]) -> Vec<Mark> {
    let mut marks = marks.to_vec();
    for at in 1..marks.len() {
        // `at` is at least 1 and less than the length.
        let (before, after) = marks.split_at_mut(at);
        if let (Some(Mark::Text(one)), Some(Mark::Text(next))) = (before.last_mut(), after.first_mut()) {
            part_words(one, next);
        }
    }
    marks
}

fn part_words(one: &mut Text, next: &mut Text) {
    let end = one.at.x + metrics::width(&one.text, one.size, one.weight);
    let adjoins = one.at.y == next.at.y && (next.at.x - end).abs() < one.size * JOINED;
    match (one.anchor, next.anchor) {
        (Anchor::Start, Anchor::Start) if adjoins => {}
        (Anchor::Start, _) => one.text.push(' '),
        (_, Anchor::End) => next.text.insert(0, ' '),
        (_, Anchor::Middle) => next.text = format!(" {} ", next.text),
        (_, Anchor::Start) => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;
    use crate::paint::layout::Block;
    use crate::paint::layout::table::{Align, Cell, Column, Table};
    use crate::paint::layout::text::Type;

    #[test]
    fn words_that_only_their_places_keep_apart_are_read_apart() {
        let word = |text: &str, x: f64, y: f64, anchor| Type::BODY.mark(text, Point::new(x, y), anchor);
        let marks = [
            word("5", 0.0, 0.0, Anchor::Start),
            word("A", Type::BODY.width("5"), 0.0, Anchor::Start),
            word("reed", 20.0, 0.0, Anchor::Start),
            word("124", 60.0, 0.0, Anchor::End),
            word("ten", 60.0, 9.0, Anchor::Middle),
        ];
        assert_eq!(words(&read_apart(&marks)).replace(' ', "_"), "5_A__reed__124__ten_");
    }

    /// Elements in short: H1, P, words, figure, …
    fn told(elements: &[Element<'_>]) -> Vec<String> {
        let told = |element: &Element<'_>| match element {
            Element::Drawn(ElementKind::Figure(shows), marks) => format!("{shows} ({})", marks.len()),
            Element::Drawn(kind, marks) => format!("{kind:?} ({})", marks.len()),
            Element::Held(holder, held) => format!("{holder:?} [{}]", self::told(held).join(", ")),
        };
        elements.iter().map(told).collect()
    }

    #[test]
    fn marks_are_headings_paragraphs_figures_and_ornament() {
        let (ornament, figure) = (|| Mark::ornament(Vec::new()), |label: &str| Mark::figure(label, Vec::new()));
        let title = Type::TITLE.line("Reeds").in_role(Role::Heading(1));
        let words =
            Block::stack([title, Type::BODY.paragraph("one two", 8.0), Type::BODY.wrapped("one two", 8.0)], 0.0);
        let mut marks = words.at(Point::ORIGIN);
        marks.extend([ornament(), figure("strand 1"), ornament(), figure("strand 1"), figure("strand 2")]);
        marks.extend(Type::HEADING.line("Beads").in_role(Role::Heading(2)).marks);
        marks.extend([ornament(), Mark::Group { role: Role::Footer, marks: Vec::new() }]);
        let expected = [
            "Heading(1, \"Reeds\") [Words (1)]",
            "Paragraph [Words (2)]",
            "Words (2)",
            "strand 1; strand 2 (5)",
            "Heading(2, \"Beads\") [Words (1)]",
            "Ornament (1)",
            "Footer (1)",
        ];
        assert_eq!(told(&elements(&marks)), expected);
    }

    #[test]
    fn rows_are_a_table_which_its_headings_begin() {
        let mut table = Table::new(vec![Column::new("bead", Align::Left), Column::new("", Align::Right)]);
        table.push(vec![
            Cell::text("reed"),
            Cell::Drawing(Block::new(1.0, 1.0, vec![Mark::figure("a reed", Vec::new())])),
        ]);
        let marks = [table.set(50.0).block().marks, table.set(50.0).block().marks].concat();
        let table = "Table [Row { of_headings: true } [Cell [Paragraph [Words (1)]], Cell [], Ornament (1)], \
                     Row { of_headings: false } [Cell [Paragraph [Words (1)]], Cell [a reed (1)], Ornament (1)]]";
        assert_eq!(told(&elements(&marks)), [table, table]);
    }
}
