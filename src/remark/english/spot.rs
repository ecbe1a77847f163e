//! What stands where it may not, in English.

use crate::english::{any, commas};
use crate::remark::said::spot::{Misplaced, Spot};

/// What was found.
pub fn headline(said: &Misplaced) -> String {
    let plain = match said {
        Misplaced::Finding { id, kind, spot, .. } => {
            return format!("`{id}` is a finding of kind {kind}, which does not stand {}", words(*spot));
        }
        Misplaced::ClosedRing { id } => return format!("`{id}` is closed for good, and nothing can be hung in it"),
        Misplaced::NoLength { id } => return format!("how long is the piece of chain `{id}` here?"),
        Misplaced::NoCrimp { id } => return format!("`{id}` goes with a crimp, and none is among these `ends`"),
        Misplaced::NestedStop => "a stop stands in the strand's own list, not inside a repeat, mirror or dangle",
        Misplaced::FillInDangle => "`repeat: fill` has no length to fill in a dangle",
        Misplaced::NestedRow => "only in the strand's own list has a row all of its room to fill",
        Misplaced::DangleInDangle => "a dangle hangs from a strand, not from another dangle",
        Misplaced::LinksInDangle => "links are counted along the strand's chain, and a dangle has none",
        Misplaced::KnotInDangle => "a knot is tied in a strand's cord, and a dangle has none",
        Misplaced::StopAmongFixed => "stops divide only strands whose beads slide or are spread",
        Misplaced::StopOutside => "this stop lies outside its stretch of the strand",
        Misplaced::FillWithStops => "`repeat: fill` does not go with stops: say how many",
    };
    plain.to_owned()
}

/// What to change.
pub fn help(said: &Misplaced) -> String {
    let plain = match said {
        Misplaced::Finding { kind, fit, kinds, .. } => {
            let fit = any(&fit.iter().map(|spot| words(*spot)).collect::<Vec<_>>());
            return format!("a finding of kind {kind} stands {fit}; here one of kind {}", commas(kinds));
        }
        Misplaced::NoLength { id } => return format!("add `length:` to the finding `{id}`"),
        Misplaced::NoCrimp { id } => return format!("write a crimp beside it, like `ends: [crimp, {id}]`"),
        Misplaced::ClosedRing { .. } => "hang the dangle on a jump ring that opens",
        Misplaced::NestedStop => "write each stop with its `at:` between the strand's own entries",
        Misplaced::FillInDangle => "say how many times",
        Misplaced::NestedRow => "write how many beads it has, or of a graduated row its `length:`",
        Misplaced::DangleInDangle => {
            "string its beads on the dangle itself, or give it a place of its own on the strand"
        }
        Misplaced::LinksInDangle => "take them out, or hang the dangle on a finding of kind chain",
        Misplaced::KnotInDangle => "take it out; what hangs on a pin is held by the pin's head",
        Misplaced::StopAmongFixed | Misplaced::StopOutside | Misplaced::FillWithStops => {
            "see the stop's explanation: `festoon explain misplaced-stop`"
        }
    };
    plain.to_owned()
}

/// The place in words, behind "stands".
const fn words(spot: Spot) -> &'static str {
    match spot {
        Spot::Ends => "among the `ends` of a strand",
        Spot::Side => "on a side of the `closure`",
        Spot::BothEnds => "on `both ends` of an earring",
        Spot::Hanger => "as what a dangle hangs `on`",
        Spot::Stop => "as a `stop`",
        Spot::Strung => "among the beads",
        Spot::Open => "on a side of an open `closure`",
        Spot::Meeting => "where `both ends` of a piece meet",
    }
}
