//! What is said of a strand and its row: how rows are read, what a strand is strung on, what to measure of it.

use crate::design::{Bead, Cord, Design, Index, Phrase};
use crate::steps::posts::Keeps;
use crate::units::Length;

/// How all rows of a piece are read.
pub struct Reading<'a> {
    /// Whose rows they are.
    pub design: &'a Design,
    /// Whether a row has so many beads that they are counted in tens.
    pub tens: bool,
    /// Where rulers start.
    pub starts: RulerStart,
    /// What the letters above rulers mean.
    pub letters: Vec<(char, Keeps)>,
    /// Whether beads slide on bare cord, and on all such strands between stops.
    pub slides: Option<bool>,
    /// Whether each strand is made twice.
    pub pair: bool,
    /// How often all are twisted together once they are strung.
    pub twisted: Option<f64>,
    /// Why sizes do not add up to lengths, where they do not.
    pub takes: Option<Takes>,
}

/// Where rulers start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RulerStart {
    /// At the outside of the first end.
    Outside,
    /// On memory wire where the first loop is turned, for loops are no part of what is measured.
    TurnedLoop,
    /// In the first end link of chain, of which as much is measured as its links lengthen it by.
    InEndLink,
}

/// How beads take other lengths of the cord than their sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// They lie beside one another.
    Sunk,
    /// None lies beside another.
    FromHoleToHole,
}

/// A bead in the key of rows.
pub struct InKey<'a> {
    /// The bead.
    pub bead: &'a Bead,
    /// How much cord it takes in a row of its kind, where its size does not say it.
    pub takes: Option<Length>,
    /// Into how many parts it is reduced.
    pub part: u32,
}

/// What strands that are strung alike are cut to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ToCut {
    /// A length of cord each.
    Cord(Length),
    /// Nothing: they are on pins.
    OnPin,
}

/// A check of a strand's length.
pub struct Tolerances<'a> {
    /// The beads on its cord.
    pub beads: Vec<&'a Bead>,
    /// What to do where the length differs by more.
    pub remedy: WhenOff,
    /// Whether that is done in every strand: they lie abreast, or what they share holds them.
    pub every_strand: bool,
    /// What the strand hangs on.
    pub cord: &'a Cord,
}

/// What beads of other sizes than the pattern's ask for.
#[derive(Clone, Debug, PartialEq)]
pub enum WhenOff {
    /// Other knots, then other counts: the strand's length follows from them.
    Knots(Change),
    /// Other counts.
    Counts(Change),
    /// Nothing: the length is written, and the bare cord gives way.
    BareCord,
}

/// What of a row there is to be more or less of, and where.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// A bead.
    Beads(Index<Bead>, ChangePlace),
    /// A list that is said several times.
    Repeats(Vec<Phrase>, ChangePlace),
    /// Beads in the order of a repeat that is long, at the last end.
    InOrder,
    /// Beads of whatever kind, in a row without a pattern.
    Any(ChangePlace),
}

/// Where a row is changed.
#[derive(Clone, Debug, PartialEq)]
pub enum ChangePlace {
    /// At the last end.
    LastEnd,
    /// Before what follows there.
    Before(Vec<Phrase>),
    /// At both ends alike.
    BothEnds,
    /// On both sides of the middle alike, where the repeat stands.
    BothSides,
}

/// How much bare cord a strand has, or of chain how much in which nothing hangs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bare {
    /// None, once it is closed to a ring.
    NoneInTheRound,
    /// None, and its beads want so much more where it bends.
    Lacks(Length),
    /// None along the row; where the loop folds, about so much.
    Folded(Length),
    /// None.
    None,
    /// Some.
    Some {
        /// In all.
        all: Length,
        /// In mm before the first thing strung, and after the last.
        ends: [f64; 2],
        /// Whether what is strung first or last slides along it.
        slides: bool,
        /// Between what the rest lies.
        others: Others,
    },
}

/// What bare cord lies between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Others {
    /// Beads.
    Beads,
    /// Dangles alone.
    Dangles,
}

/// What of a row is not drawn as it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotAsItIs {
    /// Repeats are left out.
    Elided,
    /// Something is drawn smaller.
    Reduced,
    /// Runs too short for their letter have a bracket alone.
    Unlettered,
    /// Some of its beads slide.
    Slides,
}
