//! Materials and steps of patterns as a designer writes them: the whole text, to be read aloud.
//!
//! `SNAPSHOTS=overwrite` accepts what the program writes now.

use std::fmt::Write;

use festoon::design::{Choice, Design, resolve};
use festoon::materials::{Order, materials, render};
use festoon::remark::has_errors;
use festoon::source::Source;
use festoon::steps::english::{cautions, told, tools};
use festoon::units::Telling;
use snapbox::{assert_data_eq, file};

fn read(text: &str) -> (Design, Telling) {
    let (pattern, remarks) = festoon::pattern::read(&Source::new("test.yaml", text));
    assert!(!has_errors(&remarks), "{remarks:?}");
    let pattern = pattern.expect("a pattern without errors");
    let (design, remarks) = resolve(&pattern, &Choice::default());
    assert!(!has_errors(&remarks), "{remarks:?}");
    (design.expect("a design without errors"), pattern.telling())
}

/// All that a sheet says about buying and making.
fn sheet((design, telling): &(Design, Telling)) -> String {
    let mut text = render::table(&materials(design, &Order::default()), telling);
    let _ = writeln!(text, "\ntools: {}\n", tools(design, telling.units).join(", "));
    for (at, step) in told(design, telling.units).iter().enumerate() {
        let drawing = step.drawing.map(|drawing| format!(" ({drawing:?})")).unwrap_or_default();
        let _ = writeln!(text, "{}. {}{drawing}\n   {}", at + 1, step.title, step.text);
        step.check.iter().for_each(|check| _ = writeln!(text, "   = {check}"));
    }
    text.push('\n');
    cautions(design).iter().for_each(|caution| _ = writeln!(text, "{}: {}", caution.title, caution.text));
    text
}

#[test]
fn a_necklace_of_three_strands() {
    let design = read(include_str!("../../patterns/saltmarsh.yaml"));
    assert_data_eq!(sheet(&design), file!["written/saltmarsh.txt"]);
}

#[test]
fn a_pair_of_earrings() {
    assert_data_eq!(sheet(&read(include_str!("written/earrings.yaml"))), file!["written/earrings.txt"]);
}

#[test]
fn a_stretch_bracelet() {
    assert_data_eq!(sheet(&read(include_str!("written/bracelet.yaml"))), file!["written/bracelet.txt"]);
}

#[test]
fn a_knotted_necklace() {
    assert_data_eq!(sheet(&read(include_str!("written/knotted.yaml"))), file!["written/knotted.txt"]);
}

#[test]
fn a_spread_strap_with_stops() {
    assert_data_eq!(sheet(&read(include_str!("written/strap.yaml"))), file!["written/strap.txt"]);
}

#[test]
fn a_leather_strap_in_cord_ends() {
    let design = read(include_str!("../../patterns/halyard.yaml"));
    assert_data_eq!(sheet(&design), file!["written/halyard.txt"]);
}
