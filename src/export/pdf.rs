//! Pages as one PDF: exact page boxes, selectable text in subset fonts, a bookmark a page.
//!
//! Each page's SVG is parsed once and freed before the next, so that memory does not grow with the
//! number of pages. No date and no random id is written: equal pages give equal bytes.

use std::borrow::Borrow;

use krilla::destination::XyzDestination;
use krilla::geom::{Point, Size};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::{Document, SerializeSettings};
use krilla_svg::{SurfaceExt, SvgSettings};

use super::{ExportError, tree::tree};
use crate::sheet::mark::Page;
use crate::units::INCH;

/// PDF points in an inch (ISO 32000-1, 8.3.2.3: the default unit is 1/72 inch).
const POINTS: f64 = 72.0;

/// What a PDF says about itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct About {
    /// Its title.
    pub title: String,
    /// Who designed what it shows; empty where unknown.
    pub author: String,
    /// What it shows, in a sentence; empty where unknown.
    pub subject: String,
    /// Words to find it by.
    pub keywords: Vec<String>,
}

/// Writes the pages as one PDF. Pages may be made one by one, when their turn comes.
pub fn pdf<P: Borrow<Page>>(pages: impl IntoIterator<Item = P>, about: &About) -> Result<Vec<u8>, ExportError> {
    let settings = SerializeSettings { enable_tagging: false, ..SerializeSettings::default() };
    let mut document = Document::new_with(settings);
    document.set_metadata(metadata(about));
    let mut outline = Outline::new();
    for (index, page) in pages.into_iter().enumerate() {
        let page = page.borrow();
        draw(&mut document, page)?;
        outline.push_child(OutlineNode::new(page.title.clone(), XyzDestination::new(index, Point::from_xy(0.0, 0.0))));
    }
    document.set_outline(outline);
    document.finish().map_err(|error| ExportError::Refused(format!("{error:?}")))
}

fn metadata(about: &About) -> Metadata {
    let authors = Some(about.author.clone()).filter(|author| !author.is_empty());
    let metadata =
        if about.subject.is_empty() { Metadata::new() } else { Metadata::new().description(about.subject.clone()) };
    metadata
        .title(about.title.clone())
        .authors(authors.into_iter().collect())
        .keywords(about.keywords.clone())
        .creator("festoon".into())
        .language("en".into())
}

fn draw(document: &mut Document, page: &Page) -> Result<(), ExportError> {
    let tree = tree(page)?;
    let size = size(page).ok_or(ExportError::NoArea)?;
    let settings = PageSettings::from_wh(size.width(), size.height()).ok_or(ExportError::NoArea)?;
    let mut sheet = document.start_page_with(settings);
    let mut surface = sheet.surface();
    surface.draw_svg(&tree, size, SvgSettings::default());
    surface.finish();
    sheet.finish();
    Ok(())
}

fn size(page: &Page) -> Option<Size> {
    #[expect(clippy::cast_possible_truncation, reason = "paper sizes need no more than seven digits")]
    let [width, height] = [page.width, page.height].map(|mm| (mm / INCH * POINTS) as f32);
    Size::from_wh(width, height)
}
