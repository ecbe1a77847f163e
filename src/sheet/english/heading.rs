//! Sections, headings and titles of pages, in English.

use crate::paint::layout::flow;
use crate::sheet::said::{Heading, Proved, Section};

/// A section's name, and what it shows, for those who cannot see it.
pub fn section(section: &Section<'_>) -> flow::Section {
    let (name, description) = match section {
        Section::Face { kind, strands, has_cautions } => {
            let cautions = if *has_cautions { ", the materials and the cautions" } else { " and the materials" };
            let strands = strands.join(", ");
            ("Face", format!("{kind} with the strands {strands}: its picture, its measures, the beads{cautions}."))
        }
        Section::Lists => ("Lists", "Lists that the face has no room for.".to_owned()),
        Section::Stringing(strands) => {
            let strands = strands.join(", ");
            ("Stringing", format!("The beads of the strands {strands} in a row, at actual size with a ruler."))
        }
        Section::Buying => ("Buying and cutting", BUYING.to_owned()),
        Section::Making { has_cautions } => {
            let cautions = if *has_cautions { "Cautions, and the steps" } else { "The steps" };
            ("Making", format!("{cautions} of the work in order, each with what to check."))
        }
        Section::Card => ("Card", CARD.to_owned()),
        Section::Proof(shows) => ("Proof", proof(*shows)),
    };
    flow::Section { name, description }
}

const BUYING: &str = "What to buy, with spares and what is left over, how to cut cords and chains, and the tools.";
const CARD: &str = "What to string on each strand, the beads, what one piece takes, and the tools.";

fn proof(shows: Proved) -> String {
    let what = match shows {
        Proved::Strands => "Strands laid straight",
        Proved::Both => "Strands laid straight, with findings and beads where they have room below,",
        Proved::Lists => "Findings and beads",
    };
    format!("{what} at actual size, with squares of 50 mm and 2 in to measure.")
}

/// A heading.
pub fn heading(heading: Heading<'_>) -> String {
    let words = match heading {
        Heading::Straight(scale) => return format!("Laid straight, {scale}"),
        Heading::Recipe(size) => return format!("What to string for {}", super::sizes::size(size)),
        Heading::Notes(Some(designer)) => return format!("Notes by {designer}"),
        Heading::Continued(title) => return format!("{title}, continued"),
        Heading::Legend => "Beads, drawn at actual size",
        Heading::Needs => "What you need",
        Heading::Hanging => "As it hangs",
        Heading::OnNeck => "On the neck",
        Heading::Colourways => "Colourways",
        Heading::Strands => "Strands",
        Heading::Tools => "Tools",
        Heading::Cutting => "Cutting",
        Heading::Sizes => "Sizes",
        Heading::Price => "A suggested price",
        Heading::Cautions => "Before you start",
        Heading::Notes(None) => "Notes",
        Heading::Findings => "Findings",
        Heading::Beads => "Beads",
    };
    words.to_owned()
}

/// Which page of how many it is.
#[must_use]
pub fn page(number: usize, count: usize) -> String {
    format!("page {number} of {count}")
}

/// The title of a page of something that has one, with what it is for.
pub fn page_title(title: &str, number: usize, count: usize, name: &str) -> String {
    format!("{}: {name}", numbered(title, number, count))
}

/// The title of a page of something that has one.
#[must_use]
pub fn numbered(title: &str, number: usize, count: usize) -> String {
    format!("{title}, {}", page(number, count))
}
