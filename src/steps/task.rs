//! What the steps of the work do, as data: each task with what it is done to.
//!
//! Findings, beads and cords are indices into the design, strands are the design's own. Words, units and the
//! order of words in a sentence are the renderer's (see [`super::english`]).

use crate::design::{Bead, Cord, Dangle, Entries, Finding, Foot, Index, Strand, Twist};
use crate::units::Length;

use super::ends::AlikeEnds;
use super::side::Side;
use super::tail::Hides;

/// What a step does.
#[derive(Clone, Debug)]
pub enum Task<'d> {
    /// Lay the beads out by letter: how many of each in one copy, and how many of them for the knots at the ends.
    LayOut {
        /// Indexed like the design's beads.
        counts: Entries<u32, Bead>,
        /// How many of them.
        knotted: u64,
    },
    /// Cut what the strands hang on.
    Cut(Vec<CutNote<'d>>),
    /// Mark each piece with its strand's name.
    Tag,
    /// Make a tassel of the piece's own cord, each as often as it hangs.
    Tassel(Index<Finding>),
    /// Make a kind of branch, so many times.
    Dangle {
        /// The branch.
        dangle: &'d Dangle,
        /// What holds it.
        hold: Hold,
        /// How many are made.
        times: u64,
    },
    /// Bend a pin's wire above what it holds.
    BendPin(Pins, Above),
    /// Cut a pin's wire to what its loop takes.
    CutPin(Pins),
    /// Turn a pin's loop.
    TurnLoop {
        /// The pins.
        pins: Pins,
        /// Whether it is left open for what hangs there next.
        open: bool,
    },
    /// Look for gaps in what strands will hang on.
    LookForGaps(Vec<Index<Finding>>),
    /// Slide a cone or cap down a pin over the strands' ends.
    Cover {
        /// The cone or cap.
        cover: Index<Finding>,
        /// The pin.
        pin: Index<Finding>,
        /// On which side.
        side: Side,
    },
    /// Cut a piece of chain.
    CutChain {
        /// The chain.
        chain: Index<Finding>,
        /// How long.
        length: Length,
        /// About how many links that is, where their wire leaves them open.
        links: Option<u64>,
        /// For which side.
        side: Side,
    },
    /// Hang a finding in another: `what` is what the step is named for.
    Hang {
        /// The finding that is new.
        what: Index<Finding>,
        /// On which side.
        side: Side,
        /// How.
        how: Hang,
    },
    /// Work on strands' ends.
    End(AlikeEnds<'d>, EndWork),
    /// String a strand.
    String(&'d Strand, Vec<Beside>),
    /// Measure what is strung: strands that are alike.
    Measure(Vec<Index<Strand>>),
    /// Fix the stops of a strand, of which this is one.
    FixStops(&'d Strand, Index<Finding>),
    /// Space the groups of a strand evenly.
    Space(&'d Strand),
    /// Press the crimps that hold groups of a strand shut, of which this is one.
    FixGroups(&'d Strand, Index<Finding>),
    /// Twist the strands round one another.
    Twist(&'d Twist),
    /// Look at the finished piece and measure it.
    Check(Finished),
    /// Try loops on a pair of spectacles.
    TryLoops(Index<Finding>),
    /// Do all steps again, so many, for the second of a pair.
    MakeOther(usize),
}

/// A sentence about cutting cord.
#[derive(Clone, Copy, Debug)]
pub enum CutNote<'d> {
    /// Elastic is stretched before it is measured.
    Stretch,
    /// A cord has its own needle, which stays on.
    OwnNeedle(Index<Cord>),
    /// Knots are tied to try in the cord of a strand.
    Trial(&'d Strand),
    /// A tassel is made of the piece's own cord.
    Tassel(Index<Finding>),
    /// The pieces of a cord.
    Pieces(Index<Cord>),
    /// What a strand's knots take up.
    Knots(&'d Strand),
    /// Memory wire is counted off its coil, and cut with cutters of its own.
    Coil(&'d Strand),
    /// Twisted strands reach less far than they are long.
    Twisted,
    /// Ends of metal fly.
    Flying,
}

/// What holds a branch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// A bail's prongs.
    Bail,
    /// A ring that is opened.
    Ring,
    /// The last link of a piece of chain.
    Chain(Index<Finding>),
    /// A pin with such a foot, and the bead that sits on it.
    Pin(Foot, Option<Index<Bead>>),
}

/// The pins that a step closes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Pins {
    /// One of the closure's, on a side.
    Closure(Index<Finding>, Side),
    /// Those of the branches, by their sorts, so many in all.
    Dangles(Vec<Index<Finding>>, u64),
}

/// Below what a pin's wire is bent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Above {
    /// The beads on it.
    Beads,
    /// Its own eye.
    Eye,
    /// The cone or cap that covers it.
    Cover(Index<Finding>),
}

/// How a finding comes to hang in another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hang {
    /// One of two is opened, and the other hung in it.
    Opened {
        /// What is opened.
        opens: Index<Finding>,
        /// What is hung in it.
        hangs: Index<Finding>,
        /// The nearer of the two to the strands.
        before: Index<Finding>,
    },
    /// A ring is opened once for what stands on both sides of it.
    Between {
        /// The ring.
        ring: Index<Finding>,
        /// What is nearer the strands.
        inner: Index<Finding>,
    },
    /// In the loop of a pin, which was left open.
    InLoop(Index<Finding>),
    /// Neither it nor the one before it opens.
    Unopened(Index<Finding>),
}

/// A piece of work on the ends of strands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EndWork {
    /// Thread all that sits on the cord.
    Thread,
    /// Make the loop through what it hangs on and back through this crimp.
    Loop(Index<Finding>),
    /// Draw up the slack.
    DrawUp,
    /// Press this crimp.
    Press(Index<Finding>),
    /// Cut the tail of a crimped end, or leave it for the first beads.
    Trim,
    /// Close this cover over the crimp.
    CoverCrimp(Index<Finding>),
    /// Thread a knot cover.
    ThreadCover,
    /// Tie the knot in a knot cover.
    TieInCover,
    /// Close the knot cover.
    CloseCover,
    /// Tie the cord on what it goes round.
    Tie,
    /// Set a knot with glue: one tail, or several.
    Set {
        /// Whether there are several.
        tails: bool,
    },
    /// Hitch the fold of a doubled cord.
    Hitch,
    /// Stop the first of two ends that will be tied to each other.
    Stop,
    /// Tie both ends to each other.
    TieEnds,
    /// Tie both ends to each other below what they meet in.
    Meet,
    /// Hide that knot.
    Hide,
    /// Cut the end square for its cord end.
    Square,
    /// Glue it in.
    Glue,
    /// Turn the end of hard wire into a loop.
    Turn,
    /// Hang its link or loop.
    Link,
    /// Do steps from the first to the last again for the other strands.
    Others(usize, usize),
}

/// What else is done, or known, while a strand is strung.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Beside {
    /// A knot between all beads, which takes so much along the cord.
    Knots(Length),
    /// Knots of such a length are tied where the chart says them.
    WrittenKnots(Length),
    /// With what needle it is strung.
    Needle(Needled),
    /// Both legs go through every bead.
    BothLegs,
    /// It goes through bars that other strands go through.
    ThroughBars(Pass),
    /// It goes through beads that other strands go through.
    ThroughBeads(Pass),
    /// Bead caps face the bead that they hug.
    Caps,
    /// Dangles are told from the cord down.
    Dangles,
    /// The first beads go over the tail, so far.
    OverTail(Hides),
    /// The beads at the ends take the cord and its tail just so.
    Tight,
    /// What hangs in links of a chain.
    InLinks(InLink),
    /// A stopper closes the end.
    Stopper,
}

/// With what needle a strand is strung.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needled {
    /// The cord's own.
    Own,
    /// A bought one on the last end.
    LastEnd,
    /// A bought one on both last ends.
    BothEnds,
}

/// Which of the strands that go through something a strand is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pass {
    /// The first.
    First,
    /// One after it.
    Next,
}

/// What is done, or known, of what hangs in a chain's links.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InLink {
    /// Loops of pins are rolled shut round their links.
    RollLoops,
    /// Each ring is opened for what it holds and for its link.
    OpenRings,
    /// The end links of pieces of chain are opened.
    OpenLinks,
    /// Bails slide along the chain.
    Bails,
    /// How long the links are is not known.
    Unknown,
}

impl Beside {
    /// Whether a ring or link is opened for it.
    #[must_use]
    pub const fn opens(&self) -> bool {
        matches!(self, Self::InLinks(InLink::OpenLinks | InLink::OpenRings))
    }
}

/// How a finished piece is looked at.
#[derive(Clone, Debug, PartialEq)]
pub enum Finished {
    /// Hung up: how far it reaches down, as short and as long as it goes.
    Hung([Length; 2]),
    /// Without a closure: stretched.
    Tied {
        /// Whether beads are packed end to end.
        packed: bool,
        /// The girth inside, of a ring.
        inside: Option<Length>,
    },
    /// A coil that lies by itself: how often it goes round, and the girth inside.
    Coiled(f64, Length),
    /// Laid straight: its shortest and longest length.
    Straight([Length; 2]),
    /// Closed: its shortest and longest length, and what is counted whole though it hangs in other parts.
    Round([Length; 2], Vec<Index<Finding>>),
    /// Closed to a ring: its shortest and longest girth inside.
    Ring([Length; 2]),
    /// Closed and wound so many times: its shortest and longest girth inside.
    Wound(u32, [Length; 2]),
}
