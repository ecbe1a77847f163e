//! Beads and cords: from the pattern's keys to complete articles.

use crate::pattern::{self, BeadSize, CordKind, Drilled, Shape, SoldBy};
use crate::remark::said::article::Article;
use crate::remark::said::selling::Selling;
use crate::remark::{Remark, near};
use crate::source::{At, Place};
use crate::trade::{densities, gauges, seeds, usual};
use crate::units::{Length, Mass};

use super::Context;
use super::assumed::GLASS;
use super::bars::Bores;
use super::spring::at_rest;
use super::stated::Stated;
use super::stock::{Bead, Cord, Lot, Sold};
use super::wire;

/// Share of a bead that its hole may not take: nothing would be left of it.
const FULL_HOLE: f64 = 0.95;
/// Longest measured bead that is not a slip of the pen.
const LONGEST_BEAD: Length = Length::mm(200.0);

/// Resolves one bead; its letter comes later.
pub fn bead(id: &str, place: Place, written: &pattern::Bead, context: &mut Context) -> Option<Bead> {
    let shape = written.shape.value;
    let (across, along) = size(shape, &written.size, context)?;
    let bare = Bead::new(id, shape, [across, along]);
    let mut bead = Bead {
        name: written.name.clone().unwrap_or_else(|| id.to_owned()),
        thick: bare.thick.unless(written.thick.as_ref().map(|at| at.value)),
        drilled: written.drilled.as_ref().map_or(bare.drilled, |at| at.value),
        hole: hole(id, bare.hole, written, context),
        bores: bores(id, written, context)?,
        tolerance: bare.tolerance.unless(written.tolerance.as_ref().map(|at| at.value)),
        pitch: pitch(written, context),
        material: written.material.as_ref().map(|at| at.value.clone()),
        sold: written.sold.as_ref().and_then(|sold| self::sold(sold, context)),
        instead: written.instead.iter().flatten().map(|at| at.value.clone()).collect(),
        place,
        ..bare
    };
    bead.mass = written.mass.map_or_else(|| Stated::Assumed(mass(&bead, written, context)), Stated::Stated);
    sensible(bead, written, context)
}

/// Size across and along the hole.
fn size(shape: Shape, size: &At<BeadSize>, context: &mut Context) -> Option<(Length, Length)> {
    let along_differs = matches!(shape, Shape::Rondelle | Shape::Oval | Shape::Tube | Shape::Barrel | Shape::Drop);
    match &size.value {
        BeadSize::Both(across, along) => Some((*across, *along)),
        BeadSize::Across(across) if along_differs => {
            let wrong = Article::NoLength { shape: shape.word(), across: *across };
            context.refuse(Remark::new(wrong).at(size.place))
        }
        BeadSize::Across(across) => Some((*across, *across)),
        BeadSize::Seed(name) => match seeds::seed_size(name) {
            Some(seed) => Some((seed.diameter, seed.pitch)),
            None => {
                let wrong = Article::NoSeedSize { name: name.clone(), known: seeds::names() };
                context.refuse(Remark::new(wrong).at(size.place))
            }
        },
    }
}

/// Its hole: as stated, of a seed that its size names as it is usual, and else as assumed, which is told.
fn hole(id: &str, assumed: Stated<Length>, written: &pattern::Bead, context: &mut Context) -> Stated<Length> {
    if let Some(at) = &written.hole {
        return Stated::Stated(at.value);
    }
    if let BeadSize::Seed(name) = &written.size.value {
        return Stated::Assumed(seeds::seed_size(name).map_or(usual::HOLE, |seed| seed.hole));
    }
    let told = Article::HoleAssumed { id: id.to_owned(), hole: *assumed };
    context.remarks.push(Remark::new(told).at(written.size.place));
    assumed
}

/// Holes side by side, where it has several; refuses those of which one cannot tell how they lie.
fn bores(id: &str, written: &pattern::Bead, context: &mut Context) -> Option<Option<Bores>> {
    let lengthwise = written.drilled.as_ref().is_none_or(|at| at.value == Drilled::Lengthwise);
    let id = id.to_owned();
    let (wrong, place) = match (written.holes.as_ref().filter(|at| at.value.0 > 1), &written.apart) {
        (None, None) => return Some(None),
        (Some(holes), Some(apart)) if lengthwise => {
            return Some(Some(Bores { count: holes.value.0, apart: apart.value }));
        }
        (Some(holes), None) => (Article::HolesApart { id }, holes.place),
        (None, Some(apart)) => (Article::OneHoleApart { id }, apart.place),
        (Some(holes), Some(_)) => (Article::HolesAcross { id }, holes.place),
    };
    context.refuse(Remark::new(wrong).at(place))
}

fn pitch(written: &pattern::Bead, context: &mut Context) -> Option<Length> {
    let measured = written.measured.as_ref()?;
    let one = Length::mm(measured.value.length.value() / f64::from(measured.value.count));
    if one > LONGEST_BEAD {
        return context.refuse(Remark::new(Article::TooLong { each: one }).at(measured.place));
    }
    Some(one)
}

fn mass(bead: &Bead, written: &pattern::Bead, context: &mut Context) -> Mass {
    if let BeadSize::Seed(name) = &written.size.value
        && let Some(mass) = seeds::seed_size(name).and_then(|seed| seed.mass)
    {
        return mass;
    }
    let density = written.material.as_ref().map_or(GLASS, |material| density(&bead.id, material, context));
    bead.mass_of(density)
}

/// Density of a bead's material; leaves a remark where it is unknown or differs much from piece to piece.
fn density(id: &str, material: &At<String>, context: &mut Context) -> f64 {
    let name = &material.value;
    let density = densities::density(name);
    let (id, called) = (id.to_owned(), name.clone());
    let told = match (density, densities::range(name)) {
        (None, _) => {
            let meant = near(name, densities::names());
            Some(Article::NoDensity { id, material: called, known: densities::names().collect(), meant })
        }
        (Some(density), Some(densities::Range { least, most, assumed })) => {
            Some(Article::RoughWeight { id, material: called, least, most, assumed, density })
        }
        _ => None,
    };
    context.remarks.extend(told.map(|told| Remark::new(told).at(material.place)));
    density.unwrap_or(GLASS)
}

/// Refuses beads whose sizes contradict one another.
fn sensible(bead: Bead, written: &pattern::Bead, context: &mut Context) -> Option<Bead> {
    let row = bead.bores.map_or(Length::ZERO, |bores| bores.apart * f64::from(bores.count - 1));
    let crowd = |bores: Bores| bores.apart <= *bead.hole || row + *bead.hole >= bead.across;
    let (id, across) = (bead.id.clone(), bead.across);
    let wrong = if bead.bores.is_some_and(crowd) {
        Article::HolesCrowd { id, across }
    } else if bead.hole.value() >= across.value() * FULL_HOLE {
        Article::HoleTooWide { id, hole: *bead.hole, across }
    } else if bead.tolerance.value() > bead.along.value() / 2.0 {
        Article::ToleranceTooLarge { id, tolerance: *bead.tolerance }
    } else {
        return Some(bead);
    };
    let place = written.hole.as_ref().map_or(written.size.place, |at| at.place);
    context.refuse(Remark::new(wrong).at(place))
}

/// Resolves one cord.
pub fn cord(id: &str, place: Place, written: &pattern::Cord, context: &mut Context) -> Option<Cord> {
    let diameter = thickness(id, place, written.diameter.as_ref(), written.gauge.as_ref(), context)?;
    let bare = Cord::new(id, written.kind, diameter);
    let wire = wire::of(id, written, context)?;
    let solid = wire.as_ref().and_then(|wire| wire::solid_mass(wire, diameter)).map(Stated::Assumed);
    let made = wire.as_ref().map_or(bare.stiffness, |wire| wire.stiffness(diameter));
    Some(Cord {
        name: written.name.clone().unwrap_or_else(|| id.to_owned()),
        take_up: bare.take_up.unless(written.take_up),
        strength: written.strength,
        stiffness: wire::stiffness(id, written, made, context)?,
        wire,
        mass_per_metre: solid.unwrap_or(bare.mass_per_metre).unless(written.mass.map(|mass| mass.0)),
        coil: coil(id, place, written, context)?,
        link: link(id, written, context),
        needle: written.needle.is_some_and(|answer| answer.0),
        sold: written.sold.as_ref().and_then(|sold| cord_sold(sold, written, diameter, context)),
        place,
        ..bare
    })
}

/// The inside diameter of memory wire's coil, which it must say, and other cords must not.
fn coil(id: &str, place: Place, written: &pattern::Cord, context: &mut Context) -> Option<Option<Length>> {
    match (&written.coil, written.kind) {
        (Some(coil), CordKind::MemoryWire) => Some(Some(coil.value)),
        (None, CordKind::MemoryWire) => context.refuse(Remark::new(Article::NoCoil { id: id.to_owned() }).at(place)),
        (Some(coil), kind) => {
            let wrong = Article::Coil { id: id.to_owned(), kind: kind.word() };
            context.refuse(Remark::new(wrong).at(coil.place))
        }
        (None, _) => Some(None),
    }
}

/// How a cord is sold: by turns of its coil as a length of so many, which lie one on the other.
fn cord_sold(sold: &At<pattern::Sold>, cord: &pattern::Cord, wire: Length, context: &mut Context) -> Option<Sold> {
    let by_turns = sold.value.by.value == SoldBy::Turns;
    let (Some(coil), Some(turns)) = (&cord.coil, sold.value.count.filter(|_| by_turns)) else {
        return self::sold(sold, context);
    };
    let length = Length::mm(at_rest(coil.value, wire).turn()) * f64::from(turns.0);
    Some(Sold { lot: Lot::Length(length), price: sold.value.price, from: sold.value.from.clone() })
}

/// By how much a link lengthens a chain, by so many links that the maker measured. Nothing else has links.
fn link(id: &str, written: &pattern::Cord, context: &mut Context) -> Option<Length> {
    let measured = written.links.as_ref()?;
    if written.kind != CordKind::Chain {
        let wrong = Article::Links { id: id.to_owned(), kind: written.kind.word() };
        return context.refuse(Remark::new(wrong).at(measured.place));
    }
    Some(measured.value.length * (1.0 / f64::from(measured.value.count)))
}

/// A diameter, written as such or as a wire gauge.
fn thickness(
    id: &str,
    place: Place,
    diameter: Option<&At<Length>>,
    gauge: Option<&At<pattern::Whole>>,
    context: &mut Context,
) -> Option<Length> {
    match (diameter, gauge) {
        (Some(diameter), _) => Some(diameter.value),
        (None, Some(gauge)) => gauge_diameter(gauge, context),
        (None, None) => context.refuse(Remark::new(Article::NoThickness { id: id.to_owned() }).at(place)),
    }
}

pub(super) fn gauge_diameter(gauge: &At<pattern::Whole>, context: &mut Context) -> Option<Length> {
    let no_gauge = || Remark::new(Article::NoGauge { gauge: gauge.value.0 }).at(gauge.place);
    gauges::awg_diameter(gauge.value.0).or_else(|| context.refuse(no_gauge()))
}

/// Resolves how an article is sold.
pub(super) fn sold(written: &At<pattern::Sold>, context: &mut Context) -> Option<Sold> {
    let sold = &written.value;
    let by = sold.by.value;
    let wrong = match by {
        SoldBy::GraduatedStrand | SoldBy::Mix => Selling::OneKind { by: by.word() },
        SoldBy::Turns => Selling::Turns,
        _ => match lot(sold) {
            Some(lot) => return Some(Sold { lot, price: sold.price, from: sold.from.clone() }),
            None => Selling::NoAmount { by: by.word(), needs: amount(by) },
        },
    };
    context.refuse(Remark::new(wrong).at(sold.by.place))
}

/// What one buys at a time; nothing where the pattern does not say how much that is, or that is no lot of one kind.
fn lot(sold: &pattern::Sold) -> Option<Lot> {
    match sold.by.value {
        SoldBy::Strand => sold.length.map(Lot::Strand),
        SoldBy::Hank => sold.strands.zip(sold.length).map(|(strands, length)| Lot::Hank(strands.0, length)),
        SoldBy::Pack => sold.count.map(|count| Lot::Pack(count.0)),
        SoldBy::Each => Some(Lot::Each),
        SoldBy::Grams => sold.mass.map(Lot::Grams),
        SoldBy::Spool | SoldBy::Length => sold.length.map(Lot::Length),
        SoldBy::GraduatedStrand | SoldBy::Mix | SoldBy::Turns => None,
    }
}

/// The keys that say how much that is.
const fn amount(by: SoldBy) -> &'static str {
    match by {
        SoldBy::Hank => "strands: 12, length: 20 in",
        SoldBy::Pack => "count: 48",
        SoldBy::Grams => "mass: 10 g",
        _ => "length: 16 in",
    }
}
