//! Sections, headings and titles of pages, in English.

use crate::english::commas;
use crate::paint::layout::flow;
use crate::sheet::said::{Proved, SectionKind, Subheading};

/// A section's name, and what it shows, for those who cannot see it.
pub fn section(section: &SectionKind<'_>) -> flow::Section {
    let (name, description) = match section {
        SectionKind::Face { kind, strands, has_cautions } => {
            let cautions = if *has_cautions { ", the materials and the cautions" } else { " and the materials" };
            let strands = commas(strands);
            ("Face", format!("{kind} with the strands {strands}: its picture, its measures, the beads{cautions}."))
        }
        SectionKind::Lists => ("Lists", "Lists that the face has no room for.".to_owned()),
        SectionKind::Stringing(strands) => {
            let strands = commas(strands);
            ("Stringing", format!("The beads of the strands {strands} in a row, at actual size with a ruler."))
        }
        SectionKind::Buying => ("Buying and cutting", BUYING.to_owned()),
        SectionKind::Making { has_cautions } => {
            let cautions = if *has_cautions { "Cautions, and the steps" } else { "The steps" };
            ("Making", format!("{cautions} of the work in order, each with what to check."))
        }
        SectionKind::Card => ("Card", CARD.to_owned()),
        SectionKind::Proof(shows) => ("Proof", proof(*shows)),
    };
    flow::Section { name, description }
}

const BUYING: &str = "What to buy, with spares and what is left over, what to cut, and the tools.";
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
pub fn heading(heading: Subheading<'_>) -> String {
    let words = match heading {
        Subheading::Straight(scale) => return format!("Laid straight, {scale}"),
        Subheading::Recipe(size) => return format!("What to string for {}", super::sizes::size(size)),
        Subheading::Notes(Some(designer)) => return format!("Notes by {designer}"),
        Subheading::Continued(title) => return format!("{title}, continued"),
        Subheading::Legend => "Beads, drawn at actual size",
        Subheading::Needs => "What you need",
        Subheading::NeededBeads => "Beads you need",
        Subheading::Hanging => "As it hangs",
        Subheading::OnNeck => "On the neck",
        Subheading::Colourways => "Colourways",
        Subheading::Strands => "Strands",
        Subheading::Tools => "Tools",
        Subheading::Cutting => "Cutting",
        Subheading::Sizes => "Sizes",
        Subheading::Price => "A suggested price",
        Subheading::Cautions => "Before you start",
        Subheading::Notes(None) => "Notes",
        Subheading::Findings => "Findings",
        Subheading::Beads => "Beads",
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
