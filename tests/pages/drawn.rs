//! Generated pieces that have, together, every key and word of the language and every finding where it may stand: every page
//! that can be drawn of them is drawn, whole and of finite numbers.

use std::collections::BTreeSet;

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::TestRunner;

use festoon::art::Ink;
use festoon::design::{Choice, Fit, resolve};
use festoon::export::svg;
use festoon::paint::mark::{Page, Rgb};
use festoon::picture::{Ground, Proportion, Setting};
use festoon::remark::has_errors;
use festoon::sheet::Style;
use festoon::source::Source;
use festoon::units::Length;
use festoon::{Piece, pattern, piece};

use super::boxes::{self, boxes};
use super::language::Language;
use super::{PAPERS, every, finite, margin, texts};

/// Texts from which those that are drawn are chosen.
const TEXTS: usize = 800;

/// A text whose design can be made, and what of the language it takes.
struct Text {
    source: Source,
    has: BTreeSet<String>,
}

impl Text {
    fn new(source: Source, language: &Language) -> Option<Self> {
        let (pattern, remarks) = pattern::read(&source);
        let pattern = pattern.filter(|_| !has_errors(&remarks))?;
        let design = resolve(&pattern, &Choice::default()).0?;
        let besides =
            texts::BESIDES.iter().filter(|what| source.text().contains(**what)).map(|what| (*what).to_owned());
        let has = language.of(&source, Some(&design)).into_iter().chain(besides).collect();
        Some(Self { source, has })
    }
}

/// The texts that are drawn, each of which gives a piece: those first that have most of what is to be had, until they have
/// all; and what none of them has.
fn drawn() -> (Vec<Source>, BTreeSet<String>) {
    let (language, mut runner, generator) = (Language::new(), TestRunner::deterministic(), texts::source());
    let text = |_| Text::new(generator.new_tree(&mut runner).expect("a text").current(), &language);
    let mut texts: Vec<_> = (0..TEXTS).filter_map(text).collect();
    let mut left: BTreeSet<_> = language.all().into_iter().chain(texts::BESIDES.map(str::to_owned)).collect();
    let mut chosen = Vec::new();
    let adds = |text: &Text, left: &BTreeSet<String>| text.has.intersection(left).count();
    while let Some(most) = (0..texts.len()).max_by_key(|at| adds(&texts[*at], &left)) {
        let text = texts.swap_remove(most);
        if text.has.is_disjoint(&left) {
            break;
        }
        // What cannot be made is refused, which other tests are about.
        if piece(&text.source, &Choice::default(), None).0.is_some() {
            left.retain(|what| !text.has.contains(what));
            chosen.push(text.source);
        }
    }
    (chosen, left)
}

/// A text's piece in its own colours, and then in each of its colourways.
fn coloured(source: &Source) -> Vec<Piece> {
    let names = pattern::read(source).0.map(|pattern| pattern.colourway_names()).unwrap_or_default();
    let ways = names.into_iter().map(|name| Choice { colourway: Some(name), ..Choice::default() });
    std::iter::once(Choice::default()).chain(ways).filter_map(|choice| piece(source, &choice, None).0).collect()
}

/// A text's piece in each of its sizes, and as it is made for one wrist.
fn sized(source: &Source) -> Vec<Piece> {
    let names = pattern::read(source).0.map(|pattern| pattern.size_names()).unwrap_or_default();
    let sizes = names.into_iter().map(|name| Choice { size: Some(name), ..Choice::default() });
    let fit = Fit { wrist: Some(Length::mm(170.0)), ..Fit::default() };
    let fitted = Choice { fit, ..Choice::default() };
    sizes.chain([fitted]).filter_map(|choice| piece(source, &choice, None).0).collect()
}

fn assert_whole(page: &Page) {
    assert_eq!(finite::fault(page), None, "{}", page.title);
    assert!(!boxes(page).is_empty() && !svg(page).contains("NaN"), "{}", page.title);
}

/// Asserts that a piece's sheet is whole in an ink, and inside its margins.
fn assert_sheet(piece: &Piece, style: &Style) {
    for page in festoon::pages(piece, style) {
        assert_whole(&page);
        assert_eq!(boxes::outside(&page, margin(style.paper)), Vec::<String>::new(), "{}", page.title);
    }
}

/// Draws every page of a text's pieces, and tells in how many colours and sizes.
fn draw(at: usize, source: &Source) -> [usize; 2] {
    let style = |ink| Style { paper: PAPERS[at % PAPERS.len()], ink, prices: at.is_multiple_of(2) };
    let (pieces, sizes) = (coloured(source), sized(source));
    Ink::ALL.iter().for_each(|ink| assert_sheet(&pieces[0], &style(*ink)));
    sizes.iter().for_each(|piece| assert_sheet(piece, &style(Ink::Colour)));
    let setting = Setting { ground: Ground::Plain(Rgb::WHITE), proportion: Proportion::Square, caption: true };
    let style = style(Ink::ALL[at % Ink::ALL.len()]);
    every::besides_the_sheet(&pieces, &style, &setting).iter().for_each(assert_whole);
    [pieces.len(), sizes.len()]
}

#[test]
fn every_page_of_whatever_the_language_makes_is_drawn() {
    let (sources, missing) = drawn();
    assert!(missing.is_empty(), "no piece has {missing:#?}");
    let made: Vec<_> = sources.iter().enumerate().map(|(at, source)| draw(at, source)).collect();
    // Its own colours and two colourways; a size, and one made to measure.
    assert!(made.iter().any(|[colours, _]| *colours == 3) && made.iter().any(|[_, sizes]| *sizes == 2), "{made:?}");
}
