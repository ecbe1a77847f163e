//! What is done before stringing, in words.

use std::collections::BTreeSet;

use super::twisted::twisted;
use super::words::{cords, names};
use super::{Teller, Told, chart};
use crate::design::{Bead, Bit, Cord, Dangle, Finding, Foot, Index, Phrase, Pin, Strand, Tassel, What};
use crate::english::{a, assumed, count, list};
use crate::materials::render::words as amount;
use crate::pattern::{CordKind, Shape};
use crate::steps::prepare;
use crate::steps::task::{Above, CutNote, Hold, Pins};
use crate::trade::usual;
use crate::units::{Length, eighths};

/// How metal is cut with two hands.
pub const FLYING: &str = "Hold the end that would fly, or cut into a bag.";

/// The same after a sentence about a cord that is cut, where its ends fly.
pub fn flying(cord: CordKind) -> String {
    if cord == CordKind::Wire { format!(" {FLYING}") } else { String::new() }
}

impl Teller<'_> {
    pub(super) fn lay_out(self, counts: &[u32], knotted: u64) -> Told {
        let named = self.design.beads.iter().zip(counts);
        let beads: Vec<_> = named.map(|(bead, count)| format!("{count} {} ({})", bead.letter, bead.name)).collect();
        let total = counts.iter().copied().map(u64::from).sum();
        let each = if self.design.copies > 1 { " for one earring" } else { "" };
        let tied = if knotted > 0 { format!(", {knotted} of them for the knots at the ends") } else { String::new() };
        let kinds = if beads.len() > 1 { ", each kind by its letter," } else { "" };
        let text = format!("Set the beads out on a cloth or board{kinds} and count them.");
        Told::new("Lay out the beads", text).check(if beads.len() == 1 {
            format!("You have {}{each}{tied}.", list(&beads))
        } else {
            format!("You have {}{each}: {}{tied}.", list(&beads), count(total, "bead"))
        })
    }

    pub(super) fn cut(self, cuts: &[CutNote<'_>]) -> Told {
        let said = cuts.iter().map(|cut| match cut {
            CutNote::Stretch => "Stretch the elastic gently a few times before you measure it.".to_owned(),
            CutNote::OwnNeedle(cord) => self.own_needle(*cord),
            CutNote::Trial(strand) => self.trial(strand),
            CutNote::Tassel(finding) => self.for_tassel(*finding),
            CutNote::Pieces(cord) => self.pieces(*cord),
            CutNote::Coil(strand) => self.off_coil(strand),
            CutNote::Knots(strand) => self.for_knots(strand),
            CutNote::Twisted => twisted(self.design, self.units).unwrap_or_default(),
            CutNote::Flying => FLYING.to_owned(),
        });
        Told::new(format!("Cut the {}", cords(self.design)), said.collect::<Vec<_>>().join(" "))
    }

    /// `Cut from the wire: 17 ⅛ in for inner and 18 ⅜ in for middle.`
    fn pieces(self, cord: Index<Cord>) -> String {
        let (design, name) = (self.design, &self.design.cords[cord].name);
        let whole = match design.cords[cord].kind {
            CordKind::Chain => " Cut through the link beyond the last, so that both end links are whole.",
            _ => "",
        };
        if let [only] = design.strands.as_slice() {
            return format!("Cut {} of {name}.{whole}", self.piece(only));
        }
        let strands = design.strands.iter().filter(|strand| strand.cord == cord);
        let each = strands.map(|strand| format!("{} for {}", self.piece(strand), strand.name));
        format!("Cut from the {name}: {}.{whole}", list(&each.collect::<Vec<_>>()))
    }

    /// What to cut for a strand: `17 ⅛ in (435 mm)`; of chain whose links are known, `49 links, 162 mm,`.
    fn piece(self, strand: &Strand) -> String {
        let length = amount::cut(strand.cut(), self.units);
        strand.links(self.design).map_or(length.clone(), |links| format!("{}, {length},", count(links, "link")))
    }

    /// How memory wire is told off and cut (common practice, no source).
    fn off_coil(self, strand: &Strand) -> String {
        let turns = self.design.coil_turns(strand).unwrap_or_default();
        format!(
            "That is {} turns of its coil as it lies: count them off. Cut it with memory wire cutters, or bend it to and fro \
             with pliers until it breaks; it nicks the cutters that are made for soft wire. Wear eye protection.",
            eighths(turns)
        )
    }

    /// A needle that is on its cord leads, and so stays on the last end.
    fn own_needle(self, cord: Index<Cord>) -> String {
        let is_tried = self.design.strands.iter().any(|strand| strand.cord == cord && strand.trial().is_some());
        let beyond = if is_tried {
            " Cut all else off the other end first, and the strand last: its knots may take more than told."
        } else {
            ""
        };
        let word = self.design.cords[cord].word();
        format!(
            "The {word} has its own needle, which stays on the strand's last end: measure the strand from there.{beyond}"
        )
    }

    /// Knots tied to try, on a piece that is bought for that.
    fn trial(self, strand: &Strand) -> String {
        format!(
            "First cut {} of {} and tie {} knots in it, one by one and tight: they should make it {} shorter, {} each{}.",
            amount::cut(strand.trial().unwrap_or_default(), self.units),
            self.design.cords[strand.cord].name,
            usual::TRIAL_KNOTS,
            self.ruler(strand.trial_take_up()),
            self.units.gauge(*strand.take_up),
            assumed(strand.take_up.is_assumed())
        )
    }

    /// `The 59 knots among the beads take up about 420 mm, which is counted in`: an estimate, to be tried first.
    fn for_knots(self, strand: &Strand) -> String {
        let several = self.design.strands.len() > 1;
        let whose = if several { format!(" of {}", strand.name) } else { String::new() };
        format!(
            "The {} among the beads{whose} take up about {}, which is counted in: if those {} took more than told, add the \
             difference once for each {} knots before you cut.",
            count(u64::from(strand.knots()), "knot"),
            self.ruler(strand.take_up_between()),
            usual::TRIAL_KNOTS,
            usual::TRIAL_KNOTS
        )
    }

    /// What a tassel is made of, which is cut before the strand.
    fn for_tassel(self, finding: Index<Finding>) -> String {
        let finding = &self.design.findings[finding];
        let takes = finding.tassel().and_then(Tassel::takes);
        let of = |(cord, length): (Index<Cord>, Length)| {
            let length = amount::cut(length, self.units);
            format!("Cut {length} of {} for the {}.", self.design.cords[cord].name, finding.name)
        };
        takes.map(of).unwrap_or_default()
    }

    pub(super) fn tag(self) -> Told {
        let all: Vec<_> = self.design.strands.indices().collect();
        let text = "Write each strand's name on a bit of tape, and fold it round the last end of its piece.";
        Told::new("Tag the pieces", text).check(format!("Each piece has its tag: {}.", names(self.design, &all)))
    }

    /// Wound over a card, bound and cut (common practice, no source).
    pub(super) fn tassel(self, finding: Index<Finding>) -> Told {
        let (name, tassel) = (self.name(finding), self.design.findings[finding].tassel());
        let Some((tassel, (cord, _), turns)) = tassel.and_then(|tassel| Some((tassel, tassel.wound?, tassel.turns()?)))
        else {
            return Told::new(format!("Make the {name}"), String::new());
        };
        let (cord, binding) = (&self.design.cords[cord].name, amount::cut(usual::BINDING, self.units));
        let (turns, long) = (count(u64::from(turns), "time"), self.ruler(tassel.length));
        let text = format!(
            "Cut {binding} of its {cord} for the binding. Wind the rest {turns} round a card {long} tall. Draw a third of the \
             short piece through under all turns at the upper edge and tie it to a loop {} long. Cut the turns at the lower edge, \
             and bind them {} below the loop with the rest of the short piece. Trim the ends straight, {long} from the top \
             of the loop.",
            self.ruler(tassel.hanger()),
            self.ruler(tassel.neck())
        );
        Told::new(format!("Make the {name}"), text).check("Nothing comes out when you pull it.")
    }

    pub(super) fn dangle(self, dangle: &Dangle, hold: Hold, times: u64) -> Told {
        let many = if times == 1 { "the dangle".to_owned() } else { count(times, "dangle") };
        match hold {
            Hold::Bail => self.on_bail(dangle, &many),
            Hold::Ring => self.on_ring(dangle, &many),
            Hold::Chain(chain) => self.on_chain(dangle, chain, &many, times),
            Hold::Pin(foot, lowest) => self.on_pin(dangle, foot, lowest, &many, times),
        }
    }

    /// What a branch hangs on.
    fn held(self, dangle: &Dangle) -> String {
        dangle.on.map_or_else(String::new, |on| a(self.name(on)))
    }

    fn on_ring(self, dangle: &Dangle, many: &str) -> Told {
        let row = chart::row(self.design, &phrases(dangle.bits.iter()), self.units).to_string();
        let text = format!(
            "With two pairs of chain-nose pliers open {} sideways, hang {row} in it, and close it the same way.",
            self.held(dangle)
        );
        Told::new(named("Make", many, &row), text).check("It is shut: no gap shows.")
    }

    /// A piece of chain is cut, and its last link opened for what hangs on it.
    fn on_chain(self, dangle: &Dangle, chain: Index<Finding>, many: &str, times: u64) -> Told {
        let row = chart::row(self.design, &phrases(dangle.bits.iter()), self.units).to_string();
        let (pieces, whose) =
            if times == 1 { (String::new(), "its") } else { (format!("{times} pieces of "), "each piece's") };
        let length = self.design.findings[chain].along();
        let links = self.design.findings[chain].chain().and_then(|chain| chain.links(length));
        let links = links.map_or_else(|| "whole links".to_owned(), |links| count(links, "link"));
        let cut = self.off_chain(&pieces, chain, length, &links);
        let open = format!(
            "With two pairs of chain-nose pliers open {whose} last link sideways, hang {row} in it, and close it the same way."
        );
        Told::new(named("Make", many, &row), format!("{cut} {open}")).check("It is shut: no gap shows.")
    }

    /// Pieces of a length, so many links, cut off a chain.
    pub(super) fn off_chain(self, pieces: &str, chain: Index<Finding>, length: Length, links: &str) -> String {
        let (length, name) = (amount::cut(length, self.units), self.name(chain));
        format!("Cut {pieces}{length} of {name}, {links}, through the link beyond the last. {FLYING}")
    }

    /// A bail's prongs are spread, set into the hole from both sides, and pinched (common practice, no source).
    fn on_bail(self, dangle: &Dangle, many: &str) -> Told {
        let row = chart::row(self.design, &phrases(dangle.bits.iter()), self.units).to_string();
        let bail = self.held(dangle);
        let text = format!(
            "Spread the prongs of {bail} a little, set them into the hole of {row} from both sides, and pinch them shut with chain-nose \
             pliers."
        );
        Told::new(named("Make", many, &row), text).check("It swings freely, and a gentle pull does not free it.")
    }

    fn on_pin(self, dangle: &Dangle, foot: Foot, lowest: Option<Index<Bead>>, many: &str, times: u64) -> Told {
        let (design, name) = (self.design, dangle.on.map_or("pin", |on| self.name(on)));
        let row = chart::row(design, &phrases(dangle.bits.iter().rev()), self.units).to_string();
        let foot = match foot {
            Foot::Eye => "eye",
            Foot::Head => "head",
        };
        let onto = if times == 1 { a(name) } else { format!("each of {}", count(times, name)) };
        let text = format!("Thread onto {onto}, from its {foot} up, {row}.{}", self.fat_end(dangle));
        let told = Told::new(named("Thread", many, &row), text);
        match lowest.map(|bead| &design.beads[bead].letter) {
            Some(letter) => told.check(format!("{letter} sits on the {foot}, and the beads touch.")),
            None => told,
        }
    }

    /// A drop hangs with its fat end down, so on a pin that end goes first.
    fn fat_end(self, dangle: &Dangle) -> String {
        let drop = |at: &Index<Bead>| self.design.beads[*at].shape == Shape::Drop;
        let beads = dangle.bits.iter().filter_map(|bit| bit.what.bead());
        let drops: BTreeSet<_> = beads.filter(drop).map(|at| self.design.beads[at].letter.as_str()).collect();
        let drops: Vec<_> = drops.into_iter().collect();
        match drops.as_slice() {
            [] => String::new(),
            [one] => format!(" {one} goes on with its fat end first."),
            several => format!(" {} go on with their fat ends first.", list(several)),
        }
    }

    pub(super) fn bend_pin(self, pins: &Pins, above: Above) -> Told {
        let above = match above {
            Above::Beads => "beads",
            Above::Eye => "eye",
            Above::Cover(cover) => self.name(cover),
        };
        let text = format!(
            "With chain-nose pliers bend the wire of {} to a right angle where it leaves the {above}.",
            self.pins(pins)
        );
        Told::new("Bend the pin", text)
    }

    pub(super) fn cut_pin(self, pins: &Pins) -> Told {
        let text = format!(
            "Cut the wire of {} {} from the bend. {FLYING}",
            self.pins(pins),
            self.of_pins(pins, Pin::loop_wire)
        );
        Told::new("Cut the pin", text)
    }

    /// A size of pins: `8 mm`, or of several sorts that differ in it `8 mm (head pin) and 9 mm (eye pin)`.
    fn of_pins(self, pins: &Pins, size: fn(&Pin) -> Length) -> String {
        let sorts = prepare::sorts(self.design, pins);
        let sizes = sorts.iter().filter_map(|finding| Some((self.ruler(size(finding.pin()?)), &finding.name)));
        let each: Vec<_> = sizes.collect();
        match each.as_slice() {
            [(first, _), rest @ ..] if rest.iter().all(|(other, _)| other == first) => first.clone(),
            each => list(&each.iter().map(|(wire, name)| format!("{wire} ({name})")).collect::<Vec<_>>()),
        }
    }

    pub(super) fn turn_loop(self, pins: &Pins, open: bool) -> Told {
        let text = format!(
            "Grip the tip of the wire of {} with round-nose pliers where their jaws are {} thick, and roll it back towards the \
             bend into a plain loop.",
            self.pins(pins),
            self.of_pins(pins, Pin::open)
        );
        if open {
            Told::new("Turn a loop", format!("{text} Stop while it is still a little open."))
                .check("The loop is round, and its gap lets a link or ring in.")
        } else {
            Told::new("Turn a loop", text).check("The loop is round and shut tight: no gap shows.")
        }
    }

    fn pins(self, pins: &Pins) -> String {
        match pins {
            Pins::Closure(pin, side) => self.the(*pin, *side),
            Pins::Dangles(sorts, number) => {
                let name = if let [only] = sorts.as_slice() { self.name(*only) } else { "pin" };
                if *number == 1 { format!("the {name}") } else { format!("each {name}") }
            }
        }
    }
}

/// Longest row, in letters, by which a step about branches is called.
const SHORT: usize = 24;

/// `Thread 2 dangles of 1B 1A`: several kinds of branch are told apart by what hangs on them, where that is short.
fn named(verb: &str, many: &str, row: &str) -> String {
    if row.chars().count() <= SHORT { format!("{verb} {many} of {row}") } else { format!("{verb} {many}") }
}

/// What hangs on a branch as phrases.
fn phrases<'a>(bits: impl Iterator<Item = &'a Bit>) -> Vec<Phrase> {
    let phrase = |bit: &Bit| match &bit.what {
        What::Bead(at) => Phrase::Run(1, *at),
        What::Finding(at) => Phrase::Finding(*at),
        What::Dangle(dangle) => Phrase::Dangle(dangle.on, phrases(dangle.bits.iter())),
        What::Gap => Phrase::Gap(Length::mm(bit.length())),
        What::Knot => Phrase::Knot,
    };
    bits.map(phrase).collect()
}
