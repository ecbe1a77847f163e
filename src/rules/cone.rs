//! Ends gathered under a cone: the pin through its tip, the eye and the crimps inside.
//!
//! The inside is taken to narrow evenly from the mouth to the tip. The pin's eye is drawn in until
//! it jams, the strands' loops hang from it, and the crimps lie below the loops. The eye's outside
//! diameter is an assumption, so what follows from it are warnings.

use crate::design::{Design, End, Finding, Part};
use crate::pattern::FindingKind;
use crate::remark::{Code, Remark};
use crate::trade::packing::packing_ratio;
use crate::units::Length;

use super::pin;

/// Outside diameter in mm of the eye that gathers the strands.
const EYE: f64 = pin::LOOP;

/// Remarks about the cones of both sides.
pub fn check(design: &Design) -> Vec<Remark> {
    let sides = [(&design.closure.left, 0), (&design.closure.right, 1)];
    let cones = sides.into_iter().filter_map(|(parts, end)| Gathering::of(parts, end, design));
    cones.flat_map(|gathering| gathering.remarks()).collect()
}

/// Strand ends gathered under a cone.
struct Gathering<'a> {
    cone: &'a Finding,
    pin: Option<&'a Finding>,
    ends: Vec<Ended<'a>>,
}

/// A strand's end under a cone.
struct Ended<'a> {
    crimp: Option<&'a Finding>,
    bight: f64,
    cord: f64,
}

impl<'a> Gathering<'a> {
    /// The gathering of a side whose first finding, but for the pin, is a cone.
    fn of(parts: &[Part], end: usize, design: &'a Design) -> Option<Self> {
        let mut findings = parts.iter().map(|part| &design.findings[part.finding]).peekable();
        let pin = findings.next_if(|finding| finding.kind == FindingKind::EyePin);
        let cone = findings.next_if(|finding| finding.kind == FindingKind::Cone)?;
        let ends = design.strands.iter().map(|strand| {
            let cord = design.cords[strand.cord].diameter.value();
            ended(&strand.ends[end], cord, design)
        });
        Some(Self { cone, pin, ends: ends.collect() })
    }

    fn remarks(&self) -> Vec<Remark> {
        let Some(pin) = self.pin else { return self.crimps(0.0).into_iter().collect() };
        let through = pin::through(pin, &self.cone.name, self.cone.tip, self.cone.place);
        let eye = self.eye_outside().or_else(|| self.eye_pulls_out());
        let seated = if eye.is_some() { None } else { self.crimps(self.seat()) };
        let long = pin::long_enough(pin, self.seat());
        [through, long, eye, self.loops(pin), seated].into_iter().flatten().collect()
    }

    /// Inside diameter at a distance from the tip.
    fn inside(&self, from_tip: f64) -> f64 {
        let (tip, mouth) = (self.cone.tip.value(), self.cone.inside.value());
        tip + (mouth - tip) * (from_tip / self.cone.length.value()).min(1.0)
    }

    /// How far below the tip the eye's centre jams.
    fn seat(&self) -> f64 {
        let (tip, mouth) = (self.cone.tip.value(), self.cone.inside.value());
        let jams = if mouth > tip { (EYE - tip) / (mouth - tip) * self.cone.length.value() } else { 0.0 };
        jams.max(EYE / 2.0)
    }

    fn warn(&self, code: Code, headline: String) -> Option<Remark> {
        Some(Remark::new(code, headline).at(self.cone.place))
    }

    fn eye_outside(&self) -> Option<Remark> {
        if self.cone.inside.value() >= EYE {
            return None;
        }
        let (cone, inside) = (&self.cone.name, self.cone.inside.hundredths());
        let headline = format!("{cone} is {inside} inside; a pin's eye of about {EYE} mm does not go in");
        Some(self.warn(Code::EyeInCone, headline)?.help(format!("use a cone of at least {EYE} mm inside")))
    }

    fn eye_pulls_out(&self) -> Option<Remark> {
        if self.cone.tip.value() < EYE {
            return None;
        }
        let (cone, tip) = (&self.cone.name, self.cone.tip.hundredths());
        let headline = format!("the tip of {cone} is {tip} wide; a pin's eye of about {EYE} mm pulls out through it");
        Some(self.warn(Code::EyeInCone, headline)?.help("use a cone with a narrower tip, or a bead below the tip"))
    }

    /// Every strand's loop passes the eye.
    fn loops(&self, pin: &Finding) -> Option<Remark> {
        let opening = EYE - 2.0 * pin.wire.value();
        let thickest = self.ends.iter().map(|end| end.cord).fold(0.0, f64::max);
        let needed = thickest * packing_ratio(self.count(|_| true));
        if needed <= opening {
            return None;
        }
        let (loops, needed) = (self.ends.len(), Length::mm(needed).hundredths());
        let headline =
            format!("{loops} loops need {needed} in the eye of {}; about {:.2} mm is open", pin.name, opening);
        let help = format!("turn the eye so that {needed} is open inside, or gather the strands on a ring");
        Some(self.warn(Code::EyeTooSmall, headline)?.help(help))
    }

    fn count(&self, counted: impl Fn(&&Ended) -> bool) -> u32 {
        u32::try_from(self.ends.iter().filter(counted).count()).unwrap_or(u32::MAX)
    }

    /// The crimps side by side, where the eye's centre is so far below the tip.
    fn crimps(&self, seat: f64) -> Option<Remark> {
        let crimps = || self.ends.iter().filter_map(|end| Some((end, end.crimp?)));
        let widest = crimps().map(|(_, crimp)| crimp.outside.value()).fold(0.0, f64::max);
        let highest = crimps().map(|(end, _)| end.bight).fold(f64::INFINITY, f64::min);
        let lowest = crimps().map(|(end, crimp)| end.bight + crimp.length.value()).fold(0.0, f64::max);
        let below = seat + if self.pin.is_some() { EYE / 2.0 } else { 0.0 };
        let ratio = packing_ratio(self.count(|end| end.crimp.is_some()));
        if widest == 0.0 {
            return None;
        }
        self.too_wide(widest * ratio, ratio, below + highest).or_else(|| self.peeping(below + lowest))
    }

    fn too_wide(&self, needed: f64, ratio: f64, at: f64) -> Option<Remark> {
        let inside = self.inside(at);
        if needed <= inside || at >= self.cone.length.value() {
            return None;
        }
        let (count, cone) = (self.count(|end| end.crimp.is_some()), &self.cone.name);
        let headline = format!(
            "{count} crimps side by side need {}; {cone} is {} inside where they lie, {} below its tip",
            Length::mm(needed).hundredths(),
            Length::mm(inside).hundredths(),
            Length::mm(at).tenths()
        );
        let fits = Length::mm(inside / ratio).hundredths();
        let help = format!("use crimps of at most {fits} outside, a wider cone, or one crimp for two strands");
        Some(self.warn(Code::CrimpsInCone, headline)?.help(help))
    }

    fn peeping(&self, lowest: f64) -> Option<Remark> {
        let out = lowest - self.cone.length.value();
        if out <= 0.0 {
            return None;
        }
        let (cone, out) = (&self.cone.name, Length::mm(out).tenths());
        let headline = format!("{cone} does not hide the crimps: they stand out of its mouth by {out}");
        Some(self.warn(Code::CrimpsShow, headline)?.help(format!("use a cone longer by {out}, or shorter loops")))
    }
}

fn ended<'a>(end: &End, cord: f64, design: &'a Design) -> Ended<'a> {
    let crimp =
        end.findings.iter().map(|index| &design.findings[*index]).find(|finding| finding.kind == FindingKind::Crimp);
    Ended { crimp, bight: end.bight.value(), cord }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample;

    /// Strands with crimps of 2 mm, gathered by an eye pin in a cone 12 mm long.
    fn gathered(strands: usize, inside: f64) -> Design {
        let mut design = sample::necklace();
        let strand = design.strands[0].clone();
        design.strands = vec![strand; strands];
        let mut pin = sample::finding("eye pin", FindingKind::EyePin);
        pin.wire = Length::mm(0.72);
        let mut cone = sample::finding("cone", FindingKind::Cone);
        (cone.length, cone.inside, cone.tip) = (Length::mm(12.0), Length::mm(inside), Length::mm(1.5));
        design.findings.extend([pin, cone]);
        design.closure.right = vec![sample::part(1), sample::part(2)];
        design
    }

    #[test]
    fn three_crimps_in_a_cone() {
        // Three circles need 2.1547 times one's diameter (packing, proved): 4.309 mm for crimps of 2 mm. A cone of
        // 6.5 mm inside and 1.5 mm at the tip holds an eye of 3 mm at 3.6 mm below the tip; the crimps begin
        // 1.5 + 3 mm further down, where it is 1.5 + 5 × 8.1 / 12 = 4.875 mm wide.
        assert_eq!(sample::codes(&check(&gathered(3, 6.5))), []);
        assert_eq!(sample::codes(&check(&gathered(5, 6.5))), [Code::CrimpsInCone]);
    }

    #[test]
    fn an_eye_jams_or_does_not() {
        assert_eq!(sample::codes(&check(&gathered(1, 2.9))), [Code::EyeInCone]);
        let mut wide = gathered(1, 6.5);
        wide.findings[2].tip = Length::mm(3.0);
        assert_eq!(sample::codes(&check(&wide)), [Code::EyeInCone]);
        wide.findings[2].tip = Length::mm(0.71);
        assert_eq!(sample::codes(&check(&wide)), [Code::PinTooThick]);
    }

    #[test]
    fn loops_fill_the_eye() {
        let mut design = gathered(2, 6.5);
        design.cords[0].diameter = Length::mm(0.779);
        assert_eq!(sample::codes(&check(&design)), []);
        design.cords[0].diameter = Length::mm(0.781);
        assert_eq!(sample::codes(&check(&design)), [Code::EyeTooSmall]);
    }

    #[test]
    fn crimps_hide_in_a_long_cone() {
        let mut design = gathered(2, 6.5);
        design.strands[1].ends[1].bight = Length::mm(4.89);
        assert_eq!(sample::codes(&check(&design)), []);
        design.strands[1].ends[1].bight = Length::mm(4.91);
        assert_eq!(sample::codes(&check(&design)), [Code::CrimpsShow]);
    }
}
