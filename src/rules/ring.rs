//! Whether a closed bracelet or anklet has the room that the pattern asks for. Of several strands the
//! tightest decides: the others are not in its way.

use crate::design::{Design, Strand};
use crate::drape::Drape;
use crate::pattern::{CordKind, Kind};
use crate::remark::{Code, Remark};
use crate::trade::ease::fit;
use crate::units::Length;

/// How far the room may miss what was asked for, in mm: half of the 5 mm that a named fit spans
/// (a maker's sizing page: snug 6 to 10 mm, medium 10 to 15, loose 15 to 20).
const SLACK: f64 = 2.5;

/// A remark about the inside of the tightest ring.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let Some(ring) = &drape.ring else { return Vec::new() };
    let strand = &design.strands[ring.strand];
    let room = ring.inside_girth - design.wear.girth.value();
    let asked = design.wear.ease.value();
    let found = if room < 0.0 && design.cords[strand.cord].kind != CordKind::Elastic {
        (Code::TooShort, "longer")
    } else if room < asked - SLACK {
        (Code::RingTight, "longer")
    } else if room > asked + SLACK {
        (Code::RingLoose, "shorter")
    } else {
        return Vec::new();
    };
    vec![remark(found, ring.inside_girth, (asked - room).abs(), strand, design)]
}

fn remark((code, way): (Code, &str), inside: f64, miss: f64, strand: &Strand, design: &Design) -> Remark {
    let limb = if design.heading.kind == Kind::Anklet { "an ankle" } else { "a wrist" };
    let wear = &design.wear;
    let of_several = if design.strands.len() > 1 { format!(" of strand {}", strand.name) } else { String::new() };
    let headline = format!(
        "the closed ring{of_several} measures {} inside; {limb} of {} with {} of ease asks for {}",
        Length::mm(inside).tenths(),
        wear.girth.tenths(),
        wear.ease.tenths(),
        (wear.girth + wear.ease).tenths()
    );
    let room = Length::mm(inside) - wear.girth;
    let named = fit(room.value()).map(|fit| format!("; as it is the fit is {}", fit.name)).unwrap_or_default();
    let help = format!("make the row {} {way}, or write another `ease:`{named}", Length::mm(miss).tenths());
    Remark::new(code, headline).at(strand.length_place).help(help)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drape::Ring;
    use crate::rules::sample;

    fn ring(inside_girth: f64) -> Ring {
        Ring { strand: 0, radius: inside_girth / 6.0, inside_girth, turns: Vec::new(), closing: Vec::new() }
    }

    #[test]
    fn room_within_half_a_fits_range() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        design.wear.girth = Length::mm(160.0);
        design.wear.ease = Length::mm(12.0);
        let mut codes = |inside_girth: f64| {
            drape.ring = Some(ring(inside_girth));
            sample::codes(&check(&design, &drape))
        };
        assert_eq!(codes(169.5), []);
        assert_eq!(codes(174.5), []);
        assert_eq!(codes(169.4), [Code::RingTight]);
        assert_eq!(codes(174.6), [Code::RingLoose]);
        assert_eq!(codes(159.0), [Code::TooShort]);
    }

    #[test]
    fn elastic_stretches_over_the_hand() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        design.cords[0].kind = CordKind::Elastic;
        design.wear.girth = Length::mm(160.0);
        drape.ring = Some(ring(158.0));
        assert_eq!(sample::codes(&check(&design, &drape)), []);
        design.wear.ease = Length::mm(5.0);
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::RingTight]);
    }
}
