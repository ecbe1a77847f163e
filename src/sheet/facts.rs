//! The head of the face page and its short facts.

use crate::Piece;
use crate::design::{Bead, Build, Design, Index, Strand, Worn as Open};
use crate::drape::Worn;
use crate::units::Length;

use super::english;
use super::fact::{facts, trade_length};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::Role;
use crate::paint::metrics;

/// Room between two facts.
const FACT_GAP: f64 = 3.0;
/// Narrowest column of them.
const LEAST_COLUMN: f64 = 24.0;
/// What sums of widths differ by rounding, at most.
const ROUNDED: f64 = 1e-9;
/// Room between two rows of them.
const ROWS_APART: f64 = 1.6;

/// Title, variant and summary.
pub fn head(piece: &Piece, width: f64) -> Block {
    let heading = &piece.design.heading;
    let mut blocks = vec![Type::TITLE.wrapped(&heading.title, width).in_role(Role::Heading(1))];
    let variant = heading.variant();
    if !variant.is_empty() {
        blocks.push(Type::STRONG.paragraph(&variant, width));
    }
    blocks.extend(heading.summary.iter().map(|summary| Type::BODY.paragraph(summary, width)));
    Block::stack(blocks, 0.6)
}

/// The short facts, each under its name, in columns; what is too wide for one takes several.
pub fn list(piece: &Piece, width: f64) -> Block {
    let units = piece.design.heading.units;
    let columns = if column(width, 2, FACT_GAP) >= LEAST_COLUMN { 2 } else { 1 };
    let one = column(width, columns, FACT_GAP);
    let wide = |columns: &usize| *columns as f64 * (one + FACT_GAP) - FACT_GAP;
    let block = |(name, value): (&str, String)| {
        let words = Block::stack([Type::TINY.line(name), Type::STRONG.fitted(&value, width)], 0.0);
        let taken = (1..columns).find(|columns| words.width <= wide(columns)).unwrap_or(columns);
        Block { width: wide(&taken), ..words.in_role(Role::Paragraph) }
    };
    let facts = facts(piece).into_iter().map(|fact| block(english::fact(&fact, units)));
    Block::stack(Block::rows(facts, FACT_GAP, width + ROUNDED), ROWS_APART)
}

/// A drop in mm below which a strand hangs no lower than the neck's base: half of what a ruler shows.
const LEAST_DROP: f64 = 0.5;
/// Most strands that the worn figure's words name.
const NAMED: usize = 6;
/// Widest name of a strand in them.
const NAME: f64 = 30.0;

/// A strand's number, with its name where there are few.
fn number(design: &Design, at: Index<Strand>) -> String {
    if design.strands.len() > NAMED {
        return at.ordinal().to_string();
    }
    let Type { size, weight, .. } = Type::TINY;
    format!("{} {}", at.ordinal(), metrics::fit(&design.strands[at].name, size, weight, NAME))
}

/// What hangs lower than the strands themselves.
fn branches(design: &Design) -> &'static str {
    if design.strands.iter().flat_map(Strand::dangles).next().is_some() { ", without what hangs from it" } else { "" }
}

/// Where a piece lies that is shorter than the neck's base is round.
fn above(design: &Design) -> &'static str {
    let is_short = design.closure.open().is_none() && design.piece_length().1 < design.wear.girth;
    if is_short {
        " It is shorter than the neck's base is round: it sits above that, the higher towards the nape."
    } else {
        ""
    }
}

/// How flat beads are drawn, where there are some.
fn flat(design: &Design) -> &'static str {
    if design.beads.iter().any(Bead::lies_flat) { " Flat beads are drawn with a face to the front." } else { "" }
}

/// What is said of a piece whose ends hang free: how they lie is the wearer's choice, and nothing holds them.
const FREE: &str = "Not shown on the neck: nothing joins its ends, and how they hang or are tied is the wearer's. \
                    Beside this it lies over a rail as broad as the neck.";

/// What the large figure shows of a piece whose ends are in front.
const RAIL: &str = " Beside this it lies over a rail as broad as the neck.";

/// How an end that goes through the other is drawn, and how ends that meet are.
fn through(design: &Design) -> String {
    let Some(Open::Through(tail)) = design.closure.open() else {
        return design.meeting().map_or_else(String::new, |_| RAIL.to_owned());
    };
    let assumed = if tail.is_assumed() { ", assumed" } else { "" };
    format!(
        " Drawn with {} of the last end through the ring{assumed}: the wearer sets it.{RAIL}",
        design.heading.units.ruler(*tail)
    )
}

/// What the worn figure shows and assumes.
pub fn worn(piece: &Piece) -> Option<String> {
    let design = &piece.design;
    if design.closure.open() == Some(Open::Hanging) {
        return Some(FREE.to_owned());
    }
    let worn = piece.drape.worn.as_ref()?;
    let units = design.heading.units;
    let drop = |(at, drop): (Index<Strand>, &f64)| {
        let drop = if *drop < LEAST_DROP { "none".to_owned() } else { units.ruler(Length::mm(*drop)) };
        if worn.drops.len() == 1 || design.twist.is_some() { drop } else { format!("{}: {drop}", number(design, at)) }
    };
    let told = if design.twist.is_some() { 1 } else { worn.drops.len() };
    let drops: Vec<_> = design.strands.indices().zip(&worn.drops).take(told).map(drop).collect();
    let hangs = if worn.drops.iter().all(|drop| *drop < LEAST_DROP) {
        "Lies at the front of the neck's base (dashed) or above it".to_owned()
    } else {
        format!("Hangs below the front of the neck (dashed): {}", drops.join("; "))
    };
    let name = trade_length(design).map_or_else(String::new, |(name, low, high)| {
        let range =
            high.map_or_else(|| format!("{} and more", units.ruler(low)), |high| english::range(units, [low, high]));
        format!(" The trade calls this length {name}: {range}.")
    });
    Some(format!(
        "{hangs}{}.{}{name}{}{} Drawn {}on a neck of {} round its base, {}.{}",
        branches(design),
        above(design),
        through(design),
        flat(design),
        hooked(design, worn),
        units.ruler(design.wear.girth),
        design.wear.source_words(),
        build(design.wear.build, assumes_wire(design)),
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
            format!("with {} of the extender let out, to go round, ", design.heading.units.ruler(out))
        }
        () => "closed at its shortest ".to_owned(),
    }
}

/// Whether a piece lies as it does by a stiffness that its pattern does not say.
fn assumes_wire(design: &Design) -> bool {
    let assumed = |strand: &Strand| design.cords[strand.cord].stiffness.is_assumed() && strand.stiffness(design) > 0.0;
    design.twist.is_none() && design.strands.iter().any(assumed)
}

/// The shape of neck and chest that is drawn: what the pattern says, then what is assumed.
fn build(build: Build, wire: bool) -> String {
    let Build { breadth_to_depth: neck, chest_tilt: chest } = build;
    let neck = (neck.is_assumed(), format!("a neck {} times as broad as it is deep", *neck));
    let chest = (chest.is_assumed(), format!("a chest that leans back {}", degrees(*chest)));
    let wire = wire.then(|| "wire of 49 fine strands".to_owned());
    let rest = "usual shoulders, and that only the nape holds it".to_owned();
    let which =
        |assumed: bool| [&neck, &chest].into_iter().filter(move |(is, _)| *is == assumed).map(|(_, words)| words);
    let said = which(false).cloned().collect::<Vec<_>>().join(", ");
    let assumed = which(true).chain(&wire).chain([&rest]).cloned().collect::<Vec<_>>().join(", ");
    let said = if said.is_empty() { said } else { format!(" From the pattern: {said}.") };
    format!("{said} Assumed: {assumed}.")
}

/// An angle in radians as it is printed.
fn degrees(angle: f64) -> String {
    format!("{:.0}°", angle.to_degrees())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Stated;

    #[test]
    fn what_the_pattern_says_of_the_body_is_not_called_assumed() {
        let rest = "usual shoulders, and that only the nape holds it.";
        let assumed = build(Build::default(), false);
        let neck = "a neck 1.2 times as broad as it is deep";
        assert_eq!(assumed, format!(" Assumed: {neck}, a chest that leans back 20°, {rest}"));
        let chest_tilt = Stated::Stated(25_f64.to_radians());
        assert_eq!(
            build(Build { chest_tilt, ..Build::default() }, false),
            format!(" From the pattern: a chest that leans back 25°. Assumed: {neck}, {rest}")
        );
    }
}
