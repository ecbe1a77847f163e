//! The parts of an SVG document: elements, their attributes, numbers and words.

use svg::node::element::Element;
use svg::node::{self, Node};

use super::PLACES;
use crate::export::number;
use crate::paint::mark::{Rgb, Stroke};

pub(super) fn stroked(element: &mut Element, stroke: &Stroke) {
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

pub(super) fn coloured(element: &mut Element, name: &str, colour: Rgb, opacity: f64) {
    element.assign(name, colour.hex());
    faded(element, &format!("{name}-opacity"), opacity);
}

pub(super) fn faded(element: &mut Element, name: &str, opacity: f64) {
    if opacity < 1.0 {
        element.assign(name, written(opacity.max(0.0)));
    }
}

/// An element of words. The crate's own text element puts its words on a line of their own, which
/// would show as spaces.
pub(super) fn worded(name: &str, words: &str) -> Element {
    holding(Element::new(name), [node::Text::new(clean(words))])
}

pub(super) fn with(mut element: Element, name: &str, value: impl Into<node::Value>) -> Element {
    element.assign(name, value);
    element
}

pub(super) fn measured(element: impl Into<Element>, values: &[(&str, f64)]) -> Element {
    values.iter().fold(element.into(), |element, (name, value)| with(element, name, written(*value)))
}

pub(super) fn holding<E: Node, C: Into<Box<dyn Node>>>(mut element: E, children: impl IntoIterator<Item = C>) -> E {
    children.into_iter().for_each(|child| element.append(child));
    element
}

pub(super) fn written(value: f64) -> String {
    list(&[value])
}

pub(super) fn list(values: &[f64]) -> String {
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
pub(super) fn clean(text: &str) -> String {
    let spaced = text.chars().map(|c| if matches!(c, '\n' | '\t') { ' ' } else { c });
    spaced.filter(|c| !c.is_control() && !matches!(c, '\u{fffe}' | '\u{ffff}')).collect()
}
