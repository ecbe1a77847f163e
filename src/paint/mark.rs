//! Marks: what is on a page, in millimetres from its upper left corner, y down.
//!
//! Pages and bead art produce marks; `export` alone turns them into SVG. A mark says what it looks
//! like and nothing about why it is there.

use std::fmt;
use std::sync::Arc;

use crate::geometry::{Extent, Point};

/// A colour in sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Rgb(pub u8, pub u8, pub u8);

impl Rgb {
    /// White paper.
    pub const WHITE: Self = Self(255, 255, 255);
    /// Black ink.
    pub const BLACK: Self = Self(0, 0, 0);

    /// The colour as `#rrggbb`.
    #[must_use]
    pub fn hex(self) -> String {
        format!("#{:02x}{:02x}{:02x}", self.0, self.1, self.2)
    }

    /// Mixed with another colour: `share` 0 keeps this one, 1 gives the other. Mixed in sRGB values.
    #[must_use]
    pub fn mixed(self, other: Self, share: f64) -> Self {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a mix of two bytes is a byte")]
        let mix = |a: u8, b: u8| (f64::from(a) + (f64::from(b) - f64::from(a)) * share.clamp(0.0, 1.0)).round() as u8;
        Self(mix(self.0, other.0), mix(self.1, other.1), mix(self.2, other.2))
    }

    /// Reads `#` and six hexadecimal digits.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6)?;
        let all = digits.bytes().all(|byte| byte.is_ascii_hexdigit());
        let [_, red, green, blue] = u32::from_str_radix(digits, 16).ok().filter(|_| all)?.to_be_bytes();
        Some(Self(red, green, blue))
    }
}

/// A segment of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment {
    /// Starts a new part.
    Move(Point),
    /// A straight line.
    Line(Point),
    /// A cubic Bézier curve: two controls, then the end.
    Curve(Point, Point, Point),
    /// Back to the part's start.
    Close,
}

/// How an area is filled.
#[derive(Clone, Debug, PartialEq)]
pub enum Fill {
    /// One colour at an opacity from 0 to 1.
    Flat(Rgb, f64),
    /// Colours along a line from one point to another.
    Linear(Point, Point, Vec<ColourStop>),
    /// Colours from a centre outward to a radius.
    Radial(Point, f64, Vec<ColourStop>),
}

/// A colour on the way through a gradient.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColourStop {
    /// From 0 to 1.
    pub at: f64,
    /// The colour there.
    pub colour: Rgb,
    /// Opacity from 0 to 1.
    pub opacity: f64,
}

/// A line drawn along an outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Its colour.
    pub colour: Rgb,
    /// Its width in mm.
    pub width: f64,
    /// Opacity from 0 to 1.
    pub opacity: f64,
    /// Dash and gap lengths in mm; empty for a whole line.
    pub dashes: Vec<f64>,
    /// Round caps and joins instead of square-cut ones.
    pub round: bool,
}

impl Stroke {
    /// A whole line with square-cut ends.
    #[must_use]
    pub const fn new(colour: Rgb, width: f64) -> Self {
        Self { colour, width, opacity: 1.0, dashes: Vec::new(), round: false }
    }
}

/// Which of the two weights a text is set in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Weight {
    /// For reading.
    Regular,
    /// For finding.
    Semibold,
}

/// Which part of a text stands at its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

/// One line of text on its baseline.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Where the anchor stands on the baseline.
    pub at: Point,
    /// What it says.
    pub text: String,
    /// Font size (em) in mm.
    pub size: f64,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub colour: Rgb,
    /// Which part stands at the point.
    pub anchor: Anchor,
    /// Turned about the point, in radians, clockwise on the page.
    pub angle: f64,
}

/// What marks that belong together are to readers who cannot see them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Role {
    /// A heading of a level, from 1 for a sheet's title.
    Heading(u16),
    /// Words that are read as one.
    Paragraph,
    /// A table's headings, in cells.
    Headings,
    /// A row of a table, in cells: it belongs to the headings or the row before it.
    Row,
    /// What stands in one column of a row.
    Cell,
    /// The cell that says what its row is about.
    RowName,
    /// A drawing, and what it shows.
    Figure(String),
    /// What shows nothing by itself.
    Ornament,
    /// The page's footer, the same on every page but for its number.
    Footer,
}

impl Role {
    /// Whether it orders words and shows nothing of its own.
    #[must_use]
    pub const fn orders_words(&self) -> bool {
        matches!(self, Self::Heading(_) | Self::Paragraph | Self::Headings | Self::Row | Self::Cell | Self::RowName)
    }

    /// What a figure shows; empty for all else.
    #[must_use]
    pub fn label(&self) -> &str {
        if let Self::Figure(shows) = self { shows } else { "" }
    }
}

/// Something drawn on a page.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// An area, a line or both.
    Shape {
        /// The outline.
        outline: Vec<Segment>,
        /// Its inside, filled by the even-odd rule.
        fill: Option<Fill>,
        /// Its edge.
        stroke: Option<Stroke>,
    },
    /// A line of text.
    Text(Text),
    /// A copy of a page's symbol.
    Stamp {
        /// Which symbol.
        symbol: Key,
        /// Where the symbol's origin comes to stand.
        at: Point,
        /// Turned about its origin, in radians, clockwise on the page.
        angle: f64,
        /// Enlarged about its origin.
        scale: f64,
        /// And by this factor along its own x: less than 1 where it is seen at a slant.
        along: f64,
    },
    /// Marks that belong together.
    Group {
        /// What they are together.
        role: Role,
        /// The marks, in drawing order.
        marks: Vec<Mark>,
    },
    /// Marks that stand off the ground and throw one shadow on what is drawn before them.
    Raised {
        /// The shadow.
        shadow: Shadow,
        /// The marks, in drawing order.
        marks: Vec<Mark>,
    },
    /// Marks out of focus.
    Blurred {
        /// Standard deviation of the blur in mm.
        blur: f64,
        /// The marks, in drawing order.
        marks: Vec<Mark>,
    },
    /// Marks of which shows what lies in an upright box.
    Clipped {
        /// The box.
        within: Extent,
        /// The marks, in drawing order.
        marks: Vec<Mark>,
    },
}

impl Mark {
    /// Marks that show something, with its text alternative.
    #[must_use]
    pub fn figure(label: impl Into<String>, marks: Vec<Self>) -> Self {
        Self::Group { role: Role::Figure(label.into()), marks }
    }

    /// Marks that belong together and show nothing by themselves.
    #[must_use]
    pub const fn ornament(marks: Vec<Self>) -> Self {
        Self::Group { role: Role::Ornament, marks }
    }

    /// The marks within one that holds others.
    #[must_use]
    pub fn inner(&self) -> &[Self] {
        match self {
            Self::Group { marks, .. }
            | Self::Raised { marks, .. }
            | Self::Blurred { marks, .. }
            | Self::Clipped { marks, .. } => marks,
            Self::Shape { .. } | Self::Text(_) | Self::Stamp { .. } => &[],
        }
    }

    /// The same with the marks within changed.
    #[must_use]
    pub fn map_inner(self, change: impl FnOnce(Vec<Self>) -> Vec<Self>) -> Self {
        match self {
            Self::Group { role, marks } => Self::Group { role, marks: change(marks) },
            Self::Raised { shadow, marks } => Self::Raised { shadow, marks: change(marks) },
            Self::Blurred { blur, marks } => Self::Blurred { blur, marks: change(marks) },
            Self::Clipped { within, marks } => Self::Clipped { within, marks: change(marks) },
            Self::Shape { .. } | Self::Text(_) | Self::Stamp { .. } => self,
        }
    }
}

/// A soft shadow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shadow {
    /// How far it is thrown, in mm.
    pub throw: Point,
    /// Standard deviation of its blur in mm.
    pub blur: f64,
    /// Its colour.
    pub colour: Rgb,
    /// Opacity where it is not blurred, from 0 to 1.
    pub opacity: f64,
}

/// The name of one of a page's symbols, by which stamps find it. Nothing is read from it: what a symbol shows is known to
/// who draws it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    figure: Option<usize>,
    word: &'static str,
    thing: Option<usize>,
    way: Option<u32>,
    mirrored: bool,
}

impl Key {
    /// The key of the only symbol of a sort, in letters and hyphens.
    #[must_use]
    pub const fn new(word: &'static str) -> Self {
        Self { figure: None, word, thing: None, way: None, mirrored: false }
    }

    /// The same of one of several things.
    #[must_use]
    pub const fn of(self, thing: usize) -> Self {
        Self { thing: Some(thing), ..self }
    }

    /// The same seen in one of several ways.
    #[must_use]
    pub const fn seen(self, way: u32) -> Self {
        Self { way: Some(way), ..self }
    }

    /// The same turned left to right, if it is.
    #[must_use]
    pub const fn mirrored(self, mirrored: bool) -> Self {
        Self { mirrored, ..self }
    }

    /// The same of one of the page's figures, where each has symbols of its own.
    #[must_use]
    pub const fn in_figure(self, figure: usize) -> Self {
        Self { figure: Some(figure), ..self }
    }
}

impl fmt::Display for Key {
    /// As an id: letters, digits and hyphens.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(figure) = self.figure {
            write!(f, "p{figure}-")?;
        }
        f.write_str(self.word)?;
        self.thing.map_or(Ok(()), |thing| write!(f, "-{thing}"))?;
        self.way.map_or(Ok(()), |way| write!(f, "-{way}"))?;
        f.write_str(if self.mirrored { "-mirrored" } else { "" })
    }
}

/// A drawing that a page stamps many times; its origin is the point that stamps place.
#[derive(Clone, Debug, PartialEq)]
pub struct Symbol {
    /// Its key, unique on the page.
    pub key: Key,
    /// What it is made of, in mm about the origin.
    pub marks: Vec<Mark>,
}

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Width in mm.
    pub width: f64,
    /// Height in mm.
    pub height: f64,
    /// Title for people and machines that list pages.
    pub title: String,
    /// What the page shows, in a sentence or two.
    pub description: String,
    /// Drawings that the marks stamp, shared by pages that are made from the same.
    pub symbols: Arc<[Symbol]>,
    /// What is drawn, first to last.
    pub marks: Vec<Mark>,
}
