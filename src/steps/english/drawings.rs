//! The drawings beside steps, in English, for those who cannot see them.

use crate::steps::Drawing;

/// What a drawing shows, for those who cannot see it.
#[must_use]
pub const fn drawing(drawing: Drawing) -> &'static str {
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
