//! Whole files: the same bytes from run to run, and sizes that say the truth.

use festoon::export::{About, Day, Effort, ExportError, pdf, png, svg};
use festoon::geometry::Point;
use festoon::paint::layout::table::{Align, Cell, Column, Table};
use festoon::paint::layout::text::Type;
use festoon::paint::mark::{Anchor, ColourStop, Fill, Key, Mark, Page, Rgb, Role, Segment, Symbol, Text, Weight};

/// A page with a stamped ball in a gradient, and a text.
pub fn page(stamps: u32) -> Page {
    let ball = Symbol { key: Key::new("ball"), marks: vec![disc(2.0)] };
    let stamp = |i: u32| Mark::Stamp {
        symbol: Key::new("ball"),
        at: Point::new(15.0 + f64::from(i % 100) * 1.8, 30.0 + f64::from(i / 100) * 2.5),
        angle: f64::from(i) * 0.1,
        scale: 1.0,
        along: 1.0,
    };
    let text = Mark::Text(Text {
        at: Point::new(15.0, 20.0),
        text: "Fifty beads & ½ in of cord".into(),
        size: 7.0,
        weight: Weight::Semibold,
        colour: Rgb::BLACK,
        anchor: Anchor::Start,
        angle: 0.0,
    });
    let marks = std::iter::once(text).chain((0..stamps).map(stamp)).collect();
    let description = "A title over rows of balls.".into();
    Page { width: 210.0, height: 297.0, title: "Balls".into(), description, symbols: [ball].into(), marks }
}

fn disc(radius: f64) -> Mark {
    let corner = |x: f64, y: f64| Point::new(x * radius, y * radius);
    let outline = vec![
        Segment::Move(corner(1.0, 0.0)),
        Segment::Line(corner(0.0, 1.0)),
        Segment::Line(corner(-1.0, 0.0)),
        Segment::Line(corner(0.0, -1.0)),
        Segment::Close,
    ];
    let stop = |at, colour| ColourStop { at, colour, opacity: 1.0 };
    let stops = vec![stop(0.0, Rgb(240, 250, 240)), stop(1.0, Rgb(60, 110, 80))];
    Mark::Shape { outline, fill: Some(Fill::Radial(Point::new(-0.5, -0.5), 2.5, stops)), stroke: None }
}

#[test]
fn files_are_the_same_from_run_to_run() {
    let page = page(50);
    let about = About {
        title: "Balls".into(),
        author: "Marram Studio".into(),
        subject: "Rows of balls".into(),
        keywords: vec!["beads".into()],
        archived: None,
    };
    assert_eq!(svg(&page), svg(&page));
    assert_eq!(png(&page, 72.0, Effort::File), png(&page, 72.0, Effort::File));
    let pages = [page.clone(), page];
    let first = pdf(&pages, &about).unwrap();
    assert_eq!(first, pdf(&pages, &about).unwrap());
    assert!(first.starts_with(b"%PDF-"));
    let says = |what: &str| first.windows(what.len()).any(|bytes| bytes == what.as_bytes());
    assert!(says("/Title(Balls)") && says("/Author(Marram Studio)") && says("/Subject(Rows of balls)"));
}

#[test]
fn a_pdf_without_pages_author_or_keywords_is_still_one() {
    assert!(pdf(&[], &About::default()).unwrap().starts_with(b"%PDF-"));
}

/// Tags as ISO 32000-1, 14.7 and 14.8, names them: a section a page, headings, tables with their headers,
/// figures with alternatives.
#[test]
fn a_pdf_is_tagged() {
    let ball = Mark::Stamp { symbol: Key::new("ball"), at: Point::new(50.0, 50.0), angle: 0.0, scale: 1.0, along: 1.0 };
    let mut page = page(0);
    let title = |face: Type, words, level| face.line(words).in_role(Role::Heading(level)).at(Point::new(20.0, 30.0));
    page.marks.extend(title(Type::TITLE, "Balls", 1));
    page.marks.push(Mark::figure("one ball", vec![ball.clone()]));
    page.marks.extend(title(Type::HEADING, "More", 2));
    page.marks.push(Mark::ornament(vec![ball]));
    let mut table = Table::new(vec![Column::wrapping("what"), Column::new("how many", Align::Right)]);
    table.push(vec![Cell::text("balls"), Cell::text("50")]);
    page.marks.extend(table.set(80.0).block().at(Point::new(20.0, 80.0)));
    let file = pdf(&[page.clone(), page], &About::default()).unwrap();
    let count = |what: &str| file.windows(what.len()).filter(|bytes| *bytes == what.as_bytes()).count();
    assert_eq!(count("/Marked true"), 1);
    assert_eq!(["/S/Sect", "/S/H1", "/S/H2", "/S/Figure"].map(count), [2, 2, 2, 2]);
    assert_eq!(["/S/Table", "/S/TR", "/S/TH", "/S/TD"].map(count), [2, 4, 6, 2]);
    assert_eq!(["/Scope/Column", "/Scope/Row"].map(count), [4, 2]);
    assert_eq!(count("/S/P"), 2 + 2 * 4, "the words outside, and those in cells");
    assert_eq!(count("/Alt(A title over rows of balls. Shown: one ball)"), 2);
}

#[test]
fn a_pdf_has_exact_boxes_and_one_subset_of_each_font() {
    let page = page(3);
    let file = pdf(&[page.clone(), page], &About::default()).unwrap();
    let count = |what: &str| file.windows(what.len()).filter(|bytes| *bytes == what.as_bytes()).count();
    assert_eq!(count("/MediaBox[0 0 595.2756 841.8898]"), 2, "210 × 297 mm in points of 1/72 in");
    assert_eq!(count("/Type/FontDescriptor"), 1, "only the heavier weight is used");
    assert_eq!(count("/Lang(en)"), 1);
    assert!(file.len() < 40_000, "{} bytes", file.len());
}

/// How often a file says something.
fn count(file: &[u8], what: &str) -> usize {
    file.windows(what.len()).filter(|bytes| *bytes == what.as_bytes()).count()
}

/// What ISO 19005-2 asks of a file by its clauses: 6.6.4 its part and level in the metadata, 6.2.3 an output intent
/// with a profile of three colours, 6.1.3 an identifier and no encryption, 6.1.2 four bytes above 127 in the second
/// line, 6.2.11.7 Unicode of each font. What ISO 14289-1, 5 asks is claimed by none.
#[test]
fn a_file_to_keep_says_what_it_is() {
    let about = |archived| About { title: "Balls".into(), archived, ..About::default() };
    let page = Page { description: "Rows of balls.".into(), ..page(3) };
    let kept = pdf(std::slice::from_ref(&page), &about(Day::new(2026, 11, 27))).unwrap();
    let claims = ["<pdfaid:part>2<", "<pdfaid:conformance>U<", "/S/GTS_PDFA1", "/ID["];
    for said in claims.into_iter().chain(["<xmp:CreateDate>2026-11-27T00:00:00Z<"]) {
        assert_eq!(count(&kept, said), 1, "{said}");
    }
    assert_eq!(count(&kept, "pdfuaid"), 0);
    assert_eq!(count(&kept, "/CreationDate(D:20261127000000Z)"), 1);
    assert!(count(&kept, "/N 3") == 1 && count(&kept, "/Encrypt") == 0);
    assert_eq!(count(&kept, "/Type/Font/Subtype/Type0"), count(&kept, "/ToUnicode"));
    let second = kept.split(|byte| *byte == b'\n').nth(1).unwrap();
    assert!(second[0] == b'%' && second[1..5].iter().all(|byte| *byte > 127), "{second:?}");
    let plain = pdf(&[page], &about(None)).unwrap();
    for unsaid in ["pdfaid", "pdfuaid", "/OutputIntents", "CreateDate", "/CreationDate"] {
        assert_eq!(count(&plain, unsaid), 0, "{unsaid}");
    }
}

/// ISO 19005-2, 6.2.11.8: no text shows the glyph of what a font lacks.
#[test]
fn a_file_to_keep_has_no_empty_boxes() {
    let mut page = page(0);
    page.marks.push(Type::BODY.mark("the shore: \u{6d77}\u{8fba}", Point::new(20.0, 40.0), Anchor::Start));
    let about = |archived| About { title: "Balls".into(), archived, ..About::default() };
    assert!(pdf(std::slice::from_ref(&page), &about(None)).is_ok());
    let letters = ["\u{6d77}", "\u{8fba}"].map(str::to_owned).into();
    assert_eq!(pdf(&[page], &about(Day::new(2026, 11, 27))), Err(ExportError::NoGlyph(letters)));
}
