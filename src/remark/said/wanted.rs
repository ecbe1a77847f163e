//! What may stand in a pattern, and what is meant in its place.

/// What stands there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Nothing.
    Nothing,
    /// A word, number or sentence.
    Value,
    /// A list.
    List,
    /// A group of keys.
    Group,
    /// A group of keys where it must be a single one.
    SeveralKeys,
}

/// What is meant there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it, and their words stand in `remark/english`")]
pub enum Wanted {
    Text,
    List,
    Keys,
    Entries,
    Code,
    Beads,
    FindingLength,
    Length,
    Change,
    Mass,
    PerMetre,
    Force,
    Price,
    Overhead,
    Time,
    Whole,
    WholeOrNone,
    Factor,
    Ratio,
    Turns,
    Angle,
    Stiffness,
    YesNo,
    Colour,
    BeadSize,
    Measurement,
    Within,
    Body,
    UnitStyle,
    Kind,
    Skill,
    Shape,
    Drilled,
    Outline,
    Finish,
    CordKind,
    FindingKind,
    Settle,
    Open,
    SoldBy,
}
