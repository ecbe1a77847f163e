//! The making steps: written from the ends, beads and closure that a design really has.
//!
//! Derived from the [`Design`] alone. One action a step, in the order of work: lay out, cut, make
//! the branches, ready the closure, close the first ends, string and measure, close the last ends,
//! cover and join, twist, check. The ways of working are common practice; figures with a published source name it where
//! they stand. See [`chart`] for the word chart, [`mod@cautions`] and [`mod@tools`] for what goes before. What
//! is done is data ([`task`]); [`english`] alone puts it into words.

mod cast;
pub mod cautions;
pub mod chart;
mod closure;
pub mod ends;
pub mod english;
mod finish;
mod pin;
pub mod posts;
mod prepare;
pub mod side;
mod stringing;
pub mod tail;
pub mod task;
pub mod tools;

use crate::design::Design;
use crate::drape::{Drape, hung_length, piece_length};
use crate::units::Length;

pub use cast::Cast;
pub use cautions::cautions;
pub use task::{Pass, Task};
pub use tools::tools;

/// One step of the work.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Step<'d> {
    /// What is done.
    pub task: Task<'d>,
    /// What to draw beside it.
    pub drawing: Option<Drawing>,
    /// What of the piece that shows.
    pub cast: Cast,
}

/// A small drawing beside a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Drawing {
    /// A cord through a crimp, round in a loop and back, before pressing.
    CrimpOpen,
    /// The same against beads, through which the tail goes on.
    CrimpPacked,
    /// The same with the crimp pressed shut.
    CrimpPressed,
    /// So many strands' loops, two or three, on the eye of one pin.
    Gather(u8),
    /// A cone slid down a pin over so many loops, one to three, cut open.
    Cone(u8),
    /// A pin's wire turned into a plain loop, which may stay a little open.
    PlainLoop(bool),
    /// The end of a coil of memory wire rolled outward into a loop.
    TurnedEnd,
    /// A ring or link opened sideways.
    OpenLink,
    /// A knot as it is tied.
    Knot(Knotted),
    /// Glue on a knot, its tails yet to be cut.
    KnotGlued(Knotted),
    /// A hinged cup closing over a knot, which may be tied round a bead.
    KnotCover(bool),
    /// Beads on a pin, its wire rolled into a loop, which may stay a little open.
    Dangle(bool),
    /// A pin's loop hung in a link of chain and rolled shut.
    InLink,
    /// A bail's prongs pinched into a bead's hole from both sides.
    Bail,
    /// A folded cord hitched to a ring.
    LarksHead,
    /// A crimp and a guard, before pressing.
    Guard,
    /// The same against beads, through which the tail goes on.
    GuardPacked,
    /// A tail cut off close to a crimp.
    TailCut,
    /// A cover closed about a crimp.
    Cover,
    /// A cord glued into an end.
    Glue,
    /// A knot led to its bead with an awl.
    KnotLed,
    /// A crimp pressed on one cord at its station, and whether a bead slides against it.
    Stop(bool),
    /// Beads along a ruler, with what is measured among them.
    Measure(WithBeads),
    /// So many strands, two or three, through a bar.
    Bar(u8),
    /// A bead that strands share, and which of them goes through it.
    Bored(Pass),
    /// A chain cut through a link.
    Chain,
    /// A group of beads between two crimps.
    Group,
    /// A ring's gap squeezed shut.
    Gap,
    /// Thread wound over a card, tied, cut and bound.
    Tassel,
    /// So many strands, two or three, turned about one another.
    Twist(u8),
    /// Something hung by its eye in a ring that is opened.
    Clasp,
    /// A link in a pin's loop.
    InLoop,
    /// A charm hung in a link of chain by a ring.
    Charm,
    /// The kinds of bead laid out by letter.
    LaidOut,
    /// A cord cut at its length along a ruler.
    CutToLength,
    /// Wire cut off its coil, whose turns are counted.
    CutCoil,
    /// A finished coil, whose turns are counted.
    CountedCoil,
    /// A thick cord cut straight across.
    CutSquare,
    /// A piece of tape with a name about a cord's end.
    Tag,
    /// Beads threaded onto a pin, which has an eye or a head.
    OnPin(bool),
    /// A pin's wire bent above something.
    BentPin(Below),
    /// The same cut to what its loop takes.
    CutPin(Below),
    /// A crimp threaded onto a cord's end.
    OnEnd,
    /// A knot cover threaded onto a cord's end.
    CoverOnEnd,
    /// A tail pulled, and beads pushed up.
    DrawnUp(Slack),
    /// A bead that goes over a tail.
    TailCovered,
    /// A tail cut off where it leaves the beads.
    TailOut,
    /// A spring that keeps beads on a cord.
    Stopper,
    /// A knot slid into a bead.
    KnotHidden,
    /// The loops of so many strands, two or three, in those of a bar.
    EndBar(u8),
    /// Beads threaded with a needle, or onto a bare end.
    Threaded(bool),
    /// Groups of beads as far apart from one another.
    Spaced,
    /// A finished piece as it is looked at.
    Inspected(Inspection),
    /// The loop of a strap on the arm of a pair of spectacles.
    OnArm,
}

/// What a pin's wire comes out of where it is bent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Below {
    /// Beads.
    Beads,
    /// Its own eye.
    Eye,
    /// A cone or cap.
    Cover,
}

/// What a crimp stands against at the last end, where slack is drawn up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slack {
    /// Bare cord.
    Bare,
    /// Beads, through which its tail does not go.
    Beads,
    /// Beads through which it does.
    Through,
}

/// How a finished piece is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Inspection {
    /// Hung up beside a ruler.
    Hung,
    /// Pulled from both sides.
    Pulled,
    /// Straight along a ruler.
    Straight,
    /// Closed, once round along its beads.
    Round,
    /// Closed, once round inside them.
    Inside,
}

/// What is measured among beads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum WithBeads {
    /// They alone, pushed together.
    Nothing,
    /// Crimps at their outer ends, pushed against them.
    Crimps,
    /// Knots between them, which stay where they are.
    Knots,
}

/// Where a knot is tied, and in what.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Knotted {
    /// A double overhand knot in a cord that comes out of a cover, which may be tied round a bead.
    Covered(bool),
    /// A double overhand knot in one cord or both legs of a doubled one, against the last bead.
    Free(u8),
    /// One cord or both legs of a doubled one through a ring, tied back on themselves with a double overhand knot.
    Back(u8),
    /// The two ends of a strand, tied to each other with a surgeon's knot: twice over, then once back.
    Ends,
    /// Two ends through what they meet in, tied below it; whether one of them takes up what hangs there.
    Met(bool),
}

impl Knotted {
    const ALL: [Self; 9] = [
        Self::Covered(false),
        Self::Covered(true),
        Self::Free(1),
        Self::Free(2),
        Self::Back(1),
        Self::Back(2),
        Self::Ends,
        Self::Met(false),
        Self::Met(true),
    ];
}

impl Drawing {
    /// Every drawing.
    pub fn all() -> impl Iterator<Item = Self> {
        Self::WITHOUT_KNOTS.into_iter().chain(Knotted::ALL.map(Self::Knot)).chain(Knotted::ALL.map(Self::KnotGlued))
    }

    const WITHOUT_KNOTS: [Self; 77] = [
        Self::CrimpOpen,
        Self::CrimpPacked,
        Self::CrimpPressed,
        Self::Gather(2),
        Self::Gather(3),
        Self::Cone(1),
        Self::Cone(2),
        Self::Cone(3),
        Self::PlainLoop(false),
        Self::PlainLoop(true),
        Self::TurnedEnd,
        Self::OpenLink,
        Self::KnotCover(false),
        Self::KnotCover(true),
        Self::Dangle(false),
        Self::Dangle(true),
        Self::InLink,
        Self::Bail,
        Self::LarksHead,
        Self::Guard,
        Self::GuardPacked,
        Self::TailCut,
        Self::Cover,
        Self::Glue,
        Self::KnotLed,
        Self::Stop(false),
        Self::Stop(true),
        Self::Measure(WithBeads::Nothing),
        Self::Measure(WithBeads::Crimps),
        Self::Measure(WithBeads::Knots),
        Self::Bar(2),
        Self::Bar(3),
        Self::Bored(Pass::First),
        Self::Bored(Pass::Next),
        Self::Chain,
        Self::Group,
        Self::Gap,
        Self::Tassel,
        Self::Twist(2),
        Self::Twist(3),
        Self::Clasp,
        Self::InLoop,
        Self::Charm,
        Self::LaidOut,
        Self::CutToLength,
        Self::CutCoil,
        Self::CountedCoil,
        Self::CutSquare,
        Self::Tag,
        Self::OnPin(false),
        Self::OnPin(true),
        Self::BentPin(Below::Beads),
        Self::BentPin(Below::Eye),
        Self::BentPin(Below::Cover),
        Self::CutPin(Below::Beads),
        Self::CutPin(Below::Eye),
        Self::CutPin(Below::Cover),
        Self::OnEnd,
        Self::CoverOnEnd,
        Self::DrawnUp(Slack::Bare),
        Self::DrawnUp(Slack::Beads),
        Self::DrawnUp(Slack::Through),
        Self::TailCovered,
        Self::TailOut,
        Self::Stopper,
        Self::KnotHidden,
        Self::EndBar(2),
        Self::EndBar(3),
        Self::Threaded(false),
        Self::Threaded(true),
        Self::Spaced,
        Self::Inspected(Inspection::Hung),
        Self::Inspected(Inspection::Pulled),
        Self::Inspected(Inspection::Straight),
        Self::Inspected(Inspection::Round),
        Self::Inspected(Inspection::Inside),
        Self::OnArm,
    ];

    /// The loops of strands on a pin's eye: as many as there are, or three for more.
    fn gather(strands: usize) -> Self {
        Self::Gather(two_or_three(strands))
    }

    /// The strands through a bar: as many as there are, or three for more.
    fn bar(strands: usize) -> Self {
        Self::Bar(two_or_three(strands))
    }

    /// Strands turned about one another: as many as there are, or three for more.
    fn twist(strands: usize) -> Self {
        Self::Twist(two_or_three(strands))
    }

    /// A cone over the loops of strands: as many as there are, or three for more.
    fn cone(strands: usize) -> Self {
        Self::Cone(up_to_three(strands))
    }

    /// Strands in a bar's loops: as many as there are, or three for more.
    fn end_bar(strands: usize) -> Self {
        Self::EndBar(two_or_three(strands))
    }
}

/// As many of one or several as are drawn.
const fn up_to_three(count: usize) -> u8 {
    match count {
        0 | 1 => 1,
        2 => 2,
        _ => 3,
    }
}

/// As many of several strands as are drawn.
const fn two_or_three(strands: usize) -> u8 {
    if strands <= 2 { 2 } else { 3 }
}

impl<'d> Step<'d> {
    fn new(task: Task<'d>) -> Self {
        Self { task, drawing: None, cast: Cast::default() }
    }

    fn drawing(mut self, drawing: Drawing) -> Self {
        self.drawing = Some(drawing);
        self
    }
}

/// The steps of a design, which is hung for its length where only that tells it.
#[must_use]
pub fn steps(design: &Design) -> Vec<Step<'_>> {
    whole(design, || hung_length(design))
}

/// The same of a design that hangs already.
#[must_use]
pub fn steps_as_hung<'d>(design: &'d Design, drape: &Drape) -> Vec<Step<'d>> {
    whole(design, || piece_length(design, drape))
}

fn whole(design: &Design, length: impl Fn() -> [Length; 2]) -> Vec<Step<'_>> {
    let mut steps = work(design);
    steps.extend(finish::finish(design, length, steps.len()));
    steps.into_iter().map(|step| Step { cast: Cast::of(design, &step.task), ..step }).collect()
}

/// All steps but the last, which measure what is made.
fn work(design: &Design) -> Vec<Step<'_>> {
    let mut steps: Vec<_> = prepare::lay_out(design).into_iter().collect();
    steps.extend(prepare::cut(design));
    steps.extend(prepare::tassels(design));
    steps.extend(prepare::dangles(design));
    steps.extend(closure::ready(design));
    steps.extend(ends::first(design, steps.len()));
    steps.extend(stringing::strands(design));
    steps.extend(ends::last(design, steps.len()));
    steps.extend(closure::join(design));
    let twisted = |twist| Step::new(Task::Twist(twist)).drawing(Drawing::twist(design.strands.len()));
    steps.extend(design.twist.as_ref().map(twisted));
    steps
}
