//! The stencils of a page: stamps for beads and findings, with the symbols that they need.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::f64::consts::PI;

use super::bead::{self, DrawnAs};
use super::chain::places;
use super::cord;
use super::finding::{self, FindingDrawing};
use super::hatch::by_tone;
use super::light::{Ink, Light, TURNS, lightness, turn};
use super::look::Look;
use super::mirror;
use super::pearl::{Deal, PearlVariant};
use crate::design::{Bead, ChainLinks, Cord, Design, Entries, Finding, Form, Index, Pin, Strand};
use crate::geometry::{Extent, Point, path as line};
use crate::paint::mark::{Key, Mark, Rgb, Symbol};
use crate::paint::outline::flattened;
use crate::palette::Palette;
use crate::pattern::Finish;
use crate::trade::usual::{self, KNOT_WIDTH};
use crate::units::Length;

/// Least length on paper, in mm, at which more is seen of a bead than its colour: two dots of a printer that has 300 an
/// inch.
const SPECK: f64 = 0.17;

/// How often at most lines are drawn twice as thick, so that they are as thick on paper.
const MOST_HALVED: u32 = 5;

/// Stamps of a design's beads and findings in its colours, in one ink.
///
/// Points are on the page, angles in radians clockwise,
/// scale 1 is actual size. Whoever draws on the page shares them: that they remember what they stamped is nobody's affair.
pub struct Stencils<'a> {
    design: &'a Design,
    palette: &'a Palette,
    ink: Ink,
    /// The hatch of each bead, which tells them apart without colour.
    hatches: Entries<usize, Bead>,
    /// What is drawn of each symbol, and what that shows.
    drawn: RefCell<BTreeMap<Key, (Look, Vec<Mark>)>>,
    /// The box round what is drawn of those of which it was asked.
    boxes: RefCell<BTreeMap<Key, Option<Extent>>>,
}

impl<'a> Stencils<'a> {
    /// Starts a page's stencils.
    #[must_use]
    pub fn new(design: &'a Design, palette: &'a Palette, ink: Ink) -> Self {
        let lightness = |at| lightness(palette.bead(at).colour);
        let hatches = by_tone(&design.beads.indices().map(lightness).collect::<Vec<_>>()).into();
        Self { design, palette, ink, hatches, drawn: RefCell::default(), boxes: RefCell::default() }
    }

    /// The design that they are of.
    #[must_use]
    pub const fn design(&self) -> &'a Design {
        self.design
    }

    /// A bead with its centre at a point and its hole along an angle, of pearls that differ the one whose colour the
    /// pattern says: what a list shows. Letters, numbers and counts are the page's affair.
    pub fn bead(&self, index: Index<Bead>, at: Point, angle: f64, scale: f64) -> Mark {
        self.bead_of(PearlVariant::default(), index, (at, angle), scale)
    }

    fn bead_of(&self, variant: PearlVariant, index: Index<Bead>, (at, angle): (Point, f64), scale: f64) -> Mark {
        let (bead, coat, ink) = (&self.design.beads[index], self.palette.bead(index), self.ink);
        if self.is_speck(index, scale) {
            return self.stamp(Look::Speck { bead: index }, || vec![bead::speck(bead, coat, ink)], at, angle, scale);
        }
        let angle = least_turn(bead, coat.finish, angle);
        let turn = turn(angle);
        let (hatch, seen) = (self.hatches[index], DrawnAs { variant, halved: halved(scale) });
        let draw = || bead::marks(bead, coat, (ink, hatch), Light::on_turn(turn), seen);
        let look = Look::Bead { bead: index, turn, variant: variant.number(), halved: seen.halved };
        self.stamp(look, draw, at, angle, scale)
    }

    /// Whether a bead is so small on paper that its colour alone is seen.
    fn is_speck(&self, index: Index<Bead>, scale: f64) -> bool {
        let bead = &self.design.beads[index];
        self.ink != Ink::Outline && bead.along.max(bead.across).value() * scale < SPECK
    }

    /// A bead of the piece whose hole comes nearer by so much a mm: as long as an ellipsoid of its size looks from there, which
    /// of a flat bead with its face to the front is as deep as that is thick. What strands share is dealt nothing.
    pub fn bead_aslant(
        &self,
        index: Index<Bead>,
        deal: Option<Deal>,
        at: Point,
        (angle, toward): (f64, f64),
        scale: f64,
    ) -> Mark {
        let bead = &self.design.beads[index];
        let deep = if bead.lies_flat() { *bead.thick } else { bead.across };
        let seen = shortened([bead.along.value(), deep.value()], toward);
        match self.bead_of(self.variant(index, deal), index, (at, angle), scale) {
            Mark::Stamp { symbol, at, scale, .. } if seen != 1.0 => {
                Mark::Stamp { symbol, at, angle, scale, along: seen }
            }
            mark => mark,
        }
    }

    /// Which of the pearls that differ a bead is dealt; in grey and outline, where a hatch says which bead it
    /// is, all are alike.
    fn variant(&self, index: Index<Bead>, deal: Option<Deal>) -> PearlVariant {
        let deal = deal.filter(|_| self.ink == Ink::Colour);
        deal.map(|deal| PearlVariant::dealt(self.palette.bead(index).finish, deal)).unwrap_or_default()
    }

    /// A finding's drawing, under the light on one of its turns.
    fn drawing(&self, index: Index<Finding>, turn: u32) -> FindingDrawing {
        FindingDrawing::new(self.palette.finding(index), self.ink, Light::on_turn(turn))
    }

    /// Outlines have no light, and findings no marks that stay upright.
    fn turn(&self, angle: f64) -> u32 {
        if self.ink == Ink::Outline { 0 } else { turn(angle) }
    }

    /// A finding with its strand side at a point, reaching outward along an angle. Bars lie centred
    /// across it. A pin is drawn in its full length: see [`Self::pin`] for one cut and closed.
    pub fn finding(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        let look = |turn| Look::Finding { finding: index, turn, mirrored: false };
        self.lit(look, finding::marks, index, (at, angle), scale)
    }

    /// The colour of a finding's metal on paper.
    pub fn metal(&self, index: Index<Finding>) -> Rgb {
        self.ink.tone(self.palette.finding(index))
    }

    /// A stamp of a finding as it is seen in some way, under the light on its turn.
    fn lit(
        &self,
        look: impl FnOnce(u32) -> Look,
        draw: impl FnOnce(&FindingDrawing, &Finding) -> Vec<Mark>,
        index: Index<Finding>,
        (at, angle): (Point, f64),
        scale: f64,
    ) -> Mark {
        let turn = self.turn(angle);
        let drawing = self.drawing(index, turn);
        self.stamp(look(turn), || draw(&drawing, &self.design.findings[index]), at, angle, scale)
    }

    /// The half of a ring that is drawn by [`Self::finding`] which lies before what it goes through at both ends.
    pub fn front_half(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        self.lit(|turn| Look::Front { finding: index, turn }, finding::front, index, (at, angle), scale)
    }

    /// Part of a ring that is drawn by [`Self::finding`], so far to both sides of a direction from its middle: what of it
    /// lies before a strand that goes through it.
    pub fn ring_part(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64, about: (f64, f64)) -> Mark {
        let [from, to] = degrees(about.0 - angle, about.1);
        let part = |drawing: &FindingDrawing, finding: &Finding| {
            finding::part(drawing, finding, [from, to].map(|angle| f64::from(angle).to_radians()))
        };
        self.lit(|turn| Look::Part { finding: index, turn, from, to }, part, index, (at, angle), scale)
    }

    /// What of a finding that is drawn by [`Self::finding`] lies before the loops and rings that link with its eyes: the
    /// other of their two crossings is behind.
    pub fn linked(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        self.lit(|turn| Look::Linked { finding: index, turn }, finding::linked, index, (at, angle), scale)
    }

    /// The mirror image of a finding that stands upright. It is drawn for the mirrored light, so that mirroring puts the
    /// light where it was.
    pub fn mirrored_finding(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        let finding = &self.design.findings[index];
        let turn = self.turn(mirror::seen(angle));
        let drawing = self.drawing(index, turn);
        let draw = || mirror::mirrored(finding::marks(&drawing, finding));
        self.stamp(Look::Finding { finding: index, turn, mirrored: true }, draw, at, angle, scale)
    }

    /// A finding, and chain in the length that it states instead of a link of it.
    pub fn whole(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        match self.design.findings[index].chain().and_then(|chain| chain.length) {
            Some(length) => self.chain(index, &[at, at + Point::towards(angle) * (length.value() * scale)], scale),
            None => self.finding(index, at, angle, scale),
        }
    }

    /// A crimp pressed shut.
    pub fn pressed_crimp(&self, index: Index<Finding>, at: Point, angle: f64, scale: f64) -> Mark {
        let pressed = |drawing: &FindingDrawing, finding: &Finding| {
            finding.crimp().map(|crimp| finding::pressed(drawing, crimp)).unwrap_or_default()
        };
        self.lit(|turn| Look::Pressed { finding: index, turn }, pressed, index, (at, angle), scale)
    }

    /// A pin that was cut and closed with a loop: from its eye or head to the far side of the loop
    /// is `reach` mm.
    pub fn pin(&self, finding: Index<Finding>, at: Point, angle: f64, scale: f64, reach: f64) -> Mark {
        let look = Look::Pin { finding, reach: hundredths(reach) };
        self.of_pin((finding, look), |drawing, pin| finding::closed_pin(drawing, pin, reach), (at, angle), scale)
    }

    /// The half of such a pin's loop that lies before the cord that goes through it.
    pub fn pin_loop(&self, finding: Index<Finding>, at: Point, angle: f64, scale: f64, reach: f64) -> Mark {
        let look = Look::PinLoop { finding, reach: hundredths(reach) };
        self.of_pin((finding, look), |drawing, pin| finding::pin_loop(drawing, pin, reach), (at, angle), scale)
    }

    /// What is drawn of a pin.
    fn of_pin(
        &self,
        (index, look): (Index<Finding>, Look),
        drawn: impl Fn(&FindingDrawing, &Pin) -> Vec<Mark>,
        (at, angle): (Point, f64),
        scale: f64,
    ) -> Mark {
        let drawing = self.drawing(index, 0);
        let marks = || self.design.findings[index].pin().map(|pin| drawn(&drawing, pin)).unwrap_or_default();
        self.stamp(look, marks, at, angle, scale)
    }

    /// Chain along a path, its links at actual size times `scale`, on edge and on face by turns up to the last, which is on
    /// its face: as many as so much of it has, spread over the path.
    pub fn chain(&self, index: Index<Finding>, path: &[Point], scale: f64) -> Mark {
        let Some(chain) = self.design.findings[index].chain() else { return Mark::ornament(Vec::new()) };
        let places = places(path, spread(chain, line::length(path), scale));
        let is_edge = |link: usize| (places.len() - link).is_multiple_of(2);
        // Links overlap by the thickness of the wire on either side.
        let links = places.iter().enumerate();
        Mark::ornament(links.map(|(link, place)| self.link(index, chain, is_edge(link), *place, scale)).collect())
    }

    fn link(
        &self,
        index: Index<Finding>,
        chain: &ChainLinks,
        on_edge: bool,
        (at, angle): (Point, f64),
        scale: f64,
    ) -> Mark {
        let start = at - Point::towards(angle) * (finding::link_wire(chain) * scale);
        let drawing = self.drawing(index, 0);
        let (look, draw): (_, fn(&FindingDrawing, &ChainLinks) -> Vec<Mark>) = if on_edge {
            (Look::Edge { finding: index }, finding::link_on_edge)
        } else {
            (Look::Link { finding: index }, finding::link)
        };
        self.stamp(look, || draw(&drawing, chain), start, angle, scale)
    }

    /// Bare cord along a path, as thick as it is times `scale`, but never thinner than a line that
    /// prints.
    #[must_use]
    pub fn cord(&self, index: Index<Cord>, path: &[Point], scale: f64) -> Mark {
        let cord = &self.design.cords[index];
        Mark::ornament(cord::marks(cord, self.palette.cord(index), path, drawn(cord, scale), self.ink))
    }

    /// A strand's bare cord along a path, its legs side by side.
    #[must_use]
    pub fn strand_cord(&self, strand: &Strand, path: &[Point], scale: f64) -> Mark {
        let thick = drawn(&self.design.cords[strand.cord], scale);
        let aside = |leg: u32| (f64::from(leg) - f64::from(strand.legs - 1) / 2.0) * thick;
        let legs = (0..strand.legs).map(|leg| self.cord(strand.cord, &cord::beside(path, aside(leg)), scale));
        Mark::ornament(legs.collect())
    }

    /// Middle diameter of the loop that a strand of memory wire is turned into.
    #[must_use]
    pub fn turned(&self, strand: &Strand) -> Length {
        usual::TURNED + self.design.cords[strand.cord].diameter
    }

    /// Length in mm of a finding that is a bead cap.
    pub fn cap_length(&self, index: Index<Finding>) -> Option<f64> {
        match &self.design.findings[index].form {
            Form::BeadCap(cap) => Some(cap.length.value()),
            _ => None,
        }
    }

    /// A knot in a cord, so many of its legs together, centred at a point and taking `length` mm along it.
    pub fn knot(&self, cord: Index<Cord>, legs: u32, at: Point, angle: f64, scale: f64, length: f64) -> Mark {
        let (colour, ink) = (self.palette.cord(cord), self.ink);
        let across = self.design.cords[cord].diameter.value() * f64::from(legs) * KNOT_WIDTH;
        let look = Look::Knot { cord, doubled: legs > 1, length: hundredths(length) };
        self.stamp(look, || cord::knot(colour, [length, across], ink), at, angle, scale)
    }

    /// The box round a mark with the edges of its lines; nothing where it draws nothing. Texts are not counted: beads and
    /// findings have none; see `step::around`.
    #[must_use]
    pub fn bounds(&self, mark: &Mark) -> Option<Extent> {
        match mark {
            Mark::Shape { outline, stroke, .. } => {
                let half = stroke.as_ref().map_or(0.0, |stroke| stroke.width / 2.0);
                Extent::of(flattened(outline)).map(|extent| extent.grown(half))
            }
            Mark::Stamp { symbol, at, angle, scale, along } => {
                let place = |corner: Point| *at + Point::new(corner.x * along, corner.y).turned(*angle) * *scale;
                Extent::of(self.symbol_box(*symbol)?.corners().map(place))
            }
            Mark::Clipped { within, marks } => Some(self.around(marks)?.within(*within)),
            held => self.around(held.inner()),
        }
    }

    /// The box round what is drawn of a symbol.
    fn symbol_box(&self, symbol: Key) -> Option<Extent> {
        if let Some(known) = self.boxes.borrow().get(&symbol) {
            return *known;
        }
        let found = self.around(&self.drawn.borrow().get(&symbol)?.1);
        self.boxes.borrow_mut().insert(symbol, found);
        found
    }

    /// The box round marks.
    #[must_use]
    pub fn around(&self, marks: &[Mark]) -> Option<Extent> {
        marks.iter().filter_map(|mark| self.bounds(mark)).reduce(Extent::and)
    }

    fn stamp(&self, look: Look, draw: impl FnOnce() -> Vec<Mark>, at: Point, angle: f64, scale: f64) -> Mark {
        let symbol = look.key();
        self.drawn.borrow_mut().entry(symbol).or_insert_with(|| (look, draw()));
        Mark::Stamp { symbol, at, angle, scale, along: 1.0 }
    }

    /// What a symbol shows that was stamped here.
    #[must_use]
    pub fn look(&self, symbol: Key) -> Option<Look> {
        self.drawn.borrow().get(&symbol).map(|(look, _)| *look)
    }

    /// The symbols that the stamps need, each with what it shows, ordered by id.
    #[must_use]
    pub fn into_looks(self) -> Vec<(Look, Symbol)> {
        let symbol = |(key, (look, marks))| (look, Symbol { key, marks });
        let mut looks: Vec<_> = self.drawn.into_inner().into_iter().map(symbol).collect();
        looks.sort_by_cached_key(|(_, symbol)| symbol.key.to_string());
        looks
    }

    /// The symbols that the stamps need, ordered by id.
    #[must_use]
    pub fn into_symbols(self) -> Vec<Symbol> {
        self.into_looks().into_iter().map(|(_, symbol)| symbol).collect()
    }
}

/// Whole degrees so far to both sides of an angle, each at least nothing.
fn degrees(angle: f64, half: f64) -> [u32; 2] {
    let whole = |angle: f64| angle.to_degrees().round();
    let from = whole(angle - half).rem_euclid(360.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "degrees of at most two rounds")]
    [from, from + whole(2.0 * half)].map(|angle| angle as u32)
}

/// Thickness of a cord as it is drawn.
fn drawn(cord: &Cord, scale: f64) -> f64 {
    const THINNEST: f64 = 0.18;
    (cord.diameter.value() * scale).max(THINNEST)
}

/// By what factor an ellipsoid of a length and a depth looks longer or shorter where each mm of its axis comes
/// nearer by so much.
fn shortened([along, deep]: [f64; 2], toward: f64) -> f64 {
    /// Differences that no one sees.
    const SAME: f64 = 1e-3;
    let (square, deep) = ((1.0 - toward * toward).max(0.0), toward * deep / along);
    let seen = (square + deep * deep).sqrt();
    if (seen - 1.0).abs() < SAME { 1.0 } else { seen }
}

/// How often what is drawn at a scale is halved, rounded up; at most so often as its lines are drawn thicker.
fn halved(scale: f64) -> u32 {
    (0..MOST_HALVED).find(|halved| scale * f64::from(1_u32 << halved) >= 1.0).unwrap_or(MOST_HALVED)
}

/// The angle at which a bead looks as at the given one and needs fewest symbols.
fn least_turn(bead: &Bead, finish: Finish, angle: f64) -> f64 {
    if bead.hangs() {
        angle
    } else if bead::looks_the_same_turned(bead, finish) {
        0.0
    } else if bead::looks_the_same_reversed(bead.shape) {
        angle - PI * libm::round(angle / PI)
    } else {
        angle
    }
}

/// A length in mm in whole hundredths.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
fn hundredths(mm: f64) -> u32 {
    (mm * 100.0).round_ties_even() as u32
}

const _: () = assert!(TURNS.is_multiple_of(2), "a bead with its ends swapped has a symbol too");

/// By how much each link of a chain lengthens it on a path so long.
fn spread(chain: &ChainLinks, length: f64, scale: f64) -> f64 {
    let inside = finding::link_inside(chain) * scale;
    let links = chain.links(Length::mm(length / scale)).filter(|_| length > 0.5 * inside);
    #[expect(clippy::cast_precision_loss, reason = "a count of links")]
    links.map_or(inside, |links| length / links as f64)
}
