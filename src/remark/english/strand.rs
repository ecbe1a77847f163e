//! What is said about strands, their lengths and their lists, in English.

use crate::remark::said::strand::{Fewer, Strand};

/// What was found.
pub fn headline(said: &Strand) -> String {
    match said {
        Strand::None => "there is no strand".to_owned(),
        Strand::NothingLeft { strand } => format!("strand {strand}: this size leaves no length at all"),
        Strand::NoLength { strand, settle } => format!("strand {strand}: `settle: {settle}` needs a length"),
        Strand::Unchanged { strand } => format!("strand {strand}: nothing of it changes with a size or measure"),
        Strand::OnPin { strand } => {
            format!("strand {strand} hangs on a pin, and the piece has nothing above for it to hang from")
        }
        Strand::IdleOnPin { strand, key } => format!("strand {strand} hangs on a pin, where `{key}` has no meaning"),
        Strand::Allowance { strand } => {
            format!("strand {strand}: a chain has no allowance, its end links are hung whole")
        }
        Strand::Filled { strand, length } => format!("strand {strand}: filled, it becomes {} long", length.tenths()),
        Strand::FillShort { strand, length, short } => {
            format!(
                "strand {strand}: whole repeats make it {}, {} short of its length",
                length.tenths(),
                short.tenths()
            )
        }
        Strand::NothingToFill { strand } => format!("strand {strand}: nothing to fill"),
        Strand::NoRoom { strand, room, is_row, takes, .. } => {
            let what = if *is_row { "the shortest row" } else { "once" };
            let (room, takes) = (room.value(), takes.value());
            format!("strand {strand}: what fills it finds {room:.1} mm of room, but {what} takes {takes:.1} mm")
        }
        Strand::NoOrder { strand } => format!("strand {strand}: no order keeps the beads of its row so far apart"),
        Strand::Overfull { strand, over, .. } => {
            format!("strand {strand}: the beads are {} longer than the strand", over.at_least(1))
        }
        Strand::StretchOverfull { strand, over } => {
            let over = over.at_least(1);
            format!("strand {strand}: the beads between two stops are {over} longer than their stretch")
        }
        Strand::TooManyBeads { most, with_variants } => {
            let with = if *with_variants { " with its sizes and colourways" } else { "" };
            format!("the piece{with} would hold more than {most} beads, knots and spaces")
        }
        Strand::TooManyFindings { most } => {
            format!("the piece would hold more than {most} findings among its beads")
        }
        Strand::TooManyEntries { most } => {
            format!("the piece's bead lists have more than {most} entries, beads without order counted")
        }
        Strand::LinkUnknown => "how long are the links of this strand?".to_owned(),
        Strand::NothingStrung => "there is nothing here to string".to_owned(),
    }
}

/// What to change.
pub fn help(said: &Strand) -> String {
    let plain = match said {
        Strand::NoRoom { needs, .. } => {
            return format!("make the strand at least {:.0} mm long, or leave less", needs.value().ceil());
        }
        Strand::Overfull { fewer, needs, .. } => {
            let longer = format!("make the strand at least {} long", needs.at_least(1));
            return fewer.as_ref().map_or(longer.clone(), |less| format!("{}, or {longer}", self::fewer(less)));
        }
        Strand::None => "write at least one strand",
        Strand::NothingLeft { .. } | Strand::NoLength { .. } => "write its finished `length:`",
        Strand::Unchanged { .. } => "write its finished `length:`, or let `repeat: fill` go round the wearer",
        Strand::OnPin { .. } => {
            "name a cord, and write the beads as a dangle: `{ dangle: [...], on: pin }`; on earrings with a `left:` a whole \
             strand may hang on a pin"
        }
        Strand::IdleOnPin { .. } => "take it out: beads sit on the pin from its loop down",
        Strand::Allowance { .. } => "take `allowance:` out",
        Strand::Filled { .. } => "take `length:` out, or let the beads slide",
        Strand::FillShort { .. } => "repeat a shorter list, or write the length it becomes",
        Strand::NothingToFill { .. } => "write the strand's `length:`, or in `wear:` the girth that it goes round",
        Strand::NoOrder { .. } => "write a smaller `apart:`",
        Strand::StretchOverfull { .. } => "string fewer there, or move the stops apart",
        Strand::TooManyBeads { .. } | Strand::TooManyFindings { .. } => "check the counts of the repeats",
        Strand::TooManyEntries { .. } => {
            "say what comes again with `repeat` and `mirror`, and equal neighbours with one count"
        }
        Strand::LinkUnknown => {
            "count them on a `kind: chain` cord that says it, like `links: 10 = 28 mm`, or write `space:`"
        }
        Strand::NothingStrung => "write what is strung, or take the entry out",
    };
    plain.to_owned()
}

fn fewer(fewer: &Fewer) -> String {
    match fewer {
        Fewer::Times { fits, written } => format!("repeat {fits} times instead of {written}"),
        Fewer::Beads { id, fits, written } => format!("string {fits} {id} instead of {written}"),
    }
}
