//! Ends gathered under a cone: the pin through its tip, the eye and the crimps inside.
//!
//! The inside is taken to narrow evenly from the mouth to the tip. The pin's eye is drawn in until
//! the cone is as wide as it, the strands' loops hang from it, and the crimps lie below the loops:
//! the same places from which the design takes the closure's length.

use crate::design::{self, Cone, Design, End, Finding, Part, Strand};
use crate::pattern::{FindingKind, Settle};
use crate::remark::Remark;
use crate::remark::said::hidden::Hidden;
use crate::trade::packing::packing_ratio;
use crate::units::Length;

use super::pin;

/// By how much a cone may stand farther out than the piece's length takes it to: an assumption.
const OUT: Length = Length::mm(2.0);

/// Remarks about the cones of both sides.
pub fn check(design: &Design) -> Vec<Remark> {
    let sides = [(design.closure.left(), 0), (design.closure.right(), 1)];
    let cones = sides.into_iter().filter_map(|(parts, end)| Gathering::of(parts, end, design));
    cones.flat_map(|gathering| gathering.remarks()).collect()
}

/// Strand ends gathered under a cone.
struct Gathering<'a> {
    finding: &'a Finding,
    cone: &'a Cone,
    pin: Option<pin::NamedPin<'a>>,
    /// The thickest cord.
    cord: Length,
    loops: usize,
    crimps: Vec<CrimpPlace<'a>>,
    beads: Vec<NextBead>,
}

/// A bead beside a strand's crimp: how broad it is, and how far below its loop's top its middle lies.
struct NextBead {
    across: Length,
    below: Length,
}

/// A crimp and how far below its loop's top it begins.
struct CrimpPlace<'a> {
    crimp: &'a design::Crimp,
    below: Length,
}

impl<'a> Gathering<'a> {
    /// The gathering of a side whose first finding, but for the pin, is a cone.
    fn of(parts: &[Part], end: usize, design: &'a Design) -> Option<Self> {
        let mut findings = parts.iter().map(|part| &design.findings[part.finding]).peekable();
        let pin = findings.next_if(|finding| finding.kind() == FindingKind::EyePin);
        let pin = pin.and_then(|finding| Some(pin::NamedPin { finding, pin: finding.pin()? }));
        let finding = findings.next()?;
        let cone = finding.cone()?;
        let cords = design.strands.iter().map(|strand| strand.cord_width(design));
        let crimps = design.strands.iter().filter_map(|strand| crimp(&strand.ends[end], design));
        let beads = design.strands.iter().filter_map(|strand| beside(strand, end, design)).collect();
        let loops = design.strands.len();
        Some(Self { finding, cone, pin, cord: longest(cords), loops, crimps: crimps.collect(), beads })
    }

    fn remarks(&self) -> Vec<Remark> {
        let Some(named) = self.pin else { return self.below(Length::ZERO).into_iter().collect() };
        let (pin, finding) = (named.pin, self.finding);
        let seat = self.cone.depth_of(*pin.eye());
        let through = pin::through(named, &finding.name, self.cone.tip, finding.place);
        let misfit = self.eye_outside(named).or_else(|| self.eye_pulls_out(named));
        let hidden = if misfit.is_none() { self.below(seat + *pin.eye() - pin.wire) } else { None };
        [through, pin::long_enough(named, seat.value()), misfit, self.loops_in(named), hidden]
            .into_iter()
            .flatten()
            .collect()
    }

    fn remark(&self, said: impl FnOnce(String) -> Hidden) -> Remark {
        Remark::new(said(self.finding.name.clone())).at(self.finding.place)
    }

    fn eye_outside(&self, pin::NamedPin { finding, pin }: pin::NamedPin<'_>) -> Option<Remark> {
        let (inside, eye) = (self.cone.inside, pin.eye());
        let said =
            |cone| Hidden::EyeOutside { cone, pin: finding.name.clone(), inside, eye: *eye, assumed: eye.is_assumed() };
        (inside < *eye).then(|| self.remark(said))
    }

    fn eye_pulls_out(&self, pin::NamedPin { finding, pin }: pin::NamedPin<'_>) -> Option<Remark> {
        let (tip, eye) = (self.cone.tip, pin.eye());
        let said =
            |cone| Hidden::EyePullsOut { cone, pin: finding.name.clone(), tip, eye: *eye, assumed: eye.is_assumed() };
        (tip >= *eye).then(|| self.remark(said))
    }

    /// Every strand's loop passes the eye.
    fn loops_in(&self, pin::NamedPin { finding, pin }: pin::NamedPin<'_>) -> Option<Remark> {
        let open = pin.open();
        let needed = self.cord * packing_ratio(whole(self.loops));
        let said = |_| Hidden::EyeTooSmall {
            pin: finding.name.clone(),
            loops: self.loops,
            open,
            assumed: pin.eye().is_assumed(),
            needed,
        };
        (needed > open).then(|| self.remark(said))
    }

    /// What lies in the cone where the loops hang so far below the tip.
    fn below(&self, loops: Length) -> Option<Remark> {
        self.crimps_below(loops).or_else(|| self.beads_below(loops))
    }

    /// The beads beside the crimps, where those lie so far in that the beads come to lie inside too.
    fn beads_below(&self, loops: Length) -> Option<Remark> {
        let reach = |bead: &NextBead| loops + bead.below;
        let inside: Vec<_> = self.beads.iter().filter(|bead| reach(bead) < self.cone.length).collect();
        let lowest = Some(longest(inside.iter().map(|bead| reach(bead)))).filter(|_| !inside.is_empty())?;
        let needed = at_least(inside.iter().map(|bead| bead.across).collect());
        let out = self.cone.depth_of(needed) - lowest;
        let said = |cone| Hidden::BeadsInCone { cone, beads: inside.len(), out, needed };
        (needed > self.cone.inside || out > OUT).then(|| self.remark(said))
    }

    /// The crimps, where the loops hang so far below the tip.
    fn crimps_below(&self, loops: Length) -> Option<Remark> {
        let highest = loops + shortest(self.crimps.iter().map(|crimp| crimp.below))?;
        let lowest = loops + longest(self.crimps.iter().map(|crimp| crimp.below + crimp.crimp.length));
        self.too_wide(highest).or_else(|| self.showing(lowest))
    }

    /// The crimps side by side at the depth at which the highest begins.
    fn too_wide(&self, depth: Length) -> Option<Remark> {
        let ratio = packing_ratio(whole(self.crimps.len()));
        let needed = longest(self.crimps.iter().map(|crimp| crimp.crimp.outside)) * ratio;
        let inside = self.cone.width_at(depth);
        let (crimps, broadest) = (self.crimps.len(), inside * (1.0 / ratio));
        let said = |cone| Hidden::CrimpsInCone { cone, crimps, inside, depth, broadest, needed };
        (needed > inside && depth < self.cone.length).then(|| self.remark(said))
    }

    fn showing(&self, lowest: Length) -> Option<Remark> {
        let out = lowest - self.cone.length;
        (out > Length::ZERO).then(|| self.remark(|cone| Hidden::CrimpsShow { cone, out }))
    }
}

fn crimp<'a>(end: &End, design: &'a Design) -> Option<CrimpPlace<'a>> {
    let crimp = end.findings.iter().find_map(|index| design.findings[*index].crimp())?;
    Some(CrimpPlace { crimp, below: end.bight.unwrap_or_default() })
}

/// The bead beside an end of a strand whose beads lie end to end.
fn beside(strand: &Strand, end: usize, design: &Design) -> Option<NextBead> {
    let bit = if end == 0 { strand.bits().next() } else { strand.bits().last() }?;
    let half = if end == 0 { bit.before } else { bit.after };
    let bead = bit.what.bead().filter(|_| strand.settle == Settle::Fill)?;
    Some(NextBead { across: design.beads[bead].across, below: strand.ends[end].takes + Length::mm(half) })
}

/// What circles side by side need at least: as much as the two broadest, and as much as if all were as small as the
/// smallest.
fn at_least(mut broad: Vec<Length>) -> Length {
    broad.sort_by(|one, other| other.value().total_cmp(&one.value()));
    let two = broad.iter().copied().take(2).sum::<Length>();
    let alike = broad.last().map_or(Length::ZERO, |least| *least * packing_ratio(whole(broad.len())));
    two.max(alike)
}

fn longest(lengths: impl Iterator<Item = Length>) -> Length {
    lengths.fold(Length::ZERO, Length::max)
}

fn shortest(lengths: impl Iterator<Item = Length>) -> Option<Length> {
    lengths.reduce(Length::min)
}

fn whole(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Foot, Form, Joins, nth};
    use crate::remark::Code;
    use crate::rules::sample;

    fn cone(length: f64, inside: f64, tip: f64) -> Form {
        let [length, inside, tip] = [length, inside, tip].map(Length::mm);
        Form::Cone(Cone::new(length, inside, tip))
    }

    /// Strands with crimps of 2 mm, gathered by an eye pin in a cone 12 mm long.
    fn gathered(strands: usize, inside: f64) -> Design {
        let pin = Finding::new("eye pin", Form::Pin(sample::pin(Foot::Eye, 50.0, 0.72)));
        let gathered = sample::necklace().changed(|model| {
            model.strands = vec![model.strands[nth(0)].clone(); strands].into();
            model.findings.extend([pin, Finding::new("cone", cone(12.0, inside, 1.5))]);
            model.closure.joins = Joins::sides(Vec::new(), [1, 2].map(|at| Part::new(nth(at), Length::ZERO)).to_vec());
        });
        gathered.unwrap()
    }

    #[test]
    fn three_crimps_in_a_cone() {
        // Three circles need 2.1547 times one's diameter (packing, proved): 4.309 mm for crimps of 2 mm. A cone of
        // 6.5 mm inside and 1.5 mm at the tip is 3 mm wide, like the eye, 3.6 mm below the tip; the loops hang from
        // there by the eye, 3 mm less a wire of 0.72 mm, and the crimps begin 3 mm further down, where the cone is
        // 1.5 + 5 × 8.88 / 12 = 5.2 mm wide. Five need 5.4026 mm.
        assert_eq!(sample::codes(&check(&gathered(3, 6.5))), []);
        assert_eq!(sample::codes(&check(&gathered(5, 6.5))), [Code::CrimpsInCone]);
    }

    #[test]
    fn an_eye_jams_or_does_not() {
        assert_eq!(sample::codes(&check(&gathered(1, 2.9))), [Code::EyeInCone]);
        let mut wide = gathered(1, 6.5).changed(|model| model.findings[nth(2)].form = cone(12.0, 6.5, 3.0)).unwrap();
        assert_eq!(sample::codes(&check(&wide)), [Code::EyeInCone]);
        wide = wide.changed(|model| model.findings[nth(2)].form = cone(13.0, 6.5, 0.71)).unwrap();
        assert_eq!(sample::codes(&check(&wide)), [Code::PinTooThick]);
    }

    #[test]
    fn loops_fill_the_eye() {
        let mut design = gathered(2, 6.5).changed(|model| model.cords[nth(0)].diameter = Length::mm(0.779)).unwrap();
        assert_eq!(sample::codes(&check(&design)), []);
        design = design.changed(|model| model.cords[nth(0)].diameter = Length::mm(0.781)).unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::EyeTooSmall]);
    }

    #[test]
    fn crimps_hide_in_a_long_cone() {
        let mut design =
            gathered(2, 6.5).changed(|model| model.strands[nth(1)].ends[1].bight = Some(Length::mm(4.11))).unwrap();
        assert_eq!(sample::codes(&check(&design)), []);
        design = design.changed(|model| model.strands[nth(1)].ends[1].bight = Some(Length::mm(4.13))).unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::CrimpsShow]);
    }
}
