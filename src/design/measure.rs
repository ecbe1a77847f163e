//! What a design's parts measure: beaded, bare and cut lengths, spreads, masses, counts.

use crate::trade::usual;
use crate::units::{Length, Mass};

use super::bars::Shared;
use super::entries::{Entries, Index};
use super::finding::Finding;
use super::joins::Part;
use super::model::{Bit, Dangle, End, Model, Rest, Strand, Train, What};
use super::stated::Stated;
use super::stock::Bead;
use crate::pattern::{CordKind, FindingKind, Kind};

/// Cord that a strand lacks where it hangs and that is told: more than loops differ by (an assumption).
pub const TOLD_LACK: Length = Length::mm(2.0);
/// Bare cord that a ruler shows.
pub const LEAST_BARE: Length = Length::mm(1.0);
/// Slack in the round that is told: what is counted in the cut and shows on a ruler.
const LEAST_SLACK: Length = Length::mm(0.5);

impl Strand {
    /// Every bit in order.
    pub fn bits(&self) -> impl Iterator<Item = &Bit> + Clone {
        self.trains.iter().flat_map(|train| &train.bits)
    }

    /// What both of its ends meet in, where they do.
    #[must_use]
    pub fn meeting(&self) -> Option<&Dangle> {
        match &self.trains.last()?.bits.last()?.what {
            What::Dangle(dangle) if dangle.on.is_none() => Some(dangle),
            _ => None,
        }
    }

    /// The branches that hang from it, in order, each kind again and again.
    pub fn dangles(&self) -> impl Iterator<Item = &Dangle> {
        self.bits().filter_map(|bit| match &bit.what {
            What::Dangle(dangle) => Some(dangle),
            _ => None,
        })
    }

    /// The branches that hang from it on a finding.
    pub fn hung(&self) -> impl Iterator<Item = &Dangle> {
        self.dangles().filter(|dangle| dangle.on.is_some())
    }

    /// What may come to lie beyond a station.
    pub fn below(&self, station: f64) -> impl Iterator<Item = &Bit> {
        self.trains.iter().flat_map(Train::placed).filter(move |(at, _)| *at > station).map(|(_, bit)| bit)
    }

    /// Whether beads slide on it: what hangs in the links of a chain does not.
    #[must_use]
    pub fn slides(&self, design: &Model) -> bool {
        let free = |train: &Train| matches!(train.rest, Rest::Free(..));
        design.cords[self.cord].kind != CordKind::Chain && self.trains.iter().any(free)
    }

    /// How many links of chain it is, where the links of its cord are known.
    #[must_use]
    pub fn links(&self, design: &Model) -> Option<u64> {
        let link = design.cords[self.cord].link?;
        // Lengths are finite and below 10 m, links longer than 0.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 0 on")]
        Some((self.finished / link).round() as u64)
    }

    /// The first station in mm from one on at which a link of its chain lies on its face, as the first does; that one, where
    /// its cord is no chain of known links.
    #[must_use]
    pub fn face_from(&self, design: &Model, station: f64) -> f64 {
        let pair = design.cords[self.cord].link.map(|link| 2.0 * link.value());
        pair.map_or(station, |pair| (station / pair - 1e-6).ceil() * pair)
    }

    /// How much cord the beads and all else that is strung take, without spaces.
    #[must_use]
    pub fn beaded(&self) -> Length {
        Length::mm(self.bits().filter(|bit| bit.what != What::Gap).map(Bit::length).sum())
    }

    /// Bare cord between the ends' findings, spaces included.
    #[must_use]
    pub fn bare(&self) -> Length {
        let takes: Length = self.ends.iter().map(|end| end.takes).sum();
        let bare = self.finished - self.beaded() - takes;
        if bare > Length::ZERO { bare } else { Length::ZERO }
    }

    /// Its slack in the round, where that shows on a ruler.
    #[must_use]
    pub fn told_slack(&self) -> Option<Length> {
        Some(self.slack).filter(|slack| *slack >= LEAST_SLACK)
    }

    /// Its length pulled straight, with what its bends take of the cord, where that shows on a ruler.
    #[must_use]
    pub fn pulled(&self) -> Length {
        self.finished + self.told_slack().unwrap_or_default()
    }

    /// Cord in the finished strand: its length with the slack for each leg, and what its knots take up.
    #[must_use]
    pub fn cord_used(&self) -> Length {
        (self.finished + self.slack) * f64::from(self.legs) + self.in_knots()
    }

    /// What to cut: the cord in the finished strand, and the allowance of each end of the cord.
    #[must_use]
    pub fn cut(&self) -> Length {
        self.cord_used() + *self.allowance * 2.0
    }

    /// Cord that an end has beyond what closes it: its allowance less what goes back from the loop, through
    /// what holds it.
    #[must_use]
    pub fn tail(&self, end: &End, design: &Model) -> Length {
        let crimps = end.findings.iter().filter_map(|at| design.findings[*at].crimp());
        let back = end.bight.unwrap_or_default() + crimps.map(|crimp| crimp.length).sum();
        (*self.allowance - back).max(Length::ZERO)
    }

    /// Likely spread of the beaded length, plus or minus: the beads' tolerances, read as two
    /// standard deviations each, added in squares.
    #[must_use]
    pub fn spread(&self, design: &Model) -> Length {
        let squares = self.tolerances(design).fold(0.0, |sum, tolerance| sum + tolerance * tolerance);
        Length::mm(squares.sqrt())
    }

    /// Spread of the beaded length if every bead were off by its whole tolerance.
    #[must_use]
    pub fn worst_spread(&self, design: &Model) -> Length {
        Length::mm(self.tolerances(design).fold(0.0, |sum, tolerance| sum + tolerance))
    }

    /// What the beads add if the whole lot is off one way, where that is more than half a bead of the usual
    /// length: then it changes how many fit.
    #[must_use]
    pub fn bias(&self, design: &Model) -> Option<Bias> {
        let lengths = self.bits().filter(|bit| matches!(bit.what, What::Bead(_))).map(Bit::length);
        let (count, sum) = lengths.fold((0.0, 0.0), |(count, sum), length| (count + 1.0, sum + length));
        let each = || self.tolerances(design).filter(|tolerance| *tolerance > 0.0).map(Length::mm);
        let least = each().reduce(Length::min)?;
        let most = each().fold(least, Length::max);
        let bias = Bias { each: [least, most], by: self.worst_spread(design) };
        (bias.by.value() > 0.5 * sum / count).then_some(bias)
    }

    /// Those tolerances in mm.
    fn tolerances<'a>(&'a self, design: &'a Model) -> impl Iterator<Item = f64> + 'a {
        self.told_tolerances(design).map(|tolerance| tolerance.value())
    }

    /// The tolerances of the beads that the row's length depends on: not of those that lie inside a neighbour.
    fn told_tolerances<'a>(&'a self, design: &'a Model) -> impl Iterator<Item = Stated<Length>> + 'a {
        let of = move |bits: &'a [Bit]| {
            let bead = move |at: usize| bits.get(at).and_then(|bit| bit.what.bead()).map(|bead| &design.beads[bead]);
            (0..bits.len()).filter_map(move |at| {
                let one = bead(at)?;
                let mut beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten().filter_map(bead);
                (!beside.any(|other| one.slips_into(other))).then_some(one.tolerance)
            })
        };
        self.trains.iter().flat_map(move |train| of(&train.bits))
    }

    /// Whether the pattern does not say all of those.
    #[must_use]
    pub fn assumes_tolerances(&self, design: &Model) -> bool {
        self.told_tolerances(design).any(|tolerance| tolerance.is_assumed())
    }

    /// How many of each bead, dangles included.
    #[must_use]
    pub fn counts(&self, design: &Model) -> Entries<u32, Bead> {
        let mut counts = vec![0; design.beads.len()].into();
        self.bits().for_each(|bit| count(bit, &mut counts));
        counts
    }

    /// The beads that the knots at its ends are tied round.
    pub fn in_end_knots<'a>(&'a self, design: &'a Model) -> impl Iterator<Item = Index<Bead>> + 'a {
        self.ends.iter().flat_map(|end| &end.findings).filter_map(|index| design.findings[*index].knotted_bead())
    }

    /// How wide its cord is, legs side by side.
    #[must_use]
    pub fn cord_width(&self, design: &Model) -> Length {
        design.cords[self.cord].diameter * f64::from(self.legs)
    }

    /// How wide a knot in it is, across its cord.
    #[must_use]
    pub fn knot_width(&self, design: &Model) -> Length {
        self.cord_width(design) * usual::KNOT_WIDTH
    }

    /// How stiff its cord is, all legs together: its E I in N mm².
    #[must_use]
    pub fn stiffness(&self, design: &Model) -> f64 {
        *design.cords[self.cord].stiffness * f64::from(self.legs)
    }

    /// Mass of its cord by the metre, all legs together.
    #[must_use]
    pub fn cord_mass(&self, design: &Model) -> Mass {
        *design.cords[self.cord].mass_per_metre * f64::from(self.legs)
    }

    /// Mass of what is strung, with the cord that its knots take up, of the end findings and the other cord.
    #[must_use]
    pub fn mass(&self, design: &Model) -> Mass {
        let strung: f64 = self.bits().map(|bit| bit.mass).sum();
        let ends: Mass =
            self.ends.iter().flat_map(|end| &end.findings).map(|index| *design.findings[*index].mass).sum();
        let knotted: Mass = self.in_end_knots(design).map(|bead| *design.beads[bead].mass).sum();
        let one = *design.cords[self.cord].mass_per_metre;
        let cord = self.cord_mass(design) * ((self.finished + self.slack).value() / 1000.0)
            + one * (self.end_take_up().value() / 1000.0);
        Mass::grams(strung) + ends + knotted + cord
    }
}

/// What a lot of beads that are all too large, or all too small, adds to a row or takes from it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Bias {
    /// The least and the most of the beads' tolerances.
    pub each: [Length; 2],
    /// All of them together.
    pub by: Length,
}

fn count(bit: &Bit, counts: &mut Entries<u32, Bead>) {
    match &bit.what {
        What::Bead(bead) => counts[*bead] += 1,
        What::Dangle(dangle) => dangle.bits.iter().for_each(|bit| count(bit, counts)),
        What::Gap | What::Knot | What::Finding(_) => {}
    }
}

impl Train {
    /// Its bits, each with the last station at which its end may be.
    fn placed(&self) -> impl Iterator<Item = (f64, &Bit)> {
        let mut at = match self.rest {
            Rest::At(start) | Rest::Free(_, start) => start,
        };
        self.bits.iter().map(move |bit| {
            at += bit.length();
            (at, bit)
        })
    }

    /// Station and drop of every branch, with the train as far along its cord as it goes.
    fn branches(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.placed().filter_map(|(end, bit)| match &bit.what {
            What::Dangle(dangle) => Some((end - bit.after, dangle.drop)),
            _ => None,
        })
    }
}

impl Dangle {
    /// How far below the cord each of the branch's bits has its centre, in mm.
    #[must_use]
    pub fn levels(&self, design: &Model) -> Vec<f64> {
        let strung: f64 = self.bits.iter().map(Bit::length).sum();
        let foot = self.on.map_or(Length::ZERO, |on| design.findings[on].foot());
        let mut below = self.drop - strung - foot.value();
        let level = |bit: &Bit| {
            let level = below + bit.before;
            below += bit.length();
            level
        };
        self.bits.iter().map(level).collect()
    }
}

impl Model {
    /// What both ends of its strand meet in, where they do.
    #[must_use]
    pub fn meeting(&self) -> Option<&Dangle> {
        self.strands.last()?.meeting()
    }

    /// What hangs where the ends of its strand meet, and what both of them go through there.
    #[must_use]
    pub fn met(&self) -> (Vec<&Bit>, Vec<&Bit>) {
        let hangs =
            |bit: &&Bit| matches!(bit.what, What::Finding(at) if self.findings[at].kind() != FindingKind::BeadCap);
        self.meeting().into_iter().flat_map(|meeting| &meeting.bits).partition(hangs)
    }

    /// How many of each bead in one copy of the piece, those that knots are tied round included.
    #[must_use]
    pub fn counts(&self) -> Entries<u32, Bead> {
        let mut total: Entries<u32, Bead> = vec![0; self.beads.len()].into();
        for strand in &self.strands {
            total.iter_mut().zip(strand.counts(self)).for_each(|(total, count)| *total += count);
            strand.in_end_knots(self).for_each(|bead| total[bead] += 1);
        }
        for (shared, _, group) in self.shared() {
            if let Shared::Bead(bead) = shared {
                let total = &mut total[bead];
                *total -= u32::try_from(group.again()).unwrap_or(*total);
            }
        }
        total
    }

    /// The bead caps among its strands' beads, each sort once.
    #[must_use]
    pub fn strung_caps(&self) -> Vec<Index<Finding>> {
        let strung = |at: &Index<Finding>| {
            let is = |bit: &Bit| bit.what == What::Finding(*at);
            self.strands.iter().any(|strand| strand.bits().any(is))
        };
        let caps = self.findings.entries().filter(|(_, finding)| finding.kind() == FindingKind::BeadCap);
        caps.map(|(at, _)| at).filter(strung).collect()
    }

    /// Length that the closure adds: at its shortest and at its longest.
    #[must_use]
    pub fn closure_length(&self) -> (Length, Length) {
        self.closure.length()
    }

    /// Whether one of its strands is shorter than others, by what a ruler shows.
    #[must_use]
    pub fn has_shortest(&self) -> bool {
        const LEAST: f64 = 0.5;
        let lengths = || self.strands.iter().map(|strand| self.reach_of(strand).value());
        lengths().fold(0.0, f64::max) - lengths().fold(f64::INFINITY, f64::min) > LEAST
    }

    /// The piece's length, along the cord of its shortest strand: closed as short and as long as it goes; open from end to
    /// end. Of earrings, from the top of the closure to the lowest point.
    #[must_use]
    pub fn piece_length(&self) -> (Length, Length) {
        let (least, most) = self.closure_length();
        let lengths = self.strands.iter().map(|strand| (self.reach_of(strand) + strand.slack).value());
        let length = Length::mm(match self.heading.kind {
            Kind::Earrings => self.strands.iter().map(|strand| self.depth(strand)).fold(0.0, f64::max),
            _ => lengths.reduce(f64::min).unwrap_or_default(),
        });
        let ends = length + self.free_wire();
        (ends + least, ends + most)
    }

    /// The wire of rings that end an open piece, in whose insides nothing hangs.
    fn free_wire(&self) -> Length {
        let ends = [self.closure.left(), self.closure.right()].map(<[_]>::last);
        let open = ends.into_iter().flatten().filter(|_| self.closure.open().is_some());
        open.filter_map(|part| self.findings[part.finding].ring()).map(|ring| *ring.wire).sum()
    }

    /// How far an earring's strand reaches below the closure, branches included, in mm. A loop hangs
    /// half as deep as its strand is long, less what its beads hold it open; what slides hangs as low as it can.
    fn depth(&self, strand: &Strand) -> f64 {
        let whole = strand.finished.value();
        let branches = || strand.trains.iter().flat_map(Train::branches);
        if !self.closure.loops() {
            return branches().map(|(station, drop)| station + drop).fold(whole, f64::max);
        }
        let opened = self.opened(strand);
        let below = |station: f64| station.min(whole - station) - opened;
        branches().map(|(station, drop)| below(station) + drop).fold(whole / 2.0 - opened, f64::max)
    }

    /// Mass of one copy: strands and closure.
    #[must_use]
    pub fn mass(&self) -> Mass {
        let closure = self.closure.parts().map(|part| self.part_mass(part));
        self.strands.iter().map(|strand| strand.mass(self)).sum::<Mass>() + closure.sum()
    }

    /// Mass of one copy, assumed where that of anything in it is.
    #[must_use]
    pub fn told_mass(&self) -> Stated<Mass> {
        let mass = self.mass();
        if self.assumed_masses().next().is_none() { Stated::Stated(mass) } else { Stated::Assumed(mass) }
    }

    /// The names of beads, cords and findings whose mass the pattern does not say, in that order.
    pub fn assumed_masses(&self) -> impl Iterator<Item = &str> {
        let beads = self.beads.iter().filter(|bead| bead.mass.is_assumed()).map(|bead| &bead.name);
        let cords = self.cords.iter().filter(|cord| cord.mass_per_metre.is_assumed()).map(|cord| &cord.name);
        let findings = self.findings.iter().filter(|finding| finding.mass.is_assumed()).map(|finding| &finding.name);
        beads.chain(cords).chain(findings).map(String::as_str)
    }

    /// Mass of a part of the closure; of chain, that of what is cut.
    #[must_use]
    pub fn part_mass(&self, part: &Part) -> Mass {
        let one = *self.findings[part.finding].mass;
        part.cut.map_or(one, |cut| one * (cut.value() / 1000.0))
    }
}
