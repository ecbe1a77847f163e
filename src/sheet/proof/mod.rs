//! The proof: strands and closure laid straight at actual size, tiled over pages, then findings and
//! beads; two squares on every page tell whether the printer kept the size.
//!
//! Strands lie below one another, each in a [`lane`]. Where they are longer than the page, all lanes
//! are cut at the same places ([`tile`]): on both pages whatever the cut goes through is drawn whole,
//! so that the pages join whichever lies on top. Lanes that the page has no height for go on on the
//! next row of pages.

mod check;
mod lane;
mod lists;
mod map;
mod part;
mod tile;

use std::fmt;

use crate::art::Stencils;
use crate::trade::paper::Paper;

use map::Map;
use tile::Tiling;

use super::Sheet;
use super::page::Body;
use crate::paint::mark::Mark;

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

impl TooManyPages {
    /// What to change.
    #[must_use]
    pub fn help(&self) -> &'static str {
        if self.paper == Paper::A3 {
            "a pattern of fewer or shorter strands has a proof; `festoon sheet` draws pieces of any length"
        } else {
            "ask for larger paper, as with --paper a3; `festoon sheet` draws pieces of any length"
        }
    }
}

impl fmt::Display for TooManyPages {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (pages, paper) = (self.pages, self.paper.word());
        write!(f, "at actual size the strands would take {pages} pages of {paper}, more than {MOST_PAGES}")
    }
}

impl std::error::Error for TooManyPages {}

/// Draws the proof's pages.
///
/// # Errors
/// Where the strands take more than [`MOST_PAGES`].
pub fn proof(sheet: &Sheet<'_>, stencils: &mut Stencils<'_>) -> Result<Vec<Body>, TooManyPages> {
    let room = sheet.room();
    let below = room.below(check::height(room.width) + GAP);
    let lanes = lane::lanes(sheet.piece, stencils);
    let tiling = Tiling::new(&lanes, below, sheet.piece);
    let pages = tiling.pages().len();
    if pages > MOST_PAGES {
        return Err(TooManyPages { pages, paper: sheet.style.paper });
    }
    let map = Map::new(&tiling);
    let mut marks: Vec<Vec<Mark>> =
        tiling.pages().map(|page| tiling.draw(page, &lanes, sheet.piece, stencils)).collect();
    marks.extend(lists::pages(sheet, below, stencils));
    let body = |(index, mut marks): (usize, Vec<Mark>)| {
        marks.extend(check::marks(sheet, room, &map, index));
        Body {
            name: "Proof".to_owned(),
            description: describe(index, &tiling),
            marks,
            scale: "actual size (1 : 1)".to_owned(),
            checked: false,
        }
    };
    Ok(marks.into_iter().enumerate().map(body).collect())
}

fn describe(index: usize, tiling: &Tiling) -> String {
    let what = if index < tiling.pages().len() { "Strands laid straight" } else { "Findings and beads" };
    format!("{what} at actual size, with squares of 50 mm and 2 in to measure.")
}
