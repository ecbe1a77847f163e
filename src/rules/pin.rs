//! Pins: thin enough for what they carry, long enough for it and the loop.

use crate::design::{Bit, Dangle, Design, Finding};
use crate::remark::{Code, Remark};
use crate::source::Place;
use crate::units::Length;

use super::{bead, dangles};

/// Remarks about the pins that dangles hang on.
pub fn check(design: &Design) -> Vec<Remark> {
    let on_pins = design.strands.iter().flat_map(dangles).filter(|dangle| design.findings[dangle.on].is_pin());
    on_pins.flat_map(|dangle| on_pin(dangle, design)).collect()
}

fn on_pin(dangle: &Dangle, design: &Design) -> Vec<Remark> {
    let pin = &design.findings[dangle.on];
    let beads = dangle.bits.iter().filter_map(bead).map(|index| &design.beads[index]);
    let tight = beads.filter_map(|bead| through(pin, &bead.name, bead.hole, bead.place));
    let carried = dangle.bits.iter().map(Bit::length).sum();
    tight.chain(long_enough(pin, carried)).collect()
}

/// A pin's wire in a hole.
pub fn through(pin: &Finding, what: &str, hole: Length, place: Place) -> Option<Remark> {
    (pin.wire > hole).then(|| {
        let (least, most) = (pin.wire.at_least(2), hole.at_most(2));
        let (wire, hole) = (pin.wire.hundredths(), hole.hundredths());
        let headline = format!("{} is {wire} thick and does not pass through {what} with its hole of {hole}", pin.name);
        let help = format!("use a pin of at most {most}, or a hole of at least {least}");
        Remark::new(Code::PinTooThick, headline).at(place).help(help)
    })
}

/// A pin's length for what it carries, in mm, and the loop that is turned after it.
pub fn long_enough(pin: &Finding, carried: f64) -> Option<Remark> {
    let needed = carried + pin.loop_wire().value();
    (needed > pin.length.value()).then(|| {
        let (needed, carried) = (Length::mm(needed).at_least(1), Length::mm(carried).tenths());
        let headline = format!("{} is {} long; {carried} and the loop need {needed}", pin.name, pin.length.tenths());
        Remark::new(Code::PinTooShort, headline).at(pin.place).help(format!("use a pin of at least {needed}"))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::rules::sample;

    #[test]
    fn a_loop_takes_its_round_of_wire() {
        let mut pin = sample::finding("pin", crate::pattern::FindingKind::HeadPin);
        pin.wire = Length::mm(0.5);
        // A loop of 3 mm outside is bent along π × 2.5 mm = 7.854 mm of wire.
        pin.length = Length::mm(20.0 + 7.86);
        assert_eq!(long_enough(&pin, 20.0), None);
        pin.length = Length::mm(20.0 + 7.85);
        assert_eq!(long_enough(&pin, 20.0).map(|remark| remark.code), Some(Code::PinTooShort));
    }

    #[test]
    fn beads_on_a_pin() {
        let mut design = sample::necklace();
        sample::hang_dangle(&mut design);
        assert_eq!(sample::codes(&check(&design)), []);
        design.findings[nth(1)].wire = design.beads[nth(0)].hole + Length::mm(0.01);
        assert_eq!(sample::codes(&check(&design)), [Code::PinTooThick]);
    }
}
