//! The buying pages: the table tells the materials, the bars are to scale, prices only when asked.

use festoon::Piece;
use festoon::art::Ink;
use festoon::design::{Choice, Design, nth};
use festoon::english::list;
use festoon::materials::render::words::{cut, left, left_over, needed, sold_as};
use festoon::materials::{Article, Materials, Order, materials};
use festoon::paint::mark::{Fill, Mark, Page, Rgb};
use festoon::paint::{outline, style};
use festoon::sheet::Style;
use festoon::sheet::figure::Scale;
use festoon::source::Source;
use festoon::trade::paper::Paper;

use super::boxes::{Found, boxes};
use super::making::dense;
use super::{holds, pages, shipped};

fn bought(piece: &Piece) -> Materials {
    materials(&piece.design, &Order::default())
}

fn with_prices(piece: &Piece) -> Vec<Page> {
    festoon::pages(piece, &Style { paper: Paper::A4, ink: Ink::Colour, prices: true })
}

fn buying(pages: &[Page]) -> Vec<&Page> {
    pages.iter().filter(|page| holds(page, "Buying and cutting")).collect()
}

/// The texts that stand in the row of a text, to its right.
fn row(pages: &[&Page], name: &str) -> Vec<String> {
    let rows = pages.iter().map(|page| {
        let all = boxes(page);
        let texts = || all.iter().filter(|found| found.text().is_some());
        let beside = |name: &Found, other: &Found| {
            let middle = other.bounds.top.midpoint(other.bounds.bottom);
            other.bounds.left > name.bounds.right && middle > name.bounds.top && middle < name.bounds.bottom + 3.5
        };
        let starts = texts().filter(|found| found.text() == Some(name));
        let row = starts.flat_map(|name| texts().filter(move |other| beside(name, other)));
        row.filter_map(|found| found.text().map(str::to_owned)).collect::<Vec<_>>()
    });
    rows.into_iter().find(|row| !row.is_empty()).unwrap_or_default()
}

fn texts(pages: &[&Page]) -> Vec<String> {
    pages.iter().flat_map(|page| boxes(page)).filter_map(|found| found.text().map(str::to_owned)).collect()
}

#[test]
fn the_table_tells_what_the_materials_are() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let sheet = pages(&piece, Paper::A4);
        let units = piece.telling.units;
        let materials = bought(&piece);
        for line in &materials.lines {
            let row = row(&buying(&sheet), &list(&line.names));
            let is_taken = !matches!(line.article, Article::Assorted(_));
            let need = needed(&materials, line, units);
            let is_need =
                |cell: &String| cell.strip_prefix(&need).is_some_and(|rest| ["", " set", " sets"].contains(&rest));
            assert!(!is_taken || row.iter().any(is_need), "{name}: {:?}: {need} in {row:?}", line.names);
            let within = line.within.as_ref().map(|within| [format!("in the {}", sold_as(within.unit)), left(within)]);
            assert!(within.is_none_or(|told| told.iter().all(|told| row.contains(told))), "{name}: {row:?}");
            let left = line.buy.as_ref().map(|buy| left_over(&materials, line, buy, units));
            assert!(left.is_none_or(|left| row.contains(&left)), "{name}: {:?}: {row:?}", line.names);
        }
        for (bead, count) in piece.design.beads.iter().zip(piece.design.counts()) {
            let count = (count * piece.design.copies).to_string();
            assert!(row(&buying(&sheet), &bead.name).contains(&count), "{name}: {count} {}", bead.name);
        }
    }
}

/// Spindrift: of 14 pearls of each size on a strand the longer size takes 16 and a spare of two sizes, so two strands.
#[test]
fn a_size_that_takes_other_packs_is_told_with_them() {
    let told = |name: &str| {
        let piece = shipped().into_iter().find(|piece| piece.design.heading.title == name).unwrap();
        texts(&buying(&pages(&piece, Paper::A4))).join(" ")
    };
    let other = "Size longer takes other packs: strand of graduated freshwater pearls: 2 strands of 71.";
    assert!(told("Spindrift").contains(other), "{}", told("Spindrift"));
    for piece in shipped() {
        let alike = piece.sizes.iter().filter_map(|size| size.design.as_ref()).all(|design| {
            let lots = |materials: &Materials| {
                materials.lines.iter().map(|line| line.buy.as_ref().map(|buy| buy.lots)).collect::<Vec<_>>()
            };
            lots(&materials(design, &Order::default())) == lots(&bought(&piece))
        });
        let name = &piece.design.heading.title;
        assert_eq!(told(name).contains("takes other packs"), !alike, "{name}");
    }
}

/// Once on a page on which lengths are added up, and in the units of the sheet.
#[test]
fn it_is_told_once_how_lengths_are_rounded() {
    for piece in shipped() {
        let pages = pages(&piece, Paper::A4);
        let told = texts(&buying(&pages)).join(" ");
        let cuts = bought(&piece).cuttings.iter().any(|cutting| cutting.pieces().next().is_some());
        let name = &piece.design.heading.title;
        assert_eq!(told.matches("Every length is rounded by itself").count(), usize::from(cuts), "{name}");
    }
}

#[test]
fn prices_are_printed_only_when_asked_for() {
    let mut suggested = 0;
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let (without, with) = (pages(&piece, Paper::A4), with_prices(&piece));
        let (silent, told) = (texts(&without.iter().collect::<Vec<_>>()), texts(&buying(&with)));
        let materials = bought(&piece);
        let currency = piece.telling.currency.clone().unwrap_or_default();
        assert!(!silent.iter().any(|text| text == "cost" || text.contains("suggested price")), "{name}");
        assert!(currency.is_empty() || !silent.iter().any(|text| text.contains(&currency)), "{name}");
        for line in materials.lines.iter().filter(|line| line.buy.is_some()) {
            let cost = line.buy.as_ref().unwrap().bought.unwrap().to_string();
            assert!(row(&buying(&with), &list(&line.names)).contains(&cost), "{name}: {:?} {cost}", line.names);
        }
        let total = format!("Bought in all: {}", materials.bought());
        assert!(told.iter().any(|text| text.starts_with(&total)), "{name}: {total}");
        assert_eq!(materials.suggestion.is_some(), told.iter().any(|text| text == "A suggested price"), "{name}");
        suggested += u32::from(materials.suggestion.is_some());
    }
    assert!(suggested > 0, "some shipped pattern suggests a price");
}

/// Widths of the pieces drawn in the bars, in drawing order.
fn bars(page: &Page) -> Vec<f64> {
    let tint = style::ACCENT.mixed(Rgb::WHITE, 0.88);
    let width = |mark: &Mark| match mark {
        Mark::Shape { outline, fill: Some(Fill::Flat(colour, _)), .. } if *colour == tint => {
            let across: Vec<_> = outline::flattened(outline).iter().map(|point| point.x).collect();
            Some(across.iter().copied().fold(f64::MIN, f64::max) - across.iter().copied().fold(f64::MAX, f64::min))
        }
        _ => None,
    };
    page.marks.iter().filter_map(width).collect()
}

#[test]
fn bars_are_to_a_round_scale_that_the_page_states() {
    for piece in shipped() {
        let name = &piece.design.heading.title;
        let sheet = pages(&piece, Paper::A4);
        let buying = buying(&sheet);
        let mut drawn = buying.iter().flat_map(|page| bars(page));
        let stated = texts(&buying).join("\n");
        // Of a single piece to cut a bar would tell nothing.
        for cutting in bought(&piece).cuttings.iter().filter(|cutting| cutting.pieces().count() > 1) {
            // The strand lies at the needle's end of the bar, wherever it stands in the plan.
            let mut lengths: Vec<f64> = cutting.pieces().map(|piece| piece.length.value()).collect();
            let mut bars: Vec<f64> = lengths.iter().map(|_| drawn.next().expect("a piece drawn")).collect();
            [&mut lengths, &mut bars].into_iter().for_each(|all| all.sort_by(f64::total_cmp));
            let shares: Vec<f64> = bars.iter().zip(&lengths).map(|(bar, length)| bar / length).collect();
            let scale =
                Scale::ROUND.iter().find(|scale| shares.iter().all(|share| (share - scale.factor()).abs() < 1e-9));
            let scale = scale.unwrap_or_else(|| panic!("{name}: {shares:?}"));
            assert!(shares.is_empty() || stated.contains(&format!("Bars at {scale}; ")), "{name}: {scale}");
        }
        assert_eq!(drawn.next(), None, "{name}");
    }
}

#[test]
fn the_size_table_tells_every_size_as_its_own_sheet_would() {
    let source = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/saltmarsh.yaml")).unwrap();
    let source = Source::new("saltmarsh.yaml", source);
    let of_size = |size: Option<&str>| {
        let choice = Choice { size: size.map(str::to_owned), ..Choice::default() };
        festoon::piece(&source, &choice, None).0.expect("a size that can be made")
    };
    let base = of_size(None);
    let sheet = pages(&base, Paper::A4);
    let named: Vec<_> = base.sizes.iter().map(|size| size.name.as_deref()).collect();
    assert_eq!(named.first(), Some(&None));
    assert!(named.len() > 1 && texts(&buying(&sheet)).contains(&"base size, this sheet".to_owned()));
    let told = dense(&texts(&buying(&sheet)).concat());
    let (_, same) = told.split_once(&dense("In every size:")).expect("what does not differ");
    for size in named {
        let design = of_size(size).design;
        for (at, strand) in design.strands.iter().enumerate() {
            for (what, length) in [("finished", strand.finished), ("beads", strand.beaded()), ("cut", strand.cut())] {
                let name = format!("{} {}, {what}", at + 1, strand.name);
                let units = base.telling.units;
                let printed = if what == "cut" { cut(length, units) } else { units.ruler(length) };
                // What is the same in all sizes is told once below the table.
                let in_table = row(&buying(&sheet), &name).contains(&printed);
                assert!(in_table || same.contains(&dense(&format!("{name} {printed}"))), "{size:?}: {name} {printed}");
            }
        }
    }
}

#[test]
fn other_sizes_are_told_in_the_letters_of_this_sheet() {
    let source = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/saltmarsh.yaml")).unwrap();
    let source = Source::new("saltmarsh.yaml", source);
    let choice = Choice { size: Some("long".to_owned()), ..Choice::default() };
    let long = festoon::piece(&source, &choice, None).0.expect("a size that can be made").design;
    let base = festoon::piece(&source, &Choice::default(), None).0.expect("a piece");
    let told = dense(&texts(&buying(&pages(&base, Paper::A4))).concat());
    assert!(told.contains(&dense("What to string for size long")), "{told}");
    let charted = |design: &Design, at: usize| {
        let strand = &design.strands[nth(at)];
        [
            festoon::steps::english::chart::whole(design, strand, base.telling.units).to_string(),
            festoon::steps::english::counts(design, strand),
        ]
    };
    let (here, longer): (Vec<usize>, Vec<usize>) =
        (0..3).partition(|at| charted(&long, *at) == charted(&base.design, *at));
    // Of three strands on bare cord the inner one has room for no repeat more.
    assert_eq!((here, &longer), (vec![0], &vec![1, 2]));
    for said in longer.into_iter().flat_map(|at| charted(&long, at)) {
        assert!(told.contains(&dense(&said)), "{said} in {told}");
    }
    assert!(told.contains(&dense("As on this sheet, with the table's bare wire: 1 inner.")), "{told}");
}

#[test]
fn pieces_have_the_numbers_of_their_strands() {
    for piece in shipped().iter().filter(|piece| piece.design.strands.len() > 1) {
        let sheet = pages(piece, Paper::A4);
        for (at, strand) in piece.design.strands.iter().enumerate() {
            let told = buying(&sheet).into_iter().flat_map(boxes).collect::<Vec<_>>();
            let number = (at + 1).to_string();
            let stands = |text: &str| told.iter().filter(|found| found.text() == Some(text)).collect::<Vec<_>>();
            let (numbers, names) = (stands(&number), stands(&strand.name));
            let beside =
                |one: &Found| numbers.iter().any(|number| (number.bounds.bottom - one.bounds.bottom).abs() < 1.0);
            assert!(names.iter().any(|name| beside(name)), "{}: {number}", piece.design.heading.title);
        }
    }
}

#[test]
fn a_chain_is_told_in_links_and_an_assumed_wire_not_at_all() {
    let saltmarsh = shipped().into_iter().find(|piece| piece.design.heading.title == "Saltmarsh").unwrap();
    let told = texts(&buying(&pages(&saltmarsh, Paper::A4)));
    // 60 mm of links of 4 mm, by the pattern.
    let links = "about 24 links of 4 mm, each lengthens it by 2.4 mm";
    assert!(told.iter().any(|text| text.contains(links)), "{told:?}");
    assert!(told.contains(&"links of 4 mm, brass".to_owned()), "{told:?}");
    assert!(told.iter().any(|text| text.contains("21 gauge wire") || text.contains("21\u{a0}gauge wire")), "{told:?}");
}
