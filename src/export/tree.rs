//! A page's SVG parsed for drawing, with the bundled fonts only.

use std::sync::{Arc, LazyLock};

use resvg::usvg::{Options, Tree, fontdb};

use super::{ExportError, svg};
use crate::sheet::font;
use crate::sheet::mark::{Page, Weight};

static FONTS: LazyLock<Arc<fontdb::Database>> = LazyLock::new(|| {
    let mut fonts = fontdb::Database::new();
    for weight in [Weight::Regular, Weight::Semibold] {
        fonts.load_font_source(fontdb::Source::Binary(Arc::new(font::file(weight))));
    }
    Arc::new(fonts)
});

/// Parses a page's SVG.
pub fn tree(page: &Page) -> Result<Tree, ExportError> {
    let has_area = page.width > 0.0 && page.height > 0.0 && (page.width * page.height).is_finite();
    if !has_area {
        return Err(ExportError::NoArea);
    }
    let options = Options { fontdb: Arc::clone(&FONTS), font_family: font::FAMILY.into(), ..Options::default() };
    Tree::from_str(&svg(page), &options).map_err(|error| ExportError::Refused(error.to_string()))
}
