//! Whether a closed bracelet or anklet has the room that the pattern asks for. Of several strands the
//! tightest decides: the others are not in its way.

use crate::design::{Design, FillRepeat, Wear, limb};
use crate::drape::{self, Drape, Ring};
use crate::pattern::{CordKind, Kind};
use crate::remark::Remark;
use crate::remark::said::ring::{Count, Misfit, Remedy, Ring as Said};
use crate::trade::ease::fit;
use crate::units::Length;

/// How far the room may miss what was asked for, in mm: less than half of what the narrowest named fit spans,
/// 6 mm. An assumption.
const SLACK: f64 = 2.5;
/// How many times a girth the room beyond it is at which a ring falls off over the hand or the heel: these measure up to
/// about one and a half times the wrist or ankle (from memory, no source).
const OVER_HAND: f64 = 0.5;
/// No more counts of repeats than this are tried.
const COUNTS: u32 = 40;

/// Remarks about the inside of the tightest ring, and about the others beside it.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    inside(design, drape).into_iter().chain(uneven(design, drape)).collect()
}

/// A remark about the inside of the tightest ring.
fn inside(design: &Design, drape: &Drape) -> Vec<Remark> {
    let Some(ring) = drape.ring().filter(|_| !design.wear.is_guessed() && design.sprung().is_none()) else {
        return Vec::new();
    };
    let Wear { narrowest: girth, ease: asked, .. } = design.wear;
    let is_limb = design.heading.kind != Kind::Necklace;
    let room = |inside: f64| Length::mm(inside) - girth;
    let (least, most) = (room(ring.inside_girth), room(ring.longest_girth));
    let slack = Length::mm(SLACK);
    let stretches = design.cords[design.strands[ring.strand].cord].kind == CordKind::Elastic;
    let found = if most < Length::ZERO && !stretches {
        (Misfit::TooShort, most)
    } else if !is_limb {
        // How close a necklace lies is a matter of taste.
        return Vec::new();
    } else if most < *asked - slack {
        (Misfit::Tight, most)
    } else if least > girth * OVER_HAND {
        (Misfit::FallsOff, least)
    } else if least > *asked + slack {
        (Misfit::Loose, least)
    } else {
        return Vec::new();
    };
    vec![remark(found, ring, design)]
}

/// The row that stands off farthest beside the tightest, where it does so by more than rows may miss what is asked for.
fn uneven(design: &Design, drape: &Drape) -> Option<Remark> {
    let tight = drape.ring()?;
    let loose = drape.rings.iter().max_by(|one, other| one.inside_girth.total_cmp(&other.inside_girth))?;
    let more = Length::mm(loose.inside_girth - tight.inside_girth);
    (more.value() > 2.0 * SLACK).then(|| {
        let [one, other] = [loose, tight].map(|ring| &design.strands[ring.strand]);
        let insides = [loose, tight].map(|ring| Length::mm(ring.inside_girth));
        let strands = [one, other].map(|strand| strand.name.clone());
        Remark::new(Said::UnevenRows { strands, insides }).at(one.length_place)
    })
}

fn remark((misfit, room): (Misfit, Length), ring: &Ring, design: &Design) -> Remark {
    let (strand, wear) = (&design.strands[ring.strand], &design.wear);
    let is_one = design.strands.len() < 2 || design.twist.is_some();
    let by_length = || Remedy::Length {
        by: Length::mm((*wear.ease - room).value().abs() * f64::from(design.rounds())),
        twisted: design.twist.is_some(),
        fit: fit(room.value()).map(|fit| fit.fit),
    };
    let said = Said::Round {
        misfit,
        strand: Some(strand.name.clone()).filter(|_| !is_one),
        hooked: ring.longest_girth > ring.inside_girth,
        limb: limb(design.heading.kind),
        girth: wear.narrowest,
        room,
        ease: *wear.ease,
        assumed: wear.ease.is_assumed(),
        remedy: repeats(design, ring, misfit).unwrap_or_else(by_length),
    };
    Remark::new(said).at(strand.length_place)
}

/// What to do about a row that fills its length: which count of repeats fits, or between which two none does.
fn repeats(design: &Design, ring: &Ring, misfit: Misfit) -> Option<Remedy> {
    // Twisted strands change together.
    let fill = design.strands[ring.strand].fill.as_ref().filter(|_| design.twist.is_none())?;
    if fill.ones.is_empty() {
        return Some(Remedy::Nearest);
    }
    let asked = (design.wear.narrowest + *design.wear.ease).value();
    let refills = Refills { design, ring, fill, asked, fewer: misfit.is_wide() };
    let mut last = refills.near()?;
    for _ in 1..COUNTS {
        let next = refills.made(refills.towards(last.times, 1)?)?;
        if refills.reaches(&next) {
            return Some(advice((fill.times, fill.ones.len() > 1), asked, &[last, next]));
        }
        last = next;
    }
    None
}

/// A strand's other counts of repeats, fewer or more.
struct Refills<'a> {
    design: &'a Design,
    ring: &'a Ring,
    fill: &'a FillRepeat,
    /// The girth in mm that it is to go round.
    asked: f64,
    fewer: bool,
}

impl Refills<'_> {
    fn towards(&self, from: u32, steps: u32) -> Option<u32> {
        if self.fewer { from.checked_sub(steps) } else { from.checked_add(steps) }
    }

    /// Whether it goes round what is asked for at last, or no more.
    fn reaches(&self, tried: &TriedRing) -> bool {
        (tried.inside < self.asked) == self.fewer
    }

    fn girth(&self, ring: &Ring) -> f64 {
        if self.fewer { ring.inside_girth } else { ring.longest_girth }
    }

    fn made(&self, times: u32) -> Option<TriedRing> {
        let strand = self.ring.strand;
        let other = self.design.refilled(strand, times)?;
        let closed = drape::hang(&other, None).ok()?.rings.into_iter().find(|ring| ring.strand == strand)?;
        let finished = other.strands[strand].finished + self.fill.leave;
        Some(TriedRing { times, inside: self.girth(&closed), finished })
    }

    /// The count from which to look. A repeat more or less changes the inside by nearly its length, or its share of each
    /// time round: what is far off is not walked to.
    fn near(&self) -> Option<TriedRing> {
        let (strand, times) = (self.ring.strand, self.fill.times);
        let finished = self.design.strands[strand].finished;
        let here = TriedRing { times, inside: self.girth(self.ring), finished };
        let next = self.design.refilled(strand, self.towards(times, 1)?)?;
        let one = (next.strands[strand].finished - finished).value().abs() / f64::from(self.design.rounds());
        let leap = ((here.inside - self.asked).abs() / one - 2.0).max(0.0) as u32;
        let landed = self.made(self.towards(times, leap)?)?;
        Some(if self.reaches(&landed) { here } else { landed })
    }
}

/// A ring with so many repeats in its row.
struct TriedRing {
    times: u32,
    inside: f64,
    finished: Length,
}

impl TriedRing {
    const fn count(&self) -> Count {
        Count { times: self.times, inside: Length::mm(self.inside) }
    }
}

/// Of the two counts between which the size lies that is asked for, the nearer where it is near enough.
fn advice((now, sides): (u32, bool), asked: f64, tried: &[TriedRing; 2]) -> Remedy {
    let miss = |tried: &TriedRing| (tried.inside - asked).abs();
    let [before, beyond] = tried;
    let nearer = if miss(before) < miss(beyond) { before } else { beyond };
    if miss(nearer) <= SLACK {
        Remedy::Repeats { count: nearer.count(), now, sides, length: nearer.finished }
    } else {
        Remedy::ShorterList { counts: [before.count(), beyond.count()], sides }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Stated, nth};
    use crate::remark::Code;
    use crate::rules::sample;

    fn ring(inside_girth: f64) -> Ring {
        Ring {
            strand: nth(0),
            inside_girth,
            longest_girth: inside_girth,
            round: sample::drape().strands[nth(0)].clone(),
            closing: Vec::new(),
            coil: None,
        }
    }

    #[test]
    fn room_within_half_a_fits_range() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        design = design
            .changed(|model| {
                model.heading.kind = Kind::Bracelet;
                model.wear.narrowest = Length::mm(160.0);
                model.wear.ease = Stated::Stated(Length::mm(12.0));
            })
            .unwrap();
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
        design = design
            .changed(|model| {
                model.cords[nth(0)].kind = CordKind::Elastic;
                model.heading.kind = Kind::Bracelet;
                model.wear.narrowest = Length::mm(160.0);
            })
            .unwrap();
        drape.rings = vec![ring(158.0)];
        assert_eq!(sample::codes(&check(&design, &drape)), []);
        design = design.changed(|model| model.wear.ease = Stated::Stated(Length::mm(5.0))).unwrap();
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::RingTight]);
    }
}
