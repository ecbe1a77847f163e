//! Figures, their scales and what stands beside them, in English.

use std::fmt;

use crate::english::list;
use crate::sheet::figure::Scale;
use crate::sheet::said::{Alternative, FooterScale, SeenAs};
use crate::steps::english::chart::MEETING;
use crate::units::{INCH, Length, UnitStyle};

/// What a figure shows, for those who cannot see it.
#[must_use]
pub fn figure(figure: &Alternative<'_>) -> String {
    let words = match figure {
        Alternative::Strand(name) => return format!("strand {name}"),
        Alternative::Beads(name, [first, last]) => return format!("strand {name}, beads {first} to {last}"),
        Alternative::Meeting(name) => return format!("strand {name}, {MEETING}"),
        Alternative::Twisted(names) => return format!("strands {}, twisted together", list(names)),
        Alternative::Crossing(names) => return format!("strands {}, over one another", list(names)),
        Alternative::Square(size) => return format!("a square of {size}"),
        Alternative::Closed => "the piece closed",
        Alternative::Side(0) => "first side of the closure",
        Alternative::Side(_) => "last side of the closure",
        Alternative::Ruler => "ruler",
        Alternative::Drops => "drops of the strands",
        Alternative::OnNeck => "the piece on the neck",
        Alternative::Neck => "neck and shoulders",
        Alternative::Bar => "a bar of 50 mm and of 2 in to measure",
    };
    words.to_owned()
}

/// What the two cords there are.
pub const ENDS: [&str; 2] = ["first end", "last end"];
/// What stands before the bar that tells whether a page was printed at its size.
pub const CHECK_PRINT: &str = "Check the print";
/// How long its edges are, in words that stand at their ends.
pub const CHECK_LENGTHS: [&str; 2] = ["50 mm", "2 in"];

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

/// How long a scale bar is, in whole millimetres or inches.
pub fn bar_length(length: Length, units: UnitStyle) -> String {
    match units {
        UnitStyle::Mm => format!("{:.0} mm", length.value()),
        UnitStyle::In | UnitStyle::Both => format!("{:.0} in", length.value() / INCH),
    }
}

/// What is drawn to a scale.
pub fn scaled(scaled: FooterScale) -> String {
    match scaled {
        FooterScale::Picture(scale) => format!("picture {scale}"),
        FooterScale::Drape(scale) => format!("drape {scale}"),
        FooterScale::Rows => format!("rows at {}", Scale::ACTUAL),
        FooterScale::Bars(scale) => format!("cutting bars {scale}"),
        FooterScale::SeveralBars => "cutting bars at the scale above each".to_owned(),
        FooterScale::Proof => Scale::ACTUAL.to_string(),
    }
}

/// The scale of a picture, page mm for each mm of the piece, which is not round.
pub fn about(factor: f64) -> String {
    let [paper, piece] = if factor < 1.0 { [1.0, 1.0 / factor] } else { [factor, 1.0] };
    let hundredths = |side: f64| (side * 100.0).round() / 100.0;
    format!("picture at about {} : {}", hundredths(paper), hundredths(piece))
}

/// How a piece is seen.
pub fn seen_as(seen: SeenAs, units: UnitStyle) -> String {
    match seen {
        SeenAs::HungApart(apart) => format!("hung {} apart", units.ruler(apart)),
        SeenAs::FromAbove => "from side to side alone".to_owned(),
        SeenAs::OverRail => "over a rail as broad as the neck".to_owned(),
        SeenAs::FacesUp => "flat beads lie face up".to_owned(),
    }
}
