//! Materials as text: a table to read, CSV for a spreadsheet, JSON for other programs.
//!
//! In CSV and JSON counts are whole numbers, lengths are millimetres rounded to the micrometre, and
//! money is a number of the currency's main unit, exact to its two decimals (`4.2` is 4.20 in JSON;
//! CSV always writes both). `left_over` and `spare` are in the unit of the line. What the pattern
//! does not say (no price) is null in JSON and empty in CSV.

mod table;
pub mod words;

use serde_json::{Value, json};

use super::{Amount, Bagged, BoughtWith, Buy, Cutting, Kit, Line, Materials, Packed, Suggestion};
use crate::english::list;
use crate::remark::escape::{escaped, in_json};
use crate::units::Money;
use words::said;

pub use table::table;

/// Columns of the CSV file.
const COLUMNS: [&str; 15] = [
    "kind",
    "id",
    "name",
    "count",
    "length_mm",
    "spare",
    "from_stash",
    "packs",
    "sold_by",
    "pack",
    "left_over",
    "cost_used",
    "cost_bought",
    "in_hand",
    "from",
];

/// What stands between the cells of CSV.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Separator {
    /// A comma (RFC 4180); decimals have a point.
    #[default]
    Comma,
    /// A semicolon, as spreadsheets read it where decimals have a comma, as these have; a byte order mark says that it
    /// is UTF-8.
    Semicolon,
    /// A tab; decimals have a point.
    Tab,
}

impl Separator {
    const fn sign(self) -> char {
        match self {
            Self::Comma => ',',
            Self::Semicolon => ';',
            Self::Tab => '\t',
        }
    }

    /// A number as it is written beside this sign.
    fn number(self, number: String) -> String {
        if self == Self::Semicolon { number.replace('.', ",") } else { number }
    }

    /// A cell in quotes where it holds this sign, a quote or a line break (RFC 4180, section 2).
    fn quoted(self, cell: &str) -> String {
        let breaks = [self.sign(), '"', '\r', '\n'];
        if cell.contains(breaks) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.to_owned() }
    }
}

/// The lines as separated values: RFC 4180, with a header line and CRLF line ends. Ids and names that a spreadsheet
/// would run as formulas begin with an apostrophe.
#[must_use]
pub fn csv(materials: &Materials, separator: Separator) -> String {
    let header = COLUMNS.map(str::to_owned);
    let rows = std::iter::once(header).chain(materials.lines.iter().map(|line| cells(line, separator)));
    let row = |row: [String; 15]| row.map(|cell| separator.quoted(&cell)).join(&separator.sign().to_string()) + "\r\n";
    let mark = if separator == Separator::Semicolon { "\u{feff}" } else { "" };
    mark.to_owned() + &rows.map(row).collect::<String>()
}

fn cells(line: &Line, separator: Separator) -> [String; 15] {
    let plain = |amount| separator.number(plain(amount));
    let (count, length) = match line.need {
        Amount::Count(_) => (plain(line.need), String::new()),
        Amount::Length(_) => (String::new(), plain(line.need)),
    };
    let within = |cell: &dyn Fn(&BoughtWith) -> String, other: String| line.within.as_ref().map_or(other, cell);
    let bought = |cell: &dyn Fn(&Buy) -> String| line.buy.as_ref().map(cell).unwrap_or_default();
    [
        line.article.kind().to_owned(),
        harmless(&line.id),
        harmless(&list(&line.names)),
        count,
        length,
        plain(line.spare),
        plain(line.from_stash),
        bought(&|buy| buy.lots.to_string()),
        within(&|within| harmless(&format!("in {}", within.id)), bought(&|buy| words::sold_as(buy.unit).to_owned())),
        bought(&|buy| plain(buy.lot)),
        within(&|within| within.left_over.to_string(), bought(&|buy| plain(buy.left_over))),
        bought(&|buy| separator.number(said(buy.used))),
        bought(&|buy| separator.number(said(buy.bought))),
        plain(line.in_hand),
        line.from.as_deref().map(harmless).unwrap_or_default(),
    ]
}

/// A text of the pattern as a cell that no spreadsheet runs: one that begins like a formula gets an
/// apostrophe before it (OWASP, "CSV Injection": = + - @, tab and carriage return, and their full-width
/// forms; from memory), and control characters are written out.
fn harmless(text: &str) -> String {
    let runs = text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']);
    escaped(&if runs { format!("'{text}") } else { text.to_owned() })
}

fn plain(amount: Amount) -> String {
    number(amount).to_string()
}

/// The whole list as JSON, priced in a currency: lines, cutting plans, totals and the price suggestion.
#[must_use]
pub fn json(materials: &Materials, currency: Option<&str>) -> String {
    let whole = json!({
        "makers": materials.makers,
        "spare_share": materials.spare,
        "currency": currency,
        "materials": array(materials),
        "cutting": materials.cuttings.iter().map(|plan| cutting(materials, plan)).collect::<Vec<_>>(),
        "cost_used": money(materials.used()),
        "cost_bought": money(materials.bought()),
        "price": materials.suggestion.as_ref().map(suggestion),
        "kits": materials.kits.iter().map(kit).collect::<Vec<_>>(),
    });
    in_json(&format!("{whole:#}\n"))
}

/// The lines as a JSON array: the `materials` of `measure --json`.
#[must_use]
pub fn array(materials: &Materials) -> Value {
    Value::Array(materials.lines.iter().map(object).collect())
}

fn object(line: &Line) -> Value {
    let needed = match line.need {
        Amount::Count(_) => "count",
        Amount::Length(_) => "length_mm",
    };
    let buy = line.buy.as_ref();
    let mut object = json!({
        "kind": line.article.kind(),
        "id": line.id,
        "name": list(&line.names),
        needed: number(line.need),
        "spare": number(line.spare),
        "in_hand": number(line.in_hand),
        "from_stash": number(line.from_stash),
        "packs": buy.map(|buy| buy.lots),
        "sold_by": buy.map(|buy| words::sold_as(buy.unit)),
        "pack": buy.map(|buy| number(buy.lot)),
        "left_over": buy.map(|buy| number(buy.left_over)),
        "cost_used": buy.and_then(|buy| buy.used).map(money),
        "cost_bought": buy.and_then(|buy| buy.bought).map(money),
    });
    if let Some(from) = &line.from {
        object["from"] = json!(from);
    }
    if let Some(BoughtWith { id, left_over, wanting, .. }) = &line.within {
        object["in"] = json!(id);
        object["left_over"] = json!(left_over);
        object["expected"] = json!(wanting.is_some());
    }
    object
}

fn kit(kit: &Kit) -> Value {
    let held = |packed: &Packed| match &packed.held {
        Bagged::Counted(count, spare) => {
            json!({ "kind": packed.kind, "id": packed.id, "name": list(&packed.names), "count": count, "spare": spare })
        }
        Bagged::Cut(pieces) => {
            let pieces: Vec<_> = pieces.iter().map(piece).collect();
            json!({ "kind": packed.kind, "id": packed.id, "name": list(&packed.names), "pieces": pieces })
        }
    };
    json!({
        "title": kit.title,
        "variant": kit.variant,
        "bags": kit.bags,
        "contents": kit.packed.iter().map(held).collect::<Vec<_>>(),
        "cost": money(kit.contents),
        "unpriced": kit.unpriced,
    })
}

fn piece(piece: &super::Cut) -> Value {
    json!({ "for": words::cut_for(piece), "length_mm": micrometres(piece.length.value()) })
}

fn cutting(materials: &Materials, cutting: &Cutting) -> Value {
    let id = materials.lines.iter().find(|line| line.article == cutting.article).map(|line| &line.id);
    let spools = cutting.spools.iter().map(|spool| {
        json!({
            "length_mm": micrometres(spool.length.value()),
            "in_stash": spool.in_stash,
            "pieces": spool.pieces.iter().map(piece).collect::<Vec<_>>(),
            "left_mm": micrometres(spool.left.value()),
        })
    });
    json!({
        "kind": cutting.article.kind(),
        "id": id,
        "spools": spools.collect::<Vec<_>>(),
        "unplaced": cutting.unplaced.iter().map(piece).collect::<Vec<_>>(),
        "bought": cutting.bought(),
        "least": cutting.least,
    })
}

fn suggestion(price: &Suggestion) -> Value {
    json!({
        "materials": money(price.materials),
        "labour": money(price.labour),
        "overhead": money(*price.overhead),
        "overhead_percent": price.percent,
        "cost": money(price.cost),
        "wholesale_factor": *price.factors[0],
        "retail_factor": *price.factors[1],
        "wholesale": money(price.wholesale),
        "retail": money(price.retail),
        "unpriced": price.unpriced,
    })
}

fn number(amount: Amount) -> Value {
    match amount {
        Amount::Count(count) => json!(count),
        Amount::Length(length) => micrometres(length.value()),
    }
}

/// A length in mm to the third decimal, whole ones without a decimal point.
fn micrometres(mm: f64) -> Value {
    let rounded = (mm * 1000.0).round() / 1000.0;
    #[expect(clippy::cast_possible_truncation, reason = "a whole number below 2^53")]
    let whole = rounded as i64;
    if rounded.fract() == 0.0 && rounded.abs() < 9.0e15 { json!(whole) } else { json!(rounded) }
}

/// Main units: the nearest number to a whole count of hundredths prints as at most two decimals.
fn money(amount: Money) -> Value {
    json!(amount.value() as f64 / 100.0)
}
