//! The sizes of a graded pattern, in English.

use super::fact::{CALLED, along, named};
use crate::design::{Design, Size, Strand};
use crate::english::{capital, list};
use crate::sheet::said::{Compared, LengthOf};
use crate::steps::english::posts::from;
use crate::steps::english::words::cords;
use crate::steps::posts::datum;
use crate::trade::english::length_name;
use crate::trade::lengths::NecklaceName;

/// A size as a sentence names it.
pub fn size(name: Option<&str>) -> String {
    name.map_or_else(|| "the base size".to_owned(), |name| format!("size {name}"))
}

/// A size's name above its column.
pub fn column(size: &Size) -> String {
    let name = size.name.as_deref().unwrap_or("base size");
    if size.chosen { format!("{name}, this sheet") } else { name.to_owned() }
}

/// What stands in the column of a size that cannot be made.
pub const NO_FIT: &str = "does not fit";
/// What the trade calls a length, or that it has no name for it.
pub fn called(name: Option<NecklaceName>) -> String {
    name.map_or("none", length_name).to_owned()
}

/// What a row of the table tells.
pub fn compared(what: &Compared<'_>) -> String {
    match what {
        Compared::Fact(fact) => named(fact).to_owned(),
        Compared::Called => CALLED.to_owned(),
        Compared::Whole(length) => format!("the piece, {}", along(*length)),
        Compared::Turned => "one end turned".to_owned(),
        Compared::DrawnIn => "drawn in, about".to_owned(),
        Compared::TipToTip => "twisted, tip to tip".to_owned(),
        Compared::Twisted => "twisted, loop to loop".to_owned(),
        Compared::Length(title, measured) => format!("{title}, {}", self::measured(*measured)),
        Compared::BetweenGroups(title) => format!("{title}, bare between groups"),
        Compared::Knots(title) => format!("{title}, knots among the beads"),
        Compared::InKnots(title) => format!("{title}, taken by those knots"),
        Compared::Post(title, name, keeps) => format!("{title}, {name}, {}", keeps.place()),
        Compared::Cord(name) => format!("{name} in all"),
        Compared::Bead(letter, name) => format!("{letter} {name}"),
    }
}

const fn measured(measured: LengthOf) -> &'static str {
    match measured {
        LengthOf::Finished => "finished",
        LengthOf::Pulled => "pulled straight",
        LengthOf::Beads => "beads",
        LengthOf::Bare => "bare in all",
        LengthOf::Cut => "cut",
    }
}

/// What is the same in all sizes, each with its name: `In every size: 1 inner, beads 7 ⅞ in (201 mm); C brass rondelle 18.`
pub fn same_in_all(each: &[(&str, &str)]) -> String {
    let each: Vec<_> = each.iter().map(|(name, told)| format!("{name} {told}")).collect();
    format!("In every size: {}.", each.join("; "))
}

/// Strands of another size whose beads are as on this sheet, and whether they have bare cord that is not.
pub fn as_here(design: &Design, titles: &[String], is_bare: bool) -> String {
    let bare = if is_bare { format!(", with the table's bare {}", cords(design)) } else { String::new() };
    format!("As on this sheet{bare}: {}.", list(titles))
}

/// From where the positions in the table are measured.
pub fn positions(design: &Design, strand: &Strand) -> String {
    format!("Positions are measured {}.", from(datum(design, strand)))
}

/// Whose lengths and counts the steps give.
pub fn of_steps(name: Option<&str>) -> String {
    let size = size(name);
    format!(
        "All lengths and counts in the steps are those of {size}; for another size take its own from the table of sizes."
    )
}

/// What a size asks to buy otherwise: `Size long takes other packs: reed: 2 packs of 40.`
pub fn other_packs(name: Option<&str>, packs: &[(&[String], String)]) -> String {
    let name = capital(&size(name));
    let packs: Vec<_> = packs.iter().map(|(names, lots)| format!("{}: {lots}", list(names))).collect();
    format!("{name} takes other packs: {}.", packs.join("; "))
}
