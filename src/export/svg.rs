//! A page as SVG.
//!
//! One unit is one millimetre, as `width`, `height` and `viewBox` say together. Symbols are `<g>` in
//! `<defs>` and stamps `<use>`: a `<symbol>` opens a viewport and costs renderers half as much again.
//! Equal gradients are written once, and symbols that the page does not stamp not at all. Ids of our own hold an underscore, which no symbol's id does.
//! Characters that XML forbids are dropped; lines breaks and tabs in texts become spaces.

use std::collections::{BTreeMap, BTreeSet};

use super::bounds::Bounds;
use super::number;
use crate::geometry::Point;
use crate::sheet::font::FAMILY;
use crate::sheet::mark::{Anchor, Fill, Mark, Page, Rgb, Shadow, Step, Stop, Stroke, Symbol, Text, Weight};

/// Decimals of a coordinate: a thousandth of a millimetre.
const PLACES: u32 = 3;
/// Decimals of a scale or an opacity.
const FINE: u32 = 5;

/// Writes the page as an SVG document.
#[must_use]
pub fn svg(page: &Page) -> String {
    let bounds = Bounds::of(page);
    let mut body = Writer { bounds: Some(&bounds), ..Writer::default() };
    body.marks(&page.marks);
    let mut defs = Writer { gradients: body.gradients, filters: body.filters, ..Writer::default() };
    defs.symbols(&used(page));
    let mut out = Writer::default();
    out.head(page);
    out.defs(&defs);
    out.text += &body.text;
    out.text += "</svg>\n";
    out.text
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

/// The document as far as it is written.
#[derive(Default)]
struct Writer<'a> {
    text: String,
    /// Number of each gradient, by everything in it but its id.
    gradients: BTreeMap<String, usize>,
    /// Number of each shadow's or blur's filter, in the same way.
    filters: BTreeMap<String, usize>,
    /// The page's measures, for filters.
    bounds: Option<&'a Bounds<'a>>,
}

impl Writer<'_> {
    fn head(&mut self, page: &Page) {
        self.text += "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"";
        self.number(page.width);
        self.text += "mm\" height=\"";
        self.number(page.height);
        self.text += "mm\" viewBox=\"0 0 ";
        self.numbers(&[page.width, page.height]);
        self.text += "\" role=\"img\" aria-labelledby=\"page_title page_desc\" fill=\"none\" fill-rule=\"evenodd\" ";
        self.text += &format!("font-family=\"'{FAMILY}', sans-serif\" xml:space=\"preserve\">\n");
        self.text += "<title id=\"page_title\">";
        self.escaped(&page.title);
        self.text += "</title>\n<desc id=\"page_desc\">";
        self.escaped(&page.description);
        self.text += "</desc>\n";
    }

    fn defs(&mut self, defs: &Self) {
        if defs.text.is_empty() && defs.gradients.is_empty() && defs.filters.is_empty() {
            return;
        }
        self.text += "<defs>\n";
        self.numbered("fill", &defs.gradients);
        self.numbered("soft", &defs.filters);
        self.text += &defs.text;
        self.text += "</defs>\n";
    }

    /// Definitions in the order of their numbers. Each starts with its element's name, which the id
    /// comes after.
    fn numbered(&mut self, prefix: &str, definitions: &BTreeMap<String, usize>) {
        let mut definitions: Vec<_> = definitions.iter().collect();
        definitions.sort_by_key(|(_, number)| **number);
        for (definition, number) in definitions {
            let (name, rest) = definition.split_once(' ').unwrap_or((definition, ""));
            self.text += &format!("<{name} id=\"{prefix}_{number}\" {rest}</{name}>\n");
        }
    }

    fn symbols(&mut self, symbols: &[&Symbol]) {
        for symbol in symbols {
            self.text += "<g id=\"";
            self.escaped(&symbol.id);
            self.text += "\">\n";
            self.marks(&symbol.marks);
            self.text += "</g>\n";
        }
    }

    fn marks(&mut self, marks: &[Mark]) {
        for mark in marks {
            self.mark(mark);
        }
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Shape { outline, fill, stroke } => self.shape(outline, fill.as_ref(), stroke.as_ref()),
            Mark::Text(text) => self.line_of_text(text),
            Mark::Stamp { symbol, at, angle, scale } => self.stamp(symbol, *at, *angle, *scale),
            Mark::Group { label, marks } => self.group(label, marks),
            Mark::Raised { shadow, marks } => self.raised(shadow, marks),
            Mark::Blurred { blur, marks } => self.blurred(*blur, marks),
        }
    }

    fn group(&mut self, label: &str, marks: &[Mark]) {
        if label.is_empty() {
            self.text += "<g>\n";
        } else {
            self.text += "<g role=\"group\" aria-label=\"";
            self.escaped(label);
            self.text += "\"><title>";
            self.escaped(label);
            self.text += "</title>\n";
        }
        self.marks(marks);
        self.text += "</g>\n";
    }

    fn raised(&mut self, shadow: &Shadow, marks: &[Mark]) {
        let mut filter = self.filter(marks, 3.0 * shadow.blur + shadow.throw.length());
        filter.text += "<feDropShadow";
        filter.attribute("dx", shadow.throw.x);
        filter.attribute("dy", shadow.throw.y);
        filter.attribute("stdDeviation", shadow.blur);
        filter.colour("flood-color", shadow.colour, 1.0);
        filter.attribute("flood-opacity", shadow.opacity);
        self.filtered(filter.text, marks);
    }

    fn blurred(&mut self, blur: f64, marks: &[Mark]) {
        let mut filter = self.filter(marks, 3.0 * blur);
        filter.text += "<feGaussianBlur";
        filter.attribute("stdDeviation", blur);
        self.filtered(filter.text, marks);
    }

    /// Begins a filter whose region is the box round the marks, grown by as much as it makes of them.
    fn filter(&self, marks: &[Mark], grown: f64) -> Self {
        let (low, high) = self.bounds.map(|bounds| bounds.on_page(marks, grown)).unwrap_or_default();
        let mut filter = Self::default();
        filter.text += "filter filterUnits=\"userSpaceOnUse\" color-interpolation-filters=\"sRGB\"";
        let region = [("x", low.x), ("y", low.y), ("width", high.x - low.x), ("height", high.y - low.y)];
        region.into_iter().for_each(|(name, value)| filter.attribute(name, value));
        filter.text.push('>');
        filter
    }

    fn filtered(&mut self, definition: String, marks: &[Mark]) {
        let next = self.filters.len() + 1;
        let number = *self.filters.entry(definition + "/>").or_insert(next);
        self.text += &format!("<g filter=\"url(#soft_{number})\">\n");
        self.marks(marks);
        self.text += "</g>\n";
    }

    fn stamp(&mut self, symbol: &str, at: Point, angle: f64, scale: f64) {
        self.text += "<use xlink:href=\"#";
        self.escaped(symbol);
        self.text += "\" transform=\"translate(";
        self.point(at);
        self.text.push(')');
        if angle != 0.0 {
            self.text += " rotate(";
            self.number(angle.to_degrees());
            self.text.push(')');
        }
        if scale != 1.0 {
            self.text += " scale(";
            number::push(&mut self.text, scale, FINE);
            self.text.push(')');
        }
        self.text += "\"/>\n";
    }

    fn line_of_text(&mut self, text: &Text) {
        self.text += "<text";
        self.attribute("x", text.at.x);
        self.attribute("y", text.at.y);
        self.attribute("font-size", text.size);
        if text.weight == Weight::Semibold {
            self.text += " font-weight=\"600\"";
        }
        self.colour("fill", text.colour, 1.0);
        match text.anchor {
            Anchor::Start => {}
            Anchor::Middle => self.text += " text-anchor=\"middle\"",
            Anchor::End => self.text += " text-anchor=\"end\"",
        }
        if text.angle != 0.0 {
            self.text += " transform=\"rotate(";
            self.numbers(&[text.angle.to_degrees(), text.at.x, text.at.y]);
            self.text += ")\"";
        }
        self.text.push('>');
        self.escaped(&text.text);
        self.text += "</text>\n";
    }

    fn shape(&mut self, outline: &[Step], fill: Option<&Fill>, stroke: Option<&Stroke>) {
        if outline.is_empty() {
            return;
        }
        self.text += "<path d=\"";
        for step in outline {
            self.step(step);
        }
        self.text.push('"');
        match fill {
            Some(Fill::Flat(colour, opacity)) => self.colour("fill", *colour, *opacity),
            Some(gradient) => self.gradient(gradient),
            None => {}
        }
        if let Some(stroke) = stroke {
            self.stroke(stroke);
        }
        self.text += "/>\n";
    }

    fn step(&mut self, step: &Step) {
        match step {
            Step::Move(to) => self.step_to('M', &[*to]),
            Step::Line(to) => self.step_to('L', &[*to]),
            Step::Curve(first, second, to) => self.step_to('C', &[*first, *second, *to]),
            Step::Close => self.text.push('Z'),
        }
    }

    fn step_to(&mut self, letter: char, points: &[Point]) {
        self.text.push(letter);
        for (index, point) in points.iter().enumerate() {
            if index > 0 {
                self.text.push(' ');
            }
            self.point(*point);
        }
    }

    fn stroke(&mut self, stroke: &Stroke) {
        self.colour("stroke", stroke.colour, stroke.opacity);
        self.attribute("stroke-width", stroke.width);
        if !stroke.dashes.is_empty() {
            self.text += " stroke-dasharray=\"";
            self.numbers(&stroke.dashes);
            self.text.push('"');
        }
        if stroke.round {
            self.text += " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
        }
    }

    fn gradient(&mut self, fill: &Fill) {
        let mut definition = Self::default();
        definition.gradient_definition(fill);
        let next = self.gradients.len() + 1;
        let number = *self.gradients.entry(definition.text).or_insert(next);
        self.text += &format!(" fill=\"url(#fill_{number})\"");
    }

    fn gradient_definition(&mut self, fill: &Fill) {
        match fill {
            Fill::Linear(from, to, stops) => {
                self.text += "linearGradient gradientUnits=\"userSpaceOnUse\"";
                let ends = [("x1", from.x), ("y1", from.y), ("x2", to.x), ("y2", to.y)];
                ends.into_iter().for_each(|(name, value)| self.attribute(name, value));
                self.stops(stops);
            }
            Fill::Radial(centre, radius, stops) => {
                self.text += "radialGradient gradientUnits=\"userSpaceOnUse\"";
                let circle = [("cx", centre.x), ("cy", centre.y), ("r", *radius)];
                circle.into_iter().for_each(|(name, value)| self.attribute(name, value));
                self.stops(stops);
            }
            Fill::Flat(..) => {}
        }
    }

    fn stops(&mut self, stops: &[Stop]) {
        self.text.push('>');
        for stop in stops {
            self.text += "<stop";
            self.attribute("offset", stop.at);
            self.text += &format!(" stop-color=\"{}\"", stop.colour.hex());
            self.opacity("stop-opacity", stop.opacity);
            self.text += "/>";
        }
    }

    fn colour(&mut self, name: &str, colour: Rgb, opacity: f64) {
        self.text += &format!(" {name}=\"{}\"", colour.hex());
        self.opacity(&format!("{name}-opacity"), opacity);
    }

    fn opacity(&mut self, name: &str, opacity: f64) {
        if opacity < 1.0 {
            self.attribute(name, opacity.max(0.0));
        }
    }

    fn attribute(&mut self, name: &str, value: f64) {
        self.text.push(' ');
        self.text += name;
        self.text += "=\"";
        self.number(value);
        self.text.push('"');
    }

    fn point(&mut self, point: Point) {
        self.numbers(&[point.x, point.y]);
    }

    fn numbers(&mut self, values: &[f64]) {
        for (index, value) in values.iter().enumerate() {
            if index > 0 {
                self.text.push(' ');
            }
            self.number(*value);
        }
    }

    fn number(&mut self, value: f64) {
        number::push(&mut self.text, value, PLACES);
    }

    fn escaped(&mut self, text: &str) {
        for c in text.chars() {
            match c {
                '&' => self.text += "&amp;",
                '<' => self.text += "&lt;",
                '>' => self.text += "&gt;",
                '"' => self.text += "&quot;",
                '\n' | '\t' => self.text.push(' '),
                '\u{fffe}' | '\u{ffff}' => {}
                c if c.is_control() => {}
                c => self.text.push(c),
            }
        }
    }
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
        assert!(svg.contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""));
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
            svg.contains("<use xlink:href=\"#bead-0\" transform=\"translate(10 20.123) rotate(90) scale(0.75)\"/>")
        );
    }
}
