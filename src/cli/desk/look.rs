//! The answer to a text: what there is to say about it, and the piece drawn with all that lies on it.

use std::collections::BTreeMap;

use axum::response::Response;
use serde::Serialize;

use festoon::Piece;
use festoon::assist::{self, utf16};
use festoon::bench::{self, Of, Thing};
use festoon::design::{Index, Stated, Strand, limb};
use festoon::english::assumed;
use festoon::export;
use festoon::materials::Article;
use festoon::paint::mark::Rgb;
use festoon::pattern::{self, Kind, Pattern};
use festoon::remark::render::summary;
use festoon::remark::{Level, Remark};
use festoon::sheet;
use festoon::source::{At, Place, Source};
use festoon::units::{Length, Mass};

use super::answer::json;
use super::ask::{Drawn, Question};
use super::{Desk, html};

/// Everything that the page shows of a text.
#[derive(Serialize)]
struct Overview {
    remarks: Vec<Said>,
    summary: String,
    /// What the text and its shelves name; nothing where it cannot be read.
    names: Option<Choosable>,
    /// The piece; nothing where the text has errors.
    piece: Option<ShownPiece>,
}

/// What may be chosen: sizes and colourways by name, beads and findings by id and name.
#[derive(Serialize)]
struct Choosable {
    sizes: Vec<String>,
    colourways: Vec<String>,
    /// The key of the measure by which a size may be made.
    measure: Option<&'static str>,
    beads: Vec<[String; 2]>,
    findings: Vec<[String; 2]>,
}

/// A remark with its place, and the edit that mends it.
#[derive(Serialize)]
struct Said {
    level: Level,
    code: &'static str,
    headline: String,
    why: &'static str,
    help: String,
    line: Option<usize>,
    place: Option<[usize; 2]>,
    remedy: Option<Utf16Edit>,
}

/// An edit in UTF-16 code units.
#[derive(Serialize)]
struct Utf16Edit {
    title: String,
    place: [usize; 2],
    text: String,
}

#[derive(Serialize)]
struct ShownPiece {
    svg: String,
    width: f64,
    height: f64,
    about: String,
    /// Beads and findings by their kind's name: id, name and facts.
    kinds: BTreeMap<String, Described>,
    things: Vec<Lying>,
    lows: Vec<Low>,
    /// Facts, strands and legend.
    facts: String,
    /// Everything strung, run by run, as a table.
    table: String,
}

/// What is told of a bead or finding.
#[derive(Serialize)]
struct Described {
    id: String,
    name: String,
    asked_for: String,
    /// Along its hole, or along the piece.
    length: String,
    /// As the pattern writes it: colour and size.
    colour: Option<String>,
    size: Option<String>,
    mass: String,
    price: String,
}

/// A thing strung where it lies on the drawing and in the text.
#[derive(Serialize)]
struct Lying {
    kind: Option<String>,
    strand: usize,
    x: f64,
    y: f64,
    reach: f64,
    station: f64,
    place: [usize; 2],
    count: u32,
}

/// A strand's lowest point, with what dragging it needs.
#[derive(Serialize)]
struct Low {
    strand: usize,
    name: String,
    x: f64,
    y: f64,
    span: f64,
    drop: f64,
    finished: f64,
}

/// Answers with everything about a text.
pub fn look(asked: &Question, desk: &Desk) -> Response {
    let drawn = asked.drawn(desk);
    json(Overview {
        remarks: said(&drawn),
        summary: summary(&drawn.remarks),
        names: pattern::draft(&drawn.source).pattern.map(|pattern| names(&pattern)),
        piece: drawn.piece.as_ref().map(|piece| shown(piece, &drawn.source, asked)),
    })
}

fn names(pattern: &Pattern) -> Choosable {
    let named = |id: &At<String>, name: Option<&String>| [id.value.clone(), name.unwrap_or(&id.value).clone()];
    let findings = pattern.findings.iter().flat_map(|findings| &findings.entries);
    let kind = pattern.kind.value;
    Choosable {
        sizes: pattern.size_names(),
        colourways: pattern.colourway_names(),
        measure: (!matches!(kind, Kind::Earrings | Kind::Strap)).then(|| limb(kind).key()),
        beads: pattern.beads.entries.iter().map(|(id, bead)| named(id, bead.name.as_ref())).collect(),
        findings: findings.map(|(id, finding)| named(id, finding.name.as_ref())).collect(),
    }
}

/// The remarks, errors first and each level from top to bottom.
fn said(drawn: &Drawn) -> Vec<Said> {
    let mut sorted: Vec<_> = drawn.remarks.iter().collect();
    sorted.sort_by_key(|remark| (remark.level(), remark.place));
    sorted.into_iter().map(|remark| one(remark, &drawn.source)).collect()
}

fn one(remark: &Remark, source: &Source) -> Said {
    let own = remark.place.filter(|place| !place.is_shelved());
    let remedy = assist::remedy(remark, source).filter(|_| own == remark.place);
    let shelf = remark.place.filter(|place| place.is_shelved());
    let whose = shelf.map(|place| line_of_shelf(source, place) + ": ");
    Said {
        level: remark.level(),
        code: remark.code().name(),
        headline: whose.unwrap_or_default() + &remark.headline(),
        why: remark.code().reason(),
        help: remark.help(),
        line: own.map(|place| source.line_column(place.start).0),
        place: own.map(|place| units(source, place)),
        remedy: remedy.map(|remedy| Utf16Edit {
            title: remedy.title,
            place: units(source, remedy.place),
            text: remedy.text,
        }),
    }
}

/// Where a place on a shelf stands, in words.
pub fn line_of_shelf(source: &Source, place: Place) -> String {
    format!("{}, line {}", source.of(place).name, source.start_of(place).0)
}

/// A place in UTF-16 code units.
pub fn units(source: &Source, place: Place) -> [usize; 2] {
    [place.start, place.end].map(|byte| utf16::units(source.text(), byte))
}

fn shown(piece: &Piece, source: &Source, asked: &Question) -> ShownPiece {
    let bench = bench::bench(piece, asked.ink());
    let page = if asked.soon { bench::plain(bench.page) } else { bench.page };
    ShownPiece {
        svg: export::svg(&page),
        width: page.width,
        height: page.height,
        about: page.description.clone(),
        kinds: kinds(piece, source),
        things: lying(&bench.things, source),
        lows: bench.lows.iter().map(|(strand, at)| low(piece, *strand, (at.x, at.y))).collect(),
        facts: html::facts(piece).into_string(),
        table: html::strung(piece, &bench.things).into_string(),
    }
}

/// The name of a thing's kind on the page: `b0`, `f2`.
fn kind_name(of: Of) -> Option<String> {
    match of {
        Of::Bead(bead) => Some(format!("b{}", bead.number())),
        Of::Finding(finding) => Some(format!("f{}", finding.number())),
        Of::Knot => None,
    }
}

fn lying(things: &[Thing], source: &Source) -> Vec<Lying> {
    let mut places: BTreeMap<Place, ([usize; 2], u32)> = BTreeMap::new();
    for thing in things {
        let told = places.entry(thing.place).or_insert_with(|| (units(source, thing.place), 0));
        told.1 += 1;
    }
    let of = |thing: &Thing| {
        let (place, count) = places.get(&thing.place).copied().unwrap_or_default();
        Lying {
            kind: kind_name(thing.of),
            strand: thing.strand.number(),
            x: fine(thing.at.x),
            y: fine(thing.at.y),
            reach: fine(thing.reach),
            station: fine(thing.station),
            place,
            count,
        }
    };
    things.iter().map(of).collect()
}

/// To the hundredth.
fn fine(number: f64) -> f64 {
    (number * 100.0).round() / 100.0
}

fn kinds(piece: &Piece, source: &Source) -> BTreeMap<String, Described> {
    let (design, units) = (&piece.design, piece.telling.units);
    let (costs, sizes) = (html::costs(piece), pattern::written(source, "beads", "size"));
    let kind = |article: Article, colour: Option<Rgb>, length: Option<Length>, mass: Option<Stated<Mass>>| {
        let id = article.id(design).to_owned();
        Described {
            name: article.name(design).to_owned(),
            asked_for: sheet::asked_for(design, article, units),
            colour: colour.map(Rgb::hex),
            size: colour.and_then(|_| sizes.get(&id).cloned()),
            length: length.map(|length| units.ruler(length)).unwrap_or_default(),
            mass: mass.map(|mass| format!("{:.2} g{}", mass.value(), assumed(mass.is_assumed()))).unwrap_or_default(),
            price: costs.get(&id).cloned().unwrap_or_default(),
            id,
        }
    };
    let beads = design.beads.entries().map(|(at, bead)| {
        (
            kind_name(Of::Bead(at)),
            kind(Article::Bead(at), Some(piece.palette.bead(at).colour), Some(bead.along), Some(bead.mass)),
        )
    });
    let findings = design.findings.entries().map(|(at, finding)| {
        (kind_name(Of::Finding(at)), kind(Article::Finding(at), None, finding.length(), finding.mass_of_one()))
    });
    beads.chain(findings).filter_map(|(name, kind)| Some((name?, kind))).collect()
}

fn low(piece: &Piece, strand: Index<Strand>, (x, y): (f64, f64)) -> Low {
    let (hung, of) = (&piece.drape.strands[strand], &piece.design.strands[strand]);
    Low {
        strand: strand.number(),
        name: of.name.clone(),
        x,
        y,
        span: (hung.ends[1].x - hung.ends[0].x).abs(),
        drop: hung.drop,
        finished: of.finished.value(),
    }
}
