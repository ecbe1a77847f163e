//! What is said about who wears a piece, and who reads of it, in English.

use crate::english::commas;
use crate::remark::said::wearing::{Bears, Metal, Text, Wearing};
use crate::trade::sight::Sight;

/// What was found.
pub fn headline(said: &Wearing) -> String {
    match said {
        Wearing::ChildBreakaway => {
            "the piece is for a child's neck and has no closure that opens by itself when pulled".to_owned()
        }
        Wearing::ChildUnmeasured { limb, girth } => format!(
            "the piece is for a child of whom no measure is written; it is drawn on a {} of {}",
            limb.key(),
            girth.tenths()
        ),
        Wearing::DeclareMetal { metal, things } => {
            format!("what these are made of may give off {}: {}", named(*metal), commas(things))
        }
        Wearing::HeavyPiece { mass, from, bears } => format!(
            "the piece weighs {:.0} g; from {:.0} g on it may tire {}",
            mass.value(),
            from.value(),
            bearing(*bears)
        ),
        Wearing::OddMeasure { limb, girth, people: [least, most], .. } => format!(
            "nobody has a {} of {}: people measure from {} to {}",
            limb.key(),
            girth.tenths(),
            least.tenths(),
            most.tenths()
        ),
        Wearing::HugeBead { bead, size, .. } => format!("{bead} is {} large, larger than beads are", size.tenths()),
        Wearing::LookAlike { beads: [one, bead], letters: [first, letter], sight, apart } => format!(
            "{one} and {bead} look much alike {} (colour difference {apart:.1}); the letters {first} and {letter} tell \
             them apart",
            eyes(*sight)
        ),
        Wearing::MissingGlyph { text, missing } => format!(
            "the sheet prints empty boxes in {}: its font has no {}",
            printed(text),
            commas(missing.iter().copied().map(coded))
        ),
    }
}

/// What to change.
pub fn help(said: &Wearing) -> String {
    match said {
        Wearing::ChildBreakaway => {
            "use a clasp with `breakaway: true`, and ask what the rules where you sell it demand".to_owned()
        }
        Wearing::ChildUnmeasured { limb, .. } => format!(
            "measure the child and write `wear: {{ {}: … }}`; nothing is said of the fit until then",
            limb.key()
        ),
        Wearing::DeclareMetal { .. } => {
            "ask their makers for a declaration, and tell buyers as the rules where you sell demand".to_owned()
        }
        Wearing::HeavyPiece { .. } => "use smaller or lighter beads, or fewer strands".to_owned(),
        Wearing::OddMeasure { meant: Some(meant), .. } => format!("did you mean {}? Check the unit", meant.tenths()),
        Wearing::OddMeasure { meant: None, limb, usual, .. } => {
            format!("check the number and its unit: `{}: {}`", limb.key(), usual.tenths())
        }
        Wearing::HugeBead { meant, .. } => format!("did you mean {}? Check the unit of its `size:`", meant.tenths()),
        Wearing::LookAlike { .. } => "choose colours further apart in lightness, or another shape or size".to_owned(),
        Wearing::MissingGlyph { .. } => "write it in Latin, Greek or Cyrillic letters, which the font has".to_owned(),
    }
}

const fn named(metal: Metal) -> &'static str {
    match metal {
        Metal::Nickel => "nickel",
        Metal::Lead => "lead",
    }
}

const fn bearing(bears: Bears) -> &'static str {
    match bears {
        Bears::Neck => "the neck",
        Bears::Arm => "the arm",
        Bears::Foot => "the foot",
        Bears::Ears => "the ears",
    }
}

const fn eyes(sight: Sight) -> &'static str {
    match sight {
        Sight::Normal => "to everyone",
        Sight::Protan => "to eyes without red cones",
        Sight::Deutan => "to eyes without green cones",
        Sight::Tritan => "to eyes without blue cones",
    }
}

fn printed(text: &Text) -> String {
    match text {
        Text::Key(key) => format!("the {key}"),
        Text::Named(name) => name.clone(),
    }
}

fn coded(letter: char) -> String {
    format!("{letter} (U+{:04X})", u32::from(letter))
}
