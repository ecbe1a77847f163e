//! How deep neighbouring strands of shipped patterns lie in one another: the table of DEVELOPERS.md.

use std::fs;

use festoon::design::Choice;
use festoon::drape::{Clearance, Drape, hang_alone};

use super::shipped::{Shipped, root, shipped};

/// What outlines are known to, in mm: a round one stands out from its polygon by 0.02 mm, on both sides of a gap.
const KNOWN: f64 = 0.04;

/// How deep, in mm; less than nothing is a gap.
fn deep(clearance: &Clearance) -> String {
    format!("{:.2} mm", 0.0 - clearance.least).replace("-0.00", "0.00")
}

/// The rows of a pattern, one for each two strands beside one another, alone and in contact.
fn rows(shipped: &Shipped) -> Vec<String> {
    let (piece, _) = shipped.piece(&Choice::default());
    let Drape { clearances, unrest, worn, .. } = &piece.drape;
    assert_eq!(*unrest, None, "{}", shipped.name);
    assert!(worn.as_ref().is_none_or(|worn| worn.unrest.is_none()), "{} on the neck", shipped.name);
    let alone = hang_alone(&piece.design, None).unwrap().clearances;
    assert_eq!(alone.len(), clearances.len(), "{}", shipped.name);
    let row = |(alone, clearance): (&Clearance, &Clearance)| {
        assert!(clearance.least > -KNOWN, "{}: {clearance:?}", shipped.name);
        let [one, other] = clearance.between.map(|strand| &piece.design.strands[strand].name);
        let title = &piece.design.heading.title;
        format!("| {title} | {one}, {other} | {} | {} |", deep(alone), deep(clearance))
    };
    alone.iter().zip(clearances).map(row).collect()
}

#[test]
fn no_strand_of_a_shipped_pattern_lies_in_another_and_the_table_says_so() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let table: Vec<String> = shipped().iter().flat_map(rows).collect();
    let told = |row: &String| text.lines().any(|line| line == row);
    assert!(table.iter().all(told), "the table of DEVELOPERS.md is now\n{}", table.join("\n"));
}
