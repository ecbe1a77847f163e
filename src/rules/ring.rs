//! Whether a closed bracelet or anklet has the room that the pattern asks for. Of several strands the
//! tightest decides: the others are not in its way.

use crate::design::{Design, Wear};
use crate::drape::{Drape, Ring};
use crate::pattern::{CordKind, Kind};
use crate::remark::{Code, Remark};
use crate::trade::ease::fit;
use crate::units::Length;

/// How far the room may miss what was asked for, in mm: half of the 5 mm that a named fit spans
/// (a maker's sizing page: snug 6 to 10 mm, medium 10 to 15, loose 15 to 20).
const SLACK: f64 = 2.5;

/// A remark about the inside of the tightest ring.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let Some(ring) = drape.ring() else { return Vec::new() };
    let Wear { girth, ease: asked, .. } = design.wear;
    let room = |inside: f64| Length::mm(inside) - girth;
    let (least, most) = (room(ring.inside_girth), room(ring.longest_girth));
    let slack = Length::mm(SLACK);
    let stretches = design.cords[design.strands[ring.strand].cord].kind == CordKind::Elastic;
    let found = if most < Length::ZERO && !stretches {
        (Code::TooShort, most, "longer")
    } else if most < asked - slack {
        (Code::RingTight, most, "longer")
    } else if least > asked + slack {
        (Code::RingLoose, least, "shorter")
    } else {
        return Vec::new();
    };
    vec![remark(found, ring, design)]
}

fn remark((code, room, way): (Code, Length, &str), ring: &Ring, design: &Design) -> Remark {
    let limb = if design.heading.kind == Kind::Anklet { "an ankle" } else { "a wrist" };
    let (strand, wear) = (&design.strands[ring.strand], &design.wear);
    let of_several = if design.strands.len() > 1 { format!(" of strand {}", strand.name) } else { String::new() };
    let hooked = match code {
        _ if ring.longest_girth <= ring.inside_girth => "",
        Code::RingLoose => ", hooked as short as it goes,",
        _ => ", hooked as long as it goes,",
    };
    let headline = format!(
        "the closed ring{of_several}{hooked} measures {} inside; {limb} of {} with {} of ease asks for {}",
        (wear.girth + room).tenths(),
        wear.girth.tenths(),
        wear.ease.tenths(),
        (wear.girth + wear.ease).tenths()
    );
    let miss = Length::mm((wear.ease - room).value().abs()).tenths();
    let named = fit(room.value()).map(|fit| format!("; as it is the fit is {}", fit.name)).unwrap_or_default();
    let help = format!("make the row {miss} {way}, or write another `ease:`{named}");
    Remark::new(code, headline).at(strand.length_place).help(help)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample;

    fn ring(inside_girth: f64) -> Ring {
        Ring {
            strand: 0,
            inside_girth,
            longest_girth: inside_girth,
            round: sample::drape().strands[0].clone(),
            closing: Vec::new(),
        }
    }

    #[test]
    fn room_within_half_a_fits_range() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        design.wear.girth = Length::mm(160.0);
        design.wear.ease = Length::mm(12.0);
        let mut codes = |inside_girth: f64| {
            drape.rings = vec![ring(inside_girth)];
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
        drape.rings = vec![ring(158.0)];
        assert_eq!(sample::codes(&check(&design, &drape)), []);
        design.wear.ease = Length::mm(5.0);
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::RingTight]);
    }
}
