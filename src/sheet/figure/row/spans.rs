//! Spans: a strand from end to end, one thing after another, with the room that each takes on paper.
//! Lengths in mm on paper.

use crate::art::Deal;
use crate::design::{Bar, Bead, Bit, Dangle, Design, End, Finding, Index, Rest, Strand, What};
use crate::paint::style;
use crate::pattern::CordKind;
use crate::sheet::figure::fastened::Fastened;
use crate::sheet::figure::{self, ends};
use crate::trade::usual;
use crate::units::Length;

/// Longest bare cord in mm that is drawn at actual size.
pub const LONG: f64 = 45.0;
/// Length in mm at which cord that is cut short is drawn.
const CUT_SHORT: f64 = 32.0;
/// Bare cord below this is none, in mm.
const NONE: f64 = 0.05;
/// Most in mm that a drawing may reach to either side, up and down, and most that it may take of the
/// cord: what the smallest page has room for in one line.
const MOST: Reach = Reach { aside: 25.0, above: 40.0, below: 80.0 };
const MOST_LENGTH: f64 = 60.0;
/// Least that a finding reaches to either side along the cord, in mm.
const LEAST_FINDING: f64 = 1.5;
/// How far in mm a branch reaches above the cord, where it hangs on, and below its foot.
const BRANCH_EDGE: f64 = 1.0;
/// Most in mm that what a branch hangs on takes to either side.
const MOST_HANGER: f64 = 4.0;
/// Between which lengths in mm a finding is taken for as broad as it is long, where the pattern does not say its breadth.
const UNSAID: [f64; 2] = [3.0, 10.0];
/// Half the breadth of a loop in cord: a share of its length, and so many mm.
const LOOP: (f64, f64) = (0.3, 1.0);
/// Room in mm between beads and what hangs below them.
const BELOW_BEADS: f64 = 1.8;

/// How far a drawing reaches from its centre, or of an end from the cord.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reach {
    /// To either side along the cord.
    pub aside: f64,
    /// Upward.
    pub above: f64,
    /// Downward.
    pub below: f64,
}

impl Reach {
    const fn round(half: f64) -> Self {
        Self { aside: half, above: half, below: half }
    }

    /// Enlarged about the centre.
    #[must_use]
    pub fn times(self, scale: f64) -> Self {
        Self { aside: self.aside * scale, above: self.above * scale, below: self.below * scale }
    }

    /// The scale, 1 where there is room for it, at which a thing of this reach and a length fits.
    #[must_use]
    pub fn scale(self, length: f64) -> f64 {
        let share = |most: f64, size: f64| if size > most { most / size } else { 1.0 };
        let whole = share(MOST.aside, self.aside).min(share(MOST.above, self.above));
        whole.min(share(MOST.below, self.below)).min(share(MOST_LENGTH, length))
    }
}

/// What a span shows.
#[derive(Clone, Copy, Debug)]
pub enum Spanned<'a> {
    /// The first end (0) or the last (1).
    End(usize),
    /// Something strung, and what its place is dealt.
    Bit(&'a Bit, Deal),
    /// Beads of a run that are left out of the drawing: how many of which.
    More(u32, Index<Bead>),
    /// Bare cord.
    Bare {
        /// Whether beads slide along it, so that its length is not fixed.
        loose: bool,
    },
}

/// A stretch of the strand.
#[derive(Clone, Copy, Debug)]
pub struct Span<'a> {
    /// What is there.
    pub thing: Spanned<'a>,
    /// Length of cord from the outside of the first end to its start.
    pub from: f64,
    /// Length of cord that it takes.
    pub cord: f64,
    /// From its start to its centre on paper.
    pub before: f64,
    /// From its centre to its end on paper.
    pub after: f64,
    /// Where it starts on its line, once it stands there.
    pub x: f64,
    /// How far its drawing reaches.
    pub reach: Reach,
    /// At which it is drawn: 1, or less where no page has room.
    pub scale: f64,
    /// How far below the cord a branch is drawn, where that is clear of the beads beside it.
    pub hang: Option<f64>,
    /// Of a bead, which one of those on the cord it is, from 1.
    pub number: Option<u32>,
    /// Of a bead, how many of its kind stand before it in its run, and how many the run has.
    pub run: (u32, u32),
    /// Whether a repeat begins with it, or what comes after the last of one.
    pub opens: bool,
}

impl<'a> Span<'a> {
    fn new(thing: Spanned<'a>, from: f64, cord: f64) -> Self {
        let half = cord / 2.0;
        let reach = Reach { aside: half, ..Reach::default() };
        let (x, scale, hang, number, run, opens) = (0.0, 1.0, None, None, (0, 0), false);
        Self { thing, from, cord, before: half, after: half, x, reach, scale, hang, number, run, opens }
    }

    /// Bare cord from a station on, so long.
    pub fn bare(from: f64, cord: f64, loose: bool) -> Self {
        let span = Self::new(Spanned::Bare { loose }, from, cord);
        if cord > LONG || loose && cord > CUT_SHORT { span.drawn_with(CUT_SHORT / cord.max(NONE)) } else { span }
    }

    /// An end of a strand at a station.
    pub fn end((side, fastened): (usize, Fastened), from: f64, strand: &Strand, design: &Design) -> Self {
        let end = &strand.ends[side];
        let (reach, length) = of_end(end, fastened, strand, design);
        let half = 0.5 * length;
        Self { reach, before: half, after: half, ..Self::new(Spanned::End(side), from, end.takes.value()) }.fitted()
    }

    /// Something strung at a station.
    pub fn bit((bit, deal): (&'a Bit, Deal), from: f64, strand: &Strand, design: &Design) -> Self {
        let (reach, span) = (on_strand(bit, strand, design), Self::new(Spanned::Bit(bit, deal), from, bit.length()));
        Self { reach, before: bit.before, after: bit.after, ..span }.fitted()
    }

    /// Drawn smaller where no page has room for it.
    fn fitted(self) -> Self {
        let scale = self.reach.scale(self.length());
        Self { scale, ..self.drawn_with(scale) }
    }

    fn drawn_with(self, scale: f64) -> Self {
        Self { before: self.before * scale, after: self.after * scale, reach: self.reach.times(scale), ..self }
    }

    /// Bare cord on paper no longer than that: its end stays where it is, cut short.
    #[must_use]
    pub fn cut_short(self, length: f64) -> Self {
        if self.is_bare() && self.length() > length { self.drawn_with(length / self.length()) } else { self }
    }

    /// The branch that it shows, if it is one.
    #[must_use]
    pub const fn branch(&self) -> Option<&'a Dangle> {
        match self.thing {
            Spanned::Bit(Bit { what: What::Dangle(dangle), .. }, _) => Some(dangle),
            _ => None,
        }
    }

    /// Length on paper.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.before + self.after
    }

    /// Where its centre stands on its line.
    #[must_use]
    pub fn centre(&self) -> f64 {
        self.x + self.before
    }

    /// Where it ends on its line.
    #[must_use]
    pub fn end_x(&self) -> f64 {
        self.x + self.length()
    }

    /// Whether it is drawn shorter or longer than it is.
    #[must_use]
    pub fn is_broken(&self) -> bool {
        (self.length() - self.cord).abs() > style::ROUNDED
    }

    /// Whether the ruler runs along it: it is drawn as long as it is, and whole.
    #[must_use]
    pub fn is_measured(&self) -> bool {
        !self.is_broken() && self.left_out() == 0
    }

    /// Index of its bead, if it is one.
    #[must_use]
    pub const fn bead(&self) -> Option<Index<Bead>> {
        match self.thing {
            Spanned::Bit(bit, _) => bit.what.bead(),
            Spanned::More(_, bead) => Some(bead),
            Spanned::End(_) | Spanned::Bare { .. } => None,
        }
    }

    /// How many beads of a run it leaves out.
    #[must_use]
    pub const fn left_out(&self) -> u32 {
        if let Spanned::More(count, _) = self.thing { count } else { 0 }
    }

    /// Whether it is bare cord.
    #[must_use]
    pub const fn is_bare(&self) -> bool {
        matches!(self.thing, Spanned::Bare { .. })
    }

    /// Whether it is a strung finding that faces what comes after it, or what stands before it.
    pub fn faces(&self, onward: bool) -> bool {
        matches!(self.thing, Spanned::Bit(Bit { what: What::Finding(_), turned, .. }, _) if *turned == onward)
    }

    /// Whether it is a knot.
    #[must_use]
    pub fn is_knot(&self) -> bool {
        matches!(self.thing, Spanned::Bit(Bit { what: What::Knot, .. }, _))
    }

    /// How many beads it shows, those of a branch included.
    #[must_use]
    pub fn beads(&self) -> usize {
        match self.thing {
            Spanned::Bit(bit, _) => beads(bit),
            Spanned::End(_) | Spanned::More(..) | Spanned::Bare { .. } => 0,
        }
    }
}

fn beads(bit: &Bit) -> usize {
    match &bit.what {
        What::Bead(_) => 1,
        What::Dangle(dangle) => dangle.bits.iter().map(beads).sum(),
        What::Gap | What::Knot | What::Finding(_) => 0,
    }
}

/// A strand's spans, from the first end to the last, its trains starting at stations; what the ends meet in is none.
#[must_use]
pub fn spans<'a>(design: &'a Design, strand: &'a Strand, starts: &[f64], fastened: [Fastened; 2]) -> Vec<Span<'a>> {
    let bare = |from: f64, to: f64, loose| (to - from > NONE).then(|| Span::bare(from, to - from, loose));
    let end = strand.finished.value() - strand.ends[1].takes.value();
    let mut spans = vec![Span::end((0, fastened[0]), 0.0, strand, design)];
    let (mut from, mut before) = (strand.ends[0].takes.value(), None);
    for (dealt, station, sliding) in strung(design, strand, starts) {
        spans.extend(bare(from, station, before != sliding));
        spans.push(Span::bit(dealt, station, strand, design));
        (from, before) = (station + dealt.0.length(), sliding);
    }
    spans.extend(bare(from, end, before.is_some()));
    spans.push(Span::end((1, fastened[1]), end, strand, design));
    count(&mut spans);
    lower(&mut spans, design);
    spans
}

/// What is strung, each with what its place is dealt and its station, and with its train where that slides.
fn strung<'a>(design: &Design, strand: &'a Strand, starts: &[f64]) -> Vec<((&'a Bit, Deal), f64, Option<usize>)> {
    let (mut all, slides) = (Vec::new(), strand.slides(design));
    for (train, (one, start)) in strand.trains.iter().zip(starts).enumerate() {
        let sliding = (slides && matches!(one.rest, Rest::Free(..))).then_some(train);
        let mut station = *start;
        for (at, bit) in one.bits.iter().enumerate() {
            if bit.what != What::Gap && !bit.what.is_meeting() {
                all.push(((bit, Deal::of(&strand.name, train, at)), station, sliding));
            }
            station += bit.length();
        }
    }
    all
}

/// Numbers the beads, and within their runs; knots between beads of a kind do not end a run.
fn count(spans: &mut [Span<'_>]) {
    let beads = spans.iter_mut().filter(|span| span.bead().is_some());
    beads.zip(1..).for_each(|(span, number)| span.number = Some(number));
    let strung: Vec<usize> = (0..spans.len()).filter(|at| !spans[*at].is_knot()).collect();
    let bead = |at: &usize, spans: &[Span<'_>]| spans[*at].bead();
    let kinds: Vec<_> = strung.iter().map(|at| (*at, bead(at, spans))).collect();
    for run in kinds.chunk_by(|one, next| one.1 == next.1).filter(|run| run[0].1.is_some()) {
        let total = u32::try_from(run.len()).unwrap_or(u32::MAX);
        (0..).zip(run).for_each(|(before, (at, _))| spans[*at].run = (before, total));
    }
}

/// Lowers all branches alike where what is strung on one would lie over what is strung beside it.
fn lower(spans: &mut [Span<'_>], design: &Design) {
    let below = |at: usize| spans.get(at).filter(|span| span.branch().is_none()).map_or(0.0, |span| span.reach.below);
    let beside = |at: usize| at.checked_sub(1).map_or(0.0, below).max(below(at + 1));
    let crowded = |at: &usize| {
        let span = &spans[*at];
        let is_over = |branch: &Dangle| top(branch, design) * span.scale < beside(*at);
        2.0 * span.reach.aside > span.length() && span.branch().is_some_and(is_over)
    };
    let hang = (0..spans.len()).filter(crowded).map(beside).fold(0.0, f64::max);
    if hang > 0.0 {
        for span in spans.iter_mut().filter(|span| span.branch().is_some()) {
            span.hang = Some(hang + BELOW_BEADS);
            span.reach.below += hang + BELOW_BEADS;
        }
    }
}

/// How far below the cord what is strung on a branch begins.
fn top(branch: &Dangle, design: &Design) -> f64 {
    let first = branch.levels(design).first().zip(branch.bits.first()).map(|(level, bit)| level - bit.before);
    first.unwrap_or(branch.drop)
}

/// How far the middle of a bit that strands share is drawn below this one's cord: the outer strands lie
/// below the inner ones.
pub fn below(bit: &Bit, strand: &Strand, design: &Design) -> f64 {
    figure::middle(bit, strand, design).unwrap_or_default()
}

/// The reach of a bit on a strand.
fn on_strand(bit: &Bit, strand: &Strand, design: &Design) -> Reach {
    if bit.what == What::Knot {
        return Reach { aside: bit.length() / 2.0, ..Reach::round(half_knot(strand, design)) };
    }
    let (reach, below) = (of_bit(bit, design), below(bit, strand, design));
    Reach { above: reach.above - below, below: reach.below + below, ..reach }
}

/// The reach of a bit.
fn of_bit(bit: &Bit, design: &Design) -> Reach {
    let length = bit.length() / 2.0;
    match &bit.what {
        What::Bead(bead) => {
            let along = design.beads[*bead].along.value() / 2.0;
            Reach { aside: along.max(length), ..Reach::round(half(bit, design)) }
        }
        What::Gap | What::Knot => Reach { aside: length, ..Reach::default() },
        What::Finding(_) => Reach { aside: length.max(LEAST_FINDING), ..Reach::round(half(bit, design)) },
        What::Dangle(dangle) => of_dangle(dangle, design),
    }
}

fn of_dangle(dangle: &Dangle, design: &Design) -> Reach {
    let aside = dangle.bits.iter().map(|bit| half(bit, design)).fold(hanger(dangle, design), f64::max);
    Reach { aside, above: BRANCH_EDGE, below: dangle.drop + BRANCH_EDGE }
}

/// Half the breadth of what hangs on a branch.
pub fn half(bit: &Bit, design: &Design) -> f64 {
    match bit.what {
        What::Bead(bead) => design.beads[bead].across.value().max(design.beads[bead].thick.value()) / 2.0,
        What::Finding(index) => half_breadth(&design.findings[index]),
        What::Gap | What::Knot | What::Dangle(_) => 0.0,
    }
}

/// Half the breadth of what a branch hangs on.
fn hanger(dangle: &Dangle, design: &Design) -> f64 {
    dangle.on.map_or(0.0, |on| half_breadth(&design.findings[on]).min(MOST_HANGER))
}

/// Half of a finding's breadth across the cord; where the pattern does not say it, what art draws
/// is no broader.
fn half_breadth(finding: &Finding) -> f64 {
    const WALLS: Length = Length::mm(2.0);
    let inside = finding.inside().unwrap_or_default() + WALLS;
    let sizes = [finding.outside(), finding.mouth(), Some(inside), finding.bar().map(Bar::breadth)];
    let length = finding.along().value();
    let unsaid = if finding.outside().is_some() { 0.0 } else { length.clamp(UNSAID[0], UNSAID[1]) };
    sizes.into_iter().flatten().map(Length::value).fold(unsaid, f64::max) / 2.0
}

/// Half the breadth of a strand's knots.
fn half_knot(strand: &Strand, design: &Design) -> f64 {
    strand.knot_width(design).value() / 2.0
}

/// The reach of an end of a strand and the length that it is drawn with.
fn of_end(end: &End, fastened: Fastened, strand: &Strand, design: &Design) -> (Reach, f64) {
    let half = end.findings.iter().map(|index| half_breadth(&design.findings[*index]));
    let knot = if end.findings.is_empty() { half_knot(strand, design) } else { 0.0 };
    let half = half.fold(end.bight.unwrap_or_default().value().mul_add(LOOP.0, LOOP.1).max(knot), f64::max);
    if strand.is_turned(end, design) {
        let outside = (usual::TURNED + design.cords[strand.cord].diameter * 2.0).value();
        return (Reach::round(outside / 2.0), outside);
    }
    let has_tail = matches!(fastened, Fastened::Plain) && design.cords[strand.cord].kind != CordKind::Chain;
    let length = if has_tail && end.findings.is_empty() { ends::TAIL } else { end.takes.value() };
    (Reach { aside: length / 2.0, above: half, below: half }, length)
}
