//! The head of the face page and its short facts.

use crate::Piece;
use crate::design::{Build, Design, Strand, What};
use crate::drape::Worn;
use crate::pattern::Kind;
use crate::trade::lengths::length_name;
use crate::units::{Length, UnitStyle};

use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::mark::Role;
use crate::paint::metrics;

/// Room between two facts.
const FACT_GAP: f64 = 8.0;

/// Title, summary and the line of facts.
pub fn head(piece: &Piece, width: f64) -> Block {
    let heading = &piece.design.heading;
    let mut blocks = vec![Type::TITLE.wrapped(&heading.title, width).in_role(Role::Heading(1))];
    let variant: Vec<_> = [&heading.size, &heading.colourway].into_iter().flatten().map(String::as_str).collect();
    if !variant.is_empty() {
        blocks.push(Type::STRONG.paragraph(&variant.join(", "), width));
    }
    blocks.extend(heading.summary.iter().map(|summary| Type::BODY.paragraph(summary, width)));
    blocks.push(Block::gap(1.2));
    blocks.push(wrapped(facts(piece), width));
    Block::stack(blocks, 0.6)
}

/// Facts side by side, in as many rows as they need.
fn wrapped(facts: Vec<(&str, String)>, width: f64) -> Block {
    let mut rows: Vec<Vec<Block>> = vec![Vec::new()];
    let mut taken = 0.0;
    for (name, value) in facts {
        let words = [Type::TINY.line(name), Type::STRONG.fitted(&value, width)];
        let block = Block::stack(words, 0.0).in_role(Role::Paragraph);
        if taken > 0.0 && taken + block.width > width {
            rows.push(Vec::new());
            taken = 0.0;
        }
        taken += block.width + FACT_GAP;
        if let Some(row) = rows.last_mut() {
            row.push(block);
        }
    }
    Block::stack(rows.into_iter().map(|row| Block::row(row, FACT_GAP)), 1.0)
}

/// Short facts, each with its name: kind, length, girth, weight, skill, time.
#[must_use]
pub fn facts(piece: &Piece) -> Vec<(&'static str, String)> {
    let design = &piece.design;
    let heading = &design.heading;
    let mut facts = vec![("kind", kind(design.heading.kind).to_owned())];
    facts.push((length_fact(design), finished(piece)));
    facts.extend(
        body(design.heading.kind)
            .filter(|_| !design.wear.is_guessed())
            .map(|limb| (limb, heading.units.ruler(design.wear.girth))),
    );
    if let Some(ring) = piece.drape.ring() {
        facts.push(("inside girth", range(heading.units, [ring.inside_girth, ring.longest_girth].map(Length::mm))));
    }
    facts.push(("weight", format!("{:.0} g", (design.mass() * f64::from(design.copies)).value().max(1.0))));
    facts.extend(heading.skill.map(|skill| ("skill", skill.to_string())));
    facts.extend(heading.time.clone().map(|time| ("time", time)));
    facts
}

/// What the piece's length is called: from end to end, or once round when it is closed, of several
/// strands along the shortest.
#[must_use]
pub fn length_fact(design: &Design) -> &'static str {
    match (design.heading.kind, design.strands.len()) {
        (Kind::Earrings, _) => "top to lowest point",
        (Kind::Strap, 1) => "end to end",
        (Kind::Strap, _) => "end to end, shortest strand",
        (_, 1) => "closed, once round",
        _ => "closed, shortest strand",
    }
}

/// The fact that names the limb a piece is made for.
const fn body(kind: Kind) -> Option<&'static str> {
    match kind {
        Kind::Necklace => Some("for a neck base of"),
        Kind::Bracelet => Some("for a wrist of"),
        Kind::Anklet => Some("for an ankle of"),
        Kind::Earrings | Kind::Strap => None,
    }
}

const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Earrings => "earrings, a pair",
        other => other.word(),
    }
}

/// The piece's length, and its range where an extender gives one.
#[must_use]
pub fn finished(piece: &Piece) -> String {
    length(&piece.design)
}

/// The length of what a design makes, and its range where an extender gives one.
pub fn length(design: &Design) -> String {
    let (least, most) = design.piece_length();
    range(design.heading.units, [least, most])
}

/// A length, or two with a dash where they differ.
fn range(units: UnitStyle, [least, most]: [Length; 2]) -> String {
    let range = |print: &dyn Fn(Length) -> String| {
        if least == most { print(least) } else { format!("{} to {}", print(least), print(most)) }
    };
    let inches = || range(&crate::units::fraction);
    let mm = || range(&|length: Length| UnitStyle::Mm.ruler(length).trim_end_matches(" mm").to_owned());
    match units {
        UnitStyle::In => format!("{} in", inches()),
        UnitStyle::Mm => format!("{} mm", mm()),
        UnitStyle::Both => format!("{} in ({} mm)", inches(), mm()),
    }
}

/// Most strands that the worn figure's words name.
const NAMED: usize = 6;
/// Widest name of a strand in them.
const NAME: f64 = 30.0;

/// A strand's number, with its name where there are few.
fn number(design: &Design, at: usize) -> String {
    if design.strands.len() > NAMED {
        return (at + 1).to_string();
    }
    let Type { size, weight, .. } = Type::TINY;
    format!("{} {}", at + 1, metrics::fit(&design.strands[at].name, size, weight, NAME))
}

/// What hangs lower than the strands themselves.
fn branches(design: &Design) -> &'static str {
    let has_branch = design.strands.iter().flat_map(Strand::bits).any(|bit| matches!(bit.what, What::Dangle(_)));
    if has_branch { ", without what hangs from it" } else { "" }
}

/// What the worn figure shows and assumes.
pub fn worn(piece: &Piece) -> Option<String> {
    let worn = piece.drape.worn.as_ref()?;
    let design = &piece.design;
    let units = design.heading.units;
    let drop = |at: usize| {
        let drop = units.ruler(Length::mm(worn.drops[at]));
        if worn.drops.len() == 1 { drop } else { format!("{}: {drop}", number(design, at)) }
    };
    let drops: Vec<_> = (0..worn.drops.len()).map(drop).collect();
    let name = length_name(design.piece_length().0).map_or_else(String::new, |(name, low, high)| {
        let range = high.map_or_else(
            || format!("from {}", units.ruler(low)),
            |high| format!("{} to {}", units.ruler(low), units.ruler(high)),
        );
        format!(" The trade calls a length {range} {name}.")
    });
    Some(format!(
        "Hangs below the front of the neck (dashed): {}{}.{name} For a neck of {} at its base, {}.{}{}",
        drops.join("; "),
        branches(design),
        units.ruler(design.wear.girth),
        design.wear.source_words(),
        hooked(design, worn),
        build(design.wear.build),
    ))
}

/// How the closure is drawn where it can be hooked in more than one way: at its shortest, unless an
/// extender must be let out to go round.
fn hooked(design: &Design, worn: &Worn) -> String {
    let (least, most) = design.closure_length();
    let out = Length::mm(worn.closure) - least;
    match () {
        () if least == most => String::new(),
        () if out > Length::ZERO => {
            format!(" Drawn with {} of the extender let out, to go round.", design.heading.units.ruler(out))
        }
        () => " Drawn closed at its shortest.".to_owned(),
    }
}

/// The shape of neck and chest that is drawn: what the pattern says, then what is assumed.
fn build(build: Build) -> String {
    let Build { breadth_to_depth: neck, chest_tilt: chest } = build;
    let neck = (neck.is_assumed(), format!("a neck {} times as broad as it is deep", *neck));
    let chest = (chest.is_assumed(), format!("a chest that leans back {:.0}°", chest.to_degrees()));
    let said = |assumed: bool, from: &str| {
        let which = [&neck, &chest].into_iter().filter(|(is, _)| *is == assumed).map(|(_, words)| words.as_str());
        let which = which.collect::<Vec<_>>().join(", ");
        if which.is_empty() { which } else { format!(" {from}: {which}.") }
    };
    said(false, "From the pattern") + &said(true, "Assumed")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Stated;

    #[test]
    fn what_the_pattern_says_of_the_body_is_not_called_assumed() {
        let assumed = build(Build::default());
        assert_eq!(assumed, " Assumed: a neck 1.2 times as broad as it is deep, a chest that leans back 20°.");
        let chest_tilt = Stated::Stated(25_f64.to_radians());
        assert_eq!(
            build(Build { chest_tilt, ..Build::default() }),
            " From the pattern: a chest that leans back 25°. Assumed: a neck 1.2 times as broad as it is deep."
        );
    }
}
