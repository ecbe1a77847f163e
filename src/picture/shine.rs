//! What a close picture shows of beads and a sheet does not: soft edges, ground seen through glass,
//! the light's bloom, and the dark where neighbours in the row keep the light off a bead's ends.

use crate::art::{Light, Look, looks_the_same_turned};
use crate::design::Bead;
use crate::geometry::{Extent, Point};
use crate::paint::mark::{ColourStop, Fill, Mark, Rgb, Segment, Stroke, Symbol};
use crate::paint::outline::flattened;
use crate::pattern::{Finish, Shape};
use crate::piece::Piece;

/// Share of a bead's length that lies in its neighbour's dark, at each end.
const DARK: f64 = 0.16;
/// How dark it is at the very end.
const DARKEST: f64 = 0.4;
/// What stays of the line round a bead that a sheet draws.
const EDGE: f64 = 0.5;
/// How much clear glass keeps of the light from the ground, in each layer of its drawing.
const GLASS: f64 = 0.74;
/// What shade adds to the rim of a ball.
const RIM: f64 = 0.34;
/// Opacity of the bloom round the light's reflection.
const BLOOM: f64 = 0.3;

/// A bead's symbol as a close picture shows it; other symbols as they are.
pub fn polished(look: Look, mut symbol: Symbol, piece: &Piece) -> Symbol {
    let Look::Bead { bead: at, turn, .. } = look else { return symbol };
    let bead = &piece.design.beads[at];
    let finish = piece.palette.bead(at).finish;
    if finish == Finish::Clear {
        symbol.marks = symbol.marks.into_iter().map(glassy).collect();
    }
    symbol.marks = symbol.marks.into_iter().map(|mark| soft_glint(mark, bead.shape)).collect();
    // A bead's last mark is the line round it.
    if let Some(Mark::Shape { outline, stroke, .. }) = symbol.marks.last_mut() {
        *stroke = stroke.take().map(|stroke| Stroke { opacity: stroke.opacity * EDGE, ..stroke });
        let outline = outline.clone();
        symbol.marks.extend(over(bead, finish, turn).into_iter().map(|fill| area(&outline, fill)));
    }
    symbol
}

fn area(outline: &[Segment], fill: Fill) -> Mark {
    Mark::Shape { outline: outline.to_vec(), fill: Some(fill), stroke: None }
}

/// What lies over a bead as its finish and its neighbours make it. Balls are drawn without regard to
/// their hole's direction: they have a rim and no ends.
fn over(bead: &Bead, finish: Finish, turn: u32) -> Vec<Fill> {
    let mut fills = Vec::new();
    let is_ball = looks_the_same_turned(bead, finish);
    if is_ball {
        fills.push(rim(bead));
    } else if !matches!(bead.shape, Shape::Coin | Shape::Drop | Shape::Chip) {
        fills.push(dusk(bead));
    }
    if finish == Finish::Gloss {
        fills.push(bloom(bead, Light::on_turn(turn)));
    }
    fills
}

fn shade(at: f64, opacity: f64) -> ColourStop {
    ColourStop { at, colour: Rgb(0x1c, 0x16, 0x14), opacity }
}

/// The dark at both ends.
fn dusk(bead: &Bead) -> Fill {
    let end = Point::new(bead.along.value() / 2.0, 0.0);
    let stops = vec![shade(0.0, DARKEST), shade(DARK, 0.0), shade(1.0 - DARK, 0.0), shade(1.0, DARKEST)];
    Fill::Linear(end * -1.0, end, stops)
}

/// A ball turns away from us, and from most of the light, at its rim.
fn rim(bead: &Bead) -> Fill {
    let stops = vec![shade(0.0, 0.0), shade(0.72, 0.0), shade(0.9, RIM * 0.4), shade(1.0, RIM)];
    Fill::Radial(Point::ORIGIN, bead.across.value() / 2.0, stops)
}

/// Light scattered round its reflection.
fn bloom(bead: &Bead, light: Light) -> Fill {
    let half = Point::new(bead.along.value(), bead.across.value()) * 0.5;
    let at = Point::new(light.towards.x * half.x, light.towards.y * half.y) * 0.5;
    let stop = |at, opacity| ColourStop { at, colour: Rgb::WHITE, opacity };
    let stops = vec![stop(0.0, BLOOM), stop(0.35, BLOOM * 0.4), stop(1.0, 0.0)];
    Fill::Radial(at, half.x.min(half.y) * 0.95, stops)
}

/// The light's reflection, which a sheet draws with a hard edge: it fades towards the ends of a
/// cylinder, and towards the rim of what is round.
fn soft_glint(mark: Mark, shape: Shape) -> Mark {
    match mark {
        Mark::Shape { outline, fill: Some(Fill::Flat(Rgb::WHITE, opacity)), stroke } => {
            let extent = Extent::of(flattened(&outline)).unwrap_or_default();
            let (middle, half) = (extent.low.between(extent.high, 0.5), (extent.high - extent.low) * 0.5);
            let stop = |at, share: f64| ColourStop { at, colour: Rgb::WHITE, opacity: opacity * share };
            let fill = if matches!(shape, Shape::Tube | Shape::Barrel | Shape::Seed) {
                let end = Point::new(half.x, 0.0);
                let stops = vec![stop(0.0, 0.0), stop(0.3, 0.85), stop(0.7, 0.85), stop(1.0, 0.0)];
                Fill::Linear(middle - end, middle + end, stops)
            } else {
                Fill::Radial(middle, half.length(), vec![stop(0.0, 1.0), stop(0.45, 0.95), stop(0.8, 0.35)])
            };
            Mark::Shape { outline, fill: Some(fill), stroke }
        }
        held => held,
    }
}

/// A mark of clear glass: what is not white light lets the ground through.
fn glassy(mark: Mark) -> Mark {
    let thin = |stops: Vec<ColourStop>| {
        stops.into_iter().map(|stop| ColourStop { opacity: stop.opacity * GLASS, ..stop }).collect()
    };
    match mark {
        Mark::Shape { outline, fill, stroke } => {
            let fill = fill.map(|fill| match fill {
                Fill::Flat(Rgb::WHITE, opacity) => Fill::Flat(Rgb::WHITE, opacity),
                Fill::Flat(colour, opacity) => Fill::Flat(colour, opacity * GLASS),
                Fill::Linear(from, to, stops) => Fill::Linear(from, to, thin(stops)),
                Fill::Radial(centre, radius, stops) => Fill::Radial(centre, radius, thin(stops)),
            });
            Mark::Shape { outline, fill, stroke }
        }
        held => held.map_inner(|marks| marks.into_iter().map(glassy).collect()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ground_is_seen_through_clear_glass_alone() {
        let source = crate::source::Source::new("p", include_str!("../../patterns/plumb-line.yaml"));
        let piece = crate::piece(&source, &crate::design::Choice::default(), None).0.unwrap();
        for (index, bead) in piece.design.beads.entries() {
            let stencils = crate::art::Stencils::new(&piece.design, &piece.palette, crate::art::Ink::Colour);
            stencils.bead(index, Point::ORIGIN, 0.0, 1.0);
            let (look, drawn) = stencils.into_looks().remove(0);
            let body = polished(look, drawn, &piece).marks.remove(0);
            let Mark::Shape { fill: Some(fill), .. } = body else { panic!("{}: {body:?}", bead.name) };
            let thickest = match fill {
                Fill::Flat(_, opacity) => opacity,
                Fill::Linear(_, _, stops) | Fill::Radial(_, _, stops) => {
                    stops.iter().map(|stop| stop.opacity).fold(0.0, f64::max)
                }
            };
            assert_eq!(thickest < 1.0, piece.palette.bead(index).finish == Finish::Clear, "{}", bead.name);
        }
    }
}
