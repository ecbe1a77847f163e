//! A page as SVG.
//!
//! One unit is one millimetre, as `width`, `height` and `viewBox` say together. Symbols are `<g>` in
//! `<defs>` and stamps `<use>`: a `<symbol>` opens a viewport and costs renderers half as much again.
//! Equal gradients are written once, and symbols that the page does not stamp not at all. Ids of our
//! own hold an underscore, which no symbol's id does. Characters that XML forbids are dropped; line
//! breaks and tabs in texts become spaces.

use std::collections::{BTreeMap, BTreeSet};

use svg::node::element::{Definitions, Element, Group, LinearGradient, Path, RadialGradient, Use};
use svg::node::{self, Node};

use super::bounds::Bounds;
use super::number;
use crate::geometry::Point;
use crate::sheet::font::FAMILY;
use crate::sheet::mark::{Anchor, Fill, Mark, Page, Rgb, Shadow, Step, Stop, Stroke, Symbol, Text, Weight};

/// Decimals of a coordinate: a thousandth of a millimetre.
const PLACES: u32 = 3;
/// Decimals of a scale.
const FINE: u32 = 5;

/// Writes the page as an SVG document.
#[must_use]
pub fn svg(page: &Page) -> String {
    let mut defined = Defined { bounds: Bounds::of(page), numbers: BTreeMap::new(), elements: Vec::new() };
    let marks = defined.marks(&page.marks);
    let symbols: Vec<_> = used(page).into_iter().map(|symbol| defined.symbol(symbol)).collect();
    let mut document = head(page);
    let definitions: Vec<_> = defined.elements.into_iter().chain(symbols).collect();
    if !definitions.is_empty() {
        document.append(holding(Definitions::new(), definitions));
    }
    holding(document, marks).to_string() + "\n"
}

/// The document with its title and description.
fn head(page: &Page) -> svg::Document {
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
        .add(with(worded("title", &page.title), "id", "page_title"))
        .add(with(worded("desc", &page.description), "id", "page_desc"))
}

/// The symbols that the page stamps, by itself or within other symbols, in the page's order.
fn used(page: &Page) -> Vec<&Symbol> {
    let symbols: BTreeMap<&str, &Symbol> = page.symbols.iter().map(|symbol| (symbol.id.as_str(), symbol)).collect();
    let mut ids = BTreeSet::new();
    let mut to_search = vec![page.marks.as_slice()];
    while let Some(marks) = to_search.pop() {
        for mark in marks {
            match mark {
                Mark::Stamp { symbol, .. } if ids.insert(symbol.as_str()) => {
                    to_search.extend(symbols.get(symbol.as_str()).map(|symbol| symbol.marks.as_slice()));
                }
                held => to_search.push(held.inner()),
            }
        }
    }
    page.symbols.iter().filter(|symbol| ids.contains(symbol.id.as_str())).collect()
}

/// What is defined so far: gradients and filters.
struct Defined<'a> {
    bounds: Bounds<'a>,
    /// Number of each definition, by everything in it but its id.
    numbers: BTreeMap<String, usize>,
    elements: Vec<Element>,
}

impl Defined<'_> {
    fn symbol(&mut self, symbol: &Symbol) -> Element {
        holding(Group::new().set("id", clean(&symbol.id)), self.marks(&symbol.marks)).into()
    }

    fn marks(&mut self, marks: &[Mark]) -> Vec<Element> {
        marks.iter().filter_map(|mark| self.mark(mark)).collect()
    }

    fn mark(&mut self, mark: &Mark) -> Option<Element> {
        match mark {
            Mark::Shape { outline, fill, stroke } => self.shape(outline, fill.as_ref(), stroke.as_ref()),
            Mark::Text(text) => Some(line_of_text(text)),
            Mark::Stamp { symbol, at, angle, scale } => Some(stamp(symbol, *at, *angle, *scale)),
            Mark::Group { label, marks } => Some(self.group(label, marks)),
            Mark::Raised { shadow, marks } => {
                Some(self.filtered(marks, 3.0 * shadow.blur + shadow.throw.length(), drop_shadow(shadow)))
            }
            Mark::Blurred { blur, marks } => {
                let blurring = measured(Element::new("feGaussianBlur"), &[("stdDeviation", *blur)]);
                Some(self.filtered(marks, 3.0 * blur, blurring))
            }
        }
    }

    /// Marks through a filter whose region is the box round them, grown by as much as it makes of
    /// them.
    fn filtered(&mut self, marks: &[Mark], grown: f64, effect: Element) -> Element {
        let (low, high) = self.bounds.on_page(marks, grown);
        let region = [("x", low.x), ("y", low.y), ("width", high.x - low.x), ("height", high.y - low.y)];
        let filter = with(measured(Element::new("filter"), &region), "filterUnits", "userSpaceOnUse");
        let filter = with(filter, "color-interpolation-filters", "sRGB");
        let reference = self.defined("soft", holding(filter, [effect]));
        holding(Group::new().set("filter", reference), self.marks(marks)).into()
    }

    /// The reference to a definition, which is written once.
    fn defined(&mut self, kind: &str, element: Element) -> String {
        let next = self.numbers.len() + 1;
        let number = *self.numbers.entry(element.to_string()).or_insert(next);
        if number == next {
            self.elements.push(with(element, "id", format!("{kind}_{number}")));
        }
        format!("url(#{kind}_{number})")
    }

    fn group(&mut self, label: &str, marks: &[Mark]) -> Element {
        let mut group = Group::new();
        if !label.is_empty() {
            group = group.set("role", "group").set("aria-label", clean(label)).add(worded("title", label));
        }
        holding(group, self.marks(marks)).into()
    }

    fn shape(&mut self, outline: &[Step], fill: Option<&Fill>, stroke: Option<&Stroke>) -> Option<Element> {
        let mut path = Element::from(Path::new().set("d", data(outline)));
        match fill {
            Some(Fill::Flat(colour, opacity)) => coloured(&mut path, "fill", *colour, *opacity),
            Some(gradient) => path.assign("fill", self.defined("fill", self::gradient(gradient))),
            None => {}
        }
        if let Some(stroke) = stroke {
            stroked(&mut path, stroke);
        }
        (!outline.is_empty()).then_some(path)
    }
}

fn drop_shadow(shadow: &Shadow) -> Element {
    let throw = [("dx", shadow.throw.x), ("dy", shadow.throw.y), ("stdDeviation", shadow.blur)];
    let element = measured(Element::new("feDropShadow"), &throw);
    let element = with(element, "flood-color", shadow.colour.hex());
    with(element, "flood-opacity", written(shadow.opacity))
}

fn gradient(fill: &Fill) -> Element {
    let (element, stops): (Element, &[Stop]) = match fill {
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

fn stop(stop: &Stop) -> Element {
    let mut element = measured(Element::new("stop"), &[("offset", stop.at)]);
    element.assign("stop-color", stop.colour.hex());
    faded(&mut element, "stop-opacity", stop.opacity);
    element
}

fn stamp(symbol: &str, at: Point, angle: f64, scale: f64) -> Element {
    let mut transform = format!("translate({})", list(&[at.x, at.y]));
    if angle != 0.0 {
        transform += &format!(" rotate({})", written(angle.to_degrees()));
    }
    if scale != 1.0 {
        transform += " scale(";
        number::push(&mut transform, scale, FINE);
        transform.push(')');
    }
    Use::new().set("xlink:href", format!("#{}", clean(symbol))).set("transform", transform).into()
}

fn line_of_text(text: &Text) -> Element {
    let place = [("x", text.at.x), ("y", text.at.y), ("font-size", text.size)];
    let mut element = measured(worded("text", &text.text), &place);
    if text.weight == Weight::Semibold {
        element.assign("font-weight", 600);
    }
    coloured(&mut element, "fill", text.colour, 1.0);
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

fn data(outline: &[Step]) -> String {
    let mut data = String::new();
    for step in outline {
        let (letter, points): (char, &[Point]) = match step {
            Step::Move(to) => ('M', &[*to]),
            Step::Line(to) => ('L', &[*to]),
            Step::Curve(first, second, to) => ('C', &[*first, *second, *to]),
            Step::Close => ('Z', &[]),
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

fn stroked(element: &mut Element, stroke: &Stroke) {
    coloured(element, "stroke", stroke.colour, stroke.opacity);
    element.assign("stroke-width", written(stroke.width));
    if !stroke.dashes.is_empty() {
        element.assign("stroke-dasharray", list(&stroke.dashes));
    }
    if stroke.round {
        element.assign("stroke-linecap", "round");
        element.assign("stroke-linejoin", "round");
    }
}

fn coloured(element: &mut Element, name: &str, colour: Rgb, opacity: f64) {
    element.assign(name, colour.hex());
    faded(element, &format!("{name}-opacity"), opacity);
}

fn faded(element: &mut Element, name: &str, opacity: f64) {
    if opacity < 1.0 {
        element.assign(name, written(opacity.max(0.0)));
    }
}

/// An element of words. The crate's own text element puts its words on a line of their own, which
/// would show as spaces.
fn worded(name: &str, words: &str) -> Element {
    holding(Element::new(name), [node::Text::new(clean(words))])
}

fn with(mut element: Element, name: &str, value: impl Into<node::Value>) -> Element {
    element.assign(name, value);
    element
}

fn measured(element: impl Into<Element>, values: &[(&str, f64)]) -> Element {
    values.iter().fold(element.into(), |element, (name, value)| with(element, name, written(*value)))
}

fn holding<E: Node, C: Into<Box<dyn Node>>>(mut element: E, children: impl IntoIterator<Item = C>) -> E {
    children.into_iter().for_each(|child| element.append(child));
    element
}

fn written(value: f64) -> String {
    list(&[value])
}

fn list(values: &[f64]) -> String {
    let mut out = String::new();
    for (index, value) in values.iter().enumerate() {
        if index > 0 {
            out.push(' ');
        }
        number::push(&mut out, *value, PLACES);
    }
    out
}

/// A text without what XML forbids.
fn clean(text: &str) -> String {
    let spaced = text.chars().map(|c| if matches!(c, '\n' | '\t') { ' ' } else { c });
    spaced.filter(|c| !c.is_control() && !matches!(c, '\u{fffe}' | '\u{ffff}')).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(marks: Vec<Mark>) -> Page {
        let symbols = vec![Symbol { id: "bead-0".into(), marks: vec![area(Fill::Flat(Rgb(1, 2, 3), 1.0))] }];
        Page { width: 210.0, height: 297.0, title: "A & B".into(), description: "x < y".into(), symbols, marks }
    }

    fn area(fill: Fill) -> Mark {
        let outline = vec![
            Step::Move(Point::new(0.0, -1.25)),
            Step::Curve(Point::new(1.0, 0.0), Point::new(2.0, 0.0), Point::new(3.0, 0.5)),
            Step::Line(Point::new(0.3333, 1.0)),
            Step::Close,
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
        let group = Mark::Group { label: "a\u{0}\u{b}\u{ffff}\"b\"\n\u{7f}c".into(), marks: Vec::new() };
        assert!(svg(&page(vec![group])).contains("aria-label=\"a&quot;b&quot; c\""));
    }

    #[test]
    fn equal_gradients_are_written_once() {
        let stop = |at, colour| Stop { at, colour, opacity: 1.0 };
        let radial = |radius| Fill::Radial(Point::ORIGIN, radius, vec![stop(0.0, Rgb::WHITE), stop(1.0, Rgb::BLACK)]);
        let svg = svg(&page(vec![area(radial(1.0)), area(radial(1.0)), area(radial(2.0))]));
        assert_eq!(svg.matches("<radialGradient").count(), 2);
        assert_eq!(svg.matches("url(#fill_1)").count(), 2);
    }

    #[test]
    fn outlines_and_stamps_are_written_in_fixed_precision() {
        let stamp = Mark::Stamp {
            symbol: "bead-0".into(),
            at: Point::new(10.0, 20.123_456),
            angle: std::f64::consts::FRAC_PI_2,
            scale: 0.75,
        };
        let svg = svg(&page(vec![stamp]));
        assert!(svg.contains("<g id=\"bead-0\">\n<path d=\"M0 -1.25C1 0 2 0 3 0.5L0.333 1Z\" fill=\"#010203\"/>"));
        assert!(
            svg.contains("<use transform=\"translate(10 20.123) rotate(90) scale(0.75)\" xlink:href=\"#bead-0\"/>")
        );
    }
}
