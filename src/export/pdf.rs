//! Pages as one PDF: exact page boxes, selectable text in subset fonts, a bookmark a page, and tags for
//! those who hear it.
//!
//! A page is drawn in its [`elements`], each from an SVG of its own, as tags stand round whole drawings
//! only; parsed trees are freed before the next, so that memory does not grow with the number of
//! pages. No clock and no random id is asked: equal pages give equal bytes.
//!
//! A file to keep claims to be PDF/A-2u (ISO 19005-2), which no file is that does not say so: the library that writes it
//! refuses what it knows that this forbids. Others claim nothing, and none claims PDF/UA-1 (ISO 14289-1), whose rules no
//! program at hand checks whole.

use std::borrow::Borrow;
use std::collections::BTreeSet;
use std::num::NonZeroU16;
use std::sync::Arc;

use krilla::configure::{Archival, Configuration, ConfigurationBuilder, ValidationError};
use krilla::destination::XyzDestination;
use krilla::error::KrillaError;
use krilla::geom::{Point, Size};
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, Node, TableHeaderScope, Tag, TagGroup, TagKind, TagTree,
};
use krilla::{Document, SerializeSettings};
use krilla_svg::{SurfaceExt, SvgSettings};

use super::elements::{Element, ElementKind, Holder, elements, read_apart};
use super::{Day, ExportError, english, tree::tree};
use crate::paint::mark::{Mark, Page};
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
    /// The day that a file to keep is dated; none for another.
    pub archived: Option<Day>,
}

/// Writes the pages as one PDF. Pages may be made one by one, when their turn comes.
///
/// # Errors
/// Where a page has no area, or the drawing library refuses it; of a file to keep, where a letter is in no font.
pub fn pdf<P: Borrow<Page>>(pages: impl IntoIterator<Item = P>, about: &About) -> Result<Vec<u8>, ExportError> {
    let mut document = Document::new_with(settings(about)?);
    document.set_metadata(metadata(about));
    let (mut outline, mut tags) = (Outline::new(), TagTree::new());
    for (index, page) in pages.into_iter().enumerate() {
        let page = page.borrow();
        tags.push(draw(&mut document, page)?);
        outline.push_child(OutlineNode::new(page.title.clone(), XyzDestination::new(index, Point::from_xy(0.0, 0.0))));
    }
    document.set_outline(outline);
    document.set_tag_tree(tags);
    document.finish().map_err(refused)
}

/// Tagged, and of a file to keep, what it claims.
fn settings(about: &About) -> Result<SerializeSettings, ExportError> {
    let kept = || ConfigurationBuilder::new().with_archival_validator(Archival::A2_U).finish();
    let configuration = about.archived.map_or_else(|| Ok(Configuration::default()), |_| kept());
    let configuration = configuration.map_err(|error| ExportError::Refused(format!("{error:?}")))?;
    Ok(SerializeSettings { enable_tagging: true, configuration, ..SerializeSettings::default() })
}

/// Why the library refuses a document: letters that no font has are the maker's to change.
fn refused(error: KrillaError) -> ExportError {
    let KrillaError::Validation(faults) = &error else { return ExportError::Refused(format!("{error:?}")) };
    let unknown = |fault: &ValidationError| match fault {
        ValidationError::ContainsNotDefGlyph(_, _, letters) => Some(letters.clone()),
        _ => None,
    };
    let letters: Option<BTreeSet<_>> = faults.iter().map(|(fault, _)| unknown(fault)).collect();
    letters.map_or_else(|| ExportError::Refused(format!("{error:?}")), ExportError::NoGlyph)
}

fn metadata(about: &About) -> Metadata {
    let authors = Some(about.author.clone()).filter(|author| !author.is_empty());
    let metadata =
        if about.subject.is_empty() { Metadata::new() } else { Metadata::new().description(about.subject.clone()) };
    let metadata = about.archived.map(date).into_iter().fold(metadata, Metadata::creation_date);
    metadata
        .title(about.title.clone())
        .authors(authors.into_iter().collect())
        .keywords(about.keywords.clone())
        .creator("festoon".into())
        .language("en".into())
}

/// The first moment of a day, by Greenwich.
fn date(day: Day) -> DateTime {
    let (year, month, day) = day.parts();
    DateTime::new(year).month(month).day(day)
}

/// Draws a page and tells its tags: a section of headings, paragraphs, tables and figures.
fn draw(document: &mut Document, page: &Page) -> Result<TagGroup, ExportError> {
    let size = size(page).ok_or(ExportError::NoArea)?;
    let settings = PageSettings::from_wh(size.width(), size.height()).ok_or(ExportError::NoArea)?;
    let mut section = TagGroup::new(Tag::Section);
    let mut sheet = document.start_page_with(settings);
    let mut surface = sheet.surface();
    let mut drawing = TaggedPage { surface: &mut surface, page, size, description: Some(&page.description) };
    for element in elements(&page.marks) {
        if let Some(node) = drawing.element(&element, None)? {
            section.push(node);
        }
    }
    surface.finish();
    sheet.finish();
    Ok(section)
}

/// A page as it is being drawn.
struct TaggedPage<'a, 's> {
    surface: &'a mut Surface<'s>,
    page: &'a Page,
    size: Size,
    /// The page's description, until its first figure has it.
    description: Option<&'a str>,
}

impl TaggedPage<'_, '_> {
    /// Draws an element within what holds it; says its tag, if readers are to hear of it.
    fn element(&mut self, element: &Element<'_>, within: Option<&Holder>) -> Result<Option<Node>, ExportError> {
        match element {
            Element::Drawn(kind, marks) => {
                let drawn = self.marks(kind, marks)?;
                Ok(self.tagged(kind, drawn, within.is_some()))
            }
            Element::Held(holder, held) => {
                let mut tag = TagGroup::new(tag(holder, within));
                for element in held {
                    self.element(element, Some(holder))?.into_iter().for_each(|node| tag.push(node));
                }
                Ok(Some(tag.into()))
            }
        }
    }

    fn marks(&mut self, kind: &ElementKind, marks: &[Mark]) -> Result<Identifier, ExportError> {
        let tree = tree(&alone(self.page, marks))?;
        let artifact = |kind| ContentTag::Artifact(Artifact::with_kind(kind));
        let drawn = self.surface.start_tagged(match kind {
            ElementKind::Ornament => artifact(ArtifactType::Layout),
            ElementKind::Footer => artifact(ArtifactType::Footer),
            ElementKind::Words | ElementKind::Figure(_) => ContentTag::Other,
        });
        self.surface.draw_svg(&tree, self.size, SvgSettings::default());
        self.surface.end_tagged();
        Ok(drawn)
    }

    /// What was drawn under its tag: words that nothing holds are a paragraph.
    fn tagged(&mut self, kind: &ElementKind, drawn: Identifier, is_held: bool) -> Option<Node> {
        let tag: TagKind = match kind {
            ElementKind::Words if is_held => return Some(drawn.into()),
            ElementKind::Words => Tag::P.into(),
            ElementKind::Figure(shows) => Tag::Figure(Some(self.alternative(shows))).into(),
            ElementKind::Ornament | ElementKind::Footer => return None,
        };
        let mut group = TagGroup::new(tag);
        group.push(drawn);
        Some(group.into())
    }

    /// A figure's text alternative: the first of a page begins with the page's description.
    fn alternative(&mut self, shows: &str) -> String {
        self.description.take().map_or_else(|| shows.to_owned(), |page| english::shown(page, shows))
    }
}

/// The tag of what holds elements.
fn tag(holder: &Holder, within: Option<&Holder>) -> TagKind {
    match holder {
        Holder::Heading(level, words) => {
            let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
            Tag::Hn(level, Some(words.clone())).into()
        }
        Holder::Paragraph => Tag::P.into(),
        Holder::Table => Tag::Table.into(),
        Holder::Row { .. } => Tag::TR.into(),
        Holder::Cell if within == Some(&Holder::Row { of_headings: true }) => Tag::TH(TableHeaderScope::Column).into(),
        Holder::Cell => Tag::TD.into(),
        Holder::RowName => Tag::TH(TableHeaderScope::Row).into(),
    }
}

/// A page with nothing but some of its marks.
fn alone(page: &Page, marks: &[Mark]) -> Page {
    let (title, description, marks) = (String::new(), String::new(), read_apart(marks));
    Page { width: page.width, height: page.height, title, description, symbols: Arc::clone(&page.symbols), marks }
}

fn size(page: &Page) -> Option<Size> {
    #[expect(clippy::cast_possible_truncation, reason = "paper sizes need no more than seven digits")]
    let [width, height] = [page.width, page.height].map(|mm| (mm / INCH * POINTS) as f32);
    Size::from_wh(width, height)
}
