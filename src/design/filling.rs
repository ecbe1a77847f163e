//! How often a list is strung that fills its strand.

use crate::pattern;
use crate::pattern::bounds::MOST_STRUNG;
use crate::remark::{Code, Remark};
use crate::units::Length;

use super::Context;
use super::expand::List;
use super::round::Row;
use super::row;

/// How often `repeat: fill` strings its list: as often as whole repeats fit.
pub fn fill(
    strand: &pattern::Strand,
    list: &List<'_>,
    length: Option<Length>,
    takes: f64,
    context: &mut Context,
) -> Option<u32> {
    if !list.has_fill() {
        return Some(1);
    }
    let place = strand.beads.place;
    let Some(length) = length else {
        let remark = Remark::new(Code::NoFill, format!("strand {}: nothing to fill", strand.name.value)).at(place);
        return context.refuse(remark.help("write the strand's `length:`, or in `wear:` the girth that it goes round"));
    };
    let leave = strand.leave.as_ref().map_or(0.0, |at| at.value.value());
    let room = length.value() - takes - leave;
    largest(|fill| list.fits(fill, room)).or_else(|| {
        let least = list.length(1);
        let headline = format!(
            "strand {}: what fills it finds {:.1} mm of room, but once takes {least:.1} mm",
            strand.name.value,
            room.max(0.0)
        );
        let help = format!("make the strand at least {:.0} mm long, or leave less", (least + takes + leave).ceil());
        context.refuse(Remark::new(Code::NoFill, headline).at(place).help(help))
    })
}

/// How often `repeat: fill` strings its list round its wearer.
pub fn round(strand: &pattern::Strand, list: &List<'_>, row: &Row<'_>, asked: Length) -> u32 {
    let leave = strand.leave.as_ref().map_or(0.0, |at| at.value.value());
    let most = list.most(MOST_STRUNG);
    row.nearest(asked.value() - leave, most, |times| row::bits(&list.row(times), row.stock.beads))
}

/// The largest number, at least 1, that fits, where all smaller ones do.
pub fn largest(fits: impl Fn(u32) -> bool) -> Option<u32> {
    if !fits(1) {
        return None;
    }
    let mut over = 2;
    while over < u32::MAX / 2 && fits(over) {
        over *= 2;
    }
    let (mut low, mut high) = (over / 2, over);
    while high - low > 1 {
        let middle = low.midpoint(high);
        *if fits(middle) { &mut low } else { &mut high } = middle;
    }
    Some(low)
}
