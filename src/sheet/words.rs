//! Word charts set with their letters in semibold.

use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::metrics;
use crate::steps::english::chart::{ChartRun, WordChart};

/// A space at which no line is broken.
const JOINED: char = '\u{a0}';
/// The most of a line that round brackets take which are not broken.
const MOST_HELD: f64 = 0.5;

/// Sets a chart in lines of a width, a block a line.
pub fn set(chart: &WordChart, face: Type, width: f64) -> Vec<Block> {
    // Measured in the wider weight, so that every line fits whichever of its words are letters.
    let strong = face.bold();
    let signs = held(signs(chart).collect(), |words| strong.width(words) <= MOST_HELD * width);
    let text: String = signs.iter().map(|(sign, _)| *sign).collect();
    let lines = metrics::wrap(&text, strong.size, strong.weight, width);
    let mut signs = signs.into_iter();
    lines.iter().map(|line| self::line(&mut signs, line, face)).collect()
}

/// Signs in which round brackets that are short enough hold together.
fn held(mut signs: Vec<(char, bool)>, is_short: impl Fn(&str) -> bool) -> Vec<(char, bool)> {
    let mut open = Vec::new();
    for at in 0..signs.len() {
        match signs[at].0 {
            '(' => open.push(at),
            ')' => {
                let bracket = open.pop().map_or(at..at, |from| from..at);
                let words: String = signs[bracket.clone()].iter().map(|(sign, _)| *sign).collect();
                if is_short(&words) {
                    signs[bracket].iter_mut().filter(|(sign, _)| *sign == ' ').for_each(|(sign, _)| *sign = JOINED);
                }
            }
            _ => {}
        }
    }
    signs
}

/// A line, which is made of the chart's next signs but for the spaces at which lines are broken.
fn line(signs: &mut impl Iterator<Item = (char, bool)>, text: &str, face: Type) -> Block {
    let signs: Vec<_> = text.chars().filter_map(|sign| signs.find(|(next, _)| *next == sign)).collect();
    let parts = signs.chunk_by(|(_, one), (_, next)| one == next).map(|part| {
        let words: String = part.iter().map(|(sign, _)| if *sign == JOINED { ' ' } else { *sign }).collect();
        if part[0].1 { face.bold() } else { face }.line(&words)
    });
    Block::row(parts, 0.0)
}

/// Every sign of a chart, with whether it is a bead's letter.
fn signs(chart: &WordChart) -> impl Iterator<Item = (char, bool)> {
    let of = |run: &ChartRun| match run {
        ChartRun::Beads(count, letter) => vec![(count.to_string(), false), (letter.clone(), true)],
        ChartRun::Words(words) => vec![(words.clone(), false)],
    };
    let marked = |(words, is_letter): (String, bool)| words.chars().map(|sign| (sign, is_letter)).collect::<Vec<_>>();
    chart.runs().iter().flat_map(of).flat_map(marked).collect::<Vec<_>>().into_iter()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paint::mark::{Mark, Weight};

    /// The semibold words of each line.
    fn strong(chart: &WordChart, width: f64) -> Vec<String> {
        let is_strong = |mark: Mark| match mark {
            Mark::Text(text) if text.weight == Weight::Semibold => Some(text.text),
            _ => None,
        };
        set(chart, Type::BODY, width)
            .into_iter()
            .map(|line| line.marks.into_iter().filter_map(is_strong).collect())
            .collect()
    }

    #[test]
    fn letters_are_semibold_and_nothing_that_looks_like_one() {
        let chart =
            WordChart::beads(5, "A").and(" ").and(WordChart::beads(12, "AB")).and(", 11 times, then (1 4MM Spacer)");
        assert_eq!(chart.to_string(), "5A 12AB, 11 times, then (1 4MM Spacer)");
        assert_eq!(strong(&chart, 200.0), ["AAB"]);
    }

    #[test]
    fn short_brackets_are_not_broken() {
        let chart = WordChart::from("4 links bare, then (dangle: ").and(WordChart::beads(1, "B")).and(" on a ring)");
        let wide = Type::STRONG.width("(dangle: 1B on a ring) more");
        let text = |line: Block| {
            line.marks.into_iter().filter_map(|mark| if let Mark::Text(text) = mark { Some(text.text) } else { None })
        };
        let lines = |width: f64| {
            set(&chart, Type::BODY, width).into_iter().map(|line| text(line).collect::<String>()).collect::<Vec<_>>()
        };
        assert_eq!(lines(2.0 * wide).len(), 1);
        assert_eq!(lines(1.5 * wide), ["4 links bare, then (dangle: 1B on a", "ring)"], "more than half a line");
    }

    #[test]
    fn letters_are_found_on_every_line() {
        let chart = WordChart::join((1..40).map(|count| WordChart::beads(count, "C")), " ");
        let lines = strong(&chart, 30.0);
        assert!(lines.len() > 3, "{lines:?}");
        assert_eq!(lines.concat(), "C".repeat(39));
    }
}
