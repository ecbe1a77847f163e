//! Pages in one ink: what is neither bead nor finding loses its colour too.

use crate::art::Ink;

use crate::paint::mark::{ColourStop, Fill, Mark, Stroke, Text};

/// Marks as an ink prints them. Art is drawn in its ink already and stays as it is.
pub fn inked(marks: Vec<Mark>, ink: Ink) -> Vec<Mark> {
    if ink == Ink::Colour { marks } else { marks.into_iter().map(|mark| mark_in(mark, ink)).collect() }
}

fn mark_in(mark: Mark, ink: Ink) -> Mark {
    match mark {
        Mark::Shape { outline, fill, stroke } => Mark::Shape {
            outline,
            fill: fill.map(|fill| fill_in(fill, ink)),
            stroke: stroke.map(|stroke| Stroke { colour: ink.line(stroke.colour), ..stroke }),
        },
        Mark::Text(text) => Mark::Text(Text { colour: ink.line(text.colour), ..text }),
        held => held.map_inner(|marks| inked(marks, ink)),
    }
}

fn fill_in(fill: Fill, ink: Ink) -> Fill {
    let stops = |stops: Vec<ColourStop>| {
        stops.into_iter().map(|stop| ColourStop { colour: ink.line(stop.colour), ..stop }).collect::<Vec<_>>()
    };
    match fill {
        Fill::Flat(colour, opacity) => Fill::Flat(ink.line(colour), opacity),
        Fill::Linear(from, to, colours) => Fill::Linear(from, to, stops(colours)),
        Fill::Radial(centre, radius, colours) => Fill::Radial(centre, radius, stops(colours)),
    }
}
