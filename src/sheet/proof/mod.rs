//! The proof: strands and closure laid straight at actual size, then findings and beads; two squares on every page
//! tell whether the printer kept the size.
//!
//! Strands lie below one another, each in a [`lane`]. What is longer than the page is laid in [`strip`]s, one below the
//! other, which join at lines: whatever a cut goes through is drawn whole on both, so that they join whichever lies on
//! top. Lengths in mm on paper.

mod check;
mod lane;
mod lists;
mod part;
mod strip;

use std::cmp::Ordering;

use crate::art::Stencils;
use crate::trade::paper::Paper;

use strip::Strip;

use super::page::PageBody;
use super::said::{FooterScale, Proved, SectionKind};
use super::{Sheet, english, figure};
use crate::paint::layout::Block;
use crate::paint::layout::flow::{Flow, Poured};

/// Room between the squares and what is below them, and between lanes.
const GAP: f64 = 5.0;

/// Most pages of strands that a proof may have: more would be neither printed nor joined.
pub const MOST_PAGES: usize = 60;

/// Why there is no proof: its strands would take so many pages of a paper.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct TooManyPages {
    /// How many.
    pub pages: usize,
    /// Of which paper.
    pub paper: Paper,
}

impl std::error::Error for TooManyPages {}

/// Draws the proof's pages.
///
/// # Errors
/// Where the strands take more than [`MOST_PAGES`].
pub fn proof(sheet: &Sheet<'_>, stencils: &Stencils<'_>) -> Result<Vec<PageBody>, TooManyPages> {
    let room = sheet.room();
    let below = room.below(check::height(room.width) + GAP);
    let lanes = lane::lanes(sheet.piece, stencils);
    let strips = strip::strips(&lanes, below.width, sheet.piece);
    let pages = strip::pages(&strips, below);
    if pages > MOST_PAGES {
        return Err(TooManyPages { pages, paper: sheet.style.paper });
    }
    let mut flow = Flow::new(below);
    strips.iter().for_each(|strip| strip.pour(&mut flow, below, stencils));
    meetings(&mut flow, sheet, below.width, stencils);
    lists::pour(&mut flow, sheet, below, stencils);
    let joins = strips.iter().any(Strip::is_numbered);
    let checked = |mut page: Poured| {
        page.marks.extend(check::marks(sheet, room, joins));
        page
    };
    let checked = flow.into_pages().into_iter().map(checked);
    Ok(checked.enumerate().map(|(index, page)| body(page, shows(index + 1, pages))).collect())
}

/// What ends of strands go through where they meet.
fn meetings(flow: &mut Flow, sheet: &Sheet<'_>, width: f64, stencils: &Stencils<'_>) {
    for strand in &sheet.piece.design.strands {
        let met = figure::meeting(strand, width, stencils);
        met.into_iter().for_each(|(block, _)| flow.add(Block::stack([block, Block::gap(GAP)], 0.0)));
    }
}

fn body(page: Poured, shows: Proved) -> PageBody {
    let section = english::section(&SectionKind::Proof(shows));
    PageBody {
        name: section.name.to_owned(),
        description: section.description,
        marks: page.marks,
        scale: english::scaled(FooterScale::Proof),
        checked: false,
    }
}

/// What is on a page, where strands take some.
fn shows(page: usize, strands: usize) -> Proved {
    match page.cmp(&strands) {
        Ordering::Less => Proved::Strands,
        Ordering::Equal => Proved::Both,
        Ordering::Greater => Proved::Lists,
    }
}
