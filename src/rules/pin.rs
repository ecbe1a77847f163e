//! Pins: thin enough for what they carry, long enough for it and the loop.

use crate::design::{Bit, Dangle, Design, Finding, Pin, Strand};
use crate::remark::Remark;
use crate::remark::said::fit::Fit;
use crate::source::Place;
use crate::units::Length;

use super::bead;

/// Remarks about the pins that dangles hang on.
pub fn check(design: &Design) -> Vec<Remark> {
    let on_pins = design.strands.iter().flat_map(Strand::dangles).filter_map(|dangle| {
        let finding = &design.findings[dangle.on?];
        Some((dangle, NamedPin { finding, pin: finding.pin()? }))
    });
    on_pins.flat_map(|(dangle, pin)| on_pin(dangle, pin, design)).collect()
}

/// A pin with its name.
#[derive(Clone, Copy)]
pub struct NamedPin<'a> {
    /// The finding that it is.
    pub finding: &'a Finding,
    /// Its sizes.
    pub pin: &'a Pin,
}

fn on_pin(dangle: &Dangle, pin: NamedPin<'_>, design: &Design) -> Vec<Remark> {
    let beads = dangle.bits.iter().filter_map(bead).map(|index| &design.beads[index]);
    let tight = beads.filter_map(|bead| through(pin, &bead.name, *bead.hole, bead.place));
    let carried = dangle.bits.iter().map(Bit::length).sum();
    tight.chain(long_enough(pin, carried)).collect()
}

/// A pin's wire in a hole.
pub fn through(NamedPin { finding, pin }: NamedPin<'_>, what: &str, hole: Length, place: Place) -> Option<Remark> {
    let said = || Fit::PinTooThick { pin: finding.name.clone(), what: what.to_owned(), wire: pin.wire, hole };
    (pin.wire > hole).then(|| Remark::new(said()).at(place))
}

/// A pin's length for what it carries, in mm, and the loop that is turned after it.
pub fn long_enough(NamedPin { finding, pin }: NamedPin<'_>, carried: f64) -> Option<Remark> {
    let (length, carried) = (pin.length, Length::mm(carried));
    let needed = carried + pin.loop_wire();
    let said = || Fit::PinTooShort { pin: finding.name.clone(), length, carried, needed };
    (needed > length).then(|| Remark::new(said()).at(finding.place))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Foot, Form, nth};
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn a_loop_takes_its_round_of_wire() {
        let told = |length: f64| {
            let pin = sample::pin(Foot::Head, length, 0.5);
            let finding = Finding::new("pin", Form::Pin(pin));
            long_enough(NamedPin { finding: &finding, pin: &pin }, 20.0).map(|remark| remark.code())
        };
        // A loop of 3 mm outside is bent along π × 2.5 mm = 7.854 mm of wire.
        assert_eq!(told(20.0 + 7.86), None);
        assert_eq!(told(20.0 + 7.85), Some(Code::PinTooShort));
    }

    #[test]
    fn beads_on_a_pin() {
        let mut design = sample::necklace().changed(sample::hang_dangle).unwrap();
        assert_eq!(sample::codes(&check(&design)), []);
        let thick = design.beads[nth(0)].hole.value() + 0.01;
        design = design
            .changed(|model| model.findings[nth(1)].form = Form::Pin(sample::pin(Foot::Head, 50.0, thick)))
            .unwrap();
        assert_eq!(sample::codes(&check(&design)), [Code::PinTooThick]);
    }
}
