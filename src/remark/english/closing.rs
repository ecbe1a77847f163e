//! What is said about whether a piece closes and stays closed, in English.

use crate::remark::said::closing::Closing;

/// What was found.
pub fn headline(said: &Closing) -> String {
    match said {
        Closing::Unjoined { strand } => {
            format!("nothing joins the ends of strand {strand}: the piece cannot be closed")
        }
        Closing::OneSided { finding, .. } => {
            format!("{finding} has nothing on the other side that it closes onto")
        }
        Closing::NotOntoOneAnother { findings: [one, other], .. } => {
            format!("{one} and {other} do not close onto one another")
        }
        Closing::ClaspTwice { clasp, .. } => {
            format!("{clasp} stands on both sides, so that two are bought: a clasp has two halves")
        }
        Closing::RingNarrow { ring, what, inside, wide } => format!(
            "{what} is {} wide and does not go through {ring}, which is {} inside",
            wide.hundredths(),
            inside.hundredths()
        ),
        Closing::NoOpening { before, after } => {
            format!("{after} cannot be hung on {before}: neither has a ring that opens")
        }
        Closing::NothingToHitchTo { strand } => {
            format!("strand {strand} is doubled, but nothing is there to hitch its fold to")
        }
        Closing::CannotBeHitched { strand, cord } => {
            format!("strand {strand} is doubled, but {cord} cannot be folded and hitched")
        }
        Closing::IdleExtender { lack } => {
            format!("hooked as short as it goes, the piece is {} too short to go round", lack.tenths())
        }
    }
}

/// What to change.
pub fn help(said: &Closing) -> String {
    match said {
        Closing::Unjoined { .. } => {
            "write a `closure:`, such as { left: [ring], right: [hook] }, or `ends: knot` to tie the ends".to_owned()
        }
        Closing::OneSided { bare, .. } => format!(
            "write a ring in the closure's `{}:`, or of a clasp in two halves the other half, which `comes with` the first",
            bare.key()
        ),
        Closing::NotOntoOneAnother { hooks: true, .. } => "write a ring on one of the sides".to_owned(),
        Closing::NotOntoOneAnother { hooks: false, .. } => {
            "of a clasp in two halves write one on each side, with as many loops".to_owned()
        }
        Closing::ClaspTwice { id, kind, .. } => format!(
            "name its other half, like `other: {{ kind: {kind}, length: …, comes with: {id} }}`, and write that on one side"
        ),
        Closing::RingNarrow { wide, .. } => {
            format!("use a ring of more than {} inside, or a shorter `tail:`", wide.at_least(1))
        }
        Closing::NoOpening { .. } => "write a jump ring that opens between them".to_owned(),
        Closing::NothingToHitchTo { .. } => "write a ring or another finding in the closure's `left:`".to_owned(),
        Closing::CannotBeHitched { .. } => "use thread, silk, leather or elastic, or take `doubled:` out".to_owned(),
        Closing::IdleExtender { lack } => {
            format!("take {} off the chain and add it to the strands, or leave it for another wearer", lack.tenths())
        }
    }
}
