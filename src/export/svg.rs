//! A page as SVG.
//!
//! One unit is one millimetre, as `width`, `height` and `viewBox` say together. Symbols are `<g>` in
//! `<defs>` and stamps `<use>`: a `<symbol>` opens a viewport and costs renderers half as much again.
//! Equal gradients are written once, and symbols that the page does not stamp not at all. Ids of our
//! own hold an underscore, which no symbol's id does. Characters that XML forbids are dropped; line
//! breaks and tabs in texts become spaces.

mod part;

use std::collections::{BTreeMap, BTreeSet};

use svg::node::Node;
use svg::node::element::{self, ClipPath, Element, Filter, Group, LinearGradient, Path, RadialGradient, Use};

use part::{Words, clean, coloured, faded, holding, list, measured, stroked, with, worded, written};

use super::bounds::{Bounds, SOFT};
use super::{english, number};
use crate::geometry::{Extent, Point};
use crate::paint::font::FAMILY;
use crate::paint::fraction::tucks;
use crate::paint::mark::{Anchor, ColourStop, Fill, Key, Mark, Page, Segment, Shadow, Stroke, Symbol, Text, Weight};
use crate::paint::outline;

/// Decimals of a coordinate: a thousandth of a millimetre.
const PLACES: u32 = 3;
/// Decimals of a scale.
const FINE: u32 = 5;

/// Writes the page as an SVG document.
#[must_use]
pub fn svg(page: &Page) -> String {
    let used = used(&page.marks, &page.symbols);
    let bounds = Bounds::of(page, &used);
    let mut writer = Writer {
        fills: Definitions::new("fill"),
        filters: Definitions::new("soft"),
        clips: Definitions::new("clip"),
        bounds: &bounds,
    };
    let marks = writer.elements(&page.marks);
    let symbols: Vec<_> = used.iter().map(|symbol| writer.symbol(symbol)).collect();
    let mut document = head(page);
    let shared = [writer.fills.elements, writer.filters.elements, writer.clips.elements].into_iter().flatten();
    let definitions: Vec<_> = shared.chain(symbols).collect();
    if !definitions.is_empty() {
        document.append(holding(element::Definitions::new(), definitions));
    }
    holding(document, marks).to_string() + "\n"
}

/// The document with its title and description.
fn head(page: &Page) -> svg::Document {
    let text = |name: &str, text: &str| worded(name, text);
    svg::Document::new()
        .set("xmlns:xlink", "http://www.w3.org/1999/xlink")
        .set("width", written(page.width) + "mm")
        .set("height", written(page.height) + "mm")
        .set("viewBox", list(&[0.0, 0.0, page.width, page.height]))
        .set("role", "img")
        .set("aria-labelledby", "page_title page_desc")
        .set("fill", "none")
        .set("fill-rule", "evenodd")
        .set("font-family", format!("'{FAMILY}', sans-serif"))
        .set("xml:space", "preserve")
        .add(with(text("title", &page.title), "id", "page_title"))
        .add(with(text("desc", &page.description), "id", "page_desc"))
}

/// The symbols that marks stamp, by themselves or within other symbols, in the symbols' order.
fn used<'a>(marks: &'a [Mark], symbols: &'a [Symbol]) -> Vec<&'a Symbol> {
    let known: BTreeMap<Key, &Symbol> = symbols.iter().map(|symbol| (symbol.key, symbol)).collect();
    let mut keys = BTreeSet::new();
    let mut to_search = vec![marks];
    while let Some(marks) = to_search.pop() {
        for mark in marks {
            match mark {
                Mark::Stamp { symbol, .. } if keys.insert(*symbol) => {
                    to_search.extend(known.get(symbol).map(|symbol| symbol.marks.as_slice()));
                }
                held => to_search.push(held.inner()),
            }
        }
    }
    symbols.iter().filter(|symbol| keys.contains(&symbol.key)).collect()
}

/// Definitions of one kind so far: each once, with the number of each by everything in it but its id.
struct Definitions {
    prefix: &'static str,
    numbers: BTreeMap<String, usize>,
    elements: Vec<Element>,
}

impl Definitions {
    const fn new(prefix: &'static str) -> Self {
        Self { prefix, numbers: BTreeMap::new(), elements: Vec::new() }
    }

    /// A reference to an element, which is defined here where it is new.
    fn reference(&mut self, element: Element) -> String {
        let next = self.numbers.len() + 1;
        let number = *self.numbers.entry(element.to_string()).or_insert(next);
        let id = format!("{}_{number}", self.prefix);
        let reference = format!("url(#{id})");
        if number == next {
            self.elements.push(with(element, "id", id));
        }
        reference
    }
}

/// Writes marks as elements and gathers what they refer to.
struct Writer<'a> {
    fills: Definitions,
    filters: Definitions,
    clips: Definitions,
    /// The page's measures, for the regions of filters.
    bounds: &'a Bounds,
}

impl Writer<'_> {
    fn symbol(&mut self, symbol: &Symbol) -> Element {
        holding(Group::new().set("id", symbol.key.to_string()), self.elements(&symbol.marks)).into()
    }

    fn elements(&mut self, marks: &[Mark]) -> Vec<Element> {
        let mut elements = Vec::new();
        for mark in marks {
            match mark {
                Mark::Group { role, marks } if role.orders_words() => elements.extend(self.elements(marks)),
                mark => elements.extend(self.element(mark)),
            }
        }
        elements
    }

    fn element(&mut self, mark: &Mark) -> Option<Element> {
        match mark {
            Mark::Shape { outline, fill, stroke } => self.shape(outline, fill.as_ref(), stroke.as_ref()),
            Mark::Text(text) => Some(line_of_text(text)),
            Mark::Stamp { symbol, at, angle, scale, along } => {
                Some(stamp(*symbol, *at, *angle, [*scale * *along, *scale]))
            }
            Mark::Group { role, marks } => Some(self.group(english::label(role), marks)),
            Mark::Raised { shadow, marks } => Some(self.raised(shadow, marks)),
            Mark::Blurred { blur, marks } => Some(self.blurred(*blur, marks)),
            Mark::Clipped { within, marks } => Some(self.clipped(*within, marks)),
        }
    }

    fn clipped(&mut self, within: Extent, marks: &[Mark]) -> Element {
        let shown = Path::new().set("d", data(&outline::rect(within.low, within.width(), within.height())));
        let clip = self.clips.reference(holding(Element::from(ClipPath::new()), [shown]));
        holding(Group::new().set("clip-path", clip), self.elements(marks)).into()
    }

    fn raised(&mut self, shadow: &Shadow, marks: &[Mark]) -> Element {
        let measures = [("dx", shadow.throw.x), ("dy", shadow.throw.y), ("stdDeviation", shadow.blur)];
        let mut effect = measured(Element::new("feDropShadow"), &measures);
        effect.assign("flood-color", shadow.colour.hex());
        effect.assign("flood-opacity", written(shadow.opacity));
        self.filtered(effect, marks, SOFT * shadow.blur + shadow.throw.length())
    }

    fn blurred(&mut self, blur: f64, marks: &[Mark]) -> Element {
        let effect = measured(Element::new("feGaussianBlur"), &[("stdDeviation", blur)]);
        self.filtered(effect, marks, SOFT * blur)
    }

    /// Marks under an effect, whose region is the box round them grown by as much as it makes of them.
    fn filtered(&mut self, effect: Element, marks: &[Mark], grown: f64) -> Element {
        let shown = self.bounds.on_page(marks, grown);
        let region = [("x", shown.low.x), ("y", shown.low.y), ("width", shown.width()), ("height", shown.height())];
        let filter = Filter::new().set("filterUnits", "userSpaceOnUse").set("color-interpolation-filters", "sRGB");
        let filter = self.filters.reference(holding(measured(filter, &region), [effect]));
        holding(Group::new().set("filter", filter), self.elements(marks)).into()
    }

    fn group(&mut self, label: &str, marks: &[Mark]) -> Element {
        let mut group = Group::new();
        if !label.is_empty() {
            group = group.set("role", "group").set("aria-label", clean(label)).add(worded("title", label));
        }
        holding(group, self.elements(marks)).into()
    }

    fn shape(&mut self, outline: &[Segment], fill: Option<&Fill>, stroke: Option<&Stroke>) -> Option<Element> {
        let mut path = Element::from(Path::new().set("d", data(outline)));
        match fill {
            Some(Fill::Flat(colour, opacity)) => coloured(&mut path, "fill", *colour, *opacity),
            Some(gradient) => path.assign("fill", self.fills.reference(self::gradient(gradient))),
            None => {}
        }
        if let Some(stroke) = stroke {
            stroked(&mut path, stroke);
        }
        (!outline.is_empty()).then_some(path)
    }
}

fn gradient(fill: &Fill) -> Element {
    let (element, stops): (Element, &[ColourStop]) = match fill {
        Fill::Flat(..) => (LinearGradient::new().into(), &[]),
        Fill::Linear(from, to, stops) => {
            let ends = [("x1", from.x), ("y1", from.y), ("x2", to.x), ("y2", to.y)];
            (measured(LinearGradient::new(), &ends), stops)
        }
        Fill::Radial(centre, radius, stops) => {
            let circle = [("cx", centre.x), ("cy", centre.y), ("r", *radius)];
            (measured(RadialGradient::new(), &circle), stops)
        }
    };
    holding(with(element, "gradientUnits", "userSpaceOnUse"), stops.iter().map(stop))
}

fn stop(stop: &ColourStop) -> Element {
    let mut element = measured(Element::new("stop"), &[("offset", stop.at)]);
    element.assign("stop-color", stop.colour.hex());
    faded(&mut element, "stop-opacity", stop.opacity);
    element
}

fn stamp(symbol: Key, at: Point, angle: f64, [along, across]: [f64; 2]) -> Element {
    let mut transform = format!("translate({})", list(&[at.x, at.y]));
    if angle != 0.0 {
        transform += &format!(" rotate({})", written(angle.to_degrees()));
    }
    if [along, across] != [1.0, 1.0] {
        transform += " scale(";
        number::push(&mut transform, along, FINE);
        if along != across {
            transform.push(' ');
            number::push(&mut transform, across, FINE);
        }
        transform.push(')');
    }
    Use::new().set("xlink:href", format!("#{symbol}")).set("transform", transform).into()
}

fn line_of_text(text: &Text) -> Element {
    let place = [("x", text.at.x), ("y", text.at.y), ("font-size", text.size)];
    let mut element = measured(holding(Element::new("text"), [Words::new(text)]), &place);
    if text.weight == Weight::Semibold {
        element.assign("font-weight", 600);
    }
    coloured(&mut element, "fill", text.colour, 1.0);
    let tucks: Vec<f64> = tucks(&text.text).iter().map(|tuck| -tuck * text.size).collect();
    if !tucks.is_empty() {
        element.assign("dx", list(&tucks));
    }
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => element.assign("text-anchor", "middle"),
        Anchor::End => element.assign("text-anchor", "end"),
    }
    if text.angle != 0.0 {
        let turn = list(&[text.angle.to_degrees(), text.at.x, text.at.y]);
        element.assign("transform", format!("rotate({turn})"));
    }
    element
}

fn data(outline: &[Segment]) -> String {
    let mut data = String::new();
    for segment in outline {
        let (letter, points): (char, &[Point]) = match segment {
            Segment::Move(to) => ('M', &[*to]),
            Segment::Line(to) => ('L', &[*to]),
            Segment::Curve(first, second, to) => ('C', &[*first, *second, *to]),
            Segment::Close => ('Z', &[]),
        };
        data.push(letter);
        for (index, point) in points.iter().enumerate() {
            if index > 0 {
                data.push(' ');
            }
            number::push(&mut data, point.x, PLACES);
            data.push(' ');
            number::push(&mut data, point.y, PLACES);
        }
    }
    data
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::mark::Rgb;

    fn page(marks: Vec<Mark>) -> Page {
        let symbols = vec![Symbol { key: Key::new("bead").of(0), marks: vec![area(Fill::Flat(Rgb(1, 2, 3), 1.0))] }];
        Page {
            width: 210.0,
            height: 297.0,
            title: "A & B".into(),
            description: "x < y".into(),
            symbols: symbols.into(),
            marks,
        }
    }

    fn area(fill: Fill) -> Mark {
        let outline = vec![
            Segment::Move(Point::new(0.0, -1.25)),
            Segment::Curve(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(3.0, 0.5)),
            Segment::Line(Point::new(0.3333, 1.0)),
            Segment::Close,
        ];
        Mark::Shape { outline, fill: Some(fill), stroke: None }
    }

    #[test]
    fn sizes_are_stated_in_millimetres_and_texts_escaped() {
        let svg = svg(&page(Vec::new()));
        assert!(!svg.contains("<defs>"), "nothing stamps the symbol");
        assert!(svg.contains("height=\"297mm\"") && svg.contains("viewBox=\"0 0 210 297\" width=\"210mm\""));
        assert!(svg.contains(">A &amp; B</title>") && svg.contains(">x &lt; y</desc>"));
    }

    #[test]
    fn control_characters_are_dropped_and_quotes_escaped() {
        let group = Mark::figure("a\u{0}\u{b}\u{ffff}\"b\"\n\u{7f}c", Vec::new());
        assert!(svg(&page(vec![group])).contains("aria-label=\"a&quot;b&quot; c\""));
    }

    #[test]
    fn equal_gradients_are_written_once() {
        let stop = |at, colour| ColourStop { at, colour, opacity: 1.0 };
        let radial = |radius| Fill::Radial(Point::ORIGIN, radius, vec![stop(0.0, Rgb::WHITE), stop(1.0, Rgb::BLACK)]);
        let svg = svg(&page(vec![area(radial(1.0)), area(radial(1.0)), area(radial(2.0))]));
        assert_eq!(svg.matches("<radialGradient").count(), 2);
        assert_eq!(svg.matches("url(#fill_1)").count(), 2);
    }

    #[test]
    fn outlines_and_stamps_are_written_in_fixed_precision() {
        let stamp = Mark::Stamp {
            symbol: Key::new("bead").of(0),
            at: Point::new(10.0, 20.123_456),
            angle: std::f64::consts::FRAC_PI_2,
            scale: 0.75,
            along: 1.0,
        };
        let svg = svg(&page(vec![stamp]));
        assert!(svg.contains("<g id=\"bead-0\">\n<path d=\"M0 -1.25C1 0 2 0 3 0.5L0.333 1Z\" fill=\"#010203\"/>"));
        assert!(
            svg.contains("<use transform=\"translate(10 20.123) rotate(90) scale(0.75)\" xlink:href=\"#bead-0\"/>")
        );
    }
}
