//! Strands at rest: cord, beads, knots, branches and end findings. Lengths in mm on paper.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::art::Deal;
use crate::design::{Bead, Bit, Dangle, Design, Entries, Index, Strand, What};
use crate::drape::{Hung, Seat};
use crate::geometry::{Extent, Point, Point3};
use crate::paint::mark::Mark;
use crate::paint::outline;
use crate::pattern::FindingKind;
use crate::piece::Piece;
use crate::sheet::english;
use crate::sheet::said::Alternative;
use crate::trade::usual;
use crate::units::Length;

use super::bars::{bars, middle};
use super::branch::branch_box;
use super::ends::EndFinding;
use super::fastened::{is_hung, lengthened};
use super::{Canvas, ends, twined};

/// Strands, as far as they are laid: the longest first, so that shorter ones lie over longer ones; all cords below all
/// beads. Twisted ones, and those that cross, lie over one another as they are near.
pub fn strands(hung: &Entries<Option<&Hung>, Strand>, canvas: Canvas<'_>) -> Vec<Mark> {
    let design = canvas.design();
    if twined::are_twined(hung, design) {
        let all = twined::layers(hung, canvas, 1).concat();
        let bars = bars(hung, canvas);
        return vec![Mark::figure(english::figure(&Alternative::twined(design)), [all, bars].concat())];
    }
    let sketch = |at: Index<Strand>| Some(Sketch::new(&design.strands[at], (*hung.get(at)?)?, canvas));
    let laid: Vec<_> = longest_first(design).into_iter().filter_map(sketch).collect();
    let mut marks: Vec<_> = laid.iter().flat_map(Sketch::cord).collect();
    marks.extend(laid.iter().map(|sketch| sketch.named(sketch.strung())));
    marks.extend(bars(hung, canvas));
    marks
}

/// Indices of the strands, the longest first.
pub fn longest_first(design: &Design) -> Vec<Index<Strand>> {
    let strands = &design.strands;
    let mut order: Vec<_> = strands.indices().collect();
    // Every index is that of a strand.
    order.sort_by(|a, b| strands[*b].finished.value().total_cmp(&strands[*a].finished.value()));
    order
}

/// A strand as it hangs, or as far as it is laid, and where and with what it is drawn.
pub struct Sketch<'a> {
    /// One of the design's strands.
    pub strand: &'a Strand,
    /// How that hangs.
    pub hung: &'a Hung,
    /// On what it is drawn.
    pub canvas: Canvas<'a>,
}

impl<'a> Sketch<'a> {
    /// A strand that hangs so, on a canvas.
    pub const fn new(strand: &'a Strand, hung: &'a Hung, canvas: Canvas<'a>) -> Self {
        Self { strand, hung, canvas }
    }

    pub(super) const fn design(&self) -> &'a Design {
        self.canvas.design()
    }

    /// Marks of it, as a figure that has its name.
    pub fn named(&self, marks: Vec<Mark>) -> Mark {
        Mark::figure(english::figure(&Alternative::Strand(&self.strand.name)), marks)
    }

    /// Where a bead cap sits: in the line of the bead that it hugs, not of the cord; other things as they are.
    fn on_its_bead(&self, seat: &Seat) -> Seat {
        let bits = &self.strand.trains[seat.train].bits;
        let cap = &bits[seat.bit];
        let is_cap = matches!(cap.what, What::Finding(at) if self.design().findings[at].kind() == FindingKind::BeadCap);
        let faced = if cap.turned { Some(seat.bit + 1) } else { seat.bit.checked_sub(1) };
        let bead = faced.filter(|_| is_cap).and_then(|at| {
            let is_it = |other: &&Seat| other.train == seat.train && other.bit == at;
            matches!(bits.get(at)?.what, What::Bead(_)).then(|| self.hung.seats.iter().find(is_it))?
        });
        bead.map_or(*seat, |bead| {
            let reach = if cap.turned { -bits[bead.bit].before - cap.after } else { bits[bead.bit].after + cap.before };
            let centre = bead.centre + Point::towards(bead.angle) * reach;
            Seat { centre, angle: bead.angle, near: bead.near.max(seat.near), ..*seat }
        })
    }

    /// The strand by itself, with the bars and beads that it shares with others.
    pub fn alone(&self) -> Vec<Mark> {
        let mut marks = self.strand();
        for seat in &self.hung.seats {
            let bit = self.bit(seat);
            if let Some(aside) = middle(bit, self.strand, self.design()) {
                let across = Point::towards(FRAC_PI_2 - seat.angle);
                let centre = self.canvas.page(seat.centre) + across * (aside * self.canvas.scale());
                marks.extend(self.at(seat, centre));
            }
        }
        marks
    }

    /// The strand without bars that it shares with others.
    pub fn strand(&self) -> Vec<Mark> {
        let mut marks = self.cord();
        marks.extend(self.strung());
        marks
    }

    /// What is strung but for shared bars, the beads below what covers them, and the findings that close
    /// the ends.
    pub(super) fn strung(&self) -> Vec<Mark> {
        let mut marks = self.ends();
        let is_bead = |seat: &Seat| matches!(self.bit(seat).what, What::Bead(_));
        let (met, seats) = self.seats();
        let (mut beads, mut others): (Vec<_>, Vec<_>) = seats.into_iter().partition(is_bead);
        for seats in [&mut beads, &mut others] {
            seats.sort_by(|one, other| one.near.total_cmp(&other.near));
        }
        for seat in &met {
            marks.extend(self.met(seat));
        }
        for seat in beads.iter().chain(&others) {
            marks.extend(self.seated(seat));
        }
        marks
    }

    /// Where what the ends meet in sits, and all else.
    fn seats(&self) -> (Vec<Seat>, Vec<Seat>) {
        let seats = self.hung.seats.iter().map(|seat| self.on_its_bead(seat));
        seats.partition(|seat| self.bit(seat).what.is_meeting())
    }

    /// What is strung, each with how near it is: what covers a bead comes behind it, and is as near as that at the least.
    pub(super) fn heaped(&self) -> impl Iterator<Item = (f64, Vec<Mark>)> {
        let (met, mut seats) = self.seats();
        seats.sort_by_key(|seat| !matches!(self.bit(seat).what, What::Bead(_)));
        let met = met.into_iter().map(|seat| (seat.near, self.met(&seat)));
        met.chain(seats.into_iter().map(|seat| (seat.near, self.seated(&seat))))
    }

    /// What the ends meet in, as far below as the beads at the ends let it come, with both ends' cord down to it.
    fn met(&self, seat: &Seat) -> Vec<Mark> {
        let lower = seat.centre - Point::new(0.0, kept_off(seat, self.strand, self.hung, self.design()));
        let ends = [seat.centre, lower].map(|at| self.canvas.page(at));
        let cord =
            (lower != seat.centre).then(|| self.canvas.stencils.strand_cord(self.strand, &ends, self.canvas.scale()));
        cord.into_iter().chain(self.seated(&Seat { centre: lower, ..*seat })).collect()
    }

    /// What sits in a seat.
    pub(super) fn bit(&self, seat: &Seat) -> &'a Bit {
        seat.bit(self.strand)
    }

    /// The findings that close both ends, from each loop inward.
    pub(super) fn ends(&self) -> Vec<Mark> {
        let mut marks = self.fastenings();
        marks.extend([0, 1].into_iter().filter_map(|side| self.turned(side)));
        for side in [0, 1] {
            let all = ends::closed(&self.strand.ends[side], self.design());
            marks.extend(all.iter().filter_map(|finding| self.end_finding(finding, side)));
        }
        marks
    }

    /// Where a side's end is, as far in as that.
    fn inward(&self, side: usize, depth: f64) -> f64 {
        if side == 0 { depth } else { self.strand.finished.value() - depth }
    }

    /// The loop into which an end is turned.
    fn turned(&self, side: usize) -> Option<Mark> {
        let at = self.inward(side, 0.0);
        let is_turned = self.strand.is_turned(&self.strand.ends[side], self.design()) && self.hung.reaches(at);
        let (point, onward) = is_turned.then(|| self.hung.at(at))?;
        let outward = if side == 0 { PI - onward } else { -onward };
        Some(self.canvas.turned_loop(self.strand, self.canvas.page(point), outward))
    }

    /// A finding that closes an end, if the strand is laid as far as that; one that hangs on what the cord goes through
    /// stands as far out as a loop would reach.
    fn end_finding(&self, closed: &EndFinding, side: usize) -> Option<Mark> {
        let finding = &self.design().findings[closed.finding];
        let own = finding.along().value();
        let far = if closed.outward { (closed.depth - own).max(0.0) } else { closed.depth + own };
        let [at, far] = [closed.depth, far].map(|depth| self.inward(side, depth));
        let (point, angle) = (self.hung.reaches(at) && self.hung.reaches(far)).then(|| self.hung.at(at))?;
        let hung_out = || self.fastened(side).hung_out(self.strand, side, self.design());
        let [beyond, longer] = if is_hung(finding) { hung_out() } else { [self.drawn_out(side), 0.0] };
        let point = point + Point::towards(angle) * if side == 0 { 0.0 - beyond } else { beyond };
        let onward = (side == 1) == closed.outward;
        let way = if onward { -angle } else { PI - angle };
        let mark = self.canvas.stencils.finding(closed.finding, self.canvas.page(point), way, self.canvas.scale());
        Some(if own > 0.0 { lengthened(mark, 1.0 + longer / own) } else { mark })
    }

    /// What sits in a seat, but for what the strand shares with others.
    pub(super) fn seated(&self, seat: &Seat) -> Vec<Mark> {
        if middle(self.bit(seat), self.strand, self.design()).is_some() {
            return Vec::new();
        }
        self.at(seat, self.canvas.page(seat.centre))
    }

    /// What sits in a seat with its centre at a point of the page.
    fn at(&self, seat: &Seat, at: Point) -> Vec<Mark> {
        let (bit, angle, deal) = (self.bit(seat), -seat.angle, Deal::of(&self.strand.name, seat.train, seat.bit));
        if let What::Dangle(dangle) = &bit.what {
            return self.canvas.branch((dangle, deal), self.strand.cord, at, seat.down);
        }
        self.canvas.strung((bit, deal), self.strand, at, (angle, seat.toward))
    }
}

/// What is strung, at points of the page.
impl Canvas<'_> {
    /// Something on a strand but for a branch, and what its place is dealt, with its centre at a point and its hole along an angle, which
    /// comes nearer by so much a mm.
    pub fn strung(
        &self,
        (bit, deal): (&Bit, Deal),
        strand: &Strand,
        at: Point,
        (angle, toward): (f64, f64),
    ) -> Vec<Mark> {
        let scale = self.scale();
        match &bit.what {
            What::Bead(bead) => {
                let own = middle(bit, strand, self.design()).is_none().then_some(deal);
                vec![self.stencils.bead_aslant(*bead, own, at, (angle, toward), scale)]
            }
            What::Gap | What::Dangle(_) => Vec::new(),
            What::Knot => vec![self.stencils.knot(strand.cord, strand.legs, at, angle, scale, bit.length())],
            What::Finding(index) => vec![self.stencils.strung(*index, bit, at, angle, scale)],
        }
    }

    /// The loop that memory wire is turned into, from a point outward along an angle.
    pub fn turned_loop(&self, strand: &Strand, at: Point, outward: f64) -> Mark {
        let radius = 0.5 * self.stencils.turned(strand).value() * self.scale();
        let centre = at + Point::towards(outward) * radius;
        let path = outline::flattened(&outline::ellipse(centre, radius, radius));
        self.stencils.cord(strand.cord, &path, self.scale())
    }
}

/// How far in mm a strand's beads keep the first bead of what its ends meet in below where they do: until the balls about
/// them touch.
fn kept_off(seat: &Seat, strand: &Strand, hung: &Hung, design: &Design) -> f64 {
    let bit = |seat: &Seat| seat.bit(strand);
    let radius = |index: Index<Bead>| design.beads[index].across.value() / 2.0;
    let What::Dangle(Dangle { bits, .. }) = &bit(seat).what else { return 0.0 };
    let Some(met) = bits.first().and_then(|bit| bit.what.bead()) else { return 0.0 };
    let centre = seat.centre - Point::new(0.0, bits[0].before);
    let lowered = |other: &Seat| {
        let apart = radius(met) + radius(bit(other).what.bead()?);
        let beside = (other.centre - centre).x;
        let below = (apart * apart - beside * beside).max(0.0).sqrt();
        (below > 0.0).then_some(centre.y - (other.centre.y - below))
    };
    hung.seats.iter().filter_map(lowered).filter(|by| *by < 2.0 * radius(met)).fold(0.0, f64::max)
}

/// The box round all strands with their beads and branches, in the drape's frame.
pub fn outline_box(piece: &Piece) -> Option<Extent> {
    let strands = piece.design.strands.iter().zip(&piece.drape.strands);
    strands.filter_map(|(strand, hung)| strand_box(&piece.design, strand, hung)).reduce(Extent::and)
}

/// The box round one strand with its beads and branches, in the drape's frame.
pub fn strand_box(design: &Design, strand: &Strand, hung: &Hung) -> Option<Extent> {
    let seats = hung.seats.iter().map(|seat| {
        let bit = seat.bit(strand);
        let lower = if bit.what.is_meeting() { kept_off(seat, strand, hung, design) } else { 0.0 };
        let at = Extent::at(seat.centre - Point::new(0.0, lower));
        let beyond = middle(bit, strand, design).map_or(0.0, f64::abs);
        let knot = if bit.what == What::Knot { 0.5 * strand.knot_width(design).value() } else { 0.0 };
        let around = match &bit.what {
            What::Dangle(branch) => branch_box(branch, at, seat.down, design),
            _ => bit_box(bit, at, design),
        };
        around.grown(beyond + knot)
    });
    let cord = Extent::of(hung.joints.iter().map(|joint| joint.at))?.grown(0.5 * strand.cord_width(design).value());
    let loops = strand.ends.iter().zip(hung.ends).filter(|(end, _)| strand.is_turned(end, design));
    let wide = usual::TURNED + design.cords[strand.cord].diameter * 2.0;
    let loops = loops.map(|(_, at)| Extent::at(at).grown(wide.value()));
    Some(seats.chain(loops).fold(cord, Extent::and))
}

/// The box that a bit takes whose centre may be anywhere in a box, but for a knot's width, which is its strand's.
pub fn bit_box(bit: &Bit, at: Extent, design: &Design) -> Extent {
    match &bit.what {
        What::Bead(bead) => {
            let bead = &design.beads[*bead];
            at.grown(bead.across.value().max(bead.along.value()) / 2.0)
        }
        What::Finding(index) => {
            let finding = &design.findings[*index];
            let sizes = [finding.length(), finding.widest()];
            at.grown(sizes.into_iter().flatten().map(Length::value).fold(0.0, f64::max) / 2.0)
        }
        What::Dangle(branch) => branch_box(branch, at, Point3::DOWN, design),
        What::Gap | What::Knot => at,
    }
}
