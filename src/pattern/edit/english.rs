//! Why an act is refused, and what to do instead, in English.

use std::fmt;

use super::Refusal;

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoBead(id) => return write!(f, "there is no bead `{id}`"),
            Self::Unreadable => "the text cannot be read: mend what is underlined first",
            Self::NoPattern => "this is no pattern",
            Self::Moved => "this bead stands elsewhere now: click it again",
            Self::BeadsNoGroup => "`beads` is no group: mend it in the text first",
            Self::BeadsEmpty => "`beads` is empty: write a bead in the text first",
            Self::OtherNotation => "this bead is written on lines, and the pattern's in brackets: copy it in the text",
            Self::NoPlaceForBead => "write the bead in the text",
            Self::NotThatBead => "this names no such bead",
            Self::BothInNoOrder => "a row in no order has both beads: put their parts together in the text",
            Self::NoBeads => "a run has at least one bead: take it out instead",
            Self::NoRun => "this is not a run",
            Self::NoSingleValue => "this is more than a single value",
            Self::NoValueYet => "this key has no value yet: write it in the text",
            Self::NoGroup => "this is no group of keys",
            Self::EmptyGroup => "this group is empty",
            Self::NoCount => "this repeat has no count",
            Self::Fills => {
                "this repeat fills its strand: change the strand's length, and it is strung as often as fits"
            }
            Self::NoList => "this stands in no list",
            Self::LastOfList => "nothing would be left in this list",
            Self::NoStrands => "there are no strands",
            Self::NoStrand => "there is no such strand",
            Self::LengthFollows => "this strand's length follows from its beads: add or take out beads instead",
            Self::NoLength => "this is no length",
            Self::NoSize => "there is no such size",
            Self::SizeKnown => "there is a size of this name",
            Self::SizesNoList => "`sizes` is no list: mend it in the text first",
            Self::SizesEmpty => "`sizes` is empty: write a size in the text first",
            Self::SizeFollows => "this size's lengths follow from who wears it: change its `wear` in the text",
            Self::SizeOfPattern => "this size would be as long as the pattern",
            Self::NoColourway => "there is no such colourway",
            Self::ColourwayKnown => "there is a colourway of this name",
            Self::NotOfColourway => {
                "a colourway changes colour, name and finish alone: choose the pattern's own colours first"
            }
            Self::InBrackets => "the pattern stands in brackets: write this in the text",
            Self::Unnamed => "give it a name",
        })
    }
}

impl std::error::Error for Refusal {}
