//! The making steps: written from the ends, beads and closure that a design really has.
//!
//! Derived from the [`Design`] alone. One action a step, in the order of work: lay out, cut, hang
//! the branches, close the first ends, string and measure, close the last ends, cover and join,
//! check. The ways of working are common practice; figures with a published source name it where
//! they stand. See [`chart`] for the word chart, [`mod@cautions`] and [`mod@tools`] for what goes before.

pub mod cautions;
pub mod chart;
mod closure;
mod ends;
mod finish;
mod prepare;
mod stringing;
pub mod tools;
mod words;

use crate::design::Design;

pub use cautions::{Caution, cautions};
pub use stringing::{counts, measures};
pub use tools::tools;

/// One step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What is done, in a few words.
    pub title: String,
    /// How it is done.
    pub text: String,
    /// How to see that it came out right, with the figure to check against.
    pub check: Option<String>,
    /// What to draw beside it.
    pub drawing: Option<Drawing>,
}

/// A small drawing beside a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Drawing {
    /// A cord through a crimp, round in a loop and back, before pressing.
    CrimpOpen,
    /// The same with the crimp pressed shut.
    CrimpPressed,
    /// Several strands' loops on the eye of one pin.
    Gather,
    /// A cone slid down a pin over the gathered loops.
    Cone,
    /// A pin's wire turned into a plain loop.
    PlainLoop,
    /// A ring or link opened sideways.
    OpenLink,
    /// A double overhand knot.
    Knot,
    /// A surgeon's knot: twice over, then once back.
    SurgeonsKnot,
    /// A hinged cup closing over a knot.
    KnotCover,
    /// Beads on a pin, hung by a loop.
    Dangle,
}

impl Drawing {
    /// Every drawing.
    pub const ALL: [Self; 10] = [
        Self::CrimpOpen,
        Self::CrimpPressed,
        Self::Gather,
        Self::Cone,
        Self::PlainLoop,
        Self::OpenLink,
        Self::Knot,
        Self::SurgeonsKnot,
        Self::KnotCover,
        Self::Dangle,
    ];
}

impl Step {
    fn new(title: impl Into<String>, text: impl Into<String>) -> Self {
        Self { title: title.into(), text: text.into(), check: None, drawing: None }
    }

    fn check(mut self, check: impl Into<String>) -> Self {
        self.check = Some(check.into());
        self
    }

    const fn drawing(mut self, drawing: Drawing) -> Self {
        self.drawing = Some(drawing);
        self
    }
}

/// Writes the steps of a design.
#[must_use]
pub fn steps(design: &Design) -> Vec<Step> {
    let mut steps = vec![prepare::lay_out(design), prepare::cut(design)];
    steps.extend(prepare::dangles(design));
    steps.extend(ends::first(design));
    steps.extend(stringing::strands(design));
    steps.extend(ends::last(design));
    steps.extend(closure::join(design));
    steps.extend(finish::finish(design));
    steps
}
