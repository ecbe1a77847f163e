//! Which numbers of a design's parts are none that such a part can have.

use crate::design::assorted::{Assorted, Pack};
use crate::design::finding::Finding;
use crate::design::joins::{Closure, Joins, Part, WornOpen};
use crate::design::model::{Phrase, Price, Rest, Strand, Wear, What};
use crate::design::resting::SAME;
use crate::design::stock::{Bead, Cord, Lot, Sold};
use crate::pattern::Overhead;
use crate::units::Length;

use super::each;

pub fn is_sized(bead: &Bead) -> bool {
    let bores = bead.bores.is_none_or(|bores| bores.count > 1 && positive(bores.apart));
    let sizes = [bead.across, bead.along, *bead.thick, *bead.hole].into_iter().chain(bead.pitch);
    let amounts = [bead.mass.value(), bead.tolerance.value()];
    bores && sizes.into_iter().all(positive) && amounts.into_iter().all(amount) && is_sold(bead.sold.as_ref())
}

pub fn is_thick(cord: &Cord) -> bool {
    let sizes = [Some(cord.diameter), cord.coil, cord.link];
    let amounts = [cord.take_up.value(), cord.mass_per_metre.value(), *cord.stiffness];
    let holds = cord.strength.is_none_or(|strength| above(strength.value()))
        && cord.wire.as_ref().is_none_or(|wire| *wire.filaments > 0);
    holds && sizes.into_iter().flatten().all(positive) && amounts.into_iter().all(amount) && is_sold(cord.sold.as_ref())
}

pub fn is_measured(finding: &Finding) -> bool {
    let holes = finding.bar().is_none_or(|bar| bar.holes > 0);
    let sizes = finding.form.lengths().into_iter().all(positive);
    holes && sizes && amount(finding.mass.value()) && is_sold(finding.sold.as_ref())
}

/// Whether a lot of it holds some.
fn is_sold(sold: Option<&Sold>) -> bool {
    sold.is_none_or(|sold| match sold.lot {
        Lot::Strand(length) | Lot::Length(length) => positive(length),
        Lot::Hank(strands, length) => strands > 0 && positive(length),
        Lot::Pack(count) => count > 0,
        Lot::Grams(mass) => above(mass.value()),
        Lot::Each => true,
    })
}

pub fn is_packed(assorted: &Assorted) -> bool {
    let by_size = match assorted.pack {
        Pack::Strand(length) => length.is_none_or(positive),
        Pack::Mix(mass) => mass.is_none_or(|mass| amount(mass.value())),
    };
    by_size && assorted.holds.iter().all(|held| held.parts > 0)
}

/// Whether its parts have lengths, none longer closed short than closed long, and so has its tail where it is worn
/// through a ring.
pub fn is_closing(closure: &Closure) -> bool {
    let has_lengths = |part: &Part| {
        amount(part.least.value())
            && part.least <= part.reach
            && amount(part.reach.value())
            && part.cut.is_none_or(positive)
    };
    let tail = if let Joins::Open(_, WornOpen::Through(tail)) = closure.joins { Some(*tail) } else { None };
    closure.parts().all(has_lengths) && tail.is_none_or(positive)
}

pub fn is_worn(wear: &Wear) -> bool {
    let build = &wear.build;
    let body = positive(wear.girth) && positive(wear.narrowest) && amount(wear.ease.value());
    body && above(*build.breadth_to_depth) && amount(*build.chest_tilt)
}

pub fn is_asked(price: &Price) -> bool {
    let share = if let Overhead::Percent(share) = *price.overhead { share } else { 0.0 };
    [price.hours, share, *price.wholesale, *price.retail].into_iter().all(amount)
}

pub fn is_numbered(strand: &Strand) -> bool {
    let ends = strand.ends.iter().flat_map(|end| [end.bight, Some(end.takes), end.take_up]).flatten();
    let own = [strand.finished, *strand.take_up, strand.slack, *strand.allowance, strand.aside];
    let bits = each(strand.bits()).into_iter().all(|bit| {
        let drop = if let What::Dangle(dangle) = &bit.what { dangle.drop } else { 0.0 };
        [bit.before, bit.after, drop].into_iter().all(f64::is_finite) && amount(bit.length()) && amount(bit.mass)
    });
    let filled = strand.fill.as_ref().is_none_or(|fill| fill.times > 0 && amount(fill.leave.value()));
    let lengths = ends.chain(own).all(|length| amount(length.value()));
    let rests = strand.trains.iter().all(|train| is_resting(train.rest));
    strand.legs > 0 && bits && filled && lengths && rests && is_counted(&strand.chart)
}

fn is_resting(rest: Rest) -> bool {
    match rest {
        Rest::At(start) => start.is_finite(),
        Rest::Free(from, to) => from.is_finite() && to.is_finite() && from <= to + SAME,
    }
}

/// Whether a chart has as many of everything as there can be, and gaps as long.
fn is_counted(chart: &[Phrase]) -> bool {
    chart.iter().all(|phrase| match phrase {
        Phrase::Run(count, _) | Phrase::Links(count) => *count > 0,
        Phrase::Times(count, list) => *count > 0 && is_counted(list),
        Phrase::Ordered(list) | Phrase::Dangle(_, list) => is_counted(list),
        Phrase::Mirror(side, middle) => is_counted(side) && is_counted(middle),
        Phrase::Gap(length) => amount(length.value()),
        Phrase::Finding(_) | Phrase::Stop(..) | Phrase::Knot => true,
    })
}

/// Whether something is a number, and more than nothing.
pub fn positive(length: Length) -> bool {
    above(length.value())
}

/// The same of a bare number.
pub fn above(number: f64) -> bool {
    number.is_finite() && number > 0.0
}

/// Whether something is a number, and not less than nothing.
pub fn amount(number: f64) -> bool {
    number.is_finite() && number >= 0.0
}
