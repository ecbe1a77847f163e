//! The head of the face page, its short facts, and what is said of the piece on the neck.

use crate::design::{Bead, Cord, Design, Index, Stated, Strand, WornOpen};
use crate::drape::Worn;
use crate::piece::Piece;
use crate::units::Length;

use super::english;
use super::fact::{facts, trade_length};
use super::said::{EndsInFront, Hooked, Neck, OnNeck};
use crate::paint::layout::text::Type;
use crate::paint::layout::{Block, column};
use crate::paint::mark::Role;
use crate::paint::style;

/// Room in mm between title, variant and summary.
const HEAD_APART: f64 = 0.6;
/// Room in mm between two facts.
const FACT_GAP: f64 = 3.0;
/// Narrowest column of them, in mm.
const LEAST_COLUMN: f64 = 24.0;
/// Room in mm between two rows of them.
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
    Block::stack(blocks, HEAD_APART)
}

/// The short facts, each under its name, in columns; what is too wide for one takes several.
pub fn list(piece: &Piece, width: f64) -> Block {
    let units = piece.telling.units;
    let columns = if column(width, 2, FACT_GAP) >= LEAST_COLUMN { 2 } else { 1 };
    let one = column(width, columns, FACT_GAP);
    let wide = |columns: &usize| *columns as f64 * (one + FACT_GAP) - FACT_GAP;
    let block = |(name, value): (&str, String)| {
        let words = Block::stack([Type::TINY.line(name), Type::STRONG.fitted(&value, width)], 0.0);
        let taken = (1..columns).find(|columns| words.width <= wide(columns)).unwrap_or(columns);
        Block { width: wide(&taken), ..words.in_role(Role::Paragraph) }
    };
    let facts = facts(piece).into_iter().map(|fact| block((english::named(&fact), english::fact(&fact, units))));
    Block::stack(Block::rows(facts, FACT_GAP, width + style::ROUNDED), ROWS_APART)
}

/// A drop in mm below which a strand hangs no lower than the neck's base: half of what a ruler shows.
const LEAST_DROP: f64 = 0.5;

/// What the worn figure shows and assumes.
pub fn worn(piece: &Piece) -> Option<OnNeck<'_>> {
    let design = &piece.design;
    if design.closure.open() == Some(WornOpen::Hanging) {
        return Some(OnNeck::Free);
    }
    let worn = piece.drape.worn.as_ref()?;
    Some(OnNeck::Shown(Neck {
        design,
        drops: drops(design, worn),
        has_branches: design.strands.iter().flat_map(Strand::dangles).next().is_some(),
        is_short: design.closure.open().is_none() && design.piece_length().1 < design.wear.girth,
        trade: trade_length(design),
        ends: ends(design),
        has_flat: design.beads.iter().any(Bead::lies_flat),
        hooked: hooked(design, worn),
        assumes_wire: assumes_wire(design),
        limp: limp(design),
    }))
}

/// How far each strand hangs below the neck's base, if it does; twisted ones hang as one.
fn drops(design: &Design, worn: &Worn) -> Vec<(Index<Strand>, Option<Length>)> {
    let told = if design.twist.is_some() { 1 } else { worn.drops.len() };
    let below = |drop: &f64| (*drop >= LEAST_DROP).then_some(Length::mm(*drop));
    design.strands.indices().zip(worn.drops.iter().map(below)).take(told).collect()
}

/// How an end that goes through the other is drawn, and how ends that meet are.
fn ends(design: &Design) -> EndsInFront<'_> {
    match design.closure.open() {
        Some(WornOpen::Through(tail)) => {
            let last = design.closure.right().last();
            EndsInFront::Through(tail, last.map(|part| design.findings[part.finding].name.as_str()))
        }
        _ if design.meeting().is_some() => EndsInFront::Meet,
        _ => EndsInFront::Joined,
    }
}

/// How the closure is drawn where it can be hooked in more than one way: at its shortest, unless an
/// extender must be let out to go round.
fn hooked(design: &Design, worn: &Worn) -> Hooked {
    let (least, most) = design.closure_length();
    let out = Length::mm(worn.closure) - least;
    match () {
        () if least == most => Hooked::AsItIs,
        () if out > Length::ZERO => Hooked::LetOut(out),
        () => Hooked::Shortest,
    }
}

/// The cords that lie as if they were limp, where the pattern does not say so; twisted ones all do.
fn limp(design: &Design) -> Vec<&Cord> {
    let is_limp = |cord: &&Cord| design.twist.is_some() || cord.stiffness == Stated::Assumed(0.0);
    let cords = design.strands.iter().map(|strand| &design.cords[strand.cord]);
    cords.filter(is_limp).collect()
}

/// Whether a piece lies as it does by a stiffness that its pattern does not say.
fn assumes_wire(design: &Design) -> bool {
    let assumed = |strand: &Strand| design.cords[strand.cord].stiffness.is_assumed() && strand.stiffness(design) > 0.0;
    design.twist.is_none() && design.strands.iter().any(assumed)
}
