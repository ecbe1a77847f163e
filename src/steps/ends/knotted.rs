//! Ends that a knot holds: in a knot cover, on what they go round, or to each other; and the fold of a doubled cord,
//! which is hitched.

use super::Group;
use crate::design::Finding;
use crate::pattern::FindingKind;
use crate::steps::side::Side;
use crate::steps::words::a;
use crate::steps::{Drawing, Step};

impl Group<'_> {
    pub(super) fn covered(&self) -> Vec<Step> {
        let cover = self.first_of(FindingKind::KnotCover).unwrap_or("knot cover");
        let thread = self.threads(&a(cover));
        let thread = format!("{thread} Its hollow side faces outward.{}", self.tail());
        let until = match self.side {
            Side::Last if self.is_packed() => ", close against the last bead",
            Side::Last => ", where the strand has its length",
            _ => "",
        };
        let cord = self.cord();
        let knot = match self.findings().find_map(Finding::knotted_bead) {
            Some(bead) => format!(
                "Thread {}, tie the {cord} round it with a double overhand knot, and draw both down into the {cover}{until}.",
                a(&self.design.beads[bead].name)
            ),
            None => format!(
                "Tie a double overhand knot in the {cord} and draw it down into the {cover}{until}. If it slips through \
                 the hole, tie another over it."
            ),
        };
        let close =
            format!("With chain-nose pliers close the {cover} over the knot, and bend its hook {}.", self.target());
        vec![
            Step::new("Thread the knot cover", thread),
            Step::new("Tie the knot", knot)
                .check(self.length_check("The knot sits in the cup and does not slip through."))
                .drawing(Drawing::Knot),
            glue("tail"),
            Step::new("Close the knot cover", close)
                .check("The halves meet and the hook is shut.")
                .drawing(Drawing::KnotCover),
        ]
    }

    pub(super) fn knotted(&self) -> Vec<Step> {
        let whose = self.whose();
        let end = match self.side {
            Side::Last => format!("Take the bead stopper off {whose}. Take {}", self.last_end()),
            _ => format!("Take the first end of {whose}"),
        };
        let round = if self.part().is_some() { self.target() } else { "round in a small loop".to_owned() };
        let back = if self.strand.legs > 1 { "them back on the legs" } else { "it back on itself" };
        let text = format!("{end} {round} and tie {back} with a double overhand knot.{}", self.tail());
        vec![
            Step::new("Tie the knot", text)
                .check(self.length_check("The knot holds when you pull."))
                .drawing(Drawing::Knot),
            glue(if self.strand.legs > 1 { "tails" } else { "tail" }),
        ]
    }

    /// A folded cord's first end is its fold, drawn over what it goes round.
    pub(super) fn hitched(&self) -> Step {
        let text = format!(
            "Fold {} in half. Push the fold {}, take both ends through the fold, and draw it snug: a lark's head.",
            self.whose(),
            self.target()
        );
        Step::new("Hitch the fold", text)
            .check("Both legs lie side by side in the hitch and are equally long.")
            .drawing(Drawing::LarksHead)
    }

    pub(super) fn tied(&self) -> Vec<Step> {
        let whose = self.whose();
        if self.side == Side::First {
            let tail = self.design.heading.units.ruler(self.strand.allowance);
            let text = format!(
                "Put a bead stopper, or a piece of tape, on {whose}, {tail} from its first end: that is the first tail."
            );
            return vec![Step::new("Stop the end", text).check("A bead cannot slip off that end.")];
        }
        let knot = format!(
            "Take the stoppers off {whose} and tie its two ends together with a surgeon's knot: twice over, then \
             once back. Draw the beads snug first, and pull the knot tight from both sides.",
        );
        let hide = "Slide the knot into the nearest bead that holds it.";
        vec![
            Step::new("Tie the ends", knot)
                .check("The knot holds when you stretch the piece gently.")
                .drawing(Drawing::SurgeonsKnot),
            glue("tails"),
            Step::new("Hide the knot", hide).check("No tail sticks out."),
        ]
    }
}

fn glue(tails: &str) -> Step {
    let text = format!("Put a small drop of jewellery glue on the knot, let it dry, and cut the {tails} short.");
    Step::new("Set the knot", text).check("The knot is dry and hard.")
}
