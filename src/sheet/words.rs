//! Word charts set with their letters in semibold.

use std::ops::Range;

use crate::paint::layout::Block;
use crate::paint::layout::text::Type;
use crate::paint::metrics;
use crate::steps::english::chart::{ChartRun, WordChart};

/// Sets a chart in lines of a width, a block a line.
pub fn set(chart: &WordChart, face: Type, width: f64) -> Vec<Block> {
    // Measured in the wider weight, so that every line fits whichever of its words are letters.
    let strong = face.bold();
    let (text, runs) = (chart.to_string(), runs(chart));
    let lines = metrics::lines(&text, strong.size, strong.weight, width);
    lines.into_iter().map(|line| self::line(&text, line, &runs, face)).collect()
}

/// A line of a chart's text.
fn line(text: &str, line: Range<usize>, runs: &[Lettering], face: Type) -> Block {
    let first = runs.partition_point(|(run, _)| run.end <= line.start);
    let here = runs[first..].iter().take_while(|(run, _)| run.start < line.end);
    let parts = here.map(|(run, is_letter)| {
        let words = &text[run.start.max(line.start)..run.end.min(line.end)];
        if *is_letter { face.bold() } else { face }.line(words)
    });
    Block::row(parts, 0.0)
}

/// Where beads' letters lie in a chart's text, and what is none between them.
type Lettering = (Range<usize>, bool);

fn runs(chart: &WordChart) -> Vec<Lettering> {
    let of = |run: &ChartRun| match run {
        ChartRun::Beads(count, letter) => vec![(count.to_string().len(), false), (letter.len(), true)],
        ChartRun::Words(words) => vec![(words.len(), false)],
    };
    let mut runs: Vec<Lettering> = Vec::new();
    for (length, is_letter) in chart.runs().iter().flat_map(of) {
        match runs.last_mut() {
            Some((run, is_same)) if *is_same == is_letter => run.end += length,
            last => {
                let start = last.map_or(0, |(run, _)| run.end);
                runs.push((start..start + length, is_letter));
            }
        }
    }
    runs
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
    fn letters_are_found_on_every_line() {
        let chart = WordChart::join((1..40).map(|count| WordChart::beads(count, "C")), " ");
        let lines = strong(&chart, 30.0);
        assert!(lines.len() > 3, "{lines:?}");
        assert_eq!(lines.concat(), "C".repeat(39));
    }
}
