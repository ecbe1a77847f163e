//! Findings: from the pattern's keys to a finding with the sizes that its kind has.

use crate::pattern::bounds::MOST_LINKS;
use crate::pattern::{self, FindingKind, Outline};
use crate::remark::Remark;
use crate::remark::said::shaping::{self as said, Shaping};
use crate::source::{At, Place};
use crate::units::Length;

use super::Context;
use super::article::{gauge_diameter, sold};
use super::entries::Index;
use super::finding::Finding;
use super::form::{
    Bar, Cap, ChainLinks, Charm, Cone, CordEnd, Crimp, Dimensions, Foot, Form, Hanger, JumpRing, KnotCover, Pin, Tassel,
};
use super::stated::Stated;
use super::stock::{Bead, Cord};

/// What a finding names.
#[derive(Default)]
pub struct Named<'a> {
    /// The bead that the knot in it is tied round.
    pub bead: Option<Index<Bead>>,
    /// The cord that it is wound of.
    pub cord: Option<(Index<Cord>, &'a Cord)>,
}

/// Resolves one finding with what it names.
pub fn finding(
    id: &str,
    place: Place,
    written: &pattern::Finding,
    named: &Named<'_>,
    context: &mut Context,
) -> Option<Finding> {
    check_closed(id, written, context);
    check_outline(id, written, context);
    let sold = written.sold.as_ref().and_then(|at| sold(at, context));
    let bare = Finding::new(id, form(id, written, named, context)?);
    let finding = Finding {
        name: written.name.clone().unwrap_or_else(|| id.to_owned()),
        mass: bare.mass.unless(written.mass),
        material: written.material.as_ref().map(|at| at.value.clone()),
        breakaway: written.breakaway.is_some_and(|answer| answer.0),
        comes_with: written.comes_with.as_ref().map(|with| with.value.clone()),
        sold,
        place,
        ..bare
    };
    consistent(weighed(finding, named), context)
}

/// A tassel that is wound with the piece weighs what is wound to it, unless the pattern says its mass.
fn weighed(finding: Finding, named: &Named<'_>) -> Finding {
    let takes = finding.tassel().and_then(Tassel::takes).map(|(_, length)| length);
    let wound = takes.zip(named.cord).filter(|_| finding.mass.is_assumed());
    let mass = wound.map(|(length, (_, cord))| *cord.mass_per_metre * (length.value() / 1000.0));
    Finding { mass: mass.map_or(finding.mass, Stated::Assumed), ..finding }
}

/// Nothing but a jump ring opens and closes as one does.
fn check_closed(id: &str, written: &pattern::Finding, context: &mut Context) {
    let kind = written.kind.value;
    let closed = written.closed.as_ref().filter(|at| at.value.0 && kind != FindingKind::JumpRing);
    let wrong = || Shaping::Closed { id: id.to_owned(), kind: kind.word() };
    context.remarks.extend(closed.map(|at| Remark::new(wrong()).at(at.place)));
}

/// Nothing but a charm has an outline to choose.
fn check_outline(id: &str, written: &pattern::Finding, context: &mut Context) {
    let kind = written.kind.value;
    let outline = written.outline.as_ref().filter(|_| kind != FindingKind::Charm);
    let wrong = || Shaping::Outlined { id: id.to_owned(), kind: kind.word() };
    context.remarks.extend(outline.map(|at| Remark::new(wrong()).at(at.place)));
}

/// The sizes that a pattern writes of a finding, and which of them its kind lacks.
struct WrittenSizes<'a> {
    written: &'a pattern::Finding,
    wire: Option<Length>,
    missing: Vec<&'static str>,
}

impl WrittenSizes<'_> {
    /// A size that the kind always has; nothing stands for it until the lack is told.
    fn need(&mut self, key: &'static str, size: Option<Length>) -> Length {
        if size.is_none() {
            self.missing.push(key);
        }
        size.unwrap_or_default()
    }

    fn length(&mut self) -> Length {
        self.need("length", value(&self.written.length))
    }

    fn inside(&mut self) -> Length {
        self.need("inside", value(&self.written.inside))
    }

    /// The form of a kind.
    fn form(&mut self, kind: FindingKind, named: &Named<'_>) -> Form {
        match kind {
            FindingKind::Crimp => Form::Crimp(self.crimp()),
            FindingKind::Cone => Form::Cone(self.cone()),
            FindingKind::EyePin => Form::Pin(self.pin(Foot::Eye)),
            FindingKind::HeadPin => Form::Pin(self.pin(Foot::Head)),
            FindingKind::Clasp => Form::Clasp(self.body()),
            FindingKind::SpringRing => Form::SpringRing(self.body()),
            FindingKind::Hook => Form::Hook(self.body()),
            FindingKind::ToggleRing => Form::ToggleRing(self.body()),
            FindingKind::ToggleBar => Form::ToggleBar(self.body()),
            FindingKind::BarrelHalf => Form::BarrelHalf(self.body()),
            FindingKind::Chain => Form::Chain(self.chain()),
            FindingKind::JumpRing => Form::JumpRing(self.ring()),
            FindingKind::SpacerBar => Form::SpacerBar(self.bar()),
            FindingKind::EndBar => Form::EndBar(self.bar()),
            FindingKind::BoxHalf => Form::BoxHalf(self.bar()),
            FindingKind::SlideHalf => Form::SlideHalf(self.bar()),
            FindingKind::BeadCap => Form::BeadCap(self.cap()),
            FindingKind::CrimpCover => Form::CrimpCover(self.body()),
            FindingKind::WireGuard => Form::WireGuard(self.body()),
            FindingKind::Bail => Form::Bail(self.hanger()),
            FindingKind::EarWire => Form::EarWire(self.hanger()),
            FindingKind::KnotCover => Form::KnotCover(KnotCover { body: self.body(), bead: named.bead }),
            FindingKind::CordEnd => Form::CordEnd(self.cord_end()),
            FindingKind::Charm => Form::Charm(self.charm()),
            FindingKind::Tassel => Form::Tassel(self.tassel(named)),
            FindingKind::SpectacleLoop => Form::SpectacleLoop(self.body()),
        }
    }

    fn body(&mut self) -> Dimensions {
        let written = self.written;
        let (outside, inside) = (value(&written.outside), value(&written.inside));
        Dimensions { outside, inside, wire: self.wire, ..Dimensions::new(self.length()) }
    }

    fn crimp(&mut self) -> Crimp {
        let outside = value(&self.written.outside);
        Crimp::new(self.length(), self.need("outside", outside), self.inside())
    }

    fn cone(&mut self) -> Cone {
        let written = self.written;
        let cone = Cone::new(self.length(), self.inside(), self.need("tip", value(&written.tip)));
        Cone { mouth: value(&written.mouth), outside: value(&written.outside), ..cone }
    }

    fn pin(&mut self, foot: Foot) -> Pin {
        let (wire, outside) = (self.wire, value(&self.written.outside));
        Pin { outside, ..Pin::new(foot, self.length(), self.need("gauge", wire)) }
    }

    fn chain(&mut self) -> ChainLinks {
        let link = self.need("link", value(&self.written.link));
        let chain = ChainLinks::new(link);
        ChainLinks { wire: chain.wire.unless(self.wire), length: value(&self.written.length), ..chain }
    }

    fn ring(&mut self) -> JumpRing {
        let ring = JumpRing::new(self.inside());
        JumpRing {
            wire: ring.wire.unless(self.wire),
            outside: value(&self.written.outside),
            closed: self.written.closed.as_ref().is_some_and(|at| at.value.0),
            ..ring
        }
    }

    fn bar(&mut self) -> Bar {
        let written = self.written;
        let (length, spacing) = (self.length(), self.need("spacing", value(&written.spacing)));
        if written.holes.is_none() {
            self.missing.push("holes");
        }
        let bar = Bar::new(length, written.holes.as_ref().map_or(1, |at| at.value.0), spacing);
        Bar { outside: value(&written.outside), inside: value(&written.inside), wire: self.wire, ..bar }
    }

    fn cap(&mut self) -> Cap {
        let Dimensions { length, outside, inside, .. } = self.body();
        Cap { length, outside, inside, mouth: value(&self.written.mouth) }
    }

    fn hanger(&mut self) -> Hanger {
        let Dimensions { length, outside, inside, wire } = self.body();
        let hanger = Hanger::new(length);
        Hanger { wire: hanger.wire.unless(wire), outside, inside, ..hanger }
    }

    fn charm(&mut self) -> Charm {
        if self.written.outline.is_none() {
            self.missing.push("outline");
        }
        let outline = self.written.outline.as_ref().map_or(Outline::Disc, |at| at.value);
        let charm = Charm::new(self.length(), outline);
        Charm { breadth: charm.breadth.unless(value(&self.written.outside)), ..charm }
    }

    /// One that is made with the piece is wound of so many threads.
    fn tassel(&mut self, named: &Named<'_>) -> Tassel {
        if named.cord.is_some() && self.written.threads.is_none() {
            self.missing.push("threads");
        }
        let threads = self.written.threads.as_ref().map(|at| at.value.0);
        let tassel = Tassel::new(self.length());
        let breadth = tassel.breadth.unless(value(&self.written.outside));
        Tassel { breadth, wound: named.cord.map(|(cord, _)| cord).zip(threads), ..tassel }
    }

    fn cord_end(&mut self) -> CordEnd {
        let (wire, outside) = (self.wire, value(&self.written.outside));
        CordEnd { outside, wire, ..CordEnd::new(self.length(), self.inside()) }
    }
}

fn value(at: &Option<At<Length>>) -> Option<Length> {
    at.as_ref().map(|at| at.value)
}

/// The finding's kind with its sizes; refuses one that lacks a size its kind cannot do without.
fn form(id: &str, written: &pattern::Finding, named: &Named<'_>, context: &mut Context) -> Option<Form> {
    let wire = match (&written.wire, &written.gauge) {
        (None, Some(gauge)) => Some(gauge_diameter(gauge, context)?),
        (wire, _) => value(wire),
    };
    let mut sizes = WrittenSizes { written, wire, missing: Vec::new() };
    let form = sizes.form(written.kind.value, named);
    if sizes.missing.is_empty() {
        return Some(form);
    }
    let lacks = Shaping::Lacks { id: id.to_owned(), kind: written.kind.value.word(), keys: sizes.missing };
    context.refuse(Remark::new(lacks).at(written.kind.place))
}

/// Refuses a finding of which one size cannot be true beside another.
fn consistent(finding: Finding, context: &mut Context) -> Option<Finding> {
    let wrong = match &finding.form {
        Form::Cone(cone) if cone.tip > cone.inside => Some((said::Sizes::TipAndInside, cone.tip, cone.inside)),
        Form::Cone(Cone { inside, mouth: Some(mouth), .. }) if inside > mouth => {
            Some((said::Sizes::InsideAndMouth, *inside, *mouth))
        }
        Form::Cone(_) => None,
        Form::Pin(pin) if pin.open() <= Length::ZERO => Some((said::Sizes::WireAndEye, pin.wire, *pin.eye())),
        _ => match (finding.inside(), finding.outside()) {
            (Some(inside), Some(outside)) if inside >= outside => {
                Some((said::Sizes::InsideAndOutside, inside, outside))
            }
            _ => None,
        },
    };
    let links =
        |chain: &ChainLinks| countable(&finding.id, chain, chain.length.unwrap_or(chain.link), finding.place, context);
    if !finding.chain().is_none_or(links) {
        return None;
    }
    let Some((sizes, smaller, larger)) = wrong else { return Some(finding) };
    let assumed = finding.pin().is_some_and(|pin| pin.eye().is_assumed());
    let wrong = Shaping::Contradiction { id: finding.id, sizes, smaller, larger, assumed };
    context.refuse(Remark::new(wrong).at(finding.place))
}

/// Refuses so much chain that its links are none of a piece's.
pub fn countable(id: &str, chain: &ChainLinks, length: Length, place: Place, context: &mut Context) -> bool {
    let links = chain.links(length);
    if links.is_some_and(|links| links <= u64::from(MOST_LINKS)) {
        return true;
    }
    let id = id.to_owned();
    let wrong = match links {
        Some(links) => Shaping::TooManyLinks { id, length, links },
        None => Shaping::NoOpening { id, wire: *chain.wire },
    };
    context.remarks.push(Remark::new(wrong).at(place));
    false
}
