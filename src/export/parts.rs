//! A page in parts for those who hear it: headings, paragraphs, figures with their labels, and what is
//! only ornament.
//!
//! Parts follow one another as the page's marks do, so that drawn one after another they are the page.

use std::collections::BTreeSet;

use crate::paint::mark::{Anchor, Mark, Page, Role, Text};
use crate::paint::metrics;

/// Words on a line that are less than this share of their size apart are one word.
const JOINED: f64 = 0.1;

/// What a part is.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// A heading of a level from 1, and what it says.
    Heading(u16, String),
    /// Words.
    Paragraph,
    /// A drawing, and what it shows.
    Figure(String),
    /// A drawing that shows nothing: rules, brackets, beads beside their names.
    Ornament,
    /// The page's footer.
    Footer,
}

/// A part of a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Part<'a> {
    /// What it is.
    pub kind: Kind,
    /// Its marks, in drawing order.
    pub marks: &'a [Mark],
}

impl Part<'_> {
    /// The marks, with a space between words that only their places keep apart, so that they are read
    /// apart too. Spaces stand where they move nothing: after words set from the left, before words
    /// set to the right.
    pub fn read_apart(&self) -> Vec<Mark> {
        let mut marks = self.marks.to_vec();
        for at in 1..marks.len() {
            // `at` is at least 1 and less than the length.
            let (before, after) = marks.split_at_mut(at);
            if let (Some(Mark::Text(one)), Some(Mark::Text(next))) = (before.last_mut(), after.first_mut()) {
                part_words(one, next);
            }
        }
        marks
    }
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

/// What marks must share to be one part.
#[derive(PartialEq)]
enum Class {
    Words { level: u16, size: f64 },
    Drawn,
    Footer,
}

/// The parts of a page, in drawing order.
pub fn parts(page: &Page) -> Vec<Part<'_>> {
    let runs = page.marks.chunk_by(|one, next| class(one) == class(next));
    runs.map(|marks| Part { kind: kind(marks), marks }).collect()
}

fn class(mark: &Mark) -> Class {
    match mark {
        Mark::Text(text) => Class::Words { level: text.level, size: text.size },
        Mark::Group { role: Role::Footer, .. } => Class::Footer,
        _ => Class::Drawn,
    }
}

fn kind(marks: &[Mark]) -> Kind {
    match marks.first().map(class) {
        Some(Class::Words { level: 0, .. }) => Kind::Paragraph,
        Some(Class::Words { level, .. }) => Kind::Heading(level, words(marks)),
        Some(Class::Footer) => Kind::Footer,
        Some(Class::Drawn) | None => {
            let mut labels = Vec::new();
            gather_labels(marks, &mut labels);
            let mut seen = BTreeSet::new();
            labels.retain(|label| seen.insert(*label));
            if labels.is_empty() { Kind::Ornament } else { Kind::Figure(labels.join("; ")) }
        }
    }
}

fn words(marks: &[Mark]) -> String {
    let text = |mark: &Mark| if let Mark::Text(text) = mark { Some(text.text.clone()) } else { None };
    marks.iter().filter_map(text).collect::<Vec<_>>().join(" ")
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

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::geometry::Point;
    use crate::paint::layout::Block;
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
        let marks = Part { kind: Kind::Paragraph, marks: &marks }.read_apart();
        assert_eq!(words(&marks).replace(' ', "_"), "5_A__reed__124__ten_");
    }

    #[test]
    fn runs_of_marks_are_headings_paragraphs_figures_and_ornament() {
        let (ornament, figure) = (|| Mark::ornament(Vec::new()), |label: &str| Mark::figure(label, Vec::new()));
        let words = Block::stack([Type::TITLE.line("Reeds"), Type::BODY.paragraph("one two", 8.0)], 0.0);
        let mut marks = words.at(Point::ORIGIN);
        marks.extend([ornament(), figure("strand 1"), ornament(), figure("strand 1"), figure("strand 2")]);
        marks.extend(Type::HEADING.line("Beads").marks);
        marks.extend([ornament(), Mark::Group { role: Role::Footer, marks: Vec::new() }]);
        let (title, description) = (String::new(), String::new());
        let page = Page { width: 9.0, height: 9.0, title, description, symbols: Arc::default(), marks };
        let kinds: Vec<_> = parts(&page).into_iter().map(|part| (part.kind, part.marks.len())).collect();
        let expected = [
            (Kind::Heading(1, "Reeds".into()), 1),
            (Kind::Paragraph, 2),
            (Kind::Figure("strand 1; strand 2".into()), 5),
            (Kind::Heading(2, "Beads".into()), 1),
            (Kind::Ornament, 1),
            (Kind::Footer, 1),
        ];
        assert_eq!(kinds, expected);
    }
}
