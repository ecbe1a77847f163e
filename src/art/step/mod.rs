//! Small drawings of the work, beside the steps: few lines, the accent colour for what moves.
//!
//! They show the way of working and not the piece's own beads; nothing in them is to scale. Each
//! fills a box of [`SIZE`] with its upper left corner at the origin. Practice as commonly taught,
//! no source.

mod crimp;
mod held;
mod hung;
mod knot;
mod pen;
mod pin;
mod wound;

use crate::geometry::Point;
use crate::paint::layout::Block;
use crate::paint::mark::Mark;
use crate::steps::Drawing;

/// Width and height of every drawing, the thickness of its lines included.
pub const SIZE: (f64, f64) = (ROOM.0 + 2.0 * EDGE, ROOM.1 + 2.0 * EDGE);
/// Width and height in which the middles of lines run.
const ROOM: (f64, f64) = (24.0, 18.0);
/// What a cord's half thickness takes beyond them.
const EDGE: f64 = 0.5;

/// The drawing beside a step.
#[must_use]
pub fn step(drawing: Drawing) -> Vec<Mark> {
    let marks = match drawing {
        Drawing::CrimpOpen => crimp::open(),
        Drawing::CrimpPacked => crimp::packed(),
        Drawing::CrimpPressed => crimp::pressed(),
        Drawing::Gather(strands) => crimp::gather(strands),
        Drawing::Cone(strands) => pin::cone(strands),
        Drawing::PlainLoop => pin::plain_loop(),
        Drawing::TurnedEnd => pin::turned_end(),
        Drawing::OpenLink => pin::open_link(),
        Drawing::Knot => knot::double_overhand(),
        Drawing::SurgeonsKnot => knot::surgeons(),
        Drawing::Meet(hangs) => knot::met(hangs),
        Drawing::KnotCover => knot::cover(),
        Drawing::Dangle(open) => pin::dangle(open),
        Drawing::InLink => hung::dangle(),
        Drawing::Bail => hung::bail(),
        Drawing::KnotRound => knot::round_a_bead(),
        Drawing::LarksHead => knot::larks_head(),
        Drawing::Guard => crimp::guarded(),
        Drawing::GuardPacked => crimp::guarded_packed(),
        Drawing::TailCut => crimp::tail_cut(),
        Drawing::Cover => crimp::covered(),
        Drawing::Glue => crimp::glued(),
        Drawing::KnotLed => knot::led(),
        Drawing::Stop => held::stop(),
        Drawing::Measure => held::measured(),
        Drawing::Bar(strands) => held::bar(strands),
        Drawing::Chain => held::chain(),
        Drawing::Group => held::group(),
        Drawing::KnotGlued => knot::glued(),
        Drawing::Gap => pin::gap(),
        Drawing::Tassel => wound::tassel(),
        Drawing::Twist(strands) => wound::twisted(strands),
        Drawing::Clasp => hung::clasp(),
        Drawing::InLoop => hung::in_loop(),
        Drawing::Charm => hung::charm(),
        Drawing::LetOut => hung::let_out(),
    };
    let marks = Block::new(ROOM.0, ROOM.1, marks).at(Point::new(EDGE, EDGE));
    vec![Mark::figure(label(drawing).to_owned(), marks)]
}

/// What a drawing shows, for those who cannot see it.
const fn label(drawing: Drawing) -> &'static str {
    match drawing {
        Drawing::CrimpOpen => "a cord through a crimp, round a ring and back through the crimp",
        Drawing::CrimpPacked => "a cord through beads and a crimp, round a ring, and back through all of them",
        Drawing::CrimpPressed => "a crimp from the side and the end: open, dented between the cords, folded",
        Drawing::Gather(2) => "the loops of two strands on the eye of one pin",
        Drawing::Gather(_) => "the loops of three strands on the eye of one pin",
        Drawing::Cone(1) => "a cone cut open, slid down a pin's wire over the loop on its eye",
        Drawing::Cone(_) => "a cone cut open, slid down a pin's wire over the loops on its eye",
        Drawing::PlainLoop => "a wire bent to a right angle, and rolled back into a loop",
        Drawing::TurnedEnd => "the end of a coil of wire, rolled outward into a loop",
        Drawing::OpenLink => "a ring opened sideways, and one pulled apart, struck out",
        Drawing::Knot => "a double overhand knot",
        Drawing::SurgeonsKnot => "a knot with two turns below and one turn back above",
        Drawing::Meet(false) => "two ends that go together through a bead, tied below it",
        Drawing::Meet(true) => {
            "two ends that go together through a bead; below it one goes through a loop that hangs there, and they are tied"
        }
        Drawing::KnotCover => "a hinged cup closing over a knot",
        Drawing::Dangle(false) => "beads on a pin, its wire bent and then rolled into a loop that is shut",
        Drawing::Dangle(true) => "beads on a pin, its wire bent and then rolled into a loop that is a little open",
        Drawing::InLink => "the loop of a pin with beads, hung in a link of a chain and rolled shut",
        Drawing::Bail => "the prongs of a bail about the tip of a drop, pinched into its hole from both sides",
        Drawing::KnotRound => "a double overhand knot, in its loop a bead",
        Drawing::LarksHead => "a folded cord round a ring, both its ends through the fold",
        Drawing::Guard => "a cord through a crimp and the tubes of a guard, round a ring, and back through the crimp",
        Drawing::GuardPacked => {
            "a cord through a bead, a crimp and the tubes of a guard, round a ring, and back through all of them"
        }
        Drawing::TailCut => "cutters at the tail, close to the pressed crimp",
        Drawing::Cover => "a cover from its end, open and closed about a crimp, and its ball on the cord",
        Drawing::Glue => "a drop of glue at a cord's end, which goes into a metal end",
        Drawing::KnotLed => "an awl in a loose knot leads it to the bead",
        Drawing::Stop => "a crimp pressed on one cord at its mark on a ruler, a bead against it",
        Drawing::Measure => "beads pushed together along a ruler",
        Drawing::Bar(2) => "two strands through the numbered holes of a bar",
        Drawing::Bar(_) => "three strands through the numbered holes of a bar",
        Drawing::Chain => "cutters at a link of a chain; the link that is cut is lost",
        Drawing::Group => "two beads between crimps that are pressed where they stand",
        Drawing::KnotGlued => "a drop of glue falls on a tight knot",
        Drawing::Gap => "a ring that gapes between the jaws of pliers, and the same shut",
        Drawing::Tassel => "thread wound round a card, tied above and cut below; then bound below its loop",
        Drawing::Twist(2) => "two strands turned about one another",
        Drawing::Twist(_) => "three strands turned about one another",
        Drawing::Clasp => "a clasp hung in a ring that is opened sideways",
        Drawing::InLoop => "the end link of a chain in a pin's loop, which is rolled shut",
        Drawing::Charm => "a charm hung by a ring in a link of a chain",
        Drawing::LetOut => "a clasp in the first link of a chain, and in a farther one",
    }
}
