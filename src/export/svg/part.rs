//! The parts of an SVG document: elements, their attributes, numbers and words.

use std::fmt::{self, Display, Formatter};
use std::hash::{DefaultHasher, Hash};

use svg::node::element::Element;
use svg::node::{self, Node, NodeDefaultHash};

use super::PLACES;
use crate::export::number;
use crate::paint::fraction::{LARGER, runs};
use crate::paint::mark::{Rgb, Stroke, Text};

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

/// The words of a text, fractions larger than the others, on one line: a line's end would show as a space.
#[derive(Clone, Debug, Hash)]
pub(super) struct Words(String);

impl Words {
    pub(super) fn new(text: &Text) -> Self {
        let run = |(is_fraction, words): (bool, &str)| {
            let words = node::Text::new(clean(words)).to_string();
            let size = written(text.size * LARGER);
            if is_fraction { format!("<tspan font-size=\"{size}\">{words}</tspan>") } else { words }
        };
        Self(runs(&text.text).into_iter().map(run).collect())
    }
}

impl Display for Words {
    fn fmt(&self, out: &mut Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl Node for Words {
    fn get_name(&self) -> &'static str {
        "words"
    }

    fn is_bare(&self) -> bool {
        true
    }
}

impl NodeDefaultHash for Words {
    fn default_hash(&self, state: &mut DefaultHasher) {
        self.hash(state);
    }
}
