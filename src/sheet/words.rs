//! Word charts set with their letters in semibold.

use std::ops::Range;

use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::metrics;
use crate::steps::english::chart::{ChartRun, WordChart};

/// A space at which no line is broken.
const JOINED: &str = "\u{a0}";
/// The most of a line that round brackets take which are not broken.
const MOST_HELD: f64 = 0.5;

/// Sets a chart in lines of a width, a block a line.
pub fn set(chart: &WordChart, face: Type, width: f64) -> Vec<Block> {
    // Measured in the wider weight, so that every line fits whichever of its words are letters.
    let strong = face.bold();
    let text = held(chart, &|words| strong.width(words) <= MOST_HELD * width);
    let runs = runs(chart, &text);
    let lines = metrics::lines(&text, strong.size, strong.weight, width);
    lines.into_iter().map(|line| self::line(&text, line, &runs, face)).collect()
}

/// A chart's text, in which what is said aside holds together where it is short enough, and how often with what it repeats.
fn held(chart: &WordChart, is_short: &impl Fn(&str) -> bool) -> String {
    let of = |run: &ChartRun| match run {
        ChartRun::Aside(said) => {
            let said = format!("({}", held(said, is_short));
            (if is_short(&said) { said.replace(' ', JOINED) } else { said }) + ")"
        }
        ChartRun::Words(words) if is_often(words) => words.replacen(' ', JOINED, 1),
        other => other.to_string(),
    };
    chart.runs().iter().map(of).collect()
}

/// Whether words begin with a number behind a comma, as in `, 4 times`.
fn is_often(words: &str) -> bool {
    words.strip_prefix(", ").is_some_and(|rest| rest.starts_with(char::is_numeric))
}

/// A line of a chart's text.
fn line(text: &str, line: Range<usize>, runs: &[Lettering], face: Type) -> Block {
    let first = runs.partition_point(|(run, _)| run.end <= line.start);
    let here = runs[first..].iter().take_while(|(run, _)| run.start < line.end);
    let parts = here.map(|(run, is_letter)| {
        let words = text[run.start.max(line.start)..run.end.min(line.end)].replace(JOINED, " ");
        if *is_letter { face.bold() } else { face }.line(&words)
    });
    Block::row(parts, 0.0)
}

/// Where beads' letters lie in a chart's text, and what is none between them.
type Lettering = (Range<usize>, bool);

fn runs(chart: &WordChart, text: &str) -> Vec<Lettering> {
    let mut runs: Vec<Lettering> = Vec::new();
    for (length, is_letter) in signs(chart) {
        let start = runs.last().map_or(0, |(run, _)| run.end);
        let end = text[start..].char_indices().nth(length).map_or(text.len(), |(at, _)| start + at);
        match runs.last_mut() {
            Some((run, is_same)) if *is_same == is_letter => run.end = end,
            _ => runs.push((start..end, is_letter)),
        }
    }
    runs
}

/// How many signs of a chart's text are beads' letters or none, in turn.
fn signs(chart: &WordChart) -> Vec<(usize, bool)> {
    let count = |words: &str| words.chars().count();
    let of = |run: &ChartRun| match run {
        ChartRun::Beads(beads, letter) => vec![(count(&beads.to_string()), false), (count(letter), true)],
        ChartRun::Aside(said) => [vec![(1, false)], signs(said), vec![(1, false)]].concat(),
        ChartRun::Words(words) => vec![(count(words), false)],
    };
    chart.runs().iter().flat_map(of).collect()
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
        let dangle = WordChart::from("dangle: ").and(WordChart::beads(1, "B")).and(" on a ring").aside();
        let chart = WordChart::from("4 links bare, then ").and(dangle);
        let wide = Type::STRONG.width("(dangle: 1B on a ring) more");
        let text = |line: Block| {
            line.marks.into_iter().filter_map(|mark| if let Mark::Text(text) = mark { Some(text.text) } else { None })
        };
        let lines = |width: f64| {
            set(&chart, Type::BODY, width).into_iter().map(|line| text(line).collect::<String>()).collect::<Vec<_>>()
        };
        assert_eq!(lines(2.0 * wide).len(), 1);
        assert_eq!(lines(1.4 * wide), ["4 links bare, then (dangle: 1B on", "a ring)"], "more than half a line");
    }

    #[test]
    fn how_often_stays_with_what_it_repeats() {
        let chart = WordChart::beads(4, "A").and(" ").and(WordChart::beads(1, "C")).and(", 19 times, then");
        let room = Type::STRONG.width("4A 1C, 19 times,") - 0.5;
        assert_eq!(strong(&chart, room)[..2], ["A", "C"]);
    }

    #[test]
    fn letters_are_found_on_every_line() {
        let chart = WordChart::join((1..40).map(|count| WordChart::beads(count, "C")), " ");
        let lines = strong(&chart, 30.0);
        assert!(lines.len() > 3, "{lines:?}");
        assert_eq!(lines.concat(), "C".repeat(39));
    }
}
