//! The drawings beside steps, in English, for those who cannot see them.

use crate::steps::{Below, Drawing, Inspection, Knotted, Pass, Slack, WithBeads};

/// What a drawing shows, for those who cannot see it.
#[must_use]
pub const fn drawing(drawing: Drawing) -> &'static str {
    match drawing {
        Drawing::CrimpOpen => "a strand through a crimp, round a ring and back through the crimp",
        Drawing::CrimpPacked => "a strand through beads and a crimp, round a ring, and back through all of them",
        Drawing::CrimpPressed => "a crimp from the side and the end: open, dented between its two passes, folded",
        Drawing::Gather(2) => "the loops of two strands on the eye of one pin",
        Drawing::Gather(_) => "the loops of three strands on the eye of one pin",
        Drawing::Cone(1) => "a cone cut open, slid down a pin's wire over the loop on its eye",
        Drawing::Cone(_) => "a cone cut open, slid down a pin's wire over the loops on its eye",
        Drawing::PlainLoop(false) => "a wire bent to a right angle, and rolled back into a loop that is shut",
        Drawing::PlainLoop(true) => {
            "a wire bent to a right angle, and rolled back into a loop that is still a little open"
        }
        Drawing::TurnedEnd => "the end of a coil of wire, rolled outward into a loop",
        Drawing::OpenLink => "a ring opened sideways, and one pulled apart, struck out",
        Drawing::Knot(knot) => tied(knot),
        Drawing::KnotGlued(knot) => glued(knot),
        Drawing::KnotCover(false) => "a hinged cup closing over a knot",
        Drawing::KnotCover(true) => "a hinged cup closing over a bead that is tied in",
        Drawing::Dangle(false) => "beads on a pin, its wire bent and then rolled into a loop that is shut",
        Drawing::Dangle(true) => "beads on a pin, its wire bent and then rolled into a loop that is a little open",
        Drawing::InLink => "the loop of a pin with beads, hung in a link of a chain and rolled shut",
        Drawing::Bail => "the prongs of a bail about the tip of a drop, pinched into its hole from both sides",
        Drawing::LarksHead => "a folded strand round a ring, both its ends through the fold",
        Drawing::Guard => "a strand through a crimp and the tubes of a guard, round a ring, and back through the crimp",
        Drawing::GuardPacked => {
            "a strand through a bead, a crimp and the tubes of a guard, round a ring, and back through all of them"
        }
        Drawing::TailCut => "cutters at the tail, close to the pressed crimp",
        Drawing::Cover => "a cover from its end, open and closed about a crimp, and its ball on the strand",
        Drawing::Glue => "a drop of glue at a strand's end, which goes into a metal end",
        Drawing::KnotLed => "an awl in a loose knot leads it to the bead",
        Drawing::Stop(true) => "a crimp pressed on a strand at its mark on a ruler, a bead against it",
        Drawing::Stop(false) => "a crimp pressed on a strand at its mark on a ruler",
        Drawing::Measure(WithBeads::Nothing) => "beads pushed together along a ruler",
        Drawing::Measure(WithBeads::Crimps) => "beads and the crimps beside them pushed together along a ruler",
        Drawing::Measure(WithBeads::Knots) => "beads with knots between them along a ruler",
        Drawing::Bar(2) => "two strands through the numbered holes of a bar",
        Drawing::Bar(_) => "three strands through the numbered holes of a bar",
        Drawing::Chain => "cutters at a link of a chain; the link that is cut is lost",
        Drawing::Group => "two beads between crimps that are pressed where they stand",
        Drawing::Gap => "a ring that gapes between the jaws of pliers, and the same shut",
        Drawing::Tassel => "cord wound round a card, tied above and cut below; then bound below its loop",
        Drawing::Twist(2) => "two strands turned about one another",
        Drawing::Twist(_) => "three strands turned about one another",
        Drawing::Clasp => "what hangs in a ring that is opened sideways",
        Drawing::InLoop => "what hangs in a pin's loop, which is rolled shut",
        Drawing::Charm => "a charm hung by a ring in a link of a chain",
        Drawing::Bored(Pass::First) => "a strand through the first hole of a bead with several",
        Drawing::Bored(Pass::Next) => "a strand through the next hole of a bead with several, beside the strand before",
        Drawing::LaidOut => "beads in rows on a board, each kind behind its letter",
        Drawing::CutToLength => "a cord along a ruler, cutters at its length",
        Drawing::CutCoil => "a coil of wire with its turns counted, cutters at the end of the last",
        Drawing::CountedCoil => "a coil with a loop at each end, its turns counted",
        Drawing::CutSquare => "cutters straight across a thick cord",
        Drawing::Tag => "a piece of tape with a name, folded round a cord's end",
        Drawing::OnPin(false) => "beads threaded onto a pin against its head",
        Drawing::OnPin(true) => "beads threaded onto a pin against its eye",
        Drawing::BentPin(below) => bent(below),
        Drawing::CutPin(_) => "cutters at the bent wire, as far from the bend as the loop takes",
        Drawing::OnEnd => "a crimp threaded onto a cord's end",
        Drawing::CoverOnEnd => "an open knot cover threaded onto a cord's end, its hollow side towards that",
        Drawing::DrawnUp(Slack::Bare) => {
            "the tail that comes back through a crimp pulled, so that the loop gets shorter"
        }
        Drawing::DrawnUp(Slack::Beads) => "beads pushed up to a crimp, and the tail that comes back through it pulled",
        Drawing::DrawnUp(Slack::Through) => {
            "beads pushed up to a crimp, and the tail that comes back through it and through them pulled"
        }
        Drawing::TailCovered => "a bead that goes over a cord and the tail beside it, up to a pressed crimp",
        Drawing::TailOut => "cutters at a tail where it leaves the beads",
        Drawing::Stopper => "a spring on a cord near its end",
        Drawing::KnotHidden => "a knot beside a bead, and inside it",
        Drawing::EndBar(2) => "the loops of two strands in the numbered loops of a bar",
        Drawing::EndBar(_) => "the loops of three strands in the numbered loops of a bar",
        Drawing::Threaded(true) => "a cord's needle through a bead, which follows others on the cord",
        Drawing::Threaded(false) => "a cord's bare end through a bead, which follows others on the cord",
        Drawing::Spaced => "three groups of beads on a cord, as much bare cord between each and the next",
        Drawing::Inspected(how) => inspected(how),
        Drawing::OnArm => "the loop of a strap slid onto the arm of a pair of spectacles",
    }
}

/// A pin's wire as it is bent.
const fn bent(below: Below) -> &'static str {
    match below {
        Below::Beads => "a pin's wire bent to a right angle by pliers where it leaves the beads",
        Below::Eye => "a pin's wire bent to a right angle by pliers where it leaves its eye",
        Below::Cover => "a pin's wire bent to a right angle by pliers where it leaves a cone",
    }
}

/// A finished piece as it is looked at.
const fn inspected(how: Inspection) -> &'static str {
    match how {
        Inspection::Hung => "an earring that hangs beside a ruler",
        Inspection::Pulled => "a closed row of beads, pulled gently from both sides",
        Inspection::Straight => "a piece laid straight along a ruler, from one end to the other",
        Inspection::Round => "a closed piece, and the way once round along it",
        Inspection::Inside => "a closed piece, and the way once round inside it",
    }
}

/// A knot as it is tied.
const fn tied(knot: Knotted) -> &'static str {
    match knot {
        Knotted::Covered(false) => "a double overhand knot in a strand that comes out of an open cover",
        Knotted::Covered(true) => "a double overhand knot beyond an open cover, in its loop a bead",
        Knotted::Free(1) => "a double overhand knot in a strand below a bead",
        Knotted::Free(_) => "a double overhand knot in both legs of a strand below a bead",
        Knotted::Back(1) => "a strand through a ring, tied back on itself with a double overhand knot",
        Knotted::Back(_) => "both legs of a strand through a ring, tied back on themselves with a double overhand knot",
        Knotted::Ends => "a knot with two turns below and one turn back above",
        Knotted::Met(false) => "two ends that go together through a bead, tied below it",
        Knotted::Met(true) => {
            "two ends that go together through a bead; below it one goes through a loop that hangs there, and they are tied"
        }
    }
}

/// A knot as it is set with glue.
const fn glued(knot: Knotted) -> &'static str {
    match knot {
        Knotted::Covered(false) => "a drop of glue falls on a tight knot in an open cover",
        Knotted::Covered(true) => "a drop of glue falls on a knot round a bead in an open cover",
        Knotted::Free(1) => "a drop of glue falls on a tight knot below a bead",
        Knotted::Free(_) => "a drop of glue falls on a tight knot in both legs of a strand below a bead",
        Knotted::Back(1) => "a drop of glue falls on the knot that closes a strand's loop round a ring",
        Knotted::Back(_) => {
            "a drop of glue falls on the knot that closes the loop of both legs of a strand round a ring"
        }
        Knotted::Ends => "a drop of glue falls on the knot between two ends, beads on both sides",
        Knotted::Met(_) => "a drop of glue falls on the knot below the bead that two ends go through",
    }
}
