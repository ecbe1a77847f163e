//! Figures, their scales and what stands beside them, in English.

use std::fmt;

use crate::sheet::figure::Scale;
use crate::sheet::said::{Figure, Scaled, SeenAs};
use crate::steps::english::chart::MEETING;
use crate::steps::english::words::list;

/// What a figure shows, for those who cannot see it.
#[must_use]
pub fn figure(figure: &Figure<'_>) -> String {
    let words = match figure {
        Figure::Strand(name) => return format!("strand {name}"),
        Figure::Beads(name, [first, last]) => return format!("strand {name}, beads {first} to {last}"),
        Figure::Meeting(name) => return format!("strand {name}, {MEETING}"),
        Figure::Twisted(names) => return format!("strands {}, twisted together", list(names)),
        Figure::Square(size) => return format!("a square of {size}"),
        Figure::Closed => "the piece closed",
        Figure::Side(0) => "first side of the closure",
        Figure::Side(_) => "last side of the closure",
        Figure::Drops => "drops of the strands",
        Figure::OnNeck => "the piece on the neck",
        Figure::Neck => "neck and shoulders",
        Figure::Bar => "a bar of 50 mm and of 2 in to measure",
    };
    words.to_owned()
}

/// What the two cords there are.
pub const ENDS: [&str; 2] = ["first end", "last end"];
/// What stands before the bar that tells whether a page was printed at its size.
pub const CHECK_PRINT: &str = "Check the print: outer ticks above 50 mm, below 2 in apart";

impl fmt::Display for Scale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if *self == Self::ACTUAL {
            f.write_str("actual size (1 : 1)")
        } else {
            write!(f, "{} : {}", self.paper, self.piece)
        }
    }
}

/// What stands beside a scale bar.
pub fn beside_bar(scale: Scale) -> String {
    if scale.paper == scale.piece { "Actual size".to_owned() } else { format!("Scale {scale}") }
}

/// What is drawn to a scale.
pub fn scaled(scaled: Scaled) -> String {
    match scaled {
        Scaled::Picture(scale) => format!("picture {scale}"),
        Scaled::Drape(scale) => format!("drape {scale}"),
        Scaled::Rows => format!("rows at {}", Scale::ACTUAL),
        Scaled::Bars(scale) => format!("cutting bars {scale}"),
        Scaled::SeveralBars => "cutting bars at the scale above each".to_owned(),
        Scaled::Proof => Scale::ACTUAL.to_string(),
    }
}

/// The scale of a picture, page mm for each mm of the piece, which is not round.
pub fn about(factor: f64) -> String {
    let [paper, piece] = if factor < 1.0 { [1.0, 1.0 / factor] } else { [factor, 1.0] };
    let tenths = |side: f64| (side * 10.0).round() / 10.0;
    format!("picture at about {} : {}", tenths(paper), tenths(piece))
}

/// How a ring is seen.
pub const fn seen_as(seen: SeenAs) -> &'static str {
    match seen {
        SeenAs::FromAbove => "across, from above",
        SeenAs::OnEdge => "flat beads are seen from their edge",
    }
}
