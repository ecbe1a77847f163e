//! What festoon itself got wrong, in English.

use crate::remark::said::own::Own;

/// What was found.
pub fn headline(said: &Own) -> String {
    let what = match said {
        Own::BeadSize { id } => format!("bead {id} came out with a size, mass or lot that nothing has"),
        Own::CordSize { id } => format!("cord {id} came out with a size, mass or lot that nothing has"),
        Own::FindingSize { id } => format!("finding {id} came out with a size, mass or lot that nothing has"),
        Own::UnknownOf { id } => format!("finding {id} came out made of something that is not in the pattern"),
        Own::Pack { id } => format!("{id} came out with a size or a bead in it that nothing has"),
        Own::Body => "the body that it is for came out with a measure that nobody has".to_owned(),
        Own::Turns => "it came out going round or twisted so often as nothing is".to_owned(),
        Own::Price => "its price came out with a number that is none".to_owned(),
        Own::NoCopies => "it came out that no piece is made".to_owned(),
        Own::Number { strand } => format!("strand {strand} came out with a length, mass or place that is no number"),
        Own::Unknown { strand } => format!("strand {strand} came out with something on it that is not in the pattern"),
        Own::UnknownPart => "the closure came out with a finding that is not in the pattern".to_owned(),
        Own::PartLength => "the closure came out with a length that nothing has".to_owned(),
        Own::Overfull { strand } => format!("strand {strand} came out with more on it than it has room for"),
        Own::Overlap { strand } => format!("strand {strand} came out with beads that lie in one another"),
        Own::Idle { id } => format!("bead {id} came out strung nowhere"),
    };
    format!("festoon's own fault, not the pattern's: {what}")
}

/// What to change.
pub fn help() -> String {
    "report it with the pattern; until it is mended, writing what stands here in another way may help".to_owned()
}
