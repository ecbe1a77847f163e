//! Grounds: what a piece lies on, drawn from fixed seeds.

mod linen;
mod slate;

use crate::geometry::Point;
use crate::paint::mark::{ColourStop, Fill, Mark, Rgb, Symbol};
use crate::paint::outline;

use super::Ground;

/// Light of the wall behind a bust.
const WALL: Rgb = Rgb(0xe9, 0xe5, 0xdf);

/// A ground as large as the page.
pub fn marks(ground: Ground, width: f64, height: f64, symbols: &mut Vec<Symbol>) -> Vec<Mark> {
    match ground {
        Ground::Plain(colour) => vec![plain(colour, width, height)],
        Ground::Neck => vec![plain(WALL, width, height)],
        Ground::Linen => linen::marks(width, height),
        Ground::Slate => slate::marks(width, height, symbols),
        Ground::Transparent => Vec::new(),
    }
}

/// A colour that is lightest above left and a little darker towards the far edges.
fn plain(colour: Rgb, width: f64, height: f64) -> Mark {
    let dark = Rgb(0x24, 0x20, 0x1e);
    let stops = [(0.0, colour.mixed(Rgb::WHITE, 0.35)), (0.45, colour), (1.0, colour.mixed(dark, 0.14))];
    let light = Point::new(width * 0.38, height * 0.32);
    let fill = Fill::Radial(light, width.max(height) * 0.95, stops.map(|(at, colour)| solid(at, colour)).to_vec());
    sheet(width, height, fill)
}

/// The whole page filled.
fn sheet(width: f64, height: f64, fill: Fill) -> Mark {
    Mark::Shape { outline: outline::rect(Point::ORIGIN, width, height), fill: Some(fill), stroke: None }
}

/// The light's fall over the page: nothing above left, dark below right.
fn falloff(width: f64, height: f64, opacity: f64) -> Mark {
    let stop = |at, opacity| ColourStop { at, colour: Rgb(0x18, 0x14, 0x12), opacity };
    let light = Point::new(width * 0.36, height * 0.3);
    sheet(
        width,
        height,
        Fill::Radial(light, width.max(height), vec![stop(0.0, 0.0), stop(0.4, opacity * 0.12), stop(1.0, opacity)]),
    )
}

const fn solid(at: f64, colour: Rgb) -> ColourStop {
    ColourStop { at, colour, opacity: 1.0 }
}
