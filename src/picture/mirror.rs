//! The other of a pair: the same turned left to right, under the same light.

use std::f64::consts::PI;

use crate::art::{Light, Look, Stencils};
use crate::drape::{Hung, Joint, Seat};
use crate::geometry::Point;
use crate::paint::mark::{Fill, Key, Mark, Symbol};
use crate::paint::outline;

/// A hanging strand mirrored in an upright line.
pub fn strand(hung: &Hung, axis: f64) -> Hung {
    let across = |at: Point| Point::new(2.0 * axis - at.x, at.y);
    Hung {
        ends: hung.ends.map(across),
        joints: hung.joints.iter().map(|joint| Joint { at: across(joint.at), ..*joint }).collect(),
        seats: hung
            .seats
            .iter()
            .map(|seat| Seat { centre: across(seat.centre), angle: PI - seat.angle, ..*seat })
            .collect(),
        ..hung.clone()
    }
}

/// Findings that stand upright, as stamps of mirrored symbols. Each is drawn for the mirrored light
/// first, so that mirroring puts the light where it was.
pub fn upright(mark: Mark, stencils: &mut Stencils<'_>) -> Mark {
    match mark {
        Mark::Stamp { symbol, at, angle, scale, along } => {
            let Some(Look::Finding { finding, .. }) = Look::of(symbol) else { return mark };
            match stencils.finding(finding, at, seen_mirrored(angle), scale) {
                Mark::Stamp { symbol, .. } => {
                    Mark::Stamp { symbol: Key { mirrored: true, ..symbol }, at, angle, scale, along }
                }
                other => other,
            }
        }
        held => held.map_inner(|marks| marks.into_iter().map(|mark| upright(mark, stencils)).collect()),
    }
}

/// The angle at which a thing sees the light as its mirror image sees it at the given one.
fn seen_mirrored(angle: f64) -> f64 {
    2.0 * Light::on_turn(0).towards.angle() - angle
}

/// Symbols with the mirrored ones that marks ask for.
pub fn with_mirrored(mut symbols: Vec<Symbol>, marks: &[Mark]) -> Vec<Symbol> {
    let mut wanted = Vec::new();
    asked(marks, &mut wanted);
    wanted.sort_by_cached_key(Key::to_string);
    wanted.dedup();
    let drawn = |key: Key| symbols.iter().find(|symbol| symbol.key == Key { mirrored: false, ..key });
    let mirrored: Vec<_> = wanted
        .into_iter()
        .filter_map(|key| Some(Symbol { key, marks: drawn(key)?.marks.iter().map(turned).collect() }))
        .collect();
    symbols.extend(mirrored);
    symbols
}

fn asked(marks: &[Mark], wanted: &mut Vec<Key>) {
    for mark in marks {
        match mark {
            Mark::Stamp { symbol, .. } if symbol.mirrored => wanted.push(*symbol),
            held => asked(held.inner(), wanted),
        }
    }
}

/// A symbol's mark mirrored in the line along the piece.
fn turned(mark: &Mark) -> Mark {
    let across = |at: Point| Point::new(at.x, -at.y);
    let fill = |fill: &Fill| match fill {
        Fill::Flat(colour, opacity) => Fill::Flat(*colour, *opacity),
        Fill::Linear(from, to, stops) => Fill::Linear(across(*from), across(*to), stops.clone()),
        Fill::Radial(centre, radius, stops) => Fill::Radial(across(*centre), *radius, stops.clone()),
    };
    match mark {
        Mark::Shape { outline, fill: inside, stroke } => Mark::Shape {
            outline: outline::mapped(outline, across),
            fill: inside.as_ref().map(fill),
            stroke: stroke.clone(),
        },
        other => other.clone().map_inner(|marks| marks.iter().map(turned).collect()),
    }
}
