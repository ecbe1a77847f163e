//! Why an act is refused.

/// Why an act is refused; what to do instead is in its words.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Refusal {
    /// The text cannot be read.
    Unreadable,
    /// The text is no group of keys.
    NoPattern,
    /// No run stands at the place that the act names.
    Moved,
    /// There is no bead of that id.
    NoBead(String),
    /// `beads` is no group.
    BeadsNoGroup,
    /// `beads` is an empty group.
    BeadsEmpty,
    /// A bead's entry is written on lines, and stands to come between brackets.
    OtherNotation,
    /// The pattern has no strands before which a bead's entry could stand.
    NoPlaceForBead,
    /// A run names another bead than the act says.
    NotThatBead,
    /// A row in no order has parts of both beads already.
    BothInNoOrder,
    /// A run of no bead.
    NoBeads,
    /// What has no count is given one.
    NoRun,
    /// What has several values is given one.
    NoSingleValue,
    /// A key that has no value.
    NoValueYet,
    /// What is no group of keys is given a key.
    NoGroup,
    /// A group of no keys is given one.
    EmptyGroup,
    /// A repeat of which the count is no single value.
    NoCount,
    /// A repeat that is strung as often as fits.
    Fills,
    /// A run that stands in no list.
    NoList,
    /// The last entry of a list is taken out.
    LastOfList,
    /// The pattern has no strands.
    NoStrands,
    /// It has no such strand.
    NoStrand,
    /// A strand whose length follows from its beads.
    LengthFollows,
    /// What is no length is lengthened, or would come to be none.
    NoLength,
    /// There is no such size.
    NoSize,
    /// There is a size of that name already.
    SizeKnown,
    /// `sizes` is no list.
    SizesNoList,
    /// `sizes` is an empty list.
    SizesEmpty,
    /// A size whose lengths follow from who wears it.
    SizeFollows,
    /// A size that would be as long as the pattern.
    SizeOfPattern,
    /// There is no such colourway.
    NoColourway,
    /// There is a colourway of that name already.
    ColourwayKnown,
    /// A colourway is given a key that none has.
    NotOfColourway,
    /// The pattern stands in brackets, and nothing can come behind it.
    InBrackets,
    /// What is added has no name.
    Unnamed,
}
