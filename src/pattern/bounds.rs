//! The least and the most that each key may say: bounds that no piece of jewellery meets, so that
//! within them every command is done soon and in little memory. All are assumptions.
//!
//! [`BOUNDS`] is the only list of them. The reader keeps to it, the JSON Schema says it beside each key,
//! and [`reference()`] prints it for the language reference.

use serde_json::{Value, json};

use super::english::bounded;
use super::node::ARTICLES;

pub use super::english::reference;
pub use crate::units::Unit;

/// What keys of a group may say at least and at most.
#[derive(Clone, Copy, Debug)]
pub struct Bound {
    /// The group of keys, by its name among the types.
    pub record: &'static str,
    /// The keys.
    pub keys: &'static [&'static str],
    /// In what.
    pub unit: Unit,
    /// The least, in that unit.
    pub least: f64,
    /// The most, in that unit.
    pub most: f64,
}

/// Most beads, knots and spaces of a piece, over all its strands.
pub const MOST_STRUNG: u32 = 20_000;
/// Most findings among the beads of a piece, over all its strands.
pub const MOST_FINDINGS: u32 = 4_000;
/// Most beads, knots and spaces of all variants of a piece: its own, its sizes' and its colourways'.
pub const MOST_IN_VARIANTS: u32 = 100_000;
/// Most entries of a piece's bead lists as written, over all its strands.
pub const MOST_WRITTEN: u32 = 5_000;
/// Most links of one length of chain.
pub const MOST_LINKS: u32 = 1_000;
/// Most times that a piece goes round.
pub const MOST_WRAPS: u32 = 30;
/// Most turns of a torsade.
const MOST_TWISTS: f64 = 200.0;
/// Most sizes of a graduated row.
pub const MOST_GRADES: u32 = 10;
/// Longest that a piece and its strands may be, in mm.
const LONGEST: f64 = 20_000.0;
/// Stands for all groups in which a key has no bound of its own.
pub(super) const ELSEWHERE: &str = "elsewhere";
/// Smallest size of anything, in mm: half the thickness of a hair.
const FINEST: f64 = 0.02;

const fn of(record: &'static str, keys: &'static [&'static str], unit: Unit, (least, most): (f64, f64)) -> Bound {
    Bound { record, keys, unit, least, most }
}

const fn sizes(record: &'static str, keys: &'static [&'static str], most: f64) -> Bound {
    of(record, keys, Unit::Millimetres, (FINEST, most))
}

const fn texts(record: &'static str, keys: &'static [&'static str], most: f64) -> Bound {
    of(record, keys, Unit::Signs, (0.0, most))
}

const fn lists(record: &'static str, keys: &'static [&'static str], most: f64) -> Bound {
    of(record, keys, Unit::Entries, (0.0, most))
}

const fn counts(record: &'static str, keys: &'static [&'static str], most: f64) -> Bound {
    of(record, keys, Unit::Count, (1.0, most))
}

const fn masses(record: &'static str, keys: &'static [&'static str], most: f64) -> Bound {
    of(record, keys, Unit::Grams, (1e-5, most))
}

/// Every bound of the language.
pub const BOUNDS: &[Bound] = &[
    lists("Pattern", &["beads"], 100.0),
    lists("Pattern", &["cords"], 50.0),
    lists("Pattern", &["findings"], 100.0),
    lists("Pattern", &["assorted"], 50.0),
    lists("Pattern", &["strands"], 60.0),
    of("Pattern", &["wraps"], Unit::Plain, (1.0, MOST_WRAPS as f64)),
    of("Pattern", &["twist"], Unit::Plain, (1.0, MOST_TWISTS)),
    lists("Pattern", &["sizes", "colourways"], 20.0),
    texts("Pattern", &["title", "designer", "time"], 200.0),
    texts("Pattern", &["currency"], 20.0),
    texts("Pattern", &["summary", "permissions", "care"], 2_000.0),
    texts("Pattern", &["notes"], 20_000.0),
    lists("Pattern", &["shelf"], 10.0),
    lists("Shelf", &ARTICLES, 1_000.0),
    texts("Shelf", &["currency"], 20.0),
    sizes("Bead", &["size", "thick"], 200.0),
    sizes("Bead", &["hole", "apart", "tolerance"], 100.0),
    counts("Bead", &["holes"], 10.0),
    sizes("Bead", &["measured"], LONGEST),
    counts("Bead", &["measured"], MOST_STRUNG as f64),
    masses("Bead", &["mass"], 1_000.0),
    lists("Bead", &["instead"], 50.0),
    sizes("Cord", &["diameter"], 20.0),
    of("Cord", &["coil"], Unit::Millimetres, (5.0, 500.0)),
    sizes("Cord", &["links"], LONGEST),
    counts("Cord", &["links"], MOST_LINKS as f64),
    of("Cord", &["strength"], Unit::Newtons, (0.01, 100_000.0)),
    counts("Cord", &["filaments"], 49.0),
    of("Cord", &["stiffness"], Unit::Stiffness, (0.0, 10_000.0)),
    masses("Cord", &["mass"], 1_000.0),
    sizes("Finding", &["length", "outside", "inside", "mouth", "tip", "link", "spacing"], 500.0),
    sizes("Finding", &["wire"], 20.0),
    counts("Finding", &["holes"], 60.0),
    counts("Finding", &["threads"], 2_000.0),
    masses("Finding", &["mass"], 1_000.0),
    lists("Assorted", &["holds"], 50.0),
    counts("Assorted", &["holds"], 10_000.0),
    sizes("Sold", &["length"], 10_000_000.0),
    counts("Sold", &["count"], 100_000.0),
    counts("Sold", &["strands"], 1_000.0),
    masses("Sold", &["mass"], 100_000.0),
    sizes("Strand", &["length", "leave"], LONGEST),
    sizes("Strand", &["allowance"], 2_000.0),
    sizes("Strand", &["knots"], 100.0),
    lists("Strand", &["ends"], 10.0),
    lists("Strand", &["beads"], 2_000.0),
    lists("Closure", &["each side", "left", "right", "both ends"], 20.0),
    sizes("Closure", &["each side", "left", "right", "both ends"], 5_000.0),
    sizes("Closure", &["tail"], 5_000.0),
    lists("Repeat", &["of"], 2_000.0),
    lists("Mirror", &["mirror", "about"], 2_000.0),
    sizes("Space", &["space"], LONGEST),
    sizes("Knot", &["knot"], 100.0),
    counts("Links", &["links"], MOST_LINKS as f64),
    lists("Dangle", &["dangle"], 200.0),
    sizes("Stop", &["at"], LONGEST),
    counts("Random", &["seed"], 1_000_000.0),
    lists("Random", &["of"], 50.0),
    of("Random", &["apart"], Unit::Count, (0.0, 20.0)),
    lists("Graduate", &["graduate"], MOST_GRADES as f64),
    sizes("Graduate", &["length"], LONGEST),
    of("Wear", &["neck base", "wrist", "ankle"], Unit::Millimetres, (20.0, 2_000.0)),
    sizes("Wear", &["ease"], 500.0),
    of("Wear", &["breadth to depth"], Unit::Plain, (0.8, 2.0)),
    of("Wear", &["chest tilt"], Unit::Degrees, (0.0, 60.0)),
    of("Size", &["change"], Unit::Millimetres, (-LONGEST, LONGEST)),
    of("Price", &["labour"], Unit::Hours, (0.001, 10_000.0)),
    of("Price", &["overhead"], Unit::Percent, (0.0, 1_000.0)),
    of("Price", &["wholesale", "retail"], Unit::Plain, (0.001, 1_000.0)),
    counts("Expect", &["beads"], 2.0 * MOST_STRUNG as f64),
    counts("ExpectStrand", &["beads"], 2.0 * MOST_STRUNG as f64),
    sizes("ExpectStrand", &["beaded", "finished", "cut"], 2.0 * LONGEST),
    texts(ELSEWHERE, &["names, ids and other texts"], 120.0),
    lists(ELSEWHERE, &["lists and groups"], 200.0),
    counts(ELSEWHERE, &["counts"], MOST_STRUNG as f64),
];

/// The bound of a key in a unit: its own, or that of everything else that is told in this unit.
pub fn bound(record: &str, key: &str, unit: Unit) -> Option<&'static Bound> {
    let in_unit = || BOUNDS.iter().filter(|bound| bound.unit == unit);
    let own = in_unit().find(|bound| bound.record == record && bound.keys.contains(&key));
    own.or_else(|| in_unit().find(|bound| bound.record == ELSEWHERE))
}

impl Bound {
    /// Whether a number lies outside.
    pub fn forbids(&self, number: f64) -> bool {
        !(self.least..=self.most).contains(&number)
    }

    /// The bound in words: `0.02 mm to 20 m`, `at most 200 entries`.
    #[must_use]
    pub fn words(&self) -> String {
        self.unit.span(self.least, self.most)
    }
}

/// Says the bounds beside the keys of a JSON Schema of a pattern or a shelf.
pub fn describe(whole: &str, schema: &mut Value) {
    for bound in BOUNDS {
        let keys = bound.keys.iter();
        let place = |key: &str| match bound.record {
            record if record == whole => format!("/properties/{key}"),
            record => format!("/$defs/{record}/properties/{key}"),
        };
        keys.for_each(|key| {
            if let Some(Value::Object(property)) = schema.pointer_mut(&place(key)) {
                let told = property.get("description").and_then(Value::as_str).unwrap_or_default();
                property.insert("description".to_owned(), json!(bounded(told, bound)));
                property.extend(rule(bound).into_iter().map(|(word, number)| (word.to_owned(), plain(number))));
            }
        });
    }
}

/// A number, a whole one without a decimal point.
fn plain(number: f64) -> Value {
    let whole = number.to_string().parse::<u64>();
    whole.map_or_else(|_| json!(number), |whole| json!(whole))
}

/// What a validator can check of a bound: quantities are texts, whose numbers it does not read.
fn rule(bound: &Bound) -> Vec<(&'static str, f64)> {
    match bound.unit {
        Unit::Signs => vec![("maxLength", bound.most)],
        Unit::Entries => vec![("maxItems", bound.most), ("maxProperties", bound.most)],
        Unit::Plain | Unit::Count => vec![("minimum", bound.least), ("maximum", bound.most)],
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bound_stands_in_the_schema_beside_its_key() {
        let [schema, shelf] = [super::super::schema(), super::super::shelf_schema()];
        for bound in BOUNDS.iter().filter(|bound| bound.record != ELSEWHERE) {
            let group = match bound.record {
                "Pattern" => &schema,
                "Shelf" => &shelf,
                record => &schema["$defs"][record],
            };
            for key in bound.keys {
                let told = group["properties"][key]["description"].as_str().unwrap_or_default();
                assert!(told.contains(&bound.words()), "{} {key}: {told}", bound.record);
            }
        }
    }

    #[test]
    fn a_key_without_a_bound_of_its_own_has_that_of_its_unit() {
        assert_eq!(bound("Bead", "name", Unit::Signs).map(|bound| bound.most), Some(120.0));
        assert_eq!(bound("Pattern", "notes", Unit::Signs).map(|bound| bound.most), Some(20_000.0));
        assert_eq!(bound("Cord", "diameter", Unit::Millimetres).map(Bound::words).as_deref(), Some("0.02 mm to 20 mm"));
    }

    #[test]
    fn the_language_reference_prints_them() {
        let read = |name: &str| std::fs::read_to_string(format!("{}/{name}", env!("CARGO_MANIFEST_DIR")));
        let pages = ["README.md", "patterns/README.md"].map(|name| read(name).unwrap_or_default());
        assert!(pages.iter().any(|page| page.contains(&reference())), "print this:\n{}", reference());
    }
}
