//! Pages as one PDF: exact page boxes, selectable text in subset fonts, a bookmark a page, and tags for
//! those who hear it.
//!
//! A page is drawn in its [`parts`], each from an SVG of its own, as tags stand round whole drawings
//! only; parsed trees are freed before the next, so that memory does not grow with the number of
//! pages. No date and no random id is written: equal pages give equal bytes.

use std::borrow::Borrow;
use std::num::NonZeroU16;
use std::sync::Arc;

use krilla::destination::XyzDestination;
use krilla::geom::{Point, Size};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, Identifier, Tag, TagGroup, TagTree};
use krilla::{Document, SerializeSettings};
use krilla_svg::{SurfaceExt, SvgSettings};

use super::parts::{Kind, Part, parts};
use super::{ExportError, tree::tree};
use crate::paint::mark::Page;
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
///
/// # Errors
/// Where a page has no area, or the drawing library refuses it.
pub fn pdf<P: Borrow<Page>>(pages: impl IntoIterator<Item = P>, about: &About) -> Result<Vec<u8>, ExportError> {
    let mut document = Document::new_with(SerializeSettings { enable_tagging: true, ..SerializeSettings::default() });
    document.set_metadata(metadata(about));
    let (mut outline, mut tags) = (Outline::new(), TagTree::new());
    for (index, page) in pages.into_iter().enumerate() {
        let page = page.borrow();
        tags.push(draw(&mut document, page)?);
        outline.push_child(OutlineNode::new(page.title.clone(), XyzDestination::new(index, Point::from_xy(0.0, 0.0))));
    }
    document.set_outline(outline);
    document.set_tag_tree(tags);
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

/// Draws a page and tells its tags: a section of headings, paragraphs and figures.
fn draw(document: &mut Document, page: &Page) -> Result<TagGroup, ExportError> {
    let size = size(page).ok_or(ExportError::NoArea)?;
    let settings = PageSettings::from_wh(size.width(), size.height()).ok_or(ExportError::NoArea)?;
    let mut section = TagGroup::new(Tag::Section);
    let mut sheet = document.start_page_with(settings);
    let mut surface = sheet.surface();
    let mut description = Some(page.description.as_str());
    for part in parts(page) {
        let drawn = draw_part(&mut surface, page, &part, size)?;
        if let Some(mut tag) = tag(&part.kind, &mut description) {
            tag.push(drawn);
            section.push(tag);
        }
    }
    surface.finish();
    sheet.finish();
    Ok(section)
}

fn draw_part(surface: &mut Surface<'_>, page: &Page, part: &Part<'_>, size: Size) -> Result<Identifier, ExportError> {
    let tree = tree(&alone(page, part))?;
    let artifact = |kind| ContentTag::Artifact(Artifact::with_kind(kind));
    let drawn = surface.start_tagged(match part.kind {
        Kind::Ornament => artifact(ArtifactType::Layout),
        Kind::Footer => artifact(ArtifactType::Footer),
        Kind::Heading(..) | Kind::Paragraph | Kind::Figure(_) => ContentTag::Other,
    });
    surface.draw_svg(&tree, size, SvgSettings::default());
    surface.end_tagged();
    Ok(drawn)
}

/// A page with nothing but a part of it.
fn alone(page: &Page, part: &Part<'_>) -> Page {
    let (title, description) = (String::new(), String::new());
    let marks = part.read_apart();
    Page { width: page.width, height: page.height, title, description, symbols: Arc::clone(&page.symbols), marks }
}

/// The tag of a part, if readers are to hear of it. The page's description goes to its first figure.
fn tag(kind: &Kind, description: &mut Option<&str>) -> Option<TagGroup> {
    match kind {
        Kind::Heading(level, words) => {
            let level = NonZeroU16::new(*level)?;
            Some(TagGroup::new(Tag::Hn(level, Some(words.clone()))))
        }
        Kind::Paragraph => Some(TagGroup::new(Tag::P)),
        Kind::Figure(shows) => {
            let alt = description.take().map_or_else(|| shows.clone(), |page| format!("{page} Shown: {shows}"));
            Some(TagGroup::new(Tag::Figure(Some(alt))))
        }
        Kind::Ornament | Kind::Footer => None,
    }
}

fn size(page: &Page) -> Option<Size> {
    #[expect(clippy::cast_possible_truncation, reason = "paper sizes need no more than seven digits")]
    let [width, height] = [page.width, page.height].map(|mm| (mm / INCH * POINTS) as f32);
    Size::from_wh(width, height)
}
