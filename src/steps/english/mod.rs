//! The steps, tools and cautions in English. A second language is a second module like this one: nothing
//! before it has words, and nothing after it looks at them.

mod cautions;
pub mod chart;
mod closure;
mod crimped;
mod drawings;
mod ends;
mod finish;
mod glued;
mod knotted;
mod measured;
pub mod posts;
mod prepare;
mod run;
mod stringing;
mod sum;
mod tools;
mod turned;
mod twisted;
pub mod words;

use crate::design::{Design, Finding, Index, Strand};
use crate::drape::Drape;
use crate::english::a;
use crate::units::{Length, UnitStyle};

use super::ends::AlikeEnds;
use super::side::{Side, hangs, on_both};
use super::task::{EndWork, Task};
use super::{Cast, Drawing, Step};

pub use cautions::{FOR_A_CHILD, Warned, caution};
pub use drawings::drawing;
pub use measured::{bias, measures};
pub use stringing::counts;
pub use sum::sum;
pub use tools::tool;

/// All steps of a design in words, with lengths in units.
#[must_use]
pub fn told(design: &Design, units: UnitStyle) -> Vec<Told> {
    tell(design, &super::steps(design), units)
}

/// The same of a design that hangs already.
#[must_use]
pub fn told_as_hung(design: &Design, drape: &Drape, units: UnitStyle) -> Vec<Told> {
    tell(design, &super::steps_as_hung(design, drape), units)
}

/// The cautions of a design in words.
#[must_use]
pub fn cautions(design: &Design) -> Vec<Warned> {
    super::cautions(design).into_iter().map(caution).collect()
}

/// The tools of a design in words, with lengths in units.
#[must_use]
pub fn tools(design: &Design, units: UnitStyle) -> Vec<String> {
    super::tools(design).into_iter().map(|one| tool(design, one, units)).collect()
}

/// A step in words.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Told {
    /// What is done, in a few words.
    pub title: String,
    /// How it is done.
    pub text: String,
    /// How to see that it came out right, with the figure to check against.
    pub check: Option<String>,
    /// What to draw beside it.
    pub drawing: Option<Drawing>,
    /// What of the piece that shows.
    pub cast: Cast,
}

impl Told {
    fn new(title: impl Into<String>, text: impl Into<String>) -> Self {
        Self { title: title.into(), text: text.into(), check: None, drawing: None, cast: Cast::default() }
    }

    fn check(mut self, check: impl Into<String>) -> Self {
        self.check = Some(check.into());
        self
    }
}

/// Puts steps of a design into words, with lengths in units.
#[must_use]
pub fn tell(design: &Design, steps: &[Step<'_>], units: UnitStyle) -> Vec<Told> {
    let teller = Teller { design, units };
    let tell = |step: &Step<'_>| Told { drawing: step.drawing, cast: step.cast.clone(), ..teller.task(&step.task) };
    steps.iter().map(tell).collect()
}

/// Tells of a design.
#[derive(Clone, Copy)]
struct Teller<'d> {
    design: &'d Design,
    units: UnitStyle,
}

impl<'d> Teller<'d> {
    fn task(self, task: &Task<'_>) -> Told {
        match task {
            Task::LayOut { counts, knotted } => self.lay_out(counts, *knotted),
            Task::Cut(cuts) => self.cut(cuts),
            Task::Tag => self.tag(),
            Task::Tassel(finding) => self.tassel(*finding),
            Task::Dangle { dangle, hold, times } => self.dangle(dangle, *hold, *times),
            Task::BendPin(pins, above) => self.bend_pin(pins, *above),
            Task::CutPin(pins) => self.cut_pin(pins),
            Task::TurnLoop { pins, open } => self.turn_loop(pins, *open),
            Task::LookForGaps(rings) => self.look_for_gaps(rings),
            Task::Cover { cover, pin, side } => self.cover(*cover, *pin, *side),
            Task::CutChain { chain, length, links, side } => self.cut_chain(*chain, *length, *links, *side),
            Task::Hang { what, side, how } => self.hang(*what, *side, *how),
            Task::End(ends, work) => self.end(ends, *work),
            Task::String(strand, besides) => self.string(strand, besides),
            Task::Measure(strands) => self.measure(strands),
            Task::FixStops(strand, finding) => self.fix_stops(strand, *finding),
            Task::Space(strand) => self.space(strand),
            Task::FixGroups(strand, crimp) => self.fix_groups(strand, *crimp),
            Task::Twist(twist) => self.twist(twist),
            Task::Check(finished) => self.finished(finished),
            Task::TryLoops(finding) => self.try_loops(*finding),
            Task::MakeOther(steps) => Self::make_other(*steps),
        }
    }

    fn end(self, ends: &AlikeEnds<'_>, work: EndWork) -> Told {
        let group = Group { ends, teller: Teller { design: ends.design, ..self } };
        match work {
            EndWork::Thread => group.thread(),
            EndWork::Loop(crimp) => group.loop_through(self.name(crimp)),
            EndWork::DrawUp => group.draw_up(),
            EndWork::Press(crimp) => group.press(crimp),
            EndWork::Trim => group.trim(),
            EndWork::CoverCrimp(cover) => Group::cover_crimp(self.name(cover)),
            EndWork::ThreadCover => group.thread_cover(),
            EndWork::TieInCover => group.tie_in_cover(),
            EndWork::CloseCover => group.close_cover(),
            EndWork::Tie => group.tie(),
            EndWork::Set { tails } => group.set(tails),
            EndWork::Hitch => group.hitch(),
            EndWork::Stop => group.stop(),
            EndWork::TieEnds => group.tie_ends(),
            EndWork::Meet => group.meet(),
            EndWork::Hide => knotted::hide(),
            EndWork::Square => group.square(),
            EndWork::Glue => group.glue(),
            EndWork::Turn => group.turn(),
            EndWork::Link => group.linked(),
            EndWork::Others(first, last) => group.others(first, last),
        }
    }

    fn ruler(self, length: Length) -> String {
        self.units.ruler(length)
    }

    fn name(self, finding: Index<Finding>) -> &'d str {
        &self.design.findings[finding].name
    }

    /// The word for a strand's cord: `wire`, `silk`.
    fn cord(self, strand: &Strand) -> &'static str {
        self.design.cords[strand.cord].word()
    }

    /// A finding on a side: `the second eye pin` where both sides have one, `another jump ring` where more hang elsewhere.
    fn the(self, finding: Index<Finding>, side: Side) -> String {
        let name = self.name(finding);
        match side {
            Side::Both => format!("each {name}"),
            Side::First if on_both(self.design, finding) && hangs(self.design, finding) => a(name),
            Side::Last if on_both(self.design, finding) && hangs(self.design, finding) => format!("another {name}"),
            Side::First if on_both(self.design, finding) => format!("the first {name}"),
            Side::Last if on_both(self.design, finding) => format!("the second {name}"),
            Side::Last if self.design.closure.loops() => format!("the same {name}"),
            Side::First | Side::Last => format!("the {name}"),
        }
    }
}

/// Tells of strands' ends.
#[derive(Clone, Copy)]
struct Group<'a> {
    ends: &'a AlikeEnds<'a>,
    teller: Teller<'a>,
}

/// `first` or `last`, of an end.
const fn ordinal(side: Side) -> &'static str {
    match side {
        Side::Both => "each",
        Side::First => "first",
        Side::Last => "last",
    }
}
