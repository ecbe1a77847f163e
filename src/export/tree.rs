//! A page's SVG parsed for drawing, with the bundled fonts only.

use std::sync::{Arc, LazyLock};

use resvg::usvg::{Options, Tree};

use super::{ExportError, svg};
use crate::paint::font;
use crate::paint::mark::{Page, Weight};

static FONTS: LazyLock<Arc<fontdb::Database>> = LazyLock::new(|| {
    let mut fonts = fontdb::Database::new();
    for weight in [Weight::Regular, Weight::Semibold] {
        fonts.load_font_source(fontdb::Source::Binary(Arc::new(font::file(weight))));
    }
    Arc::new(fonts)
});

/// Parses a page's SVG.
///
/// # Errors
/// Where the page has no area, or its SVG is refused.
pub fn tree(page: &Page) -> Result<Tree, ExportError> {
    let has_area = page.width > 0.0 && page.height > 0.0 && (page.width * page.height).is_finite();
    if !has_area {
        return Err(ExportError::NoArea);
    }
    let options = Options { fontdb: Arc::clone(&FONTS), font_family: font::FAMILY.into(), ..Options::default() };
    Tree::from_str(&svg(page), &options).map_err(|error| ExportError::Refused(error.to_string()))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::geometry::Point;
    use crate::paint::layout::text::Type;
    use crate::paint::mark::{Anchor, Mark};

    proptest! {
        #[test]
        fn whatever_texts_say_the_page_parses(title in any::<String>(), text in any::<String>(), label in ".*") {
            let marks = vec![Type::BODY.mark(&text, Point::new(20.0, 20.0), Anchor::Middle)];
            let group = Mark::figure(label, marks);
            let (description, symbols) = (title.clone(), Arc::default());
            let page = Page { width: 210.0, height: 297.0, title, description, symbols, marks: vec![group] };
            prop_assert!(tree(&page).is_ok());
        }
    }

    #[test]
    fn a_page_is_as_large_as_it_says_at_96_dots_an_inch() {
        let (title, description) = (String::new(), String::new());
        let page = Page { width: 25.4, height: 50.8, title, description, symbols: Arc::default(), marks: Vec::new() };
        let size = tree(&page).unwrap().size();
        assert_eq!((size.width(), size.height()), (96.0, 192.0));
    }
}
