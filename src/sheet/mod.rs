//! The printed sheet.

mod booklet;
mod buying;
mod card;
mod check;
mod cutting;
mod drape;
pub mod english;
mod face;
pub mod fact;
mod facts;
pub mod figure;
mod illustration;
mod inked;
mod labels;
mod legend;
mod making;
mod needs;
mod page;
mod proof;
pub mod said;
mod sizes;
mod stringing;
mod words;

use crate::art::{Ink, Stencils};
use crate::materials::{Order, materials};
use crate::piece::Piece;
use crate::trade::paper::Paper;
use crate::units::UnitStyle;

pub use booklet::booklet;
pub use english::finished;
pub use english::spec::{of_all as asked_for, size as bead_size};
pub use fact::facts;
pub use illustration::Illustration;
pub use labels::labels;
pub use proof::{MOST_PAGES, TooManyPages};

use crate::paint::layout::Rect;
use crate::paint::layout::flow::Flow;
use crate::paint::mark::Page;
use face::{Cover, Face};
use making::Making;
use page::PageBody;

/// Share of its last page that a sheet is to fill.
const LEAST_LAST: f64 = 0.35;
/// Share of its last page up to which another setting is tried, to save that.
const LEAST_FULL: f64 = 0.6;

/// How a sheet is drawn; in colour on A4 without prices unless said otherwise.
#[derive(Clone, Debug, Default)]
pub struct Style {
    /// The paper.
    pub paper: Paper,
    /// The inks.
    pub ink: Ink,
    /// Whether the maker's prices are printed.
    pub prices: bool,
}

/// What the pages are made from.
struct Sheet<'a> {
    piece: &'a Piece,
    style: &'a Style,
}

impl Sheet<'_> {
    fn room(&self) -> Rect {
        page::room(self.style.paper)
    }

    const fn units(&self) -> UnitStyle {
        self.piece.telling.units
    }

    const fn currency(&self) -> Option<&String> {
        self.piece.telling.currency.as_ref()
    }
}

/// The pages of a sheet, in millimetres, with a picture of the piece on the first. [`crate::pages`] makes both.
#[must_use]
pub fn pages(piece: &Piece, style: &Style, picture: &dyn Illustration) -> Vec<Page> {
    let sheet = Sheet { piece, style };
    let materials = materials(&piece.design, &Order::default());
    let stencils = Stencils::new(&piece.design, &piece.palette, style.ink);
    let cover = Cover { sheet: &sheet, picture, materials: &materials, stencils: &stencils };
    let face = cover.face();
    let behind = BehindCover { cover, face: &face, making: &Making::new(&sheet, picture, &stencils) };
    let usual = behind.poured(Flow::new(sheet.room()));
    // A last page that is not much more than half full may be saved where all stands a little closer.
    let snug = (!usual.1.fills(LEAST_FULL)).then(|| behind.poured(Flow::new(sheet.room()).snug()));
    let (cautious, flow) = snug.filter(|snug| snug.1.count() < usual.1.count()).unwrap_or(usual);
    let cover = cautious.unwrap_or(face).cover;
    let bodies = std::iter::once(cover).chain(flow.into_pages().into_iter().map(PageBody::from)).collect();
    page::pages(bodies, stencils.into_symbols(), &piece.design.heading, style)
}

/// What stands behind a cover.
struct BehindCover<'a> {
    cover: Cover<'a>,
    face: &'a Face,
    making: &'a Making<'a>,
}

impl BehindCover<'_> {
    /// All of it; with a cover that has the cautions where that saves a page, or where it has room for them and leaves no page
    /// nearly empty.
    fn poured(&self, mut flow: Flow) -> (Option<Face>, Flow) {
        let Cover { sheet, materials, stencils, .. } = self.cover;
        self.face.pour_over(&mut flow);
        stringing::pour(&mut flow, sheet, stencils);
        buying::pour(&mut flow, sheet, materials, self.face.has_tools);
        let [making, rest] = [true, false].map(|has_cautions| making::poured(&flow, self.making, has_cautions));
        let saves = rest.count() < making.count();
        let may = saves || rest.fills(LEAST_LAST);
        let cautious = may.then(|| self.cover.cautious(self.face, saves)).flatten();
        flow.join(if cautious.is_some() { rest } else { making });
        (cautious, flow)
    }
}

/// The card for a class, in millimetres: charts, beads, materials and tools on one page, but for a piece of
/// many strands.
#[must_use]
pub fn card(piece: &Piece, style: &Style) -> Vec<Page> {
    let sheet = Sheet { piece, style };
    let materials = materials(&piece.design, &Order::default());
    let stencils = Stencils::new(&piece.design, &piece.palette, style.ink);
    let mut flow = Flow::new(sheet.room());
    card::pour(&mut flow, &sheet, &materials, &stencils);
    let bodies = flow.into_pages().into_iter().map(PageBody::from).collect();
    page::pages(bodies, stencils.into_symbols(), &piece.design.heading, style)
}

/// The proof: straight strands, closure, findings and beads at actual size.
///
/// # Errors
/// Where the strands take more than [`MOST_PAGES`] pages.
pub fn proof(piece: &Piece, style: &Style) -> Result<Vec<Page>, TooManyPages> {
    let sheet = Sheet { piece, style };
    let stencils = Stencils::new(&piece.design, &piece.palette, style.ink);
    let bodies = proof::proof(&sheet, &stencils)?;
    Ok(page::pages(bodies, stencils.into_symbols(), &piece.design.heading, style))
}
