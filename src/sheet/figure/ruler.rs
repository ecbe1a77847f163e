//! The running ruler: millimetres with figures at the centimetres, inches in eighths, or both.
//! Lengths in mm on paper.

use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark, Segment};
use crate::paint::{outline, style};
use crate::sheet::english;
use crate::sheet::said::Alternative;
use crate::units::{INCH, Length, UnitStyle, fraction};

/// Length in mm of the ticks at the figures.
const TICK: f64 = 2.4;
/// Height in mm of a row of figures, and the shares of it from a line to the baseline of those below it and above it.
const FIGURES: f64 = style::TINY;
const BASELINES: [f64; 2] = [0.82, 0.2];
/// Least room in mm between figures, and before that with which what is measured ends: it must not read on from the one before.
const FIGURES_APART: f64 = 0.5;
const CLEAR_OF_END: f64 = 2.0;
/// Ticks that are nearer in mm to the one with which what is measured ends are left out: both would look like one.
const TICKS_APART: f64 = 0.6;

/// One edge of a ruler.
struct RulerEdge {
    unit: &'static str,
    /// Distance between ticks in mm.
    step: f64,
    /// Which ticks have figures, and how long the others are: every so many, this share of a tick.
    lengths: &'static [(u32, f64)],
    /// A length as exactly as this edge tells it.
    exact: fn(Length) -> String,
}

const MILLIMETRES: RulerEdge =
    RulerEdge { unit: "cm", step: 1.0, lengths: &[(10, 1.0), (5, 0.7), (1, 0.4)], exact: centimetres };
const EIGHTHS: RulerEdge =
    RulerEdge { unit: "in", step: INCH / 8.0, lengths: &[(8, 1.0), (4, 0.75), (2, 0.5), (1, 0.35)], exact: fraction };

/// A length in centimetres, to the millimetre. What adding up has lost of half a millimetre, a nanometre, does not round it
/// down.
fn centimetres(length: Length) -> String {
    format!("{:.1}", (length.value() * 1e6).round() / 1e7)
}

/// A stretch of a line along which the ruler runs unbroken, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RulerStretch {
    /// Where it starts on the line.
    pub x: f64,
    /// What the ruler shows there; below 0 there are no ticks.
    pub from: f64,
    /// Its length.
    pub length: f64,
    /// Whether what is measured ends with it, which then has a figure of its own.
    pub closes: bool,
}

/// A ruler below a line.
pub struct Ruler {
    above: Option<RulerEdge>,
    below: Option<RulerEdge>,
    width: f64,
}

impl Ruler {
    /// The ruler of a unit style, on lines of a width.
    pub const fn new(units: UnitStyle, width: f64) -> Self {
        let (above, below) = match units {
            UnitStyle::In => (None, Some(EIGHTHS)),
            UnitStyle::Mm => (None, Some(MILLIMETRES)),
            UnitStyle::Both => (Some(EIGHTHS), Some(MILLIMETRES)),
        };
        Self { above, below, width }
    }

    /// Its height.
    pub fn height(&self) -> f64 {
        f64::from(u8::from(self.above.is_some()) + u8::from(self.below.is_some())) * (TICK + FIGURES)
    }

    /// The ruler along stretches, from its upper left corner.
    pub fn marks(&self, stretches: &[RulerStretch], corner: Point) -> Vec<Mark> {
        if stretches.is_empty() {
            return Vec::new();
        }
        let base = corner.y + if self.above.is_some() { TICK + FIGURES } else { 0.0 };
        let along = |one: &RulerStretch| outline::line(Point::new(one.x, base), Point::new(one.x + one.length, base));
        let mut lines: Vec<_> = stretches.iter().flat_map(along).collect();
        let mut marks = Vec::new();
        for (edge, down) in [(&self.above, -1.0), (&self.below, 1.0)] {
            if let Some(edge) = edge {
                let (ticks, figures) = self.edge(edge, stretches, base, down);
                lines.extend(ticks);
                marks.extend(figures);
            }
        }
        marks.insert(0, Mark::Shape { outline: lines, fill: None, stroke: Some(style::INK_HAIRLINE) });
        vec![Mark::figure(english::figure(&Alternative::Ruler), marks)]
    }

    /// The ticks and figures of an edge, `down` or up from the base line.
    fn edge(&self, edge: &RulerEdge, stretches: &[RulerStretch], base: f64, down: f64) -> (Vec<Segment>, Vec<Mark>) {
        let baseline = base + if down > 0.0 { TICK + FIGURES * BASELINES[0] } else { -TICK - FIGURES * BASELINES[1] };
        let end = stretches.iter().find_map(|stretch| edge.end(stretch));
        let is_clear = |x: f64| end.as_ref().is_none_or(|(end, _)| (end - x).abs() >= TICKS_APART);
        let all = stretches.iter().flat_map(|stretch| edge.ticks(stretch));
        let all: Vec<_> = all.filter(|(x, _)| is_clear(*x)).collect();
        let lengths = all.iter().map(|(x, at)| (*x, edge.share(*at))).chain(end.iter().map(|(x, _)| (*x, 1.0)));
        let tick = |(x, share)| outline::line(Point::new(x, base), Point::new(x, base + down * TICK * share));
        let ticks = lengths.flat_map(tick).collect();
        let drawn = |(figure, left): (String, f64)| {
            Type::TINY.coloured(style::INK).mark(&figure, Point::new(left, baseline), Anchor::Start)
        };
        let unit = Type::TINY.mark(edge.unit, Point::new(0.0, baseline), Anchor::Start);
        (ticks, std::iter::once(unit).chain(self.figures(edge, &all, end).into_iter().map(drawn)).collect())
    }

    /// The figures that have room behind the unit, each with its left end: those of ticks, and of what ends between them.
    fn figures(&self, edge: &RulerEdge, ticks: &[(f64, u32)], end: Option<(f64, String)>) -> Vec<(String, f64)> {
        let clear = Type::TINY.width(edge.unit) + FIGURES_APART;
        let left = |x: f64, wide: f64| (x - wide / 2.0).min(self.width - wide);
        let (mut figures, mut taken) = (Vec::new(), clear);
        for (x, figure) in ticks.iter().filter_map(|(x, at)| Some((x, edge.figure(*at)?))) {
            let wide = Type::TINY.width(&figure);
            let left = left(*x, wide);
            if left >= taken {
                figures.push((figure, left));
                taken = left + wide + FIGURES_APART;
            }
        }
        if let Some((x, figure)) = end {
            let wide = Type::TINY.width(&figure);
            let left = (x - wide / 2.0).max(clear).min(self.width - wide);
            // It stands in the place of a figure that it would touch, or seem to go on from.
            figures.pop_if(|_| left < taken - FIGURES_APART + CLEAR_OF_END);
            figures.push((figure, left));
        }
        figures
    }
}

impl RulerEdge {
    /// Ticks on a stretch: where on the line, and which.
    fn ticks(&self, stretch: &RulerStretch) -> Vec<(f64, u32)> {
        const ROUNDING: f64 = 1e-6;
        let first = ((stretch.from - ROUNDING) / self.step).ceil().max(0.0) as u32;
        let last = ((stretch.from + stretch.length + ROUNDING) / self.step).floor().max(0.0) as u32;
        (first..=last).map(|at| (stretch.x + f64::from(at) * self.step - stretch.from, at)).collect()
    }

    /// Where what is measured ends, with a figure of its own, unless a tick with a figure stands there.
    fn end(&self, stretch: &RulerStretch) -> Option<(f64, String)> {
        const SAME: f64 = 0.05;
        let end = stretch.from + stretch.length;
        let (every, _) = self.lengths.first()?;
        let figured = self.step * f64::from(*every);
        let off = (end / figured - (end / figured).round()).abs() * figured;
        (stretch.closes && off > SAME).then(|| (stretch.x + stretch.length, (self.exact)(Length::mm(end))))
    }

    /// How long a tick is, as a share of the longest.
    fn share(&self, at: u32) -> f64 {
        self.lengths.iter().find(|(every, _)| at.is_multiple_of(*every)).map_or(0.0, |(_, share)| *share)
    }

    /// The figure at a tick, if it has one.
    fn figure(&self, at: u32) -> Option<String> {
        let (every, _) = self.lengths.first()?;
        at.is_multiple_of(*every).then(|| (at / every).to_string())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figures(closes: bool, length: f64) -> Vec<String> {
        let stretch = RulerStretch { x: 10.0, from: 430.0, length, closes };
        let marks = Ruler::new(UnitStyle::Both, 60.0).marks(&[stretch], Point::ORIGIN);
        let text = |mark: &Mark| if let Mark::Text(text) = mark { Some(text.text.clone()) } else { None };
        marks.iter().flat_map(Mark::inner).filter_map(text).collect()
    }

    #[test]
    fn what_is_measured_ends_with_a_figure_of_its_own() {
        // 18 in are 457.2 mm by definition: in inches a tick with a figure stands there.
        assert_eq!(figures(false, 27.2), ["in", "17", "18", "cm", "43", "44", "45"]);
        assert_eq!(figures(true, 27.2), ["in", "17", "18", "cm", "43", "44", "45", "45.7"]);
        assert_eq!(figures(true, 27.2 - 25.4 / 16.0), ["in", "17", "17 15⁄16", "cm", "43", "44", "45", "45.6"]);
        assert_eq!(figures(true, 19.0), ["in", "17", "17 11⁄16", "cm", "43", "44", "44.9"]);
        // One that would stand close to the figure before it stands in its place.
        assert_eq!(figures(true, 20.2), ["in", "17", "17 ¾", "cm", "43", "44", "45.0"], "each from 450.2 mm");
    }
}
