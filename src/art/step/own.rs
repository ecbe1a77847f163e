//! What is the piece's own in a drawing: its beads and findings as the page's stencils draw them, those of a row all at one
//! scale.

use std::f64::consts::{FRAC_PI_2, PI};

use super::{EDGE, ROOM};
use crate::art::Stencils;
use crate::art::pen::{METAL, metal, ways};
use crate::design::{Bead, Bit, Crimp, Finding, Index, What};
use crate::geometry::{Extent, Point};
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Rgb};
use crate::paint::outline::rounded_rect;
use crate::pattern::FindingKind;
use crate::steps::Cast;

/// How many times as large as they are things are drawn at most.
const ENLARGED: f64 = 3.0;
/// How far below beads their letters stand.
const BELOW: f64 = 2.5;
/// How broad a crimp is drawn that two cords are seen to go through.
pub const CRIMP: f64 = 3.2;

/// What a drawing shows of the piece, and with what it is drawn.
#[derive(Clone, Copy)]
pub struct Props<'a> {
    pub stencils: &'a Stencils<'a>,
    pub cast: &'a Cast,
}

/// How large a row is drawn: so many of its first are at most so long together, and none is broader than the most.
/// That a cord or two are seen to go through, beads are no narrower than the least, though fewer have room then. Lengths in mm.
#[derive(Clone, Copy)]
pub struct RowRoom {
    pub count: usize,
    pub long: f64,
    pub broad: [f64; 2],
}

/// A row, and by which factor it is drawn.
#[derive(Clone, Copy)]
pub struct OwnRow<'a> {
    stencils: &'a Stencils<'a>,
    bits: &'a [Bit],
    pub scale: f64,
}

impl<'a> Props<'a> {
    /// What stands in one of the rows.
    pub fn bits(self, row: usize) -> &'a [Bit] {
        self.cast.rows.get(row).map_or(&[][..], Vec::as_slice)
    }

    /// The beads of a row.
    pub fn beads(self, row: usize) -> Vec<Bit> {
        self.bits(row).iter().filter(|bit| bit.what.bead().is_some()).cloned().collect()
    }

    /// One of the rows.
    pub fn row(self, row: usize, fit: RowRoom) -> OwnRow<'a> {
        self.fitted(self.bits(row), fit)
    }

    /// The same at a scale.
    pub fn scaled(self, row: usize, scale: f64) -> OwnRow<'a> {
        OwnRow { stencils: self.stencils, bits: self.bits(row), scale }
    }

    /// A row at the scale at which it fits.
    pub fn fitted<'b>(self, bits: &'b [Bit], RowRoom { count, long, broad: [least, most] }: RowRoom) -> OwnRow<'b>
    where
        'a: 'b,
    {
        let row = OwnRow { stencils: self.stencils, bits, scale: 1.0 };
        let first = bits.iter().take(count);
        let length: f64 = first.clone().map(Bit::length).sum();
        let breadths: Vec<_> = first.map(|bit| row.breadth(bit)).filter(|breadth| *breadth > 0.0).collect();
        let broadest = breadths.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
        let scale = (most / broadest).min(long / length.max(f64::MIN_POSITIVE)).min(ENLARGED);
        OwnRow { scale: scale.max((least / broadest).min(ENLARGED)), ..row }
    }

    /// The first finding of a kind.
    pub fn of_kind(self, kind: FindingKind) -> Option<Index<Finding>> {
        let findings = &self.stencils.design().findings;
        self.cast.findings.iter().copied().find(|at| findings[*at].kind() == kind)
    }

    /// The colour of a finding's metal, and of that of none.
    pub fn metal(self, finding: Option<Index<Finding>>) -> Rgb {
        finding.map_or(METAL, |at| self.stencils.metal(at))
    }

    /// The factor by which none of some kinds is longer or broader than so much.
    pub fn common(self, kinds: &[Index<Bead>], [long, broad]: [f64; 2]) -> f64 {
        let beads = kinds.iter().map(|kind| &self.stencils.design().beads[*kind]);
        beads.map(|bead| (long / bead.along.value()).min(broad / bead.across.value())).fold(ENLARGED, f64::min)
    }

    /// A bead about a middle, so long and so broad at most, and the factor by which it is drawn.
    pub fn kind(self, kind: Index<Bead>, at: Point, most: [f64; 2]) -> (Mark, f64) {
        let scale = self.common(&[kind], most);
        (self.stencils.bead(kind, at, 0.0, scale), scale)
    }

    /// The crimp that is handled, or the first that is strung.
    fn crimp(self) -> Option<&'a Crimp> {
        self.stencils.design().findings[self.crimp_at()?].crimp()
    }

    /// Which that is.
    pub fn crimp_at(self) -> Option<Index<Finding>> {
        let findings = &self.stencils.design().findings;
        let strung = self.bits(0).iter().filter_map(|bit| match bit.what {
            What::Finding(at) => Some(at),
            _ => None,
        });
        self.cast.findings.iter().copied().chain(strung).find(|at| findings[*at].crimp().is_some())
    }

    /// How long a crimp is drawn that is [`CRIMP`] broad.
    pub fn crimp_length(self) -> f64 {
        self.crimp().map_or(3.4, |crimp| (CRIMP * crimp.length.value() / crimp.outside.value()).clamp(2.6, 4.6))
    }

    /// A crimp from the left to the right edge along a level, two ways of cord through it.
    pub fn crimp_between(self, [left, right]: [f64; 2], level: f64) -> Vec<Mark> {
        let tube = metal(rounded_rect(Point::new(left, level - 0.5 * CRIMP), right - left, CRIMP, 0.5));
        vec![tube, ways([left + 0.2, right - 0.2], [level - 0.7, level + 0.7])]
    }

    /// The beads beside such a crimp, as large as they are against it as far as they have room: the first so long at most,
    /// and two cords are seen to go through it.
    pub fn beside_crimp(self, count: usize, long: f64) -> OwnRow<'a> {
        const BROAD: [f64; 2] = [2.8, 7.0];
        let fitted = self.row(0, RowRoom { count: 1, long, broad: BROAD });
        let to_crimp = self.crimp().map_or(fitted.scale, |crimp| CRIMP / crimp.outside.value());
        let least = BROAD[0] / (fitted.first(1).broadest() / fitted.scale).max(f64::MIN_POSITIVE);
        let row = self.scaled(0, to_crimp.max(least).min(fitted.scale));
        let within = row.within(long).count().clamp(1, count);
        row.first(within)
    }

    /// How long and how broad a pressed crimp is drawn beside things at a scale.
    pub fn pressed_crimp(self, scale: f64) -> [f64; 2] {
        const LEAST: f64 = 1.5;
        let size = |crimp: &Crimp| [crimp.length.value() * scale, 0.8 * crimp.outside.value() * scale];
        self.crimp().map_or([2.4, 2.2], size).map(|size| size.max(LEAST))
    }

    /// A finding from a point outward along an angle, as large as a room allows in which it is so long and so broad; and
    /// the factor by which it is drawn.
    pub fn finding(self, index: Index<Finding>, from: Point, angle: f64, room: [f64; 2]) -> (Mark, f64) {
        let extent = self.extent(index).unwrap_or_default();
        let scale = (room[0] / extent.width()).min(room[1] / extent.height()).min(ENLARGED);
        (self.stencils.finding(index, from, angle, scale), scale)
    }

    /// The box round a finding that reaches outward to the right from the origin, at actual size.
    pub fn extent(self, index: Index<Finding>) -> Option<Extent> {
        self.stencils.bounds(&self.stencils.finding(index, Point::ORIGIN, 0.0, 1.0))
    }
}

impl<'a> OwnRow<'a> {
    /// What comes after so many.
    pub fn after(self, count: usize) -> Self {
        Self { bits: self.bits.get(count..).unwrap_or_default(), ..self }
    }

    /// The first so many.
    pub fn first(self, count: usize) -> Self {
        Self { bits: &self.bits[..count.min(self.bits.len())], ..self }
    }

    /// As many of the first as have room in so much.
    pub fn within(self, room: f64) -> Self {
        const ROUNDING: f64 = 1e-6;
        let mut long = 0.0;
        let fits = self.bits.iter().take_while(|bit| {
            long += bit.length() * self.scale;
            long <= room + ROUNDING
        });
        self.first(fits.count())
    }

    /// How many there are.
    pub const fn count(self) -> usize {
        self.bits.len()
    }

    /// The same, if there is any.
    pub fn some(self) -> Option<Self> {
        Some(self).filter(|row| row.count() > 0)
    }

    /// How long in mm it is as it is drawn.
    pub fn length(self) -> f64 {
        self.bits.iter().map(Bit::length).sum::<f64>() * self.scale
    }

    /// How broad in mm its broadest is as it is drawn.
    pub fn broadest(self) -> f64 {
        self.bits.iter().map(|bit| self.breadth(bit)).fold(0.0, f64::max) * self.scale
    }

    fn breadth(self, bit: &Bit) -> f64 {
        self.stencils.design().breadth_of(bit).value()
    }

    /// All of it from a point on along a way.
    pub fn from(self, from: Point, way: f64) -> Vec<Mark> {
        let along = Point::towards(way);
        let mut at = 0.0;
        let place = |bit: &'a Bit| {
            let middle = from + along * ((at + bit.before) * self.scale);
            at += bit.length();
            (bit, middle)
        };
        let (beads, others): (Vec<_>, Vec<_>) =
            self.bits.iter().map(place).partition(|(bit, _)| bit.what.bead().is_some());
        beads.into_iter().chain(others).flat_map(|(bit, middle)| self.bit(bit, middle, way)).collect()
    }

    /// All of it about a middle.
    pub fn about(self, middle: Point, way: f64) -> Vec<Mark> {
        self.from(middle - Point::towards(way) * (0.5 * self.length()), way)
    }

    fn bit(self, bit: &Bit, middle: Point, way: f64) -> Option<Mark> {
        match bit.what {
            What::Bead(at) => {
                let angle = self.turned(at, bit, way);
                Some(self.stencils.bead(at, middle + self.aside(at, way), angle, self.scale))
            }
            What::Finding(at) => Some(self.stencils.strung(at, bit, middle, way, self.scale)),
            What::Knot => {
                Some(Mark::ornament(super::tight::knot(middle, 0.5 * (bit.length() * self.scale).clamp(1.0, 2.4))))
            }
            What::Gap | What::Dangle(_) => None,
        }
    }

    /// The angle of a bead along a way: of one whose hole is its axis as it is threaded, which end first.
    fn turned(self, bead: Index<Bead>, bit: &Bit, way: f64) -> f64 {
        let bead = &self.stencils.design().beads[bead];
        match () {
            () if bead.hangs() || bead.bores.is_some() => upright(way),
            () if bit.turned => way + PI,
            () => way,
        }
    }

    /// How far the middle of a bead with several holes lies from its first.
    fn aside(self, bead: Index<Bead>, way: f64) -> Point {
        let holes = self.stencils.design().beads[bead].bores.map(|bores| bores.across()).unwrap_or_default();
        let aside = holes.last().map_or(0.0, |last| last * self.scale);
        Point::towards(upright(way) + FRAC_PI_2) * aside
    }

    /// Where letters stand below it at a level.
    pub fn baseline(self, level: f64) -> f64 {
        level + 0.5 * self.broadest() + BELOW
    }

    /// The letters of the beads of a row that begins at a place to the right or to the left, each below the middle of what is
    /// of its kind together, where there is room for it.
    pub fn letters(self, from: f64, baseline: f64) -> Vec<Mark> {
        let mut until = f64::NEG_INFINITY;
        let mut marks = Vec::new();
        for (bead, [first, last]) in self.runs() {
            let letter = &self.stencils.design().beads[bead].letter;
            let (middle, half) = (from + first.midpoint(last) * self.scale, 0.5 * Type::SMALL_STRONG.width(letter));
            if middle - half >= until {
                marks.push(Type::SMALL_STRONG.mark(letter, Point::new(middle, baseline), Anchor::Middle));
                until = middle + half + 0.5;
            }
        }
        marks
    }

    /// Beads of one kind that no other bead parts, with how far the holes of the first and the last of them lie from the
    /// row's start at actual size.
    fn runs(self) -> Vec<(Index<Bead>, [f64; 2])> {
        let (mut at, mut runs) = (0.0, Vec::<(Index<Bead>, [f64; 2])>::new());
        for bit in self.bits {
            let middle = at + bit.before;
            at += bit.length();
            match (bit.what.bead(), runs.last_mut()) {
                (Some(bead), Some((last, [_, to]))) if *last == bead => *to = middle,
                (Some(bead), _) => runs.push((bead, [middle; 2])),
                (None, _) => {}
            }
        }
        runs
    }
}

/// Marks that are cut off at the edges of a drawing.
pub fn clipped(marks: Vec<Mark>) -> Mark {
    let room = Extent { low: Point::ORIGIN, high: Point::new(ROOM.0, ROOM.1) };
    Mark::Clipped { within: room.grown(EDGE), marks }
}

/// An angle as a bead is drawn that looks the same from both ends of its hole: to the right, or down.
fn upright(way: f64) -> f64 {
    if libm::cos(way) < -0.5 || libm::sin(way) < -0.5 { way + PI } else { way }
}
