//! What is said about bars and what holds several strands, in English.

use crate::remark::said::bar::{Bar, Spot};

/// What was found.
pub fn headline(said: &Bar) -> String {
    match said {
        Bar::TooFewLoops { finding, loops, strands, .. } => {
            format!("{finding} has loops for {loops} of the piece's {strands} strands")
        }
        Bar::Uneven { what, is_bar, holes, strands: [one, other], .. } => format!(
            "strand {} goes through {} of {what} and strand {} through {}, but {} with {holes} holes holds both",
            one.strand,
            one.through,
            other.strand,
            other.through,
            if *is_bar { "a bar" } else { "a bead" }
        ),
        Bar::Alone { bar, holes, strand, .. } => format!(
            "strand {strand} goes through {bar} alone: of its {holes} holes no other strand is left to go through one"
        ),
        Bar::Between { what, strands: [one, other], skipped, .. } => {
            format!("strand {skipped} lies between {one} and {other}, which share {what}, and goes through none")
        }
        Bar::Astray { bead, holes, strands } => format!(
            "the holes of {bead} are {} apart, and its strands lie up to {} apart where they go through",
            holes.tenths(),
            strands.tenths()
        ),
        Bar::Bulges { strands: [inner, outer], between: [from, to], lengths: [long, longer], .. } => format!(
            "between {} and {} strand {inner} is {} long and strand {outer}, outside it, {}: the inner row bulges",
            spot(from),
            spot(to),
            long.tenths(),
            longer.tenths()
        ),
        Bar::Leans { what, strands: [inner, outer], along: [one, other], by, .. } => format!(
            "{} lies {} along strand {inner} and {} along strand {outer}, so that it would lean by {}",
            spot(what),
            one.tenths(),
            other.tenths(),
            by.tenths()
        ),
    }
}

/// What to change.
pub fn help(said: &Bar) -> String {
    match said {
        Bar::TooFewLoops { kind, strands, .. } => format!("use one ({kind}) with {strands} loops"),
        Bar::Uneven { id, .. } => format!("write {id} as often in each strand that goes through it"),
        Bar::Alone { id, .. } => format!("write {id} in another strand too, or use a bar with a hole for each strand"),
        Bar::Between { id, skipped, .. } => {
            format!("write {id} in strand {skipped} too, or write the strands that share it one after another")
        }
        Bar::Astray { .. } => {
            "give the strands the same lengths up to it, and loops or bars as far apart as its holes".to_owned()
        }
        Bar::Bulges { strands: [inner, outer], by, most, .. } => format!(
            "make strand {inner} at most {} longer there than strand {outer}: it is {} longer",
            most.hundredths(),
            by.tenths()
        ),
        Bar::Leans { most, .. } => format!(
            "string both alike up to it: what they share may lie {} farther along one of them at most",
            most.hundredths()
        ),
    }
}

fn spot(spot: &Spot) -> String {
    match spot {
        Spot::First => "the first end".to_owned(),
        Spot::Last => "the last end".to_owned(),
        Spot::Shared(name, at) => format!("{name} number {at}"),
    }
}
