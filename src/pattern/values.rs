//! Single values of the pattern language and how each is read.

use std::borrow::Cow;
use std::num::IntErrorKind;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use crate::paint::mark::Rgb;
use crate::remark::said::language::Language;
use crate::remark::said::quantity::NoQuantity;
use crate::remark::said::wanted::Wanted;
use crate::remark::{Code, Level, Remark, near};
use crate::source::At;
use crate::trade::{bodies, metals};
use crate::units::{self, Force, Length, Mass, Money, UnitError, UnitStyle};

use super::bounds::{MOST_STRUNG, Unit};
use super::node::Node;
use super::record::{Read, Reader, RecordEntries, TellsNumber};
use super::words::{CordKind, Drilled, FindingKind, Finish, Kind, Open, Outline, Settle, Shape, Skill, SoldBy};

impl<T: JsonSchema> JsonSchema for At<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}

macro_rules! word_values {
    ($($name:ident: $hole:expr),*) => {
        $(impl Read for $name {
            fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
                reader.word(node, Self::WHAT, Self::ALL, Self::word)
            }

            fn hole() -> Option<Self> {
                $hole
            }
        })*
    };
}

word_values!(
    Kind: Some(Self::Necklace), Skill: None, Shape: None, Drilled: None, Open: None, Outline: None, Finish: None, CordKind: None,
    FindingKind: None, Settle: None, SoldBy: None
);

/// Declares how a quantity is read from its text and how the schema shows it.
macro_rules! text_values {
    ($($name:ident: $wanted:ident, $schema:tt, $parse:expr $(, $hole:expr)?;)*) => {
        $(impl Read for $name {
            fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
                reader.quantity(node, Wanted::$wanted, $parse)
            }
            $(
                fn hole() -> Option<Self> {
                    Some($hole)
                }
            )?
        }

        impl JsonSchema for $name {
            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!($schema)
            }
        })*
    };
}

text_values! {
    Length: Length, { "type": "string", "description": "A length with its unit: 17 1/2 in, 445 mm, 44.5 cm" }, Length::parse;
    Change: Change, { "type": "string", "description": "How much longer or shorter: +50 mm, -1 in" }, |text| Length::parse_signed(text).map(Change);
    Mass: Mass, { "type": "string", "description": "A mass with its unit: 0.29 g" }, Mass::parse;
    PerMetre: PerMetre, { "type": "string", "pattern": "/m$", "description": "A mass for each metre: 0.6 g/m" }, |text| Mass::parse_per_metre(text).map(PerMetre);
    Force: Force, { "type": "string", "description": "A force with its unit: 60 N, 15 lbf" }, Force::parse;
    Money: Price, { "type": ["number", "string"], "description": "A price with at most two decimals: 4.20" }, Money::parse;
    Overhead: Overhead, { "type": ["number", "string"], "description": "A sum: 2.50; or a share of materials and labour: 15 %" }, overhead;
    Hours: Time, { "type": "string", "description": "A time of work: 1.5 h, 90 min" }, |text| units::hours(text).map(Hours);
    Whole: Whole, { "type": "integer", "minimum": 1 }, whole, Self(1);
    Between: WholeOrNone, { "type": "integer", "minimum": 0 }, between;
    Factor: Factor, { "type": "number", "exclusiveMinimum": 0 }, factor;
    Ratio: Ratio, { "type": "number", "exclusiveMinimum": 0 }, |text| factor(text).map(|factor| Ratio(factor.0));
    Turns: Turns, { "type": ["number", "string"], "description": "How many turns: 3, 3.5 or 3 1/2" }, |text| units::turns(text).map(Turns);
    Tilt: Angle, { "type": "string", "pattern": "(deg|degrees|°)$", "description": "An angle: 20 deg" }, |text| units::degrees(text).map(Tilt);
    Stiffness: Stiffness, { "type": "string", "description": "How stiff a cord is, E I: 1.8 N mm²" }, |text| units::stiffness(text).map(Stiffness);
    YesNo: YesNo, { "enum": ["yes", "no", true, false] }, yes_no;
    Colour: Colour, { "type": "string", "pattern": "^#[0-9a-fA-F]{6}$", "description": "A colour: \"#5d7f5b\"" }, colour;
    BeadSize: BeadSize, { "type": "string", "description": "Across: 6 mm; across x along the hole: 6 x 4 mm; seed beads: 11/0" }, bead_size;
    Measured: Measurement, { "type": "string", "pattern": "=", "description": "So many strung measure so much: 10 = 59 mm" }, measured;
    Within: Within, { "type": "string", "description": "A length and how near it must be: 12 in within 1/4 in" }, within;
    Body: Body, { "type": "string", "pattern": "^(woman|man) [0-9]{1,2}$", "description": "A body by percentile: woman 50" }, body;
    UnitStyle: UnitStyle, { "enum": ["in", "mm", "both"] }, unit_style;
}

/// The code of a warning or advice that `allow:` silences.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Allowed(pub Code);

impl Allowed {
    /// The codes that may be silenced: an error leaves nothing to make.
    fn names() -> impl Iterator<Item = &'static str> {
        Code::ALL.iter().filter(|code| code.level() != Level::Error).map(|code| code.name())
    }
}

impl Read for Allowed {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let name = reader.scalar(node, Wanted::Code)?;
        let wrong = match Code::named(name) {
            Some(code) if code.level() != Level::Error => return Some(Self(code)),
            Some(code) => Language::ErrorAllowed { code },
            None => Language::UnknownCode { name: name.to_owned(), meant: near(name, Self::names()) },
        };
        reader.refuse(Remark::new(wrong).at(node.place))
    }
}

impl JsonSchema for Allowed {
    fn schema_name() -> Cow<'static, str> {
        "Allowed".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "enum": Self::names().collect::<Vec<_>>(), "description": "A warning or advice that is meant to be so" })
    }
}

/// A length with a sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change(pub Length);

/// Mass of one metre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PerMetre(pub Mass);

/// A time of work in hours.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hours(pub f64);

/// A count of at least 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Whole(pub u32);

/// How many things stand between two others, which may be none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Between(pub u32);

/// A factor greater than nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor(pub f64);

/// Costs beside materials and labour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Overhead {
    /// So much.
    Sum(Money),
    /// So many hundredths of materials and labour.
    Percent(f64),
}

/// How many times as broad as deep a neck is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratio(pub f64);

/// How many times a piece goes round, or its strands are twisted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turns(pub f64);

/// How far a chest leans back from upright, in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt(pub f64);

/// How stiff a cord is, in N mm².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stiffness(pub f64);

/// Yes or no.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct YesNo(pub bool);

/// A colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub Rgb);

/// A bead's size as written.
#[derive(Clone, Debug, PartialEq)]
pub enum BeadSize {
    /// Across the hole alone.
    Across(Length),
    /// Across the hole and along it.
    Both(Length, Length),
    /// A seed bead's size name, such as `11/0`.
    Seed(String),
}

/// So many strung measure so much.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Measured {
    /// How many.
    pub count: u32,
    /// How long together.
    pub length: Length,
}

/// A length and how near it must be.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Within {
    /// The length.
    pub length: Length,
    /// Plus or minus.
    pub margin: Length,
}

/// A bead's colour, which must be written unless its material is a metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
pub struct BeadColour(pub Colour);

impl Read for BeadColour {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        Colour::read(node, reader).map(Self)
    }

    fn is_needed(beside: &RecordEntries<'_>) -> bool {
        beside.text("material").and_then(metals::colour).is_none()
    }
}

/// A body from the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Body {
    /// Which table.
    pub sex: bodies::Sex,
    /// Percentile from 1 to 99.
    pub percentile: u32,
}

/// Declares which numbers a value tells, and in what unit.
macro_rules! told {
    ($($name:ident: |$value:ident| $numbers:expr;)*) => {
        $(impl TellsNumber for $name {
            fn numbers(&self) -> Vec<(Unit, f64)> {
                let $value = self;
                $numbers
            }
        })*
    };
}

told! {
    Length: |length| vec![(Unit::Millimetres, length.value())];
    Change: |change| change.0.numbers();
    Mass: |mass| vec![(Unit::Grams, mass.value())];
    PerMetre: |mass| mass.0.numbers();
    Force: |force| vec![(Unit::Newtons, force.value())];
    Hours: |time| vec![(Unit::Hours, time.0)];
    Whole: |whole| vec![(Unit::Count, f64::from(whole.0))];
    Between: |between| vec![(Unit::Count, f64::from(between.0))];
    Factor: |factor| vec![(Unit::Plain, factor.0)];
    Overhead: |overhead| match overhead {
        Self::Sum(_) => Vec::new(),
        Self::Percent(percent) => vec![(Unit::Percent, *percent)],
    };
    Ratio: |ratio| vec![(Unit::Plain, ratio.0)];
    Turns: |turns| vec![(Unit::Plain, turns.0)];
    Tilt: |tilt| vec![(Unit::Degrees, tilt.0)];
    Stiffness: |stiffness| vec![(Unit::Stiffness, stiffness.0)];
    Measured: |measured| vec![(Unit::Count, f64::from(measured.count)), (Unit::Millimetres, measured.length.value())];
    Within: |within| vec![(Unit::Millimetres, within.length.value()), (Unit::Millimetres, within.margin.value())];
    BeadSize: |size| match size {
        Self::Across(across) => across.numbers(),
        Self::Both(across, along) => [across.numbers(), along.numbers()].concat(),
        Self::Seed(_) => Vec::new(),
    };
}

impl TellsNumber for Money {}
impl TellsNumber for YesNo {}
impl TellsNumber for Colour {}
impl TellsNumber for Body {}
impl TellsNumber for UnitStyle {}

fn whole(text: &str) -> Result<Whole, NoQuantity> {
    match text.trim().parse::<u32>() {
        Ok(0) => Err(NoQuantity::NoneAtAll),
        Ok(count) => Ok(Whole(count)),
        Err(error) if *error.kind() == IntErrorKind::PosOverflow => Err(NoQuantity::TooMany { most: MOST_STRUNG }),
        Err(_) => Err(NoQuantity::Whole),
    }
}

fn between(text: &str) -> Result<Between, NoQuantity> {
    let count = text.trim().parse::<u32>().map(Between);
    count.map_err(|_| NoQuantity::WholeOrNone)
}

fn factor(text: &str) -> Result<Factor, NoQuantity> {
    let value = text.trim().parse::<f64>().ok().filter(|value| *value > 0.0 && value.is_finite());
    value.map(Factor).ok_or(NoQuantity::Factor)
}

fn overhead(text: &str) -> Result<Overhead, NoQuantity> {
    let Some(percent) = text.trim().strip_suffix('%') else { return Ok(Overhead::Sum(Money::parse(text)?)) };
    let value = percent.trim().parse::<f64>().ok().filter(|value| *value >= 0.0 && value.is_finite());
    value.map(Overhead::Percent).ok_or(NoQuantity::Share)
}

fn yes_no(text: &str) -> Result<YesNo, NoQuantity> {
    match text.trim() {
        "yes" | "true" => Ok(YesNo(true)),
        "no" | "false" => Ok(YesNo(false)),
        _ => Err(NoQuantity::YesNo),
    }
}

fn colour(text: &str) -> Result<Colour, NoQuantity> {
    Rgb::parse(text.trim()).map(Colour).ok_or(NoQuantity::Colour)
}

fn bead_size(text: &str) -> Result<BeadSize, UnitError> {
    let text = text.trim();
    if text.ends_with("/0") {
        return Ok(BeadSize::Seed(text.to_owned()));
    }
    let Some((across, along)) = text.split_once(['x', '×']) else {
        return Length::parse(text).map(BeadSize::Across);
    };
    let along = along.trim();
    let unit = along.trim_start_matches(|c: char| c.is_ascii_digit() || ". /".contains(c));
    let across = across.trim();
    let across =
        if across.ends_with(|c: char| c.is_ascii_digit()) { format!("{across} {unit}") } else { across.to_owned() };
    Ok(BeadSize::Both(Length::parse(&across)?, Length::parse(along)?))
}

fn measured(text: &str) -> Result<Measured, NoQuantity> {
    let (count, length) = text.split_once('=').ok_or(NoQuantity::Measurement)?;
    Ok(Measured { count: whole(count)?.0, length: Length::parse(length)? })
}

fn within(text: &str) -> Result<Within, NoQuantity> {
    let (length, margin) = text.split_once("within").ok_or(NoQuantity::Margin)?;
    Ok(Within { length: Length::parse(length)?, margin: Length::parse(margin)? })
}

fn body(text: &str) -> Result<Body, NoQuantity> {
    let (sex, percentile) = text.trim().split_once(' ').ok_or(NoQuantity::Body)?;
    let sex = match sex {
        "woman" => bodies::Sex::Woman,
        "man" => bodies::Sex::Man,
        _ => return Err(NoQuantity::Body),
    };
    let percentile = percentile.trim().parse().ok().filter(|at| (1..=99).contains(at)).ok_or(NoQuantity::Body)?;
    Ok(Body { sex, percentile })
}

fn unit_style(text: &str) -> Result<UnitStyle, NoQuantity> {
    match text.trim() {
        "in" => Ok(UnitStyle::In),
        "mm" => Ok(UnitStyle::Mm),
        "both" => Ok(UnitStyle::Both),
        _ => Err(NoQuantity::UnitStyle),
    }
}
