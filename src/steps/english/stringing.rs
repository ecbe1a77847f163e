//! Stringing, in words: the word chart of each strand, the length to check it against, and the places of what
//! does not slide.

use std::collections::{BTreeMap, BTreeSet};

use super::chart;
use super::posts::from;
use super::prepare::flying;
use super::words::{few, strand as name};
use super::{Teller, Told};
use crate::design::{Bead, Bit, Design, Entries, Finding, Index, Shared, Strand, What};
use crate::english::{count, list};
use crate::pattern::{CordKind, Settle};
use crate::steps::posts::{self, Keeps, Posts, datum};
use crate::steps::tail::Hides;
use crate::steps::task::{Beside, InLink, Needled, Pass};
use crate::units::Length;

/// Longest word chart, in letters, that a step says again.
const LONG: usize = 80;
/// What it says in place of a longer one.
const LONG_CHART: &str = "what the strand's chart says, in its order";

impl Teller<'_> {
    pub(super) fn string(self, strand: &Strand, besides: &[Beside]) -> Told {
        let (design, chart) = (self.design, chart::strung(self.design, strand, self.units).to_string());
        let several = design.strands.len() > 1;
        let chain = design.cords[strand.cord].kind == CordKind::Chain;
        let what = if chain { "the dangles" } else { "the beads" };
        let title = if several { name(design, strand) } else { what.to_owned() };
        let chart = if chart.chars().count() <= LONG { chart } else { LONG_CHART.to_owned() };
        let string = match () {
            () if chain => format!("Hang in the links {chart}."),
            () if several => format!("Take the tag off the {} piece and string {chart}.", strand.name),
            () => format!("String {chart}."),
        };
        // Common practice, no source.
        let pointed = design.cords[strand.cord].kind == CordKind::Leather;
        let pointed = pointed.then(|| format!("Cut the last end of the {} to a long point.", self.cord(strand)));
        let besides = besides.iter().map(|beside| self.beside(strand, *beside));
        let said: Vec<_> = pointed.into_iter().chain([string]).chain(besides).collect();
        let verb = if chain { "Hang" } else { "String" };
        Told::new(format!("{verb} {title}"), said.join(" ")).check(self.strung(strand))
    }

    /// What to check once a strand is strung.
    fn strung(self, strand: &Strand) -> String {
        let posts = Posts::new(self.design, strand);
        let check = [
            Some(counts(self.design, strand)),
            self.besides_beads(strand),
            self.first_ten(strand),
            self.fixed(strand, &posts),
            posts.sentence(Keeps::Bar, self.units),
            posts.sentence(Keeps::Knot, self.units),
        ];
        check.into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    fn beside(self, strand: &Strand, beside: Beside) -> String {
        match beside {
            Beside::Knots(takes) => {
                let (first, last) = (self.first_knot(strand), self.last_knot(strand));
                self.knots(strand, "Between each bead and the next", takes) + &first + &last
            }
            Beside::WrittenKnots(takes) => {
                self.knots(strand, "Where a knot is written", takes) + &self.first_knot(strand)
            }
            Beside::Needle(needled) => with_needle(needled, self.cord(strand)),
            Beside::BothLegs => "Take both legs through every bead.".to_owned(),
            Beside::ThroughBars(pass) => self.through_bars(strand, pass),
            Beside::ThroughBeads(Pass::First) => self.first_through(strand),
            Beside::ThroughBeads(Pass::Next) => self.next_through(strand),
            Beside::Caps => "Each bead cap has its hollow side to the bead that it hugs.".to_owned(),
            Beside::Dangles => format!("Dangles are told from the {} down.", self.cord(strand)),
            Beside::OverTail(hides) => self.over_tail(strand, hides),
            Beside::Tight => {
                format!("Keep for both ends beads that take the {} twice: not every hole will.", self.cord(strand))
            }
            Beside::InLinks(what) => in_links(what).to_owned(),
            Beside::Stopper => "Put a bead stopper on the end.".to_owned(),
        }
    }

    fn through_bars(self, strand: &Strand, pass: Pass) -> String {
        match pass {
            Pass::First if self.design.strands.len() == 2 => {
                "The other strand goes through another hole of the same spacer bars.".to_owned()
            }
            Pass::First => "The other strands go through the other holes of the same spacer bars.".to_owned(),
            Pass::Next => self.next_holes(strand),
        }
    }

    /// `Go through hole 2 of the spacer bars that hang on the strand before.`
    fn next_holes(self, strand: &Strand) -> String {
        let hole = |at| self.design.hole(Shared::Bar(at), strand);
        let holes: BTreeSet<_> = self.design.findings.indices().filter_map(hole).collect();
        let which = match holes.first() {
            Some(hole) if holes.len() == 1 => format!("hole {hole}"),
            _ => "the next hole".to_owned(),
        };
        format!("Go through {which} of the spacer bars that hang on the strand before.")
    }

    fn over_tail(self, strand: &Strand, hides: Hides) -> String {
        let (beads, why) = match hides {
            Hides::Through(beads) => (beads, format!(": the next does not take the {} twice", self.cord(strand))),
            Hides::Clear(beads) => (beads, ", clear of the dangle".to_owned()),
            Hides::Wholly | Hides::Nowhere => {
                return "Take the first beads over the tail as well, until it is covered.".to_owned();
            }
        };
        let flying = flying(self.design.cords[strand.cord].kind);
        format!("Take the first {} over the tail as well, and cut it off there{why}.{flying}", few(beads))
    }

    /// `Take the same hole of each C: the other strands go through the others.`
    fn first_through(self, strand: &Strand) -> String {
        let others = match self.design.strands.len() {
            2 => "the other strand goes through another",
            _ => "the other strands go through the others",
        };
        format!("Take the same hole of each {}: {others}.", self.shared(strand))
    }

    /// `Go through the next hole of each C, from the same end.`
    fn next_through(self, strand: &Strand) -> String {
        format!("Go through the next hole of each {}, from the same end.", self.shared(strand))
    }

    /// The letters of the beads that a strand shares with others.
    fn shared(self, strand: &Strand) -> String {
        let shares = |at: &Index<Bead>| self.design.hole(Shared::Bead(*at), strand).is_some();
        let letters = self.design.beads.indices().filter(shares).map(|at| self.design.beads[at].letter.clone());
        list(&letters.collect::<Vec<_>>())
    }

    /// How the knots are tied that come between all beads, or where the chart says one.
    fn knots(self, strand: &Strand, place: &str, takes: Length) -> String {
        let (cord, takes) = (self.cord(strand), self.units.gauge(takes));
        format!(
            "{place} tie an overhand knot in the {cord}: put an awl or the tip of tweezers in its loop, slide \
             the loop up to the bead with it, and draw the knot tight there. A knot is to take {takes} along the {cord}."
        )
    }

    /// ` K1 comes before any bead: tie it 92 mm from the outside of the first end.`, where the first knot does.
    fn first_knot(self, strand: &Strand) -> String {
        let first = strand.bits().find(|bit| bit.what != What::Gap);
        let posts = Posts::new(self.design, strand);
        let knot = posts.of(Keeps::Knot).next().filter(|_| first.is_some_and(|bit| bit.what == What::Knot));
        knot.map_or_else(String::new, |knot| {
            let (station, from) = (self.ruler(knot.station), from(datum(self.design, strand)));
            format!(" {} comes before any bead: tie it {station} {from}.", knot.name)
        })
    }

    /// ` K2 comes after the last bead: tie it close against that.`, where a knot that the chart says does.
    fn last_knot(self, strand: &Strand) -> String {
        let bits: Vec<_> = strand.bits().filter(|bit| bit.what != What::Gap).collect();
        let follows = matches!(bits.as_slice(), [.., bead, knot] if matches!(bead.what, What::Bead(_)) && knot.what == What::Knot);
        let posts = Posts::new(self.design, strand);
        let knot = posts.of(Keeps::Knot).last().filter(|_| follows);
        knot.map_or_else(String::new, |knot| {
            format!(" {} comes after the last bead: tie it close against that.", knot.name)
        })
    }

    /// `The first 10 beads with the knot after each measure 80 mm.`, to be seen before all are knotted.
    fn first_ten(self, strand: &Strand) -> Option<String> {
        const FEW: usize = 10;
        let is_bead = |bit: &&Bit| matches!(bit.what, What::Bead(_));
        let many = strand.bits().filter(is_bead).count() > 2 * FEW;
        let mut beads = 0;
        let first = strand.bits().take_while(|bit| {
            beads += usize::from(is_bead(bit));
            beads <= FEW
        });
        let length = Length::mm(first.map(Bit::length).sum());
        let told = posts::silent_knot(strand).is_some() && many;
        told.then(|| format!("The first {FEW} beads with the knot after each measure {}.", self.units.fine(length)))
    }

    /// `Besides, 26 petal bead caps.`: the findings among the beads, but for bars that strands share, and the knots
    /// that the chart says.
    fn besides_beads(self, strand: &Strand) -> Option<String> {
        let design = self.design;
        let strung = |at: Index<Finding>| strand.bits().filter(|bit| bit.what == What::Finding(at)).count() as u64;
        let alone = |at: &Index<Finding>| design.strands.len() == 1 || design.findings[*at].bores().is_none();
        let each = design.findings.indices().filter(alone).filter(|at| strung(*at) > 0);
        let knots = Some(posts::knots(strand) as u64).filter(|knots| *knots > 0).map(|knots| count(knots, "knot"));
        let each: Vec<_> = each.map(|at| count(strung(at), self.name(at))).chain(knots).collect();
        (!each.is_empty()).then(|| format!("Besides, {}.", list(&each)))
    }

    /// Where what stays in its place begins, to be seen while it is strung: a knot cannot be moved.
    fn fixed(self, strand: &Strand, posts: &Posts<'_>) -> Option<String> {
        let first =
            posts.all().first().filter(|first| first.keeps == Keeps::Group && strand.settle == Settle::Fixed)?;
        let (station, from) = (self.ruler(first.station), from(datum(self.design, strand)));
        Some(format!("The first of them, {}, starts {station} {from}.", first.name))
    }

    /// Fix the stops at their stations.
    pub(super) fn fix_stops(self, strand: &Strand, stop: Index<Finding>) -> Told {
        let (stop, whose) = (self.name(stop), name(self.design, strand));
        let text = format!(
            "Set each {stop} that is strung on {whose} in its place, and press it flat there with chain-nose pliers."
        );
        let stations = Posts::new(self.design, strand).sentence(Keeps::Stop, self.units);
        let check: Vec<_> = stations.into_iter().chain(["Pull each one: it stays.".to_owned()]).collect();
        Told::new("Fix the stops", text).check(check.join(" "))
    }

    /// Space groups that are spread along the cord.
    pub(super) fn space(self, strand: &Strand) -> Told {
        let cord = self.cord(strand);
        let posts = Posts::new(self.design, strand);
        let groups = posts.groups();
        let told = Told::new("Space", format!("Space {groups} evenly along the {cord}."));
        let check = match (posts.of(Keeps::Group).next(), posts.between_groups()) {
            (Some(first), Some(gap)) => Some(format!(
                "The first group, {}, starts {} {}, and {} of bare {cord} lies between groups.",
                first.name,
                self.ruler(first.station),
                from(datum(self.design, strand)),
                self.units.fine(gap)
            )),
            _ => posts.sentence(Keeps::Group, self.units),
        };
        Told { check, ..told }
    }

    pub(super) fn fix_groups(self, strand: &Strand, crimp: Index<Finding>) -> Told {
        let (name, groups) = (self.name(crimp), Posts::new(self.design, strand).groups());
        let text = format!("Press each {name} of {groups} flat with chain-nose pliers, close against its beads.");
        Told::new("Fix the groups", text).check("No group slides.")
    }
}

/// `65 beads: 55A and 10B.`, or with branches `24 beads on the cord, 4 on the branch: 26A, 1B and 1C.`; of charms alone
/// on a chain how many of them hang.
#[must_use]
pub fn counts(design: &Design, strand: &Strand) -> String {
    let hung = strand.hung().count() as u64;
    if hung > 0 && strand.counts(design).iter().all(|count| *count == 0) {
        return format!("{}.", count(hung, "dangle"));
    }
    let counts = strand.counts(design);
    let strung = design.beads.iter().zip(&counts).filter(|(_, count)| **count > 0);
    let each: Vec<_> = strung.map(|(bead, count)| format!("{count}{}", bead.letter)).collect();
    let all = counts.iter().copied().map(u64::from).sum();
    let on_pin = strand.is_on_pin(design);
    let total = if on_pin { count(all, "bead") } else { total(design.cords[strand.cord].word(), strand, all) };
    let strung = if each.is_empty() { format!("{total}.") } else { format!("{total}: {}.", list(&each)) };
    let strung = strung + &knots_between(strand);
    let tied = in_knots(design, strand).map(|tied| format!(" {tied}")).unwrap_or_default();
    let before = on_strands_before(design, strand, &counts).map(|beads| format!(" {beads}")).unwrap_or_default();
    strung + &tied + &before
}

/// ` With a knot between each bead and the next: 59 knots.`, where the chart does not say them.
fn knots_between(strand: &Strand) -> String {
    match posts::silent_knots(strand).len() as u64 {
        0 => String::new(),
        knots => format!(" With a knot between each bead and the next: {}.", count(knots, "knot")),
    }
}

/// `Of these 9B are on a strand before.`: beads with several holes, which are there once.
fn on_strands_before(design: &Design, strand: &Strand, counts: &Entries<u32, Bead>) -> Option<String> {
    let before = |at: &Index<Bead>| design.hole(Shared::Bead(*at), strand).is_some_and(|hole| hole > 1);
    let beads = design.beads.indices().filter(before);
    let each: Vec<_> = beads.map(|at| format!("{}{}", counts[at], design.beads[at].letter)).collect();
    (!each.is_empty()).then(|| format!("Of these {} are on a strand before.", list(&each)))
}

fn with_needle(needled: Needled, cord: &str) -> String {
    match needled {
        Needled::Own => {
            format!("String with the {cord}'s own needle: that end is the last one, and comes through the beads.")
        }
        Needled::LastEnd => "String with a beading needle on the last end, the long one.".to_owned(),
        Needled::BothEnds => "String with a beading needle that both last ends go through.".to_owned(),
    }
}

const fn in_links(what: InLink) -> &'static str {
    match what {
        InLink::RollLoops => "Roll each loop shut round its link with round-nose pliers.",
        InLink::OpenRings => {
            "With two pairs of chain-nose pliers open each ring sideways, hang in it what the chart says and its link, and close it the same way: no gap shows."
        }
        InLink::OpenLinks => {
            "With two pairs of chain-nose pliers open the first link of each piece of chain sideways, hang it in its link, and close it the same way."
        }
        InLink::Bails => {
            "Begin with what hangs on a bail: slide it on over the end link that is still free, before others hang in its way."
        }
        InLink::Unknown => {
            "How long the links are is not known here: lay the chain along a ruler, and take the link that lies nearest to each \
             place."
        }
    }
}

/// `The knots at its ends are tied round 2A more.`
fn in_knots(design: &Design, strand: &Strand) -> Option<String> {
    let mut beads: BTreeMap<Index<Bead>, u32> = BTreeMap::new();
    strand.in_end_knots(design).for_each(|bead| *beads.entry(bead).or_default() += 1);
    let each: Vec<_> = beads.iter().map(|(bead, count)| format!("{count}{}", design.beads[*bead].letter)).collect();
    (!each.is_empty()).then(|| format!("The knots at its ends are tied round {} more.", list(&each)))
}

/// How many beads there are in all, those on dangles told apart.
fn total(cord: &str, strand: &Strand, all: u64) -> String {
    let number = |is: fn(&What) -> bool| strand.bits().filter(|bit| is(&bit.what)).count() as u64;
    let on_cord = number(|what| matches!(what, What::Bead(_)));
    if all == on_cord {
        return count(all, "bead");
    }
    let meet = strand.meeting().is_some();
    let dangles = match number(|what| matches!(what, What::Dangle(_)) && !what.is_meeting()) {
        0 => String::new(),
        1 => "on the dangle".to_owned(),
        more => format!("on the {more} dangles"),
    };
    let place = match (meet, dangles.is_empty()) {
        (false, _) => dangles,
        (true, true) => "to come where the ends meet".to_owned(),
        (true, false) => format!("{dangles} and to come where the ends meet"),
    };
    if on_cord == 0 {
        return format!("{} {place}", count(all, "bead"));
    }
    format!("{} on the {cord}, {} {place}", count(on_cord, "bead"), all.saturating_sub(on_cord))
}
