//! Ends that a knot holds, in words: in a knot cover, on what they go round, or to each other; and the fold of a
//! doubled cord, which is hitched.

use super::posts::from;
use super::{Group, Told};
use crate::design::{Bit, Finding, What};
use crate::english::{a, list};
use crate::pattern::FindingKind;
use crate::steps::ends::{Fastening, end};
use crate::steps::posts::datum;
use crate::steps::side::Side;
use crate::steps::tools::{Needle, needle};
use crate::trade::usual;

impl Group<'_> {
    pub(super) fn thread_cover(self) -> Told {
        let thread = self.threads(&a(self.closing(FindingKind::KnotCover)));
        let beyond = match self.ends.side {
            Side::Last => String::new(),
            _ => format!(" Let {} of the {} stand out beyond it, for the knot.", self.tail_length(), self.cord()),
        };
        Told::new("Thread the knot cover", format!("{thread} Its hollow side faces outward.{beyond}"))
    }

    pub(super) fn tie_in_cover(self) -> Told {
        let (cord, cover) = (self.cord(), self.closing(FindingKind::KnotCover));
        let until = match self.ends.side {
            Side::Last if self.ends.is_packed() => ", close against the last bead",
            Side::Last => ", where the strand has its length",
            _ => "",
        };
        let knot = match self.ends.findings().find_map(Finding::knotted_bead) {
            Some(bead) => format!(
                "Thread {}, tie the {cord} round it with a double overhand knot, and draw both down into the {cover}{until}.",
                a(&self.ends.design.beads[bead].name)
            ),
            None => format!(
                "Tie a double overhand knot in the {cord}, and with {} in its loop draw it down into the {cover}{until}. If it \
                 slips through the hole, tie another over it.",
                self.led_with()
            ),
        };
        let bends = self.ends.side == Side::Last && self.ends.strand.told_slack().is_some();
        let curve = if bends { self.curve() } else { String::new() };
        let check = format!("The knot sits in the cup and does not slip through.{}", self.short_of_cover());
        Told::new("Tie the knot", curve + &knot).check(check)
    }

    /// What leads a knot down into its cover.
    fn led_with(self) -> &'static str {
        if self.ends.is_led_by_awl() { "an awl or tweezers" } else { "the tip of the needle" }
    }

    /// How far the strand reaches while its last cover is open: to where the cord goes into that.
    fn short_of_cover(self) -> String {
        let (design, strand) = (self.ends.design, self.ends.strand);
        if self.ends.side != Side::Last || design.closure.loops() {
            return String::new();
        }
        let short = strand.pulled() - strand.ends[1].takes;
        let (from, short) = (from(datum(design, strand)), self.teller.ruler(short));
        let less = self.teller.ruler(strand.ends[1].takes);
        format!(
            " While this cover is open, the strand measures {short} {from} to where the {} goes into this one, {less} less than \
             when it is closed.",
            self.cord()
        )
    }

    pub(super) fn close_cover(self) -> Told {
        let cover = self.closing(FindingKind::KnotCover);
        let text =
            format!("With chain-nose pliers close the {cover} over the knot, and bend its hook {}.", self.target());
        Told::new("Close the knot cover", text).check(self.length_check("The halves meet and the hook is shut."))
    }

    pub(super) fn tie(self) -> Told {
        let (whose, ends) = (self.whose(), self.ends);
        let end = match ends.side {
            Side::Last => format!("Take the bead stopper off {whose}. Take {}", self.last_end()),
            _ => format!("Take the first end of {whose}"),
        };
        if ends.is_free() {
            return self.knot_free(&end);
        }
        let round = if ends.part().is_some() { self.target() } else { "round in a small loop".to_owned() };
        let back = if ends.strand.legs > 1 { "them back on the legs" } else { "it back on itself" };
        let text =
            format!("{end} {round} and tie {back} with a double overhand knot.{}{}", self.tied_loop(), self.tail());
        Told::new("Tie the knot", text).check(self.length_check("The knot holds when you pull."))
    }

    /// How long the loop of an end is that is tied to something, and when that and the strand are measured.
    fn tied_loop(self) -> String {
        let ends = self.ends;
        let bight = end(ends.strand, ends.side).bight;
        let loop_ = bight.map(|bight| format!("the loop {} long", self.teller.ruler(bight)));
        let length = (ends.side == Side::Last).then(|| "the strand as long as is told below".to_owned());
        let measured: Vec<_> = loop_.into_iter().chain(length).collect();
        if measured.is_empty() {
            return String::new();
        }
        format!(" Move the knot before you draw it tight, until it leaves {}.", list(&measured))
    }

    /// A free end is knotted against its last bead.
    fn knot_free(self, end: &str) -> Told {
        let it = if self.ends.strand.legs > 1 { "them" } else { "it" };
        let against = if self.ends.side == Side::Last { ", close against the last bead" } else { "" };
        let text = format!("{end} and tie a double overhand knot in {it}{against}.{}", self.tail());
        Told::new("Tie the knot", text).check(self.length_check("No bead slips over the knot."))
    }

    /// A folded cord's first end is its fold, drawn over what it goes round.
    pub(super) fn hitch(self) -> Told {
        let text = format!(
            "Fold {} in half. Push the fold {}, take both ends through the fold, and draw it snug: a lark's head.",
            self.whose(),
            self.target()
        );
        Told::new("Hitch the fold", text).check("Both legs lie side by side in the hitch and are equally long.")
    }

    /// A knot is set with glue; in a cover its tail must have room.
    pub(super) fn set(self, tails: bool) -> Told {
        let tails = if tails { "tails" } else { "tail" };
        let short = match self.ends.way {
            Fastening::Covered => "off close to it".to_owned(),
            _ => format!("to {}", self.teller.ruler(usual::STUB)),
        };
        let text = format!("Put a small drop of jewellery glue on the knot, let it dry, and cut the {tails} {short}.");
        Told::new("Set the knot", text).check("The knot is dry and hard.")
    }

    pub(super) fn stop(self) -> Told {
        let (whose, tail) = (self.whose(), self.teller.ruler(*self.ends.strand.allowance));
        let text = format!(
            "Put a bead stopper, or a piece of tape, on {whose}, {tail} from its first end: that is the first tail."
        );
        Told::new("Stop the end", text).check("A bead cannot slip off that end.")
    }

    /// Both ends go through what they meet in, and hold what hangs below (common practice, no source).
    pub(super) fn meet(self) -> Told {
        let (design, whose) = (self.ends.design, self.whose());
        let (hanging, through) = design.met();
        let name = |bit: &Bit| match bit.what {
            What::Bead(at) => format!("{} (the {})", design.beads[at].letter, design.beads[at].name),
            What::Finding(at) if design.findings[at].has_loop() => format!("the loop of the {}", self.teller.name(at)),
            What::Finding(at) => format!("the {}", self.teller.name(at)),
            What::Gap | What::Knot | What::Dangle(_) => String::new(),
        };
        let row = |bits: Vec<&Bit>| list(&bits.into_iter().map(name).collect::<Vec<_>>());
        let needle = if through.is_empty() { "" } else { self.needle_of_first() };
        let through = if through.is_empty() { String::new() } else { format!(" together through {}", row(through)) };
        let loops =
            if hanging.is_empty() { String::new() } else { format!(", thread one of them through {}", row(hanging)) };
        let text = format!(
            "Take the stoppers off {whose}.{needle} Take both its ends{through}{loops}, draw both up until no {} shows \
             between the beads, and tie them together with a surgeon's knot: twice over, then once back.",
            self.cord()
        );
        Told::new("Tie the ends where they meet", text).check("The knot sits close, and holds when you pull.")
    }

    /// How the first end of limp cord, which has no needle, is taken through a bead (common practice, no source).
    fn needle_of_first(self) -> &'static str {
        match needle(self.ends.design, self.ends.strand) {
            Some(Needle::Own) => {
                " Its first end has no needle: wet the tip with a little glue, let it dry stiff, and cut it to a point."
            }
            Some(Needle::Bought) => " The first end takes the beading needle after the last one.",
            None => "",
        }
    }

    pub(super) fn tie_ends(self) -> Told {
        let text = format!(
            "Take the stoppers off {}, draw the beads snug, and tie its two ends together with a surgeon's knot close against \
             them: twice over, then once back. Pull it tight from both sides.",
            self.whose()
        );
        Told::new("Tie the ends", text).check("The knot holds when you stretch the piece gently.")
    }
}

/// A knot is hidden in a bead.
pub fn hide() -> Told {
    Told::new("Hide the knot", "Slide the knot into the nearest bead that holds it.").check("No tail sticks out.")
}
